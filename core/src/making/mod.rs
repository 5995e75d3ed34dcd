//! From bar to tongs: procedures, their operations in order, and the piece after each.
//!
//! The steel of a half is a row of zones. An operation gives some of them other sections and names
//! what is lost; how long each is follows from its steel. So every stage has the volume of the one
//! before, less what is named, and the last one is the half.

mod blank;
mod marks;
mod noticed;
mod operation;
mod order;
mod procedure;
pub mod rules;
mod sections;
mod stage;
mod state;
mod step;
mod words;

pub use marks::{Face, SetOff, Tool};
pub use operation::{Grip, Measure, Operation, Place, Turning};
pub use order::Changes;
pub use procedure::{Procedure, Suits, suits, usual};
pub use step::{Lost, Step};

use crate::asked::{Hole, Layout};
use crate::finding::{Finding, Part, Report};
use crate::forge::balance::Balance;
use crate::forge::balance::Loss;
use crate::shape::Piece;
use crate::tongs::document::{Document, Turn};
use crate::tongs::model::{Half, Model};

use procedure::steps;
use stage::{Stood, stand};
use state::{MORE, REIN, SHOULDER, State, Task, taken, zones_of};
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

    /// Whether a half comes out without an operation of it.
    pub fn can_go_without(&self, step: Step) -> bool {
        let all: Vec<Step> = self.operations().map(|own| own.step).collect();
        all.contains(&step) && step.can_be_left_out(&all)
    }
}

/// Plans a pair by a procedure.
pub fn plan(document: &Document, model: &Model, balance: &Balance, procedure: Procedure) -> Plan {
    plan_with(document, (model, balance), procedure, &Changes::default())
}

/// Plans a pair by a procedure with some of its operations left out, moved, or done cold.
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
    for (at, piece) in pieces.iter().enumerate() {
        let half = if at == 0 { &model.a } else { &model.b };
        let mut making = Making::new(document, model, balance, (half, piece), procedure);
        making.half = at;
        making.run(procedure, changes, &mut report, &mut stages);
    }
    let double = pieces.len() == 1 && is_double(document, procedure);
    Plan {
        procedure,
        suits,
        stages,
        marks: marks::marks(balance, document.units),
        repeats: if pieces.len() == 1 && !double { 2 } else { 1 },
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
}

impl<'a> Making<'a> {
    fn new(
        document: &'a Document,
        model: &'a Model,
        balance: &Balance,
        (half, piece): (&'a Half, &'a Piece),
        procedure: Procedure,
    ) -> Self {
        let flattened = procedure == Procedure::RoundFlattened;
        let task = Task::new(document, (half, piece), model.joggle, flattened);
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
        }
    }

    fn run(
        mut self,
        procedure: Procedure,
        changes: &Changes,
        report: &mut Report,
        stages: &mut Vec<Stage>,
    ) {
        let rein = &self.task.half.rein;
        let all = steps(procedure, self.task.document, &self.state, rein);
        let (order, refused) = order::changed(&all, changes);
        noticed::refused(report, &refused);
        let mut before = stand(&self.task, &self.state, "bar");
        stages.push(self.stage(before.piece.clone(), None));
        for at in 0..order.len() {
            let step = order[at];
            let (next, lost) = apply(&self.task, &self.state, &order[at..]);
            let after = stand(&self.task, &next, step.name());
            let mut operation = self.operation(step, (&before, &after), &next);
            operation.lost = lost;
            if changes.cold.contains(&step) {
                operation.hot_mm = None;
            }
            noticed::met(report, &self.task, &operation, (&before.piece, changes));
            stages.push(self.stage(after.piece.clone(), Some(operation)));
            self.state = next;
            before = after;
        }
    }

    fn stage(&self, piece: Piece, operation: Option<Operation>) -> Stage {
        Stage {
            piece,
            operation,
            half: self.half,
        }
    }

    fn operation(&self, step: Step, (before, after): (&Stood, &Stood), next: &State) -> Operation {
        let document = self.task.document;
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
            place: step.place(document.rivet.made == Hole::Drilled),
            turn: turning(step, document.hand),
            before: measure(before, (1, self.state.volume()), step.works()),
            after: measure(after, pieces(&self.state, next), step.works()),
            lost: Vec::new(),
            hot_mm: hot,
            struck_mm: after.span(step.works()).unwrap_or_default(),
            enters_circle_mm: enters_mm(&before.piece, hot),
            held,
            held_at_mm,
            check: words.check,
            cautions: words.cautions,
        }
    }
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

/// How much of a rein is heated to finish its end, in its depths there (judgement).
const END_HEAT: f64 = 6.0;

/// What has to be hot: the zones of a step and a bar's thickness on either side.
fn hot_mm(step: Step, before: &Stood, task: &Task<'_>) -> Option<(f64, f64)> {
    let zones = match step {
        // Of the rein only its beginning.
        Step::SetDownRein => &[SHOULDER],
        step => step.hot(task.document.rivet.made),
    };
    let (from, to) = before.span(zones)?;
    // An end is finished in the heat of its end.
    let end_heat = to - END_HEAT * task.document.rein.end.depth_mm();
    let from = if step == Step::FinishEnd {
        from.max(end_heat)
    } else {
        from
    };
    let more = if step == Step::SetDownRein { 2.0 } else { 1.0 } * task.bar.width;
    let length = before.piece.length_mm();
    Some(((from - more).max(0.0), (to + more).min(length)))
}

/// The circle around all that goes into the fire, from the nearer end of the piece.
fn enters_mm(piece: &Piece, hot: Option<(f64, f64)>) -> f64 {
    let Some((from, to)) = hot else {
        return 0.0;
    };
    let length = piece.length_mm();
    if to <= length - from {
        piece.bore_mm((0.0, to))
    } else {
        piece.bore_mm((from, length))
    }
}

/// By hand where enough cold bar stands out of the fire, else with tongs at the colder end; and
/// where, mm along the piece.
fn held(piece: &Piece, hot: Option<(f64, f64)>) -> (Grip, f64) {
    let length = piece.length_mm();
    let (from, to) = hot.unwrap_or((0.0, 0.0));
    let (before, behind) = (from, length - to);
    let at = if behind >= before {
        length - 0.3 * behind
    } else {
        0.3 * before
    };
    let cold = behind.max(before);
    if cold >= operation::BY_HAND_MM {
        return (Grip::Hand(cold), at);
    }
    let cross = piece.cross(at);
    let (depth, width) = cross.map_or((0.0, 0.0), |own| (own.depth_mm, own.width_mm));
    (Grip::Tongs(depth, width), at)
}

fn turning(step: Step, hand: Turn) -> Turning {
    let quarter = match hand {
        Turn::Left => Turning::QuarterLeft,
        Turn::Right => Turning::QuarterRight,
    };
    match step {
        Step::SetDownBoss | Step::SetDownRein | Step::Twist => quarter,
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
        | Step::CutApart
        | Step::Gather
        | Step::Weld
        | Step::CutTail
        | Step::TrimRein
        | Step::Grip
        | Step::TrimJaw
        | Step::SetNeck
        | Step::ShapeJaw
        | Step::BendRein => Turning::None,
    }
}
