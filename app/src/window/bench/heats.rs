//! What the workbench does with the heats of a design or a tool.

use super::open::Open;
use super::workbench::Workbench;
use crate::window::panels::wish::HeatWish;
use crate::window::state::history::Hand;
use crate::window::state::look::Page;
use crate::window::state::shop_heats::ShopHeats;

/// What is said where heats are asked of a family of pairs, and of one of tools.
const OF_ONE_DESIGN: &str = "Heats are of one design, and a family is open: choose a size and \
                             press \"Take out as a design\" first";
const OF_ONE_TOOL: &str = "Heats are of one tool, and a family is open: choose a size and press \
                           \"Take out as a tool\" first";

impl Workbench {
    /// Shows the page of heats, with the sources as they stand on disk.
    pub(super) fn show_heats(&mut self) {
        match &mut self.open {
            Open::Design(design) => {
                self.remembered.heats.look_again();
                design.desk.show_page(Page::Heats);
            }
            Open::Tool(tool) => {
                self.remembered.heats.look_again();
                tool.desk.show_page(Page::Heats);
            }
            Open::Family(_) => self.tell(Err(OF_ONE_DESIGN.to_owned())),
            Open::Tools(_) => self.tell(Err(OF_ONE_TOOL.to_owned())),
        }
    }

    /// The shop's sources, where they were the last thing that was changed on the page of heats.
    pub(super) fn heats_shown(&self) -> Option<&ShopHeats> {
        let is_seen = match &self.open {
            Open::Design(own) => own.desk.page() == Page::Heats,
            Open::Tool(own) => own.desk.page() == Page::Heats,
            Open::Family(_) | Open::Tools(_) => false,
        };
        let heats = &self.remembered.heats;
        (is_seen && heats.is_last).then_some(heats)
    }

    /// Takes the last change back, of the sources where that was the last.
    pub(super) fn undo(&mut self) {
        if self.heats_shown().is_some_and(ShopHeats::can_undo) {
            self.remembered.heats.undo();
        } else {
            self.open.undo();
        }
    }

    /// Does it again.
    pub(super) fn redo(&mut self) {
        if self.heats_shown().is_some_and(ShopHeats::can_redo) {
            self.remembered.heats.redo();
        } else {
            self.open.redo();
        }
    }

    /// Does what was asked of the heats.
    pub(super) fn at_heats(&mut self, wish: HeatWish) {
        match wish {
            HeatWish::KeepMine => self.remembered.heats.keep(),
            HeatWish::TakeTheirs => self.remembered.heats.read(),
            HeatWish::Scale(percent) => {
                let done = match &mut self.open {
                    Open::Design(own) => own.take_scale(percent),
                    Open::Tool(own) => own.take_scale(percent),
                    Open::Family(_) | Open::Tools(_) => Ok(()),
                };
                self.tell(done);
            }
        }
    }

    /// Keeps what was changed of the sources, once the hand is at rest.
    pub(super) fn feed_heats(&mut self, time: f64, busy: bool) {
        let hand = if busy { Hand::Moving } else { Hand::AtRest };
        self.remembered.heats.feed(time, hand);
    }
}
