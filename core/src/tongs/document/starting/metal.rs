//! What a bar gives to work with, and what a squeeze asks of it.

use crate::asked::{Bar, Stock};
use crate::steel::strength;
use crate::tongs::squeeze::STRONG_N;
use crate::units::{Length, MM_PER_SIXTEENTH, Unit};

/// Parts of the yield that the starting sections use under a strong squeeze: what rounding and
/// the smith's hammer take must not bend the pair (judgement).
const USED: f64 = 0.9;

/// The bar as the parts of a pair are sized from it, mm.
#[derive(Debug, Clone, Copy)]
pub(super) struct Metal {
    /// Side of the square of its area.
    pub(super) side: f64,
    /// Its size in the side view: neck and shoulder grow no deeper.
    pub(super) deep: f64,
    /// Its size along the rivet, through which the boss is set down.
    pub(super) thick: f64,
    /// Its area, mm².
    pub(super) area: f64,
    /// The stress that a strong squeeze may raise, MPa.
    pub(super) bears_mpa: f64,
    /// What its sizes are written in.
    pub(super) unit: Unit,
}

impl Metal {
    pub(super) fn of(bar: &Bar) -> Self {
        let stock = &bar.stock;
        Self {
            side: stock.equal_square_mm(),
            deep: stock.wide_mm(),
            thick: match *stock {
                Stock::Flat { thickness, width } => thickness.mm().min(width.mm()),
                Stock::Round { .. } | Stock::Square { .. } => stock.size().mm(),
            },
            area: stock.area_mm2(),
            bears_mpa: USED * strength(bar.steel).yield_mpa,
            unit: stock.size().unit(),
        }
    }

    /// Thickness of a boss, half the bar: then jaw and rein need no joggle, mm.
    pub(super) fn boss_thickness(&self) -> f64 {
        self.thick / 2.0
    }

    /// How deep a rectangle of some width must be to bear a strong squeeze at the end of an arm,
    /// mm: `M = b h² / 6 · σ`.
    pub(super) fn depth_for(&self, arm: f64, width: f64) -> f64 {
        (6.0 * STRONG_N * arm / (self.bears_mpa * width)).sqrt()
    }

    /// The longest arm at which a rectangle bears a strong squeeze, mm.
    pub(super) fn arm_for(&self, depth: f64, width: f64) -> f64 {
        width * depth * depth / 6.0 * self.bears_mpa / STRONG_N
    }

    /// A size as a smith measures it.
    pub(super) fn measured(&self, mm: f64) -> Length {
        Length::measured(mm, self.unit)
    }

    /// The steps in which a smith measures, mm.
    pub(super) fn step(&self) -> f64 {
        match self.unit {
            Unit::Inch | Unit::Foot => MM_PER_SIXTEENTH,
            Unit::Millimetre | Unit::Centimetre => 0.5,
        }
    }

    /// No less than a size, in those steps, but no more than what there is.
    pub(super) fn at_least(&self, mm: f64, most: f64) -> Length {
        /// A hair that is no step more, in steps.
        const HAIR: f64 = 1e-6;
        let step = self.step();
        let up = (mm / step - HAIR).ceil() * step;
        Length::from_mm(up.min(most), self.unit)
    }

    /// A whole size of the trade, written in inches or in millimetres as the bar is.
    pub(super) fn usual(&self, (over, under): (u32, u32), mm: f64) -> Length {
        match self.unit {
            Unit::Inch | Unit::Foot => Length::fraction(over, under, Unit::Inch),
            Unit::Millimetre | Unit::Centimetre => Length::decimal(mm, Unit::Millimetre),
        }
    }
}
