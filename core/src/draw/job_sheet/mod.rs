//! The job sheet: its first page alone is enough at the anvil, the others hold the details.

mod anvil;
mod details;
mod flow;
mod signs;
mod top;

use kurbo::{Point, Rect};

use crate::asked::{Bar, Layout, Units};
use crate::finding::Finding;
use crate::forge::balance::Balance;
use crate::heats::{HeatPlan, Heated, Prepared};
use crate::making::{Plan, Stage};
use crate::paper::sheet::{Weight, text};
use crate::paper::{Align, Item, Page, Paper};
use crate::proof::strength::RivetLength;
use crate::shape::Piece;
use crate::steel::{Steel, caution};
use crate::tongs::document::Document;
use crate::tongs::model::Model;
use crate::tool::Tool;
use crate::units::Show;

/// What is to be made.
#[derive(Debug, Clone, Copy)]
pub enum Made<'a> {
    /// A pair of tongs.
    Pair {
        /// The design.
        document: &'a Document,
        /// Its geometry.
        model: &'a Model,
        /// The shank of its rivet.
        rivet: RivetLength,
    },
    /// A tool.
    Tool {
        /// The design.
        document: &'a Tool,
        /// Its geometry.
        model: &'a crate::tool::Model,
    },
}

/// A pair or a tool that is to be made.
#[derive(Debug, Clone, Copy)]
pub struct Job<'a> {
    /// What it is.
    pub made: Made<'a>,
    /// Its bar.
    pub balance: &'a Balance,
    /// How it is made.
    pub plan: &'a Plan,
    /// What was noticed about the design.
    pub findings: &'a [Finding],
    /// Which source heats what, where the shop's are known.
    pub heats: Option<JobHeats<'a>>,
}

/// The heats of a job.
#[derive(Debug, Clone, Copy)]
pub struct JobHeats<'a> {
    /// What they were chosen from.
    pub prepared: &'a Prepared,
    /// The heats.
    pub plan: &'a HeatPlan,
}

impl<'a> Job<'a> {
    fn steel(&self) -> Steel {
        match self.made {
            Made::Pair { document, .. } => document.bar.steel,
            Made::Tool { document, .. } => document.bar.steel,
        }
    }

    /// The one line of caution on a page at the anvil: the eyes, and what a coil asks for where one
    /// heats anything of it.
    fn caution(&self) -> &'static str {
        const NEAR_A_COIL: &str =
            "Wear eye protection. Near the coil: no implants, rings or watches.";
        let in_coil = self.heats.is_some_and(|heats| {
            let shop = &heats.prepared.shop.sources;
            let mut used = heats.plan.operations.iter().filter_map(|own| own.source);
            used.any(|source| shop[source].coil().is_some())
        });
        if in_coil { NEAR_A_COIL } else { caution::EYES }
    }

    fn name(&self) -> &'a str {
        match self.made {
            Made::Pair { document, .. } => &document.name,
            Made::Tool { document, .. } => &document.name,
        }
    }

    fn units(&self) -> Units {
        match self.made {
            Made::Pair { document, .. } => document.units,
            Made::Tool { document, .. } => document.units,
        }
    }

    fn bar(&self) -> &'a Bar {
        match self.made {
            Made::Pair { document, .. } => &document.bar,
            Made::Tool { document, .. } => &document.bar,
        }
    }

    /// How the halves of a pair are laid out; a tool is alone.
    fn layout(&self) -> Layout {
        match self.made {
            Made::Pair { document, .. } => document.layout,
            Made::Tool { document, .. } => Layout::Single {
                tail: document.tail,
            },
        }
    }

    /// The finished pieces.
    fn pieces(&self) -> Vec<Piece> {
        match self.made {
            Made::Pair { model, .. } => model.pieces(),
            Made::Tool { model, .. } => vec![model.piece.clone()],
        }
    }

    fn is_tool(&self) -> bool {
        matches!(self.made, Made::Tool { .. })
    }

    fn show(&self) -> Show {
        self.units().show()
    }

    fn size(&self, mm: f64) -> String {
        self.show().text(mm)
    }

    /// A length that nobody measures closer.
    fn rough(&self, mm: f64) -> String {
        self.size(self.show().roughly(mm))
    }

    /// The heats of what is done at a stage.
    fn heated(&self, stage: &Stage) -> Option<(&'a Heated, &'a Prepared)> {
        let heats = self.heats?;
        let at = self
            .plan
            .stages
            .iter()
            .position(|own| std::ptr::eq(own, stage))?;
        let rows = &heats.prepared.rows;
        let row = rows.iter().position(|own| own.stage + 1 == at)?;
        Some((heats.plan.operations.get(row)?, heats.prepared))
    }

    /// Whether an operation is heated where the one before it was.
    fn goes_on(&self, heated: &Heated) -> bool {
        let all = self.heats.map_or(&[][..], |own| &own.plan.operations[..]);
        let mut before = all[..heated.row.min(all.len())].iter().rev();
        let last = before.find_map(|own| own.source);
        heated.source.is_some() && last == heated.source
    }

    /// The stages of one half that something was done for.
    fn stages(&self, half: usize) -> Vec<&'a Stage> {
        let own = |stage: &&Stage| stage.half == half && stage.operation.is_some();
        self.plan.stages.iter().filter(own).collect()
    }
}

/// Rim of every page, mm.
const RIM: f64 = 9.0;
/// Lettering that is read at arm's length: 14 pt, and its lines, mm.
const FAR: f64 = 14.0 * MM_PER_POINT;
const FAR_LINE: f64 = 1.18 * FAR;
/// A point of a letter's size, mm.
const MM_PER_POINT: f64 = 25.4 / 72.0;

/// The pages of a job, upright on a paper.
pub fn job_sheet(job: &Job<'_>, paper: Paper) -> Vec<Page> {
    let (width, height) = paper.size();
    let room = Rect::new(RIM, RIM, width - RIM, height - RIM);
    let pages = details::behind(job, anvil::pages(job, room), room);
    let total = pages.len();
    let numbered = pages.into_iter().enumerate().map(|(at, mut items)| {
        items.push(page_number(job, (at + 1, total), room));
        Page {
            width_mm: width,
            height_mm: height,
            items,
        }
    });
    numbered.collect()
}

/// In the rim, beside nothing that is read at the anvil.
fn page_number(job: &Job<'_>, (at, total): (usize, usize), room: Rect) -> Item {
    const SMALL: f64 = 2.8;
    let words = format!("{}, page {at} of {total}", job.name());
    let foot = Point::new(room.x1, room.y0 - 1.35 * SMALL);
    text(foot, &words, SMALL, Weight::Plain, Align::End)
}
