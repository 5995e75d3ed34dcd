//! Ways to mend what was noticed: changes that were tried on the design itself, with their cost.
//!
//! Nothing here knows what helps against what. Every value that the smith can set is moved a step,
//! the whole chain is asked what became of the finding, and what helps is followed to the nearest
//! value on the smith's grid at which it is gone. What raises something else is not offered.

mod bars;
mod design;
mod grid;
mod judged;
mod leads;
mod pairs;
mod search;
mod singles;
mod taken;
mod tries;
mod walk;
mod words;

use super::{Answers, ToolAnswers};
use crate::asked::Value;
use crate::finding::{Finding, Part, Severity};
use crate::tongs::document::Document;
use crate::tool::Tool;

pub use design::Values;

use design::{Design, OtherBar, measures, tool_measures};
use judged::Aim;
use search::Search;
use singles::Singles;
use taken::Taken;
use tries::{Measures, Tries};

/// How many mends a finding comes with at the most.
pub const MOST_MENDS: usize = 3;

/// One value, as it stands and as it would be.
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// Where it stands, such as `neck.depth`.
    pub path: String,
    /// The part that it shapes.
    pub part: Part,
    /// What the smith calls it: `Neck depth`.
    pub name: String,
    /// The value as it stands.
    pub from: Value,
    /// The value that mends.
    pub to: Value,
}

/// What a mend takes; less than nothing is saved.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cost {
    /// Bar to be cut more, mm.
    pub adds_bar_mm: f64,
    /// Mass of the pair more, kg.
    pub adds_mass_kg: f64,
    /// By how much the reins stand wider at the hand, on the pair's own work, mm.
    pub adds_hand_gap_mm: f64,
}

/// A change, or two together, that was tried: it clears its finding and raises no Stop or Mend
/// that was not there.
#[derive(Debug, Clone, PartialEq)]
pub struct Mend {
    /// One change, or two.
    pub changes: Vec<Change>,
    /// What it takes.
    pub cost: Cost,
}

/// How a finding can be mended.
#[derive(Debug, Clone, PartialEq)]
pub enum Ways {
    /// By one of these, the least first.
    Mends(Vec<Mend>),
    /// Not from this bar; from the bar that is named the same design does it.
    FromOtherBar(Mend),
    /// Not from this bar, nor from its like in another size.
    NotFromThisBar,
}

impl Mend {
    /// The design as it would be.
    #[must_use]
    pub fn taken<V: Values>(&self, design: &V) -> V {
        let mut mended = design.clone();
        for change in &self.changes {
            mended.put(&change.path, change.to);
        }
        mended
    }

    /// Whether the design has the values that the mend sets out from.
    pub fn sets_out_from<V: Values>(&self, design: &V) -> bool {
        let fields = design.fields();
        let stands = |change: &Change| {
            let mut its = fields.iter().filter(|field| field.path == change.path);
            its.next().is_some_and(|field| field.value == change.from)
        };
        self.changes.iter().all(stands)
    }
}

impl Ways {
    /// The mends that can be taken, the least first.
    pub fn mends(&self) -> &[Mend] {
        match self {
            Self::Mends(mends) => mends,
            Self::FromOtherBar(mend) => std::slice::from_ref(mend),
            Self::NotFromThisBar => &[],
        }
    }
}

/// The ways to mend each finding of a design, in the order of `answers.findings` and under the
/// load that they answer; `None` for a Note, which asks for no mend.
///
/// ```
/// use reinwright_core::asked::{parse_bar, parse_work};
/// use reinwright_core::shop::{Answers, mend::ways};
/// use reinwright_core::{tongs::document::Document, tongs::jaw::JawKind};
/// let work = parse_work("3/8 in flat").unwrap();
/// let bar = parse_bar("3/4 in square").unwrap();
/// let mut pair = Document::starting(JawKind::Flat, work, bar);
/// pair.set("neck.depth", "13/16 in").unwrap();
/// let all = ways(&pair, &Answers::to(&pair));
/// let deep = all.iter().flatten().next().unwrap();
/// assert_eq!(deep.mends()[0].changes[0].to.to_string(), "3/4 in");
/// ```
pub fn ways(document: &Document, answers: &Answers) -> Vec<Option<Ways>> {
    let found = (&*answers.findings, measures(answers));
    all(document, found, answers.strength.load)
}

/// The ways to mend each finding of a tool, in the order of `answers.findings`; `None` for a Note.
///
/// ```
/// use reinwright_core::asked::parse_bar;
/// use reinwright_core::shop::{ToolAnswers, mend::tool_ways};
/// use reinwright_core::tool::{Tool, ToolKind};
/// let size = "5/16 in".parse().unwrap();
/// let mut punch = Tool::starting(ToolKind::RoundPunch, size, parse_bar("3/4 in round").unwrap());
/// punch.set("body.face", "11/16 in").unwrap();
/// let all = tool_ways(&punch, &ToolAnswers::to(&punch));
/// let sharp = all.iter().flatten().next().unwrap();
/// // 0.85 of the body, to the sixteenth.
/// assert_eq!(sharp.mends()[0].changes[0].to.to_string(), "5/8 in");
/// ```
pub fn tool_ways(tool: &Tool, answers: &ToolAnswers) -> Vec<Option<Ways>> {
    all(tool, (&answers.findings, tool_measures(answers)), ())
}

/// The ways to mend each of some findings of a design.
fn all<D: Design>(
    base: &D,
    (findings, before): (&[Finding], Measures),
    load: D::Load,
) -> Vec<Option<Ways>> {
    let mut tries = Tries::under(load);
    let mut search = Search::new(base, findings);
    search.look_around(&mut tries);
    let asking: Vec<&Finding> = judged::asking(findings).collect();
    let mut found = singles(&mut search, &asking, &mut tries);
    let mut left = found.iter().filter(|found| found.taken.is_empty()).count();
    let mut all = Vec::new();
    for (meant, found) in asking.iter().zip(&mut found) {
        if found.taken.is_empty() {
            tries.share(1, left);
            left -= 1;
        }
        all.push(one(&mut search, (&before, meant), (found, &mut tries)));
    }
    let mut all = all.into_iter();
    let asks = |finding: &Finding| finding.severity >= Severity::Mend;
    let of = |finding| asks(finding).then(|| all.next()).flatten();
    findings.iter().map(of).collect()
}

/// One value for each finding, as far as there is one.
fn singles<D: Design>(
    search: &mut Search<'_, D>,
    asking: &[&Finding],
    tries: &mut Tries<D>,
) -> Vec<Singles<D>> {
    /// Parts of what may be tried that one value gets, to one part for all that comes after.
    const FIRST: usize = 2;
    let all = asking.len();
    let of = |(at, meant): (usize, &&Finding)| {
        tries.share(FIRST, FIRST * (all - at) + all);
        search.singles(&Aim::at(meant, search.findings), meant, tries)
    };
    asking.iter().enumerate().map(of).collect()
}

/// The ways to mend one finding: by one value; else by two; else from another bar, which a tool is offered
/// beside them.
fn one<D: Design>(
    search: &mut Search<'_, D>,
    (before, meant): (&Measures, &Finding),
    (found, tries): (&mut Singles<D>, &mut Tries<D>),
) -> Ways {
    let aim = Aim::at(meant, search.findings);
    search.by_the_way(&aim, meant, (found, tries));
    if found.taken.is_empty() {
        found.taken.extend(pairs::best(&aim, &found.near, tries));
    }
    if found.taken.is_empty() {
        return match bars::other(search.base, &aim, tries) {
            Some(of_bar) => Ways::FromOtherBar(of_bar.mend(before)),
            None => Ways::NotFromThisBar,
        };
    }
    if D::OTHER_BAR == OtherBar::Beside {
        found.taken.extend(bars::other(search.base, &aim, tries));
    }
    let worth = |taken: &Taken<D>| taken.worth(meant, (search.findings, before));
    found.taken.sort_by(|a, b| worth(a).total_cmp(&worth(b)));
    let advised = found.taken.iter().position(|own| own.is_advised(meant));
    if let Some(at) = advised.filter(|at| *at >= MOST_MENDS) {
        // What the finding advises can be taken, be it the dearest of them.
        found.taken.swap(MOST_MENDS - 1, at);
    }
    found.taken.truncate(MOST_MENDS);
    let mends = found.taken.iter().map(|taken| taken.mend(before));
    Ways::Mends(mends.collect())
}
