use serde::{Deserialize, Serialize};

use crate::shape::section::{Piece, Profile};

/// A section in a box of half-sizes one: its outer and its inner surface from u = −1 to 1, u along
/// the rivet, v outwards.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SketchShape {
    /// Outer surface.
    pub upper: Vec<Piece>,
    /// Inner surface: towards the work.
    pub lower: Vec<Piece>,
}

/// A ready shape to begin from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ready {
    /// The full box.
    Rectangle,
    /// Rounded corners.
    Rounded,
    /// An ellipse.
    Oval,
    /// A V in the inside.
    Vee,
    /// A round groove in the inside.
    Hollow,
    /// A square trough in the inside.
    Trough,
}

impl Ready {
    /// All of them, with what the smith calls them.
    pub const ALL: [(Self, &'static str); 6] = [
        (Self::Rectangle, "rectangle"),
        (Self::Rounded, "rounded"),
        (Self::Oval, "oval"),
        (Self::Vee, "V groove"),
        (Self::Hollow, "round groove"),
        (Self::Trough, "trough"),
    ];

    /// The shape.
    pub fn shape(self) -> SketchShape {
        let flat = vec![Piece::line((-1.0, 1.0), (1.0, 1.0))];
        let lower = |inner: Vec<Piece>| {
            let (from, to) = ends(&inner);
            let mut pieces = vec![Piece::line((-1.0, -1.0), from)];
            pieces.extend(inner);
            pieces.push(Piece::line(to, (1.0, -1.0)));
            SketchShape {
                upper: flat.clone(),
                lower: pieces,
            }
        };
        match self {
            Self::Rectangle => SketchShape::of(&Profile::rectangle()),
            Self::Rounded => SketchShape::of(&Profile::rounded(0.35, 0.35)),
            Self::Oval => SketchShape::of(&Profile::rounded(1.0, 1.0)),
            Self::Vee => lower(vec![
                Piece::line((-0.7, -1.0), (0.0, 0.0)),
                Piece::line((0.0, 0.0), (0.7, -1.0)),
            ]),
            Self::Hollow => lower(vec![Piece::Arc {
                from: -0.7,
                to: 0.7,
                centre: (0.0, -1.0),
                half: (0.7, 1.0),
            }]),
            Self::Trough => lower(vec![
                Piece::line((-0.7, -1.0), (-0.68, -0.1)),
                Piece::line((-0.68, -0.1), (0.68, -0.1)),
                Piece::line((0.68, -0.1), (0.7, -1.0)),
            ]),
        }
    }
}

fn ends(pieces: &[Piece]) -> ((f64, f64), (f64, f64)) {
    let end = |piece: &Piece, u: f64| (u, piece.at(u));
    let first = pieces.first().map_or((0.0, -1.0), |p| end(p, p.span().0));
    let last = pieces.last().map_or((0.0, -1.0), |p| end(p, p.span().1));
    (first, last)
}

/// A corner of a shape: on which surface, and which of its pieces begins there; past the last
/// piece it is the end.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Corner {
    /// Whether it is on the outer surface.
    pub side: Surface,
    /// Which corner, ascending in u.
    pub index: usize,
}

/// One of the two surfaces of a shape.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Surface {
    /// Away from the work.
    Outer,
    /// Towards the work.
    Inner,
}

/// Corners keep at least so far apart in u, and the two surfaces in v.
const APART: f64 = 0.01;

impl SketchShape {
    /// The shape of a profile.
    pub fn of(profile: &Profile) -> Self {
        Self {
            upper: profile.upper_pieces().to_vec(),
            lower: profile.lower_pieces().to_vec(),
        }
    }

    /// Its profile; the full box if its surfaces are no surfaces.
    pub fn profile(&self) -> Profile {
        self.read().unwrap_or_else(|_| Profile::rectangle())
    }

    /// What is wrong with it, if anything is.
    pub fn fault(&self) -> Option<&'static str> {
        self.read().err()
    }

    /// Its profile, or why it has none.
    fn read(&self) -> Result<Profile, &'static str> {
        /// More pieces than this are no section.
        const MOST: usize = 200;
        for pieces in [&self.upper, &self.lower] {
            if pieces.is_empty() || pieces.len() > MOST {
                return Err("a surface has no pieces, or over 200");
            }
            if !pieces.iter().all(sound) {
                return Err("a piece leaves the box or runs backwards");
            }
            let (first, last) = (pieces[0].span().0, pieces[pieces.len() - 1].span().1);
            if (first + 1.0).abs() > 0.2 || (last - 1.0).abs() > 0.2 {
                return Err("a surface does not reach from side to side");
            }
        }
        let profile = Profile::of_unit(&self.upper, &self.lower);
        let crossed = (0..=64).map(|i| f64::from(i) / 32.0 - 1.0).any(|u| {
            let inside = u.abs() < 0.99;
            inside && profile.upper_at(u) < profile.lower_at(u) - 1e-6
        });
        if crossed || profile.fullness() < 0.01 {
            return Err("its two surfaces cross");
        }
        Ok(profile)
    }

    fn pieces(&self, side: Surface) -> &Vec<Piece> {
        match side {
            Surface::Outer => &self.upper,
            Surface::Inner => &self.lower,
        }
    }

    fn pieces_mut(&mut self, side: Surface) -> &mut Vec<Piece> {
        match side {
            Surface::Outer => &mut self.upper,
            Surface::Inner => &mut self.lower,
        }
    }

    /// All corners with their places (u, v).
    pub fn corners(&self) -> Vec<(Corner, (f64, f64))> {
        let of = |side: Surface| {
            let pieces = self.pieces(side);
            let begin = pieces.iter().map(|p| (p.span().0, p.at(p.span().0)));
            let end = pieces.last().map(|p| (p.span().1, p.at(p.span().1)));
            let places: Vec<(f64, f64)> = begin.chain(end).collect();
            places
                .into_iter()
                .enumerate()
                .map(move |(index, at)| (Corner { side, index }, at))
                .collect::<Vec<_>>()
        };
        let mut all = of(Surface::Outer);
        all.extend(of(Surface::Inner));
        all
    }

    /// The shape with a corner moved to (u, v), and its like on the other side of the middle with
    /// it when the shape is to stay alike on both sides.
    #[must_use]
    pub fn moved(&self, corner: Corner, to: (f64, f64), alike: Alike) -> Self {
        let mut next = self.clone();
        let mirror = self.mirror_of(corner);
        match (alike, mirror) {
            (Alike::Both, Some(other)) if other == corner => {
                next.place(corner, (0.0, to.1));
            }
            (Alike::Both, Some(other)) => {
                next.place(corner, to);
                next.place(other, (-to.0, to.1));
            }
            (Alike::Both, None) | (Alike::One, _) => next.place(corner, to),
        }
        next
    }

    /// The corner on the same surface that is this one seen in the mirror.
    fn mirror_of(&self, corner: Corner) -> Option<Corner> {
        let places: Vec<(Corner, (f64, f64))> = self
            .corners()
            .into_iter()
            .filter(|(c, _)| c.side == corner.side)
            .collect();
        let &(_, (u, v)) = places.iter().find(|(c, _)| *c == corner)?;
        let near =
            |&&(_, (p, q)): &&(Corner, (f64, f64))| (p + u).abs() < 1e-6 && (q - v).abs() < 1e-6;
        places.iter().find(near).map(|(c, _)| *c)
    }

    fn place(&mut self, corner: Corner, to: (f64, f64)) {
        let to = (to.0.clamp(-1.0, 1.0), to.1.clamp(-1.0, 1.0));
        if !(to.0.is_finite() && to.1.is_finite()) {
            return;
        }
        let pieces = self.pieces_mut(corner.side);
        let last = pieces.len();
        let before = corner.index.checked_sub(1);
        // The outermost corners stay on the sides of the box.
        let least = before.map_or(-1.0, |i| pieces[i].span().0 + APART);
        let most = pieces.get(corner.index).map_or(1.0, |p| p.span().1 - APART);
        let u = match corner.index {
            0 => -1.0,
            i if i == last => 1.0,
            _ => to.0.clamp(least.min(most), most.max(least)),
        };
        if let Some(i) = before {
            pieces[i] = ended(&pieces[i], None, Some((u, to.1)));
        }
        if corner.index < last {
            let piece = pieces[corner.index];
            pieces[corner.index] = ended(&piece, Some((u, to.1)), None);
        }
    }

    /// The shape with a new corner in the middle of the piece that begins at a corner.
    #[must_use]
    pub fn with_corner(&self, corner: Corner) -> Self {
        let mut next = self.clone();
        let pieces = next.pieces_mut(corner.side);
        let index = corner.index.min(pieces.len().saturating_sub(1));
        let Some(&piece) = pieces.get(index) else {
            return next;
        };
        let (from, to) = piece.span();
        let middle = f64::midpoint(from, to);
        let at = (middle, piece.at(middle));
        if to - from < 4.0 * APART {
            return next;
        }
        let halves = match piece {
            Piece::Line { from, to } => [Piece::line(from, at), Piece::line(at, to)],
            Piece::Arc { centre, half, .. } => {
                let part = |from: f64, to: f64| Piece::Arc {
                    from,
                    to,
                    centre,
                    half,
                };
                [part(from, middle), part(middle, to)]
            }
        };
        pieces.splice(index..=index, halves);
        next
    }

    /// The shape without a corner: the pieces on both sides of it become one straight piece. The
    /// outermost corners stay.
    #[must_use]
    pub fn without_corner(&self, corner: Corner) -> Self {
        let mut next = self.clone();
        let pieces = next.pieces_mut(corner.side);
        if corner.index == 0 || corner.index >= pieces.len() {
            return next;
        }
        let (before, after) = (pieces[corner.index - 1], pieces[corner.index]);
        let (from, to) = (before.span().0, after.span().1);
        let joined = Piece::line((from, before.at(from)), (to, after.at(to)));
        pieces.splice(corner.index - 1..=corner.index, [joined]);
        next
    }
}

/// Whether a shape stays alike on both sides of its middle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Alike {
    /// What moves on one side moves on the other.
    Both,
    /// Only what is moved moves.
    One,
}

/// A piece with one of its ends moved. An arc that begins and ends at one height, or that runs
/// level into one of its ends, stays an arc; another one becomes straight.
fn ended(piece: &Piece, from: Option<(f64, f64)>, to: Option<(f64, f64)>) -> Piece {
    let (a, b) = piece.span();
    let (old_from, old_to) = ((a, piece.at(a)), (b, piece.at(b)));
    let (from, to) = (from.unwrap_or(old_from), to.unwrap_or(old_to));
    let level = |p: (f64, f64), q: (f64, f64)| (p.1 - q.1).abs() < 1e-9;
    match *piece {
        Piece::Arc { centre, half, .. } if level(old_from, old_to) && level(from, to) => {
            let times = (to.0 - from.0) / (b - a);
            Piece::Arc {
                from: from.0,
                to: to.0,
                centre: (
                    f64::midpoint(from.0, to.0) + (centre.0 - f64::midpoint(a, b)) * times,
                    centre.1 + from.1 - old_from.1,
                ),
                half: (half.0 * times, half.1),
            }
        }
        Piece::Arc { .. } | Piece::Line { .. } => Piece::line(from, to),
    }
}

fn sound(piece: &Piece) -> bool {
    let (from, to) = piece.span();
    let numbers = match *piece {
        Piece::Line { from, to } => vec![from.0, from.1, to.0, to.1],
        Piece::Arc {
            from,
            to,
            centre,
            half,
        } => vec![from, to, centre.0, centre.1, half.0, half.1],
    };
    let wide = match *piece {
        Piece::Line { .. } => true,
        Piece::Arc { half, .. } => half.0 > 1e-9,
    };
    let within = |u: f64| u.abs() < 1.0 + 1e-6 && piece.at(u).abs() < 1.0 + 1e-6;
    numbers.iter().all(|n| n.is_finite() && n.abs() < 1e6)
        && wide
        && from <= to
        && within(from)
        && within(to)
}
