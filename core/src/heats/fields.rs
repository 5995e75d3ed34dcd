//! Every value of what is heated with, told once: to be checked, shown and typed over.

use super::source::{Back, Coil, Gas, Machine, Smith, Solid, Source, SourceKind, Wound};
use crate::asked::Range;
use crate::steel::thermal::HOLDS_CELSIUS;
use crate::units::{KG_PER_LB, Length, Show, Temperature, Unit, quoted};

/// Longest name, in characters.
const LONGEST_NAME: usize = 80;

/// A chamber or a fire, °C: from a low red to the limit of firebrick.
const FIRE: Range = Range::new(700.0, 1700.0);
/// What steel is heated to, °C: above the hardening range, and no hotter than its laws are known.
const HEAT_TO: Range = Range::new(800.0, HOLDS_CELSIUS.1);
/// An opening or a bore, mm.
const BORE: Range = Range::new(5.0, 600.0);
/// A chamber, a hot spot or a lead, mm.
const LONG: Range = Range::new(10.0, 3000.0);
/// A tube, mm.
const TUBE: Range = Range::new(2.0, 40.0);
/// From turn to turn, mm.
const ADVANCE: Range = Range::new(2.0, 200.0);
/// Power, kW.
const POWER: Range = Range::new(0.1, 1000.0);
/// Frequencies, kHz.
const KILOHERTZ: Range = Range::new(0.05, 1000.0);

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
enum Held<'a> {
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
enum Unity {
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
        format!("{}{sign}", plain(number * by))
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
    fn wrong(&self) -> Option<String> {
        let (value, unit) = self.number()?;
        let (key, Range { least, most }) = (self.key, self.range);
        (!self.range.holds(value))
            .then(|| format!("{key} is {value}{unit} and not from {least}{unit} to {most}{unit}"))
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
type Told = (&'static str, &'static str, &'static str);

fn field<'a>((key, label, hint): Told, range: Range, held: Held<'a>) -> HeatField<'a> {
    HeatField {
        key,
        label,
        hint,
        range,
        held,
    }
}

impl Smith {
    /// Its values, to be shown and typed over.
    pub fn fields(&mut self) -> Vec<HeatField<'_>> {
        vec![
            field(
                (
                    "working",
                    "Workable",
                    "Of the time that steel stays in its forging range in still air, the part in which you can work it",
                ),
                Range::new(0.05, 1.5),
                Held::Number(&mut self.working, Unity::Share),
            ),
            field(
                (
                    "pace",
                    "Pace",
                    "How much forging you do in a minute, over a practised hand hammer; a power hammer does more",
                ),
                Range::new(0.1, 20.0),
                Held::Number(&mut self.pace, Unity::Share),
            ),
            field(
                (
                    "handling_s",
                    "Handling",
                    "From the heat to the anvil and back, at each heat",
                ),
                Range::new(0.0, 600.0),
                Held::Number(&mut self.handling_s, Unity::Sign(" s")),
            ),
            field(
                (
                    "clearance",
                    "Clearance",
                    "Free on every side between the work and a coil or an opening: what touches a coil shorts it",
                ),
                Range::new(0.0, 50.0),
                Held::Length(&mut self.clearance),
            ),
            field(
                (
                    "heat_to",
                    "Heated to",
                    "How hot you make the steel; leave it empty for what the steel bears",
                ),
                HEAT_TO,
                Held::MaybeHeat(&mut self.heat_to),
            ),
        ]
    }
}

impl Machine {
    /// Its values, to be shown and typed over.
    pub fn fields(&mut self) -> Vec<HeatField<'_>> {
        let least = self.least_khz;
        vec![
            field(
                ("power_kw", "Power", "What it draws at full load"),
                POWER,
                Held::Number(&mut self.power_kw, Unity::Sign(" kW")),
            ),
            field(
                ("least_khz", "From", "The lowest frequency at which it runs"),
                KILOHERTZ,
                Held::Number(&mut self.least_khz, Unity::Sign(" kHz")),
            ),
            field(
                ("most_khz", "To", "The highest frequency at which it runs"),
                Range::new(least, KILOHERTZ.most),
                Held::Number(&mut self.most_khz, Unity::Sign(" kHz")),
            ),
            field(
                (
                    "capacitor_uf",
                    "Capacitors",
                    "All that lie across the coil: with it they make the frequency",
                ),
                Range::new(0.001, 1e5),
                Held::Number(&mut self.capacitor_uf, Unity::Sign(" \u{b5}F")),
            ),
            field(
                ("tube", "Tube", "What its coils are wound from, across"),
                TUBE,
                Held::Length(&mut self.tube),
            ),
        ]
    }
}

impl Source {
    /// Its values, to be shown and typed over; its name is none of them.
    pub fn fields(&mut self) -> Vec<HeatField<'_>> {
        let hint = match self.kind {
            SourceKind::Gas(_) | SourceKind::Solid(_) => "To light it and bring it to heat",
            SourceKind::Coil(_) => "To take another coil off the machine and put this one on",
        };
        let mut all = vec![field(
            ("ready_minutes", "Made ready", hint),
            Range::new(0.0, 240.0),
            Held::Number(&mut self.ready_minutes, Unity::Sign(" min")),
        )];
        all.extend(match &mut self.kind {
            SourceKind::Gas(gas) => gas.fields(),
            SourceKind::Solid(fire) => fire.fields(),
            SourceKind::Coil(coil) => coil.fields(),
        });
        all
    }
}

/// What a forge or a fire burns.
fn fuel(it: &mut Option<f64>) -> HeatField<'_> {
    field(
        (
            "fuel_kg_h",
            "Fuel",
            "What it burns in an hour; leave it empty if you do not know",
        ),
        Range::new(0.01, 200.0),
        Held::MaybeNumber(it, Unity::Hourly),
    )
}

impl Gas {
    fn fields(&mut self) -> Vec<HeatField<'_>> {
        vec![
            field(
                ("chamber", "Chamber", "How hot it is inside"),
                FIRE,
                Held::Heat(&mut self.chamber),
            ),
            field(
                (
                    "opening_width",
                    "Opening, wide",
                    "What the piece goes in through",
                ),
                BORE,
                Held::Length(&mut self.opening_width),
            ),
            field(
                (
                    "opening_height",
                    "Opening, high",
                    "What the piece goes in through",
                ),
                BORE,
                Held::Length(&mut self.opening_height),
            ),
            field(
                (
                    "length",
                    "Length",
                    "How long the chamber is: so long is the heat",
                ),
                LONG,
                Held::Length(&mut self.length),
            ),
            field(
                ("back", "Back", "Whether a bar can stick out behind"),
                Range::ANY,
                Held::Back(&mut self.back),
            ),
            fuel(&mut self.fuel_kg_h),
        ]
    }
}

impl Solid {
    fn fields(&mut self) -> Vec<HeatField<'_>> {
        vec![
            field(
                ("fire", "Heart", "How hot the heart of the fire is"),
                FIRE,
                Held::Heat(&mut self.fire),
            ),
            field(
                ("hot_spot", "Hot spot", "How long the heat is that it gives"),
                LONG,
                Held::Length(&mut self.hot_spot),
            ),
            fuel(&mut self.fuel_kg_h),
        ]
    }
}

impl Coil {
    fn fields(&mut self) -> Vec<HeatField<'_>> {
        // Turns that touch short each other.
        let most_tube = self.advance.mm().clamp(TUBE.least, TUBE.most);
        let sizes = [
            field(
                (
                    "wound",
                    "Wound",
                    "Round, or open at the side: an ear, a hairpin or two flat coils, into which a piece is laid whatever its ends are",
                ),
                Range::ANY,
                Held::Wound(&mut self.wound),
            ),
            field(
                (
                    "bore",
                    "Bore",
                    "What is free inside, its sleeve in place; of an open coil between its sides",
                ),
                BORE,
                Held::Length(&mut self.bore),
            ),
            field(
                ("turns", "Turns", "How many times the tube goes round"),
                Range::new(1.0, 100.0),
                Held::Number(&mut self.turns, Unity::Sign("")),
            ),
            field(
                (
                    "advance",
                    "Advance",
                    "From turn to turn: turns times advance is the length of the coil",
                ),
                ADVANCE,
                Held::Length(&mut self.advance),
            ),
            field(
                (
                    "tube",
                    "Tube",
                    "Across its outside, no more than the advance",
                ),
                Range::new(TUBE.least, most_tube),
                Held::Length(&mut self.tube),
            ),
        ];
        let driven = [
            field(
                (
                    "power_kw",
                    "Power",
                    "What the machine draws with it at full load",
                ),
                POWER,
                Held::Number(&mut self.power_kw, Unity::Sign(" kW")),
            ),
            field(
                (
                    "frequency_khz",
                    "Frequency",
                    "At which the machine runs with it",
                ),
                KILOHERTZ,
                Held::Number(&mut self.frequency_khz, Unity::Sign(" kHz")),
            ),
            field(
                (
                    "lead",
                    "Leads",
                    "From the machine to the coil, each so long",
                ),
                Range::new(0.0, LONG.most),
                Held::Length(&mut self.lead),
            ),
            field(
                (
                    "efficiency",
                    "Efficiency",
                    "Part of the power that ends in the steel; leave it empty to have it reckoned",
                ),
                Range::new(1.0, 99.0),
                Held::MaybeNumber(&mut self.efficiency, Unity::Sign(" %")),
            ),
            field(
                (
                    "cold_lag_s",
                    "Cold start",
                    "What a cold start takes longer while the machine finds its pitch",
                ),
                Range::new(0.0, 300.0),
                Held::Number(&mut self.cold_lag_s, Unity::Sign(" s")),
            ),
        ];
        sizes.into_iter().chain(driven).collect()
    }
}

fn first_wrong(fields: &[HeatField<'_>]) -> Option<String> {
    fields.iter().find_map(HeatField::wrong)
}

/// What is wrong with a smith's habits.
pub(super) fn smith(it: &Smith) -> Option<String> {
    let mut own = *it;
    first_wrong(&own.fields())
}

/// What is wrong with a machine's limits.
pub(super) fn machine(it: &Machine) -> Option<String> {
    let mut own = *it;
    first_wrong(&own.fields())
}

/// What is wrong with a source.
pub(super) fn source(it: &Source) -> Option<String> {
    let name = it.name.trim();
    if let Some(why) = wrong_name(name) {
        return Some(why);
    }
    let wrong = first_wrong(&it.clone().fields());
    wrong.map(|why| format!("\"{}\": {why}", quoted(name, 40)))
}

/// What is wrong with a source's name.
pub fn wrong_name(name: &str) -> Option<String> {
    let name = name.trim();
    let wrong = name.is_empty() || name.chars().count() > LONGEST_NAME;
    wrong.then(|| format!("its name is empty or over {LONGEST_NAME} letters"))
}
