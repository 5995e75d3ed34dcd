//! The job sheet of a design, and the drawing of each of its stages.

use reinwright_core::draw::{self, Job, JobHeats};
use reinwright_core::heats::{Prepared, Sources, heat_plan};
use reinwright_core::making::Plan;
use reinwright_core::paper::Paper;
use reinwright_core::paper::ink::{self, Date, DocInfo};
use reinwright_core::shop::Answers;
use reinwright_core::tongs::document::Document;

/// The pages of a design's job sheet as PDF, with source and heats at each operation where the shop's are
/// known.
pub fn pdf(
    design: &Document,
    (answers, plan): (&Answers, &Plan),
    shop: Option<&Sources>,
    paper: Paper,
    day: Option<Date>,
) -> Vec<u8> {
    let heats = shop.map(|shop| {
        let prepared = Prepared::new(design.bar.steel, plan, shop);
        let heats = heat_plan(&prepared);
        (prepared, heats)
    });
    let job = Job {
        document: design,
        model: &answers.model,
        balance: &answers.balance,
        plan,
        rivet: answers.strength.rivet_length,
        findings: &answers.findings,
        heats: heats
            .as_ref()
            .map(|(prepared, plan)| JobHeats { prepared, plan }),
    };
    let info = DocInfo {
        title: format!("{}, job sheet", design.name),
        date: day,
    };
    ink::pdf(&draw::job_sheet(&job, paper), &info)
}

/// A file name for each stage, in order, with its drawing as SVG.
pub fn stages(design: &Document, answers: &Answers, plan: &Plan) -> Vec<(String, String)> {
    let one = |at: usize| {
        let stage = &plan.stages[at];
        let name = stage
            .operation
            .as_ref()
            .map_or("bar", |own| own.step.name());
        let drawing = draw::stage(&answers.model, plan, at, design.units.show());
        let file = format!("{at:02} {name}.svg").replace([' ', '\''], "-");
        (
            file,
            ink::svg(&drawing, &format!("{}: {name}", design.name)),
        )
    };
    (0..plan.stages.len()).map(one).collect()
}
