//! Jaw styles. Each lives in a file of its own and is named once in the list below; everything
//! else (file, window, seating, sweep, drawing) follows from the [`Style`] trait.

mod bent_bit;
mod bit_shape;
mod bolt;
mod bow;
mod box_jaw;
mod chisel_head;
mod duckbill;
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
mod scrolling;
pub mod sketch;
mod square_mouth;
mod stout;
mod tapered;
pub(crate) mod trade;
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
pub use scrolling::Scrolling;
pub use sketch::Sketch;
pub use square_mouth::SquareMouth;
pub use trade::{Trade, Verdict, Way};
pub use v_bit::VBit;

use std::borrow::Cow;

use serde::{Deserialize, Serialize};

use crate::asked::{Bar, Choice, Follows, Lie, Range, Visitor, Work};
use crate::finding::Severity;
use crate::shape::sweep::Edge;
use crate::units::Length;

/// What makes a jaw style.
pub trait Style {
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

    /// Its own values.
    fn fields(&mut self, v: &mut Visitor<'_>);

    /// Its stations from heel to tip over `length` mm. The first one is a plain rectangle, the
    /// end of the neck; `rise` counts from the line of the faces or lips.
    fn form(&self, length: f64) -> Form;

    /// What the trade says of holding some work in it in some way; what its starting pair can do is
    /// reckoned apart. `None` leaves all to the reckoning.
    fn trade(_work: &Work, _way: Way) -> Option<Trade> {
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

/// What a style says of its own sizes.
#[derive(Debug, Clone, PartialEq)]
pub struct Remark {
    /// How much it matters.
    pub severity: Severity,
    /// What follows the name of the jaw; `{0}` and `{1}` stand for the two sizes held.
    pub message: Cow<'static, str>,
    /// How to mend it.
    pub hint: &'static str,
    /// What was found and what it is held against, mm.
    pub held: (f64, f64),
    /// Where the limit comes from.
    pub source: &'static str,
}

impl Remark {
    /// What is drawn so little smaller than asked is not said, mm.
    pub const NEAR: f64 = 0.05;

    /// The message with both sizes as the smith reads them.
    pub fn text(&self, size: impl Fn(f64) -> String) -> String {
        let (found, limit) = self.held;
        self.message
            .replace("{0}", &size(found))
            .replace("{1}", &size(limit))
    }
}

/// Whether a style is asked for: hyphens and spaces are the same.
fn is_named(asked: &str, name: &str) -> bool {
    asked.trim().to_lowercase().replace('-', " ") == name.replace('-', " ")
}

/// Lists the styles: one line here and a file of its own is all that a new style needs.
macro_rules! styles {
    ($($variant:ident),+ $(,)?) => {
        /// A jaw style with its sizes.
        #[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
        #[serde(deny_unknown_fields)]
        pub enum JawStyle {
            $(#[doc = "One of the listed styles."] $variant($variant)),+
        }

        impl JawStyle {
            /// The names of all styles, in order.
            pub const NAMES: &'static [&'static str] = &[$($variant::NAME),+];
            /// What each is for, in the same order.
            pub const ABOUT: &'static [&'static str] = &[$($variant::ABOUT),+];

            fn place(&self) -> usize {
                let name = match self { $(Self::$variant(_) => $variant::NAME),+ };
                Self::NAMES.iter().position(|n| *n == name).unwrap_or(0)
            }

            fn suited(name: &str, work: &Work, bar: &Bar) -> Option<(Self, f64)> {
                $(if is_named(name, $variant::NAME) {
                    let length = $variant::suited_length_mm(work, bar);
                    return Some((Self::$variant($variant::suited(work, bar)), length));
                })+
                None
            }

            /// How a many-sided bar lies at its best in the style of a name; `None` where it takes
            /// the bar either way.
            pub fn lie(name: &str) -> Option<Lie> {
                $(if is_named(name, $variant::NAME) {
                    return $variant::LIE;
                })+
                None
            }

            /// What the trade says of holding some work in some way in the style of a name.
            pub fn trade(name: &str, work: &Work, way: Way) -> Option<Trade> {
                $(if is_named(name, $variant::NAME) {
                    return $variant::trade(work, way);
                })+
                None
            }

            fn fields(&mut self, v: &mut Visitor<'_>) {
                match self { $(Self::$variant(style) => style.fields(v)),+ }
            }

            fn form(&self, length: f64) -> Form {
                match self { $(Self::$variant(style) => style.form(length)),+ }
            }

            fn remarks(&self, length: f64) -> Vec<Remark> {
                match self { $(Self::$variant(style) => style.remarks(length)),+ }
            }

            fn remarks_on(&self, work: &Work) -> Vec<Remark> {
                match self { $(Self::$variant(style) => style.remarks_on(work)),+ }
            }
        }
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
    /// A jaw of the named style in proportion to work and bar; `None` if no style has the name.
    /// Hyphens and spaces are the same.
    pub fn suited(name: &str, work: &Work, bar: &Bar) -> Option<Self> {
        let (style, length) = JawStyle::suited(name, work, bar)?;
        let unit = bar.stock.size().unit();
        let side = bar.stock.equal_square_mm();
        let wanted = 1.55 * side + 0.5 * (work.size().mm() - 0.5 * side).max(0.0);
        // A root that leans back towards the other boss begins farther out.
        let form = style.form(length).placed(0.0, 0.0);
        let back = form.edge_point(Edge::Outer, 0.0).x;
        let least = stout::boss_reach_mm(bar) + (-back).max(0.0);
        let mut jaw = Self {
            heel: if wanted < least {
                stout::at_least(bar, least)
            } else {
                Length::measured(wanted, unit)
            },
            length: Length::measured(length, unit),
            tip: Length::measured(0.12 * side, unit),
            style,
        };
        // A slim tip is broken less.
        if jaw.tip.mm() > jaw.tip_room() {
            jaw.tip = Length::measured(0.9 * jaw.tip_room(), unit);
        }
        Some(jaw)
    }

    /// Shows its values, its style first.
    pub(crate) fn fields(&mut self, work: &Work, bar: &Bar, v: &mut Visitor<'_>) {
        let mut choice = StyleChoice {
            jaw: self,
            work,
            bar,
        };
        v.choice("style", "Style", "The shape of the grip", &mut choice);
        let run = Range::RUN;
        v.length(
            "heel",
            "Heel",
            "From the rivet's centre to the back of the jaw",
            (run, Follows::Bar),
            &mut self.heel,
        );
        v.length(
            "length",
            "Length",
            "From heel to tip",
            (run, Follows::Bar),
            &mut self.length,
        );
        self.style.fields(v);
        v.length(
            "tip",
            "Tip radius",
            "To which the back of the tip is broken",
            (Range::DETAIL, Follows::Bar),
            &mut self.tip,
        );
    }

    /// The style's name.
    pub fn name(&self) -> &'static str {
        JawStyle::NAMES[self.style.place()]
    }

    /// What the style is for.
    pub fn about(&self) -> &'static str {
        JawStyle::ABOUT[self.style.place()]
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

    /// The stations with the tip broken.
    pub fn form(&self) -> Form {
        let mut form = self.plain_form();
        form.break_tip(self.tip.mm().min(self.tip_room()));
        form
    }

    /// The largest radius to which the back of its tip can be broken, mm.
    pub fn tip_room(&self) -> f64 {
        let quarter = self.length.mm() / 4.0;
        self.plain_form().tip_room().min(quarter)
    }
}

/// Choosing a style makes it anew for the work and the bar at hand.
struct StyleChoice<'a> {
    jaw: &'a mut Jaw,
    work: &'a Work,
    bar: &'a Bar,
}

impl Choice for StyleChoice<'_> {
    fn names(&self) -> Vec<&'static str> {
        JawStyle::NAMES.to_vec()
    }

    fn chosen(&self) -> usize {
        self.jaw.style.place()
    }

    fn choose(&mut self, index: usize) {
        let name = JawStyle::NAMES
            .get(index)
            .filter(|_| index != self.chosen());
        // A sketch begins as what is there.
        if name == Some(&Sketch::NAME) {
            *self.jaw = self.jaw.sketched(self.work.size());
            return;
        }
        if let Some(jaw) = name.and_then(|name| Jaw::suited(name, self.work, self.bar)) {
            *self.jaw = jaw;
        }
    }
}

/// The choice of a second jaw that differs, or none.
pub(crate) struct SecondJawChoice<'a> {
    /// The second jaw, if there is one.
    pub(crate) second: &'a mut Option<Jaw>,
    /// The first one, copied when a second is asked for.
    pub(crate) first: &'a Jaw,
}

impl Choice for SecondJawChoice<'_> {
    fn names(&self) -> Vec<&'static str> {
        vec!["the same", "a different one"]
    }

    fn chosen(&self) -> usize {
        usize::from(self.second.is_some())
    }

    fn choose(&mut self, index: usize) {
        *self.second = match index {
            0 => None,
            _ => Some(self.second.take().unwrap_or_else(|| self.first.clone())),
        };
    }
}
