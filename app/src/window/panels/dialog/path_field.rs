use std::path::{Path, PathBuf};

use egui::text_edit::TextEditState;
use egui::{Key, TextEdit, Ui};

use super::{Purpose, Reply, buttons, trouble};
use crate::window::panels::question::lead;
use crate::window::panels::typing::come_to;

/// A path typed by hand, where the system has no chooser.
#[derive(Debug)]
pub(crate) struct PathField {
    purpose: Purpose,
    text: String,
    trouble: Option<String>,
    /// A file that is there already and that the smith was warned about.
    warned: Option<PathBuf>,
    fresh: bool,
}

impl PathField {
    pub(crate) fn new(purpose: Purpose, folder: &Path, name: &str) -> Self {
        let text = if purpose.writes() {
            folder.join(name)
        } else {
            folder.join("")
        };
        Self {
            purpose,
            text: text.display().to_string(),
            trouble: None,
            warned: None,
            fresh: true,
        }
    }

    /// The same question again, with what went wrong.
    pub(crate) fn again(purpose: Purpose, path: &Path, trouble: String) -> Self {
        Self {
            purpose,
            text: path.display().to_string(),
            trouble: Some(trouble),
            warned: None,
            fresh: true,
        }
    }

    pub(super) fn show(&mut self, ui: &mut Ui) -> Option<Reply> {
        ui.heading(self.purpose.title());
        let label = ui.label(if self.purpose.is_of_a_folder() {
            "Folder"
        } else {
            "File, with its folder"
        });
        let field = TextEdit::singleline(&mut self.text).desired_width(f32::INFINITY);
        let response = ui.add(field).labelled_by(label.id);
        if std::mem::take(&mut self.fresh) {
            response.request_focus();
            if self.purpose.is_of_a_folder() {
                // Another folder is typed over the one that stands there, not behind it.
                let state = TextEditState::load(ui.ctx(), response.id).unwrap_or_default();
                come_to(ui, state, (response.id, &self.text));
            }
        }
        lead(&response);
        if response.changed() {
            self.trouble = None;
        }
        let entered = response.lost_focus() && ui.input(|i| i.key_pressed(Key::Enter));
        trouble(ui, self.trouble.as_deref());
        let accept = if self.purpose.writes() {
            "Write"
        } else {
            "Open"
        };
        match buttons(ui, &[accept, "Cancel"]) {
            Some(0) => self.accept(),
            Some(_) => Some(Reply::Stay),
            None if entered => {
                self.fresh = true;
                self.accept()
            }
            None => None,
        }
    }

    fn accept(&mut self) -> Option<Reply> {
        let typed = self.text.trim();
        if typed.is_empty() {
            self.trouble = Some("a file name is missing: write one, with its folder".to_owned());
            return None;
        }
        let path = self.purpose.ended(PathBuf::from(typed));
        let there = self.purpose.writes() && path.exists();
        if there && self.warned.as_ref() != Some(&path) {
            let onto = match self.purpose {
                Purpose::Folder(_) | Purpose::Tools(_) => "into",
                Purpose::Open
                | Purpose::Picture
                | Purpose::Shelf
                | Purpose::Shop
                | Purpose::CutDesign
                | Purpose::CutPdf(_)
                | Purpose::JobSheet(_)
                | Purpose::Save(_)
                | Purpose::Pdf(..)
                | Purpose::CheckPage(_)
                | Purpose::Svg(_)
                | Purpose::OwnJaw(_) => "over",
            };
            self.trouble = Some(format!(
                "{} is there already: accept once more to write {onto} it, or change the name",
                path.display()
            ));
            self.warned = Some(path);
            return None;
        }
        Some(Reply::Path(self.purpose.clone(), path))
    }
}
