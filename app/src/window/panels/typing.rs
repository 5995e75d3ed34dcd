//! What every field for a value does when the hand comes to it.

use egui::text::{CCursor, CCursorRange};
use egui::text_edit::TextEditState;
use egui::{Id, Ui};

/// Chooses the whole text, so that typing replaces it; what was typed here before is not the
/// field's to take back but the document's.
pub(crate) fn come_to(ui: &Ui, mut state: TextEditState, (id, text): (Id, &str)) {
    let all = CCursorRange::two(CCursor::new(0), CCursor::new(text.chars().count()));
    state.cursor.set_char_range(Some(all));
    state.clear_undoer();
    state.store(ui.ctx(), id);
}
