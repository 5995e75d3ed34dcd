//! One value that clears a finding: what brings it nearer is followed, choices are tried, and where
//! one step tells nothing, larger ones.

use super::design::Design;
use super::grid::Spot;
use super::judged::{Aim, is_gone};
use super::leads::Lead;
use super::search::{Search, Tried};
use super::taken::{Taken, apart, is_advised};
use super::tries::{Stage, Tries};
use super::walk::{Hunt, Reached, Run};
use crate::asked::Value;
use crate::finding::{Finding, Part};

/// Fields that are followed for one finding, the most promising first.
const FOLLOWED: usize = 8;
/// So many mends are enough to choose the best from.
const ENOUGH: usize = 5;

/// What came of a search.
#[derive(Debug)]
pub(super) struct Singles<D> {
    /// What clears the finding and harms nothing.
    pub(super) taken: Vec<Taken<D>>,
    /// What clears it or comes near, and does harm or falls short.
    pub(super) near: Vec<Taken<D>>,
}

impl<D> Singles<D> {
    /// Nothing found as yet.
    fn nothing() -> Self {
        Self {
            taken: Vec::new(),
            near: Vec::new(),
        }
    }
}

impl<D: Design> Search<'_, D> {
    /// Every value that clears `meant` as `aim` asks, as far as it was found.
    pub(super) fn singles(
        &mut self,
        aim: &Aim<'_>,
        meant: &Finding,
        tries: &mut Tries<D>,
    ) -> Singles<D> {
        let mut found = Singles::nothing();
        if let Some(hunt) = self.hunt(*aim, meant, tries) {
            self.all(&hunt, (&mut found, tries));
        }
        found
    }

    fn all(&mut self, hunt: &Hunt<'_>, (found, tries): (&mut Singles<D>, &mut Tries<D>)) {
        let mut leads = self.leads(hunt, tries);
        leads.sort_by(|a, b| {
            let worth = |lead: &Lead| lead.far * self.apart(lead.field, hunt.kind.1);
            worth(a).total_cmp(&worth(b))
        });
        // What the finding itself advises is followed whatever it costs.
        let advised = |lead: &Lead| {
            let field = &self.fields[lead.field];
            is_advised((field.part, &field.path), hunt.kind.1, hunt.advises)
        };
        if let Some(at) = leads.iter().position(advised) {
            leads[..=at].rotate_right(1);
        }
        for lead in leads.iter().take(FOLLOWED) {
            if found.taken.len() >= ENOUGH {
                break;
            }
            let reached = self.follow(*lead, hunt, tries);
            self.take((lead.field, reached), found);
        }
        self.choices(hunt, (found, tries));
        if leads.is_empty() && found.taken.is_empty() {
            self.leap(hunt, (found, tries));
        }
    }

    /// What is sought: the stage is the one at which the finding shows.
    fn hunt<'h>(&self, aim: Aim<'h>, meant: &Finding, tries: &mut Tries<D>) -> Option<Hunt<'h>> {
        let kind = (meant.kind, meant.part);
        let shape = tries.shape(self.base)?;
        let stage = if is_gone(kind, &shape) {
            Stage::Whole
        } else {
            Stage::Shape
        };
        Some(Hunt {
            aim,
            kind,
            stage,
            advises: meant.advises,
        })
    }

    /// A value of another part is the second choice.
    fn apart(&self, field: usize, part: Part) -> f64 {
        apart(self.fields[field].part, part)
    }

    /// Keeps what was reached.
    fn take(&self, (field, reached): (usize, Option<Reached<D>>), found: &mut Singles<D>) {
        let path = &self.fields[field].path;
        let known = |taken: &Taken<D>| taken.changes[0].path == *path;
        match reached {
            Some(Reached::Met(taken)) if !found.taken.iter().any(known) => found.taken.push(taken),
            Some(Reached::Near(taken)) => found.near.push(taken),
            Some(Reached::Met(_)) | None => {}
        }
    }

    /// What was tried for another finding may serve this one too.
    pub(super) fn by_the_way(
        &mut self,
        aim: &Aim<'_>,
        meant: &Finding,
        (found, tries): (&mut Singles<D>, &mut Tries<D>),
    ) {
        let Some(hunt) = self.hunt(*aim, meant, tries) else {
            return;
        };
        let met = |(at, tried): (&Spot, &Tried)| {
            let whole = tried.whole.as_ref()?;
            let has_steps = !matches!(self.fields[at.field].value, Value::Choice { .. });
            (has_steps && hunt.aim.is_met(&whole.findings)).then_some(*at)
        };
        let all: Vec<Spot> = self.tried.iter().filter_map(met).collect();
        for at in all {
            let run = Run {
                field: at.field,
                way: at.place.signum(),
                last: at.place.abs(),
            };
            let met = self.nearest(&run, (0, run.last), |search, at| {
                search.meets(at, &hunt, tries)
            });
            let reached = self.settled(&run, met, (&hunt, tries));
            self.take((at.field, reached), found);
        }
    }

    /// The other ways of the choices of a finding's own part, and of the bar's where it may change.
    fn choices(&mut self, hunt: &Hunt<'_>, (found, tries): (&mut Singles<D>, &mut Tries<D>)) {
        for field in 0..self.fields.len() {
            let (its, part) = (&self.fields[field], hunt.kind.1);
            let of_work = its.part == Part::Work && is_jaw(part);
            if its.part != part && its.part != Part::Bar && !of_work {
                continue;
            }
            let ways = its.value.ways().len();
            for place in 0..i32::try_from(ways).unwrap_or(0) {
                let at = Spot { field, place };
                if self.meets(at, hunt, tries) == Some(true) {
                    let reached = self.whole_at(at, tries).map(Reached::Met);
                    self.take((field, reached), found);
                }
            }
        }
    }

    /// Where one step tells nothing, larger ones to either side do.
    fn leap(&mut self, hunt: &Hunt<'_>, (found, tries): (&mut Singles<D>, &mut Tries<D>)) {
        const LEAPS: [i32; 4] = [1, 3, 9, 27];
        for field in self.by_nearness(hunt.kind.1) {
            for way in [1, -1] {
                let last = LEAPS[LEAPS.len() - 1];
                let run = Run { field, way, last };
                let mut short = 0;
                for steps in LEAPS {
                    let Some(seen) = self.seen(run.at(steps), hunt.stage, tries) else {
                        break;
                    };
                    if is_gone(hunt.kind, seen) {
                        let reached = self.settle(&run, (short, steps), (hunt, tries));
                        self.take((field, reached), found);
                        break;
                    }
                    short = steps;
                }
            }
            if found.taken.len() >= super::MOST_MENDS {
                return;
            }
        }
    }

    /// The fields that have steps, those of the finding's own part first.
    fn by_nearness(&self, part: Part) -> Vec<usize> {
        let mut all = self.with_steps();
        all.sort_by_key(|at| self.fields[*at].part != part);
        all
    }
}

fn is_jaw(part: Part) -> bool {
    matches!(part, Part::Jaw | Part::SecondJaw)
}
