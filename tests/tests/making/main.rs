//! From bar to tongs: the law of volume, textbooks and trade rules, sides and blows, what cannot be
//! made, the list.

mod came_out;
mod findings;
mod job_sheet;
mod laws;
mod list;
mod rules;
mod sides;
mod staged;
mod textbook;

use reinwright_core::making::{self, Operation, Plan, Procedure, Step};
use reinwright_core::shop::balance_of;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::resolve;

/// The plan of a design by a procedure.
fn planned(design: &Document, procedure: Procedure) -> Plan {
    let model = resolve(design);
    making::plan(design, &model, &balance_of(design, &model), procedure)
}

/// One operation of a plan.
#[track_caller]
fn operation(plan: &Plan, step: Step) -> &Operation {
    let own = plan.operations().find(|own| own.step == step);
    own.unwrap_or_else(|| panic!("the plan has no \"{step}\""))
}
