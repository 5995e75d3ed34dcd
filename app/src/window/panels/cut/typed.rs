//! A text that is taken with Enter; what cannot be read stays, with why, and changes nothing.

use egui::{Key, TextEdit, Ui};

use crate::window::panels::dialog;

/// A text being typed.
#[derive(Debug, Default)]
pub(super) struct Typed {
    pub(super) text: String,
    trouble: Option<String>,
}

/// What stands about a field.
pub(super) struct About<'a> {
    pub(super) name: &'a str,
    /// What could stand there.
    pub(super) hint: &'a str,
    pub(super) tip: &'a str,
    pub(super) width: f32,
}

impl Typed {
    /// Shows the field; whether Enter was pressed in it.
    pub(super) fn show(&mut self, ui: &mut Ui, about: &About<'_>) -> bool {
        let edit = TextEdit::singleline(&mut self.text)
            .desired_width(about.width)
            .char_limit(400)
            .hint_text(about.hint);
        let field = ui
            .add(edit)
            .on_hover_text(about.tip)
            .accessible_name(about.name);
        if field.changed() {
            self.trouble = None;
        }
        field.lost_focus() && ui.input(|i| i.key_pressed(Key::Enter))
    }

    /// Takes what was read, or says why it cannot be.
    pub(super) fn take<T>(&mut self, read: Result<T, String>) -> Option<T> {
        match read {
            Ok(read) => {
                self.text.clear();
                self.trouble = None;
                Some(read)
            }
            Err(why) => {
                self.trouble = Some(why);
                None
            }
        }
    }

    /// Says what was wrong.
    pub(super) fn say(&self, ui: &mut Ui) {
        dialog::trouble(ui, self.trouble.as_deref());
    }
}
