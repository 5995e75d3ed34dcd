//! Holes through a piece, and what is sunk into it.

use std::f64::consts::{FRAC_PI_2, FRAC_PI_4, PI};

use kurbo::{Arc, BezPath, PathEl, Point, Vec2};

/// What a hole is, and where.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Opening {
    /// A round one about the origin, along z: a rivet goes through.
    Rivet {
        /// Diameter, mm.
        diameter_mm: f64,
    },
    /// A slot through all of the depth, along y: an eye, a groove, the gap of a fork.
    Slot(Slot),
    /// A cap of a ball, sunk into the end that the piece begins with.
    Cup(Cup),
}

/// A slot with a round end, or two, in the top view.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Slot {
    /// Centre of the round end with the smaller x, mm.
    pub from_mm: f64,
    /// Centre of the other round end, or where an open one leaves the steel, mm.
    pub to_mm: f64,
    /// Across the slot, along z, mm.
    pub across_mm: f64,
    /// Through the steel, along y, mm.
    pub deep_mm: f64,
    /// What its end with the larger x is.
    pub end: SlotEnd,
}

/// How a slot ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum SlotEnd {
    /// Half round inside the steel: an eye. A slug is knocked out for it.
    Round,
    /// At the end of the steel: a groove, a gap. The steel is pressed aside, and none is lost.
    Open,
    /// The same with two flats that meet so deep under the end of the steel, mm: it has no round end.
    Vee(f64),
}

/// A cap of a ball, pressed into an end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cup {
    /// Where the end lies, x in mm.
    pub at_mm: f64,
    /// Across its rim, mm.
    pub across_mm: f64,
    /// Depth, mm.
    pub deep_mm: f64,
}

/// How near drawn arcs are to circles, mm.
const NEAR: f64 = 1e-3;

impl Slot {
    /// In the top view, mm².
    pub fn area_mm2(&self) -> f64 {
        let ends = match self.end {
            SlotEnd::Round => 1.0,
            SlotEnd::Open => 0.5,
            SlotEnd::Vee(high) => return high * self.across_mm / 2.0,
        };
        let straight = (self.to_mm - self.from_mm) * self.across_mm;
        straight + ends * FRAC_PI_4 * self.across_mm.powi(2)
    }

    /// mm³.
    pub fn volume_mm3(&self) -> f64 {
        self.area_mm2() * self.deep_mm
    }

    /// The middle of what it takes away, x in mm.
    pub fn middle_mm(&self) -> f64 {
        let (r, long) = (self.across_mm / 2.0, self.to_mm - self.from_mm);
        match self.end {
            SlotEnd::Round => f64::midpoint(self.from_mm, self.to_mm),
            // Of a triangle, a third of its height from its base.
            SlotEnd::Vee(high) => self.to_mm - high / 3.0,
            SlotEnd::Open => {
                // The centroid of half a disc lies 4 r / 3 π from its middle.
                let cap = FRAC_PI_2 * r * r;
                let straight = long * 2.0 * r;
                let moment = straight * long / 2.0 - cap * 4.0 * r / (3.0 * PI);
                self.from_mm + moment / (straight + cap).max(f64::MIN_POSITIVE)
            }
        }
    }

    /// Its least and its greatest x, mm.
    pub fn ends_mm(&self) -> (f64, f64) {
        let r = self.across_mm / 2.0;
        match self.end {
            SlotEnd::Round => (self.from_mm - r, self.to_mm + r),
            SlotEnd::Open => (self.from_mm - r, self.to_mm),
            SlotEnd::Vee(high) => (self.to_mm - high, self.to_mm),
        }
    }

    /// Its outline in the top view, (x, z); an open end stays open.
    pub fn path(&self) -> BezPath {
        let r = self.across_mm / 2.0;
        let mut path = BezPath::new();
        path.move_to((self.to_mm, r));
        if let SlotEnd::Vee(high) = self.end {
            path.line_to((self.to_mm - high, 0.0));
            path.line_to((self.to_mm, -r));
            return path;
        }
        path.line_to((self.from_mm, r));
        add(
            &mut path,
            Arc::new((self.from_mm, 0.0), (r, r), FRAC_PI_2, PI, 0.0),
        );
        path.line_to((self.to_mm, -r));
        if self.end == SlotEnd::Round {
            add(
                &mut path,
                Arc::new((self.to_mm, 0.0), (r, r), -FRAC_PI_2, PI, 0.0),
            );
            path.close_path();
        }
        path
    }
}

impl Cup {
    /// Radius of the ball that it is a cap of, mm: (a² + h²) / 2 h with a half across the rim.
    pub fn radius_mm(&self) -> f64 {
        let (a, h) = (self.across_mm / 2.0, self.deep_mm);
        (a * a + h * h) / (2.0 * h).max(f64::MIN_POSITIVE)
    }

    /// π h (3 a² + h²) / 6, mm³.
    pub fn volume_mm3(&self) -> f64 {
        let (a, h) = (self.across_mm / 2.0, self.deep_mm);
        PI * h * (3.0 * a * a + h * h) / 6.0
    }

    /// The middle of what it takes away, x in mm: of a cap of a ball of radius R it lies
    /// 3 (2 R − h)² / 4 (3 R − h) from the ball's centre.
    pub fn middle_mm(&self) -> f64 {
        let (r, h) = (self.radius_mm(), self.deep_mm);
        let from_centre = 0.75 * (2.0 * r - h).powi(2) / (3.0 * r - h).max(f64::MIN_POSITIVE);
        self.at_mm + (r - h) - from_centre
    }

    /// Its outline in the side view and in the top view, from rim to rim.
    pub fn path(&self) -> BezPath {
        let (r, a) = (self.radius_mm(), self.across_mm / 2.0);
        let centre = Point::new(self.at_mm + r - self.deep_mm, 0.0);
        let half = Vec2::new(self.at_mm - centre.x, a).atan2();
        let mut path = BezPath::new();
        path.move_to((self.at_mm, a));
        add(
            &mut path,
            Arc::new(centre, (r, r), half, 2.0 * (PI - half), 0.0),
        );
        path
    }
}

/// Goes on along an arc that begins where a path has come to.
fn add(path: &mut BezPath, arc: Arc) {
    arc.append_iter(NEAR).for_each(|el| match el {
        PathEl::MoveTo(p) => path.line_to(p),
        el => path.push(el),
    });
}
