//! Which part lies under the pointer.

use egui::{Pos2, Vec2};
use kurbo::Point;
use reinwright_core::finding::Part;
use reinwright_core::paper::{Item, PathItem};

use super::ink::is_body;
use super::view::View;

/// The topmost filled area with a part under a point of the drawing.
fn part_at(items: &[Item], at: Point) -> Option<Part> {
    items.iter().rev().find_map(|item| match item {
        Item::Path(path) => path
            .part
            .filter(|_| path.fill.is_some_and(is_body) && covers(path, at)),
        Item::Text(_) => None,
        Item::Group(group) => {
            let seen = group.clip.is_none_or(|clip| clip.contains(at));
            let inside = at - group.shift;
            seen.then(|| part_at(&group.items, inside)).flatten()
        }
    })
}

/// The same under a point of the screen; where nothing lies, a hand's breadth of a pointer around
/// it counts, for thin reins seen from afar.
pub(crate) fn part_near(items: &[Item], view: View, at: Pos2) -> Option<Part> {
    /// Points around the pointer that still count.
    const REACH: f32 = 4.0;
    let around = (0..8u8).map(|i| REACH * Vec2::angled(f32::from(i) * std::f32::consts::FRAC_PI_4));
    std::iter::once(Vec2::ZERO)
        .chain(around)
        .find_map(|shift| part_at(items, view.to_drawing(at + shift)))
}

/// Even-odd, as it is filled.
fn covers(item: &PathItem, at: Point) -> bool {
    use kurbo::Shape as _;
    item.path.bounding_box().contains(at) && item.path.winding(at) % 2 != 0
}

#[cfg(test)]
mod tests {
    use super::*;
    use kurbo::{Rect, Shape as _, Vec2 as Shift};
    use reinwright_core::paper::Fill;

    fn square(part: Part, half: f64) -> Item {
        let path = Rect::new(-half, -half, half, half).to_path(0.1);
        Item::fill(path, Fill::Part(part)).of(part)
    }

    #[test]
    fn the_topmost_part_under_the_pointer_is_found() {
        let items = [square(Part::Boss, 10.0), square(Part::Rivet, 2.0)];
        assert_eq!(part_at(&items, Point::new(0.0, 0.0)), Some(Part::Rivet));
        assert_eq!(part_at(&items, Point::new(5.0, 0.0)), Some(Part::Boss));
        assert_eq!(part_at(&items, Point::new(15.0, 0.0)), None);
    }

    #[test]
    fn a_hole_is_not_the_part_around_it() {
        let mut ring = Rect::new(-10.0, -10.0, 10.0, 10.0).to_path(0.1);
        ring.extend(Rect::new(-4.0, -4.0, 4.0, 4.0).to_path(0.1));
        let ring = [Item::fill(ring, Fill::Part(Part::Boss)).of(Part::Boss)];
        assert_eq!(part_at(&ring, Point::new(0.0, 0.0)), None);
        assert_eq!(part_at(&ring, Point::new(7.0, 0.0)), Some(Part::Boss));
    }

    #[test]
    fn groups_are_looked_into_where_they_were_moved() {
        let group = Item::group("view", Shift::new(100.0, 0.0), vec![square(Part::Jaw, 5.0)]);
        assert_eq!(
            part_at(std::slice::from_ref(&group), Point::new(101.0, 0.0)),
            Some(Part::Jaw)
        );
        assert_eq!(part_at(&[group], Point::new(1.0, 0.0)), None);
    }

    #[test]
    fn arrowheads_are_no_parts() {
        let path = Rect::new(-1.0, -1.0, 1.0, 1.0).to_path(0.1);
        let arrow = [Item::fill(path, Fill::Ink).of(Part::Rein)];
        assert_eq!(part_at(&arrow, Point::ZERO), None);
    }
}
