//! How a pair or a tool is made, for people and for scripts.

mod answer;
mod list;

use reinwright_core::asked::Units;
use reinwright_core::draw::{self, Finished};
use reinwright_core::forge::balance::Balance;
use reinwright_core::making::{self, Change, Changes, Plan, Procedure, Step};
use reinwright_core::paper::Drawing;
use reinwright_core::shop::{ToolAnswers, balance_of};
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::model::Model;
use reinwright_core::tongs::resolve;
use reinwright_core::tool::Tool;

use self::answer::Answer;
use self::list::{Called, List};
use super::arguments;
use super::{Done, Outcome, Places, design, heats, json};

pub(super) fn run(wanted: &arguments::Plan, places: &Places) -> Outcome {
    let design = design(&wanted.file)?;
    let asked = heats::asked(wanted.sources.as_deref(), places)?;
    let made = |design: &Document| {
        let model = resolve(design);
        let balance = balance_of(design, &model);
        planned(design, (&model, &balance), &wanted.made)
    };
    let design = match &asked {
        Some(asked) if wanted.scale_from_heats => heats::with_own_scale(&design, asked, made)?,
        Some(_) | None => design,
    };
    let balance = balance_of(&design, &resolve(&design));
    let plan = made(&design)?;
    let list = || List::of(&Called::pair(&design), &balance, &plan);
    told((&design, &plan), list, asked, wanted)
}

/// How a tool is made.
pub(super) fn of_tool(
    (tool, answers): (&Tool, &ToolAnswers),
    wanted: &arguments::Plan,
    places: &Places,
) -> Outcome {
    let asked = heats::asked(wanted.sources.as_deref(), places)?;
    let plan = tool_planned(tool, answers, &wanted.made)?;
    let list = || List::of(&Called::tool(tool), &answers.balance, &plan);
    told((tool, &plan), list, asked, wanted)
}

/// The plan in the way that is wanted, with its heats where sources are known.
fn told<'a>(
    (design, plan): (impl Into<heats::Subject<'a>> + Copy, &Plan),
    list: impl FnOnce() -> String,
    asked: Option<heats::Asked>,
    wanted: &arguments::Plan,
) -> Outcome {
    let answer = Answer::new(plan);
    let Some(asked) = asked else {
        return Ok(Done::said(if wanted.json {
            json(&answer)?
        } else {
            list()
        }));
    };
    if let Some(folder) = &wanted.drawings {
        heats::draw_into(folder, (design, plan), &asked)?;
    }
    Ok(Done::said(if wanted.json {
        heats::keyed(&answer, (design, plan), &asked)?
    } else {
        heats::listed(list(), (design, plan), &asked)
    }))
}

/// The plan of a tool as it is asked for.
pub(super) fn tool_planned(
    tool: &Tool,
    answers: &ToolAnswers,
    made: &arguments::Made,
) -> Result<Plan, String> {
    let changed = [&made.without, &made.before, &made.across];
    if changed.into_iter().any(|all| !all.is_empty()) {
        return Err(
            "--without, --before and --across are for a pair: the operations of a tool keep their order"
                .to_owned(),
        );
    }
    let named = procedure(made, &Procedure::OF_TOOLS)?;
    let procedure = named.unwrap_or_else(|| making::usual_for_tool(tool));
    Ok(making::plan_tool(
        tool,
        &answers.model,
        &answers.balance,
        procedure,
    ))
}

/// One stage of a design's plan as a drawing.
pub(super) fn stage(design: &Document, wanted: &arguments::Drawing) -> Result<Drawing, String> {
    let model = resolve(design);
    let balance = balance_of(design, &model);
    let plan = planned(design, (&model, &balance), &wanted.made)?;
    stage_of(&model, &plan, wanted.stage, design.units)
}

/// The same of a tool.
pub(super) fn tool_stage(
    (tool, answers): (&Tool, &ToolAnswers),
    wanted: &arguments::Drawing,
) -> Result<Drawing, String> {
    let plan = tool_planned(tool, answers, &wanted.made)?;
    stage_of(&answers.model, &plan, wanted.stage, tool.units)
}

fn stage_of<'a>(
    finished: impl Into<Finished<'a>>,
    plan: &Plan,
    number: usize,
    units: Units,
) -> Result<Drawing, String> {
    let last = plan.stages.len() - 1;
    if number > last {
        return Err(format!(
            "--stage: there is no stage {number}: give one from 0, the bar, to {last}"
        ));
    }
    Ok(draw::stage(finished, plan, number, units.show()))
}

/// The plan as it is asked for.
pub(super) fn planned(
    design: &Document,
    (model, balance): (&Model, &Balance),
    made: &arguments::Made,
) -> Result<Plan, String> {
    let named = procedure(made, &Procedure::ALL)?;
    let procedure = named.unwrap_or_else(|| making::usual(design, model));
    let changes = changes(made)?;
    Ok(making::plan_with(
        design,
        (model, balance),
        procedure,
        &changes,
    ))
}

/// The procedure that was named, if one was; where it is none, those that can be named are told.
fn procedure(made: &arguments::Made, all: &[Procedure]) -> Result<Option<Procedure>, String> {
    let Some(word) = made.procedure.as_deref() else {
        return Ok(None);
    };
    Procedure::named(word).map(Some).ok_or_else(|| {
        let all: Vec<&str> = all.iter().map(|own| own.word()).collect();
        let all = all.join(", ");
        format!("--procedure: \"{word}\" is no procedure: give one of {all}")
    })
}

fn changes(made: &arguments::Made) -> Result<Changes, String> {
    let mut changes = Changes::default();
    for name in &made.without {
        changes.add(Change::LeaveOut(step(name, "without")?));
    }
    for names in &made.before {
        let Some((first, second)) = names.split_once(',') else {
            return Err(format!(
                "--before: \"{names}\" is not two operations: write them with a comma between"
            ));
        };
        let [first, second] = [step(first, "before")?, step(second, "before")?];
        changes.add(Change::MoveBefore(first, second));
    }
    for name in &made.across {
        changes.add(Change::Across(step(name, "across")?));
    }
    Ok(changes)
}

fn step(name: &str, option: &str) -> Result<Step, String> {
    Step::named(name).ok_or_else(|| {
        let all = Step::ALL.map(Step::name).join(", ");
        let name = name.trim();
        format!("--{option}: \"{name}\" is no operation: give one of {all}")
    })
}
