//! What stands against a tool.

pub(crate) mod cup;
pub(crate) mod drift;
pub(crate) mod edge;
mod eye;
pub(crate) mod form;
mod hardy;
pub(crate) mod punch;
mod steel;
mod struck;

pub(super) use hardy::LEAST_SHOULDER_MM;

use super::document::Tool;
use super::mount::Mount;
use super::resolve::Model;
use super::style::MountKind;
use crate::finding::{Finding, GEOMETRY, Kind, Part, Report, sort};

/// A tool under the eyes of its checks.
pub(crate) struct Check<'a> {
    pub(crate) tool: &'a Tool,
    pub(crate) model: &'a Model,
    pub(crate) report: Report,
}

impl Check<'_> {
    fn size(&self, mm: f64) -> String {
        self.report.size(mm)
    }
}

/// All that stands against a tool, the worst first.
pub fn check(tool: &Tool, model: &Model) -> Vec<Finding> {
    let report = Report::new(tool.units.show());
    let mut check = Check {
        tool,
        model,
        report,
    };
    mount(&mut check);
    tool.shape.style.check(&mut check);
    match &tool.shape.mount {
        Mount::Struck(own) => struck::check(&mut check, own),
        Mount::Hardy(own) => hardy::check(&mut check, own),
    }
    steel::check(&mut check);
    bar(&mut check);
    let mut found = check.report.into_found();
    sort(&mut found);
    found
}

/// The style and what it stands on, as a file may tell them apart.
fn mount(check: &mut Check<'_>) {
    let kind = check.tool.style_kind();
    let (stands, words) = match check.tool.shape.mount {
        Mount::Struck(_) => (MountKind::Struck, "is struck"),
        Mount::Hardy(_) => (MountKind::Hardy, "stands in the hardy hole"),
    };
    if stands == kind.stands_on() {
        return;
    }
    let wanted = match kind.stands_on() {
        MountKind::Struck => "is struck, and has no shank for the anvil",
        MountKind::Hardy => "stands in the hardy hole, and is not struck",
    };
    let message = format!("this one {words}, and a {kind} {wanted}");
    check.report.stop(Kind::MountUnsuited, Part::Tool).say(
        message,
        "choose the style anew, which makes what it stands on",
        GEOMETRY,
    );
}

/// What of the finished tool is stouter than its bar: it must be upset.
fn bar(check: &mut Check<'_>) {
    /// A smith's eye and a bar's own tolerance are no finer.
    const FROM: f64 = 1.03;
    /// More than this is not upset by hand in a few heats (judgement).
    const BY_HAND: f64 = 2.0;
    let area = check.tool.bar.stock.area_mm2();
    let mut worst: Option<(Part, f64)> = None;
    for run in check.model.runs.iter().flatten() {
        for cut in [run.from, run.to] {
            let own = cut.area_mm2();
            if own > FROM * area && worst.is_none_or(|(_, most)| own > most) {
                worst = Some((run.part, own));
            }
        }
    }
    let Some((part, most)) = worst else {
        return;
    };
    let message = format!(
        "has {:.2} times the section of the bar: so much steel must be upset there",
        most / area
    );
    let report = &mut check.report;
    // An eye spreads as it is slotted, and is not upset.
    let found = if most > BY_HAND * area && part != Part::Eye {
        report.mend(Kind::NeedsUpsetting, part)
    } else {
        report.note(Kind::NeedsUpsetting, part)
    };
    found.held_as(crate::units::Quantity::Area, most, area).say(
        message,
        "take a larger bar, or upset it in short heats",
        GEOMETRY,
    );
}
