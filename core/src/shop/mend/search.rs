//! One value that clears a finding: every value is moved a step to see what becomes of it, and
//! what helps is followed to the nearest value at which the finding is gone.

use std::collections::BTreeMap;

use super::grid::{self, Spot};
use super::judged::{Aim, asking, is_gone, off};
use super::tries::{Measures, Stage, Tries, Whole};
use super::{Change, Cost, Mend};
use crate::asked::{Field, Value};
use crate::finding::{Finding, Kind, Part, Severity};
use crate::tongs::document::Document;
use crate::units::Unit;

/// Fields that are followed for one finding, the most promising first.
const FOLLOWED: usize = 8;
/// So many mends are enough to choose the best from.
const ENOUGH: usize = 5;
/// A value is followed no farther than by so many times its size, or over so many steps whatever
/// its size: farther off it is another design.
const FARTHEST: f64 = 3.0;
const FARTHEST_STEPS: f64 = 8.0;

/// A design with the values that may be changed, and what was tried on it.
pub(super) struct Search<'a> {
    pub(super) base: &'a Document,
    pub(super) findings: &'a [Finding],
    fields: Vec<Field>,
    unit: Unit,
    tried: BTreeMap<Spot, Tried>,
}

/// What is known of one spot so far.
#[derive(Debug, Clone, Default)]
struct Tried {
    shape: Option<Vec<Finding>>,
    whole: Option<Whole>,
}

/// A mend under trial.
#[derive(Debug, Clone)]
pub(super) struct Taken {
    pub(super) document: Document,
    pub(super) changes: Vec<Change>,
    pub(super) whole: Whole,
    /// By how much its values change, against their size.
    pub(super) far: f64,
}

/// What came of a search.
#[derive(Debug, Default)]
pub(super) struct Singles {
    /// What clears the finding and harms nothing.
    pub(super) taken: Vec<Taken>,
    /// What clears it or comes near, and does harm or falls short.
    pub(super) near: Vec<Taken>,
}

/// A field that helps, with the way to go and how many steps it should take.
#[derive(Debug, Clone, Copy)]
struct Lead {
    field: usize,
    way: i32,
    steps: f64,
    /// How much that is against the value.
    far: f64,
}

/// What is sought.
#[derive(Debug, Clone, Copy)]
struct Hunt<'h> {
    aim: Aim<'h>,
    /// The finding that is followed until it is gone.
    kind: (Kind, Part),
    /// Where in the chain it shows.
    stage: Stage,
}

/// A finding that is followed until it is gone, and where in the chain it shows.
#[derive(Debug, Clone, Copy)]
struct Trail {
    kind: (Kind, Part),
    stage: Stage,
}

impl Hunt<'_> {
    fn trail(&self) -> Trail {
        Trail {
            kind: self.kind,
            stage: self.stage,
        }
    }
}

/// A walk along a field, one way, with the last of its places.
#[derive(Debug, Clone, Copy)]
struct Run {
    field: usize,
    way: i32,
    last: i32,
}

/// Where following a field has led.
enum Reached {
    /// To a mend.
    Met(Taken),
    /// To what clears the finding and does harm, or comes near.
    Near(Taken),
}

impl<'a> Search<'a> {
    pub(super) fn new(base: &'a Document, findings: &'a [Finding]) -> Self {
        Self {
            fields: grid::fields(base),
            unit: base.units.unit(),
            base,
            findings,
            tried: BTreeMap::new(),
        }
    }

    /// The same without the fields that `keep` refuses.
    pub(super) fn keeping(mut self, keep: impl Fn(&Field) -> bool) -> Self {
        self.fields.retain(keep);
        self
    }

    /// Moves every value a step and asks the whole chain, if a finding shows only there: what it
    /// says serves all findings.
    pub(super) fn look_around(&mut self, tries: &mut Tries) {
        let Some(shape) = tries.shape(self.base) else {
            return;
        };
        let shows_late = |finding: &Finding| is_gone((finding.kind, finding.part), &shape);
        if !asking(self.findings).any(shows_late) {
            return;
        }
        for field in self.with_steps() {
            for place in [1, -1] {
                let at = Spot { field, place };
                if self.seen(at, Stage::Whole, tries).is_some() {
                    break;
                }
            }
        }
    }

    /// Every value that clears `meant` as `aim` asks, as far as it was found.
    pub(super) fn singles(&mut self, aim: &Aim<'_>, meant: &Finding, tries: &mut Tries) -> Singles {
        let mut found = Singles::default();
        if let Some(hunt) = self.hunt(*aim, (meant.kind, meant.part), tries) {
            self.all(&hunt, (&mut found, tries));
        }
        found
    }

    fn all(&mut self, hunt: &Hunt<'_>, (found, tries): (&mut Singles, &mut Tries)) {
        let mut leads = self.leads(hunt, tries);
        leads.sort_by(|a, b| {
            let worth = |lead: &Lead| lead.far * self.apart(lead.field, hunt.kind.1);
            worth(a).total_cmp(&worth(b))
        });
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
    fn hunt<'h>(&self, aim: Aim<'h>, kind: (Kind, Part), tries: &mut Tries) -> Option<Hunt<'h>> {
        let shape = tries.shape(self.base)?;
        let stage = if is_gone(kind, &shape) {
            Stage::Whole
        } else {
            Stage::Shape
        };
        Some(Hunt { aim, kind, stage })
    }

    /// A value of another part is the second choice.
    fn apart(&self, field: usize, part: Part) -> f64 {
        apart(self.fields[field].part, part)
    }

    /// The design at a spot; `None` where the field has no such place.
    fn changed(&self, at: Spot) -> Option<(Document, Value)> {
        let field = &self.fields[at.field];
        let value = grid::value_at(field, at.place, self.unit)?;
        let mut document = self.base.clone();
        document.put(&field.path, value);
        Some((document, value))
    }

    /// What is noticed at a spot, as far as a stage sees; `None` where the field has no such
    /// place, or the share is spent.
    fn seen(&mut self, at: Spot, stage: Stage, tries: &mut Tries) -> Option<&[Finding]> {
        let known = self
            .tried
            .get(&at)
            .is_some_and(|tried| tried.seen(stage).is_some());
        if !known {
            let (document, _) = self.changed(at)?;
            let mut tried = self.tried.remove(&at).unwrap_or_default();
            match stage {
                Stage::Shape => tried.shape = Some(tries.shape(&document)?),
                Stage::Whole => tried.whole = Some(tries.whole(&document)?),
            }
            self.tried.insert(at, tried);
        }
        self.tried.get(&at)?.seen(stage)
    }

    /// Whether a place is as is asked for: the shape is looked at first, since it is cheap.
    fn meets(&mut self, at: Spot, hunt: &Hunt<'_>, tries: &mut Tries) -> Option<bool> {
        let shape = self.seen(at, Stage::Shape, tries)?;
        let late = hunt.stage == Stage::Whole;
        if hunt.aim.harm(shape).is_some() || !(late || is_gone(hunt.kind, shape)) {
            return Some(false);
        }
        let whole = self.seen(at, Stage::Whole, tries)?;
        Some(hunt.aim.is_met(whole))
    }

    /// The fields that have steps.
    fn with_steps(&self) -> Vec<usize> {
        let has_steps = |at: &usize| !matches!(self.fields[*at].value, Value::Choice { .. });
        (0..self.fields.len()).filter(has_steps).collect()
    }

    /// The fields that bring a finding nearer to being gone, as far as one step tells.
    fn leads(&mut self, hunt: &Hunt<'_>, tries: &mut Tries) -> Vec<Lead> {
        let mut leads = Vec::new();
        for field in self.with_steps() {
            for place in [1, -1] {
                let at = Spot { field, place };
                let Some(seen) = self.seen(at, hunt.stage, tries) else {
                    continue;
                };
                let after = off(hunt.kind, seen);
                leads.extend(self.lead(at, hunt.kind, after));
                break;
            }
        }
        leads
    }

    /// What one step to either side says of a field.
    fn lead(&self, at: Spot, kind: (Kind, Part), after: Option<f64>) -> Option<Lead> {
        /// A figure that moves less than this part of what it is off does not follow the value.
        const STILL: f64 = 1e-4;
        let (before, after) = (off(kind, self.findings)?, after?);
        let field = &self.fields[at.field];
        let value = grid::value_at(field, at.place, self.unit)?;
        // The first step is a short one where the value was typed between two.
        let moved = grid::steps_to(field, value, self.unit);
        let rate = (before - after) / moved;
        if rate.abs() <= STILL * before {
            return None;
        }
        let way = if rate > 0.0 { at.place } else { -at.place };
        let steps = (before / rate.abs()).ceil().max(1.0);
        let far = self.far(at.field, steps);
        let reach = far <= FARTHEST || steps <= FARTHEST_STEPS;
        reach.then_some(Lead {
            field: at.field,
            way,
            steps,
            far,
        })
    }

    /// So many steps against the value as it stands.
    fn far(&self, field: usize, steps: f64) -> f64 {
        /// A value near nothing is not measured by itself, steps.
        const LEAST: f64 = 4.0;
        let field = &self.fields[field];
        let step = grid::step(field, self.unit).unwrap_or(1.0);
        let size = field.value.number().map_or(LEAST, |now| now / step);
        steps / size.abs().max(LEAST)
    }

    /// The last place to which a field is followed.
    fn last(&self, lead: Lead) -> i32 {
        let far = FARTHEST / self.far(lead.field, 1.0);
        whole(far.max(FARTHEST_STEPS))
    }

    /// Follows a field to the nearest place that is as is asked for.
    fn follow(&mut self, lead: Lead, hunt: &Hunt<'_>, tries: &mut Tries) -> Option<Reached> {
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
        (trail, tries): (Trail, &mut Tries),
    ) -> Result<(i32, i32), i32> {
        /// Guesses before it is given up.
        const GUESSES: u32 = 6;
        let (mut short, mut next) = (begun, first.clamp(begun.0 + 1, run.last.max(begun.0 + 1)));
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
            if short.0 >= run.last {
                break;
            }
            next = guess.min(run.last);
        }
        Err(if short.1 < begun.1 { short.0 } else { 0 })
    }

    /// The nearest place between where a finding is there and where it is gone that is as is asked
    /// for; where it does harm, the harm is followed until it is gone too.
    fn settle(
        &mut self,
        run: &Run,
        between: (i32, i32),
        (hunt, tries): (&Hunt<'_>, &mut Tries),
    ) -> Option<Reached> {
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
    fn settled(
        &mut self,
        run: &Run,
        mut place: i32,
        (hunt, tries): (&Hunt<'_>, &mut Tries),
    ) -> Option<Reached> {
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
    fn edge(&mut self, run: &Run, between: (i32, i32), (trail, tries): (Trail, &mut Tries)) -> i32 {
        let before = tries.settles();
        let nearest = self.nearest(run, between, |search, at| {
            Some(is_gone(trail.kind, search.seen(at, trail.stage, tries)?))
        });
        tries.settled(before);
        nearest
    }

    fn near(&mut self, at: Spot, tries: &mut Tries) -> Option<Reached> {
        self.whole_at(at, tries).map(Reached::Near)
    }

    /// The nearest place that holds, between one that does not and one that does.
    fn nearest(
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

    /// Keeps what was reached.
    fn take(&self, (field, reached): (usize, Option<Reached>), found: &mut Singles) {
        let path = &self.fields[field].path;
        let known = |taken: &Taken| taken.changes[0].path == *path;
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
        (found, tries): (&mut Singles, &mut Tries),
    ) {
        let Some(hunt) = self.hunt(*aim, (meant.kind, meant.part), tries) else {
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

    /// A spot with all answers.
    fn whole_at(&mut self, at: Spot, tries: &mut Tries) -> Option<Taken> {
        self.seen(at, Stage::Whole, tries)?;
        let whole = self.tried.get(&at)?.whole.clone()?;
        let (document, to) = self.changed(at)?;
        let field = &self.fields[at.field];
        /// Another way of a choice counts as so much of a change (judgement).
        const OTHER_WAY: f64 = 0.25;
        let far = match to {
            Value::Choice { .. } => OTHER_WAY,
            Value::Length(_) | Value::Angle(_) | Value::Percent(_) | Value::Count(_) => {
                self.far(at.field, grid::steps_to(field, to, self.unit))
            }
        };
        Some(Taken {
            changes: vec![Change::of(field, to)],
            document,
            whole,
            far,
        })
    }

    /// The other ways of the choices of a finding's own part.
    fn choices(&mut self, hunt: &Hunt<'_>, (found, tries): (&mut Singles, &mut Tries)) {
        for field in 0..self.fields.len() {
            let (its, part) = (&self.fields[field], hunt.kind.1);
            if its.part != part && !(its.part == Part::Work && is_jaw(part)) {
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
    fn leap(&mut self, hunt: &Hunt<'_>, (found, tries): (&mut Singles, &mut Tries)) {
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

impl Tried {
    /// What is noticed as far as a stage sees; the whole chain sees the shape too.
    fn seen(&self, stage: Stage) -> Option<&[Finding]> {
        let whole = self.whole.as_ref().map(|whole| whole.findings.as_slice());
        match stage {
            Stage::Shape => self.shape.as_deref().or(whole),
            Stage::Whole => whole,
        }
    }
}

impl Run {
    fn at(&self, steps: i32) -> Spot {
        Spot {
            field: self.field,
            place: self.way * steps,
        }
    }
}

fn is_jaw(part: Part) -> bool {
    matches!(part, Part::Jaw | Part::SecondJaw)
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

/// How much farther off a value of another part counts (judgement).
fn apart(part: Part, meant: Part) -> f64 {
    const OTHER_PART: f64 = 1.6;
    if part == meant { 1.0 } else { OTHER_PART }
}

impl Change {
    pub(super) fn of(field: &Field, to: Value) -> Self {
        Self {
            path: field.path.clone(),
            part: field.part,
            name: field.full_name(),
            from: field.value,
            to,
        }
    }
}

impl Taken {
    pub(super) fn mend(&self, before: &Measures) -> Mend {
        let after = &self.whole.measures;
        Mend {
            changes: self.changes.clone(),
            cost: Cost {
                adds_bar_mm: after.bar_mm - before.bar_mm,
                adds_mass_kg: after.mass_kg - before.mass_kg,
                adds_hand_gap_mm: after.hand_gap_mm - before.hand_gap_mm,
            },
        }
    }

    /// What speaks against it, to set the best first: how far its values go and whether they are
    /// of the part itself, bar, hand gap, Notes that it brings; that it clears others too speaks
    /// for it. The weights are judgement.
    pub(super) fn worth(&self, meant: &Finding, before: (&[Finding], &Measures)) -> f64 {
        const BAR: f64 = 2.0;
        const GAP: f64 = 0.5;
        /// Between the reins of a usual pair, mm (common practice, no source).
        const USUAL_GAP: f64 = 25.4;
        const NOTE: f64 = 0.2;
        const CLEARS_ANOTHER: f64 = 0.7;
        let (findings, measures) = before;
        let other = self
            .changes
            .iter()
            .map(|change| apart(change.part, meant.part));
        let cost = self.mend(measures).cost;
        let bar = (cost.adds_bar_mm / measures.bar_mm).max(0.0);
        let gap = cost.adds_hand_gap_mm.abs() / USUAL_GAP;
        let notes = |all: &[Finding]| {
            let all = all.iter();
            all.filter(|finding| finding.severity == Severity::Note)
                .count()
        };
        let more = notes(&self.whole.findings).saturating_sub(notes(findings));
        let cleared = asking(findings).count() - asking(&self.whole.findings).count();
        let against = self.far * other.fold(1.0, f64::max)
            + BAR * bar
            + GAP * gap
            + NOTE * f64::from(u32::try_from(more).unwrap_or(u32::MAX));
        let others = i32::try_from(cleared.saturating_sub(1)).unwrap_or(0);
        against * CLEARS_ANOTHER.powi(others)
    }
}
