//! The line at the foot of the window: what was done or went wrong, or that a chooser is open; at
//! rest, where what is open lies. It is always there, so that nothing moves under the pointer.

use std::sync::mpsc::{Receiver, TryRecvError};

use egui::{Label, RichText, Ui};

use super::workbench::Workbench;
use crate::disk::viewer;
use crate::window::paint::theme::Palette;
use crate::window::state::news::Said;

impl Workbench {
    pub(super) fn news(&mut self, ui: &mut Ui) {
        ui.horizontal(|ui| {
            if self.asked.asking.is_some() {
                self.chooser_is_open(ui);
            } else if self.shown.news.said().is_some() {
                self.said(ui);
            } else {
                ui.add(Label::new(RichText::new(self.lies_where()).weak()).truncate());
            }
        });
    }

    fn chooser_is_open(&mut self, ui: &mut Ui) {
        ui.label("The system's file chooser is open.");
        if ui.button("Type the path instead").clicked() {
            self.ask_own_field();
        }
    }

    fn said(&mut self, ui: &mut Ui) {
        let palette = Palette::of(ui.visuals());
        let (text, colour) = match self.shown.news.said() {
            Some(Said::Done(text) | Said::Printed(text, _)) => (text.clone(), palette.ink),
            Some(Said::Trouble(text)) => (text.clone(), palette.stop),
            Some(Said::Hint(text)) => ((*text).to_owned(), palette.ink),
            None => return,
        };
        if ui.small_button("Seen").clicked() {
            if let Some(Said::Hint(_)) = self.shown.news.said() {
                self.remembered.memory.note_hint();
            }
            self.shown.news.hush();
        }
        if let Some(Said::Printed(_, path)) = self.shown.news.said() {
            let button = ui.small_button("Open the pages");
            if button.on_hover_text("In the system's viewer").clicked() {
                self.shown.viewing = Some(viewer::open(ui.ctx(), path));
            }
        }
        ui.add(Label::new(RichText::new(text).color(colour)).wrap());
    }

    /// Says why the system's viewer did not come, once that is known.
    pub(super) fn poll_viewer(&mut self) {
        let told = self.shown.viewing.as_ref().map(Receiver::try_recv);
        match told {
            Some(Ok(why)) => self.tell(Err(why)),
            Some(Err(TryRecvError::Disconnected)) => self.shown.viewing = None,
            Some(Err(TryRecvError::Empty)) | None => {}
        }
    }

    fn lies_where(&self) -> String {
        match self.open.session().path() {
            Some(path) => path.display().to_string(),
            None => "Not saved yet".to_owned(),
        }
    }
}
