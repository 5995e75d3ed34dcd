//! A tool drawn small, with its name and what is told of it.

use egui::accesskit::Role;
use egui::{
    Align, Layout, Rect, Response, RichText, Sense, Stroke, StrokeKind, Ui, UiBuilder, Vec2,
    WidgetInfo, vec2,
};
use lyon::tessellation::FillTessellator;
use reinwright_core::draw::{self, DrawOptions, Names, Sizes, Views};
use reinwright_core::finding::Severity;
use reinwright_core::paper::Drawing;
use reinwright_core::shop::ToolAnswers;
use reinwright_core::tool::Tool;

use crate::window::paint::ink::Ink;
use crate::window::paint::theme::Palette;
use crate::window::paint::view::View;

/// Width of a card at least, and height of its picture, in points.
const LEAST: f32 = 200.0;
const PICTURE: f32 = 78.0;
/// Room for the name and three lines, in points.
const WORDS: f32 = 70.0;

/// A tool with its picture.
#[derive(Debug)]
pub(super) struct Pictured {
    pub(super) tool: Tool,
    pub(super) known: ToolAnswers,
    drawing: Drawing,
}

impl Pictured {
    /// A tool, drawn without sizes: the first of its views, in which it is known at a glance.
    pub(super) fn of(tool: Tool) -> Self {
        let known = ToolAnswers::to(&tool);
        let options = DrawOptions {
            sizes: Sizes::None,
            names: Names::LeftOut,
            views: Views::Side,
            ..DrawOptions::default()
        };
        let mut drawing = draw::tool(&tool, &known.model, &options);
        drawing.items.truncate(1);
        Self {
            tool,
            known,
            drawing,
        }
    }

    /// Draws it into an area.
    pub(super) fn draw(&self, ui: &Ui, area: Rect, fills: &mut FillTessellator) {
        let palette = Palette::of(ui.visuals());
        let view = View::fit(self.drawing.bounds(), area, 8.0);
        let painter = ui.painter_at(area);
        Ink::new(painter, view, palette, None, fills).draw(&self.drawing.items);
    }

    /// Bar to cut, what it weighs, and what stands against it; as part of a sentence.
    pub(super) fn told(&self) -> String {
        let (tool, balance) = (&self.tool, &self.known.balance);
        if let Some(trouble) = balance.trouble() {
            return trouble;
        }
        let show = tool.units.show();
        let mass: f64 = balance.pieces.iter().map(|piece| piece.mass_kg).sum();
        format!(
            "cut {} of {}, {}; finished {}",
            balance.cut_length(tool.units),
            tool.bar.stock.words(),
            tool.bar.steel.name(),
            show.mass(mass)
        )
    }

    /// The worst that was noticed, if it must be mended.
    pub(super) fn against(&self) -> Option<String> {
        let worst = self.known.findings.first();
        let worst = worst.filter(|finding| finding.severity >= Severity::Mend)?;
        Some(format!(
            "{}: {}: {}",
            worst.severity.name(),
            worst.part,
            worst.message
        ))
    }
}

/// How many cards stand side by side.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a window is a few cards wide"
)]
pub(super) fn columns(width: f32) -> usize {
    (width / LEAST).floor().clamp(1.0, 6.0) as usize
}

/// A card that can be clicked, one of so many side by side.
pub(super) fn card(
    ui: &mut Ui,
    pictured: &Pictured,
    (name, about, columns): (&str, &str, usize),
    fills: &mut FillTessellator,
) -> Response {
    let gap = ui.spacing().item_spacing.x;
    #[allow(clippy::cast_precision_loss, reason = "a window is a few cards wide")]
    let columns = columns as f32;
    let width = (ui.max_rect().width() - gap * (columns - 1.0)) / columns;
    let (area, response) = ui.allocate_exact_size(vec2(width, PICTURE + WORDS), Sense::click());
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, format!("Take {name}")));
    if !ui.is_rect_visible(area) {
        return response;
    }
    let palette = Palette::of(ui.visuals());
    let lit = response.hovered() || response.has_focus();
    let (ground, line, colour) = if lit {
        (palette.wash, 1.5, palette.accent)
    } else {
        (palette.sheet, 1.0, palette.edge)
    };
    ui.painter().rect_filled(area, 4.0, ground);
    let picture = Rect::from_min_size(area.min, vec2(area.width(), PICTURE)).shrink(1.0);
    pictured.draw(ui, picture, fills);
    words(ui, area, (name, about));
    let stroke = Stroke::new(line, colour);
    ui.painter()
        .rect_stroke(area, 4.0, stroke, StrokeKind::Inside);
    response.on_hover_text(about)
}

fn words(ui: &mut Ui, card: Rect, (name, about): (&str, &str)) {
    let area = Rect::from_min_max(card.min + vec2(0.0, PICTURE), card.max);
    let builder = UiBuilder::new()
        .max_rect(area.shrink2(Vec2::new(8.0, 2.0)))
        .layout(Layout::top_down(Align::Min));
    // A child of its own: the card has its room already.
    let ui = &mut ui.new_child(builder);
    ui.spacing_mut().item_spacing.y = 1.0;
    ui.set_clip_rect(area.intersect(ui.clip_rect()));
    ui.add(egui::Label::new(RichText::new(name).size(14.0)).truncate());
    ui.add(egui::Label::new(RichText::new(about).size(11.5)).wrap());
}
