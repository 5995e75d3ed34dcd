use super::limit_error::LimitError;
use super::range::Range;
use crate::finding::Part;
use crate::units::{Angle, Length};

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

/// A choice among a few named ways.
pub trait Choice {
    /// The names, in order.
    fn names(&self) -> Vec<&'static str>;
    /// Which one is chosen.
    fn chosen(&self) -> usize;
    /// Chooses one by its place in [`Choice::names`]; out of range changes nothing.
    fn choose(&mut self, index: usize);
}

/// A value that can be set.
#[allow(
    missing_debug_implementations,
    reason = "a borrowed choice has no debug form"
)]
pub enum Value<'a> {
    /// A size.
    Length(&'a mut Length),
    /// An angle.
    Angle(&'a mut Angle),
    /// A percentage.
    Percent(&'a mut f64),
    /// A count.
    Count(&'a mut u32),
    /// One of a few named ways.
    Choice(&'a mut dyn Choice),
}

/// One value of a document, with all that a window or a table needs to show and set it.
#[allow(
    missing_debug_implementations,
    reason = "a borrowed choice has no debug form"
)]
pub struct Field<'a> {
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
    /// How it grows with a family.
    pub follows: Follows,
    /// The value itself.
    pub value: Value<'a>,
}

impl Field<'_> {
    /// Its name where its part does not stand over it: `Rein start depth`.
    pub fn full_name(&self) -> String {
        full_name(self.part, &self.path, self.label)
    }
}

/// A value's name where its part does not stand over it: `Rein start depth`.
pub fn full_name(part: Part, path: &str, label: &str) -> String {
    let words: Vec<&str> = path.split('.').collect();
    let section = match words.as_slice() {
        [_, inner @ .., _] => inner.join(" ").replace('_', " "),
        [] | [_] => String::new(),
    };
    let label = label.to_lowercase();
    let name = if section.is_empty() {
        format!("{part} {label}")
    } else {
        format!("{part} {section} {label}")
    };
    capital(&name)
}

/// Words as a sentence or a label begins.
pub fn capital(words: &str) -> String {
    let mut signs = words.chars();
    signs.next().map_or(String::new(), |first| {
        first.to_uppercase().collect::<String>() + signs.as_str()
    })
}

/// Hands each field on, with the part and the path it stands under.
#[allow(missing_debug_implementations, reason = "holds a closure")]
pub struct Visitor<'a> {
    see: &'a mut dyn FnMut(Field<'_>),
    part: Part,
    path: Vec<&'static str>,
}

impl<'a> Visitor<'a> {
    /// A visitor that shows every field to `see`.
    pub fn new(see: &'a mut dyn FnMut(Field<'_>)) -> Self {
        Self {
            see,
            part: Part::Pair,
            path: Vec::new(),
        }
    }

    /// From here on the fields belong to `part` and stand under `path`.
    pub fn part(&mut self, part: Part, path: &'static str) {
        self.part = part;
        self.path.clear();
        if !path.is_empty() {
            self.path.push(path);
        }
    }

    /// Shows the fields of something that stands under `name`.
    pub fn within(&mut self, name: &'static str, fields: impl FnOnce(&mut Self)) {
        self.path.push(name);
        fields(self);
        self.path.pop();
    }

    /// A size with limits in mm.
    pub fn length(
        &mut self,
        name: &'static str,
        label: &'static str,
        hint: &'static str,
        (range, follows): (Range, Follows),
        value: &mut Length,
    ) {
        self.show(name, (label, hint), (range, follows), Value::Length(value));
    }

    /// An angle with limits in degrees.
    pub fn angle(
        &mut self,
        name: &'static str,
        label: &'static str,
        hint: &'static str,
        range: Range,
        value: &mut Angle,
    ) {
        self.show(
            name,
            (label, hint),
            (range, Follows::Nothing),
            Value::Angle(value),
        );
    }

    /// A percentage.
    pub fn percent(
        &mut self,
        name: &'static str,
        label: &'static str,
        hint: &'static str,
        range: Range,
        value: &mut f64,
    ) {
        self.show(
            name,
            (label, hint),
            (range, Follows::Nothing),
            Value::Percent(value),
        );
    }

    /// A count.
    pub fn count(
        &mut self,
        name: &'static str,
        label: &'static str,
        hint: &'static str,
        range: Range,
        value: &mut u32,
    ) {
        self.show(
            name,
            (label, hint),
            (range, Follows::Nothing),
            Value::Count(value),
        );
    }

    /// A choice.
    pub fn choice(
        &mut self,
        name: &'static str,
        label: &'static str,
        hint: &'static str,
        value: &mut dyn Choice,
    ) {
        self.show(
            name,
            (label, hint),
            (Range::ANY, Follows::Nothing),
            Value::Choice(value),
        );
    }

    fn show(
        &mut self,
        name: &'static str,
        (label, hint): (&'static str, &'static str),
        (range, follows): (Range, Follows),
        value: Value<'_>,
    ) {
        let mut path = self.path.join(".");
        if !path.is_empty() {
            path.push('.');
        }
        path.push_str(name);
        (self.see)(Field {
            path,
            part: self.part,
            label,
            hint,
            range,
            follows,
            value,
        });
    }
}

/// Makes a [`Choice`] of an enum without data.
macro_rules! simple_choice {
    ($kind:ident { $($way:ident => $name:literal),+ $(,)? }) => {
        impl $crate::asked::Choice for $kind {
            fn names(&self) -> Vec<&'static str> {
                vec![$($name),+]
            }

            fn chosen(&self) -> usize {
                *self as usize
            }

            fn choose(&mut self, index: usize) {
                if let Some(way) = [$(Self::$way),+].get(index) {
                    *self = *way;
                }
            }
        }

        impl $kind {
            /// The name that the smith sees.
            pub fn name(self) -> &'static str {
                match self {
                    $(Self::$way => $name),+
                }
            }
        }
    };
}
pub(crate) use simple_choice;

/// Checks one field.
///
/// # Errors
/// When its value is outside its limits.
pub(crate) fn check_field(field: &Field<'_>) -> Result<(), LimitError> {
    let Range { least, most } = field.range;
    let plain = |unit: &str| [least, most].map(|end| format!("{end}{unit}"));
    let (number, found, [least, most]) = match &field.value {
        Value::Length(length) => (
            length.mm(),
            length.to_string(),
            field.range.ends_in(length.unit()),
        ),
        Value::Angle(angle) => (angle.in_degrees(), angle.to_string(), plain(" deg")),
        Value::Percent(percent) => (**percent, format!("{percent} %"), plain(" %")),
        Value::Count(count) => (f64::from(**count), count.to_string(), plain("")),
        Value::Choice(_) => return Ok(()),
    };
    if field.range.holds(number) {
        return Ok(());
    }
    Err(LimitError {
        path: field.path.clone(),
        found,
        least,
        most,
    })
}
