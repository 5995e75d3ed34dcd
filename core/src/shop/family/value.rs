//! Values of a document as text, for the table and for what is set by hand.

use crate::asked::{Field, Follows, Range, Value};
use crate::finding::Part;
use crate::tongs::document::Document;
use crate::units::{Angle, Length, Unit};

/// What a value is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// A size; the only kind that rules scale.
    Length,
    /// An angle.
    Angle,
    /// A percentage.
    Percent,
    /// A count.
    Count,
    /// One of a few named ways.
    Choice,
}

/// A field of a document with its value as text.
#[derive(Debug, Clone, PartialEq)]
pub struct FieldText {
    /// Where it stands, such as `rein.start.depth`.
    pub path: String,
    /// The part it shapes.
    pub part: Part,
    /// What the smith calls it.
    pub label: &'static str,
    /// What it is, in a sentence without a period.
    pub hint: &'static str,
    /// Limits, as [`Field::range`].
    pub range: Range,
    /// How it grows unless a rule says otherwise.
    pub follows: Follows,
    /// What it is.
    pub kind: Kind,
    /// Its value; [`set_text`] takes this text back.
    pub text: String,
    /// The ways of a choice; empty for everything else.
    pub ways: Vec<&'static str>,
}

/// Every field of a document, in its order.
pub fn fields(document: &Document) -> Vec<FieldText> {
    let mut all = Vec::with_capacity(64);
    document
        .clone()
        .visit(&mut |field| all.push(text_of(field)));
    all
}

fn text_of(field: Field<'_>) -> FieldText {
    let (kind, text, ways) = match field.value {
        Value::Length(length) => (Kind::Length, length.to_string(), Vec::new()),
        Value::Angle(angle) => (Kind::Angle, angle.to_string(), Vec::new()),
        Value::Percent(percent) => (Kind::Percent, format!("{percent} %"), Vec::new()),
        Value::Count(count) => (Kind::Count, count.to_string(), Vec::new()),
        Value::Choice(choice) => {
            let ways = choice.names();
            (Kind::Choice, ways[choice.chosen()].to_owned(), ways)
        }
    };
    FieldText {
        path: field.path,
        part: field.part,
        label: field.label,
        hint: field.hint,
        range: field.range,
        follows: field.follows,
        kind,
        text,
        ways,
    }
}

/// Sets a field from text; a length without a unit is in `unit`. What cannot be set stays.
///
/// # Errors
/// One sentence without a period when the text is no such value or is outside its limits.
pub fn set_text(field: Field<'_>, text: &str, unit: Unit) -> Result<(), String> {
    let range = field.range;
    let plain = |unit: &str| [range.least, range.most].map(|end| format!("{end}{unit}"));
    match field.value {
        Value::Length(length) => {
            let new = Length::parse(text, unit).map_err(|error| error.to_string())?;
            inside(range, new.mm(), text, &range.ends_in(new.unit()))?;
            *length = new;
        }
        Value::Angle(angle) => {
            let new: Angle = text
                .parse()
                .map_err(|e: crate::units::SizeError| e.to_string())?;
            inside(range, new.in_degrees(), text, &plain(" deg"))?;
            *angle = new;
        }
        Value::Percent(percent) => {
            let new = number(text.trim().trim_end_matches('%'), text, "5 %")?;
            inside(range, new, text, &plain(" %"))?;
            *percent = new;
        }
        Value::Count(count) => {
            let new = text.trim().parse::<u32>();
            let new = new.map_err(|_not| not_a("count", text, "5"))?;
            inside(range, f64::from(new), text, &plain(""))?;
            *count = new;
        }
        Value::Choice(choice) => {
            let ways = choice.names();
            let at = ways.iter().position(|way| alike(way, text));
            choice.choose(at.ok_or_else(|| no_way(text, &ways))?);
        }
    }
    Ok(())
}

fn number(digits: &str, text: &str, such_as: &str) -> Result<f64, String> {
    let digits = digits.trim().replace(',', ".");
    let plain = digits.chars().all(|c| c.is_ascii_digit() || c == '.');
    match digits.parse::<f64>() {
        Ok(number) if plain && number.is_finite() => Ok(number),
        Ok(_) | Err(_) => Err(not_a("percentage", text, such_as)),
    }
}

fn not_a(what: &str, text: &str, such_as: &str) -> String {
    format!(
        "\"{}\" is not a {what}: write one such as {such_as}",
        short(text)
    )
}

fn no_way(text: &str, ways: &[&str]) -> String {
    format!(
        "\"{}\" is none of its ways: choose {}",
        short(text),
        ways.join(", ")
    )
}

/// So much of a text as a message can carry.
pub(super) fn short(text: &str) -> String {
    crate::units::quoted(text, 40)
}

fn alike(way: &str, text: &str) -> bool {
    let plain = |text: &str| text.trim().to_lowercase().replace('-', " ");
    plain(way) == plain(text)
}

fn inside(
    range: Range,
    number: f64,
    text: &str,
    [least, most]: &[String; 2],
) -> Result<(), String> {
    if range.holds(number) {
        return Ok(());
    }
    Err(format!(
        "\"{}\" is outside its limits: give a value from {least} to {most}",
        short(text),
    ))
}
