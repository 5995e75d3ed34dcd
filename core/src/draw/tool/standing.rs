//! A hardy tool, standing as it does in the anvil.

use kurbo::{Point, Rect, Vec2};

use super::{HERE, Seen, end, placed, room, title};
use crate::finding::Part;
use crate::paper::dimension::{Side, Wish, rows, segment, upright};
use crate::paper::lettering::{Taken, clear};
use crate::paper::{Item, Line, View, bounds};
use crate::tool::{Hardy, Mount};

/// Which way a hardy tool is looked at.
#[derive(Clone, Copy, PartialEq)]
enum From {
    /// Along its edge: the wedge, the groove, the gap.
    Front,
    /// Across it.
    Side,
}

/// A small page that stands has room for so much, mm across and up; one that lies, across (A4 and letter, with their
/// title block).
const UPRIGHT_MM: (f64, f64) = (178.0, 225.0);
const LYING_MM: f64 = 235.0;

/// Front view, side view beside it, from above, sections.
pub(super) fn views(seen: &Seen<'_>) -> Vec<Item> {
    let gap = 2.5 * seen.scale.text;
    let front = view(seen, From::Front);
    let front = Item::group("Front view", HERE, front);
    let area = room(&front);
    let items = view(seen, From::Side);
    let own = bounds(&items).unwrap_or(Rect::ZERO);
    let side = Item::group("Side view", (area.x1 + gap - own.x0, 0.0).into(), items);
    let both = area.union(room(&side));
    let above = end::view(seen);
    let above = placed(None, "From above", Point::new(both.x1 + gap, 0.0), above);
    let row = end::sections(seen, f64::INFINITY);
    let size = bounds(&row).unwrap_or(Rect::ZERO);
    let tall = both.height() + gap + size.height();
    let wide = size.width().max(room(&above).x1 - both.x0);
    let row = if tall <= UPRIGHT_MM.1 && wide <= UPRIGHT_MM.0 {
        let corner = Point::new(both.x0, both.y0 - gap - size.height());
        placed(None, "Sections", corner, row)
    } else {
        // Under the view from above, beside the others: a page that lies has room for that.
        let row = end::sections(seen, LYING_MM - both.width());
        let tall = bounds(&row).map_or(0.0, |area| area.height());
        let lifted = Vec2::new(0.0, both.y1 - room(&above).y1);
        let above_it = room(&above) + lifted;
        let corner = Point::new(above_it.x0, above_it.y0 - gap - tall);
        let row = placed(None, "Sections", corner, row);
        return vec![
            front,
            side,
            Item::group("From above", lifted, vec![above]),
            row,
        ];
    };
    vec![front, side, above, row]
}

fn view(seen: &Seen<'_>, from: From) -> Vec<Item> {
    let scale = seen.scale;
    let flat = match from {
        From::Front => View::Top,
        From::Side => View::Side,
    };
    let mut items: Vec<Item> = seen.steel(flat);
    items.push(seen.axis(0.6 * scale.text));
    let mut items: Vec<Item> = items.into_iter().map(Item::turned).collect();
    let bare = bounds(&items).unwrap_or(Rect::ZERO);
    items.extend(anvil(seen, bare));
    if seen.sized() {
        items.extend(widths(seen, from, bare));
        if from == From::Front {
            items.extend(heights(seen, bare, &items));
        }
    }
    if seen.named() {
        let area = bounds(&items).unwrap_or(Rect::ZERO);
        let name = match from {
            From::Front => "Front view",
            From::Side => "Side view",
        };
        items.push(title(name, area, scale));
    }
    clear(items)
}

/// The face of the anvil on either side of the hole, and the walls of the hole.
fn anvil(seen: &Seen<'_>, bare: Rect) -> Vec<Item> {
    let Mount::Hardy(hardy) = seen.document.shape.mount else {
        return Vec::new();
    };
    let (hole, edge) = (hardy.hole.mm() / 2.0, hardy.hole_edge.mm());
    let (wide, low) = (bare.width() / 2.0 + 6.0, -hardy.shank.mm());
    let side = |sign: f64| {
        let mut path = segment(
            Point::new(sign * wide, 0.0),
            Point::new(sign * (hole + edge), 0.0),
        );
        path.line_to((sign * hole, -edge));
        path.line_to((sign * hole, low));
        Item::line(path, Line::Neighbour)
    };
    vec![side(-1.0), side(1.0)]
}

/// A place where its width is told: how high, and how wide.
fn widths(seen: &Seen<'_>, from: From, bare: Rect) -> Vec<Item> {
    let wide = |depth: f64, width: f64| match from {
        From::Front => width,
        From::Side => depth,
    };
    let span = |x: f64, wide: f64, part: Part| Wish::Span {
        from: Point::new(-wide / 2.0, x),
        to: Point::new(wide / 2.0, x),
        text: seen.size(wide),
        part,
    };
    let (mut above, mut below) = (Vec::new(), Vec::new());
    for own in seen.stations() {
        let wish = span(own.x, wide(own.depth, own.width), own.part);
        let repeats = |wishes: &[Wish]| wishes.iter().any(|known| text(known) == text(&wish));
        match own.part {
            Part::HardyShank if from == From::Front => {
                if !repeats(&below) && own.x < -corner(seen) + 1e-6 {
                    below.push(wish);
                }
            }
            Part::HardyShank => {}
            _ if repeats(&above) => {}
            _ => above.push(wish),
        }
    }
    above.extend(opening(seen, from));
    let mut items = rows(Side::Above, bare.y1, seen.scale, above);
    items.extend(rows(Side::Below, bare.y0, seen.scale, below));
    items
}

fn text(wish: &Wish) -> &str {
    match wish {
        Wish::Span { text, .. } | Wish::Note { text, .. } => text,
    }
}

fn corner(seen: &Seen<'_>) -> f64 {
    match seen.document.shape.mount {
        Mount::Hardy(Hardy { corner, .. }) => corner.mm(),
        Mount::Struck(_) => 0.0,
    }
}

/// What is open in the front view.
fn opening(seen: &Seen<'_>, from: From) -> Option<Wish> {
    use crate::shape::Opening;
    let hole = seen
        .model
        .piece
        .holes
        .first()
        .filter(|_| from == From::Front)?;
    let Opening::Slot(slot) = hole.opening else {
        return None;
    };
    let half = slot.across_mm / 2.0;
    Some(Wish::Span {
        from: Point::new(-half, slot.to_mm),
        to: Point::new(half, slot.to_mm),
        text: seen.size(slot.across_mm),
        part: Part::Working,
    })
}

/// A part lower than this, in text sizes, has its height told in a column of its own: its figure would stand
/// among those of its neighbours.
const LOW: f64 = 2.6;

/// Working end, block and shank one over the other, left of the front view.
fn heights(seen: &Seen<'_>, bare: Rect, drawn: &[Item]) -> Vec<Item> {
    let scale = seen.scale;
    let near = bare.x0.min(bounds(drawn).map_or(bare.x0, |area| area.x0)) - 1.2 * scale.text;
    let parts = seen.meets();
    let wide = parts
        .iter()
        .map(|(from, to, _)| scale.width(&seen.size(from - to)))
        .fold(0.0, f64::max);
    let column = |(from, to): (f64, f64)| {
        let is_low = from - to < LOW * scale.text;
        if is_low {
            near - wide - 1.6 * scale.text
        } else {
            near
        }
    };
    let mut items = Vec::new();
    let mut taken = Taken::by(drawn);
    let mut reach: Vec<(f64, f64)> = Vec::new();
    for (from, to, part) in parts {
        let x = column((from, to));
        let ends = (Point::new(x, to), Point::new(x, from));
        let told = upright(ends, &seen.size(from - to), scale, part, &taken);
        taken = taken.and(&told);
        items.extend(told);
        reach.extend([(from, x), (to, x)]);
    }
    items.extend(reach.into_iter().map(|(y, x)| extension(seen, y, x)));
    items
}

/// From a height of the steel to the column where it is told.
fn extension(seen: &Seen<'_>, y: f64, x: f64) -> Item {
    let at = seen.model.piece.cross((seen.model.tip_mm - y).max(0.0));
    let half = at.map_or(0.0, |own| own.width_mm / 2.0);
    let (out, steel) = (0.5 * seen.scale.text, 0.35 * seen.scale.text);
    let line = segment(Point::new(x - out, y), Point::new(-half - steel, y));
    Item::line(line, Line::Dimension).of(Part::Tool)
}
