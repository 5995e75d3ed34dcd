//! Forces, stresses and masses in the smith's units.

use super::length::{MM_PER_INCH, Unit};
use super::show::{Show, fixed};
use super::temperature::Scale;

/// Kilograms in a pound, exact by the international yard and pound agreement of 1959.
pub const KG_PER_LB: f64 = 0.453_592_37;
/// Newtons in a pound-force, exact: the pound of 1959 times the standard gravity of 9.80665 m/s²
/// (NIST SP 811, appendix B).
pub const N_PER_LBF: f64 = 4.448_221_615_260_5;
/// Megapascals in a ksi, a thousand pounds-force on a square inch (NIST SP 811: 6.894757).
pub const MPA_PER_KSI: f64 = 1000.0 * N_PER_LBF / (MM_PER_INCH * MM_PER_INCH);

/// What a figure is a figure of. The core reckons each in one unit, whatever the smith reads.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Quantity {
    /// mm.
    Length,
    /// mm².
    Area,
    /// Degrees.
    Angle,
    /// N.
    Force,
    /// MPa.
    Stress,
    /// kg.
    Mass,
    /// One figure over another of its kind.
    Ratio,
}

impl Quantity {
    /// What the name of such a figure ends with where a program reads it, in the unit of the core:
    /// `value_mm`, `limit_mpa`. A ratio has no unit and no ending.
    ///
    /// ```
    /// use reinwright_core::units::Quantity;
    /// assert_eq!(Quantity::Stress.key("limit"), "limit_mpa");
    /// assert_eq!(Quantity::Ratio.key("limit"), "limit");
    /// ```
    pub fn key(self, name: &str) -> String {
        let unit = match self {
            Self::Length => "mm",
            Self::Area => "mm2",
            Self::Angle => "deg",
            Self::Force => "n",
            Self::Stress => "mpa",
            Self::Mass => "kg",
            Self::Ratio => return name.to_owned(),
        };
        format!("{name}_{unit}")
    }
}

impl Show {
    /// Any figure of the core as text with its unit.
    pub fn quantity(self, what: Quantity, value: f64) -> String {
        match what {
            Quantity::Length => self.text(value),
            Quantity::Area => self.area(value),
            Quantity::Angle => format!("{} degrees", fixed(value, 1)),
            Quantity::Force => self.force(value),
            Quantity::Stress => self.stress(value),
            Quantity::Mass => self.mass(value),
            Quantity::Ratio => fixed(value, 2),
        }
    }

    /// A force in N as text with its unit: `36 lbf`, `160 N`, `15.1 kN`.
    ///
    /// ```
    /// use reinwright_core::units::Show;
    /// assert_eq!(Show::default().force(160.0), "36 lbf");
    /// ```
    pub fn force(self, n: f64) -> String {
        /// From here on so many newtons are read as kilonewtons.
        const KILO: f64 = 9999.5;
        match self.unit {
            Unit::Millimetre | Unit::Centimetre if n.abs() >= KILO => {
                format!("{} kN", fixed(n / 1000.0, 1))
            }
            Unit::Inch | Unit::Foot | Unit::Millimetre | Unit::Centimetre => {
                format!("{} {}", self.force_number(n), self.force_sign())
            }
        }
    }

    /// The number of a force in N alone, for tables that name the unit once: whole from ten on.
    pub fn force_number(self, n: f64) -> String {
        let force = match self.unit {
            Unit::Inch | Unit::Foot => n / N_PER_LBF,
            Unit::Millimetre | Unit::Centimetre => n,
        };
        fixed(force, usize::from(force.abs() < 9.95))
    }

    /// The sign of the unit of force.
    pub fn force_sign(self) -> &'static str {
        match self.unit {
            Unit::Inch | Unit::Foot => "lbf",
            Unit::Millimetre | Unit::Centimetre => "N",
        }
    }

    /// A stress in MPa as text with its unit: `31.9 ksi`, `220 MPa`.
    ///
    /// ```
    /// use reinwright_core::units::Show;
    /// assert_eq!(Show::default().stress(220.0), "31.9 ksi");
    /// ```
    pub fn stress(self, mpa: f64) -> String {
        format!("{} {}", self.stress_number(mpa), self.stress_sign())
    }

    /// Two stresses in MPa that stand beside each other, with more digits where they would read alike.
    ///
    /// ```
    /// use reinwright_core::units::Show;
    /// assert_eq!(Show::default().stresses(250.0, 220.0), ["36.3 ksi", "31.9 ksi"]);
    /// assert_eq!(Show::default().stresses(220.2, 220.0), ["31.94 ksi", "31.91 ksi"]);
    /// ```
    pub fn stresses(self, a_mpa: f64, b_mpa: f64) -> [String; 2] {
        /// More digits than this say nothing of steel.
        const MOST_MORE: usize = 3;
        let (digits, per) = match self.unit {
            Unit::Inch | Unit::Foot => (1, MPA_PER_KSI),
            Unit::Millimetre | Unit::Centimetre => (0, 1.0),
        };
        let both = |digits| [a_mpa, b_mpa].map(|mpa| fixed(mpa / per, digits));
        let tries = (digits..digits + MOST_MORE).map(both);
        let told = { tries }
            .find(|[a, b]| a != b)
            .unwrap_or_else(|| both(digits));
        told.map(|number| format!("{number} {}", self.stress_sign()))
    }

    /// The number of a stress in MPa alone: ksi to a tenth, MPa whole.
    pub fn stress_number(self, mpa: f64) -> String {
        match self.unit {
            Unit::Inch | Unit::Foot => fixed(mpa / MPA_PER_KSI, 1),
            Unit::Millimetre | Unit::Centimetre => fixed(mpa, 0),
        }
    }

    /// The sign of the unit of stress.
    pub fn stress_sign(self) -> &'static str {
        match self.unit {
            Unit::Inch | Unit::Foot => "ksi",
            Unit::Millimetre | Unit::Centimetre => "MPa",
        }
    }

    /// A mass in kg as text with its unit, to three figures: `2.03 lb`, `0.92 kg`, `23.0 kg`.
    ///
    /// ```
    /// use reinwright_core::units::Show;
    /// assert_eq!(Show::default().mass(1.0), "2.20 lb");
    /// ```
    pub fn mass(self, kg: f64) -> String {
        let (mass, sign) = match self.unit {
            Unit::Inch | Unit::Foot => (kg / KG_PER_LB, "lb"),
            Unit::Millimetre | Unit::Centimetre => (kg, "kg"),
        };
        let decimals = match mass.abs() {
            small if small < 9.995 => 2,
            middling if middling < 99.95 => 1,
            _ => 0,
        };
        format!("{} {sign}", fixed(mass, decimals))
    }

    /// A temperature in °C as text with its unit, whole: `1112 °F`, `600 °C`.
    ///
    /// ```
    /// use reinwright_core::units::Show;
    /// assert_eq!(Show::default().temperature(600.0), "1112 °F");
    /// ```
    pub fn temperature(self, celsius: f64) -> String {
        self.scale().text(celsius)
    }

    /// The scale that temperatures are shown on.
    pub fn scale(self) -> Scale {
        match self.unit {
            Unit::Inch | Unit::Foot => Scale::Fahrenheit,
            Unit::Millimetre | Unit::Centimetre => Scale::Celsius,
        }
    }
}
