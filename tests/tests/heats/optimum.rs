//! The plan is the best there is: against trying every way of giving sources to operations.

use proptest::prelude::*;
use reinwright_core::heats::optimum::{Before, Problem, Ready, TURN_S, optimum};

/// Costs by operation and source, cheaper by so much after some source, as warm steel is.
#[derive(Debug)]
struct Table {
    sources: Vec<(Ready, f64)>,
    costs: Vec<Vec<Option<f64>>>,
    warm: Vec<Vec<f64>>,
    /// Operations and sources at which the piece burns, with what that weighs.
    burns: Vec<(usize, usize, f64)>,
}

impl Problem for Table {
    fn operations(&self) -> usize {
        self.costs.len()
    }

    fn sources(&self) -> &[(Ready, f64)] {
        &self.sources
    }

    fn cost_s(&self, operation: usize, source: usize, before: Before) -> Option<f64> {
        let cold = self.costs[operation][source]?;
        let saved = before.source.map_or(0.0, |last| self.warm[last][source]);
        // What is made ready lets the piece cool.
        Some(cold - saved / (1.0 + before.ready_s / 60.0))
    }

    fn burns_s(&self, operation: usize, source: usize) -> f64 {
        let mut all = self.burns.iter();
        let its = all.find(|own| (own.0, own.1) == (operation, source));
        its.map_or(0.0, |own| own.2)
    }
}

/// What a row of choices takes, and what it weighs with what turning to another source must save and with
/// what burns, told anew from the rules; `None` where one does not serve.
fn takes(table: &Table, chosen: &[Option<usize>]) -> Option<(f64, f64)> {
    let (mut seconds, mut mounted, mut lit, mut last) = (0.0, None, Vec::new(), None);
    let mut turns = 0.0;
    for (operation, choice) in chosen.iter().enumerate() {
        let Some(source) = *choice else {
            last = None;
            continue;
        };
        let (ready, makes) = table.sources[source];
        let ready_s = match ready {
            Ready::Mounted if mounted.is_none() || mounted == Some(source) => 0.0,
            Ready::Lit if lit.contains(&source) => 0.0,
            Ready::Mounted | Ready::Lit => makes,
        };
        match ready {
            Ready::Mounted => mounted = Some(source),
            Ready::Lit => lit.push(source),
        }
        let before = Before {
            source: last,
            ready_s,
        };
        seconds += ready_s + table.cost_s(operation, source, before)?;
        if last.is_some_and(|last| last != source) {
            turns += 1.0;
        }
        last = Some(source);
    }
    let burns = chosen.iter().enumerate();
    let burns = burns.filter_map(|(at, own)| Some(table.burns_s(at, (*own)?)));
    Some((seconds, seconds + TURN_S * turns + burns.sum::<f64>()))
}

/// The least weight over all rows of choices; where any source serves one must be taken.
fn by_trying(table: &Table, begun: &mut Vec<Option<usize>>) -> f64 {
    let operation = begun.len();
    if operation == table.operations() {
        return takes(table, begun).map_or(f64::INFINITY, |own| own.1);
    }
    let serving: Vec<Option<usize>> = (0..table.sources.len())
        .filter(|&source| table.costs[operation][source].is_some())
        .map(Some)
        .collect();
    let choices = if serving.is_empty() {
        vec![None]
    } else {
        serving
    };
    let mut least = f64::INFINITY;
    for choice in choices {
        begun.push(choice);
        least = least.min(by_trying(table, begun));
        begun.pop();
    }
    least
}

fn table() -> impl Strategy<Value = Table> {
    (1usize..=4, 1usize..=6).prop_flat_map(|(sources, operations)| {
        let ready = prop_oneof![Just(Ready::Mounted), Just(Ready::Lit)];
        let cost = prop_oneof![1 => Just(None), 4 => (50.0..400.0f64).prop_map(Some)];
        (
            prop::collection::vec((ready, 0.0..300.0f64), sources),
            prop::collection::vec(prop::collection::vec(cost, sources), operations),
            prop::collection::vec(prop::collection::vec(0.0..50.0f64, sources), sources),
            prop::collection::vec((0..operations, 0..sources, 0.0..500.0f64), 0..=operations),
        )
            .prop_map(|(sources, costs, warm, burns)| Table {
                sources,
                costs,
                warm,
                burns,
            })
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn no_other_choice_is_better(table in table()) {
        let best = optimum(&table);
        let least = by_trying(&table, &mut Vec::new());
        // The time is what its own choices take.
        let (taken, weighs) = takes(&table, &best.chosen).expect("they serve");
        prop_assert!((weighs - least).abs() < 1e-6, "{best:?}, by trying {least}");
        prop_assert!((taken - best.total_s).abs() < 1e-6);
    }
}

/// One heat of a minute less is not worth a change of four.
#[test]
fn a_single_heat_is_not_worth_a_change() {
    let table = Table {
        sources: vec![(Ready::Mounted, 240.0), (Ready::Mounted, 240.0)],
        costs: vec![
            vec![Some(100.0), Some(200.0)],
            vec![Some(160.0), Some(100.0)],
            vec![Some(100.0), Some(200.0)],
        ],
        warm: vec![vec![0.0; 2]; 2],
        burns: Vec::new(),
    };
    assert_eq!(optimum(&table).chosen, [Some(0), Some(0), Some(0)]);
}

/// A second is not worth another source, half a minute is, though neither is to be made ready.
#[test]
fn a_moment_is_not_worth_another_source() {
    let chosen = |gained: f64| {
        let table = Table {
            sources: vec![(Ready::Lit, 0.0), (Ready::Lit, 0.0)],
            costs: vec![
                vec![Some(100.0), Some(200.0)],
                vec![Some(100.0), Some(100.0 - gained)],
            ],
            warm: vec![vec![0.0; 2]; 2],
            burns: Vec::new(),
        };
        optimum(&table).chosen
    };
    assert_eq!(chosen(1.0), [Some(0), Some(0)]);
    assert_eq!(chosen(30.0), [Some(0), Some(1)]);
}

/// A fire is lit once; what no source serves is passed over.
#[test]
fn a_fire_burns_on_and_what_nobody_serves_is_passed_over() {
    let table = Table {
        sources: vec![(Ready::Lit, 600.0)],
        costs: vec![vec![Some(10.0)], vec![None], vec![Some(10.0)]],
        warm: vec![vec![0.0]],
        burns: Vec::new(),
    };
    let best = optimum(&table);
    assert_eq!(best.chosen, [Some(0), None, Some(0)]);
    assert!((best.total_s - 620.0).abs() < 1e-9);
}

/// A source that burns the piece loses to a slow one that must be lit first; where all burn it the quickest is
/// taken.
#[test]
fn a_source_that_burns_loses_to_one_that_does_not() {
    let chosen = |burns: &[(usize, usize, f64)]| {
        let table = Table {
            sources: vec![(Ready::Lit, 0.0), (Ready::Lit, 600.0)],
            costs: vec![
                vec![Some(100.0), Some(300.0)],
                vec![Some(100.0), Some(300.0)],
            ],
            warm: vec![vec![0.0; 2]; 2],
            burns: burns.to_vec(),
        };
        optimum(&table).chosen
    };
    assert_eq!(chosen(&[]), [Some(0), Some(0)]);
    assert_eq!(chosen(&[(1, 0, 3600.0)]), [Some(0), Some(1)]);
    assert_eq!(
        chosen(&[(1, 0, 3600.0), (1, 1, 3600.0)]),
        [Some(0), Some(0)]
    );
}
