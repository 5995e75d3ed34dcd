//! The answer as JSON, with the unit in every key.

use reinwright_core::asked::Choice;
use reinwright_core::finding::Part;
use reinwright_core::proof::fit::{Bearing, ChartRow, Contact, Fit, RangeEnd, WorkRange};
use reinwright_core::proof::strength::{Figure, Needs, Squeeze, Strength};
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::model::Model;
use reinwright_core::units::Quantity;
use serde::Serialize;

use crate::command_line::keyed::Keyed;
use crate::jobs::words;

#[derive(Serialize)]
pub(super) struct Answer<'a> {
    name: &'a str,
    work: WorkAnswer,
    /// Nothing when the pair holds no work; then `holds_nothing` says why.
    work_range_mm: Option<RangeAnswer>,
    #[serde(skip_serializing_if = "Option::is_none")]
    holds_nothing: Option<String>,
    /// How its own work is held, in the words of the shelf and the chooser.
    verdict: &'static str,
    verdict_because: String,
    jaw_gap_mm: f64,
    hand_gap_mm: f64,
    hand_span_mm: Option<f64>,
    on_its_work: Option<ContactAnswer>,
    #[serde(skip_serializing_if = "Option::is_none")]
    not_on_its_work: Option<String>,
    opening_deg: f64,
    open_span_mm: f64,
    shut_gap_mm: f64,
    /// Nothing, as the arm of the grip, on work that is not reached.
    leverage: Option<f64>,
    hand_arm_mm: f64,
    grip_arm_mm: Option<f64>,
    pressed: Option<&'static str>,
    mass_kg: f64,
    balance_point_mm: f64,
    out_of_line_mm: f64,
    chart: Vec<ChartAnswer>,
    steel: SteelAnswer,
    squeezes: Vec<SqueezeAnswer>,
    reins_close_at_force_n: f64,
    clip_force_n: f64,
    figures: Vec<FigureAnswer>,
    rivet: RivetAnswer,
    caution: &'static str,
}

#[derive(Serialize)]
struct WorkAnswer {
    shape: &'static str,
    size_mm: f64,
}

#[derive(Serialize)]
struct RangeAnswer {
    least: f64,
    least_ended_by: &'static str,
    most: f64,
    most_ended_by: &'static str,
}

#[derive(Serialize)]
struct ContactAnswer {
    half_angle_deg: f64,
    heel_open_mm: f64,
    tip_open_mm: f64,
    bears: Vec<BearingAnswer>,
}

#[derive(Serialize)]
struct BearingAnswer {
    jaw: &'static str,
    place: &'static str,
    how: &'static str,
    x_mm: f64,
    z_mm: Vec<f64>,
}

#[derive(Serialize)]
struct ChartAnswer {
    work_mm: f64,
    hand_gap_mm: f64,
    hand_span_mm: f64,
    out_of_parallel_mm: f64,
}

#[derive(Serialize)]
struct SteelAnswer {
    name: &'static str,
    yield_stress_mpa: f64,
    tensile_stress_mpa: f64,
    jaw_temperature_c: f64,
    source: &'static str,
}

#[derive(Serialize)]
struct SqueezeAnswer {
    squeeze: &'static str,
    /// What the hand gives; what the reins take of it before they meet is `hand_force_n`.
    asked_force_n: f64,
    hand_force_n: f64,
    jaw_force_n: f64,
    rivet_force_n: f64,
    hold_pessimistic_force_n: f64,
    hold_ordinary_force_n: f64,
    peak_stress_mpa: f64,
    reins_close_mm: f64,
}

#[derive(Serialize)]
struct FigureAnswer {
    what: &'static str,
    part: &'static str,
    at_x_mm: f64,
    at_y_mm: f64,
    squeeze_force_n: f64,
    /// `found_stress_mpa` and `limit_stress_mpa`, `found_force_n`, `found_mm`: by what the figure is
    /// a figure of.
    #[serde(flatten)]
    held: Keyed,
    needs: &'static str,
    margin: f64,
    holds: bool,
    source: &'static str,
}

#[derive(Serialize)]
struct RivetAnswer {
    grip_mm: f64,
    one_head_mm: f64,
    both_heads_mm: f64,
    practice_one_head_mm: f64,
    source: &'static str,
}

impl<'a> Answer<'a> {
    pub(super) fn new(design: &'a Document, model: &Model, fit: &Fit, strength: &Strength) -> Self {
        let contact = fit.nominal.as_ref();
        Self {
            name: &design.name,
            work: WorkAnswer {
                shape: design.work.way(),
                size_mm: design.work.size().mm(),
            },
            work_range_mm: fit.range.as_ref().ok().map(RangeAnswer::new),
            holds_nothing: fit.range.as_ref().err().map(ToString::to_string),
            verdict: fit.judged.verdict.name(),
            verdict_because: fit.judged.reason(design.units.show()),
            jaw_gap_mm: model.jaw_gap,
            hand_gap_mm: contact.map_or(model.hand_gap, |on| on.hand_gap_mm),
            hand_span_mm: contact.ok().map(|on| on.hand_span_mm),
            on_its_work: contact.ok().map(|on| ContactAnswer::new(on, model)),
            not_on_its_work: contact.err().map(ToString::to_string),
            opening_deg: fit.opening.to_degrees(),
            open_span_mm: fit.open_span_mm,
            shut_gap_mm: fit.shut_gap_mm,
            leverage: contact.ok().map(|_| fit.leverage()),
            hand_arm_mm: fit.press.hand_mm,
            grip_arm_mm: contact.ok().map(|_| fit.press.grip_mm),
            pressed: contact.ok().map(|_| words::place(fit.press.place)),
            mass_kg: fit.mass_kg,
            balance_point_mm: fit.balance_point_mm,
            out_of_line_mm: fit.in_line.misses_rivet_mm,
            chart: fit.chart.iter().map(ChartAnswer::new).collect(),
            steel: SteelAnswer::new(design, strength),
            // There are no forces on work that is not reached.
            squeezes: contact.map_or_else(|_| Vec::new(), |_| squeezes(strength)),
            reins_close_at_force_n: strength.closing_n,
            clip_force_n: strength.clip_force_n,
            figures: contact.map_or_else(|_| Vec::new(), |_| figures(strength)),
            rivet: RivetAnswer::new(strength),
            caution: words::CAUTION,
        }
    }
}

impl RangeAnswer {
    fn new(range: &WorkRange) -> Self {
        let end = |end: &RangeEnd| (end.size_mm, end.limit.name());
        let ((least, least_ended_by), (most, most_ended_by)) =
            (end(&range.least), end(&range.most));
        Self {
            least,
            least_ended_by,
            most,
            most_ended_by,
        }
    }
}

impl ContactAnswer {
    fn new(contact: &Contact, model: &Model) -> Self {
        let jaws = [
            Part::Jaw,
            if model.alike {
                Part::Jaw
            } else {
                Part::SecondJaw
            },
        ];
        let bears = |(bearing, jaw): (&Bearing, Part)| BearingAnswer {
            jaw: jaw.name(),
            place: words::place(bearing.place),
            how: words::surface(bearing.bears),
            x_mm: bearing.x_mm,
            z_mm: bearing.z_mm.clone(),
        };
        Self {
            half_angle_deg: contact.half_angle.to_degrees(),
            heel_open_mm: contact.heel_open_mm,
            tip_open_mm: contact.tip_open_mm,
            bears: contact.bearing.iter().zip(jaws).map(bears).collect(),
        }
    }
}

impl ChartAnswer {
    fn new(row: &ChartRow) -> Self {
        Self {
            work_mm: row.size_mm,
            hand_gap_mm: row.hand_gap_mm,
            hand_span_mm: row.hand_span_mm,
            out_of_parallel_mm: row.out_of_parallel_mm,
        }
    }
}

impl SteelAnswer {
    fn new(design: &Document, strength: &Strength) -> Self {
        Self {
            name: design.bar.steel.name(),
            yield_stress_mpa: strength.steel.yield_mpa,
            tensile_stress_mpa: strength.steel.tensile_mpa,
            jaw_temperature_c: strength.load.jaw_celsius,
            source: strength.steel.source,
        }
    }
}

fn squeezes(strength: &Strength) -> Vec<SqueezeAnswer> {
    let answer = |(name, squeeze): (&'static str, &Squeeze)| SqueezeAnswer {
        squeeze: name,
        asked_force_n: squeeze.asked_n,
        hand_force_n: squeeze.hand_n,
        jaw_force_n: squeeze.jaw_n,
        rivet_force_n: squeeze.rivet_n,
        hold_pessimistic_force_n: squeeze.hold_pessimistic_n,
        hold_ordinary_force_n: squeeze.hold_ordinary_n,
        peak_stress_mpa: squeeze.peak_stress_mpa,
        reins_close_mm: squeeze.closes_mm,
    };
    let names = ["ordinary", "strong", "full"];
    names
        .into_iter()
        .zip(&strength.squeezes)
        .map(answer)
        .collect()
}

fn figures(strength: &Strength) -> Vec<FigureAnswer> {
    strength.figures.iter().map(FigureAnswer::new).collect()
}

impl FigureAnswer {
    fn new(figure: &Figure) -> Self {
        let named = match figure.quantity {
            Quantity::Stress => ["found_stress", "limit_stress"],
            Quantity::Force => ["found_force", "limit_force"],
            Quantity::Length
            | Quantity::Area
            | Quantity::Angle
            | Quantity::Mass
            | Quantity::Ratio => ["found", "limit"],
        };
        let [found, limit] = named;
        let held = [(found, figure.value), (limit, figure.limit)];
        Self {
            what: figure.what.name(),
            part: figure.part.name(),
            at_x_mm: figure.at.x,
            at_y_mm: figure.at.y,
            squeeze_force_n: figure.squeeze_n,
            held: Keyed::new(figure.quantity, held),
            needs: match figure.needs {
                Needs::AtMost => "at most",
                Needs::AtLeast => "at least",
            },
            margin: figure.margin(),
            holds: figure.holds(),
            source: figure.source,
        }
    }
}

impl RivetAnswer {
    fn new(strength: &Strength) -> Self {
        let length = &strength.rivet_length;
        Self {
            grip_mm: length.grip_mm,
            one_head_mm: length.one_head_mm,
            both_heads_mm: length.both_heads_mm,
            practice_one_head_mm: length.practice_mm,
            source: length.source,
        }
    }
}
