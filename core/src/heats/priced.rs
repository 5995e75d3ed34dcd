//! What other choices would cost: one source alone, one put away, another procedure.

use super::optimum::{Problem, Ready};
use super::plan::{HeatPlan, Heated, heat_plan};
use super::prepared::Prepared;
use super::source::Sources;
use super::words::{listed, spoken};
use crate::forge::balance::Balance;
use crate::making::{self, Procedure};
use crate::tongs::document::Document;
use crate::tongs::model::Model;

/// Another choice, priced.
#[derive(Debug, Clone, PartialEq)]
pub struct Priced {
    /// What it is.
    pub what: Other,
    /// How much longer it takes than the best, s, below nothing where it is quicker and burns more; `None`
    /// where it cannot be done so.
    pub longer_s: Option<f64>,
    /// Operations that it cannot heat, as the smith counts.
    pub unserved: Vec<usize>,
    /// Operations at which it burns thin steel and the best does not.
    pub burns: Vec<usize>,
    /// Operations at which it burns thin steel in a forge or a fire, and the best does in a coil, which can be
    /// held back.
    pub unspared: Vec<usize>,
    /// In a sentence without a period.
    pub said: String,
}

/// What is chosen otherwise.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Other {
    /// This source alone.
    Only(usize),
    /// All but this one.
    Without(usize),
    /// This operation in the source that heats it fastest.
    Faster {
        /// The operation's row.
        row: usize,
        /// The source.
        source: usize,
    },
}

/// The best choice with others beside it.
pub fn priced(prepared: &Prepared, best: &HeatPlan) -> Vec<Priced> {
    let mut all = Vec::new();
    let count = prepared.shop.sources.len();
    let used: Vec<usize> = (0..count).filter(|&own| uses(best, own)).collect();
    for source in 0..count {
        if used.as_slice() != [source] {
            all.push(only(prepared, best, source));
        }
    }
    if used.len() > 1 {
        all.extend(used.iter().map(|&source| without(prepared, best, source)));
    }
    all.extend(not_worth(prepared, best));
    all
}

fn uses(plan: &HeatPlan, source: usize) -> bool {
    plan.operations.iter().any(|own| own.source == Some(source))
}

/// What a plan with some sources put away comes to, against the best.
struct Tried {
    longer_s: f64,
    unserved: Vec<usize>,
    burns: Vec<usize>,
    unspared: Vec<usize>,
}

/// The plan with some sources put away: what it cannot heat that the best can, and what it burns.
fn tried(prepared: &Prepared, best: &HeatPlan, allowed: impl Fn(usize) -> bool) -> Tried {
    let less = prepared.with_only(allowed);
    let plan = heat_plan(&less);
    let which = |is_so: &dyn Fn(&Heated, &Heated) -> bool| {
        let pairs = plan.operations.iter().zip(&best.operations);
        let so = pairs.filter(|(own, best)| is_so(own, best));
        so.map(|(own, _)| own.number).collect::<Vec<_>>()
    };
    let worse = |own: &Heated, best: &Heated| burns_s(prepared, own) > burns_s(prepared, best);
    Tried {
        longer_s: plan.totals.time_s - best.totals.time_s,
        unserved: which(&|own, best| own.source.is_none() && best.source.is_some()),
        burns: which(&|own, best| own.burns.is_some() && best.burns.is_none()),
        unspared: which(&|own, best| best.burns.is_some() && worse(own, best)),
    }
}

/// What weighs against burning the piece where an operation is heated, s.
fn burns_s(prepared: &Prepared, heated: &Heated) -> f64 {
    heated
        .source
        .map_or(0.0, |source| prepared.burns_s(heated.row, source))
}

fn numbers(of: &[usize]) -> String {
    let words: Vec<String> = of.iter().map(usize::to_string).collect();
    listed(&words)
}

/// `operation 3`, `operations 3, 5 and 8`.
fn operations(of: &[usize]) -> String {
    let words = if of.len() == 1 {
        "operation"
    } else {
        "operations"
    };
    format!("{words} {}", numbers(of))
}

fn told(what: Other, begins: &str, tried: Tried) -> Priced {
    let longer = tried.longer_s;
    let time = if longer.abs() < 1.0 {
        "as long".to_owned()
    } else if longer > 0.0 {
        format!("{} more", spoken(longer))
    } else {
        format!("{} less", spoken(-longer))
    };
    let said = if tried.unserved.is_empty() {
        format!("{begins}: {time}{}", burning(&tried))
    } else {
        format!("{begins}: {} cannot be heated", operations(&tried.unserved))
    };
    Priced {
        what,
        longer_s: tried.unserved.is_empty().then_some(longer),
        unserved: tried.unserved,
        burns: tried.burns,
        unspared: tried.unspared,
        said,
    }
}

/// `, and thin steel burns at operations 4 and 16`; nothing where no more burns than in the best.
fn burning(tried: &Tried) -> String {
    let mut said = String::new();
    if !tried.burns.is_empty() {
        said += &format!(", and thin steel burns at {}", operations(&tried.burns));
    }
    if !tried.unspared.is_empty() {
        said += &format!(
            ", and at {} a fire burns thin steel, where a coil can be held back",
            operations(&tried.unspared)
        );
    }
    said
}

fn only(prepared: &Prepared, best: &HeatPlan, source: usize) -> Priced {
    let begins = format!("with {} only", prepared.shop.sources[source].name);
    told(
        Other::Only(source),
        &begins,
        tried(prepared, best, |own| own == source),
    )
}

fn without(prepared: &Prepared, best: &HeatPlan, source: usize) -> Priced {
    let begins = format!("without {}", prepared.shop.sources[source].name);
    told(
        Other::Without(source),
        &begins,
        tried(prepared, best, |own| own != source),
    )
}

/// Operations that another source heats faster, where making it ready costs more than that saves.
fn not_worth(prepared: &Prepared, best: &HeatPlan) -> Vec<Priced> {
    /// Less than this is not told, s.
    const WORTH_TELLING: f64 = 10.0;
    let mut all = Vec::new();
    for heated in &best.operations {
        let Some((used, own)) = heated
            .source
            .and_then(|used| Some((used, prepared.offer(heated.row, used)?)))
        else {
            continue;
        };
        let cold = |source, offer| prepared.takes_s(heated.row, (source, offer), 20.0);
        let spares =
            |source: usize| prepared.burns_s(heated.row, source) <= burns_s(prepared, heated);
        let others = (0..prepared.shop.sources.len())
            .filter(|&source| spares(source))
            .filter_map(|source| Some((source, cold(source, prepared.offer(heated.row, source)?))));
        let Some((source, fastest)) = others.min_by(|a, b| a.1.total_cmp(&b.1)) else {
            continue;
        };
        let saves = cold(used, own) - fastest;
        if source == used || saves < WORTH_TELLING {
            continue;
        }
        let (ready, seconds) = prepared.sources()[source];
        let name = &prepared.shop.sources[source].name;
        let change = match ready {
            Ready::Mounted => "a change",
            Ready::Lit if uses(best, source) => "turning to it",
            Ready::Lit => "lighting it",
        };
        let heats = match own.heats * heated.pieces {
            1 => "one heat".to_owned(),
            heats => format!("{heats} heats"),
        };
        all.push(Priced {
            what: Other::Faster {
                row: heated.row,
                source,
            },
            longer_s: Some((seconds - saves).max(0.0)),
            unserved: Vec::new(),
            burns: Vec::new(),
            unspared: Vec::new(),
            said: format!(
                "operation {}, {}: {name} would heat it {} faster, not worth {change} for {heats}",
                heated.number,
                heated.step,
                spoken(saves)
            ),
        });
    }
    all
}

/// A procedure with what its heats come to.
#[derive(Debug, Clone, PartialEq)]
pub struct Compared {
    /// The procedure.
    pub procedure: Procedure,
    /// Heats of the pair.
    pub heats: u32,
    /// How often a source is made ready.
    pub changes: u32,
    /// All time, s.
    pub time_s: f64,
    /// Operations that no source serves.
    pub unserved: u32,
    /// Operations at which thin steel burns.
    pub burnt: u32,
}

/// Every procedure that suits a design, with its best heat plan: those that can be heated first, of them those that
/// burn the least, of them the quickest.
pub fn compare(
    document: &Document,
    (model, balance): (&Model, &Balance),
    shop: &Sources,
) -> Vec<Compared> {
    let suits = making::suits(document, model).into_iter();
    let suits = suits.filter(|own| own.why_not.is_none());
    let mut all: Vec<Compared> = suits
        .map(|own| {
            let plan = making::plan(document, model, balance, own.procedure);
            let prepared = Prepared::new(document.bar.steel, &plan, shop);
            let totals = heat_plan(&prepared).totals;
            Compared {
                procedure: own.procedure,
                heats: totals.heats,
                changes: totals.changes,
                time_s: totals.time_s,
                unserved: totals.unserved,
                burnt: totals.burnt,
            }
        })
        .collect();
    all.sort_by(|a, b| {
        (a.unserved, a.burnt)
            .cmp(&(b.unserved, b.burnt))
            .then(a.time_s.total_cmp(&b.time_s))
    });
    all
}

impl Compared {
    /// Against another procedure, in a sentence without a period.
    pub fn against(&self, other: &Self) -> String {
        if other.unserved > self.unserved {
            return other.cannot_be_done();
        }
        let count = |own: u32, other: u32, (one, many): (&str, &str)| {
            let words = match own.abs_diff(other) {
                0 => return None,
                1 => format!("a {one}"),
                off => format!("{off} {many}"),
            };
            Some((own < other, words))
        };
        /// Less than this is the same, s.
        const SAME_S: f64 = 30.0;
        let off = self.time_s - other.time_s;
        let time = (off.abs() >= SAME_S).then(|| (off < 0.0, spoken(off.abs())));
        let parts = [
            count(self.burnt, other.burnt, ("burnt heat", "burnt heats")),
            count(self.changes, other.changes, ("change", "changes")),
            count(self.heats, other.heats, ("heat", "heats")),
            time,
        ];
        let of = |saved: bool| {
            let own = parts.iter().flatten().filter(|own| own.0 == saved);
            listed(&own.map(|own| own.1.clone()).collect::<Vec<_>>())
        };
        let said = match (of(true), of(false)) {
            (saved, costs) if saved.is_empty() && costs.is_empty() => "the same".to_owned(),
            (saved, costs) if costs.is_empty() => format!("saves {saved}"),
            (saved, costs) if saved.is_empty() => format!("costs {costs}"),
            (saved, costs) => format!("saves {saved} and costs {costs}"),
        };
        format!(
            "{} before {}: {said}",
            self.procedure.name(),
            other.procedure.name()
        )
    }

    /// That no source serves all of it.
    fn cannot_be_done(&self) -> String {
        let operations = match self.unserved {
            1 => "one of its operations".to_owned(),
            count => format!("{count} of its operations"),
        };
        format!(
            "{}: no heat of the shop serves {operations}",
            self.procedure.name()
        )
    }
}
