//! Stretch after stretch along the bar, and its marks as they are set off with a rule.
//!
//! Each length that is cut off the bar is marked from its own ends: what is marked from the left
//! end is rounded from there, what is marked from the right end from there, so that two halves
//! that are alike are marked alike. What rounding takes or gives lies in the middle of a blank for
//! two, at the ends of the reins, or behind a piece alone.

use std::borrow::Cow;

use super::{Mark, Stretch};
use crate::finding::Part;
use crate::units::MM_PER_INCH;

/// What a rule shows: 1/16 in, and 0.5 mm.
const RULES_MM: [f64; 2] = [MM_PER_INCH / 16.0, 0.5];

/// From where a mark is set off.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Side {
    /// From the bar's own end.
    Bar,
    /// From the left end of the length it is on.
    Left,
    /// Between the two pieces of a blank.
    Middle,
    /// From the right end of the length it is on.
    Right,
    /// It is the right end.
    End,
}

/// A length that is cut off the bar in one.
struct Cut {
    from_mm: f64,
    to_mm: f64,
    /// Whether it is two pieces that are alike.
    even: bool,
}

/// A mark, exact.
struct Exact {
    at_mm: f64,
    what: Cow<'static, str>,
    side: Side,
    /// The length it is on, by its place.
    cut: usize,
}

#[derive(Default)]
pub(super) struct Rule {
    at: f64,
    cuts: Vec<Cut>,
    stretches: Vec<Stretch>,
    marks: Vec<Exact>,
}

impl Rule {
    fn add(&mut self, length: f64, part: Option<Part>) {
        let from_mm = self.at;
        self.at += length;
        self.stretches.push(Stretch {
            from_mm,
            to_mm: self.at,
            part,
        });
    }

    pub(super) fn take(&mut self, length: f64, part: Part) {
        self.add(length, Some(part));
    }

    pub(super) fn lose(&mut self, length: f64) {
        self.add(length, None);
    }

    /// Begins a length that is cut off in one; `even` where it is two pieces that are alike.
    pub(super) fn begin(&mut self, even: bool) {
        self.cuts.push(Cut {
            from_mm: self.at,
            to_mm: self.at,
            even,
        });
    }

    /// Ends it, before the kerf.
    pub(super) fn end(&mut self) {
        if let Some(cut) = self.cuts.last_mut() {
            cut.to_mm = self.at;
        }
    }

    pub(super) fn mark(&mut self, what: impl Into<Cow<'static, str>>, side: Side) {
        self.mark_at(self.at, what.into(), side);
    }

    fn mark_at(&mut self, at_mm: f64, what: Cow<'static, str>, side: Side) {
        let cut = self.cuts.len().saturating_sub(1);
        self.marks.push(Exact {
            at_mm,
            what,
            side,
            cut,
        });
    }

    /// A cut, marked along its middle.
    pub(super) fn cut(&mut self, kerf: f64, what: &'static str, side: Side) {
        self.mark_at(self.at + kerf / 2.0, what.into(), side);
        if kerf > 0.0 {
            self.lose(kerf);
        }
    }

    /// The stretches, and the marks set off on both rules.
    pub(super) fn set_off(self) -> (Vec<Stretch>, Vec<Mark>) {
        let placed = RULES_MM.map(|step| self.placed(step));
        let marks = self.marks.iter().map(|mark| Mark {
            at_mm: mark.at_mm,
            set_mm: placed.each_ref().map(|ends| mark.on(&self.cuts, ends)),
            what: mark.what.clone().into_owned(),
        });
        let marks = marks.collect();
        (self.stretches, marks)
    }

    /// Where each length begins and ends on a rule, and the rule.
    fn placed(&self, step: f64) -> Placed {
        let mut at = 0.0;
        let mut gone = 0.0;
        let ends = self.cuts.iter().map(|cut| {
            // What is lost before it: the crop, or the kerf of the cut before.
            let from = at + up(cut.from_mm - gone, step);
            // The middle of two that are alike is to lie on the rule too.
            let whole = if cut.even { 2.0 * step } else { step };
            at = from + up(cut.to_mm - cut.from_mm, whole);
            gone = cut.to_mm;
            (from, at)
        });
        Placed {
            ends: ends.collect(),
            step,
        }
    }
}

/// Where lengths begin and end on a rule, mm.
struct Placed {
    ends: Vec<(f64, f64)>,
    step: f64,
}

impl Exact {
    /// Where it is set off, mm from the bar's end.
    fn on(&self, cuts: &[Cut], placed: &Placed) -> f64 {
        let (Some(cut), Some(&(from, to))) = (cuts.get(self.cut), placed.ends.get(self.cut)) else {
            return up(self.at_mm, placed.step);
        };
        match self.side {
            Side::Bar => up(self.at_mm, placed.step),
            Side::Left => from + nearest(self.at_mm - cut.from_mm, placed.step),
            Side::Middle if cut.even => f64::midpoint(from, to),
            Side::Middle => from + nearest(self.at_mm - cut.from_mm, placed.step),
            Side::Right => to - nearest(cut.to_mm - self.at_mm, placed.step),
            Side::End => to,
        }
    }
}

fn nearest(mm: f64, step: f64) -> f64 {
    (mm / step).round() * step
}

/// Up to the next whole step; a hair past one counts as it.
fn up(mm: f64, step: f64) -> f64 {
    const HAIR: f64 = 1e-6;
    (mm / step - HAIR).ceil() * step
}
