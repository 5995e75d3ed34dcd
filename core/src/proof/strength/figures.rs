//! Everything with a limit, as one table.

use super::HalfBending;
use super::{
    AISC_SHEAR_SOURCE, BEARING_SOURCE, EDGE_SOURCE, EN_SHEAR_SOURCE, LEAST_EDGE, SQUEEZE_SOURCE,
    Squeeze, Station, Strength, bearing_en_n, shear_aisc_n, shear_en_n,
};
use crate::finding::{COMMON_PRACTICE, Part};
use crate::steel::HOT_SOURCE;
use crate::tongs::document::Document;
use crate::tongs::model::Model;
use crate::units::Quantity;

/// On which side of its limit a figure must lie.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Needs {
    /// No more than the limit.
    AtMost,
    /// No less than the limit.
    AtLeast,
}

/// What a figure tells.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FigureKind {
    /// Bending of the rein where it is worst.
    ReinBending,
    /// Bending of the shoulder.
    ShoulderBending,
    /// Bending of the boss where it is worst.
    BossBending,
    /// Bending of the boss across its hole.
    HoleBending,
    /// Bending of the neck.
    NeckBending,
    /// Bending of the jaw where it is worst.
    JawBending,
    /// Bending of the jaw where it begins.
    JawRootBending,
    /// Shear of the rivet against what a working load may be.
    RivetShearAllowable,
    /// Shear of the rivet against its design resistance.
    RivetShearDesign,
    /// Bearing of the hole.
    HoleBearing,
    /// From the hole's centre to the edge of the boss.
    HoleToEdge,
    /// How far the reins give.
    ReinsGive,
    /// What a clip presses with.
    ClipForce,
}

impl FigureKind {
    /// What the smith reads, in lower case.
    pub fn name(self) -> &'static str {
        match self {
            Self::ReinBending => "bending of the rein",
            Self::ShoulderBending => "bending of the shoulder",
            Self::BossBending => "bending of the boss",
            Self::HoleBending => "bending across the hole",
            Self::NeckBending => "bending of the neck",
            Self::JawBending => "bending of the jaw",
            Self::JawRootBending => "bending at the jaw's root",
            Self::RivetShearAllowable => "shear of the rivet, allowable",
            Self::RivetShearDesign => "shear of the rivet, design",
            Self::HoleBearing => "bearing of the hole",
            Self::HoleToEdge => "hole's centre to the edge",
            Self::ReinsGive => "reins give under an ordinary squeeze",
            Self::ClipForce => "force of a clip",
        }
    }
}

/// A figure with what it is held against.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Figure {
    /// What it tells.
    pub what: FigureKind,
    /// Where it is.
    pub part: Part,
    /// Where it is, x and y in the frame of its half, mm.
    pub at: kurbo::Point,
    /// The squeeze it is reckoned with, N; none for a figure that needs no squeeze.
    pub squeeze_n: f64,
    /// What was found.
    pub value: f64,
    /// What it is held against.
    pub limit: f64,
    /// What both are measured in.
    pub quantity: Quantity,
    /// On which side of the limit it must lie.
    pub needs: Needs,
    /// Where the limit comes from.
    pub source: &'static str,
}

impl Figure {
    /// How many times over the limit is kept: 1 is just enough. Never more than a million.
    pub fn margin(&self) -> f64 {
        const MOST: f64 = 1e6;
        let (over, under) = match self.needs {
            Needs::AtMost => (self.limit, self.value),
            Needs::AtLeast => (self.value, self.limit),
        };
        (over / under.max(f64::MIN_POSITIVE)).min(MOST)
    }

    /// Whether the limit is kept.
    pub fn holds(&self) -> bool {
        self.margin() >= 1.0
    }
}

/// The table of a pair: bending and what is allowed by working load under a strong squeeze, what
/// a design resistance is given for under a full one.
pub(super) fn figures(document: &Document, model: &Model, strength: &Strength) -> Vec<Figure> {
    let mut all = bending(strength);
    all.extend(joint(document, model, strength));
    all.extend(spring(model, strength));
    all
}

/// The worst station of each part, and the places the trade watches.
fn bending(strength: &Strength) -> Vec<Figure> {
    let hot = if strength.hot.proportional_limit < 1.0 {
        HOT_SOURCE
    } else {
        strength.steel.source
    };
    let cold = strength.steel.source;
    let worst = |parts: &[Part]| strength.worst_of(parts);
    let of_half = |find: fn(&HalfBending) -> Option<&Station>| {
        let all = strength.halves.iter().filter_map(find);
        all.max_by(|a, b| a.use_per_n().total_cmp(&b.use_per_n()))
    };
    let places = [
        (FigureKind::ReinBending, worst(&[Part::Rein]), cold),
        (FigureKind::ShoulderBending, worst(&[Part::Shoulder]), cold),
        (FigureKind::BossBending, worst(&[Part::Boss]), cold),
        (FigureKind::HoleBending, of_half(HalfBending::at_hole), cold),
        (FigureKind::NeckBending, worst(&[Part::Neck]), hot),
        (
            FigureKind::JawBending,
            worst(&[Part::Jaw, Part::SecondJaw]),
            hot,
        ),
        (
            FigureKind::JawRootBending,
            of_half(HalfBending::jaw_root),
            hot,
        ),
    ];
    let strong_n = strength.squeezes[1].hand_n;
    let figure = |(what, station, source): (FigureKind, Option<&Station>, &'static str)| {
        station.map(|station| Figure {
            what,
            part: station.part,
            at: station.at,
            squeeze_n: strong_n,
            value: station.stress_mpa(strong_n),
            limit: station.limit_mpa,
            quantity: Quantity::Stress,
            needs: Needs::AtMost,
            source,
        })
    };
    places.into_iter().filter_map(figure).collect()
}

/// Rivet and hole under a full squeeze.
fn joint(document: &Document, model: &Model, strength: &Strength) -> [Figure; 4] {
    let rivet = &document.rivet;
    let (d, hole) = (rivet.diameter.mm(), rivet.hole.mm());
    let [_, strong, full] = strength.squeezes;
    let edges = strength.halves.iter().map(|half| half.edge_mm);
    let edge = edges.fold(f64::MAX, f64::min);
    let thin = model
        .a
        .body
        .plate
        .faces
        .thickness
        .min(model.b.body.plate.faces.thickness);
    let bearing = bearing_en_n((d, hole), thin, edge, strength.steel.tensile_mpa);
    let force = |what: FigureKind, part: Part, squeeze: Squeeze, limit: f64| Figure {
        what,
        part,
        at: kurbo::Point::ORIGIN,
        squeeze_n: squeeze.hand_n,
        value: squeeze.rivet_n,
        limit,
        quantity: Quantity::Force,
        needs: Needs::AtMost,
        source: "",
    };
    let from = |source: &'static str, figure: Figure| Figure { source, ..figure };
    let (rivet, boss) = (Part::Rivet, Part::Boss);
    [
        from(
            AISC_SHEAR_SOURCE,
            force(
                FigureKind::RivetShearAllowable,
                rivet,
                strong,
                shear_aisc_n(d),
            ),
        ),
        from(
            EN_SHEAR_SOURCE,
            force(FigureKind::RivetShearDesign, rivet, full, shear_en_n(d)),
        ),
        from(
            BEARING_SOURCE,
            force(FigureKind::HoleBearing, boss, full, bearing),
        ),
        Figure {
            what: FigureKind::HoleToEdge,
            part: Part::Boss,
            at: kurbo::Point::ORIGIN,
            squeeze_n: 0.0,
            value: edge,
            limit: LEAST_EDGE * hole,
            quantity: Quantity::Length,
            needs: Needs::AtLeast,
            source: EDGE_SOURCE,
        },
    ]
}

/// How the reins spring: not so far that they meet, not so stiff that no clip holds.
fn spring(model: &Model, strength: &Strength) -> [Figure; 2] {
    let hand = model.a.hand();
    [
        Figure {
            what: FigureKind::ReinsGive,
            part: Part::Rein,
            at: hand,
            squeeze_n: strength.squeezes[0].hand_n,
            value: strength.squeezes[0].closes_mm,
            limit: model.hand_gap / 2.0,
            quantity: Quantity::Length,
            needs: Needs::AtMost,
            source: COMMON_PRACTICE,
        },
        Figure {
            what: FigureKind::ClipForce,
            part: Part::Rein,
            at: hand,
            squeeze_n: 0.0,
            value: strength.clip_force_n,
            limit: strength.load.strong_n,
            quantity: Quantity::Force,
            needs: Needs::AtMost,
            source: SQUEEZE_SOURCE,
        },
    ]
}
