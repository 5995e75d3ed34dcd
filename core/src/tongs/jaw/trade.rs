//! What the trade says of holding work in a style.

use crate::asked::{BoltHeld, simple_choice};

/// How the smith wants to hold the work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Way {
    /// By its end, standing out in front of the tongs.
    #[default]
    EndOn,
    /// Along the tongs but beside them, so that it can run on past the boss.
    Beside,
    /// Across the jaws.
    Across,
    /// By the shank of a bolt or other headed piece behind its head, the head between the jaws.
    ByHead,
    /// By the eye of a hammer or another tool.
    ByEye,
}

simple_choice!(Way {
    EndOn => "end on",
    Beside => "beside",
    Across => "across",
    ByHead => "behind its head",
    ByEye => "by its eye",
});

impl Way {
    /// All ways, in the order in which they are asked for.
    pub const ALL: [Self; 5] = [
        Self::EndOn,
        Self::Beside,
        Self::Across,
        Self::ByHead,
        Self::ByEye,
    ];

    /// The way with a name, "by its" and "behind its" or not; hyphens and spaces are the same.
    pub fn named(name: &str) -> Option<Self> {
        let plain = |name: &str| {
            let words = name.trim().to_lowercase().replace('-', " ");
            let words = words.trim_start_matches("behind ");
            let words = words.trim_start_matches("by ");
            words.trim_start_matches("its ").to_owned()
        };
        let asked = plain(name);
        Self::ALL.into_iter().find(|way| plain(way.name()) == asked)
    }

    /// The way in which a bolt is held by one of its parts.
    pub fn of_bolt(held: BoltHeld) -> Self {
        match held {
            BoltHeld::ByHead | BoltHeld::ByShank => Self::EndOn,
            BoltHeld::BehindHead => Self::ByHead,
        }
    }

    /// What it means, in a sentence without a period.
    pub fn about(self) -> &'static str {
        match self {
            Self::EndOn => "By one end, the rest standing out in front of the tongs",
            Self::Beside => "Along the tongs and beside them, running on past the boss",
            Self::Across => "Across the jaws, standing out to both sides",
            Self::ByHead => "By the shank of a bolt or rivet, its head between the jaws",
            Self::ByEye => "By the eye of a hammer or another struck tool",
        }
    }
}

/// What comes of holding some work, the best first: of a style as the trade knows it, and of a pair
/// as it is reckoned.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// Made for it, and inside the sizes that are held.
    Well,
    /// Holds it, with a word of care; another style holds it better.
    WithAWord,
    /// Is made to hold other work, or work in another way, or stands past a limit.
    Badly,
    /// Holds it so that it can roll, tip or fly out.
    Unsafe,
    /// Does not hold it at all.
    Cannot,
}

impl Verdict {
    /// All verdicts, the best first.
    pub const ALL: [Self; 5] = [
        Self::Well,
        Self::WithAWord,
        Self::Badly,
        Self::Unsafe,
        Self::Cannot,
    ];

    /// The words the smith sees, the same everywhere.
    pub fn name(self) -> &'static str {
        match self {
            Self::Well => "holds it well",
            Self::WithAWord => "holds it",
            Self::Badly => "holds it badly",
            Self::Unsafe => "unsafe",
            Self::Cannot => "cannot hold it",
        }
    }
}

/// A verdict with its reason.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Trade {
    /// What comes of it.
    pub verdict: Verdict,
    /// Why, in a sentence without a period (common practice, no source).
    pub why: &'static str,
}

impl Trade {
    /// Made for it.
    pub const fn suits(why: &'static str) -> Self {
        let verdict = Verdict::Well;
        Self { verdict, why }
    }

    /// Holds it, though another style holds it better.
    pub const fn will_do(why: &'static str) -> Self {
        let verdict = Verdict::WithAWord;
        Self { verdict, why }
    }

    /// Is made to hold work in another way.
    pub const fn not_for(why: &'static str) -> Self {
        let verdict = Verdict::Badly;
        Self { verdict, why }
    }

    /// Holds it so that it can roll, tip or fly out.
    pub const fn risky(why: &'static str) -> Self {
        let verdict = Verdict::Unsafe;
        Self { verdict, why }
    }
}

/// What is wrong with round bar between flat faces.
pub(crate) const ROLLS: &str =
    "a round bar rolls between flat faces, and under the hammer it can turn and fly out";

/// What a plain bit says of the ways it is not made for; `None` for its own ways.
pub(crate) fn plain_bit(way: Way) -> Option<Trade> {
    match way {
        Way::EndOn | Way::Across => None,
        Way::Beside => Some(Trade::not_for(
            "holds in front of the boss: work that lies beside the tongs needs a bent bit",
        )),
        Way::ByHead => Some(Trade::not_for(
            "leaves no room behind the bit for a head: that needs a bow",
        )),
        Way::ByEye => Some(Trade::not_for("has no lugs that would enter an eye")),
    }
}

impl Trade {
    /// The worse of two; of two alike the first.
    #[must_use]
    pub fn worse(self, other: Self) -> Self {
        if other.verdict > self.verdict {
            other
        } else {
            self
        }
    }

    /// The better of two; of two alike the first.
    #[must_use]
    pub fn better(self, other: Self) -> Self {
        if other.verdict < self.verdict {
            other
        } else {
            self
        }
    }
}
