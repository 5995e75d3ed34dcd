//! Questions that the window asks before it goes on.

mod about;
mod back;
mod card;
pub(crate) mod chooser;
mod leave;
mod name_taken;
mod path_field;
mod print;

use std::path::PathBuf;

use lyon::tessellation::FillTessellator;
use reinwright_core::paper::Paper;
use reinwright_core::shop::family::Family;
use reinwright_core::shop::printers::Printer;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::sketch::KeptJaw;
use reinwright_core::tool::Tool;

use super::question::{Ready, Room, ask, foot};
use super::wish::JawWish;
use crate::jobs::order::Order;
use crate::jobs::pages::Consent;
use crate::jobs::pair_tools::Named;
use crate::window::paint::theme::Palette;
use crate::window::state::session::Opened;

pub(crate) use about::About;
pub(crate) use back::{Kept, Rescue, Versions};
pub(crate) use card::Card;
pub(crate) use leave::{Changed, Leave};
pub(crate) use name_taken::NameTaken;
pub(crate) use path_field::PathField;
pub(crate) use print::{Print, PrintDrawings, PrintJob, PrintSvg, noted_where, usual_paper};

/// How the name of a design's file ends.
const OF_DESIGN: &str = "ron";

/// What is drawn into an SVG file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Drawn {
    /// The pair on its work, with all sizes.
    Pair,
    /// One half, to cut or to lay against.
    Half,
    /// The bar with its marks.
    Bar,
}

/// What to do once nothing can be lost any more.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Next {
    /// Show this design, which nothing but this window has.
    Begin(Box<Document>),
    /// Show this design, which can be had again.
    Ready(Box<Document>),
    /// Show this tool, which nothing but this window has.
    BeginTool(Box<Tool>),
    /// Show this tool, which can be had again.
    ReadyTool(Box<Tool>),
    /// Show this family, which can be had again.
    ReadyFamily(Box<Family>),
    /// Show this family of tools, which can be had again.
    ReadyTools(Box<Family<Tool>>),
    /// Open this file.
    Open(PathBuf),
    /// Open this file of the shelf, and of a family the size at a place.
    OpenAt(PathBuf, usize),
    /// Ask which file to open.
    Choose,
    /// Close the window.
    Close,
}

/// What a path is wanted for.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Purpose {
    /// To open a design.
    Open,
    /// To save the design, and then go on.
    Save(Option<Next>),
    /// To write full-size pages of a design or a family.
    Pdf(Box<Order>, Consent),
    /// To write the check page of a printer.
    CheckPage(Paper),
    /// To write a drawing.
    Svg(Drawn),
    /// To write the drawings of a family into a folder, for so many pairs of each size.
    Folder(u32),
    /// To look at the designs in a folder.
    Shelf,
    /// To trace a picture.
    Picture,
    /// To cut the pairs of a design too.
    CutDesign,
    /// To keep the rack with the designs of a shop.
    Shop,
    /// To write the job sheet.
    JobSheet(Paper),
    /// To write the cut list.
    CutPdf(Paper),
    /// To write the tools of a pair into a folder.
    Tools(Vec<Named>),
    /// To write a jaw of one's own for another smith.
    OwnJaw(Box<KeptJaw>),
}

/// What is chosen for a purpose.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Chosen {
    /// A file that is read.
    FileToRead,
    /// A file, or a folder, that is written.
    ToWrite,
    /// A folder that is read.
    FolderToRead,
}

impl Purpose {
    /// What stands over the question.
    pub(crate) fn title(&self) -> &'static str {
        match self {
            Self::Open => "Open a design, a tool or a family",
            Self::Save(_) => "Save to a file",
            Self::Pdf(..) => "Print to PDF",
            Self::CheckPage(_) => "Check page to PDF",
            Self::Svg(_) => "Drawing to SVG",
            Self::Folder(_) => "Drawings of the set to a folder",
            Self::Shelf => "Folder of designs and families",
            Self::Picture => "Trace a picture",
            Self::CutDesign => "Add a design to the cut list",
            Self::Shop => "Folder of the shop",
            Self::CutPdf(_) => "Print the cut list to PDF",
            Self::JobSheet(_) => "Job sheet to PDF",
            Self::Tools(_) => "Tools of the pair to a folder",
            Self::OwnJaw(_) => "Give an own jaw away",
        }
    }

    /// What kind of file it is, and how its name ends.
    pub(crate) fn files(&self) -> (&'static str, &'static str) {
        match self {
            Self::Open | Self::Save(_) | Self::CutDesign => ("Reinwright design", OF_DESIGN),
            Self::Pdf(..) | Self::CheckPage(_) | Self::CutPdf(_) | Self::JobSheet(_) => {
                ("PDF", "pdf")
            }
            Self::Svg(_) => ("SVG", "svg"),
            Self::Folder(_) | Self::Tools(_) | Self::Shelf | Self::Shop => ("Folder", ""),
            Self::Picture => ("PNG or JPEG", ""),
            Self::OwnJaw(_) => ("Reinwright jaw", "ron"),
        }
    }

    /// What is chosen, and what for.
    pub(crate) fn chosen(&self) -> Chosen {
        match self {
            Self::Open | Self::Picture | Self::CutDesign => Chosen::FileToRead,
            Self::Shelf | Self::Shop => Chosen::FolderToRead,
            Self::Save(_)
            | Self::Pdf(..)
            | Self::CheckPage(_)
            | Self::CutPdf(_)
            | Self::JobSheet(_)
            | Self::Tools(_)
            | Self::Svg(_)
            | Self::Folder(_)
            | Self::OwnJaw(_) => Chosen::ToWrite,
        }
    }

    /// What the file or the folder may be called, for what is open.
    pub(crate) fn name(&self, open: &dyn Opened) -> String {
        let ending = self.files().1;
        let design = open.file_name(OF_DESIGN);
        let stem = design.trim_end_matches(OF_DESIGN).trim_end_matches('.');
        match self.after_name() {
            "" => open.file_name(ending),
            what if ending.is_empty() => format!("{stem}-{what}"),
            what => format!("{stem}-{what}.{ending}"),
        }
    }

    /// What stands behind the design's name, so that nothing that is made of a design is written over the other.
    fn after_name(&self) -> &'static str {
        match self {
            Self::Tools(_) => "tools",
            Self::JobSheet(_) => "job-sheet",
            Self::CutPdf(_) => "cut-list",
            Self::CheckPage(_) => "check-page",
            Self::Open
            | Self::Save(_)
            | Self::Pdf(..)
            | Self::Svg(_)
            | Self::Folder(_)
            | Self::Shelf
            | Self::Picture
            | Self::CutDesign
            | Self::Shop
            | Self::OwnJaw(_) => "",
        }
    }

    /// Whether the file is written.
    pub(crate) fn writes(&self) -> bool {
        self.chosen() == Chosen::ToWrite
    }

    /// Whether a folder is asked for, and no file.
    pub(crate) fn is_of_a_folder(&self) -> bool {
        match self {
            Self::Folder(_) | Self::Tools(_) | Self::Shelf | Self::Shop => true,
            Self::Open
            | Self::CutDesign
            | Self::CutPdf(_)
            | Self::JobSheet(_)
            | Self::Picture
            | Self::Save(_)
            | Self::Pdf(..)
            | Self::CheckPage(_)
            | Self::Svg(_)
            | Self::OwnJaw(_) => false,
        }
    }

    /// The path with the ending that its kind has, if none was given.
    pub(crate) fn ended(&self, path: PathBuf) -> PathBuf {
        let ending = self.files().1;
        if self.writes() && path.extension().is_none() && !ending.is_empty() {
            path.with_extension(ending)
        } else {
            path
        }
    }
}

/// A question that is open.
#[derive(Debug)]
pub(crate) enum Dialog {
    /// What becomes of unsaved work.
    Leave(Leave),
    /// A path, in the window's own field.
    Path(PathField),
    /// The size of the screen.
    Card(Card),
    /// What to print, of a design or a family.
    Print(Box<Print>),
    /// For how many pairs a set is drawn.
    PrintDrawings(PrintDrawings),
    /// Which paper for a job sheet.
    JobSheet(PrintJob),
    /// Which drawing.
    PrintSvg(PrintSvg),
    /// Work that was not saved.
    Rescue(Rescue),
    /// The file was changed by another program.
    Changed(Changed),
    /// What a file was before.
    Versions(Versions),
    /// Another own jaw has the name.
    NameTaken(NameTaken),
    /// What the program is.
    About(About),
}

/// What the smith answered.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Reply {
    /// Never mind.
    Stay,
    /// Save first, then go on.
    SaveThen(Next),
    /// Throw the changes away, go on.
    Leave(Next),
    /// This path.
    Path(Purpose, PathBuf),
    /// The screen has so many points per millimetre.
    Screen(f32),
    /// Do this with an own jaw.
    Jaws(JawWish),
    /// Ask for a path for this.
    Ask(Purpose),
    /// Bring this back from a copy that was left, and the file that it belongs to.
    Rescue(Kept, PathBuf, Option<PathBuf>),
    /// Save over what another program saved, then go on.
    KeepMine(PathBuf, Option<Next>),
    /// Open what another program saved.
    TakeTheirs(PathBuf),
    /// Bring this earlier version of this file back.
    Version(PathBuf, PathBuf),
    /// Throw it away.
    Discard(PathBuf),
    /// Note what a printer measures; the question stays open.
    NotePrinter(Printer),
}

impl Dialog {
    /// Shows the question; gives back the answer when there is one.
    pub(crate) fn show(
        &mut self,
        ctx: &egui::Context,
        fills: &mut FillTessellator,
    ) -> Option<Reply> {
        ask(ctx, self.frame(), Reply::Stay, |ui| match self {
            Self::Leave(it) => it.show(ui),
            Self::Path(it) => it.show(ui),
            Self::Card(it) => it.show(ui),
            Self::Print(it) => it.show(ui, fills),
            Self::PrintDrawings(it) => it.show(ui),
            Self::JobSheet(it) => it.show(ui),
            Self::PrintSvg(it) => it.show(ui),
            Self::Rescue(it) => it.show(ui),
            Self::Changed(it) => it.show(ui),
            Self::Versions(it) => it.show(ui),
            Self::NameTaken(it) => it.show(ui),
            Self::About(About) => About::show(ui),
        })
    }

    /// A name of its own, and how large it is.
    fn frame(&self) -> (&'static str, Room) {
        match self {
            Self::Leave(_) => ("leave", LINES),
            Self::Path(_) => ("path", LINES),
            Self::Card(_) => ("card", Room::Lines(660.0)),
            Self::Print(_) => ("print", Room::Page(print::LARGEST)),
            Self::PrintDrawings(_) => ("print drawings", LINES),
            Self::JobSheet(_) => ("job sheet", LINES),
            Self::PrintSvg(_) => ("print svg", LINES),
            Self::Rescue(_) => ("rescue", LINES),
            Self::Changed(_) => ("changed", LINES),
            Self::Versions(_) => ("versions", LINES),
            Self::NameTaken(_) => ("name taken", LINES),
            Self::About(_) => ("about", Room::Lines(560.0)),
        }
    }
}

/// Of a question that has a few lines, in points.
const LINES: Room = Room::Lines(440.0);

/// The buttons at the foot of a question, the likeliest first; gives back which was asked for.
fn buttons(ui: &mut egui::Ui, labels: &[&str]) -> Option<usize> {
    let (main, others) = labels.split_first()?;
    foot(ui, Some((main, Ready::Yes)), others)
}

/// What was wrong, under the field that it is about.
pub(crate) fn trouble(ui: &mut egui::Ui, what: Option<&str>) {
    if let Some(what) = what {
        let colour = Palette::of(ui.visuals()).stop;
        ui.colored_label(colour, what);
    }
}
