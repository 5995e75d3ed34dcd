//! The sizes of stock that a smith can buy, for each shape and each unit.

use std::collections::BTreeSet;
use std::fmt;

use thiserror::Error;

use super::file::{FileError, readable};
use super::range::STEEL;
use super::units_choice::Units;
use super::work::Work;
use crate::units::{Length, SizeError, one_line, quoted};

/// A shape in which bar is sold. Flat bar is listed by its thickness.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum StockShape {
    /// By diameter.
    Round,
    /// By side.
    Square,
    /// By thickness.
    Flat,
    /// Across flats.
    Hexagon,
    /// Across flats.
    Octagon,
}

impl StockShape {
    /// All of them, in the order in which they are listed.
    pub const ALL: [Self; 5] = [
        Self::Round,
        Self::Square,
        Self::Flat,
        Self::Hexagon,
        Self::Octagon,
    ];

    /// The shape of some work.
    pub fn of(work: &Work) -> Self {
        match work {
            Work::Flat { .. } => Self::Flat,
            Work::Round { .. } => Self::Round,
            Work::Square { .. } => Self::Square,
            Work::Hexagon { .. } => Self::Hexagon,
            Work::Octagon { .. } => Self::Octagon,
        }
    }

    /// What the smith calls it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Round => "round",
            Self::Square => "square",
            Self::Flat => "flat",
            Self::Hexagon => "hexagon",
            Self::Octagon => "octagon",
        }
    }
}

/// One of the lists: the stock of a shape that is sold by inches or by millimetres.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct StockList {
    /// Whether it counts in inches or in millimetres.
    pub units: Units,
    /// The shape.
    pub shape: StockShape,
}

impl StockList {
    /// Every list, those in inches first.
    pub fn all() -> impl Iterator<Item = Self> {
        let of = |units| StockShape::ALL.map(|shape| Self { units, shape });
        [Units::Inch, Units::Millimetre].into_iter().flat_map(of)
    }

    /// The list that a line begins with.
    fn named(words: &str) -> Option<Self> {
        let plain = one_line(words).to_lowercase();
        Self::all().find(|list| list.to_string() == plain)
    }

    fn index(self) -> usize {
        let half = match self.units {
            Units::Inch => 0,
            Units::Millimetre => StockShape::ALL.len(),
        };
        half + self.shape as usize
    }
}

impl fmt::Display for StockList {
    /// `in round`, as a line of the text begins.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.units.unit().sign(), self.shape.name())
    }
}

/// Why a text lists no stock sizes.
#[derive(Debug, Error)]
pub enum StockSizesError {
    /// It is no text, or too long.
    #[error(transparent)]
    File(#[from] FileError),
    /// A size cannot be read.
    #[error("{0}: {1}")]
    Size(StockList, SizeError),
    /// A comma that may part two sizes, or stand in one.
    #[error("{0}: \"{1}\" can be read two ways: put a space behind the comma, or write a point")]
    Comma(StockList, String),
    /// A size that no bar of these tongs has.
    #[error("{list}: {size} is not between {least} and {most}: take it out")]
    Range {
        /// Where it stands.
        list: StockList,
        /// The size.
        size: Length,
        /// The least.
        least: String,
        /// The greatest.
        most: String,
    },
    /// A list that is too long.
    #[error("{0} lists over {most} sizes: keep those that you can buy", most = StockSizes::MOST)]
    TooMany(StockList),
    /// A line that belongs to no list.
    #[error(
        "line {0}: \"{1}\" names no list: begin the line with one such as in round: or mm flat:"
    )]
    NoList(usize, String),
    /// Two lines for one list.
    #[error("line {0}: {1} is listed twice: make one line of both")]
    Twice(usize, StockList),
}

/// The sizes in which stock is sold, every list from the least up.
///
/// Its text has a line for each list; a list that has no line is the usual one, and one that lists
/// nothing says that none is sold. What follows a `#` is a remark.
///
/// ```
/// use reinwright_core::asked::{StockList, StockShape, StockSizes, Units};
/// let sizes = StockSizes::parse("mm round: 6, 8, 10.5 # from the shop round the corner").unwrap();
/// let list = StockList { units: Units::Millimetre, shape: StockShape::Round };
/// assert_eq!(sizes.list_text(list), "6, 8, 10.5");
/// assert_eq!(sizes.between(list, 6.0, 9.0)[0].to_string(), "8 mm");
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct StockSizes {
    lists: [Vec<Length>; 2 * StockShape::ALL.len()],
}

/// Two sizes nearer than this are one, mm.
const SAME: f64 = 1e-6;

/// What can be bought as a rule. Millimetres: squares are the preferred sizes of EN 10059 and
/// rounds those of EN 10060, as steel merchants print them (rounds under 16 mm, and flats by
/// EN 10058 and hexagons by EN 10061, from memory); rounds under 10, flats under 5 and hexagons
/// under 13 mm are sold drawn or as sheet strip (common practice, no source). Inches: hot-rolled
/// merchant bar, from memory. Octagons are chisel steel (common practice, no source).
const USUAL: &str = "\
in round: 3/16, 1/4, 5/16, 3/8, 7/16, 1/2, 9/16, 5/8, 11/16, 3/4, 13/16, 7/8, 15/16, 1, 1 1/8, \
1 1/4, 1 3/8, 1 1/2, 1 5/8, 1 3/4, 1 7/8, 2, 2 1/4, 2 1/2, 2 3/4, 3
in square: 1/4, 5/16, 3/8, 7/16, 1/2, 9/16, 5/8, 3/4, 7/8, 1, 1 1/8, 1 1/4, 1 1/2, 1 3/4, 2, \
2 1/2, 3
in flat: 1/8, 3/16, 1/4, 5/16, 3/8, 1/2, 5/8, 3/4, 7/8, 1, 1 1/4, 1 1/2, 1 3/4, 2
in hexagon: 1/4, 5/16, 3/8, 7/16, 1/2, 9/16, 5/8, 11/16, 3/4, 13/16, 7/8, 15/16, 1, 1 1/16, \
1 1/8, 1 3/16, 1 1/4, 1 5/16, 1 3/8, 1 7/16, 1 1/2, 1 5/8, 1 3/4, 1 7/8, 2
in octagon: 1/2, 5/8, 3/4, 7/8, 1, 1 1/8, 1 1/4
mm round: 6, 8, 10, 12, 13, 14, 15, 16, 18, 19, 20, 22, 24, 25, 26, 27, 28, 30, 32, 35, 36, 38, \
40, 42, 45, 48, 50, 52, 55, 60, 63, 65, 70, 73, 75, 80, 85, 90, 95, 100
mm square: 8, 10, 12, 13, 14, 15, 16, 18, 20, 22, 24, 25, 26, 28, 30, 32, 35, 40, 45, 50, 55, 60, \
65, 70, 75, 80, 90, 100
mm flat: 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 35, 40, 50, 60, 80
mm hexagon: 8, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20.5, 22, 23.5, 25.5, 28.5, 31.5, 33.5, \
35.5, 37.5, 39.5, 42.5, 47.5, 52, 57, 62, 67, 72, 78, 83, 88, 93, 98, 103
mm octagon: 14, 16, 18, 20, 22, 25, 30";

impl Default for StockSizes {
    /// The usual sizes.
    fn default() -> Self {
        let none = Self {
            lists: Default::default(),
        };
        none.overlaid(USUAL)
            .expect("the usual lists are read by a test")
    }
}

impl StockSizes {
    /// So many sizes stand in a list at most: more than any merchant has on the rack.
    pub const MOST: usize = 200;

    /// Reads the text of a file.
    ///
    /// # Errors
    /// When the bytes are no text, or as [`StockSizes::parse`].
    pub fn read(bytes: &[u8]) -> Result<Self, StockSizesError> {
        Self::parse(readable(bytes)?)
    }

    /// Reads the text of all lists; what has no line keeps its usual sizes.
    ///
    /// # Errors
    /// The first line that is no list, or size that cannot be.
    pub fn parse(text: &str) -> Result<Self, StockSizesError> {
        Self::default().overlaid(text)
    }

    fn overlaid(mut self, text: &str) -> Result<Self, StockSizesError> {
        let mut listed = BTreeSet::new();
        for (number, line) in (1..).zip(text.lines()) {
            let line = line.split('#').next().unwrap_or_default().trim();
            if line.is_empty() {
                continue;
            }
            let parts = line.split_once(':');
            let named = parts.and_then(|(name, sizes)| Some((StockList::named(name)?, sizes)));
            let Some((list, sizes)) = named else {
                return Err(StockSizesError::NoList(number, quoted(line, 30)));
            };
            if !listed.insert(list.index()) {
                return Err(StockSizesError::Twice(number, list));
            }
            self.lists[list.index()] = read_list(list, sizes)?;
        }
        Ok(self)
    }

    /// The sizes with one list read anew: `1/4, 5/16, 3/8`.
    ///
    /// # Errors
    /// When a size cannot be read or be sold, or there are too many.
    pub fn with_list(&self, list: StockList, text: &str) -> Result<Self, StockSizesError> {
        let mut next = self.clone();
        next.lists[list.index()] = read_list(list, text)?;
        Ok(next)
    }

    /// The sizes of a list, from the least up.
    pub fn list(&self, list: StockList) -> &[Length] {
        &self.lists[list.index()]
    }

    /// The sizes of a list over one size and under another, mm.
    pub fn between(&self, list: StockList, over_mm: f64, under_mm: f64) -> Vec<Length> {
        let inside = |size: &&Length| size.mm() > over_mm + SAME && size.mm() < under_mm - SAME;
        self.list(list).iter().filter(inside).copied().collect()
    }

    /// A list as it is read: sizes in its own unit go without one.
    pub fn list_text(&self, list: StockList) -> String {
        let sign = format!(" {}", list.units.unit().sign());
        let text = |size: &Length| {
            let text = size.to_string();
            text.strip_suffix(&sign).map(str::to_owned).unwrap_or(text)
        };
        let texts: Vec<String> = self.list(list).iter().map(text).collect();
        texts.join(", ")
    }

    /// The text of all lists.
    pub fn text(&self) -> String {
        let line = |list: StockList| format!("{list}: {}\n", self.list_text(list));
        let head = "# Stock that can be bought, a list a line: flat by its thickness, hexagon and \
                    octagon across flats.\n";
        StockList::all().fold(head.to_owned(), |text, list| text + &line(list))
    }
}

fn read_list(list: StockList, text: &str) -> Result<Vec<Length>, StockSizesError> {
    let texts = text.split([';', '\n']).flat_map(|part| part.split(", "));
    let texts = texts.map(|text| text.trim().trim_end_matches(',').trim());
    let mut sizes = Vec::new();
    for text in texts.filter(|text| !text.is_empty()) {
        if sizes.len() == StockSizes::MOST {
            return Err(StockSizesError::TooMany(list));
        }
        sizes.push(read_size(list, text)?);
    }
    sizes.sort_by(|a, b| a.mm().total_cmp(&b.mm()));
    sizes.dedup_by(|a, b| (a.mm() - b.mm()).abs() < SAME);
    Ok(sizes)
}

fn read_size(list: StockList, text: &str) -> Result<Length, StockSizesError> {
    if text.contains(',') {
        return Err(StockSizesError::Comma(list, quoted(text, 20)));
    }
    let size = Length::parse(text, list.units.unit());
    let size = size.map_err(|error| StockSizesError::Size(list, error))?;
    if STEEL.holds(size.mm()) {
        return Ok(size);
    }
    let [least, most] = STEEL.ends_in(list.units.unit());
    Err(StockSizesError::Range {
        list,
        size,
        least,
        most,
    })
}
