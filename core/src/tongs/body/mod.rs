//! The boss with what grows out of it: neck towards the jaw, shoulder towards the rein.
//!
//! The body is one solid given by its two views: every point whose place in the side view lies
//! inside the outline and whose place in the top view lies between the two faces. What is drawn
//! is therefore what is weighed.

mod limb;
mod rim;

pub use limb::{Limb, LimbEnd, LimbSpec};
pub use rim::Rim;

use kurbo::Point;

use crate::shape::section::Profile;
use crate::shape::{Curve, Faces, Plate};

/// The middle of a half: neck, boss and shoulder in one.
#[derive(Debug, Clone, PartialEq)]
pub struct Body {
    /// The solid.
    pub plate: Plate,
    /// The outline of the boss alone.
    pub rim: Rim,
    /// The neck's edges.
    pub neck: Limb,
    /// The shoulder's edges, in the frame turned half round (+x toward the rein).
    pub shoulder: Limb,
}

impl Body {
    /// Puts the outline together from boss, neck and shoulder.
    pub fn new(
        (rim, faces): (Rim, Faces),
        neck: Limb,
        shoulder: Limb,
        profiles: [Profile; 2],
        hole_radius: f64,
    ) -> Self {
        let mut body = Self {
            plate: Plate {
                outline: Vec::new(),
                faces,
                profiles,
                hole_radius,
            },
            rim,
            neck,
            shoulder,
        };
        let [first, second] = body.edges();
        let mut outline = first;
        outline.push(Curve::Line(
            negated(body.shoulder.inner_end()),
            negated(body.shoulder.outer_end()),
        ));
        outline.extend(second);
        outline.push(Curve::Line(body.neck.inner_end(), body.neck.outer_end()));
        outline.retain(|curve| curve.chord() > 1e-9 || !matches!(curve, Curve::Line(..)));
        body.plate.outline = outline;
        body
    }

    /// The edges from the jaw's back over the boss to the inside of the rein, and from the
    /// outside of the rein under the boss to the jaw's face.
    pub fn edges(&self) -> [Vec<Curve>; 2] {
        let turned = |curves: Vec<Curve>| curves.into_iter().map(|curve| curve.half_turn());
        let (neck, shoulder, rim) = (&self.neck, &self.shoulder, &self.rim);
        let mut first = neck.outer_edge();
        first.extend(rim.between(neck.outer_foot, shoulder.inner_foot.half_turn()));
        first.extend(turned(shoulder.inner_edge()));
        let mut second: Vec<Curve> = turned(shoulder.outer_edge()).collect();
        second.extend(rim.between(shoulder.outer_foot.half_turn(), neck.inner_foot));
        second.extend(neck.inner_edge());
        [first, second]
    }
}

fn negated(p: Point) -> Point {
    Point::new(-p.x, -p.y)
}
