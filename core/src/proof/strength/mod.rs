//! Whether a pair lasts: what a squeeze does to its steel.
//!
//! Each half is a beam that the hand bends about the rivet against the work. The figures guide
//! the smith; they do not certify a tool.

mod figures;
mod findings;
mod hold;
mod pipe;
mod rivet;

pub use figures::{Figure, FigureKind, Needs};
pub use findings::findings;
pub use pipe::{Crush, PIPE_SOURCE, PIPE_YIELD_MPA, crush, line_pressure, ring_moment};
pub use rivet::{
    AISC_SHEAR_SOURCE, BEARING_SOURCE, EDGE_SOURCE, EN_SHEAR_SOURCE, LEAST_EDGE, RivetLength,
    bearing_en_n, cap_in_diameters, countersink_in_diameters, head_in_diameters, rivet_length,
    shear_aisc_n, shear_en_n,
};

use crate::finding::Part;
pub use crate::proof::bending::{
    HalfBending, Station, along_sweep, deflection_mm_per_n, slope_per_n,
};
use crate::proof::bending::{give_mm_per_n, halves};
use crate::proof::fit::{self, Contact, Fit, Press};
use crate::steel::{self, HotFactors, ORDINARY_FRICTION, PESSIMISTIC_FRICTION};
use crate::tongs::document::Document;
use crate::tongs::model::Model;
use crate::tongs::squeeze::{FULL_N, ORDINARY_N, STRONG_N};

/// How far a clip is taken to close the reins at the hand, mm (common practice, no source: a
/// ring driven a few fingers' breadths up the reins).
pub const CLIP_CLOSES_MM: f64 = 6.0;

/// What is asked of a pair.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StrengthLoad {
    /// An ordinary squeeze of one hand, N.
    pub ordinary_n: f64,
    /// A strong squeeze for some seconds, N.
    pub strong_n: f64,
    /// All that a strong hand has, N.
    pub full_n: f64,
    /// How hot neck and jaw become, °C.
    pub jaw_celsius: f64,
}

/// Where the squeezes of [`StrengthLoad::default`] come from.
pub const SQUEEZE_SOURCE: &str =
    "grip strength of men of 20 to 25 (Eur J Appl Physiol 2007; 99:415); a strong squeeze is 30 %";

/// Neck and jaw are never colder or hotter than this, °C: where the standard's table of hot
/// strength begins, and where steel is forged.
pub const JAW_CELSIUS: (f64, f64) = (20.0, 1200.0);

impl StrengthLoad {
    /// The usual squeezes with neck and jaw so hot, °C.
    pub fn with_jaws_at(jaw_celsius: f64) -> Self {
        Self {
            jaw_celsius,
            ..Self::default()
        }
    }
}

impl Default for StrengthLoad {
    /// 100 N, 160 N and 540 N with cold jaws.
    fn default() -> Self {
        Self {
            ordinary_n: ORDINARY_N,
            strong_n: STRONG_N,
            full_n: FULL_N,
            jaw_celsius: 20.0,
        }
    }
}

/// What one squeeze does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Squeeze {
    /// What the hand gives, N.
    pub asked_n: f64,
    /// On each rein at the hand, N: no more than closes the reins. Beyond that the hand squeezes one
    /// rein against the other, and neither jaws nor rivet feel it.
    pub hand_n: f64,
    /// At the work, between the jaws, N.
    pub jaw_n: f64,
    /// Across the rivet, N.
    pub rivet_n: f64,
    /// Held against pulling out with pessimistic friction, N.
    pub hold_pessimistic_n: f64,
    /// Held against pulling out with ordinary friction, N.
    pub hold_ordinary_n: f64,
    /// Greatest bending stress of the half that has the most, MPa.
    pub peak_stress_mpa: f64,
    /// How far both reins together give at the hand, mm.
    pub closes_mm: f64,
}

impl Squeeze {
    /// Whether the reins meet before all of it is felt.
    pub fn is_capped(&self) -> bool {
        self.hand_n < self.asked_n
    }
}

/// How a pair bears its loads.
#[derive(Debug, Clone, PartialEq)]
pub struct Strength {
    /// What was asked.
    pub load: StrengthLoad,
    /// What the steel bears cold.
    pub steel: steel::Strength,
    /// What neck and jaw keep of it hot.
    pub hot: HotFactors,
    /// The stress at which rein, shoulder and boss break, and neck and jaw at their heat, MPa.
    pub breaks_mpa: (f64, f64),
    /// Where hand and work press.
    pub press: Press,
    /// How many times the force of two flats the jaws press on the work, half A first.
    pub gains: [f64; 2],
    /// Ordinary, strong and full.
    pub squeezes: [Squeeze; 3],
    /// Half A, and half B if it differs.
    pub halves: Vec<HalfBending>,
    /// Force at the hand for each mm that both reins together close, N/mm.
    pub rate_n_per_mm: f64,
    /// The squeeze that brings the reins to touch each other at the hand, N.
    pub closing_n: f64,
    /// Force of a clip that closes the reins by [`CLIP_CLOSES_MM`], N.
    pub clip_force_n: f64,
    /// Shank to cut.
    pub rivet_length: RivetLength,
    /// Everything that has a limit, for a table.
    pub figures: Vec<Figure>,
}

impl Strength {
    /// Newtons at the work for a newton at the hand.
    pub fn leverage(&self) -> f64 {
        self.press.leverage()
    }

    /// The stress at which the steel of a part breaks, MPa.
    pub fn breaks_at_mpa(&self, part: Part) -> f64 {
        let (cold, hot) = self.breaks_mpa;
        match part {
            Part::Neck | Part::Jaw | Part::SecondJaw => hot,
            Part::Work
            | Part::Bar
            | Part::Boss
            | Part::Shoulder
            | Part::Rein
            | Part::Rivet
            | Part::Pair
            | Part::Working
            | Part::Body
            | Part::Eye
            | Part::StruckEnd
            | Part::HardyShank
            | Part::Tool => cold,
        }
    }

    /// The half that is worst off.
    pub fn worst_half(&self) -> &HalfBending {
        let uses = |half: &&HalfBending| half.worst().use_per_n();
        let worst = self
            .halves
            .iter()
            .max_by(|a, b| uses(a).total_cmp(&uses(b)));
        worst.expect("every pair has a half A")
    }

    /// The station of some parts that is worst off in either half.
    pub fn worst_of(&self, parts: &[Part]) -> Option<&Station> {
        let all = self.halves.iter().filter_map(|half| half.worst_of(parts));
        all.max_by(|a, b| a.use_per_n().total_cmp(&b.use_per_n()))
    }
}

/// Works out how a pair bears its loads on its own work.
pub fn strength(document: &Document, model: &Model, load: &StrengthLoad) -> Strength {
    let contact = fit::fit_on(document, model, &document.work);
    strength_on(document, model, contact.as_ref().ok(), load)
}

/// The same of a pair whose fit is known.
pub fn strength_of(document: &Document, model: &Model, fit: &Fit, load: &StrengthLoad) -> Strength {
    let bent = Bent {
        contact: fit.nominal.as_ref().ok(),
        press: fit.press,
        halves: &fit.bending,
    };
    bears(document, model, &bent, load)
}

/// Works out how a pair bears its loads on work that it holds as [`fit::fit_on`] finds; without a
/// contact the work counts as pressed all along the grip. Loads that are negative or no numbers
/// count as nothing.
pub fn strength_on(
    document: &Document,
    model: &Model,
    contact: Option<&Contact>,
    load: &StrengthLoad,
) -> Strength {
    let press = fit::press(model, contact);
    let halves = &halves(model, press.arms());
    let bent = Bent {
        contact,
        press,
        halves,
    };
    bears(document, model, &bent, load)
}

/// A pair on work, and how its halves bend.
struct Bent<'a> {
    contact: Option<&'a Contact>,
    press: Press,
    halves: &'a [HalfBending],
}

fn bears(document: &Document, model: &Model, bent: &Bent<'_>, load: &StrengthLoad) -> Strength {
    let Bent { contact, press, .. } = *bent;
    let load = sane(load);
    let steel = steel::strength(document.bar.steel);
    let hot = steel::hot_factors(load.jaw_celsius);
    let gains = hold::gains(model, contact, &press);
    let limits = limits_mpa(&steel, hot);
    let halves: Vec<HalfBending> = bent
        .halves
        .iter()
        .map(|half| half.bearing(limits))
        .collect();
    // A half that has no steel left somewhere gives without end: its reins meet at the least squeeze.
    let soft = give_mm_per_n(&halves).clamp(f64::MIN_POSITIVE, f64::MAX);
    let rate_n_per_mm = 1.0 / soft;
    let gap = contact.map_or(model.hand_gap, |on| on.hand_gap_mm);
    let closing_n = rate_n_per_mm * gap.max(0.0);
    let felt = |asked_n: f64| Squeeze {
        asked_n,
        ..squeeze(
            asked_n.min(closing_n),
            press.leverage(),
            gains,
            (&halves, soft),
        )
    };
    let mut strength = Strength {
        squeezes: [load.ordinary_n, load.strong_n, load.full_n].map(felt),
        closing_n,
        breaks_mpa: breaks_mpa(&steel, load.jaw_celsius),
        load,
        steel,
        hot,
        press,
        gains,
        halves,
        rate_n_per_mm,
        clip_force_n: rate_n_per_mm * CLIP_CLOSES_MM,
        rivet_length: length(document, model),
        figures: Vec::new(),
    };
    strength.figures = figures::figures(document, model, &strength);
    strength
}

/// The stress at which a steel breaks cold, and at a heat, MPa. From 400 °C on it hardens no more as
/// it is strained, and breaks at its effective yield (EN 1993-1-2 Annex A); up to 100 °C it is as
/// cold, and between the two straight (judgement).
fn breaks_mpa(steel: &steel::Strength, celsius: f64) -> (f64, f64) {
    const COLD: f64 = 100.0;
    const SOFT: f64 = 400.0;
    let effective = steel.yield_mpa * steel::hot_factors(celsius).effective_yield;
    // What is no number counts as the hottest.
    let part = if celsius.is_nan() {
        1.0
    } else {
        ((celsius - COLD) / (SOFT - COLD)).clamp(0.0, 1.0)
    };
    let hot = steel.tensile_mpa + (effective - steel.tensile_mpa) * part;
    (steel.tensile_mpa, hot)
}

/// The loads as numbers that can be reckoned with.
fn sane(load: &StrengthLoad) -> StrengthLoad {
    let force = |n: f64| if n.is_finite() { n.max(0.0) } else { 0.0 };
    StrengthLoad {
        ordinary_n: force(load.ordinary_n),
        strong_n: force(load.strong_n),
        full_n: force(load.full_n),
        jaw_celsius: load.jaw_celsius,
    }
}

/// What the steel bears in rein, shoulder and boss, and in neck and jaw, MPa.
fn limits_mpa(steel: &steel::Strength, hot: HotFactors) -> (f64, f64) {
    /// Nothing is left at 1200 °C; a stress still needs something to be held against, MPa.
    const LEAST_LIMIT: f64 = 1e-3;
    let cold = steel.yield_mpa;
    (cold, (cold * hot.proportional_limit).max(LEAST_LIMIT))
}

fn squeeze(
    hand_n: f64,
    leverage: f64,
    gains: [f64; 2],
    (halves, soft): (&[HalfBending], f64),
) -> Squeeze {
    let jaw_n = hand_n * leverage;
    let hold = |friction: f64| friction * jaw_n * (gains[0] + gains[1]);
    let stress = |half: &HalfBending| {
        let all = half.stations.iter().map(|s| s.stress_mpa(hand_n));
        all.fold(0.0, f64::max)
    };
    Squeeze {
        asked_n: hand_n,
        hand_n,
        jaw_n,
        // Both forces press the half the same way; the rivet takes their sum.
        rivet_n: hand_n + jaw_n,
        hold_pessimistic_n: hold(PESSIMISTIC_FRICTION),
        hold_ordinary_n: hold(ORDINARY_FRICTION),
        peak_stress_mpa: halves.iter().map(stress).fold(0.0, f64::max),
        closes_mm: soft * hand_n,
    }
}

fn length(document: &Document, model: &Model) -> RivetLength {
    let rivet = &document.rivet;
    let grip = model.a.body.plate.faces.thickness + model.b.body.plate.faces.thickness;
    rivet_length(rivet.head, (rivet.diameter.mm(), rivet.hole.mm()), grip)
}
