//! What the workbench does with a style that was chosen.

use egui::Context;

use super::workbench::Workbench;
use crate::window::panels::dialog::Next;
use crate::window::panels::styles::StyleChooser;
use crate::window::panels::wish::StyleWish;

impl Workbench {
    /// Does what was asked of the style chooser.
    pub(super) fn at_styles(&mut self, ctx: &Context, wish: StyleWish) {
        match wish {
            StyleWish::Open(part) => {
                self.open.commit_typed();
                self.shown.styles = Some(StyleChooser::of(
                    self.open.document(),
                    part,
                    self.own_jaws(),
                ));
            }
            StyleWish::New(work, bar) => {
                let unit = self.open.session().units().unit();
                self.shown.styles = Some(StyleChooser::of_new(unit, (work, bar), self.own_jaws()));
            }
            StyleWish::Take(pair, part) => {
                self.shown.styles = None;
                if let Some(design) = self.open.as_design() {
                    design.take_style(*pair, part);
                }
            }
            StyleWish::Begin(pair) => {
                self.shown.styles = None;
                self.leave_for(ctx, Next::Begin(pair));
            }
            StyleWish::Close => self.shown.styles = None,
        }
    }
}
