use super::length::{MM_PER_INCH, Unit, gcd, whole};

/// How finely inches are shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Rounding {
    /// To 1/16 in.
    Sixteenths,
    /// To 1/32 in.
    ThirtySeconds,
    /// To 1/64 in.
    #[default]
    SixtyFourths,
}

impl Rounding {
    fn parts(self) -> u32 {
        match self {
            Self::Sixteenths => 16,
            Self::ThirtySeconds => 32,
            Self::SixtyFourths => 64,
        }
    }
}

/// How what was reckoned is shown: the unit of length, which all other units go with, and how finely.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Show {
    /// Inch or millimetre.
    pub unit: Unit,
    /// How finely inches are divided.
    pub rounding: Rounding,
}

impl Show {
    /// A length in mm as text with its unit: `1 1/2 in`, `~13/32 in` when the fraction is not
    /// exact to 0.01 mm, `38.1 mm`.
    ///
    /// ```
    /// use reinwright_core::units::Show;
    /// assert_eq!(Show::default().text(38.1), "1 1/2 in");
    /// assert_eq!(Show::default().text(10.2), "~13/32 in");
    /// ```
    pub fn text(self, mm: f64) -> String {
        format!("{} {}", self.number(mm), self.sign())
    }

    /// An area in mm² as text with its unit: `0.56 in²`, `361 mm²`.
    ///
    /// ```
    /// use reinwright_core::units::Show;
    /// assert_eq!(Show::default().area(362.9), "0.56 in²");
    /// ```
    pub fn area(self, mm2: f64) -> String {
        match self.unit {
            Unit::Inch | Unit::Foot => format!("{:.2} in²", mm2 / (MM_PER_INCH * MM_PER_INCH)),
            Unit::Millimetre | Unit::Centimetre => format!("{mm2:.0} mm²"),
        }
    }

    /// The number alone, for drawings that name their unit once.
    pub fn number(self, mm: f64) -> String {
        match self.unit {
            Unit::Inch | Unit::Foot => inches(mm, self.rounding.parts()),
            Unit::Millimetre | Unit::Centimetre => trim(format!("{mm:.1}")),
        }
    }

    /// Rounded as nobody measures closer beside a fire: to 1/8 in or to a millimetre, mm.
    pub fn roughly(self, mm: f64) -> f64 {
        let step = match self.unit {
            Unit::Inch | Unit::Foot => MM_PER_INCH / 8.0,
            Unit::Millimetre | Unit::Centimetre => 1.0,
        };
        (mm / step).round() * step
    }

    /// The unit's sign.
    pub fn sign(self) -> &'static str {
        match self.unit {
            Unit::Inch | Unit::Foot => "in",
            Unit::Millimetre | Unit::Centimetre => "mm",
        }
    }
}

fn inches(mm: f64, parts: u32) -> String {
    const EXACT_MM: f64 = 0.01;
    let count = (mm.abs() / MM_PER_INCH * f64::from(parts)).round();
    let Some(over) = whole(count) else {
        return trim(format!("{:.3}", mm / MM_PER_INCH));
    };
    let exact = (f64::from(over) / f64::from(parts) * MM_PER_INCH - mm.abs()).abs() < EXACT_MM;
    let mark = if exact { "" } else { "~" };
    let minus = if mm < 0.0 && over > 0 { "-" } else { "" };
    let common = gcd(over, parts);
    let (over, under) = (over / common, parts / common);
    let number = match (over / under, over % under) {
        (units, 0) => format!("{units}"),
        (0, over) => format!("{over}/{under}"),
        (units, over) => format!("{units} {over}/{under}"),
    };
    format!("{mark}{minus}{number}")
}

/// To so many decimals; what is rounded to nothing has no minus.
pub(super) fn fixed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    match text.strip_prefix('-') {
        Some(zero) if !zero.contains(|c: char| c.is_alphanumeric() && c != '0') => zero.to_owned(),
        Some(_) | None => text,
    }
}

/// Drops the zeros that say nothing.
fn trim(number: String) -> String {
    let number = if number.contains('.') {
        number
            .trim_end_matches('0')
            .trim_end_matches('.')
            .to_owned()
    } else {
        number
    };
    if number == "-0" {
        "0".to_owned()
    } else {
        number
    }
}
