//! What is printed, chosen in one place, with the pages beside it as they will come out.

mod choices;
mod leaves;
mod others;
mod printers;

use std::path::Path;
use std::sync::Arc;

use egui::{Rect, ScrollArea, Ui, UiBuilder, vec2};
use lyon::tessellation::FillTessellator;
use reinwright_core::asked::StockSizes;
use reinwright_core::shop::printers::{Printer, Printers};

use super::{Purpose, Reply, trouble};
use crate::jobs::order::Order;
use crate::jobs::pages::{Consent, Stack};
use crate::jobs::preview::Printable;
use crate::jobs::printing;
use crate::jobs::set_printing::Wanted;
use crate::window::paint::focus::follow;
use crate::window::panels::question::{Ready, foot};
use crate::window::state::bar::Forged;
use crate::window::state::rows::capital;
use choices::Typed;
use leaves::Shown;
use others::{CHOOSE, stopped};
pub(crate) use others::{PrintDrawings, PrintJob, PrintSvg, usual_paper};
use printers::Measuring;

/// The dialog at the most, in points.
pub(super) const LARGEST: egui::Vec2 = vec2(1280.0, 900.0);
/// What is chosen from is so wide, in points.
const CHOICES: f32 = 326.0;
/// Heading and foot together are so high, in points.
const ABOVE_AND_BELOW: f32 = 150.0;

/// An edge stands so far out of what it is about, in points.
const EDGE: f32 = 3.0;

/// What goes with every template.
const BURNS: &str =
    "Paper burns: take the outline over to plate or chalk before you lay hot work against it.";

/// What is printed of a design or a family.
#[derive(Debug)]
pub(crate) struct Print {
    of: Arc<Printable>,
    /// The stock in which the gaps of a family are counted.
    stock: StockSizes,
    order: Order,
    typed: Typed,
    measuring: Measuring,
    shown: Shown,
    stop: Option<String>,
}

impl Print {
    /// `stop` is what stands against making the pair, or some sizes.
    pub(crate) fn new(
        of: Printable,
        order: Order,
        stock: StockSizes,
        printers: Result<Printers, String>,
        stop: Option<String>,
    ) -> Self {
        let order = match &of {
            Printable::Design(_) | Printable::Set(..) => order,
            Printable::Tool(_) | Printable::Tools(..) => choices::of_tool(order),
        };
        Self {
            of: Arc::new(of),
            stock,
            typed: Typed::of(&order),
            order,
            measuring: Measuring::new(printers),
            shown: Shown::default(),
            stop,
        }
    }

    /// Takes note of a printer that was measured, or of why it could not be noted.
    pub(crate) fn noted(&mut self, printers: Result<Printers, String>, name: &str) {
        if let Some(printer) = self.measuring.noted(printers, name) {
            self.order.printer = Some(printer);
        }
    }

    pub(super) fn show(&mut self, ui: &mut Ui, fills: &mut FillTessellator) -> Option<Reply> {
        let size = ui.available_size();
        ui.heading("Print to PDF");
        let high = (size.y - ABOVE_AND_BELOW).max(120.0);
        let area = Rect::from_min_size(ui.cursor().min, vec2(size.x, high));
        ui.allocate_rect(area, egui::Sense::hover());
        let (left, right) = area.split_left_right_at_x(area.left() + CHOICES);
        let asked = self.choose(&mut of_area(ui, left, "choices"));
        self.follow(ui);
        let mut pages = of_area(ui, right.with_min_x(right.left() + 12.0), "pages");
        self.shown.show(&mut pages, fills);
        let answer = self.foot(ui);
        asked.or(answer)
    }

    /// All that can be chosen; what was asked for beside it.
    fn choose(&mut self, ui: &mut Ui) -> Option<Reply> {
        let list = ScrollArea::vertical().auto_shrink([false, false]);
        list.show(ui, |ui| {
            ui.set_width(CHOICES - 22.0);
            let of = match self.of.as_ref() {
                Printable::Design(_) | Printable::Set(..) => Forged::Pair,
                Printable::Tool(_) | Printable::Tools(..) => Forged::Tool,
            };
            choices::show(ui, of, &mut self.order, &mut self.typed);
            let paper = self.order.paper;
            let asked = self.measuring.show(ui, &mut self.order.printer, paper);
            match self.of.as_ref() {
                Printable::Design(_) | Printable::Tool(_) => {}
                Printable::Set(family, _) => {
                    choices::of_family(ui, family.as_ref(), &mut self.order);
                }
                Printable::Tools(family, _) => {
                    choices::of_family(ui, family.as_ref(), &mut self.order);
                }
            }
            follow(ui);
            asked
        })
        .inner
    }

    /// Lays the pages out anew when something else is chosen.
    fn follow(&mut self, ui: &Ui) {
        let of = &self.of;
        let stock = &self.stock;
        self.shown.follow(ui.ctx(), &self.order, |order| {
            let wanted = Wanted {
                order,
                day: printing::today(),
                stock: stock.clone(),
            };
            (Arc::clone(of), wanted)
        });
    }

    /// How many pages there are, what to take care of, and the buttons.
    fn foot(&self, ui: &mut Ui) -> Option<Reply> {
        let accept = self.accept(ui);
        ui.label(format!(
            "Print at actual size (100 %), then measure the check bars. {BURNS}"
        ));
        stopped(ui, self.stop.as_deref());
        let main = match &accept {
            Some((label, _)) => (label.as_str(), Ready::Yes),
            None => (CHOOSE, Ready::No),
        };
        match (foot(ui, Some(main), &["Cancel"])?, accept) {
            (0, Some((_, consent))) => Some(self.ask(consent)),
            _ => Some(Reply::Stay),
        }
    }

    fn ask(&self, consent: Consent) -> Reply {
        Reply::Ask(Purpose::Pdf(Box::new(self.order.clone()), consent))
    }

    /// The words of the button that prints, with what is asked for with it; none where nothing can
    /// be printed.
    fn accept(&self, ui: &mut Ui) -> Option<(String, Consent)> {
        if let Some(why) = self.against() {
            trouble(ui, Some(&why));
            return None;
        }
        let Some(count) = self.shown.count() else {
            ui.label(self.shown.counting());
            return Some((CHOOSE.to_owned(), Consent::Usual));
        };
        let paper = self.order.paper;
        match count.stack() {
            Stack::Usual => {
                ui.label(capital(&count.words(paper)));
                Some((CHOOSE.to_owned(), Consent::Usual))
            }
            Stack::Many => {
                ui.label(capital(&count.words(paper)));
                let print = format!("Print {} pages: choose the file", count.all);
                Some((print, Consent::All))
            }
            Stack::TooMany => {
                trouble(ui, Some(&capital(&count.refusal(paper))));
                None
            }
        }
    }

    /// Why what is chosen cannot be printed.
    fn against(&self) -> Option<String> {
        let nothing = match self.of.as_ref() {
            Printable::Design(_) | Printable::Tool(_) => self.order.what.kinds.is_empty(),
            Printable::Set(..) | Printable::Tools(..) => !self.order.prints_something(),
        };
        if nothing {
            return Some("Nothing is chosen: tick what shall be printed".to_owned());
        }
        self.typed.trouble().map(str::to_owned)
    }
}

/// A part of the dialog that keeps to its area.
fn of_area(ui: &mut Ui, area: Rect, salt: &str) -> Ui {
    let mut own = ui.new_child(UiBuilder::new().max_rect(area).id_salt(salt));
    // Edges of buttons and pages are drawn about them.
    own.set_clip_rect(area.expand(EDGE).intersect(ui.clip_rect()));
    own
}

/// Asks for a file for the check page of a printer.
fn ask_check_page(paper: reinwright_core::paper::Paper) -> Reply {
    Reply::Ask(Purpose::CheckPage(paper))
}

/// What is asked of the bench when a printer was measured.
fn ask_note(printer: Printer) -> Reply {
    Reply::NotePrinter(printer)
}

/// Where printers are noted, as it is told.
pub(crate) fn noted_where(folder: Option<&Path>) -> Result<&Path, String> {
    let why = "there is no folder to note it in: open the folder of your shop with Shelf first";
    folder.ok_or_else(|| why.to_owned())
}
