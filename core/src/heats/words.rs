//! What is said of sources and operations, in sentences without a period.

use super::entry::{Entry, WayIn, WhyNot};
use super::plan::{HeatPlan, Heated, How};
use super::prepared::Prepared;
use super::stand::End;
use super::uneven::Spot;
use crate::making::Step;
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
                if part.is_of_tool() {
                    end.tool_name()
                } else {
                    end.name()
                },
                show.text(rough(show, at_mm)),
                show.text(circle_mm),
                show.text(clear_mm.max(0.0)),
            ),
            Self::TooThick {
                part,
                at_mm,
                thick_mm,
                clear_mm,
            } => format!(
                "the {part} is in the way {} from the tip: what lies between its sides is {} thick, \
                 and {} is clear",
                show.text(rough(show, at_mm)),
                show.text(thick_mm),
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
            }
            | Self::TooThick {
                part,
                thick_mm: circle_mm,
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
    /// How a half or a pair goes in: `jaw end first`, `rein end first, held 12 degrees aslant`.
    pub fn words(&self) -> String {
        self.with_end(self.end.name())
    }

    /// How a piece goes in for an operation: of a tool `working end first`.
    pub fn words_for(&self, step: Step) -> String {
        if matches!(step, Step::Tool(_)) {
            self.with_end(self.end.tool_name())
        } else {
            self.words()
        }
    }

    fn with_end(&self, end: &str) -> String {
        if self.way == WayIn::Laid {
            return "laid in from the side".to_owned();
        }
        match self.tilt {
            None => format!("{end} first"),
            Some(tilt) => format!(
                "{end} first, held {:.0}\u{b0} aslant",
                tilt.to_degrees().abs()
            ),
        }
    }
}

impl Heated {
    /// Source and heats, as they are read from the anvil: `wide coil, made ready first: 2 heats`. Nothing for
    /// cold work.
    pub fn brief(&self, prepared: &Prepared) -> Option<String> {
        let Some(source) = self.source else {
            return match self.how {
                How::Cold => None,
                How::Hot | How::Unserved => Some("no heat of the shop serves".to_owned()),
            };
        };
        let name = &prepared.shop.sources[source].name;
        let ready = if self.ready_s > 0.0 {
            ", made ready first"
        } else {
            ""
        };
        Some(format!("{name}{ready}: {}", self.count()))
    }

    /// The same in full: how the piece goes in, how long each heat is, how long it can be worked. Nothing
    /// for cold work.
    pub fn words(&self, prepared: &Prepared) -> Option<String> {
        let brief = self.brief(prepared)?;
        let offer = self
            .source
            .and_then(|source| prepared.offer(self.row, source));
        let Some(offer) = offer else {
            return Some(brief);
        };
        let each = if self.pieces == 1 { "" } else { " a piece" };
        let warm = if self.starts_celsius > WARM_CELSIUS {
            "warm"
        } else {
            "cold"
        };
        let first = self.heats_s.first().copied().unwrap_or_default();
        let later = self
            .heats_s
            .get(1)
            .map_or_else(String::new, |again| format!(", then {}", spoken(*again)));
        let goes_in = offer.entry.words_for(self.step);
        Some(format!(
            "{brief}{each}, {goes_in}; {} from {warm}{later}; to be worked for {} a heat{}",
            spoken(first),
            spoken(self.working_s),
            self.burns_words()
        ))
    }

    /// What burns, to stand behind what is said of a heat; nothing where nothing does.
    fn burns_words(&self) -> String {
        let told = |spot: Spot| {
            format!(
                "; take care, the {} burns before the rest is hot",
                spot.part
            )
        };
        self.burns.map(told).unwrap_or_default()
    }

    /// `2 heats`, of each piece.
    pub fn count(&self) -> String {
        match self.heats_s.len() {
            1 => "1 heat".to_owned(),
            count => format!("{count} heats"),
        }
    }
}

impl HeatPlan {
    /// What all of it comes to: `23 heats, 1 source made ready, 1 h 4 min`.
    pub fn in_short(&self) -> String {
        let heats = match self.totals.heats {
            1 => "1 heat".to_owned(),
            count => format!("{count} heats"),
        };
        let ready = match self.totals.changes {
            0 => "no source made ready".to_owned(),
            1 => "1 source made ready".to_owned(),
            count => format!("{count} times a source made ready"),
        };
        format!("{heats}, {ready}, {}", spoken(self.totals.time_s))
    }
}

/// Steel over this is warm when it is put back, °C.
const WARM_CELSIUS: f64 = 100.0;

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
    let [fives, minutes] = [5.0, 60.0].map(|by| (seconds.max(0.0) / by).round() as u64);
    let fives = 5 * fives;
    match (fives / 60, fives % 60) {
        (0, _) => format!("{} s", seconds.max(0.0).round()),
        (whole @ ..10, 0) => format!("{whole} min"),
        (whole @ ..10, rest) => format!("{whole} min {rest} s"),
        _ if minutes < 60 => format!("{minutes} min"),
        _ => format!("{} h {} min", minutes / 60, minutes % 60),
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
        }
        | WhyNot::TooThick {
            part,
            thick_mm: circle_mm,
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
    } else if numbers.len() == 1 {
        format!("{name}: {what} at operation {}", first.number)
    } else {
        format!(
            "{name}: does not serve at operations {}; at {} {what}",
            listed(&numbers),
            first.number
        )
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
