//! What is printed of a pair, chosen in one place for window and command line alike.

use reinwright_core::draw::Views;
use reinwright_core::paper::{Drawing, Sheet};
use reinwright_core::steel::Heat;

/// One kind of drawing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// The finished half, with what it is: letter, figures, sections.
    Half,
    /// The same without its rein.
    Head,
    /// The pair, set on its work.
    Pair,
    /// The pair, wide open.
    Open,
    /// Each stage of the making.
    Stages,
    /// The bar with its marks.
    Bar,
    /// The sections of a half, and the end view of the pair.
    Sections,
    /// A table of all sizes of a half, with room for what is measured.
    Calipers,
    /// The rein alone.
    Rein,
}

impl Kind {
    /// All of them, in the order in which they are printed.
    pub const ALL: [Self; 9] = [
        Self::Half,
        Self::Head,
        Self::Rein,
        Self::Pair,
        Self::Open,
        Self::Sections,
        Self::Calipers,
        Self::Stages,
        Self::Bar,
    ];

    /// The word for it on the command line.
    pub fn word(self) -> &'static str {
        match self {
            Self::Half => "half",
            Self::Head => "head",
            Self::Pair => "pair",
            Self::Open => "open",
            Self::Stages => "stages",
            Self::Bar => "bar",
            Self::Sections => "sections",
            Self::Calipers => "calipers",
            Self::Rein => "rein",
        }
    }
}

/// How long reins are drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, clap::ValueEnum)]
pub enum Reins {
    /// At their full length
    #[default]
    Whole,
    /// With their plain stretches left out, between two break lines
    Broken,
    /// Only as far as the head reaches
    LeftOut,
}

/// What of a drawing is printed beside its outline.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Look {
    /// Parts in their colours, sizes and names.
    #[default]
    WithSizes,
    /// Parts in their colours, and no sizes.
    NoSizes,
    /// Nothing: the edges alone, to be cut out; and no colour on any sheet.
    OutlineOnly,
}

/// For which heat the outline is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub enum Size {
    /// For a cold piece.
    #[default]
    Cold,
    /// For one that is so hot.
    Hot(Heat),
    /// For both, the cold one in a thin line.
    Both(Heat),
}

impl Look {
    /// A drawing of a whole thing as it is wanted: its edges alone, or with all that is drawn.
    pub(super) fn whole(self, drawing: Drawing) -> Drawing {
        match self {
            Self::WithSizes | Self::NoSizes => drawing,
            Self::OutlineOnly => drawing.edges_alone(),
        }
    }

    /// A sheet in the colours that are wanted: what is cut out needs none.
    pub(super) fn of(self, sheet: Sheet) -> Sheet {
        let drawing = match self {
            Self::WithSizes | Self::NoSizes => sheet.drawing,
            Self::OutlineOnly => sheet.drawing.uncoloured(),
        };
        Sheet { drawing, ..sheet }
    }
}

impl Size {
    /// How many times as large as cold.
    pub fn growth(self) -> f64 {
        match self {
            Self::Cold => 1.0,
            Self::Hot(heat) | Self::Both(heat) => heat.growth(),
        }
    }

    /// A thing that is drawn cold, with its edges in thin lines where both are wanted.
    pub(super) fn of(self, cold: Drawing, look: Look) -> Drawing {
        let grown = |cold: Drawing| look.whole(cold.grown(self.growth()));
        match self {
            Self::Cold => look.whole(cold),
            Self::Hot(_) => grown(cold),
            Self::Both(_) => grown(cold.clone()).with_thin(&cold),
        }
    }

    /// What the title block says.
    pub fn words(self) -> String {
        let percent = |heat: Heat| 100.0 * (heat.growth() - 1.0);
        match self {
            Self::Cold => "cold size".to_owned(),
            Self::Hot(heat) => format!("hot size, {} (+{:.2} %)", heat.words(), percent(heat)),
            Self::Both(heat) => format!(
                "hot size, {} (+{:.2} %), thin line cold",
                heat.words(),
                percent(heat)
            ),
        }
    }
}

/// What is printed of a pair.
#[derive(Debug, Clone, PartialEq)]
pub struct What {
    /// Which kinds of drawings.
    pub kinds: Vec<Kind>,
    /// Which views of halves and pair.
    pub views: Views,
    /// How long the reins are.
    pub reins: Reins,
    /// What stands beside the outline.
    pub look: Look,
    /// For which heat.
    pub size: Size,
}

impl Default for What {
    /// The half, the pair and the bar, whole and cold.
    fn default() -> Self {
        Self {
            kinds: vec![Kind::Half, Kind::Pair, Kind::Bar],
            views: Views::All,
            reins: Reins::Whole,
            look: Look::WithSizes,
            size: Size::Cold,
        }
    }
}

impl What {
    /// Whether a kind is wanted.
    pub fn has(&self, kind: Kind) -> bool {
        self.kinds.contains(&kind)
    }

    /// Reads kinds with commas between them.
    ///
    /// # Errors
    /// One sentence that names what is not known, and all that is.
    pub fn parse_kinds(text: &str) -> Result<Vec<Kind>, String> {
        let known = Kind::ALL.map(Kind::word).join(", ");
        let mut kinds = Vec::new();
        for word in text.split(',').map(str::trim).filter(|w| !w.is_empty()) {
            let kind = Kind::ALL.into_iter().find(|kind| kind.word() == word);
            let unknown = || {
                let word: String = word.chars().take(40).collect();
                format!("\"{word}\" is not among what can be printed: {known}")
            };
            kinds.push(kind.ok_or_else(unknown)?);
        }
        if kinds.is_empty() {
            return Err(format!("name what shall be printed: {known}"));
        }
        Ok(kinds)
    }
}
