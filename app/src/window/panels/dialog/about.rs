//! What the program is, what to take care of, where its figures come from.

use egui::{RichText, ScrollArea, Ui};

use super::{Reply, buttons};

/// A heading and what stands under it, a line a paragraph.
type Chapter = (&'static str, &'static [&'static str]);

const CHAPTERS: [Chapter; 3] = [
    (
        "Take care",
        &[
            "The figures guide; they do not certify. Local codes and qualified practice come first.",
            "Wear impact-rated glasses. Work in tongs that do not fit it flies.",
            "Paper burns: trace a template to plate or chalk, never lay it on hot steel.",
            "Steel that no longer glows still burns. Do not quench red tongs: unknown or alloy steel turns brittle.",
            "Never heat plated, galvanised or painted scrap: zinc and cadmium fumes can kill. Burning fuel needs air, \
             and gives off carbon monoxide, which has no smell.",
            "Near an induction heater take off rings and watches, and keep away with a pacemaker or other implant.",
        ],
    ),
    (
        "Where the figures come from",
        &[
            "Steel hot and cold: EN 1993-1-2 and the grades' own standards. Bolts, nuts, pipe, rebar: ISO, ASME, EN and \
             ASTM tables. Drawing: ISO 128, 129, 5456 and 7200. Pages: ISO 32000.",
            "docs/method.md has every formula with its source, docs/sources.md the sources; what the trade does \
             without one is called common practice there.",
        ],
    ),
    (
        "Licences",
        &[
            "Reinwright is yours under the MIT licence or Apache-2.0, as you like.",
            "What others wrote in it, fonts included, stands with its licences in THIRD-PARTY.md.",
        ],
    ),
];

/// The question that asks nothing.
#[derive(Debug)]
pub(crate) struct About;

impl About {
    pub(super) fn show(ui: &mut Ui) -> Option<Reply> {
        ui.heading(concat!("Reinwright ", env!("CARGO_PKG_VERSION")));
        ui.label("For smiths who make their own tongs.");
        let room = ui.ctx().content_rect().height() - 220.0;
        ScrollArea::vertical().max_height(room).show(ui, |ui| {
            for (title, lines) in CHAPTERS {
                ui.add_space(4.0);
                ui.label(RichText::new(title).strong());
                for line in lines {
                    ui.label(*line);
                }
            }
        });
        buttons(ui, &["Close"]).map(|_closed| Reply::Stay)
    }
}
