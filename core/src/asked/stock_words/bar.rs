use super::StockError;
use super::sizes::{WHOLE, is_size, plain, sizes};
use crate::asked::bar::{Bar, Stock};
use crate::asked::work::wider;
use crate::steel::Steel;
use crate::units::{Length, SizeError, Unit, quoted};

/// Reads a bar such as `3/4 in square`, `20 mm round`, `1/2 x 3/4 in flat`. Of the sizes of flat bar the smaller is
/// the thickness, whichever comes first, as it is of work; two sizes alone are those of flat bar, or of square bar
/// where they are alike.
///
/// # Errors
/// When the size or the shape cannot be read.
pub fn parse_bar(text: &str) -> Result<Bar, StockError> {
    bar(text, None)
}

/// Reads a bar as [`parse_bar`] does; a number without a unit is in `default`, a fraction in
/// inches.
///
/// # Errors
/// When the size or the shape cannot be read.
pub fn parse_bar_in(text: &str, default: Unit) -> Result<Bar, StockError> {
    bar(text, Some(default))
}

fn bar(text: &str, default: Option<Unit>) -> Result<Bar, StockError> {
    let read = plain(text);
    let words: Vec<&str> = read.split_whitespace().collect();
    let behind = words.iter().rev().take_while(|word| !is_size(word)).count();
    let (size, shape) = words.split_at(words.len() - behind);
    strange(size, shape)?;
    let sizes = sizes(&size.join(" "), default)?;
    let said = shape.join(" ");
    let stock = match (of_two(&said, &sizes).unwrap_or(&said), &sizes[..]) {
        ("square", &[side]) => Stock::Square { side },
        ("square", &[side, other]) if side == other => Stock::Square { side },
        ("round", &[diameter]) => Stock::Round { diameter },
        ("flat", &[a, b]) => {
            let (thickness, width) = if b.mm() < a.mm() { (b, a) } else { (a, b) };
            Stock::Flat { thickness, width }
        }
        ("flat", &[thickness]) => Stock::Flat {
            thickness,
            width: wider(thickness),
        },
        _ => {
            return Err(StockError::Shape(
                quoted(text, WHOLE),
                "square, round or flat",
            ));
        }
    };
    Ok(Bar {
        stock,
        steel: Steel::default(),
    })
}

/// The shape of bar that has two sizes where none is said: alike they are those of square bar, else
/// of flat.
pub(super) fn of_two(said: &str, sizes: &[Length]) -> Option<&'static str> {
    match sizes {
        [a, b] if matches!(said, "" | "bar") => Some(if a == b { "square" } else { "flat" }),
        _ => None,
    }
}

/// Shapes that work has and no bar.
const OF_WORK: [&str; 4] = ["hexagon", "hex", "octagon", "oct"];

/// Refuses a word that stands before the shape where a size or its unit belongs.
pub(super) fn strange(size: &[&str], shape: &[&str]) -> Result<(), StockError> {
    let known = |last: &&str| ["square", "round", "flat"].contains(last) || OF_WORK.contains(last);
    let [word, .., last] = shape else {
        return Ok(());
    };
    if !known(last) {
        return Ok(());
    }
    let word = quoted(word, WHOLE);
    let has_unit = |last: &&str| last.contains(|c: char| c.is_alphabetic() || c == '"');
    match size.last() {
        None => Err(SizeError::NotASize(word).into()),
        Some(last) if has_unit(last) => Ok(()),
        Some(_) => Err(SizeError::Unit(word).into()),
    }
}
