//! Where a picture lies on the paper.

use kurbo::{Affine, Point, Vec2};

/// A picture's place, in mm on the paper, y up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Place {
    /// Its middle.
    pub(super) middle: Point,
    /// Its width before it is turned, mm.
    pub(super) width: f64,
    /// Height over width.
    pub(super) tall: f64,
    /// Turned anticlockwise, radians.
    pub(super) turn: f64,
}

/// Two points nearer than this are one, mm.
const ONE: f64 = 0.01;
/// A picture is kept at least and at most so wide, mm: past that something was mistyped.
const WIDTHS: (f64, f64) = (5.0, 50_000.0);

impl Place {
    /// Its corners: of the picture's top left, top right, bottom right and bottom left.
    pub(super) fn corners(&self) -> [Point; 4] {
        let (x, y) = (self.width / 2.0, self.width * self.tall / 2.0);
        let pose = Affine::translate(self.middle.to_vec2()) * Affine::rotate(self.turn);
        [(-x, y), (x, y), (x, -y), (-x, -y)].map(|corner| pose * Point::from(corner))
    }

    /// Moved by so much.
    pub(super) fn moved(self, by: Vec2) -> Self {
        Self {
            middle: self.middle + by,
            ..self
        }
    }

    /// Turned about the first of two points so that both lie level; the shorter way round.
    ///
    /// # Errors
    /// When both are one point.
    pub(super) fn squared(self, [a, b]: [Point; 2]) -> Result<Self, String> {
        use std::f64::consts::{FRAC_PI_2, PI};
        if a.distance(b) < ONE {
            return Err("both points are the same: click two that are far apart".to_owned());
        }
        let tilt = (b - a).atan2();
        let turn = (tilt + FRAC_PI_2).rem_euclid(PI) - FRAC_PI_2;
        Ok(Self {
            middle: Affine::rotate_about(-turn, a) * self.middle,
            turn: self.turn - turn,
            ..self
        })
    }

    /// Scaled about the first of two points so that they are `known` mm apart.
    ///
    /// # Errors
    /// When both are one point, or the picture would be out of all proportion.
    pub(super) fn scaled(self, [a, b]: [Point; 2], known: f64) -> Result<Self, String> {
        if a.distance(b) < ONE {
            return Err("both points are the same: click two that are far apart".to_owned());
        }
        let factor = known / a.distance(b);
        let width = self.width * factor;
        if !(WIDTHS.0..=WIDTHS.1).contains(&width) {
            return Err(format!(
                "the picture would be {width:.0} mm wide: give the distance between the two points"
            ));
        }
        Ok(Self {
            middle: a + (self.middle - a) * factor,
            width,
            ..self
        })
    }

    /// As words that [`Place::read`] reads back.
    pub(super) fn words(&self) -> String {
        let Self {
            middle,
            width,
            tall,
            turn,
        } = self;
        format!("{} {} {width} {tall} {turn}", middle.x, middle.y)
    }

    /// From five numbers.
    pub(super) fn read(words: &str) -> Option<Self> {
        let numbers: Vec<f64> = words
            .split_whitespace()
            .map_while(|word| word.parse().ok())
            .filter(|number: &f64| number.is_finite())
            .collect();
        let [x, y, width, tall, turn] = numbers[..] else {
            return None;
        };
        let sound = (WIDTHS.0..=WIDTHS.1).contains(&width) && (0.001..1000.0).contains(&tall);
        sound.then_some(Self {
            middle: Point::new(x, y),
            width,
            tall,
            turn,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const START: Place = Place {
        middle: Point::new(10.0, -20.0),
        width: 200.0,
        tall: 0.5,
        turn: 0.3,
    };

    /// Where a point of the picture comes to lie when the picture goes from one place to another:
    /// by its corners, which the window draws.
    fn carried(p: Point, from: &Place, to: &Place) -> Point {
        let [a, b, _, d] = from.corners();
        let (u, v) = (b - a, d - a);
        let (s, t) = ((p - a).dot(u) / u.hypot2(), (p - a).dot(v) / v.hypot2());
        let [a, b, _, d] = to.corners();
        a + (b - a) * s + (d - a) * t
    }

    #[test]
    fn scaling_sets_two_points_the_known_distance_apart() {
        let points = [Point::new(-30.0, 5.0), Point::new(40.0, -12.0)];
        let scaled = START.scaled(points, 381.0).unwrap();
        let [a, b] = points.map(|p| carried(p, &START, &scaled));
        assert!((a.distance(b) - 381.0).abs() < 1e-9, "{a:?} {b:?}");
        assert!(a.distance(points[0]) < 1e-9, "the first point stays");
    }

    #[test]
    fn squaring_lays_two_points_level() {
        for (from, to) in [
            ((-30.0, 5.0), (40.0, -12.0)),
            ((40.0, -12.0), (-30.0, 5.0)),
            ((0.0, 0.0), (3.0, 90.0)),
        ] {
            let points = [Point::from(from), Point::from(to)];
            let squared = START.squared(points).unwrap();
            let [a, b] = points.map(|p| carried(p, &START, &squared));
            assert!((a.y - b.y).abs() < 1e-9, "{a:?} {b:?}");
            assert!(a.distance(points[0]) < 1e-9, "the first point stays");
            assert!((squared.turn - START.turn).abs() <= 1.6, "the shorter way");
        }
    }

    #[test]
    fn what_cannot_be_done_is_said() {
        let p = Point::new(1.0, 1.0);
        let far = Point::new(900.0, 1.0);
        assert!(START.squared([p, p]).is_err());
        assert!(START.scaled([p, p], 10.0).is_err());
        assert!(START.scaled([p, far], 0.0).is_err());
        assert!(START.scaled([p, far], 1e9).is_err());
    }

    #[test]
    fn words_read_back() {
        assert_eq!(Place::read(&START.words()), Some(START));
        for bad in ["", "1 2 3 4", "1 2 x 4 5", "NaN 1 100 1 0", "1 1 1e9 1 0"] {
            assert_eq!(Place::read(bad), None, "{bad}");
        }
    }
}
