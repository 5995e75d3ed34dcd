//! A heat followed: along the piece when it comes out and when it has been worked, and at the skin and in
//! the middle against time.

use egui::{Ui, Vec2};
use reinwright_core::heats::course::Course;
use reinwright_core::heats::spoken;
use reinwright_core::units::{Show, Unit};

use super::plot::{Curve, Plot, Stroked};
use crate::window::state::heating::Heat;

/// Shows both plots beside each other in the room that is left.
pub(super) fn show(ui: &mut Ui, (heat, at): (&Heat, (usize, usize)), course: Option<&Course>) {
    let Some(course) = course else {
        let words = match &heat.prepared.rows[at.0].offers[at.1] {
            Ok(_) => "The heat is being followed.",
            Err(_) => "It does not come to heat here: there is nothing to follow.",
        };
        ui.weak(words);
        return;
    };
    let room = ui.available_size();
    let each = Vec2::new((room.x - 8.0) / 2.0, room.y);
    let drawn = Drawn { heat, at, course };
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = 8.0;
        drawn.along(ui, each);
        drawn.in_time(ui, each);
    });
}

struct Drawn<'a> {
    heat: &'a Heat,
    at: (usize, usize),
    course: &'a Course,
}

impl Drawn<'_> {
    fn degrees(&self, celsius: f64) -> f64 {
        self.heat.show.scale().of_celsius(celsius)
    }

    fn range(&self) -> (f64, f64) {
        let range = self.heat.prepared.range;
        (
            self.degrees(range.lower_celsius),
            self.degrees(range.upper_celsius),
        )
    }

    /// From nothing to over the hottest, so that heats can be compared.
    fn up(&self) -> (f64, f64) {
        (self.degrees(0.0).min(0.0), self.degrees(1300.0))
    }

    fn along(&self, ui: &mut Ui, size: Vec2) {
        let show = self.heat.show;
        let unit = unit_mm(show);
        let curve = |points: &[(f64, f64)]| -> Vec<(f64, f64)> {
            let own = points.iter();
            own.map(|(mm, celsius)| (mm / unit, self.degrees(*celsius)))
                .collect()
        };
        let row = &self.heat.prepared.rows[self.at.0];
        let needs = row.needs_mm.unwrap_or_default();
        let long = self.course.along.last().map_or(1.0, |own| own.0) / unit;
        let hottest = |points: &[(f64, f64)]| points.iter().map(|own| own.1).fold(20.0, f64::max);
        Plot {
            title: format!("{} along, {}", self.heat.show.scale().sign(), show.sign()),
            said: format!(
                "Temperature along the piece: {} at the hottest when it comes out, {} when it has been worked",
                show.temperature(hottest(&self.course.along)),
                show.temperature(hottest(&self.course.left_along)),
            ),
            // As the piece is drawn over it: its tip at the right.
            across: (long, 0.0),
            up: self.up(),
            range: self.range(),
            foot: (needs.0 / unit, needs.1 / unit),
            curves: vec![
                Curve {
                    name: "out",
                    stroked: Stroked::Full,
                    points: curve(&self.course.along),
                },
                Curve {
                    name: "worked",
                    stroked: Stroked::Dashed,
                    points: curve(&self.course.left_along),
                },
            ],
        }
        .show(ui, size);
    }

    fn in_time(&self, ui: &mut Ui, size: Vec2) {
        let moments = &self.course.moments;
        let last = moments.last().map_or(1.0, |own| own.seconds);
        let curve = |of: fn(&reinwright_core::heats::course::Moment) -> f64| {
            let points = moments.iter();
            points
                .map(|own| (own.seconds, self.degrees(of(own).clamp(0.0, 1400.0))))
                .collect()
        };
        Plot {
            title: format!("{} in time, s", self.heat.show.scale().sign()),
            said: format!(
                "Temperature against time: out of the heat after {}, at the end of its range after {}",
                spoken(self.course.out_s),
                spoken(last)
            ),
            across: (0.0, last),
            up: self.up(),
            range: self.range(),
            foot: (0.0, self.course.out_s),
            curves: vec![
                Curve {
                    name: "skin",
                    stroked: Stroked::Full,
                    points: curve(|own| own.skin_celsius),
                },
                Curve {
                    name: "middle",
                    stroked: Stroked::Dashed,
                    points: curve(|own| own.middle_celsius),
                },
            ],
        }
        .show(ui, size);
    }
}

fn unit_mm(show: Show) -> f64 {
    match show.unit {
        Unit::Inch | Unit::Foot => Unit::Inch.mm(),
        Unit::Millimetre | Unit::Centimetre => 1.0,
    }
}
