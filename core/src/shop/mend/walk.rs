//! Following one value until a finding is gone, to the nearest value at which that is so.

use super::design::Design;
use super::grid::Spot;
use super::judged::{Aim, is_gone, off};
use super::leads::{FARTHEST, FARTHEST_STEPS, Lead};
use super::search::Search;
use super::taken::Taken;
use super::tries::{Stage, Tries};
use crate::finding::{Kind, Part};

/// What is sought.
#[derive(Debug, Clone, Copy)]
pub(super) struct Hunt<'h> {
    pub(super) aim: Aim<'h>,
    /// The finding that is followed until it is gone.
    pub(super) kind: (Kind, Part),
    /// Where in the chain it shows.
    pub(super) stage: Stage,
    /// Which values of its part the finding's own hint speaks of.
    pub(super) advises: &'static [&'static str],
}

/// A finding that is followed until it is gone, and where in the chain it shows.
#[derive(Debug, Clone, Copy)]
pub(super) struct Trail {
    pub(super) kind: (Kind, Part),
    pub(super) stage: Stage,
}

impl Hunt<'_> {
    pub(super) fn trail(&self) -> Trail {
        Trail {
            kind: self.kind,
            stage: self.stage,
        }
    }
}

/// A walk along a field, one way, with the last of its places.
#[derive(Debug, Clone, Copy)]
pub(super) struct Run {
    pub(super) field: usize,
    pub(super) way: i32,
    pub(super) last: i32,
}

/// Where following a field has led.
pub(super) enum Reached<D> {
    /// To a mend.
    Met(Taken<D>),
    /// To what clears the finding and does harm, or comes near.
    Near(Taken<D>),
}

impl Run {
    pub(super) fn at(&self, steps: i32) -> Spot {
        Spot {
            field: self.field,
            place: self.way * steps,
        }
    }
}

impl<D: Design> Search<'_, D> {
    /// The last place to which a field is followed.
    fn last(&self, lead: Lead) -> i32 {
        let far = FARTHEST / self.far(lead.field, 1.0);
        whole(far.max(FARTHEST_STEPS))
    }

    /// Follows a field to the nearest place that is as is asked for.
    pub(super) fn follow(
        &mut self,
        lead: Lead,
        hunt: &Hunt<'_>,
        tries: &mut Tries<D>,
    ) -> Option<Reached<D>> {
        let run = Run {
            field: lead.field,
            way: lead.way,
            last: self.last(lead),
        };
        let begun = (0, off(hunt.kind, self.findings));
        match self.walk(&run, (begun, whole(lead.steps)), (hunt.trail(), tries)) {
            Ok(between) => self.settle(&run, between, (hunt, tries)),
            Err(0) => None,
            Err(short) => self.near(run.at(short), tries),
        }
    }

    /// Walks on until a finding is gone: the last place where it is not, and one where it is; or
    /// the place that came nearest, if that is nearer than where the walk began.
    fn walk(
        &mut self,
        run: &Run,
        (begun, first): ((i32, Option<f64>), i32),
        (trail, tries): (Trail, &mut Tries<D>),
    ) -> Result<(i32, i32), i32> {
        /// Guesses before it is given up.
        const GUESSES: u32 = 6;
        let (mut short, mut next) = (begun, first.clamp(begun.0 + 1, run.last.max(begun.0 + 1)));
        let mut best = begun;
        for _ in 0..GUESSES {
            let seen = match self.seen(run.at(next), trail.stage, tries) {
                Some(seen) => off(trail.kind, seen),
                // Past the limits: half of the way there.
                None if next > short.0 + 1 => {
                    next = i32::midpoint(short.0, next);
                    continue;
                }
                None => break,
            };
            if seen == Some(0.0) {
                return Ok((short.0, next));
            }
            let guess = onwards(short, (next, seen));
            short = (next, seen);
            if nearer(short.1, best.1) {
                best = short;
            }
            if short.0 >= run.last {
                break;
            }
            next = guess.min(run.last);
        }
        Err(if best.0 == begun.0 { 0 } else { best.0 })
    }

    /// The nearest place between where a finding is there and where it is gone that is as is asked
    /// for; where it does harm, the harm is followed until it is gone too.
    pub(super) fn settle(
        &mut self,
        run: &Run,
        between: (i32, i32),
        (hunt, tries): (&Hunt<'_>, &mut Tries<D>),
    ) -> Option<Reached<D>> {
        /// Harms that are followed, one after the other.
        const HARMS: u32 = 3;
        let gone = self.edge(run, between, (hunt.trail(), tries));
        let mut place = gone;
        for _ in 0..HARMS {
            let at = run.at(place);
            if self.meets(at, hunt, tries)? {
                return self.settled(run, place, (hunt, tries));
            }
            let Some((trail, begun)) = self.harm_at(at, hunt) else {
                break;
            };
            let Ok(on) = self.walk(run, ((place, begun), place + 1), (trail, tries)) else {
                break;
            };
            place = self.edge(run, on, (trail, tries));
        }
        if self.meets(run.at(place), hunt, tries)? {
            return self.settled(run, place, (hunt, tries));
        }
        self.near(run.at(gone), tries)
    }

    /// A place that is as is asked for, or a nearer one that is so too: harm may end before it was
    /// looked for.
    pub(super) fn settled(
        &mut self,
        run: &Run,
        mut place: i32,
        (hunt, tries): (&Hunt<'_>, &mut Tries<D>),
    ) -> Option<Reached<D>> {
        let before = tries.settles();
        while place > 1 && self.meets(run.at(place - 1), hunt, tries) == Some(true) {
            place -= 1;
        }
        let taken = self.whole_at(run.at(place), tries);
        tries.settled(before);
        taken.map(Reached::Met)
    }

    /// The first harm at a place that was looked at, with how far it is off.
    fn harm_at(&self, at: Spot, hunt: &Hunt<'_>) -> Option<(Trail, Option<f64>)> {
        let tried = self.tried.get(&at)?;
        let harm = [Stage::Shape, Stage::Whole].into_iter().find_map(|stage| {
            let seen = tried.seen(stage)?;
            let harm = hunt.aim.harm(seen)?;
            let kind = (harm.kind, harm.part);
            Some((Trail { kind, stage }, off(kind, seen)))
        })?;
        Some(harm)
    }

    /// The nearest place at which a finding is gone.
    fn edge(
        &mut self,
        run: &Run,
        between: (i32, i32),
        (trail, tries): (Trail, &mut Tries<D>),
    ) -> i32 {
        let before = tries.settles();
        let nearest = self.nearest(run, between, |search, at| {
            Some(is_gone(trail.kind, search.seen(at, trail.stage, tries)?))
        });
        tries.settled(before);
        nearest
    }

    fn near(&mut self, at: Spot, tries: &mut Tries<D>) -> Option<Reached<D>> {
        self.whole_at(at, tries).map(Reached::Near)
    }

    /// The nearest place that holds, between one that does not and one that does.
    pub(super) fn nearest(
        &mut self,
        run: &Run,
        (mut short, mut held): (i32, i32),
        mut holds: impl FnMut(&mut Self, Spot) -> Option<bool>,
    ) -> i32 {
        // A good guess is one step too far at the most.
        let mut middle = held - 1;
        while held - short > 1 {
            match holds(self, run.at(middle)) {
                Some(true) => held = middle,
                Some(false) => short = middle,
                None => break,
            }
            middle = i32::midpoint(short, held);
        }
        held
    }
}

/// Whether a figure is nearer to its limit than another; one that no number decides is the nearest.
fn nearer(this: Option<f64>, other: Option<f64>) -> bool {
    this < other
}

/// The next guess, on the line through the last two places; twice as far where that line leads
/// nowhere.
fn onwards((from, before): (i32, Option<f64>), (to, after): (i32, Option<f64>)) -> i32 {
    let twice = to.saturating_mul(2);
    let Some((before, after)) = before.zip(after).filter(|(before, after)| before > after) else {
        return twice;
    };
    let rate = (before - after) / f64::from(to - from);
    to.saturating_add(whole((after / rate).ceil()).clamp(1, to))
}

/// A whole number of steps, within what a walk along a field may take.
#[allow(
    clippy::cast_possible_truncation,
    reason = "held to a small range before"
)]
fn whole(steps: f64) -> i32 {
    const MOST: f64 = 10_000.0;
    steps.round().clamp(0.0, MOST) as i32
}
