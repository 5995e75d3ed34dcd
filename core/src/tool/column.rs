//! When a slender steel column gives way sideways, after Euler and J. B. Johnson.

use std::f64::consts::PI;

/// A straight column.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Column {
    /// mm².
    pub area_mm2: f64,
    /// Least second moment of area, mm⁴.
    pub least_mm4: f64,
    /// Length between its ends, mm.
    pub length_mm: f64,
    /// Modulus of elasticity, MPa.
    pub youngs_mpa: f64,
    /// Yield, MPa.
    pub yield_mpa: f64,
    /// How its ends are held.
    pub ends: Ends,
}

/// How a column's ends are held.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ends {
    /// Both are hinged.
    Hinged,
    /// One is held fast, the other free: nothing steadies the work.
    Free,
    /// One is held fast, the other hinged.
    FixedAndHinged,
    /// Both are held fast.
    Fixed,
}

/// By which law a column gives way.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Law {
    /// Long: it springs aside.
    Euler,
    /// Short: it is partly crushed.
    Johnson,
}

/// Where the laws are from.
pub const SOURCE: &str = "Euler and J. B. Johnson columns";

impl Ends {
    /// Effective length over length: 1, 2, 0.699, 1/2 of theory.
    pub fn factor(self) -> f64 {
        match self {
            Self::Hinged => 1.0,
            Self::Free => 2.0,
            // From tan x = x: π / 4.4934.
            Self::FixedAndHinged => 0.699_156,
            Self::Fixed => 0.5,
        }
    }
}

impl Column {
    /// Effective length over the radius of gyration.
    pub fn slenderness(&self) -> f64 {
        self.ends.factor() * self.length_mm / (self.least_mm4 / self.area_mm2).sqrt()
    }

    /// The slenderness at which both laws meet: `sqrt(2 π² E / σ)`.
    pub fn meets_at(&self) -> f64 {
        PI * (2.0 * self.youngs_mpa / self.yield_mpa).sqrt()
    }

    /// By which law it gives way.
    pub fn law(&self) -> Law {
        if self.slenderness() > self.meets_at() {
            Law::Euler
        } else {
            Law::Johnson
        }
    }

    /// The force under which it gives way, N: `π² E A / λ²` of a long one, and of a short one
    /// `A σ (1 − σ λ² / 4 π² E)`.
    ///
    /// ```
    /// use reinwright_core::tool::column::{Column, Ends};
    /// let column = Column {
    ///     area_mm2: 100.0, least_mm4: 833.3, length_mm: 1000.0,
    ///     youngs_mpa: 200_000.0, yield_mpa: 250.0, ends: Ends::Hinged,
    /// };
    /// assert!((column.gives_way_n() - 1644.9).abs() < 0.1);
    /// ```
    pub fn gives_way_n(&self) -> f64 {
        let slender = self.slenderness();
        let elastic = PI * PI * self.youngs_mpa;
        let stress = match self.law() {
            Law::Euler => elastic / (slender * slender),
            Law::Johnson => {
                let part = self.yield_mpa * slender * slender / (4.0 * elastic);
                self.yield_mpa * (1.0 - part)
            }
        };
        stress * self.area_mm2
    }
}
