//! One style or own jaw as it is shown, with the advice on it.

use reinwright_core::asked::{Bar, Work, says_lie};
use reinwright_core::draw;
use reinwright_core::paper::Drawing;
use reinwright_core::shop::{self, Advice};
use reinwright_core::tongs::jaw::sketch::KeptJaw;
use reinwright_core::tongs::jaw::{JawKind, Way};

/// What the cards are made for.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::window::panels) struct Asked {
    pub(in crate::window::panels) work: Work,
    /// As it was typed: who says how the work lies is not turned.
    pub(in crate::window::panels) said: String,
    pub(in crate::window::panels) way: Way,
    pub(in crate::window::panels) bar: Bar,
}

/// What a card is of.
#[derive(Debug, Clone)]
pub(in crate::window::panels) enum Of {
    /// A jaw of the smith's own.
    Own(Box<KeptJaw>),
    /// A style of the program's.
    Style(JawKind),
}

/// One style as it is shown.
#[derive(Debug)]
pub(in crate::window::panels) struct Shown {
    pub(super) of: Of,
    pub(in crate::window::panels) advice: Advice,
    pub(super) drawing: Drawing,
    /// Its front part, mm.
    pub(super) front: kurbo::Rect,
    /// Its jaws from their tips, and what of that is looked at.
    pub(super) end: (Drawing, kurbo::Rect),
}

fn advice(of: &Of, asked: &Asked) -> Advice {
    let (work, way) = shop::agreed(asked.work, asked.way);
    match of {
        Of::Own(kept) if says_lie(&asked.said) => {
            shop::advise_own_laid(kept, &work, way, &asked.bar)
        }
        Of::Own(kept) => shop::advise_own(kept, &work, way, &asked.bar),
        Of::Style(kind) => {
            let laid = work.laid_as_said(&asked.said, *kind);
            shop::advise_laid(*kind, &laid, way, &asked.bar)
        }
    }
}

impl Shown {
    pub(super) fn of(of: Of, asked: &Asked) -> Self {
        let advice = advice(&of, asked);
        let pair = &advice.pair;
        let model = reinwright_core::tongs::resolve(pair);
        let drawing = draw::fit_picture(pair, &model, &pair.work, 0.0);
        let mut front = drawing.bounds();
        // The reins say nothing about the jaw.
        front.x0 = front.x0.max(-0.3 * front.x1);
        let end = draw::end_picture(pair, &model, 0.0);
        let about_jaws = about_jaws(end.bounds());
        Self {
            of,
            advice,
            drawing,
            front,
            end: (end, about_jaws),
        }
    }
}

/// The square of an end view about the jaws: the reins, which are seen above and below the boss, say
/// nothing about them.
fn about_jaws(whole: kurbo::Rect) -> kurbo::Rect {
    let half = whole.width() / 2.0;
    let middle = whole.center();
    kurbo::Rect::new(whole.x0, middle.y - half, whole.x1, middle.y + half)
}
