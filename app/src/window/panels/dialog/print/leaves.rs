//! The pages as they will come out: all of them small, or one large.

use std::sync::Arc;

use egui::accesskit::Role;
use egui::{
    Key, Modifiers, Rect, Response, ScrollArea, Sense, Stroke, StrokeKind, Ui, Vec2, WidgetInfo,
    vec2,
};
use lyon::tessellation::FillTessellator;
use reinwright_core::paper::Page;

use crate::jobs::order::Order;
use crate::jobs::pages::Pages;
use crate::jobs::preview::{Leaves, Printable};
use crate::jobs::set_printing::Wanted;
use crate::jobs::watch::Progress;
use crate::window::paint::focus::follow;
use crate::window::paint::ink::Ink;
use crate::window::paint::theme::Palette;
use crate::window::paint::view::View;
use crate::window::state::leafing::Leafing;

/// Between two pages, and for the number under one, in points.
const GAP: f32 = 10.0;
const NUMBER: f32 = 18.0;
/// The rim about the page that is pointed at, in points.
const RIM: f32 = 2.0;
/// A page is at least so wide, and so many stand beside each other at the most.
const SMALLEST: f32 = 104.0;
const MOST_ACROSS: usize = 8;

/// Pages that are shown, and those that are being laid out in their place.
#[derive(Debug, Default)]
pub(super) struct Shown {
    /// What the pages are of, or will be of.
    order: Option<Order>,
    going: Option<Leafing>,
    leaves: Option<Leaves>,
    /// The page that is looked at from near.
    near: Option<usize>,
    /// The page that was looked at until now, which the keyboard comes back to.
    left: Option<usize>,
}

impl Shown {
    /// Begins anew when something else is chosen; takes what is there.
    pub(super) fn follow(
        &mut self,
        ctx: &egui::Context,
        order: &Order,
        wanted: impl Fn(Order) -> (Arc<Printable>, Wanted),
    ) {
        if self.order.as_ref() != Some(order) {
            self.order = Some(order.clone());
            let (of, wanted) = wanted(order.clone());
            self.going = Some(Leafing::start(&of, wanted));
        }
        if let Some(leaves) = self.going.as_mut().and_then(|going| going.poll(ctx)) {
            self.near = self.near.filter(|near| *near < leaves.pages.len());
            self.leaves = Some(leaves);
            self.going = None;
        }
    }

    /// How many pages there are, once that is known of what is chosen now.
    pub(super) fn count(&self) -> Option<&Pages> {
        let is_known = self.going.is_none();
        self.leaves
            .as_ref()
            .filter(|_| is_known)
            .map(|of| &of.count)
    }

    /// How far it is.
    pub(super) fn counting(&self) -> String {
        match self.going.as_ref().and_then(Leafing::progress) {
            Some(Progress { done, total }) => {
                format!("Counting the pages: {done} of {total} steps")
            }
            None => "Counting the pages".to_owned(),
        }
    }

    /// Shows the pages in the room there is.
    pub(super) fn show(&mut self, ui: &mut Ui, fills: &mut FillTessellator) {
        let Some(leaves) = &self.leaves else {
            return;
        };
        let pages = &leaves.pages;
        match self.near.and_then(|near| Some((near, pages.get(near)?))) {
            Some((near, page)) => {
                self.near = turned(ui, near, pages.len());
                if self.near.is_none() {
                    self.left = Some(near);
                }
                large(ui, page, fills);
            }
            None if pages.is_empty() => {
                ui.label("So many pages are not shown here.");
            }
            None => {
                self.near = all(ui, pages, self.left.take(), fills);
            }
        }
    }
}

/// The row over a large page; gives back which one is looked at from now on.
fn turned(ui: &mut Ui, near: usize, count: usize) -> Option<usize> {
    let mut next = Some(near);
    let back = ui.input_mut(|i| i.consume_key(Modifiers::NONE, Key::Escape));
    ui.horizontal(|ui| {
        let all = ui.button("All pages").on_hover_text("Escape does the same");
        if ui.memory(|memory| memory.focused().is_none()) {
            all.request_focus();
        }
        if all.clicked() || back {
            next = None;
        }
        let before = ui.add_enabled(near > 0, egui::Button::new("Page before"));
        if before.clicked() {
            next = Some(near - 1);
        }
        let after = ui.add_enabled(near + 1 < count, egui::Button::new("Page after"));
        if after.clicked() {
            next = Some(near + 1);
        }
        ui.label(format!("Page {} of {count}", near + 1));
    });
    next
}

/// One page as wide as there is room.
fn large(ui: &mut Ui, page: &Page, fills: &mut FillTessellator) {
    let list = ScrollArea::vertical().auto_shrink([false, false]);
    list.show(ui, |ui| {
        let wide = ui.available_width() - GAP;
        let size = vec2(wide, wide * points(page.height_mm / page.width_mm));
        let (area, _) = ui.allocate_exact_size(size, Sense::hover());
        draw(ui, page, area, fills);
    });
}

/// All pages, with the one that was left under the keyboard; gives back which one was clicked.
fn all(
    ui: &mut Ui,
    pages: &[Page],
    left: Option<usize>,
    fills: &mut FillTessellator,
) -> Option<usize> {
    let list = ScrollArea::vertical().auto_shrink([false, false]);
    list.show(ui, |ui| {
        ui.add_space(RIM);
        let room = ui.available_size() - vec2(GAP, GAP);
        let (across, cell) = cells(room, pages);
        let mut clicked = None;
        for (line, row) in pages.chunks(across).enumerate() {
            ui.horizontal(|ui| {
                ui.spacing_mut().item_spacing.x = GAP;
                for (column, page) in row.iter().enumerate() {
                    let at = line * across + column;
                    let response = small(ui, (page, at, pages.len()), cell, fills);
                    if left == Some(at) {
                        response.request_focus();
                    }
                    if response.clicked() {
                        clicked = Some(at);
                    }
                }
            });
        }
        follow(ui);
        clicked
    })
    .inner
}

/// How many pages stand beside each other, and how large: as large as all of them are in sight, or
/// else as small as they can be told apart.
fn cells(room: Vec2, pages: &[Page]) -> (usize, Vec2) {
    let tall = |page: &Page| points(page.height_mm / page.width_mm).clamp(0.3, 1.5);
    let tall = pages.iter().map(tall).fold(0.3, f32::max);
    let of = |across: usize| {
        let columns = count(across);
        let wide = (room.x - GAP * (columns - 1.0)) / columns;
        (across, vec2(wide, wide * tall + NUMBER))
    };
    let ways = (1..=MOST_ACROSS).map(of);
    let wide_enough = ways.filter(|(across, cell)| *across == 1 || cell.x >= SMALLEST);
    let fits = |(across, cell): &(usize, Vec2)| {
        count(pages.len().div_ceil(*across)) * (cell.y + GAP) <= room.y
    };
    let ways: Vec<(usize, Vec2)> = wide_enough.collect();
    let found = ways.iter().find(|way| fits(way)).or(ways.last());
    found.copied().unwrap_or_else(|| of(1))
}

/// A small page with its number.
fn small(
    ui: &mut Ui,
    (page, at, count): (&Page, usize, usize),
    cell: Vec2,
    fills: &mut FillTessellator,
) -> Response {
    let (area, response) = ui.allocate_exact_size(cell, Sense::click());
    let told = format!("Page {} of {count}", at + 1);
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &told));
    if !ui.is_rect_visible(area) {
        return response;
    }
    let palette = Palette::of(ui.visuals());
    let room = area.with_max_y(area.bottom() - NUMBER);
    let (width, height) = (points(page.width_mm), points(page.height_mm));
    let scale = (room.width() / width).min(room.height() / height);
    let sheet = Rect::from_center_size(room.center(), vec2(width, height) * scale);
    draw(ui, page, sheet, fills);
    if response.hovered() {
        let rim = Stroke::new(RIM, palette.accent);
        ui.painter()
            .rect_stroke(sheet, 0.0, rim, StrokeKind::Outside);
    }
    let under = area.center_bottom() - vec2(0.0, NUMBER / 2.0);
    let font = egui::TextStyle::Small.resolve(ui.style());
    let number = (at + 1).to_string();
    ui.painter().text(
        under,
        egui::Align2::CENTER_CENTER,
        number,
        font,
        palette.ink,
    );
    response.on_hover_text("Click to see it larger")
}

/// A page in an area of its own shape.
fn draw(ui: &Ui, page: &Page, area: Rect, fills: &mut FillTessellator) {
    let painter = ui.painter().with_clip_rect(area.intersect(ui.clip_rect()));
    painter.rect_filled(area, 0.0, egui::Color32::WHITE);
    let view = View {
        origin: area.left_bottom(),
        scale: area.width() / points(page.width_mm),
    };
    Ink::on_page(painter, view, fills).draw(&page.items);
    let edge = Stroke::new(1.0, Palette::of(ui.visuals()).edge);
    ui.painter()
        .rect_stroke(area, 0.0, edge, StrokeKind::Outside);
}

#[allow(
    clippy::cast_possible_truncation,
    reason = "a page is far smaller than f32 holds"
)]
fn points(mm: f64) -> f32 {
    mm as f32
}

#[allow(
    clippy::cast_precision_loss,
    reason = "no more pages are shown than f32 tells apart"
)]
fn count(of: usize) -> f32 {
    of as f32
}
