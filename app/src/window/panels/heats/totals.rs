//! What all heats of a pair or a tool come to.

use egui::{Grid, Label, Ui};
use reinwright_core::heats::spoken;

use crate::window::panels::wish::{HeatWish, Wish};
use crate::window::state::heating::Heat;

/// Shows them; gives back what was asked for.
pub(super) fn show(ui: &mut Ui, heat: &Heat) -> Option<Wish> {
    let totals = heat.heats.totals;
    Grid::new("heats in all")
        .num_columns(2)
        .spacing([10.0, 3.0])
        .show(ui, |ui| {
            let of = heat.of.whole();
            row(ui, &format!("Heats of the {of}"), totals.heats.to_string());
            row(
                ui,
                "Sources made ready",
                match totals.changes {
                    0 => "none".to_owned(),
                    changes => format!("{changes}, in {}", spoken(totals.ready_s)),
                },
            );
            row(ui, "Waiting for heat", spoken(totals.heating_s));
            row(ui, "To anvil and back", spoken(totals.handling_s));
            row(ui, "Working", spoken(totals.working_s));
            row(ui, "In all", spoken(totals.time_s));
            if totals.kwh > 0.0 {
                row(ui, "The machine draws", format!("{:.1} kWh", totals.kwh));
            }
            if totals.fuel_kg > 0.0 {
                row(ui, "Fuel", heat.show.mass(totals.fuel_kg));
            }
            let scale = format!("about {:.1} % of the {of}", heat.scale_percent);
            row(ui, "Lost to scale", scale);
        });
    // Where nothing is heated nothing is known of the scale.
    if totals.heats == 0 {
        return None;
    }
    let hint = "Reckons the bar with the scale of these heats, in place of what stands under Layout and allowances";
    let button = ui.button("Take this scale for the bar").on_hover_text(hint);
    let asked = Wish::Heats(HeatWish::Scale(heat.scale_percent));
    button.clicked().then_some(asked)
}

fn row(ui: &mut Ui, what: &str, words: String) {
    ui.weak(what);
    ui.add(Label::new(words).wrap());
    ui.end_row();
}
