//! How far the steel of a half has come, zone by zone, and what each zone still has to lose.

use std::f64::consts::FRAC_PI_4;

use crate::asked::Stock;
use crate::finding::Part;
use crate::forge::balance::{Balance, Loss, PieceBalance};
use crate::shape::Piece;
use crate::shape::section::{Profile, plain_profile};
use crate::shape::sweep::Station;
use crate::tongs::document::Document;
use crate::tongs::model::Half;

use super::blank::{BOX, ROUND, Sect};
use super::rules::spread_mm;
use super::side::{SetDowns, Side};

/// The zones of a half along the bar, as [`crate::tongs::model::PARTS`] has them, and what follows
/// the rein: a handling tail, or a rod that is welded on.
pub(super) const JAW: usize = 0;
pub(super) const NECK: usize = 1;
pub(super) const BOSS: usize = 2;
pub(super) const SHOULDER: usize = 3;
pub(super) const REIN: usize = 4;
pub(super) const MORE: usize = 5;
/// How many zones there are.
pub(super) const ZONES: usize = 6;

/// How far a zone has come.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Shape {
    /// Bar as it came.
    Bar,
    /// Round bar hammered flat.
    Flattened,
    /// Necked in on both edges.
    Necked,
    /// Set down against an edge; of neck and shoulder, the slope between.
    SetDown,
    /// A jaw turned a quarter round by the twist behind it.
    Twisted,
    /// Boss: flat and round. Jaw: a straight flat of its final lengths and thicknesses.
    Forged,
    /// A rein of the stub, drawn to the size of the rod.
    Stub,
    /// A rod with its end gathered for the weld.
    Gathered,
    /// A stub and its rod in one.
    Welded,
    /// Drawn square, its corners still on.
    Square,
    /// Corners hammered in.
    Octagon,
    /// Rounded, with its own sections.
    Round,
    /// With its shaped grip.
    Gripped,
    /// With its end finished.
    Ended,
    /// As the half has it.
    Finished,
}

/// The steel of one zone, mm³.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Zone {
    pub(super) shape: Shape,
    /// What the finished part keeps.
    pub(super) finished: f64,
    /// Still to burn to scale.
    pub(super) scale: f64,
    /// Still to come out of the hole.
    pub(super) hole: f64,
    /// To be cut off or filed away.
    pub(super) spare: f64,
    /// Half of the cut in the middle of a blank.
    pub(super) kerf: f64,
}

impl Zone {
    pub(super) const NOTHING: Self = Self {
        shape: Shape::Bar,
        finished: 0.0,
        scale: 0.0,
        hole: 0.0,
        spare: 0.0,
        kerf: 0.0,
    };

    pub(super) fn volume(&self) -> f64 {
        self.finished + self.scale + self.hole + self.spare + self.kerf
    }

    /// How much larger its sections stand both ways than they will be, for what it still loses to
    /// scale.
    pub(super) fn proud(&self) -> f64 {
        if self.finished > 0.0 {
            ((self.finished + self.scale) / self.finished).sqrt()
        } else {
            1.0
        }
    }
}

/// A half on its way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct State {
    pub(super) zones: [Zone; ZONES],
    /// Whether both halves still hang together, rein to rein.
    pub(super) double: bool,
    /// What the bar loses before it is a blank, mm³.
    pub(super) uncut: f64,
    /// Whether the hole is through.
    pub(super) holed: bool,
    /// Whether the rein was set down on the side away from the jaw's.
    pub(super) third: bool,
    /// Whether a rod lies behind the rein, not yet welded.
    pub(super) apart: bool,
}

impl State {
    /// Steel of all that hangs together or lies ready, mm³.
    pub(super) fn volume(&self) -> f64 {
        let half: f64 = self.zones.iter().map(Zone::volume).sum();
        half * self.times() + self.uncut
    }

    /// How many halves it is.
    pub(super) fn times(&self) -> f64 {
        if self.double { 2.0 } else { 1.0 }
    }

    pub(super) fn body_is_finished(&self) -> bool {
        self.zones[BOSS].shape == Shape::Finished
    }
}

/// What is made and from what, in plain numbers.
pub(super) struct Task<'a> {
    pub(super) document: &'a Document,
    pub(super) half: &'a Half,
    pub(super) piece: &'a Piece,
    /// The bar's section as it lies.
    pub(super) bar: Sect,
    /// What the head is set down from: the bar, or the bar hammered flat.
    pub(super) base: Sect,
    pub(super) area: f64,
    pub(super) profiles: Vec<Profile>,
    pub(super) radius: f64,
    pub(super) hole_mm3: f64,
    pub(super) set_downs: SetDowns,
}

impl<'a> Task<'a> {
    pub(super) fn new(
        document: &'a Document,
        (half, piece): (&'a Half, &'a Piece),
        joggle: f64,
        (flattened, set_downs): (bool, SetDowns),
    ) -> Self {
        let mut bar = bar_sect(&document.bar.stock, joggle);
        if set_downs.boss != SetDowns::USUAL.boss {
            // The joint face is the one that is kept.
            bar.z = bar.width / 2.0;
        }
        let mut profiles = vec![
            Profile::rectangle(),
            Profile::chamfered(OCTAGON_LEG, OCTAGON_LEG),
            Profile::rounded(1.0, 1.0),
        ];
        profiles.extend(half.rein.profiles.iter().cloned());
        let rein = &document.rein;
        debug_assert_eq!(profiles[super::blank::OWN], plain_profile(&rein.start));
        let hole = piece.holes.first();
        Self {
            document,
            half,
            piece,
            bar,
            base: if flattened { flattened_from(bar) } else { bar },
            area: document.bar.stock.area_mm2(),
            profiles,
            radius: document.neck.fillet.mm(),
            hole_mm3: hole.map_or(0.0, |hole| hole.volume_mm3),
            set_downs,
        }
    }

    /// The middle of a section that keeps one side of the bar while the other is set down.
    pub(super) fn kept_y(&self, depth: f64, set_down: Side) -> f64 {
        let aside = (self.base.depth - depth) / 2.0;
        if set_down == Side::Inside {
            aside
        } else {
            -aside
        }
    }

    /// The head's stock as a square or a rectangle: depth and width, mm. A round under the first blows
    /// is as good as the square of its area.
    pub(super) fn squared(&self) -> (f64, f64) {
        let k = self.profiles[self.base.profile].fullness().sqrt();
        (self.base.depth * k, self.base.width * k)
    }

    /// The bar or the flattened bar.
    pub(super) fn plain(&self, shape: Shape) -> Sect {
        if shape == Shape::Flattened {
            self.base
        } else {
            self.bar
        }
    }

    /// The square rein at a station of the finished one.
    pub(super) fn square_at(&self, station: &Station) -> Sect {
        Sect {
            depth: station.depth,
            width: station.width,
            y: 0.0,
            z: self.bar.z,
            profile: BOX,
        }
    }

    /// The smith's hammer bites about as wide as the bar is.
    pub(super) fn bite(&self) -> f64 {
        self.bar.width.min(self.bar.depth)
    }
}

/// Leg of a regular octagon's corner over half the square's side.
const OCTAGON_LEG: f64 = 2.0 - std::f64::consts::SQRT_2;

/// The bar as it lies: its thickness along the rivet, one face flush with the outside of the boss.
fn bar_sect(stock: &Stock, joggle: f64) -> Sect {
    let (depth, width, profile) = match stock {
        Stock::Round { diameter } => (diameter.mm(), diameter.mm(), ROUND),
        Stock::Square { side } => (side.mm(), side.mm(), BOX),
        Stock::Flat { thickness, width } => (width.mm(), thickness.mm(), BOX),
    };
    Sect {
        depth,
        width,
        y: 0.0,
        z: joggle,
        profile,
    }
}

/// A round bar hammered to a flat that lies as thick as this part of the square of its area: enough
/// for the edges of the anvil to bite, and no more (judgement).
const FLATTENED_TO: f64 = 0.8;

fn flattened_from(bar: Sect) -> Sect {
    let side = bar.depth * FRAC_PI_4.sqrt();
    let thin = FLATTENED_TO * side;
    Sect {
        depth: spread_mm((side, side), thin, side).middle(),
        width: thin,
        profile: BOX,
        ..bar
    }
}

/// What a piece takes from the bar, as zones: each with its finished volume and all it loses.
pub(super) fn zones_of(task: &Task<'_>, taken: &[f64; 5], own: &PieceBalance) -> [Zone; ZONES] {
    let mut zones = [Zone::NOTHING; ZONES];
    let volume = |what: Loss| own.allowance(what) * task.area;
    let finished: f64 = own.parts.iter().map(|part| part.volume_mm3).sum();
    let scale = volume(Loss::Scale) / finished;
    let hole = volume(Loss::Slug) + volume(Loss::DrilledHole);
    for (at, zone) in zones.iter_mut().take(MORE).enumerate() {
        zone.finished = own.parts[at].volume_mm3;
        zone.scale = scale * zone.finished;
        zone.hole = if at == BOSS { hole } else { 0.0 };
        // Dressing and the smith's own margin are what is left.
        let spare = taken[at] * task.area - zone.volume();
        zone.spare = if spare > NOTHING * zone.finished {
            spare
        } else {
            0.0
        };
    }
    zones[MORE].spare = volume(Loss::Tail);
    zones
}

/// What is less than this part of a zone is rounding.
const NOTHING: f64 = 1e-9;

/// The bar that each zone of both halves takes, mm, in order from jaw to rein.
pub(super) fn taken(balance: &Balance, turned: bool) -> [[f64; 5]; 2] {
    let all: Vec<f64> = balance
        .stretches
        .iter()
        .filter(|stretch| stretch.part.is_some_and(|part| part != Part::Bar))
        .map(|stretch| stretch.to_mm - stretch.from_mm)
        .collect();
    let mut both = [[0.0; 5]; 2];
    for (at, length) in all.iter().take(10).enumerate() {
        let (half, zone) = (at / 5, at % 5);
        let zone = if half == 1 && turned { 4 - zone } else { zone };
        both[half][zone] = *length;
    }
    both
}
