//! Coming to the shelf and leaving it.

use std::path::Path;

use reinwright_core::document::Units;

use super::super::command::Command;
use super::super::dialog::Purpose;
use super::super::workbench::{Said, Workbench};
use super::Shelf;
use crate::shelf;

impl Workbench {
    /// Shows the shelf that was looked at last, or asks for a folder.
    pub(in crate::window) fn open_shelf(&mut self) {
        match self.memory.shelf.clone() {
            Some(folder) if folder.is_dir() => self.show_shelf(&folder),
            Some(_) | None => self.ask(Purpose::Shelf),
        }
    }

    /// Shows a folder as a shelf; why not is said.
    pub(in crate::window) fn show_shelf(&mut self, folder: &Path) {
        if let Err(why) = self.try_shelf(folder) {
            self.said = Some(Said::Trouble(why));
        }
    }

    /// Shows a folder as a shelf.
    ///
    /// # Errors
    /// One sentence when the folder cannot be read.
    pub(in crate::window) fn try_shelf(&mut self, folder: &Path) -> Result<(), String> {
        let looked = shelf::look_into(folder)?;
        self.memory.note_shelf(folder);
        self.said = None;
        self.shelf = Some(Box::new(Shelf::on(looked, self.open_units())));
        Ok(())
    }

    fn open_units(&self) -> Units {
        match (&self.shelf, &self.family) {
            (Some(shelf), _) => shelf.units,
            (None, Some(bench)) => bench.session.family.base.units,
            (None, None) => self.session.document.units,
        }
    }

    /// Whether a command means something while the shelf is shown. One that is about the design
    /// behind it leaves the shelf first, so that what is done is seen.
    pub(in crate::window) fn may_run_at_shelf(&mut self, command: Command) -> bool {
        if self.shelf.is_none() {
            return true;
        }
        match command {
            Command::Undo | Command::Redo | Command::ZoomFit | Command::TrueSize => false,
            Command::Save
            | Command::SaveAs
            | Command::ExportPdf
            | Command::ExportSvg
            | Command::Trace
            | Command::MakeFamily => {
                self.shelf = None;
                true
            }
            Command::New
            | Command::Open
            | Command::Shelf
            | Command::ShelfFolder
            | Command::Calibrate
            | Command::SwitchTheme
            | Command::Quit => true,
        }
    }
}
