//! Values of a document by number: read, set, and rounded to what a smith measures.

use super::{Dragged, HandleId};
use crate::asked::{Range, Units, Value};
use crate::tongs::document::Document;
use crate::units::{Angle, Length, MM_PER_INCH, Unit};

/// How finely a dragged value is set.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Step {
    /// 1/16 in, 1 mm, 1 degree.
    #[default]
    Usual,
    /// 1/64 in, 0.1 mm, 0.1 degree.
    Fine,
}

/// So many steps in one unit: inches, millimetres or degrees.
impl Step {
    fn in_an_inch(self) -> u32 {
        match self {
            Self::Usual => 16,
            Self::Fine => 64,
        }
    }

    fn in_one(self) -> u32 {
        match self {
            Self::Usual => 1,
            Self::Fine => 10,
        }
    }
}

/// What kind of number a value is, with its limits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Number {
    /// In mm or degrees.
    pub(super) now: f64,
    pub(super) range: Range,
    kind: Kind,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Kind {
    Length(Length),
    Angle(Angle),
}

impl Number {
    /// The number behind a value that can be dragged.
    pub(super) fn of(value: &Value<'_>, range: Range) -> Option<Self> {
        let (now, kind) = match value {
            Value::Length(length) => (length.mm(), Kind::Length(**length)),
            Value::Angle(angle) => (angle.in_degrees(), Kind::Angle(**angle)),
            Value::Percent(_) | Value::Count(_) | Value::Choice(_) => return None,
        };
        Some(Self { now, range, kind })
    }

    /// The size of a step, in mm or degrees.
    fn step(&self, units: Units, step: Step) -> f64 {
        match (self.kind, units) {
            (Kind::Length(_), Units::Inch) => MM_PER_INCH / f64::from(step.in_an_inch()),
            (Kind::Length(_), Units::Millimetre) | (Kind::Angle(_), _) => {
                1.0 / f64::from(step.in_one())
            }
        }
    }

    /// The value of so many whole steps, held inside the limits.
    fn whole(&self, steps: f64, units: Units, step: Step) -> Kind {
        let size = self.step(units, step);
        // Limits that are no whole steps are kept to the step inside them.
        let least = (self.range.least / size - 1e-9).ceil();
        let most = (self.range.most / size + 1e-9).floor();
        let count = steps.round().max(least).min(most).max(0.0);
        match self.kind {
            Kind::Length(_) => Kind::Length(length(count, units, step)),
            Kind::Angle(_) => Kind::Angle(Angle::degrees(count / f64::from(step.in_one()))),
        }
    }

    fn text(&self, units: Units) -> String {
        match self.kind {
            Kind::Length(length) => units.show().text(length.mm()),
            Kind::Angle(angle) => format!("{}\u{b0}", (angle.in_degrees() * 10.0).round() / 10.0),
        }
    }
}

/// So many steps as a length, an exact fraction in inches.
fn length(count: f64, units: Units, step: Step) -> Length {
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a whole number of steps inside a range of at most a few metres"
    )]
    let whole = count.clamp(0.0, 1e6) as u32;
    match units {
        Units::Inch => Length::fraction(whole, step.in_an_inch(), Unit::Inch),
        Units::Millimetre => Length::decimal(
            f64::from(whole) / f64::from(step.in_one()),
            Unit::Millimetre,
        ),
    }
}

/// The number that stands under a path.
fn number(document: &Document, id: &HandleId) -> Option<Number> {
    let HandleId::Field { path } = id else {
        return None;
    };
    let mut found = None;
    document.clone().visit(&mut |field| {
        if field.path == *path {
            found = Number::of(&field.value, field.range);
        }
    });
    found
}

fn put(document: &mut Document, id: &HandleId, kind: Kind) {
    let HandleId::Field { path } = id else {
        return;
    };
    document.visit(&mut |field| {
        if field.path != *path {
            return;
        }
        match (field.value, kind) {
            (Value::Length(it), Kind::Length(new)) => *it = new,
            (Value::Angle(it), Kind::Angle(new)) => *it = new,
            (
                Value::Length(_)
                | Value::Angle(_)
                | Value::Percent(_)
                | Value::Count(_)
                | Value::Choice(_),
                Kind::Length(_) | Kind::Angle(_),
            ) => {}
        }
    });
}

/// The document with a number set to the very millimetre or degree, for asking the model.
pub(super) fn with(document: &Document, id: &HandleId, number: f64) -> Document {
    let mut changed = document.clone();
    let kinds = [
        Kind::Length(Length::decimal(number, Unit::Millimetre)),
        Kind::Angle(Angle::degrees(number)),
    ];
    for kind in kinds {
        put(&mut changed, id, kind);
    }
    changed
}

/// The document with a value grown by `more` mm or degrees, to whole steps.
pub(super) fn grown(start: &Document, id: &HandleId, more: f64, step: Step) -> Dragged {
    let units = start.units;
    let set = |number: Number| {
        let size = number.step(units, step);
        // A value that was typed between two steps stays until the hand has gone half a step.
        (more.abs() >= size / 2.0).then(|| number.whole((number.now + more) / size, units, step))
    };
    changed(start, id, number(start, id).and_then(set))
}

/// The document with a value so many steps on.
pub(super) fn stepped(start: &Document, id: &HandleId, steps: f64, step: Step) -> Dragged {
    let units = start.units;
    let set = |number: Number| {
        let now = number.now / number.step(units, step);
        steps
            .is_finite()
            .then(|| number.whole(now + steps, units, step))
    };
    changed(start, id, number(start, id).and_then(set))
}

fn changed(start: &Document, id: &HandleId, kind: Option<Kind>) -> Dragged {
    let mut document = start.clone();
    if let Some(kind) = kind {
        put(&mut document, id, kind);
    }
    let text = text(&document, id);
    Dragged { document, text }
}

pub(super) fn text(document: &Document, id: &HandleId) -> String {
    number(document, id).map_or_else(String::new, |number| number.text(document.units))
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
        check(Units::Millimetre, 1.2, Step::Usual, "46 mm");
        check(Units::Millimetre, 0.16, Step::Fine, "44.6 mm");
        check(Units::Inch, -1e9, Step::Usual, "1/8 in");
        // 500 mm is 314.96 sixteenths: the last whole one inside the limit is 314.
        check(Units::Inch, f64::INFINITY, Step::Usual, "19 5/8 in");
        check(Units::Millimetre, 1e300, Step::Fine, "500 mm");
    }
}
