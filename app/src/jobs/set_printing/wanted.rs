//! What of a set is printed.

use reinwright_core::asked::StockSizes;
use reinwright_core::paper::ink::Date;
use reinwright_core::paper::{Paper, PaperOptions};
use reinwright_core::shop::printers::Printer;

use crate::jobs::order::Order;
use crate::jobs::printer;

/// What is printed, and what must be known for it.
#[derive(Debug, Clone)]
pub struct Wanted {
    /// All that was chosen.
    pub order: Order,
    /// The day, if it is to be told.
    pub day: Option<Date>,
    /// The stock that can be bought, in which gaps are counted.
    pub stock: StockSizes,
}

impl Wanted {
    pub(super) fn options(&self, paper: Paper) -> PaperOptions {
        printer::options(paper, self.order.printer.as_ref())
    }

    pub(super) fn printer(&self) -> Option<&Printer> {
        self.order.printer.as_ref()
    }
}
