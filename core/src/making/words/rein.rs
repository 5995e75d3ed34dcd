//! The rein.

use crate::tongs::document::ReinEnd;
use crate::units::Length;

use super::super::rules::{LEAVE_PROUD_MM, Rounding, passes, rounding, upset};
use super::{Told, Words, words};

impl Told<'_> {
    /// The way from square to round at the rein's end.
    fn rounding(&self) -> Rounding {
        let end = &self.task.document.rein.end;
        rounding(end.depth_mm().min(end.width_mm()))
    }

    pub(super) fn draw_square(&self) -> Words {
        let rein = &self.task.document.rein;
        let (start, end) = (&rein.start, &rein.end);
        let count = passes(self.task.bar.depth, end.depth_mm());
        let way = self.rounding();
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

    pub(super) fn draw_octagon(&self) -> Words {
        words(
            format!(
                "Hammer the corners in until the rein is eight-sided{}",
                self.both()
            ),
            format!(
                "{} across flats, eight even sides",
                self.size(self.rounding().nominal_mm)
            ),
            &["No rounding yet: from a square straight to round the middle splits"],
        )
    }

    pub(super) fn draw_round(&self) -> Words {
        let end = self.task.document.rein.end.depth_mm();
        words(
            format!(
                "Finish the rein to its sections with light blows, turning it all the time{}",
                self.both()
            ),
            format!("{} at the end; smooth to the bare hand", self.size(end)),
            &[],
        )
    }

    pub(super) fn grip(&self) -> Words {
        let rein = &self.task.document.rein;
        let zone = rein.hand_zone.as_ref();
        let section = zone.map_or(&rein.end, |zone| &zone.section);
        words(
            "Shape the grip where the hand will lie".to_owned(),
            self.by(section.depth_mm(), section.width_mm()),
            &[],
        )
    }

    pub(super) fn finish_end(&self) -> Words {
        let (what, check) = match self.task.document.rein.finish {
            ReinEnd::Ball { diameter } => self.ball(diameter),
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

    fn ball(&self, diameter: Length) -> (String, String) {
        let before = 0.9 * self.task.document.rein.length.mm();
        let area = self.task.half.rein.section(before).area_mm2();
        let ball = std::f64::consts::PI / 6.0 * diameter.mm().powi(3);
        let own = upset(ball, area);
        let what = format!(
            "Upset the end to a ball out of {}, {:.1} diameters: {} heat{}",
            self.size(own.length_mm),
            own.ratio,
            own.heats,
            if own.heats == 1 { "" } else { "s" }
        );
        (what, self.size(diameter.mm()))
    }

    pub(super) fn bend_rein(&self) -> Words {
        words(
            "Bend the rein to its line against the template".to_owned(),
            format!(
                "{} between the reins at the hand, set on the work",
                self.size(self.model.hand_gap)
            ),
            &["Bend over a round horn: a sharp edge starts a crack"],
        )
    }
}
