//! From a family's size to a plain document.

use super::edit::is_of_bar;
use super::file::short;
use super::{Family, InSizes, Measure, Rounding, Rule, Size};
use crate::asked::{Field, Range, Value, ValueError};
use crate::finding::{Finding, GEOMETRY, Held, Kind, Part, Severity};
use crate::tongs::document::Document;
use crate::units::{Length, Quantity, Unit};

/// A size as a design of its own.
#[derive(Debug, Clone, PartialEq)]
pub struct Made<D = Document> {
    /// The design; every value in it is inside its limits.
    pub document: D,
    /// What could not be made as the rules or the smith's hand ask.
    pub findings: Vec<Finding>,
}

impl<D: InSizes> Family<D> {
    /// The design of a size: the base with the size's work and bar, its lengths scaled by their
    /// rules, and what is set by hand set last.
    pub fn made(&self, size: &Size<D::Measure>) -> Made<D> {
        let mut document = self.base.clone();
        document.resize(size.work, size.bar.unwrap_or(self.base.bar()));
        document.rename(self.name_of(size));
        let mut findings = self.scale(&mut document);
        findings.extend(set_by_hand(&mut document, size));
        Made { document, findings }
    }

    /// The design of the size at a place; `None` when there is no such size.
    pub fn take_out(&self, index: usize) -> Option<D> {
        self.sizes.get(index).map(|size| self.made(size).document)
    }

    /// Whether a size is the base itself.
    fn is_base(&self, size: &Size<D::Measure>) -> bool {
        let bar = size.bar.is_none_or(|bar| bar == self.base.bar());
        size.name.is_empty() && size.set.is_empty() && size.work == self.base.measure() && bar
    }

    fn name_of(&self, size: &Size<D::Measure>) -> String {
        /// Longest name that a design's file may carry, in characters.
        const LONGEST: usize = 200;
        if self.is_base(size) {
            return self.base.name().to_owned();
        }
        let name = format!("{}, {}", self.name, size.label());
        name.chars().take(LONGEST).collect()
    }

    /// Scales every length by its rule.
    fn scale(&self, document: &mut D) -> Vec<Finding> {
        let ratios = Ratios::new(&self.base, document);
        let mut findings = Vec::new();
        if !ratios.is_one() {
            document.ask(&mut |field| {
                let given = self.base.leads(&field.path) || is_of_bar(&field.path);
                let ratio = if given {
                    1.0
                } else {
                    ratios.of(self.rule_of(field))
                };
                let scaled = scaled_field(field, ratio, self.rounding)?;
                findings.extend(past(field, scaled));
                Some(Value::Length(limited(scaled, field.range)))
            });
            document.settle(self);
        }
        findings
    }

    /// The rule that a field follows here.
    pub(super) fn rule_of(&self, field: &Field) -> Rule {
        let own = self.rules.get(&field.path).copied();
        own.unwrap_or_else(|| field.follows.into())
    }
}

/// How much larger work and bar are than the base's.
struct Ratios {
    work: f64,
    bar: f64,
}

impl Ratios {
    fn new(base: &impl InSizes, document: &impl InSizes) -> Self {
        fn bar(document: &impl InSizes) -> f64 {
            document.bar().stock.equal_square_mm()
        }
        Self {
            work: document.measure().size_mm() / base.measure().size_mm(),
            bar: bar(document) / bar(base),
        }
    }

    #[allow(
        clippy::float_cmp,
        reason = "the same size divided by itself is one exactly"
    )]
    fn is_one(&self) -> bool {
        self.work == 1.0 && self.bar == 1.0
    }

    fn of(&self, rule: Rule) -> f64 {
        match rule {
            Rule::Same => 1.0,
            Rule::WithWork => self.work,
            Rule::WithBar => self.bar,
        }
    }
}

/// A length by its rule, if that changes it.
fn scaled_field(field: &Field, ratio: f64, rounding: Rounding) -> Option<Length> {
    let Value::Length(length) = field.value else {
        return None;
    };
    #[allow(
        clippy::float_cmp,
        reason = "a ratio of exactly one leaves the text as it was typed"
    )]
    let same = ratio == 1.0 || length.mm() == 0.0;
    (!same).then(|| scaled(length, ratio, rounding))
}

fn scaled(length: Length, ratio: f64, rounding: Rounding) -> Length {
    let (mm, unit) = (length.mm() * ratio, length.unit());
    match rounding {
        Rounding::Exact => Length::decimal(mm / unit.mm(), unit),
        Rounding::Measured => measured(mm, unit),
    }
}

/// Rounded to what a smith measures, but never to nothing.
fn measured(mm: f64, unit: Unit) -> Length {
    let rounded = Length::measured(mm, unit);
    if rounded.mm() > 0.0 {
        return rounded;
    }
    match unit {
        Unit::Inch | Unit::Foot => Length::fraction(1, 32, Unit::Inch),
        Unit::Millimetre | Unit::Centimetre => Length::from_mm(0.5, unit),
    }
}

fn limited(length: Length, range: Range) -> Length {
    if range.holds(length.mm()) {
        return length;
    }
    Length::from_mm(length.mm().clamp(range.least, range.most), Unit::Millimetre)
}

fn past(field: &Field, scaled: Length) -> Option<Finding> {
    let range = field.range;
    if range.holds(scaled.mm()) {
        return None;
    }
    let limit = if scaled.mm() > range.most {
        range.most
    } else {
        range.least
    };
    let [least, most] = range.ends_in(scaled.unit());
    Some(Finding {
        kind: Kind::RulePastLimits,
        severity: Severity::Stop,
        part: field.part,
        message: format!(
            "{} comes out at {scaled} by its rule, it may be from {least} to {most}",
            field.label.to_lowercase()
        ),
        held: Some(Held {
            value: scaled.mm(),
            limit,
            of: Quantity::Length,
        }),
        hint: "set it by hand for this size, or give it another rule".to_owned(),
        advises: &[],
        source: GEOMETRY,
    })
}

/// Sets what is set by hand, choices before what hangs on them, and tells what could not be.
fn set_by_hand<D: InSizes>(document: &mut D, size: &Size<D::Measure>) -> Vec<Finding> {
    let mut findings = Vec::new();
    if size.set.is_empty() {
        return findings;
    }
    let unit = document.units().unit();
    let mut left = size.set.clone();
    document.ask(&mut |field| {
        let read = field.read(&left.remove(&field.path)?, unit);
        let unread = |why: ValueError| {
            let message = format!("{} is set by hand: {why}", field.label.to_lowercase());
            let hint = "write it anew, or let it go so that its rule holds again";
            findings.push(by_hand(Kind::SetByHandUnread, field.part, message, hint));
        };
        read.map_err(unread).ok()
    });
    findings.extend(left.iter().map(|(path, text)| {
        let message = format!(
            "{path} is set by hand to {}, and this size has no such value",
            short(text)
        );
        let hint = "let it go, or choose the shape that has it";
        by_hand(Kind::SetByHandUnused, D::WHOLE, message, hint)
    }));
    findings
}

fn by_hand(kind: Kind, part: Part, message: String, hint: &str) -> Finding {
    Finding {
        kind,
        severity: Severity::Mend,
        part,
        message,
        held: None,
        hint: hint.to_owned(),
        advises: &[],
        source: GEOMETRY,
    }
}
