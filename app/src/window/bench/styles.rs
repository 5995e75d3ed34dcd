//! What the workbench does with a style that was chosen.

use super::workbench::Workbench;
use crate::window::panels::styles::StyleChooser;
use crate::window::panels::wish::StyleWish;

impl Workbench {
    /// Does what was asked of the style chooser.
    pub(super) fn at_styles(&mut self, wish: StyleWish) {
        match wish {
            StyleWish::Open(part) => {
                self.open.commit_typed();
                let own = self.own_jaws();
                let design = self.open.document();
                self.shown.styles = design.map(|design| StyleChooser::of(design, part, own));
            }
            StyleWish::Take(pair, part) => {
                self.shown.styles = None;
                let design = self.open.as_design();
                let done = design.map_or(Ok(()), |design| design.take_style(*pair, part));
                self.tell(done);
            }
            StyleWish::Close => self.shown.styles = None,
        }
    }
}
