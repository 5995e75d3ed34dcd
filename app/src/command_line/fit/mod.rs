//! Whether the pair fits and lasts, for people and for scripts.

mod answer;

use std::fmt::Write;

use reinwright_core::proof::fit::Fit;
use reinwright_core::proof::strength::{Figure, Strength};
use reinwright_core::shop::Answers;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::Verdict;
use reinwright_core::tongs::model::Model;
use reinwright_core::units::Show;
use serde::Serialize;

use super::arguments::Loaded;
use super::{Done, Outcome, design, json};
use crate::jobs::words;

use answer::Answer;

pub(super) fn run(wanted: &Loaded) -> Outcome {
    let load = wanted.load()?;
    let design = design(&wanted.asked.file)?;
    let known = Answers::under(&design, &load);
    let (fit, strength) = (&known.fit, &known.strength);
    let text = if wanted.asked.json {
        json(&Answer::new(&design, &known.model, fit, strength))?
    } else {
        told(&design, fit, strength)
    };
    Ok(Done::said(text))
}

/// The answer to one design, for a script.
pub(super) fn answered<'a>(
    design: &'a Document,
    model: &'a Model,
    fit: &'a Fit,
    strength: &'a Strength,
) -> impl Serialize + use<'a> {
    Answer::new(design, model, fit, strength)
}

/// The figures as the smith reads them, in the document's units.
pub(super) fn told(design: &Document, fit: &Fit, strength: &Strength) -> String {
    let show = design.units.show();
    let mut text = String::new();
    let mut line = |words: String| text.push_str(&(words + "\n"));
    line(design.name.clone());
    held(fit, show).into_iter().for_each(&mut line);
    line(format!(
        "Opens to {:.1} degrees between the halves, {} over the reins",
        fit.opening.to_degrees(),
        show.text(fit.open_span_mm)
    ));
    // There are no forces on work that is not reached.
    let is_reached = fit.nominal.is_ok();
    if is_reached {
        line(words::pressed(&strength.press, show));
        line(format!("Leverage {:.1} to 1", fit.leverage()));
    }
    line(format!(
        "{}, balance point {}",
        show.mass(fit.mass_kg),
        words::balance_point(fit.balance_point_mm, show)
    ));
    if is_reached {
        squeezed(strength, show).into_iter().for_each(&mut line);
    }
    line(words::rivet(&strength.rivet_length, show));
    line(words::CAUTION.to_owned());
    text
}

/// The nominal work and the range around it.
fn held(fit: &Fit, show: Show) -> Vec<String> {
    let nominal = match &fit.nominal {
        Ok(contact) => format!(
            "On its work: {}; hand gap {}, {} over the reins",
            words::bears(contact, show),
            show.text(contact.hand_gap_mm),
            show.text(contact.hand_span_mm)
        ),
        Err(why) => format!("On its work: {why}"),
    };
    let range = match &fit.range {
        Ok(range) => format!(
            "{} {} ({}) to {} ({})",
            reaches(fit.judged.verdict),
            show.text(range.least.size_mm),
            range.least.limit.name(),
            show.text(range.most.size_mm),
            range.most.limit.name()
        ),
        Err(why) => format!("Holds nothing: {why}"),
    };
    vec![
        nominal,
        format!("Verdict: {}", fit.judged.sentence(show)),
        range,
    ]
}

/// What is unsafe is reached and not held.
fn reaches(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Unsafe => "Reaches",
        Verdict::Well | Verdict::WithAWord | Verdict::Badly | Verdict::Cannot => "Holds",
    }
}

fn squeezed(strength: &Strength, show: Show) -> Vec<String> {
    let names = words::SQUEEZES.into_iter().zip(&strength.squeezes);
    let squeeze = |(name, squeeze): (&str, &reinwright_core::proof::strength::Squeeze)| {
        let capped = if squeeze.is_capped() {
            format!(" closes the reins at {}", show.force(squeeze.hand_n))
        } else {
            String::new()
        };
        format!(
            "{name} squeeze of {}{capped}: {} on the work, holds at least {} and usually {} against \
             pulling out, peak stress {}, reins close by {}",
            show.force(squeeze.asked_n),
            show.force(squeeze.jaw_n),
            show.force(squeeze.hold_pessimistic_n),
            show.force(squeeze.hold_ordinary_n),
            show.stress(squeeze.peak_stress_mpa),
            show.text(squeeze.closes_mm)
        )
    };
    let figures = strength
        .figures
        .iter()
        .map(|figure| figure_line(figure, show));
    names.map(squeeze).chain(figures).collect()
}

/// `bending of the neck under 160 N: 125 MPa, limit 220 MPa, margin 1.76`.
fn figure_line(figure: &Figure, show: Show) -> String {
    let size = |value: f64| show.quantity(figure.quantity, value);
    let mut text = figure.what.name().to_owned();
    if figure.squeeze_n > 0.0 {
        // Writing to a string cannot fail.
        let _ = write!(text, " under {}", show.force(figure.squeeze_n));
    }
    format!(
        "{text}: {}, limit {}, margin {:.2}{}",
        size(figure.value),
        size(figure.limit),
        figure.margin(),
        if figure.holds() { "" } else { ", too little" }
    )
}
