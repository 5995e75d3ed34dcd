//! The cut list: against trying everything, against published instances, by hand, and from the
//! command line.
#![allow(clippy::unwrap_used, reason = "a test may stop at what it cannot read")]

mod by_hand;
mod command_line;
mod laws;
mod published;
mod sizes;

use std::ops::ControlFlow;

use reinwright_core::asked::{Bar, Units};
use reinwright_core::shop::cut::{CutError, CutPlan, Lying, Order, Rack, Sold, Wanted, plan};
use reinwright_tests::pairs::{bar, mm};

/// The bar of all orders here.
fn square() -> Bar {
    bar("16 mm square")
}

/// So many pieces of such lengths, mm, without cuts and crop.
fn order(pieces: &[(f64, u32)]) -> Order {
    let wanted = |(length_mm, count): &(f64, u32)| Wanted {
        what: format!("piece of {length_mm}"),
        length_mm: *length_mm,
        count: *count,
    };
    Order {
        bar: square(),
        pieces: pieces.iter().map(wanted).collect(),
        kerf_mm: 0.0,
        crop_mm: 0.0,
    }
}

/// Bars on the rack, by length and count, and lengths that can be bought with their price.
fn rack(lying: &[(f64, u32)], sold: &[(f64, Option<f64>)]) -> Rack {
    let bar = square();
    Rack {
        bars: lying
            .iter()
            .map(|(length, count)| Lying {
                bar,
                length: mm(*length),
                count: *count,
            })
            .collect(),
        sold: sold
            .iter()
            .map(|(length, price)| Sold {
                bar,
                length: mm(*length),
                price: *price,
            })
            .collect(),
        ..Rack::default()
    }
}

fn planned(order: &Order, rack: &Rack) -> CutPlan {
    tried(order, rack).unwrap()
}

fn tried(order: &Order, rack: &Rack) -> Result<CutPlan, CutError> {
    let go_on = &mut |_| ControlFlow::Continue(());
    let plan = plan(std::slice::from_ref(order), rack, Units::Millimetre, go_on)?;
    Ok(plan.expect("nobody stopped it"))
}
