//! Dimensions in rows that never collide (line types and arrows after ISO 129-1).

use kurbo::{BezPath, Point, Rect, Vec2};

use super::font::text_width;
use super::{Align, Fill, Item, Line};
use crate::finding::Part;

/// Sizes that all dimensions of a drawing share, in mm; everything follows the text.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Scale {
    /// Size of the text.
    pub(crate) text: f64,
}

impl Scale {
    fn arrow(self) -> f64 {
        0.75 * self.text
    }

    /// From one row to the next.
    pub(crate) fn row(self) -> f64 {
        1.6 * self.text
    }

    /// Between an extension line and what it comes from.
    fn gap(self) -> f64 {
        0.35 * self.text
    }

    /// Whether an upright dimension has its arrows and its text between its ends.
    pub(crate) fn fits_upright(self, span: f64) -> bool {
        span > 3.2 * self.arrow()
    }

    pub(crate) fn width(self, text: &str) -> f64 {
        text_width(text, self.text, false)
    }
}

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
        hang: Align,
    },
}

/// Which side of the view the rows stand on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Side {
    Above,
    Below,
}

impl Side {
    fn sign(self) -> f64 {
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
    for wish in wishes {
        let (from, to) = occupied(&wish, scale);
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
        draw(&wish, (side, y), scale, &mut items, &mut texts);
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

fn occupied(wish: &Wish, scale: Scale) -> (f64, f64) {
    match wish {
        Wish::Note { at, text, hang, .. } => {
            let width = scale.width(text);
            let aside = ASIDE * scale.text;
            match hang {
                Align::Start => (at.x, at.x + width + aside),
                Align::Middle => (at.x - width / 2.0, at.x + width / 2.0),
                Align::End => (at.x - width - aside, at.x),
            }
        }
        Wish::Span { from, to, text, .. } => {
            let (low, high) = (from.x.min(to.x), from.x.max(to.x));
            if fits(*from, *to, text, scale) {
                (low, high)
            } else {
                (
                    low - 2.5 * scale.arrow(),
                    high + 2.5 * scale.arrow() + scale.width(text),
                )
            }
        }
    }
}

fn draw(
    wish: &Wish,
    (side, y): (Side, f64),
    scale: Scale,
    items: &mut Vec<Item>,
    texts: &mut Vec<Item>,
) {
    match wish {
        Wish::Note {
            at,
            text,
            part,
            hang,
        } => {
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
                *hang,
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
            span(a, b, text, scale, *part, items, texts);
        }
    }
}

#[allow(
    clippy::too_many_arguments,
    reason = "two out-lists keep texts above all lines"
)]
fn span(
    a: Point,
    b: Point,
    text: &str,
    scale: Scale,
    part: Part,
    items: &mut Vec<Item>,
    texts: &mut Vec<Item>,
) {
    let inside = fits(a, b, text, scale);
    let lead = Vec2::new(2.5 * scale.arrow(), 0.0);
    let line = if inside {
        segment(a, b)
    } else {
        segment(a - lead, b + lead)
    };
    items.push(Item::line(line, Line::Dimension).of(part));
    let (left, right) = if inside { (-1.0, 1.0) } else { (1.0, -1.0) };
    items.push(arrow(a, Vec2::new(left, 0.0), scale).of(part));
    items.push(arrow(b, Vec2::new(right, 0.0), scale).of(part));
    let lift = -0.36 * scale.text;
    let (at, align) = if inside {
        (a.midpoint(b), Align::Middle)
    } else {
        (b + lead + Vec2::new(0.2 * scale.text, 0.0), Align::Start)
    };
    texts.extend(label(at + Vec2::new(0.0, lift), text, scale, align, part));
}

/// Running dimensions (ISO 129-1): one line from an origin, each place marked with its distance
/// beside its extension line. `places` are features with their texts.
pub(crate) fn running(
    (side, y): (Side, f64),
    origin: Point,
    places: &[(Point, String)],
    scale: Scale,
    part: Part,
) -> Vec<Item> {
    let mut items = Vec::new();
    let mut texts = Vec::new();
    let farthest = places
        .iter()
        .map(|(at, _)| at.x)
        .max_by(|a, b| a.abs().total_cmp(&b.abs()));
    let zero = Point::new(origin.x, y);
    let ends = segment(zero, Point::new(farthest.unwrap_or(origin.x), y));
    items.push(Item::line(ends, Line::Dimension).of(part));
    items.push(
        Item::line(
            kurbo::Shape::to_path(&kurbo::Circle::new(zero, 0.25 * scale.text), 0.01),
            Line::Dimension,
        )
        .of(part),
    );
    let mut extend = |feature: Point, lift: f64| {
        let start = feature.y + side.sign() * scale.gap();
        let line = segment(
            Point::new(feature.x, start),
            Point::new(feature.x, y + side.sign() * (0.6 * scale.text + lift)),
        );
        items.push(Item::line(line, Line::Dimension).of(part));
    };
    extend(origin, 0.0);
    let levels = levels(origin, places, scale);
    for ((at, _), level) in places.iter().zip(&levels) {
        extend(*at, level * scale.row());
    }
    for ((at, text), level) in places.iter().zip(&levels) {
        let out = (at.x - origin.x).signum();
        items.push(arrow(Point::new(at.x, y), Vec2::new(out, 0.0), scale).of(part));
        let line = y + side.sign() * level * scale.row();
        let beside = Point::new(at.x - out * 1.1 * scale.arrow(), line - 0.36 * scale.text);
        let align = if out > 0.0 { Align::End } else { Align::Start };
        texts.extend(label(beside, text, scale, align, part));
    }
    items.extend(texts);
    items
}

/// How many rows off the line each distance stands, so that near ones do not cover each other.
fn levels(origin: Point, places: &[(Point, String)], scale: Scale) -> Vec<f64> {
    let mut taken: Vec<(f64, f64, f64)> = Vec::new();
    let level = |(at, text): &(Point, String)| {
        let out = (at.x - origin.x).signum();
        let near = at.x - out * 1.1 * scale.arrow();
        let far = near - out * scale.width(text);
        let (from, to) = (
            near.min(far) - 0.4 * scale.text,
            near.max(far) + 0.4 * scale.text,
        );
        let mut level = 0.0;
        while taken
            .iter()
            .any(|&(its, a, b)| its == level && a < to && from < b)
        {
            level += 1.0;
        }
        taken.push((level, from, to));
        level
    };
    places.iter().map(level).collect()
}

/// A dimension square to x between two points one above the other, its text to the right of the
/// line, or above it when it stands alone.
pub(crate) fn upright(low: Point, high: Point, text: &str, scale: Scale, part: Part) -> Vec<Item> {
    let room = scale.fits_upright(high.y - low.y);
    let lead = Vec2::new(0.0, 2.2 * scale.arrow());
    let line = if room {
        segment(low, high)
    } else {
        segment(low - lead, high + lead)
    };
    let sign = if room { 1.0 } else { -1.0 };
    let mut items = vec![
        Item::line(line, Line::Dimension).of(part),
        arrow(low, Vec2::new(0.0, -sign), scale).of(part),
        arrow(high, Vec2::new(0.0, sign), scale).of(part),
    ];
    let beside = if room {
        low.midpoint(high)
    } else {
        high + lead
    };
    let at = beside + Vec2::new(0.5 * scale.text, -0.36 * scale.text);
    items.extend(label(at, text, scale, Align::Start, part));
    items
}

/// A text on a patch of paper, so that no line runs through it.
pub(crate) fn label(at: Point, text: &str, scale: Scale, align: Align, part: Part) -> Vec<Item> {
    let item = Item::text(at, text, scale.text, align).of(part);
    let patch = item
        .bounds()
        .unwrap_or(Rect::ZERO)
        .inflate(0.18 * scale.text, 0.02 * scale.text);
    vec![Item::fill(rectangle(patch), Fill::Paper), item]
}

pub(crate) fn rectangle(r: Rect) -> BezPath {
    kurbo::Shape::to_path(&r, 1.0)
}

pub(crate) fn segment(a: Point, b: Point) -> BezPath {
    let mut path = BezPath::new();
    path.move_to(a);
    path.line_to(b);
    path
}

/// A filled arrowhead whose point is at `at`, pointing along `towards`.
pub(crate) fn arrow(at: Point, towards: Vec2, scale: Scale) -> Item {
    let back = at - towards * scale.arrow();
    let wide = towards.turn_90() * (scale.arrow() / 6.0);
    let mut path = BezPath::new();
    path.move_to(at);
    path.line_to(back + wide);
    path.line_to(back - wide);
    path.close_path();
    Item::fill(path, Fill::Ink)
}

fn dot(at: Point, radius: f64) -> Item {
    Item::fill(
        kurbo::Shape::to_path(&kurbo::Circle::new(at, radius), 0.01),
        Fill::Ink,
    )
}
