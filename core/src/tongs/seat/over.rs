//! How far work stands over a straight stretch of an inside.

use kurbo::{Point, Rect};

use crate::number::peak::top;

/// How nearly the highest place is found, mm: the height is exact to the square of this.
const NEAR: f64 = 1e-5;

/// An end of a stretch of the inside, turned with it.
pub(super) struct End {
    pub(super) at: Point,
    pub(super) over: Option<f64>,
}

/// The upper surface of work over x from its middle, `half` mm to each side: nowhere hollow, and
/// highest in its middle.
pub(super) struct Over<F> {
    pub(super) half: f64,
    pub(super) upper: F,
}

impl<F: Fn(f64) -> f64> Over<F> {
    /// The part of a stretch that the work is over: from which x to which, and its height there.
    fn shared(&self, (a, b): (Point, Point)) -> Option<(f64, f64, impl Fn(f64) -> f64 + use<F>)> {
        let (a, b) = if a.x <= b.x { (a, b) } else { (b, a) };
        let (from, to) = (a.x.max(-self.half), b.x.min(self.half));
        let rise = (b.y - a.y) / (b.x - a.x).max(f64::MIN_POSITIVE);
        // On an upright stretch the lower end is the one that can touch.
        let low = a.y.min(b.y);
        let upright = b.x - a.x < 1e-12;
        let height = move |x: f64| if upright { low } else { a.y + rise * (x - a.x) };
        (from <= to).then_some((from, to, height))
    }

    /// An end of a stretch, with how far the work stands over it where it does, mm.
    pub(super) fn end(&self, at: Point) -> End {
        let under = at.x.abs() <= self.half;
        End {
            at,
            over: under.then(|| (self.upper)(at.x) - at.y),
        }
    }

    /// About how far the work stands over a stretch, mm: over a short one at the higher of its ends; a
    /// long one may have its highest place far from both.
    pub(super) fn about_over(&self, a: &End, b: &End) -> Option<f64> {
        /// Longer than this is long, mm.
        const LONG: f64 = 1.0;
        if (a.at.x - b.at.x).abs() > LONG {
            Some(self.highest((a.at, b.at))?.1)
        } else {
            self.over_ends(a, b)
        }
    }

    /// How far the work stands over a stretch at the higher of the ends of what they share, mm.
    pub(super) fn over_ends(&self, a: &End, b: &End) -> Option<f64> {
        if let (Some(p), Some(q)) = (a.over, b.over) {
            return Some(p.max(q));
        }
        if a.at.x.max(b.at.x) < -self.half || a.at.x.min(b.at.x) > self.half {
            return None;
        }
        let (from, to, height) = self.shared((a.at, b.at))?;
        let over = |x: f64| (self.upper)(x) - height(x);
        Some(over(from).max(over(to)))
    }

    /// More than the work stands over anything in a box, mm; `None` where it does not lie over it.
    pub(super) fn bound(&self, inside: Rect) -> Option<f64> {
        /// More than rounding, mm.
        const HAIR: f64 = 1e-9;
        let from = (inside.x0 - HAIR).max(-self.half);
        let to = (inside.x1 + HAIR).min(self.half);
        (from <= to).then(|| (self.upper)(0f64.clamp(from, to)) - inside.y0 + HAIR)
    }

    /// Whether it may be that the work stands so far over a stretch, mm: as it is nowhere hollow, it
    /// lies under its tangents at both ends.
    pub(super) fn may_reach(&self, stretch: (Point, Point), least: f64) -> bool {
        /// A tangent that is taken over [`NEAR`] is off by less than this, mm.
        const OFF: f64 = 1e-3;
        let Some((from, to, height)) = self.shared(stretch) else {
            return false;
        };
        let over = |x: f64| (self.upper)(x) - height(x);
        let under_tangent = |end: f64, inwards: f64| {
            let high = over(end);
            let rise = (over(end + inwards) - high) / NEAR;
            high + rise.max(0.0) * (to - from) + OFF >= least
        };
        under_tangent(from, NEAR) && under_tangent(to, -NEAR)
    }

    /// Where the work stands highest over a stretch, and how far: at an end from which it falls away,
    /// else between them.
    pub(super) fn highest(&self, stretch: (Point, Point)) -> Option<(f64, f64)> {
        let (from, to, height) = self.shared(stretch)?;
        let over = |x: f64| (self.upper)(x) - height(x);
        if to - from > 2.0 * NEAR {
            for (end, beside) in [(to, to - NEAR), (from, from + NEAR)] {
                let high = over(end);
                if over(beside) <= high {
                    return Some((end, high));
                }
            }
        }
        let places = self.places(stretch).into_iter();
        places.max_by(|p, q| p.1.total_cmp(&q.1))
    }

    /// How steep work and stretch touch at a place, as y over x: between its ends as the stretch runs, at
    /// one of them as the work does.
    pub(super) fn slope(&self, (a, b): (Point, Point), x: f64) -> f64 {
        if a.x.min(b.x) < x && x < a.x.max(b.x) {
            return (b.y - a.y) / (b.x - a.x);
        }
        ((self.upper)(x + NEAR) - (self.upper)(x - NEAR)) / (2.0 * NEAR)
    }

    /// Both ends of a stretch and the place between them where the work stands highest, each with
    /// how far it stands over the stretch; none where the work does not lie over it. Work is
    /// nowhere hollow, so there is one such place.
    pub(super) fn places(&self, stretch: (Point, Point)) -> Vec<(f64, f64)> {
        let Some((from, to, height)) = self.shared(stretch) else {
            return Vec::new();
        };
        let over = |x: f64| (self.upper)(x) - height(x);
        let highest = top((from, to), NEAR, over);
        [from, highest, to].map(|x| (x, over(x))).to_vec()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A circle of 5 mm falls 3 in 4 at 3 mm beside its middle (the triangle of 3, 4 and 5); a stretch
    /// that it touches between its ends says its slope itself.
    #[test]
    fn work_touches_an_end_at_its_own_slope() {
        let circle = Over {
            half: 5.0,
            upper: |x: f64| (25.0 - x * x).max(0.0).sqrt(),
        };
        let stretch = (Point::new(3.0, 4.0), Point::new(5.0, 3.0));
        let at_end = circle.slope(stretch, 3.0);
        assert!((at_end + 0.75).abs() < 1e-6, "{at_end}");
        let between = circle.slope(stretch, 4.0);
        assert!((between + 0.5).abs() < 1e-12, "{between}");
    }
}
