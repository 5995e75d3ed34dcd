//! The table as it is drawn: sizes across, values down. Only what can be seen is drawn.

use egui::accesskit::Role;
use egui::{
    Align, ComboBox, Id, Key, Layout, Pos2, Rect, RichText, ScrollArea, Sense, Stroke, Ui,
    UiBuilder, Vec2, WidgetInfo, pos2, vec2,
};
use reinwright_core::shop::family::{Chosen, OfSize, Row, Rule};

use super::cell::{self, Cell, Typed};
use super::seen::Seen;
use super::set::{Leads, Set};
use super::table::{Column, Filter, Place, TableDeed, TableView, name};
use crate::window::paint::sign;
use crate::window::paint::theme::Palette;
use crate::window::state::rows::{capital, group_title};

/// Height of a line, in points.
const LINE: f32 = 25.0;
/// Widths of the columns that stay: what it is, its rule, its value in the base.
const LABEL: f32 = 122.0;
const RULE: f32 = 126.0;
const BASE: f32 = 124.0;
const STAYS: f32 = LABEL + RULE + BASE;
/// Width of a size's column.
const SIZE: f32 = 124.0;

/// A line of the table.
#[derive(Debug, Clone)]
enum TableLine {
    Heading(String),
    /// A row, by its place.
    Values(usize),
}

/// Shows the table in the room there is; gives back what was done.
pub(super) fn show<D: Seen>(
    view: &mut TableView,
    ui: &mut Ui,
    (set, chosen): (&Set<D>, usize),
) -> Vec<TableDeed> {
    let area = ui.available_rect_before_wrap();
    ui.allocate_rect(area, Sense::hover());
    Grid::of(view, set, chosen).show(ui, area)
}

/// The table while it is drawn.
struct Grid<'a, D: Seen> {
    view: &'a mut TableView,
    set: &'a Set<D>,
    chosen: usize,
    lines: Vec<TableLine>,
    deeds: Vec<TableDeed>,
}

impl<'a, D: Seen> Grid<'a, D> {
    /// The table of a set, with one size chosen.
    fn of(view: &'a mut TableView, set: &'a Set<D>, chosen: usize) -> Self {
        let mut grid = Self {
            view,
            set,
            chosen,
            lines: Vec::new(),
            deeds: Vec::new(),
        };
        grid.lines = grid.lines();
        grid
    }

    fn lines(&self) -> Vec<TableLine> {
        let mut lines = Vec::new();
        let mut title = String::new();
        for (at, row) in self.set.table.rows.iter().enumerate() {
            if self.view.filter == Filter::Differing && !row.varies() {
                continue;
            }
            let of_row = group_title(row.field.part, &row.field.path);
            if of_row != title {
                lines.push(TableLine::Heading(of_row.clone()));
                title = of_row;
            }
            lines.push(TableLine::Values(at));
        }
        lines
    }

    /// Draws it in an area; gives back what was done.
    fn show(mut self, ui: &mut Ui, area: Rect) -> Vec<TableDeed> {
        let inner = Rect::from_min_max(area.min + vec2(STAYS, LINE), area.max);
        let mut child = ui.new_child(UiBuilder::new().max_rect(inner).id_salt("cells"));
        let out = ScrollArea::both()
            .auto_shrink([false, false])
            .show_viewport(&mut child, |ui, viewport| {
                scroll_beside(
                    ui,
                    Rect::from_min_max(area.min, pos2(inner.left(), area.bottom())),
                );
                self.cells(ui, viewport)
            });
        let (origin, seen) = (out.inner, out.inner_rect);
        let band = |x: std::ops::Range<f32>, y: std::ops::Range<f32>| {
            Rect::from_min_max(pos2(x.start, y.start), pos2(x.end, y.end))
        };
        let left = band(area.left()..inner.left(), inner.top()..seen.bottom());
        self.stays(&mut clipped(ui, left, "stays"), origin.y);
        let top = band(inner.left()..seen.right(), area.top()..inner.top());
        self.heads(&mut clipped(ui, top, "heads"), origin.x);
        let corner = band(area.left()..inner.left(), area.top()..inner.top());
        corner_words(&mut clipped(ui, corner, "corner"));
        let stroke = Stroke::new(1.0, Palette::of(ui.visuals()).edge);
        ui.painter()
            .hline(area.x_range(), inner.top() - 0.5, stroke);
        ui.painter()
            .vline(inner.left() - 0.5, area.y_range(), stroke);
        self.deeds
    }

    /// The cells of the sizes that can be seen; gives back where the first one lies.
    fn cells(&mut self, ui: &mut Ui, viewport: Rect) -> Pos2 {
        let origin = ui.max_rect().min;
        let (columns, lines) = (self.set.table.labels.len(), self.lines.len());
        ui.set_min_size(vec2(count(columns) * SIZE, count(lines) * LINE));
        self.bring_into_sight(ui, origin);
        let across = seen(viewport.x_range(), SIZE, columns);
        for line in seen(viewport.y_range(), LINE, lines) {
            let y = origin.y + count(line) * LINE;
            match self.lines[line].clone() {
                TableLine::Heading(_) => heading(ui, pos2(origin.x, y), count(columns) * SIZE),
                TableLine::Values(row) => {
                    for at in across.clone() {
                        let corner = pos2(origin.x + count(at) * SIZE, y);
                        let rect = Rect::from_min_size(corner, vec2(SIZE, LINE));
                        self.wash(ui, rect, at);
                        self.value(ui, rect, row, Column::Size(at));
                    }
                }
            }
        }
        origin
    }

    fn bring_into_sight(&mut self, ui: &Ui, origin: Pos2) {
        if let Some(at) = self.view.reveal.take() {
            let y = ui.clip_rect().top();
            let corner = pos2(origin.x + count(at) * SIZE, y);
            ui.scroll_to_rect(Rect::from_min_size(corner, vec2(SIZE, 1.0)), None);
        }
    }

    fn wash(&self, ui: &Ui, rect: Rect, at: usize) {
        if at == self.chosen {
            ui.painter()
                .rect_filled(rect, 0.0, Palette::of(ui.visuals()).wash);
        }
    }

    /// What stays at the left: what each value is, its rule, and its value in the base.
    fn stays(&mut self, ui: &mut Ui, top: f32) {
        let area = ui.max_rect();
        for line in seen(shifted(area.y_range(), top), LINE, self.lines.len()) {
            let at = pos2(area.left(), top + count(line) * LINE);
            match self.lines[line].clone() {
                TableLine::Heading(title) => {
                    heading(ui, at, STAYS);
                    let rect = Rect::from_min_size(at, vec2(STAYS, LINE)).shrink2(vec2(4.0, 0.0));
                    words(ui, rect, RichText::new(title).strong());
                }
                TableLine::Values(row) => self.beside(ui, at, row),
            }
        }
    }

    fn beside(&mut self, ui: &mut Ui, at: Pos2, index: usize) {
        let row = &self.set.table.rows[index];
        let column = |x: f32, width: f32| Rect::from_min_size(at + vec2(x, 0.0), vec2(width, LINE));
        let field = &row.field;
        let hint = format!("{}\n{}", field.full_name(), field.hint);
        let label = match field.section() {
            Some(section) => capital(&format!("{section} {}", field.label.to_lowercase())),
            None => field.label.to_owned(),
        };
        let rect = column(0.0, LABEL).shrink2(vec2(6.0, 0.0));
        words(ui, rect, RichText::new(label)).on_hover_text(hint);
        self.rule(ui, column(LABEL, RULE), index);
        self.value(ui, column(LABEL + RULE, BASE), index, Column::Base);
    }

    /// The rule of a row, to be chosen where one can be.
    fn rule(&mut self, ui: &mut Ui, rect: Rect, index: usize) {
        let row = &self.set.table.rows[index];
        let path = &row.field.path;
        let Some((rule, chosen)) = self.set.rules[index] else {
            let (text, hint) = fixed_rule(row, self.set.leads(path));
            words(ui, rect.shrink2(vec2(6.0, 0.0)), RichText::new(text).weak()).on_hover_text(hint);
            return;
        };
        let mut now = rule;
        let mut text = RichText::new(D::rule_name(rule));
        if chosen == Chosen::Changed {
            text = RichText::new(format!("* {}", D::rule_name(rule))).strong();
        }
        let rect = rect.shrink2(vec2(2.0, 2.0));
        let builder = UiBuilder::new()
            .max_rect(rect)
            .layout(Layout::left_to_right(Align::Center));
        ui.scope_builder(builder, |ui| {
            let list = ComboBox::from_id_salt(("rule", path))
                .width(rect.width())
                .truncate();
            let list = list.selected_text(text).show_ui(ui, |ui| {
                for one in Rule::ALL {
                    ui.selectable_value(&mut now, one, D::rule_name(one));
                }
            });
            let field = &row.field;
            let name = format!("Rule: {}", field.full_name());
            let hint = "How it goes from size to size; a star marks a rule you chose";
            list.response.accessible_name(name).on_hover_text(hint);
        });
        if now != rule {
            self.deeds.push(TableDeed::Rule(path.clone(), now));
        }
    }

    fn value(&mut self, ui: &mut Ui, rect: Rect, index: usize, column: Column) {
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

    /// The sizes over their columns, each with the sign of the worst finding.
    fn heads(&mut self, ui: &mut Ui, left: f32) {
        let area = ui.max_rect();
        for at in seen(
            shifted(area.x_range(), left),
            SIZE,
            self.set.table.labels.len(),
        ) {
            let corner = pos2(left + count(at) * SIZE, area.top());
            let rect = Rect::from_min_size(corner, vec2(SIZE, LINE));
            if self.head(ui, rect, at) {
                self.deeds.push(TableDeed::Choose(at));
            }
        }
    }

    fn head(&self, ui: &mut Ui, rect: Rect, at: usize) -> bool {
        let palette = Palette::of(ui.visuals());
        let label = &self.set.table.labels[at];
        let worst = self.set.answers.get(at).and_then(|of| of.worst());
        self.wash(ui, rect, at);
        let inside = rect.shrink2(vec2(6.0, 2.0));
        let builder = UiBuilder::new()
            .max_rect(inside)
            .layout(Layout::left_to_right(Align::Center));
        ui.scope_builder(builder, |ui| {
            ui.spacing_mut().item_spacing.x = 4.0;
            if let Some(worst) = worst {
                sign::severity(ui, worst);
            }
            let short = self.set.short.get(at).unwrap_or(label);
            ui.add(egui::Label::new(RichText::new(short).strong()).truncate());
        });
        let response = ui.interact(rect, Id::unique(("size", at)), Sense::click());
        let spoken = match worst {
            Some(worst) => format!("Size {label}: {}", worst.name()),
            None => format!("Size {label}: nothing noticed"),
        };
        response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &spoken));
        if response.has_focus() || response.hovered() {
            let stroke = Stroke::new(1.5, palette.accent);
            ui.painter()
                .rect_stroke(rect.shrink(1.0), 3.0, stroke, egui::StrokeKind::Inside);
        }
        response.on_hover_text(spoken).clicked()
    }
}

/// A place of its own inside the table.
fn clipped(ui: &mut Ui, rect: Rect, salt: &str) -> Ui {
    let mut child = ui.new_child(UiBuilder::new().max_rect(rect).id_salt(salt));
    child.set_clip_rect(rect.intersect(ui.clip_rect()));
    child
}

fn corner_words(ui: &mut Ui) {
    let area = ui.max_rect();
    for (x, width, text) in [
        (0.0, LABEL, "Value"),
        (LABEL, RULE, "Rule"),
        (LABEL + RULE, BASE, "Base"),
    ] {
        let rect = Rect::from_min_size(area.min + vec2(x, 0.0), vec2(width, LINE));
        words(
            ui,
            rect.shrink2(vec2(6.0, 0.0)),
            RichText::new(text).strong(),
        );
    }
}

/// The wheel over what stays scrolls the cells as well.
fn scroll_beside(ui: &Ui, beside: Rect) {
    let (wheel, at) = ui.input(|i| (i.smooth_scroll_delta(), i.pointer.hover_pos()));
    if wheel != Vec2::ZERO && at.is_some_and(|at| beside.contains(at)) {
        ui.scroll_with_delta_animation(wheel, egui::style::ScrollAnimation::none());
    }
}

fn heading(ui: &Ui, at: Pos2, width: f32) {
    let rect = Rect::from_min_size(at, vec2(width, LINE)).shrink2(vec2(0.0, 1.0));
    ui.painter()
        .rect_filled(rect, 0.0, ui.visuals().faint_bg_color);
}

fn words(ui: &mut Ui, rect: Rect, text: RichText) -> egui::Response {
    let builder = UiBuilder::new()
        .max_rect(rect)
        .layout(Layout::left_to_right(Align::Center));
    ui.scope_builder(builder, |ui| ui.add(egui::Label::new(text).truncate()))
        .inner
}

/// What is said of a row whose rule cannot be chosen.
fn fixed_rule(row: &Row, leads: Leads) -> (&'static str, &'static str) {
    let path = &row.field.path;
    if leads == Leads::Size {
        (
            "each its own",
            "Every size has its own: it is what the size is called by",
        )
    } else if path.starts_with("bar.") {
        (
            "base or own",
            "A size is forged from the base's bar unless it has its own",
        )
    } else {
        (
            "same unless set",
            "Rules scale lengths only: this is the same unless set by hand",
        )
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

/// The lines or columns that a stretch of the table shows, with one more at each end, so that
/// the Tab key finds what comes next.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a table has far fewer lines than f32 counts exactly, and the floor is kept at 0"
)]
fn seen(shown: egui::Rangef, each: f32, all: usize) -> std::ops::Range<usize> {
    let first = (shown.min / each).floor().max(0.0) as usize;
    let end = (shown.max / each).ceil().max(0.0) as usize;
    first.saturating_sub(1).min(all)..(end + 1).min(all)
}

fn shifted(range: egui::Rangef, origin: f32) -> egui::Rangef {
    egui::Rangef::new(range.min - origin, range.max - origin)
}

#[allow(
    clippy::cast_precision_loss,
    reason = "a table has far fewer lines than f32 counts exactly"
)]
fn count(n: usize) -> f32 {
    n as f32
}
