//! What the views are called, each name with a small picture of what is looked at, and where it
//! finds room.

use kurbo::{Affine, BezPath, Circle, Point, Rect, Shape, Vec2};

use crate::paper::dimension::{Scale, rectangle};
use crate::paper::lettering::Taken;
use crate::paper::{Align, Breaks, Item, Line, View};
use crate::shape::sweep::Edge;
use crate::tongs::model::Half;

/// A view's name set as much higher as it must be to keep off what is drawn in the view.
pub(super) fn clear_of(at: Point, name: &str, items: &[Item], scale: Scale) -> Point {
    /// In text sizes: what is kept free around a name and its picture, and the step up from what
    /// is in the way.
    const AROUND: f64 = 0.3;
    const STEP: f64 = 0.6;
    /// A name is lifted so often at the most.
    const LIFTS: u32 = 40;
    let taken = Taken::by(items);
    let width = width(name, scale);
    let mut at = at;
    for _ in 0..LIFTS {
        let room = Rect::from_origin_size(at, (width, scale.text));
        let room = room.inflate(AROUND * scale.text, AROUND * scale.text);
        let Some(highest) = taken.highest_in(room) else {
            break;
        };
        at.y = highest + STEP * scale.text;
    }
    at
}

/// How far a view's name reaches with its picture, mm.
pub(super) fn width(name: &str, scale: Scale) -> f64 {
    NAME_AFTER * scale.text + scale.width(name)
}

/// From the small picture's start to the name beside it, in text sizes.
const NAME_AFTER: f64 = 7.8;

/// A rein whose end is named.
#[derive(Clone, Copy)]
pub(super) struct Over<'a> {
    pub(super) half: &'a Half,
    /// How the half lies in the view.
    pub(super) pose: Affine,
    /// The edge that the name stands over.
    pub(super) edge: Edge,
    pub(super) breaks: Breaks,
}

/// Where a view's name stands: clear above the end of the rein.
pub(super) fn over_rein(over: &Over<'_>, scale: Scale) -> Point {
    /// Room for a name with its picture, in text sizes.
    const ROOM: f64 = 16.0;
    const PARTS: u32 = 64;
    let length = over.half.rein.length();
    let places = (0..=PARTS).map(|i| length * f64::from(i) / f64::from(PARTS));
    let place = |s: f64| {
        over.breaks
            .point(over.pose * over.half.rein.edge_point(over.edge, s))
    };
    let start = place(over.half.bent_from());
    let below = places
        .map(place)
        .filter(|p| p.x <= start.x + ROOM * scale.text);
    let highest = below.map(|p| p.y).fold(start.y, f64::max);
    Point::new(start.x, highest + 1.2 * scale.text)
}

/// The name of a view with a small picture of what is looked at.
pub(super) fn view_title((view, name): (View, &str), at: Point, scale: Scale) -> Vec<Item> {
    let small = match view {
        View::Side => small_side(),
        View::Top => small_top(),
        View::End => return vec![Item::text(at, name, scale.text, Align::Middle)],
    };
    let pose = Affine::translate(at.to_vec2() + Vec2::new(0.0, 0.36 * scale.text))
        * Affine::scale(scale.text);
    vec![
        Item::line(pose * small, Line::Fine),
        Item::text(
            at + Vec2::new(NAME_AFTER * scale.text, 0.0),
            name,
            scale.text,
            Align::Start,
        ),
    ]
}

/// Tongs seen along the rivet, in text sizes.
fn small_side() -> BezPath {
    let mut path = Circle::new((4.6, 0.0), 0.5).to_path(0.01);
    for side in [1.0, -1.0] {
        for (a, b) in [((0.0, 0.75), (4.2, 0.3)), ((5.0, 0.3), (7.0, 0.2))] {
            path.move_to((a.0, side * a.1));
            path.line_to((b.0, side * b.1));
        }
    }
    path
}

/// Tongs seen from above, in text sizes.
fn small_top() -> BezPath {
    let boxes = [
        (0.0, -0.2, 3.8, 0.2),
        (3.8, 0.0, 5.4, 0.5),
        (3.8, -0.5, 5.4, 0.0),
        (5.4, -0.4, 7.0, 0.4),
    ];
    let mut path = BezPath::new();
    for (x0, y0, x1, y1) in boxes {
        path.extend(rectangle(Rect::new(x0, y0, x1, y1)));
    }
    path
}
