use std::fmt;

use thiserror::Error;

use crate::units::{Unit, quoted};

/// The shortest side of a sheet of one's own, mm: the check bars and a window fit on it.
pub const SMALLEST_SIDE: f64 = 150.0;
/// The longest side, mm: PDF 1.7 allows 14 400 points (ISO 32000-1, annex C), which is 5080 mm.
pub const LARGEST_SIDE: f64 = 5000.0;

/// A size of paper, as it lies upright; a sheet may be turned.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Paper {
    /// 210 × 297 mm (ISO 216).
    A4,
    /// 297 × 420 mm (ISO 216).
    A3,
    /// 8 1/2 × 11 in (ANSI Y14.1, size A).
    Letter,
    /// 8 1/2 × 14 in (trade size, no standard).
    Legal,
    /// 11 × 17 in (ANSI Y14.1, size B).
    Tabloid,
    /// A sheet or a length of roll of one's own.
    Own(OwnPaper),
}

/// Width and height of one's own paper, mm, checked.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OwnPaper {
    width: f64,
    height: f64,
}

/// Why a text is no paper. The message says how to mend it.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum PaperError {
    /// Neither a name nor a size.
    #[error(
        "\"{0}\" is not a paper: write a4, a3, letter, legal, tabloid, a2, a1, a0, ansi c, ansi d, ansi e, or a size such as 300 x 500 mm or 12 x 18 in"
    )]
    Unknown(String),
    /// A side that is too short or too long.
    #[error(
        "a paper side of {0:.0} mm cannot be used: each side must be from {SMALLEST_SIDE} to {LARGEST_SIDE} mm"
    )]
    Side(f64),
}

impl Paper {
    /// The papers that have a name, smallest first.
    pub const NAMED: [Self; 5] = [Self::A4, Self::Letter, Self::Legal, Self::A3, Self::Tabloid];

    /// Paper of one's own, both sides in mm.
    ///
    /// # Errors
    /// When a side is shorter than [`SMALLEST_SIDE`] or longer than [`LARGEST_SIDE`].
    pub fn own(width: f64, height: f64) -> Result<Self, PaperError> {
        for side in [width, height] {
            if !(SMALLEST_SIDE..=LARGEST_SIDE).contains(&side) {
                return Err(PaperError::Side(side));
            }
        }
        Ok(Self::Own(OwnPaper { width, height }))
    }

    /// Width and height in mm.
    pub fn size(self) -> (f64, f64) {
        match self {
            Self::A4 => (210.0, 297.0),
            Self::A3 => (297.0, 420.0),
            Self::Letter => (215.9, 279.4),
            Self::Legal => (215.9, 355.6),
            Self::Tabloid => (279.4, 431.8),
            Self::Own(own) => (own.width, own.height),
        }
    }

    /// What it is called in a sentence: `A4`, `letter`, `300 x 500 mm`.
    pub fn called(self) -> String {
        match self {
            Self::A4 => "A4".to_owned(),
            Self::A3 => "A3".to_owned(),
            Self::Letter | Self::Legal | Self::Tabloid | Self::Own(_) => self.to_string(),
        }
    }

    /// Reads a name, one of a plotter's too, or a width and a height with a unit, in upper or lower case.
    ///
    /// ```
    /// use reinwright_core::paper::Paper;
    /// assert_eq!(Paper::parse("Letter")?.size(), (215.9, 279.4));
    /// assert_eq!(Paper::parse("300 x 500 mm")?.size(), (300.0, 500.0));
    /// # Ok::<(), reinwright_core::paper::PaperError>(())
    /// ```
    ///
    /// # Errors
    /// When the text is neither, or a side is out of its limits.
    pub fn parse(text: &str) -> Result<Self, PaperError> {
        let clean = text.trim().to_lowercase();
        if let Some((_, (width, height))) = PLOTTER.iter().find(|(name, _)| *name == clean) {
            return Self::own(*width, *height);
        }
        let named = Self::NAMED.into_iter().find(|p| p.to_string() == clean);
        match named {
            Some(paper) => Ok(paper),
            None => parse_own(&clean).unwrap_or_else(|| Err(PaperError::Unknown(quoted(text, 40)))),
        }
    }
}

/// What plotters take, as they are called and in mm: ISO 216 and ANSI Y14.1.
const PLOTTER: [(&str, (f64, f64)); 6] = [
    ("a2", (420.0, 594.0)),
    ("a1", (594.0, 841.0)),
    ("a0", (841.0, 1189.0)),
    ("ansi c", (431.8, 558.8)),
    ("ansi d", (558.8, 863.6)),
    ("ansi e", (863.6, 1117.6)),
];

/// `300 x 500 mm`, `12 in x 18 in`; `None` when it is not two sizes.
fn parse_own(clean: &str) -> Option<Result<Paper, PaperError>> {
    let (width, height) = clean.split_once(['x', '×', '*'])?;
    let height: crate::units::Length = height.trim().parse().ok()?;
    let unit = match height.unit() {
        Unit::Foot => Unit::Inch,
        unit @ (Unit::Inch | Unit::Millimetre | Unit::Centimetre) => unit,
    };
    let width = crate::units::Length::parse(width.trim(), unit).ok()?;
    Some(Paper::own(width.mm(), height.mm()))
}

impl fmt::Display for Paper {
    /// The text that reads back as the same paper.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::A4 => f.write_str("a4"),
            Self::A3 => f.write_str("a3"),
            Self::Letter => f.write_str("letter"),
            Self::Legal => f.write_str("legal"),
            Self::Tabloid => f.write_str("tabloid"),
            Self::Own(own) => write!(f, "{} x {} mm", own.width, own.height),
        }
    }
}

/// The paper, and how the sheets are laid on it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PaperOptions {
    /// The paper.
    pub paper: Paper,
    /// Rim that the printer leaves blank, mm; used from 0 to 20.
    pub margin: f64,
    /// How far neighbouring pages show the same, mm; used from 8 to 25.
    pub overlap: f64,
}

impl PaperOptions {
    /// This paper with a rim of 10 mm and an overlap of 10 mm.
    pub fn new(paper: Paper) -> Self {
        Self {
            paper,
            margin: 10.0,
            overlap: 10.0,
        }
    }

    /// The same with rim and overlap inside what every paper has room for.
    pub(super) fn clamped(self) -> Self {
        Self {
            paper: self.paper,
            margin: self.margin.clamp(0.0, 20.0),
            overlap: self.overlap.clamp(8.0, 25.0),
        }
    }
}
