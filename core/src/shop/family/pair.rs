//! A family of pairs: sizes are led by their work.

use ron::value::RawValue;
use serde::Deserialize;

use super::edit::midway;
use super::in_sizes::{InSizes, Measure, OfSize};
use super::salvage::{Raw, Salvage};
use super::written::{PairFamily, PairSize};
use super::{FAMILY_FORMAT, Family, Made, Rounding, Rule, SizeAnswer, shape_name};
use crate::asked::{Bar, LimitError, Range, Units, Work, options, parse_bar};
use crate::finding::{self, Finding, Part};
use crate::forge::balance::Balance;
use crate::proof::strength::StrengthLoad;
use crate::shop::Answers;
use crate::tongs::document::{Document, FORMAT, SetError, check_limits};
use crate::tongs::jaw::JawKind;
use crate::units::Length;

impl Measure for Work {
    type Written = PairSize;

    fn size_mm(&self) -> f64 {
        self.size().mm()
    }

    fn label(&self) -> String {
        match self.piece() {
            Some(_) => self.words(),
            None => format!("{} {}", self.size(), shape_name(self)),
        }
    }

    /// Work midway between two of one shape.
    fn between(&self, other: &Self) -> Option<Self> {
        let size = midway(self.size(), other.size())?;
        (shape_name(self) == shape_name(other)).then(|| self.with_size(size))
    }
}

impl InSizes for Document {
    type Measure = Work;
    type Answer = SizeAnswer;
    type Written = PairFamily;
    type WrittenRule = Rule;

    const NAME: &'static str = "pair";
    const FAMILY_FORMAT: u32 = FAMILY_FORMAT;
    const MARK: &'static str = "family";
    const FORMAT: u32 = FORMAT;
    const EXAMPLE: &'static str = "(work: Round(diameter: \"1/2 in\"))";
    const WHOLE: Part = Part::Pair;

    fn format(&self) -> u32 {
        self.format
    }

    fn name(&self) -> &str {
        &self.name
    }

    fn rename(&mut self, name: String) {
        self.name = name;
    }

    fn units(&self) -> Units {
        self.units
    }

    fn show_in(&mut self, units: Units) {
        self.units = units;
    }

    fn measure(&self) -> Work {
        self.work
    }

    fn leads(&self, path: &str) -> bool {
        path.starts_with("work.")
    }

    fn resize(&mut self, work: Work, bar: Bar) {
        (self.work, self.bar) = (work, bar);
    }

    fn bar(&self) -> Bar {
        self.bar
    }

    fn set_text(&mut self, path: &str, text: &str) -> Result<(), SetError> {
        self.set(path, text)
    }

    fn limits(&self) -> Result<(), LimitError> {
        check_limits(self)
    }

    fn rule_name(rule: Rule) -> &'static str {
        match rule {
            Rule::Same => "same in all",
            Rule::WithWork => "with the work",
            Rule::WithBar => "with the bar",
        }
    }

    /// Rounded by itself, a hole could come out smaller than its rivet: unless it is to be the
    /// same in all sizes, it keeps the play that the base gives it.
    fn settle(&mut self, family: &Family) {
        let (base, rivet) = (&family.base.rivet, &mut self.rivet);
        let fixed = family.rules.get("rivet.hole") == Some(&Rule::Same);
        if family.rounding == Rounding::Exact || fixed {
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

    fn answered(made: Made, label: String, load: &StrengthLoad) -> SizeAnswer {
        let document = made.document;
        let Answers {
            model,
            balance,
            fit,
            strength,
            mut findings,
        } = Answers::under(&document, load);
        findings.extend(made.findings);
        finding::sort(&mut findings);
        SizeAnswer {
            label,
            document,
            model,
            balance,
            fit,
            strength,
            findings,
        }
    }

    fn family_format(text: &str) -> Result<u32, ron::error::SpannedError> {
        #[derive(Deserialize)]
        struct Head {
            family: u32,
        }
        options().from_str(text).map(|head: Head| head.family)
    }

    /// The base from its pieces; `None` when it is no group of named pieces at all, or neither
    /// its work nor any size's is known.
    fn salvaged(salvage: &mut Salvage<'_>, raw: &RawValue, work: Option<Work>) -> Option<Self> {
        let all: BasePieces<'_> = options().from_str(raw.get_ron()).ok()?;
        let usual_bar = parse_bar("3/4 in square").ok()?;
        let mut work = known(salvage, all.work, work)?;
        let mut bar: Bar = salvage.piece(all.bar, "base.bar", usual_bar, "3/4 in square");
        // What is usual is only known for work and bar that can be.
        salvage.bring_inside("work", &mut work);
        salvage.bring_inside("bar", &mut bar);
        let usual = Self::starting(style(all.jaw?.get_ron()), work, bar);
        let mut base = filled(salvage, &all, usual);
        salvage.bring_inside("", &mut base);
        check_limits(&base).is_ok().then_some(base)
    }
}

impl OfSize for SizeAnswer {
    type Of = Document;

    fn label(&self) -> &str {
        &self.label
    }

    fn document(&self) -> &Document {
        &self.document
    }

    fn balance(&self) -> &Balance {
        &self.balance
    }

    fn findings(&self) -> &[Finding] {
        &self.findings
    }

    fn mass_kg(&self) -> f64 {
        self.model.mass_kg()
    }
}

fn known(salvage: &mut Salvage<'_>, raw: Raw<'_>, instead: Option<Work>) -> Option<Work> {
    match instead {
        Some(instead) => Some(salvage.piece(raw, "base.work", instead, "the first size's")),
        None => salvage.parse(raw?).ok(),
    }
}

/// The pieces that can be read, on a design in its usual proportions.
fn filled(salvage: &mut Salvage<'_>, all: &BasePieces<'_>, usual: Document) -> Document {
    let mut take = salvage.take(&["base.note", "base.second_jaw"]);
    Document {
        format: FORMAT,
        name: take.of(all.name, "base.name", usual.name),
        note: take.of(all.note, "base.note", usual.note),
        units: take.of(all.units, "base.units", usual.units),
        projection: take.of(all.projection, "base.projection", usual.projection),
        hand: take.of(all.hand, "base.hand", usual.hand),
        jaw: take.of(all.jaw, "base.jaw", usual.jaw),
        second_jaw: take.of(all.second_jaw, "base.second_jaw", usual.second_jaw),
        neck: take.of(all.neck, "base.neck", usual.neck),
        boss: take.of(all.boss, "base.boss", usual.boss),
        shoulder: take.of(all.shoulder, "base.shoulder", usual.shoulder),
        rein: take.of(all.rein, "base.rein", usual.rein),
        rivet: take.of(all.rivet, "base.rivet", usual.rivet),
        layout: take.of(all.layout, "base.layout", usual.layout),
        allowances: take.of(all.allowances, "base.allowances", usual.allowances),
        work: usual.work,
        bar: usual.bar,
    }
}

#[derive(Deserialize)]
struct BasePieces<'a> {
    #[serde(borrow, default)]
    name: Raw<'a>,
    #[serde(borrow, default)]
    note: Raw<'a>,
    #[serde(borrow, default)]
    units: Raw<'a>,
    #[serde(borrow, default)]
    projection: Raw<'a>,
    #[serde(borrow, default)]
    hand: Raw<'a>,
    #[serde(borrow, default)]
    work: Raw<'a>,
    #[serde(borrow, default)]
    bar: Raw<'a>,
    #[serde(borrow, default)]
    jaw: Raw<'a>,
    #[serde(borrow, default)]
    second_jaw: Raw<'a>,
    #[serde(borrow, default)]
    neck: Raw<'a>,
    #[serde(borrow, default)]
    boss: Raw<'a>,
    #[serde(borrow, default)]
    shoulder: Raw<'a>,
    #[serde(borrow, default)]
    rein: Raw<'a>,
    #[serde(borrow, default)]
    rivet: Raw<'a>,
    #[serde(borrow, default)]
    layout: Raw<'a>,
    #[serde(borrow, default)]
    allowances: Raw<'a>,
}

/// The style that a jaw's text names, readable or not; flat when it names none.
fn style(jaw: &str) -> JawKind {
    let plain = jaw.to_lowercase();
    let named = |kind: &JawKind| {
        let name = kind.name().to_lowercase().replace([' ', '-'], "");
        plain.contains(&format!("{name}("))
    };
    let mut all = JawKind::ALL.iter().copied();
    all.find(named).unwrap_or(JawKind::Flat)
}
