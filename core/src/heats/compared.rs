//! Procedures compared by their heats.

use super::plan::heat_plan;
use super::prepared::Prepared;
use super::source::Sources;
use super::words::{listed, spoken};
use crate::forge::balance::Balance;
use crate::making::{self, Procedure};
use crate::tongs::document::Document;
use crate::tongs::model::Model;

/// A procedure with what its heats come to.
#[derive(Debug, Clone, PartialEq)]
pub struct Compared {
    /// The procedure.
    pub procedure: Procedure,
    /// Heats of the pair.
    pub heats: u32,
    /// How often a source is made ready.
    pub changes: u32,
    /// All time, s.
    pub time_s: f64,
    /// Operations that no source serves.
    pub unserved: u32,
    /// Operations at which thin steel burns.
    pub burnt: u32,
}

/// Every procedure that suits a design, with its best heat plan: those that can be heated first, of them those that
/// burn the least, of them the quickest.
pub fn compare(
    document: &Document,
    (model, balance): (&Model, &Balance),
    shop: &Sources,
) -> Vec<Compared> {
    let suits = making::suits(document, model).into_iter();
    let suits = suits.filter(|own| own.why_not.is_none());
    let mut all: Vec<Compared> = suits
        .map(|own| {
            let plan = making::plan(document, model, balance, own.procedure);
            let prepared = Prepared::new(document.bar.steel, &plan, shop);
            let totals = heat_plan(&prepared).totals;
            Compared {
                procedure: own.procedure,
                heats: totals.heats,
                changes: totals.changes,
                time_s: totals.time_s,
                unserved: totals.unserved,
                burnt: totals.burnt,
            }
        })
        .collect();
    all.sort_by(|a, b| {
        (a.unserved, a.burnt)
            .cmp(&(b.unserved, b.burnt))
            .then(a.time_s.total_cmp(&b.time_s))
    });
    all
}

impl Compared {
    /// Against another procedure, in a sentence without a period.
    pub fn against(&self, other: &Self) -> String {
        if other.unserved > self.unserved {
            return other.cannot_be_done();
        }
        let count = |own: u32, other: u32, (one, many): (&str, &str)| {
            let words = match own.abs_diff(other) {
                0 => return None,
                1 => format!("a {one}"),
                off => format!("{off} {many}"),
            };
            Some((own < other, words))
        };
        /// Less than this is the same, s.
        const SAME_S: f64 = 30.0;
        let off = self.time_s - other.time_s;
        let time = (off.abs() >= SAME_S).then(|| (off < 0.0, spoken(off.abs())));
        let parts = [
            count(self.burnt, other.burnt, ("burnt heat", "burnt heats")),
            count(self.changes, other.changes, ("change", "changes")),
            count(self.heats, other.heats, ("heat", "heats")),
            time,
        ];
        let of = |saved: bool| {
            let own = parts.iter().flatten().filter(|own| own.0 == saved);
            listed(&own.map(|own| own.1.clone()).collect::<Vec<_>>())
        };
        let said = match (of(true), of(false)) {
            (saved, costs) if saved.is_empty() && costs.is_empty() => "the same".to_owned(),
            (saved, costs) if costs.is_empty() => format!("saves {saved}"),
            (saved, costs) if saved.is_empty() => format!("costs {costs}"),
            (saved, costs) => format!("saves {saved} and costs {costs}"),
        };
        format!(
            "{} before {}: {said}",
            self.procedure.name(),
            other.procedure.name()
        )
    }

    /// That no source serves all of it.
    fn cannot_be_done(&self) -> String {
        let operations = match self.unserved {
            1 => "one of its operations".to_owned(),
            count => format!("{count} of its operations"),
        };
        format!(
            "{}: no heat of the shop serves {operations}",
            self.procedure.name()
        )
    }
}
