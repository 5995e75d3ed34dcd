//! Jaw styles. Each lives in a file of its own and is named once in the list below; everything
//! else (file, window, seating, sweep, drawing) follows from the [`Style`] trait.

mod flat;
mod hollow;
mod v_bit;

pub use flat::Flat;
pub use hollow::HollowBit;
pub use v_bit::VBit;

use serde::{Deserialize, Serialize};

use crate::document::{Bar, Choice, Follows, Range, Visitor, Work};
use crate::section::{Profile, lerp};
use crate::sweep::{Ease, Path, Station, Sweep};
use crate::units::Length;

/// What makes a jaw style.
pub trait Style {
    /// The trade's name, in lower case; the command line knows it with hyphens for spaces.
    const NAME: &'static str;
    /// What it is for, in one sentence without a period.
    const ABOUT: &'static str;

    /// The style in proportion to what it must hold and what it is made from.
    fn suited(work: &Work, bar: &Bar) -> Self;

    /// The length of grip that suits, mm.
    fn suited_length_mm(work: &Work, bar: &Bar) -> f64;

    /// Its own values.
    fn fields(&mut self, v: &mut Visitor<'_>);

    /// Its stations from heel to tip over `length` mm. The first one is a plain rectangle, the
    /// end of the neck; `rise` counts from the line of the faces or lips.
    fn form(&self, length: f64) -> Form;
}

/// A jaw as stations, before it is placed.
#[derive(Debug, Clone, PartialEq)]
pub struct Form {
    /// From heel (0) to tip.
    pub stations: Vec<Station>,
    /// The profiles that they name.
    pub profiles: Vec<Profile>,
    /// Where the grip begins, mm from the heel.
    pub grip_from: f64,
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
                $(if name == $variant::NAME {
                    let length = $variant::suited_length_mm(work, bar);
                    return Some((Self::$variant($variant::suited(work, bar)), length));
                })+
                None
            }

            fn fields(&mut self, v: &mut Visitor<'_>) {
                match self { $(Self::$variant(style) => style.fields(v)),+ }
            }

            fn form(&self, length: f64) -> Form {
                match self { $(Self::$variant(style) => style.form(length)),+ }
            }
        }
    };
}

styles!(Flat, VBit, HollowBit);

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
        let name = name.trim().to_lowercase().replace('-', " ");
        let (style, length) = JawStyle::suited(&name, work, bar)?;
        let unit = bar.stock.size().unit();
        let side = bar.stock.equal_square_mm();
        let heel = 1.55 * side + 0.5 * (work.size().mm() - 0.5 * side).max(0.0);
        Some(Self {
            heel: Length::measured(heel, unit),
            length: Length::measured(length, unit),
            tip: Length::measured(0.12 * side, unit),
            style,
        })
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

    /// The stations as they are asked for, the tip not broken.
    pub fn plain_form(&self) -> Form {
        self.style.form(self.length.mm())
    }

    /// The stations with the tip broken.
    pub fn form(&self) -> Form {
        let mut form = self.plain_form();
        break_tip(&mut form, self.tip.mm().min(self.tip_room()));
        form
    }

    /// The largest radius to which the back of its tip can be broken, mm.
    pub fn tip_room(&self) -> f64 {
        let quarter = self.length.mm() / 4.0;
        self.plain_form().tip_room().min(quarter)
    }
}

impl Form {
    /// The largest radius to which the back of the tip can be broken, mm: half the last run, a
    /// third of the depth, and half the wall over a groove.
    fn tip_room(&self) -> f64 {
        let [.., before, tip] = self.stations.as_slice() else {
            return 0.0;
        };
        let inner = &self.profiles[tip.profile];
        let room = ((tip.at - before.at) / 2.0).min(tip.depth / 3.0);
        if inner.lower_pieces().len() > 1 {
            room.min(least_wall(inner, tip.depth) / 2.0)
        } else {
            room
        }
    }

    /// The jaw as a sweep whose faces or lips lie at `face` mm from the axis, heel at `heel` mm.
    pub fn placed(&self, heel: f64, face: f64) -> Sweep {
        let length = self.stations.last().map_or(0.0, |station| station.at);
        Sweep {
            path: Path::straight(kurbo::Point::new(heel, face), 0.0, length),
            stations: self.stations.clone(),
            profiles: self.profiles.clone(),
        }
    }
}

/// Rounds the back of the tip over the last `r` mm; the gripping side stays as it is.
fn break_tip(form: &mut Form, r: f64) {
    let [.., before, tip] = form.stations.as_slice() else {
        return;
    };
    let (before, tip) = (*before, *tip);
    let room = tip.at - before.at;
    if r < LEAST_BREAK {
        return;
    }
    let inner = &form.profiles[tip.profile];
    let grooved = inner.lower_pieces().len() > 1;
    let t = 1.0 - r / room;
    let start = Station {
        at: tip.at - r,
        depth: lerp(before.depth, tip.depth, t),
        width: lerp(before.width, tip.width, t),
        rise: lerp(before.rise, tip.rise, t),
        profile: tip.profile,
        ease: Ease::RoundDown,
    };
    let mut end = Station {
        depth: start.depth - r,
        rise: start.rise - r / 2.0,
        width: (start.width - r).max(start.width / 2.0),
        ..tip
    };
    if grooved {
        // The box grows shallower, the groove in it must not.
        let kept = inner.with_groove_raised(start.depth / end.depth);
        form.profiles.push(kept);
        end.profile = form.profiles.len() - 1;
        end.width = start.width;
    }
    form.stations.pop();
    form.stations.extend([start, end]);
}

/// A smaller radius than this is no break that could be seen, mm.
const LEAST_BREAK: f64 = 0.05;

/// The least thickness between a groove and the back, mm.
fn least_wall(profile: &Profile, depth: f64) -> f64 {
    const PLACES: u32 = 64;
    /// Where the inner surface is nearer to the line of lips than this there is no groove.
    const GROOVE: f64 = -0.98;
    let (left, right) = profile.lips();
    let us = (0..=PLACES).map(|i| lerp(left, right, f64::from(i) / f64::from(PLACES)));
    let deep = us.filter(|&u| profile.lower_at(u) > GROOVE);
    let walls = deep.map(|u| (profile.upper_at(u) - profile.lower_at(u)) * depth / 2.0);
    walls.fold(depth, f64::min)
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

/// A bit of constant section that a rectangular heel blends into: its surfaces in mm over the
/// line of the lips, the heel's depth and width, and the lengths of the blend and of the whole.
fn bit(
    upper: &[crate::section::Piece],
    lower: &[crate::section::Piece],
    (root_depth, root_width): (f64, f64),
    (blend, length): (f64, f64),
) -> Form {
    let bit = Profile::boxed(upper, lower);
    let blend = blend.min(0.8 * length);
    let top = bit.bottom + bit.depth;
    // The back runs straight from heel to tip; the heel keeps off the other jaw.
    let rise = (top - root_depth / 2.0).max(root_depth / 2.0 + bit.bottom);
    let grip = Station {
        at: blend,
        depth: bit.depth,
        width: bit.width,
        rise: bit.bottom + bit.depth / 2.0,
        profile: 1,
        ease: Ease::Linear,
    };
    let heel = Station {
        at: 0.0,
        depth: root_depth,
        width: root_width,
        rise,
        profile: 0,
        ease: Ease::Smooth,
    };
    Form {
        stations: vec![heel, grip, Station { at: length, ..grip }],
        profiles: vec![Profile::rectangle(), bit.profile],
        grip_from: blend,
    }
}
