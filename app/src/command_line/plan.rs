//! How a pair is made, for people and for scripts.

use std::fmt::Write;

use reinwright_core::asked::{Bar, Units};
use reinwright_core::draw;
use reinwright_core::forge::balance::Balance;
use reinwright_core::making::{self, Blows, Change, Changes, Operation, Plan, Procedure, Step};
use reinwright_core::paper::Drawing;
use reinwright_core::shop::{ToolAnswers, balance_of};
use reinwright_core::steel::caution;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::model::Model;
use reinwright_core::tongs::resolve;
use reinwright_core::tool::Tool;
use reinwright_core::units::Show;
use serde::Serialize;

use super::arguments;
use super::findings::FindingAnswer;
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
    let answer = Answer::new(&plan);
    if let (Some(asked), Some(folder)) = (&asked, &wanted.drawings) {
        heats::draw_into(folder, (&design, &plan), asked)?;
    }
    let text = match (asked, wanted.json) {
        (None, true) => json(&answer)?,
        (None, false) => List::of(&Called::pair(&design), &balance, &plan),
        (Some(asked), true) => heats::keyed(&answer, (&design, &plan), &asked)?,
        (Some(asked), false) => heats::listed(
            List::of(&Called::pair(&design), &balance, &plan),
            (&design, &plan),
            &asked,
        ),
    };
    Ok(Done::said(text))
}

/// How a tool is made.
pub(super) fn of_tool(
    (tool, answers): (&Tool, &ToolAnswers),
    wanted: &arguments::Plan,
    places: &Places,
) -> Outcome {
    let asked = heats::asked(wanted.sources.as_deref(), places)?;
    let plan = tool_planned(tool, answers, &wanted.made)?;
    let answer = Answer::new(&plan);
    if let (Some(asked), Some(folder)) = (&asked, &wanted.drawings) {
        heats::draw_into(folder, (tool, &plan), asked)?;
    }
    let list = || List::of(&Called::tool(tool), &answers.balance, &plan);
    let text = match (asked, wanted.json) {
        (None, true) => json(&answer)?,
        (None, false) => list(),
        (Some(asked), true) => heats::keyed(&answer, (tool, &plan), &asked)?,
        (Some(asked), false) => heats::listed(list(), (tool, &plan), &asked),
    };
    Ok(Done::said(text))
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
    let procedure = match made.procedure.as_deref() {
        None => making::usual_for_tool(tool),
        Some(word) => Procedure::named(word).ok_or_else(|| {
            let all = Procedure::OF_TOOLS.map(Procedure::word).join(", ");
            format!("--procedure: \"{word}\" is no procedure: give one of {all}")
        })?,
    };
    Ok(making::plan_tool(
        tool,
        &answers.model,
        &answers.balance,
        procedure,
    ))
}

/// What a list is of.
pub(super) struct Called<'a> {
    name: &'a str,
    bar: &'a Bar,
    units: Units,
    is_tool: bool,
}

impl<'a> Called<'a> {
    fn pair(pair: &'a Document) -> Self {
        Self {
            name: &pair.name,
            bar: &pair.bar,
            units: pair.units,
            is_tool: false,
        }
    }

    fn tool(tool: &'a Tool) -> Self {
        Self {
            name: &tool.name,
            bar: &tool.bar,
            units: tool.units,
            is_tool: true,
        }
    }
}

/// One stage of a design's plan as a drawing.
pub(super) fn stage(design: &Document, wanted: &arguments::Drawing) -> Result<Drawing, String> {
    let model = resolve(design);
    let balance = balance_of(design, &model);
    let plan = planned(design, (&model, &balance), &wanted.made)?;
    let last = plan.stages.len() - 1;
    if wanted.stage > last {
        return Err(format!(
            "--stage: there is no stage {}: give one from 0, the bar, to {last}",
            wanted.stage
        ));
    }
    Ok(draw::stage(
        &model,
        &plan,
        wanted.stage,
        design.units.show(),
    ))
}

/// The plan as it is asked for.
pub(super) fn planned(
    design: &Document,
    (model, balance): (&Model, &Balance),
    made: &arguments::Made,
) -> Result<Plan, String> {
    let procedure = match made.procedure.as_deref() {
        None => making::usual(design, model),
        Some(word) => Procedure::named(word).ok_or_else(|| {
            let all = Procedure::ALL.map(Procedure::word).join(", ");
            format!("--procedure: \"{word}\" is no procedure: give one of {all}")
        })?,
    };
    let changes = changes(made)?;
    Ok(making::plan_with(
        design,
        (model, balance),
        procedure,
        &changes,
    ))
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

#[derive(Serialize)]
struct Answer<'a> {
    procedure: &'static str,
    procedures: Vec<SuitsAnswer>,
    marks: Vec<MarkAnswer>,
    operations: Vec<OperationAnswer>,
    /// What of the changes that were asked for the steel does not allow.
    refused: Vec<String>,
    findings: Vec<FindingAnswer<'a>>,
    totals: Totals,
}

#[derive(Serialize)]
struct SuitsAnswer {
    procedure: &'static str,
    suits: bool,
    #[serde(skip_serializing_if = "Option::is_none")]
    why_not: Option<String>,
}

#[derive(Serialize)]
struct MarkAnswer {
    what: String,
    at_mm: f64,
    measured_mm: f64,
    from_right_mm: f64,
    face: &'static str,
    tool: &'static str,
}

#[derive(Serialize)]
struct OperationAnswer {
    operation: &'static str,
    #[serde(skip_serializing_if = "str::is_empty")]
    half: &'static str,
    what: String,
    brief: String,
    /// Two while a blank for both halves is worked at both its ends.
    ends: u32,
    part: &'static str,
    place: &'static str,
    length_before_mm: f64,
    length_after_mm: f64,
    /// Two where a blank is cut apart: the list goes on with one.
    pieces_after: u32,
    part_length_before_mm: f64,
    part_length_after_mm: f64,
    elongation: f64,
    volume_before_mm3: f64,
    volume_after_mm3: f64,
    lost_mm3: f64,
    lost: Vec<LostAnswer>,
    /// Nothing for cold work.
    hot_from_mm: Option<f64>,
    hot_to_mm: Option<f64>,
    /// The same steel afterwards.
    hot_after_from_mm: Option<f64>,
    hot_after_to_mm: Option<f64>,
    enters_circle_mm: f64,
    turn: &'static str,
    blows: &'static str,
    struck_from_mm: f64,
    struck_to_mm: f64,
    /// The place that lies on the anvil's edge, where a shoulder is set down on it.
    edge_at_mm: Option<f64>,
    /// The side that lies on the anvil then.
    edge_under: Option<&'static str>,
    calipers: Vec<CaliperAnswer>,
    held_at_mm: f64,
    check: String,
    cautions: Vec<&'static str>,
}

#[derive(Serialize)]
struct CaliperAnswer {
    at_mm: f64,
    depth_mm: f64,
    width_mm: f64,
}

#[derive(Serialize)]
struct LostAnswer {
    what: &'static str,
    volume_mm3: f64,
}

#[derive(Serialize)]
struct Totals {
    operations: usize,
    repeats: u32,
    bar_volume_mm3: f64,
    half_volume_mm3: f64,
    lost_mm3: f64,
}

impl<'a> Answer<'a> {
    fn new(plan: &'a Plan) -> Self {
        let operations: Vec<&Operation> = plan.operations().collect();
        Self {
            procedure: plan.procedure.word(),
            procedures: plan.suits.iter().map(SuitsAnswer::new).collect(),
            marks: plan.marks.iter().map(MarkAnswer::new).collect(),
            refused: plan.refused.iter().map(ToString::to_string).collect(),
            findings: plan.findings.iter().map(FindingAnswer::new).collect(),
            totals: Totals {
                operations: operations.len(),
                repeats: plan.repeats,
                bar_volume_mm3: operations.first().map_or(0.0, |own| own.before.volume_mm3),
                half_volume_mm3: operations.last().map_or(0.0, |own| own.after.volume_mm3),
                lost_mm3: operations.iter().map(|own| own.lost_mm3()).sum(),
            },
            operations: operations.into_iter().map(OperationAnswer::new).collect(),
        }
    }
}

impl SuitsAnswer {
    fn new(own: &making::Suits) -> Self {
        Self {
            procedure: own.procedure.word(),
            suits: own.why_not.is_none(),
            why_not: own.why_not.clone(),
        }
    }
}

impl MarkAnswer {
    fn new(mark: &making::SetOff) -> Self {
        Self {
            what: mark.what.clone(),
            at_mm: mark.at_mm,
            measured_mm: mark.from_left.mm(),
            from_right_mm: mark.from_right.mm(),
            face: mark.face.name(),
            tool: mark.tool.name(),
        }
    }
}

impl CaliperAnswer {
    fn new(own: &making::Caliper) -> Self {
        Self {
            at_mm: own.at_mm,
            depth_mm: own.depth_mm,
            width_mm: own.width_mm,
        }
    }
}

impl OperationAnswer {
    fn new(own: &Operation) -> Self {
        let lost = own.lost.iter().map(|lost| LostAnswer {
            what: lost.what.name(),
            volume_mm3: lost.volume_mm3,
        });
        Self {
            operation: own.step.name(),
            half: own.half,
            what: own.what.clone(),
            brief: own.brief.clone(),
            ends: own.ends,
            part: own.part.name(),
            place: own.place.name(),
            length_before_mm: own.before.length_mm,
            length_after_mm: own.after.length_mm,
            pieces_after: own.after.pieces,
            part_length_before_mm: own.before.part_length_mm,
            part_length_after_mm: own.after.part_length_mm,
            elongation: own.elongation(),
            volume_before_mm3: own.before.volume_mm3,
            volume_after_mm3: own.after.volume_mm3,
            lost_mm3: own.lost_mm3(),
            lost: lost.collect(),
            hot_from_mm: own.hot_mm.map(|hot| hot.0),
            hot_to_mm: own.hot_mm.map(|hot| hot.1),
            enters_circle_mm: own.enters_circle_mm,
            hot_after_from_mm: own.hot_after_mm.map(|hot| hot.0),
            hot_after_to_mm: own.hot_after_mm.map(|hot| hot.1),
            turn: own.turn.name(),
            blows: own.blows.name(),
            struck_from_mm: own.struck_mm.0,
            struck_to_mm: own.struck_mm.1,
            edge_at_mm: own.edge.map(|edge| edge.at_mm),
            edge_under: own.edge.map(|edge| edge.under.name()),
            calipers: own.calipers.iter().map(CaliperAnswer::new).collect(),
            held_at_mm: own.held_at_mm,
            check: own.check.clone(),
            cautions: own.cautions.clone(),
        }
    }
}

/// The plan as a list to be read beside the anvil.
struct List {
    text: String,
    show: Show,
}

impl List {
    fn of(design: &Called<'_>, balance: &Balance, plan: &Plan) -> String {
        let show = design.units.show();
        let mut list = Self {
            text: String::new(),
            show,
        };
        list.line(format_args!("{}: {}", design.name, plan.procedure.name()));
        list.line(format_args!(
            "Bar: {}, cut {} long",
            design.bar.stock.words(),
            balance.cut_length(design.units)
        ));
        let ends = if design.is_tool {
            "from the working end and from the other"
        } else {
            "from the left end and from the right"
        };
        list.marks(plan, ends);
        for finding in &plan.findings {
            list.line(format_args!("{finding}"));
        }
        let mut half = "";
        for (at, operation) in plan.operations().enumerate() {
            if operation.half != half {
                half = operation.half;
                list.line(format_args!("\nThe {half}, whose jaw differs"));
            }
            list.operation(at + 1, operation);
        }
        if plan.repeats > 1 {
            list.line(format_args!(
                "\nThe second half: the same, not mirrored. Make it step by step beside the first."
            ));
        }
        list.others(plan);
        list.line(format_args!(""));
        let cautions = if design.is_tool {
            vec![caution::HOT, caution::EYES, caution::FIRE, caution::FIRST]
        } else {
            caution::at_the_forge(design.bar.steel)
        };
        for words in cautions {
            list.line(format_args!("{words}"));
        }
        list.text
    }

    fn line(&mut self, words: std::fmt::Arguments<'_>) {
        writeln!(self.text, "{words}").expect("a text takes what is written to it");
    }

    fn marks(&mut self, plan: &Plan, ends: &str) {
        self.line(format_args!("Marks, {ends}:"));
        for mark in &plan.marks {
            self.line(format_args!(
                "  {:>9} {:>9}  {}: {}, {}",
                mark.from_left.to_string(),
                mark.from_right.to_string(),
                mark.what,
                mark.tool.name(),
                mark.face.name()
            ));
        }
    }

    fn operation(&mut self, number: usize, own: &Operation) {
        let show = self.show;
        self.line(format_args!("\n{number:>2}. {}", own.what));
        let turn = own.turn.name();
        let after = if turn.is_empty() { "" } else { "; " };
        self.line(format_args!("    Where: {}{after}{turn}", own.place.name()));
        if let Some((from, to)) = own.hot_mm {
            self.line(format_args!(
                "    Hot: {} to {} from the tip; held {}",
                show.number(show.roughly(from)),
                show.text(show.roughly(to)),
                own.held_words(show)
            ));
        }
        if own.blows != Blows::Cut {
            self.line(format_args!(
                "    The {}: {} long, then {}",
                own.part,
                show.text(show.roughly(own.before.part_length_mm)),
                show.text(show.roughly(own.after.part_length_mm))
            ));
        }
        self.line(format_args!("    Check: {}", own.check));
        for caution in &own.cautions {
            self.line(format_args!("    Take care: {caution}"));
        }
    }

    fn others(&mut self, plan: &Plan) {
        self.line(format_args!("\nOther ways:"));
        for own in plan
            .suits
            .iter()
            .filter(|own| own.procedure != plan.procedure)
        {
            match &own.why_not {
                None => self.line(format_args!("  {} suits as well", own.procedure.name())),
                Some(why) => self.line(format_args!("  not {}: {why}", own.procedure.name())),
            }
        }
    }
}
