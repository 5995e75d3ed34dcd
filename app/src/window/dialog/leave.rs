use std::path::PathBuf;

use egui::Ui;
use reinwright_core::document::Document;

use super::{Next, Reply, buttons};

/// Unsaved work stands in the way.
#[derive(Debug)]
pub(in crate::window) struct Leave {
    pub(in crate::window) name: String,
    pub(in crate::window) next: Next,
}

impl Leave {
    pub(super) fn show(&self, ui: &mut Ui) -> Option<Reply> {
        ui.heading("Not saved");
        ui.label(format!("{} has changes that are not saved.", self.name));
        match buttons(ui, &["Save first", "Leave the changes", "Stay here"])? {
            0 => Some(Reply::SaveThen(self.next.clone())),
            1 => Some(Reply::Leave(self.next.clone())),
            _ => Some(Reply::Stay),
        }
    }
}

/// A design that a window could not save before it ended.
#[derive(Debug)]
pub(in crate::window) struct Rescue {
    pub(in crate::window) document: Box<Document>,
    pub(in crate::window) path: PathBuf,
}

impl Rescue {
    pub(super) fn show(&self, ui: &mut Ui) -> Option<Reply> {
        ui.heading("Unsaved design");
        ui.label(format!(
            "The window ended last time before \"{}\" was saved. A copy was kept.",
            self.document.name
        ));
        match buttons(ui, &["Bring it back", "Throw it away"])? {
            0 => Some(Reply::Rescue(self.document.clone(), self.path.clone())),
            _ => Some(Reply::Discard(self.path.clone())),
        }
    }
}
