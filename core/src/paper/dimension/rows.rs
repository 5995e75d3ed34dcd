//! Dimensions and notes in rows that never collide.

use kurbo::{Point, Vec2};

use super::{Scale, arrow, dot, label, segment};
use crate::finding::Part;
use crate::paper::{Align, Item, Line};

/// Something that wants a place in a row.
pub(crate) enum Wish {
    /// A dimension along x between two features.
    Span {
        from: Point,
        to: Point,
        text: String,
        part: Part,
    },
    /// A note with a leader to a feature.
    Note {
        at: Point,
        text: String,
        part: Part,
        hang: Hang,
    },
}

/// How the text of a note hangs on its leader.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Hang {
    /// So, and on no account otherwise.
    Only(Align),
    /// So, unless lines run through it there and not on the other side.
    Rather(Align),
}

impl Wish {
    /// The same between other places: the text stays.
    pub(crate) fn moved(self, to: impl Fn(Point) -> Point) -> Self {
        match self {
            Self::Span {
                from,
                to: end,
                text,
                part,
            } => Self::Span {
                from: to(from),
                to: to(end),
                text,
                part,
            },
            Self::Note {
                at,
                text,
                part,
                hang,
            } => Self::Note {
                at: to(at),
                text,
                part,
                hang,
            },
        }
    }

    /// The ways in which its text may hang, the best one first: that of a span which stands
    /// outside of its arrows, and that of a note beside its leader.
    fn hangs(&self, scale: Scale) -> Vec<Align> {
        match self {
            Self::Span { from, to, text, .. } if fits(*from, *to, text, scale) => {
                vec![Align::Middle]
            }
            Self::Span { .. } => vec![Align::Start, Align::End],
            Self::Note { hang, .. } => match *hang {
                Hang::Rather(Align::Start) => vec![Align::Start, Align::End],
                Hang::Rather(Align::End) => vec![Align::End, Align::Start],
                Hang::Rather(Align::Middle) | Hang::Only(Align::Middle) => vec![Align::Middle],
                Hang::Only(side) => vec![side],
            },
        }
    }

    /// Where lines of it run across the rows nearer to the view.
    fn uprights(&self) -> Vec<f64> {
        match self {
            Self::Span { from, to, .. } => vec![from.x, to.x],
            Self::Note { at, .. } => vec![at.x],
        }
    }
}

/// A wish with the way in which its text hangs.
struct Hung {
    wish: Wish,
    hang: Align,
}

/// Hangs each text where the fewest lines of the others run through it.
fn hung(wishes: Vec<Wish>, scale: Scale) -> Vec<Hung> {
    let uprights: Vec<Vec<f64>> = wishes.iter().map(Wish::uprights).collect();
    let mut all = Vec::new();
    for (index, wish) in wishes.into_iter().enumerate() {
        let others = uprights.iter().enumerate().filter(|(i, _)| *i != index);
        let others: Vec<f64> = others.flat_map(|(_, xs)| xs.iter().copied()).collect();
        let own = &uprights[index];
        let struck = |hang: &Align| {
            let (from, to) = written(&wish, *hang, scale);
            let through = |x: &&f64| from < **x && **x < to && !own.contains(x);
            others.iter().filter(through).count()
        };
        let hang = wish.hangs(scale).into_iter().min_by_key(struck);
        let hang = hang.unwrap_or(Align::Middle);
        all.push(Hung { wish, hang });
    }
    all
}

/// From where to where along x a text is written.
fn written(wish: &Wish, hang: Align, scale: Scale) -> (f64, f64) {
    match wish {
        Wish::Note { at, text, .. } => {
            let (width, aside) = (scale.width(text), ASIDE * scale.text);
            match hang {
                Align::Start => (at.x + aside, at.x + width + aside),
                Align::Middle => (at.x - width / 2.0, at.x + width / 2.0),
                Align::End => (at.x - width - aside, at.x - aside),
            }
        }
        Wish::Span { from, to, text, .. } => {
            let (low, high) = (from.x.min(to.x), from.x.max(to.x));
            let (width, lead) = (scale.width(text), LEAD * scale.arrow() + AFTER * scale.text);
            match hang {
                Align::Start => (high + lead, high + lead + width),
                Align::Middle => {
                    let middle = f64::midpoint(low, high);
                    (middle - width / 2.0, middle + width / 2.0)
                }
                Align::End => (low - lead - width, low - lead),
            }
        }
    }
}

/// How far the line of a dimension runs out past arrows that stand outside, in arrows.
const LEAD: f64 = 2.5;
/// From there to its text, in text sizes.
const AFTER: f64 = 0.2;

/// Which side of the view the rows stand on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Side {
    Above,
    Below,
}

impl Side {
    pub(super) fn sign(self) -> f64 {
        match self {
            Self::Above => 1.0,
            Self::Below => -1.0,
        }
    }
}

/// Places wishes in rows outwards from `base` (a y in mm): notes nearest, then short dimensions,
/// long ones outermost.
pub(crate) fn rows(side: Side, base: f64, scale: Scale, mut wishes: Vec<Wish>) -> Vec<Item> {
    wishes.sort_by(|a, b| rank(a).total_cmp(&rank(b)));
    let mut taken: Vec<Vec<(f64, f64)>> = Vec::new();
    let mut items = Vec::new();
    let mut texts = Vec::new();
    for hung in hung(wishes, scale) {
        let (from, to) = occupied(&hung, scale);
        let margin = 0.6 * scale.text;
        let free = |row: &Vec<(f64, f64)>| {
            row.iter()
                .all(|&(a, b)| to + margin < a || from - margin > b)
        };
        let row = taken.iter().position(free).unwrap_or(taken.len());
        if row == taken.len() {
            taken.push(Vec::new());
        }
        taken[row].push((from, to));
        let y = base + side.sign() * scale.row() * (row as f64 + 1.0);
        draw(&hung, (side, y), scale, &mut items, &mut texts);
    }
    items.extend(texts);
    items
}

fn rank(wish: &Wish) -> f64 {
    match wish {
        Wish::Note { .. } => -1.0,
        Wish::Span { from, to, .. } => (to.x - from.x).abs(),
    }
}

/// How far a text that hangs beside its leader stands off it, in text sizes.
const ASIDE: f64 = 0.35;

/// Whether the text fits between the arrows.
fn fits(from: Point, to: Point, text: &str, scale: Scale) -> bool {
    (to.x - from.x).abs() > scale.width(text) + 2.6 * scale.arrow()
}

fn occupied(hung: &Hung, scale: Scale) -> (f64, f64) {
    let (first, last) = written(&hung.wish, hung.hang, scale);
    match &hung.wish {
        Wish::Note { at, .. } => (first.min(at.x), last.max(at.x)),
        Wish::Span { from, to, .. } => {
            let lead = if hung.hang == Align::Middle {
                0.0
            } else {
                LEAD * scale.arrow()
            };
            let (low, high) = (from.x.min(to.x), from.x.max(to.x));
            (first.min(low - lead), last.max(high + lead))
        }
    }
}

fn draw(
    hung: &Hung,
    (side, y): (Side, f64),
    scale: Scale,
    items: &mut Vec<Item>,
    texts: &mut Vec<Item>,
) {
    let hang = hung.hang;
    match &hung.wish {
        Wish::Note { at, text, part, .. } => {
            let base = y + if side == Side::Above {
                0.0
            } else {
                -0.3 * scale.text
            };
            let (aside, end) = match (hang, side) {
                (Align::Start, _) => (ASIDE * scale.text, base + 0.36 * scale.text),
                (Align::End, _) => (-ASIDE * scale.text, base + 0.36 * scale.text),
                (Align::Middle, Side::Above) => (0.0, base - 0.35 * scale.text),
                (Align::Middle, Side::Below) => (0.0, base + 0.95 * scale.text),
            };
            items.push(Item::line(segment(*at, Point::new(at.x, end)), Line::Dimension).of(*part));
            items.push(dot(*at, 0.16 * scale.text).of(*part));
            texts.extend(label(
                Point::new(at.x + aside, base),
                text,
                scale,
                hang,
                *part,
            ));
        }
        Wish::Span {
            from,
            to,
            text,
            part,
        } => {
            for feature in [from, to] {
                let start = feature.y + side.sign() * scale.gap();
                let end = y + side.sign() * 0.6 * scale.text;
                if (end - start) * side.sign() > 0.0 {
                    let line = segment(Point::new(feature.x, start), Point::new(feature.x, end));
                    items.push(Item::line(line, Line::Dimension).of(*part));
                }
            }
            let (a, b) = (
                Point::new(from.x.min(to.x), y),
                Point::new(from.x.max(to.x), y),
            );
            span((a, b), (text, hang), scale, *part, items, texts);
        }
    }
}

fn span(
    (a, b): (Point, Point),
    (text, hang): (&str, Align),
    scale: Scale,
    part: Part,
    items: &mut Vec<Item>,
    texts: &mut Vec<Item>,
) {
    let lead = Vec2::new(LEAD * scale.arrow(), 0.0);
    let after = Vec2::new(AFTER * scale.text, 0.0);
    let (line, out, at) = match hang {
        Align::Middle => (segment(a, b), 1.0, a.midpoint(b)),
        Align::Start => (segment(a - lead, b + lead), -1.0, b + lead + after),
        Align::End => (segment(a - lead, b + lead), -1.0, a - lead - after),
    };
    items.push(Item::line(line, Line::Dimension).of(part));
    items.push(arrow(a, Vec2::new(-out, 0.0), scale).of(part));
    items.push(arrow(b, Vec2::new(out, 0.0), scale).of(part));
    let lift = Vec2::new(0.0, -0.36 * scale.text);
    texts.extend(label(at + lift, text, scale, hang, part));
}
