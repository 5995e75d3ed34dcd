//! Which steels suit which tool, and where they are tempered.
//!
//! Nothing here is a recipe: how a steel is hardened and tempered is for its maker's sheet to say, and
//! what steel of unknown kind needs nobody can.

use super::style::Use;
use crate::steel::{Steel, strength};

/// How well a steel suits a use.
#[derive(Debug, Clone, PartialEq)]
pub enum Suits {
    /// It is made for that.
    Well,
    /// It serves, and this is what it costs.
    Serves(&'static str),
    /// It does not, and this is why.
    Not(&'static str),
}

/// Between which temperatures a steel is tempered after it was hardened, °C.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Temper {
    /// The hardest.
    pub least_celsius: f64,
    /// The toughest.
    pub most_celsius: f64,
}

/// Where the temper temperatures are from.
pub const TEMPER_SOURCE: &str = "heat treatment guide of a furnace maker";

/// How a steel is called in the standards of tool steels and of others.
pub fn standard(steel: Steel) -> &'static str {
    match steel {
        Steel::Mild => "S235 of EN 10025-2, A36 of ASTM",
        Steel::Carbon1045 => "C45 of EN 10083, SAE 1045",
        Steel::Alloy4130 => "25CrMo4 of EN 10083, SAE 4130",
        Steel::Alloy4140 => "42CrMo4 of EN 10083, SAE 4140",
        Steel::Spring5160 => "SAE 5160",
        Steel::ToolH13 => "X40CrMoV5-1 (1.2344) of EN ISO 4957, H13 of ASTM A681",
        Steel::ToolW1 => "C105U (1.1545) of EN ISO 4957, W1 of ASTM A686",
        Steel::ToolO1 => "95MnWCr5 (1.2510) of EN ISO 4957, O1 of ASTM A681",
        Steel::ToolS7 => "S7 of ASTM A681",
        Steel::Unknown => "of no known name",
    }
}

/// Where a steel is tempered; `None` for one that is not hardened, or that nobody knows.
///
/// ```
/// use reinwright_core::steel::Steel;
/// use reinwright_core::tool::steels::temper;
/// let h13 = temper(Steel::ToolH13).unwrap();
/// // 1000 to 1200 °F.
/// assert!((h13.least_celsius - 538.0).abs() < 1.0 && (h13.most_celsius - 649.0).abs() < 1.0);
/// assert_eq!(temper(Steel::Unknown), None);
/// ```
pub fn temper(steel: Steel) -> Option<Temper> {
    let fahrenheit = |least: f64, most: f64| {
        let celsius = |f: f64| (f - 32.0) / 1.8;
        Some(Temper {
            least_celsius: celsius(least),
            most_celsius: celsius(most),
        })
    };
    match steel {
        Steel::ToolW1 => fahrenheit(350.0, 650.0),
        Steel::ToolO1 => fahrenheit(350.0, 500.0),
        Steel::ToolS7 => fahrenheit(400.0, 1200.0),
        Steel::ToolH13 => fahrenheit(1000.0, 1200.0),
        Steel::Alloy4140 => fahrenheit(400.0, 1200.0),
        Steel::Mild | Steel::Carbon1045 | Steel::Alloy4130 | Steel::Spring5160 | Steel::Unknown => {
            None
        }
    }
}

/// Whether a steel can be hardened at all, as far as is known.
pub fn hardens(steel: Steel) -> bool {
    !matches!(steel, Steel::Mild | Steel::Unknown)
}

/// What a punch or a drift is heated to by hot work before it is cooled, °C: it does not glow yet
/// (judgement).
pub const IN_HOT_WORK_CELSIUS: f64 = 500.0;

/// Proof stress of a steel that was hardened, tempered above what hot work heats it to, and so keeps
/// its temper there, MPa, cold (judgement: under the figures of any such steel).
const KEPT_MPA: f64 = 800.0;

/// The stress that a tool in hot work bears before it is hot, MPa: the soft steel's, unless the steel
/// keeps a temper at the heat of its work.
pub fn bears_mpa(steel: Steel) -> f64 {
    let keeps = temper(steel).is_some_and(|temper| temper.most_celsius >= IN_HOT_WORK_CELSIUS);
    if keeps {
        KEPT_MPA
    } else {
        strength(steel).yield_mpa
    }
}

/// How well a steel suits a use (common practice, no source).
pub fn suits(steel: Steel, used: Use) -> Suits {
    match used {
        Use::Hot => hot(steel),
        Use::HotForm => match steel {
            Steel::Mild => Suits::Serves("it wears and must be dressed often"),
            Steel::Unknown => UNKNOWN,
            Steel::ToolW1 | Steel::ToolO1 => {
                Suits::Serves("leave it soft: hot work draws its temper")
            }
            Steel::Carbon1045
            | Steel::Alloy4130
            | Steel::Alloy4140
            | Steel::Spring5160
            | Steel::ToolH13
            | Steel::ToolS7 => Suits::Well,
        },
        Use::HotEdge => match steel {
            Steel::Mild => Suits::Not("its edge turns at the first hot bar"),
            Steel::Unknown => UNKNOWN,
            Steel::Alloy4130 => Suits::Serves("its edge is soft and wants dressing"),
            Steel::ToolW1 | Steel::ToolO1 => Suits::Serves(
                "hot work draws its temper, and a wet quench cracks it: leave it soft",
            ),
            Steel::Carbon1045
            | Steel::Alloy4140
            | Steel::Spring5160
            | Steel::ToolH13
            | Steel::ToolS7 => Suits::Well,
        },
        Use::ColdEdge => match steel {
            Steel::Mild | Steel::Alloy4130 => {
                Suits::Not("it does not harden, and cold steel blunts it")
            }
            Steel::Unknown => UNKNOWN,
            Steel::Carbon1045 | Steel::Alloy4140 => {
                Suits::Serves("its edge stays softer than a tool steel's")
            }
            Steel::ToolH13 => Suits::Serves("it is made for hot work, and costs more"),
            Steel::Spring5160 | Steel::ToolW1 | Steel::ToolO1 | Steel::ToolS7 => Suits::Well,
        },
    }
}

const UNKNOWN: Suits =
    Suits::Serves("nobody knows how it takes heat or blows: try it on scrap, and never quench it");

fn hot(steel: Steel) -> Suits {
    match steel {
        Steel::Mild => Suits::Not("it mushrooms and bends as soon as it is warm"),
        Steel::Unknown => UNKNOWN,
        Steel::Carbon1045 | Steel::Alloy4130 | Steel::Spring5160 => {
            Suits::Serves("it softens in the hole: cool it after every few blows")
        }
        Steel::ToolW1 | Steel::ToolO1 => {
            Suits::Serves("it loses its temper in the hole: leave it soft, and cool it in air")
        }
        Steel::Alloy4140 | Steel::ToolH13 | Steel::ToolS7 => Suits::Well,
    }
}
