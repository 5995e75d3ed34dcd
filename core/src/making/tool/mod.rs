//! From bar to tool. The steel of a tool is a row of zones, as that of a half is: an operation gives
//! some of them other sections and names what is lost, and how long each is follows from its steel.

mod order;
mod state;
mod words;

use crate::finding::{GEOMETRY, Kind, Part, Report};
use crate::forge::balance::{Balance, Loss};
use crate::tool::forging::Forging;
use crate::tool::{Model, Mount, Tool};
use crate::units::Show;

use super::blow::Blows;
use super::heat::{enters_mm, held};
use super::operation::{Caliper, Operation, Place, Turning};
use super::procedure::{Procedure, Suits};
use super::stage::Stood;
use super::step::{Lost, Step};
use super::{Plan, Stage, marks, measure};

use order::{steps, zones_of};
use state::{State, stand};

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
        let all = steps(self, on_bar);
        let mut state = State::new(self, &all);
        let mut before = stand(self, &state, "bar");
        let mut stages = vec![Stage {
            piece: before.piece.clone(),
            operation: None,
            half: 0,
        }];
        for &step in &all {
            let (next, lost) = state.after(step);
            let after = stand(self, &next, step.name());
            let operation = self.operation(step, (&before, &state), (&after, &next), lost);
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
        step: Forging,
        (before, state): (&Stood, &State),
        (after, next): (&Stood, &State),
        lost: Vec<Lost>,
    ) -> Operation {
        let zones = zones_of(step, self.model);
        let needs = is_hot(step).then(|| before.span(&zones)).flatten();
        let more = self.tool.bar.stock.size().mm();
        let hot = needs.map(|span| self.widened(before, span, more));
        let hot_after = hot
            .and_then(|_| after.span(&zones))
            .map(|span| self.widened(after, span, more));
        let (held, held_at_mm) = held(&before.piece, hot);
        let told = words::words(self, step, after.span(&zones));
        Operation {
            step: Step::Tool(step),
            half: "",
            part: self.part(&zones),
            what: told.what,
            brief: told.brief,
            ends: 1,
            place: place(step),
            turn: turning(step),
            before: measure(before, (1, state.volume()), &zones),
            after: measure(after, (1, next.volume()), &zones),
            lost,
            hot_mm: hot,
            needs_hot_mm: needs,
            hot_after_mm: hot_after,
            struck_mm: struck(step, after, &zones),
            blows: blows(step),
            edge: None,
            calipers: calipers(step, after, &zones),
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

    fn part(&self, zones: &[usize]) -> Part {
        let first = zones
            .first()
            .and_then(|zone| self.model.piece.stretches.get(*zone));
        first.map_or(Part::Tool, |own| own.part)
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

/// Whether an operation wants a forging heat. Hardening wants another, that the maker names.
fn is_hot(step: Forging) -> bool {
    match step {
        Forging::CutBar
        | Forging::CutOff
        | Forging::Dress
        | Forging::Harden
        | Forging::CoolSlowly => false,
        Forging::DrawShank
        | Forging::SetShoulder
        | Forging::UpsetBlock
        | Forging::ShapeBody
        | Forging::TaperSquare
        | Forging::TaperOctagon
        | Forging::TaperRound
        | Forging::DrawBlade
        | Forging::TaperBack
        | Forging::RoundNose
        | Forging::PunchEye
        | Forging::CupEnd
        | Forging::PressGroove
        | Forging::Slit
        | Forging::OpenTines
        | Forging::DrawFace => true,
    }
}

fn place(step: Forging) -> Place {
    match step {
        Forging::CutBar | Forging::CutOff | Forging::Slit => Place::Hardy,
        Forging::SetShoulder => Place::HardyHole,
        Forging::PunchEye => Place::Pritchel,
        Forging::CupEnd | Forging::PressGroove => Place::Swage,
        Forging::OpenTines => Place::Horn,
        Forging::Dress => Place::Grinder,
        Forging::Harden | Forging::CoolSlowly => Place::Bench,
        Forging::DrawBlade => Place::Horn,
        Forging::DrawShank
        | Forging::UpsetBlock
        | Forging::ShapeBody
        | Forging::TaperSquare
        | Forging::TaperOctagon
        | Forging::TaperRound
        | Forging::TaperBack
        | Forging::RoundNose
        | Forging::DrawFace => Place::Face,
    }
}

fn turning(step: Forging) -> Turning {
    match step {
        Forging::DrawShank
        | Forging::ShapeBody
        | Forging::TaperSquare
        | Forging::TaperOctagon
        | Forging::TaperRound
        | Forging::TaperBack
        | Forging::DrawFace => Turning::BetweenBlows,
        Forging::PunchEye | Forging::Slit | Forging::DrawBlade => Turning::Half,
        Forging::CutBar
        | Forging::SetShoulder
        | Forging::UpsetBlock
        | Forging::RoundNose
        | Forging::CupEnd
        | Forging::PressGroove
        | Forging::OpenTines
        | Forging::CutOff
        | Forging::Dress
        | Forging::Harden
        | Forging::CoolSlowly => Turning::None,
    }
}

fn blows(step: Forging) -> Blows {
    match step {
        Forging::CutBar | Forging::CutOff | Forging::Slit | Forging::Dress => Blows::Cut,
        Forging::SetShoulder | Forging::UpsetBlock | Forging::CupEnd | Forging::PressGroove => {
            Blows::End
        }
        Forging::PunchEye => Blows::Through,
        Forging::OpenTines => Blows::Bend,
        Forging::DrawBlade => Blows::On(super::Side::Outer),
        Forging::Harden | Forging::CoolSlowly => Blows::End,
        Forging::DrawShank
        | Forging::ShapeBody
        | Forging::TaperSquare
        | Forging::TaperOctagon
        | Forging::TaperRound
        | Forging::TaperBack
        | Forging::RoundNose
        | Forging::DrawFace => Blows::AllRound,
    }
}

/// What is struck: of a cut or an end one place.
fn struck(step: Forging, after: &Stood, zones: &[usize]) -> (f64, f64) {
    let span = after.span(zones).unwrap_or_default();
    let at = |place: f64| (place, place);
    match step {
        Forging::CutBar | Forging::CutOff | Forging::UpsetBlock => at(after.piece.length_mm()),
        Forging::CupEnd
        | Forging::PressGroove
        | Forging::Slit
        | Forging::Dress
        | Forging::Harden
        | Forging::CoolSlowly
        | Forging::SetShoulder => at(0.0),
        Forging::PunchEye => at(f64::midpoint(span.0, span.1)),
        Forging::DrawShank
        | Forging::ShapeBody
        | Forging::TaperSquare
        | Forging::TaperOctagon
        | Forging::TaperRound
        | Forging::DrawBlade
        | Forging::TaperBack
        | Forging::RoundNose
        | Forging::OpenTines
        | Forging::DrawFace => span,
    }
}

/// Parts of the way along what was worked at which it is measured.
const MEASURED: [f64; 3] = [0.04, 0.5, 0.96];

fn calipers(step: Forging, after: &Stood, zones: &[usize]) -> Vec<Caliper> {
    /// Sizes nearer than this are one for calipers, mm.
    const SAME: f64 = 0.1;
    if !is_hot(step) {
        return Vec::new();
    }
    let (from, to) = after.span(zones).unwrap_or_default();
    let mut all: Vec<Caliper> = Vec::new();
    for part in MEASURED {
        let at_mm = from + part * (to - from);
        let Some(cross) = after.piece.cross(at_mm) else {
            continue;
        };
        let own = Caliper {
            at_mm,
            depth_mm: cross.depth_mm,
            width_mm: cross.width_mm,
        };
        let same = |last: &Caliper| {
            (last.depth_mm - own.depth_mm).abs() < SAME
                && (last.width_mm - own.width_mm).abs() < SAME
        };
        if !all.last().is_some_and(same) {
            all.push(own);
        }
    }
    all
}
