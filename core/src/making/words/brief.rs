//! Each operation in so few words that they are read from the anvil.

use crate::asked::Hole;
use crate::forge::balance::PUNCH_TO_HOLE;
use crate::tongs::document::ReinEnd;

use super::super::sections::{boss_slab, jaw_block, rein_block, rod, unrolled};
use super::super::step::{Step, scarf};
use super::Told;

impl Told<'_> {
    /// What to do, in half a sentence.
    pub(in super::super) fn brief(&self, step: Step) -> String {
        let task = self.task;
        let (rein, set_downs) = (&task.document.rein, task.set_downs);
        match step {
            Step::Tool(own) => own.name().to_owned(),
            Step::CutBar => "at the last mark".to_owned(),
            Step::Flatten => format!("to {} thick", self.size(task.base.width)),
            Step::Notch => "fuller both edges".to_owned(),
            Step::Twist => "jaw square to the boss".to_owned(),
            Step::SetDownJaw => {
                let block = jaw_block(task);
                format!("near edge, to {}", self.by(block.depth, block.width))
            }
            Step::SetDownBoss => {
                format!(
                    "far edge, at 45\u{b0}, to {}",
                    self.size(boss_slab(task).width)
                )
            }
            Step::SetDownRein => {
                let side = if set_downs.rein == set_downs.jaw {
                    "jaw's side"
                } else {
                    "away from the jaw"
                };
                format!("far edge, {side}, to {}", self.size(rein_block(task).depth))
            }
            Step::ForgeBoss => {
                let boss = &task.document.boss;
                format!(
                    "flat and round, {} thick, {} across",
                    self.size(boss.thickness.mm()),
                    self.size(boss.across.mm())
                )
            }
            Step::CutApart => "in the middle".to_owned(),
            Step::DrawStub => format!("to {} at its end", self.size(rod(task).depth)),
            Step::Gather => format!("scarfs {} long, along the side", self.size(scarf(task).0)),
            Step::Weld => format!("over {}, white hot", self.size(scarf(task).0)),
            Step::DrawSquare => format!(
                "{} to {}, {} long",
                self.bare(rein.start.depth_mm(), rein.start.width_mm()),
                self.by(rein.end.depth_mm(), rein.end.width_mm()),
                self.rough(self.worked_mm)
            ),
            Step::DrawOctagon => "corners in, eight even sides".to_owned(),
            Step::DrawRound => format!(
                "light blows, {} at the end, {} long",
                self.size(rein.end.depth_mm()),
                self.rough(self.worked_mm)
            ),
            Step::CutTail => "behind the rein".to_owned(),
            Step::TrimRein => format!("{} from the shoulder", self.rough(self.worked_mm)),
            Step::Grip => {
                let zone = rein.hand_zone.as_ref();
                let section = zone.map_or(&rein.end, |zone| &zone.section);
                format!("to {}", self.by(section.depth_mm(), section.width_mm()))
            }
            Step::FinishEnd => match rein.finish {
                ReinEnd::Ball { diameter } => {
                    format!("upset to a {} ball", self.size(diameter.mm()))
                }
                ReinEnd::Square
                | ReinEnd::Rounded
                | ReinEnd::ClipBend { .. }
                | ReinEnd::Curl { .. } => "round it over".to_owned(),
            },
            Step::RoughJaw => {
                let (heel, tip) = (
                    unrolled(task, 0.0),
                    unrolled(task, 0.9 * task.half.jaw.length()),
                );
                format!(
                    "heel {}, tip {}, {} long before trimming",
                    self.bare(heel.0, heel.1),
                    self.bare(tip.0, tip.1),
                    self.rough(self.worked_mm)
                )
            }
            Step::TrimJaw => "cut the tip square, file".to_owned(),
            Step::MakeHole => {
                let hole = task.document.rivet.hole.mm();
                match task.document.rivet.made {
                    Hole::Punched => format!(
                        "punch {}, turn over, drift to {}",
                        self.size(PUNCH_TO_HOLE * hole),
                        self.size(hole)
                    ),
                    Hole::Drilled => format!("drill {}", self.size(hole)),
                }
            }
            Step::SetNeck => match self.joggle_to_bend() {
                Some(joggle) => format!("jaw and rein over by {}", self.size(joggle.abs())),
                None => "to the template, no joggle".to_owned(),
            },
            Step::ShapeJaw => "on a piece of the work".to_owned(),
            Step::BendRein => "to the template".to_owned(),
        }
    }
}
