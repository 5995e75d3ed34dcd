//! The inside of a sweep that goes in part of a circle from one station to the next.

use super::station::{Ease, Station};

/// Part of a circle across the inside, level at one end; of an ellipse where the stations lie too
/// close together for a circle.
#[derive(Debug, Clone, Copy)]
pub(super) struct Arc {
    /// Where it is level, mm along the path, and how far to the left of the path.
    level: (f64, f64),
    /// Half-axes along the path and across it, mm, each with the sign of its way.
    along: f64,
    across: f64,
}

impl Arc {
    /// Between two stations, if the inside goes in an arc there.
    pub(super) fn between(a: &Station, b: &Station) -> Option<Self> {
        let inside = |s: &Station| s.rise - s.depth / 2.0;
        let (level, steep) = match a.ease {
            Ease::Linear | Ease::Smooth | Ease::RoundUp | Ease::RoundDown => return None,
            Ease::ArcUp => (b, a),
            Ease::ArcDown => (a, b),
        };
        let (along, across) = (steep.at - level.at, inside(steep) - inside(level));
        let (long, deep) = (along.abs(), across.abs());
        let circle = deep > 1e-12 && deep < long;
        let radius = (long * long + deep * deep) / (2.0 * deep);
        let axes = if circle {
            (radius, radius)
        } else {
            (long, deep)
        };
        Some(Self {
            level: (level.at, inside(level)),
            along: axes.0.copysign(along),
            across: axes.1.copysign(across),
        })
    }

    /// The angle at a place, from nothing where it is level.
    pub(super) fn angle(&self, s: f64) -> f64 {
        ((s - self.level.0) / self.along).clamp(0.0, 1.0).asin()
    }

    /// The place along the path and to the left of it at an angle.
    pub(super) fn at(&self, angle: f64) -> (f64, f64) {
        (
            self.level.0 + self.along * angle.sin(),
            self.level.1 + self.across * (1.0 - angle.cos()),
        )
    }

    /// How fast both change with the angle.
    pub(super) fn slope(&self, angle: f64) -> (f64, f64) {
        (self.along * angle.cos(), self.across * angle.sin())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn station(at: f64, inside: f64, ease: Ease) -> Station {
        let depth = 20.0 - inside;
        Station {
            at,
            depth,
            width: 10.0,
            rise: inside + depth / 2.0,
            shift: 0.0,
            profile: 0,
            ease,
        }
    }

    /// A chord of 16 mm, 6 mm deep: a circle of radius (8² + 6²) / 12 = 8.333 mm, whose middle
    /// lies 2.333 mm under the chord.
    #[test]
    fn every_point_is_as_far_from_the_middle() {
        let (lip, bottom) = (
            station(2.0, 0.0, Ease::ArcUp),
            station(10.0, 6.0, Ease::ArcDown),
        );
        let other = station(18.0, 0.0, Ease::Linear);
        for (a, b) in [(lip, bottom), (bottom, other)] {
            let arc = Arc::between(&a, &b).expect("it goes in an arc");
            for i in 0..=10 {
                let s = a.at + (b.at - a.at) * f64::from(i) / 10.0;
                let (along, inside) = arc.at(arc.angle(s));
                assert!((along - s).abs() < 1e-9, "{along} {s}");
                let far = (s - 10.0).hypot(inside + 7.0 / 3.0);
                assert!((far - 25.0 / 3.0).abs() < 1e-9, "{far} at {s}");
            }
        }
    }
}
