//! One value of a source: shown, typed over and checked.

use crate::asked::Range;
use crate::heats::source::{Back, Wound};
use crate::units::{KG_PER_LB, Length, Show, Temperature, Unit, quoted};

/// What stands where a smith does not know.
const UNKNOWN: &str = "unknown";
/// What stands where steel is made as hot as is good for it.
const AS_THE_STEEL: &str = "as the steel bears";

/// One value.
#[derive(Debug)]
pub struct HeatField<'a> {
    /// What the file calls it.
    key: &'static str,
    /// What the smith calls it.
    pub label: &'static str,
    /// What it is, in a sentence without a period.
    pub hint: &'static str,
    range: Range,
    held: Held<'a>,
}

#[derive(Debug)]
pub(super) enum Held<'a> {
    Length(&'a mut Length),
    Heat(&'a mut Temperature),
    /// Nothing is as hot as is good for the steel.
    MaybeHeat(&'a mut Option<Temperature>),
    Number(&'a mut f64, Unity),
    /// Nothing is not known.
    MaybeNumber(&'a mut Option<f64>, Unity),
    Back(&'a mut Back),
    Wound(&'a mut Wound),
}

/// What a number counts.
#[derive(Debug, Clone, Copy)]
pub(super) enum Unity {
    /// This, with its sign.
    Sign(&'static str),
    /// Hundredths; the file has the whole as one.
    Share,
    /// kg an hour.
    Hourly,
}

impl Unity {
    /// What the smith reads, over what the file has, and its sign.
    fn shown(self, unit: Unit) -> (f64, &'static str) {
        match (self, unit) {
            (Self::Sign(sign), _) => (1.0, sign),
            (Self::Share, _) => (100.0, " %"),
            (Self::Hourly, Unit::Inch | Unit::Foot) => (1.0 / KG_PER_LB, " lb/h"),
            (Self::Hourly, Unit::Millimetre | Unit::Centimetre) => (1.0, " kg/h"),
        }
    }

    fn text(self, number: f64, unit: Unit) -> String {
        let (by, sign) = self.shown(unit);
        let number = match self {
            // Nobody weighs the fuel of an hour finer.
            Self::Hourly => (number * by * 100.0).round() / 100.0,
            Self::Sign(_) | Self::Share => plain(number * by),
        };
        format!("{number}{sign}")
    }

    fn read(self, text: &str, unit: Unit) -> Result<f64, String> {
        let (by, sign) = self.shown(unit);
        let number = text.trim().trim_end_matches(sign.trim()).trim();
        let read = number.replace(',', ".").parse::<f64>();
        let read = read.ok().filter(|own| own.is_finite());
        read.map(|own| own / by).ok_or_else(|| {
            let example = self.text(50.0 / by, unit);
            format!(
                "\"{}\" is no number: write one such as {example}",
                quoted(text, 40)
            )
        })
    }
}

/// A number as it is written: no more than four digits behind the point.
fn plain(number: f64) -> f64 {
    (number * 1e4).round() / 1e4
}

fn is_unknown(text: &str) -> bool {
    let text = text.trim().to_lowercase();
    text.is_empty() || text == UNKNOWN || text == AS_THE_STEEL
}

impl HeatField<'_> {
    /// Its value as text that reads back as the same; sizes and temperatures as they were typed.
    pub fn text(&self, show: Show) -> String {
        match &self.held {
            Held::Length(length) => length.to_string(),
            Held::Heat(heat) => heat.to_string(),
            Held::MaybeHeat(heat) => heat.map_or(AS_THE_STEEL.to_owned(), |own| own.to_string()),
            Held::Number(number, unity) => unity.text(**number, show.unit),
            Held::MaybeNumber(number, unity) => {
                number.map_or(UNKNOWN.to_owned(), |own| unity.text(own, show.unit))
            }
            Held::Back(back) => back.name().to_owned(),
            Held::Wound(wound) => wound.name().to_owned(),
        }
    }

    /// What it can be, where it is one of a few; nothing for what is typed.
    pub fn ways(&self) -> Option<[&'static str; 2]> {
        match self.held {
            Held::Back(_) => Some(Back::ALL.map(Back::name)),
            Held::Wound(_) => Some(Wound::ALL.map(Wound::name)),
            Held::Length(_)
            | Held::Heat(_)
            | Held::MaybeHeat(_)
            | Held::Number(..)
            | Held::MaybeNumber(..) => None,
        }
    }

    /// Least and most in the smith's units; nothing for one of a few.
    pub fn ends(&self, show: Show) -> Option<[String; 2]> {
        let ends = [self.range.least, self.range.most];
        match &self.held {
            Held::Length(_) => Some(self.range.ends_in(show.unit)),
            Held::Heat(_) | Held::MaybeHeat(_) => Some(ends.map(|own| show.temperature(own))),
            Held::Number(_, unity) | Held::MaybeNumber(_, unity) => {
                Some(ends.map(|own| unity.text(own, show.unit)))
            }
            Held::Back(_) | Held::Wound(_) => None,
        }
    }

    /// Takes what was typed; a size without a unit is in that of `show`.
    ///
    /// # Errors
    /// One sentence when the text is no such value or is outside its limits; the value stays.
    pub fn read(&mut self, text: &str, show: Show) -> Result<(), String> {
        let [least, most] = self.ends(show).unwrap_or_default();
        let inside = |own: f64| match self.range.holds(own) {
            true => Ok(own),
            false => Err(format!(
                "\"{}\" is not between {least} and {most}",
                quoted(text, 40)
            )),
        };
        let temperature = || {
            let read = Temperature::parse(text, show.scale());
            let read = read.map_err(|why| why.to_string())?;
            inside(read.celsius()).map(|_| read)
        };
        match &mut self.held {
            Held::Length(own) => {
                let read = Length::parse(text, show.unit).map_err(|why| why.to_string())?;
                inside(read.mm())?;
                **own = read;
            }
            Held::Heat(own) => **own = temperature()?,
            Held::MaybeHeat(own) if is_unknown(text) => **own = None,
            Held::MaybeHeat(own) => **own = Some(temperature()?),
            Held::Number(own, unity) => **own = inside(unity.read(text, show.unit)?)?,
            Held::MaybeNumber(own, _) if is_unknown(text) => **own = None,
            Held::MaybeNumber(own, unity) => {
                **own = Some(inside(unity.read(text, show.unit)?)?);
            }
            Held::Back(own) => {
                let named = Back::ALL.into_iter().find(|back| back.name() == text);
                **own = named.ok_or_else(|| format!("\"{}\" is no back", quoted(text, 40)))?;
            }
            Held::Wound(own) => {
                let named = Wound::ALL.into_iter().find(|wound| wound.name() == text);
                **own = named.ok_or_else(|| format!("\"{}\" is no coil", quoted(text, 40)))?;
            }
        }
        Ok(())
    }

    /// As a number in the file's unit, with the sign of that; nothing where none stands.
    fn number(&self) -> Option<(f64, &'static str)> {
        let unity = |own: f64, unity: Unity| match unity {
            Unity::Sign(sign) => (own, sign),
            Unity::Share => (own, ""),
            Unity::Hourly => (own, " kg/h"),
        };
        match &self.held {
            Held::Length(own) => Some((own.mm(), " mm")),
            Held::Heat(own) => Some((own.celsius(), " \u{b0}C")),
            Held::MaybeHeat(own) => own.map(|own| (own.celsius(), " \u{b0}C")),
            Held::Number(own, of) => Some(unity(**own, *of)),
            Held::MaybeNumber(own, of) => own.map(|own| unity(own, *of)),
            Held::Back(_) | Held::Wound(_) => None,
        }
    }

    /// What is wrong with it.
    pub(super) fn wrong(&self) -> Option<String> {
        let (value, unit) = self.number()?;
        if self.range.holds(value) {
            return None;
        }
        let Range { least, most } = self.range;
        let (found, [least, most]) = match &self.held {
            // As the smith wrote it, not as it is reckoned with.
            Held::Length(own) => (own.to_string(), self.range.ends_in(own.unit())),
            Held::Heat(_)
            | Held::MaybeHeat(_)
            | Held::Number(..)
            | Held::MaybeNumber(..)
            | Held::Back(_)
            | Held::Wound(_) => (
                format!("{value}{unit}"),
                [least, most].map(|end| format!("{end}{unit}")),
            ),
        };
        Some(format!(
            "{} is {found} and not from {least} to {most}",
            self.key
        ))
    }
}

impl Back {
    /// Both.
    const ALL: [Self; 2] = [Self::Closed, Self::Open];

    /// What the smith reads.
    fn name(self) -> &'static str {
        match self {
            Self::Closed => "closed behind",
            Self::Open => "open behind",
        }
    }
}

impl Wound {
    /// Both.
    const ALL: [Self; 2] = [Self::Round, Self::Open];

    /// What the smith reads.
    fn name(self) -> &'static str {
        match self {
            Self::Round => "round",
            Self::Open => "open at the side",
        }
    }
}

/// What a value is called in the file and by the smith, and what it is.
pub(super) type Told = (&'static str, &'static str, &'static str);

pub(super) fn field<'a>((key, label, hint): Told, range: Range, held: Held<'a>) -> HeatField<'a> {
    HeatField {
        key,
        label,
        hint,
        range,
        held,
    }
}
