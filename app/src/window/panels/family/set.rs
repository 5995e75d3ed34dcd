//! All that follows from a family, reckoned anew only where it changed.

use reinwright_core::asked::StockSizes;
use reinwright_core::paper::Drawing;
use reinwright_core::shop::family::{Chosen, Coverage, Family, OfSize, Rule, Size, Table};
use reinwright_core::tongs::document::Document;

use super::ahead::{AT_ONCE, Ahead, shares};
use super::seen::{OverlayKey, Seen};
use crate::jobs::watch::Progress;

/// The answers to one family.
#[derive(Debug)]
pub(super) struct Set<D: Seen = Document> {
    /// What they answer.
    family: Family<D>,
    /// Counts up with each change.
    pub(super) revision: u64,
    /// Each size.
    pub(super) answers: Vec<D::Answer>,
    /// All values.
    pub(super) table: Table,
    /// The rule of each row of the table, where it can be chosen.
    pub(super) rules: Vec<Option<(Rule, Chosen)>>,
    /// What each size is called where there is little room: by its size alone while all hold
    /// work of one shape.
    pub(super) short: Vec<String>,
    /// What the set holds.
    pub(super) coverage: Vec<Coverage>,
    /// The stock in which its gaps are counted.
    stock: StockSizes,
    overlay: Option<(OverlayKey, Drawing)>,
    strip: Option<(u32, Drawing)>,
    /// What overlay and strip cover at full size, mm.
    covers: Option<[kurbo::Rect; 2]>,
    /// The answers to what the family has become, while they are on their way.
    ahead: Option<Ahead<D>>,
}

/// What a value leads.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Leads {
    /// The size that has it.
    Size,
    /// Nothing: it follows.
    Nothing,
}

impl<D: Seen> Set<D> {
    /// The answers to a family; of many sizes there are none until they have been
    /// [followed](Self::follow).
    pub(super) fn to(family: &Family<D>) -> Self {
        let mut none = family.clone();
        none.sizes.clear();
        let mut set = Self::with(&none, Vec::new(), (0, StockSizes::default()));
        set.follow(family);
        set
    }

    fn with(
        family: &Family<D>,
        answers: Vec<D::Answer>,
        (revision, stock): (u64, StockSizes),
    ) -> Self {
        let documents: Vec<_> = answers.iter().map(|of| of.document().clone()).collect();
        let table = family.table_of(&documents);
        let rows = table.rows.iter();
        let rule = |path: &str, shown: Option<Rule>| shown.and_then(|_| family.rule(path));
        Self {
            rules: rows.map(|row| rule(&row.field.path, row.rule)).collect(),
            short: D::short(family),
            coverage: D::coverage(&answers, family.base.units(), &stock),
            stock,
            family: family.clone(),
            revision,
            answers,
            table,
            overlay: None,
            strip: None,
            covers: None,
            ahead: None,
        }
    }

    /// How far the answers are that are on their way; `None` when none are.
    pub(super) fn progress(&self) -> Option<Progress> {
        self.ahead.as_ref().map(Ahead::progress)
    }

    /// Whether a size is forged from a bar of its own.
    pub(super) fn has_own_bar(&self, at: usize) -> bool {
        self.family
            .sizes
            .get(at)
            .is_some_and(|size| size.bar.is_some())
    }

    /// Whether a path is of what leads each size.
    pub(super) fn leads(&self, path: &str) -> Leads {
        if self.family.base.leads(path) {
            Leads::Size
        } else {
            Leads::Nothing
        }
    }

    /// Whether these are the answers to this family.
    pub(super) fn answer(&self, family: &Family<D>) -> bool {
        self.family == *family
    }

    /// Reckons anew what changed: every size when base or rules did, else the sizes that are new.
    pub(super) fn follow(&mut self, family: &Family<D>) {
        if self.answer(family) {
            self.ahead = None;
            return;
        }
        let ahead = self.ahead.take().filter(|ahead| ahead.answer(family));
        let missing = self.missing(family);
        let found = match ahead {
            None if missing.len() <= AT_ONCE => reckoned(family, &missing),
            None => {
                self.ahead = Some(Ahead::start(family, &missing));
                return;
            }
            Some(mut ahead) => {
                if !ahead.poll() {
                    self.ahead = Some(ahead);
                    return;
                }
                let found = ahead.into_found().into_iter();
                found.map(|(_, answer)| answer).collect()
            }
        };
        self.take(family, missing.into_iter().zip(found));
    }

    /// The places of the sizes that are new, or that the base or the rules have changed.
    fn missing(&self, family: &Family<D>) -> Vec<usize> {
        let places = 0..family.sizes.len();
        if !self.alike_but_for_sizes(family) {
            return places.collect();
        }
        let mut left: Vec<Option<&Size<D::Measure>>> = self.family.sizes.iter().map(Some).collect();
        places
            .filter(|at| known(&mut left, (*at, &family.sizes[*at])).is_none())
            .collect()
    }

    /// Takes these answers over, and keeps those that are still true.
    fn take(
        &mut self,
        family: &Family<D>,
        found: impl Iterator<Item = (usize, Option<D::Answer>)>,
    ) {
        let kept = if self.alike_but_for_sizes(family) {
            std::mem::take(&mut self.answers)
        } else {
            Vec::new()
        };
        let mut kept: Vec<Option<D::Answer>> = kept.into_iter().map(Some).collect();
        let sizes = std::mem::take(&mut self.family.sizes);
        let mut left: Vec<Option<&Size<D::Measure>>> =
            sizes.iter().take(kept.len()).map(Some).collect();
        let mut answers: Vec<Option<D::Answer>> = family
            .sizes
            .iter()
            .enumerate()
            .map(|of| known(&mut left, of).and_then(|from| kept[from].take()))
            .collect();
        for (at, answer) in found {
            answers[at] = answer;
        }
        *self = Self::with(
            family,
            answers.into_iter().flatten().collect(),
            (self.revision + 1, std::mem::take(&mut self.stock)),
        );
    }

    fn alike_but_for_sizes(&self, family: &Family<D>) -> bool {
        let ours = &self.family;
        ours.base == family.base
            && ours.rules == family.rules
            && ours.rounding == family.rounding
            && ours.name == family.name
    }

    /// Counts the gaps in this stock from now on.
    pub(super) fn count_in(&mut self, stock: &StockSizes) {
        if self.stock != *stock {
            self.stock = stock.clone();
            self.coverage = D::coverage(&self.answers, self.family.base.units(), &self.stock);
        }
    }

    /// What overlay and strip cover at full size, mm.
    pub(super) fn covers(&mut self) -> [kurbo::Rect; 2] {
        *self.covers.get_or_insert_with(|| {
            let key = OverlayKey {
                reduced: 1,
                chosen: None,
            };
            let drawings = [
                D::overlay(&self.answers, key).unwrap_or_default(),
                D::strip(&self.answers, 1),
            ];
            drawings.map(|drawing| drawing.bounds())
        })
    }

    /// All sizes one over the other, the chosen one with a heavy line.
    pub(super) fn overlay(&mut self, key: OverlayKey) -> &Drawing {
        if self.overlay.as_ref().is_some_and(|(kept, _)| *kept != key) {
            self.overlay = None;
        }
        let (_, drawing) = self.overlay.get_or_insert_with(|| {
            let drawing = D::overlay(&self.answers, key).unwrap_or_default();
            (key, drawing)
        });
        drawing
    }

    /// All sizes under each other, at 1 to `reduced`.
    pub(super) fn strip(&mut self, reduced: u32) -> &Drawing {
        if self
            .strip
            .as_ref()
            .is_some_and(|(kept, _)| *kept != reduced)
        {
            self.strip = None;
        }
        let draw = || (reduced, D::strip(&self.answers, reduced));
        let (_, drawing) = self.strip.get_or_insert_with(draw);
        drawing
    }
}

/// Where the answers to a size are among those that nobody has taken yet: in its old place, or in
/// another one.
fn known<M: PartialEq>(
    left: &mut [Option<&Size<M>>],
    (at, size): (usize, &Size<M>),
) -> Option<usize> {
    let is_it = |of: &Option<&Size<M>>| of.is_some_and(|of| of == size);
    let from = match left.get(at) {
        Some(near) if is_it(near) => at,
        Some(_) | None => left.iter().position(is_it)?,
    };
    left[from] = None;
    Some(from)
}

/// The answers to the sizes at some places, in their order, reckoned on every core there is: a
/// change of the base asks for all of them between two frames.
fn reckoned<D: Seen>(family: &Family<D>, places: &[usize]) -> Vec<Option<D::Answer>> {
    let answer = |places: &[usize]| -> Vec<Option<D::Answer>> {
        places.iter().map(|at| family.answer(*at)).collect()
    };
    let mut shares = shares(places);
    let Some(own) = shares.next() else {
        return Vec::new();
    };
    std::thread::scope(|scope| {
        let others: Vec<_> = shares
            .map(|share| scope.spawn(move || answer(share)))
            .collect();
        let mut all = answer(own);
        for thread in others {
            all.extend(thread.join().expect("reckoning a size does not panic"));
        }
        all
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use reinwright_core::asked::{parse_bar, parse_work};
    use reinwright_core::tongs::jaw::JawKind;

    fn family(sizes: usize) -> Family {
        let work = parse_work("1/2 in flat").expect("work");
        let bar = parse_bar("3/4 in square").expect("bar");
        let design = Document::starting(JawKind::Flat, work, bar);
        let mut family = Family::from_design(&design);
        for n in 1..sizes {
            let size = format!("{} mm flat", 5.0 + 0.1 * n as f64);
            family
                .add(Size::new(parse_work(&size).expect("work")))
                .expect("room");
        }
        family
    }

    #[track_caller]
    fn as_if_new(set: &Set, family: &Family) {
        let new = Set::to(family);
        assert_eq!(set.table, new.table);
        assert_eq!(set.coverage, new.coverage);
        for (kept, new) in set.answers.iter().zip(&new.answers) {
            assert_eq!(kept.document, new.document);
            assert_eq!(kept.findings, new.findings);
        }
        assert_eq!(set.answers.len(), new.answers.len());
    }

    /// What is kept from before is what would be reckoned anew.
    #[test]
    fn answers_that_are_kept_are_right() {
        let mut family = family(25);
        let mut set = Set::to(&family);
        family.set(2, "jaw.length", "4 in").expect("a length");
        set.follow(&family);
        as_if_new(&set, &family);
        family.remove(1).expect("there");
        set.follow(&family);
        as_if_new(&set, &family);
        family.add_between(0, 1).expect("room between");
        set.follow(&family);
        as_if_new(&set, &family);
        family.set_base("rein.length", "20 in").expect("a length");
        set.follow(&family);
        as_if_new(&set, &family);
        assert_eq!(set.revision, 5);
    }

    /// Many sizes are reckoned beside the window, and come out the same; what is no longer asked
    /// for is let go.
    #[test]
    fn many_sizes_come_later_and_are_right() {
        let mut family = family(AT_ONCE + 20);
        let mut set = Set::to(&family);
        assert!(set.answers.is_empty() && set.progress().is_some());
        family.set_base("rein.length", "20 in").expect("a length");
        set.follow(&family);
        settle(&mut set, &family);
        for (at, answer) in set.answers.iter().enumerate() {
            let alone = family.answer(at).expect("there is such a size");
            assert_eq!(answer.document, alone.document);
            assert_eq!(answer.findings, alone.findings);
        }
        assert_eq!(set.answers.len(), AT_ONCE + 20);
        // A size more is one to reckon.
        family.add_between(0, 1).expect("room between");
        set.follow(&family);
        assert!(set.answer(&family));
    }

    #[track_caller]
    fn settle(set: &mut Set, family: &Family) {
        for _ in 0..6000 {
            set.follow(family);
            if set.answer(family) {
                assert!(set.progress().is_none());
                return;
            }
            std::thread::sleep(std::time::Duration::from_millis(10));
        }
        panic!("the sizes are reckoned for more than a minute");
    }
}
