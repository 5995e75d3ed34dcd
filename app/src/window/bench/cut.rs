//! What the workbench does with the cut list.

use std::path::Path;

use reinwright_core::paper::Paper;

use super::open::Open;
use super::workbench::Workbench;
use crate::disk::folder;
use crate::jobs::{cut_printing, cut_wanted, printing};
use crate::window::panels::cut::CutList;
use crate::window::panels::dialog::Purpose;
use crate::window::panels::wish::{CutWish, RackChange};

impl Workbench {
    /// Shows the cut list, with what is open on it as it stands now.
    pub(super) fn show_cut_list(&mut self) {
        if self.shown.cut.is_some() {
            return;
        }
        let designs = match &self.open {
            Open::Design(design) => vec![cut_wanted::pair(design.desk.session.now.clone())],
            Open::Tool(bench) => vec![cut_wanted::tool(bench.desk.session.now.clone())],
            Open::Family(bench) => {
                let sizes = cut_wanted::sizes(&bench.session.now).into_iter();
                sizes.map(cut_wanted::pair).collect()
            }
            Open::Tools(bench) => {
                let sizes = cut_wanted::sizes(&bench.session.now).into_iter();
                sizes.map(cut_wanted::tool).collect()
            }
        };
        let units = self.open.session().units();
        self.shown.shelf = None;
        self.shown.news.hush();
        let shop = self.remembered.memory.shelf.clone();
        let shop = shop.filter(|folder| folder.is_dir());
        let put_aside = self.remembered.cut.take();
        let paper = self.sheet_paper(units);
        let mut list = put_aside.unwrap_or_else(|| Box::new(CutList::new(units, paper)));
        list.units = units;
        // The shelf may have gone to another folder, or another window may have changed the rack.
        if let Some(shop) = shop.or(list.shop().map(Path::to_owned)) {
            let done = list.go_to_shop(shop);
            self.tell(done);
        }
        list.open(designs);
        self.shown.cut = Some(list);
    }

    /// Puts the list aside, as it is, until it is shown again.
    pub(super) fn leave_cut_list(&mut self) {
        if let Some(list) = self.shown.cut.take() {
            self.remembered.cut = Some(list);
        }
    }

    /// Asks where the list goes that is looked at, to be printed; whether there is one.
    pub(super) fn ask_for_cut_list(&mut self) -> bool {
        let list = self.shown.cut.as_ref();
        let Some(list) = list.filter(|list| list.can_be_printed()) else {
            return false;
        };
        let paper = list.paper();
        self.ask(Purpose::CutPdf(paper));
        true
    }

    /// Does what was asked of the cut list.
    pub(super) fn at_cut_list(&mut self, wish: CutWish) {
        match wish {
            CutWish::Leave => self.leave_cut_list(),
            CutWish::AskDesign => self.ask(Purpose::CutDesign),
            CutWish::AskShop => self.ask(Purpose::Shop),
            CutWish::Print(paper) => self.ask(Purpose::CutPdf(paper)),
            CutWish::Add(path) => {
                let done = self.cut_pairs_of(&path);
                self.tell(done);
            }
            CutWish::Rack(change) => {
                let done = self.change_rack(&change);
                self.tell(done);
            }
        }
    }

    fn change_rack(&mut self, change: &RackChange) -> Result<(), String> {
        match &mut self.shown.cut {
            Some(list) => list.change(change),
            None => Ok(()),
        }
    }

    /// Puts the pairs of a file on the list.
    ///
    /// # Errors
    /// One sentence that names the file, what is wrong and the mend.
    pub(super) fn cut_pairs_of(&mut self, path: &Path) -> Result<(), String> {
        let named = |what: String| format!("{}: {what}", path.display());
        let filed = folder::read(path).map_err(named)?;
        let designs = cut_wanted::designs(filed).map_err(named)?;
        if let Some(list) = &mut self.shown.cut {
            list.add(&designs);
        }
        Ok(())
    }

    /// Keeps the rack with the designs in a folder from now on.
    ///
    /// # Errors
    /// One sentence when it is no folder that can be read.
    pub(super) fn go_to_shop(&mut self, shop: &Path) -> Result<(), String> {
        folder::look_into(shop)?;
        if let Some(list) = &mut self.shown.cut {
            list.go_to_shop(shop.to_owned())?;
        }
        self.remembered.memory.note_shelf(shop);
        Ok(())
    }

    /// Writes the list as it is shown.
    ///
    /// # Errors
    /// One sentence that names the file, what is wrong and the mend.
    pub(super) fn print_cut_list(&mut self, path: &Path, paper: Paper) -> Result<(), String> {
        let Some(list) = &self.shown.cut else {
            return Ok(());
        };
        let Some(plan) = list.plan() else {
            return Ok(());
        };
        let pdf = cut_printing::pdf(plan, list.units, paper, printing::today());
        self.write_beside(path, &pdf)?;
        self.remembered.memory.note_sheet_paper(paper);
        self.say_written(path, "");
        Ok(())
    }
}
