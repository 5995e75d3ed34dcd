//! What is to be cut, and out of which bars, as a smith says it.

use reinwright_core::asked::{Bar, Stock, Units};
use reinwright_core::forge::balance::Balance;
use reinwright_core::shop::cut::{
    GivenBars, Lying, Order, Rack, order_of, order_of_tool, parse_bars,
};
use reinwright_core::shop::family::{Family, InSizes, Size, same_stock};
use reinwright_core::shop::shelf::Filed;
use reinwright_core::shop::{ToolAnswers, balance_of};
use reinwright_core::steel::Steel;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::resolve;
use reinwright_core::tool::Tool;

/// What bar is cut for.
#[derive(Debug, Clone, PartialEq)]
pub enum Made {
    /// A pair.
    Pair(Box<Document>),
    /// A tool.
    Tool(Box<Tool>),
}

impl Made {
    /// What it is called.
    pub fn name(&self) -> &str {
        match self {
            Self::Pair(design) => &design.name,
            Self::Tool(tool) => &tool.name,
        }
    }

    /// What it is measured in.
    pub fn units(&self) -> Units {
        match self {
            Self::Pair(design) => design.units,
            Self::Tool(tool) => tool.units,
        }
    }

    /// What it is forged from.
    pub fn bar(&self) -> &Bar {
        match self {
            Self::Pair(design) => &design.bar,
            Self::Tool(tool) => &tool.bar,
        }
    }

    /// Its balance.
    pub fn balance(&self) -> Balance {
        match self {
            Self::Pair(design) => balance_of(design, &resolve(design)),
            Self::Tool(tool) => ToolAnswers::to(tool).balance,
        }
    }

    /// The lengths that so many of it are forged from.
    pub fn order(&self, balance: &Balance, count: u32) -> Order {
        match self {
            Self::Pair(design) => order_of(design, balance, count),
            Self::Tool(tool) => order_of_tool(tool, balance, count),
        }
    }
}

/// Every design or tool in a file, and of a family that was read whole every size.
///
/// # Errors
/// What of a family could not be read.
pub fn designs(filed: Filed) -> Result<Vec<Made>, String> {
    if let Some(first) = filed.lost().first() {
        let mend = "mend the file first, reinwright findings tells all that is wrong";
        return Err(format!("{first}: {mend}"));
    }
    Ok(match filed {
        Filed::Design(design) => vec![Made::Pair(design)],
        Filed::Tool(tool) => vec![Made::Tool(tool)],
        Filed::Family(family, _) => sizes(&family).into_iter().map(pair).collect(),
        Filed::Tools(family, _) => sizes(&family).into_iter().map(tool).collect(),
    })
}

/// A pair to cut bar for.
pub fn pair(design: Document) -> Made {
    Made::Pair(Box::new(design))
}

/// A tool to cut bar for.
pub fn tool(tool: Tool) -> Made {
    Made::Tool(Box::new(tool))
}

/// Every size of a family, named after it.
pub fn sizes<D: InSizes>(family: &Family<D>) -> Vec<D> {
    let made = |size: &Size<D::Measure>| {
        let mut made = family.made(size).document;
        made.rename(format!("{}, {}", family.name, size.label()));
        made
    };
    family.sizes.iter().map(made).collect()
}

/// What becomes of bars that none of the orders is forged from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Strange {
    /// They are refused.
    Refused,
    /// They are taken, of mild steel: a rack holds more than what is cut today.
    Taken,
}

/// The bars that a text says, each with what it is of.
///
/// # Errors
/// One sentence that says what is wrong and how to mend it.
pub fn said(text: &str, orders: &[Order], strange: Strange) -> Result<Vec<Lying>, String> {
    let all = parse_bars(text).map_err(|error| error.to_string())?;
    let lying = |given: &GivenBars| {
        let length = given.length;
        if !(length.mm() > 0.0 && length.mm() <= Rack::LONGEST_MM) {
            let mend = "write a length such as 3 x 3 m";
            return Err(format!("{length} is no length of a bar: {mend}"));
        }
        Ok(Lying {
            bar: bar_of(given.stock, orders, strange)?,
            length,
            count: given.count,
        })
    };
    all.iter().map(lying).collect()
}

/// The bar of the orders that is meant: the one of that stock, or the only one there is.
fn bar_of(stock: Option<Stock>, orders: &[Order], strange: Strange) -> Result<Bar, String> {
    let meant = |order: &&Order| stock.is_none_or(|stock| same_stock(&order.bar.stock, &stock));
    let bars: Vec<Bar> = orders.iter().filter(meant).map(|order| order.bar).collect();
    match (&bars[..], stock, strange) {
        ([bar], ..) => Ok(*bar),
        ([], Some(stock), Strange::Taken) => Ok(Bar {
            stock,
            steel: Steel::Mild,
        }),
        ([], None, Strange::Taken) => {
            Err("say of which bar, such as 3 x 3 m of 16 mm square".to_owned())
        }
        ([], _, Strange::Refused) => {
            Err("none of the designs is forged from such a bar: leave it out".to_owned())
        }
        ([first, ..], None, _) => Err(format!(
            "the designs are forged from several bars: say of which, such as 3 x 3 m of {}",
            first.stock.words()
        )),
        ([first, ..], Some(_), _) => Err(format!(
            "the designs take {} of several steels: write them into the rack of a shop instead",
            first.stock.words()
        )),
    }
}
