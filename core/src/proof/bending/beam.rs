//! A half as a beam: sections along it, the moment that each newton of squeeze puts on them, and
//! how far it bends.

use kurbo::Point;

use crate::finding::Part;
use crate::shape::section::{Known, Properties, Section};
use crate::shape::sweep::Sweep;

/// Places and weights of the five-point Gauss–Lobatto rule on 0…1: it is exact for polynomials
/// up to degree 7 and looks at both ends, where stresses peak (Abramowitz and Stegun, table 25.6).
const LOBATTO: [(f64, f64); 5] = [
    (0.0, 0.05),
    (0.172_673_164_646_011_4, 49.0 / 180.0),
    (0.5, 16.0 / 45.0),
    (0.827_326_835_353_988_6, 49.0 / 180.0),
    (1.0, 0.05),
];

/// Stretches of a sweep are cut to this length at the most, mm; a rein's taper bends by
/// polynomials of a higher degree than the rule's, the shorter the stretch the less it matters.
const STRETCH: f64 = 75.0;

/// A cross-section along a half, from the hand to the grip.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Station {
    /// The part it belongs to.
    pub part: Part,
    /// Middle of the section, mm, in the frame of the half.
    pub at: Point,
    /// From the hand along the half, mm.
    pub along_mm: f64,
    /// Length of the half that it stands for in an integral, mm.
    pub stands_for_mm: f64,
    /// Size square to the half in the side view, mm.
    pub depth_mm: f64,
    /// Size along the rivet, mm.
    pub width_mm: f64,
    /// Steel in the section, mm²; the hole is taken off.
    pub area_mm2: f64,
    /// Second moment for bending in the side view, mm⁴.
    pub inertia_mm4: f64,
    /// Least section modulus for bending in the side view, mm³.
    pub modulus_mm3: f64,
    /// Bending moment for each newton of squeeze, N·mm/N.
    pub moment_mm: f64,
    /// Twisting moment about the tongs for each newton of squeeze, N·mm/N.
    pub twist_mm: f64,
    /// Twisting moment over the shear stress that it makes, mm³.
    pub twist_modulus_mm3: f64,
    /// What the steel bears here, MPa.
    pub limit_mpa: f64,
}

impl Station {
    /// Bending moment under a squeeze, N·mm.
    pub fn moment_nmm(&self, squeeze_n: f64) -> f64 {
        self.moment_mm * squeeze_n
    }

    /// Stress under a squeeze, MPa: bending, σ = M / Z, and twist, τ = T / W, taken together as
    /// √(σ² + 3 τ²) (von Mises).
    pub fn stress_mpa(&self, squeeze_n: f64) -> f64 {
        let bending = self.moment_nmm(squeeze_n) / self.modulus_mm3;
        let twist = self.twist_mm * squeeze_n / self.twist_modulus_mm3;
        bending.hypot(3f64.sqrt() * twist)
    }

    /// Stress for each newton of squeeze as a part of what the steel bears.
    pub fn use_per_n(&self) -> f64 {
        self.stress_mpa(1.0) / self.limit_mpa
    }
}

/// How far the hand moves for each newton of squeeze, mm/N: `∫ m² / (E I) ds`, m the moment for
/// each newton (Castigliano's theorem).
pub fn deflection_mm_per_n(stations: &[Station], youngs_mpa: f64) -> f64 {
    sum(stations, youngs_mpa, |station| station.moment_mm.powi(2))
}

/// How far a cantilever's free end turns for each newton on it, radians/N: `∫ m / (E I) ds`.
pub fn slope_per_n(stations: &[Station], youngs_mpa: f64) -> f64 {
    sum(stations, youngs_mpa, |station| station.moment_mm)
}

fn sum(stations: &[Station], youngs_mpa: f64, weigh: impl Fn(&Station) -> f64) -> f64 {
    let part = |s: &Station| s.stands_for_mm * weigh(s) / (youngs_mpa * s.inertia_mm4);
    stations.iter().map(part).sum()
}

/// Places along a stretch, with the length that each stands for.
pub(super) fn places(from: f64, to: f64) -> impl Iterator<Item = (f64, f64)> {
    let length = to - from;
    LOBATTO
        .into_iter()
        .map(move |(t, weight)| (from + length * t, (weight * length).abs()))
}

/// Stations along a sweep from one place to another (either way round), the worst of them found
/// between the regular ones too. `moment` gives the moment for each newton at a point.
pub fn along_sweep(
    (part, sweep): (Part, &Sweep),
    (from, to): (f64, f64),
    limit_mpa: f64,
    moment: &impl Fn(Point) -> f64,
) -> Vec<Station> {
    let load = |at: Point, _: f64| Load {
        moment_mm: moment(at),
        twist_mm: 0.0,
    };
    twisted_along_sweep((part, sweep), (from, to), limit_mpa, &load)
}

/// What a newton of squeeze puts on a section, N·mm/N.
#[derive(Debug, Clone, Copy)]
pub(super) struct Load {
    pub(super) moment_mm: f64,
    pub(super) twist_mm: f64,
}

/// Stations along a sweep as [`along_sweep`] has them, twisted too: `load` gives what a newton puts on
/// a section at a point that lies so far along the rivet, z in mm.
pub(super) fn twisted_along_sweep(
    (part, sweep): (Part, &Sweep),
    (from, to): (f64, f64),
    limit_mpa: f64,
    load: &impl Fn(Point, f64) -> Load,
) -> Vec<Station> {
    let mut known = Known::default();
    let mut cut = |s: f64, stands_for_mm: f64| {
        let section = sweep.section(s);
        let own = known.properties(&section);
        let at = sweep.path.at(s).offset(sweep.rise(s) + own.centroid_mm);
        Station {
            along_mm: (s - from).abs(),
            stands_for_mm,
            ..of_section(
                part,
                (&section, own),
                at,
                limit_mpa,
                load(at, sweep.shift(s)),
            )
        }
    };
    let mut cuts = sweep.cuts(from.min(to), from.max(to));
    if from > to {
        cuts.reverse();
    }
    let mut stations = Vec::with_capacity(8 * cuts.len());
    for pair in cuts.windows(2) {
        let (a, b) = (pair[0], pair[1]);
        /// So many parts of a piece are enough, even for one of which a size was mistyped.
        const MOST: f64 = 100.0;
        let parts = ((b - a).abs() / STRETCH).ceil().clamp(1.0, MOST);
        let mut i = 0.0;
        while i < parts {
            let at = |i: f64| a + (b - a) * i / parts;
            let places = places(at(i), at(i + 1.0));
            stations.extend(places.map(|(s, length)| cut(s, length)));
            i += 1.0;
        }
    }
    let sign = (to - from).signum();
    add_worst(&mut stations, |along| cut(from + sign * along, 0.0));
    stations
}

/// A station of a plain section.
pub(super) fn of_section(
    part: Part,
    (section, own): (&Section<'_>, Properties),
    at: Point,
    limit_mpa: f64,
    load: Load,
) -> Station {
    /// Less does not show beside any bending, mm.
    const LEAST: f64 = 1e-6;
    let twists = load.twist_mm.abs() > LEAST;
    Station {
        part,
        at,
        along_mm: 0.0,
        stands_for_mm: 0.0,
        depth_mm: section.depth,
        width_mm: section.width,
        area_mm2: own.area_mm2,
        inertia_mm4: own.side_mm4.max(f64::MIN_POSITIVE),
        modulus_mm3: own.side_modulus_mm3().max(f64::MIN_POSITIVE),
        moment_mm: load.moment_mm,
        twist_mm: if twists { load.twist_mm } else { 0.0 },
        twist_modulus_mm3: if twists {
            section.twist_modulus_mm3().max(f64::MIN_POSITIVE)
        } else {
            f64::MAX
        },
        limit_mpa,
    }
}

/// The station with the most stress for what it bears.
pub(super) fn worst(stations: &[Station]) -> Option<usize> {
    let all = stations.iter().enumerate();
    all.max_by(|a, b| a.1.use_per_n().total_cmp(&b.1.use_per_n()))
        .map(|(i, _)| i)
}

/// Adds the top of the parabola through the worst station and its neighbours.
fn add_worst(stations: &mut Vec<Station>, cut: impl FnOnce(f64) -> Station) {
    let Some(top) = worst(stations) else { return };
    let here = stations[top].along_mm;
    let apart = |station: &&Station| (station.along_mm - here).abs() > 1e-6;
    let before = stations[..top].iter().rev().find(apart);
    let after = stations[top..].iter().find(apart);
    let (Some(before), Some(after)) = (before, after) else {
        return;
    };
    let (a, b) = (before.along_mm - here, after.along_mm - here);
    let most = stations[top].use_per_n();
    let (fa, fb) = (before.use_per_n() - most, after.use_per_n() - most);
    // f = p x + q x² through (a, fa), (0, 0), (b, fb).
    let q = (fb / b - fa / a) / (b - a);
    let p = fa / a - q * a;
    let x = -p / (2.0 * q);
    if q < 0.0 && x > a && x < b {
        // Two stations may stand where one stretch ends and the next begins.
        let place = stations.partition_point(|station| station.along_mm <= here + x);
        stations.insert(place, cut(here + x));
    }
}
