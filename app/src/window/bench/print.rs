//! What the workbench does when something is printed.

use std::path::Path;

use reinwright_core::asked::Units;
use reinwright_core::paper::Paper;
use reinwright_core::shop::printers::{Printer, Printers};

use super::open::Open;
use super::workbench::Workbench;
use crate::disk::{files, folder};
use crate::jobs::order::Order;
use crate::jobs::pages::Consent;
use crate::jobs::preview::Printable;
use crate::jobs::set_printing::Wanted;
use crate::jobs::{printer, printing};
use crate::window::panels::dialog::{Dialog, Print, noted_where, usual_paper};
use crate::window::state::job::{PrintWork, sentences};

impl Workbench {
    /// Asks what is to be printed, beginning with what was printed last.
    ///
    /// # Errors
    /// One sentence when the sizes of a family are not reckoned yet.
    pub(super) fn ask_what_to_print(&mut self, units: Units) -> Result<(), String> {
        let of = self.printable()?;
        let printers = self.printers();
        let known = printers.clone().unwrap_or_default();
        let memory = &self.remembered.memory;
        let order = Order::usual(usual_paper(units)).reminded(&memory.print, &known);
        let stock = memory.stock.sizes.clone();
        let print = Print::new(of, order, stock, printers, self.open.stop());
        self.put_question(Dialog::Print(Box::new(print)));
        Ok(())
    }

    /// What job sheets and cut lists are begun on: the paper of the last one, or the usual one.
    pub(super) fn sheet_paper(&self, units: Units) -> Paper {
        let last = self.remembered.memory.sheet_paper;
        last.unwrap_or_else(|| usual_paper(units))
    }

    /// What is open, as it stands now: it may be changed while it is printed.
    fn printable(&self) -> Result<Printable, String> {
        match &self.open {
            Open::Design(design) => {
                Ok(Printable::Design(Box::new(design.desk.session.now.clone())))
            }
            Open::Tool(tool) => Ok(Printable::Tool(Box::new(tool.desk.session.now.clone()))),
            Open::Family(family) => {
                family.may_be_written()?;
                Ok(family.printable())
            }
            Open::Tools(tools) => {
                tools.may_be_written()?;
                Ok(tools.printable())
            }
        }
    }

    /// An order with all else that must be known.
    pub(super) fn wanted(&self, order: Order) -> Wanted {
        Wanted {
            order,
            day: printing::today(),
            stock: self.remembered.memory.stock.sizes.clone(),
        }
    }

    /// Begins to write pages.
    ///
    /// # Errors
    /// One sentence when something is being written already, or the file is the design itself.
    pub(super) fn print(
        &mut self,
        path: &Path,
        order: &Order,
        asked: Consent,
    ) -> Result<(), String> {
        self.may_begin_job()?;
        let open = self.open.session().path().map(Path::to_owned);
        open.iter().try_for_each(|open| files::spare(open, path))?;
        if !matches!(self.open, Open::Tool(_) | Open::Tools(_)) {
            // What is chosen of a tool says nothing of what is printed of a pair.
            self.remembered.memory.note_print(&order.text());
        }
        let work = PrintWork {
            of: self.printable()?,
            wanted: self.wanted(order.clone()),
            open,
            against: sentences([self.open.stop()]),
        };
        self.shown.job = Some(work.pdf(path.to_owned(), asked));
        Ok(())
    }

    /// Writes the check page of a printer.
    pub(super) fn print_check_page(&mut self, path: &Path, paper: Paper) -> Result<(), String> {
        let pdf = printer::check_page(paper, printing::today());
        self.write_beside(path, &pdf)?;
        let and =
            ". Print it at actual size (100 %), measure both bars, and note them under Print.";
        self.say_written(path, and);
        Ok(())
    }

    /// The printers that are known.
    fn printers(&self) -> Result<Printers, String> {
        let folder = self.remembered.memory.printers_folder();
        folder.map_or_else(|| Ok(Printers::default()), folder::printers)
    }

    /// Notes what a printer measures, and tells the question that is open.
    pub(super) fn note_printer(&mut self, printer: Printer) {
        let name = printer.name.clone();
        let noted = self.with_printer(printer);
        if let Some(Dialog::Print(print)) = &mut self.asked.dialog {
            print.noted(noted, &name);
        }
    }

    fn with_printer(&self, printer: Printer) -> Result<Printers, String> {
        let folder = noted_where(self.remembered.memory.printers_folder())?;
        let known = folder::printers(folder)?.with(printer);
        let known = known.map_err(|why| why.to_string())?;
        files::make_folder(folder)?;
        folder::keep_printers(folder, &known)?;
        Ok(known)
    }
}
