use kurbo::{Point, Vec2};

use crate::shape::curve::Curve;

/// The outline of a boss: a point, a line or a diamond, grown all round by a radius.
#[derive(Debug, Clone, PartialEq)]
pub struct Rim {
    /// The corners of the core, anticlockwise.
    pub core: Vec<Point>,
    /// The radius grown, mm.
    pub radius: f64,
}

/// A place on a rim.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Foot {
    /// The point of the core that is nearest.
    pub core: Point,
    /// The direction outwards, radians.
    pub angle: f64,
}

impl Foot {
    /// The place turned half round about the rivet.
    pub fn half_turn(self) -> Self {
        Self {
            core: Point::new(-self.core.x, -self.core.y),
            angle: self.angle + std::f64::consts::PI,
        }
    }
}

impl Rim {
    /// A disc.
    pub fn round(radius: f64) -> Self {
        Self {
            core: vec![Point::ORIGIN],
            radius,
        }
    }

    /// A disc drawn out, along or across the tongs, whichever is longer.
    pub fn oval(along: f64, across: f64) -> Self {
        let radius = along.min(across) / 2.0;
        let out = Vec2::new(along / 2.0 - radius, across / 2.0 - radius);
        if out.hypot() < 1e-6 {
            return Self::round(radius);
        }
        Self {
            core: vec![out.to_point(), (-out).to_point()],
            radius,
        }
    }

    /// A diamond whose corners are rounded to a fifth of its smaller size.
    pub fn lozenge(along: f64, across: f64) -> Self {
        let radius = along.min(across) / 5.0;
        let (x, y) = (along / 2.0 - radius, across / 2.0 - radius);
        let core = vec![
            Point::new(x, 0.0),
            Point::new(0.0, y),
            Point::new(-x, 0.0),
            Point::new(0.0, -y),
        ];
        Self { core, radius }
    }

    /// Half its size along the tongs, mm.
    pub fn half_along(&self) -> f64 {
        self.core.iter().map(|p| p.x).fold(0.0, f64::max) + self.radius
    }

    /// Half its size across the tongs, mm.
    pub fn half_across(&self) -> f64 {
        self.core.iter().map(|p| p.y).fold(0.0, f64::max) + self.radius
    }

    /// The farthest that it reaches from the rivet, mm.
    pub fn reach(&self) -> f64 {
        self.core
            .iter()
            .map(|p| p.to_vec2().hypot())
            .fold(0.0, f64::max)
            + self.radius
    }

    /// From the rivet to the nearest point of the rim, mm.
    pub fn nearest(&self) -> f64 {
        let core = self.nearest_core(Point::ORIGIN);
        self.radius + core.to_vec2().hypot()
    }

    /// Distance of a point from the core, mm; nothing inside it.
    pub fn from_core(&self, p: Point) -> f64 {
        if let [only] = self.core[..] {
            p.distance(only)
        } else if self.inside_core(p) {
            0.0
        } else {
            p.distance(self.nearest_core(p))
        }
    }

    /// The place on the rim nearest to a point outside the core.
    pub fn foot(&self, p: Point) -> Foot {
        let core = self.nearest_core(p);
        let out = p - core;
        let angle = if out.hypot() > 1e-12 {
            out.atan2()
        } else {
            std::f64::consts::FRAC_PI_2
        };
        Foot { core, angle }
    }

    /// The point at a foot.
    pub fn point(&self, foot: Foot) -> Point {
        foot.core + Vec2::from_angle(foot.angle) * self.radius
    }

    fn sides(&self) -> impl Iterator<Item = (Point, Point)> {
        let n = self.core.len();
        (0..n).map(move |i| (self.core[i], self.core[(i + 1) % n]))
    }

    fn inside_core(&self, p: Point) -> bool {
        self.core.len() > 2 && self.sides().all(|(a, b)| (b - a).cross(p - a) > 0.0)
    }

    fn nearest_core(&self, p: Point) -> Point {
        let on = |(a, b): (Point, Point)| {
            let side = b - a;
            let t = if side.hypot2() > 0.0 {
                (p - a).dot(side) / side.hypot2()
            } else {
                0.0
            };
            a + side * t.clamp(0.0, 1.0)
        };
        let nearest = self
            .sides()
            .map(on)
            .min_by(|a, b| a.distance(p).total_cmp(&b.distance(p)));
        nearest.unwrap_or(Point::ORIGIN)
    }

    /// The rim from one place anticlockwise to another, as arcs and lines. Places that have passed
    /// each other, as neck and shoulder do on a boss too small for them, are joined straight.
    pub fn between(&self, from: Foot, to: Foot) -> Vec<Curve> {
        const FULL: f64 = std::f64::consts::TAU;
        /// Directions nearer than this are one, radians.
        const SAME: f64 = 1e-9;
        let ahead = |angle: f64, of: f64| (angle - of).rem_euclid(FULL);
        let goal = ahead(to.angle, from.angle);
        // What lies between neck and shoulder is never as much as three quarters of a rim.
        if !(SAME..=0.75 * FULL).contains(&goal) {
            return self.straight_between(from, to);
        }
        let mut sides: Vec<(f64, Point, Point)> = self
            .sides()
            .filter(|(a, b)| a.distance(*b) > 1e-9)
            .map(|(a, b)| (ahead((b - a).atan2() - FULL / 4.0, from.angle), a, b))
            .map(|(turn, a, b)| (if FULL - turn < SAME { 0.0 } else { turn }, a, b))
            .map(|(turn, a, b)| (if turn < SAME { 0.0 } else { turn }, a, b))
            .collect();
        sides.sort_by(|a, b| a.0.total_cmp(&b.0));
        let (mut at, mut turned, mut curves) = (from.core, 0.0, Vec::new());
        let arc = |core: Point, start: f64, turn: f64| Curve::Arc {
            centre: core,
            radius: self.radius,
            from: from.angle + start,
            turn,
        };
        let line = |a: Point, b: Point, turn: f64| {
            let out = Vec2::from_angle(from.angle + turn) * self.radius;
            Curve::Line(a + out, b + out)
        };
        for (turn, a, b) in sides {
            if turn > goal + SAME || (turn == 0.0 && at.distance(b) < 1e-9) {
                continue;
            }
            if turn > turned {
                curves.push(arc(at, turned, turn - turned));
                at = a;
                turned = turn;
            }
            // The last side may be left before its end.
            let last = (turn - goal).abs() < SAME;
            let end = if last { to.core } else { b };
            if at.distance(end) > 1e-9 {
                curves.push(line(at, end, turn));
            }
            at = end;
        }
        if goal - turned > 1e-12 {
            curves.push(arc(at, turned, goal - turned));
        }
        curves
    }

    fn straight_between(&self, from: Foot, to: Foot) -> Vec<Curve> {
        let (a, b) = (self.point(from), self.point(to));
        if a.distance(b) > 1e-9 {
            vec![Curve::Line(a, b)]
        } else {
            Vec::new()
        }
    }
}
