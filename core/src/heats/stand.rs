//! A piece as the fire and the bore of a coil meet it: its sections one behind the other, with what each
//! needs to go in from either end.

use crate::finding::Part;
use crate::shape::section::Growing;
use crate::shape::{Piece, Standing};
use crate::tongs::model::Model;

/// Sections no farther apart than this, mm: the circle of a taper is then met within a tenth.
const EVERY_MM: f64 = 15.0;
/// How near the points follow a round section, mm.
const FOLLOW_MM: f64 = 0.05;

/// An end of a piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum End {
    /// The tip of the jaw, from which places are told.
    Tip,
    /// The other one.
    Rein,
}

impl End {
    /// Both, the tip first.
    pub const ALL: [Self; 2] = [Self::Tip, Self::Rein];

    /// What the smith reads.
    pub fn name(self) -> &'static str {
        match self {
            Self::Tip => "jaw end",
            Self::Rein => "rein end",
        }
    }

    /// What the smith reads of a tool.
    pub fn tool_name(self) -> &'static str {
        match self {
            Self::Tip => "working end",
            Self::Rein => "other end",
        }
    }
}

/// One section.
#[derive(Debug, Clone, PartialEq)]
pub struct Slice {
    /// Where it is, mm from the tip along the piece.
    pub at_mm: f64,
    /// The part that it is a section of.
    pub part: Part,
    /// Steel, mm².
    pub area_mm2: f64,
    /// Length of its skin all round, mm.
    pub skin_mm: f64,
    /// Points around it as it stands, (x, y, z) in mm.
    pub points: Vec<[f64; 3]>,
    /// The circle around it alone, mm.
    pub circle_mm: f64,
    /// The bore that all from the tip up to here goes through, and all from the other end, mm.
    pub bore_mm: [f64; 2],
    /// Steel from the tip up to here, mm³.
    pub volume_mm3: f64,
}

/// A piece ready to be heated.
#[derive(Debug, Clone, PartialEq)]
pub struct Stand {
    /// Its sections from the tip on.
    pub slices: Vec<Slice>,
    /// Its length along the bar, mm.
    pub length_mm: f64,
}

/// Steel and skin of a stretch.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Bulk {
    /// mm³.
    pub volume_mm3: f64,
    /// mm².
    pub skin_mm2: f64,
    /// mm.
    pub length_mm: f64,
}

impl Bulk {
    /// Volume over skin, mm.
    pub fn ratio_mm(self) -> f64 {
        self.volume_mm3 / self.skin_mm2.max(f64::MIN_POSITIVE)
    }
}

impl Stand {
    /// The piece as it stands.
    pub fn of(piece: &Piece) -> Self {
        let standing = piece.standing(EVERY_MM, FOLLOW_MM);
        let mut slices: Vec<Slice> = standing.into_iter().filter_map(slice).collect();
        let mut volume = 0.0;
        for i in 1..slices.len() {
            let (a, b) = (&slices[i - 1], &slices[i]);
            volume += (b.at_mm - a.at_mm) * f64::midpoint(a.area_mm2, b.area_mm2);
            slices[i].volume_mm3 = volume;
        }
        let mut stand = Self {
            slices,
            length_mm: piece.length_mm(),
        };
        stand.grow();
        stand
    }

    /// Turned half round about x, as half B lies to half A.
    #[must_use]
    pub(super) fn turned(mut self) -> Self {
        for slice in &mut self.slices {
            for point in &mut slice.points {
                *point = Model::half_b_point(*point);
            }
        }
        self
    }

    /// With another piece beside it: each section has the points of those of the other that lie about
    /// it along x.
    #[must_use]
    pub(super) fn with(mut self, other: &Self) -> Self {
        let at = |slice: &Slice| slice.points.first().map_or(0.0, |point| point[0]);
        let beside: Vec<(f64, &Slice)> = other.slices.iter().map(|own| (at(own), own)).collect();
        for slice in &mut self.slices {
            let x = at(slice);
            let near = beside.iter().filter(|(own, _)| (own - x).abs() <= EVERY_MM);
            let points: Vec<[f64; 3]> = near.flat_map(|(_, own)| own.points.clone()).collect();
            slice.points.extend(points);
        }
        self.grow();
        self
    }

    /// Sets the circles around each section alone, and around all from either end.
    fn grow(&mut self) {
        let mut grown = Growing::default();
        for slice in &mut self.slices {
            slice.circle_mm = grown.add(across(&slice.points));
            slice.bore_mm[0] = grown.diameter_mm();
        }
        let backward = grown.backward_mm();
        for (slice, bore) in self.slices.iter_mut().rev().zip(backward) {
            slice.bore_mm[1] = bore;
        }
    }

    /// How far a place lies from an end, mm.
    pub fn from_end_mm(&self, end: End, at_mm: f64) -> f64 {
        match end {
            End::Tip => at_mm,
            End::Rein => self.length_mm - at_mm,
        }
    }

    /// Its sections in the order in which they go in from an end.
    pub fn from(&self, end: End) -> Box<dyn Iterator<Item = &Slice> + '_> {
        match end {
            End::Tip => Box::new(self.slices.iter()),
            End::Rein => Box::new(self.slices.iter().rev()),
        }
    }

    /// Steel and skin between two places, mm from the tip.
    pub fn bulk(&self, (from, to): (f64, f64)) -> Bulk {
        let mut bulk = Bulk::default();
        for pair in self.slices.windows(2) {
            let (a, b) = (&pair[0], &pair[1]);
            let (low, high) = (a.at_mm.max(from), b.at_mm.min(to));
            if high <= low {
                continue;
            }
            let long = high - low;
            bulk.length_mm += long;
            bulk.volume_mm3 += long * f64::midpoint(a.area_mm2, b.area_mm2);
            bulk.skin_mm2 += long * f64::midpoint(a.skin_mm, b.skin_mm);
        }
        bulk
    }

    /// The section nearest to a place.
    pub fn near(&self, at_mm: f64) -> Option<&Slice> {
        let off = |slice: &&Slice| (slice.at_mm - at_mm).abs();
        self.slices.iter().min_by(|a, b| off(a).total_cmp(&off(b)))
    }

    /// Steel from the tip up to a place, mm³: the same steel at every stage.
    pub fn volume_to(&self, at_mm: f64) -> f64 {
        let next = self.slices.partition_point(|slice| slice.at_mm < at_mm);
        let Some(b) = self.slices.get(next) else {
            return self.slices.last().map_or(0.0, |last| last.volume_mm3);
        };
        let Some(a) = next.checked_sub(1).map(|at| &self.slices[at]) else {
            return 0.0;
        };
        let t = (at_mm - a.at_mm) / (b.at_mm - a.at_mm).max(f64::MIN_POSITIVE);
        a.volume_mm3 + (b.volume_mm3 - a.volume_mm3) * t
    }
}

/// Points as they are seen along x: (z, y).
fn across(points: &[[f64; 3]]) -> Vec<(f64, f64)> {
    points.iter().map(|&[_, y, z]| (z, y)).collect()
}

fn slice(standing: Standing) -> Option<Slice> {
    let area_mm2: f64 = standing.rings.iter().map(|(area, _)| area).sum();
    let skin_mm = standing.rings.iter().map(|(_, ring)| around(ring)).sum();
    let points: Vec<[f64; 3]> = standing
        .rings
        .into_iter()
        .flat_map(|(_, ring)| ring)
        .collect();
    (area_mm2 > 0.0 && !points.is_empty()).then_some(Slice {
        at_mm: standing.along_mm,
        part: standing.part,
        area_mm2,
        skin_mm,
        points,
        circle_mm: 0.0,
        bore_mm: [0.0; 2],
        volume_mm3: 0.0,
    })
}

/// Length of a closed line.
fn around(ring: &[[f64; 3]]) -> f64 {
    let next = ring.iter().cycle().skip(1);
    let far = |a: &[f64; 3], b: &[f64; 3]| {
        let [dx, dy, dz] = [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
        (dx * dx + dy * dy + dz * dz).sqrt()
    };
    ring.iter().zip(next).map(|(a, b)| far(a, b)).sum()
}
