//! Which styles suit some work, held in some way, and why the others do not.

use super::{JawStyle, Lay, Sketch, Style};
use crate::document::{Bar, Document, Work, simple_choice};
use crate::finding::{Finding, Severity};
use crate::fit;
use crate::model::{Lies, Model};
use crate::seat::Bears;

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
    /// By the shank of a bolt or other headed piece, the head between the jaws.
    ByHead,
    /// By the eye of a hammer or another tool.
    ByEye,
}

simple_choice!(Way {
    EndOn => "end on",
    Beside => "beside",
    Across => "across",
    ByHead => "by its head",
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

    /// The way with a name, "by its" or not; hyphens and spaces are the same.
    pub fn named(name: &str) -> Option<Self> {
        let plain = |name: &str| {
            let words = name.trim().to_lowercase().replace('-', " ");
            let words = words.trim_start_matches("by ");
            words.trim_start_matches("its ").to_owned()
        };
        let asked = plain(name);
        Self::ALL.into_iter().find(|way| plain(way.name()) == asked)
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

/// What comes of holding some work in a style.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// Made for it.
    Suits,
    /// Holds it, though another style holds it better.
    WillDo,
    /// Is made to hold work in another way.
    NotFor,
    /// Holds it so that it can roll, tip or fly out.
    Unsafe,
}

impl Verdict {
    /// The words the smith sees.
    pub fn name(self) -> &'static str {
        match self {
            Self::Suits => "suits",
            Self::WillDo => "will do",
            Self::NotFor => "not for this",
            Self::Unsafe => "unsafe",
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
        let verdict = Verdict::Suits;
        Self { verdict, why }
    }

    /// Holds it, though another style holds it better.
    pub const fn will_do(why: &'static str) -> Self {
        let verdict = Verdict::WillDo;
        Self { verdict, why }
    }

    /// Is made to hold work in another way.
    pub const fn not_for(why: &'static str) -> Self {
        let verdict = Verdict::NotFor;
        Self { verdict, why }
    }

    /// Holds it so that it can roll, tip or fly out.
    pub const fn risky(why: &'static str) -> Self {
        let verdict = Verdict::Unsafe;
        Self { verdict, why }
    }
}

/// What is advised of one style.
#[derive(Debug, Clone, PartialEq)]
pub struct Advice {
    /// The style's name.
    pub style: &'static str,
    /// What comes of it.
    pub verdict: Verdict,
    /// Why, in a sentence without a period.
    pub reason: String,
    /// The starting pair in this style, for this work and bar, laid as the style asks.
    pub pair: Document,
}

/// Every style for some work held in a way, tongs of some bar: those that suit first, the unsafe
/// ones last, otherwise in the order of the styles.
///
/// What the trade says of the style comes first; then the starting pair is resolved and fitted,
/// and what it cannot do counts against it.
pub fn choose(work: &Work, way: Way, bar: &Bar) -> Vec<Advice> {
    // A sketch is whatever the smith makes of it.
    let names = JawStyle::NAMES.iter().filter(|name| **name != Sketch::NAME);
    let mut all: Vec<Advice> = names
        .filter_map(|name| advise(name, work, way, bar))
        .collect();
    all.sort_by_key(|advice| advice.verdict);
    all
}

/// What is advised of one style; `None` if no style has the name.
pub fn advise(name: &str, work: &Work, way: Way, bar: &Bar) -> Option<Advice> {
    let work = work.laid_for(name);
    let pair = Document::starting(name, work, *bar)?;
    let model = crate::resolve(&pair);
    let trade = JawStyle::trade(name, &work, way);
    let trade = trade.unwrap_or_else(|| by_lay(pair.jaw.plain_form().lay, way));
    let worse = if trade.verdict < Verdict::NotFor {
        reckoned(&pair, &model)
    } else {
        None
    };
    let (verdict, reason) = match worse {
        Some((verdict, why)) if verdict > trade.verdict => (verdict, why),
        Some(_) | None => (trade.verdict, trade.why.to_owned()),
    };
    Some(Advice {
        style: pair.jaw.name(),
        verdict,
        reason,
        pair,
    })
}

/// A style that says nothing itself is judged by how it lays its work.
fn by_lay(lay: Lay, way: Way) -> Trade {
    match (lay, way) {
        (Lay::Endwise { .. }, Way::EndOn)
        | (Lay::Alongside, Way::Beside)
        | (Lay::Crosswise { .. }, Way::Across) => Trade::will_do("holds work this way"),
        (Lay::Endwise { .. }, Way::Beside | Way::Across | Way::ByHead | Way::ByEye) => {
            Trade::not_for("holds work by its end, in line with the tongs")
        }
        (Lay::Alongside, Way::EndOn | Way::Across | Way::ByHead | Way::ByEye) => {
            Trade::not_for("holds work that lies beside the tongs")
        }
        (Lay::Crosswise { .. }, Way::EndOn | Way::Beside | Way::ByHead | Way::ByEye) => {
            Trade::not_for("holds work across the jaws")
        }
    }
}

/// What the starting pair cannot do, if anything.
fn reckoned(pair: &Document, model: &Model) -> Option<(Verdict, String)> {
    let risk = |why: String| Some((Verdict::Unsafe, why));
    if model.jaw_gap <= 0.0 {
        let by = pair.units.show().text(-model.jaw_gap);
        return risk(format!(
            "the jaws meet before they hold: the faces would pass each other by {by}"
        ));
    }
    if let Some(why) = rolls(pair, model) {
        return risk(why.to_owned());
    }
    if let Err(no) = fit::fit(pair, model).nominal {
        return risk(no.to_string());
    }
    let of = |severity: Severity| move |finding: &&Finding| finding.severity == severity;
    if let Some(stop) = model.findings.iter().find(of(Severity::Stop)) {
        return risk(stop.message.clone());
    }
    let said = model
        .findings
        .iter()
        .find(|finding| finding.severity == Severity::Mend || finding.message.ends_with(TIPS));
    said.map(|finding| (Verdict::WillDo, finding.message.clone()))
}

/// How the finding ends that says that wide work tips.
const TIPS: &str = "it tips";

/// Why the work would roll, if it would.
fn rolls(pair: &Document, model: &Model) -> Option<&'static str> {
    let bears = |how: Bears| model.seats.iter().any(|seat| seat.bears == how);
    let along = model.work.lies != Lies::Crosswise;
    if bears(Bears::Edges) {
        Some("the work rides on the edges of the groove: it rolls and can fly out")
    } else if along && bears(Bears::Face) && matches!(pair.work, Work::Round { .. }) {
        Some(ROLLS)
    } else {
        None
    }
}

/// What is wrong with round bar between flat faces.
pub(super) const ROLLS: &str =
    "a round bar rolls between flat faces, and under the hammer it can turn and fly out";

/// What a plain bit says of the ways it is not made for; `None` for its own ways.
pub(super) fn plain_bit(way: Way) -> Option<Trade> {
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
