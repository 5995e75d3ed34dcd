//! What the parts list of a pair has beside its fields: the work by its name, the way to a style,
//! the nodes of a sketched jaw.

use egui::{Id, Key, RichText, TextEdit, Ui};
use reinwright_core::asked::{Field, Value, parse_work_in, says_lie};
use reinwright_core::finding::Part;
use reinwright_core::shop::held_best;
use reinwright_core::tongs::document::{Document, check_limits};

use super::{Draft, LABEL, Listed, PartsList};
use crate::window::paint::theme::Palette;
use crate::window::panels::sketch::Sketching;
use crate::window::panels::wish::{StyleWish, Wish};
use crate::window::state::look::Look;

/// Where the whole work is typed by its name; no field has this path.
const CALLED: &str = "work";

impl Listed for Document {
    type Beside = Sketching;

    const CALLED: &'static str = "What the pair is called";

    fn words(&mut self) -> [&mut String; 2] {
        [&mut self.name, &mut self.note]
    }

    fn listed(&self) -> Vec<Field> {
        self.fields()
    }

    fn set(&mut self, path: &str, value: Value) {
        self.put(path, value);
    }

    fn about(&self, row: &Field) -> Option<&'static str> {
        (row.path == "jaw.style").then(|| self.jaw.kind().about())
    }

    fn is_open(part: Part, title: &str) -> bool {
        matches!(part, Part::Work | Part::Jaw) || title == "Bar"
    }

    fn over(&mut self, list: &mut PartsList, ui: &mut Ui, look: &mut Look, part: Part) {
        if part == Part::Work {
            list.called(ui, self, look);
        }
    }

    fn under(&mut self, list: &mut PartsList, ui: &mut Ui, sketching: &mut Sketching, part: Part) {
        if matches!(part, Part::Jaw | Part::SecondJaw) {
            let asked = sketching.show(ui, self, part);
            list.asked.extend(asked.map(Wish::Jaws));
        }
    }

    fn under_field(&self, list: &mut PartsList, ui: &mut Ui, row: &Field) {
        if is_style(row) {
            list.style_chooser(ui, row);
        }
    }

    fn commit(&mut self, list: &mut PartsList) {
        if let Some(Draft::Open(text)) = list.drafts.get(CALLED).cloned() {
            list.take_called(self, &text);
        }
    }
}

impl PartsList {
    /// The whole work in words, to be typed as it is called.
    fn called(&mut self, ui: &mut Ui, document: &mut Document, look: &mut Look) {
        const HINT: &str = "Such as 3/8 x 1 flat, 5/8 hex on corners, M16, 5/8 bolt behind its head, \
            1/2 in pipe, DN 25, #5 rebar, 1 x 1 x 1/8 angle";
        ui.horizontal(|ui| {
            ui.spacing_mut().item_spacing.x = 4.0;
            let height = ui.spacing().interact_size.y;
            let left = egui::Layout::left_to_right(egui::Align::Center);
            ui.allocate_ui_with_layout(egui::vec2(LABEL, height), left, |ui| {
                ui.set_min_width(LABEL);
                ui.label("Called").on_hover_text(HINT);
            });
            let mut text = match self.drafts.get(CALLED) {
                Some(Draft::Open(text)) => text.clone(),
                Some(Draft::Refused(_)) | None => document.work.words(),
            };
            // Much that work is called is longer than the field, which goes on in a second line.
            let edit = TextEdit::multiline(&mut text)
                .id(Id::unique(("field", CALLED)))
                .desired_rows(1)
                .return_key(None)
                .desired_width(ui.available_width() - 10.0);
            let response = ui
                .add(edit)
                .accessible_name("Work as it is called")
                .on_hover_text(HINT);
            if response.has_focus() && ui.input(|i| i.key_pressed(Key::Enter)) {
                response.surrender_focus();
                self.take_called(document, &text);
            }
            if response.gained_focus() {
                look.chosen = Some(Part::Work);
            }
            if response.changed() {
                let open = Draft::Open(text.clone());
                self.drafts.insert(CALLED.to_owned(), open);
                if !response.has_focus() {
                    // A screen reader sets a value without typing it.
                    self.take_called(document, &text);
                }
            }
            if response.lost_focus() && matches!(self.drafts.get(CALLED), Some(Draft::Open(_))) {
                if ui.input(|i| i.key_pressed(Key::Escape)) {
                    self.drafts.remove(CALLED);
                } else {
                    self.take_called(document, &text);
                }
            }
        });
        if let Some(Draft::Refused(why)) = self.drafts.get(CALLED) {
            ui.label(RichText::new(why).color(Palette::of(ui.visuals()).stop));
        }
    }

    /// Takes work by its name into the document, or says why not.
    fn take_called(&mut self, document: &mut Document, text: &str) {
        let read = parse_work_in(text, document.units.unit()).map_err(|why| why.to_string());
        let within = read.and_then(|work| {
            let mut changed = document.clone();
            changed.work = work.laid_as_said(text, document.jaw.kind());
            // No style says how a sketch wants its work.
            if document.jaw.sketch().is_some() && !says_lie(text) {
                changed.work = held_best(&changed, &changed.work);
            }
            check_limits(&changed).map_err(|why| why.to_string())?;
            Ok(changed.work)
        });
        match within {
            Ok(work) => {
                self.drafts.retain(|path, _| !path.starts_with(CALLED));
                document.work = work;
            }
            Err(why) => {
                self.drafts.insert(CALLED.to_owned(), Draft::Refused(why));
            }
        }
    }

    /// The way to a style from what it must hold.
    fn style_chooser(&mut self, ui: &mut Ui, row: &Field) {
        let button = ui.button("Choose for the work…").on_hover_text(
            "All styles drawn on the work: those that suit, those that would be unsafe, and why",
        );
        if button.clicked() {
            self.asked.push(Wish::Styles(StyleWish::Open(row.part)));
        }
    }
}

/// Whether a row is the style of a jaw.
fn is_style(row: &Field) -> bool {
    matches!(row.part, Part::Jaw | Part::SecondJaw) && row.path.ends_with(".style")
}
