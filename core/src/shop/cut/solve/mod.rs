//! Which piece is cut from which bar: fewest bars, then the most useful offcut.
//!
//! First plans made bar after bar, then the bound, then plans out of the fillings of the relaxed
//! problem, then branch and bound. What meets the bound is proven; so is what a search that came to
//! its end found.

mod bound;
mod exact;
mod greedy;
mod knapsack;
mod problem;
mod purse;
mod relaxed;

pub(super) use problem::{Filled, Kind, Plan, Problem, whole};
pub(super) use purse::Purse;

use bound::Worth;
use exact::{End, Goal};
use relaxed::Relaxed;

/// Steps for each part of the work, so chosen that each ends within some hundredths of a second.
const RELAXING: u64 = 2_000_000;
const DIVING: u64 = 4_000_000;
const SEARCHING: u64 = 400_000;
const GATHERING: u64 = 150_000;

/// How often a plan is sought in the relaxed problem, each time beginning with another filling.
const DIVES: usize = 4;

/// What was found.
#[derive(Debug, Clone)]
pub(super) struct Solved {
    pub(super) plan: Plan,
    /// Whether no plan is reckoned at less.
    pub(super) least: bool,
    /// Whether, besides, none loses less.
    pub(super) best_offcut: bool,
    /// No plan has fewer bars than this.
    pub(super) fewest: u64,
}

/// Solves a problem; `None` when it was stopped.
pub(super) fn solve(problem: &Problem, purse: &mut Purse<'_>) -> Option<Solved> {
    let mut plan = begin(problem, purse);
    let bound = bound(problem, purse);
    if plan.rank.cost > bound.cost {
        plan = dive(problem, plan, &bound, purse);
    }
    let mut least = plan.rank.cost <= bound.cost;
    let small = problem.pieces() <= exact::MOST_PIECES;
    if !least && small {
        purse.allow(SEARCHING);
        let goal = (Goal::Fewest, bound.cost);
        let (found, end) = exact::search(problem, (plan, &bound.worth), goal, purse);
        (plan, least) = (found, end == End::Proven);
    }
    plan = greedy::gathered(problem, &plan);
    let lost = exact::least_lost(problem, &plan);
    let mut best_offcut = least && plan.rank.lost <= lost;
    if least && !best_offcut && small {
        purse.allow(GATHERING);
        let goal = (Goal::Offcut, lost);
        let (found, end) = exact::search(problem, (plan, &bound.worth), goal, purse);
        (plan, best_offcut) = (found, end == End::Proven);
    }
    let bars = plan.bars.len() as u64;
    let fewest = if least { bars } else { bound.bars.min(bars) };
    let solved = Solved {
        plan,
        least,
        best_offcut,
        fewest,
    };
    (!purse.stopped()).then_some(solved)
}

fn begin(problem: &Problem, purse: &mut Purse<'_>) -> Plan {
    let made = |way| greedy::go_on(problem, &[], way, &mut *purse);
    let plans = greedy::WAYS.map(made).into_iter();
    let best = plans.min_by_key(|plan| plan.rank);
    best.expect("there is more than one way")
}

/// What nothing can be better than.
struct Bound {
    cost: i64,
    bars: u64,
    worth: Worth,
}

fn bound(problem: &Problem, purse: &mut Purse<'_>) -> Bound {
    let bars = bound::fewest(problem);
    let cheapest = problem.kinds.iter().map(|kind| kind.cost).min();
    let by_bars = bound::cheapest(problem, bars);
    purse.allow(RELAXING);
    let worth = relax(problem, purse).map_or_else(|| Worth::nothing(problem), |it| it.worth);
    let by_worth = worth.cost(&problem.counts, &problem.stock());
    let alike = problem.kinds.len() == 1;
    let cost = bound::next_cost(problem, by_bars.max(by_worth));
    Bound {
        cost,
        bars: if alike {
            u64::try_from(cost / cheapest.unwrap_or(1)).unwrap_or(bars)
        } else {
            bars
        },
        worth,
    }
}

fn relax(problem: &Problem, purse: &mut Purse<'_>) -> Option<Relaxed> {
    if problem.sizes.len() > relaxed::MOST_SIZES {
        return None;
    }
    relaxed::relaxed(problem, purse)
}

/// Plans out of the relaxed problem: whole bars of it are cut, what is left is relaxed again.
fn dive(problem: &Problem, mut best: Plan, bound: &Bound, purse: &mut Purse<'_>) -> Plan {
    purse.allow(DIVING);
    for skipped in 0..DIVES {
        let mut begun: Vec<Filled> = Vec::new();
        let mut rest = problem.clone();
        while rest.pieces() > 0 && !purse.is_empty() {
            let Some(relaxed) = relax(&rest, purse) else {
                break;
            };
            let cost: i64 = begun.iter().map(|bar| problem.kinds[bar.kind].cost).sum();
            if cost + relaxed.worth.cost(&rest.counts, &rest.stock()) >= best.rank.cost {
                break;
            }
            let skipped = if begun.is_empty() { skipped } else { 0 };
            let cut = whole_bars(relaxed.bars, skipped);
            cut.into_iter()
                .for_each(|bar| begin_with(&mut rest, &mut begun, bar));
            best = finished(problem, &begun, best, purse);
            if best.rank.cost <= bound.cost {
                return best;
            }
        }
    }
    best
}

/// The whole bars of a relaxed plan; where there are none, the one that is nearest to whole, or
/// the next one after so many.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "no more bars than pieces"
)]
fn whole_bars(mut bars: Vec<(Filled, f64)>, skipped: usize) -> Vec<Filled> {
    const HAIR: f64 = 1e-6;
    let whole = |amount: f64| (amount + HAIR).floor() as usize;
    let part = |amount: f64| amount - amount.floor();
    if skipped == 0 && bars.iter().any(|(_, amount)| whole(*amount) > 0) {
        let all = bars.into_iter();
        return all
            .flat_map(|(bar, amount)| std::iter::repeat_n(bar, whole(amount)))
            .collect();
    }
    bars.sort_by(|a, b| part(b.1).total_cmp(&part(a.1)));
    let at = skipped.min(bars.len().saturating_sub(1));
    bars.into_iter()
        .skip(at)
        .take(1)
        .map(|(bar, _)| bar)
        .collect()
}

/// Cuts a bar of what is left, without the pieces that are there already.
fn begin_with(rest: &mut Problem, begun: &mut Vec<Filled>, mut bar: Filled) {
    for (cut, count) in bar.pattern.iter_mut().zip(&rest.counts) {
        *cut = (*cut).min(*count);
    }
    let empty = bar.pattern.iter().all(|cut| *cut == 0);
    if empty || rest.kinds[bar.kind].most == Some(0) {
        return;
    }
    greedy::off(&mut rest.counts, &bar.pattern);
    if let Some(most) = &mut rest.kinds[bar.kind].most {
        *most -= 1;
    }
    begun.push(bar);
}

/// The better one of a plan and of what comes of bars that are begun.
fn finished(problem: &Problem, begun: &[Filled], best: Plan, purse: &mut Purse<'_>) -> Plan {
    let ways = [greedy::WAYS[4], greedy::WAYS[3]];
    let plans = ways.map(|way| greedy::go_on(problem, begun, way, purse));
    plans
        .into_iter()
        .chain([best])
        .min_by_key(|plan| plan.rank)
        .expect("there is a plan")
}
