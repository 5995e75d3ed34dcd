use super::limit_error::LimitError;
use super::range::Range;
use super::value::{Step, Value, ValueError};
use crate::finding::Part;
use crate::units::Unit;

/// How a value grows when a design is made in another size.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Follows {
    /// In proportion to the work.
    Work,
    /// In proportion to the bar.
    Bar,
    /// The hand stays the hand.
    Nothing,
}

/// One value of a document, with all that a window or a table needs to show it and to read it.
#[derive(Debug, Clone, PartialEq)]
pub struct Field {
    /// Where it stands, such as `rein.start.depth`.
    pub path: String,
    /// The part it shapes.
    pub part: Part,
    /// What the smith calls it.
    pub label: &'static str,
    /// What it is, in a sentence without a period.
    pub hint: &'static str,
    /// Limits, in mm, degrees, per cent or pieces; a choice has none.
    pub range: Range,
    /// How it grows with a family; only sizes do.
    pub follows: Follows,
    /// The value as it stands.
    pub value: Value,
}

impl Field {
    /// Its name where its part does not stand over it: `Rein start depth`.
    pub fn full_name(&self) -> String {
        full_name(self.part, &self.path, self.label)
    }

    /// The words between the part and the value in its path, such as `start` of
    /// `rein.start.depth`.
    pub fn section(&self) -> Option<String> {
        section(self.part, &self.path)
    }

    /// Whether it is a size: the only kind that rules scale.
    pub fn is_length(&self) -> bool {
        matches!(self.value, Value::Length(_))
    }

    /// Reads what is written for it; a size without a unit is in `unit`.
    ///
    /// # Errors
    /// When the text is no such value or is outside its limits.
    pub fn read(&self, text: &str, unit: Unit) -> Result<Value, ValueError> {
        self.value.read(text, unit)?.inside(self.range, text)
    }

    /// The value so many steps on, held to the whole steps inside its limits; a choice has none. A
    /// size is stepped in `unit`.
    pub fn stepped(&self, steps: f64, (step, unit): (Step, Unit)) -> Option<Value> {
        let more = steps * self.value.step(step, unit)?;
        let number = self.value.number()? + more;
        self.value.at_step(number, self.range, (step, unit))
    }

    /// Checks the value against its limits.
    ///
    /// # Errors
    /// When it is outside them.
    pub(crate) fn check(&self) -> Result<(), LimitError> {
        if self.value.is_inside(self.range) {
            return Ok(());
        }
        let [least, most] = self.value.own_ends(self.range);
        Err(LimitError {
            path: self.path.clone(),
            found: self.value.to_string(),
            least,
            most,
        })
    }
}

/// A value's name where its part does not stand over it: `Rein start depth`.
pub fn full_name(part: Part, path: &str, label: &str) -> String {
    let label = label.to_lowercase();
    capital(&match section(part, path) {
        None => format!("{part} {label}"),
        Some(section) => format!("{part} {section} {label}"),
    })
}

/// The words between the part and the value in a path, where they say more than both: a body's own section is its
/// body, and how a tool is held is told by what is called so.
pub(crate) fn section(part: Part, path: &str) -> Option<String> {
    const HELD: &str = "hold";
    let (_part, within) = path.split_once('.')?;
    let (section, _value) = within.rsplit_once('.')?;
    let says_more = section != part.name() && section != HELD;
    says_more.then(|| section.replace(['.', '_'], " "))
}

/// Words as a sentence or a label begins.
pub fn capital(words: &str) -> String {
    let mut signs = words.chars();
    signs.next().map_or(String::new(), |first| {
        first.to_uppercase().collect::<String>() + signs.as_str()
    })
}
