use serde::{Deserialize, Serialize};

use super::properties::Moments;

/// A piece of a surface over u: a straight line or an arc of an ellipse.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Piece {
    /// From (u, v) to (u, v), u ascending.
    Line {
        /// Where it begins.
        from: (f64, f64),
        /// Where it ends.
        to: (f64, f64),
    },
    /// The upper or lower part of an ellipse with upright axes.
    Arc {
        /// From this u.
        from: f64,
        /// To this u.
        to: f64,
        /// Centre (u, v).
        centre: (f64, f64),
        /// Half-axes along u and v; a negative second one is the lower part.
        half: (f64, f64),
    },
}

impl Piece {
    /// A straight piece.
    pub fn line(from: (f64, f64), to: (f64, f64)) -> Self {
        Self::Line { from, to }
    }

    /// The upper part of a circle of radius `r` about `centre`, over u from `from` to `to`.
    pub fn arc(from: f64, to: f64, centre: (f64, f64), r: f64) -> Self {
        Self::Arc {
            from,
            to,
            centre,
            half: (r, r),
        }
    }

    pub(crate) fn span(&self) -> (f64, f64) {
        match *self {
            Self::Line { from, to } => (from.0, to.0),
            Self::Arc { from, to, .. } => (from, to),
        }
    }

    pub(crate) fn at(&self, u: f64) -> f64 {
        match *self {
            Self::Line { from, to } if to.0 > from.0 => {
                from.1 + (to.1 - from.1) * (u - from.0) / (to.0 - from.0)
            }
            Self::Line { from, .. } => from.1,
            Self::Arc { centre, half, .. } => {
                let across = (u - centre.0) / half.0;
                centre.1 + half.1 * (1.0 - across * across).max(0.0).sqrt()
            }
        }
    }

    /// `∫ v du` over the piece, in closed form.
    fn integral(&self) -> f64 {
        match *self {
            Self::Line { from, to } => (to.0 - from.0) * f64::midpoint(from.1, to.1),
            Self::Arc {
                from,
                to,
                centre,
                half,
            } => {
                // ∫ sqrt(1 − x²) dx = (x sqrt(1 − x²) + asin x) / 2.
                let whole = |u: f64| {
                    let x = ((u - centre.0) / half.0).clamp(-1.0, 1.0);
                    (x * (1.0 - x * x).sqrt() + x.asin()) / 2.0
                };
                (to - from) * centre.1 + half.0 * half.1 * (whole(to) - whole(from))
            }
        }
    }

    pub(crate) fn scaled(&self, (su, sv): (f64, f64), (du, dv): (f64, f64)) -> Self {
        let map = |(u, v): (f64, f64)| ((u - du) / su, (v - dv) / sv);
        match *self {
            Self::Line { from, to } => Self::Line {
                from: map(from),
                to: map(to),
            },
            Self::Arc {
                from,
                to,
                centre,
                half,
            } => Self::Arc {
                from: (from - du) / su,
                to: (to - du) / su,
                centre: map(centre),
                half: (half.0 / su, half.1 / sv),
            },
        }
    }
}

/// How near to the bottom of the unit box a lip lies: drawn in mm and scaled, it is off by rounding.
const LIP: f64 = 1e-9;

/// A shape in a box of half-sizes one, given by its outer and inner surface over u.
#[derive(Debug, Clone, PartialEq)]
pub struct Profile {
    upper: Vec<Piece>,
    lower: Vec<Piece>,
    moments: Moments,
    /// Whether the lower surface is the upper one turned over.
    even: bool,
}

/// A profile with the box it was drawn in, mm.
#[derive(Debug, Clone, PartialEq)]
pub struct Boxed {
    /// The shape.
    pub profile: Profile,
    /// Size of the box in v, mm.
    pub depth: f64,
    /// Size of the box in u, mm.
    pub width: f64,
    /// The bottom of the box in the v that it was drawn in, mm.
    pub bottom: f64,
}

impl Profile {
    /// The full box.
    pub fn rectangle() -> Self {
        Self::symmetric(vec![Piece::line((-1.0, 1.0), (1.0, 1.0))])
    }

    /// A box with corners cut off: `a` along u and `b` along v, as parts of the half-sizes.
    pub fn chamfered(a: f64, b: f64) -> Self {
        let (a, b) = (a.clamp(0.0, 1.0), b.clamp(0.0, 1.0));
        Self::symmetric(vec![
            Piece::line((-1.0, 1.0 - b), (a - 1.0, 1.0)),
            Piece::line((a - 1.0, 1.0), (1.0 - a, 1.0)),
            Piece::line((1.0 - a, 1.0), (1.0, 1.0 - b)),
        ])
    }

    /// A box with rounded corners: `a` along u and `b` along v, as parts of the half-sizes.
    /// With both one it is an ellipse.
    pub fn rounded(a: f64, b: f64) -> Self {
        let (a, b) = (a.clamp(0.0, 1.0), b.clamp(0.0, 1.0));
        if a * b == 0.0 {
            return Self::rectangle();
        }
        let corner = |from: f64, to: f64, u: f64| Piece::Arc {
            from,
            to,
            centre: (u, 1.0 - b),
            half: (a, b),
        };
        Self::symmetric(vec![
            corner(-1.0, a - 1.0, a - 1.0),
            Piece::line((a - 1.0, 1.0), (1.0 - a, 1.0)),
            corner(1.0 - a, 1.0, 1.0 - a),
        ])
    }

    /// A regular octagon with a corner up and a corner to each side.
    pub fn octagon_on_corners() -> Self {
        let side = std::f64::consts::FRAC_1_SQRT_2;
        let corners = [
            (-1.0, 0.0),
            (-side, side),
            (0.0, 1.0),
            (side, side),
            (1.0, 0.0),
        ];
        Self::symmetric(
            corners
                .windows(2)
                .map(|w| Piece::line(w[0], w[1]))
                .collect(),
        )
    }

    /// Half an ellipse, flat side down.
    pub fn half_round() -> Self {
        let top = Piece::Arc {
            from: -1.0,
            to: 1.0,
            centre: (0.0, -1.0),
            half: (1.0, 2.0),
        };
        Self::new(vec![top], vec![Piece::line((-1.0, -1.0), (1.0, -1.0))])
    }

    /// A shape drawn in mm by its two surfaces, with the box around it.
    pub fn boxed(upper: &[Piece], lower: &[Piece]) -> Boxed {
        let ends = |pieces: &[Piece]| {
            let spans = pieces.iter().map(Piece::span);
            spans.fold((f64::MAX, f64::MIN), |(a, b), (from, to)| {
                (a.min(from), b.max(to))
            })
        };
        let (left, right) = ends(upper);
        let top = upper.iter().map(highest).fold(f64::MIN, f64::max);
        let bottom = lower.iter().map(lowest).fold(f64::MAX, f64::min);
        let scale = (
            ((right - left) / 2.0).max(1e-9),
            ((top - bottom) / 2.0).max(1e-9),
        );
        let middle = (f64::midpoint(left, right), f64::midpoint(top, bottom));
        let unit = |pieces: &[Piece]| pieces.iter().map(|p| p.scaled(scale, middle)).collect();
        Boxed {
            profile: Self::new(unit(upper), unit(lower)),
            depth: 2.0 * scale.1,
            width: 2.0 * scale.0,
            bottom,
        }
    }

    /// A shape in its unit box by its two surfaces, each from u = −1 to 1.
    pub(crate) fn of_unit(upper: &[Piece], lower: &[Piece]) -> Self {
        Self::new(upper.to_vec(), lower.to_vec())
    }

    /// The same back over a groove that stands so many times as high over the bottom of the box:
    /// it keeps its depth in mm when the box grows shallower. What lies outside the lips, such as
    /// the ends of a folded wall, goes with the back.
    #[must_use]
    pub fn with_groove_raised(&self, times: f64) -> Self {
        let (left, right) = self.lips();
        let raise = |piece: &Piece| {
            let (from, to) = piece.span();
            if to <= left + LIP || from >= right - LIP {
                return *piece;
            }
            piece.scaled((1.0, 1.0 / times), (0.0, (1.0 - times) / times))
        };
        Self::new(self.upper.clone(), self.lower.iter().map(raise).collect())
    }

    /// The u of the outermost places where the inner surface touches the bottom of the box.
    pub(crate) fn lips(&self) -> (f64, f64) {
        let ends = self.lower.iter().flat_map(|piece| {
            let (from, to) = piece.span();
            [(from, piece.at(from)), (to, piece.at(to))]
        });
        let lips = ends.filter(|&(_, v)| v < -1.0 + LIP).map(|(u, _)| u);
        lips.fold((1.0, -1.0), |(left, right): (f64, f64), u| {
            (left.min(u), right.max(u))
        })
    }

    fn new(mut upper: Vec<Piece>, mut lower: Vec<Piece>) -> Self {
        for pieces in [&mut upper, &mut lower] {
            pieces.retain(|piece| piece.span().1 - piece.span().0 > 1e-12);
        }
        let mut profile = Self {
            upper,
            lower,
            moments: Moments::default(),
            even: false,
        };
        profile.moments = Moments::of(&profile.breaks(), |u| {
            (profile.lower_at(u), profile.upper_at(u))
        });
        // The area is what everything is weighed by: closed, where the moments are summed up to
        // about 1e-5 in a groove whose arc ends just short of standing upright.
        let under = |pieces: &[Piece]| pieces.iter().map(Piece::integral).sum::<f64>();
        profile.moments.area = under(&profile.upper) - under(&profile.lower);
        profile
    }

    fn symmetric(upper: Vec<Piece>) -> Self {
        let flip = |piece: &Piece| piece.scaled((1.0, -1.0), (0.0, 0.0));
        let lower = upper.iter().map(flip).collect();
        Self {
            even: true,
            ..Self::new(upper, lower)
        }
    }

    /// Area over that of the box.
    pub fn fullness(&self) -> f64 {
        self.moments.area / 4.0
    }

    /// Whether the lower surface is the upper one turned over, so that the centroid is in the
    /// middle of the box.
    pub(super) fn even(&self) -> bool {
        self.even
    }

    /// Moments of the shape in its unit box, kept so that a section of one profile needs no
    /// integral.
    pub(super) fn moments(&self) -> Moments {
        self.moments
    }

    /// The outer surface at u.
    pub fn upper_at(&self, u: f64) -> f64 {
        at(&self.upper, u)
    }

    /// The inner surface at u.
    pub fn lower_at(&self, u: f64) -> f64 {
        at(&self.lower, u)
    }

    /// The pieces of the outer surface, ascending in u.
    pub fn upper_pieces(&self) -> &[Piece] {
        &self.upper
    }

    /// The pieces of the inner surface, ascending in u.
    pub fn lower_pieces(&self) -> &[Piece] {
        &self.lower
    }

    /// Whether any piece is curved.
    pub fn curved(&self) -> bool {
        let mut all = self.upper.iter().chain(&self.lower);
        all.any(|piece| matches!(piece, Piece::Arc { .. }))
    }

    /// Whether either surface is curved at u.
    pub(super) fn curved_at(&self, u: f64) -> bool {
        let surfaces = [&self.upper, &self.lower].into_iter();
        let mut pieces = surfaces.filter_map(|pieces| piece_at(pieces, u));
        pieces.any(|piece| matches!(piece, Piece::Arc { .. }))
    }

    /// Where pieces meet, in u, ascending.
    pub(super) fn breaks(&self) -> Vec<f64> {
        let all = self.upper.iter().chain(&self.lower);
        let mut breaks: Vec<f64> = all.flat_map(|p| [p.span().0, p.span().1]).collect();
        breaks.sort_by(f64::total_cmp);
        breaks.dedup_by(|a, b| (*a - *b).abs() < 1e-12);
        breaks
    }
}

fn piece_at(pieces: &[Piece], u: f64) -> Option<&Piece> {
    pieces.iter().find(|p| u <= p.span().1).or(pieces.last())
}

fn at(pieces: &[Piece], u: f64) -> f64 {
    piece_at(pieces, u).map_or(0.0, |p| p.at(u))
}

fn highest(piece: &Piece) -> f64 {
    extremes(piece).1
}

fn lowest(piece: &Piece) -> f64 {
    extremes(piece).0
}

fn extremes(piece: &Piece) -> (f64, f64) {
    let (from, to) = piece.span();
    let mut all = vec![piece.at(from), piece.at(to)];
    if let Piece::Arc { centre, .. } = piece
        && (from..=to).contains(&centre.0)
    {
        all.push(piece.at(centre.0));
    }
    all.iter()
        .fold((f64::MAX, f64::MIN), |(a, b), &v| (a.min(v), b.max(v)))
}
