//! The smaller questions: drawings of a set, the job sheet, one drawing.

use egui::Ui;
use reinwright_core::asked::Units;
use reinwright_core::paper::Paper;

use super::super::{Drawn, Purpose, Reply, buttons};
use super::choices;
use crate::window::paint::theme::Palette;
use crate::window::state::bar::Forged;
use crate::window::state::rows::capital;

pub(super) const CHOOSE: &str = "Choose the file";

/// For how many pairs the drawings of a set are made.
#[derive(Debug)]
pub(crate) struct PrintDrawings {
    of: Forged,
    sizes: usize,
    pairs: u32,
    stop: Option<String>,
}

impl PrintDrawings {
    /// For a set of so many sizes; `stop` is what stands against making some of them.
    pub(crate) fn new((of, sizes): (Forged, usize), stop: Option<String>) -> Self {
        Self {
            of,
            sizes,
            pairs: 1,
            stop,
        }
    }

    pub(in super::super) fn show(&mut self, ui: &mut Ui) -> Option<Reply> {
        let sizes = match self.sizes {
            1 => "the one size".to_owned(),
            sizes => format!("all {sizes} sizes"),
        };
        ui.heading("Drawings of the set to SVG");
        let (each, all) = match self.of {
            Forged::Pair => (
                "the pair and the half",
                "its table, ranges and all sizes together",
            ),
            Forged::Tool => ("the views", "its table, its bar and all sizes together"),
        };
        ui.label(format!(
            "A folder with {each} of {sizes}, and of the set {all}. One unit in a file is one \
             millimetre.",
        ));
        choices::pairs(ui, self.of.whole(), &mut self.pairs);
        stopped(ui, self.stop.as_deref());
        match buttons(ui, &["Choose the folder", "Cancel"])? {
            0 => Some(Reply::Ask(Purpose::Folder(self.pairs))),
            _ => Some(Reply::Stay),
        }
    }
}

/// The paper that is at hand where sizes are in such units.
pub(crate) fn usual_paper(units: Units) -> Paper {
    match units {
        Units::Inch => Paper::Letter,
        Units::Millimetre => Paper::A4,
    }
}

/// Says what stands against making what is printed.
pub(super) fn stopped(ui: &mut Ui, stop: Option<&str>) {
    if let Some(stop) = stop {
        ui.colored_label(Palette::of(ui.visuals()).stop, stop);
    }
}

fn paper(ui: &mut Ui, chosen: &mut Paper) {
    ui.horizontal(|ui| {
        ui.label("Paper");
        for paper in Paper::NAMED {
            ui.radio_value(chosen, paper, capital(&paper.to_string()));
        }
    });
}

/// Which paper the job sheet goes on.
#[derive(Debug)]
pub(crate) struct PrintJob {
    of: Forged,
    paper: Paper,
    stop: Option<String>,
}

impl PrintJob {
    /// `stop` is what stands against making it.
    pub(crate) fn new(of: Forged, paper: Paper, stop: Option<String>) -> Self {
        Self { of, paper, stop }
    }

    pub(in super::super) fn show(&mut self, ui: &mut Ui) -> Option<Reply> {
        ui.heading("Job sheet to PDF");
        ui.label(format!(
            "How the {} is made, by the way that the page Making shows: the first page alone is \
             enough at the anvil, the others have the details.",
            self.of.whole()
        ));
        paper(ui, &mut self.paper);
        stopped(ui, self.stop.as_deref());
        match buttons(ui, &[CHOOSE, "Cancel"])? {
            0 => Some(Reply::Ask(Purpose::JobSheet(self.paper))),
            _ => Some(Reply::Stay),
        }
    }
}

/// Which drawing goes into the SVG file.
#[derive(Debug)]
pub(crate) struct PrintSvg {
    of: Forged,
    drawn: Drawn,
    stop: Option<String>,
}

/// The drawings of a pair, and of a tool.
const OF_PAIR: [(Drawn, &str); 3] = [
    (Drawn::Pair, "The pair on its work, with all sizes"),
    (Drawn::Half, "One half as a template"),
    (Drawn::Bar, "The bar with its marks"),
];
const OF_TOOL: [(Drawn, &str); 2] = [
    (Drawn::Pair, "The tool in its views, with all sizes"),
    (Drawn::Bar, "The bar with its marks"),
];

impl PrintSvg {
    /// `stop` is what stands against making it.
    pub(crate) fn new(of: Forged, stop: Option<String>) -> Self {
        let drawn = Drawn::Pair;
        Self { of, drawn, stop }
    }

    pub(in super::super) fn show(&mut self, ui: &mut Ui) -> Option<Reply> {
        ui.heading("Drawing to SVG");
        ui.label("Full size: one unit in the file is one millimetre.");
        let drawings: &[(Drawn, &str)] = match self.of {
            Forged::Pair => &OF_PAIR,
            Forged::Tool => &OF_TOOL,
        };
        for (drawn, label) in drawings {
            ui.radio_value(&mut self.drawn, *drawn, *label);
        }
        stopped(ui, self.stop.as_deref());
        match buttons(ui, &["Choose the file", "Cancel"])? {
            0 => Some(Reply::Ask(Purpose::Svg(self.drawn))),
            _ => Some(Reply::Stay),
        }
    }
}
