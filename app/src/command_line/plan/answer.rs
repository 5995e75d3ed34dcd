//! How a pair or a tool is made, for scripts.

use reinwright_core::making::{self, Operation, Plan};
use serde::Serialize;

use crate::command_line::findings::FindingAnswer;

/// All that a plan says.
#[derive(Serialize)]
pub(super) struct Answer<'a> {
    procedure: &'static str,
    procedures: Vec<SuitsAnswer>,
    marks: Vec<MarkAnswer>,
    operations: Vec<OperationAnswer>,
    /// What of the changes that were asked for the steel does not allow.
    refused: Vec<String>,
    findings: Vec<FindingAnswer<'a>>,
    totals: Totals,
}

#[derive(Serialize)]
struct SuitsAnswer {
    procedure: &'static str,
    suits: bool,
    #[serde(skip_serializing_if = "Option::is_none")]
    why_not: Option<String>,
}

#[derive(Serialize)]
struct MarkAnswer {
    what: String,
    at_mm: f64,
    measured_mm: f64,
    from_right_mm: f64,
    face: &'static str,
    tool: &'static str,
}

#[derive(Serialize)]
struct OperationAnswer {
    operation: &'static str,
    #[serde(skip_serializing_if = "str::is_empty")]
    half: &'static str,
    what: String,
    brief: String,
    /// Two while a blank for both halves is worked at both its ends.
    ends: u32,
    part: &'static str,
    place: &'static str,
    length_before_mm: f64,
    length_after_mm: f64,
    /// Two where a blank is cut apart: the list goes on with one.
    pieces_after: u32,
    part_length_before_mm: f64,
    part_length_after_mm: f64,
    elongation: f64,
    volume_before_mm3: f64,
    volume_after_mm3: f64,
    lost_mm3: f64,
    lost: Vec<LostAnswer>,
    /// Nothing for cold work.
    hot_from_mm: Option<f64>,
    hot_to_mm: Option<f64>,
    /// The same steel afterwards.
    hot_after_from_mm: Option<f64>,
    hot_after_to_mm: Option<f64>,
    enters_circle_mm: f64,
    turn: &'static str,
    blows: &'static str,
    struck_from_mm: f64,
    struck_to_mm: f64,
    /// The place that lies on the anvil's edge, where a shoulder is set down on it.
    edge_at_mm: Option<f64>,
    /// The side that lies on the anvil then.
    edge_under: Option<&'static str>,
    calipers: Vec<CaliperAnswer>,
    held_at_mm: f64,
    check: String,
    cautions: Vec<&'static str>,
}

#[derive(Serialize)]
struct CaliperAnswer {
    at_mm: f64,
    depth_mm: f64,
    width_mm: f64,
}

#[derive(Serialize)]
struct LostAnswer {
    what: &'static str,
    volume_mm3: f64,
}

#[derive(Serialize)]
struct Totals {
    operations: usize,
    repeats: u32,
    bar_volume_mm3: f64,
    half_volume_mm3: f64,
    lost_mm3: f64,
}

impl<'a> Answer<'a> {
    pub(super) fn new(plan: &'a Plan) -> Self {
        let operations: Vec<&Operation> = plan.operations().collect();
        Self {
            procedure: plan.procedure.word(),
            procedures: plan.suits.iter().map(SuitsAnswer::new).collect(),
            marks: plan.marks.iter().map(MarkAnswer::new).collect(),
            refused: plan.refused.iter().map(ToString::to_string).collect(),
            findings: plan.findings.iter().map(FindingAnswer::new).collect(),
            totals: Totals {
                operations: operations.len(),
                repeats: plan.repeats,
                bar_volume_mm3: operations.first().map_or(0.0, |own| own.before.volume_mm3),
                half_volume_mm3: operations.last().map_or(0.0, |own| own.after.volume_mm3),
                lost_mm3: operations.iter().map(|own| own.lost_mm3()).sum(),
            },
            operations: operations.into_iter().map(OperationAnswer::new).collect(),
        }
    }
}

impl SuitsAnswer {
    fn new(own: &making::Suits) -> Self {
        Self {
            procedure: own.procedure.word(),
            suits: own.why_not.is_none(),
            why_not: own.why_not.clone(),
        }
    }
}

impl MarkAnswer {
    fn new(mark: &making::SetOff) -> Self {
        Self {
            what: mark.what.clone(),
            at_mm: mark.at_mm,
            measured_mm: mark.measured.mm(),
            from_right_mm: mark.from_end.mm(),
            face: mark.face.name(),
            tool: mark.tool.name(),
        }
    }
}

impl CaliperAnswer {
    fn new(own: &making::Caliper) -> Self {
        Self {
            at_mm: own.at_mm,
            depth_mm: own.depth_mm,
            width_mm: own.width_mm,
        }
    }
}

impl OperationAnswer {
    fn new(own: &Operation) -> Self {
        let lost = own.lost.iter().map(|lost| LostAnswer {
            what: lost.what.name(),
            volume_mm3: lost.volume_mm3,
        });
        Self {
            operation: own.step.name(),
            half: own.half,
            what: own.what.clone(),
            brief: own.brief.clone(),
            ends: own.ends,
            part: own.part.name(),
            place: own.place.name(),
            length_before_mm: own.before.length_mm,
            length_after_mm: own.after.length_mm,
            pieces_after: own.after.pieces,
            part_length_before_mm: own.before.part_length_mm,
            part_length_after_mm: own.after.part_length_mm,
            elongation: own.elongation(),
            volume_before_mm3: own.before.volume_mm3,
            volume_after_mm3: own.after.volume_mm3,
            lost_mm3: own.lost_mm3(),
            lost: lost.collect(),
            hot_from_mm: own.hot_mm.map(|hot| hot.0),
            hot_to_mm: own.hot_mm.map(|hot| hot.1),
            enters_circle_mm: own.enters_circle_mm,
            hot_after_from_mm: own.hot_after_mm.map(|hot| hot.0),
            hot_after_to_mm: own.hot_after_mm.map(|hot| hot.1),
            turn: own.turn.name(),
            blows: own.blows.name(),
            struck_from_mm: own.struck_mm.0,
            struck_to_mm: own.struck_mm.1,
            edge_at_mm: own.edge.map(|edge| edge.at_mm),
            edge_under: own.edge.map(|edge| edge.under.name()),
            calipers: own.calipers.iter().map(CaliperAnswer::new).collect(),
            held_at_mm: own.held_at_mm,
            check: own.check.clone(),
            cautions: own.cautions.clone(),
        }
    }
}
