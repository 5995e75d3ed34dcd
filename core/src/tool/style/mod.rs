//! Styles of tools. Each lives in a file of its own and is named once in the list below; file,
//! fields, steel, checks and stages follow from the [`Style`] trait.

mod bending_fork;
mod bottom_fuller;
mod bottom_swage;
mod centre_punch;
mod cold_chisel;
mod cut_off;
mod drift;
mod hot_chisel;
mod rivet_set;
mod round_punch;
mod slot_punch;
mod square_punch;

pub use bending_fork::BendingFork;
pub use bottom_fuller::BottomFuller;
pub use bottom_swage::{BottomSwage, Groove};
pub use centre_punch::CentrePunch;
pub use cold_chisel::{ColdChisel, EdgeLine};
pub use cut_off::CutOff;
pub use drift::{Drift, DriftSection};
pub use hot_chisel::HotChisel;
pub use rivet_set::RivetSet;
pub use round_punch::RoundPunch;
pub use slot_punch::SlotPunch;
pub use square_punch::SquarePunch;

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};
use thiserror::Error;

use super::check::Check;
use super::forging::{Forging, Worked};
use super::mount::{Hardy, Hold, Mount, Struck};
use super::solid::{Cut, Run};
use crate::asked::{Bar, Fields, Follows, PlainSection, fields};
use crate::shape::Opening;
use crate::steel::Steel;
use crate::units::Length;

/// What a style stands on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MountKind {
    /// Bar that is struck.
    Struck,
    /// A block with a shank for the hardy hole.
    Hardy,
}

/// What a tool meets, which decides its steel and how it ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Use {
    /// It goes into hot work and is struck.
    Hot,
    /// It cuts cold work.
    ColdEdge,
    /// It presses hot work, and keeps no edge.
    HotForm,
    /// It cuts hot work, and is never hardened.
    HotEdge,
}

/// What makes a style, beside its own values.
pub(crate) trait Style: Fields {
    /// The trade's name, in lower case; the command line knows it with hyphens for spaces.
    const NAME: &'static str;
    /// What it is for, in one sentence without a period.
    const ABOUT: &'static str;
    /// What it stands on.
    const MOUNT: MountKind;
    /// What it meets.
    const USE: Use;
    /// The path of the length by which a set of them is told apart.
    const LEADING: &'static str;

    /// The style of a size, in proportion to its bar. For a hardy tool the size is the hardy hole.
    fn suited(size: Length, bar: &Bar) -> Self;

    /// The usual size for a bar, mm.
    fn usual_mm(bar: &Bar) -> f64 {
        0.45 * bar.stock.size().mm()
    }

    /// Length of the whole struck tool, and how it is held, in proportion to the bar.
    fn struck(_size: Length, _bar: &Bar) -> (f64, Hold) {
        (200.0, Hold::Hand)
    }

    /// The body of a struck tool where it is not the bar itself.
    fn body(_size: Length) -> Option<PlainSection> {
        None
    }

    /// Its steel from the end that works to what it stands on.
    fn working(&self, base: Cut) -> Vec<Run>;

    /// What is sunk into it, with its working end at so many mm.
    fn opening(&self, _tip_mm: f64, _base: Cut) -> Option<Opening> {
        None
    }

    /// What cannot be made as it was asked, or will disappoint.
    fn check(&self, check: &mut Check<'_>);

    /// How the working end is forged, in order; what would change nothing of the bar is left out.
    fn forged(&self) -> Vec<Worked>;

    /// How it is dressed once it is cold.
    fn dressed() -> Forging {
        Forging::Dress
    }

    /// The included angle that is ground on it cold, degrees, where one is.
    fn ground_degrees(&self) -> Option<f64> {
        None
    }

    /// How the finished working end is checked.
    fn gauge(&self) -> &'static str;
}

/// The path of the hardy hole.
const HOLE: &str = "shank.hole";

/// No tool has a name.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("no tool is called \"{asked}\": choose one of {}", hyphened())]
pub struct NoStyle {
    /// What was asked for.
    pub asked: String,
}

fn hyphened() -> String {
    let names = ToolKind::NAMES.iter().map(|name| name.replace(' ', "-"));
    names.collect::<Vec<_>>().join(", ")
}

/// Lists the styles: one line here and a file of its own is all that a new style needs.
macro_rules! styles {
    ($($style:ident),+ $(,)?) => {
        /// Which tool.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum ToolKind {
            $(#[doc = "One of the listed styles."] $style),+
        }

        impl ToolKind {
            /// All styles, in order.
            pub const ALL: &'static [Self] = &[$(Self::$style),+];
            pub(super) const NAMES: &'static [&'static str] = &[$($style::NAME),+];

            /// The trade's name, in lower case.
            pub fn name(self) -> &'static str {
                match self { $(Self::$style => $style::NAME),+ }
            }

            /// What it is for, in one sentence without a period.
            pub fn about(self) -> &'static str {
                match self { $(Self::$style => $style::ABOUT),+ }
            }

            /// What it stands on.
            pub fn stands_on(self) -> MountKind {
                match self { $(Self::$style => $style::MOUNT),+ }
            }

            /// What it meets.
            pub fn used(self) -> Use {
                match self { $(Self::$style => $style::USE),+ }
            }

            /// The path of the length by which a set of them is told apart.
            pub fn leading(self) -> &'static str {
                match self { $(Self::$style => $style::LEADING),+ }
            }

            /// Its name in a file, in lower case.
            pub(crate) fn key(self) -> String {
                match self { $(Self::$style => stringify!($style)),+ }.to_lowercase()
            }

            /// The usual size for a bar.
            pub fn usual_size(self, bar: &Bar) -> Length {
                let mm = match self { $(Self::$style => $style::usual_mm(bar)),+ };
                Length::measured(mm, bar.stock.size().unit())
            }

            pub(super) fn suited(self, size: Length, bar: &Bar) -> ToolStyle {
                match self { $(Self::$style => ToolStyle::$style($style::suited(size, bar))),+ }
            }

            /// How it is dressed once it is cold.
            pub fn dressed(self) -> Forging {
                match self { $(Self::$style => $style::dressed()),+ }
            }

            fn struck(self, size: Length, bar: &Bar) -> (f64, Hold) {
                match self { $(Self::$style => $style::struck(size, bar)),+ }
            }

            fn body(self, size: Length) -> Option<PlainSection> {
                match self { $(Self::$style => $style::body(size)),+ }
            }
        }

        /// A style with its sizes.
        #[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
        #[serde(deny_unknown_fields)]
        pub enum ToolStyle {
            $(#[doc = "One of the listed styles."] $style($style)),+
        }

        impl ToolStyle {
            /// Which style it is.
            pub fn kind(&self) -> ToolKind {
                match self { $(Self::$style(_) => ToolKind::$style),+ }
            }

            pub(crate) fn working(&self, base: Cut) -> Vec<Run> {
                match self { $(Self::$style(style) => style.working(base)),+ }
            }

            pub(crate) fn opening(&self, tip_mm: f64, base: Cut) -> Option<Opening> {
                match self { $(Self::$style(style) => style.opening(tip_mm, base)),+ }
            }

            pub(super) fn check(&self, check: &mut Check<'_>) {
                match self { $(Self::$style(style) => style.check(check)),+ }
            }

            /// How the working end is forged, in order.
            pub fn forged(&self) -> Vec<Worked> {
                match self { $(Self::$style(style) => style.forged()),+ }
            }

            /// The included angle that is ground on it cold, degrees, where one is.
            pub fn ground_degrees(&self) -> Option<f64> {
                match self { $(Self::$style(style) => style.ground_degrees()),+ }
            }

            /// How the finished working end is checked.
            pub fn gauge(&self) -> &'static str {
                match self { $(Self::$style(style) => style.gauge()),+ }
            }
        }

        fields! { ToolStyle: |it, v| {
            match it { $(Self::$style(style) => v.all(style)),+ }
        }}
    };
}

styles!(
    RoundPunch,
    SlotPunch,
    SquarePunch,
    CentrePunch,
    Drift,
    HotChisel,
    ColdChisel,
    RivetSet,
    CutOff,
    BottomFuller,
    BottomSwage,
    BendingFork,
);

impl ToolKind {
    /// The steel that a tool of it is begun with (common practice, no source).
    pub fn usual_steel(self) -> Steel {
        match self.used() {
            Use::Hot => Steel::ToolH13,
            Use::ColdEdge => Steel::ToolW1,
            Use::HotForm | Use::HotEdge => Steel::Carbon1045,
        }
    }

    /// What the body of a struck tool grows with: a body of its own with the size, else it is the bar.
    pub(super) fn body_follows(self) -> Follows {
        match self.body(Length::ZERO) {
            Some(_) => Follows::Work,
            None => Follows::Bar,
        }
    }

    /// What the shank of a hardy tool grows with: with the hole, where the set is for several.
    pub(super) fn shank_follows(self) -> Follows {
        if self.leading() == HOLE {
            Follows::Work
        } else {
            Follows::Nothing
        }
    }

    /// Whether the size that one is begun with is what leads a set of them.
    pub fn begins_by_leading(self) -> bool {
        !self.is_hardy() || self.leading() == HOLE
    }

    /// Whether it stands in the hardy hole.
    pub fn is_hardy(self) -> bool {
        self.stands_on() == MountKind::Hardy
    }

    /// What it stands on, in proportion to its size and bar.
    pub(super) fn mount(self, size: Length, bar: &Bar) -> Mount {
        match self.stands_on() {
            MountKind::Struck => {
                let (length, hold) = self.struck(size, bar);
                let struck = Struck::suited(length, bar, hold);
                Mount::Struck(match self.body(size) {
                    None => struck,
                    Some(body) => struck.of(body),
                })
            }
            MountKind::Hardy => Mount::Hardy(Hardy::suited(size, bar)),
        }
    }
}

impl fmt::Display for ToolKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

impl FromStr for ToolKind {
    type Err = NoStyle;

    /// The style with a name; hyphens and spaces are the same.
    fn from_str(text: &str) -> Result<Self, NoStyle> {
        let plain = |name: &str| name.trim().to_lowercase().replace('-', " ");
        let mut all = Self::ALL.iter().copied();
        let found = all.find(|kind| plain(kind.name()) == plain(text));
        found.ok_or_else(|| NoStyle {
            asked: crate::units::quoted(text, 40),
        })
    }
}
