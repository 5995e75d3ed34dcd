//! A small plot of temperatures with the forging range shaded.

use egui::accesskit::Role;
use egui::{Align2, FontId, Pos2, Rect, Sense, Shape, Stroke, Ui, Vec2, WidgetInfo};

use crate::window::paint::theme::Palette;
use crate::window::panels::ticks::{decimals, ticks};

/// Room for the numbers at the left and below, and size of the text, in points.
const LEFT: f32 = 36.0;
const BELOW: f32 = 16.0;
const TEXT: f32 = 11.0;

/// How a curve is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Stroked {
    Full,
    Dashed,
}

/// A curve.
pub(super) struct Curve {
    pub(super) name: &'static str,
    pub(super) stroked: Stroked,
    pub(super) points: Vec<(f64, f64)>,
}

/// What is plotted, in the units that are shown.
pub(super) struct Plot {
    pub(super) title: String,
    /// In words, for a screen reader.
    pub(super) said: String,
    /// What stands at the left and at the right end; it may count to the left.
    pub(super) across: (f64, f64),
    pub(super) up: (f64, f64),
    /// The forging range.
    pub(super) range: (f64, f64),
    /// What must be hot, or when the piece was in the heat: drawn along the foot.
    pub(super) foot: (f64, f64),
    pub(super) curves: Vec<Curve>,
}

impl Plot {
    pub(super) fn show(&self, ui: &mut Ui, size: Vec2) {
        let down = egui::Layout::top_down(egui::Align::Min);
        ui.allocate_ui_with_layout(size, down, |ui| {
            ui.spacing_mut().item_spacing.y = 1.0;
            self.legend(ui);
            let room = Vec2::new(size.x, (size.y - 22.0).max(40.0));
            let (area, response) = ui.allocate_exact_size(room, Sense::hover());
            response.widget_info(|| WidgetInfo::labeled(Role::Image, true, &self.said));
            let plot = Rect::from_min_max(
                area.min + Vec2::new(LEFT, 4.0),
                area.max - Vec2::new(8.0, BELOW),
            );
            self.draw(ui, plot);
        });
    }

    /// The title, and what each curve is.
    fn legend(&self, ui: &mut Ui) {
        ui.horizontal(|ui| {
            ui.spacing_mut().item_spacing.x = 5.0;
            ui.label(&self.title);
            for curve in &self.curves {
                let (area, _) = ui.allocate_exact_size(Vec2::new(20.0, 12.0), Sense::hover());
                let ends = [area.left_center(), area.right_center()];
                line(ui, &ends, curve.stroked);
                ui.weak(curve.name);
            }
        });
    }

    fn draw(&self, ui: &Ui, plot: Rect) {
        let palette = Palette::of(ui.visuals());
        let painter = ui.painter_at(plot.expand2(Vec2::new(LEFT, BELOW)));
        painter.rect_filled(plot, 0.0, palette.sheet);
        let at = |x: f64, y: f64| self.place(plot, (x, y));
        let band = Rect::from_two_pos(
            at(self.across.0, self.range.0.max(self.up.0)),
            at(self.across.1, self.range.1.min(self.up.1)),
        );
        painter.rect_filled(band, 0.0, palette.wash);
        for value in ticks(self.up, 3.0) {
            let left = at(self.across.0, value);
            let thin = Stroke::new(1.0, palette.edge);
            painter.hline(plot.x_range(), left.y, thin);
            let font = FontId::proportional(TEXT);
            let place = left - Vec2::new(4.0, 0.0);
            painter.text(
                place,
                Align2::RIGHT_CENTER,
                format!("{value:.0}"),
                font,
                palette.ink,
            );
        }
        let about = f64::from(plot.width() / 60.0).max(2.0);
        let (left, right) = self.across;
        let along = ticks((left.min(right), left.max(right)), about);
        let digits = decimals(&along);
        for value in along {
            let foot = at(value, self.up.0);
            let thin = Stroke::new(1.0, palette.ink);
            painter.vline(foot.x, plot.bottom()..=plot.bottom() + 3.0, thin);
            let align = if foot.x > plot.right() - 14.0 && value > 0.0 {
                Align2::RIGHT_TOP
            } else {
                Align2::CENTER_TOP
            };
            let font = FontId::proportional(TEXT);
            let place = foot + Vec2::new(0.0, 3.0);
            painter.text(place, align, format!("{value:.digits$}"), font, palette.ink);
        }
        let inside = ui.painter_at(plot);
        let foot = [at(self.foot.0, self.up.0), at(self.foot.1, self.up.0)];
        let foot = foot.map(|own| own - Vec2::new(0.0, 2.0));
        inside.line_segment(foot, Stroke::new(4.0, palette.accent));
        for curve in &self.curves {
            let points: Vec<Pos2> = curve.points.iter().map(|(x, y)| at(*x, *y)).collect();
            line(ui, &points, curve.stroked);
        }
        painter.rect_stroke(
            plot,
            0.0,
            Stroke::new(1.0, palette.ink),
            egui::StrokeKind::Outside,
        );
    }

    #[allow(
        clippy::cast_possible_truncation,
        reason = "screens are far coarser than f32"
    )]
    fn place(&self, plot: Rect, (x, y): (f64, f64)) -> Pos2 {
        let part = |(from, to): (f64, f64), at: f64| {
            // What has no length has no direction either.
            let whole = (to - from).abs().max(1e-9).copysign(to - from);
            ((at - from) / whole).clamp(0.0, 1.0) as f32
        };
        Pos2::new(
            plot.left() + part(self.across, x) * plot.width(),
            plot.bottom() - part(self.up, y) * plot.height(),
        )
    }
}

fn line(ui: &Ui, points: &[Pos2], stroked: Stroked) {
    let palette = Palette::of(ui.visuals());
    match stroked {
        Stroked::Full => {
            let stroke = Stroke::new(2.0, palette.note);
            ui.painter().line(points.to_vec(), stroke);
        }
        Stroked::Dashed => {
            let stroke = Stroke::new(1.8, palette.accent);
            let dashes = Shape::dashed_line(points, stroke, 5.0, 3.0);
            ui.painter().extend(dashes);
        }
    }
}
