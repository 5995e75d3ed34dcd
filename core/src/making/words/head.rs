//! Jaw, neck, boss and shoulder.

use crate::asked::Hole;
use crate::forge::balance::PUNCH_TO_HOLE;

use super::super::sections::{boss_slab, jaw_block, rein_block, unrolled};
use super::super::side::SetDowns;
use super::{Side, Told, Words, words};

/// A size behind "about", which says as much as the sign of a rounded size.
fn rough(size: &str) -> &str {
    size.trim_start_matches('~')
}

impl Told<'_> {
    pub(super) fn flatten(&self) -> Words {
        let base = self.task.base;
        words(
            format!(
                "Flatten the round where the head will be to {}{}",
                self.size(base.width),
                self.both()
            ),
            format!("about {} wide", rough(&self.size(base.depth))),
            &["Keep it flat: a bar that rolls is struck askew"],
        )
    }

    pub(super) fn notch(&self) -> Words {
        words(
            format!(
                "Fuller a notch into both edges behind the jaw{}",
                self.both()
            ),
            "both notches opposite each other, their bottoms round".to_owned(),
            &["A sharp notch lets the jaw drop off"],
        )
    }

    pub(super) fn twist(&self) -> Words {
        words(
            format!("Twist the jaw a quarter turn in the notches{}", self.both()),
            "jaw square to the boss".to_owned(),
            &["Twist both halves the same way: one the other way cannot be assembled"],
        )
    }

    pub(super) fn set_down_jaw(&self) -> Words {
        let block = jaw_block(self.task);
        let kept = self.task.set_downs.jaw.opposite().name();
        words(
            format!(
                "Set the jaw down at the first mark to {}, its {kept} kept{}",
                self.size(block.depth),
                self.both()
            ),
            format!(
                "{} thick, about {} wide",
                self.size(block.depth),
                rough(&self.size(block.width))
            ),
            &[
                "Never move a shoulder that is begun: the second one is a cold shut",
                "Do not turn the jaw on edge and hammer it back now",
            ],
        )
    }

    pub(super) fn set_down_boss(&self) -> Words {
        let thick = self.size(boss_slab(self.task).width);
        let kept = self.task.set_downs.boss.opposite();
        let mut cautions = vec!["Leave the neck thick: most tongs crack between jaw and boss"];
        if kept == Side::Joint {
            cautions.push(
                "The face that is kept is the joint: with the other one for a joint it is a half of the other hand",
            );
        }
        words(
            format!(
                "Set the boss down behind the first shoulder to {thick}, its {} kept{}",
                kept.name(),
                self.both()
            ),
            format!("calipers: {thick} thick, the same on both halves"),
            &cautions,
        )
    }

    pub(super) fn set_down_rein(&self) -> Words {
        let set_downs = self.task.set_downs;
        let (side, check) = if set_downs.rein == set_downs.jaw {
            (
                "on the same side as the jaw",
                "jaw and rein stand on one side of the boss",
            )
        } else {
            (
                "on the side away from the jaw",
                "the jaw stands on one side of the boss, the rein on the other",
            )
        };
        words(
            format!(
                "Move the boss past the edge at the second mark and set the rein down to {} {side}{}",
                self.size(rein_block(self.task).depth),
                self.both()
            ),
            check.to_owned(),
            &["The wrong side here spoils the half: hold it beside the first"],
        )
    }

    pub(super) fn forge_boss(&self) -> Words {
        words(
            format!(
                "Forge the boss flat and round on its edges{}; what is over goes into the rein",
                self.both()
            ),
            format!(
                "{} thick all over, the outline against the template",
                self.size(self.task.document.boss.thickness.mm())
            ),
            &["A boss under half the bar is too thin"],
        )
    }

    pub(super) fn rough_jaw(&self) -> Words {
        let jaw = &self.task.half.jaw;
        let heel = unrolled(self.task, 0.0);
        let tip = unrolled(self.task, 0.9 * jaw.length());
        words(
            format!(
                "Rough the jaw to a straight flat: {} at the heel, {} before the tip",
                self.by(heel.0, heel.1),
                self.by(tip.0, tip.1)
            ),
            format!(
                "about {} long before it is trimmed",
                self.rough(self.worked_mm)
            ),
            &["What is not wide enough is spread with the peen, across the jaw"],
        )
    }

    pub(super) fn make_hole(&self) -> Words {
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

    pub(super) fn set_neck(&self) -> Words {
        let mut what = match self.joggle_to_bend() {
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
        if self.task.set_downs.jaw != SetDowns::USUAL.jaw {
            let block = jaw_block(self.task);
            what += &format!(
                "; the jaw comes up by {}, for it was set down from its {}",
                self.size(self.task.base.depth - block.depth),
                Side::Back.name()
            );
        }
        words(
            what,
            "boss face flat against the other half's, jaw over jaw".to_owned(),
            &["A sharp inside corner is where tongs break: keep the radius"],
        )
    }

    /// How far jaw and rein are bent over to lie in the middle of the pair: more where the joint
    /// face is the one that was kept.
    pub(super) fn joggle_to_bend(&self) -> Option<f64> {
        if self.task.set_downs.boss == SetDowns::USUAL.boss {
            self.model.joggle_to_bend()
        } else {
            Some(self.task.bar.z)
        }
    }

    pub(super) fn shape_jaw(&self) -> Words {
        words(
            format!(
                "Shape the jaw ({}) on a piece of the work it will hold",
                self.task.document.jaw.name()
            ),
            "the work bears along the whole grip, no light shows".to_owned(),
            &["Shape both jaws the same way up against one template"],
        )
    }
}
