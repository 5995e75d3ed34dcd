use kurbo::{BezPath, Circle, Point, Shape, Vec2};

use crate::paper::{Item, Line, Projection};

/// Small diameter of the cone, mm; the large one and the length are twice that.
const SMALL: f64 = 2.2;
/// Between the two views, mm.
const APART: f64 = 1.6;
/// How far the axes stand out, mm.
const BEYOND: f64 = 0.7;

/// Width of the symbol with its axes, mm.
pub(super) const WIDTH: f64 = 4.0 * SMALL + APART + 2.0 * BEYOND;

/// The truncated cone that tells how views are laid out (ISO 5456-2): the cone lies with its
/// small end to the left, and its view from the left stands on the right in first angle, on the
/// left in third angle. `corner` is the lower left one.
pub(super) fn projection(corner: Point, projection: Projection) -> Item {
    let left = corner.x + BEYOND + SMALL;
    let right = left + 2.0 * SMALL + APART;
    let y = corner.y + BEYOND + SMALL;
    let (cone_x, end_x) = match projection {
        Projection::FirstAngle => (left, right),
        Projection::ThirdAngle => (right, left),
    };
    let mut items = cone(Point::new(cone_x, y));
    items.extend(end_view(Point::new(end_x, y)));
    Item::group("projection", Vec2::ZERO, items)
}

fn cone(centre: Point) -> Vec<Item> {
    let mut path = BezPath::new();
    path.move_to(centre + Vec2::new(-SMALL, -SMALL / 2.0));
    path.line_to(centre + Vec2::new(SMALL, -SMALL));
    path.line_to(centre + Vec2::new(SMALL, SMALL));
    path.line_to(centre + Vec2::new(-SMALL, SMALL / 2.0));
    path.close_path();
    vec![
        Item::line(path, Line::Frame),
        axis(centre, Vec2::new(1.0, 0.0)),
    ]
}

fn end_view(centre: Point) -> Vec<Item> {
    let circle = |radius| Item::line(Circle::new(centre, radius).to_path(0.001), Line::Frame);
    vec![
        circle(SMALL / 2.0),
        circle(SMALL),
        axis(centre, Vec2::new(1.0, 0.0)),
        axis(centre, Vec2::new(0.0, 1.0)),
    ]
}

/// An axis as one long dash: at this size a dot would not be seen.
fn axis(centre: Point, along: Vec2) -> Item {
    let reach = along * (SMALL + BEYOND);
    let mut path = BezPath::new();
    path.move_to(centre - reach);
    path.line_to(centre + reach);
    Item::line(path, Line::Frame)
}
