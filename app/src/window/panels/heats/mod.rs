//! The page of heats: which fire or coil for which operation, whether the piece goes in, how many heats
//! and how long, and each heat followed through piece and time.

mod coil;
mod curves;
mod others;
mod picture;
mod plot;
mod side;
mod source;
mod table;
mod timeline;
mod totals;
mod typed;

use std::sync::Arc;

use egui::{CentralPanel, Panel, ScrollArea, Ui};
use lyon::tessellation::FillTessellator;

use crate::window::paint::focus::followed;
use crate::window::state::heating::{Heat, Heating};
use crate::window::state::look::Look;

pub(crate) use side::{Shown, show as side};

/// How strongly heats of an older design are shown.
const OLD: f32 = 0.55;
/// From this width on picture and curves stand beside each other, in points.
const BESIDE: f32 = 800.0;

/// The operation and the source that are looked at: what is pointed at or was chosen, else the first
/// heat of the plan.
fn looked_at(heat: &Heat, look: &Look) -> Option<(usize, usize)> {
    let rows = &heat.prepared.rows;
    let is_hot = |row: usize| rows.get(row).is_some_and(|own| own.needs_mm.is_some());
    let own = |row: usize| heat.heats.operations.get(row).and_then(|own| own.source);
    let there = |source: &usize| *source < heat.prepared.shop.sources.len();
    let (row, source) = match look.heats.lit() {
        Some((row, source)) if is_hot(row) => (row, source),
        Some(_) | None => ((0..rows.len()).find(|row| own(*row).is_some())?, None),
    };
    // Where no source serves the first is shown, with what stops the piece.
    let source = source.filter(there).or(own(row)).unwrap_or(0);
    there(&source).then_some((row, source))
}

/// The operation that lights up, if one does.
fn lit_row(look: &Look) -> Option<usize> {
    look.heats.lit().map(|(row, _)| row)
}

/// Lights an operation up, with the part that it works.
fn point_at(heat: &Heat, look: &mut Look, (row, source): (usize, Option<usize>)) {
    look.heats.point_at(row, source);
    if let Some(own) = heat.prepared.rows.get(row) {
        look.point_at(own.part);
    }
}

/// Chooses an operation, here and on the page of the making.
fn choose(heat: &Heat, look: &mut Look, (row, source): (usize, Option<usize>)) {
    look.heats.chosen = Some((row, source));
    if let Some(own) = heat.prepared.rows.get(row) {
        look.making.go(own.stage + 1);
    }
}

/// Shows timeline and table, and under them the piece in its source with its curves.
pub(crate) fn middle(
    ui: &mut Ui,
    heating: &mut Heating,
    look: &mut Look,
    fills: &mut FillTessellator,
) {
    let Some(known) = heating.known() else {
        CentralPanel::default().show(ui, |ui| ui.weak("The heats are being reckoned."));
        return;
    };
    let heat = Arc::clone(&known.heat);
    let faint = |ui: &mut Ui, heating: &Heating| {
        if !heating.is_current() {
            ui.set_opacity(OLD);
        }
    };
    Panel::bottom("heat pictures")
        .default_size(312.0)
        .size_range(150.0..=640.0)
        .resizable(true)
        .show(ui, |ui| {
            ui.set_min_size(ui.available_size());
            faint(ui, heating);
            one(ui, (&heat, heating), look, fills);
        });
    CentralPanel::default().show(ui, |ui| {
        faint(ui, heating);
        timeline::show(ui, &heat, look);
        ui.separator();
        ScrollArea::both()
            .auto_shrink([false, false])
            .show(ui, |ui| followed(ui, |ui| table::show(ui, &heat, look)));
    });
}

/// One operation in one source.
fn one(
    ui: &mut Ui,
    (heat, heating): (&Heat, &mut Heating),
    look: &Look,
    fills: &mut FillTessellator,
) {
    let Some(at) = looked_at(heat, look) else {
        ui.weak(format!(
            "No operation of this {} is heated here.",
            heat.of.whole()
        ));
        return;
    };
    picture::words(ui, heat, at);
    let ctx = ui.ctx().clone();
    let course = heating.course(&ctx, at).cloned();
    let size = ui.available_size();
    if size.x >= BESIDE {
        ui.columns(2, |columns| {
            picture::show(&mut columns[0], heat, at, fills);
            curves::show(&mut columns[1], (heat, at), course.as_ref());
        });
    } else {
        let high = (size.y * 0.5).max(60.0);
        let down = egui::Layout::top_down(egui::Align::Min);
        ui.allocate_ui_with_layout(egui::vec2(size.x, high), down, |ui| {
            picture::show(ui, heat, at, fills);
        });
        curves::show(ui, (heat, at), course.as_ref());
    }
}
