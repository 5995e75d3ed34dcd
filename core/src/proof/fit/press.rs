//! Where the work presses back on the jaws: what a squeeze turns about.

use super::contact::{Bearing, Contact, Where};
use super::grip::common_end;
use crate::proof::bending::Arms;
use crate::tongs::model::{Half, Lies, Model};

/// Faces that part by no more than this, both sides together, still press on each other, mm
/// (judgement: a layer of scale and the skin of hot work give so much).
pub const GIVE_MM: f64 = 0.1;

/// The place at which the work's force counts as one, and the arms that follow from it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Press {
    /// The size the work is called by, mm; `None` when the pair does not hold it, and the force
    /// counts as spread along the grip in the set pose.
    pub size_mm: Option<f64>,
    /// How far each half has turned from the set pose, radians, opening positive.
    pub half_angle: f64,
    /// Rivet to the middle of the hand along the tongs, mm.
    pub hand_mm: f64,
    /// Rivet to the middle of the pressure along the tongs, mm.
    pub grip_mm: f64,
    /// The part of the grip that is pressed.
    pub place: Where,
}

impl Press {
    /// The arms that bend the halves.
    pub fn arms(&self) -> Arms {
        Arms {
            half_angle: self.half_angle,
            hand_mm: self.hand_mm,
            grip_mm: self.grip_mm,
        }
    }

    /// Hand arm over grip arm: newtons at the work for a newton at the hand.
    pub fn leverage(&self) -> f64 {
        self.hand_mm / self.grip_mm
    }
}

/// Where work presses that is held so; without a contact, as if spread along the grip.
///
/// Both jaws press on the work with the same force in one line, or the work would turn: where the
/// halves differ the place is the mean of both.
pub fn press(model: &Model, contact: Option<&Contact>) -> Press {
    let half_angle = contact.map_or(0.0, |on| on.half_angle);
    let mean = |of: &dyn Fn(usize, &Half) -> f64| f64::midpoint(of(0, &model.a), of(1, &model.b));
    let hand = mean(&|_, half| -along(half.hand(), half_angle));
    let from = mean(&|_, half| along(on_grip(half, model.work.from), half_angle));
    let end = |half: &Half| half.jaw.path.at(common_end(half, &model.work)).at;
    let tip = mean(&|_, half| along(end(half), half_angle));
    let crosswise = model.work.lies == Lies::Crosswise;
    let (grip, place) = match contact {
        None if crosswise => (model.work.from, Where::Across),
        None => (f64::midpoint(from, tip), Where::Whole),
        Some(on) => pressed(on, (from, tip)),
    };
    Press {
        size_mm: contact.map(|on| on.size_mm),
        half_angle,
        hand_mm: hand.max(1.0),
        grip_mm: grip.max(1.0),
        place,
    }
}

/// x of a point of a half that has turned, mm.
fn along(p: kurbo::Point, half_angle: f64) -> f64 {
    let (sin, cos) = half_angle.sin_cos();
    p.x * cos - p.y * sin
}

/// The line of a jaw's faces or lips at an x of the set pose; the work reaches over at least 1 mm
/// of the grip.
fn on_grip(half: &Half, x: f64) -> kurbo::Point {
    let (first, end) = half.grip;
    let last = (end - 1.0).max(first);
    half.jaw
        .path
        .at(half.jaw.along_at_x(x).clamp(first, last))
        .at
}

fn pressed(on: &Contact, (from, tip): (f64, f64)) -> (f64, Where) {
    // One place that bears inside of its grip, or across it, tells where the force is.
    let [a, b] = &on.bearing;
    match (at_one_place(a), at_one_place(b)) {
        (Some(x), Some(y)) => return (f64::midpoint(x, y), a.place),
        (Some(x), None) => return (x, a.place),
        (None, Some(y)) => return (y, b.place),
        (None, None) => {}
    }
    let (heel, far) = (on.heel_open_mm, on.tip_open_mm);
    let (end, sign, open, place) = if far >= heel {
        (from, 1.0, far - heel, Where::Heel)
    } else {
        (tip, -1.0, heel - far, Where::Tip)
    };
    let place = if open <= GIVE_MM { Where::Whole } else { place };
    let part = middle_of_pressure(open / GIVE_MM);
    (end + sign * part * (tip - from), place)
}

/// Where a jaw bears whose ends both stand free of the work, x in mm.
fn at_one_place(bearing: &Bearing) -> Option<f64> {
    match bearing.place {
        Where::Between | Where::Across => Some(bearing.x_mm),
        Where::Whole | Where::Heel | Where::Tip => None,
    }
}

/// How far from the end that bears the middle of the pressure lies, as a part of the grip, when
/// the other end stands open so many times what the faces give.
///
/// The pressure falls straight from the end that bears to where the faces part by what they
/// give. While all of the grip still touches, it is a trapeze of heights 1 and 1 − q, whose
/// middle lies (3 − 2q) / (3 (2 − q)) from the higher side; then a triangle over 1/q of the grip.
///
/// ```
/// use reinwright_core::proof::fit::middle_of_pressure;
/// assert_eq!(middle_of_pressure(0.0), 0.5);
/// assert!((middle_of_pressure(1.0) - 1.0 / 3.0).abs() < 1e-15);
/// ```
pub fn middle_of_pressure(open: f64) -> f64 {
    if open <= 1.0 {
        (3.0 - 2.0 * open) / (3.0 * (2.0 - open))
    } else {
        1.0 / (3.0 * open)
    }
}
