use egui::Ui;
use reinwright_core::asked::Units;
use reinwright_core::paper::Paper;

use super::{Drawn, Purpose, Reply, buttons};
use crate::window::paint::theme::Palette;
use crate::window::state::rows::capital;

/// Which paper the templates go on.
#[derive(Debug)]
pub(crate) struct Print {
    paper: Paper,
    stop: Option<String>,
}

impl Print {
    /// `stop` is what stands against making the pair.
    pub(crate) fn new(units: Units, stop: Option<String>) -> Self {
        Self {
            paper: usual_paper(units),
            stop,
        }
    }

    pub(super) fn show(&mut self, ui: &mut Ui) -> Option<Reply> {
        ui.heading("Print to PDF");
        ui.label(
            "The finished half, the pair and the bar, full size, over as many pages as it takes. \
             Print them at actual size (100 %), then measure the check bars.",
        );
        paper(ui, &mut self.paper);
        ui.label(BURNS);
        stopped(ui, self.stop.as_deref());
        match buttons(ui, &["Choose the file", "Cancel"])? {
            0 => Some(Reply::Ask(Purpose::Pdf(self.paper))),
            _ => Some(Reply::Stay),
        }
    }
}

/// What is made of a set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum SetSheets {
    /// Pages in one PDF.
    Pages,
    /// Drawings in a folder.
    Drawings,
}

/// What of a set goes on paper or into files, and for how many pairs.
#[derive(Debug)]
pub(crate) struct PrintSet {
    sheets: SetSheets,
    sizes: usize,
    paper: Paper,
    pairs: u32,
    stop: Option<String>,
}

impl PrintSet {
    /// For a set of so many sizes; `stop` is what stands against making some of them.
    pub(crate) fn new(sheets: SetSheets, sizes: usize, units: Units, stop: Option<String>) -> Self {
        Self {
            sheets,
            sizes,
            paper: usual_paper(units),
            pairs: 1,
            stop,
        }
    }

    pub(super) fn show(&mut self, ui: &mut Ui) -> Option<Reply> {
        let sizes = match self.sizes {
            1 => "the one size".to_owned(),
            sizes => format!("all {sizes} sizes"),
        };
        match self.sheets {
            SetSheets::Pages => {
                ui.heading("Print the set to PDF");
                ui.label(format!(
                    "One PDF of {sizes}: contents, the table, what the set holds and the bar for \
                     it, then for each size the finished half, the pair and the bar, full size. \
                     Print it at actual size (100 %), then measure the check bars.",
                ));
            }
            SetSheets::Drawings => {
                ui.heading("Drawings of the set to SVG");
                ui.label(format!(
                    "A folder with the pair and the half of {sizes}, and of the set its table, \
                     ranges and all sizes together. One unit in a file is one millimetre.",
                ));
            }
        }
        self.pairs(ui);
        if self.sheets == SetSheets::Pages {
            paper(ui, &mut self.paper);
            ui.label(BURNS);
        }
        stopped(ui, self.stop.as_deref());
        let accept = match self.sheets {
            SetSheets::Pages => "Choose the file",
            SetSheets::Drawings => "Choose the folder",
        };
        match buttons(ui, &[accept, "Cancel"])? {
            0 => Some(Reply::Ask(self.purpose())),
            _ => Some(Reply::Stay),
        }
    }

    fn pairs(&mut self, ui: &mut Ui) {
        ui.horizontal(|ui| {
            let label = ui.label("Pairs of each size");
            let value = egui::DragValue::new(&mut self.pairs)
                .range(1..=1000)
                .speed(0.1);
            ui.add(value).labelled_by(label.id).on_hover_text(
                "How many of each are to be forged; the bar for the set is reckoned for them",
            );
        });
    }

    fn purpose(&self) -> Purpose {
        match self.sheets {
            SetSheets::Pages => Purpose::SetPdf(self.paper, self.pairs),
            SetSheets::Drawings => Purpose::Folder(self.pairs),
        }
    }
}

/// What goes with every template.
const BURNS: &str =
    "Paper burns: take the outline over to plate or chalk before you lay hot work against it.";

fn usual_paper(units: Units) -> Paper {
    match units {
        Units::Inch => Paper::Letter,
        Units::Millimetre => Paper::A4,
    }
}

/// Says what stands against making what is printed.
fn stopped(ui: &mut Ui, stop: Option<&str>) {
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

/// Which drawing goes into the SVG file.
#[derive(Debug)]
pub(crate) struct PrintSvg {
    drawn: Drawn,
    stop: Option<String>,
}

impl PrintSvg {
    /// `stop` is what stands against making the pair.
    pub(crate) fn new(stop: Option<String>) -> Self {
        let drawn = Drawn::Pair;
        Self { drawn, stop }
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
        stopped(ui, self.stop.as_deref());
        match buttons(ui, &["Choose the file", "Cancel"])? {
            0 => Some(Reply::Ask(Purpose::Svg(self.drawn))),
            _ => Some(Reply::Stay),
        }
    }
}
