//! What the smith asked for: the only place that knows the file.
//!
//! A [`Document`] holds sizes as they were typed. [`Document::visit`] shows every value that can
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
use thiserror::Error;

use crate::asked::{
    Allowances, Bar, Field, Fields, Follows, Layout, Reader, Units, Value, ValueError, Work,
    Writer, fields, simple_choice,
};
use crate::finding::Part;
use crate::forge::balance::FromBar;
use crate::paper::Projection;
use crate::tongs::jaw::Jaw;

/// The newest file format that this program writes and reads.
pub const FORMAT: u32 = 1;

/// Which way the bar is turned between set-downs; it flips the side on which the boss lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Turn {
    /// To the left.
    #[default]
    Left,
    /// To the right.
    Right,
}

simple_choice!(Turn { Left => "to the left", Right => "to the right" });

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
    pub hand: Turn,
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

// Every value that the smith can set, in the order in which a pair is thought of.
fields! { Document: |it, v| {
    let Self { work, bar, jaw, second_jaw, neck, boss, shoulder, rein, rivet, .. } = it;
    v.part(Part::Work, "work", Follows::Work);
    v.all(work);
    v.part(Part::Bar, "bar", Follows::Bar);
    v.all(bar);
    v.part(Part::Jaw, "jaw", Follows::Bar);
    v.choice_beside("style", jaw, &(*work, *bar)).says("Style", "The shape of the grip");
    v.all(jaw);
    v.choice_beside("other_jaw", second_jaw, jaw)
        .says("Other jaw", "Whether half B has the same jaw");
    if let Some(second) = second_jaw {
        v.part(Part::SecondJaw, "second_jaw", Follows::Bar);
        v.choice_beside("style", second, &(*work, *bar)).says("Style", "The shape of the grip");
        v.all(second);
    }
    v.part(Part::Neck, "neck", Follows::Bar);
    v.all(neck);
    v.part(Part::Boss, "boss", Follows::Bar);
    v.all(boss);
    v.part(Part::Shoulder, "shoulder", Follows::Bar);
    v.all(shoulder);
    v.part(Part::Rein, "rein", Follows::Nothing);
    v.all(rein);
    v.part(Part::Rivet, "rivet", Follows::Bar);
    v.all(rivet);
    let Self { layout, allowances, hand, units, projection, .. } = it;
    v.part(Part::Bar, "layout", Follows::Nothing);
    v.all(layout);
    v.part(Part::Bar, "allowances", Follows::Nothing);
    v.all(allowances);
    v.part(Part::Pair, "", Follows::Nothing);
    v.choice("hand", hand).says("Turned", "Which way the bar is turned between set-downs");
    v.choice("units", units).says("Units", "How sizes are shown");
    v.choice("projection", projection)
        .says("Projection", "Third angle: top view above; first angle: below");
}}

/// Why a text cannot be set under a path.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum SetError {
    /// No field has the path.
    #[error("nothing here is called {0}: it hangs on a choice made otherwise")]
    NoField(String),
    /// The text is no value for it.
    #[error("{0}: {1}")]
    Value(String, ValueError),
}

impl Document {
    /// What the halves are forged from.
    pub fn from_bar(&self) -> FromBar<'_> {
        FromBar {
            bar: &self.bar,
            layout: self.layout,
            losses: &self.allowances,
            holes: self.rivet.made,
        }
    }

    /// Shows every value that the smith can set, in the order in which a pair is thought of.
    pub fn visit(&self, see: &mut dyn FnMut(&Field)) {
        self.read(&mut Reader::new(see));
    }

    /// Asks for every value what it is to be instead, in the order of [`Document::visit`]; a choice
    /// brings the fields that hang on it along. A value of another kind changes nothing.
    pub fn revise(&mut self, ask: &mut dyn FnMut(&Field) -> Option<Value>) {
        self.write(&mut Writer::new(ask));
    }

    /// Every field, in the order of [`Document::visit`].
    pub fn fields(&self) -> Vec<Field> {
        let mut all = Vec::with_capacity(64);
        self.visit(&mut |field| all.push(field.clone()));
        all
    }

    /// The field that stands under a path, if there is one.
    pub fn field(&self, path: &str) -> Option<Field> {
        let mut found = None;
        self.visit(&mut |field| {
            if field.path == path {
                found = Some(field.clone());
            }
        });
        found
    }

    /// Puts a value under a path; one of another kind, or without a place, changes nothing.
    pub fn put(&mut self, path: &str, value: Value) {
        self.revise(&mut |field| (field.path == path).then_some(value));
    }

    /// Sets what is written under a path; a size without a unit is in the document's own.
    ///
    /// # Errors
    /// When nothing has the path, or the text is no value for it; the document stays as it was.
    pub fn set(&mut self, path: &str, text: &str) -> Result<(), SetError> {
        let field = self.field(path);
        let field = field.ok_or_else(|| SetError::NoField(path.to_owned()))?;
        let value = field.read(text, self.units.unit());
        self.put(
            path,
            value.map_err(|why| SetError::Value(path.to_owned(), why))?,
        );
        Ok(())
    }
}
