//! The document's values as rows of text: what is shown, what may be typed, what a step is.

use reinwright_core::asked::{Range, Units, Value};
pub(crate) use reinwright_core::asked::{capital, full_name};
use reinwright_core::finding::Part;
use reinwright_core::tongs::document::Document;
use reinwright_core::units::{Angle, Length, Unit};

/// One value of the document, as it stands.
#[derive(Debug, Clone)]
pub(crate) struct Row {
    /// Where it stands, such as `rein.start.depth`.
    pub(crate) path: String,
    /// The part it shapes.
    pub(crate) part: Part,
    /// What the smith calls it.
    pub(crate) label: &'static str,
    /// What it is.
    pub(crate) hint: &'static str,
    range: Range,
    /// The value.
    pub(crate) value: Shown,
}

/// A value, taken out of the document.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Shown {
    Length(Length),
    Angle(Angle),
    Percent(f64),
    Count(u32),
    Choice {
        names: Vec<&'static str>,
        chosen: usize,
    },
}

/// A value to be put into the document.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Edit {
    Length(Length),
    Angle(Angle),
    Percent(f64),
    Count(u32),
    Choice(usize),
}

/// How far one press of a step key goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Stride {
    /// 1/16 in, 0.5 mm, 1 degree, 1 per cent, 1 piece.
    Usual,
    /// 1/64 in, 0.1 mm, a tenth of the others.
    Fine,
}

/// All rows, in the order in which a pair is thought of.
pub(crate) fn rows(document: &mut Document) -> Vec<Row> {
    let mut rows = Vec::new();
    let unit = document.units.unit();
    document.visit(&mut |field| {
        rows.push(Row {
            path: field.path,
            part: field.part,
            label: field.label,
            hint: field.hint,
            range: field.range,
            value: match field.value {
                // Nothing at all is in the unit of the design, and is stepped in it.
                Value::Length(it) if it.mm() == 0.0 => Shown::Length(Length::decimal(0.0, unit)),
                Value::Length(it) => Shown::Length(*it),
                Value::Angle(it) => Shown::Angle(*it),
                Value::Percent(it) => Shown::Percent(*it),
                Value::Count(it) => Shown::Count(*it),
                Value::Choice(it) => Shown::Choice {
                    names: it.names(),
                    chosen: it.chosen(),
                },
            },
        });
    });
    rows
}

/// Puts a value in its place.
pub(crate) fn apply(document: &mut Document, path: &str, edit: Edit) {
    document.visit(&mut |field| {
        if field.path != path {
            return;
        }
        match (field.value, edit) {
            (Value::Length(it), Edit::Length(new)) => *it = new,
            (Value::Angle(it), Edit::Angle(new)) => *it = new,
            (Value::Percent(it), Edit::Percent(new)) => *it = new,
            (Value::Count(it), Edit::Count(new)) => *it = new,
            (Value::Choice(it), Edit::Choice(new)) => it.choose(new),
            (
                Value::Length(_)
                | Value::Angle(_)
                | Value::Percent(_)
                | Value::Count(_)
                | Value::Choice(_),
                _,
            ) => {}
        }
    });
}

impl Row {
    /// The words between the part and the value in its path, such as `start` of
    /// `rein.start.depth`.
    pub(crate) fn section(&self) -> Option<String> {
        section(&self.path)
    }

    /// Its name for a screen reader and for tests: `Boss thickness`, `Rein start depth`.
    pub(crate) fn name(&self) -> String {
        full_name(self.part, &self.path, self.label)
    }

    /// The value as text, as it was typed.
    pub(crate) fn text(&self) -> String {
        match &self.value {
            Shown::Length(length) => length.to_string(),
            Shown::Angle(angle) => angle.to_string(),
            Shown::Percent(percent) => format!("{percent} %"),
            Shown::Count(count) => count.to_string(),
            Shown::Choice { names, chosen } => names.get(*chosen).copied().unwrap_or("").to_owned(),
        }
    }

    /// The value in the other unit, for the tooltip.
    pub(crate) fn elsewise(&self) -> Option<String> {
        let Shown::Length(length) = self.value else {
            return None;
        };
        let other = match length.unit() {
            Unit::Inch | Unit::Foot => Units::Millimetre,
            Unit::Millimetre | Unit::Centimetre => Units::Inch,
        };
        Some(other.show().text(length.mm()))
    }

    /// Reads what was typed.
    ///
    /// # Errors
    /// One sentence that says what is wrong and how to mend it.
    pub(crate) fn read(&self, text: &str, units: Units) -> Result<Edit, String> {
        let (edit, number) = match self.value {
            Shown::Length(_) => {
                let length = Length::parse(text, units.unit()).map_err(|e| e.to_string())?;
                (Edit::Length(length), length.mm())
            }
            Shown::Angle(_) => {
                let angle: Angle = text
                    .parse()
                    .map_err(|e: reinwright_core::units::SizeError| e.to_string())?;
                (Edit::Angle(angle), angle.in_degrees())
            }
            Shown::Percent(_) => {
                let percent = read_percent(text)?;
                (Edit::Percent(percent), percent)
            }
            Shown::Count(_) => {
                let count = read_count(text)?;
                (Edit::Count(count), f64::from(count))
            }
            Shown::Choice { .. } => return Err("choose one from the list".to_owned()),
        };
        if self.range.holds(number) {
            Ok(edit)
        } else {
            Err(format!(
                "{} is outside the limits: give {}",
                text.trim(),
                self.limits(units)
            ))
        }
    }

    /// `0.02 in to 7.87 in`, `40 deg to 160 deg`.
    pub(crate) fn limits(&self, units: Units) -> String {
        let Range { least, most } = self.range;
        match (&self.value, units) {
            (Shown::Length(_), units) => {
                let unit = match units {
                    Units::Inch => Unit::Inch,
                    Units::Millimetre => Unit::Millimetre,
                };
                self.range.ends_in(unit).join(" to ")
            }
            (Shown::Angle(_), _) => format!("{least} to {most} deg"),
            (Shown::Percent(_), _) => format!("{least} to {most} %"),
            (Shown::Count(_), _) => format!("{least} to {most}"),
            (Shown::Choice { .. }, _) => String::new(),
        }
    }

    /// The value so many steps on, kept inside its limits; a choice has no steps.
    pub(crate) fn stepped(&self, steps: f64, stride: Stride) -> Option<Edit> {
        let tenth = |step: f64| match stride {
            Stride::Usual => step,
            Stride::Fine => step / 10.0,
        };
        let on = |now: f64, step: f64| {
            let next =
                ((now / step + steps).round() * step).clamp(self.range.least, self.range.most);
            (next * 1e6).round() / 1e6
        };
        match self.value {
            Shown::Length(length) => {
                let step = stride.of(length.unit());
                Some(Edit::Length(Length::from_mm(
                    on(length.mm(), step),
                    length.unit(),
                )))
            }
            Shown::Angle(angle) => {
                let degrees = on(angle.in_degrees(), tenth(1.0));
                Some(Edit::Angle(Angle::degrees(degrees)))
            }
            Shown::Percent(percent) => Some(Edit::Percent(on(percent, tenth(1.0)))),
            Shown::Count(count) => read_count(&on(f64::from(count), 1.0).to_string())
                .ok()
                .map(Edit::Count),
            Shown::Choice { .. } => None,
        }
    }
}

impl Stride {
    /// Step of a length, mm.
    fn of(self, unit: Unit) -> f64 {
        match (unit, self) {
            (Unit::Inch | Unit::Foot, Self::Usual) => 25.4 / 16.0,
            (Unit::Inch | Unit::Foot, Self::Fine) => 25.4 / 64.0,
            (Unit::Millimetre | Unit::Centimetre, Self::Usual) => 0.5,
            (Unit::Millimetre | Unit::Centimetre, Self::Fine) => 0.1,
        }
    }
}

fn read_percent(text: &str) -> Result<f64, String> {
    let number = text.trim().trim_end_matches('%').trim().replace(',', ".");
    let plain = number.chars().all(|c| c.is_ascii_digit() || c == '.');
    match number.parse::<f64>() {
        Ok(percent) if plain && percent.is_finite() => Ok(percent),
        _ => Err(format!(
            "\"{}\" is not a percentage: write one such as 5 or 2.5 %",
            text.trim()
        )),
    }
}

fn read_count(text: &str) -> Result<u32, String> {
    let wrong = |_| {
        format!(
            "\"{}\" is not a number of pieces: write one such as 5",
            text.trim()
        )
    };
    text.trim().parse().map_err(wrong)
}

/// The words between the part and the value in a path.
pub(crate) fn section(path: &str) -> Option<String> {
    let words: Vec<&str> = path.split('.').collect();
    let [_, inner @ .., _] = words.as_slice() else {
        return None;
    };
    (!inner.is_empty()).then(|| inner.join(" ").replace('_', " "))
}

/// What stands over the group of a value.
pub(crate) fn group_title(part: Part, path: &str) -> String {
    match path.split('.').next() {
        Some("layout" | "allowances") => "Layout and allowances".to_owned(),
        _ => capital(part.name()),
    }
}
