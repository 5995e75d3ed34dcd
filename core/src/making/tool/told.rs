//! How an operation on a tool is told, and in which sizes.

use super::Task;
use super::state::from;
use super::work::Work;
use crate::tool::forging::Form;
use crate::tool::{Cut, Run, formed};

/// What is done, how it is checked, what can go wrong.
pub(super) struct Words {
    pub(super) what: String,
    pub(super) brief: String,
    pub(super) check: String,
    pub(super) cautions: Vec<&'static str>,
}

pub(super) fn tell(what: String, brief: String, check: String, cautions: &[&'static str]) -> Words {
    Words {
        what,
        brief,
        check,
        cautions: cautions.into(),
    }
}

/// What an operation has made of the working end, in the smith's sizes.
pub(super) struct Worked {
    /// How long it is now.
    pub(super) long: String,
    /// Its end, and its root.
    pub(super) tip: String,
    pub(super) root: String,
    /// How the finished end is checked.
    pub(super) gauge: String,
}

impl Worked {
    pub(super) fn of(task: &Task<'_>, work: &Work, span: Option<(f64, f64)>) -> Self {
        let show = task.show();
        let long = span.map_or(0.0, |(from, to)| to - from);
        let runs = made(task, work);
        let tip = runs
            .iter()
            .map(|run| run.from)
            .find(|cut| cut.small() > 0.0);
        let root = runs.last().map(|run| run.to);
        let by = |cut: Option<Cut>| cut.map_or(String::new(), |cut| sizes(task, cut));
        Self {
            long: show.text(show.roughly(long)),
            tip: by(tip),
            root: by(root),
            gauge: task.tool.shape.style.gauge().to_owned(),
        }
    }
}

/// The runs that an operation works, as it leaves them.
pub(super) fn made(task: &Task<'_>, work: &Work) -> Vec<Run> {
    let all = task.places();
    let its = all.filter(|(place, _)| work.makes.iter().any(|own| own.0 == *place));
    its.map(|(place, run)| formed(run, work.form(place).unwrap_or(Form::Done), from(task)))
        .collect()
}

/// `3/4 in round`, `3/4 x 1 in`.
pub(super) fn sizes(task: &Task<'_>, cut: Cut) -> String {
    let show = task.show();
    if cut.depth == cut.width {
        show.text(cut.depth)
    } else {
        format!("{} x {}", show.number(cut.depth), show.text(cut.width))
    }
}
