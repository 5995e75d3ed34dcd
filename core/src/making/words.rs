//! The sentences of each operation: what to do, how to check it, what can go wrong.

use crate::asked::Hole;
use crate::forge::balance::PUNCH_TO_HOLE;
use crate::tongs::document::ReinEnd;
use crate::tongs::model::Model;
use crate::units::Show;

use super::rules::{LEAVE_PROUD_MM, passes, rounding, upset};
use super::sections::{boss_slab, jaw_block, rein_block, rod, unrolled};
use super::state::{Shape, State, Task};
use super::step::{Step, scarf};

/// What is done and how it is checked.
pub(super) struct Words {
    pub(super) what: String,
    pub(super) check: String,
    pub(super) cautions: Vec<&'static str>,
}

fn words(what: String, check: String, cautions: &[&'static str]) -> Words {
    Words {
        what,
        check,
        cautions: cautions.into(),
    }
}

/// What the sentences are made from.
pub(super) struct Told<'a> {
    pub(super) task: &'a Task<'a>,
    pub(super) model: &'a Model,
    pub(super) before: &'a State,
    /// How long what is worked is afterwards.
    pub(super) worked_mm: f64,
}

impl Told<'_> {
    fn show(&self) -> Show {
        self.task.document.units.show()
    }

    fn size(&self, mm: f64) -> String {
        self.show().text(mm)
    }

    fn by(&self, depth: f64, width: f64) -> String {
        format!("{} x {}", self.show().number(depth), self.size(width))
    }

    /// "on both ends" while both halves hang together.
    fn both(&self) -> &'static str {
        if self.before.double {
            ", the same at the other end"
        } else {
            ""
        }
    }

    pub(super) fn words(&self, step: Step) -> Words {
        match step {
            Step::CutBar | Step::CutApart | Step::CutTail | Step::TrimRein | Step::TrimJaw => {
                self.cut(step)
            }
            Step::SetDownJaw | Step::SetDownBoss | Step::SetDownRein | Step::ForgeBoss => {
                self.head(step)
            }
            Step::Flatten | Step::Notch | Step::Twist => self.flat(step),
            Step::DrawStub | Step::Gather | Step::Weld => self.weld(step),
            Step::DrawSquare | Step::DrawOctagon | Step::DrawRound => self.drawn(step),
            Step::Grip | Step::FinishEnd | Step::BendRein => self.rein(step),
            Step::RoughJaw | Step::ShapeJaw => self.jaw(step),
            Step::MakeHole => self.hole(),
            Step::SetNeck => self.neck(),
        }
    }

    fn cut(&self, step: Step) -> Words {
        let what = match step {
            Step::CutBar => "Cut the bar off at its last mark",
            Step::CutApart => {
                "Cut the blank in the middle: two halves that are the same, not mirrored"
            }
            Step::CutTail => "Cut the handling tail off behind the rein",
            Step::TrimRein => "Cut the rein to its length and break the burr",
            _ => "Cut the tip square and file off fins and laps",
        };
        let check = match step {
            Step::TrimRein => format!("{} from the shoulder to the end", self.size(self.worked_mm)),
            Step::CutApart => "lay both halves side by side: shoulders in line".to_owned(),
            _ => "square, no burr".to_owned(),
        };
        words(
            what.to_owned(),
            check,
            &["Hot cut ends fall: keep feet and hands away"],
        )
    }

    fn head(&self, step: Step) -> Words {
        let (task, both) = (self.task, self.both());
        match step {
            Step::SetDownJaw => {
                let block = jaw_block(task);
                words(
                    format!(
                        "Set the jaw down at the first mark to {}, its back kept{both}",
                        self.size(block.depth)
                    ),
                    format!(
                        "{} thick, about {} wide",
                        self.size(block.depth),
                        self.size(block.width)
                    ),
                    &[
                        "Never move a shoulder that is begun: the second one is a cold shut",
                        "Do not turn the jaw on edge and hammer it back now",
                    ],
                )
            }
            Step::SetDownBoss => {
                let slab = boss_slab(task);
                words(
                    format!(
                        "Set the boss down behind the first shoulder to {}, one face kept{both}",
                        self.size(slab.width)
                    ),
                    format!(
                        "calipers: {} thick, the same on both halves",
                        self.size(slab.width)
                    ),
                    &["Leave the neck thick: most tongs crack between jaw and boss"],
                )
            }
            Step::SetDownRein => {
                let block = rein_block(task);
                words(
                    format!(
                        "Move the boss past the edge at the second mark and set the rein down to {} on the side \
                         away from the jaw{both}",
                        self.size(block.depth)
                    ),
                    "the jaw stands on one side of the boss, the rein on the other".to_owned(),
                    &["The wrong side here spoils the half: hold it beside the first"],
                )
            }
            _ => words(
                format!(
                    "Forge the boss flat and round on its edges{both}; what is over goes into the rein"
                ),
                format!(
                    "{} thick all over, the outline against the template",
                    self.size(task.document.boss.thickness.mm())
                ),
                &["A boss under half the bar is too thin"],
            ),
        }
    }

    fn flat(&self, step: Step) -> Words {
        let task = self.task;
        match step {
            Step::Flatten => words(
                format!(
                    "Flatten the round where the head will be to {}{}",
                    self.size(task.base.width),
                    self.both()
                ),
                format!("about {} wide", self.size(task.base.depth)),
                &["Keep it flat: a bar that rolls is struck askew"],
            ),
            Step::Notch => words(
                format!(
                    "Fuller a notch into both edges behind the jaw{}",
                    self.both()
                ),
                "both notches opposite each other, their bottoms round".to_owned(),
                &["A sharp notch lets the jaw drop off"],
            ),
            _ => words(
                format!("Twist the jaw a quarter turn in the notches{}", self.both()),
                "jaw square to the boss".to_owned(),
                &["Twist both halves the same way: one the other way cannot be assembled"],
            ),
        }
    }

    fn weld(&self, step: Step) -> Words {
        let rod = rod(self.task);
        let (long, _) = scarf(self.task);
        match step {
            Step::DrawStub => words(
                format!(
                    "Draw the stub out to {} square at its end",
                    self.size(rod.depth)
                ),
                format!("{} at its end", self.size(rod.depth)),
                &[],
            ),
            Step::Gather => words(
                format!(
                    "Upset the end of the {} round rod and scarf it and the stub, {} long, along the side",
                    self.size(rod.depth),
                    self.size(long)
                ),
                format!("both scarfs {} long and crowned", self.size(long)),
                &["A scarf across the opening peels when the tongs are squeezed"],
            ),
            _ => words(
                format!("Weld the rod on over {}", self.size(long)),
                "no seam is seen; draw it down to size at once".to_owned(),
                &[
                    "Sparks are burnt steel: it is scrap",
                    "Flux and scale fly at the first blow: face and arms covered",
                ],
            ),
        }
    }

    fn drawn(&self, step: Step) -> Words {
        let (task, rein) = (self.task, &self.task.document.rein);
        let (start, end) = (&rein.start, &rein.end);
        let way = rounding(end.depth_mm().min(end.width_mm()));
        match step {
            Step::DrawSquare => {
                let count = passes(task.bar.depth, end.depth_mm());
                words(
                    format!(
                        "Draw the rein out square from {} to {}, working away from the boss, a stretch at a \
                         time, in {count} passes a side at the least{}",
                        self.by(start.depth_mm(), start.width_mm()),
                        self.by(end.depth_mm(), end.width_mm()),
                        self.both()
                    ),
                    format!(
                        "corners sharp; {} at the end, left {} proud; from {} it would keep its length when it \
                         is rounded, from {} it grows by 4/\u{3c0}",
                        self.size(way.nominal_mm),
                        self.size(LEAVE_PROUD_MM),
                        self.size(way.keeping_mm),
                        self.size(way.nominal_mm)
                    ),
                    &[
                        "Turn before it is twice as wide as high: it buckles on edge",
                        "Bites shorter than a third of the height leave laps",
                    ],
                )
            }
            Step::DrawOctagon => words(
                format!(
                    "Hammer the corners in until the rein is eight-sided{}",
                    self.both()
                ),
                format!(
                    "{} across flats, eight even sides",
                    self.size(way.nominal_mm)
                ),
                &["No rounding yet: from a square straight to round the middle splits"],
            ),
            _ => words(
                format!(
                    "Finish the rein to its sections with light blows, turning it all the time{}",
                    self.both()
                ),
                format!(
                    "{} at the end; smooth to the bare hand",
                    self.size(end.depth_mm())
                ),
                &[],
            ),
        }
    }

    fn rein(&self, step: Step) -> Words {
        let rein = &self.task.document.rein;
        match step {
            Step::Grip => {
                let zone = rein
                    .hand_zone
                    .as_ref()
                    .map_or(&rein.end, |zone| &zone.section);
                words(
                    "Shape the grip where the hand will lie".to_owned(),
                    self.by(zone.depth_mm(), zone.width_mm()),
                    &[],
                )
            }
            Step::FinishEnd => {
                let (what, check) = match rein.finish {
                    ReinEnd::Ball { diameter } => {
                        let area = self
                            .task
                            .half
                            .rein
                            .section(rein.length.mm() * 0.9)
                            .area_mm2();
                        let ball = std::f64::consts::PI / 6.0 * diameter.mm().powi(3);
                        let own = upset(ball, area);
                        (
                            format!(
                                "Upset the end to a ball out of {}, {:.1} diameters: {} heat{}",
                                self.size(own.length_mm),
                                own.ratio,
                                own.heats,
                                if own.heats == 1 { "" } else { "s" }
                            ),
                            self.size(diameter.mm()),
                        )
                    }
                    ReinEnd::Square
                    | ReinEnd::Rounded
                    | ReinEnd::ClipBend { .. }
                    | ReinEnd::Curl { .. } => (
                        "Round the end over".to_owned(),
                        "no edge under the hand".to_owned(),
                    ),
                };
                words(
                    what,
                    check,
                    &["Straighten at once what bends while it is upset"],
                )
            }
            _ => words(
                "Bend the rein to its line against the template".to_owned(),
                format!(
                    "{} between the reins at the hand, set on the work",
                    self.size(self.model.hand_gap)
                ),
                &["Bend over a round horn: a sharp edge starts a crack"],
            ),
        }
    }

    fn jaw(&self, step: Step) -> Words {
        let jaw = &self.task.half.jaw;
        let (root, tip) = (
            unrolled(self.task, 0.0),
            unrolled(self.task, 0.9 * jaw.length()),
        );
        match step {
            Step::RoughJaw => words(
                format!(
                    "Rough the jaw to a straight flat: {} at the heel, {} before the tip",
                    self.by(root.0, root.1),
                    self.by(tip.0, tip.1)
                ),
                format!("about {} long", self.size(jaw.length())),
                &["What is not wide enough is spread with the peen, across the jaw"],
            ),
            _ => words(
                format!(
                    "Shape the jaw ({}) on a piece of the work it will hold",
                    self.task.document.jaw.name()
                ),
                "the work bears along the whole grip, no light shows".to_owned(),
                &["Shape both jaws the same way up against one template"],
            ),
        }
    }

    fn hole(&self) -> Words {
        let hole = self.task.document.rivet.hole.mm();
        let what = match self.task.document.rivet.made {
            Hole::Punched => format!(
                "Punch from one face with a {} punch until it feels solid, turn over, drive out the slug, drift to {}",
                self.size(PUNCH_TO_HOLE * hole),
                self.size(hole)
            ),
            Hole::Drilled => format!("Drill the boss {}", self.size(hole)),
        };
        words(
            what,
            format!(
                "the {} rivet goes through by hand",
                self.size(self.model.rivet)
            ),
            &["Centre it: a hole off the middle leaves a thin wall that tears"],
        )
    }

    fn neck(&self) -> Words {
        let what = match self.model.joggle_to_bend() {
            Some(joggle) => format!(
                "Set neck and shoulder: bend jaw and rein over by {} so that they lie in the middle of the pair, and \
                 to their height against the template",
                self.size(joggle.abs())
            ),
            None => {
                "Set neck and shoulder to their height against the template: no joggle is wanted"
                    .to_owned()
            }
        };
        words(
            what,
            "boss face flat against the other half's, jaw over jaw".to_owned(),
            &["A sharp inside corner is where tongs break: keep the radius"],
        )
    }
}

/// The last shape of a rein that is straight.
pub(super) fn is_last(task: &Task<'_>, shape: Shape) -> bool {
    super::procedure::rein_steps(task.document).2 == shape
}
