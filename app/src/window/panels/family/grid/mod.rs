//! The table as it is drawn: sizes across, values down. Only what can be seen is drawn.

mod heads;
mod lay;
mod rule;
mod value;

use egui::{Pos2, Rect, RichText, ScrollArea, Sense, Stroke, Ui, UiBuilder, Vec2, pos2, vec2};

use self::lay::{BASE, LABEL, LINE, RULE, SIZE, STAYS, clipped, count, seen, shifted, words};
use super::seen::Seen;
use super::set::Set;
use super::table::{Column, Filter, TableDeed, TableView};
use crate::window::paint::theme::Palette;
use crate::window::state::rows::{capital, group_title};

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
