//! The problem in whole numbers, so that nothing that is proven hangs on rounding.

/// Whole numbers in a millimetre: nanometres, in which 1/64 in is whole too.
const TO_MM: f64 = 1e6;

/// A length in nanometres.
#[allow(
    clippy::cast_possible_truncation,
    reason = "lengths end at 1e9 mm, which is 1e15 nm"
)]
pub(crate) fn whole(mm: f64) -> i64 {
    (mm * TO_MM).round() as i64
}

/// Bars that are alike.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Kind {
    /// What the pieces may take with their cuts: behind the last piece no cut is needed where the
    /// bar ends, so that a bar has room for one kerf more than it is long.
    pub(crate) room: i64,
    /// How many there are; `None` for as many as are wanted.
    pub(crate) most: Option<u32>,
    /// What one is reckoned at.
    pub(crate) cost: i64,
}

/// Pieces and bars.
#[derive(Debug, Clone)]
pub(crate) struct Problem {
    /// What a piece takes with its cut, the longest first, each size once.
    pub(crate) sizes: Vec<i64>,
    /// How many of each.
    pub(crate) counts: Vec<u32>,
    /// The bars; at least one kind has as many as are wanted and room for every piece.
    pub(crate) kinds: Vec<Kind>,
    /// A cut.
    pub(crate) kerf: i64,
    /// The shortest end that is worth keeping.
    pub(crate) least: i64,
}

/// A bar with what is cut from it: how many of each size.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Filled {
    pub(crate) kind: usize,
    pub(crate) pattern: Vec<u32>,
}

/// How good a plan is, the least first: what its bars are reckoned at, what is lost of them, what
/// is cut of bars, and how much shorter than anything its longest offcut is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Rank {
    pub(crate) cost: i64,
    pub(crate) lost: i64,
    pub(crate) used: i64,
    pub(crate) longest: std::cmp::Reverse<i64>,
}

/// A plan with its rank.
#[derive(Debug, Clone)]
pub(crate) struct Plan {
    pub(crate) bars: Vec<Filled>,
    pub(crate) rank: Rank,
}

impl Problem {
    /// What the pieces take.
    pub(crate) fn taken(&self, pattern: &[u32]) -> i64 {
        let each = self.sizes.iter().zip(pattern);
        each.map(|(size, count)| size * i64::from(*count)).sum()
    }

    /// What is left of room so large that it is worth keeping, once it is cut off; else nothing.
    pub(crate) fn useful(&self, left: i64) -> i64 {
        let offcut = left - self.kerf;
        if offcut > 0 && offcut >= self.least {
            offcut
        } else {
            0
        }
    }

    /// The offcut of a bar that is worth keeping.
    fn offcut(&self, bar: &Filled) -> i64 {
        self.useful(self.kinds[bar.kind].room - self.taken(&bar.pattern))
    }

    pub(crate) fn plan(&self, bars: Vec<Filled>) -> Plan {
        let rank = self.rank(&bars);
        Plan { bars, rank }
    }

    fn rank(&self, bars: &[Filled]) -> Rank {
        let used: i64 = bars.iter().map(|bar| self.kinds[bar.kind].room).sum();
        let kept: i64 = bars.iter().map(|bar| self.offcut(bar)).sum();
        let longest = bars.iter().map(|bar| self.offcut(bar)).max();
        Rank {
            cost: bars.iter().map(|bar| self.kinds[bar.kind].cost).sum(),
            lost: used - kept,
            used,
            longest: std::cmp::Reverse(longest.unwrap_or(0)),
        }
    }

    /// How many pieces there are.
    pub(crate) fn pieces(&self) -> u64 {
        self.counts.iter().map(|count| u64::from(*count)).sum()
    }

    /// How many bars of each kind there are to begin with.
    pub(crate) fn stock(&self) -> Vec<Option<u32>> {
        self.kinds.iter().map(|kind| kind.most).collect()
    }

    /// How many more of a size go into what is left, of so many.
    pub(crate) fn fit(&self, size: usize, left: i64, wanted: u32) -> u32 {
        let room = u32::try_from(left / self.sizes[size]).unwrap_or(u32::MAX);
        room.min(wanted)
    }
}

/// Takes one bar of a kind from the stock.
pub(crate) fn take(stock: &mut [Option<u32>], kind: usize) {
    if let Some(left) = &mut stock[kind] {
        *left -= 1;
    }
}

/// Whether there is one.
pub(crate) fn there_is(stock: &[Option<u32>], kind: usize) -> bool {
    stock[kind] != Some(0)
}
