use egui::{Sense, Slider, Stroke, StrokeKind, Ui, Vec2};

use super::{Reply, buttons};
use crate::window::paint::theme::Palette;

/// Size of an ID-1 card, mm (ISO/IEC 7810: bank cards and many identity cards).
const CARD_MM: Vec2 = Vec2::new(85.60, 53.98);

/// Measures the screen with a card laid on it.
#[derive(Debug)]
pub(crate) struct Card {
    points_per_mm: f32,
}

impl Card {
    pub(crate) fn new(points_per_mm: f32) -> Self {
        Self { points_per_mm }
    }

    pub(super) fn show(&mut self, ui: &mut Ui) -> Option<Reply> {
        ui.set_width(660.0);
        ui.heading("Measure the screen");
        ui.label(
            "Lay a bank card (85.60 mm by 53.98 mm) on the screen, its corner on the corner of \
             the frame, and draw the slider until the frame is as large as the card.",
        );
        let label = ui.label("Points of the screen to one millimetre");
        ui.spacing_mut().slider_width = 520.0;
        let slider = Slider::new(&mut self.points_per_mm, 2.0..=7.5).fixed_decimals(3);
        ui.add(slider).labelled_by(label.id);
        let (area, _) = ui.allocate_exact_size(CARD_MM * self.points_per_mm, Sense::hover());
        let palette = Palette::of(ui.visuals());
        ui.painter().rect(
            area,
            3.0 * self.points_per_mm,
            palette.sheet,
            Stroke::new(1.5, palette.ink),
            StrokeKind::Inside,
        );
        match buttons(ui, &["That is its size", "Cancel"])? {
            0 => Some(Reply::Screen(self.points_per_mm)),
            _ => Some(Reply::Stay),
        }
    }
}
