//! The parts list: every value that can be set, under the part that it shapes.

mod pair;
mod tool;

use std::collections::BTreeMap;

use egui::{CollapsingHeader, ComboBox, Id, Key, Modifiers, Rect, RichText, Shape, TextEdit, Ui};
use reinwright_core::asked::{Field, Step, Value};
use reinwright_core::finding::Part;

use super::typing::come_to;
use super::wish::Wish;
use crate::window::paint::focus::follow;
use crate::window::paint::ink::colour_of;
use crate::window::paint::theme::Palette;
use crate::window::state::command::times_pressed;
use crate::window::state::look::Look;
use crate::window::state::rows::{capital, elsewise, group_title, rows, stepped};
use crate::window::state::session::Content;

/// Width of the labels before the fields, in points.
const LABEL: f32 = 96.0;
/// Height of a list to choose from, in points: all tools are seen at once.
const LIST: f32 = 380.0;
/// Width of a step button, in points.
const STEP: f32 = 20.0;

/// What the list walks, and what stands in it beside the fields.
pub(crate) trait Listed: Content {
    /// What is chosen beside the document while it is edited.
    type Beside;

    /// What stands in an empty field for its name.
    const CALLED: &'static str;

    /// Its name and its note, to be typed.
    fn words(&mut self) -> [&mut String; 2];

    /// Every field, in order.
    fn listed(&self) -> Vec<Field>;

    /// Puts a value under a path.
    fn set(&mut self, path: &str, value: Value);

    /// What a choice is, beside its hint.
    fn about(&self, row: &Field) -> Option<&'static str>;

    /// Whether the fields under a title show from the start.
    fn is_open(part: Part, title: &str) -> bool;

    /// What stands over the fields of a part.
    fn over(&mut self, list: &mut PartsList, ui: &mut Ui, look: &mut Look, part: Part);

    /// What stands under them.
    fn under(&mut self, list: &mut PartsList, ui: &mut Ui, beside: &mut Self::Beside, part: Part);

    /// What stands under one field.
    fn under_field(&self, list: &mut PartsList, ui: &mut Ui, row: &Field);

    /// Takes what is typed beside the fields.
    fn commit(&mut self, list: &mut PartsList);
}

/// What is being typed, by the path of its field.
#[derive(Debug, Default)]
pub(crate) struct PartsList {
    drafts: BTreeMap<String, Draft>,
    /// Whether name or note is being typed.
    pub(crate) typing: bool,
    /// What was asked for while the list was drawn.
    asked: Vec<Wish>,
}

/// A text that is not yet, or could not be, put into the document.
#[derive(Debug, Clone)]
enum Draft {
    /// Being typed.
    Open(String),
    /// Refused, and why; the old value stays.
    Refused(String),
}

impl PartsList {
    /// Forgets what was being typed.
    pub(crate) fn forget(&mut self) {
        self.drafts.clear();
    }

    /// Puts everything that is being typed into the document, as if Enter had been pressed.
    pub(crate) fn commit<T: Listed>(&mut self, document: &mut T) {
        for row in rows(document.listed(), document.units()) {
            if let Some(Draft::Open(text)) = self.drafts.get(&row.path).cloned() {
                self.take(document, &row, &text);
            }
        }
        document.commit(self);
    }

    /// Shows the list; edits go straight into the document, and what else was asked for is given
    /// back.
    pub(crate) fn show<T: Listed>(
        &mut self,
        ui: &mut Ui,
        document: &mut T,
        (look, beside): (&mut Look, &mut T::Beside),
    ) -> Vec<Wish> {
        self.name_and_note(ui, document);
        ui.separator();
        egui::ScrollArea::vertical()
            .auto_shrink([false, false])
            .show(ui, |ui| {
                let rows = rows(document.listed(), document.units());
                for group in rows.chunk_by(|a, b| title(a) == title(b)) {
                    self.group(ui, document, (look, beside), group);
                }
                look.reveal = None;
                follow(ui);
            });
        std::mem::take(&mut self.asked)
    }

    fn name_and_note<T: Listed>(&mut self, ui: &mut Ui, document: &mut T) {
        let [name, note] = document.words();
        let name = TextEdit::singleline(name)
            .desired_width(f32::INFINITY)
            .char_limit(200)
            .hint_text(T::CALLED);
        let name = ui.add(name).accessible_name("Name");
        let note = TextEdit::multiline(note)
            .desired_width(f32::INFINITY)
            .desired_rows(1)
            .char_limit(20_000)
            .hint_text("Notes");
        let note = egui::ScrollArea::vertical()
            .id_salt("note")
            .max_height(46.0)
            .show(ui, |ui| ui.add(note).accessible_name("Note"))
            .inner;
        self.typing = name.has_focus() || note.has_focus();
    }

    fn group<T: Listed>(
        &mut self,
        ui: &mut Ui,
        document: &mut T,
        (look, beside): (&mut Look, &mut T::Beside),
        rows: &[Field],
    ) {
        let (part, title) = (rows[0].part, title(&rows[0]));
        let wanted = look.reveal == Some(part) && title == capital(part.name());
        let wash = ui.painter().add(Shape::Noop);
        let header = CollapsingHeader::new(RichText::new(&title).size(15.0))
            .id_salt(&title)
            .default_open(T::is_open(part, &title))
            .open(wanted.then_some(true))
            .show_unindented(ui, |ui| {
                document.over(self, ui, look, part);
                self.fields(ui, document, look, rows);
                document.under(self, ui, beside, part);
            });
        let head = across(header.header_response.rect, ui);
        let all = header
            .body_response
            .map_or(head, |body| head.union(across(body.rect, ui)));
        if !matches!(part, Part::Pair | Part::Tool) {
            mark(ui, head, part, look, wash);
            if ui.rect_contains_pointer(all) {
                look.point_at(part);
            }
        }
        if header.header_response.clicked() {
            look.chosen = Some(part);
        }
        if wanted {
            ui.scroll_to_rect(all, Some(egui::Align::Center));
        }
    }

    fn fields<T: Listed>(
        &mut self,
        ui: &mut Ui,
        document: &mut T,
        look: &mut Look,
        rows: &[Field],
    ) {
        let mut section = None;
        for row in rows {
            if row.section() != section {
                section = row.section();
                if let Some(section) = &section {
                    ui.weak(capital(section));
                }
            }
            self.field(ui, document, look, row);
        }
        ui.add_space(4.0);
    }

    fn field<T: Listed>(&mut self, ui: &mut Ui, document: &mut T, look: &mut Look, row: &Field) {
        ui.horizontal(|ui| {
            let hint = hint(row, document);
            ui.spacing_mut().item_spacing.x = 4.0;
            let height = ui.spacing().interact_size.y;
            let left = egui::Layout::left_to_right(egui::Align::Center);
            ui.allocate_ui_with_layout(egui::vec2(LABEL, height), left, |ui| {
                ui.set_min_width(LABEL);
                ui.add(egui::Label::new(row.label).truncate())
                    .on_hover_text(&hint);
            });
            let room = ui.available_width();
            match &row.value {
                Value::Choice { .. } => {
                    if let Some(chosen) = choice(ui, row, (room, &hint)) {
                        document.set(&row.path, chosen);
                        look.chosen = Some(row.part);
                    }
                }
                Value::Length(_) | Value::Angle(_) | Value::Percent(_) | Value::Count(_) => {
                    self.typed(ui, document, look, (row, room, &hint));
                    self.steps(ui, document, row);
                }
            }
        });
        document.under_field(self, ui, row);
        if let Some(Draft::Refused(why)) = self.drafts.get(&row.path) {
            ui.label(RichText::new(why).color(Palette::of(ui.visuals()).stop));
        }
    }

    /// A text field for a value.
    fn typed<T: Listed>(
        &mut self,
        ui: &mut Ui,
        document: &mut T,
        look: &mut Look,
        (row, room, hint): (&Field, f32, &str),
    ) {
        let id = Id::unique(("field", &row.path));
        self.step_keys(ui, document, (row, id));
        let mut text = match self.drafts.get(&row.path) {
            Some(Draft::Open(text)) => text.clone(),
            Some(Draft::Refused(_)) | None => row.value.to_string(),
        };
        let width = room - 2.0 * (STEP + 4.0) - 10.0;
        let output = TextEdit::singleline(&mut text)
            .id(id)
            .desired_width(width)
            .show(ui);
        let response = output
            .response
            .response
            .accessible_name(row.full_name())
            .on_hover_text(hint);
        if response.gained_focus() {
            look.chosen = Some(row.part);
            come_to(ui, output.state, (id, &text));
        }
        if response.changed() {
            self.drafts
                .insert(row.path.clone(), Draft::Open(text.clone()));
            if !response.has_focus() {
                // A screen reader sets a value without typing it.
                self.take(document, row, &text);
            }
        }
        if response.lost_focus() && matches!(self.drafts.get(&row.path), Some(Draft::Open(_))) {
            if ui.input(|i| i.key_pressed(Key::Escape)) {
                self.drafts.remove(&row.path);
            } else {
                self.take(document, row, &text);
            }
        }
    }

    /// Takes a typed text into the document, or says why not.
    fn take<T: Listed>(&mut self, document: &mut T, row: &Field, text: &str) {
        match row.read(text, document.units().unit()) {
            Ok(value) => {
                self.drafts.remove(&row.path);
                document.set(&row.path, value);
            }
            Err(why) => {
                let refused = Draft::Refused(why.to_string());
                self.drafts.insert(row.path.clone(), refused);
            }
        }
    }

    /// Up and down in the field that has the focus.
    fn step_keys<T: Listed>(&mut self, ui: &Ui, document: &mut T, (row, id): (&Field, Id)) {
        if !ui.memory(|m| m.has_focus(id)) {
            return;
        }
        for (modifiers, step) in [
            (Modifiers::SHIFT, Step::Fine),
            (Modifiers::NONE, Step::Usual),
        ] {
            let times = |key| times_pressed(ui, modifiers, key);
            let steps = times(Key::ArrowUp) - times(Key::ArrowDown);
            if steps != 0.0 {
                self.step(document, row, (steps, step));
            }
        }
    }

    /// Buttons for those who would rather click.
    fn steps<T: Listed>(&mut self, ui: &mut Ui, document: &mut T, row: &Field) {
        for (sign, word, steps) in [("-", "less", -1.0), ("+", "more", 1.0)] {
            // Not in the round of the Tab key: there the field's own up and down keys do it.
            let button = egui::Button::new(sign)
                .min_size(egui::vec2(STEP, 0.0))
                .sense(egui::Sense::CLICK);
            let response = ui
                .add(button)
                .accessible_name(format!("{}, {word}", row.full_name()));
            if response.clicked() {
                self.step(document, row, (steps, Step::Usual));
            }
        }
    }

    fn step<T: Listed>(&mut self, document: &mut T, row: &Field, (steps, step): (f64, Step)) {
        self.drafts.remove(&row.path);
        if let Some(value) = stepped(row, steps, step) {
            document.set(&row.path, value);
        }
    }
}

/// A list to choose from; gives back the new choice.
fn choice(ui: &mut Ui, row: &Field, (room, hint): (f32, &str)) -> Option<Value> {
    let mut now = row.value;
    let list = ComboBox::from_id_salt(&row.path)
        .width(room)
        .height(LIST)
        .truncate()
        .selected_text(row.value.to_string());
    let response = list.show_ui(ui, |ui| {
        let ways = row.value.ways();
        for (chosen, name) in ways.iter().enumerate() {
            ui.selectable_value(&mut now, Value::Choice { ways, chosen }, *name);
        }
    });
    response
        .response
        .accessible_name(row.full_name())
        .on_hover_text(hint);
    (now != row.value).then_some(now)
}

/// What the field is, its size in the other unit, and its limits.
fn hint<T: Listed>(row: &Field, document: &T) -> String {
    let mut hint = row.hint.to_owned();
    if let Some(about) = document.about(row) {
        hint = format!("{hint}\n{}", capital(about));
    }
    if let Some(other) = elsewise(row.value) {
        hint = format!("{hint}\n{} is {other}", row.value);
    }
    match row.value.ends(row.range, document.units().unit()) {
        None => hint,
        Some([least, most]) => {
            format!("{hint}\nFrom {least} to {most}; up and down keys step, with Shift finely")
        }
    }
}

/// What stands over a row's group.
fn title(row: &Field) -> String {
    group_title(row.part, &row.path)
}

/// The same height, but across the whole list.
fn across(rect: Rect, ui: &Ui) -> Rect {
    Rect::from_x_y_ranges(ui.max_rect().x_range(), rect.y_range())
}

/// The part's colour at the end of its header, and a wash under a header that is lit up.
fn mark(ui: &Ui, head: Rect, part: Part, look: &Look, wash: egui::layers::ShapeIdx) {
    let palette = Palette::of(ui.visuals());
    if look.lit() == Some(part) {
        ui.painter()
            .set(wash, Shape::rect_filled(head, 3.0, palette.wash));
    }
    if !matches!(part, Part::Bar | Part::Rivet) {
        let swatch = Rect::from_center_size(
            head.right_center() - egui::vec2(12.0, 0.0),
            egui::Vec2::splat(11.0),
        );
        ui.painter().rect_filled(swatch, 2.0, colour_of(part));
        let stroke = egui::Stroke::new(1.0, palette.faint);
        ui.painter()
            .rect_stroke(swatch, 2.0, stroke, egui::StrokeKind::Inside);
    }
}
