//! The piece in its source, to scale.

use egui::accesskit::Role;
use egui::{Label, RichText, Sense, Ui, WidgetInfo};
use lyon::tessellation::FillTessellator;
use reinwright_core::draw;

use crate::window::paint::ink::Ink;
use crate::window::paint::theme::Palette;
use crate::window::paint::view::View;
use crate::window::state::heating::Heat;
use crate::window::state::rows::capital;

/// Between the edge of the sheet and the drawing, in points.
const RIM: f32 = 8.0;

/// What is shown, and how the piece goes in or why not.
pub(super) fn words(ui: &mut Ui, heat: &Heat, (row, source): (usize, usize)) {
    let own = &heat.prepared.rows[row];
    let name = &heat.prepared.shop.sources[source].name;
    let title = format!("{}  {}, {name}", own.number, capital(own.step.name()));
    let said = match &own.offers[source] {
        Ok(offer) => format!(
            "goes in {}; it can be slid in {} and {} is heated at a time",
            offer.entry.words_for(own.step),
            heat.show.text(heat.show.roughly(offer.entry.slides_mm)),
            heat.show.text(heat.show.roughly(offer.load.length_mm)),
        ),
        Err(why) => why.words(heat.show),
    };
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new(title).strong());
        let colour = match own.offers[source] {
            Ok(_) => ui.visuals().text_color(),
            Err(_) => Palette::of(ui.visuals()).stop,
        };
        let said = RichText::new(capital(&said)).color(colour);
        ui.add(Label::new(said).wrap());
    });
}

/// The drawing, in all the room that is left.
pub(super) fn show(ui: &mut Ui, heat: &Heat, at: (usize, usize), fills: &mut FillTessellator) {
    let (area, response) = ui.allocate_exact_size(ui.available_size(), Sense::hover());
    let own = &heat.prepared.rows[at.0];
    let name = &heat.prepared.shop.sources[at.1].name;
    let told = format!("Drawing of operation {} in {name}, to scale", own.number);
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, &told));
    let palette = Palette::of(ui.visuals());
    let painter = ui.painter_at(area);
    painter.rect_filled(area, 4.0, palette.sheet);
    let drawing = draw::heat_bare(&heat.prepared, &heat.plan, at);
    let view = View::fit(drawing.bounds(), area, RIM);
    Ink::new(painter, view, palette, None, fills).draw(&drawing.items);
}
