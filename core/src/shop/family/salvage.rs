//! Opening what can be opened of a damaged family.
//!
//! The file is taken apart into its named pieces, and each is read for itself. A piece of the
//! base that cannot be read is taken as a new design in the same style would have it
//! ([`InSizes::salvaged`]), a size that cannot be read is left out, and each such step is told.

use std::collections::BTreeMap;

use ron::value::RawValue;
use serde::Deserialize;
use serde::de::DeserializeOwned;

use super::file::{FamilyError, checked, read_of};
use super::{Family, InSizes, Measure, Rounding, Rule, Size};
use crate::asked::{Field, Fields, Follows, Writer, broken, options, readable};
use crate::finding::Part;
use crate::tongs::document::{Document, FORMAT};

/// A family with what could not be opened of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Opened<D: InSizes = Document> {
    /// The family.
    pub family: Family<D>,
    /// What could not be read and what was taken instead, a sentence each without a period;
    /// nothing when the file is whole.
    pub lost: Vec<String>,
    /// The family without the sizes that are damaged, for numbers that can be relied on. `None`
    /// when something that all sizes follow had to be guessed, or no size is whole.
    pub sound: Option<Family<D>>,
}

/// Opens a family of pairs, and of a damaged one what can be opened.
///
/// # Errors
/// When the bytes are no family, or so little of them can be read that no size is left.
pub fn open(bytes: &[u8]) -> Result<Opened, FamilyError> {
    open_of(bytes)
}

/// Opens a family of whatever is wanted, by the same habits as [`open`].
///
/// # Errors
/// As [`open`].
pub fn open_of<D: InSizes>(bytes: &[u8]) -> Result<Opened<D>, FamilyError> {
    let whole = match read_of(bytes) {
        Ok(family) => {
            return Ok(Opened {
                sound: Some(family.clone()),
                family,
                lost: Vec::new(),
            });
        }
        Err(error) => error,
    };
    let Some(mut salvage) = Salvage::new(checked::<D>(bytes)?) else {
        return Err(whole);
    };
    let Some(family) = salvage.family() else {
        return Err(whole);
    };
    let sound = salvage.sound(&family);
    let mut lost = salvage.lost;
    if lost.is_empty() {
        // Only a name that no family has is left to be told, which may be a rule's or a size's.
        lost.push(whole.to_string());
    }
    Ok(Opened {
        family,
        lost,
        sound,
    })
}

/// What can be opened of a design that a newer program wrote, and what was taken instead of the
/// rest; `None` when the bytes are no such design, or nothing of it can be read.
pub fn newer_design(bytes: &[u8]) -> Option<(Document, Vec<String>)> {
    #[derive(Deserialize)]
    struct Head {
        format: u32,
    }
    let text = readable(bytes).ok()?;
    let head: Head = options().from_str(text).ok()?;
    if head.format <= FORMAT {
        return None;
    }
    let whole: &RawValue = options().from_str(text).ok()?;
    let mut salvage = Salvage::new(text)?;
    let design = Document::salvaged(&mut salvage, whole, None)?;
    let named = |lost: String| lost.replacen("base.", "", 1);
    let lost = salvage.lost.into_iter().map(named);
    Some((design, lost.collect()))
}

/// The same of a family of pairs that a newer program wrote.
pub fn newer_family(bytes: &[u8]) -> Option<(Family, Vec<String>)> {
    newer_of(bytes)
}

/// The same of a family of whatever is wanted.
pub fn newer_of<D: InSizes>(bytes: &[u8]) -> Option<(Family<D>, Vec<String>)> {
    let Err(FamilyError::Newer { .. }) = read_of::<D>(bytes) else {
        return None;
    };
    let mut salvage = Salvage::new(readable(bytes).ok()?)?;
    let family = salvage.family()?;
    Some((family, salvage.lost))
}

/// A piece of a file that is there or not.
pub(super) type Raw<'a> = Option<&'a RawValue>;

#[derive(Deserialize)]
struct Pieces<'a> {
    #[serde(borrow, default)]
    name: Raw<'a>,
    #[serde(borrow, default)]
    note: Raw<'a>,
    #[serde(borrow, default)]
    rounding: Raw<'a>,
    #[serde(borrow, default)]
    rules: Raw<'a>,
    #[serde(borrow, default)]
    sizes: Raw<'a>,
    #[serde(borrow, default)]
    base: Raw<'a>,
}

/// A damaged file that is being taken apart.
#[allow(
    missing_debug_implementations,
    reason = "lives no longer than the opening of a file"
)]
pub struct Salvage<'a> {
    text: &'a str,
    pieces: Pieces<'a>,
    lost: Vec<String>,
    /// How many of these cost no more than words, or one size.
    small: usize,
    /// The places in the family of sizes in which something was guessed.
    guessed: Vec<usize>,
}

impl<'a> Salvage<'a> {
    fn new(text: &'a str) -> Option<Self> {
        Some(Self {
            text,
            pieces: options().from_str(text).ok()?,
            lost: Vec::new(),
            small: 0,
            guessed: Vec::new(),
        })
    }

    /// Tells of something that costs no more than words, or one size.
    fn lose_little(&mut self, what: String) {
        self.lost.push(what);
        self.small += 1;
    }

    /// The family without what was guessed; `None` when that is in every size, or none is left.
    fn sound<D: InSizes>(&self, family: &Family<D>) -> Option<Family<D>> {
        if self.lost.is_empty() || self.small < self.lost.len() {
            return None;
        }
        let sizes = family.sizes.iter().enumerate();
        let whole = sizes.filter(|(at, _)| !self.guessed.contains(at));
        let sizes: Vec<Size<D::Measure>> = whole.map(|(_, size)| size.clone()).collect();
        (!sizes.is_empty()).then(|| Family {
            sizes,
            ..family.clone()
        })
    }

    fn family<D: InSizes>(&mut self) -> Option<Family<D>> {
        let sizes = self.sizes::<D::Measure>();
        let (measure, raw) = (sizes.first().map(|size| size.work), self.pieces.base?);
        let base = D::salvaged(self, raw, measure)?;
        let (name, note) = (self.pieces.name, self.pieces.note);
        let rounding = self.pieces.rounding;
        let mut family = Family {
            family: D::FAMILY_FORMAT,
            name: self.words(name, "name", base.name().to_owned(), "the base's name"),
            note: self.words(note, "note", String::new(), "nothing"),
            rounding: self.piece(rounding, "rounding", Rounding::Measured, "rounded sizes"),
            rules: self.rules::<D>(),
            sizes: Vec::new(),
            base,
        };
        for (at, mut size) in sizes.into_iter().enumerate() {
            let told = self.lost.len();
            while let Some((path, why)) = family.wrong_text(&size) {
                let place = at + 1;
                let lost = format!("sizes {place}, {path}: {why}; its rule holds instead");
                self.lose_little(lost);
                size.set.remove(&path);
            }
            match family.check_size(at, &size) {
                Ok(()) => {
                    if self.lost.len() > told {
                        self.guessed.push(family.sizes.len());
                    }
                    family.sizes.push(size);
                }
                Err(error) => self.lose_little(format!("{error}; this size is left out")),
            }
        }
        if family.sizes.is_empty() {
            self.lost
                .push("no size could be read: the base alone is shown".to_owned());
            family.sizes.push(Size::new(family.base.measure()));
        }
        // Names and notes past their limits are all that can be wrong still.
        family.check().is_ok().then_some(family)
    }

    /// Reads a piece on which no number hangs.
    fn words(&mut self, raw: Raw<'_>, place: &str, instead: String, words: &str) -> String {
        let told = self.lost.len();
        let read = self.piece(raw, place, instead, words);
        self.small += self.lost.len() - told;
        read
    }

    /// Reads a piece, or tells why not and what is taken instead.
    pub(super) fn piece<T: DeserializeOwned>(
        &mut self,
        raw: Raw<'_>,
        place: &str,
        instead: T,
        words: &str,
    ) -> T {
        let Some(raw) = raw else {
            return instead;
        };
        match self.parse(raw) {
            Ok(value) => value,
            Err(why) => {
                self.lost
                    .push(format!("{place}: {why}; {words} is taken instead"));
                instead
            }
        }
    }

    /// Reads a piece that is a list or a map of pieces, likewise.
    fn borrowed<T: Deserialize<'a> + Default>(
        &mut self,
        raw: Raw<'a>,
        place: &str,
        words: &str,
    ) -> T {
        let Some(raw) = raw else {
            return T::default();
        };
        self.parse(raw).unwrap_or_else(|why| {
            self.lost
                .push(format!("{place}: {why}; {words} is taken instead"));
            T::default()
        })
    }

    /// Reads a piece; the error tells the line in the whole file.
    ///
    /// # Errors
    /// What is wrong, in one sentence without a period.
    pub(super) fn parse<'b, T: Deserialize<'b>>(&self, raw: &'b RawValue) -> Result<T, String> {
        let piece = raw.get_ron();
        options().from_str(piece).map_err(|mut error| {
            let start = piece.as_ptr() as usize - self.text.as_ptr() as usize;
            let before = &self.text[..start];
            let column = before.rsplit('\n').next().unwrap_or_default();
            if error.span.start.line == 1 {
                error.span.start.col += column.chars().count();
            }
            error.span.start.line += before.matches('\n').count();
            broken(&error).to_string()
        })
    }

    fn rules<D: InSizes>(&mut self) -> BTreeMap<String, Rule> {
        let raw = self.pieces.rules;
        let words = "the usual rule of every value";
        let raw: BTreeMap<String, &RawValue> = self.borrowed(raw, "rules", words);
        let mut rules = BTreeMap::new();
        for (path, raw) in raw {
            match self.parse::<D::WrittenRule>(raw) {
                Ok(rule) => drop(rules.insert(path, rule.into())),
                Err(why) => self
                    .lost
                    .push(format!("rules: {why}; {path} follows its usual rule")),
            }
        }
        rules
    }

    fn sizes<M: Measure>(&mut self) -> Vec<Size<M>> {
        let raw: Vec<&RawValue> = self.borrowed(self.pieces.sizes, "sizes", "an empty list");
        let mut sizes = Vec::new();
        for (at, raw) in raw.into_iter().enumerate() {
            match self.parse::<M::Written>(raw) {
                Ok(size) => sizes.push(size.into()),
                Err(why) => {
                    let place = at + 1;
                    self.lose_little(format!("sizes {place}: {why}; this size is left out"));
                }
            }
        }
        sizes
    }

    /// Takes the pieces of a base with the same words for what stands in; some need not be there.
    pub(super) fn take(&mut self, spare: &'static [&'static str]) -> Take<'_, 'a> {
        Take {
            salvage: self,
            words: "what is usual for this work and bar",
            spare,
        }
    }

    /// Numbers outside their limits are brought to the nearest one, in what stands under `path` of
    /// the base.
    pub(super) fn bring_inside(&mut self, path: &'static str, it: &mut impl Fields) {
        let mut nearest = |field: &Field| {
            let nearest = field.value.nearest_inside(field.range)?;
            self.lost.push(format!(
                "base.{} is {}, outside its limits; the nearest that may stand there is taken instead",
                field.path, field.value
            ));
            Some(nearest)
        };
        let mut walk = Writer::new(&mut nearest);
        walk.part(Part::Pair, path, Follows::Nothing);
        walk.all(it);
    }
}

/// Takes pieces with the same words for what stands in.
pub(super) struct Take<'a, 'b> {
    salvage: &'a mut Salvage<'b>,
    words: &'static str,
    /// Pieces that need not be there.
    spare: &'static [&'static str],
}

impl Take<'_, '_> {
    /// The piece that stands at a place, or what stands in for it.
    pub(super) fn of<T: DeserializeOwned>(&mut self, raw: Raw<'_>, place: &str, instead: T) -> T {
        if raw.is_none() && !self.spare.contains(&place) {
            let words = self.words;
            let lost = format!("{place} is missing; {words} is taken instead");
            self.salvage.lost.push(lost);
        }
        self.salvage.piece(raw, place, instead, self.words)
    }
}
