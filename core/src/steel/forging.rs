//! Between which temperatures a steel is forged.

use super::Steel;

/// A steel's forging range, °C.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ForgingRange {
    /// Hotter than this it burns or grows coarse.
    pub upper_celsius: f64,
    /// Colder than this it is not struck.
    pub lower_celsius: f64,
    /// Where both come from.
    pub source: &'static str,
}

/// The forging range of a steel: of published ranges, which differ by some 50 °C, one in the middle.
///
/// ```
/// use reinwright_core::steel::{Steel, forging_range};
/// assert_eq!(forging_range(Steel::Mild).lower_celsius, 850.0);
/// ```
pub fn forging_range(steel: Steel) -> ForgingRange {
    const SUPPLIERS: &str = "suppliers' sheets, a middle choice (judgement)";
    const MAKERS: &str =
        "handbook ranges of tool steels, from memory: the maker's own sheet comes first";
    let (upper_celsius, lower_celsius, source) = match steel {
        Steel::Mild => (1250.0, 850.0, SUPPLIERS),
        Steel::Carbon1045 => (1150.0, 870.0, SUPPLIERS),
        Steel::Alloy4130 => (1180.0, 925.0, SUPPLIERS),
        Steel::Alloy4140 => (1150.0, 925.0, SUPPLIERS),
        Steel::Spring5160 => (1150.0, 870.0, SUPPLIERS),
        Steel::ToolH13 => (
            1120.0,
            900.0,
            "suppliers' sheets, with a slow preheat at 700 to 815 \u{b0}C",
        ),
        Steel::ToolW1 => (1050.0, 815.0, MAKERS),
        Steel::ToolO1 => (1050.0, 845.0, MAKERS),
        Steel::ToolS7 => (1120.0, 900.0, MAKERS),
        Steel::Unknown => (
            1100.0,
            900.0,
            "judgement: the narrowest range of the steels here",
        ),
    };
    ForgingRange {
        upper_celsius,
        lower_celsius,
        source,
    }
}
