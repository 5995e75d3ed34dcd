//! How carbon steel takes up heat, passes it on and grows with it: EN 1993-1-2:2005, 3.4.1.
//!
//! The standard's curves hold from 20 to 1200 °C. A temperature outside is refused where it comes
//! in, as a [`Theta`]; the formulas themselves then never fail.

use thiserror::Error;

/// Where the laws of this module come from.
pub const THERMAL_SOURCE: &str = "EN 1993-1-2:2005, 3.4.1, carbon steel";

/// The temperatures between which the laws hold, °C.
pub const HOLDS_CELSIUS: (f64, f64) = (20.0, 1200.0);

/// A temperature of steel for which the laws hold.
///
/// ```
/// use reinwright_core::steel::thermal::{Theta, enthalpy_j_kg};
/// let forging = Theta::new(1100.0)?;
/// assert!((enthalpy_j_kg(forging) / 762_060.0 - 1.0).abs() < 1e-4);
/// assert!(Theta::new(1250.0).is_err());
/// # Ok::<(), reinwright_core::steel::thermal::ThetaError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Theta(f64);

/// A temperature for which nothing is known.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
#[error(
    "{0:.0} \u{b0}C is outside 20 to 1200 \u{b0}C, for which the heat in steel is known (EN 1993-1-2): give one between"
)]
pub struct ThetaError(f64);

impl Theta {
    /// A temperature in °C.
    ///
    /// # Errors
    /// When it is no number or outside 20 to 1200.
    pub fn new(celsius: f64) -> Result<Self, ThetaError> {
        let (least, most) = HOLDS_CELSIUS;
        if (least..=most).contains(&celsius) {
            Ok(Self(celsius))
        } else {
            Err(ThetaError(celsius))
        }
    }

    /// The nearest temperature for which the laws hold: for integrators, whose steps may pass an end.
    pub(crate) fn nearest(celsius: f64) -> Self {
        Self(celsius.clamp(HOLDS_CELSIUS.0, HOLDS_CELSIUS.1))
    }

    /// In °C.
    pub fn celsius(self) -> f64 {
        self.0
    }
}

/// Specific heat, J/(kg K): 3.4.1.2. It stands up to 5000 at 735 °C, where the steel loses its
/// magnetism and changes its grain.
pub fn specific_heat_j_kgk(theta: Theta) -> f64 {
    let t = theta.0;
    if t < 600.0 {
        425.0 + 0.773 * t - 1.69e-3 * t * t + 2.22e-6 * t.powi(3)
    } else if t < 735.0 {
        666.0 + 13002.0 / (738.0 - t)
    } else if t < 900.0 {
        545.0 + 17820.0 / (t - 731.0)
    } else {
        650.0
    }
}

/// Heat that a kilogram holds over what it holds at 20 °C, J/kg: the specific heat integrated in
/// closed form.
pub fn enthalpy_j_kg(theta: Theta) -> f64 {
    let t = theta.0;
    let (to_600, to_735) = (cubic(600.0) - cubic(20.0), below(735.0) - below(600.0));
    if t < 600.0 {
        cubic(t) - cubic(20.0)
    } else if t < 735.0 {
        to_600 + below(t) - below(600.0)
    } else if t < 900.0 {
        to_600 + to_735 + above(t) - above(735.0)
    } else {
        to_600 + to_735 + above(900.0) - above(735.0) + 650.0 * (t - 900.0)
    }
}

fn cubic(t: f64) -> f64 {
    425.0 * t + 0.3865 * t * t - 1.69e-3 / 3.0 * t.powi(3) + 0.555e-6 * t.powi(4)
}

fn below(t: f64) -> f64 {
    666.0 * t - 13002.0 * (738.0 - t).ln()
}

fn above(t: f64) -> f64 {
    545.0 * t + 17820.0 * (t - 731.0).ln()
}

/// Conductivity, W/(m K): 3.4.1.3.
pub fn conductivity_w_mk(theta: Theta) -> f64 {
    if theta.0 < 800.0 {
        54.0 - 3.33e-2 * theta.0
    } else {
        27.3
    }
}

/// Growth in length over that at 20 °C: 3.4.1.1. It stands still from 750 to 860 °C, where the grain
/// packs closer.
pub fn elongation(theta: Theta) -> f64 {
    let t = theta.0;
    if t < 750.0 {
        1.2e-5 * t + 0.4e-8 * t * t - 2.416e-4
    } else if t <= 860.0 {
        1.1e-2
    } else {
        2e-5 * t - 6.2e-3
    }
}
