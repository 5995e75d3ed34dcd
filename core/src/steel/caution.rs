//! What everyone who forges is told to take care of.

use super::Steel;

/// On every sheet and beside every figure: what the figures are, who comes first, and the eyes.
pub const ON_EVERY_SHEET: &str = "The figures guide, they certify nothing. Local codes and \
     qualified practice come first. Wear eye protection.";

/// Before hot steel.
pub const HOT: &str = "Steel that no longer glows still burns: treat every piece as hot.";

/// Before the eyes.
pub const EYES: &str = "Wear eye protection when you cut, punch or forge.";

/// Before a fire: the limit of carbon monoxide is 50 ppm, 35 ppm recommended (OSHA, NIOSH).
pub const FIRE: &str = "Burning fuel makes carbon monoxide, which nobody smells: keep air moving \
     through the shop, and an alarm in it.";

/// Before reclaimed steel that was coated: of zinc oxide fume 5 mg/m³ are allowed (OSHA), of
/// cadmium fume 5 µg/m³ (29 CFR 1910.1027).
pub const PLATED: &str = "Plated scrap: zinc fumes make ill, and cadmium fumes kill without \
     warning. Forge bare steel alone.";

/// Who comes first.
pub const FIRST: &str = "Local codes and qualified practice come first.";

/// What a steel forbids; nothing for one that water does not harden.
///
/// ```
/// use reinwright_core::steel::{Steel, caution};
/// assert!(caution::of(Steel::Unknown).is_some_and(|words| words.contains("do not quench")));
/// assert_eq!(caution::of(Steel::Mild), None);
/// ```
pub fn of(steel: Steel) -> Option<&'static str> {
    match steel {
        Steel::Mild => None,
        Steel::Unknown => Some(
            "Steel of unknown kind: do not quench it. What hardens cracks, at once or under the \
             hammer later; let it cool in still air.",
        ),
        Steel::Carbon1045
        | Steel::Alloy4130
        | Steel::Alloy4140
        | Steel::Spring5160
        | Steel::ToolH13
        | Steel::ToolW1
        | Steel::ToolO1
        | Steel::ToolS7 => Some(
            "This steel hardens: do not quench it from a red heat, in the jaws of hot tongs \
             neither. Let it cool slowly.",
        ),
    }
}

/// All that goes with forging a steel, the nearest danger first.
pub fn at_the_forge(steel: Steel) -> Vec<&'static str> {
    let mut all = vec![HOT, EYES];
    all.extend(of(steel));
    if steel == Steel::Unknown {
        all.push(PLATED);
    }
    all.extend([FIRE, FIRST]);
    all
}
