//! Texts on the screen, as wide as they are printed.

use egui::{FontId, Stroke, Vec2};
use reinwright_core::paper::font::text_width;
use reinwright_core::paper::{Align, TextItem};

use super::Ink;
use super::looks::Medium;

/// Text smaller than this many points cannot be read and is left out.
const SMALLEST_TEXT: f64 = 5.0;

impl Ink<'_> {
    #[allow(
        clippy::cast_possible_truncation,
        reason = "screens are far coarser than f32"
    )]
    pub(super) fn text(&self, item: &TextItem) {
        let size = item.size * f64::from(self.view.scale);
        if size < SMALLEST_TEXT {
            if self.medium == Medium::Page {
                self.grey(item);
            }
            return;
        }
        // Whole quarters of a point, so that a slow zoom does not fill the font's atlas.
        let size = ((size * 4.0).round() / 4.0) as f32;
        let font = FontId::proportional(size * self.narrowed(item, size));
        let galley = self
            .painter
            .layout_no_wrap(item.text.clone(), font, self.palette.ink);
        let baseline = galley.rows.first().map_or(0.0, |row| {
            row.pos.y + row.glyphs.first().map_or(0.0, |glyph| glyph.pos.y)
        });
        let start = match item.align {
            Align::Start => 0.0,
            Align::Middle => -galley.size().x / 2.0,
            Align::End => -galley.size().x,
        };
        let turn = -item.turn as f32;
        let corner = egui::emath::Rot2::from_angle(turn) * Vec2::new(start, -baseline);
        let at = self.view.to_screen(item.at) + corner;
        let mut shape = egui::epaint::TextShape::new(at, galley, self.palette.ink);
        shape.angle = turn;
        if item.bold {
            // The window's font has no bold face: the same text a hair to the right makes one.
            let mut again = shape.clone();
            again.pos.x += 0.04 * size;
            self.painter.add(again);
        }
        self.painter.add(shape);
    }

    /// How much smaller the window's letters are set, so that a text of a page is no wider than the
    /// printed one.
    #[allow(
        clippy::cast_possible_truncation,
        reason = "screens are far coarser than f32"
    )]
    fn narrowed(&self, item: &TextItem, size: f32) -> f32 {
        if self.medium == Medium::Screen {
            return 1.0;
        }
        let font = FontId::proportional(size);
        let ink = self.palette.ink;
        let galley = self.painter.layout_no_wrap(item.text.clone(), font, ink);
        let printed = text_width(&item.text, item.size, item.bold) as f32 * self.view.scale;
        (printed / galley.size().x.max(1.0)).min(1.0)
    }

    /// A text that is too small to be read on the screen: a grey bar as long and half as high.
    #[allow(
        clippy::cast_possible_truncation,
        reason = "screens are far coarser than f32"
    )]
    fn grey(&self, item: &TextItem) {
        let width = text_width(&item.text, item.size, item.bold);
        let start = match item.align {
            Align::Start => 0.0,
            Align::Middle => -width / 2.0,
            Align::End => -width,
        };
        let along = kurbo::Vec2::from_angle(item.turn);
        let up = 0.35 * item.size * kurbo::Vec2::new(-along.y, along.x);
        let at = |along_mm: f64| self.view.to_screen(item.at + along_mm * along + up);
        let thick = 0.5 * item.size as f32 * self.view.scale;
        let stroke = Stroke::new(thick, self.palette.faint.gamma_multiply(0.45));
        self.painter
            .line_segment([at(start), at(start + width)], stroke);
    }
}
