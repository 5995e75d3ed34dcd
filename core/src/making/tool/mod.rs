//! From bar to tool. The steel of a tool is a row of zones, as that of a half is: an operation gives
//! some of them other sections and names what is lost, and how long each is follows from its steel.

mod lain;
mod order;
mod profiles;
mod state;
mod told;
mod way;
mod words;
mod work;
mod working;

use crate::finding::{GEOMETRY, Kind, Part, Report};
use crate::forge::balance::{Balance, Loss};
use crate::tool::forging::Forging;
use crate::tool::{Model, Mount, Run, Tool};
use crate::units::Show;

use super::heat::{enters_mm, held};
use super::operation::{Caliper, Operation};
use super::procedure::{Procedure, Suits};
use super::stage::Stood;
use super::step::{Lost, Step};
use super::{Plan, Stage, marks, measure};

use lain::stand;
use order::works;
use state::State;
use way::Way;
use work::Work;

/// Cold bar by which a tool is held while it is forged on it, mm at the least: a hand and what the heat
/// runs into (common practice, no source).
const TAIL_MM: f64 = 200.0;

/// Which procedures suit a tool, and why the others do not.
pub fn suits_tool(tool: &Tool) -> Vec<Suits> {
    let show = tool.units.show();
    let why_not = |procedure| match procedure {
        Procedure::ToolOnBar if tool.tail.mm() < TAIL_MM => Some(format!(
            "a handling tail of {} is no handle: leave {} of bar on",
            show.text(tool.tail.mm()),
            show.text(TAIL_MM)
        )),
        Procedure::ToolCutFirst if tool.tail.mm() > 0.0 => {
            Some("a handling tail is left on: it is forged on the bar".to_owned())
        }
        Procedure::ToolOnBar | Procedure::ToolCutFirst => None,
        Procedure::ThreeShoulders
        | Procedure::ReinsFirst
        | Procedure::JawFirst
        | Procedure::WeldedRein
        | Procedure::FlatTwist
        | Procedure::RoundFlattened => {
            Some("it is for a pair of tongs, and this is a tool".to_owned())
        }
    };
    let suit = |procedure| Suits {
        procedure,
        why_not: why_not(procedure),
    };
    Procedure::OF_TOOLS.map(suit).into()
}

/// The first procedure that suits a tool.
pub fn usual_for_tool(tool: &Tool) -> Procedure {
    let all = suits_tool(tool).into_iter();
    let first = { all }.find(|own| own.why_not.is_none());
    first.map_or(Procedure::ToolCutFirst, |own| own.procedure)
}

/// Plans a tool by a procedure: on the bar only where there is a tail to hold it by.
pub fn plan_tool(tool: &Tool, model: &Model, balance: &Balance, procedure: Procedure) -> Plan {
    let suits = suits_tool(tool);
    let mut report = Report::new(tool.units.show());
    let against = suits.iter().find(|own| own.procedure == procedure);
    match against {
        Some(Suits { why_not: None, .. }) => {}
        Some(Suits {
            why_not: Some(why), ..
        }) => unsuited(&mut report, procedure, why),
        None => unsuited(
            &mut report,
            procedure,
            "it is for a pair of tongs, and this is a tool",
        ),
    }
    let task = Task {
        tool,
        model,
        balance,
    };
    let stages = task.run(procedure == Procedure::ToolOnBar);
    Plan {
        procedure,
        suits,
        stages,
        marks: marks::marks(balance, tool.units),
        repeats: 1,
        refused: Vec::new(),
        findings: report.into_found(),
    }
}

fn unsuited(report: &mut Report, procedure: Procedure, why: &str) {
    report.mend(Kind::ProcedureUnsuited, Part::Tool).say(
        format!("{}: {why}", procedure.name()),
        "choose a procedure that suits",
        GEOMETRY,
    );
}

/// A tool that is planned.
pub(super) struct Task<'a> {
    tool: &'a Tool,
    model: &'a Model,
    balance: &'a Balance,
}

impl Task<'_> {
    fn show(&self) -> Show {
        self.tool.units.show()
    }

    /// Bar, stages, finished tool.
    fn run(&self, on_bar: bool) -> Vec<Stage> {
        let all = works(self, on_bar);
        let mut state = State::before(self, &all);
        let mut before = stand(self, &state, "bar");
        let mut stages = vec![Stage {
            piece: before.piece.clone(),
            operation: None,
            half: 0,
        }];
        for work in &all {
            let (next, lost) = state.after(work, self);
            let after = stand(self, &next, work.step.name());
            let operation = self.operation(work, (&before, &state), (&after, &next), lost);
            stages.push(Stage {
                piece: after.piece.clone(),
                operation: Some(operation),
                half: 0,
            });
            (state, before) = (next, after);
        }
        stages
    }

    fn operation(
        &self,
        work: &Work,
        (before, state): (&Stood, &State),
        (after, next): (&Stood, &State),
        lost: Vec<Lost>,
    ) -> Operation {
        let (step, places) = (work.step, work.places());
        let way = Way::of(step);
        let needs = way.is_hot().then(|| before.span(&places)).flatten();
        let more = self.tool.bar.stock.size().mm();
        let hot = needs.map(|span| self.widened(before, span, more));
        let worked = after.span(&places);
        let hot_after = hot.and(worked).map(|span| self.widened(after, span, more));
        let (held, held_at_mm) = held(&before.piece, hot);
        let told = words::words(self, work, worked);
        Operation {
            step: Step::Tool(step),
            half: "",
            part: self.part(&places),
            parts: self.parts(&places),
            what: told.what,
            brief: told.brief,
            ends: 1,
            place: way.place,
            turn: way.turning,
            before: measure(before, (1, state.volume()), &places),
            after: measure(after, (1, next.volume()), &places),
            lost,
            hot_mm: hot,
            needs_hot_mm: needs,
            hot_after_mm: hot_after,
            struck_mm: way.struck(worked.unwrap_or_default(), after.piece.length_mm()),
            blows: way.blows,
            edge: None,
            calipers: calipers(step, after, &places),
            enters_circle_mm: enters_mm(&before.piece, hot),
            held,
            held_at_mm,
            check: told.check,
            cautions: told.cautions,
        }
    }

    fn widened(&self, stood: &Stood, (from, to): (f64, f64), more: f64) -> (f64, f64) {
        (
            (from - more).max(0.0),
            (to + more).min(stood.piece.length_mm()),
        )
    }

    /// The runs of the tool from its working end on, each with its stretch and its place in that.
    fn runs(&self) -> impl Iterator<Item = ((usize, usize), &Run)> {
        let stretches = self.model.runs.iter().enumerate();
        stretches.flat_map(|(stretch, runs)| {
            let own = runs.iter().enumerate();
            own.map(move |(at, run)| ((stretch, at), run))
        })
    }

    /// The same by their places.
    fn places(&self) -> impl Iterator<Item = (usize, &Run)> {
        let runs = self.runs().enumerate();
        runs.map(|(place, (_, run))| (place, run))
    }

    /// The part to which the first of some places belongs.
    fn part(&self, places: &[usize]) -> Part {
        let first = places.first().and_then(|place| self.places().nth(*place));
        first.map_or(Part::Tool, |own| own.1.part)
    }

    /// The parts of some places, each once.
    fn parts(&self, places: &[usize]) -> Vec<Part> {
        let mut all: Vec<Part> = places.iter().map(|place| self.part(&[*place])).collect();
        all.dedup();
        all
    }

    /// A loss of the whole tool, mm³.
    fn loss(&self, what: Loss) -> f64 {
        let own = self.balance.pieces.first();
        own.map_or(0.0, |own| own.allowance(what)) * self.balance.bar_area_mm2
    }

    /// Whether it stands in the hardy hole.
    fn is_hardy(&self) -> bool {
        matches!(self.tool.shape.mount, Mount::Hardy(_))
    }
}

/// Parts of a run at which it is measured: near its ends, off their shoulders.
const MEASURED: [f64; 2] = [0.03, 0.97];

/// What calipers are set to along what an operation has worked, at the ends of its runs.
fn calipers(step: Forging, after: &Stood, places: &[usize]) -> Vec<Caliper> {
    if !Way::of(step).is_hot() {
        return Vec::new();
    }
    let mut all: Vec<Caliper> = Vec::new();
    let worked = after.zones.iter().filter(|own| places.contains(&own.0));
    for &(_, from, to) in worked {
        let measured = MEASURED.map(|part| caliper(after, from + part * (to - from)));
        for own in measured.into_iter().flatten() {
            if !all.last().is_some_and(|last| is_same(last, &own)) {
                all.push(own);
            }
        }
    }
    all
}

fn caliper(after: &Stood, at_mm: f64) -> Option<Caliper> {
    let cross = after.piece.cross(at_mm)?;
    Some(Caliper {
        at_mm,
        depth_mm: cross.depth_mm,
        width_mm: cross.width_mm,
    })
}

fn is_same(a: &Caliper, b: &Caliper) -> bool {
    /// Sizes nearer than this are one for calipers, mm.
    const SAME: f64 = 0.1;
    (a.depth_mm - b.depth_mm).abs() < SAME && (a.width_mm - b.width_mm).abs() < SAME
}
