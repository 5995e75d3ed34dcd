//! What is to be cut, and out of which bars, as a smith says it.

use reinwright_core::asked::{Bar, Stock};
use reinwright_core::shop::cut::{GivenBars, Lying, Order, Rack, parse_bars};
use reinwright_core::shop::family::{Family, same_stock};
use reinwright_core::shop::shelf::Filed;
use reinwright_core::steel::Steel;
use reinwright_core::tongs::document::Document;

/// Every design in a file, and of a family that was read whole every size.
///
/// # Errors
/// What of a family could not be read.
pub fn designs(filed: Filed) -> Result<Vec<Document>, String> {
    match filed {
        Filed::Design(design) => Ok(vec![*design]),
        Filed::Family(_, lost) if !lost.is_empty() => {
            let mend = "mend the file first, reinwright findings tells all that is wrong";
            Err(format!("{}: {mend}", lost[0]))
        }
        Filed::Family(family, _) => Ok(sizes(&family)),
    }
}

/// Every size of a family, named after it.
pub fn sizes(family: &Family) -> Vec<Document> {
    let made = |size| {
        let mut made = family.made(size).document;
        made.name = format!("{} {}", family.name, size.label());
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
