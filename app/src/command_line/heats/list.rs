//! The heats of a plan, told to people.

use std::fmt::Write;

use reinwright_core::asked::{Units, capital};
use reinwright_core::heats::{
    HeatPlan, Heated, How, Prepared, cautions, heat_plan, no_longer, noticed, priced,
    scale_percent, spoken,
};
use reinwright_core::making::Plan;
use reinwright_core::steel::thermal::THERMAL_SOURCE;
use reinwright_core::units::Show;

use super::{Asked, Subject};

/// A plan's text with its heats behind it.
pub(in crate::command_line) fn listed<'a>(
    text: String,
    (design, plan): (impl Into<Subject<'a>>, &Plan),
    asked: &Asked,
) -> String {
    let design = &design.into();
    let mut list = List {
        text,
        units: design.units,
        whose: match design.pair {
            Some(_) => "the pair",
            None => "the tool",
        },
    };
    let prepared = Prepared::new(design.steel, plan, &asked.shop);
    list.heats(design, &prepared, asked);
    list.text
}

struct List {
    text: String,
    units: Units,
    /// What is heated.
    whose: &'static str,
}

impl List {
    fn line(&mut self, words: std::fmt::Arguments<'_>) {
        writeln!(self.text, "{words}").expect("a text takes what is written to it");
    }

    fn heats(&mut self, design: &Subject<'_>, prepared: &Prepared, asked: &Asked) {
        let show = self.units.show();
        let heats = heat_plan(prepared);
        self.line(format_args!(
            "\nHeats, the steel made {} hot; the heat in it by {THERMAL_SOURCE}:",
            made_hot(prepared, &heats, show)
        ));
        for lost in &asked.lost {
            self.line(format_args!("  not read: {lost}"));
        }
        for heated in &heats.operations {
            self.heated(prepared, heated);
        }
        self.totals(prepared, &heats);
        for finding in noticed(prepared, &heats, show) {
            self.line(format_args!("{finding}"));
        }
        self.line(format_args!("\nWhat each source lets through:"));
        for at in 0..prepared.shop.sources.len() {
            let name = &prepared.shop.sources[at].name;
            match no_longer(prepared, at, show) {
                Some(said) => self.line(format_args!("  {said}")),
                None => self.line(format_args!("  {name}: serves to the end")),
            }
        }
        let pair = design.riveted(asked);
        if !pair.is_empty() {
            self.line(format_args!("\nThe riveted pair, to be set hot:"));
        }
        for said in pair {
            self.line(format_args!("  {said}"));
        }
        self.others(design, prepared, (&heats, asked));
        self.line(format_args!(""));
        for words in cautions(&asked.shop, design.steel) {
            self.line(format_args!("{words}"));
        }
    }

    fn heated(&mut self, prepared: &Prepared, heated: &Heated) {
        let (number, step) = (heated.number, heated.step);
        let words = heated.words(prepared);
        let words = words.unwrap_or_else(|| "cold".to_owned());
        self.line(format_args!("{number:>3}. {step}: {words}"));
    }

    fn totals(&mut self, prepared: &Prepared, heats: &HeatPlan) {
        let totals = heats.totals;
        let changes = match totals.changes {
            0 => "no change of source".to_owned(),
            1 => "1 source made ready".to_owned(),
            count => format!("{count} times a source made ready"),
        };
        let whose = capital(self.whose);
        self.line(format_args!(
            "{}: {} heats, {changes}, {} in all: {} heating, {} making ready, {} to the anvil and \
             back, {} working",
            whose,
            totals.heats,
            spoken(totals.time_s),
            spoken(totals.heating_s),
            spoken(totals.ready_s),
            spoken(totals.handling_s),
            spoken(totals.working_s)
        ));
        if totals.kwh > 0.0 {
            self.line(format_args!("The machine draws {:.1} kWh", totals.kwh));
        }
        if totals.fuel_kg > 0.0 {
            self.line(format_args!("Fuel: {:.1} kg", totals.fuel_kg));
        }
        let whose = self.whose;
        self.line(format_args!(
            "Scale of these heats: {:.1} % of {whose} (an estimate)",
            scale_percent(prepared, heats)
        ));
    }

    fn others(
        &mut self,
        design: &Subject<'_>,
        prepared: &Prepared,
        (heats, asked): (&HeatPlan, &Asked),
    ) {
        let others = priced(prepared, heats);
        if !others.is_empty() {
            self.line(format_args!("\nOther choices:"));
        }
        for other in others {
            self.line(format_args!("  {}", other.said));
        }
        let all = design.others(asked);
        let Some((first, rest)) = all.split_first() else {
            return;
        };
        for other in rest {
            self.line(format_args!("  {}", first.against(other)));
        }
    }
}

/// How hot the sources of a plan make the steel: `1150 °C`, `1080 to 1150 °C`.
fn made_hot(prepared: &Prepared, heats: &HeatPlan, show: Show) -> String {
    let hot = heats.operations.iter().filter(|own| own.how == How::Hot);
    let ends = hot.fold(None, |ends: Option<(f64, f64)>, own| {
        let (low, high) = ends.unwrap_or((own.target_celsius, own.target_celsius));
        Some((low.min(own.target_celsius), high.max(own.target_celsius)))
    });
    let (low, high) = ends.unwrap_or((prepared.target_celsius, prepared.target_celsius));
    let [low, high] = [low, high].map(|celsius| show.temperature(celsius));
    if low == high {
        high
    } else {
        format!("{low} to {high}")
    }
}
