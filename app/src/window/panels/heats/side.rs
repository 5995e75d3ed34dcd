//! What stands beside the timeline: the sums, the sources, other choices, the coil, cautions.

use std::sync::Arc;

use egui::{Label, RichText, Ui};
use reinwright_core::finding::Severity;
use reinwright_core::heats::cautions;
use reinwright_core::steel::Steel;
use reinwright_core::units::Show;

use super::{coil, looked_at, others, source, totals};
use crate::window::panels::wish::Wish;
use crate::window::state::bar::Forged;
use crate::window::state::heating::{Heat, Heating};
use crate::window::state::look::Look;
use crate::window::state::shop_heats::ShopHeats;

/// What the page shows and changes.
pub(crate) struct Shown<'a> {
    pub(crate) heating: &'a mut Heating,
    pub(crate) shop: &'a mut ShopHeats,
}

/// Shows the page beside the sheet; gives back what was asked for.
pub(crate) fn show(
    ui: &mut Ui,
    (show, steel): (Show, Steel),
    shown: &mut Shown<'_>,
    look: &mut Look,
) -> Option<Wish> {
    let heat = shown.heating.known().map(|known| Arc::clone(&known.heat));
    let mut asked = None;
    if let Some(heat) = &heat {
        section(ui, &format!("The {} in all", heat.of.whole()));
        asked = totals::show(ui, heat);
        others::findings(ui, (heat, &[Severity::Stop, Severity::Mend]), look);
    }
    section(ui, "Heat sources of the shop");
    asked = source::show(ui, (&mut *shown.shop, show)).or(asked);
    let timed = heat
        .as_deref()
        .and_then(|heat| Some((heat, looked_at(heat, look)?.0)));
    source::smith(ui, (&mut *shown.shop, show), timed);
    source::machine(ui, (&mut *shown.shop, show));
    if let Some(known) = shown.heating.known() {
        section(ui, "Other choices");
        others::priced(ui, known);
        let of = match known.heat.of {
            Forged::Pair => "design",
            Forged::Tool => "tool",
        };
        section(ui, &format!("A coil for this {of}"));
        asked = coil::show(ui, shown.heating, shown.shop).or(asked);
    }
    if let Some(heat) = heat.as_ref().filter(|heat| has_notes(heat)) {
        section(ui, "Mind while you heat");
        others::findings(ui, (heat, &[Severity::Note]), look);
    }
    section(ui, "Take care");
    for words in cautions(&shown.shop.now, steel) {
        ui.add(Label::new(words).wrap());
        ui.add_space(3.0);
    }
    asked
}

/// Whether anything is to be minded that is not to be mended.
fn has_notes(heat: &Heat) -> bool {
    let mut all = heat.findings.iter();
    all.any(|own| own.severity == Severity::Note)
}

fn section(ui: &mut Ui, title: &str) {
    ui.add_space(10.0);
    ui.label(RichText::new(title).size(15.0));
}
