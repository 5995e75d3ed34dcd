//! The sets that take all rectangles together, a page each.

use std::collections::HashSet;

use super::sets::{Sets, ones};

/// Looks for sets that take all rectangles. Each page is filled with the first rectangle that is
/// left and with those after it that it takes, its next neighbours first; what is left over then
/// must come on the pages that are left.
pub(super) struct Cover<'a> {
    sets: &'a mut Sets,
    /// What cannot be laid on so many pages.
    dead: HashSet<(u32, usize)>,
    looks: usize,
    most_looks: usize,
    chosen: Vec<u32>,
}

/// A page that is being filled.
#[derive(Debug, Clone, Copy)]
struct Filling {
    /// What it takes.
    on: u32,
    /// What comes on the other pages.
    off: u32,
    /// What is not decided.
    open: u32,
    /// How many other pages there are.
    others: usize,
}

impl<'a> Cover<'a> {
    /// Looks at so many sets at the most.
    pub(super) fn new(sets: &'a mut Sets, most_looks: usize) -> Self {
        Self {
            sets,
            dead: HashSet::new(),
            looks: 0,
            most_looks,
            chosen: Vec::new(),
        }
    }

    /// The sets of so many pages that take all of these; `None` if none do.
    pub(super) fn of(mut self, all: u32, pages: usize) -> Option<Vec<u32>> {
        self.rest(all, pages).then_some(self.chosen)
    }

    /// Whether all of these were found not to go on so many pages, with nothing left untried.
    pub(super) fn proves_too_few(mut self, all: u32, pages: usize) -> bool {
        !self.rest(all, pages) && self.looks <= self.most_looks && !self.sets.gave_up()
    }

    /// What is left on so many pages.
    fn rest(&mut self, rest: u32, pages: usize) -> bool {
        if rest == 0 {
            return true;
        }
        if pages == 0 || self.sets.least(rest) > pages || self.dead.contains(&(rest, pages)) {
            return false;
        }
        let first = rest & rest.wrapping_neg();
        let found = self.fill(Filling {
            on: first,
            off: 0,
            open: rest ^ first,
            others: pages - 1,
        });
        if !found {
            self.dead.insert((rest, pages));
        }
        found
    }

    fn fill(&mut self, page: Filling) -> bool {
        self.looks += 1;
        let too_much = page.off != 0 && self.sets.least(page.off) > page.others;
        if too_much || self.looks > self.most_looks {
            return false;
        }
        let Some(next) = ones(page.open).next() else {
            return self.filled(page);
        };
        let open = page.open ^ next;
        let with = page.on | next;
        if self.sets.takes(with)
            && self.fill(Filling {
                on: with,
                open,
                ..page
            })
        {
            return true;
        }
        let off = page.off | next;
        self.fill(Filling { off, open, ..page })
    }

    /// A page whose rectangles are all decided. One that would take more is passed over: whatever
    /// goes with it goes with the fuller one too.
    fn filled(&mut self, page: Filling) -> bool {
        if ones(page.off).any(|one| self.sets.takes(page.on | one)) {
            return false;
        }
        self.chosen.push(page.on);
        if self.rest(page.off, page.others) {
            return true;
        }
        self.chosen.pop();
        false
    }
}
