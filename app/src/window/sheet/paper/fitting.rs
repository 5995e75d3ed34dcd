//! How a drawing lies where nobody has moved it: as large as the sheet takes it.

use egui::Rect;
use reinwright_core::draw::{self, EndView};
use reinwright_core::paper::Breaks;

use super::super::words::under_words;
use super::{Paper, RIM, TEXT};
use crate::window::paint::view::Fitted;
use crate::window::state::look::Sight;
use crate::window::state::reckon::{Answers, Brought, PairKey};

#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct FitKey {
    pub(super) area: Rect,
    pub(super) revision: u64,
    pub(super) pair: PairKey,
    pub(super) sight: Sight,
}

/// How a drawing lies where it is fitted by itself.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Laid {
    pub(super) fitted: Fitted,
    pub(super) brought: Brought,
}

impl Paper {
    pub(super) fn fitted_to(&mut self, area: Rect, answers: &mut Answers, pair: PairKey) -> Laid {
        // A picture that is traced is not broken, and so the drawing over it is not.
        let sight = match (self.sight, &self.under) {
            (Sight::Head, Some(_)) => Sight::All,
            (sight, _) => sight,
        };
        let now = FitKey {
            area,
            revision: answers.revision,
            pair,
            sight,
        };
        match self.fitted {
            Some((kept, laid)) if kept == now => laid,
            _ => {
                let laid = fitted_in(under_words(area, pair.shown), answers, pair, sight);
                self.fitted = Some((now, laid));
                laid
            }
        }
    }
}

/// The pair as it is seen largest: with the end view beside the others or under them.
fn fitted_in(area: Rect, answers: &mut Answers, pair: PairKey, sight: Sight) -> Laid {
    let model = &answers.known.model;
    let breaks = match sight {
        Sight::Head => draw::breaks(model, pair.opening + pair.shown.half_angle()),
        Sight::Rein | Sight::All => Breaks::default(),
    };
    let last = match sight {
        Sight::Rein => model.a.body.rim.half_along(),
        Sight::Head | Sight::All => f64::INFINITY,
    };
    // What is drawn with the end view at a place and text of so many mm covers this.
    let mut covered = |end: EndView, text: f64| {
        let key = PairKey {
            text,
            brought: Brought { breaks, end },
            ..pair
        };
        let mut bounds = answers.pair(key).1;
        bounds.x1 = bounds.x1.min(last);
        bounds
    };
    let mut laid = |end: EndView| {
        let fitted = Fitted::new(area, RIM, text_in(area), |text| covered(end, text));
        let across = fitted.view.rect(covered(end, fitted.text)).width();
        let brought = Brought { breaks, end };
        (Laid { fitted, brought }, across)
    };
    let (beside, across) = laid(EndView::Beside);
    // Where the sheet is wide enough nothing is gained under the others.
    if sight == Sight::Rein || across < WIDE * (area.width() - 2.0 * RIM) {
        return beside;
    }
    let (under, _) = laid(EndView::Under);
    if under.fitted.view.scale > beside.fitted.view.scale * WORTH_IT {
        under
    } else {
        beside
    }
}

/// Of the sheet's width: a drawing that takes less is as large as the sheet is high.
const WIDE: f32 = 0.97;
/// The end view leaves its place beside the jaws only for a drawing that is so much larger.
const WORTH_IT: f32 = 1.05;

/// Height of the text in an area, in points: in a low one less, or the sizes would crowd out the
/// pair.
fn text_in(area: Rect) -> f32 {
    /// Lines of text that the drawing has about room for, and the least that can be read, points.
    const LINES: f32 = 34.0;
    const LEAST: f32 = 7.5;
    (area.height() / LINES).clamp(LEAST, TEXT)
}
