//! What the workbench does with a family as a whole: beginning one, and writing it beside the
//! window.

use std::path::Path;

use egui::Context;
use reinwright_core::asked::StockSizes;
use reinwright_core::paper::Paper;
use reinwright_core::shop::family::Family;
use reinwright_core::tongs::document::Document;

use super::open::Open;
use super::workbench::Workbench;
use crate::jobs::order::Order;
use crate::window::state::job::Ended;
use crate::window::state::news::Said;
use crate::window::state::session::Session;

/// What a design is called without the work that it was begun for, since its family holds more than that.
fn of_any_size(base: &Document) -> &str {
    let work = format!(" for {}", base.work.name());
    base.name.strip_suffix(&*work).unwrap_or(&base.name)
}

impl Workbench {
    /// Shows a family that has no file yet.
    pub(super) fn begin_family(&mut self, family: Family) {
        self.show_open(Open::family(Session::unsaved(family)));
    }

    /// The design that is open becomes the base of a family of one; a family is one already.
    pub(super) fn make_family(&mut self) {
        let what = match &self.open {
            Open::Design(design) => {
                let base = &design.desk.session.now;
                let mut family = Family::from_design(base);
                family.name = of_any_size(base).to_owned();
                self.begin_family(family);
                "design"
            }
            Open::Tool(tool) => {
                let family = Family::from_design(&tool.desk.session.now);
                self.show_open(Open::tools(Session::unsaved(family)));
                "tool"
            }
            Open::Family(_) | Open::Tools(_) => return,
        };
        let done =
            format!("A family of one size was begun from the {what}. Add sizes over the table.");
        self.say(Ok(done));
    }

    /// Keeps the stock that can be bought; a list that could not be read is put aside for it.
    pub(super) fn note_stock(&mut self, sizes: StockSizes) {
        match self.remembered.memory.note_stock(sizes) {
            Ok(None) => {}
            Ok(Some(aside)) => self.say(Ok(format!(
                "The list that could not be read is kept as {}",
                aside.display()
            ))),
            Err(why) => self.tell(Err(why)),
        }
    }

    /// Gives the family that is open the stock in which its gaps are counted.
    pub(super) fn lend_stock(&mut self) {
        if let Some(family) = self.open.as_family() {
            family.take_stock(&self.remembered.memory.stock);
        }
    }

    /// Begins to write the set's drawings into a folder, which is made if need be.
    ///
    /// # Errors
    /// One sentence when something is being written already, or the sizes are not reckoned yet.
    pub(super) fn draw_set(&mut self, folder: &Path, pairs: u32) -> Result<(), String> {
        self.may_begin_job()?;
        let order = Order {
            pairs_of_each: pairs,
            ..Order::usual(Paper::A4)
        };
        let (wanted, folder) = (self.wanted(order), folder.to_owned());
        let job = match &self.open {
            Open::Design(_) | Open::Tool(_) => return Ok(()),
            Open::Family(family) => {
                family.may_be_written()?;
                family.to_write(wanted).drawings(folder)
            }
            Open::Tools(tools) => {
                tools.may_be_written()?;
                tools.to_write(wanted).drawings(folder)
            }
        };
        self.shown.job = Some(job);
        Ok(())
    }

    /// One job goes on at a time.
    ///
    /// # Errors
    /// One sentence when one does.
    pub(super) fn may_begin_job(&self) -> Result<(), String> {
        match self.shown.job {
            Some(_) => {
                let why = "something is being written already: wait for it, or cancel it first";
                Err(why.to_owned())
            }
            None => Ok(()),
        }
    }

    /// Takes the outcome of a job that has ended.
    pub(super) fn poll_job(&mut self, ctx: &Context) {
        let job = self.shown.job.as_mut();
        let Some(ended) = job.and_then(|job| job.poll(ctx)) else {
            return;
        };
        self.shown.job = None;
        self.say(match ended {
            Ended::Printed(what, path) => {
                self.shown.news.say(Said::Printed(what, path));
                return;
            }
            Ended::Done(what) => Ok(what),
            Ended::Stopped => Ok("Stopped: nothing was written".to_owned()),
            Ended::Failed(why) => Err(why),
        });
    }
}
