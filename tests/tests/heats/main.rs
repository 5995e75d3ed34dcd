//! Which fire or coil for which operation: what steel takes up, what goes in, how long, how few.

mod bore;
mod coil;
mod command_line;
mod course;
mod fire;
mod induction;
mod metal;
mod middle;
mod optimum;
mod practice;
mod sources;

use reinwright_core::asked::parse_bar;
use reinwright_core::heats::{
    Back, Coil, Gas, HeatPlan, Prepared, Smith, Source, SourceKind, Sources, Wound, heat_plan,
};
use reinwright_core::making::{self, Plan, Procedure};
use reinwright_core::resolve;
use reinwright_core::shop::balance_of;
use reinwright_core::tongs::document::Document;
use reinwright_tests::pairs::length;

/// A coil of 3/8 in tube on a machine of 12 kW.
fn coil(name: &str, bore: &str, (turns, advance): (f64, &str)) -> Source {
    Source {
        name: name.to_owned(),
        ready_minutes: 3.0,
        kind: SourceKind::Coil(Coil {
            wound: Wound::Round,
            bore: length(bore),
            turns,
            advance: length(advance),
            tube: length("3/8 in"),
            power_kw: 12.0,
            frequency_khz: 60.0,
            lead: length("6 in"),
            efficiency: None,
            cold_lag_s: 5.0,
        }),
    }
}

/// A gas forge through which a bar can stick.
fn gas(back: Back, deep: &str) -> Source {
    Source {
        name: "gas forge".to_owned(),
        ready_minutes: 10.0,
        kind: SourceKind::Gas(Gas {
            chamber: "1250 C".parse().expect("a temperature"),
            opening_width: length("4 in"),
            opening_height: length("3 in"),
            length: length(deep),
            back,
            fuel_kg_h: Some(1.5),
        }),
    }
}

/// A shop with these sources.
fn shop(sources: Vec<Source>) -> Sources {
    Sources {
        smith: Smith::default(),
        machine: None,
        sources,
        ..Sources::default()
    }
}

/// How a design is made.
fn planned(design: &Document, procedure: Procedure) -> Plan {
    let model = resolve(design);
    making::plan(design, &model, &balance_of(design, &model), procedure)
}

/// How it is made by the procedure that comes first.
fn usual(design: &Document) -> Plan {
    planned(design, making::usual(design, &resolve(design)))
}

/// A plan with the heats of a shop.
fn heated(design: &Document, plan: &Plan, shop: &Sources) -> (Prepared, HeatPlan) {
    let prepared = Prepared::new(design.bar.steel, plan, shop);
    let heats = heat_plan(&prepared);
    (prepared, heats)
}

/// A pair of another bar.
fn from(bar: &str, design: Document) -> Document {
    Document {
        bar: parse_bar(bar).expect("the test names a bar"),
        ..design
    }
}
