//! What can hurt someone who heats steel, by what they heat it with.

use super::source::{SourceKind, Sources};
use crate::steel::Steel;
use crate::steel::caution;

/// Before everything else beside an induction machine. Distances of some metres were measured for heaters
/// (assessment after EN 50527).
const IMPLANTS: &str = "Induction: whoever wears a pacemaker, a pump or another implant stays away \
     by metres, not by feet, and asks a doctor first.";
/// Loose metal couples as the work does (from memory, makers' manuals).
const RINGS: &str = "Induction: take rings, watches and chains off. What is of metal and near the coil \
     heats at once, under a glove too.";
/// A coil carries hundreds of amperes beside water.
const COIL: &str = "Never touch the coil under power, nor the work to it. Water first, then power; switch \
     off before you change a coil, and let nobody reach in while you do.";
/// Contact burns (ISO 13732-1, from memory: bare metal from 51 °C in a minute, from 70 °C in a second).
const BURNS: &str = "Steel out of a coil is as hot as out of a fire and lies where no fire is: put it where \
     nobody picks it up.";
/// Gas and coals.
const FUMES: &str =
    "Fire: fumes and carbon monoxide gather under a roof. Open doors, a hood, and an alarm.";
/// What catches fire.
const FLAMES: &str = "Keep what burns away, an extinguisher in reach, and stay for half an hour after the last \
     heat. Check hoses and valves before you light.";
/// Water and oil.
const QUENCH: &str = "Never quench a red piece to go on sooner: steam burns, oil catches fire, and steel that \
     hardens cracks.";

/// All of it for a shop and a steel, the nearest danger first; local codes and qualified practice come
/// first of all.
pub fn cautions(shop: &Sources, steel: Steel) -> Vec<&'static str> {
    let coil = |kind: &SourceKind| matches!(kind, SourceKind::Coil(_));
    let has_coil = shop.sources.iter().any(|own| coil(&own.kind));
    let has_fire = shop.sources.iter().any(|own| !coil(&own.kind));
    let mut all = vec![caution::FIRST];
    if has_coil {
        all.extend([IMPLANTS, RINGS, COIL, BURNS]);
    }
    if has_fire {
        all.extend([FUMES, FLAMES]);
    }
    all.extend([caution::HOT, caution::EYES, QUENCH]);
    all.extend(caution::of(steel));
    if steel == Steel::Unknown {
        all.push(caution::PLATED);
    }
    all
}
