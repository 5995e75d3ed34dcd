use std::path::PathBuf;

use egui::Ui;

use super::{Next, Reply, buttons};

/// Unsaved work stands in the way.
#[derive(Debug)]
pub(crate) struct Leave {
    pub(crate) name: String,
    pub(crate) next: Next,
}

impl Leave {
    pub(super) fn show(&self, ui: &mut Ui) -> Option<Reply> {
        ui.heading("Not saved");
        ui.label(format!("{} has changes that are not saved.", self.name));
        match buttons(ui, &["Save first", "Throw the changes away", "Stay here"])? {
            0 => Some(Reply::SaveThen(self.next.clone())),
            1 => Some(Reply::Leave(self.next.clone())),
            _ => Some(Reply::Stay),
        }
    }
}

/// The file is no longer what was opened: another program, or another window, saved to it.
#[derive(Debug)]
pub(crate) struct Changed {
    pub(crate) path: PathBuf,
    pub(crate) next: Option<Next>,
}

impl Changed {
    pub(super) fn show(&self, ui: &mut Ui) -> Option<Reply> {
        ui.heading("Changed by another");
        ui.label(format!(
            "{} was saved by another window or program since it was opened here. What stands in it \
             now is kept among its earlier versions if you save over it.",
            self.path.display()
        ));
        let (path, next) = (self.path.clone(), self.next.clone());
        match buttons(
            ui,
            &[
                "Keep mine",
                "Take theirs",
                "Save as another file",
                "Stay here",
            ],
        )? {
            0 => Some(Reply::KeepMine(path, next)),
            1 => Some(Reply::TakeTheirs(path)),
            2 => Some(Reply::Ask(super::Purpose::Save(next))),
            _ => Some(Reply::Stay),
        }
    }
}
