//! What the set holds and takes: ranges of work, gaps and overlaps, bar and mass.

use egui::{
    Align2, FontId, Pos2, Rect, RichText, ScrollArea, Sense, Shape, Stroke, TextWrapMode, Ui, pos2,
    vec2,
};
use reinwright_core::finding::Part;
use reinwright_core::shop::family::sheet::short_name;
use reinwright_core::shop::family::{Coverage, Gap, OfSize, Overlap};
use reinwright_core::units::Length;

use super::seen::Seen;
use super::{FamilyBench, Lent};
use crate::window::paint::focus::follow;
use crate::window::paint::ink::colour_of;
use crate::window::paint::theme::Palette;
use crate::window::panels::wish::Wish;
use crate::window::state::rows::capital;

/// Height of a size's row, in points.
const ROW: f32 = 20.0;
/// Least and greatest width of the names, and that of what stands after a bar.
const NAMES: f32 = 112.0;
const LONG_NAMES: f32 = 240.0;
const AFTER: f32 = 150.0;
/// Size of the letters.
const LETTERS: f32 = 12.0;

/// The stretch of a chart on the screen.
#[derive(Debug, Clone, Copy)]
struct Scale {
    from: f64,
    to: f64,
    left: f32,
    width: f32,
}

impl Scale {
    #[allow(
        clippy::cast_possible_truncation,
        reason = "screens are far coarser than f32"
    )]
    fn x(self, value: f64) -> f32 {
        let part = (value - self.from) / (self.to - self.from).max(1e-9);
        self.left + self.width * part as f32
    }
}

impl<D: Seen> FamilyBench<D> {
    pub(super) fn holds(&mut self, ui: &mut Ui, lent: &mut Lent<'_>) {
        let (mut fill, mut stock) = (None, None);
        ScrollArea::vertical()
            .id_salt("holds")
            .auto_shrink([false, false])
            .show(ui, |ui| {
                self.names = self.width_of_names(ui);
                for coverage in &self.set.coverage {
                    self.ranges(ui, coverage);
                    fill = self.in_words(ui, coverage).or(fill);
                }
                self.without_range(ui);
                let units = self.session.now.base.units();
                if D::HOLDS {
                    stock = self.stock.show(ui, units, &mut self.typing);
                }
                self.takes(ui);
                follow(ui);
            });
        lent.asked.extend(stock.map(Wish::Stock));
        if let Some((size, at)) = fill {
            self.fill_gap(size, at, lent);
        }
    }

    /// As wide as the longest name, within reason.
    fn width_of_names(&self, ui: &Ui) -> f32 {
        let font = FontId::proportional(LETTERS);
        let width = |name: &String| {
            let galley =
                ui.painter()
                    .layout_no_wrap(name.clone(), font.clone(), egui::Color32::BLACK);
            galley.size().x + 8.0
        };
        let widest = self.set.short.iter().map(width).fold(NAMES, f32::max);
        widest.min(LONG_NAMES.min(0.3 * ui.available_width()).max(NAMES))
    }

    fn ranges(&self, ui: &mut Ui, coverage: &Coverage) {
        let palette = Palette::of(ui.visuals());
        let show = self.session.now.base.units().show();
        ui.label(RichText::new(format!("Holds {}", coverage.shape)).strong());
        let from = coverage
            .spans
            .iter()
            .map(|s| s.from_mm)
            .fold(f64::MAX, f64::min);
        let to = coverage.spans.iter().map(|s| s.to_mm).fold(0.0, f64::max);
        let top = ui.cursor().top();
        for span in &coverage.spans {
            let words = format!("{} to {}", show.text(span.from_mm), show.text(span.to_mm));
            let Some((row, scale)) = self.row(ui, (span.size, &words), (from, to)) else {
                continue;
            };
            bar(
                ui,
                row,
                (scale.x(span.from_mm), scale.x(span.to_mm)),
                colour_of(Part::Jaw),
            );
            let own = D::held_mm(&self.set.answers[span.size]);
            let x = scale.x(own).clamp(scale.left, scale.left + scale.width);
            ui.painter()
                .vline(x, row.y_range(), Stroke::new(2.0, palette.ink));
        }
        let area = Rect::from_min_max(pos2(0.0, top), pos2(0.0, ui.cursor().top()));
        for gap in &coverage.gaps {
            let scale = self.scale_of(ui, (from, to));
            let (a, b) = (scale.x(gap.from_mm), scale.x(gap.to_mm));
            hatch(
                ui,
                Rect::from_min_max(pos2(a, area.top()), pos2(b.max(a + 2.0), area.bottom())),
            );
        }
    }

    /// A row of the chart, with name and words; `None` when it is out of sight.
    fn row(
        &self,
        ui: &mut Ui,
        (size, words): (usize, &str),
        (from, to): (f64, f64),
    ) -> Option<(Rect, Scale)> {
        let (row, response) =
            ui.allocate_exact_size(vec2(ui.available_width(), ROW), Sense::hover());
        let label = self.set.table.labels.get(size)?;
        response.widget_info(|| {
            egui::WidgetInfo::labeled(
                egui::accesskit::Role::Label,
                true,
                format!("{label}: {words}"),
            )
        });
        if !ui.is_rect_visible(row) {
            return None;
        }
        let palette = Palette::of(ui.visuals());
        if size == self.chosen {
            ui.painter().rect_filled(row, 2.0, palette.wash);
        }
        let scale = self.scale_of_row(row, (from, to));
        let font = FontId::proportional(LETTERS);
        let name = self.set.short.get(size).unwrap_or(label);
        let galley = egui::WidgetText::from(name).into_galley(
            ui,
            Some(TextWrapMode::Truncate),
            self.names - 8.0,
            font.clone(),
        );
        let at = row.left_center() - vec2(0.0, 0.5 * galley.size().y);
        ui.painter().galley(at, galley, palette.ink);
        response.on_hover_text(format!("{label}: {words}"));
        let after = pos2(scale.left + scale.width + 8.0, row.center().y);
        ui.painter()
            .text(after, Align2::LEFT_CENTER, words, font, palette.ink);
        Some((row, scale))
    }

    /// Gaps and overlaps as sentences; gives back the gap to be filled: the size, and like which
    /// of the set.
    fn in_words(&self, ui: &mut Ui, coverage: &Coverage) -> Option<(Length, usize)> {
        let units = self.session.now.base.units();
        let palette = Palette::of(ui.visuals());
        let mut fill = None;
        for gap in &coverage.gaps {
            ui.horizontal_wrapped(|ui| {
                ui.colored_label(palette.stop, capital(&gap.sentence()));
                let size = gap.filler();
                let label = format!("Add a size for {size}");
                let hint = "The stock size nearest to the middle of the gap";
                if ui.button(label).on_hover_text(hint).clicked() {
                    fill = below(coverage, gap).map(|at| (size, at));
                }
            });
        }
        for overlap in &coverage.overlaps {
            ui.label(self.overlap_words(overlap));
        }
        if let Some(held) = coverage.all_held(units) {
            ui.label(capital(&held));
        }
        ui.add_space(8.0);
        fill
    }

    fn overlap_words(&self, overlap: &Overlap) -> String {
        let show = self.session.now.base.units().show();
        let label = |at: usize| {
            let label = self.set.table.labels.get(at);
            label.map(|label| short_name(label)).unwrap_or_default()
        };
        let [a, b] = overlap.sizes;
        format!(
            "Both {} and {} hold {} to {}",
            label(a),
            label(b),
            show.text(overlap.from_mm),
            show.text(overlap.to_mm)
        )
    }

    fn without_range(&self, ui: &mut Ui) {
        for answer in &self.set.answers {
            if let Some(no) = D::holds_nothing(answer) {
                ui.label(format!(
                    "{} holds nothing: {no}",
                    short_name(answer.label())
                ));
            }
        }
    }

    /// Length and mass of the bar, size by size.
    fn takes(&self, ui: &mut Ui) {
        let units = self.session.now.base.units();
        let length = |of: &D::Answer| match of.balance().trouble() {
            None => of.balance().cut_length(units).mm(),
            Some(_) => 0.0,
        };
        let kg = |of: &D::Answer| of.mass_kg();
        let length_words = |of: &D::Answer| of.balance().cut_text(units);
        let mass_words = |of: &D::Answer| units.show().mass(kg(of));
        self.bars(
            ui,
            &format!("Bar for a {}", D::NAME),
            &length,
            &length_words,
        );
        self.bars(ui, &format!("Mass of a {}", D::NAME), &kg, &mass_words);
    }

    fn bars(
        &self,
        ui: &mut Ui,
        title: &str,
        value: &dyn Fn(&D::Answer) -> f64,
        words: &dyn Fn(&D::Answer) -> String,
    ) {
        ui.label(RichText::new(title).strong());
        let most = self.set.answers.iter().map(value).fold(0.0, f64::max);
        for (at, answer) in self.set.answers.iter().enumerate() {
            if let Some((row, scale)) = self.row(ui, (at, &words(answer)), (0.0, most)) {
                bar(
                    ui,
                    row,
                    (scale.left, scale.x(value(answer))),
                    colour_of(Part::Rein),
                );
            }
        }
        ui.add_space(8.0);
    }

    fn scale_of(&self, ui: &Ui, ends: (f64, f64)) -> Scale {
        let width = vec2(ui.available_width(), ROW);
        self.scale_of_row(Rect::from_min_size(ui.cursor().min, width), ends)
    }

    fn scale_of_row(&self, row: Rect, (from, to): (f64, f64)) -> Scale {
        Scale {
            from,
            to,
            left: row.left() + self.names,
            width: (row.width() - self.names - AFTER).max(40.0),
        }
    }

    fn fill_gap(&mut self, size: Length, like: usize, lent: &mut Lent<'_>) {
        if let Some(like) = self.session.now.sizes.get(like) {
            self.add(D::with_size(like.work, size), lent);
        }
    }
}

/// The size whose range ends where a gap begins.
fn below(coverage: &Coverage, gap: &Gap) -> Option<usize> {
    let ends = |to: f64| (to - gap.from_mm).abs() < 1e-9;
    let span = coverage.spans.iter().find(|span| ends(span.to_mm));
    span.map(|span| span.size)
}

fn bar(ui: &Ui, row: Rect, (from, to): (f32, f32), colour: egui::Color32) {
    let palette = Palette::of(ui.visuals());
    let rect = Rect::from_min_max(pos2(from, row.top() + 4.0), pos2(to, row.bottom() - 4.0));
    ui.painter()
        .rect_filled(rect, 1.0, palette.sheet.lerp_to_gamma(colour, 0.75));
    ui.painter().rect_stroke(
        rect,
        1.0,
        Stroke::new(1.0, palette.faint),
        egui::StrokeKind::Inside,
    );
}

/// A gap, hatched, so that no colour stands alone.
fn hatch(ui: &Ui, area: Rect) {
    let palette = Palette::of(ui.visuals());
    let painter = ui.painter().with_clip_rect(area.intersect(ui.clip_rect()));
    let stroke = Stroke::new(1.2, palette.stop);
    painter.rect_stroke(area, 0.0, stroke, egui::StrokeKind::Inside);
    let mut x = area.left() - area.height();
    while x < area.right() {
        let foot = Pos2::new(x, area.bottom());
        painter.add(Shape::line_segment(
            [foot, foot + vec2(area.height(), -area.height())],
            stroke,
        ));
        x += 7.0;
    }
}
