//! What stands against a heat plan.

use super::entry::WhyNot;
use super::plan::{HeatPlan, Heated, How};
use super::prepared::{Prepared, Row};
use super::source::SourceKind;
use super::stand::End;
use super::words::rough;
use crate::finding::{COMMON_PRACTICE, Finding, GEOMETRY, Kind, Report};
use crate::steel::thermal::THERMAL_SOURCE;
use crate::units::{Length, MM_PER_INCH, Show, Unit};

/// Less time than this is no heat: one turn and two blows, s (judgement).
const LEAST_WORKING_S: f64 = 4.0;

/// No coil gives a heat that is shorter, mm: both ends of it cool it before a blow falls (judgement).
const LEAST_HEAT_MM: f64 = MM_PER_INCH;

/// What is noticed of a heat plan, sizes as `show` has them.
pub fn noticed(prepared: &Prepared, plan: &HeatPlan, show: Show) -> Vec<Finding> {
    let mut report = Report::new(show);
    for heated in &plan.operations {
        let row = &prepared.rows[heated.row];
        match heated.how {
            How::Cold => {}
            How::Unserved => unserved(&mut report, prepared, row),
            How::Hot => hot(&mut report, prepared, (row, heated)),
        }
    }
    report.into_found()
}

fn unserved(report: &mut Report, prepared: &Prepared, row: &Row) {
    let show = report.show();
    let why = match prepared.shop.sources.is_empty() {
        true => "there is no heat source".to_owned(),
        false => nearest(prepared, row).map_or_else(
            || "every source is put away".to_owned(),
            |(source, why)| {
                format!(
                    "{}: {}",
                    prepared.shop.sources[source].name,
                    why.words(show)
                )
            },
        ),
    };
    let message = format!(
        "operation {}, {}: no heat serves; {why}",
        row.number, row.step
    );
    report.stop(Kind::NoHeatServes, row.part).say(
        message,
        would_serve(prepared, row, show),
        GEOMETRY,
    );
}

/// The source that comes nearest to serving.
fn nearest<'a>(prepared: &Prepared, row: &'a Row) -> Option<(usize, &'a WhyNot)> {
    let off = |why: &WhyNot| match *why {
        WhyNot::TooWide {
            circle_mm,
            clear_mm,
            ..
        }
        | WhyNot::TooThick {
            thick_mm: circle_mm,
            clear_mm,
            ..
        } => circle_mm - clear_mm,
        WhyNot::TooDeep { lies_mm, deep_mm } => lies_mm - deep_mm,
        WhyNot::TooShort { needs_mm, hot_mm } => needs_mm - hot_mm,
        WhyNot::TooCold { .. } => 1e3,
    };
    let offers = row.offers.iter().enumerate();
    let failed = offers.filter_map(|(source, offer)| Some((source, offer.as_ref().err()?)));
    // A coil is what a smith winds anew; a forge is what it is.
    let coil = |source: usize| prepared.shop.sources[source].coil().is_some();
    failed.min_by(|a, b| {
        let rank = |own: &(usize, &WhyNot)| (!coil(own.0), off(own.1));
        let (a, b) = (rank(a), rank(b));
        a.0.cmp(&b.0).then(a.1.total_cmp(&b.1))
    })
}

/// What would heat it: the smaller of the two ways in, with the clearance.
fn would_serve(prepared: &Prepared, row: &Row, show: Show) -> String {
    let (Some(stand), Some((from, to))) = (&row.stand, row.needs_mm) else {
        return "add a heat source".to_owned();
    };
    let bore = |end: End| {
        let inside = |at: f64| match end {
            End::Tip => at <= to,
            End::Rein => at >= from,
        };
        let own = stand.slices.iter().filter(|slice| inside(slice.at_mm));
        own.map(|slice| slice.bore_mm[end as usize])
            .fold(0.0, f64::max)
    };
    let least = bore(End::Tip).min(bore(End::Rein)) + 2.0 * prepared.shop.smith.clearance.mm();
    format!(
        "a coil with a bore of {} and a heat of {}, or a forge or fire that takes it; or do this \
         operation earlier",
        next_bore(least, show),
        show.text(rough(show, (to - from).max(LEAST_HEAT_MM)))
    )
}

/// The next bore that is wound, as it is said: whole eighths of an inch, or whole millimetres.
pub fn next_bore(least_mm: f64, show: Show) -> String {
    next_bore_length(least_mm, show.unit).to_string()
}

/// The same as a length.
pub(super) fn next_bore_length(least_mm: f64, unit: Unit) -> Length {
    const HAIR: f64 = 1e-6;
    match unit {
        Unit::Inch | Unit::Foot => {
            let eighths = (least_mm / MM_PER_INCH * 8.0 - HAIR).ceil();
            Length::from_mm(eighths / 8.0 * MM_PER_INCH, Unit::Inch)
        }
        Unit::Millimetre | Unit::Centimetre => {
            Length::from_mm((least_mm - HAIR).ceil(), Unit::Millimetre)
        }
    }
}

fn hot(report: &mut Report, prepared: &Prepared, (row, heated): (&Row, &Heated)) {
    let Some((source, offer)) = heated
        .source
        .and_then(|source| Some((source, prepared.offer(heated.row, source)?)))
    else {
        return;
    };
    let name = &prepared.shop.sources[source].name;
    let show = report.show();
    let place = |at: f64| match show.text(rough(show, at)) {
        at if at == show.text(0.0) => "at its tip".to_owned(),
        at => format!("{at} from the tip"),
    };
    let said = format!("operation {}, {}, {name}", row.number, row.step);
    let coldest = offer.uneven.coldest;
    if let Some(hottest) = heated.burns {
        let message = format!(
            "{said}: the {} burns {} when the rest is at heat, {} where {} is the most",
            hottest.part,
            place(hottest.at_mm),
            show.temperature(hottest.celsius.min(1400.0)),
            show.temperature(prepared.range.upper_celsius)
        );
        report.mend(Kind::ThinPartBurns, hottest.part).say(
            message,
            slower(&prepared.shop.sources[source].kind),
            THERMAL_SOURCE,
        );
    }
    if coldest.celsius < prepared.range.lower_celsius {
        let message = format!(
            "{said}: the {} stays behind {}, at {} where {} is the least",
            coldest.part,
            place(coldest.at_mm),
            show.temperature(coldest.celsius),
            show.temperature(prepared.range.lower_celsius)
        );
        report.note(Kind::PartStaysCold, coldest.part).say(
            message,
            "heat that place longer, or turn the piece end for end",
            THERMAL_SOURCE,
        );
    }
    if heated.working_s < LEAST_WORKING_S {
        let message = format!(
            "{said}: it can be worked for {:.0} s at a heat, hardly a blow",
            heated.working_s
        );
        report.note(Kind::HeatTooShort, row.part).say(
            message,
            "bring the anvil nearer, warm it, or do this before the steel is so thin",
            COMMON_PRACTICE,
        );
    }
}

fn slower(kind: &SourceKind) -> &'static str {
    match kind {
        SourceKind::Coil(_) => {
            "give it less power, or push the thin part through and heat the thick one first"
        }
        SourceKind::Gas(_) => {
            "turn the forge down, or let the thin part stand out of the heat until the thick one is red"
        }
        SourceKind::Solid(_) => {
            "turn the blast down and draw it from the fire sooner, or let the thin part stand out of the heat \
             until the thick one is red"
        }
    }
}
