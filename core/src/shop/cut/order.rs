//! The pieces of bar that pairs are forged from.

use crate::asked::{Allowances, Bar, Layout, Units};
use crate::forge::balance::{Balance, Loss};
use crate::shop::family::same_bar;
use crate::tongs::document::Document;
use crate::tool::Tool;
use crate::units::MM_PER_SIXTEENTH;

/// A length of bar that is wanted.
#[derive(Debug, Clone, PartialEq)]
pub struct Wanted {
    /// What it becomes.
    pub what: String,
    /// How long it is cut, mm.
    pub length_mm: f64,
    /// How many of it.
    pub count: u32,
}

/// What is wanted of one bar.
#[derive(Debug, Clone, PartialEq)]
pub struct Order {
    /// The bar.
    pub bar: Bar,
    /// The lengths.
    pub pieces: Vec<Wanted>,
    /// A cut, mm, as the designs have it: the widest.
    pub kerf_mm: f64,
    /// What is cut off each bar's ragged end, mm, as the designs have it: the most.
    pub crop_mm: f64,
}

/// The lengths that so many pairs of a design are forged from, each rounded up to what a rule shows,
/// as the balance says them: a blank for both halves, or each half by itself. The crop is not in
/// them: a bar is cropped once, however many lengths come out of it.
pub fn order_of(design: &Document, balance: &Balance, pairs: u32) -> Order {
    let Allowances { kerf, crop, .. } = design.allowances;
    let piece = |at: usize| {
        let piece = &balance.pieces[at];
        piece.bar_length_mm - piece.allowance(Loss::Kerf)
    };
    let ends = [0, balance.pieces.len() - 1].map(piece);
    let wanted = |half: &str, mm: f64, even, count| Wanted {
        what: format!("{}, {half}", design.name),
        length_mm: up(mm, design.units, even),
        count,
    };
    let alike = design.second_jaw.is_none();
    let pieces = match design.layout {
        Layout::BothOnOneBar => {
            let both = ends[0] + ends[1] + kerf.mm();
            vec![wanted("both halves", both, alike, pairs)]
        }
        Layout::Single { .. } if alike => {
            vec![wanted("half", ends[0], false, pairs.saturating_mul(2))]
        }
        Layout::Single { .. } => vec![
            wanted("half A", ends[0], false, pairs),
            wanted("half B", ends[1], false, pairs),
        ],
    };
    Order {
        bar: design.bar,
        pieces,
        kerf_mm: kerf.mm(),
        crop_mm: crop.mm(),
    }
}

/// The lengths that so many of a tool are forged from.
pub fn order_of_tool(tool: &Tool, balance: &Balance, count: u32) -> Order {
    let Allowances { kerf, crop, .. } = tool.allowances;
    let piece = &balance.pieces[0];
    let length = piece.bar_length_mm - piece.allowance(Loss::Kerf);
    Order {
        bar: tool.bar,
        pieces: vec![Wanted {
            what: tool.name.clone(),
            length_mm: up(length, tool.units, false),
            count,
        }],
        kerf_mm: kerf.mm(),
        crop_mm: crop.mm(),
    }
}

/// Up to 1/16 in or 0.5 mm, or to twice that where the middle is to lie on the rule too; a hair
/// past counts as on it.
fn up(mm: f64, units: Units, even: bool) -> f64 {
    const HAIR: f64 = 1e-6;
    let rule = match units {
        Units::Inch => MM_PER_SIXTEENTH,
        Units::Millimetre => 0.5,
    };
    let step = if even { 2.0 * rule } else { rule };
    (mm / step - HAIR).ceil() * step
}

/// The orders of several designs, one for each bar, in the order in which the bars come.
pub fn orders(all: impl IntoIterator<Item = Order>) -> Vec<Order> {
    let mut orders: Vec<Order> = Vec::new();
    for order in all {
        match orders
            .iter_mut()
            .find(|known| same_bar(&known.bar, &order.bar))
        {
            Some(known) => {
                known.pieces.extend(order.pieces);
                known.kerf_mm = known.kerf_mm.max(order.kerf_mm);
                known.crop_mm = known.crop_mm.max(order.crop_mm);
            }
            None => orders.push(order),
        }
    }
    orders
}
