//! An inside under work: where the work may touch it, before it is looked at closely.

use kurbo::{Point, Rect, Vec2};

use super::over::Over;

/// Stretches that are looked at together, to see that none of them is where work touches.
const ROW: usize = 8;

/// The points of an inside, turned and moved under work.
pub(super) struct Under<'a, F> {
    pub(super) points: &'a [Point],
    /// Their [`boxes`].
    pub(super) boxes: &'a [Rect],
    /// Sine and cosine of the turn.
    pub(super) turn: (f64, f64),
    /// How far it is moved when it is turned.
    pub(super) by: Vec2,
    pub(super) work: Over<F>,
}

/// The boxes around the stretches between points, [`ROW`] by [`ROW`].
pub(super) fn boxes(points: &[Point]) -> Vec<Rect> {
    let rows = (0..points.len().saturating_sub(1)).step_by(ROW);
    let around = |from: usize| {
        let row = &points[from..points.len().min(from + ROW + 1)];
        let boxes = row.iter().map(|&p| Rect::from_points(p, p));
        boxes.reduce(|a, b| a.union(b)).unwrap_or(Rect::ZERO)
    };
    rows.map(around).collect()
}

impl<F: Fn(f64) -> f64> Under<'_, F> {
    fn placed(&self, p: Point) -> Point {
        let (sin, cos) = self.turn;
        Point::new(p.x * cos - p.y * sin, p.x * sin + p.y * cos) + self.by
    }

    /// What is around a box when it is turned.
    fn placed_box(&self, around: Rect) -> Rect {
        let (sin, cos) = (self.turn.0.abs(), self.turn.1.abs());
        let (wide, high) = (around.width(), around.height());
        let size = (wide * cos + high * sin, wide * sin + high * cos);
        Rect::from_center_size(self.placed(around.center()), size)
    }

    /// A stretch by its ends.
    pub(super) fn stretch(&self, index: usize) -> (Point, Point) {
        let ends = [index, index + 1].map(|point| self.placed(self.points[point]));
        (ends[0], ends[1])
    }

    /// The stretch over which the work stands highest, and the place there: how far it is beside
    /// the middle, and how far the work stands over it.
    pub(super) fn highest(&self) -> Option<(usize, (f64, f64))> {
        let near = self.about_highest()?;
        let mut best = (near, self.work.highest(self.stretch(near))?);
        // Between its ends the truly highest place is in this stretch or in one beside it.
        let last = self.points.len() - 2;
        let beside = [near.checked_sub(1), Some(near + 1).filter(|it| *it <= last)];
        for beside in beside.into_iter().flatten() {
            let stretch = self.stretch(beside);
            let higher = |place: &(f64, f64)| (place.1, beside) > (best.1.1, best.0);
            if let Some(place) = self.work.highest(stretch).filter(higher) {
                best = (beside, place);
            }
        }
        Some(best)
    }

    /// The stretch with the end over which the work stands highest.
    fn about_highest(&self) -> Option<usize> {
        let mut best: Option<(usize, f64)> = None;
        for (row, around) in self.boxes.iter().enumerate() {
            let bound = self.work.bound(self.placed_box(*around));
            if bound.is_none_or(|bound| best.is_some_and(|(_, most)| bound <= most)) {
                continue;
            }
            for (stretch, over) in self.row(row) {
                if best.is_none_or(|(_, most)| over > most) {
                    best = Some((stretch, over));
                }
            }
        }
        best.map(|(stretch, _)| stretch)
    }

    /// The stretches of a row, with about how far the work stands over each that lies under it.
    fn row(&self, row: usize) -> impl Iterator<Item = (usize, f64)> {
        let (from, to) = (row * ROW, self.points.len().min(row * ROW + ROW + 1));
        let mut last = self.work.end(self.placed(self.points[from]));
        (from..to - 1).filter_map(move |stretch| {
            let next = self.work.end(self.placed(self.points[stretch + 1]));
            let over = self.work.about_over(&last, &next);
            last = next;
            over.map(|over| (stretch, over))
        })
    }

    /// The places of all stretches over which the work may stand within `near` mm of the most: how
    /// far they are beside the middle, and how far the work stands over each.
    pub(super) fn places(&self, near: f64) -> Vec<(f64, f64)> {
        let Some((_, (_, most))) = self.highest() else {
            return Vec::new();
        };
        let least = most - near;
        let reaches = |row: &usize| {
            let bound = self.work.bound(self.placed_box(self.boxes[*row]));
            bound.is_some_and(|bound| bound >= least)
        };
        let rows = (0..self.boxes.len()).filter(reaches);
        let last = self.points.len() - 1;
        let stretches = rows.flat_map(|row| row * ROW..last.min(row * ROW + ROW));
        let high = stretches.map(|index| self.stretch(index));
        let high = high.filter(|&stretch| self.work.may_reach(stretch, least));
        high.flat_map(|stretch| self.work.places(stretch)).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A hollow of 10 mm radius over its middle, in steps of one degree.
    fn hollow() -> Vec<Point> {
        let at = |degrees: i32| {
            let (sin, cos) = f64::from(degrees).to_radians().sin_cos();
            Point::new(10.0 * sin, 10.0 * cos)
        };
        (-80..=80).map(at).collect()
    }

    /// A circle inside of a larger one about the same place is nearest to it where it is moved to, by
    /// the difference of their radii less the way (school geometry). Chords of one degree stray from the
    /// hollow by 0.4 µm.
    #[track_caller]
    fn check(radius: f64, (x, y): (f64, f64), expected: f64) {
        let (points, moved) = (hollow(), Vec2::new(-x, -y));
        let under = Under {
            points: &points,
            boxes: &boxes(&points),
            turn: (0.0, 1.0),
            by: moved,
            work: Over {
                half: radius,
                upper: |x: f64| (radius * radius - x * x).max(0.0).sqrt(),
            },
        };
        let (_, (_, over)) = under.highest().expect("it lies under the hollow");
        assert!((over - expected).abs() < 1e-3, "{over}, not {expected}");
        let places = under.places(0.01).into_iter().map(|(_, over)| over);
        let most = places.fold(f64::MIN, f64::max);
        assert!(
            (most - over).abs() < 1e-9,
            "{most} among places, not {over}"
        );
    }

    #[test]
    fn a_round_bar_stands_highest_where_the_hollow_is_nearest() {
        check(6.0, (0.0, 0.0), -4.0);
        check(6.0, (0.0, 1.5), -2.5);
        check(9.9, (0.0, 0.1), 0.0);
    }
}
