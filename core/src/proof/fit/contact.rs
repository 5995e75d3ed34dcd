//! Work of any size between the jaws.

use kurbo::Point;
use thiserror::Error;

use super::grip::Grip;
use super::held::{Held, Touch};
use super::limit::Limit;
use super::travel::Travel;
use crate::asked::Work;
use crate::finding::Part;
use crate::shape::sweep::Edge;
use crate::tongs::document::Document;
use crate::tongs::model::{Half, Model};
use crate::tongs::seat::{Bears, seat};

/// Both ends count as touching when they are nearer than this, mm: a thousandth of an inch.
const TOUCHES: f64 = 0.025;

/// The place along the grip at which the work bears.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Where {
    /// All along it.
    Whole,
    /// At its end towards the rivet.
    Heel,
    /// At its end towards the tip.
    Tip,
    /// Somewhere between.
    Between,
    /// Across it, along the rivet.
    Across,
}

/// How one jaw bears on the work.
#[derive(Debug, Clone, PartialEq)]
pub struct Bearing {
    /// The place along the grip.
    pub place: Where,
    /// How far from the rivet it is, along the work, mm.
    pub x_mm: f64,
    /// Where across the jaw it touches, z in mm from its middle.
    pub z_mm: Vec<f64>,
    /// How it bears.
    pub bears: Bears,
    /// Whether a flat of the work lies along it there, and not a corner alone.
    pub on_flat: bool,
}

/// A pair shut on work.
#[derive(Debug, Clone, PartialEq)]
pub struct Contact {
    /// The size the work is called by, mm.
    pub size_mm: f64,
    /// How far each half has turned from the set pose, radians, opening positive.
    pub half_angle: f64,
    /// How each jaw bears, half A first.
    pub bearing: [Bearing; 2],
    /// How far the jaws stand off the work where the grip begins, both sides together, mm.
    pub heel_open_mm: f64,
    /// The same at the tip.
    pub tip_open_mm: f64,
    /// Between the reins at the hand, mm.
    pub hand_gap_mm: f64,
    /// Over the reins at the hand, mm.
    pub hand_span_mm: f64,
}

/// Why a pair does not hold some work.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum NoContact {
    /// The halves stop each other before the jaws reach the work.
    #[error("{} of the halves meet before the jaws reach the work", Part::both(*parts))]
    MeetsFirst {
        /// The parts that meet, of half A and of half B.
        parts: [Part; 2],
    },
    /// The work is larger than the pair opens.
    #[error("the pair opens too little for the work: {} meet", Part::both(*parts))]
    OpensTooLittle {
        /// The parts that meet, of half A and of half B.
        parts: [Part; 2],
    },
    /// No angle of the jaws reaches the work.
    #[error("the work is out of the jaws' reach at any angle")]
    OutOfReach,
    /// What ends the sizes on one side comes before what ends them on the other.
    #[error("no size is held: on thin work {}, on thick work {}", thin.name(), thick.name())]
    NoSize {
        /// What ends them towards thin work.
        thin: Limit,
        /// What ends them towards thick work.
        thick: Limit,
    },
    /// The halves overlap in every pose.
    #[error("the halves overlap in every pose: the pair cannot be put together")]
    NoTravel,
}

/// Both jaws of a pair, ready to be brought down on work of any size.
#[derive(Debug, Clone)]
pub struct Jaws<'a> {
    grips: [Grip<'a>; 2],
    alike: bool,
    nominal: Held<'a>,
    keeps_width: bool,
    /// The size the nominal work is called by, mm.
    pub size_mm: f64,
    reins: [[Point; 2]; 2],
}

/// Jaws at rest on work.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Rest {
    pub(super) half_angle: f64,
    /// How far the jaws stand off at heel and tip, both sides together, mm.
    pub(super) off: [f64; 2],
    /// The place of each grip that touches, and the angle of each half against the work.
    pub(super) touches: [Touch; 2],
}

impl<'a> Jaws<'a> {
    /// The jaws of a pair.
    pub fn new(document: &Document, model: &'a Model) -> Self {
        let work = &model.work;
        let alike = model.alike;
        let a = Grip::new(&model.a, work);
        let b = if alike {
            a.clone()
        } else {
            Grip::new(&model.b, work)
        };
        Self {
            grips: [a, b],
            alike,
            nominal: Held::new(&work.profile, work.depth, work.width),
            keeps_width: matches!(document.work, Work::Flat { .. }),
            size_mm: document.work.size().mm(),
            reins: [rein(&model.a), rein(&model.b)],
        }
    }

    /// The nominal work in another size; flat work keeps its width.
    pub(super) fn work(&self, size_mm: f64) -> Held<'a> {
        let scale = size_mm / self.size_mm;
        let width = if self.keeps_width { 1.0 } else { scale };
        let at = &self.nominal.section;
        Held::new(at.from, at.depth * scale, at.width * width)
    }

    /// The jaws brought down on work of the nominal shape, found from a half-angle that is `near`.
    pub(super) fn touch_size(&self, size_mm: f64, near: f64) -> Option<Rest> {
        self.touch(&self.work(size_mm), near)
    }

    fn touch(&self, work: &Held<'_>, near: f64) -> Option<Rest> {
        let a = self.grips[0].touch(work, near)?;
        let b = if self.alike {
            a
        } else {
            self.grips[1].touch(work, near)?
        };
        let ends_a = self.grips[0].off_ends(a.half_angle, work);
        let ends_b = if self.alike {
            ends_a
        } else {
            self.grips[1].off_ends(b.half_angle, work)
        };
        Some(Rest {
            half_angle: f64::midpoint(a.half_angle, b.half_angle),
            off: [ends_a[0] + ends_b[0], ends_a[1] + ends_b[1]],
            touches: [a, b],
        })
    }

    /// Whether the work rides on the edges of either groove, found from a half-angle that is `near`.
    pub(super) fn rides(&self, size_mm: f64, near: f64) -> bool {
        let work = self.work(size_mm);
        let Some(rest) = self.touch(&work, near) else {
            return false;
        };
        let sides = if self.alike { 1 } else { 2 };
        self.grips
            .iter()
            .zip(rest.touches)
            .take(sides)
            .any(|(grip, touch)| grip.rides(touch.place, touch.half_angle, &work))
    }

    /// Between the reins at the hand when each half has turned so far, mm.
    pub fn hand_gap_mm(&self, half_angle: f64) -> f64 {
        self.between(0, half_angle)
    }

    /// Over the reins at the hand when each half has turned so far, mm.
    pub fn hand_span_mm(&self, half_angle: f64) -> f64 {
        self.between(1, half_angle)
    }

    fn between(&self, edge: usize, half_angle: f64) -> f64 {
        let (sin, cos) = half_angle.sin_cos();
        let down = |rein: &[Point; 2]| -(rein[edge].x * sin + rein[edge].y * cos);
        self.reins.iter().map(down).sum()
    }

    /// The half-angle at which the span over the reins is so wide, mm; the widest there is when
    /// they never stand so far apart.
    pub(super) fn half_angle_of_span(&self, span_mm: f64) -> f64 {
        self.half_angle_of(1, span_mm)
    }

    /// The half-angle at which the gap between the reins is so wide, mm.
    pub(super) fn half_angle_of_gap(&self, gap_mm: f64) -> f64 {
        self.half_angle_of(0, gap_mm)
    }

    fn half_angle_of(&self, edge: usize, apart_mm: f64) -> f64 {
        let x = -(self.reins[0][edge].x + self.reins[1][edge].x);
        let y = -(self.reins[0][edge].y + self.reins[1][edge].y);
        (apart_mm / x.hypot(y)).clamp(-1.0, 1.0).asin() - y.atan2(x)
    }

    /// Shuts the jaws on work, if the halves let them.
    pub(super) fn contact(
        &self,
        work: &Held<'_>,
        size_mm: f64,
        travel: Option<&Travel>,
    ) -> Result<Contact, NoContact> {
        let travel = travel.ok_or(NoContact::NoTravel)?;
        let rest = self.touch(work, 0.0).ok_or(NoContact::OutOfReach)?;
        within(rest.half_angle, travel)?;
        let a = self.bearing(0, &rest, work);
        let b = if self.alike {
            a.clone()
        } else {
            self.bearing(1, &rest, work)
        };
        Ok(Contact {
            size_mm,
            half_angle: rest.half_angle,
            bearing: [a, b],
            heel_open_mm: rest.off[0].max(0.0),
            tip_open_mm: rest.off[1].max(0.0),
            hand_gap_mm: self.hand_gap_mm(rest.half_angle),
            hand_span_mm: self.hand_span_mm(rest.half_angle),
        })
    }

    /// Whether the work lies across the jaws.
    pub(super) fn crosswise(&self) -> bool {
        self.grips.iter().any(|grip| grip.across.is_some())
    }

    fn bearing(&self, half: usize, rest: &Rest, work: &Held<'_>) -> Bearing {
        let (grip, touch) = (&self.grips[half], rest.touches[half]);
        if let Some(across) = &grip.across {
            let (bears, z_mm) = across.bears(touch.half_angle, work);
            return Bearing {
                place: Where::Across,
                x_mm: across.middle(touch.half_angle),
                z_mm,
                bears,
                on_flat: true,
            };
        }
        let last = grip.places.len() - 1;
        let near = |place: usize| grip.off(place, touch.half_angle, work) < TOUCHES;
        let place = match (near(0), near(last)) {
            (true, true) => Where::Whole,
            (true, false) => Where::Heel,
            (false, true) => Where::Tip,
            (false, false) => Where::Between,
        };
        let bears_at = if place == Where::Whole {
            last / 2
        } else {
            touch.place
        };
        let at = &grip.places[bears_at];
        let (sin, cos) = touch.half_angle.sin_cos();
        let (section, rise) = grip.section(bears_at);
        let seated = seat(&section, rise, &work.section);
        let middle = f64::midpoint(grip.places[0].x, grip.places[last].x);
        let (x, y) = match place {
            Where::Whole => (middle, at.y),
            Where::Heel | Where::Tip | Where::Between | Where::Across => (at.x, at.y),
        };
        Bearing {
            place,
            x_mm: x * cos - y * sin,
            on_flat: seated.on_flat((&section, rise), &work.section),
            z_mm: seated.contacts,
            bears: seated.bears,
        }
    }
}

/// The points of a rein at the hand: inside and outside.
fn rein(half: &Half) -> [Point; 2] {
    [Edge::Inner, Edge::Outer].map(|edge| half.rein.edge_point(edge, half.hand_at))
}

/// Whether the halves can stand at a half-angle.
fn within(half_angle: f64, travel: &Travel) -> Result<(), NoContact> {
    /// A pair that is shut on its work may touch elsewhere too; a hundred thousandth of a
    /// radian is a hair at the end of a rein.
    const HAIR: f64 = 1e-5;
    let parts = |end: &super::travel::TravelEnd| end.clash.map_or([Part::Jaw; 2], |c| c.parts);
    if half_angle < travel.shut.half_angle - HAIR {
        let parts = parts(&travel.shut);
        return Err(NoContact::MeetsFirst { parts });
    }
    if half_angle > travel.open.half_angle + HAIR {
        let parts = parts(&travel.open);
        return Err(NoContact::OpensTooLittle { parts });
    }
    Ok(())
}
