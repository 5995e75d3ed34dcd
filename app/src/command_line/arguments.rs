//! What can be asked on the command line.

use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};
use reinwright_core::draw::Views;
use reinwright_core::paper;
use reinwright_core::proof::strength::{JAW_CELSIUS, StrengthLoad};
use reinwright_core::shop::printers::Printer;
use reinwright_core::steel::Heat;
use reinwright_core::units::Temperature;

use crate::disk::folder;
use crate::jobs::pages::Consent;
use crate::jobs::what::{Look, Reins, Size, What};

/// Draw a pair of tongs, balance it to the bar, print it full size.
#[derive(Debug, Parser)]
#[command(name = "reinwright", version, args_conflicts_with_subcommands = true)]
pub(super) struct Arguments {
    /// Design to open in the window
    pub(super) file: Option<PathBuf>,
    #[command(subcommand)]
    pub(super) job: Option<Job>,
}

#[derive(Debug, Subcommand)]
pub(super) enum Job {
    /// Write a whole design in proportion to the work and the bar, or a tool in proportion to its bar
    New(New),
    /// Write the tools that make a pair: punch, drift, rivet set, and the swage for round bits
    #[command(name = "tools-for")]
    ToolsFor(super::tool::ToolsFor),
    /// Which jaw styles suit some work, which would be unsafe, and why
    Choose(Choose),
    /// How much of which bar, and where to mark it
    Balance(Asked),
    /// What work the pair holds and how, what a squeeze does to it
    Fit(Loaded),
    /// What you should know: exit status 0 for nothing above a Note, 1 for Mend, 2 for Stop
    Findings(Loaded),
    /// How the pair is made: operations in order, what the steel is before and after each
    Plan(Plan),
    /// The job sheet as PDF: its first page alone is enough at the anvil
    #[command(name = "job-sheet")]
    Sheet(super::job_sheet::Asked),
    /// Write a file of heat sources to begin with: a forge, a fire and coils, to be changed to yours
    Sources(Sources),
    /// Which coil would heat the most of some designs, and whether the machine drives it
    Coil(Coil),
    /// Full-size templates as PDF: finished half, pair as set, bar mark-out
    Template(Template),
    /// The pair, its half or its bar as SVG, one unit to the millimetre
    Drawing(Drawing),
    /// All sizes of a family: one PDF of the set, drawings as SVG, each size as its own design
    Family(Family),
    /// The printers of a shop: their check page, and what was measured on it
    Printer(super::printer::Asked),
    /// The designs and families of a folder, and which of them hold some stock
    Shelf(Shelf),
    /// Which lengths to cut from which bars for so many pairs: fewest bars, most useful offcut
    Cut(super::cut::Asked),
    /// What came out of the bar: your own scale and margin from a half that you measured
    CameOut(super::came_out::Asked),
}

#[derive(Debug, Args)]
pub(super) struct New {
    /// Jaw style, such as flat, v-bit or hollow-bit
    #[arg(long, requires = "work", required_unless_present = "tool")]
    pub(super) jaw: Option<String>,
    /// Stock that the tongs hold, such as "3/8 in flat" or "16 mm square on corners"
    #[arg(
        long,
        allow_hyphen_values = true,
        conflicts_with = "tool",
        required_unless_present = "tool"
    )]
    pub(super) work: Option<String>,
    /// A tool instead of tongs, such as "round punch", drift or cut-off-hardy
    #[arg(long, value_name = "TOOL", conflicts_with = "jaw")]
    pub(super) tool: Option<String>,
    /// Size of the tool: of a punch its hole, of a hardy tool the hardy hole; in proportion to the bar
    /// if not given
    #[arg(long, requires = "tool", allow_hyphen_values = true)]
    pub(super) size: Option<String>,
    /// A family of the tool instead of one: its sizes with commas between, where wanted each with its own
    /// bar, such as "1/4 in, 3/8 in of 1/2 in round"; of a swage its groove, of a fuller its nose, of a
    /// fork its gap, with --size for the hardy hole
    #[arg(
        long,
        requires = "tool",
        value_name = "SIZES",
        allow_hyphen_values = true
    )]
    pub(super) sizes: Option<String>,
    /// Bar that the tongs or the tool are forged from, such as "3/4 in square" or "20 mm round"
    #[arg(long, allow_hyphen_values = true)]
    pub(super) bar: String,
    /// File to write; one that is there already is replaced
    #[arg(long)]
    pub(super) out: PathBuf,
}

#[derive(Debug, Args)]
pub(super) struct Choose {
    /// Stock that the tongs shall hold, such as "5/8 in hexagon"
    #[arg(allow_hyphen_values = true)]
    pub(super) work: String,
    /// How it is held: end-on, beside, across, behind-its-head or by-its-eye
    #[arg(long, default_value = "end-on")]
    pub(super) way: String,
    /// Bar that the tongs are forged from
    #[arg(long, default_value = "3/4 in square", allow_hyphen_values = true)]
    pub(super) bar: String,
    /// Answer as JSON
    #[arg(long)]
    pub(super) json: bool,
}

/// A question about one design, or about every size of a family.
#[derive(Debug, Args)]
pub(super) struct Asked {
    /// Design or family
    pub(super) file: PathBuf,
    /// Answer as JSON, with the unit in every key
    #[arg(long)]
    pub(super) json: bool,
}

/// A question whose answer depends on how hot the jaws become in use.
#[derive(Debug, Args)]
pub(super) struct Loaded {
    #[command(flatten)]
    pub(super) asked: Asked,
    /// How hot neck and jaws become, such as "600 C" or "1100 F"; cold if not given
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    pub(super) jaw_heat: Option<String>,
    /// Of a family: the stock sizes in which gaps are counted; those kept for the window if not given
    #[arg(long, value_name = "FILE")]
    pub(super) stock: Option<PathBuf>,
}

impl Loaded {
    /// The usual squeezes with jaws as hot as was said.
    pub(super) fn load(&self) -> Result<StrengthLoad, String> {
        let Some(text) = &self.jaw_heat else {
            return Ok(StrengthLoad::default());
        };
        let heat = text.parse::<Temperature>();
        let heat = heat.map_err(|error| format!("--jaw-heat: {error}"))?;
        let (celsius, (least, most)) = (heat.celsius(), JAW_CELSIUS);
        if (least..=most).contains(&celsius) {
            return Ok(StrengthLoad::with_jaws_at(celsius));
        }
        let [asked, least, most] = [celsius, least, most].map(|it| heat.scale().text(it));
        Err(format!(
            "--jaw-heat: {asked} is not between {least} and {most}: \
             give how hot the jaws become while they hold work"
        ))
    }
}

#[derive(Debug, Args)]
pub(super) struct Plan {
    /// Design
    pub(super) file: PathBuf,
    #[command(flatten)]
    pub(super) made: Made,
    /// Heat sources, for which fire or coil heats what; those kept for the window if not given
    #[arg(long, value_name = "FILE")]
    pub(super) sources: Option<PathBuf>,
    /// Reckon the loss to scale from the heats that the sources make
    #[arg(long)]
    pub(super) scale_from_heats: bool,
    /// Folder for a drawing of each operation in its source, as SVG; it is made if it is not there
    #[arg(long, value_name = "DIR", requires = "sources")]
    pub(super) drawings: Option<PathBuf>,
    /// Answer as JSON, with the unit in every key
    #[arg(long)]
    pub(super) json: bool,
}

#[derive(Debug, Args)]
pub(super) struct Sources {
    /// File to write; one that is there already is replaced
    #[arg(long)]
    pub(super) out: PathBuf,
}

#[derive(Debug, Args)]
pub(super) struct Coil {
    /// Designs and tools that the coil is to serve; of a family every size
    #[arg(required = true)]
    pub(super) files: Vec<PathBuf>,
    /// Heat sources, for the machine and the clearance; those kept for the window if not given
    #[arg(long, value_name = "FILE")]
    pub(super) sources: Option<PathBuf>,
    /// Answer as JSON, with the unit in every key
    #[arg(long)]
    pub(super) json: bool,
}

/// How a pair is made.
#[derive(Debug, Args)]
pub(super) struct Made {
    /// Procedure: three-shoulders, reins-first, round-flattened, jaw-first, welded-rein or
    /// flat-twist, of a tool cut-first or on-the-bar; the first that suits if not given
    #[arg(long, value_name = "NAME", allow_hyphen_values = true)]
    pub(super) procedure: Option<String>,
    /// An operation to leave out, by its name in plan --json, such as "hammer it eight-sided"
    #[arg(long, value_name = "OPERATION", allow_hyphen_values = true)]
    pub(super) without: Vec<String>,
    /// Two operations, such as "make the hole, rough out the jaw": the first is done just before the
    /// second
    #[arg(long, value_name = "OPERATIONS", allow_hyphen_values = true)]
    pub(super) before: Vec<String>,
    /// A set-down on the side across from the usual one, such as "set down the rein"
    #[arg(long, value_name = "OPERATION", allow_hyphen_values = true)]
    pub(super) across: Vec<String>,
}

#[derive(Debug, Args)]
pub(super) struct Template {
    /// Design
    pub(super) file: PathBuf,
    /// PDF to write; one that is there already is replaced
    #[arg(long)]
    pub(super) out: PathBuf,
    /// Paper: a4, a3, letter, legal, tabloid, or a size such as "300 x 500 mm"
    #[arg(long, default_value = "a4", allow_hyphen_values = true)]
    pub(super) paper: String,
    /// Print however many pages it takes; more than 40 are not made without it
    #[arg(long)]
    pub(super) all: bool,
    #[command(flatten)]
    pub(super) printed: Printed,
}

/// What is printed of a pair, and how.
#[derive(Debug, Args)]
pub(super) struct Printed {
    /// What to print, with commas between: half, head, rein, pair, open, sections, calipers, stages,
    /// bar; half, pair and bar if not given
    #[arg(long, value_name = "KINDS", allow_hyphen_values = true)]
    pub(super) what: Option<String>,
    /// How long reins are drawn
    #[arg(long, value_enum, default_value = "whole")]
    pub(super) reins: Reins,
    /// Which views of halves and pair
    #[arg(long, value_enum, default_value = "all")]
    pub(super) views: Seen,
    /// Without sizes and facts
    #[arg(long)]
    pub(super) no_sizes: bool,
    /// The edges alone, to be cut out along them
    #[arg(long, conflicts_with = "no_sizes")]
    pub(super) outline_only: bool,
    /// Draw halves and pair as large as they are at a heat, such as "900 C", "1650 F" or orange
    #[arg(long, value_name = "HEAT", allow_hyphen_values = true)]
    pub(super) hot: Option<String>,
    /// Beside the hot outline the cold one in a thin line
    #[arg(long, requires = "hot")]
    pub(super) cold_too: bool,
    /// Correct the sheets for a printer of the shop, by its name
    #[arg(long, value_name = "NAME", requires = "shop")]
    pub(super) printer: Option<String>,
    /// The shop's folder, with its printers in printers.ron
    #[arg(long, value_name = "FOLDER")]
    pub(super) shop: Option<PathBuf>,
}

/// Which views are drawn.
#[derive(Debug, Clone, Copy, clap::ValueEnum)]
pub(super) enum Seen {
    /// Side, top and end
    All,
    /// From the side alone
    Side,
    /// From above alone
    Top,
}

impl Printed {
    /// The printer that was named, from the shop's record.
    pub(super) fn printer(&self) -> Result<Option<Printer>, String> {
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
    pub(super) fn what(&self) -> Result<What, String> {
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

#[derive(Debug, Args)]
pub(super) struct Drawing {
    /// Design
    pub(super) file: PathBuf,
    /// SVG to write; one that is there already is replaced
    #[arg(long)]
    pub(super) out: PathBuf,
    /// What to draw
    #[arg(long, value_enum, default_value = "pair")]
    pub(super) of: DrawingOf,
    /// Of a stage: which one, counted from 0, the bar
    #[arg(long, default_value_t = 0)]
    pub(super) stage: usize,
    #[command(flatten)]
    pub(super) made: Made,
    /// Of a pattern: what the cut takes, such as "0.2 mm"; what is kept has the true size
    #[arg(
        long,
        value_name = "SIZE",
        default_value = "0 mm",
        allow_hyphen_values = true
    )]
    pub(super) kerf: String,
    /// Of a pattern: which piece is kept
    #[arg(long, value_enum, default_value = "inside")]
    pub(super) keep: Piece,
    /// Of a half or a pattern: which half
    #[arg(long, value_enum, default_value = "a")]
    pub(super) half: Half,
    /// How words are written: as text, or as the outlines of their letters, for a cutter that knows
    /// no fonts
    #[arg(long, value_enum, default_value = "text")]
    pub(super) letters: Letters,
}

/// How the words of a drawing are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum Letters {
    /// As text.
    Text,
    /// As outlines.
    Outlines,
}

impl Letters {
    /// A drawing with its words written so.
    pub(super) fn of(self, drawing: paper::Drawing) -> paper::Drawing {
        match self {
            Self::Text => drawing,
            Self::Outlines => paper::with_letters_traced(&drawing),
        }
    }
}

#[derive(Debug, Args)]
pub(super) struct Family {
    /// Family
    pub(super) file: PathBuf,
    /// Folder to write to; it is made if it is not there, and files of the same names are replaced
    #[arg(long)]
    pub(super) out: PathBuf,
    /// Paper: a4, a3, letter, legal, tabloid, or a size such as "300 x 500 mm"
    #[arg(long, default_value = "a4", allow_hyphen_values = true)]
    pub(super) paper: String,
    /// Print however many pages it takes; more than 40 are not made without it
    #[arg(long)]
    pub(super) all: bool,
    #[command(flatten)]
    pub(super) printed: Printed,
    /// Templates of these sizes only, by their numbers in the table, such as "1, 3-5"; the sheets
    /// of the whole set are left out then
    #[arg(long, value_name = "NUMBERS", allow_hyphen_values = true)]
    pub(super) sizes: Option<String>,
    /// Leave out contents, table, ranges and all sizes together: nothing but the templates
    #[arg(long)]
    pub(super) templates_only: bool,
    /// How many pairs of each size are to be made
    #[arg(long, default_value_t = 1, allow_negative_numbers = true, value_parser = clap::value_parser!(u32).range(1..=1000))]
    pub(super) pairs: u32,
    /// The stock sizes in which gaps are counted, a list a line such as "in round: 1/4, 3/8"; those
    /// kept for the window if not given
    #[arg(long, value_name = "FILE")]
    pub(super) stock: Option<PathBuf>,
}

#[derive(Debug, Args)]
pub(super) struct Shelf {
    /// Folder of designs and families
    pub(super) folder: PathBuf,
    /// Stock to be held, such as "5/8 hex", "3/8 x 1 flat", "M16", "DN 25" or "#5 rebar": the pair that holds it
    /// best comes first; a number without a unit is in inches
    #[arg(long = "for", value_name = "STOCK", allow_hyphen_values = true)]
    pub(super) stock: Option<String>,
    /// Only what is marked so
    #[arg(long, value_enum)]
    pub(super) only: Option<Marked>,
    /// Answer as JSON, with the unit in every key
    #[arg(long)]
    pub(super) json: bool,
}

/// What the smith has marked on the shelf.
#[derive(Debug, Clone, Copy, clap::ValueEnum)]
pub(super) enum Marked {
    /// What is there
    Have,
    /// What is to be made
    Want,
}

/// What a drawing shows.
#[derive(Debug, Clone, Copy, clap::ValueEnum)]
pub(super) enum DrawingOf {
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
pub(super) enum Half {
    A,
    B,
}

/// Which piece is kept of what is cut.
#[derive(Debug, Clone, Copy, clap::ValueEnum)]
pub(super) enum Piece {
    /// The pattern itself
    Inside,
    /// The window that it leaves
    Outside,
}

/// What is asked with or without `--all`.
pub(super) fn consent(all: bool) -> Consent {
    if all { Consent::All } else { Consent::Usual }
}
