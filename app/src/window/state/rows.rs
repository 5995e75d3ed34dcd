//! The values of what is open as the parts list shows them: what is its own beside the fields.

pub(crate) use reinwright_core::asked::capital;
use reinwright_core::asked::{Field, Step, Units, Value};
use reinwright_core::finding::Part;
use reinwright_core::units::{Length, Unit};

/// All fields, in the order in which a thing is thought of. Nothing at all is in the unit of the
/// design, and is stepped in it.
pub(crate) fn rows(mut rows: Vec<Field>, units: Units) -> Vec<Field> {
    let unit = units.unit();
    for row in &mut rows {
        if let Value::Length(length) = &mut row.value
            && length.mm() == 0.0
        {
            *length = Length::decimal(0.0, unit);
        }
    }
    rows
}

/// A field's value so many steps on, a size in the unit that it was typed in; a choice has none.
pub(crate) fn stepped(row: &Field, steps: f64, step: Step) -> Option<Value> {
    let unit = row.value.unit().unwrap_or_default();
    row.stepped(steps, (step, unit))
}

/// A size in the other unit, for the tooltip.
pub(crate) fn elsewise(value: Value) -> Option<String> {
    let Value::Length(length) = value else {
        return None;
    };
    let other = match length.unit() {
        Unit::Inch | Unit::Foot => Units::Millimetre,
        Unit::Millimetre | Unit::Centimetre => Units::Inch,
    };
    Some(other.show().text(length.mm()))
}

/// What stands over the group of a value.
pub(crate) fn group_title(part: Part, path: &str) -> String {
    match path.split('.').next() {
        Some("layout" | "allowances") => "Layout and allowances".to_owned(),
        _ => capital(part.name()),
    }
}
