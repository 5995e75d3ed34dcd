//! What other choices would cost: one source alone, one put away, one operation in another source.

use super::clock::AIR_CELSIUS;
use super::optimum::Problem;
use super::plan::{HeatPlan, Heated, heat_plan, plan_of};
use super::prepared::Prepared;
use super::words::{listed, spoken};

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
    /// Operations at which it burns thin steel and the best does not, or only in a coil, which is turned
    /// down.
    pub burns: Vec<usize>,
    /// Operations at which the best burns thin steel and it does not.
    pub spares: Vec<usize>,
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
    all.extend(faster(prepared, best));
    all
}

fn uses(plan: &HeatPlan, source: usize) -> bool {
    plan.operations.iter().any(|own| own.source == Some(source))
}

/// What a plan with some sources put away comes to, against the best.
struct Tried {
    longer_s: f64,
    unserved: Vec<usize>,
    burns: Burns,
    spares: Vec<usize>,
}

/// Operations at which a plan burns thin steel.
struct Burns {
    /// Where the best burns none.
    anew: Vec<usize>,
    /// In a fire, where the best burns it in a coil.
    in_fire: Vec<usize>,
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
    Tried {
        longer_s: plan.totals.time_s - best.totals.time_s,
        unserved: which(&|own, best| own.source.is_none() && best.source.is_some()),
        burns: Burns {
            anew: which(&|own, best| own.burns.is_some() && best.burns.is_none()),
            in_fire: which(&|own, best| {
                best.burns.is_some() && burns_s(prepared, own) > burns_s(prepared, best)
            }),
        },
        spares: which(&|own, best| {
            own.source.is_some() && own.burns.is_none() && best.burns.is_some()
        }),
    }
}

/// What an operation burns, weighed as the best is chosen by, s.
fn burns_s(prepared: &Prepared, heated: &Heated) -> f64 {
    let source = heated.source;
    source.map_or(0.0, |source| prepared.burns_s(heated.row, source))
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

/// `4 min more`, `as long`, `40 s less`.
fn against(longer_s: f64) -> String {
    if longer_s.abs() < 1.0 {
        "as long".to_owned()
    } else if longer_s > 0.0 {
        format!("{} more", spoken(longer_s))
    } else {
        format!("{} less", spoken(-longer_s))
    }
}

/// What it burns and what it spares, each with how it goes on.
fn burning(tried: &Tried) -> String {
    let Burns { anew, in_fire } = &tried.burns;
    let parts = [
        (anew, "thin steel burns at", ""),
        (
            in_fire,
            "thin steel burns at",
            " in a fire, which cannot be turned down as a coil can",
        ),
        (&tried.spares, "nothing burns at", ""),
    ];
    let told = parts.iter().filter(|(of, ..)| !of.is_empty());
    told.map(|(of, begins, ends)| format!(", and {begins} {}{ends}", operations(of)))
        .collect()
}

fn told(what: Other, begins: &str, tried: Tried) -> Priced {
    let said = if tried.unserved.is_empty() {
        format!("{begins}: {}{}", against(tried.longer_s), burning(&tried))
    } else {
        format!("{begins}: {} cannot be heated", operations(&tried.unserved))
    };
    let Burns { anew, in_fire } = tried.burns;
    Priced {
        what,
        longer_s: tried.unserved.is_empty().then_some(tried.longer_s),
        unserved: tried.unserved,
        burns: [anew, in_fire].concat(),
        spares: tried.spares,
        said,
    }
}

fn only(prepared: &Prepared, best: &HeatPlan, source: usize) -> Priced {
    let begins = format!("with {} only", prepared.shop.sources[source].name);
    let tried = tried(prepared, best, |own| own == source);
    told(Other::Only(source), &begins, tried)
}

fn without(prepared: &Prepared, best: &HeatPlan, source: usize) -> Priced {
    let begins = format!("without {}", prepared.shop.sources[source].name);
    let tried = tried(prepared, best, |own| own != source);
    told(Other::Without(source), &begins, tried)
}

/// Operations that another source heats faster, though all together take longer with it: it must be made
/// ready, or the piece comes to it cold.
fn faster(prepared: &Prepared, best: &HeatPlan) -> Vec<Priced> {
    let one = |heated: &Heated| {
        let (source, saves) = fastest(prepared, heated)?;
        let mut chosen: Vec<Option<usize>> = vec![None; prepared.rows.len()];
        for own in &best.operations {
            chosen[own.row] = own.source;
        }
        chosen[heated.row] = Some(source);
        let longer = plan_of(prepared, &chosen).totals.time_s - best.totals.time_s;
        let name = &prepared.shop.sources[source].name;
        (longer >= 1.0).then(|| Priced {
            what: Other::Faster {
                row: heated.row,
                source,
            },
            longer_s: Some(longer),
            unserved: Vec::new(),
            burns: Vec::new(),
            spares: Vec::new(),
            said: format!(
                "operation {}, {}: {name} heats it {} faster, and all together takes {} more with it",
                heated.number,
                heated.step,
                spoken(saves),
                spoken(longer)
            ),
        })
    };
    best.operations.iter().filter_map(one).collect()
}

/// The source that heats an operation fastest and burns no more, and what it saves at that, s; `None`
/// where that is hardly anything.
fn fastest(prepared: &Prepared, heated: &Heated) -> Option<(usize, f64)> {
    /// Less than this is not told, s.
    const WORTH_TELLING: f64 = 10.0;
    let used = heated.source?;
    let cold = |source: usize| {
        let offer = prepared.offer(heated.row, source)?;
        Some(prepared.takes_s(heated.row, (source, offer), AIR_CELSIUS))
    };
    let burns = prepared.burns_s(heated.row, used);
    let others = (0..prepared.shop.sources.len())
        .filter(|&source| source != used && prepared.burns_s(heated.row, source) <= burns)
        .filter_map(|source| Some((source, cold(source)?)));
    let (source, least) = others.min_by(|a, b| a.1.total_cmp(&b.1))?;
    let saves = cold(used)? - least;
    (saves >= WORTH_TELLING).then_some((source, saves))
}
