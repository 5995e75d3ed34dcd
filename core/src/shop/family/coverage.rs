//! What a set can hold: the ranges of its sizes side by side, with gaps and overlaps.

use super::{SizeAnswer, shape_name};
use crate::asked::Units;
use crate::units::{Length, MM_PER_INCH};

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

/// Work between two ranges that nothing in the set holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gap {
    /// The shape of the work.
    pub shape: &'static str,
    /// Just over this, mm.
    pub from_mm: f64,
    /// Just under this, mm.
    pub to_mm: f64,
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
    /// The ranges, from the least work up.
    pub spans: Vec<Span>,
    /// What is missing between them.
    pub gaps: Vec<Gap>,
    /// What is there twice.
    pub overlaps: Vec<Overlap>,
}

/// What the set holds, shape by shape in the order in which the sizes name them. A size that
/// holds nothing is left out; its findings say why.
pub fn coverage(answers: &[SizeAnswer]) -> Vec<Coverage> {
    let mut all: Vec<Coverage> = Vec::new();
    for (size, answer) in answers.iter().enumerate() {
        let Ok(range) = &answer.fit.range else {
            continue;
        };
        let shape = shape_name(&answer.document.work);
        let span = Span {
            size,
            from_mm: range.least.size_mm,
            to_mm: range.most.size_mm,
        };
        match all.iter_mut().find(|coverage| coverage.shape == shape) {
            Some(coverage) => coverage.spans.push(span),
            None => all.push(Coverage::of(shape, span)),
        }
    }
    all.iter_mut().for_each(Coverage::compare);
    all
}

impl Coverage {
    fn of(shape: &'static str, span: Span) -> Self {
        Self {
            shape,
            spans: vec![span],
            gaps: Vec::new(),
            overlaps: Vec::new(),
        }
    }

    /// Walks up the ranges, with the one that reaches highest so far in hand.
    fn compare(&mut self) {
        let ends = |span: &Span| (span.from_mm, span.to_mm);
        self.spans.sort_by(|a, b| {
            let ((a, up_to), (b, or_to)) = (ends(a), ends(b));
            a.total_cmp(&b).then(up_to.total_cmp(&or_to))
        });
        let mut highest = self.spans[0];
        for &next in &self.spans[1..] {
            if next.from_mm > highest.to_mm {
                self.gaps.push(Gap {
                    shape: self.shape,
                    from_mm: highest.to_mm,
                    to_mm: next.from_mm,
                });
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
    }
}

impl Gap {
    /// `nothing here holds 7/16 in round`: by the sizes that bars come in, every 1/16 in or
    /// 1 mm, or by its ends when no such size lies in it.
    pub fn sentence(&self, units: Units) -> String {
        let show = units.show();
        let text = |mm: f64| show.text(mm);
        let what = match self.bar_sizes_mm(units).as_slice() {
            [] => format!(
                "anything over {} and under {}",
                text(self.from_mm),
                text(self.to_mm)
            ),
            [one] => text(*one),
            [one, other] => format!("{} and {}", text(*one), text(*other)),
            [first, .., last] => format!("{} to {}", text(*first), text(*last)),
        };
        format!("nothing here holds {what} {}", self.shape)
    }

    /// The sizes that bars come in, every 1/16 in or 1 mm, that lie in the gap, mm.
    pub fn bar_sizes_mm(&self, units: Units) -> Vec<f64> {
        let step = match units {
            Units::Inch => MM_PER_INCH / 16.0,
            Units::Millimetre => 1.0,
        };
        let mut sizes = Vec::new();
        let mut count = (self.from_mm / step).floor() + 1.0;
        while count * step < self.to_mm {
            sizes.push(count * step);
            count += 1.0;
        }
        sizes
    }

    /// The size of work to fill the gap with: near its middle, and as coarse as may be. A bar size
    /// where one lies in the gap, else a multiple of 1/32 or 1/64 in, or of 0.5 or 0.1 mm. In a
    /// gap that is narrower still the nearest of these must do: a pair for it reaches into the gap.
    pub fn filling(&self, units: Units) -> Length {
        let middle = f64::midpoint(self.from_mm, self.to_mm);
        let inside = |mm: &f64| *mm > self.from_mm && *mm < self.to_mm;
        let near = |step: f64| (middle / step).round() * step;
        let off = |mm: &f64| (mm - middle).abs();
        let bars = self.bar_sizes_mm(units).into_iter();
        let [coarse, fine] = match units {
            Units::Inch => [MM_PER_INCH / 32.0, MM_PER_INCH / 64.0],
            Units::Millimetre => [0.5, 0.1],
        };
        let size = bars.min_by(|a, b| off(a).total_cmp(&off(b)));
        let size = size.or_else(|| Some(near(coarse)).filter(inside));
        Length::from_mm(size.unwrap_or_else(|| near(fine)), units.unit())
    }
}
