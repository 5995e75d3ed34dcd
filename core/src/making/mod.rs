//! From bar to tongs: procedures, their operations in order, and the piece after each.
//!
//! The steel of a half is a row of zones. An operation gives some of them other sections and names
//! what is lost; how long each is follows from its steel. So every stage has the volume of the one
//! before, less what is named, and the last one is the half.

mod blank;
mod blow;
mod calipers;
mod heat;
mod marks;
mod noticed;
mod operation;
mod order;
mod procedure;
pub mod rules;
mod sections;
mod side;
mod stage;
mod state;
mod step;
mod tool;
mod words;

pub use marks::{Face, SetOff, Tool};
pub use operation::{Caliper, Grip, Measure, Operation, Place, Turning};
pub use order::{Change, Changes, Refused};
pub use procedure::{Procedure, Suits, suits, usual};
pub use side::{AnvilEdge, Beyond, Blows, Side};
pub use step::{Lost, Step};
pub use tool::{plan_tool, suits_tool, usual_for_tool};

use crate::asked::{Hole, Layout};
use crate::finding::{Finding, Part, Report};
use crate::forge::balance::Balance;
use crate::forge::balance::Loss;
use crate::shape::Piece;
use crate::tongs::document::{Document, Turn};
use crate::tongs::model::{Half, Model};

use blow::{anvil_edge, blows, struck_mm, turned};
use calipers::calipers;
use heat::{enters_mm, held, hot_mm, needs_hot_mm};
use procedure::steps;
use side::SetDowns;
use stage::{Stood, stand};
use state::{MORE, REIN, State, Task, taken, zones_of};
use step::{apply, part_rein};
use words::Told;

/// A piece on its way, with the operation that it came from: the first of a half has none.
#[derive(Debug, Clone, PartialEq)]
pub struct Stage {
    /// The steel.
    pub piece: Piece,
    /// What was done to the stage before.
    pub operation: Option<Operation>,
    /// Which half of the pair it is of: 0, or 1 for the second where the jaws differ.
    pub half: usize,
}

/// How a pair is made.
#[derive(Debug, Clone, PartialEq)]
pub struct Plan {
    /// By which procedure.
    pub procedure: Procedure,
    /// Which procedures suit, and why not the others.
    pub suits: Vec<Suits>,
    /// Bar, stages and finished half, in order; then those of the second half where the jaws differ.
    pub stages: Vec<Stage>,
    /// The marks on the bar.
    pub marks: Vec<SetOff>,
    /// How often the operations of this list are done: twice where each half is alone and both are
    /// the same.
    pub repeats: u32,
    /// What of the changes that were asked for the steel does not allow, and why.
    pub refused: Vec<Refused>,
    /// What stands against it.
    pub findings: Vec<Finding>,
}

impl Plan {
    /// The operations in order.
    pub fn operations(&self) -> impl Iterator<Item = &Operation> {
        self.stages
            .iter()
            .filter_map(|stage| stage.operation.as_ref())
    }

    /// Whether the steel allows one more change to the operations as they are.
    ///
    /// # Errors
    /// Why it does not.
    pub fn allows(&self, change: Change) -> Result<(), Refused> {
        let first = self.stages.iter().filter(|stage| stage.half == 0);
        let steps = first.filter_map(|stage| Some(stage.operation.as_ref()?.step));
        order::tried(&steps.collect::<Vec<_>>(), change).map(|_| ())
    }
}

/// Plans a pair by a procedure.
pub fn plan(document: &Document, model: &Model, balance: &Balance, procedure: Procedure) -> Plan {
    plan_with(document, (model, balance), procedure, &Changes::default())
}

/// Plans a pair by a procedure with some of its operations left out, moved, set down on the side
/// across, or done cold. What the steel does not allow is not done, and is told in
/// [`Plan::refused`] and among the findings.
pub fn plan_with(
    document: &Document,
    (model, balance): (&Model, &Balance),
    procedure: Procedure,
    changes: &Changes,
) -> Plan {
    let suits = procedure::suits(document, model);
    let mut report = Report::new(document.units.show());
    noticed::unsuited(&mut report, &suits, procedure);
    let pieces = model.pieces();
    let mut stages = Vec::new();
    let mut refused = Vec::new();
    for (at, piece) in pieces.iter().enumerate() {
        let half = if at == 0 { &model.a } else { &model.b };
        let set_downs = SetDowns::across(&changes.across);
        let how = (procedure, set_downs);
        let mut making = Making::new(document, model, balance, (half, piece), how);
        making.half = at;
        refused = making.run(procedure, changes, &mut report, &mut stages);
    }
    noticed::refused(&mut report, &refused);
    let double = pieces.len() == 1 && is_double(document, procedure);
    Plan {
        procedure,
        suits,
        stages,
        marks: marks::marks(balance, document.units),
        repeats: if pieces.len() == 1 && !double { 2 } else { 1 },
        refused,
        findings: report.into_found(),
    }
}

/// Whether both halves are forged on one blank until it is cut apart.
fn is_double(document: &Document, procedure: Procedure) -> bool {
    let together = match document.layout {
        Layout::BothOnOneBar => true,
        Layout::Single { .. } => false,
    };
    together && procedure != Procedure::WeldedRein
}

/// One half on its way through a procedure.
struct Making<'a> {
    task: Task<'a>,
    model: &'a Model,
    state: State,
    half: usize,
    /// The side that lay on the anvil when the last shoulder was set down.
    lies_on: Side,
}

impl<'a> Making<'a> {
    fn new(
        document: &'a Document,
        model: &'a Model,
        balance: &Balance,
        (half, piece): (&'a Half, &'a Piece),
        (procedure, set_downs): (Procedure, SetDowns),
    ) -> Self {
        let flattened = procedure == Procedure::RoundFlattened;
        let how = (flattened, set_downs);
        let task = Task::new(document, (half, piece), model.joggle, how);
        let second = usize::from(piece.wanted == 1 && std::ptr::eq(half, &raw const model.b));
        let turned = document.layout == Layout::BothOnOneBar;
        let own = &balance.pieces[if second == 1 {
            balance.pieces.len() - 1
        } else {
            0
        }];
        let zones = zones_of(&task, &taken(balance, turned)[second], own);
        let double = model.alike && is_double(document, procedure);
        let kerf = own.allowance(Loss::Kerf) * task.area;
        let crop: f64 = balance.allowances.iter().map(|own| own.bar_length_mm).sum();
        let crop = if second == 0 { crop * task.area } else { 0.0 };
        let mut state = State {
            zones,
            double,
            uncut: kerf + crop,
            holed: false,
            third: false,
            apart: false,
        };
        if double {
            // The cut in the middle is half of each half.
            state.zones[REIN].kerf = kerf / 2.0;
        }
        if procedure == Procedure::WeldedRein {
            state.zones[MORE].spare = 0.0;
            part_rein(&task, &mut state);
        }
        Self {
            task,
            model,
            state,
            half: 0,
            lies_on: set_downs.jaw,
        }
    }

    fn run(
        mut self,
        procedure: Procedure,
        changes: &Changes,
        report: &mut Report,
        stages: &mut Vec<Stage>,
    ) -> Vec<Refused> {
        let rein = &self.task.half.rein;
        let all = steps(procedure, self.task.document, &self.state, rein);
        let (order, refused) = order::changed(&all, changes);
        let mut before = stand(&self.task, &self.state, "bar");
        stages.push(self.stage(before.piece.clone(), None));
        for at in 0..order.len() {
            let step = order[at];
            let (next, lost) = apply(&self.task, &self.state, &order[at..]);
            let after = stand(&self.task, &next, step.name());
            let mut operation = self.operation(step, (&before, &after), &next);
            operation.lost = lost;
            if changes.cold.contains(&step) {
                operation.needs_hot_mm = None;
                (operation.hot_mm, operation.hot_after_mm) = (None, None);
            }
            self.lies_on = self.task.set_downs.of(step).unwrap_or(self.lies_on);
            noticed::met(report, &self.task, &operation, (&before.piece, changes));
            stages.push(self.stage(after.piece.clone(), Some(operation)));
            self.state = next;
            before = after;
        }
        refused
    }

    fn stage(&self, piece: Piece, operation: Option<Operation>) -> Stage {
        Stage {
            piece,
            operation,
            half: self.half,
        }
    }

    fn turning(&self, step: Step) -> Turning {
        let hand = self.task.document.hand;
        match self.task.set_downs.of(step) {
            Some(side) => turned(self.lies_on, side, hand),
            None => turning(step, hand),
        }
    }

    fn operation(&self, step: Step, (before, after): (&Stood, &Stood), next: &State) -> Operation {
        let drilled = self.task.document.rivet.made == Hole::Drilled;
        let told = Told {
            task: &self.task,
            model: self.model,
            before: &self.state,
            worked_mm: measure(after, (1, 0.0), step.works()).part_length_mm,
        };
        let words = told.words(step);
        let zone = step.zone();
        let hot = hot_mm(step, before, &self.task);
        let (held, held_at_mm) = held(&before.piece, hot);
        Operation {
            step,
            half: ["", "second half"][self.half],
            part: part_of(zone, &self.task),
            what: words.what,
            brief: told.brief(step),
            ends: ends(step, &self.state),
            place: step.place(drilled),
            turn: self.turning(step),
            before: measure(before, (1, self.state.volume()), step.works()),
            after: measure(after, pieces(&self.state, next), step.works()),
            lost: Vec::new(),
            hot_mm: hot,
            needs_hot_mm: needs_hot_mm(step, before, &self.task),
            hot_after_mm: hot.and_then(|_| hot_mm(step, after, &self.task)),
            struck_mm: struck_mm(step, &self.task, after),
            blows: blows(step, &self.task),
            edge: anvil_edge(step, &self.task, after),
            calipers: calipers(step, after),
            enters_circle_mm: enters_mm(&before.piece, hot),
            held,
            held_at_mm,
            check: words.check,
            cautions: words.cautions,
        }
    }
}

/// At how many ends of the blank a step is done: the heads of a blank for two are at both.
fn ends(step: Step, before: &State) -> u32 {
    // The rein is set down behind each boss, and drawn out in one.
    let whole = step.works().contains(&REIN) && step != Step::SetDownRein;
    if before.double && !whole { 2 } else { 1 }
}

fn part_of(zone: usize, task: &Task<'_>) -> Part {
    if zone < MORE {
        task.piece.stretches[zone].part
    } else {
        Part::Rein
    }
}

/// How many pieces come out of an operation, and their steel: two where a blank is cut apart, of
/// which the list goes on with one.
fn pieces(before: &State, after: &State) -> (u32, f64) {
    let parted = before.double && !after.double;
    let count = if parted { 2 } else { 1 };
    (count, f64::from(count) * after.volume())
}

fn measure(stood: &Stood, (pieces, volume_mm3): (u32, f64), zones: &[usize]) -> Measure {
    let span = stood.span(zones);
    Measure {
        pieces,
        length_mm: stood.piece.length_mm(),
        volume_mm3,
        part_length_mm: span.map_or(0.0, |(from, to)| to - from),
        section: span.and_then(|(from, to)| stood.piece.cross(f64::midpoint(from, to))),
    }
}

fn turning(step: Step, hand: Turn) -> Turning {
    match step {
        Step::Twist => match hand {
            Turn::Left => Turning::QuarterLeft,
            Turn::Right => Turning::QuarterRight,
        },
        Step::ForgeBoss
        | Step::DrawStub
        | Step::DrawSquare
        | Step::DrawOctagon
        | Step::DrawRound
        | Step::RoughJaw
        | Step::FinishEnd => Turning::BetweenBlows,
        Step::MakeHole | Step::Notch => Turning::Half,
        Step::CutBar
        | Step::Flatten
        | Step::SetDownJaw
        | Step::SetDownBoss
        | Step::SetDownRein
        | Step::CutApart
        | Step::Gather
        | Step::Weld
        | Step::CutTail
        | Step::TrimRein
        | Step::Grip
        | Step::TrimJaw
        | Step::SetNeck
        | Step::ShapeJaw
        | Step::BendRein
        | Step::Tool(_) => Turning::None,
    }
}
