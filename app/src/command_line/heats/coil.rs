//! Which coil would do the most of some designs.

use reinwright_core::heats::{Prepared, Sources};
use reinwright_core::making::Plan;
use reinwright_core::shop::{ToolAnswers, balance_of, shelf};
use reinwright_core::tongs::resolve;
use serde::Serialize;

use super::{Asked, asked};
use crate::command_line::{Done, Outcome, Places, arguments, json};
use crate::disk::files;
use crate::jobs::cut_wanted::{self, Made};

/// Which coil would do the most of some designs.
pub(in crate::command_line) fn coil(wanted: &arguments::Coil, places: &Places) -> Outcome {
    let asked = asked(wanted.sources.as_deref(), places)?;
    let asked = asked.unwrap_or_else(|| Asked {
        shop: Sources::default(),
        lost: Vec::new(),
    });
    let mut made = Vec::new();
    for file in &wanted.files {
        let named = |what: String| format!("{}: {what}", file.display());
        let filed = shelf::read(&files::bytes(file)?);
        let filed = filed.map_err(|error| named(error.to_string()))?;
        made.extend(cut_wanted::designs(filed).map_err(named)?);
    }
    let prepared: Vec<Prepared> = made
        .iter()
        .map(|made| Prepared::new(made.bar().steel, &usual_plan(made), &asked.shop))
        .collect();
    let all: Vec<&Prepared> = prepared.iter().collect();
    let Some(units) = made.first().map(Made::units) else {
        return Err("name a design".to_owned());
    };
    let show = units.show();
    let Some(advice) = reinwright_core::heats::helper::best_coil(&all, units.unit()) else {
        return Err(
            "no coil that this machine drives heats any of it: change the machine in the sources"
                .to_owned(),
        );
    };
    let words = advice.words(show);
    if !wanted.json {
        let text = asked.lost.iter().map(|lost| format!("not read: {lost}"));
        let text: Vec<String> = text.chain(words).collect();
        return Ok(Done::said(text.join("\n") + "\n"));
    }
    let coil = advice.source.coil().ok_or("only coils are advised")?;
    let answer = CoilAnswer {
        bore_mm: coil.bore.mm(),
        turns: coil.turns,
        advance_mm: coil.advance.mm(),
        hot_length_mm: coil.hot_length_mm(),
        serves: advice.serves.len(),
        of: advice.hot,
        inductance_uh: advice.tuned.inductance_uh,
        resonance_khz: advice.tuned.resonance_khz,
        most_turns: advice.tuned.most_turns,
        said: words,
    };
    Ok(Done::said(json(&answer)?))
}

fn usual_plan(made: &Made) -> Plan {
    use reinwright_core::making::{plan, plan_tool, usual, usual_for_tool};
    match made {
        Made::Pair(design) => {
            let model = resolve(design);
            let (balance, procedure) = (balance_of(design, &model), usual(design, &model));
            plan(design, &model, &balance, procedure)
        }
        Made::Tool(tool) => {
            let known = ToolAnswers::to(tool);
            plan_tool(tool, &known.model, &known.balance, usual_for_tool(tool))
        }
    }
}

#[derive(Serialize)]
struct CoilAnswer {
    bore_mm: f64,
    turns: f64,
    advance_mm: f64,
    hot_length_mm: f64,
    serves: usize,
    of: usize,
    inductance_uh: f64,
    resonance_khz: Option<f64>,
    most_turns: Option<f64>,
    said: Vec<String>,
}
