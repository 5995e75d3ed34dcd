use super::said::{self, Held, Said};
use super::sizes::{WHOLE, is_size, plain};
use super::wanted::Asked;
use super::{StockError, bar, pieces};
use crate::asked::Choice;
use crate::asked::work::{AngleHeld, Lie, Work, wider};
use crate::units::{Unit, quoted};

/// Reads work such as `3/8 in flat`, `1/4 x 1 in flat`, `16 mm square`, `5/8 in hexagon on corners`,
/// or by its name: `M16`, `5/8 bolt behind its head`, `1/2 in pipe`, `DN 25`, `#5 rebar`,
/// `1 x 1 x 1/8 in angle`. A fraction without a unit is of an inch. Of the sizes of flat bar and of
/// an angle the smallest is the thickness, whichever comes first; two sizes alone are those of flat
/// bar, or of square bar where they are alike.
///
/// # Errors
/// When a size, the shape or any other word cannot be read, or no table has the name.
pub fn parse_work(text: &str) -> Result<Work, StockError> {
    work(text, None)
}

/// Reads work as [`parse_work`] does; a number without a unit is in `default`, a fraction
/// in inches: `16 square`, `5/8 hex`.
///
/// # Errors
/// When a size, the shape or any other word cannot be read, or no table has the name.
pub fn parse_work_in(text: &str, default: Unit) -> Result<Work, StockError> {
    work(text, Some(default))
}

fn work(text: &str, default: Option<Unit>) -> Result<Work, StockError> {
    let read = plain(text).replace("edge on", "edge-on");
    let words: Vec<&str> = read.split_whitespace().collect();
    let (mut rest, said) = said::take(&words);
    if let Some(last) = rest.last_mut() {
        *last = last.trim_end_matches(',');
    }
    let shown = quoted(text, WHOLE);
    let asked = Asked {
        text: &shown,
        words: &rest,
        default,
    };
    let work = match pieces::read(&asked) {
        Some(work) => work?,
        None => plain_bar(&asked)?,
    };
    held(work, said)
}

/// What is said of how it is held, if it can be said of such work.
fn held(mut work: Work, said: Said) -> Result<Work, StockError> {
    let of = kind(&work);
    let wrong = |word: &str, understood| StockError::Word {
        word: word.to_owned(),
        of,
        understood,
    };
    match said.held {
        None => {}
        Some(Held::Bolt(held)) if work.bolt_held().is_some() => work.hold_bolt(held),
        Some(Held::Bolt(held)) => return Err(wrong(held.name(), "it is said of bolts")),
        Some(Held::Angle(held)) if work.angle_held().is_some() => {
            work.hold_angle(held);
            if held == AngleHeld::ByBack && work.angle_held() != Some(held) {
                return Err(wrong(
                    held.name(),
                    "an angle lies by its back in a groove only where both legs are alike",
                ));
            }
        }
        Some(Held::Angle(held)) => return Err(wrong(held.name(), "it is said of angles")),
    }
    if said.edge.is_some() && !work.turn_on_edge() {
        return Err(wrong("on edge", "it is said of flat bar"));
    }
    match said.lie {
        None => {}
        Some(lie) if work.lies().is_some() => work.lay(lie),
        Some(lie) => {
            return Err(wrong(
                lie.name(),
                "it is said of square, hexagon and octagon bar, of nuts, and of bolts held by their head",
            ));
        }
    }
    Ok(work)
}

fn kind(work: &Work) -> &'static str {
    work.way()
}

/// All that a text can end with.
const SHAPES: &str =
    "flat, round, square, hexagon, octagon, bolt, nut, pipe, rebar or angle, as in 5/8 hex";

/// Bar by its shape.
fn plain_bar(asked: &Asked<'_>) -> Result<Work, StockError> {
    const OF_BAR: &str = "bar is told by its size and shape, and on flats or on corners";
    const OF_ROUND: &str = "round bar is told by its size and shape alone";
    const ON_EDGE: &str =
        "flat bar is told by its sizes and shape, and on edge where its edges lie in the jaws";
    const OF_FLAT: &str =
        "flat bar has a thickness and a width, the smaller is the thickness, as in 3/8 x 1 in flat";
    let numbers = asked.words.iter().take_while(|word| is_size(word)).count();
    let said = asked.words.get(numbers).copied().unwrap_or_default();
    let of_two = match said {
        "" | "bar" if numbers > 0 => bar::of_two(said, &asked.sizes()?),
        _ => None,
    };
    let shape = match of_two.unwrap_or(said) {
        shape @ ("flat" | "round" | "square" | "octagon") => shape,
        "hexagon" | "hex" => "hexagon",
        "oct" => "octagon",
        _ => {
            let (size, rest) = asked.words.split_at(numbers);
            bar::strange(size, rest)?;
            // A text without any size is better told of that.
            asked.sizes()?;
            return Err(StockError::Shape(asked.text.to_owned(), SHAPES));
        }
    };
    let lie = Lie::OnFlats;
    let sizes = asked.sizes()?;
    let asks = |kind: &'static str, wanted| StockError::Sizes {
        kind,
        asked: asked.text.to_owned(),
        wanted,
    };
    let understood = |kind, named: &[&str]| asked.only(kind, named, OF_BAR);
    Ok(match (shape, &sizes[..]) {
        ("flat", &[thickness]) => {
            asked.only("flat", &["flat", "bar"], ON_EDGE)?;
            Work::flat(thickness, wider(thickness))
        }
        ("flat", &[a, b]) => {
            asked.only("flat", &["flat", "bar"], ON_EDGE)?;
            let (thickness, width) = if b.mm() < a.mm() { (b, a) } else { (a, b) };
            Work::flat(thickness, width)
        }
        ("flat", _) => return Err(asks("flat", OF_FLAT)),
        ("round", &[diameter]) => {
            asked.only("round", &["round", "bar"], OF_ROUND)?;
            Work::round(diameter)
        }
        ("square", &[side]) => {
            understood("square", &["square", "bar"])?;
            Work::square(side, lie)
        }
        ("square", &[side, other]) if side == other => {
            understood("square", &["square", "bar"])?;
            Work::square(side, lie)
        }
        ("hexagon", &[flats]) => {
            understood("hexagon", &["hexagon", "hex", "bar"])?;
            Work::hexagon(flats, lie)
        }
        ("octagon", &[flats]) => {
            understood("octagon", &["octagon", "oct", "bar"])?;
            Work::Octagon { flats, lie }
        }
        _ => {
            return Err(asks(
                "bar of one size",
                "it has one size, as in 5/8 hex or 16 mm round",
            ));
        }
    })
}
