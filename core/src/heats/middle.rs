//! How the middle of a section follows its skin: series solutions for a long cylinder and a slab.

use std::f64::consts::PI;

use crate::number::bessel::{j0, j1};
use crate::number::roots::rising_root;

/// The shapes for which there are series.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Body {
    /// A long round bar; its size is its radius.
    Cylinder,
    /// A wide flat; its size is half its thickness.
    Slab,
}

/// The first zeros of J₁ after 0 (Abramowitz and Stegun, table 9.5, from memory).
const J1_ZEROS: [f64; 6] = [
    3.831_705_970_2,
    7.015_586_669_8,
    10.173_468_135_1,
    13.323_691_936_3,
    16.470_630_050_9,
    19.615_858_510_5,
];

/// Temperatures of skin and middle over where both began.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Across {
    /// At the skin.
    pub skin: f64,
    /// In the middle.
    pub middle: f64,
}

/// Both over q·R/λ, after a time α·t/R² of steady heat q into the skin: Carslaw and Jaeger,
/// Conduction of Heat in Solids, 7.8 and 3.8, from memory. From 0.25 on they stay a half apart.
///
/// ```
/// use reinwright_core::heats::middle::{Body, steady_heat};
/// let late = steady_heat(Body::Cylinder, 0.5);
/// assert!((late.skin - late.middle - 0.5).abs() < 1e-3);
/// ```
pub fn steady_heat(body: Body, fourier: f64) -> Across {
    let terms = (1_u32..).zip(J1_ZEROS);
    match body {
        Body::Cylinder => {
            let mut across = Across {
                skin: 2.0 * fourier + 0.25,
                middle: 2.0 * fourier - 0.25,
            };
            for (_, b) in terms {
                let fades = 2.0 * (-b * b * fourier).exp() / (b * b);
                across.skin -= fades;
                across.middle -= fades / j0(b);
            }
            across
        }
        Body::Slab => {
            let mut across = Across {
                skin: fourier + 1.0 / 3.0,
                middle: fourier - 1.0 / 6.0,
            };
            for (n, _) in terms {
                let b = f64::from(n) * PI;
                let fades = 2.0 * (-b * b * fourier).exp() / (b * b);
                across.skin -= fades;
                across.middle -= if n % 2 == 1 { -fades } else { fades };
            }
            across
        }
    }
}

/// What is left of the difference to the surroundings, of one, after a time α·t/R² with a Biot number
/// h·R/λ at the skin: the series behind Heisler's charts (1947).
pub fn step(body: Body, biot: f64, fourier: f64) -> Across {
    let mut across = Across {
        skin: 0.0,
        middle: 0.0,
    };
    for n in 0..6 {
        let root = eigenvalue(body, biot, n);
        let share = coefficient(body, root) * (-root * root * fourier).exp();
        across.middle += share;
        across.skin += share
            * match body {
                Body::Cylinder => j0(root),
                Body::Slab => root.cos(),
            };
    }
    across
}

/// The root of ζ·J₁(ζ) = Bi·J₀(ζ), or of ζ·sin ζ = Bi·cos ζ, that follows `n` others.
pub fn eigenvalue(body: Body, biot: f64, n: u32) -> f64 {
    const TOLERANCE: f64 = 1e-12;
    let sign = if n.is_multiple_of(2) { 1.0 } else { -1.0 };
    match body {
        Body::Cylinder => {
            let below = if n == 0 {
                0.0
            } else {
                J1_ZEROS[n as usize - 1]
            };
            // The next zero of J₁ lies past the root, that of J₀ between.
            let above = J1_ZEROS[n as usize];
            rising_root((below, above), TOLERANCE, |z| {
                sign * (z * j1(z) - biot * j0(z))
            })
        }
        Body::Slab => {
            let below = f64::from(n) * PI;
            rising_root((below, below + PI / 2.0), TOLERANCE, |z| {
                sign * (z * z.sin() - biot * z.cos())
            })
        }
    }
}

/// The weight of a root in the middle's series.
pub fn coefficient(body: Body, root: f64) -> f64 {
    match body {
        Body::Cylinder => {
            let (zero, one) = (j0(root), j1(root));
            2.0 / root * one / (zero * zero + one * one)
        }
        Body::Slab => 4.0 * root.sin() / (2.0 * root + (2.0 * root).sin()),
    }
}

/// The Biot number of a skin that is held at its temperature.
const HELD: f64 = 1e6;

/// Time, in R²/α, until the middle is as near to a skin that is held as a part of how far it was off at the
/// beginning: from the first term of the series, 1.602·e^(−5.783·Fo) for a round bar.
pub fn following(body: Body, part_left: f64) -> f64 {
    let root = eigenvalue(body, HELD, 0);
    ((coefficient(body, root) / part_left).ln() / (root * root)).max(0.0)
}
