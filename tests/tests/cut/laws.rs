//! Small cases against trying everything, and what always holds.

use proptest::prelude::*;
use reinwright_core::shop::cut::{Source, StockPlan};

use super::*;

/// What counts, the least first: what is bought, bars, and what is kept of them, in whole
/// millimetres.
type Counts = (i64, usize, i64);

/// Everything that can be tried: each piece into each bar that is begun, or into one that is not.
struct Everything<'a> {
    pieces: Vec<i64>,
    rack: &'a [(i64, u32)],
    sold: &'a [(i64, i64)],
    kerf: i64,
    crop: i64,
    least: i64,
    /// Length, price, what the pieces are long, and how many they are.
    bars: Vec<(i64, i64, i64, i64)>,
    used: Vec<u32>,
    best: Option<Counts>,
}

impl Everything<'_> {
    /// Whether a piece more fits: the last one needs no cut where the bar ends.
    fn fits(&self, bar: (i64, i64, i64, i64), piece: i64) -> bool {
        bar.2 + piece + bar.3 * self.kerf + self.crop <= bar.0
    }

    fn kept(&self, bar: (i64, i64, i64, i64)) -> i64 {
        let left = bar.0 - self.crop - bar.2 - bar.3 * self.kerf;
        if left > 0 && left >= self.least {
            left
        } else {
            0
        }
    }

    fn go(&mut self, at: usize) {
        let Some(&piece) = self.pieces.get(at) else {
            return self.arrive();
        };
        for bar in 0..self.bars.len() {
            if self.fits(self.bars[bar], piece) {
                let before = self.bars[bar];
                self.bars[bar] = (before.0, before.1, before.2 + piece, before.3 + 1);
                self.go(at + 1);
                self.bars[bar] = before;
            }
        }
        for kind in 0..self.rack.len() {
            if self.used[kind] < self.rack[kind].1 {
                self.used[kind] += 1;
                self.begin((self.rack[kind].0, 0, 0, 0), at, piece);
                self.used[kind] -= 1;
            }
        }
        for kind in 0..self.sold.len() {
            self.begin((self.sold[kind].0, self.sold[kind].1, 0, 0), at, piece);
        }
    }

    fn begin(&mut self, bar: (i64, i64, i64, i64), at: usize, piece: i64) {
        if self.fits(bar, piece) {
            self.bars.push((bar.0, bar.1, piece, 1));
            self.go(at + 1);
            self.bars.pop();
        }
    }

    fn arrive(&mut self) {
        let bars = self.bars.iter();
        let lost: i64 = bars.clone().map(|bar| bar.0 - self.kept(*bar)).sum();
        let price = bars.map(|bar| bar.1).sum();
        let counts = (price, self.bars.len(), lost);
        self.best = Some(self.best.map_or(counts, |best| best.min(counts)));
    }
}

#[allow(
    clippy::cast_possible_truncation,
    reason = "whole millimetres and hundredths of a small case"
)]
fn counts(stock: &StockPlan) -> Counts {
    let lost = stock.sum(|bar| bar.length_mm) - stock.sum(|bar| bar.kept_mm);
    let price = stock.sum(|bar| bar.price.unwrap_or(0.0));
    (price.round() as i64, stock.bars.len(), lost.round() as i64)
}

fn whole(length: i64) -> f64 {
    f64::from(i32::try_from(length).unwrap())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    /// Up to seven pieces out of bars on the rack and two lengths to buy: no plan buys less, has
    /// fewer bars, or keeps more.
    #[test]
    fn nothing_that_can_be_tried_is_better(
        pieces in prop::collection::vec(120_i64..700, 1..7),
        rack_bars in prop::collection::vec((300_i64..1000, 1_u32..3), 0..3),
        sold in prop::collection::vec((700_i64..1500, 1_i64..40), 1..3),
        kerf in 0_i64..6,
        crop in 0_i64..15,
        least in 0_i64..300,
    ) {
        let sold: Vec<(i64, i64)> = sold.iter().map(|(length, price)| (length + 20, *price)).collect();
        let mut all = Everything {
            pieces: pieces.clone(),
            rack: &rack_bars,
            sold: &sold,
            kerf,
            crop,
            least,
            bars: Vec::new(),
            used: vec![0; rack_bars.len()],
            best: None,
        };
        all.go(0);
        let lying: Vec<(f64, u32)> = rack_bars.iter().map(|(length, count)| (whole(*length), *count)).collect();
        let prices: Vec<(f64, Option<f64>)> =
            sold.iter().map(|(length, price)| (whole(*length), Some(whole(*price)))).collect();
        let rack = Rack {
            kerf: Some(mm(whole(kerf))),
            crop: Some(mm(whole(crop))),
            least_offcut: Some(mm(whole(least))),
            ..rack(&lying, &prices)
        };
        let wanted: Vec<(f64, u32)> = pieces.iter().map(|length| (whole(*length), 1)).collect();
        let plan = planned(&order(&wanted), &rack);
        let stock = &plan.stocks[0];
        prop_assert!(stock.proven_least && stock.proven_offcut);
        prop_assert_eq!(Some(counts(stock)), all.best);
    }

    /// Whatever is asked, every piece is on one bar, no bar is longer than it is, and no bar of the
    /// rack is cut twice.
    #[test]
    fn every_piece_has_its_place(
        pieces in prop::collection::vec((20_f64..900.0, 1_u32..8), 1..9),
        lying in prop::collection::vec((300_f64..4000.0, 1_u32..4), 0..5),
        kerf in 0_f64..5.0,
    ) {
        let rack = Rack { kerf: Some(mm(kerf)), ..rack(&lying, &[(1000.0, None)]) };
        let plan = planned(&order(&pieces), &rack);
        let stock = &plan.stocks[0];
        for (length, count) in &pieces {
            let alike = pieces.iter().filter(|(other, _)| (other - length).abs() < 1e-9);
            let wanted: u32 = alike.map(|(_, count)| count).sum();
            let cut = stock.bars.iter().flat_map(|bar| &bar.pieces);
            let cut = cut.filter(|piece| (piece.length_mm - length).abs() < 1e-9).count();
            prop_assert_eq!(cut, wanted as usize, "{} of {}", count, length);
        }
        for bar in &stock.bars {
            let cuts = stock.kerf_mm * f64::from(u32::try_from(bar.pieces.len() - 1).unwrap());
            prop_assert!(bar.pieces_mm() + cuts <= bar.length_mm + 1e-3, "{:?}", bar);
        }
        for (length, _) in &lying {
            let there = lying.iter().filter(|(other, _)| (other - length).abs() < 1e-9);
            let there: u32 = there.map(|(_, count)| count).sum();
            let taken = stock.bars.iter().filter(|bar| {
                bar.from == Source::Rack && (bar.length_mm - length).abs() < 1e-3
            });
            prop_assert!(taken.count() <= there as usize);
        }
        prop_assert!(stock.lower_bound <= stock.bars.len());
        prop_assert_eq!(&plan, &planned(&order(&pieces), &rack), "the same again");
    }
}
