//! How much paper is made unasked, and how much at all.

use reinwright_core::paper::{Paper, Together};

/// More pages than this are printed only when that is asked for: a pair takes 3 to 6, so that
/// more are a mistake in a size, or a set.
pub const MANY: usize = 40;

/// More pages than this are never made. A page takes about a third of a megabyte of memory while
/// it is made, so that these stay within 350 MB.
pub const MOST: usize = 1000;

/// How many pages are made, and which sheet takes most of them.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Pages {
    /// Of all sheets. Of a set that is past [`MOST`], of the sheets that were counted till then.
    pub all: usize,
    /// How many sheets they are of.
    pub sheets: usize,
    /// Of the sheet that takes most.
    pub most: usize,
    /// The title of that sheet.
    pub sheet: String,
}

/// Whether so many pages are made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stack {
    /// Without a word.
    Usual,
    /// When that is asked for.
    Many,
    /// Never.
    TooMany,
}

impl Pages {
    /// Counts sheets in that share pages; of these the first one is named.
    pub fn add(&mut self, together: &Together, sheet: impl FnOnce(usize) -> String) {
        self.all = self.all.saturating_add(together.pages);
        self.sheets += together.sheets.len();
        if together.pages > self.most {
            let first = together.sheets.first().map_or(0, |of| of.0);
            (self.most, self.sheet) = (together.pages, sheet(first));
        }
    }

    /// Whether they are made.
    pub fn stack(&self) -> Stack {
        match self.all {
            0..=MANY => Stack::Usual,
            all if all <= MOST => Stack::Many,
            _ => Stack::TooMany,
        }
    }

    /// How many there are, and where so many come from, as part of a sentence.
    pub fn words(&self, paper: Paper) -> String {
        let name = paper.called();
        let all = match self.stack() {
            Stack::Usual if self.all == 1 => return format!("1 page of {name}"),
            Stack::Usual => return format!("{} pages of {name}", self.all),
            Stack::Many => self.all.to_string(),
            Stack::TooMany => format!("over {MOST}"),
        };
        format!("{all} pages of {name} for {}", self.source())
    }

    /// What takes so many: the one sheet that takes most of them, or that there are many sheets.
    fn source(&self) -> String {
        let Self {
            all, most, sheet, ..
        } = self;
        if most.saturating_mul(2) > *all {
            format!("one drawing most of all, \"{sheet}\"")
        } else {
            format!("{} drawings", self.sheets)
        }
    }

    /// Refuses a stack that nobody has asked for.
    ///
    /// # Errors
    /// One sentence that says how many pages there are, why, and how to go on.
    pub fn allow(&self, paper: Paper, asked: Consent) -> Result<(), String> {
        match (self.stack(), asked) {
            (Stack::Usual, _) | (Stack::Many, Consent::All) => Ok(()),
            (Stack::Many, Consent::Usual) => Err(format!(
                "{}: take larger paper, or print them with --all",
                self.words(paper)
            )),
            (Stack::TooMany, _) => Err(self.refusal(paper)),
        }
    }

    /// Why so many are never made, in one sentence without a period.
    pub fn refusal(&self, paper: Paper) -> String {
        format!(
            "{}, which is more than is ever printed at once: take larger paper, make a set smaller, or mend the size that makes the sheet so large",
            self.words(paper)
        )
    }
}

/// What was asked to be printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Consent {
    /// What comes to a usual number of pages.
    Usual,
    /// All, however many pages it takes.
    All,
}
