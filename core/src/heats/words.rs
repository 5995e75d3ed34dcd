//! What is said of sources and operations, in sentences without a period.

use super::entry::{Entry, WhyNot};
use super::prepared::Prepared;
use super::stand::End;
use crate::units::Show;

impl WhyNot {
    /// Why a piece is not heated there.
    pub fn words(&self, show: Show) -> String {
        match *self {
            Self::TooWide {
                part,
                at_mm,
                end,
                circle_mm,
                clear_mm,
            } => format!(
                "from the {} the {part} is in the way {} from the tip: all that must enter wants \
                 {}, and {} is clear",
                end.name(),
                show.text(rough(show, at_mm)),
                show.text(circle_mm),
                show.text(clear_mm.max(0.0)),
            ),
            Self::TooDeep { lies_mm, deep_mm } => format!(
                "what must be hot reaches {} in, and the chamber is {} deep",
                show.text(rough(show, lies_mm)),
                show.text(deep_mm)
            ),
            Self::TooShort { needs_mm, hot_mm } => format!(
                "{} must be hot at once, and the heat is {} long",
                show.text(rough(show, needs_mm)),
                show.text(rough(show, hot_mm))
            ),
            Self::TooCold {
                reaches_celsius,
                needs_celsius,
            } => format!(
                "it comes to {} there, and {} is the least",
                show.temperature(reaches_celsius.max(20.0)),
                show.temperature(needs_celsius)
            ),
        }
    }

    /// In a few words, for a table.
    pub fn short(&self, show: Show) -> String {
        match *self {
            Self::TooWide {
                part,
                circle_mm,
                clear_mm,
                ..
            } => format!(
                "{part}: {} over {}",
                show.number(circle_mm),
                show.text(clear_mm.max(0.0))
            ),
            Self::TooDeep { .. } => "chamber too short".to_owned(),
            Self::TooShort { .. } => "heat too short".to_owned(),
            Self::TooCold { .. } => "not hot enough".to_owned(),
        }
    }
}

impl Entry {
    /// How a piece goes in: `jaw end first`, `rein end first, held 12 degrees aslant`.
    pub fn words(&self) -> String {
        self.with_end(self.end.name())
    }

    /// The same of a tool: `working end first`.
    pub fn tool_words(&self) -> String {
        self.with_end(self.end.tool_name())
    }

    fn with_end(&self, end: &str) -> String {
        match self.tilt {
            None => format!("{end} first"),
            Some(tilt) => format!(
                "{end} first, held {:.0}\u{b0} aslant",
                tilt.to_degrees().abs()
            ),
        }
    }
}

/// A length that nobody measures closer: to 1/8 in or to a millimetre.
pub(super) fn rough(show: Show, mm: f64) -> f64 {
    let step = match show.unit {
        crate::units::Unit::Inch | crate::units::Unit::Foot => crate::units::MM_PER_INCH / 8.0,
        crate::units::Unit::Millimetre | crate::units::Unit::Centimetre => 1.0,
    };
    (mm / step).round() * step
}

/// A time as a smith says it: `35 s`, `4 min 10 s`, `1 h 20 min`.
///
/// ```
/// use reinwright_core::heats::spoken;
/// assert_eq!(spoken(250.0), "4 min 10 s");
/// assert_eq!(spoken(4800.0), "1 h 20 min");
/// ```
pub fn spoken(seconds: f64) -> String {
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "hours at the most"
    )]
    let tens = (seconds.max(0.0) / 5.0).round() as u64 * 5;
    match (tens / 3600, tens / 60 % 60, tens % 60) {
        (0, 0, _) => format!("{} s", seconds.max(0.0).round()),
        (0, minutes, 0) => format!("{minutes} min"),
        (0, minutes, rest) if minutes < 10 => format!("{minutes} min {rest} s"),
        (0, minutes, rest) => format!("{} min", minutes + u64::from(rest >= 30)),
        (hours, minutes, _) => format!("{hours} h {minutes} min"),
    }
}

/// From which operation on a source no longer serves, and why: `the jaw is wider than this coil from
/// operation 9 on`. Nothing where it serves to the end.
pub fn no_longer(prepared: &Prepared, source: usize, show: Show) -> Option<String> {
    let hot: Vec<_> = prepared
        .rows
        .iter()
        .filter(|row| row.needs_mm.is_some())
        .collect();
    let failing = |row: &&&super::prepared::Row| row.offers[source].is_err();
    let first = hot.iter().find(failing)?;
    let why = first.offers[source].as_ref().err()?;
    let from = hot.iter().rposition(|row| row.offers[source].is_ok());
    let later = from.map_or(0, |at| at + 1);
    let what = match *why {
        WhyNot::TooWide {
            part,
            circle_mm,
            clear_mm,
            ..
        } => format!(
            "the {part} is wider than it lets through ({} over {})",
            show.number(circle_mm),
            show.text(clear_mm.max(0.0))
        ),
        WhyNot::TooDeep { .. } => "it is not deep enough".to_owned(),
        WhyNot::TooShort { .. } => "its heat is too short".to_owned(),
        WhyNot::TooCold { .. } => "it does not become hot enough".to_owned(),
    };
    let name = &prepared.shop.sources[source].name;
    let numbers: Vec<String> = hot
        .iter()
        .filter(failing)
        .map(|row| row.number.to_string())
        .collect();
    let all_later = hot.len() - later == numbers.len();
    Some(if numbers.len() == hot.len() {
        format!("{name}: {what} at every operation")
    } else if all_later {
        format!("{name}: {what} from operation {} on", first.number)
    } else {
        let word = if numbers.len() == 1 {
            "operation"
        } else {
            "operations"
        };
        format!("{name}: {what} at {word} {}", listed(&numbers))
    })
}

/// `3`, `3 and 5`, `3, 5 and 8`.
pub fn listed(words: &[String]) -> String {
    match words {
        [] => String::new(),
        [one] => one.clone(),
        [most @ .., last] => format!("{} and {last}", most.join(", ")),
    }
}

/// An end by its name, for those who read a program's answer.
pub fn end_key(end: End) -> &'static str {
    match end {
        End::Tip => "jaw",
        End::Rein => "rein",
    }
}
