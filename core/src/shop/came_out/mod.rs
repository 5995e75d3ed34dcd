//! What came out: from the rein that was measured after forging, and what was cut off it, to the
//! scale and the margin of the smith who forged it.
//!
//! [`reckon`] works one half out, [`CameOut`] keeps what a shop has measured, and
//! [`CameOut::own`] is what its smith can go by in the next design.

mod kept;

use thiserror::Error;

pub use kept::{CAME_OUT_FILE, CAME_OUT_FORMAT, CameOut, KeptError, Made};

use crate::asked::{Allowances, Scale};
use crate::forge::balance::{Balance, Loss};
use crate::tongs::model::Model;
use crate::units::Length;

/// What a smith measured on a finished half.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measured {
    /// The rein, from the shoulder to its end.
    pub rein: Length,
    /// What was cut off its end, as length of rein.
    pub left: Length,
    /// How long steel stayed workable in one heat, s.
    pub heat_s: Option<f64>,
}

/// What a measurement means.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Meant {
    /// How much longer the rein is than it was drawn, mm; below nothing it is shorter.
    pub longer_mm: f64,
    /// Steel that is in none of what was measured, mm³.
    pub gone_mm3: f64,
    /// The same, per cent of the finished half.
    pub gone_percent: f64,
    /// How much of it is scale, per cent: no more than [`Scale::CAP_PERCENT`].
    pub scale_percent: f64,
    /// What went elsewhere, per cent: into sizes that came out fuller than they were drawn, or a
    /// longer cut.
    pub elsewhere_percent: f64,
}

/// Why a measurement cannot be.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum CameOutError {
    /// There is more steel than there was bar.
    #[error(
        "the half has {0:.1} % more steel than its bar had: measure the rein from the shoulder, and what was cut off its end"
    )]
    MoreThanBar(f64),
    /// A length that no rein has.
    #[error(
        "a rein of {0} is not between nothing and 3 m: measure it from the shoulder to its end"
    )]
    Rein(Length),
    /// No length that is cut off.
    #[error("{0} cut off a rein is not between nothing and 3 m: write 0 if nothing was left over")]
    Left(Length),
    /// No time of a heat.
    #[error("a heat of {0} s is none: write how long the steel stayed workable, such as 40")]
    Heat(f64),
    /// No bar can be reckoned for the design.
    #[error("{0}")]
    NoBar(String),
}

/// No rein is longer, mm.
const LONGEST_MM: f64 = 3000.0;
/// No heat is longer, s.
const LONGEST_HEAT_S: f64 = 3600.0;

/// More steel than the bar by so many per cent is a rule misread by a hair, and is taken as none.
const HAIR_PERCENT: f64 = 0.5;

/// What a measurement of the first half means: what its bar had, less the cuts, the hole and the
/// dressing as they were reckoned, less the half as drawn with a rein as long as it was measured, less
/// what was cut off. A rein that is longer or shorter than drawn is so at its end, with the section
/// that it has there.
///
/// # Errors
/// When what was measured cannot be.
pub fn reckon(
    (model, balance): (&Model, &Balance),
    measured: &Measured,
) -> Result<Meant, CameOutError> {
    check(measured)?;
    let own = match (balance.trouble(), balance.pieces.first()) {
        (None, Some(own)) => own,
        (Some(trouble), _) => return Err(CameOutError::NoBar(trouble)),
        (None, None) => return Err(CameOutError::NoBar("the design has no half".to_owned())),
    };
    let rein = &model.a.rein;
    let named = [
        Loss::Slug,
        Loss::DrilledHole,
        Loss::Dressing,
        Loss::Kerf,
        Loss::Tail,
    ];
    let named: f64 = named.into_iter().map(|what| own.allowance(what)).sum();
    let had = (own.bar_length_mm - named) * balance.bar_area_mm2;
    let longer_mm = measured.rein.mm() - rein.length();
    let at_end = rein.section(end_of(model)).area_mm2();
    let gone_mm3 = had - own.volume_mm3 - at_end * (longer_mm + measured.left.mm());
    let gone_percent = 100.0 * gone_mm3 / own.volume_mm3;
    if gone_percent < -HAIR_PERCENT {
        return Err(CameOutError::MoreThanBar(-gone_percent));
    }
    let scale_percent = gone_percent.clamp(0.0, Scale::CAP_PERCENT);
    Ok(Meant {
        longer_mm,
        gone_mm3,
        gone_percent,
        scale_percent,
        elsewhere_percent: (gone_percent - scale_percent).max(0.0),
    })
}

/// Where a rein has the section that it ends with, mm along it: before a ball, a curl or a rounding.
fn end_of(model: &Model) -> f64 {
    /// Behind the hand a rein is finished in less than this.
    const BEFORE: f64 = 0.9;
    BEFORE * model.a.rein.length()
}

fn check(measured: &Measured) -> Result<(), CameOutError> {
    let within = |length: Length, least: f64| (least..=LONGEST_MM).contains(&length.mm());
    if !within(measured.rein, f64::MIN_POSITIVE) {
        return Err(CameOutError::Rein(measured.rein));
    }
    if !within(measured.left, 0.0) {
        return Err(CameOutError::Left(measured.left));
    }
    match measured.heat_s {
        Some(heat) if !(heat > 0.0 && heat <= LONGEST_HEAT_S) => Err(CameOutError::Heat(heat)),
        Some(_) | None => Ok(()),
    }
}

/// What a smith can go by in the next design.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Own {
    /// Scale, per cent of the finished half.
    pub scale_percent: f64,
    /// Margin on everything, per cent.
    pub margin_percent: f64,
    /// How long steel stays workable in one heat, s, if it was ever timed.
    pub heat_s: Option<f64>,
    /// From how many measurements.
    pub halves: usize,
}

impl Own {
    /// The losses of a design with this smith's own values.
    #[must_use]
    pub fn on(&self, losses: Allowances) -> Allowances {
        Allowances {
            scale: Scale::Whole {
                percent: self.scale_percent,
            },
            margin: self.margin_percent,
            ..losses
        }
    }
}
