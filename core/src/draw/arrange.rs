//! The views set about the side view, with their names.

use kurbo::{Affine, Point, Rect, Vec2};

use super::names::{Over, clear_of, over_rein, view_title, width};
use super::subject::Subject;
use super::{DrawOptions, Names};
use crate::paper::dimension::{Scale, arrow, segment};
use crate::paper::lettering::clear;
use crate::paper::{Align, Drawing, Item, Line, Projection, View, bounds};
use crate::shape::sweep::Edge;
use crate::tongs::model::Model;

/// Between one view and the next, in text sizes.
const BETWEEN: f64 = 2.2;

/// Where the end view stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum EndView {
    /// Beside the jaw tips, on the axis.
    #[default]
    Beside,
    /// Under the other views, where a sheet is narrow; an arrow at the tips says which way it
    /// looks (reference arrows, ISO 5456-2).
    Under,
}

impl EndView {
    /// Whether the arrow must be drawn: always where the view does not stand as the projection
    /// has it. In first angle it would belong beyond the rein ends, a sheet away.
    pub(super) fn needs_arrow(self, projection: Projection) -> bool {
        projection == Projection::FirstAngle || self == Self::Under
    }
}

/// Where the top and the end view stand, from the side view, mm on paper.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Shifts {
    /// The top view.
    pub top: Vec2,
    /// The end view.
    pub end: Vec2,
}

impl Shifts {
    /// Read off a drawing that [`pair`](super::pair()) made; views that it does not have stand at the origin.
    pub fn of(drawing: &Drawing) -> Self {
        let of = |view: View| {
            let mut groups = drawing.items.iter().filter_map(|item| match item {
                Item::Group(group) => Some(group),
                Item::Path(_) | Item::Text(_) => None,
            });
            let shown = groups.find(|group| group.view == Some(view));
            shown.map_or(Vec2::ZERO, |group| group.shift)
        };
        Self {
            top: of(View::Top),
            end: of(View::End),
        }
    }
}

/// What the end view is called where an arrow with this letter says which way it looks.
const END_BY_ARROW: &str = "End view A";

/// Sets the views about the side view and names them.
pub(super) fn arrange(
    subject: &Subject<'_>,
    options: &DrawOptions,
    views: [Vec<Item>; 3],
) -> Drawing {
    let scale = subject.scale;
    let [mut side, mut top, end] = views
        .each_ref()
        .map(|items| bounds(items).unwrap_or(Rect::ZERO));
    let (over_side, over_top) = over_reins(subject, &views);
    // A view reaches as high and as far as its name.
    let named = [
        (View::Side, &mut side, over_side),
        (View::Top, &mut top, over_top),
    ];
    let named = named.into_iter().filter(|_| options.names == Names::Drawn);
    for (view, area, over) in named {
        area.y1 = area.y1.max(over.y + scale.text);
        area.x1 = area.x1.max(over.x + width(view.name(), scale));
    }
    let over_end = Point::new(end.center().x, end.y1 + 0.9 * scale.text);
    let shifts = options
        .shifts
        .unwrap_or_else(|| shifts(subject, options.end, [side, top, end]));
    let end_name = if options.end.needs_arrow(subject.document.projection) {
        END_BY_ARROW
    } else {
        View::End.name()
    };
    let titles = [
        (View::Side, View::Side.name(), over_side),
        (View::Top, View::Top.name(), over_top),
        (View::End, end_name, over_end),
    ];
    let shifts = [Vec2::ZERO, shifts.top, shifts.end];
    let mut items = Vec::new();
    for ((mut drawn, shift), (view, name, at)) in views.into_iter().zip(shifts).zip(titles) {
        if options.names == Names::Drawn || view == View::End {
            drawn.extend(view_title((view, name), at, scale));
        }
        items.push(Item::view(view, name, shift, clear(drawn)));
    }
    Drawing { items }
}

/// Where the views stand that cover so much with their names.
fn shifts(subject: &Subject<'_>, at: EndView, [side, top, end]: [Rect; 3]) -> Shifts {
    let text = subject.scale.text;
    let gap = BETWEEN * text;
    let top_shift = match subject.document.projection {
        Projection::ThirdAngle => side.y1 + gap - top.y0,
        Projection::FirstAngle => side.y0 - gap - top.y1,
    };
    let lowest = side.y0.min(top.y0 + top_shift);
    let end = match at {
        EndView::Beside => Vec2::new(side.x1.max(top.x1) + gap - end.x0, 0.0),
        EndView::Under => {
            let jaw = &subject.model.a;
            let under = f64::midpoint(jaw.heel(), jaw.tip()) - end.center().x;
            // Its name stands over it.
            Vec2::new(under, lowest - gap - 2.0 * text - end.y1)
        }
    };
    Shifts {
        top: Vec2::new(0.0, top_shift),
        end,
    }
}

/// Where the names of the side and the top view stand.
fn over_reins(subject: &Subject<'_>, [side, top, _]: &[Vec<Item>; 3]) -> (Point, Point) {
    let (model, scale) = (subject.model, subject.scale);
    let over = |pose: Affine, edge: Edge| Over {
        half: &model.b,
        pose,
        edge,
        breaks: subject.breaks,
    };
    let turned = Affine::rotate(-subject.opening) * Model::half_b_pose();
    let over_side = over_rein(&over(turned, Edge::Outer), scale);
    let over_top = over_rein(&over(Affine::IDENTITY, Edge::Far), scale);
    (
        clear_of(over_side, View::Side.name(), side, scale),
        clear_of(over_top, View::Top.name(), top, scale),
    )
}

/// The reference arrow of the end view: level, towards the jaw tips, under what stands out of them,
/// where it takes no width of its own.
pub(super) fn looking_arrow(model: &Model, scale: Scale) -> Vec<Item> {
    /// In text sizes: off the tips, under the work, and its length.
    const OFF: f64 = 0.7;
    const UNDER: f64 = 1.9;
    const LONG: f64 = 2.4;
    let low = -model.work.depth / 2.0 - UNDER * scale.text;
    let end = Point::new(model.a.tip().max(model.b.tip()) + OFF * scale.text, low);
    let start = end + Vec2::new(LONG * scale.text, 0.0);
    let letter = start + Vec2::new(0.3 * scale.text, -0.36 * scale.text);
    vec![
        Item::line(segment(start, end), Line::Outline),
        arrow(end, Vec2::new(-1.0, 0.0), scale),
        Item::text(letter, "A", scale.text, Align::Start),
    ]
}
