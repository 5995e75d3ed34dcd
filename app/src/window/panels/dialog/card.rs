use egui::{Pos2, Rect, Sense, Slider, Stroke, StrokeKind, Ui, Vec2, pos2};

use super::{Reply, buttons};
use crate::window::paint::theme::Palette;

/// Size of an ID-1 card, mm (ISO/IEC 7810: bank cards and many identity cards).
const CARD_MM: Vec2 = Vec2::new(85.60, 53.98);
/// The rule that is drawn, mm: 100 mm and 4 in beside each other.
const METRIC_MM: f32 = 100.0;
const INCHES: [f32; 2] = [4.0, 25.4];

/// What is laid on the screen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum With {
    Card,
    Rule,
}

/// Measures the screen with a card or a rule laid on it.
#[derive(Debug)]
pub(crate) struct Card {
    points_per_mm: f32,
    with: With,
}

impl Card {
    pub(crate) fn new(points_per_mm: f32) -> Self {
        Self {
            points_per_mm,
            with: With::Card,
        }
    }

    pub(super) fn show(&mut self, ui: &mut Ui) -> Option<Reply> {
        ui.heading("Measure the screen");
        ui.horizontal(|ui| {
            ui.radio_value(&mut self.with, With::Card, "With a bank card");
            ui.radio_value(&mut self.with, With::Rule, "With a rule");
        });
        ui.label(match self.with {
            With::Card => {
                "Lay a bank card (85.60 mm by 53.98 mm) on the screen, its corner on the corner of \
                 the frame, and draw the slider until the frame is as large as the card."
            }
            With::Rule => {
                "Lay a rule on the screen along the line, and draw the slider until its marks and \
                 those of the rule agree over their whole length."
            }
        });
        let label = ui.label("Points of the screen to one millimetre");
        ui.spacing_mut().slider_width = 520.0;
        let slider = Slider::new(&mut self.points_per_mm, 2.0..=7.5).fixed_decimals(3);
        ui.add(slider).labelled_by(label.id);
        match self.with {
            With::Card => self.card(ui),
            With::Rule => self.rule(ui),
        }
        match buttons(ui, &["That is its size", "Cancel"])? {
            0 => Some(Reply::Screen(self.points_per_mm)),
            _ => Some(Reply::Stay),
        }
    }

    fn card(&self, ui: &mut Ui) {
        let (area, _) = ui.allocate_exact_size(CARD_MM * self.points_per_mm, Sense::hover());
        let palette = Palette::of(ui.visuals());
        ui.painter().rect(
            area,
            3.0 * self.points_per_mm,
            palette.sheet,
            Stroke::new(1.5, palette.ink),
            StrokeKind::Inside,
        );
    }

    /// Millimetres over the line, inches with their eighths under it.
    fn rule(&self, ui: &mut Ui) {
        /// How high it is, and its longest, middle and shortest marks, in points.
        const HIGH: f32 = 76.0;
        const MARKS: [f32; 3] = [18.0, 13.0, 8.0];
        let [inches, inch] = INCHES;
        let wide = METRIC_MM.max(inches * inch) * self.points_per_mm;
        let (area, _) = ui.allocate_exact_size(Vec2::new(wide, HIGH), Sense::hover());
        let pen = Stroke::new(1.0, Palette::of(ui.visuals()).ink);
        let middle = area.center().y;
        let at = |mm: f32, up: f32| pos2(area.left() + mm * self.points_per_mm, middle - up);
        let line = |from: Pos2, to: Pos2| {
            ui.painter().line_segment([from, to], pen);
        };
        line(at(0.0, 0.0), at(wide / self.points_per_mm, 0.0));
        for mm in 0..=100_u8 {
            let long =
                MARKS[usize::from(!mm.is_multiple_of(10)) + usize::from(!mm.is_multiple_of(5))];
            line(at(f32::from(mm), 0.0), at(f32::from(mm), long));
        }
        for eighth in 0..=32_u8 {
            let long = MARKS
                [usize::from(!eighth.is_multiple_of(8)) + usize::from(!eighth.is_multiple_of(4))];
            let mm = f32::from(eighth) * inch / 8.0;
            line(at(mm, 0.0), at(mm, -long));
        }
        let font = egui::TextStyle::Small.resolve(ui.style());
        let words = [
            (
                Rect::from_min_max(area.min, pos2(area.right(), middle - MARKS[0])),
                "100 mm",
            ),
            (
                Rect::from_min_max(pos2(area.left(), middle + MARKS[0]), area.max),
                "4 in",
            ),
        ];
        for (room, words) in words {
            let (place, ink) = (room.center(), pen.color);
            ui.painter()
                .text(place, egui::Align2::CENTER_CENTER, words, font.clone(), ink);
        }
    }
}
