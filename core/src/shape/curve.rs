use kurbo::{BezPath, CubicBez, ParamCurve, ParamCurveDeriv, Point, Vec2};

/// A piece of outline with parameter 0 to 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Curve {
    /// From a point to a point.
    Line(Point, Point),
    /// Part of a circle.
    Arc {
        /// Its centre.
        centre: Point,
        /// Its radius, mm.
        radius: f64,
        /// Angle at the start, radians.
        from: f64,
        /// Turned so far, anticlockwise positive.
        turn: f64,
    },
    /// A cubic.
    Cubic(CubicBez),
}

impl Curve {
    /// The point at parameter `t`.
    pub fn at(&self, t: f64) -> Point {
        match *self {
            Self::Line(a, b) => a.lerp(b, t),
            Self::Arc {
                centre,
                radius,
                from,
                turn,
            } => centre + Vec2::from_angle(from + turn * t) * radius,
            Self::Cubic(cubic) => cubic.eval(t),
        }
    }

    /// The derivative by `t`.
    pub fn slope(&self, t: f64) -> Vec2 {
        match *self {
            Self::Line(a, b) => b - a,
            Self::Arc {
                radius, from, turn, ..
            } => Vec2::from_angle(from + turn * t).turn_90() * (radius * turn),
            Self::Cubic(cubic) => cubic.deriv().eval(t).to_vec2(),
        }
    }

    /// Where it starts.
    pub fn start(&self) -> Point {
        self.at(0.0)
    }

    /// Where it ends.
    pub fn end(&self) -> Point {
        self.at(1.0)
    }

    /// From start to end, straight, mm.
    pub fn chord(&self) -> f64 {
        self.start().distance(self.end())
    }

    /// The same piece the other way round.
    pub fn reversed(&self) -> Self {
        match *self {
            Self::Line(a, b) => Self::Line(b, a),
            Self::Arc {
                centre,
                radius,
                from,
                turn,
            } => Self::Arc {
                centre,
                radius,
                from: from + turn,
                turn: -turn,
            },
            Self::Cubic(c) => Self::Cubic(CubicBez::new(c.p3, c.p2, c.p1, c.p0)),
        }
    }

    /// The same piece turned half round about the rivet.
    pub fn half_turn(&self) -> Self {
        let turn_point = |p: Point| Point::new(-p.x, -p.y);
        match *self {
            Self::Line(a, b) => Self::Line(turn_point(a), turn_point(b)),
            Self::Arc {
                centre,
                radius,
                from,
                turn,
            } => Self::Arc {
                centre: turn_point(centre),
                radius,
                from: from + std::f64::consts::PI,
                turn,
            },
            Self::Cubic(c) => Self::Cubic(CubicBez::new(
                turn_point(c.p0),
                turn_point(c.p1),
                turn_point(c.p2),
                turn_point(c.p3),
            )),
        }
    }

    /// The part from parameter `a` to `b`.
    pub fn part(&self, a: f64, b: f64) -> Self {
        match *self {
            Self::Line(p, q) => Self::Line(p.lerp(q, a), p.lerp(q, b)),
            Self::Arc {
                centre,
                radius,
                from,
                turn,
            } => Self::Arc {
                centre,
                radius,
                from: from + turn * a,
                turn: turn * (b - a),
            },
            Self::Cubic(c) => Self::Cubic(c.subsegment(a..b)),
        }
    }

    /// Adds it to a path that stands at its start.
    pub fn add_to(&self, path: &mut BezPath) {
        /// How far a drawn arc may stray from the circle, mm.
        const STRAY: f64 = 1e-3;
        match *self {
            Self::Line(_, b) => path.line_to(b),
            Self::Arc {
                centre,
                radius,
                from,
                turn,
            } => {
                let arc = kurbo::Arc::new(centre, (radius, radius), from, turn, 0.0);
                for el in arc.append_iter(STRAY) {
                    path.push(el);
                }
            }
            Self::Cubic(c) => path.curve_to(c.p1, c.p2, c.p3),
        }
    }

    /// Whether all of it lies to one side of an upright line, which its control points show.
    pub(crate) fn is_beside(&self, x: f64) -> bool {
        let ends = match *self {
            Self::Line(a, b) => [a.x, b.x, a.x, b.x],
            Self::Arc { centre, radius, .. } => {
                let (from, to) = (centre.x - radius, centre.x + radius);
                [from, to, from, to]
            }
            Self::Cubic(c) => [c.p0.x, c.p1.x, c.p2.x, c.p3.x],
        };
        ends.iter().all(|end| *end < x) || ends.iter().all(|end| *end > x)
    }

    /// Parameter ranges that together make the piece, cut wherever x is one of `xs`, short
    /// enough that an 8-point rule is exact to nine digits on each.
    pub fn split_at(&self, xs: &[f64]) -> Vec<(f64, f64)> {
        let parts = match self {
            Self::Line(..) => 1,
            Self::Arc { turn, .. } => 2 + usize::from(turn.abs() > 1.0) * 4,
            Self::Cubic(_) => 4,
        };
        let mut ts: Vec<f64> = (0..=parts).map(|i| i as f64 / parts as f64).collect();
        // Between upright tangents x only rises or only falls, so no crossing is missed.
        ts.extend(self.upright());
        ts.sort_by(f64::total_cmp);
        for pair in ts.clone().windows(2) {
            ts.extend(xs.iter().filter_map(|&x| self.cross(x, pair[0], pair[1])));
        }
        ts.sort_by(f64::total_cmp);
        ts.windows(2)
            .filter(|w| w[1] - w[0] > 1e-12)
            .map(|w| (w[0], w[1]))
            .collect()
    }

    /// Parameters inside the piece at which its tangent stands upright.
    fn upright(&self) -> Vec<f64> {
        let mut ts = match *self {
            Self::Line(..) => Vec::new(),
            Self::Arc { from, turn, .. } => upright_of_arc(from, turn),
            Self::Cubic(c) => {
                let [a, b, d] = [c.p1.x - c.p0.x, c.p2.x - c.p1.x, c.p3.x - c.p2.x];
                kurbo::common::solve_quadratic(a, 2.0 * (b - a), a - 2.0 * b + d).to_vec()
            }
        };
        ts.retain(|t| (0.0..1.0).contains(t));
        ts
    }

    /// Where x passes `x` between two parameters, if it does.
    fn cross(&self, x: f64, a: f64, b: f64) -> Option<f64> {
        let (from, to) = (self.at(a).x - x, self.at(b).x - x);
        if from * to >= 0.0 {
            return None;
        }
        if let Self::Line(..) = self {
            return Some(a + (b - a) * from / (from - to));
        }
        let up = to.signum();
        let side = |t: f64| up * (self.at(t).x - x);
        // The middle of the range, then as near as numbers go.
        let root =
            kurbo::common::solve_itp(side, a, b, 1e-15, 1, 0.2 / (b - a), up * from, up * to);
        Some(root)
    }
}

/// Parameters at which an arc passes an angle of nothing or of half a turn.
fn upright_of_arc(from: f64, turn: f64) -> Vec<f64> {
    use std::f64::consts::PI;
    let (low, high) = (from.min(from + turn), from.max(from + turn));
    let first = (low / PI).ceil();
    let angles = (0..3).map(|i| (first + f64::from(i)) * PI);
    let inside = angles.filter(|&angle| angle < high && turn != 0.0);
    inside.map(|angle| (angle - from) / turn).collect()
}
