//! What the smith asked for: the only place that knows the file.
//!
//! A [`Document`] holds sizes as they were typed. [`Document::visit`] walks every value that can
//! be set, with its label, part, limits and way of scaling; the window's fields, the limits of
//! the file and a family's table all come from that one walk.

mod body;
mod file;
mod head;
mod limits;
mod rein;
mod starting;

pub use body::{Boss, BossShape, HeadKind, Neck, Rivet, Shoulder};
pub use file::{read, write};
pub use head::{HeadShape, HeadSolid};
pub use limits::check_limits;
pub use rein::{HandZone, Rein, ReinEnd, ReinLine};

use serde::{Deserialize, Serialize};

use crate::asked::{Allowances, Bar, Field, Layout, Units, Visitor, Work, simple_choice};
use crate::finding::Part;
use crate::paper::Projection;
use crate::tongs::jaw::{Jaw, SecondJawChoice};

/// The newest file format that this program writes and reads.
pub const FORMAT: u32 = 1;

/// Which way the bar is turned between set-downs; it flips the side on which the boss lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Hand {
    /// Turn left.
    #[default]
    Left,
    /// Turn right.
    Right,
}

simple_choice!(Hand { Left => "turn left", Right => "turn right" });

/// A pair of tongs as the smith asked for it. Every number in it is finite and inside the limits
/// that [`check_limits`] states once it has been read from a file.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Document {
    /// The file format, [`FORMAT`].
    pub format: u32,
    /// What the pair is called.
    pub name: String,
    /// Anything the smith wants to remember.
    #[serde(default)]
    pub note: String,
    /// Inches or millimetres.
    pub units: Units,
    /// Third or first angle.
    #[serde(default)]
    pub projection: Projection,
    /// Turn left or right.
    #[serde(default)]
    pub hand: Hand,
    /// What the tongs hold.
    pub work: Work,
    /// What the tongs are forged from.
    pub bar: Bar,
    /// The jaw of both halves, or of half A when there is a second one.
    pub jaw: Jaw,
    /// The jaw of half B when it differs.
    #[serde(default)]
    pub second_jaw: Option<Jaw>,
    /// Between boss and jaw.
    pub neck: Neck,
    /// The plate that takes the rivet.
    pub boss: Boss,
    /// Between boss and rein.
    pub shoulder: Shoulder,
    /// The lever held in the hand.
    pub rein: Rein,
    /// What joins the halves.
    pub rivet: Rivet,
    /// How the bar is laid out.
    pub layout: Layout,
    /// What the bar loses on the way.
    pub allowances: Allowances,
}

impl Document {
    /// Walks every value that the smith can set, in the order in which a pair is thought of.
    pub fn visit(&mut self, see: &mut dyn FnMut(Field<'_>)) {
        let mut v = Visitor::new(see);
        v.part(Part::Work, "work");
        self.work.fields(&mut v);
        v.part(Part::Bar, "bar");
        self.bar.fields(&mut v);
        v.part(Part::Jaw, "jaw");
        self.jaw.fields(&self.work, &self.bar, &mut v);
        let mut other = SecondJawChoice {
            second: &mut self.second_jaw,
            first: &self.jaw,
        };
        v.choice(
            "other_jaw",
            "Other jaw",
            "Whether half B has the same jaw",
            &mut other,
        );
        if let Some(second) = &mut self.second_jaw {
            v.part(Part::SecondJaw, "second_jaw");
            second.fields(&self.work, &self.bar, &mut v);
        }
        v.part(Part::Neck, "neck");
        self.neck.fields(&mut v);
        v.part(Part::Boss, "boss");
        self.boss.fields(&mut v);
        v.part(Part::Shoulder, "shoulder");
        self.shoulder.fields(&mut v);
        v.part(Part::Rein, "rein");
        self.rein.fields(&mut v);
        v.part(Part::Rivet, "rivet");
        self.rivet.fields(&mut v);
        v.part(Part::Bar, "layout");
        self.layout.fields(&mut v);
        v.part(Part::Bar, "allowances");
        self.allowances.fields(&mut v);
        v.part(Part::Pair, "");
        v.choice(
            "hand",
            "Hand",
            "Which way the bar is turned between set-downs",
            &mut self.hand,
        );
        v.choice("units", "Units", "How sizes are shown", &mut self.units);
        v.choice(
            "projection",
            "Projection",
            "Third angle: top view above; first angle: below",
            &mut self.projection,
        );
    }
}
