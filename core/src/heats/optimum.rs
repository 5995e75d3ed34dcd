//! Sources given to operations so that all of them together take the least time, none burns the piece where
//! another does not, and none is left for another for a moment's gain: exact, by dynamic programming over what a source finds when its turn
//! comes.
//!
//! What comes after depends on what came before in three ways only: which coil is on the machine, which
//! fires burn, and which source gave the last heat, since its warmth is still in the piece. These are
//! the state; each is followed once with its least time.

use std::collections::BTreeMap;

/// How a source is made ready.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ready {
    /// A coil: one at a time is on the machine, and the first is on it when work begins.
    Mounted,
    /// A forge or a fire: it is lit once and then burns.
    Lit,
}

/// What a source finds when its turn comes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Before {
    /// The source of the operation before; `None` at the beginning and where nothing gave heat.
    pub source: Option<usize>,
    /// What it takes now to make this one ready, s.
    pub ready_s: f64,
}

/// A problem: operations in order, sources for them.
pub trait Problem {
    /// How many operations.
    fn operations(&self) -> usize;
    /// How each source is made ready, and in what time, s.
    fn sources(&self) -> &[(Ready, f64)];
    /// What an operation takes with a source, s, making ready not counted; `None` where the source does
    /// not serve.
    fn cost_s(&self, operation: usize, source: usize, before: Before) -> Option<f64>;
    /// What a source that serves and burns what is already made is worth in time to keep off, s; nothing where it
    /// burns nothing.
    fn burns_s(&self, operation: usize, source: usize) -> f64;
}

/// The best that there is.
#[derive(Debug, Clone, PartialEq)]
pub struct Best {
    /// The source of each operation; `None` where none serves.
    pub chosen: Vec<Option<usize>>,
    /// All time, s.
    pub total_s: f64,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct State {
    last: Option<usize>,
    mounted: Option<usize>,
    lit: u32,
}

impl State {
    /// The state after a source was used, and what making it ready took.
    fn with(self, source: usize, (ready, seconds): (Ready, f64)) -> (Self, f64) {
        let last = Some(source);
        match ready {
            Ready::Mounted => {
                let is_there = self.mounted.is_none_or(|own| own == source);
                let next = Self {
                    last,
                    mounted: last,
                    ..self
                };
                (next, if is_there { 0.0 } else { seconds })
            }
            Ready::Lit => {
                let bit = 1 << source;
                let burns = self.lit & bit != 0;
                let next = Self {
                    last,
                    lit: self.lit | bit,
                    ..self
                };
                (next, if burns { 0.0 } else { seconds })
            }
        }
    }
}

/// A way to a state: its time, what its burning weighs, how often the source was another than before, how
/// often one was made ready, the state before and the choice.
#[derive(Debug, Clone, Copy)]
struct Way {
    seconds: f64,
    burns_s: f64,
    turns: u32,
    changes: u32,
    before: State,
    choice: Option<usize>,
}

/// Two times nearer than this are one, s: then fewer changes decide.
const SAME_S: f64 = 1e-6;

/// What turning to another source must save, s: it is another place to stand and another habit, and
/// nobody leaves a fire that serves for a moment's gain. A judgement; common practice, no source.
pub const TURN_S: f64 = 10.0;

impl Way {
    /// What is made least: the time, what burns, and what turning to another source must save.
    fn weight(&self) -> f64 {
        self.seconds + self.burns_s + TURN_S * f64::from(self.turns)
    }

    fn beats(&self, other: &Self) -> bool {
        let off = self.weight() - other.weight();
        off < -SAME_S || (off < SAME_S && self.changes < other.changes)
    }
}

/// The least time for all operations, what burns weighed with it, where turning to another source is worth [`TURN_S`] at the least.
/// Where no source serves an operation it is passed over, and what
/// comes after begins cold.
pub fn optimum(problem: &impl Problem) -> Best {
    let start = State {
        last: None,
        mounted: None,
        lit: 0,
    };
    let mut layers: Vec<BTreeMap<State, Way>> = Vec::new();
    let mut now: BTreeMap<State, Way> = BTreeMap::new();
    now.insert(start, standing(start));
    for operation in 0..problem.operations() {
        let mut next = BTreeMap::new();
        let mut costs = Costs::new(problem, operation);
        for (&state, way) in &now {
            let mut served = false;
            for (source, &ready) in problem.sources().iter().enumerate() {
                let (after, ready_s) = state.with(source, ready);
                let before = Before {
                    source: state.last,
                    ready_s,
                };
                let Some(cost) = costs.of(source, before) else {
                    continue;
                };
                served = true;
                let tried = Way {
                    seconds: way.seconds + ready_s + cost,
                    burns_s: way.burns_s + problem.burns_s(operation, source),
                    turns: way.turns + u32::from(state.last.is_some_and(|last| last != source)),
                    changes: way.changes + u32::from(ready_s > 0.0),
                    before: state,
                    choice: Some(source),
                };
                keep(&mut next, after, tried);
            }
            if !served {
                let after = State {
                    last: None,
                    ..state
                };
                let passed = Way {
                    before: state,
                    choice: None,
                    ..*way
                };
                keep(&mut next, after, passed);
            }
        }
        layers.push(next.clone());
        now = next;
    }
    traced(&layers, &now)
}

/// Costs of one operation, each asked once: they follow from the source before and from whether this one
/// is ready, of which there are few.
struct Costs<'a, P: Problem> {
    problem: &'a P,
    operation: usize,
    /// By source, source before with none first, and whether it is ready.
    known: Vec<Option<Option<f64>>>,
}

impl<'a, P: Problem> Costs<'a, P> {
    fn new(problem: &'a P, operation: usize) -> Self {
        let count = problem.sources().len();
        Self {
            problem,
            operation,
            known: vec![None; 2 * count * (count + 1)],
        }
    }

    fn of(&mut self, source: usize, before: Before) -> Option<f64> {
        let count = self.problem.sources().len();
        let last = before.source.map_or(0, |last| last + 1);
        let place = 2 * (source * (count + 1) + last) + usize::from(before.ready_s > 0.0);
        let (problem, operation) = (self.problem, self.operation);
        let known = &mut self.known[place];
        *known.get_or_insert_with(|| problem.cost_s(operation, source, before))
    }
}

fn standing(state: State) -> Way {
    Way {
        seconds: 0.0,
        burns_s: 0.0,
        turns: 0,
        changes: 0,
        before: state,
        choice: None,
    }
}

fn keep(layer: &mut BTreeMap<State, Way>, state: State, tried: Way) {
    match layer.get_mut(&state) {
        Some(own) if !tried.beats(own) => {}
        Some(own) => *own = tried,
        None => {
            layer.insert(state, tried);
        }
    }
}

fn traced(layers: &[BTreeMap<State, Way>], last: &BTreeMap<State, Way>) -> Best {
    let best = last
        .iter()
        .reduce(|a, b| if b.1.beats(a.1) { b } else { a });
    let Some((&state, way)) = best else {
        return Best {
            chosen: Vec::new(),
            total_s: 0.0,
        };
    };
    let mut chosen = Vec::with_capacity(layers.len());
    let mut at = state;
    for layer in layers.iter().rev() {
        let way = &layer[&at];
        chosen.push(way.choice);
        at = way.before;
    }
    chosen.reverse();
    Best {
        chosen,
        total_s: way.seconds,
    }
}
