//! What the workbench does with a style that was chosen.

use egui::Context;
use reinwright_core::document::{Document, Part};

use super::{StyleChooser, StyleWish};
use crate::window::dialog::Next;
use crate::window::workbench::Workbench;

impl Workbench {
    /// Does what was asked of the style chooser.
    pub(in crate::window) fn at_styles(&mut self, ctx: &Context, wish: StyleWish) {
        match wish {
            StyleWish::Open(part) => {
                self.commit_typed();
                self.styles = Some(StyleChooser::of(&self.session.document, part));
            }
            StyleWish::New(work, bar) => {
                let unit = self.session.document.units.unit();
                self.styles = Some(StyleChooser::of_new(unit, work, bar));
            }
            StyleWish::Take(pair, part) => {
                self.styles = None;
                self.take_style(*pair, part);
            }
            StyleWish::Begin(pair) => {
                self.styles = None;
                self.leave_for(ctx, Next::Begin(pair));
            }
            StyleWish::Close => self.styles = None,
        }
    }

    /// Puts the jaw and the work of a pair into the design, at once and so as one step.
    fn take_style(&mut self, pair: Document, part: Part) {
        let design = &mut self.session.document;
        // A name that the smith gave stays; one that says what it is goes with it.
        let named = design.name != design.usual_name();
        design.work = pair.work;
        if part == Part::SecondJaw {
            design.second_jaw = Some(pair.jaw);
        } else {
            design.jaw = pair.jaw;
        }
        if !named {
            design.name = design.usual_name();
        }
        self.parts.forget();
    }
}
