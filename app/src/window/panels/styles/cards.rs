//! The styles as cards: made a few a frame, so that the window goes on, and shown by verdict.

use std::time::{Duration, Instant};

use egui::{RichText, Ui};
use lyon::tessellation::FillTessellator;
use reinwright_core::asked::{Bar, Work};
use reinwright_core::draw;
use reinwright_core::paper::Drawing;
use reinwright_core::shop::{self, Advice};
use reinwright_core::tongs::jaw::sketch::KeptJaw;
use reinwright_core::tongs::jaw::{JawKind, Verdict, Way};

use super::card::{self, Card};
use crate::window::paint::focus::follow;
use crate::window::paint::theme::Palette;

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

/// A style or an own jaw that was taken, with the advice on it.
#[derive(Debug, Clone)]
pub(in crate::window::panels) struct Taken {
    pub(in crate::window::panels) of: Of,
    pub(in crate::window::panels) advice: Advice,
}

/// One style as it is shown.
#[derive(Debug)]
pub(in crate::window::panels) struct Shown {
    of: Of,
    pub(in crate::window::panels) advice: Advice,
    pub(super) drawing: Drawing,
    /// Its front part, mm.
    pub(super) front: kurbo::Rect,
    /// Its jaws from their tips, and what of that is looked at.
    pub(super) end: (Drawing, kurbo::Rect),
}

/// The cards while they are shown. Advice and drawings are made when the work, the way or the bar
/// is another one, never for a frame.
#[derive(Debug, Default)]
pub(in crate::window::panels) struct Cards {
    /// The own jaws, which stand among the styles.
    own: Vec<KeptJaw>,
    asked: Option<Asked>,
    to_make: Vec<Of>,
    shown: Vec<Shown>,
    /// The best is to come under the keyboard once all are made.
    lead: bool,
    /// How often they were begun.
    #[cfg(test)]
    pub(super) begun: u32,
}

impl Cards {
    /// Of the styles and these own jaws.
    pub(in crate::window::panels) fn with(own: Vec<KeptJaw>) -> Self {
        Self {
            own,
            ..Self::default()
        }
    }

    /// The same, the best of which comes under the keyboard.
    pub(in crate::window::panels) fn leading(own: Vec<KeptJaw>) -> Self {
        let lead = true;
        Self {
            lead,
            ..Self::with(own)
        }
    }

    /// What they were made for last.
    pub(in crate::window::panels) fn asked(&self) -> Option<&Asked> {
        self.asked.as_ref()
    }

    /// Brings the best card under the keyboard when all are made.
    pub(in crate::window::panels) fn lead_in(&mut self) {
        self.lead = true;
    }

    /// Whether all cards are there.
    pub(in crate::window::panels) fn are_made(&self) -> bool {
        self.asked.is_some() && self.to_make.is_empty()
    }

    /// Makes the cards for this; does a part of it a frame, and asks for the next.
    pub(in crate::window::panels) fn follow(&mut self, ctx: &egui::Context, asked: Asked) {
        if self.asked.as_ref() != Some(&asked) {
            self.begin(asked);
        }
        self.make();
        if !self.to_make.is_empty() {
            ctx.request_repaint();
        }
    }

    pub(super) fn begin(&mut self, asked: Asked) {
        self.asked = Some(asked);
        self.shown.clear();
        // A sketch is whatever the smith makes of it.
        let kinds = JawKind::ALL.iter().copied();
        let styles = kinds.filter(|kind| *kind != JawKind::Sketch).map(Of::Style);
        let own = self.own.iter().map(|kept| Of::Own(Box::new(kept.clone())));
        self.to_make = own.chain(styles).collect();
        // They are taken from the end.
        self.to_make.reverse();
        #[cfg(test)]
        {
            self.begun += 1;
        }
    }

    pub(super) fn make(&mut self) {
        /// What making cards may take of a frame.
        const A_FRAMES: Duration = Duration::from_millis(8);
        let Some(asked) = &self.asked else {
            return;
        };
        let begun = Instant::now();
        while let Some(of) = self.to_make.pop() {
            let shown = Shown::of(of, asked);
            // Of one verdict the own jaws stand first, then the styles in their order.
            let verdict = shown.advice.verdict;
            let at = self
                .shown
                .partition_point(|other| other.advice.verdict <= verdict);
            self.shown.insert(at, shown);
            if begun.elapsed() > A_FRAMES {
                return;
            }
        }
    }

    /// The cards by verdict, the best first; gives back the one that was taken.
    pub(in crate::window::panels) fn show(
        &mut self,
        ui: &mut Ui,
        fills: &mut FillTessellator,
    ) -> Option<Taken> {
        let mut taken = None;
        let lead = self.are_made() && std::mem::take(&mut self.lead);
        let mut place = 0;
        let same = |a: &Shown, b: &Shown| a.advice.verdict == b.advice.verdict;
        for group in self.shown.chunk_by(same) {
            heading(ui, group[0].advice.verdict);
            let columns = card::columns(ui.available_width());
            for row in group.chunks(columns) {
                ui.horizontal_top(|ui| {
                    for shown in row {
                        let response = Card { shown, columns }.show(ui, fills);
                        if lead && place == 0 {
                            response.request_focus();
                        }
                        place += 1;
                        if response.clicked() {
                            taken = Some(Taken {
                                of: shown.of.clone(),
                                advice: shown.advice.clone(),
                            });
                        }
                    }
                });
            }
        }
        follow(ui);
        taken
    }
}

fn advice(of: &Of, asked: &Asked) -> Advice {
    let (work, way) = shop::agreed(asked.work, asked.way);
    match of {
        Of::Own(kept) => shop::advise_own(kept, &work, way, &asked.bar),
        Of::Style(kind) => {
            let laid = work.laid_as_said(&asked.said, *kind);
            shop::advise_laid(*kind, &laid, way, &asked.bar)
        }
    }
}

impl Shown {
    fn of(of: Of, asked: &Asked) -> Self {
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

fn heading(ui: &mut Ui, verdict: Verdict) {
    let palette = Palette::of(ui.visuals());
    let (words, colour) = match verdict {
        Verdict::Well => ("These hold it well", palette.ink),
        Verdict::WithAWord => ("These hold it", palette.ink),
        Verdict::Badly => ("These hold it badly", palette.faint),
        Verdict::Unsafe => ("These would be unsafe", palette.stop),
        Verdict::Cannot => ("These cannot hold it", palette.faint),
    };
    ui.add_space(4.0);
    ui.label(RichText::new(words).size(15.0).color(colour));
}
