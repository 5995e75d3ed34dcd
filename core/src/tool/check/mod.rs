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

use std::f64::consts::FRAC_PI_4;

use super::document::Tool;
use super::mount::Mount;
use super::resolve::Model;
use super::stouter::stouter;
use super::style::MountKind;
use crate::asked::Stock;
use crate::finding::{Finding, GEOMETRY, Kind, Part, Report, sort};
use crate::forge::upsetting::MOST_UPSET;
use crate::units::{Quantity, Show};

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
        "choose the Style anew, which makes what it stands on",
        GEOMETRY,
    );
}

/// What of the finished tool is stouter than its bar: it must be upset.
fn bar(check: &mut Check<'_>) {
    let bar = check.tool.bar.stock.area_mm2();
    for own in stouter(check.tool, check.model) {
        let message = format!(
            "has {:.2} times the section of the bar: {} of bar, {:.1} diameters, must be gathered there",
            own.most_mm2 / bar,
            check.size(own.upset.length_mm),
            own.upset.ratio
        );
        let report = &mut check.report;
        let found = if own.most_mm2 > BY_HAND * bar || own.upset.ratio > MOST_UPSET {
            report.mend(Kind::NeedsUpsetting, own.part)
        } else {
            report.note(Kind::NeedsUpsetting, own.part)
        };
        let hint = larger_bar(check.tool, own.most_mm2);
        found
            .held_as(Quantity::Area, own.most_mm2, bar)
            .say(message, hint, UPSET_SOURCE);
    }
}

/// More than this over the bar's section is not upset by hand in a few heats (judgement).
const BY_HAND: f64 = 2.0;
/// Where the most that stands free is from.
const UPSET_SOURCE: &str = "geometry, and the forging association's first rule for upset forgings";

/// The bar from which nothing would have to be upset, as the parts list calls its size.
fn larger_bar(tool: &Tool, area_mm2: f64) -> String {
    let stock = &tool.bar.stock;
    let (name, mm) = match *stock {
        Stock::Round { .. } => ("Diameter", (area_mm2 / FRAC_PI_4).sqrt()),
        Stock::Square { .. } => ("Side", area_mm2.sqrt()),
        Stock::Flat { width, .. } => ("Thickness", area_mm2 / width.mm()),
    };
    let size = Show::text(tool.units.show(), mm);
    format!(
        "take bar with a {name} of {size}, or upset it in short heats, never more than three diameters free"
    )
}
