//! An operation as a smith is told it: what, where, which way to turn, what comes out, how to check.

use std::fmt;

use crate::finding::Part;
use crate::shape::Cross;
use crate::units::{MM_PER_INCH, Show};

use super::side::{AnvilEdge, Blows};
use super::step::{Lost, Step};
use crate::tool::forging::Forging;

/// Where on the anvil, or beside it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Place {
    /// Flat on the face.
    Face,
    /// Half-face blows over the near edge.
    NearEdge,
    /// Half-face blows over the far edge, the bar laid slantwise.
    FarEdge,
    /// Over the horn, then on the face.
    Horn,
    /// On the hardy, or with a saw.
    Hardy,
    /// Over the pritchel hole.
    Pritchel,
    /// Under a drill.
    Drill,
    /// In the vice.
    Vice,
    /// In a swage or a block, or on the work itself.
    Swage,
    /// Between fullers.
    Fuller,
    /// In the hardy hole.
    HardyHole,
    /// At the grinder, or with a file.
    Grinder,
    /// Beside the fire.
    Bench,
}

impl Place {
    /// What the smith reads.
    pub fn name(self) -> &'static str {
        match self {
            Self::Face => "on the face",
            Self::NearEdge => "near edge, half-face blows",
            Self::FarEdge => "far edge, bar slantwise at 45\u{b0}, half-face blows",
            Self::Horn => "over the horn, then on the face",
            Self::Hardy => "on the hardy, or with a saw",
            Self::Pritchel => "over the pritchel hole",
            Self::Drill => "under the drill, cold",
            Self::Vice => "in the vice",
            Self::Swage => "on a piece of the work, or in a swage",
            Self::Fuller => "between fullers",
            Self::HardyHole => "in the hardy hole",
            Self::Grinder => "at the grinder, or with a file",
            Self::Bench => "beside the fire",
        }
    }
}

/// Which way the bar is turned before the first blow.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Turning {
    /// Not at all.
    None,
    /// A quarter turn to the left.
    QuarterLeft,
    /// A quarter turn to the right.
    QuarterRight,
    /// A quarter turn there and back between blows.
    BetweenBlows,
    /// Half round.
    Half,
}

impl Turning {
    /// What the smith reads; nothing where nothing is turned.
    pub fn name(self) -> &'static str {
        match self {
            Self::None => "",
            Self::QuarterLeft => "quarter turn left",
            Self::QuarterRight => "quarter turn right",
            Self::BetweenBlows => "quarter turns to and fro",
            Self::Half => "turn over",
        }
    }
}

/// Cold steel that a bare hand is safe behind, mm (common practice, no source: 16 in and more).
pub(super) const BY_HAND_MM: f64 = 16.0 * MM_PER_INCH;

/// What the piece is held with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Grip {
    /// By hand, with so much cold steel behind, mm.
    Hand(f64),
    /// With tongs, at a section of so much depth and width, mm.
    Tongs(f64, f64),
}

/// The piece before or after an operation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measure {
    /// How many pieces it is in that are alike.
    pub pieces: u32,
    /// One of them, mm.
    pub length_mm: f64,
    /// All of them, mm³.
    pub volume_mm3: f64,
    /// What is worked, mm long.
    pub part_length_mm: f64,
    /// The section in the middle of what is worked.
    pub section: Option<Cross>,
}

/// A place along a piece and its section there, for the calipers.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Caliper {
    /// mm along the piece as it is after the operation, from its tip.
    pub at_mm: f64,
    /// Size in the side view, mm.
    pub depth_mm: f64,
    /// Size in the top view, mm.
    pub width_mm: f64,
}

/// What is done to a piece, and what it is before and after.
#[derive(Debug, Clone, PartialEq)]
pub struct Operation {
    /// Which one.
    pub step: Step,
    /// Of which half, where the two differ.
    pub half: &'static str,
    /// The part that is worked.
    pub part: Part,
    /// All parts that its lengths are of, from the tip on.
    pub parts: Vec<Part>,
    /// What to do, in one sentence.
    pub what: String,
    /// The same in a few words, to be read from the anvil.
    pub brief: String,
    /// At how many ends of the blank it is done.
    pub ends: u32,
    /// Where.
    pub place: Place,
    /// Which way to turn.
    pub turn: Turning,
    /// Before.
    pub before: Measure,
    /// After.
    pub after: Measure,
    /// What is lost, and to what.
    pub lost: Vec<Lost>,
    /// What has to be hot, from and to, mm along the piece from its tip; `None` for cold work.
    pub hot_mm: Option<(f64, f64)>,
    /// The same without the margins on either side: what cannot be worked unless it is hot.
    pub needs_hot_mm: Option<(f64, f64)>,
    /// The same steel afterwards, mm along the piece as it is then.
    pub hot_after_mm: Option<(f64, f64)>,
    /// What is struck, from and to, mm along the piece as it is afterwards, from its tip: one place
    /// for a cut, a hole or an end.
    pub struck_mm: (f64, f64),
    /// How the blows fall.
    pub blows: Blows,
    /// The edge of the anvil that it is set down on, where it is.
    pub edge: Option<AnvilEdge>,
    /// What calipers are set to, along what was worked.
    pub calipers: Vec<Caliper>,
    /// The circle that all that must enter the fire passes through, mm.
    pub enters_circle_mm: f64,
    /// What it is held with.
    pub held: Grip,
    /// Where: mm along the piece from its tip.
    pub held_at_mm: f64,
    /// How to know that it is right.
    pub check: String,
    /// What can go wrong.
    pub cautions: Vec<&'static str>,
}

impl Operation {
    /// What is lost in all, mm³.
    pub fn lost_mm3(&self) -> f64 {
        self.lost.iter().map(|lost| lost.volume_mm3).sum()
    }

    /// How much longer what is worked becomes: after over before.
    pub fn elongation(&self) -> f64 {
        self.after.part_length_mm / self.before.part_length_mm.max(f64::MIN_POSITIVE)
    }

    /// How long what is worked becomes: `the jaw: 1 3/4 in long, then 2 1/8 in`, `neck and boss stay 2 1/2 in long`.
    pub fn lengths(&self, show: Show) -> String {
        let rough = [&self.before, &self.after].map(|own| show.roughly(own.part_length_mm));
        let [from, to] = rough.map(|mm| show.text(mm));
        let (named, stay) = self.worked();
        match rough {
            [before, after] if before == after => format!("{named} {stay} {to} long"),
            // So little as was there before is not told in rough sizes.
            [before, _] if before <= 0.0 => format!("{named}: drawn to {to} long"),
            [_, _] => format!("{named}: {from} long, then {to}"),
        }
    }

    /// What is worked, and whether one or several stay: `the jaw`, `neck, boss and shoulder`.
    fn worked(&self) -> (String, &'static str) {
        match &self.parts[..] {
            [] | [_] => (format!("the {}", self.part), "stays"),
            [first @ .., last] => {
                let first: Vec<String> = first.iter().map(ToString::to_string).collect();
                (format!("{} and {last}", first.join(", ")), "stay")
            }
        }
    }

    /// Whether less of the piece stays cold beside the heat than tongs close on.
    pub fn is_held_hot(&self) -> bool {
        let cold = |(from, to): (f64, f64)| from.max(self.before.length_mm - to);
        let tongs = matches!(self.held, Grip::Tongs(..));
        tongs && self.hot_mm.is_some_and(|hot| cold(hot) < LEAST_HOLD)
    }

    /// Where it is done, and which way the piece is turned for it: `on the face; quarter turns to and fro`.
    pub fn place_words(&self) -> String {
        let (place, turn) = (self.place.name(), self.turn.name());
        match turn {
            "" => place.to_owned(),
            turn => format!("{place}; {turn}"),
        }
    }

    /// What is hot and how it is held, as the smith reads it; `None` for cold work.
    pub fn hot_words(&self, show: Show) -> Option<String> {
        let (from, to) = self.hot_mm?;
        Some(format!(
            "{} to {} from the tip; held {}",
            show.number(show.roughly(from)),
            show.text(show.roughly(to)),
            self.held_words(show)
        ))
    }

    /// How it is held, as the smith reads it.
    pub fn held_words(&self, show: Show) -> String {
        match self.held {
            Grip::Hand(spare) => {
                format!(
                    "by hand, more than {} of cold steel behind the heat",
                    show.text(show.roughly(BY_HAND_MM.min(spare)))
                )
            }
            Grip::Tongs(depth, width) => {
                let hold = if depth == width {
                    show.text(depth)
                } else {
                    format!("{} x {}", show.number(depth), show.text(width))
                };
                let hot = if self.is_held_hot() {
                    ", on hot steel as too little stays cold: keep the heat short and grip lightly"
                } else {
                    ""
                };
                format!("with tongs that hold {hold}{hot}")
            }
        }
    }
}

/// The least cold steel that tongs close on, mm (common practice, no source: an inch).
pub(super) const LEAST_HOLD: f64 = MM_PER_INCH;

impl fmt::Display for Step {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

impl Step {
    /// All that are done to a half.
    pub const ALL: [Self; 25] = [
        Self::CutBar,
        Self::Flatten,
        Self::Notch,
        Self::Twist,
        Self::SetDownJaw,
        Self::SetDownBoss,
        Self::SetDownRein,
        Self::ForgeBoss,
        Self::CutApart,
        Self::DrawStub,
        Self::Gather,
        Self::Weld,
        Self::DrawSquare,
        Self::DrawOctagon,
        Self::DrawRound,
        Self::CutTail,
        Self::TrimRein,
        Self::Grip,
        Self::FinishEnd,
        Self::RoughJaw,
        Self::TrimJaw,
        Self::MakeHole,
        Self::SetNeck,
        Self::ShapeJaw,
        Self::BendRein,
    ];

    /// The operation that a name means, whatever stands between its words.
    pub fn named(name: &str) -> Option<Self> {
        let plain = |text: &str| text.trim().to_lowercase().replace(['-', '_'], " ");
        let tools = Forging::ALL.into_iter().map(Self::Tool);
        Self::ALL
            .into_iter()
            .chain(tools)
            .find(|own| plain(own.name()) == plain(name))
    }

    /// What it is called.
    pub fn name(self) -> &'static str {
        match self {
            Self::CutBar => "cut the bar",
            Self::Flatten => "flatten the head",
            Self::Notch => "notch behind the jaw",
            Self::Twist => "twist the jaw",
            Self::SetDownJaw => "set down the jaw",
            Self::SetDownBoss => "set down the boss",
            Self::SetDownRein => "set down the rein",
            Self::ForgeBoss => "forge the boss round",
            Self::CutApart => "cut the halves apart",
            Self::DrawStub => "draw the stub",
            Self::Gather => "upset and scarf the rod",
            Self::Weld => "weld the rein on",
            Self::DrawSquare => "draw the rein square",
            Self::DrawOctagon => "hammer it eight-sided",
            Self::DrawRound => "finish its section",
            Self::CutTail => "cut off the tail",
            Self::TrimRein => "cut the rein to length",
            Self::Grip => "shape the grip",
            Self::FinishEnd => "finish the rein's end",
            Self::RoughJaw => "rough out the jaw",
            Self::TrimJaw => "trim and dress the jaw",
            Self::MakeHole => "make the hole",
            Self::SetNeck => "set neck and shoulder",
            Self::ShapeJaw => "shape the jaw",
            Self::BendRein => "bend the rein to its line",
            Self::Tool(own) => own.name(),
        }
    }

    /// Where it is done.
    pub(super) fn place(self, drilled: bool) -> Place {
        match self {
            Self::CutBar | Self::CutApart | Self::CutTail | Self::TrimRein | Self::TrimJaw => {
                Place::Hardy
            }
            Self::SetDownJaw => Place::NearEdge,
            Self::SetDownBoss | Self::SetDownRein => Place::FarEdge,
            Self::Notch => Place::Fuller,
            Self::Twist => Place::Vice,
            Self::DrawSquare | Self::DrawStub => Place::Horn,
            Self::MakeHole if drilled => Place::Drill,
            Self::MakeHole => Place::Pritchel,
            Self::ShapeJaw => Place::Swage,
            Self::BendRein => Place::Horn,
            Self::SetNeck => Place::NearEdge,
            Self::Flatten
            | Self::ForgeBoss
            | Self::Gather
            | Self::Weld
            | Self::DrawOctagon
            | Self::DrawRound
            | Self::Grip
            | Self::FinishEnd
            | Self::RoughJaw
            | Self::Tool(_) => Place::Face,
        }
    }
}
