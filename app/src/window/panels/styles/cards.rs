//! The styles as cards: made a few a frame, so that the window goes on, and shown by verdict.

use std::time::{Duration, Instant};

use egui::{RichText, Ui};
use lyon::tessellation::FillTessellator;
use reinwright_core::shop::Advice;
use reinwright_core::tongs::jaw::sketch::KeptJaw;
use reinwright_core::tongs::jaw::{JawKind, Verdict};

use super::card::{self, Card};
use super::shown::{Asked, Of, Shown};
use crate::window::paint::focus::follow;
use crate::window::paint::theme::Palette;

/// A style or an own jaw that was taken, with the advice on it.
#[derive(Debug, Clone)]
pub(in crate::window::panels) struct Taken {
    pub(in crate::window::panels) of: Of,
    pub(in crate::window::panels) advice: Advice,
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
