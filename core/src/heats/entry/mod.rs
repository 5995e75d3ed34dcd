//! Does it go in: everything that must enter, at the stage's real shape, against bore or opening less
//! the smith's clearance.

mod laid;
mod room;
mod slides;

use super::stand::{End, Stand};
use super::tilt;
use crate::finding::Part;

use laid::laid;
pub use room::{Mouth, Room, clear_mm};
use slides::{circle_to, slides};

/// How a piece goes in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Entry {
    /// With which end first; of what is laid in from the side the one that is nearer.
    pub end: End,
    /// Whether it goes in with an end first or is laid in.
    pub way: WayIn,
    /// How far it is held aslant, radians in the plane in which reins are bent; `None` where it goes in
    /// straight.
    pub tilt: Option<f64>,
    /// The circle around all that enters, mm: of an entry aslant, around the stretch in the bore.
    pub circle_mm: f64,
    /// How far it can be slid in, mm of its length.
    pub slides_mm: f64,
    /// What is heated at a time, from and to, mm from the tip.
    pub heated_mm: (f64, f64),
}

/// How a piece comes into a heat.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WayIn {
    /// With an end first.
    EndFirst,
    /// From the side.
    Laid,
}

/// Why a piece does not go in, or is not heated there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum WhyNot {
    /// Something is wider than bore or opening.
    TooWide {
        /// What is.
        part: Part,
        /// Where it begins to be, mm from the tip.
        at_mm: f64,
        /// With which end it would go in.
        end: End,
        /// The circle around all that must enter, mm.
        circle_mm: f64,
        /// What there is, mm.
        clear_mm: f64,
    },
    /// What lies between the sides of an open coil is thicker than they are apart.
    TooThick {
        /// What is.
        part: Part,
        /// Where it is thickest, mm from the tip.
        at_mm: f64,
        /// How thick all that lies there is, mm.
        thick_mm: f64,
        /// What there is, mm.
        clear_mm: f64,
    },
    /// What is to be hot lies deeper than the chamber is.
    TooDeep {
        /// How deep it lies, mm.
        lies_mm: f64,
        /// How deep the chamber is, mm.
        deep_mm: f64,
    },
    /// The heat is shorter than what must be hot at once.
    TooShort {
        /// What must be hot, mm.
        needs_mm: f64,
        /// How long the heat is, mm.
        hot_mm: f64,
    },
    /// It does not become hot enough.
    TooCold {
        /// How hot it becomes, °C.
        reaches_celsius: f64,
        /// How hot it must be, °C.
        needs_celsius: f64,
    },
}

/// What an operation asks of a heat.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Need {
    /// What cannot be worked unless it is hot, from and to, mm from the tip.
    pub from_to_mm: (f64, f64),
    /// Whether it must be hot at once, or is worked a stretch at a time.
    pub at_once: AtOnce,
}

/// How an operation takes its length.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AtOnce {
    /// All of it in one heat.
    Whole,
    /// A stretch at a time.
    InTurns,
}

/// Rounding of sizes, mm.
const HAIR: f64 = 1e-6;

/// Whether and how a piece goes in, so that what an operation needs becomes hot.
///
/// # Errors
/// Why it does not.
pub fn entry(stand: &Stand, room: &Room, need: Need) -> Result<Entry, WhyNot> {
    let (from, to) = need.from_to_mm;
    let runs_on = runs_on_mm(stand, need);
    let least = to - from - 2.0 * runs_on;
    if need.at_once == AtOnce::Whole && room.hot_mm < least {
        return Err(WhyNot::TooShort {
            needs_mm: to - from,
            hot_mm: room.hot_mm,
        });
    }
    if let Mouth::Slot { high_mm, long_mm } = room.mouth {
        return laid(stand, (room, need), (high_mm, long_mm));
    }
    let tries = End::ALL.map(|end| from_end(stand, room, need, end));
    let rank = |tried: &Result<Entry, WhyNot>| match tried {
        // Straight before aslant, then the shorter way in.
        Ok(entry) => (
            0,
            f64::from(u8::from(entry.tilt.is_some())),
            in_mm(stand, entry),
        ),
        Err(
            WhyNot::TooWide { circle_mm, .. }
            | WhyNot::TooThick {
                thick_mm: circle_mm,
                ..
            },
        ) => (1, *circle_mm, 0.0),
        Err(WhyNot::TooDeep { lies_mm, .. }) => (2, *lies_mm, 0.0),
        Err(WhyNot::TooShort { .. } | WhyNot::TooCold { .. }) => (3, 0.0, 0.0),
    };
    let [tip, rein] = tries;
    let (a, b) = (rank(&tip), rank(&rein));
    if b.0 < a.0 || (b.0 == a.0 && (b.1, b.2) < (a.1, a.2)) {
        rein
    } else {
        tip
    }
}

/// How deep an entry goes, mm.
fn in_mm(stand: &Stand, entry: &Entry) -> f64 {
    let (from, to) = entry.heated_mm;
    match entry.end {
        End::Tip => to,
        End::Rein => stand.length_mm - from,
    }
}

/// Heat runs on along the bar past what is in the fire, by half the bar's thickness (judgement: in half a
/// minute it goes an inch). Of what is worked in turns a whole thickness beside a shoulder is left: it was
/// drawn when the shoulder was set down (judgement).
fn runs_on_mm(stand: &Stand, need: Need) -> f64 {
    let bulk = stand.bulk(need.from_to_mm);
    let thick = (bulk.volume_mm3 / bulk.length_mm.max(f64::MIN_POSITIVE)).sqrt();
    match need.at_once {
        AtOnce::Whole => thick / 2.0,
        AtOnce::InTurns => thick,
    }
}

fn from_end(stand: &Stand, room: &Room, need: Need, end: End) -> Result<Entry, WhyNot> {
    let runs_on = runs_on_mm(stand, need);
    let (from, to) = need.from_to_mm;
    let deep = match end {
        End::Tip => to,
        End::Rein => stand.length_mm - from,
    } - runs_on;
    if let Some(most) = room.deep_mm.filter(|most| *most < deep) {
        return Err(WhyNot::TooDeep {
            lies_mm: deep + runs_on,
            deep_mm: most,
        });
    }
    // So far it must be slid; the heat reaches a little on.
    let must = deep - room.past_mm;
    let slid = slides(stand, room.mouth, end);
    if slid.slides_mm >= must - HAIR {
        let circle = circle_to(stand, end, must);
        return Ok(made(
            stand,
            (room, need),
            (end, None),
            (circle, slid.slides_mm),
        ));
    }
    let stopped = slid
        .stopped
        .expect("a piece that nothing stops goes all the way");
    let clear = clear_mm(room.mouth);
    if let Mouth::Round { long_mm, .. } = room.mouth
        && let Some(aslant) = tilt::through(stand, end, (slid.slides_mm, must), (clear, long_mm))
    {
        let (slides, circle) = (aslant.slides_mm, aslant.circle_mm);
        return Ok(made(
            stand,
            (room, need),
            (end, Some(aslant.tilt)),
            (circle, slides),
        ));
    }
    Err(WhyNot::TooWide {
        part: stopped.part,
        at_mm: stopped.at_mm,
        end,
        circle_mm: circle_to(stand, end, must).max(stopped.bore_mm[end as usize]),
        clear_mm: clear,
    })
}

fn made(
    stand: &Stand,
    (room, need): (&Room, Need),
    (end, tilt): (End, Option<f64>),
    (circle_mm, slides_mm): (f64, f64),
) -> Entry {
    Entry {
        end,
        way: WayIn::EndFirst,
        tilt,
        circle_mm,
        slides_mm,
        heated_mm: heated(stand, room, need, (end, slides_mm)),
    }
}

/// What a heat covers: the middle of what is needed, or the far end of what is worked in turns, as far as
/// the piece can be slid and no farther than it is long.
fn heated(stand: &Stand, room: &Room, need: Need, (end, slides): (End, f64)) -> (f64, f64) {
    let (from, to) = need.from_to_mm;
    let length = stand.length_mm;
    // Told from the end that goes in.
    let (near, far) = match end {
        End::Tip => (from, to),
        End::Rein => (length - to, length - from),
    };
    let most = (slides + room.past_mm).min(room.deep_mm.unwrap_or(f64::INFINITY));
    let hot = room.hot_mm;
    let wanted = match need.at_once {
        AtOnce::Whole if room.deep_mm.is_some() => far,
        AtOnce::Whole => f64::midpoint(near, far) + hot / 2.0,
        AtOnce::InTurns => far,
    };
    let ends = wanted.min(most).min(length + room.past_mm);
    let (a, b) = ((ends - hot).max(0.0), ends.min(length));
    match end {
        End::Tip => (a, b),
        End::Rein => (length - b, length - a),
    }
}
