//! The parts list: every value that can be set, under the part that it shapes.

use std::collections::BTreeMap;

use egui::{CollapsingHeader, ComboBox, Id, Key, Modifiers, Rect, RichText, Shape, TextEdit, Ui};
use reinwright_core::asked::{Field, Step, Value, parse_work_in};
use reinwright_core::finding::Part;
use reinwright_core::tongs::document::{Document, check_limits};

use super::sketch::Sketching;
use super::typing::come_to;
use super::wish::{StyleWish, Wish};
use crate::window::paint::ink::colour_of;
use crate::window::paint::theme::Palette;
use crate::window::state::command::times_pressed;
use crate::window::state::look::Look;
use crate::window::state::rows::{capital, elsewise, group_title, rows, stepped};

/// Width of the labels before the fields, in points.
const LABEL: f32 = 96.0;
/// Where the whole work is typed by its name; no field has this path.
const CALLED: &str = "work";
/// Width of a step button, in points.
const STEP: f32 = 20.0;

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
    pub(crate) fn commit(&mut self, document: &mut Document) {
        for row in rows(document) {
            if let Some(Draft::Open(text)) = self.drafts.get(&row.path).cloned() {
                self.take(document, &row, &text);
            }
        }
        if let Some(Draft::Open(text)) = self.drafts.get(CALLED).cloned() {
            self.take_called(document, &text);
        }
    }

    /// Shows the list; edits go straight into the document, and what else was asked for is given
    /// back.
    pub(crate) fn show(
        &mut self,
        ui: &mut Ui,
        document: &mut Document,
        (look, sketching): (&mut Look, &mut Sketching),
    ) -> Vec<Wish> {
        self.name_and_note(ui, document);
        ui.separator();
        egui::ScrollArea::vertical()
            .auto_shrink([false, false])
            .show(ui, |ui| {
                let rows = rows(document);
                for group in rows.chunk_by(|a, b| title(a) == title(b)) {
                    self.group(ui, document, (look, sketching), group);
                }
                look.reveal = None;
            });
        std::mem::take(&mut self.asked)
    }

    fn name_and_note(&mut self, ui: &mut Ui, document: &mut Document) {
        let name = TextEdit::singleline(&mut document.name)
            .desired_width(f32::INFINITY)
            .char_limit(200)
            .hint_text("What the pair is called");
        let name = ui.add(name).accessible_name("Name");
        let note = TextEdit::multiline(&mut document.note)
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

    fn group(
        &mut self,
        ui: &mut Ui,
        document: &mut Document,
        (look, sketching): (&mut Look, &mut Sketching),
        rows: &[Field],
    ) {
        let (part, title) = (rows[0].part, title(&rows[0]));
        let wanted = look.reveal == Some(part) && title == capital(part.name());
        let wash = ui.painter().add(Shape::Noop);
        let header = CollapsingHeader::new(RichText::new(&title).size(15.0))
            .id_salt(&title)
            .default_open(matches!(part, Part::Work | Part::Jaw) || title == "Bar")
            .open(wanted.then_some(true))
            .show_unindented(ui, |ui| {
                if part == Part::Work {
                    self.called(ui, document, look);
                }
                self.fields(ui, document, look, rows);
                if matches!(part, Part::Jaw | Part::SecondJaw) {
                    let asked = sketching.show(ui, document, part);
                    self.asked.extend(asked.map(Wish::Jaws));
                }
            });
        let head = across(header.header_response.rect, ui);
        let all = header
            .body_response
            .map_or(head, |body| head.union(across(body.rect, ui)));
        if part != Part::Pair {
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

    fn fields(&mut self, ui: &mut Ui, document: &mut Document, look: &mut Look, rows: &[Field]) {
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

    fn field(&mut self, ui: &mut Ui, document: &mut Document, look: &mut Look, row: &Field) {
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
                        document.put(&row.path, chosen);
                        look.chosen = Some(row.part);
                    }
                }
                Value::Length(_) | Value::Angle(_) | Value::Percent(_) | Value::Count(_) => {
                    self.typed(ui, document, look, (row, room, &hint));
                    self.steps(ui, document, row);
                }
            }
        });
        if is_style(row) {
            self.style_chooser(ui, row);
        }
        if let Some(Draft::Refused(why)) = self.drafts.get(&row.path) {
            ui.label(RichText::new(why).color(Palette::of(ui.visuals()).stop));
        }
    }

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

    /// A text field for a value.
    fn typed(
        &mut self,
        ui: &mut Ui,
        document: &mut Document,
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
    fn take(&mut self, document: &mut Document, row: &Field, text: &str) {
        match row.read(text, document.units.unit()) {
            Ok(value) => {
                self.drafts.remove(&row.path);
                document.put(&row.path, value);
            }
            Err(why) => {
                let refused = Draft::Refused(why.to_string());
                self.drafts.insert(row.path.clone(), refused);
            }
        }
    }

    /// Up and down in the field that has the focus.
    fn step_keys(&mut self, ui: &Ui, document: &mut Document, (row, id): (&Field, Id)) {
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
    fn steps(&mut self, ui: &mut Ui, document: &mut Document, row: &Field) {
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

    fn step(&mut self, document: &mut Document, row: &Field, (steps, step): (f64, Step)) {
        self.drafts.remove(&row.path);
        if let Some(value) = stepped(row, steps, step) {
            document.put(&row.path, value);
        }
    }
}

/// A list to choose from; gives back the new choice.
fn choice(ui: &mut Ui, row: &Field, (room, hint): (f32, &str)) -> Option<Value> {
    let mut now = row.value;
    let list = ComboBox::from_id_salt(&row.path)
        .width(room)
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
fn hint(row: &Field, document: &Document) -> String {
    let mut hint = row.hint.to_owned();
    if row.path == "jaw.style" {
        hint = format!("{hint}\n{}", capital(document.jaw.kind().about()));
    }
    if let Some(other) = elsewise(row.value) {
        hint = format!("{hint}\n{} is {other}", row.value);
    }
    match row.value.ends(row.range, document.units.unit()) {
        None => hint,
        Some([least, most]) => {
            format!("{hint}\nFrom {least} to {most}; up and down keys step, with Shift finely")
        }
    }
}

/// Whether a row is the style of a jaw.
fn is_style(row: &Field) -> bool {
    matches!(row.part, Part::Jaw | Part::SecondJaw) && row.path.ends_with(".style")
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
