//! Dimensions in rows that never collide (line types and arrows after ISO 129-1).

use kurbo::{BezPath, Point, Rect, Vec2};

use super::font::text_width;
use super::lettering::Taken;
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
    // On the line itself stand the arrows too.
    let arrow = |(at, _): &(Point, String)| {
        let back = at.x - (at.x - origin.x).signum() * scale.arrow();
        (back.min(at.x), back.max(at.x))
    };
    let arrows: Vec<(f64, f64)> = places.iter().map(arrow).collect();
    let level = |(at, text): &(Point, String)| {
        let out = (at.x - origin.x).signum();
        let near = at.x - out * 1.1 * scale.arrow();
        let far = near - out * scale.width(text);
        let (from, to) = (
            near.min(far) - 0.4 * scale.text,
            near.max(far) + 0.4 * scale.text,
        );
        let (first, last) = (near.min(far), near.max(far));
        let crowded = arrows.iter().any(|&(a, b)| a < last && first < b);
        let mut level = f64::from(u8::from(crowded));
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

/// Where the text of an upright dimension stands.
#[derive(Clone, Copy)]
struct Beside {
    /// Between the ends, where the arrows are inside too; else over the upper end.
    between: bool,
    at: Point,
    align: Align,
}

impl Beside {
    /// The places of a text from the best to the worst: right and left of the line between its
    /// ends, then over its upper and under its lower end.
    fn places((low, high): (Point, Point), scale: Scale) -> Vec<Self> {
        let aside = Vec2::new(0.5 * scale.text, 0.0);
        let lift = Vec2::new(0.0, -0.36 * scale.text);
        let lead = Vec2::new(0.0, UPRIGHT_LEAD * scale.arrow());
        let between = scale.fits_upright(high.y - low.y);
        let middle = low.midpoint(high);
        let ends = [(true, middle), (false, high + lead), (false, low - lead)];
        let ends = ends.into_iter().filter(|(inside, _)| between || !inside);
        ends.flat_map(|(inside, at)| {
            [(aside, Align::Start), (-aside, Align::End)].map(|(aside, align)| Self {
                between: inside,
                at: at + aside + lift,
                align,
            })
        })
        .collect()
    }

    fn room(&self, text: &str, scale: Scale) -> Rect {
        let item = Item::text(self.at, text, scale.text, self.align);
        let room = item.bounds().unwrap_or(Rect::ZERO);
        room.inflate(0.2 * scale.text, 0.2 * scale.text)
    }
}

/// How far the line of an upright dimension runs out past arrows that stand outside, in arrows.
const UPRIGHT_LEAD: f64 = 2.2;

/// A dimension square to x between two points one above the other. Its text stands beside the
/// line, or past an end where it finds no room between.
pub(crate) fn upright(
    (low, high): (Point, Point),
    text: &str,
    scale: Scale,
    part: Part,
    taken: &Taken,
) -> Vec<Item> {
    let places = Beside::places((low, high), scale);
    let free = |place: &&Beside| taken.leaves(place.room(text, scale));
    // What reaches past the drawing would make it smaller on a sheet.
    let within = |place: &&Beside| taken.reaches(place.room(text, scale));
    let best = places.iter().filter(free).find(within);
    let best = best.or_else(|| places.iter().find(free));
    let best = best.unwrap_or(&places[0]);
    let lead = Vec2::new(0.0, UPRIGHT_LEAD * scale.arrow());
    let (line, sign) = if best.between {
        (segment(low, high), 1.0)
    } else {
        (segment(low - lead, high + lead), -1.0)
    };
    let mut items = vec![
        Item::line(line, Line::Dimension).of(part),
        arrow(low, Vec2::new(0.0, -sign), scale).of(part),
        arrow(high, Vec2::new(0.0, sign), scale).of(part),
    ];
    items.extend(label(best.at, text, scale, best.align, part));
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
