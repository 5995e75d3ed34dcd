//! The pair shut on other work than its own. The steel stays as it is forged; only the angle of
//! the halves and what lies between the jaws change.

use super::{DrawOptions, pair, views};
use crate::asked::Work;
use crate::paper::Drawing;
use crate::tongs::document::Document;
use crate::tongs::model::Model;

/// The three views of the pair shut on other work, each half turned by `half_angle` (radians)
/// from the set pose, as [`crate::proof::fit::fit_on`] finds it.
pub fn pair_on(
    document: &Document,
    model: &Model,
    (work, half_angle): (&Work, f64),
    options: &DrawOptions,
) -> Drawing {
    let (document, model) = with_work(document, model, work);
    let opening = options.opening + half_angle;
    pair(
        &document,
        &model,
        &DrawOptions {
            opening,
            ..*options
        },
    )
}

/// The side view alone, without any lettering, of the pair shut on some work.
pub fn fit_picture(document: &Document, model: &Model, work: &Work, half_angle: f64) -> Drawing {
    let (document, model) = with_work(document, model, work);
    Drawing {
        items: views::side::pair(&document, &model, half_angle),
    }
}

/// The end view alone, without any lettering, of the pair shut on its own work: what tells jaws apart
/// that are alike from the side.
pub fn end_picture(document: &Document, model: &Model, half_angle: f64) -> Drawing {
    Drawing {
        items: views::end::pair(document, model, half_angle),
    }
}

/// A pair with other work between its jaws.
pub(super) fn with_work(document: &Document, model: &Model, work: &Work) -> (Document, Model) {
    let model = model.with_work(work);
    let document = Document {
        work: *work,
        ..document.clone()
    };
    (document, model)
}
