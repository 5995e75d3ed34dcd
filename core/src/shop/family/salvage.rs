//! Opening what can be opened of a damaged family.
//!
//! The file is taken apart into its named pieces, and each is read for itself. A piece of the
//! base that cannot be read is taken as a new design in the same style would have it, a size
//! that cannot be read is left out, and each such step is told.

use std::collections::BTreeMap;

use ron::value::RawValue;
use serde::Deserialize;
use serde::de::DeserializeOwned;

use super::file::{FAMILY_FORMAT, FamilyError, checked, read};
use super::{Family, Rounding, Rule, Size};
use crate::asked::{
    Bar, Field, Fields, Follows, Work, Writer, broken, options, parse_bar, readable,
};
use crate::finding::Part;
use crate::tongs::document::{Document, FORMAT, check_limits};
use crate::tongs::jaw::JawKind;

/// A family with what could not be opened of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Opened {
    /// The family.
    pub family: Family,
    /// What could not be read and what was taken instead, a sentence each without a period;
    /// nothing when the file is whole.
    pub lost: Vec<String>,
    /// The family without the sizes that are damaged, for numbers that can be relied on. `None`
    /// when something that all sizes follow had to be guessed, or no size is whole.
    pub sound: Option<Family>,
}

/// Opens a family, and of a damaged one what can be opened.
///
/// # Errors
/// When the bytes are no family, or so little of them can be read that no size is left.
pub fn open(bytes: &[u8]) -> Result<Opened, FamilyError> {
    let whole = match read(bytes) {
        Ok(family) => {
            return Ok(Opened {
                sound: Some(family.clone()),
                family,
                lost: Vec::new(),
            });
        }
        Err(error) => error,
    };
    let Some(mut salvage) = Salvage::new(checked(bytes)?) else {
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
    salvage.pieces.base = Some(whole);
    let design = salvage.base(None)?;
    let named = |lost: String| lost.replacen("base.", "", 1);
    let lost = salvage.lost.into_iter().map(named);
    Some((design, lost.collect()))
}

/// The same of a family that a newer program wrote.
pub fn newer_family(bytes: &[u8]) -> Option<(Family, Vec<String>)> {
    let Err(FamilyError::Newer(_)) = read(bytes) else {
        return None;
    };
    let mut salvage = Salvage::new(readable(bytes).ok()?)?;
    let family = salvage.family()?;
    Some((family, salvage.lost))
}

type Raw<'a> = Option<&'a RawValue>;

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

struct Salvage<'a> {
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
    fn sound(&self, family: &Family) -> Option<Family> {
        if self.lost.is_empty() || self.small < self.lost.len() {
            return None;
        }
        let sizes = family.sizes.iter().enumerate();
        let whole = sizes.filter(|(at, _)| !self.guessed.contains(at));
        let sizes: Vec<Size> = whole.map(|(_, size)| size.clone()).collect();
        (!sizes.is_empty()).then(|| Family {
            sizes,
            ..family.clone()
        })
    }

    fn family(&mut self) -> Option<Family> {
        let sizes = self.sizes();
        let base = self.base(sizes.first().map(|size| size.work))?;
        let (name, note) = (self.pieces.name, self.pieces.note);
        let rounding = self.pieces.rounding;
        let mut family = Family {
            family: FAMILY_FORMAT,
            name: self.words(name, "name", base.name.clone(), "the base's name"),
            note: self.words(note, "note", String::new(), "nothing"),
            rounding: self.piece(rounding, "rounding", Rounding::Measured, "rounded sizes"),
            rules: self.rules(),
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
            family.sizes.push(Size::new(family.base.work));
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
    fn piece<T: DeserializeOwned>(
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
    fn parse<'b, T: Deserialize<'b>>(&self, raw: &'b RawValue) -> Result<T, String> {
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

    fn rules(&mut self) -> BTreeMap<String, Rule> {
        let raw = self.pieces.rules;
        let words = "the usual rule of every value";
        let raw: BTreeMap<String, &RawValue> = self.borrowed(raw, "rules", words);
        let mut rules = BTreeMap::new();
        for (path, raw) in raw {
            match self.parse(raw) {
                Ok(rule) => drop(rules.insert(path, rule)),
                Err(why) => self
                    .lost
                    .push(format!("rules: {why}; {path} follows its usual rule")),
            }
        }
        rules
    }

    fn sizes(&mut self) -> Vec<Size> {
        let raw: Vec<&RawValue> = self.borrowed(self.pieces.sizes, "sizes", "an empty list");
        let mut sizes = Vec::new();
        for (at, raw) in raw.into_iter().enumerate() {
            match self.parse(raw) {
                Ok(size) => sizes.push(size),
                Err(why) => {
                    let place = at + 1;
                    self.lose_little(format!("sizes {place}: {why}; this size is left out"));
                }
            }
        }
        sizes
    }

    /// The base from its pieces; `None` when it is no group of named pieces at all, or neither
    /// its work nor any size's is known.
    fn base(&mut self, work: Option<Work>) -> Option<Document> {
        let raw = self.pieces.base?;
        let all: BasePieces<'_> = options().from_str(raw.get_ron()).ok()?;
        let usual_bar = parse_bar("3/4 in square").ok()?;
        let mut work = self.known(all.work, "base.work", work, "the first size's")?;
        let mut bar: Bar = self.piece(all.bar, "base.bar", usual_bar, "3/4 in square");
        // What is usual is only known for work and bar that can be.
        self.bring_inside("work", &mut work);
        self.bring_inside("bar", &mut bar);
        let usual = Document::starting(style(all.jaw?.get_ron()), work, bar);
        let mut base = self.filled(&all, usual);
        self.bring_inside("", &mut base);
        check_limits(&base).is_ok().then_some(base)
    }

    fn known(
        &mut self,
        raw: Raw<'_>,
        place: &str,
        instead: Option<Work>,
        words: &str,
    ) -> Option<Work> {
        match instead {
            Some(instead) => Some(self.piece(raw, place, instead, words)),
            None => self.parse(raw?).ok(),
        }
    }

    /// The pieces that can be read, on a design in its usual proportions.
    fn filled(&mut self, all: &BasePieces<'_>, usual: Document) -> Document {
        const USUAL: &str = "what is usual for this work and bar";
        let mut take = Take(self, USUAL);
        Document {
            format: FORMAT,
            name: take.of(all.name, "base.name", usual.name),
            note: take.of(all.note, "base.note", usual.note),
            units: take.of(all.units, "base.units", usual.units),
            projection: take.of(all.projection, "base.projection", usual.projection),
            hand: take.of(all.hand, "base.hand", usual.hand),
            jaw: take.of(all.jaw, "base.jaw", usual.jaw),
            second_jaw: take.of(all.second_jaw, "base.second_jaw", usual.second_jaw),
            neck: take.of(all.neck, "base.neck", usual.neck),
            boss: take.of(all.boss, "base.boss", usual.boss),
            shoulder: take.of(all.shoulder, "base.shoulder", usual.shoulder),
            rein: take.of(all.rein, "base.rein", usual.rein),
            rivet: take.of(all.rivet, "base.rivet", usual.rivet),
            layout: take.of(all.layout, "base.layout", usual.layout),
            allowances: take.of(all.allowances, "base.allowances", usual.allowances),
            work: usual.work,
            bar: usual.bar,
        }
    }

    /// Numbers outside their limits are brought to the nearest one, in what stands under `path` of
    /// the base.
    fn bring_inside(&mut self, path: &'static str, it: &mut impl Fields) {
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
struct Take<'a, 'b>(&'a mut Salvage<'b>, &'static str);

impl Take<'_, '_> {
    fn of<T: DeserializeOwned>(&mut self, raw: Raw<'_>, place: &str, instead: T) -> T {
        if raw.is_none() && !matches!(place, "base.note" | "base.second_jaw") {
            self.0
                .lost
                .push(format!("{place} is missing; {} is taken instead", self.1));
        }
        self.0.piece(raw, place, instead, self.1)
    }
}

#[derive(Deserialize)]
struct BasePieces<'a> {
    #[serde(borrow, default)]
    name: Raw<'a>,
    #[serde(borrow, default)]
    note: Raw<'a>,
    #[serde(borrow, default)]
    units: Raw<'a>,
    #[serde(borrow, default)]
    projection: Raw<'a>,
    #[serde(borrow, default)]
    hand: Raw<'a>,
    #[serde(borrow, default)]
    work: Raw<'a>,
    #[serde(borrow, default)]
    bar: Raw<'a>,
    #[serde(borrow, default)]
    jaw: Raw<'a>,
    #[serde(borrow, default)]
    second_jaw: Raw<'a>,
    #[serde(borrow, default)]
    neck: Raw<'a>,
    #[serde(borrow, default)]
    boss: Raw<'a>,
    #[serde(borrow, default)]
    shoulder: Raw<'a>,
    #[serde(borrow, default)]
    rein: Raw<'a>,
    #[serde(borrow, default)]
    rivet: Raw<'a>,
    #[serde(borrow, default)]
    layout: Raw<'a>,
    #[serde(borrow, default)]
    allowances: Raw<'a>,
}

/// The style that a jaw's text names, readable or not; flat when it names none.
fn style(jaw: &str) -> JawKind {
    let plain = jaw.to_lowercase();
    let named = |kind: &JawKind| {
        let name = kind.name().to_lowercase().replace([' ', '-'], "");
        plain.contains(&format!("{name}("))
    };
    let mut all = JawKind::ALL.iter().copied();
    all.find(named).unwrap_or(JawKind::Flat)
}
