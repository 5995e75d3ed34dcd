//! Coming to the shelf and leaving it.

use std::path::Path;

use reinwright_core::shop::shelf::Mark;

use super::workbench::Workbench;
use crate::disk::folder;
use crate::window::panels::dialog::Purpose;
use crate::window::panels::shelf::Shelf;
use crate::window::state::command::Command;

impl Workbench {
    /// Shows the shelf that was looked at last, or asks for a folder.
    pub(super) fn open_shelf(&mut self) {
        match self.remembered.memory.shelf.clone() {
            Some(folder) if folder.is_dir() => {
                let done = self.show_shelf(&folder);
                self.tell(done);
            }
            Some(_) | None => self.ask(Purpose::Shelf),
        }
    }

    /// Shows a folder as a shelf.
    ///
    /// # Errors
    /// One sentence when the folder cannot be read.
    pub(super) fn show_shelf(&mut self, folder: &Path) -> Result<(), String> {
        let looked = folder::look_into(folder)?;
        self.remembered.memory.note_shelf(folder);
        self.shown.news.hush();
        let units = self.units_shown();
        self.leave_cut_list();
        self.shown.shelf = Some(Box::new(Shelf::on(looked, units)));
        Ok(())
    }

    /// Marks a pair of the shelf, or takes its mark away.
    pub(super) fn mark_on_shelf(&mut self, at: usize, mark: Option<Mark>) {
        if let Some(shelf) = &mut self.shown.shelf {
            let done = shelf.put_mark(at, mark);
            self.tell(done);
        }
    }

    /// Whether a command means something while the shelf or the cut list is shown. One that is about
    /// the design behind it leaves it first, so that what is done is seen.
    pub(super) fn may_run_at_shelf(&mut self, command: Command) -> bool {
        if self.shown.shelf.is_none() && self.shown.cut.is_none() {
            return true;
        }
        match command {
            Command::Undo | Command::Redo | Command::Show(_) | Command::TrueSize => false,
            Command::Save
            | Command::SaveAs
            | Command::Earlier
            | Command::ExportPdf
            | Command::ExportSvg
            | Command::Trace
            | Command::Making
            | Command::Heats
            | Command::JobSheet
            | Command::MakeFamily
            | Command::ToolsForPair => {
                self.shown.shelf = None;
                self.leave_cut_list();
                true
            }
            Command::New
            | Command::NewTool
            | Command::Open
            | Command::Shelf
            | Command::ShelfFolder
            | Command::CutList
            | Command::Calibrate
            | Command::About
            | Command::SwitchTheme
            | Command::Quit => true,
        }
    }
}
