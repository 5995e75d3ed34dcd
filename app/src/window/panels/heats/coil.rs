//! The coil that would do the most of what is open.

use egui::{Label, Ui};
use reinwright_core::heats::helper::Advice;

use crate::window::panels::wish::Wish;
use crate::window::state::heating::Heating;
use crate::window::state::news::Said;
use crate::window::state::rows::capital;
use crate::window::state::shop_heats::ShopHeats;

/// Shows the question, or its answer.
pub(super) fn show(ui: &mut Ui, heating: &mut Heating, shop: &mut ShopHeats) -> Option<Wish> {
    let known = heating.known()?;
    match &known.coil {
        _ if heating.is_after_coil() => {
            ui.weak("Coils are being tried.");
            None
        }
        None => {
            let hint = "Tries bores, turns and advances on every step of what is open, on the machine as it is described";
            let button = ui
                .button("Which coil would do the most?")
                .on_hover_text(hint);
            if button.clicked() {
                let ctx = ui.ctx().clone();
                heating.ask_coil(&ctx);
            }
            None
        }
        Some(None) => {
            let words = "No coil that this machine drives heats any of it: change the machine.";
            ui.add(Label::new(words).wrap());
            None
        }
        Some(Some(advice)) => told(ui, (advice, known.heat.show), shop),
    }
}

fn told(
    ui: &mut Ui,
    (advice, show): (&Advice, reinwright_core::units::Show),
    shop: &mut ShopHeats,
) -> Option<Wish> {
    for words in advice.words(show) {
        ui.add(Label::new(capital(&words)).wrap());
    }
    let hint = "Puts it among the sources, as if it were wound";
    if ui.button("Add this coil").on_hover_text(hint).clicked() {
        let added = shop.add(advice.source.clone());
        return added
            .err()
            .map(|why| Wish::Say(Said::Trouble(capital(&why))));
    }
    None
}
