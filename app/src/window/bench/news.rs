//! The line at the foot of the window: what was done or went wrong, or that a chooser is open; at
//! rest, where what is open lies. It is always there, so that nothing moves under the pointer.

use egui::{Label, RichText, Ui};

use super::workbench::Workbench;
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
            Some(Said::Done(text)) => (text.clone(), palette.ink),
            Some(Said::Trouble(text)) => (text.clone(), palette.stop),
            None => return,
        };
        if ui.small_button("Seen").clicked() {
            self.shown.news.hush();
        }
        ui.add(Label::new(RichText::new(text).color(colour)).wrap());
    }

    fn lies_where(&self) -> String {
        match self.open.session().path() {
            Some(path) => path.display().to_string(),
            None => "Not saved yet".to_owned(),
        }
    }
}
