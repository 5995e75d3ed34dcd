//! What the workbench does while a family is open, and what is open at all.

use std::path::Path;

use reinwright_core::drawing::Paper;
use reinwright_core::family::{self, Family};

use super::super::command::Command;
use super::super::dialog::{Dialog, Kept, Print, Purpose};
use super::super::session::Session;
use super::super::workbench::{Said, Workbench};
use super::{FamilyBench, FamilySession, Picture};
use crate::set_printing::{self, Wanted};
use crate::{files, printing};

impl Workbench {
    /// Shows a family that has no file yet.
    pub(in crate::window) fn begin_family(&mut self, family: Family) {
        self.show_family(FamilySession::begun(family));
    }

    fn show_family(&mut self, session: FamilySession) {
        self.said = None;
        self.dialog = None;
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
                let units = bench.session.family.base.units;
                self.dialog = Some(Dialog::Print(Print::new(units)));
            }
            Command::ExportSvg => self.ask(Purpose::Folder),
            // There is a family already.
            Command::MakeFamily => {}
            Command::New
            | Command::Open
            | Command::Save
            | Command::SaveAs
            | Command::Calibrate
            | Command::SwitchTheme
            | Command::Quit => return false,
        }
        true
    }

    /// Writes the set's pages, as the command line does.
    ///
    /// # Errors
    /// One sentence when the file cannot be written.
    pub(in crate::window) fn print_set(&mut self, path: &Path, paper: Paper) -> Result<(), String> {
        let Some(bench) = &self.family else {
            return Ok(());
        };
        let wanted = Wanted {
            paper,
            pairs_of_each: 1,
            day: printing::today(),
        };
        let (family, answers) = (&bench.session.family, &bench.set.answers);
        let pdf = set_printing::pdf(family, answers, &wanted, &mut set_printing::to_the_end);
        self.write_beside(path, &pdf.unwrap_or_default())?;
        self.said = Some(Said::Done(format!(
            "The set was written to {}. Print at actual size (100 %), then measure the check bars.",
            path.display()
        )));
        Ok(())
    }

    /// Writes the set's drawings into a folder, which is made if need be.
    ///
    /// # Errors
    /// One sentence when a file cannot be written.
    pub(in crate::window) fn draw_set(&mut self, folder: &Path) -> Result<(), String> {
        let Some(bench) = &self.family else {
            return Ok(());
        };
        std::fs::create_dir_all(folder).map_err(|error| {
            format!(
                "{}: this folder cannot be made ({error}): choose another one",
                folder.display()
            )
        })?;
        let (family, answers) = (&bench.session.family, &bench.set.answers);
        let svgs = set_printing::svgs(family, answers, 1, &mut set_printing::to_the_end);
        let svgs = svgs.unwrap_or_default();
        for (name, svg) in &svgs {
            self.write_beside(&folder.join(name), svg.as_bytes())?;
        }
        self.said = Some(Said::Done(format!(
            "{} drawings written to {}",
            svgs.len(),
            folder.display()
        )));
        Ok(())
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

    /// The sheet that is looked at.
    fn paper_shown(&mut self) -> &mut super::Paper {
        match self.picture {
            Picture::Over => &mut self.over,
            Picture::One | Picture::Side | Picture::Holds => &mut self.paper,
        }
    }
}
