//! Lists of a shop's size are proven; where one is not, the bound says how near it is.

use super::*;

/// So many pieces of so many lengths, out of bars of a length with cuts of 1.5 mm.
fn list(pieces: u32, kinds: u32, bar_mm: f64) -> (usize, u64, bool) {
    let piece = |kind: u32| {
        let length = 320.0 + f64::from(kind * 7919 % 613);
        (length, pieces / kinds)
    };
    let mut order = order(&(0..kinds).map(piece).collect::<Vec<_>>());
    order.kerf_mm = 1.5;
    let plan = planned(&order, &rack(&[(bar_mm, 8)], &[(bar_mm, Some(18.5))]));
    let stock = &plan.stocks[0];
    (
        stock.bars.len(),
        stock.lower_bound as u64,
        stock.proven_least,
    )
}

/// What is shown as bound never lies above what was found, and where it meets it the list is proven.
#[track_caller]
fn check(pieces: u32, kinds: u32, bar_mm: f64) -> bool {
    let (bars, bound, proven) = list(pieces, kinds, bar_mm);
    let name = format!("{pieces} pieces of {kinds} lengths: {bars} bars, at least {bound}");
    assert!(bound <= bars as u64, "{name}");
    assert_eq!(proven, bound == bars as u64, "{name}");
    proven
}

/// Eight bars lie there, and what is wanted besides is bought: as many bars as length alone wants are
/// the fewest, whatever they are reckoned at.
#[test]
fn lists_of_a_shop_are_proven() {
    for (pieces, kinds, bar) in [
        (60, 4, 3650.0),
        (60, 20, 3650.0),
        (60, 60, 3650.0),
        (1000, 10, 6000.0),
        (1000, 50, 6000.0),
    ] {
        assert!(check(pieces, kinds, bar), "{pieces} of {kinds}");
    }
}

#[test]
fn a_list_of_many_lengths_is_told_with_its_bound() {
    check(1000, 500, 6000.0);
}
