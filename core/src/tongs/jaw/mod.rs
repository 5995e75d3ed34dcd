//! Jaw styles. Each lives in a file of its own and is named once in the list below; everything
//! else (file, window, seating, sweep, drawing) follows from the [`Style`] trait.

mod bent_bit;
mod bit_shape;
mod bolt;
mod bow;
mod box_jaw;
mod chisel_head;
mod duckbill;
mod ends;
mod flat;
mod form;
mod goose_neck;
mod hammer_eye;
mod hollow;
mod link;
mod lugs;
mod notched;
mod open_mouth;
mod pick_up;
mod pieces;
mod remark;
mod scrolling;
pub mod sketch;
mod square_mouth;
mod stout;
mod tapered;
mod trade;
mod trough;
mod v_bit;

pub use bent_bit::BentBit;
pub use bit_shape::BitShape;
pub use bolt::Bolt;
pub use box_jaw::BoxJaw;
pub use chisel_head::ChiselHead;
pub use duckbill::Duckbill;
pub use flat::Flat;
pub use form::{Course, Form, Lay};
pub use goose_neck::GooseNeck;
pub use hammer_eye::HammerEye;
pub use hollow::HollowBit;
pub use link::Link;
pub use lugs::Lugged;
pub use notched::{Notch, NotchKind, NotchPlace, Notched};
pub use open_mouth::OpenMouth;
pub use pick_up::{PickUp, PickUpPlace};
pub use remark::Remark;
pub use scrolling::Scrolling;
pub use sketch::Sketch;
pub use square_mouth::SquareMouth;
pub(crate) use trade::ROLLS;
pub use trade::{Trade, Verdict, Way};
pub use v_bit::VBit;

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};
use thiserror::Error;

use crate::asked::range::{DETAIL, RUN};
use crate::asked::{Bar, ChoiceBeside, Fields, Lie, Range, Work, fields};
use crate::shape::sweep::Edge;
use crate::units::Length;

/// What makes a jaw style, beside its own values.
pub trait Style: Fields {
    /// The trade's name, in lower case; the command line knows it with hyphens for spaces.
    const NAME: &'static str;
    /// What it is for, in one sentence without a period.
    const ABOUT: &'static str;

    /// How a many-sided bar lies in it at its best; `None` where it takes the bar either way.
    const LIE: Option<Lie> = None;

    /// The style in proportion to what it must hold and what it is made from.
    fn suited(work: &Work, bar: &Bar) -> Self;

    /// The length of grip that suits, mm.
    fn suited_length_mm(work: &Work, bar: &Bar) -> f64;

    /// Its stations from heel to tip over `length` mm. The first one is a plain rectangle, the
    /// end of the neck; `rise` counts from the line of the faces or lips.
    fn form(&self, length: f64) -> Form;

    /// How its form lays the work.
    fn lay(&self, length: f64) -> Lay {
        self.form(length).lay
    }

    /// What the trade says of holding some work in it in some way; what its starting pair can do is
    /// reckoned apart. `None` leaves all to the reckoning.
    fn trade(_work: &Work, _way: Way) -> Option<Trade> {
        None
    }

    /// The plain style that its gripping end is shaped as, where it has more to it than its grip.
    fn bit(&self) -> Option<JawKind> {
        None
    }

    /// What cannot be made as it was asked, or will disappoint, in this style.
    fn remarks(&self, _length: f64) -> Vec<Remark> {
        Vec::new()
    }

    /// The same of its sizes against the work that it is to hold.
    fn remarks_on(&self, _work: &Work) -> Vec<Remark> {
        Vec::new()
    }
}

/// No jaw style has a name.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("no jaw style is called \"{asked}\": choose one of {}", hyphened())]
pub struct NoStyle {
    /// What was asked for.
    pub asked: String,
}

/// The names as the command line writes them.
fn hyphened() -> String {
    let names = JawKind::NAMES
        .iter()
        .map(|name| name.to_lowercase().replace(' ', "-"));
    names.collect::<Vec<_>>().join(", ")
}

/// Lists the styles: one line here and a file of its own is all that a new style needs.
macro_rules! styles {
    ($($style:ident),+ $(,)?) => {
        /// Which jaw style.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum JawKind {
            $(#[doc = "One of the listed styles."] $style),+
        }

        impl JawKind {
            /// All styles, in order.
            pub const ALL: &'static [Self] = &[$(Self::$style),+];
            const NAMES: &'static [&'static str] = &[$($style::NAME),+];

            /// The trade's name, in lower case.
            pub fn name(self) -> &'static str {
                match self { $(Self::$style => $style::NAME),+ }
            }

            /// What it is for, in one sentence without a period.
            pub fn about(self) -> &'static str {
                match self { $(Self::$style => $style::ABOUT),+ }
            }

            /// How a many-sided bar lies in it at its best; `None` where it takes the bar either
            /// way.
            pub fn lie(self) -> Option<Lie> {
                match self { $(Self::$style => $style::LIE),+ }
            }

            /// What the trade says of holding some work in it in some way; `None` leaves all to
            /// the reckoning.
            pub fn trade(self, work: &Work, way: Way) -> Option<Trade> {
                let of_piece = pieces::trade(self, work, way);
                of_piece.or_else(|| match self { $(Self::$style => $style::trade(work, way)),+ })
            }

            /// The style in proportion to work and bar.
            fn suited(self, work: &Work, bar: &Bar) -> JawStyle {
                match self { $(Self::$style => JawStyle::$style($style::suited(work, bar))),+ }
            }

            /// The length of grip that suits, mm.
            fn suited_length_mm(self, work: &Work, bar: &Bar) -> f64 {
                match self { $(Self::$style => $style::suited_length_mm(work, bar)),+ }
            }
        }

        /// A jaw style with its sizes.
        #[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
        #[serde(deny_unknown_fields)]
        pub enum JawStyle {
            $(#[doc = "One of the listed styles."] $style($style)),+
        }

        impl JawStyle {
            /// Which style it is.
            pub fn kind(&self) -> JawKind {
                match self { $(Self::$style(_) => JawKind::$style),+ }
            }

            /// The plain style that its gripping end is shaped as, where it has more to it than
            /// its grip.
            pub fn bit(&self) -> Option<JawKind> {
                match self { $(Self::$style(style) => style.bit()),+ }
            }

            fn form(&self, length: f64) -> Form {
                match self { $(Self::$style(style) => style.form(length)),+ }
            }

            fn lay(&self, length: f64) -> Lay {
                match self { $(Self::$style(style) => style.lay(length)),+ }
            }

            fn remarks(&self, length: f64) -> Vec<Remark> {
                match self { $(Self::$style(style) => style.remarks(length)),+ }
            }

            fn remarks_on(&self, work: &Work) -> Vec<Remark> {
                match self { $(Self::$style(style) => style.remarks_on(work)),+ }
            }
        }

        fields! { JawStyle: |it, v| {
            match it { $(Self::$style(style) => v.all(style)),+ }
        }}
    };
}

styles!(
    Flat,
    OpenMouth,
    BoxJaw,
    VBit,
    HollowBit,
    SquareMouth,
    Bolt,
    GooseNeck,
    Duckbill,
    BentBit,
    Link,
    PickUp,
    Scrolling,
    Notched,
    HammerEye,
    ChiselHead,
    Sketch,
);

impl fmt::Display for JawKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

impl FromStr for JawKind {
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

/// A jaw: where its grip is, and its style.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Jaw {
    /// From the rivet's centre to the heel, where the jaw begins.
    pub heel: Length,
    /// From heel to tip.
    pub length: Length,
    /// Radius to which the back of the tip is broken.
    pub tip: Length,
    /// Its shape.
    pub style: JawStyle,
}

impl Jaw {
    /// A jaw of a style in proportion to work and bar.
    pub fn suited(kind: JawKind, work: &Work, bar: &Bar) -> Self {
        let length = kind.suited_length_mm(work, bar);
        let unit = bar.stock.size().unit();
        let side = bar.stock.equal_square_mm();
        let style = kind.suited(work, bar);
        let mut jaw = Self {
            heel: suited_heel(&style.form(length), work, bar),
            length: Length::measured(length, unit),
            tip: Length::measured(0.12 * side, unit),
            style,
        };
        // A slim tip is broken less.
        if jaw.tip.mm() > jaw.tip_room() {
            jaw.tip = Length::measured(0.9 * jaw.tip_room(), unit);
        }
        jaw
    }

    /// Which style it is.
    pub fn kind(&self) -> JawKind {
        self.style.kind()
    }

    /// The style's name.
    pub fn name(&self) -> &'static str {
        self.kind().name()
    }

    /// What its style says of its own sizes, and of the work that they are to hold.
    pub fn remarks(&self, work: &Work) -> Vec<Remark> {
        let mut all = self.style.remarks(self.length.mm());
        all.extend(self.style.remarks_on(work));
        all
    }

    /// The stations as they are asked for, the tip not broken.
    pub fn plain_form(&self) -> Form {
        self.style.form(self.length.mm())
    }

    /// How it lays the work.
    pub fn lay(&self) -> Lay {
        self.style.lay(self.length.mm())
    }

    /// The stations with the tip broken.
    pub fn form(&self) -> Form {
        let mut form = self.plain_form();
        form.break_tip(self.tip.mm().min(self.tip_room_of(&form)));
        form
    }

    /// The largest radius to which the back of its tip can be broken, mm.
    pub fn tip_room(&self) -> f64 {
        self.tip_room_of(&self.plain_form())
    }

    fn tip_room_of(&self, plain: &Form) -> f64 {
        plain.tip_room().min(self.length.mm() / 4.0)
    }
}

// Its style is chosen beside work and bar, and stands before these.
fields! { Jaw: |Self { heel, length, tip, style }, v| {
    v.value("heel", heel, RUN).says("Heel", "From the rivet's centre to the back of the jaw");
    v.value("length", length, length_range(style)).says("Length", "From heel to tip");
    v.all(style);
    v.value("tip", tip, DETAIL).says("Tip radius", "To which the back of the tip is broken");
}}

/// From the rivet to the heel, in proportion to work and bar. A root that leans back towards the
/// other boss begins farther out.
pub(crate) fn suited_heel(form: &Form, work: &Work, bar: &Bar) -> Length {
    let side = bar.stock.equal_square_mm();
    let wanted = 1.55 * side + 0.5 * (work.size().mm() - 0.5 * side).max(0.0);
    let back = form.placed(0.0, 0.0).edge_point(Edge::Outer, 0.0).x;
    let least = stout::boss_reach_mm(bar) + (-back).max(0.0);
    if wanted < least {
        stout::at_least(bar, least)
    } else {
        Length::measured(wanted, bar.stock.size().unit())
    }
}

/// The lengths that a jaw of a style can have, mm.
fn length_range(style: &JawStyle) -> Range {
    if let JawStyle::Sketch(sketch) = style {
        sketch::length_range(sketch)
    } else {
        RUN
    }
}

/// Choosing a style makes the jaw anew for the work and the bar at hand.
impl ChoiceBeside<(Work, Bar)> for Jaw {
    const WAYS: &'static [&'static str] = JawKind::NAMES;

    fn chosen(&self) -> usize {
        self.kind() as usize
    }

    fn choose(&mut self, index: usize, (work, bar): &(Work, Bar)) {
        let kind = JawKind::ALL.get(index).copied();
        *self = match kind.filter(|kind| *kind != self.kind()) {
            None => return,
            // A sketch begins as what is there.
            Some(JawKind::Sketch) => self.sketched(work.size()),
            Some(kind) => Self::suited(kind, work, bar),
        };
    }
}

/// A second jaw that differs begins as a copy of the first.
impl ChoiceBeside<Jaw> for Option<Jaw> {
    const WAYS: &'static [&'static str] = &["the same", "a different one"];

    fn chosen(&self) -> usize {
        usize::from(self.is_some())
    }

    fn choose(&mut self, index: usize, first: &Jaw) {
        *self = match index {
            0 => None,
            _ => Some(self.take().unwrap_or_else(|| first.clone())),
        };
    }
}
