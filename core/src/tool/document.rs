//! What the smith asked for.

use serde::{Deserialize, Serialize};

use super::mount::Mount;
use super::style::{ToolKind, ToolStyle};
use crate::asked::range::STRETCH;
use crate::asked::{
    Allowances, Bar, ChoiceBeside, Field, Fields, Follows, Hole, Layout, LimitError, Reader, Scale,
    Units, Value, Writer, fields,
};
use crate::finding::Part;
use crate::forge::balance::FromBar;
use crate::paper::Projection;
use crate::steel::Steel;
use crate::tongs::document::SetError;
use crate::units::{Length, Unit};

/// The newest file format of a tool that this program writes and reads.
pub const FORMAT: u32 = 1;

/// What a file is of: it stands first, so that a reader knows a tool from a pair.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum KindOfFile {
    /// A tool.
    Tool,
}

/// The style with what it stands on; choosing a style makes both anew.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Shape {
    /// The working end.
    pub style: ToolStyle,
    /// What it stands on.
    pub mount: Mount,
}

/// A tool as the smith asked for it. Every number in it is finite and inside the limits that
/// [`check_limits`] states once it has been read from a file.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Tool {
    /// What the file is of.
    pub kind: KindOfFile,
    /// The file format, [`FORMAT`].
    pub format: u32,
    /// What the tool is called.
    pub name: String,
    /// Anything the smith wants to remember.
    #[serde(default)]
    pub note: String,
    /// Inches or millimetres.
    pub units: Units,
    /// Third or first angle.
    #[serde(default)]
    pub projection: Projection,
    /// What it is forged from.
    pub bar: Bar,
    /// What it is.
    pub shape: Shape,
    /// Bar that is left on as a handle while it is forged, and cut off at the end.
    pub tail: Length,
    /// What the bar loses on the way.
    pub allowances: Allowances,
}

// Every value that the smith can set, in the order in which a tool is thought of.
fields! { Tool: |it, v| {
    let Self { bar, shape, .. } = it;
    v.part(Part::Bar, "bar", Follows::Bar);
    v.all(bar);
    v.part(Part::Working, "working", Follows::Bar);
    v.choice_beside("style", shape, bar).says("Style", "What the tool does");
    let Shape { style, mount } = shape;
    v.all(style);
    match mount {
        Mount::Struck(struck) => {
            v.part(Part::Body, "body", style.kind().body_follows());
            v.all(struck);
        }
        Mount::Hardy(hardy) => {
            v.part(Part::HardyShank, "shank", style.kind().shank_follows());
            v.all(hardy);
        }
    }
    let Self { tail, allowances, units, projection, .. } = it;
    v.part(Part::Bar, "allowances", Follows::Nothing);
    v.value("tail", tail, STRETCH)
        .says("Handling tail", "Bar left on as a handle, cut off at the end");
    v.all(allowances);
    v.part(Part::Tool, "", Follows::Nothing);
    v.choice("units", units).says("Units", "How sizes are shown");
    v.choice("projection", projection)
        .says("Projection", "Third angle: top view above; first angle: below");
}}

/// Choosing a style makes the tool anew, as large as the bar suits.
impl ChoiceBeside<Bar> for Shape {
    const WAYS: &'static [&'static str] = ToolKind::NAMES;

    fn chosen(&self) -> usize {
        self.style.kind() as usize
    }

    fn choose(&mut self, index: usize, bar: &Bar) {
        let kind = ToolKind::ALL.get(index).copied();
        if let Some(kind) = kind.filter(|kind| *kind != self.style.kind()) {
            *self = Self::suited(kind, kind.usual_size(bar), bar);
        }
    }
}

impl Shape {
    /// A style of a size in proportion to the bar.
    pub fn suited(kind: ToolKind, size: Length, bar: &Bar) -> Self {
        Self {
            style: kind.suited(size, bar),
            mount: kind.mount(size, bar),
        }
    }
}

impl Tool {
    /// A tool to begin with: of a punch the size is its hole, of a hardy tool the hardy hole. Bar of
    /// which nobody said what it is made of is of a steel that suits.
    pub fn starting(kind: ToolKind, size: Length, bar: Bar) -> Self {
        let unit = size.unit();
        let units = match unit {
            Unit::Inch | Unit::Foot => Units::Inch,
            Unit::Millimetre | Unit::Centimetre => Units::Millimetre,
        };
        let mut name = format!("{size} {}", kind.name());
        if kind.is_hardy() {
            name = format!("{} for a {size} hole", crate::asked::capital(kind.name()));
        }
        let steel = match bar.steel {
            Steel::Mild => kind.usual_steel(),
            steel => steel,
        };
        let bar = Bar { steel, ..bar };
        Self {
            kind: KindOfFile::Tool,
            format: FORMAT,
            name,
            note: String::new(),
            units,
            projection: Projection::default(),
            bar,
            shape: Shape::suited(kind, size, &bar),
            tail: Length::ZERO,
            allowances: usual(unit),
        }
    }

    /// A tool to begin a set with, whose leading measure is a size: of a hardy tool that is not told
    /// apart by its hole, in proportion to the bar.
    pub fn leading(kind: ToolKind, size: Length, bar: Bar) -> Self {
        if kind.begins_by_leading() {
            return Self::starting(kind, size, bar);
        }
        let mut tool = Self::starting(kind, kind.usual_size(&bar), bar);
        tool.put(kind.leading(), Value::Length(size));
        tool
    }

    /// Which style it is.
    pub fn style_kind(&self) -> ToolKind {
        self.shape.style.kind()
    }

    /// What it is forged from.
    pub fn from_bar(&self) -> FromBar<'_> {
        FromBar {
            bar: &self.bar,
            layout: Layout::Single { tail: self.tail },
            losses: &self.allowances,
            holes: Hole::Punched,
        }
    }

    /// Shows every value that the smith can set.
    pub fn visit(&self, see: &mut dyn FnMut(&Field)) {
        self.read(&mut Reader::new(see));
    }

    /// Asks for every value what it is to be instead, in the order of [`Tool::visit`].
    pub fn revise(&mut self, ask: &mut dyn FnMut(&Field) -> Option<Value>) {
        self.write(&mut Writer::new(ask));
    }

    /// Every field, in the order of [`Tool::visit`].
    pub fn fields(&self) -> Vec<Field> {
        let mut all = Vec::with_capacity(40);
        self.visit(&mut |field| all.push(field.clone()));
        all
    }

    /// The field that stands under a path, if there is one.
    pub fn field(&self, path: &str) -> Option<Field> {
        self.fields().into_iter().find(|field| field.path == path)
    }

    /// Puts a value under a path; one of another kind, or without a place, changes nothing.
    pub fn put(&mut self, path: &str, value: Value) {
        self.revise(&mut |field| (field.path == path).then_some(value));
    }

    /// Sets what is written under a path; a size without a unit is in the tool's own.
    ///
    /// # Errors
    /// When nothing has the path, or the text is no value for it; the tool stays as it was.
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

/// What a tool's bar loses: less scale than a half's, since its ends alone are heated (judgement), and a
/// little to cut square.
fn usual(unit: Unit) -> Allowances {
    Allowances {
        scale: Scale::Whole { percent: 2.0 },
        margin: 1.0,
        ..Allowances::usual(unit)
    }
}

/// Longest name and note that a file may carry, in characters.
const LONGEST: [(&str, usize); 2] = [("name", 200), ("note", 20_000)];

/// Checks every number of a tool against its limits.
///
/// # Errors
/// The first value that is not finite or not inside its limits, in the order of [`Tool::visit`].
pub fn check_limits(tool: &Tool) -> Result<(), LimitError> {
    for ((path, most), text) in LONGEST.into_iter().zip([&tool.name, &tool.note]) {
        let found = text.chars().count();
        if found > most {
            return Err(LimitError {
                path: path.to_owned(),
                found: format!("{found} characters long"),
                least: "0".to_owned(),
                most: format!("{most} characters"),
            });
        }
    }
    let mut first = None;
    tool.visit(&mut |field| {
        if first.is_none() {
            first = field.check().err();
        }
    });
    first.map_or(Ok(()), Err)
}
