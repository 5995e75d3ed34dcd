//! What a family can be of, and what is asked of it: pairs and tools are kept in sizes by the same
//! habits, and differ in what leads a size, in their file and in their answers.

use std::fmt::Debug;

use ron::value::RawValue;
use serde::Serialize;
use serde::de::DeserializeOwned;

use super::salvage::Salvage;
use super::{Family, Made, Rule, Size};
use crate::asked::{Bar, Field, Fields, LimitError, Reader, Units, Value, Writer};
use crate::finding::{Finding, Part, Severity, worst};
use crate::forge::balance::Balance;
use crate::proof::strength::StrengthLoad;
use crate::tongs::document::SetError;

/// What a size is called by and scaled by: the work of a pair, the leading measure of a tool.
pub trait Measure: Copy + Debug + PartialEq {
    /// A size as a file has it.
    type Written: DeserializeOwned + Into<Size<Self>>;

    /// How large it is, mm.
    fn size_mm(&self) -> f64;

    /// What the smith reads.
    fn label(&self) -> String;

    /// The measure midway to another; `None` where there is none between.
    fn between(&self, other: &Self) -> Option<Self>;
}

/// What a family can be of.
pub trait InSizes: Fields + Clone + Debug + PartialEq + 'static {
    /// What leads a size.
    type Measure: Measure;
    /// The answers to one size.
    type Answer: OfSize<Of = Self> + 'static;
    /// A family as its file has it.
    type Written: Serialize + DeserializeOwned + From<Family<Self>> + Into<Family<Self>>;

    /// A rule as its file has it.
    type WrittenRule: DeserializeOwned + Into<Rule>;

    /// What one is called.
    const NAME: &'static str;
    /// The newest format of a family's file, which stands in it under [`InSizes::MARK`].
    const FAMILY_FORMAT: u32;
    /// What a family's file begins with.
    const MARK: &'static str;
    /// The newest format of one by itself.
    const FORMAT: u32;
    /// A size as it is written, to be shown where there is none.
    const EXAMPLE: &'static str;
    /// The whole of it, of which something is noticed.
    const WHOLE: Part;

    /// The format that a file says of one by itself.
    fn format(&self) -> u32;

    /// What it is called.
    fn name(&self) -> &str;

    /// Calls it otherwise.
    fn rename(&mut self, name: String);

    /// What it is measured in.
    fn units(&self) -> Units;

    /// Shows it in other units.
    fn show_in(&mut self, units: Units);

    /// What leads it.
    fn measure(&self) -> Self::Measure;

    /// Whether a path is of what leads it.
    fn leads(&self, path: &str) -> bool;

    /// Makes it of another size, and of another bar; nothing else changes.
    fn resize(&mut self, measure: Self::Measure, bar: Bar);

    /// What it is forged from.
    fn bar(&self) -> Bar;

    /// Sets what is written under a path.
    ///
    /// # Errors
    /// When nothing has the path, or the text is no value for it; it stays as it was.
    fn set_text(&mut self, path: &str, text: &str) -> Result<(), SetError>;

    /// Checks every number against its limits.
    ///
    /// # Errors
    /// The first value that is not inside its limits.
    fn limits(&self) -> Result<(), LimitError>;

    /// Where in its file the value stands that has a path in the program.
    fn in_file(&self, path: &str) -> String {
        path.to_owned()
    }

    /// The same of a value of one size in a family's file.
    fn in_size(&self, path: &str) -> String {
        path.to_owned()
    }

    /// What a rule is called here.
    fn rule_name(rule: Rule) -> &'static str;

    /// Mends what lengths that were rounded each by itself may not lose of the base.
    fn settle(&mut self, family: &Family<Self>);

    /// The answers to a size under some load.
    fn answered(made: Made<Self>, label: String, load: &StrengthLoad) -> Self::Answer;

    /// The format that a family's file says of itself.
    ///
    /// # Errors
    /// When the text has no such mark.
    fn family_format(text: &str) -> Result<u32, ron::error::SpannedError>;

    /// A base from the pieces of a damaged one; `None` where too little of it can be read.
    fn salvaged(
        salvage: &mut Salvage<'_>,
        raw: &RawValue,
        measure: Option<Self::Measure>,
    ) -> Option<Self>;

    /// Shows every value that the smith can set.
    fn see(&self, see: &mut dyn FnMut(&Field)) {
        self.read(&mut Reader::new(see));
    }

    /// Asks for every value what it is to be instead.
    fn ask(&mut self, ask: &mut dyn FnMut(&Field) -> Option<Value>) {
        self.write(&mut Writer::new(ask));
    }

    /// Every field, in order.
    fn all_fields(&self) -> Vec<Field> {
        let mut all = Vec::with_capacity(64);
        self.see(&mut |field| all.push(field.clone()));
        all
    }

    /// The field that stands under a path, if there is one.
    fn field_at(&self, path: &str) -> Option<Field> {
        self.all_fields()
            .into_iter()
            .find(|field| field.path == path)
    }
}

/// The answers to one size, as far as every family has them.
pub trait OfSize {
    /// What the size is one of.
    type Of;

    /// What the size is called.
    fn label(&self) -> &str;

    /// The size by itself.
    fn document(&self) -> &Self::Of;

    /// Its bar.
    fn balance(&self) -> &Balance;

    /// What was noticed, the worst first.
    fn findings(&self) -> &[Finding];

    /// How much one weighs when it is finished, kg.
    fn mass_kg(&self) -> f64;

    /// The worst of its findings, for the mark in a table.
    fn worst(&self) -> Option<Severity> {
        worst(self.findings())
    }
}
