//! All that is known of one design: the one chain from what was asked to what was noticed.

use crate::finding::{Finding, GEOMETRY, Kind, Report, Severity, sort, worst};
use crate::forge::balance::{Balance, balance};
use crate::proof::check::check;
use crate::proof::fit::{self, Fit};
use crate::proof::strength::{self, Strength, StrengthLoad};
use crate::tongs::document::Document;
use crate::tongs::model::Model;
use crate::tongs::resolve;

/// The answers to one design.
#[derive(Debug, Clone)]
pub struct Answers {
    /// Its geometry.
    pub model: Model,
    /// Its bar.
    pub balance: Balance,
    /// How it holds.
    pub fit: Fit,
    /// How it lasts under the squeezes asked for, on its own work.
    pub strength: Strength,
    /// What was noticed, the worst first.
    pub findings: Vec<Finding>,
}

impl Answers {
    /// The answers under the usual squeezes with cold jaws.
    ///
    /// ```
    /// use reinwright_core::asked::{parse_bar, parse_work};
    /// use reinwright_core::{shop::Answers, tongs::document::Document, tongs::jaw::JawKind};
    /// let work = parse_work("3/8 in flat").unwrap();
    /// let bar = parse_bar("3/4 in square").unwrap();
    /// let pair = Document::starting(JawKind::Flat, work, bar);
    /// let answers = Answers::to(&pair);
    /// assert!(answers.balance.bar_length_mm > 0.0);
    /// ```
    pub fn to(document: &Document) -> Self {
        Self::under(document, &StrengthLoad::default())
    }

    /// The answers under other squeezes, or with hot jaws.
    pub fn under(document: &Document, load: &StrengthLoad) -> Self {
        let (model, fit) = holding(document);
        let strength = strength::strength_of(document, &model, &fit, load);
        let balance = balance_of(document, &model);
        let findings = noticed((document, &model), (&balance, &fit, &strength));
        Self {
            balance,
            model,
            fit,
            strength,
            findings,
        }
    }

    /// The same answers under other squeezes, or with hotter jaws: what does not follow from the
    /// load is kept.
    pub fn bear(&mut self, document: &Document, load: &StrengthLoad) {
        self.strength = strength::strength_of(document, &self.model, &self.fit, load);
        let known = (&self.balance, &self.fit, &self.strength);
        self.findings = noticed((document, &self.model), known);
    }

    /// The worst of the findings; `None` when there are none.
    pub fn worst(&self) -> Option<Severity> {
        worst(&self.findings)
    }
}

/// The first links of the chain, which a shelf of many pairs asks for alone: the geometry, and how
/// it holds.
pub(super) fn holding(document: &Document) -> (Model, Fit) {
    let model = resolve(document);
    let fit = fit::fit(document, &model);
    (model, fit)
}

/// The account of a pair's bar.
pub fn balance_of(document: &Document, model: &Model) -> Balance {
    balance(&model.pieces(), &document.from_bar())
}

/// All that every stage noticed about a pair, the worst first, then in the order of the parts.
fn noticed(
    (document, model): (&Document, &Model),
    (balance, fit, strength): (&Balance, &Fit, &Strength),
) -> Vec<Finding> {
    let mut all = check(document, model);
    all.extend(bored_out(document, balance));
    all.extend(fit::findings(document, model, fit));
    all.extend(strength::findings(document, model, strength));
    sort(&mut all);
    once(all)
}

/// A part out of which the hole cuts more than it has, so that no bar can be reckoned.
fn bored_out(document: &Document, balance: &Balance) -> Vec<Finding> {
    let mut report = Report::new(document.units.show());
    if let Some(part) = balance.bored_out() {
        let hole = report.size(document.rivet.hole.mm());
        let message = format!("the hole, {hole} across, cuts more out of the {part} than it has");
        let hint = "make the hole smaller, or leave more steel there";
        report
            .stop(Kind::HoleBreaksOut, part)
            .say(message, hint, GEOMETRY);
    }
    report.into_found()
}

/// Each thing once: both halves of a pair have the same neck and the same boss.
fn once(all: Vec<Finding>) -> Vec<Finding> {
    let mut kept: Vec<Finding> = Vec::with_capacity(all.len());
    for finding in all {
        let same = |it: &Finding| {
            (it.kind, it.part, &it.message) == (finding.kind, finding.part, &finding.message)
        };
        if !kept.iter().any(same) {
            kept.push(finding);
        }
    }
    kept
}
