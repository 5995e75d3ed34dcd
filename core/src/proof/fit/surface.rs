//! The two surfaces that meet in a grip, as lines and arcs over z in mm, and how near they come.

use crate::number::peak::highest;
use crate::shape::section::{Piece, Profile, Section};

/// A smooth stretch of a surface over z.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Shape {
    Line {
        at: f64,
        slope: f64,
    },
    /// Upper part of an ellipse; a negative height is the lower part.
    Arc {
        middle: (f64, f64),
        half: f64,
        height: f64,
    },
}

impl Shape {
    /// A piece of a unit profile in a box of so many mm.
    fn of(piece: &Piece, depth: f64, width: f64) -> (f64, f64, Self) {
        let (z, y) = (width / 2.0, depth / 2.0);
        match *piece {
            Piece::Line { from, to } => {
                let slope = (to.1 - from.1) * y / ((to.0 - from.0) * z);
                let at = from.1 * y - slope * from.0 * z;
                (from.0 * z, to.0 * z, Self::Line { at, slope })
            }
            Piece::Arc {
                from,
                to,
                centre,
                half,
            } => {
                let arc = Self::Arc {
                    middle: (centre.0 * z, centre.1 * y),
                    half: half.0 * z,
                    height: half.1 * y,
                };
                (from * z, to * z, arc)
            }
        }
    }

    fn at(&self, z: f64) -> f64 {
        match *self {
            Self::Line { at, slope } => at + slope * z,
            Self::Arc {
                middle,
                half,
                height,
            } => {
                let t = (z - middle.0) / half;
                middle.1 + height * (1.0 - t * t).max(0.0).sqrt()
            }
        }
    }

    /// Where the shape has a slope, if it is curved.
    fn where_sloped(&self, slope: f64) -> Option<f64> {
        match *self {
            Self::Line { .. } => None,
            Self::Arc {
                middle,
                half,
                height,
            } => {
                let across = slope * half;
                Some(middle.0 - half * across / height.signum() / height.hypot(across))
            }
        }
    }

    /// Where two arcs about one middle, the second's heights `times` as great, may run alike: the
    /// middle and a place on either side; `None` for other shapes.
    ///
    /// With a = height / half² the slopes are equal where u² (a² / half₂² − b² / half₁²) = a² − b².
    fn where_alike(&self, other: &Self, times: f64) -> Option<[f64; 3]> {
        let (
            Self::Arc {
                middle,
                half: p,
                height: h,
            },
            Self::Arc {
                middle: same,
                half: q,
                height: k,
            },
        ) = (*self, *other)
        else {
            return None;
        };
        if (middle.0 - same.0).abs() > LEAST {
            return None;
        }
        let (a, b) = ((h / (p * p)).powi(2), (times * k / (q * q)).powi(2));
        let square = (a - b) / (a / (q * q) - b / (p * p));
        let u = if square > 0.0 { square.sqrt() } else { 0.0 };
        let u = if u.is_finite() { u } else { 0.0 };
        Some([middle.0 - u, middle.0, middle.0 + u])
    }

    fn slope(&self) -> Option<f64> {
        match *self {
            Self::Line { slope, .. } => Some(slope),
            Self::Arc { .. } => None,
        }
    }
}

/// A stretch of surface; between two profiles it is a mixture of two shapes.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Stretch {
    from: f64,
    to: f64,
    first: Shape,
    second: Shape,
    blend: f64,
}

impl Stretch {
    fn at(&self, z: f64) -> f64 {
        if self.blend == 0.0 {
            return self.first.at(z);
        }
        self.first.at(z) * (1.0 - self.blend) + self.second.at(z) * self.blend
    }

    fn slope(&self) -> Option<f64> {
        let (a, b) = (self.first.slope()?, self.second.slope()?);
        Some(a * (1.0 - self.blend) + b * self.blend)
    }

    /// Its one shape, when it is no mixture.
    fn pure(&self) -> Option<&Shape> {
        (self.blend == 0.0).then_some(&self.first)
    }
}

/// A surface over z.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Surface {
    stretches: Vec<Stretch>,
    /// Half its width, mm.
    half: f64,
}

/// Stretches shorter than this are left out, mm.
const LEAST: f64 = 1e-9;

impl Surface {
    /// The outer surface of a section of one profile.
    pub(super) fn upper(profile: &Profile, depth: f64, width: f64) -> Self {
        let stretches = profile.upper_pieces().iter().map(|piece| {
            let (from, to, shape) = Shape::of(piece, depth, width);
            Stretch {
                from,
                to,
                first: shape,
                second: shape,
                blend: 0.0,
            }
        });
        Self {
            stretches: stretches.collect(),
            half: width / 2.0,
        }
    }

    /// The inner surface of a section.
    pub(super) fn lower(section: &Section<'_>) -> Self {
        let shapes = |profile: &Profile| -> Vec<(f64, f64, Shape)> {
            let pieces = profile.lower_pieces().iter();
            pieces
                .map(|piece| Shape::of(piece, section.depth, section.width))
                .collect()
        };
        let first = shapes(section.from);
        let pure = section.blend == 0.0 || std::ptr::eq(section.from, section.to);
        let blend = if pure { 0.0 } else { section.blend };
        let second = if pure {
            first.clone()
        } else {
            shapes(section.to)
        };
        let mut stretches = Vec::with_capacity(first.len());
        for &(a, b, shape) in &first {
            for &(c, d, other) in &second {
                let (from, to) = (a.max(c), b.min(d));
                if to - from > LEAST {
                    stretches.push(Stretch {
                        from,
                        to,
                        first: shape,
                        second: if pure { shape } else { other },
                        blend,
                    });
                }
            }
        }
        Self {
            stretches,
            half: section.width / 2.0,
        }
    }

    /// The surface at z, its nearest end outside.
    pub(super) fn at(&self, z: f64) -> f64 {
        let stretch = self.stretches.iter().find(|stretch| z <= stretch.to);
        let stretch = stretch.or(self.stretches.last());
        stretch.map_or(0.0, |s| s.at(z.clamp(s.from, s.to)))
    }

    /// Half its width, mm.
    pub(super) fn half(&self) -> f64 {
        self.half
    }

    /// Whether it lies at one height all across.
    pub(super) fn is_level_at(&self, y: f64) -> bool {
        let flat = |s: &Stretch| s.slope() == Some(0.0) && (s.at(s.from) - y).abs() < LEAST;
        self.stretches.iter().all(flat)
    }

    /// Whether another surface is the same to a millionth of a mm, wherever its pieces part.
    pub(super) fn is_like(&self, other: &Self, higher: f64) -> bool {
        const NEAR: f64 = 1e-6;
        const PLACES: u32 = 24;
        (self.half - other.half).abs() < NEAR
            && (0..PLACES).all(|i| {
                let z = self.half * (f64::from(2 * i + 1) / f64::from(PLACES) - 1.0);
                (self.at(z) + higher - other.at(z)).abs() < NEAR
            })
    }
}

/// Height of a jaw's surface over the middle of the work at which it rests on the work, and the z
/// at which it touches. The jaw's surface counts `rise` higher, and all its heights `tilt` times.
pub(super) fn rest_on(work: &Surface, jaw: &Surface, rise: f64, tilt: f64) -> (f64, f64) {
    let half = work.half.min(jaw.half);
    let mut best = (f64::MIN, 0.0);
    for w in &work.stretches {
        for j in &jaw.stretches {
            let from = w.from.max(j.from).max(-half);
            let to = w.to.min(j.to).min(half);
            if to - from > LEAST {
                best = nearest(w, j, (rise, tilt), (from, to), best);
            }
        }
    }
    best
}

/// The higher of `best` and the highest that work stands over jaw on one stretch.
fn nearest(
    work: &Stretch,
    jaw: &Stretch,
    (rise, tilt): (f64, f64),
    (from, to): (f64, f64),
    best: (f64, f64),
) -> (f64, f64) {
    let over = |z: f64| work.at(z) - tilt * (rise + jaw.at(z));
    let higher = |best: (f64, f64), z: f64| {
        let height = over(z);
        if height > best.0 { (height, z) } else { best }
    };
    let best = higher(higher(best, from), to);
    let alike = jaw.pure().and_then(|arc| work.first.where_alike(arc, tilt));
    if let Some(places) = alike {
        return places
            .into_iter()
            .fold(best, |best, z| higher(best, z.clamp(from, to)));
    }
    let touch = match (work.slope(), jaw.slope()) {
        (Some(_), Some(_)) => return best,
        (None, Some(slope)) => work.first.where_sloped(tilt * slope),
        (Some(slope), None) => jaw.pure().and_then(|arc| arc.where_sloped(slope / tilt)),
        (None, None) => None,
    };
    let touch = touch.map(|z| z.clamp(from, to));
    higher(best, touch.unwrap_or_else(|| hump(&over, (from, to))))
}

/// The top of the highest hump: samples, then golden sections about the best one. The height is
/// exact to the square of the place's error.
fn hump(f: &impl Fn(f64) -> f64, (from, to): (f64, f64)) -> f64 {
    const SAMPLES: u32 = 6;
    /// Of the stretch: fourteen golden sections of what lies about the best sample.
    const NEAR: f64 = 1.0 / 2500.0;
    highest((from, to), SAMPLES, NEAR * (to - from), f)
}
