//! The sheet: the chosen size, all sizes one over the other, or all side by side.

use egui::accesskit::Role;
use egui::{Rect, ScrollArea, Sense, Ui, Vec2, WidgetInfo, vec2};
use reinwright_core::paper::{self, Item};
use reinwright_core::shop::family::sheet;

use super::seen::{OverlayKey, Seen};
use super::{FamilyBench, Lent, Picture};
use crate::window::paint::ink::Ink;
use crate::window::paint::theme::Palette;
use crate::window::paint::view::View;

/// Height of the names in a picture of all sizes, in points, about.
const TEXT: f64 = 11.0;
/// The lettering of the core's pictures, mm.
const LETTERS: f64 = 3.0;
/// Between the sheet's edge and a picture, in points.
const RIM: f32 = 14.0;

impl<D: Seen> FamilyBench<D> {
    pub(super) fn pictures(&mut self, ui: &mut Ui, lent: &mut Lent<'_>) {
        ui.horizontal_wrapped(|ui| {
            for (picture, title) in [
                (Picture::One, "One size"),
                (Picture::Over, "One over the other"),
                (Picture::Side, "Side by side"),
                (Picture::Holds, D::TAKES),
            ] {
                if D::HOLDS || picture != Picture::Over {
                    ui.selectable_value(&mut self.picture, picture, title);
                }
            }
        });
        match self.picture {
            Picture::One => self.one_size(ui, lent),
            Picture::Over => self.overlay(ui, lent),
            Picture::Side => self.strip(ui, lent),
            Picture::Holds => self.holds(ui, lent),
        }
    }

    fn one_size(&mut self, ui: &mut Ui, lent: &mut Lent<'_>) {
        let shown = (&mut self.paper, &mut self.look);
        D::show_one(&mut self.one, ui, shown, lent);
    }

    fn overlay(&mut self, ui: &mut Ui, lent: &mut Lent<'_>) {
        let room = ui.available_size();
        let [full, _] = self.set.covers();
        let scale = View::fit(full, Rect::from_min_size(egui::Pos2::ZERO, room), RIM).scale;
        let key = OverlayKey {
            reduced: readable(scale),
            chosen: Some(self.chosen),
        };
        let revision = self.set.revision * 1000 + u64::from(key.reduced);
        let what =
            "All sizes one over the other, their rivets together; the chosen one has a heavy line";
        let drawing = self.set.overlay(key);
        self.over
            .show_drawing(ui, drawing, (revision, what), lent.fills);
    }

    /// All sizes under each other as wide as there is room; only what can be seen is drawn.
    fn strip(&mut self, ui: &mut Ui, lent: &mut Lent<'_>) {
        let palette = Palette::of(ui.visuals());
        ui.painter()
            .rect_filled(ui.available_rect_before_wrap(), 4.0, palette.sheet);
        let mut chosen = None;
        ScrollArea::vertical()
            .id_salt("strip")
            .auto_shrink([false, false])
            .show_viewport(ui, |ui, _viewport| {
                let [_, full] = self.set.covers();
                let width = ui.available_width() - 2.0 * RIM;
                let reduced = readable(width / narrow(full.width().max(1.0)));
                let drawing = self.set.strip(reduced);
                let bounds = drawing.bounds();
                let scale = width / narrow(bounds.width().max(1.0));
                let origin = ui.max_rect().min
                    + RIM * Vec2::splat(1.0)
                    + scale * vec2(-narrow(bounds.x0), narrow(bounds.y1));
                ui.set_min_size(vec2(width, scale * narrow(bounds.height()) + 2.0 * RIM));
                let view = View { origin, scale };
                for (at, item) in drawing.items.iter().enumerate() {
                    let area = area(item, view);
                    if !ui.is_rect_visible(area) {
                        continue;
                    }
                    if pick(ui, area.expand(3.0), (at, &label(item)), self.chosen == at) {
                        chosen = Some(at);
                    }
                    let painter = ui.painter().clone();
                    Ink::new(painter, view, palette, None, lent.fills)
                        .draw(std::slice::from_ref(item));
                }
            });
        self.chosen = chosen.unwrap_or(self.chosen);
    }
}

/// A size in the strip, to be chosen with a click.
fn pick(ui: &Ui, area: Rect, (at, label): (usize, &str), is_chosen: bool) -> bool {
    let palette = Palette::of(ui.visuals());
    let response = ui.interact(area, ui.scope_id().with(("pick", at)), Sense::click());
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, format!("Picture of {label}")));
    if is_chosen {
        ui.painter().rect_filled(area, 3.0, palette.wash);
    }
    if response.hovered() || response.has_focus() {
        let stroke = egui::Stroke::new(1.0, palette.accent);
        ui.painter()
            .rect_stroke(area, 3.0, stroke, egui::StrokeKind::Inside);
    }
    response.clicked()
}

fn label(item: &Item) -> String {
    match item {
        Item::Group(group) => group.name.to_string(),
        Item::Path(_) | Item::Text(_) => String::new(),
    }
}

fn area(item: &Item, view: View) -> Rect {
    let bounds = paper::bounds(std::slice::from_ref(item)).unwrap_or(kurbo::Rect::ZERO);
    view.rect(bounds)
}

/// The reduction at which a picture's lettering is about as large as other text, when the picture
/// at full size has so many points to the millimetre.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "kept between 1 and the largest reduction"
)]
fn readable(points_per_mm: f32) -> u32 {
    /// Letters may come out smaller by this part of a step.
    const SMALLER: f64 = 0.15;
    let most = sheet::REDUCTIONS[sheet::REDUCTIONS.len() - 1];
    let n = TEXT / (LETTERS * f64::from(points_per_mm).max(1e-3));
    // Rather a little too large than too small to read.
    (n - SMALLER).ceil().clamp(1.0, f64::from(most)) as u32
}

#[allow(
    clippy::cast_possible_truncation,
    reason = "screens are far coarser than f32"
)]
fn narrow(mm: f64) -> f32 {
    mm as f32
}
