//! A stage as a small picture: what is worked, as it lies on the anvil.

use kurbo::{Affine, BezPath, Point, Rect, Shape as _, Vec2};

use super::steel::covered;
use super::view_of;
use crate::making::{Blows, Operation, Side, Stage, Step};
use crate::paper::{Drawing, Fill, GroupItem, Item, Line, PathItem, View};
use crate::shape::Piece;

/// Height of the signs above and below the steel, for signs of full size, mm.
const SIGNS: f64 = 8.5;
/// How large the signs are on paper, over those of a drawing of full size.
const SMALL: f64 = 0.5;
/// The most that a picture shows a piece enlarged: no bar looks thicker than it is.
const LARGEST: f64 = 1.0;

/// The worked stretch of a stage in a room on paper: turned so that the blows fall from above, the
/// tip to the right. Nothing for a stage that nothing was done for.
pub(in crate::draw) fn picture(shown: &Stage, room: Rect) -> Vec<Item> {
    let Some(operation) = &shown.operation else {
        return Vec::new();
    };
    let lies = Lies::of(operation.blows);
    let Some(area) = looked_at(&shown.piece, operation, lies.view) else {
        return Vec::new();
    };
    let high = (room.height() - 2.0 * SIGNS * SMALL).max(1.0);
    let scale = (room.width() / area.width())
        .min(high / area.height())
        .min(LARGEST);
    let mut items = view_of(shown, lies.view, SMALL / scale);
    items.extend(broken(&shown.piece, area, lies.view));
    if lies.over {
        items = items.into_iter().map(turned_over).collect();
    }
    let middle = if lies.over {
        Point::new(area.center().x, -area.center().y)
    } else {
        area.center()
    };
    let wide = Vec2::new(area.width() / 2.0 * scale, room.height() / 2.0);
    let clip = Rect::from_points(room.center() - wide, room.center() + wide);
    vec![Item::Group(GroupItem {
        name: "stage".to_owned(),
        view: None,
        shift: room.center() - (middle.to_vec2() * scale).to_point(),
        clip: Some(clip.inset((0.6, 0.0))),
        items: Drawing { items }.scaled(scale).items,
    })]
}

/// How a piece lies under the blows.
#[derive(Debug, Clone, Copy)]
struct Lies {
    view: View,
    over: bool,
}

impl Lies {
    fn of(blows: Blows) -> Self {
        let (view, over) = match blows {
            Blows::On(Side::Inside) => (View::Side, true),
            Blows::On(Side::Outer) | Blows::Through => (View::Top, false),
            Blows::On(Side::Joint) => (View::Top, true),
            Blows::On(Side::Back)
            | Blows::BothEdges
            | Blows::AllRound
            | Blows::End
            | Blows::Cut
            | Blows::Twist
            | Blows::Bend => (View::Side, false),
        };
        Self { view, over }
    }
}

/// What of a piece is shown: what is struck and some way on both sides of it; of a long stretch its
/// beginning, of a grip its end, of what is bent all.
fn looked_at(piece: &Piece, operation: &Operation, view: View) -> Option<Rect> {
    /// What is shown at the least and at the most, mm, and on either side of what is struck.
    const LEAST: f64 = 76.0;
    const MOST: f64 = 110.0;
    const BESIDE: f64 = 16.0;
    let (from, to) = operation.struck_mm;
    let long = to - from;
    let shown = if operation.blows == Blows::Bend || long + 2.0 * BESIDE <= MOST {
        let half = (long / 2.0 + BESIDE).max(LEAST / 2.0);
        let middle = f64::midpoint(from, to);
        (middle - half, middle + half)
    } else if operation.step == Step::Grip {
        (to - MOST, to)
    } else {
        (from - BESIDE, from - BESIDE + MOST)
    };
    let areas = covered(piece, shown, view);
    let steel = areas.iter().map(|area| area.bounding_box());
    let steel = steel.reduce(|a, b| a.union(b))?;
    // An end that is struck has air before it.
    Some(steel.inflate(4.0, 0.0))
}

/// Broken ends where the piece goes on beyond what is shown.
fn broken(piece: &Piece, area: Rect, view: View) -> Vec<Item> {
    let outline = match view {
        View::Side => piece.side(),
        View::Top | View::End => piece.top(),
    };
    let whole = outline.iter().map(|path| path.bounding_box());
    let Some(whole) = whole.reduce(|a, b| a.union(b)) else {
        return Vec::new();
    };
    let goes_on = [
        (area.x0, whole.x0 < area.x0 - 1.0),
        (area.x1, whole.x1 > area.x1 + 1.0),
    ];
    let ends = goes_on.into_iter().filter(|own| own.1);
    let end = |(x, _)| {
        let line = wave(x, area);
        let past = Item::fill(past(line.clone(), x, area), Fill::Paper);
        [past, Item::line(line, Line::Fine)]
    };
    ends.flat_map(end).collect()
}

/// All past a broken end, up to an edge of what is shown and over its signs.
fn past(mut line: BezPath, x: f64, area: Rect) -> BezPath {
    /// Past everything, mm.
    const FAR: f64 = 100.0;
    let out = if x < area.center().x {
        x - FAR
    } else {
        x + FAR
    };
    let ends = line.control_box();
    line.line_to((ends.center().x, area.y1 + FAR));
    for corner in [(out, area.y1 + FAR), (out, area.y0 - FAR)] {
        line.line_to(corner);
    }
    line.line_to((ends.center().x, area.y0 - FAR));
    line.close_path();
    line
}

/// A wavy line from top to bottom.
fn wave(x: f64, area: Rect) -> BezPath {
    let (low, high) = (area.y0 - 1.5, area.y1 + 1.5);
    let sway = 0.12 * (high - low);
    let inward = if x < area.center().x { 1.0 } else { -1.0 };
    let x = x + inward * (1.0 + sway);
    let mut path = BezPath::new();
    path.move_to((x, low));
    let at = |part: f64| low + part * (high - low);
    path.curve_to((x + sway, at(0.33)), (x - sway, at(0.67)), (x, high));
    path
}

/// The same item with top and bottom exchanged, as a bar is turned over along its length. A picture
/// has no lettering.
fn turned_over(item: Item) -> Item {
    match item {
        Item::Path(path) => Item::Path(PathItem {
            path: Affine::FLIP_Y * path.path,
            ..path
        }),
        Item::Text(text) => Item::Text(text),
        Item::Group(group) => Item::Group(GroupItem {
            shift: Vec2::new(group.shift.x, -group.shift.y),
            items: group.items.into_iter().map(turned_over).collect(),
            ..group
        }),
    }
}
