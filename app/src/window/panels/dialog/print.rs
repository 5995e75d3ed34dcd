use std::sync::mpsc::Receiver;

use egui::Ui;
use reinwright_core::asked::Units;
use reinwright_core::paper::Paper;

use super::{Drawn, Purpose, Reply, buttons};
use crate::jobs::pages::{Consent, Pages, Stack};
use crate::jobs::set_printing::Progress;
use crate::window::paint::theme::Palette;
use crate::window::state::job::Counted;
use crate::window::state::rows::capital;

/// How many pages there are on each of [`Paper::NAMED`].
pub(crate) type Counts = Vec<Pages>;

/// Which paper the templates go on.
#[derive(Debug)]
pub(crate) struct Print {
    paper: Paper,
    pages: Counts,
    stop: Option<String>,
}

impl Print {
    /// `stop` is what stands against making the pair.
    pub(crate) fn new(units: Units, pages: Counts, stop: Option<String>) -> Self {
        Self {
            paper: usual_paper(units),
            pages,
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
        let accept = counted(ui, self.paper, &self.pages);
        ui.label(BURNS);
        stopped(ui, self.stop.as_deref());
        match accepted(ui, accept)? {
            Some(_asked) => Some(Reply::Ask(Purpose::Pdf(self.paper))),
            None => Some(Reply::Stay),
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
    pages: Counting,
    stop: Option<String>,
}

impl PrintSet {
    /// For a set of so many sizes, whose pages are being counted; `stop` is what stands against
    /// making some of them.
    pub(crate) fn new(
        sheets: SetSheets,
        (sizes, units): (usize, Units),
        pages: Receiver<Counted>,
        stop: Option<String>,
    ) -> Self {
        Self {
            sheets,
            sizes,
            paper: usual_paper(units),
            pairs: 1,
            pages: Counting::Going(pages, None),
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
        let accept = match self.sheets {
            SetSheets::Pages => {
                paper(ui, &mut self.paper);
                let accept = self.counted(ui);
                ui.label(BURNS);
                accept
            }
            SetSheets::Drawings => Some(("Choose the folder".to_owned(), Consent::All)),
        };
        stopped(ui, self.stop.as_deref());
        match accepted(ui, accept)? {
            Some(asked) => Some(Reply::Ask(self.purpose(asked))),
            None => Some(Reply::Stay),
        }
    }

    /// Tells how many pages there are, once they are counted.
    fn counted(&mut self, ui: &mut Ui) -> Option<Accept> {
        if let Some(pages) = self.pages.known(ui.ctx()) {
            return counted(ui, self.paper, pages);
        }
        ui.label(self.pages.words());
        Some((CHOOSE.to_owned(), Consent::Usual))
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

    fn purpose(&self, asked: Consent) -> Purpose {
        match self.sheets {
            SetSheets::Pages => Purpose::SetPdf(self.paper, self.pairs, asked),
            SetSheets::Drawings => Purpose::Folder(self.pairs),
        }
    }
}

/// Pages that are counted beside the window.
#[derive(Debug)]
enum Counting {
    Going(Receiver<Counted>, Option<Progress>),
    Done(Counts),
}

impl Counting {
    /// The pages, once they are counted; asks for a frame soon while they are not.
    fn known(&mut self, ctx: &egui::Context) -> Option<&Counts> {
        /// How often it is looked whether they are.
        const PATIENCE: std::time::Duration = std::time::Duration::from_millis(40);
        while let Self::Going(from, progress) = self {
            match from.try_recv() {
                Ok(Counted::Step(step)) => *progress = Some(step),
                Ok(Counted::Pages(counts)) => *self = Self::Done(counts),
                Err(_) => {
                    ctx.request_repaint_after(PATIENCE);
                    break;
                }
            }
        }
        match self {
            Self::Going(..) => None,
            Self::Done(counts) => Some(counts),
        }
    }

    /// How far it is.
    fn words(&self) -> String {
        match self {
            Self::Going(_, Some(Progress { done, total })) => {
                format!("Counting the pages: {done} of {total} sizes")
            }
            Self::Going(_, None) | Self::Done(_) => "Counting the pages".to_owned(),
        }
    }
}

/// The words of a button, and what is asked for with it.
type Accept = (String, Consent);

const CHOOSE: &str = "Choose the file";

/// Tells how many pages the chosen paper takes; gives the button that prints them, and none where
/// they are never printed.
fn counted(ui: &mut Ui, paper: Paper, all: &Counts) -> Option<Accept> {
    let counts = Paper::NAMED.into_iter().zip(all);
    let (_, pages) = counts.into_iter().find(|(named, _)| *named == paper)?;
    match pages.stack() {
        Stack::Usual => {
            ui.label(capital(&pages.words(paper)));
            Some((CHOOSE.to_owned(), Consent::Usual))
        }
        Stack::Many => {
            ui.label(capital(&pages.words(paper)));
            let print = format!("Print {} pages: choose the file", pages.all);
            Some((print, Consent::All))
        }
        Stack::TooMany => {
            super::trouble(ui, Some(&capital(&pages.refusal(paper))));
            None
        }
    }
}

/// What was pressed: the button that accepts, or, as `Some(None)`, the one that does not.
fn accepted(ui: &mut Ui, accept: Option<Accept>) -> Option<Option<Consent>> {
    let Some((label, asked)) = accept else {
        return buttons(ui, &["Cancel"]).map(|_cancel| None);
    };
    buttons(ui, &[&label, "Cancel"]).map(|pressed| (pressed == 0).then_some(asked))
}

/// What goes with every template.
const BURNS: &str =
    "Paper burns: take the outline over to plate or chalk before you lay hot work against it.";

/// The paper that is at hand where sizes are in such units.
pub(crate) fn usual_paper(units: Units) -> Paper {
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

/// Which paper the job sheet goes on.
#[derive(Debug)]
pub(crate) struct PrintJob {
    paper: Paper,
    stop: Option<String>,
}

impl PrintJob {
    /// `stop` is what stands against making the pair.
    pub(crate) fn new(units: Units, stop: Option<String>) -> Self {
        Self {
            paper: usual_paper(units),
            stop,
        }
    }

    pub(super) fn show(&mut self, ui: &mut Ui) -> Option<Reply> {
        ui.heading("Job sheet to PDF");
        ui.label(
            "How the pair is made, by the way that the page Making shows: the first page alone is \
             enough at the anvil, the others have the details.",
        );
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
