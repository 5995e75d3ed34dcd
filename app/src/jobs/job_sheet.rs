//! The job sheet of a design, and the drawing of each of its stages.

use reinwright_core::draw::{self, Finished, Job, JobHeats, Made};
use reinwright_core::finding::Finding;
use reinwright_core::forge::balance::Balance;
use reinwright_core::heats::{HeatPlan, Prepared, Sources, heat_plan};
use reinwright_core::making::Plan;
use reinwright_core::paper::ink::{self, Date, DocInfo};
use reinwright_core::paper::{Page, Paper};
use reinwright_core::shop::{Answers, ToolAnswers};
use reinwright_core::steel::Steel;
use reinwright_core::tongs::document::Document;
use reinwright_core::tool::Tool;
use reinwright_core::units::Show;

/// The pages of a design's job sheet as PDF, with source and heats at each operation where the shop's are
/// known.
pub fn pdf(
    design: &Document,
    known: (&Answers, &Plan),
    shop: Option<&Sources>,
    paper: Paper,
    day: Option<Date>,
) -> Vec<u8> {
    bound(&design.name, &pages(design, known, shop, paper), day)
}

/// The same pages before they are a file.
pub fn pages(
    design: &Document,
    (answers, plan): (&Answers, &Plan),
    shop: Option<&Sources>,
    paper: Paper,
) -> Vec<Page> {
    let made = Made::Pair {
        document: design,
        model: &answers.model,
        rivet: answers.strength.rivet_length,
    };
    let known = (&answers.balance, answers.findings.as_slice());
    laid((made, design.bar.steel), known, (plan, shop), paper)
}

/// The pages of a tool's job sheet as PDF.
pub fn tool_pdf(
    tool: &Tool,
    known: (&ToolAnswers, &Plan),
    shop: Option<&Sources>,
    paper: Paper,
    day: Option<Date>,
) -> Vec<u8> {
    bound(&tool.name, &tool_pages(tool, known, shop, paper), day)
}

/// The same pages before they are a file.
pub fn tool_pages(
    tool: &Tool,
    (answers, plan): (&ToolAnswers, &Plan),
    shop: Option<&Sources>,
    paper: Paper,
) -> Vec<Page> {
    let made = Made::Tool {
        document: tool,
        model: &answers.model,
    };
    let known = (&answers.balance, answers.findings.as_slice());
    laid((made, tool.bar.steel), known, (plan, shop), paper)
}

/// Pages of a job sheet, or of several one behind the other, as PDF.
pub fn bound(called: &str, pages: &[Page], day: Option<Date>) -> Vec<u8> {
    let info = DocInfo {
        title: format!("{called}, job sheet"),
        date: day,
    };
    ink::pdf(pages, &info)
}

fn laid(
    (made, steel): (Made<'_>, Steel),
    (balance, findings): (&Balance, &[Finding]),
    (plan, shop): (&Plan, Option<&Sources>),
    paper: Paper,
) -> Vec<Page> {
    let heats = shop.map(|shop| heated(steel, plan, shop));
    let job = Job {
        made,
        balance,
        plan,
        findings,
        heats: heats
            .as_ref()
            .map(|(prepared, plan)| JobHeats { prepared, plan }),
    };
    draw::job_sheet(&job, paper)
}

/// A plan's heats in the sources of a shop.
fn heated(steel: Steel, plan: &Plan, shop: &Sources) -> (Prepared, HeatPlan) {
    let prepared = Prepared::new(steel, plan, shop);
    let heats = heat_plan(&prepared);
    (prepared, heats)
}

/// A file name for each stage, in order, with its drawing as SVG.
pub fn stages(design: &Document, answers: &Answers, plan: &Plan) -> Vec<(String, String)> {
    drawn(
        &design.name,
        (&answers.model).into(),
        plan,
        design.units.show(),
    )
}

/// The same of a tool.
pub fn tool_stages(tool: &Tool, answers: &ToolAnswers, plan: &Plan) -> Vec<(String, String)> {
    drawn(&tool.name, (&answers.model).into(), plan, tool.units.show())
}

fn drawn(called: &str, finished: Finished<'_>, plan: &Plan, show: Show) -> Vec<(String, String)> {
    let one = |at: usize| {
        let stage = &plan.stages[at];
        let name = stage
            .operation
            .as_ref()
            .map_or("bar", |own| own.step.name());
        let drawing = draw::stage(finished, plan, at, show);
        let file = format!("{at:02} {name}.svg").replace([' ', '\''], "-");
        (file, ink::svg(&drawing, &format!("{called}: {name}")))
    };
    (0..plan.stages.len()).map(one).collect()
}
