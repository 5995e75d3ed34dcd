use egui::Ui;
use reinwright_core::document::Units;
use reinwright_core::drawing::Paper;

use super::{Drawn, Purpose, Reply, buttons};
use crate::window::rows::capital;

/// Which paper the templates go on.
#[derive(Debug)]
pub(in crate::window) struct Print {
    paper: Paper,
}

impl Print {
    pub(in crate::window) fn new(units: Units) -> Self {
        let paper = match units {
            Units::Inch => Paper::Letter,
            Units::Millimetre => Paper::A4,
        };
        Self { paper }
    }

    pub(super) fn show(&mut self, ui: &mut Ui) -> Option<Reply> {
        ui.heading("Print to PDF");
        ui.label(
            "The finished half, the pair and the bar, full size, over as many pages as it takes. \
             Print them at actual size (100 %), then measure the check bars.",
        );
        ui.horizontal(|ui| {
            ui.label("Paper");
            for paper in Paper::NAMED {
                ui.radio_value(&mut self.paper, paper, capital(&paper.to_string()));
            }
        });
        ui.label("Paper burns: take the outline over to plate or chalk before you lay hot work against it.");
        match buttons(ui, &["Choose the file", "Cancel"])? {
            0 => Some(Reply::Ask(Purpose::Pdf(self.paper))),
            _ => Some(Reply::Stay),
        }
    }
}

/// Which drawing goes into the SVG file.
#[derive(Debug)]
pub(in crate::window) struct PrintSvg {
    drawn: Drawn,
}

impl PrintSvg {
    pub(in crate::window) fn new() -> Self {
        Self { drawn: Drawn::Pair }
    }

    pub(super) fn show(&mut self, ui: &mut Ui) -> Option<Reply> {
        ui.heading("Drawing to SVG");
        ui.label("Full size: one unit in the file is one millimetre.");
        for (drawn, label) in [
            (Drawn::Pair, "The pair on its work, with all sizes"),
            (Drawn::Half, "One half as a template"),
            (Drawn::Bar, "The bar with its marks"),
        ] {
            ui.radio_value(&mut self.drawn, drawn, label);
        }
        match buttons(ui, &["Choose the file", "Cancel"])? {
            0 => Some(Reply::Ask(Purpose::Svg(self.drawn))),
            _ => Some(Reply::Stay),
        }
    }
}
