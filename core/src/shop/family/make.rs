//! From a family's size to a plain document.

use super::file::short;
use super::{Family, Rounding, Rule, Size};
use crate::asked::{Field, Range, Value, ValueError};
use crate::finding::{Finding, GEOMETRY, Held, Kind, Part, Severity};
use crate::tongs::document::Document;
use crate::units::{Length, Quantity, Unit};

/// A size as a design of its own.
#[derive(Debug, Clone, PartialEq)]
pub struct Made {
    /// The design; every value in it is inside its limits.
    pub document: Document,
    /// What could not be made as the rules or the smith's hand ask.
    pub findings: Vec<Finding>,
}

impl Family {
    /// The design of a size: the base with the size's work and bar, its lengths scaled by their
    /// rules, and what is set by hand set last.
    pub fn made(&self, size: &Size) -> Made {
        let mut document = self.base.clone();
        document.work = size.work;
        document.bar = size.bar.unwrap_or(self.base.bar);
        document.name = self.name_of(size);
        let mut findings = self.scale(&mut document);
        findings.extend(set_by_hand(&mut document, size));
        Made { document, findings }
    }

    /// The design of the size at a place; `None` when there is no such size.
    pub fn take_out(&self, index: usize) -> Option<Document> {
        self.sizes.get(index).map(|size| self.made(size).document)
    }

    /// Whether a size is the base itself.
    fn is_base(&self, size: &Size) -> bool {
        let bar = size.bar.is_none_or(|bar| bar == self.base.bar);
        size.name.is_empty() && size.set.is_empty() && size.work == self.base.work && bar
    }

    fn name_of(&self, size: &Size) -> String {
        /// Longest name that a design's file may carry, in characters.
        const LONGEST: usize = 200;
        if self.is_base(size) {
            return self.base.name.clone();
        }
        let name = format!("{}, {}", self.name, size.label());
        name.chars().take(LONGEST).collect()
    }

    /// Scales every length by its rule.
    fn scale(&self, document: &mut Document) -> Vec<Finding> {
        let ratios = Ratios::new(&self.base, document);
        let mut findings = Vec::new();
        if !ratios.is_one() {
            document.revise(&mut |field| {
                let ratio = ratios.of(self.rule_of(field));
                let scaled = scaled_field(field, ratio, self.rounding)?;
                findings.extend(past(field, scaled));
                Some(Value::Length(limited(scaled, field.range)))
            });
            self.keep_play(document);
        }
        findings
    }

    /// The rule that a field follows here.
    pub(super) fn rule_of(&self, field: &Field) -> Rule {
        let own = self.rules.get(&field.path).copied();
        own.unwrap_or_else(|| field.follows.into())
    }

    /// Rounded by itself, a hole could come out smaller than its rivet: unless it is to be the
    /// same in all sizes, it keeps the play that the base gives it.
    fn keep_play(&self, document: &mut Document) {
        let (base, rivet) = (&self.base.rivet, &mut document.rivet);
        let fixed = self.rules.get("rivet.hole") == Some(&Rule::Same);
        if self.rounding == Rounding::Exact || fixed {
            return;
        }
        if rivet.diameter == base.diameter {
            rivet.hole = base.hole;
            return;
        }
        let play = base.hole.mm() - base.diameter.mm();
        let hole = (rivet.diameter.mm() + play).clamp(Range::STEEL.least, Range::STEEL.most);
        rivet.hole = Length::from_mm(hole, base.hole.unit());
    }
}

/// How much larger work and bar are than the base's.
struct Ratios {
    work: f64,
    bar: f64,
}

impl Ratios {
    fn new(base: &Document, document: &Document) -> Self {
        let bar = |document: &Document| document.bar.stock.equal_square_mm();
        Self {
            work: document.work.size().mm() / base.work.size().mm(),
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

/// A length by its rule, if that changes it; work and bar are the size's own already.
fn scaled_field(field: &Field, ratio: f64, rounding: Rounding) -> Option<Length> {
    let given = field.path.starts_with("work.") || field.path.starts_with("bar.");
    let Value::Length(length) = field.value else {
        return None;
    };
    #[allow(
        clippy::float_cmp,
        reason = "a ratio of exactly one leaves the text as it was typed"
    )]
    let same = given || ratio == 1.0 || length.mm() == 0.0;
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
        source: GEOMETRY,
    })
}

/// Sets what is set by hand, choices before what hangs on them, and tells what could not be.
fn set_by_hand(document: &mut Document, size: &Size) -> Vec<Finding> {
    let mut findings = Vec::new();
    if size.set.is_empty() {
        return findings;
    }
    let unit = document.units.unit();
    let mut left = size.set.clone();
    document.revise(&mut |field| {
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
        by_hand(Kind::SetByHandUnused, Part::Pair, message, hint)
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
        source: GEOMETRY,
    }
}
