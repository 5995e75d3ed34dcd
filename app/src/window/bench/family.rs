//! What the workbench does while a family is open, and what is open at all.

use std::path::Path;

use reinwright_core::drawing::Paper;
use reinwright_core::family::{self, Family};

use super::super::command::Command;
use super::super::dialog::{Dialog, Kept, PrintSet, SetSheets};
use super::super::job::SetWork;
use super::super::session::Session;
use super::super::workbench::{Said, Workbench};
use super::{FamilyBench, FamilySession, Picture};
use crate::set_printing::Wanted;
use crate::{files, printing};

impl Workbench {
    /// Shows a family that has no file yet.
    pub(in crate::window) fn begin_family(&mut self, family: Family) {
        self.show_family(FamilySession::begun(family));
    }

    fn show_family(&mut self, session: FamilySession) {
        self.said = None;
        self.dialog = None;
        self.shelf = None;
        self.family = Some(Box::new(FamilyBench::on(session)));
    }

    /// Opens a file if it is a family; false when it is something else.
    ///
    /// # Errors
    /// One sentence when it cannot be read.
    pub(in crate::window) fn open_family(&mut self, path: &Path) -> Result<bool, String> {
        let bytes = files::bytes(path)?;
        if !family::is_family(&bytes) {
            return Ok(false);
        }
        let (session, lost) = FamilySession::opened(path, &bytes)?;
        self.memory.note_file(path);
        self.show_family(session);
        if !lost.is_empty() {
            let lost = lost.join("; ");
            self.said = Some(Said::Trouble(format!(
                "{} is damaged: {lost}. Look it over and save it under another name.",
                path.display()
            )));
        }
        Ok(true)
    }

    /// The design that is open becomes the base of a family of one.
    pub(in crate::window) fn make_family(&mut self) {
        let design = self.session.document.clone();
        self.begin_family(Family::from_design(&design));
        self.said = Some(Said::Done(
            "A family of one size was begun from the design. Add sizes over the table.".to_owned(),
        ));
    }

    /// Does what a command means for a family; false when it means the same as for a design.
    pub(in crate::window) fn run_in_family(&mut self, command: Command) -> bool {
        let screen = self.memory.screen;
        let Some(bench) = &mut self.family else {
            return false;
        };
        match command {
            Command::Undo => bench.undo(),
            Command::Redo => bench.redo(),
            Command::ZoomFit => bench.paper_shown().fit(),
            Command::TrueSize => bench.paper.set_scale(screen),
            Command::ExportPdf => {
                let dialog = bench.print_dialog(SetSheets::Pages);
                self.dialog = Some(Dialog::PrintSet(dialog));
            }
            Command::ExportSvg => {
                let dialog = bench.print_dialog(SetSheets::Drawings);
                self.dialog = Some(Dialog::PrintSet(dialog));
            }
            // There is a family already.
            Command::MakeFamily => {}
            Command::Trace => {
                self.said = Some(Said::Trouble(
                    "A picture is traced under one design, and a family is open: open a design first"
                        .to_owned(),
                ));
            }
            Command::New
            | Command::Open
            | Command::Save
            | Command::SaveAs
            | Command::Shelf
            | Command::ShelfFolder
            | Command::Calibrate
            | Command::SwitchTheme
            | Command::Quit => return false,
        }
        true
    }

    /// Begins to write the set's pages, as the command line does.
    ///
    /// # Errors
    /// One sentence when a set is being written already.
    pub(in crate::window) fn print_set(
        &mut self,
        path: &Path,
        (paper, pairs): (Paper, u32),
    ) -> Result<(), String> {
        let Some(work) = self.set_work(paper, pairs) else {
            return Ok(());
        };
        self.begin_job(|| work.pdf(path.to_owned()))
    }

    /// Begins to write the set's drawings into a folder, which is made if need be.
    ///
    /// # Errors
    /// One sentence when a set is being written already.
    pub(in crate::window) fn draw_set(&mut self, folder: &Path, pairs: u32) -> Result<(), String> {
        let Some(work) = self.set_work(Paper::A4, pairs) else {
            return Ok(());
        };
        self.begin_job(|| work.drawings(folder.to_owned()))
    }

    /// What is written of the family, as it stands now: it may be changed while that goes on.
    fn set_work(&self, paper: Paper, pairs_of_each: u32) -> Option<SetWork> {
        let bench = self.family.as_ref()?;
        Some(SetWork {
            family: bench.session.family.clone(),
            answers: bench.set.answers.clone(),
            wanted: Wanted {
                paper,
                pairs_of_each,
                day: printing::today(),
            },
            open: bench.session.path.clone(),
        })
    }

    /// Chooses a size of the family that is open, if there is such a one.
    pub(in crate::window) fn choose_size(&mut self, at: usize) {
        if let Some(bench) = &mut self.family {
            bench.chosen = at;
            bench.table.reveal = Some(at);
            bench.follow();
        }
    }

    /// Puts what is being typed in its place, as if Enter had been pressed.
    pub(in crate::window) fn commit_typed(&mut self) {
        match &mut self.family {
            Some(bench) => bench.table.commit(&mut bench.session.family),
            None => self.parts.commit(&mut self.session.document),
        }
    }

    /// Name of what is open, as the smith gave it.
    pub(in crate::window) fn open_name(&self) -> &str {
        match &self.family {
            Some(bench) => &bench.session.family.name,
            None => &self.session.document.name,
        }
    }

    /// Name of the file that is open, and whether it is saved.
    pub(in crate::window) fn open_title(&self) -> String {
        match &self.family {
            Some(bench) => bench.session.title(),
            None => self.session.title(),
        }
    }

    /// The file of what is open.
    pub(in crate::window) fn open_path(&self) -> Option<&Path> {
        match &self.family {
            Some(bench) => bench.session.path.as_deref(),
            None => self.session.path.as_deref(),
        }
    }

    /// A name for a file made from what is open.
    pub(in crate::window) fn open_file_name(&self, extension: &str) -> String {
        match &self.family {
            Some(bench) => bench.session.file_name(extension),
            None => self.session.file_name(extension),
        }
    }

    /// Whether a change can be taken back, and done again.
    pub(in crate::window) fn can_undo_and_redo(&self) -> (bool, bool) {
        match &self.family {
            Some(bench) => {
                let family = &bench.session.family;
                (
                    bench.history.can_undo(family),
                    bench.history.can_redo(family),
                )
            }
            None => {
                let design = &self.session.document;
                (self.history.can_undo(design), self.history.can_redo(design))
            }
        }
    }

    /// What is open, to be kept against a power cut.
    pub(in crate::window) fn kept(&self) -> Kept {
        match &self.family {
            Some(bench) => Kept::Family(Box::new(bench.session.family.clone())),
            None => Kept::Design(Box::new(self.session.document.clone())),
        }
    }

    /// Whether that is what was kept.
    pub(in crate::window) fn is_kept(&self, kept: &Kept) -> bool {
        match (kept, &self.family) {
            (Kept::Family(kept), Some(bench)) => **kept == bench.session.family,
            (Kept::Design(kept), None) => **kept == self.session.document,
            (Kept::Family(_), None) | (Kept::Design(_), Some(_)) => false,
        }
    }

    /// A window on a family that has no file.
    pub fn with_family(family: Family, surroundings: super::super::Surroundings) -> Self {
        let mut bench = Self::with(family.base.clone(), surroundings);
        bench.session = Session::begun(family.base.clone());
        bench.begin_family(family);
        bench
    }
}

impl FamilyBench {
    fn undo(&mut self) {
        let before = self.history.undo(&self.session.family);
        self.go_to(before);
    }

    fn redo(&mut self) {
        let after = self.history.redo(&self.session.family);
        self.go_to(after);
    }

    fn go_to(&mut self, family: Option<Family>) {
        if let Some(family) = family {
            self.session.family = family;
            self.table.forget();
            self.follow();
        }
    }

    fn print_dialog(&self, sheets: SetSheets) -> PrintSet {
        let family = &self.session.family;
        PrintSet::new(sheets, family.sizes.len(), family.base.units)
    }

    /// The sheet that is looked at.
    fn paper_shown(&mut self) -> &mut super::Paper {
        match self.picture {
            Picture::Over => &mut self.over,
            Picture::One | Picture::Side | Picture::Holds => &mut self.paper,
        }
    }
}
