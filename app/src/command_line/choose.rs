//! Which jaw styles suit some work, and why the others do not.

use reinwright_core::asked::{parse_bar, parse_work};
use reinwright_core::shop::{self, Advice};
use reinwright_core::tongs::jaw::Way;
use serde_json::{Value, json};

use super::arguments::Choose;
use super::{Done, Outcome, Places};
use crate::disk::own_jaws;

pub(super) fn run(asked: &Choose, places: &Places) -> Outcome {
    let work = parse_work(&asked.work).map_err(|error| format!("the work: {error}"))?;
    let bar = parse_bar(&asked.bar).map_err(|error| format!("--bar: {error}"))?;
    if let Some(why) = shop::too_stout(&bar) {
        return Err(format!("--bar: {why}"));
    }
    let way = Way::named(&asked.way).ok_or_else(|| no_way(&asked.way))?;
    let own = places.jaws.as_deref().map(own_jaws::readable);
    let advice = shop::choose_among(&own.unwrap_or_default(), &work, way, &bar);
    if asked.json {
        let text = super::json(&advice.iter().map(as_json).collect::<Vec<Value>>())?;
        return Ok(Done::said(text));
    }
    Ok(Done::said(advice.iter().map(line).collect()))
}

fn line(advice: &Advice) -> String {
    let own = if advice.own().is_some() {
        " (own jaw)"
    } else {
        ""
    };
    let (name, verdict) = (advice.name(), advice.verdict.name());
    format!("{name}{own}: {verdict}: {}\n", advice.reason)
}

fn as_json(advice: &Advice) -> Value {
    json!({
        "style": advice.style.name(),
        "own_jaw": advice.own(),
        "verdict": advice.verdict.name(),
        "reason": advice.reason,
    })
}

fn no_way(asked: &str) -> String {
    let names: Vec<String> = Way::ALL
        .iter()
        .map(|way| way.name().replace(' ', "-"))
        .collect();
    format!(
        "--way: nothing is held \"{}\": choose one of {}",
        super::shortened(asked, super::LONGEST_WORD),
        names.join(", ")
    )
}
