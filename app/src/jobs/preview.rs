//! The pages of a design or of a family as they will come out, with how many they are.

use reinwright_core::paper::Page;
use reinwright_core::shop::family::{Family, SizeAnswer, ToolSizeAnswer};
use reinwright_core::tongs::document::Document;
use reinwright_core::tool::Tool;

use super::pages::{Pages, Stack};
use super::printing::Template;
use super::set_printing::in_set::{InSet, Set};
use super::set_printing::{self, Wanted};
use super::watch::{Progress, Watch};

/// More pages than this are counted and not shown: nobody leafs through them.
pub const MOST_SHOWN: usize = 200;

/// What can be printed.
#[derive(Debug, Clone)]
pub enum Printable {
    /// One design.
    Design(Box<Document>),
    /// One tool.
    Tool(Box<Tool>),
    /// A family with the answers to its sizes.
    Set(Box<Family>, Vec<SizeAnswer>),
    /// A family of tools, likewise.
    Tools(Box<Family<Tool>>, Vec<ToolSizeAnswer>),
}

/// Pages before they are printed.
#[derive(Debug, Clone, Default)]
pub struct Leaves {
    /// How many there are.
    pub count: Pages,
    /// They themselves, if they are not too many.
    pub pages: Vec<Page>,
}

impl Printable {
    /// The pages that are wanted; `None` when the watch stopped it.
    pub fn leaves(&self, wanted: &Wanted, watch: Watch<'_>) -> Option<Leaves> {
        match self {
            Self::Design(design) => of_one(&template(design, wanted), wanted, watch),
            Self::Tool(tool) => of_one(&tool_template(tool, wanted), wanted, watch),
            Self::Set(family, answers) => of_set((family, answers), wanted, watch),
            Self::Tools(family, answers) => of_set((family, answers), wanted, watch),
        }
    }
}

fn of_set<D: InSet>(
    (family, answers): Set<'_, D>,
    wanted: &Wanted,
    watch: Watch<'_>,
) -> Option<Leaves> {
    let count = set_printing::pages_wanted(family, answers, wanted, watch)?;
    let pages = match is_shown(&count) {
        true => set_printing::laid(family, answers, wanted, watch)?,
        false => Vec::new(),
    };
    Some(Leaves { count, pages })
}

fn of_one(template: &Template, wanted: &Wanted, watch: Watch<'_>) -> Option<Leaves> {
    watch(Progress { done: 1, total: 3 })
        .is_continue()
        .then_some(())?;
    let arranged = template.arranged(wanted.order.paper);
    watch(Progress { done: 2, total: 3 })
        .is_continue()
        .then_some(())?;
    let pages = match is_shown(&arranged.count) {
        true => arranged.laid(),
        false => Vec::new(),
    };
    Some(Leaves {
        count: arranged.count,
        pages,
    })
}

/// The templates of a tool as they are wanted.
pub fn tool_template(tool: &Tool, wanted: &Wanted) -> Template {
    Template::of_tool(tool, &wanted.order.what, wanted.day).on(wanted.order.printer.clone())
}

/// The templates of a design as they are wanted.
pub fn template(design: &Document, wanted: &Wanted) -> Template {
    Template::with(design, &wanted.order.what, wanted.day).on(wanted.order.printer.clone())
}

/// Whether so many pages are shown.
fn is_shown(count: &Pages) -> bool {
    count.stack() != Stack::TooMany && count.all <= MOST_SHOWN
}
