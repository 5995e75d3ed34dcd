//! One style: its picture, its name, the reason.

use egui::accesskit::Role;
use egui::{
    Align, Layout, Rect, Response, RichText, Sense, Stroke, StrokeKind, Ui, UiBuilder, Vec2,
    WidgetInfo, vec2,
};
use lyon::tessellation::FillTessellator;
use reinwright_core::tongs::jaw::Verdict;

use super::shown::Shown;
use crate::window::paint::ink::Ink;
use crate::window::paint::theme::Palette;
use crate::window::paint::view::View;
use crate::window::state::rows::capital;

/// The least width of a card and the height of its picture, in points.
const LEAST: f32 = 200.0;
const PICTURE: f32 = 96.0;
/// How much of a picture's width the end view takes beside the side view.
const END: f32 = 0.3;
/// Room for the name and three lines of reason, in points.
const WORDS: f32 = 78.0;
/// How much of a picture that cannot be taken is left.
const GREYED: f32 = 0.62;

/// How many cards stand side by side.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a window is a few cards wide"
)]
pub(super) fn columns(width: f32) -> usize {
    (width / LEAST).floor().clamp(1.0, 6.0) as usize
}

/// A card among others.
pub(super) struct Card<'a> {
    pub(super) shown: &'a Shown,
    pub(super) columns: usize,
}

impl Card<'_> {
    /// Shows it; a click takes it.
    pub(super) fn show(&self, ui: &mut Ui, fills: &mut FillTessellator) -> Response {
        let gap = ui.spacing().item_spacing.x;
        #[allow(clippy::cast_precision_loss, reason = "a window is a few cards wide")]
        let columns = self.columns as f32;
        let width = (ui.max_rect().width() - gap * (columns - 1.0)) / columns;
        let advice = &self.shown.advice;
        let takes = advice.verdict < Verdict::Unsafe;
        let sense = if takes {
            Sense::click()
        } else {
            Sense::hover()
        };
        let (area, response) = ui.allocate_exact_size(vec2(width, PICTURE + WORDS), sense);
        let name = format!("Take {}", advice.name());
        response.widget_info(|| WidgetInfo::labeled(Role::Button, takes, &name));
        if !ui.is_rect_visible(area) {
            return response;
        }
        let palette = Palette::of(ui.visuals());
        let lit = takes && (response.hovered() || response.has_focus());
        let ground = if lit { palette.wash } else { palette.sheet };
        ui.painter().rect_filled(area, 4.0, ground);
        self.picture(ui, area, fills);
        self.words(ui, area);
        let (line, colour) = if lit {
            (1.5, palette.accent)
        } else {
            (1.0, palette.edge)
        };
        let stroke = Stroke::new(line, colour);
        ui.painter()
            .rect_stroke(area, 4.0, stroke, StrokeKind::Inside);
        response.on_hover_text(&advice.reason)
    }

    /// The front of the starting pair, shut on the work, from the side and from its tips.
    fn picture(&self, ui: &Ui, card: Rect, fills: &mut FillTessellator) {
        let palette = Palette::of(ui.visuals());
        let area = Rect::from_min_size(card.min, vec2(card.width(), PICTURE)).shrink(1.0);
        let (side, end) = area.split_left_right_at_fraction(1.0 - END);
        let (of_end, about_jaws) = &self.shown.end;
        let views = [
            (side, &self.shown.drawing, self.shown.front),
            (end, of_end, *about_jaws),
        ];
        for (area, drawing, seen) in views {
            let view = View::fit(seen, area, 6.0);
            let painter = ui.painter_at(area);
            Ink::new(painter, view, palette, None, fills).draw(&drawing.items);
        }
        if self.shown.advice.verdict >= Verdict::Badly {
            let veil = palette.sheet.gamma_multiply(GREYED);
            ui.painter_at(area).rect_filled(area, 0.0, veil);
        }
    }

    fn words(&self, ui: &mut Ui, card: Rect) {
        let palette = Palette::of(ui.visuals());
        let advice = &self.shown.advice;
        let colour = match advice.verdict {
            Verdict::Well | Verdict::WithAWord => palette.ink,
            Verdict::Badly | Verdict::Cannot => palette.faint,
            Verdict::Unsafe => palette.stop,
        };
        let area = Rect::from_min_max(card.min + vec2(0.0, PICTURE), card.max);
        let layout = Layout::top_down(Align::Min);
        let builder = UiBuilder::new()
            .max_rect(area.shrink2(Vec2::new(8.0, 2.0)))
            .layout(layout);
        // A child of its own: the card has its room already.
        let ui = &mut ui.new_child(builder);
        ui.spacing_mut().item_spacing.y = 1.0;
        ui.set_clip_rect(area.intersect(ui.clip_rect()));
        let name = match advice.own() {
            Some(own) => format!("{own}, own jaw"),
            None => capital(advice.name()),
        };
        let name = RichText::new(name).size(14.0).color(colour);
        ui.add(egui::Label::new(name).truncate());
        let reason = RichText::new(&advice.reason).size(11.5).color(colour);
        ui.add(egui::Label::new(reason).wrap());
    }
}
