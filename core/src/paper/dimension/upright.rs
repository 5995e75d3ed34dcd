//! A dimension square to the rows, where there is room for its text.

use kurbo::{Point, Rect, Vec2};

use super::{Scale, arrow, label, segment};
use crate::finding::Part;
use crate::paper::lettering::Taken;
use crate::paper::{Align, Item, Line};

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
