//! One pair or one tool on the shelf.

use egui::accesskit::Role;
use egui::{
    Align, Layout, Rect, RichText, Sense, Stroke, StrokeKind, Ui, UiBuilder, Vec2, WidgetInfo, vec2,
};
use lyon::tessellation::FillTessellator;
use reinwright_core::shop::shelf::{Mark, Stock};
use reinwright_core::tongs::jaw::Verdict;

use super::Shelf;
use crate::window::paint::ink::Ink;
use crate::window::paint::theme::Palette;
use crate::window::paint::view::View;
use crate::window::state::rows::capital;

/// Least width and height of a card, in points, and what an answer adds.
const CARD: Vec2 = Vec2::new(330.0, 176.0);
const ANSWER: f32 = 54.0;
/// Between two cards.
pub(super) const GAP: f32 = 10.0;
/// Height of its picture.
const PICTURE: f32 = 88.0;
/// Between a card's edge and what is on it.
const RIM: f32 = 8.0;

/// What was done on a card.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum CardDeed {
    /// Its picture was clicked.
    Open,
    /// It was marked, or its mark taken away.
    Mark(Option<Mark>),
}

/// How many cards stand beside each other in a width, and how large they are: with or without
/// room for an answer.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_precision_loss,
    clippy::cast_sign_loss,
    reason = "a window is some thousand points wide at most"
)]
pub(super) fn layout(width: f32, asked: Option<&Stock>) -> (usize, Vec2) {
    let across = ((width + GAP) / (CARD.x + GAP)).floor().max(1.0);
    let wide = (width + GAP) / across - GAP;
    let high = CARD.y + asked.map_or(0.0, |_stock| ANSWER);
    (across as usize, vec2(wide, high))
}

/// From the first card to another.
#[allow(
    clippy::cast_precision_loss,
    reason = "only a handful of cards are in sight"
)]
pub(super) fn step(column: usize, line: usize, size: Vec2) -> Vec2 {
    vec2(column as f32 * (size.x + GAP), line as f32 * (size.y + GAP))
}

impl Shelf {
    /// Draws a card; gives back what was done on it.
    pub(super) fn card(
        &mut self,
        ui: &mut Ui,
        area: Rect,
        at: usize,
        fills: &mut FillTessellator,
    ) -> Option<CardDeed> {
        let palette = Palette::of(ui.visuals());
        ui.painter().rect(
            area,
            4.0,
            palette.sheet,
            Stroke::new(1.0, palette.edge),
            StrokeKind::Inside,
        );
        let inner = area.shrink(RIM);
        let picture = Rect::from_min_size(inner.min, vec2(inner.width(), PICTURE));
        let opened = self.picture(ui, picture, at, fills);
        let words = Rect::from_min_max(picture.left_bottom() + vec2(0.0, 4.0), inner.max);
        let builder = UiBuilder::new()
            .max_rect(words)
            .layout(Layout::top_down(Align::Min))
            .id_salt(("card", at));
        let mut ui = ui.new_child(builder);
        ui.shrink_clip_rect(area);
        ui.spacing_mut().item_spacing.y = 2.0;
        let marked = self.words(&mut ui, at);
        if opened { Some(CardDeed::Open) } else { marked }
    }

    /// The picture; true when it was clicked.
    fn picture(&mut self, ui: &Ui, area: Rect, at: usize, fills: &mut FillTessellator) -> bool {
        let palette = Palette::of(ui.visuals());
        let title = self.cards[at].title.clone();
        let response = ui.interact(
            area,
            ui.scope_id().with(("shelf picture", at)),
            Sense::click(),
        );
        response.widget_info(|| WidgetInfo::labeled(Role::Button, true, format!("Open {title}")));
        if response.hovered() || response.has_focus() {
            ui.painter().rect_filled(area, 3.0, palette.wash);
        }
        if let Some(tool) = self.cards[at].tool() {
            tool.draw(ui, area, fills);
        } else if let Some((drawing, bounds)) = self.cards[at].picture() {
            let view = View::fit(*bounds, area, 3.0);
            let painter = ui.painter().with_clip_rect(area.intersect(ui.clip_rect()));
            Ink::new(painter, view, palette, None, fills).draw(&drawing.items);
        }
        let path = self.files[self.cards[at].file].path.display().to_string();
        response.on_hover_text(format!("Open {path}")).clicked()
    }

    fn words(&self, ui: &mut Ui, at: usize) -> Option<CardDeed> {
        let card = &self.cards[at];
        line(ui, RichText::new(&card.title).strong());
        if let Some(tool) = card.tool() {
            line(ui, RichText::new(capital(tool.tool.style_kind().name())));
            line(ui, RichText::new(capital(&tool.told())));
        }
        if let Some(pair) = card.pair() {
            let range = pair.range(self.units);
            line(
                ui,
                RichText::new(format!("{} jaws for {}", pair.jaw(), pair.work())),
            );
            line(ui, RichText::new(range));
        }
        if let Some(held) = &card.held {
            let palette = Palette::of(ui.visuals());
            let colour = match held.verdict() {
                Verdict::Well | Verdict::WithAWord => palette.ink,
                Verdict::Badly => palette.mend,
                Verdict::Unsafe => palette.stop,
                Verdict::Cannot => palette.faint,
            };
            let text = capital(&held.sentence(self.units));
            let label = egui::Label::new(RichText::new(&text).color(colour)).wrap();
            ui.add(label).on_hover_text(text);
        }
        let bottom = Layout::bottom_up(Align::Min);
        ui.with_layout(bottom, |ui| self.marks(ui, at)).inner
    }

    fn marks(&self, ui: &mut Ui, at: usize) -> Option<CardDeed> {
        let now = self.mark(at);
        let title = &self.cards[at].title;
        let mut deed = None;
        ui.horizontal(|ui| {
            for (mark, label) in Mark::ALL.into_iter().zip(["Have", "Want"]) {
                let mut is_set = now == Some(mark);
                let hint = match mark {
                    Mark::Have => "It hangs in the shop; kept in shelf.ron in this folder",
                    Mark::Want => "It is to be made; kept in shelf.ron in this folder",
                };
                let tick = ui.checkbox(&mut is_set, label);
                let tick = tick.accessible_name(format!("{label} {title}"));
                if tick.on_hover_text(hint).changed() {
                    deed = Some(CardDeed::Mark(is_set.then_some(mark)));
                }
            }
        });
        deed
    }
}

/// A line that is cut off where the card ends, whole when it is pointed at.
fn line(ui: &mut Ui, text: RichText) {
    ui.add(egui::Label::new(text).truncate());
}
