//! What is asked of templates and drawings.

use std::path::PathBuf;

use clap::{Args, ValueEnum};
use reinwright_core::draw::Views;
use reinwright_core::paper;
use reinwright_core::shop::printers::Printer;
use reinwright_core::steel::Heat;

use super::made::Made;
use crate::command_line::written::{HoweverMany, OnPaper};
use crate::disk::folder;
use crate::jobs::what::{Look, Reins, Size, What};

#[derive(Debug, Args)]
pub(in crate::command_line) struct Template {
    /// Design
    pub(in crate::command_line) file: PathBuf,
    /// PDF to write; one that is there already is replaced
    #[arg(long)]
    pub(in crate::command_line) out: PathBuf,
    #[command(flatten)]
    pub(in crate::command_line) paper: OnPaper,
    #[command(flatten)]
    pub(in crate::command_line) pages: HoweverMany,
    #[command(flatten)]
    pub(in crate::command_line) printed: Printed,
}

#[derive(Debug, Args)]
pub(in crate::command_line) struct Family {
    /// Family
    pub(in crate::command_line) file: PathBuf,
    /// Folder to write to; it is made if it is not there, and files of the same names are replaced
    #[arg(long)]
    pub(in crate::command_line) out: PathBuf,
    #[command(flatten)]
    pub(in crate::command_line) paper: OnPaper,
    #[command(flatten)]
    pub(in crate::command_line) pages: HoweverMany,
    #[command(flatten)]
    pub(in crate::command_line) printed: Printed,
    /// Templates of these sizes only, by their numbers in the table, such as "1, 3-5"; the sheets
    /// of the whole set are left out then
    #[arg(long, value_name = "NUMBERS", allow_hyphen_values = true)]
    pub(in crate::command_line) sizes: Option<String>,
    /// Leave out contents, table, ranges and all sizes together: nothing but the templates
    #[arg(long)]
    pub(in crate::command_line) templates_only: bool,
    /// How many pairs of each size are to be made
    #[arg(long, default_value_t = 1, allow_negative_numbers = true, value_parser = clap::value_parser!(u32).range(1..=1000))]
    pub(in crate::command_line) pairs: u32,
    /// The stock sizes in which gaps are counted, a list a line such as "in round: 1/4, 3/8"; those
    /// kept for the window if not given
    #[arg(long, value_name = "FILE")]
    pub(in crate::command_line) stock: Option<PathBuf>,
}

/// What is printed of a pair, and how.
#[derive(Debug, Args)]
pub(in crate::command_line) struct Printed {
    /// What to print, with commas between: half, head, rein, pair, open, sections, calipers, stages,
    /// bar; half, pair and bar if not given
    #[arg(long, value_name = "KINDS", allow_hyphen_values = true)]
    pub(in crate::command_line) what: Option<String>,
    /// How long reins are drawn
    #[arg(long, value_enum, default_value = "whole")]
    pub(in crate::command_line) reins: Reins,
    /// Which views of halves and pair
    #[arg(long, value_enum, default_value = "all")]
    pub(in crate::command_line) views: Seen,
    /// Without sizes and facts
    #[arg(long)]
    pub(in crate::command_line) no_sizes: bool,
    /// The edges alone, to be cut out along them
    #[arg(long, conflicts_with = "no_sizes")]
    pub(in crate::command_line) outline_only: bool,
    /// Draw halves and pair as large as they are at a heat, such as "900 C", "1650 F" or orange
    #[arg(long, value_name = "HEAT", allow_hyphen_values = true)]
    pub(in crate::command_line) hot: Option<String>,
    /// Beside the hot outline the cold one in a thin line
    #[arg(long, requires = "hot")]
    pub(in crate::command_line) cold_too: bool,
    /// Correct the sheets for a printer of the shop, by its name
    #[arg(long, value_name = "NAME", requires = "shop")]
    pub(in crate::command_line) printer: Option<String>,
    /// The shop's folder, with its printers in printers.ron
    #[arg(long, value_name = "FOLDER")]
    pub(in crate::command_line) shop: Option<PathBuf>,
}

impl Printed {
    /// The printer that was named, from the shop's record.
    pub(in crate::command_line) fn printer(&self) -> Result<Option<Printer>, String> {
        let (Some(name), Some(shop)) = (&self.printer, &self.shop) else {
            return Ok(None);
        };
        let known = folder::printers(shop)?;
        let found = known.named(name).cloned();
        let missing = || {
            format!(
                "--printer: \"{name}\" is not noted in {}: print its check page with reinwright printer and note what it measures",
                shop.display()
            )
        };
        found.ok_or_else(missing).map(Some)
    }

    /// What is wanted; an error names the option.
    pub(in crate::command_line) fn what(&self) -> Result<What, String> {
        let usual = What::default();
        let kinds = match &self.what {
            Some(kinds) => What::parse_kinds(kinds).map_err(|why| format!("--what: {why}"))?,
            None => usual.kinds,
        };
        let heat = self.hot.as_deref().map(Heat::parse).transpose();
        let heat = heat.map_err(|why| format!("--hot: {why}"))?;
        Ok(What {
            kinds,
            views: match self.views {
                Seen::All => Views::All,
                Seen::Side => Views::Side,
                Seen::Top => Views::Top,
            },
            reins: self.reins,
            look: match (self.outline_only, self.no_sizes) {
                (true, _) => Look::OutlineOnly,
                (false, true) => Look::NoSizes,
                (false, false) => Look::WithSizes,
            },
            size: match heat {
                None => Size::Cold,
                Some(heat) if self.cold_too => Size::Both(heat),
                Some(heat) => Size::Hot(heat),
            },
        })
    }
}

/// Which views are drawn.
#[derive(Debug, Clone, Copy, clap::ValueEnum)]
pub(in crate::command_line) enum Seen {
    /// Side, top and end
    All,
    /// From the side alone
    Side,
    /// From above alone
    Top,
}

#[derive(Debug, Args)]
pub(in crate::command_line) struct Drawing {
    /// Design
    pub(in crate::command_line) file: PathBuf,
    /// SVG to write; one that is there already is replaced
    #[arg(long)]
    pub(in crate::command_line) out: PathBuf,
    /// What to draw
    #[arg(long, value_enum, default_value = "pair")]
    pub(in crate::command_line) of: DrawingOf,
    /// Of a stage: which one, counted from 0, the bar
    #[arg(long, default_value_t = 0)]
    pub(in crate::command_line) stage: usize,
    #[command(flatten)]
    pub(in crate::command_line) made: Made,
    /// Of a pattern: what the cut takes, such as "0.2 mm"; what is kept has the true size
    #[arg(
        long,
        value_name = "SIZE",
        default_value = "0 mm",
        allow_hyphen_values = true
    )]
    pub(in crate::command_line) kerf: String,
    /// Of a pattern: which piece is kept
    #[arg(long, value_enum, default_value = "inside")]
    pub(in crate::command_line) keep: Piece,
    /// Of a half or a pattern: which half
    #[arg(long, value_enum, default_value = "a")]
    pub(in crate::command_line) half: Half,
    /// How words are written: as text, or as the outlines of their letters, for a cutter that knows
    /// no fonts
    #[arg(long, value_enum, default_value = "text")]
    pub(in crate::command_line) letters: Letters,
}

/// What a drawing shows.
#[derive(Debug, Clone, Copy, clap::ValueEnum)]
pub(in crate::command_line) enum DrawingOf {
    /// The pair as set on its work; of a tool its views
    Pair,
    /// One finished half
    Half,
    /// The bar with its marks
    Bar,
    /// The half after one operation of its plan, over the finished outline
    Stage,
    /// The half as a pattern to be cut out of sheet metal: outline, hole and scribed lines apart
    Pattern,
}

/// Which half of a pair.
#[derive(Debug, Clone, Copy, clap::ValueEnum)]
pub(in crate::command_line) enum Half {
    A,
    B,
}

/// Which piece is kept of what is cut.
#[derive(Debug, Clone, Copy, clap::ValueEnum)]
pub(in crate::command_line) enum Piece {
    /// The pattern itself
    Inside,
    /// The window that it leaves
    Outside,
}

/// How the words of a drawing are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(in crate::command_line) enum Letters {
    /// As text.
    Text,
    /// As outlines.
    Outlines,
}

impl Letters {
    /// A drawing with its words written so.
    pub(in crate::command_line) fn of(self, drawing: paper::Drawing) -> paper::Drawing {
        match self {
            Self::Text => drawing,
            Self::Outlines => paper::with_letters_traced(&drawing),
        }
    }
}
