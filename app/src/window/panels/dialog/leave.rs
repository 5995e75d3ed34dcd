use std::path::PathBuf;

use egui::Ui;
use reinwright_core::shop::family::{self, Family};
use reinwright_core::tongs::document::{self, Document};

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

/// Work that is kept against a power cut.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Kept {
    Design(Box<Document>),
    Family(Box<Family>),
}

impl Kept {
    /// What was kept, from the bytes of its file; `None` when it cannot be read.
    pub(crate) fn read(bytes: &[u8]) -> Option<Self> {
        if family::is_family(bytes) {
            let opened = family::open(bytes).ok()?;
            return Some(Self::Family(Box::new(opened.family)));
        }
        let design = document::read(bytes).ok()?;
        Some(Self::Design(Box::new(design)))
    }

    /// The text of its file.
    pub(crate) fn text(&self) -> String {
        match self {
            Self::Design(design) => document::write(design),
            Self::Family(family) => family::write(family),
        }
    }

    fn name(&self) -> &str {
        match self {
            Self::Design(design) => &design.name,
            Self::Family(family) => &family.name,
        }
    }
}

/// Work that a window could not save before it ended.
#[derive(Debug)]
pub(crate) struct Rescue {
    pub(crate) kept: Kept,
    pub(crate) path: PathBuf,
}

impl Rescue {
    pub(super) fn show(&self, ui: &mut Ui) -> Option<Reply> {
        ui.heading("Unsaved design");
        ui.label(format!(
            "The window ended last time before \"{}\" was saved. A copy was kept.",
            self.kept.name()
        ));
        match buttons(ui, &["Bring it back", "Throw it away"])? {
            0 => Some(Reply::Rescue(self.kept.clone(), self.path.clone())),
            _ => Some(Reply::Discard(self.path.clone())),
        }
    }
}
