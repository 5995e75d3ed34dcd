//! Values of a document by dragging: grown and stepped to what a smith measures.

use super::{Dragged, HandleId};
use crate::asked::{Field, Step, Units, Value};
use crate::tongs::document::Document;

/// The document with a value at the very millimetre or degree, for asking the model.
pub(super) fn with(document: &Document, field: &Field, number: f64) -> Document {
    let mut changed = document.clone();
    changed.put(&field.path, field.value.with_number(number));
    changed
}

/// The document with a value grown by `more` mm or degrees, to whole steps.
pub(super) fn grown(start: &Document, id: &HandleId, more: f64, step: Step) -> Dragged {
    let unit = start.units.unit();
    changed(start, id, |field| {
        let (now, size) = (field.value.number()?, field.value.step(step, unit)?);
        // A value that was typed between two steps stays until the hand has gone half a step.
        let gone = more.abs() >= size / 2.0;
        let at = |number| field.value.at_step(number, field.range, (step, unit));
        gone.then(|| at(now + more)).flatten()
    })
}

/// The document with a value so many steps on.
pub(super) fn stepped(start: &Document, id: &HandleId, steps: f64, step: Step) -> Dragged {
    let unit = start.units.unit();
    changed(start, id, |field| {
        steps
            .is_finite()
            .then(|| field.stepped(steps, (step, unit)))?
    })
}

fn changed(
    start: &Document,
    id: &HandleId,
    value: impl FnOnce(&Field) -> Option<Value>,
) -> Dragged {
    let mut document = start.clone();
    if let Some(field) = field(start, id)
        && let Some(value) = value(&field)
    {
        document.put(&field.path, value);
    }
    let text = text(&document, id);
    Dragged { document, text }
}

/// The field that a handle changes.
fn field(document: &Document, id: &HandleId) -> Option<Field> {
    match id {
        HandleId::Field { path } => document.field(path),
        HandleId::Node { .. } => None,
    }
}

/// The value as the smith reads it; empty when the document has no such value.
pub(super) fn text(document: &Document, id: &HandleId) -> String {
    field(document, id).map_or_else(String::new, |field| shown(field.value, document.units))
}

fn shown(value: Value, units: Units) -> String {
    match value {
        Value::Length(length) => units.show().text(length.mm()),
        Value::Angle(angle) => format!("{}\u{b0}", (angle.in_degrees() * 10.0).round() / 10.0),
        Value::Percent(_) | Value::Count(_) | Value::Choice { .. } => value.to_string(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::asked::{parse_bar, parse_work};
    use crate::tongs::jaw::JawKind;

    fn design(units: Units) -> Document {
        let work = parse_work("3/8 in flat").unwrap();
        let bar = parse_bar("3/4 in square").unwrap();
        let mut design = Document::starting(JawKind::Flat, work, bar);
        design.units = units;
        design.jaw.length = "1 3/4 in".parse().unwrap();
        design
    }

    #[track_caller]
    fn check(units: Units, more: f64, step: Step, expected: &str) {
        let id = HandleId::Field {
            path: "jaw.length".to_owned(),
        };
        let dragged = grown(&design(units), &id, more, step);
        assert_eq!(dragged.document.jaw.length.to_string(), expected);
        assert_eq!(dragged.text, expected, "the text is exact");
        assert_eq!(
            crate::tongs::document::check_limits(&dragged.document),
            Ok(())
        );
    }

    /// 1 3/4 in is 44.45 mm.
    #[test]
    fn a_value_is_set_to_what_a_smith_measures() {
        check(Units::Inch, 0.7, Step::Usual, "1 3/4 in");
        check(Units::Inch, 0.9, Step::Usual, "1 13/16 in");
        check(Units::Inch, 0.4, Step::Fine, "1 49/64 in");
        check(Units::Millimetre, 1.2, Step::Usual, "45.5 mm");
        check(Units::Millimetre, 0.16, Step::Fine, "44.6 mm");
        check(Units::Inch, -1e9, Step::Usual, "1/8 in");
        // 500 mm is 314.96 sixteenths: the last whole one inside the limit is 314.
        check(Units::Inch, f64::INFINITY, Step::Usual, "19 5/8 in");
        check(Units::Millimetre, 1e300, Step::Fine, "500 mm");
    }
}
