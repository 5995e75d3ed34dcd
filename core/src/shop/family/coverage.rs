//! What a set can hold: the ranges of its sizes side by side, with gaps and overlaps.
//!
//! A gap is stock that can be bought and that no size holds. Between two ranges where no stock is
//! sold nothing is missing: there is nothing to put into the tongs.

use super::{SizeAnswer, shape_name};
use crate::asked::{StockList, StockShape, StockSizes, Units};
use crate::units::Length;

/// The sizes of work that one size of the family holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    /// Which size, by its place.
    pub size: usize,
    /// Least work held, mm.
    pub from_mm: f64,
    /// Most, mm.
    pub to_mm: f64,
}

/// Stock between two ranges that nothing in the set holds.
#[derive(Debug, Clone, PartialEq)]
pub struct Gap {
    /// The shape of the work.
    pub shape: &'static str,
    /// Just over this, mm.
    pub from_mm: f64,
    /// Just under this, mm.
    pub to_mm: f64,
    /// The stock sizes that lie in it, from the least up; never none.
    pub stock: Vec<Length>,
}

/// Work that two neighbours both hold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Overlap {
    /// The two sizes, by their places.
    pub sizes: [usize; 2],
    /// From, mm.
    pub from_mm: f64,
    /// To, mm.
    pub to_mm: f64,
}

/// What the set holds of one shape of work.
#[derive(Debug, Clone, PartialEq)]
pub struct Coverage {
    /// The shape, and which way it lies.
    pub shape: &'static str,
    /// The stock of this shape that can be bought from the least to the most that is held.
    pub stock: Vec<Length>,
    /// The ranges, from the least work up.
    pub spans: Vec<Span>,
    /// What is missing between them.
    pub gaps: Vec<Gap>,
    /// What is there twice.
    pub overlaps: Vec<Overlap>,
}

/// What the set holds, shape by shape in the order in which the sizes name them, and what it does
/// not hold of the stock that can be bought in these units. A size that holds nothing is left out;
/// its findings say why.
pub fn coverage(answers: &[SizeAnswer], units: Units, stock: &StockSizes) -> Vec<Coverage> {
    let mut all: Vec<(StockList, Coverage)> = Vec::new();
    for (size, answer) in answers.iter().enumerate() {
        let Ok(range) = &answer.fit.range else {
            continue;
        };
        let work = &answer.document.work;
        let shape = shape_name(work);
        let span = Span {
            size,
            from_mm: range.least.size_mm,
            to_mm: range.most.size_mm,
        };
        match all.iter_mut().find(|(_, coverage)| coverage.shape == shape) {
            Some((_, coverage)) => coverage.spans.push(span),
            None => {
                let list = StockList {
                    units,
                    shape: StockShape::of(work),
                };
                all.push((list, Coverage::of(shape, span)));
            }
        }
    }
    let compared = |(list, mut coverage): (StockList, Coverage)| {
        coverage.compare(&|from, to| stock.between(list, from, to));
        coverage
    };
    all.into_iter().map(compared).collect()
}

/// The stock sizes over one size and under another, mm.
type Sold<'a> = &'a dyn Fn(f64, f64) -> Vec<Length>;

impl Coverage {
    fn of(shape: &'static str, span: Span) -> Self {
        Self {
            shape,
            stock: Vec::new(),
            spans: vec![span],
            gaps: Vec::new(),
            overlaps: Vec::new(),
        }
    }

    /// Walks up the ranges, with the one that reaches highest so far in hand.
    fn compare(&mut self, sold: Sold<'_>) {
        let ends = |span: &Span| (span.from_mm, span.to_mm);
        self.spans.sort_by(|a, b| {
            let ((a, up_to), (b, or_to)) = (ends(a), ends(b));
            a.total_cmp(&b).then(up_to.total_cmp(&or_to))
        });
        let mut highest = self.spans[0];
        for &next in &self.spans[1..] {
            if next.from_mm > highest.to_mm {
                self.gaps
                    .extend(self.gap((highest.to_mm, next.from_mm), sold));
            } else {
                self.overlaps.push(Overlap {
                    sizes: [highest.size, next.size],
                    from_mm: next.from_mm,
                    to_mm: highest.to_mm.min(next.to_mm),
                });
            }
            if next.to_mm > highest.to_mm {
                highest = next;
            }
        }
        let (least, most) = (self.spans[0].from_mm, highest.to_mm);
        self.stock = sold(least - SAME_STOCK, most + SAME_STOCK);
    }

    fn gap(&self, (from_mm, to_mm): (f64, f64), sold: Sold<'_>) -> Option<Gap> {
        let stock = sold(from_mm + SAME_STOCK, to_mm - SAME_STOCK);
        (!stock.is_empty()).then_some(Gap {
            shape: self.shape,
            from_mm,
            to_mm,
            stock,
        })
    }

    /// What can be said where there is no gap: `all 7 stock sizes from 1/8 in to 3/4 in flat are
    /// held`. `None` where there are gaps, which say more.
    pub fn all_held(&self, units: Units) -> Option<String> {
        let shape = self.shape;
        if !self.gaps.is_empty() {
            return None;
        }
        Some(match self.stock.as_slice() {
            [] => {
                let ends = self.spans.iter().map(|span| span.from_mm);
                let from = units.show().text(ends.fold(f64::MAX, f64::min));
                let ends = self.spans.iter().map(|span| span.to_mm);
                let to = units.show().text(ends.fold(0.0, f64::max));
                format!("no {shape} is sold between {from} and {to}")
            }
            [one] => format!("{one} {shape} is held"),
            [first, .., last] => {
                let count = self.stock.len();
                format!("all {count} stock sizes from {first} to {last} {shape} are held")
            }
        })
    }
}

/// Stock so near to the end of a range is held, mm: bar is rolled to 0.4 mm at the best (EN 10059,
/// EN 10060).
pub const SAME_STOCK: f64 = 0.02;

impl Gap {
    /// `nothing here holds 7/16 in or 1/2 in round`: each stock size while they are few.
    pub fn sentence(&self) -> String {
        /// More than these are told by the first and the last.
        const FEW: usize = 4;
        let what = match self.stock.as_slice() {
            [first, .., last] if self.stock.len() > FEW => {
                format!("the {} stock sizes {first} to {last}", self.stock.len())
            }
            sizes => listed(sizes),
        };
        format!("nothing here holds {what} {}", self.shape)
    }

    /// The stock size to fill the gap with: the nearest to its middle, of two as near the smaller.
    pub fn filler(&self) -> Length {
        let middle = f64::midpoint(self.from_mm, self.to_mm);
        let off = |size: &&Length| (size.mm() - middle).abs();
        let nearest = self.stock.iter().min_by(|a, b| off(a).total_cmp(&off(b)));
        *nearest.expect("a gap holds stock, else it is none")
    }
}

/// `1/4 in, 5/16 in or 3/8 in`.
fn listed(sizes: &[Length]) -> String {
    let texts: Vec<String> = sizes.iter().map(ToString::to_string).collect();
    match texts.as_slice() {
        [rest @ .., last] if !rest.is_empty() => format!("{} or {last}", rest.join(", ")),
        _ => texts.concat(),
    }
}
