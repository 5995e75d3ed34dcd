//! The time from the first heat to the last: sources made ready and at work, the smith at the anvil.

use egui::accesskit::Role;
use egui::text::LayoutJob;
use egui::{Align2, Color32, FontId, Pos2, Rect, Sense, Stroke, StrokeKind, Ui, Vec2, WidgetInfo};
use reinwright_core::heats::{Doing, Span, spoken};

use super::{choose, lit_row, point_at};
use crate::window::paint::theme::Palette;
use crate::window::panels::ticks::ticks;
use crate::window::state::heating::Heat;
use crate::window::state::look::Look;
use crate::window::state::rows::capital;

/// Room for the names at the left, for a lane, for the numbers above and below, in points.
const LEFT: f32 = 142.0;
const LANE: f32 = 17.0;
const ABOVE: f32 = 15.0;
const BELOW: f32 = 16.0;
const TEXT: f32 = 11.0;
/// Steel in the heat, as the drawing shows it.
const HOT: Color32 = Color32::from_rgb(0xff, 0x8c, 0x2a);

/// Shows the timeline; what is pointed at or clicked lights up.
pub(super) fn show(ui: &mut Ui, heat: &Heat, look: &mut Look) {
    let lanes = lanes(heat);
    #[allow(clippy::cast_precision_loss, reason = "a few lanes")]
    let high = ABOVE + LANE * (lanes.len() + 1) as f32 + BELOW;
    let size = Vec2::new(ui.available_width(), high);
    let (area, response) = ui.allocate_exact_size(size, Sense::click());
    let said = format!("Timeline: {}", heat.heats.in_short());
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, &said));
    let drawn = Drawn {
        plot: Rect::from_min_max(
            area.min + Vec2::new(LEFT, ABOVE),
            area.max - Vec2::new(8.0, BELOW),
        ),
        area,
        seconds: heat.heats.totals.time_s.max(1.0),
        lanes,
    };
    let pointed = response.hover_pos().and_then(|at| drawn.span_at(heat, at));
    if let Some(span) = pointed {
        point_at(heat, look, (span.operation, span.source));
        if response.clicked() {
            choose(heat, look, (span.operation, span.source));
        }
    }
    drawn.paint(ui, heat, look);
    if let Some(span) = pointed {
        let words = words(heat, span);
        response.on_hover_text_at_pointer(words);
    }
}

/// The sources that are used, in the order in which they are.
fn lanes(heat: &Heat) -> Vec<usize> {
    let mut lanes = Vec::new();
    for source in heat.heats.operations.iter().filter_map(|own| own.source) {
        if !lanes.contains(&source) {
            lanes.push(source);
        }
    }
    lanes
}

/// `3  Set down the boss, wide coil: in the heat, 35 s, from 4 min 10 s on`.
fn words(heat: &Heat, span: &Span) -> String {
    let own = &heat.heats.operations[span.operation];
    let source = span.source.map_or_else(String::new, |at| {
        format!(", {}", heat.prepared.shop.sources[at].name)
    });
    format!(
        "{}  {}{source}: {}, {}, from {} on",
        own.number,
        capital(own.step.name()),
        doing(span.doing),
        spoken(span.to_s - span.from_s),
        spoken(span.from_s),
    )
}

fn doing(doing: Doing) -> &'static str {
    match doing {
        Doing::Ready => "made ready",
        Doing::Heating => "in the heat",
        Doing::Handling => "to the anvil and back",
        Doing::Working => "worked",
        Doing::ColdWork => "worked cold",
    }
}

struct Drawn {
    area: Rect,
    plot: Rect,
    seconds: f64,
    lanes: Vec<usize>,
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_precision_loss,
    reason = "screens are far coarser than f32"
)]
impl Drawn {
    fn x(&self, seconds: f64) -> f32 {
        self.plot.left() + (seconds / self.seconds) as f32 * self.plot.width()
    }

    fn lane(&self, at: usize) -> Rect {
        let top = self.plot.top() + LANE * at as f32;
        Rect::from_x_y_ranges(self.plot.x_range(), top..=top + LANE)
    }

    /// Where a span is drawn: in the lane of its source, or on the anvil.
    fn place(&self, span: &Span) -> Rect {
        let anvil = self.lanes.len();
        let own = match span.doing {
            Doing::Ready | Doing::Heating => {
                let lane = self.lanes.iter().position(|own| Some(*own) == span.source);
                lane.unwrap_or(anvil)
            }
            Doing::Handling | Doing::Working | Doing::ColdWork => anvil,
        };
        let lane = self.lane(own).shrink2(Vec2::new(0.0, 2.0));
        Rect::from_x_y_ranges(self.x(span.from_s)..=self.x(span.to_s), lane.y_range())
    }

    fn span_at<'a>(&self, heat: &'a Heat, at: Pos2) -> Option<&'a Span> {
        if !self.plot.contains(at) {
            return None;
        }
        let part = f64::from((at.x - self.plot.left()) / self.plot.width());
        let now = part * self.seconds;
        let mut spans = heat.heats.spans.iter();
        spans.find(|span| (span.from_s..=span.to_s).contains(&now))
    }

    fn paint(&self, ui: &Ui, heat: &Heat, look: &Look) {
        let palette = Palette::of(ui.visuals());
        let painter = ui.painter_at(self.area);
        painter.rect_filled(self.plot, 0.0, palette.sheet);
        self.names(ui, heat);
        let mut last = f32::MIN;
        for (at, own) in heat.heats.operations.iter().enumerate() {
            let Some((from, to)) = stretch(heat, at) else {
                continue;
            };
            let (left, right) = (self.x(from), self.x(to));
            if lit_row(look) == Some(at) {
                let column = Rect::from_x_y_ranges(left..=right, self.plot.y_range());
                painter.rect_filled(column, 0.0, palette.wash);
            }
            let edge = Stroke::new(1.0, palette.edge);
            painter.vline(left, self.plot.y_range(), edge);
            let middle = f32::midpoint(left, right);
            let words = own.number.to_string();
            // A number that finds no room is left out, and told when it is pointed at.
            let needs = 3.5 * words.len() as f32 + 2.0;
            if middle - needs > last {
                let foot = Pos2::new(middle, self.plot.top() - 1.0);
                let font = FontId::proportional(TEXT);
                painter.text(foot, Align2::CENTER_BOTTOM, words, font, palette.ink);
                last = middle + needs;
            }
        }
        for span in &heat.heats.spans {
            bar(ui, self.place(span), span.doing);
        }
        let frame = Stroke::new(1.0, palette.ink);
        painter.rect_stroke(self.plot, 0.0, frame, StrokeKind::Outside);
        self.minutes(ui);
    }

    fn names(&self, ui: &Ui, heat: &Heat) {
        let palette = Palette::of(ui.visuals());
        let name = |source: &usize| heat.prepared.shop.sources[*source].name.clone();
        let all = self.lanes.iter().map(name);
        let all = all.chain(std::iter::once("at the anvil".to_owned()));
        for (at, words) in all.enumerate() {
            let font = FontId::proportional(TEXT + 0.5);
            let mut job = LayoutJob::simple(words, font, palette.ink, LEFT - 8.0);
            job.wrap.max_rows = 1;
            job.wrap.break_anywhere = true;
            let galley = ui.painter().layout_job(job);
            let middle = self.lane(at).center().y;
            let corner = Pos2::new(
                self.plot.left() - 6.0 - galley.size().x,
                middle - galley.size().y / 2.0,
            );
            ui.painter().galley(corner, galley, palette.ink);
            if at > 0 {
                let thin = Stroke::new(1.0, palette.edge);
                ui.painter()
                    .hline(self.plot.x_range(), self.lane(at).top(), thin);
            }
        }
    }

    fn minutes(&self, ui: &Ui) {
        let palette = Palette::of(ui.visuals());
        let about = f64::from(self.plot.width() / 70.0).max(2.0);
        let all = ticks((0.0, self.seconds / 60.0), about);
        let count = all.len();
        for (at, minute) in all.into_iter().enumerate() {
            let x = self.x(60.0 * minute);
            let thin = Stroke::new(1.0, palette.ink);
            ui.painter()
                .vline(x, self.plot.bottom()..=self.plot.bottom() + 3.0, thin);
            let words = if at + 1 == count {
                format!("{minute} min")
            } else {
                minute.to_string()
            };
            let align = if x > self.plot.right() - 24.0 {
                Align2::RIGHT_TOP
            } else {
                Align2::CENTER_TOP
            };
            let foot = Pos2::new(x, self.plot.bottom() + 3.0);
            let font = FontId::proportional(TEXT);
            ui.painter().text(foot, align, words, font, palette.ink);
        }
    }
}

/// From when to when an operation lasts, s.
fn stretch(heat: &Heat, operation: usize) -> Option<(f64, f64)> {
    let own = heat
        .heats
        .spans
        .iter()
        .filter(|span| span.operation == operation);
    own.fold(None, |all: Option<(f64, f64)>, span| {
        let from = all.map_or(span.from_s, |own| own.0);
        Some((from, span.to_s))
    })
}

/// A stretch of time as it is drawn: hatched while a source is made ready, full in the heat, dark under
/// the hammer, low on the way.
fn bar(ui: &Ui, area: Rect, doing: Doing) {
    let palette = Palette::of(ui.visuals());
    let painter = ui.painter_at(area.expand(0.5));
    match doing {
        Doing::Heating => {
            painter.rect_filled(area, 0.0, HOT);
        }
        Doing::Working => {
            painter.rect_filled(area, 0.0, palette.ink);
        }
        Doing::ColdWork => {
            painter.rect_filled(area, 0.0, palette.note);
        }
        Doing::Handling => {
            let low = area.with_min_y(area.bottom() - area.height() / 3.0);
            painter.rect_filled(low, 0.0, palette.faint);
        }
        Doing::Ready => {
            let stroke = Stroke::new(1.0, palette.ink);
            painter.rect_stroke(area, 0.0, stroke, StrokeKind::Inside);
            let mut x = area.left() - area.height();
            while x < area.right() {
                let foot = Pos2::new(x, area.bottom());
                let head = Pos2::new(x + area.height(), area.top());
                painter.line_segment([foot, head], stroke);
                x += 5.0;
            }
        }
    }
}
