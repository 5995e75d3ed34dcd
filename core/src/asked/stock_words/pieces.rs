//! Work by its name: bolts, nuts, pipe, rebar and angles.

use super::StockError;
use super::wanted::Asked;
use crate::asked::published::{self, bolts, pipes, rebar};
use crate::asked::work::{Lie, RoundOf, Work};
use crate::units::{Length, Unit};

/// How a bolt without a published size is told.
const TELL_BOLT: &str = "tell any other as in bolt 24 mm across flats, 10 mm high, 16 mm shank";
const TELL_NUT: &str = "tell any other as in nut 24 mm across flats, 14.8 mm high, 16 mm hole";
const TELL_PIPE: &str = "tell any other by outside and wall, as in 30 x 2 mm pipe";
const TELL_ANGLE: &str = "it has two legs and a thickness, as in 1 x 1 x 1/8 in angle; the smallest is the thickness, the first leg the one that is held";
const TELL_REBAR: &str = "tell any other by its diameter, as in 18 mm rebar";

type Read = Result<Work, StockError>;

/// Reads a piece; `None` where the text names none.
pub(super) fn read(asked: &Asked<'_>) -> Option<Read> {
    let first = asked.words.first().copied().unwrap_or_default();
    if first == "bolt" || first == "nut" {
        return Some(told(asked, first));
    }
    if asked.has(&["nut"]) {
        return Some(fastener(asked, "nut"));
    }
    if asked.has(&["bolt"]) || metric_thread(first).is_some() {
        return Some(fastener(asked, "bolt"));
    }
    if asked.has(&["pipe", "tube"]) || first.starts_with("dn") || first == "nps" {
        return Some(pipe(asked));
    }
    if asked.has(&["rebar"]) || first.starts_with('#') {
        return Some(rebar(asked));
    }
    asked.has(&["angle"]).then(|| angle(asked))
}

/// The number behind a letter or a sign.
fn number_behind(word: &str, sign: &str) -> Option<f64> {
    let number = word.strip_prefix(sign)?.trim_start();
    let digits = number.starts_with(|c: char| c.is_ascii_digit());
    number.parse().ok().filter(|_| digits)
}

fn metric_thread(word: &str) -> Option<f64> {
    number_behind(word, "m")
}

fn no_such(kind: &'static str, asked: &Asked<'_>) -> StockError {
    let (known, otherwise) = match kind {
        "pipe" => (pipes::known(), TELL_PIPE),
        "rebar" => (rebar::known(), TELL_REBAR),
        "nut" => (bolts::known(), TELL_NUT),
        _ => (bolts::known(), TELL_BOLT),
    };
    StockError::NoSuch {
        kind,
        asked: asked.text.to_owned(),
        known,
        otherwise,
    }
}

/// `M16`, `5/8 bolt`, `M16 hex nut`.
fn fastener(asked: &Asked<'_>, kind: &'static str) -> Read {
    let understood = if kind == "nut" {
        "a nut is told by its thread, as in M16 nut, or 5/8 nut on corners"
    } else {
        "a bolt is told by its thread alone, as in M16 or 5/8 bolt, and by its head, behind its head or by its shank"
    };
    asked.only(kind, &["bolt", "nut", "hex", "hexagon", "head"], understood)?;
    let first = asked.words.first().copied().unwrap_or_default();
    let thread = match metric_thread(first) {
        Some(mm) => {
            let bare = Asked {
                words: &asked.words[1..],
                ..*asked
            };
            let others = bare.numbers();
            if !others.is_empty() {
                return Err(StockError::Word {
                    word: others,
                    of: kind,
                    understood,
                });
            }
            Length::decimal(mm, Unit::Millimetre)
        }
        None => match asked.sizes()?[..] {
            [thread] => thread,
            _ => {
                return Err(StockError::Sizes {
                    kind,
                    asked: asked.text.to_owned(),
                    wanted: understood,
                });
            }
        },
    };
    let all = if kind == "nut" {
        bolts::nuts()
    } else {
        bolts::bolts()
    };
    let found = bolts::with_thread(all, thread).ok_or_else(|| no_such(kind, asked))?;
    Ok(if kind == "nut" {
        published::nut(found, Lie::OnFlats)
    } else {
        published::bolt(found)
    })
}

/// `bolt 24 mm across flats, 10 mm high, 16 mm shank`, in any order.
fn told(asked: &Asked<'_>, kind: &str) -> Read {
    let (kind, last, wanted) = if kind == "nut" {
        ("nut", "hole", TELL_NUT)
    } else {
        ("bolt", "shank", TELL_BOLT)
    };
    let wrong = || StockError::Sizes {
        kind,
        asked: asked.text.to_owned(),
        wanted,
    };
    let text = asked.words[1..].join(" ");
    let mut found: [Option<Length>; 3] = [None; 3];
    for part in text
        .split(", ")
        .map(|part| part.trim_end_matches(',').trim())
    {
        let ends = [" across flats", " high", &format!(" {last}")];
        let (place, size) = ends
            .iter()
            .enumerate()
            .find_map(|(i, end)| Some((i, part.strip_suffix(end)?)))
            .ok_or_else(wrong)?;
        let size = super::sizes::sizes(size, asked.default)?;
        let ([size], None) = (&size[..], found[place]) else {
            return Err(wrong());
        };
        found[place] = Some(*size);
    }
    let [Some(flats), Some(height), Some(thread)] = found else {
        return Err(wrong());
    };
    if thread.mm() >= flats.mm() {
        return Err(StockError::Sizes {
            kind,
            asked: asked.text.to_owned(),
            wanted: "it is wider across its flats than its shank or hole",
        });
    }
    let it = bolts::Fastener {
        thread,
        flats,
        height,
    };
    Ok(if kind == "nut" {
        published::nut(it, Lie::OnFlats)
    } else {
        published::bolt(it)
    })
}

/// `1/2 in pipe`, `DN 25`, `30 x 2 mm pipe`.
fn pipe(asked: &Asked<'_>) -> Read {
    asked.only(
        "pipe",
        &["pipe", "tube", "dn", "nps"],
        "pipe is told by its nominal size, as in 1/2 in pipe or DN 25, or by outside and wall, as in 30 x 2 mm pipe",
    )?;
    let first = asked.words[0];
    if first.starts_with("dn") {
        return dn(asked);
    }
    let nps = first == "nps";
    let sizes = if nps {
        let inches = Asked {
            default: Some(Unit::Inch),
            ..*asked
        };
        inches.sizes()?
    } else {
        asked.sizes()?
    };
    match sizes[..] {
        [size] if matches!(size.unit(), Unit::Inch | Unit::Foot) => {
            let (outside, wall) = pipes::of_inches(size).ok_or_else(|| no_such("pipe", asked))?;
            Ok(Work::pipe(outside, wall))
        }
        [a, b] if !nps => {
            let (outside, wall) = if b.mm() < a.mm() { (a, b) } else { (b, a) };
            if 2.0 * wall.mm() >= outside.mm() {
                return Err(StockError::Sizes {
                    kind: "pipe",
                    asked: asked.text.to_owned(),
                    wanted: "its wall is less than half of its outside",
                });
            }
            Ok(Work::pipe(outside, wall))
        }
        _ => Err(StockError::Sizes {
            kind: "pipe",
            asked: asked.text.to_owned(),
            wanted: "one size names it in inches, as in 1/2 in pipe; in millimetres say DN 25, or outside and wall, as in 30 x 2 mm pipe",
        }),
    }
}

fn dn(asked: &Asked<'_>) -> Read {
    let words: Vec<&&str> = asked
        .words
        .iter()
        .filter(|word| !["pipe", "tube"].contains(word))
        .collect();
    let number = match words[..] {
        [word] => word.trim_start_matches("dn").parse().ok(),
        [&"dn", number] => number.parse().ok(),
        _ => None,
    };
    let found = number.and_then(pipes::of_dn);
    let (outside, wall) = found.ok_or_else(|| no_such("pipe", asked))?;
    Ok(Work::pipe(outside, wall))
}

/// `#5`, `#5 rebar`, `16 mm rebar`.
fn rebar(asked: &Asked<'_>) -> Read {
    asked.only(
        "rebar",
        &["rebar", "ribs"],
        "rebar is told by its number or its diameter, as in #5 rebar or 16 mm rebar",
    )?;
    let first = asked.words[0];
    let number = first.strip_prefix('#');
    let (diameter, ribs) = match number {
        Some(number) if asked.words[1..].iter().all(|word| *word == "rebar") => {
            let found = number.parse().ok().and_then(rebar::of_number);
            found.ok_or_else(|| no_such("rebar", asked))?
        }
        Some(_) => return Err(no_such("rebar", asked)),
        None => of_sizes(asked)?,
    };
    Ok(Work::Round {
        diameter,
        of: RoundOf::Rebar { ribs },
    })
}

/// `16 mm rebar`, or with the height of its ribs: `16 mm rebar, 1.2 mm ribs`.
fn of_sizes(asked: &Asked<'_>) -> Result<(Length, Length), StockError> {
    let text = asked.words.join(" ");
    let (diameter, ribs) = match text.split_once(", ") {
        Some((diameter, ribs)) => (diameter.to_owned(), Some(ribs.to_owned())),
        None => (text, None),
    };
    let one = |text: &str, end: &str| {
        let size = text.trim().strip_suffix(end).unwrap_or(text).trim();
        match super::sizes::sizes(size, asked.default)?[..] {
            [size] => Ok(size),
            _ => Err(StockError::Sizes {
                kind: "rebar",
                asked: asked.text.to_owned(),
                wanted: "it has one diameter, as in 16 mm rebar",
            }),
        }
    };
    let diameter = one(&diameter, "rebar")?;
    let ribs = ribs.map(|ribs| one(&ribs, "ribs")).transpose()?;
    Ok((
        diameter,
        ribs.unwrap_or_else(|| rebar::usual_ribs(diameter)),
    ))
}

/// `1 x 1 x 1/8 in angle`, `30 x 3 mm angle` with both legs alike.
fn angle(asked: &Asked<'_>) -> Read {
    asked.only(
        "angle",
        &["angle", "iron", "bar"],
        "an angle is told by its legs and its thickness, and by a leg or by its back",
    )?;
    let sizes = asked.sizes()?;
    let wrong = || StockError::Sizes {
        kind: "angle",
        asked: asked.text.to_owned(),
        wanted: TELL_ANGLE,
    };
    let least = sizes
        .iter()
        .enumerate()
        .min_by(|a, b| a.1.mm().total_cmp(&b.1.mm()))
        .map(|(place, _)| place);
    let thickness = sizes[least.ok_or_else(wrong)?];
    let legs: Vec<Length> = sizes
        .iter()
        .enumerate()
        .filter(|(place, _)| Some(*place) != least)
        .map(|(_, size)| *size)
        .collect();
    match legs[..] {
        [leg] if leg.mm() > thickness.mm() => Ok(Work::angle(thickness, [leg, leg])),
        [held, other] if held.mm().min(other.mm()) > thickness.mm() => {
            Ok(Work::angle(thickness, [held, other]))
        }
        _ => Err(wrong()),
    }
}
