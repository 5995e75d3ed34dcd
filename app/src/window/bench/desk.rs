//! What a pair and a tool on the bench have in common: file and history, list of parts, bar, stages
//! and heats, with the panels that they stand in.

use egui::{Panel, Ui, UiBuilder};
use reinwright_core::shop::mend::{Mend, Values};

use crate::window::panels::parts::{Listed, PartsList};
use crate::window::panels::wish::Wish;
use crate::window::sheet::bar_strip::BarStrip;
use crate::window::sheet::stages::Stages;
use crate::window::state::heating::Heating;
use crate::window::state::history::Hand;
use crate::window::state::look::{Look, Page};
use crate::window::state::news::Said;
use crate::window::state::session::{Limited, Opened, Session};
use crate::window::state::shop_heats::ShopHeats;

/// What is open with all around it but its answers and its sheet.
pub(super) struct Desk<T> {
    pub(super) session: Session<T>,
    pub(super) look: Look,
    pub(super) strip: BarStrip,
    pub(super) stages: Stages,
    /// Its heats, as far as they are known.
    pub(super) heating: Heating,
    parts: PartsList,
}

impl<T: Listed + Limited> Desk<T> {
    pub(super) fn on(session: Session<T>, page: Page) -> Self {
        Self {
            session,
            look: Look::on(page),
            strip: BarStrip::default(),
            stages: Stages::default(),
            heating: Heating::default(),
            parts: PartsList::default(),
        }
    }

    /// The page of answers that is looked at.
    pub(super) fn page(&self) -> Page {
        self.look.page
    }

    /// Looks at a page of answers.
    pub(super) fn show_page(&mut self, page: Page) {
        self.look.page = page;
    }

    /// Looks at the drawing, where another page stands in its place.
    pub(super) fn show_drawing(&mut self) {
        self.look.page = self.look.page.beside_drawing();
    }

    /// Shows the list of parts; what cannot be saved is not begun, and the sources of heat are no
    /// longer what was changed last.
    pub(super) fn listed(
        &mut self,
        ui: &mut Ui,
        beside: &mut T::Beside,
        shop: &mut ShopHeats,
    ) -> Vec<Wish> {
        let before = self.session.now.clone();
        let shown = (&mut self.look, beside);
        let mut asked = Panel::left("parts")
            .default_size(PARTS)
            .size_range(PARTS..=420.0)
            .show(ui, |ui| {
                within(ui, |ui| self.parts.show(ui, &mut self.session.now, shown))
            })
            .inner;
        if self.session.now != before {
            shop.is_last = false;
            if let Err(why) = self.session.keep_within(before) {
                self.parts.forget();
                asked.push(Wish::Say(Said::Trouble(why)));
            }
        }
        asked
    }

    /// Whether a change is under way.
    pub(super) fn hand(&self, busy: bool) -> Hand {
        if busy || self.parts.typing {
            Hand::Moving
        } else {
            Hand::AtRest
        }
    }

    /// Takes note of the state at rest or between two changes, once all is drawn; true when another
    /// frame is needed for what is looked at.
    pub(super) fn after(&mut self, time: f64, hand: Hand) -> bool {
        self.session.feed(time, hand);
        self.look.turn()
    }

    /// Takes the last change back.
    pub(super) fn undo(&mut self) {
        if self.session.undo() {
            self.parts.forget();
        }
    }

    /// Does it again.
    pub(super) fn redo(&mut self) {
        if self.session.redo() {
            self.parts.forget();
        }
    }

    /// Puts what is being typed in its place, as if Enter had been pressed.
    pub(super) fn commit(&mut self) {
        self.parts.commit(&mut self.session.now);
    }

    /// Changes what is open, at once and so as one step; what no file could carry is not begun.
    ///
    /// # Errors
    /// One sentence that says what is outside the limits of a file.
    pub(super) fn change(&mut self, to: T) -> Result<(), String> {
        let before = std::mem::replace(&mut self.session.now, to);
        self.parts.forget();
        self.session.keep_within(before)
    }
}

impl<T: Listed + Limited + Values> Desk<T> {
    /// Takes a way to mend it, at once and so as one step; one that sets out from other values is
    /// old news.
    pub(super) fn mend(&mut self, mend: &Mend) {
        if mend.sets_out_from(&self.session.now) {
            self.session.now = mend.taken(&self.session.now);
            self.parts.forget();
        }
    }
}

/// The longest name of a choice with its field's stands in so much, in points.
const PARTS: f32 = 268.0;

/// The table of the bar is as wide as this, in points; all else is fitted to it.
const ANSWERS: f32 = 288.0;

/// The answers, at the right.
pub(super) fn answers_panel(ui: &mut Ui, show: impl FnOnce(&mut Ui)) {
    Panel::right("answers")
        .default_size(ANSWERS)
        .size_range(ANSWERS..=460.0)
        .show(ui, |ui| within(ui, show));
}

/// Shows it in the room that there is: a panel is as wide as the smith drew it, and does not grow
/// with what stands in it for a while.
fn within<R>(ui: &mut Ui, show: impl FnOnce(&mut Ui) -> R) -> R {
    let room = ui.available_rect_before_wrap();
    ui.expand_to_include_rect(room);
    let mut inside = ui.new_child(UiBuilder::new().max_rect(room));
    show(&mut inside)
}

/// The bar with its marks, under the drawing.
pub(super) fn bar_panel(ui: &mut Ui, show: impl FnOnce(&mut Ui)) {
    Panel::bottom("bar")
        .default_size(118.0)
        .size_range(90.0..=260.0)
        .resizable(true)
        .show(ui, show);
}

/// The operation that is shown, under its stage.
pub(super) fn operation_panel(ui: &mut Ui, show: impl FnOnce(&mut Ui)) {
    Panel::bottom("operation")
        .default_size(232.0)
        .size_range(80.0..=420.0)
        .resizable(true)
        .show(ui, show);
}
