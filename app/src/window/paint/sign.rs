//! Signs drawn as shapes, so that no font need have them and no colour stands alone.

use std::f32::consts::TAU;

use egui::{Pos2, Sense, Shape, Stroke, Ui, Vec2};
use reinwright_core::finding::Severity;

use super::theme::Palette;

/// Size of a sign in points.
const SIZE: f32 = 14.0;

/// Draws the sign of a severity: an octagon to stop, a triangle to mend, a ring to note.
pub(crate) fn severity(ui: &mut Ui, severity: Severity) {
    let (area, _) = ui.allocate_exact_size(Vec2::splat(SIZE), Sense::hover());
    let (middle, r) = (area.center(), SIZE / 2.0 - 0.5);
    let colour = colour(ui, severity);
    let shape = match severity {
        Severity::Stop => {
            Shape::convex_polygon(corners(middle, r, 8, TAU / 16.0), colour, Stroke::NONE)
        }
        Severity::Mend => {
            let low = middle + Vec2::new(0.0, 0.2 * r);
            Shape::convex_polygon(corners(low, r, 3, -TAU / 4.0), colour, Stroke::NONE)
        }
        Severity::Note => Shape::circle_stroke(middle, r - 1.5, Stroke::new(2.5, colour)),
    };
    ui.painter().add(shape);
}

/// The colour of a severity's word and sign.
pub(crate) fn colour(ui: &Ui, severity: Severity) -> egui::Color32 {
    let palette = Palette::of(ui.visuals());
    match severity {
        Severity::Stop => palette.stop,
        Severity::Mend => palette.mend,
        Severity::Note => palette.note,
    }
}

fn corners(middle: Pos2, r: f32, count: u8, start: f32) -> Vec<Pos2> {
    (0..count)
        .map(|i| start + TAU * f32::from(i) / f32::from(count))
        .map(|turn| middle + r * Vec2::angled(turn))
        .collect()
}
