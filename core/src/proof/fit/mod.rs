//! Whether a pair holds its work: where the jaws touch, what the hands do, how far it turns.
//!
//! The halves turn about the rivet by equal angles either way, and the work keeps its axis on
//! y = 0 through the rivet: with two like jaws that follows from symmetry. With two different
//! jaws each is brought down on the work by itself, and the half-angle is the mean of the two:
//! the work then lies askew to the reins by half their difference, as it does in the hand.

mod across;
mod contact;
mod findings;
mod grip;
mod held;
mod judged;
mod limit;
mod polar;
mod press;
mod range;
mod reckoned;
mod surface;
mod travel;

pub use contact::{Bearing, Contact, Jaws, NoContact, Where};
pub use findings::findings;
pub use judged::{Judged, Outside, Why, ways_of};
pub use limit::Limit;
pub use press::{GIVE_MM, Press, middle_of_pressure, press};
pub use range::{RangeEnd, WorkRange};
pub(crate) use reckoned::{WIDEST_WORK, face_mm, is_folded};
pub use travel::{Clash, Travel, TravelEnd};

use crate::asked::Work;
use crate::proof::bending::{self, HalfBending, give_mm_per_n};
use crate::tongs::document::Document;
use crate::tongs::jaw::Way;
use crate::tongs::model::Model;
use crate::tongs::squeeze::ORDINARY_N;

/// Greatest span over the reins that a hand closes with force, mm: 3.5 in (NIOSH and Cal/OSHA,
/// Easy Ergonomics: A Guide to Selecting Non-Powered Hand Tools, 2004-164).
pub const WIDEST_SPAN_MM: f64 = 88.9;
/// Least span over the reins when closed, mm: 2 in (the same guide).
pub const LEAST_SPAN_MM: f64 = 50.8;
/// Where both come from.
pub const SPAN_SOURCE: &str = "NIOSH and Cal/OSHA 2004-164, power grip";

/// The faces still count as parallel while one end stands open by no more than this part of the
/// grip's length, both sides together (common practice, no source: about a 1/16 in gap in an inch
/// of grip, 3.6 degrees between the faces).
pub const OUT_OF_PARALLEL: f64 = 1.0 / 16.0;

/// How many sizes the chart shows.
const CHART: u32 = 17;

/// One row of the chart over work sizes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ChartRow {
    /// The size the work is called by, mm.
    pub size_mm: f64,
    /// Between the reins at the hand, mm.
    pub hand_gap_mm: f64,
    /// Over the reins at the hand, mm.
    pub hand_span_mm: f64,
    /// Between heel and tip the faces part by so much, mm, both sides together; positive when the
    /// tip is open, negative when the heel is.
    pub out_of_parallel_mm: f64,
}

/// Where the middle lines of the pair pass the rivet in the set pose; all nothing when both
/// halves are alike.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct InLine {
    /// Midway between the reins at the hand, mm above the work's axis.
    pub at_hand_mm: f64,
    /// By so much the line from there through the work's middle misses the rivet, mm.
    pub misses_rivet_mm: f64,
}

/// How a pair fits its work and the hand.
#[derive(Debug, Clone, PartialEq)]
pub struct Fit {
    /// On its nominal work.
    pub nominal: Result<Contact, NoContact>,
    /// The sizes of work of the same shape that it holds.
    pub range: Result<WorkRange, NoContact>,
    /// How its nominal work is held, in the best of the ways in which it is laid.
    pub judged: Judged,
    /// How far the halves turn; `None` when they overlap in every pose.
    pub travel: Option<Travel>,
    /// Angle between the halves from shut on the nominal work to wide open, radians.
    pub opening: f64,
    /// Over the reins at the hand when wide open, mm.
    pub open_span_mm: f64,
    /// Between the reins at the hand when shut without work, mm.
    pub shut_gap_mm: f64,
    /// Where its own work presses on the jaws, and the arms of hand and grip.
    pub press: Press,
    /// Half A bent by a newton at the hand, and half B if it differs.
    pub bending: Vec<HalfBending>,
    /// Mass of the pair with its rivet shank, kg.
    pub mass_kg: f64,
    /// x of the balance point, mm; negative towards the hand.
    pub balance_point_mm: f64,
    /// Whether the reins are in line with the jaws through the rivet.
    pub in_line: InLine,
    /// Hand gap and parallelism over the sizes held; empty when none is.
    pub chart: Vec<ChartRow>,
}

impl Fit {
    /// Hand arm over grip arm: newtons at its own work for a newton at the hand.
    pub fn leverage(&self) -> f64 {
        self.press.leverage()
    }
}

/// Works out how a pair fits.
pub fn fit(document: &Document, model: &Model) -> Fit {
    let jaws = Jaws::new(document, model);
    let travel = travel::travel(model);
    let size = document.work.size().mm();
    let opened = travel.map_or(0.0, |t| t.open.half_angle);
    let nominal = nominal(&jaws, model, travel.as_ref());
    let press = press(model, nominal.as_ref().ok());
    let bending = bending::halves(model, press.arms());
    let give_mm = ORDINARY_N * give_mm_per_n(&bending);
    let range = range::range(&jaws, travel.as_ref(), (size, give_mm));
    Fit {
        judged: judged::judge(document, model, (&nominal, &range)),
        press,
        bending,
        nominal,
        opening: (2.0 * opened).max(0.0),
        open_span_mm: jaws.hand_span_mm(opened),
        shut_gap_mm: jaws.hand_gap_mm(travel.map_or(0.0, |t| t.shut.half_angle)),
        mass_kg: model.mass_kg(),
        balance_point_mm: model.balance_point(),
        in_line: in_line(model),
        chart: range
            .as_ref()
            .map_or_else(|_| Vec::new(), |range| chart(&jaws, range)),
        range,
        travel,
    }
}

/// How a pair holds its own work in one way, as [`Fit::judged`] has it for the best of them.
pub fn judged_in(document: &Document, model: &Model, fit: &Fit, way: Way) -> Judged {
    judged::judge_in(document, model, (&fit.nominal, &fit.range), way)
}

/// How a pair holds some other work.
///
/// # Errors
/// When the jaws cannot touch it: the halves stop each other first, or it is out of reach.
pub fn fit_on(document: &Document, model: &Model, work: &Work) -> Result<Contact, NoContact> {
    let (profile, depth, width) = crate::shape::section::work_section(work);
    let held = held::Held::new(&profile, depth, width);
    let moved = (model.end_of(work) - model.work.from).abs() > 0.0;
    let moved = moved.then(|| model.with_work(work));
    let jaws = Jaws::new(document, moved.as_ref().unwrap_or(model));
    let travel = travel::travel(model);
    jaws.contact(&held, work.size().mm(), travel.as_ref())
}

/// The contact with the nominal work.
fn nominal(jaws: &Jaws<'_>, model: &Model, travel: Option<&Travel>) -> Result<Contact, NoContact> {
    let work = &model.work;
    let held = held::Held::new(&work.profile, work.depth, work.width);
    jaws.contact(&held, jaws.size_mm, travel)
}

fn in_line(model: &Model) -> InLine {
    let (a, b) = (model.a.hand(), model.b.hand());
    let at_hand_mm = (a.y - b.y) / 2.0;
    let set = press(model, None);
    InLine {
        at_hand_mm,
        // The work's middle lies on y = 0, so the line crosses x = 0 at this height.
        misses_rivet_mm: at_hand_mm * set.grip_mm / (set.hand_mm + set.grip_mm),
    }
}

/// Hand gap and parallelism at even steps over the range.
fn chart(jaws: &Jaws<'_>, range: &WorkRange) -> Vec<ChartRow> {
    let (least, most) = (range.least.size_mm, range.most.size_mm);
    let part = |i: u32| f64::from(i) / f64::from(CHART - 1);
    let sizes = (0..CHART).map(|i| least + (most - least) * part(i));
    rows(jaws, sizes).flatten().map(|(row, _)| row).collect()
}

/// The rows for sizes at even steps, each with the half-angle at which the pair stands there.
fn rows(
    jaws: &Jaws<'_>,
    sizes: impl Iterator<Item = f64>,
) -> impl Iterator<Item = Option<(ChartRow, f64)>> {
    // Even steps open the pair by nearly even angles.
    let (mut last, mut step) = (None, 0.0);
    sizes.map(move |size_mm| {
        let near = last.map_or(0.0, |last| last + step);
        let found = row(jaws, size_mm, near);
        if let Some((_, half_angle)) = found {
            step = last.map_or(0.0, |last| half_angle - last);
            last = Some(half_angle);
        }
        found
    })
}

/// One row, and the half-angle at which the pair stands there, found from one that is `near`.
fn row(jaws: &Jaws<'_>, size_mm: f64, near: f64) -> Option<(ChartRow, f64)> {
    let touch = jaws.touch_size(size_mm, near)?;
    let [heel, tip] = touch.off;
    let row = ChartRow {
        size_mm,
        hand_gap_mm: jaws.hand_gap_mm(touch.half_angle),
        hand_span_mm: jaws.hand_span_mm(touch.half_angle),
        out_of_parallel_mm: tip - heel,
    };
    Some((row, touch.half_angle))
}

/// The chart carried on past both ends of the range, from each end outwards to the sizes given,
/// mm, as far as the halves let the jaws reach the work; only the end itself where they do not.
pub fn chart_beyond(
    document: &Document,
    model: &Model,
    fit: &Fit,
    (from_mm, to_mm): (f64, f64),
) -> [Vec<ChartRow>; 2] {
    const STEPS: u32 = 8;
    let (Ok(range), Some(travel)) = (&fit.range, &fit.travel) else {
        return [Vec::new(), Vec::new()];
    };
    let jaws = Jaws::new(document, model);
    let free = travel.shut.half_angle..=travel.open.half_angle;
    let (least, most) = (range.least.size_mm, range.most.size_mm);
    let ends = [
        (fit.chart.first(), least, from_mm.min(least)),
        (fit.chart.last(), most, to_mm.max(most)),
    ];
    ends.map(|(last, end, far)| {
        let part = |i: u32| f64::from(i) / f64::from(STEPS);
        let more = rows(&jaws, (1..=STEPS).map(|i| end + (far - end) * part(i)));
        let reached = |(row, angle)| free.contains(&angle).then_some(row);
        let more = more.map_while(|row| row.and_then(reached));
        last.copied().into_iter().chain(more).collect()
    })
}
