//! What every field for a value does when the hand comes to it.

use egui::text::{CCursor, CCursorRange};
use egui::text_edit::TextEditState;
use egui::{Id, Response, TextEdit, Ui};
use reinwright_core::asked::capital;

/// Chooses the whole text, so that typing replaces it; what was typed here before is not the
/// field's to take back but the document's.
pub(crate) fn come_to(ui: &Ui, mut state: TextEditState, (id, text): (Id, &str)) {
    let all = CCursorRange::two(CCursor::new(0), CCursor::new(text.chars().count()));
    state.cursor.set_char_range(Some(all));
    state.clear_undoer();
    state.store(ui.ctx(), id);
}

/// A text that is read as it is typed.
#[derive(Debug, Default)]
pub(super) struct Field {
    pub(super) text: String,
    trouble: Option<String>,
}

impl Field {
    /// With a text in it.
    pub(super) fn with(text: String) -> Self {
        Self {
            text,
            trouble: None,
        }
    }

    /// Reads what stands in the field, or keeps why it cannot be read.
    pub(super) fn read<T, E: ToString>(
        &mut self,
        read: impl Fn(&str) -> Result<T, E>,
    ) -> Option<T> {
        let found = read(&self.text);
        self.trouble = found.as_ref().err().map(ToString::to_string);
        found.ok()
    }

    /// Nothing is wrong with a field that nothing stands in yet.
    pub(super) fn forget_trouble(&mut self) {
        self.trouble = None;
    }

    /// Why it could not be read.
    #[cfg(test)]
    pub(super) fn trouble(&self) -> Option<&str> {
        self.trouble.as_deref()
    }

    /// Shows it behind its label.
    pub(super) fn show(&mut self, ui: &mut Ui, (label, hint): (&str, &str)) -> Response {
        let label = ui.label(label);
        let edit = TextEdit::singleline(&mut self.text).desired_width(230.0);
        ui.add(edit).labelled_by(label.id).on_hover_text(hint)
    }

    /// Says what was wrong.
    pub(super) fn say(&self, ui: &mut Ui) {
        let trouble = self.trouble.as_deref().map(capital);
        super::dialog::trouble(ui, trouble.as_deref());
    }
}
