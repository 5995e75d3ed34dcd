//! A value of the base or of a size, to be typed, chosen or let go.

use egui::{Id, Key, Rect, RichText, Ui, vec2};
use reinwright_core::shop::family::Row;

use super::Grid;
use super::lay::words;
use crate::window::panels::family::cell::{self, Cell, Typed};
use crate::window::panels::family::seen::Seen;
use crate::window::panels::family::table::{Column, Place, TableDeed, name};

impl<D: Seen> Grid<'_, D> {
    pub(super) fn value(&mut self, ui: &mut Ui, rect: Rect, index: usize, column: Column) {
        let row = &self.set.table.rows[index];
        let (text, by_hand) = match column {
            Column::Base => (row.base.as_deref(), false),
            Column::Size(at) => match row.cells.get(at) {
                Some(cell) => {
                    let own_bar = row.field.path.starts_with("bar.") && self.set.has_own_bar(at);
                    (cell.text.as_deref(), cell.by_hand || own_bar)
                }
                None => return,
            },
        };
        let Some(text) = text else {
            words(ui, rect.shrink2(vec2(8.0, 0.0)), RichText::new("-").weak());
            return;
        };
        let place = Place {
            column,
            path: row.field.path.clone(),
        };
        let cell = Cell {
            id: Id::unique(("cell", index_of(column), &place.path)),
            rect,
            name: &name(self.set, row, column),
            hint: &hint(row, column, by_hand),
            by_hand,
            refused: self.view.is_refused(&place),
        };
        if !row.field.value.ways().is_empty() {
            let way = cell::choice(ui, &cell, text, row.field.value.ways());
            if let Some(way) = way {
                self.deeds.push(TableDeed::Put(place.clone(), way));
            }
        } else {
            self.typed(ui, &cell, text, &place);
        }
        if by_hand && cell::let_go(ui, &cell) {
            self.deeds.push(TableDeed::LetGo(place));
        }
    }

    fn typed(&mut self, ui: &mut Ui, cell: &Cell<'_>, text: &str, place: &Place) {
        let open = self.view.open.clone().filter(|(at, _)| at == place);
        let is_open = open.is_some();
        let mut draft = open.map_or_else(|| text.to_owned(), |(_, text)| text);
        match cell::typed(ui, cell, &mut draft) {
            Typed::Nothing => {}
            Typed::Reached => {
                if let Column::Size(at) = place.column {
                    self.deeds.push(TableDeed::Choose(at));
                }
            }
            Typed::Changed => {
                // A text that is open in another cell, out of sight, is put in its place.
                let other = self.view.take_text(place.clone(), draft);
                let put = other.map(|(at, text)| TableDeed::Put(at, text));
                self.deeds.extend(put);
            }
            Typed::Given => {
                self.view.open = None;
                self.deeds.push(TableDeed::Put(place.clone(), draft));
            }
            Typed::Left if !is_open => {}
            Typed::Left => {
                self.view.open = None;
                if !ui.input(|i| i.key_pressed(Key::Escape)) {
                    self.deeds.push(TableDeed::Put(place.clone(), draft));
                }
            }
        }
    }
}

fn hint(row: &Row, column: Column, by_hand: bool) -> String {
    let hint = row.field.hint;
    match column {
        Column::Base => format!(
            "{hint}\nIn the base: a change flows into every size that has not set it by hand"
        ),
        Column::Size(_) if by_hand => {
            format!("{hint}\nSet by hand for this size; the cross lets it go")
        }
        Column::Size(_) => hint.to_owned(),
    }
}

fn index_of(column: Column) -> usize {
    match column {
        Column::Base => usize::MAX,
        Column::Size(at) => at,
    }
}
