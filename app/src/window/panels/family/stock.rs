//! The stock that can be bought, list by list, under what the set holds.

use egui::{CollapsingHeader, TextEdit, Ui};
use reinwright_core::asked::{StockList, StockShape, StockSizes, Units};

use crate::disk::memory::Stock;
use crate::window::paint::theme::Palette;
use crate::window::state::rows::capital;

/// The lists as they are shown and typed.
#[derive(Debug, Default)]
pub(super) struct StockEditor {
    stock: Stock,
    /// A text that is being typed or was refused, and why.
    draft: Option<Draft>,
}

#[derive(Debug)]
struct Draft {
    list: StockList,
    text: String,
    refused: Option<String>,
}

impl StockEditor {
    /// Shows these lists from now on.
    pub(super) fn take(&mut self, stock: &Stock) {
        if self.stock.sizes != stock.sizes || self.stock.trouble != stock.trouble {
            self.stock = stock.clone();
        }
    }

    /// Shows the lists of a unit, to be opened; gives back what they became. Notes whether one is
    /// being typed.
    pub(super) fn show(
        &mut self,
        ui: &mut Ui,
        units: Units,
        typing: &mut bool,
    ) -> Option<Box<StockSizes>> {
        if let Some(trouble) = &self.stock.trouble {
            ui.colored_label(Palette::of(ui.visuals()).stop, trouble);
        }
        let fold = CollapsingHeader::new("Stock that can be bought").id_salt("stock sizes");
        let shown = fold.show(ui, |ui| self.lists(ui, units, typing));
        ui.add_space(8.0);
        shown.body_returned.flatten().map(Box::new)
    }

    fn lists(&mut self, ui: &mut Ui, units: Units, typing: &mut bool) -> Option<StockSizes> {
        ui.label("Gaps are counted in these sizes, and filled with them. Put commas between them.");
        let mut next = None;
        for shape in StockShape::ALL {
            let list = StockList { units, shape };
            next = self.list(ui, list, typing).or(next);
        }
        let usual = StockSizes::default();
        let hint = "Every list as the program brings it along, in both units";
        let button = ui.add_enabled(self.stock.sizes != usual, egui::Button::new("Usual sizes"));
        if button.on_hover_text(hint).clicked() {
            self.draft = None;
            return Some(usual);
        }
        next
    }

    /// One list; gives back all of them when it was changed.
    fn list(&mut self, ui: &mut Ui, list: StockList, typing: &mut bool) -> Option<StockSizes> {
        let mine = self.draft.as_ref().filter(|draft| draft.list == list);
        let mut text = match mine {
            Some(draft) => draft.text.clone(),
            None => self.stock.sizes.list_text(list),
        };
        let label = ui.label(capital(list.shape.name()));
        let field = TextEdit::multiline(&mut text)
            .desired_rows(1)
            .desired_width(f32::INFINITY)
            .return_key(None)
            .char_limit(4000);
        let response = ui.add(field).labelled_by(label.id);
        *typing |= response.has_focus();
        if response.changed() {
            self.draft = Some(Draft {
                list,
                text,
                refused: None,
            });
        }
        let entered = response.has_focus() && ui.input(|i| i.key_pressed(egui::Key::Enter));
        let left = response.lost_focus() || response.changed() && !response.has_focus();
        let taken = if entered || left {
            self.put(list)
        } else {
            None
        };
        let refused = self.draft.as_ref().filter(|draft| draft.list == list);
        if let Some(why) = refused.and_then(|draft| draft.refused.as_ref()) {
            ui.colored_label(Palette::of(ui.visuals()).stop, why);
        }
        taken
    }

    /// Takes what was typed; what cannot be read stays with the reason.
    fn put(&mut self, list: StockList) -> Option<StockSizes> {
        let draft = self.draft.as_mut().filter(|draft| draft.list == list)?;
        match self.stock.sizes.with_list(list, &draft.text) {
            Ok(sizes) => {
                self.draft = None;
                (sizes != self.stock.sizes).then_some(sizes)
            }
            Err(why) => {
                draft.refused = Some(why.to_string());
                None
            }
        }
    }
}
