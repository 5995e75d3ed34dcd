//! The drawings of a set as files.

use std::ops::ControlFlow;

use reinwright_core::paper::{Drawing, ink};
use reinwright_core::shop::family::{Family, OfSize, sheet};

use super::Wanted;
use super::in_set::InSet;
use crate::jobs::watch::{Progress, Watch};

/// The set's drawings as named SVG files: each size at full size, the whole set at full size too, one
/// unit to the millimetre, its table and what else is told of it. `None` when the
/// watch stopped it.
pub fn svgs<D: InSet>(
    family: &Family<D>,
    answers: &[D::Answer],
    wanted: &Wanted,
    watch: Watch<'_>,
) -> Option<Vec<(String, String)>> {
    let total = answers.len() + 1;
    let named = |name: &str, drawing: &Drawing| {
        (
            format!("{name}.svg"),
            ink::svg(drawing, &format!("{}, {name}", family.name)),
        )
    };
    let mut files = vec![
        named("all-table", &sheet::table(family, answers)),
        named("all-unchanged", &sheet::same_in_all(family, answers)),
    ];
    let pictures = D::set_pictures((family, answers), wanted);
    files.extend(pictures.iter().map(|(name, picture)| named(name, picture)));
    let step = |done: usize, watch: &mut dyn FnMut(Progress) -> ControlFlow<()>| {
        watch(Progress { done, total }).is_continue().then_some(())
    };
    step(1, watch)?;
    for (done, (answer, name)) in (2..).zip(answers.iter().zip(file_names(answers))) {
        let pictures = D::pictures(answer).into_iter();
        files.extend(pictures.map(|(what, own)| named(&format!("{name}-{what}"), &own)));
        step(done, watch)?;
    }
    Some(files)
}

/// A name for each size's files, none twice: its label in letters, digits and hyphens behind its
/// place, so that a folder lists them in order.
pub fn file_names<A: OfSize>(answers: &[A]) -> Vec<String> {
    let width = answers.len().to_string().len();
    let name =
        |(place, answer): (usize, &A)| format!("{:0width$}-{}", place + 1, slug(answer.label()));
    answers.iter().enumerate().map(name).collect()
}

/// Small letters, digits and single hyphens; 40 signs at most.
pub fn slug(name: &str) -> String {
    let plain = name.to_lowercase();
    let words = plain.split(|c: char| !c.is_ascii_alphanumeric());
    let joined = words
        .filter(|word| !word.is_empty())
        .collect::<Vec<_>>()
        .join("-");
    let short: String = joined.chars().take(40).collect();
    if short.is_empty() {
        "family".to_owned()
    } else {
        short
    }
}
