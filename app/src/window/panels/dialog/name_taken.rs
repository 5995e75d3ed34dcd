use std::path::PathBuf;

use egui::Ui;
use reinwright_core::tongs::jaw::sketch::KeptJaw;

use super::{Reply, buttons};
use crate::window::panels::wish::JawWish;

/// A jaw is to be kept, and another own jaw has its name.
#[derive(Debug)]
pub(crate) struct NameTaken {
    /// The jaw that is to be kept.
    pub(crate) kept: Box<KeptJaw>,
    /// The file of the other one.
    pub(crate) path: PathBuf,
}

impl NameTaken {
    pub(super) fn show(&self, ui: &mut Ui) -> Option<Reply> {
        let name = &self.kept.sketch.name;
        ui.heading("The name is taken");
        ui.label(format!(
            "Another jaw called \"{name}\" is among your own. Designs that use it keep it either way."
        ));
        match buttons(ui, &["Keep both", "Replace it", "Leave it as it is"])? {
            0 => Some(Reply::Jaws(JawWish::KeepBeside(self.kept.clone()))),
            1 => {
                let replace = JawWish::Replace(self.kept.clone(), self.path.clone());
                Some(Reply::Jaws(replace))
            }
            _ => Some(Reply::Stay),
        }
    }
}
