//! How stout a jaw must be for its reach.

use crate::asked::Bar;
use crate::shape::section::{Piece, Profile, Section};
use crate::steel::strength;
use crate::tongs::squeeze::STRONG_N;
use crate::units::{Length, MM_PER_SIXTEENTH, Unit};

/// Parts of the yield that a jaw uses under it (judgement).
const USED: f64 = 0.85;
/// Sides of the bar between rivet and hand, and between rivet and heel, in the starting pair.
const HAND: f64 = 17.0;
const HEEL: f64 = 1.55;
/// The leverage that a starting pair keeps however far its jaw reaches.
const LEVERAGE: f64 = 3.1;

/// The section modulus that bears a strong squeeze so far behind the place where the work
/// presses, mm³: `F · leverage · reach / σ`.
pub(super) fn modulus_mm3(bar: &Bar, reach: f64) -> f64 {
    let side = bar.stock.equal_square_mm();
    let leverage = (HAND * side / (HEEL * side + reach)).max(LEVERAGE);
    STRONG_N * leverage * reach / (USED * strength(bar.steel).yield_mpa)
}

/// The depth at which a rectangle of some width has it, mm.
pub(super) fn depth_mm(bar: &Bar, reach: f64, width: f64) -> f64 {
    (6.0 * modulus_mm3(bar, reach) / width).sqrt()
}

/// The steps in which a smith measures, mm.
fn step(bar: &Bar) -> f64 {
    match bar.stock.size().unit() {
        Unit::Inch | Unit::Foot => MM_PER_SIXTEENTH,
        Unit::Millimetre | Unit::Centimetre => 0.5,
    }
}

/// Less than a step that is lost in reckoning, in steps.
const HAIR: f64 = 1e-6;

/// No more than so many mm, in those steps, and at least one.
pub(super) fn at_most(bar: &Bar, mm: f64) -> Length {
    let steps = (mm / step(bar) + HAIR).floor().max(1.0);
    Length::from_mm(steps * step(bar), bar.stock.size().unit())
}

/// No less than so many mm, in those steps.
pub(super) fn at_least(bar: &Bar, mm: f64) -> Length {
    let steps = (mm / step(bar) - HAIR).ceil();
    Length::from_mm(steps * step(bar), bar.stock.size().unit())
}

/// A width, no more than the bar's area gives at some depth.
pub(super) fn width_within(bar: &Bar, wanted: f64, depth: f64) -> Length {
    let unit = bar.stock.size().unit();
    let most = bar.stock.area_mm2() / depth;
    if wanted <= most {
        Length::measured(wanted, unit)
    } else {
        at_most(bar, most)
    }
}

/// The wall around a groove that bears a strong squeeze so far from the work: the thinnest from
/// `least` mm on, as far as the bar gives it. `surfaces` makes outer and inner surface of a wall.
pub(super) fn wall(
    bar: &Bar,
    (reach, least): (f64, f64),
    surfaces: impl Fn(f64) -> (Vec<Piece>, Vec<Piece>),
) -> Length {
    let needed = modulus_mm3(bar, reach);
    let most = bar.stock.area_mm2();
    let properties = |wall: f64| {
        let (upper, lower) = surfaces(wall);
        let boxed = Profile::boxed(&upper, &lower);
        Section::new(&boxed.profile, boxed.depth, boxed.width).properties()
    };
    let first = Length::measured(least, bar.stock.size().unit());
    let mut wall = first;
    while properties(wall.mm()).side_modulus_mm3() < needed {
        let next = at_least(bar, wall.mm() + step(bar) / 2.0);
        if properties(next.mm()).area_mm2 > most {
            break;
        }
        wall = next;
    }
    wall
}

/// The depth at which a jaw begins that reaches so far, mm: a neck that swings out to it is no
/// deeper, and by the boss only half the bar is there. Between half of the bar and nine tenths.
pub(super) fn root_mm(bar: &Bar, reach: f64) -> f64 {
    /// Sides of the bar from the edge of the boss to the heel.
    const NECK: f64 = 0.65;
    let side = bar.stock.equal_square_mm();
    let thick = bar.stock.size().mm() / 2.0;
    depth_mm(bar, reach + NECK * side, thick).clamp(0.5 * side, 0.9 * side)
}

/// The depth of a heel, mm: the usual one, or what the neck behind it needs, so that the two meet
/// without a hump.
pub(super) fn heel(bar: &Bar, usual: f64, reach: f64) -> Length {
    let depth = usual.max(root_mm(bar, reach));
    Length::measured(depth, bar.stock.size().unit())
}

/// The diameter at which a round bears a strong squeeze so far from the work, mm: a round has
/// `π/32 d³`.
pub(super) fn diameter_mm(bar: &Bar, reach: f64) -> f64 {
    (modulus_mm3(bar, reach) * 32.0 / std::f64::consts::PI).cbrt()
}

/// From the rivet to where a jaw may begin beside the starting boss, mm: the boss is a little over
/// one and a half times the bar, and the jaw passes it with a little play.
pub(super) fn boss_reach_mm(bar: &Bar) -> f64 {
    const BOSS: f64 = 0.5 * 1.6;
    const FLAT: f64 = 0.5 * 1.2;
    const PLAY: f64 = 4.0;
    let stock = &bar.stock;
    (BOSS * stock.equal_square_mm()).max(FLAT * stock.wide_mm()) + PLAY
}
