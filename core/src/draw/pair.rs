//! The pair: three views aligned, with the dimensions that a smith sets a caliper to.

use kurbo::Point;

use super::arrange::{arrange, looking_arrow};
use super::sizes::{gaps, side_rows, top_rows, whole_length};
use super::subject::Subject;
use super::views::work::far_end;
use super::{DrawOptions, Sizes, views};
use crate::paper::dimension::segment;
use crate::paper::{Breaks, Drawing, Item, Line};
use crate::tongs::document::Document;
use crate::tongs::model::Model;

/// The three views of a pair with the work in the jaws, without sizes and names: text of any size
/// can be set about them.
#[derive(Debug, Clone)]
pub struct BarePair {
    side: Vec<Item>,
    top: Vec<Item>,
    end: Vec<Item>,
}

/// The pair without sizes and names, each half turned past the set pose by so much, radians.
pub fn bare(document: &Document, model: &Model, (opening, breaks): (f64, Breaks)) -> BarePair {
    let [side, top] = [
        views::side::pair(document, model, opening),
        views::top::pair(document, model),
    ]
    .map(|mut view| {
        view.push(axis(model));
        breaks.of(view)
    });
    BarePair {
        side,
        top,
        end: views::end::pair(document, model, opening),
    }
}

/// The pair: side, top and end view, aligned, with the work in the jaws. Origin at the rivet in
/// the side view.
pub fn pair(document: &Document, model: &Model, options: &DrawOptions) -> Drawing {
    let bare = bare(document, model, (options.opening, options.breaks));
    dimensioned((document, model), bare, options)
}

/// The same of views that were drawn with the opening and the breaks of these options.
pub fn dimensioned(
    (document, model): (&Document, &Model),
    bare: BarePair,
    options: &DrawOptions,
) -> Drawing {
    let subject = Subject {
        document,
        model,
        opening: options.opening,
        breaks: options.breaks,
        scale: options.scale(),
    };
    let BarePair {
        mut side,
        mut top,
        end,
    } = bare;
    if options.end.needs_arrow(document.projection) {
        side.extend(looking_arrow(model, subject.scale));
    }
    if options.sizes != Sizes::None {
        side.extend(gaps(&subject, &side));
    }
    // An open pair has its gap and nothing else that is worth measuring.
    match options.sizes {
        Sizes::All if options.opening == 0.0 => {
            side.extend(side_rows(&subject, &side));
            top.extend(top_rows(&subject, &top));
        }
        Sizes::OfTheSet if options.opening == 0.0 => side.extend(whole_length(&subject, &side)),
        Sizes::All | Sizes::OfTheSet | Sizes::None => {}
    }
    options
        .views
        .of(arrange(&subject, options, [side, top, end]))
}

/// How far an axis stands out past what it runs through, mm.
const PAST: f64 = 6.0;

/// The axis of the tongs, through rivet and work.
fn axis(model: &Model) -> Item {
    let ends = (model.a.rein_end() - PAST, far_end(model) + PAST);
    let mut path = segment(Point::new(ends.0, 0.0), Point::new(ends.1, 0.0));
    let up = model.a.body.rim.half_across() + PAST;
    path.move_to((0.0, -up));
    path.line_to((0.0, up));
    Item::line(path, Line::Centre)
}
