//! A small chart over the sizes of work that the pair holds.

use egui::accesskit::Role;
use egui::{Align2, FontId, Pos2, Rect, Sense, Stroke, Ui, Vec2, WidgetInfo};
use reinwright_core::proof::fit::ChartRow;
use reinwright_core::units::{Show, Unit};

use crate::window::paint::theme::Palette;
use crate::window::panels::ticks::ticks;

/// Height of the plot, in points.
const HEIGHT: f32 = 92.0;
/// Room for the numbers at the left and below.
const LEFT: f32 = 42.0;
const BELOW: f32 = 16.0;
const TEXT: f32 = 11.0;

/// What is charted.
pub(super) struct Chart<'a> {
    /// `Hand gap`; the unit is added.
    pub(super) title: &'static str,
    /// Over the sizes that are held.
    pub(super) rows: &'a [ChartRow],
    /// From either end outwards.
    pub(super) beyond: &'a [Vec<ChartRow>; 2],
    /// The sizes that are shown, mm.
    pub(super) across: (f64, f64),
    /// The figure of a row, mm.
    pub(super) of: fn(&ChartRow) -> f64,
    pub(super) show: Show,
    /// The design's own work, mm.
    pub(super) own_mm: f64,
    /// Work that is tried, mm.
    pub(super) tried_mm: Option<f64>,
}

impl Chart<'_> {
    /// Draws the chart; gives back the size of work that the pointer was dragged to, mm.
    pub(super) fn show(&self, ui: &mut Ui) -> Option<f64> {
        let sign = self.show.sign();
        ui.label(format!("{} over work size, {sign}", self.title));
        let size = Vec2::new(ui.available_width(), HEIGHT + BELOW);
        let (area, response) = ui.allocate_exact_size(size, Sense::click_and_drag());
        response.widget_info(|| WidgetInfo::labeled(Role::Image, true, self.words()));
        let corner = area.right_bottom() - Vec2::new(6.0, BELOW);
        let plot = Rect::from_min_max(area.left_top() + Vec2::new(LEFT, 4.0), corner);
        let scale = Scale::of(self, plot)?;
        scale.draw(ui, self);
        let at = response.interact_pointer_pos()?;
        Some(scale.size_at(at))
    }

    /// The ends of the curve in words.
    fn words(&self) -> String {
        let tell = |row: &ChartRow| {
            let [at, value] = [row.size_mm, (self.of)(row)].map(|mm| self.show.text(mm));
            format!("{value} on {at} work")
        };
        match (self.rows.first(), self.rows.last()) {
            (Some(first), Some(last)) => {
                format!("Chart of {}: {} to {}", self.title, tell(first), tell(last))
            }
            _ => format!("Chart of {}: nothing to show", self.title),
        }
    }
}

/// From sizes and figures in the shown unit to points of the screen.
struct Scale {
    plot: Rect,
    across: (f64, f64),
    up: (f64, f64),
    /// Millimetres in the shown unit.
    unit: f64,
}

#[allow(
    clippy::cast_possible_truncation,
    reason = "screens are far coarser than f32"
)]
impl Scale {
    fn of(chart: &Chart<'_>, plot: Rect) -> Option<Self> {
        let unit = unit_mm(chart.show);
        chart.rows.first()?;
        let (first, last) = chart.across;
        let outside = || chart.beyond.iter().flatten();
        let values = || {
            chart
                .rows
                .iter()
                .chain(outside())
                .map(|row| (chart.of)(row) / unit)
        };
        let low = values().fold(0.0, f64::min);
        let high = values().fold(0.0, f64::max);
        // A flat curve still needs some height to stand in.
        let rim = (0.08 * (high - low)).max(0.02);
        Some(Self {
            plot,
            across: (first / unit, (last / unit).max(first / unit + 1e-6)),
            up: (if low < 0.0 { low - rim } else { 0.0 }, high + rim),
            unit,
        })
    }

    fn point(&self, size: f64, value: f64) -> Pos2 {
        let part = |(from, to): (f64, f64), at: f64| ((at - from) / (to - from)) as f32;
        Pos2::new(
            self.plot.left() + part(self.across, size) * self.plot.width(),
            self.plot.bottom() - part(self.up, value) * self.plot.height(),
        )
    }

    /// The size of work under a point of the screen, mm, kept inside the chart.
    fn size_at(&self, at: Pos2) -> f64 {
        let part = f64::from((at.x - self.plot.left()) / self.plot.width()).clamp(0.0, 1.0);
        (self.across.0 + part * (self.across.1 - self.across.0)) * self.unit
    }

    fn draw(&self, ui: &Ui, chart: &Chart<'_>) {
        let palette = Palette::of(ui.visuals());
        let painter = ui.painter();
        painter.rect_filled(self.plot, 0.0, palette.sheet);
        self.outside(ui, chart);
        let thin = Stroke::new(1.0, palette.edge);
        for value in ticks(self.up, 3.0) {
            let at = self.point(self.across.0, value);
            painter.hline(self.plot.x_range(), at.y, thin);
            let left = at - Vec2::new(5.0, 0.0);
            self.number(ui, left, Align2::RIGHT_CENTER, value);
        }
        for size in ticks(self.across, 4.0) {
            let at = self.point(size, self.up.0);
            painter.vline(at.x, self.plot.bottom()..=self.plot.bottom() + 3.0, thin);
            self.number(ui, at + Vec2::new(0.0, 3.0), Align2::CENTER_TOP, size);
        }
        let axis = Stroke::new(1.0, palette.ink);
        painter.vline(self.plot.left(), self.plot.y_range(), axis);
        let foot = self.point(self.across.0, 0.0_f64.clamp(self.up.0, self.up.1));
        painter.hline(self.plot.x_range(), foot.y, axis);
        self.uprights(ui, chart);
        painter.line(
            self.curve(chart, chart.rows),
            Stroke::new(2.0, palette.note),
        );
        for rows in chart.beyond {
            let stroke = Stroke::new(1.5, palette.note);
            let curve = self.curve(chart, rows);
            painter.extend(egui::Shape::dashed_line(&curve, stroke, 4.0, 3.0));
        }
    }

    fn curve(&self, chart: &Chart<'_>, rows: &[ChartRow]) -> Vec<Pos2> {
        let point =
            |row: &ChartRow| self.point(row.size_mm / self.unit, (chart.of)(row) / self.unit);
        rows.iter().map(point).collect()
    }

    /// Hatches the sizes that are not held.
    fn outside(&self, ui: &Ui, chart: &Chart<'_>) {
        let (Some(least), Some(most)) = (chart.rows.first(), chart.rows.last()) else {
            return;
        };
        let x = |mm: f64| self.point(mm / self.unit, self.up.0).x;
        let (left, right) = (x(least.size_mm), x(most.size_mm));
        for side in [self.plot.with_max_x(left), self.plot.with_min_x(right)] {
            hatch(ui, side);
        }
    }

    /// The design's own work, dashed, and the work that is tried.
    fn uprights(&self, ui: &Ui, chart: &Chart<'_>) {
        let palette = Palette::of(ui.visuals());
        let inside = |mm: &f64| (self.across.0..=self.across.1).contains(&(mm / self.unit));
        let line = |mm: f64| {
            let [low, high] = [self.up.0, self.up.1].map(|y| self.point(mm / self.unit, y));
            [low, high]
        };
        if inside(&chart.own_mm) {
            let stroke = Stroke::new(1.0, palette.ink);
            let dashes = egui::Shape::dashed_line(&line(chart.own_mm), stroke, 4.0, 3.0);
            ui.painter().extend(dashes);
        }
        if let Some(mm) = chart.tried_mm.filter(inside) {
            let stroke = Stroke::new(2.0, palette.accent);
            ui.painter().line_segment(line(mm), stroke);
        }
    }

    fn number(&self, ui: &Ui, at: Pos2, align: Align2, value: f64) {
        let palette = Palette::of(ui.visuals());
        let span = (self.across.1 - self.across.0).max(self.up.1 - self.up.0);
        let text = if self.unit > 1.0 || span < 2.0 {
            format!("{value:.2}")
        } else {
            format!("{value:.1}")
        };
        let font = FontId::proportional(TEXT);
        ui.painter().text(at, align, text, font, palette.ink);
    }
}

/// Slanting lines over an area, with its edge towards what is held.
fn hatch(ui: &Ui, area: Rect) {
    /// Between two lines, in points.
    const STEP: f32 = 7.0;
    if area.width() < 1.0 {
        return;
    }
    let palette = Palette::of(ui.visuals());
    let painter = ui.painter_at(area);
    let stroke = Stroke::new(1.0, palette.edge);
    painter.rect_stroke(area, 0.0, stroke, egui::StrokeKind::Inside);
    let mut x = area.left() - area.height();
    while x < area.right() {
        let foot = Pos2::new(x, area.bottom());
        let head = Pos2::new(x + area.height(), area.top());
        painter.line_segment([foot, head], stroke);
        x += STEP;
    }
}

fn unit_mm(show: Show) -> f64 {
    match show.unit {
        Unit::Inch | Unit::Foot => Unit::Inch.mm(),
        Unit::Millimetre | Unit::Centimetre => 1.0,
    }
}
