//! From a drawing to pages of paper, true to size: one millimetre stays one millimetre.
//!
//! [`tile`] lays the views of all sheets on as few pages as can be, cut only where plain bar runs,
//! and puts the page furniture around them: check bars, joining marks, page map, title block. A
//! drawing that is larger than the paper and may be cut anywhere comes to a grid of windows that
//! overlap.

mod bars;
mod block;
mod grid;
mod ink;
mod joins;
mod joint;
mod layout;
mod lettering;
mod pack;
mod paper;
mod plan;
mod shared;
mod strip;
mod symbol;

pub(crate) use lettering::{Weight, text, wrap};
pub use paper::{LARGEST_SIDE, OwnPaper, Paper, PaperError, PaperOptions, SMALLEST_SIDE};

use kurbo::Rect;

use super::{Drawing, GroupItem, Item, Line, Stretch};
use crate::paper::Projection;
use grid::Grid;
use ink::Ink;
use joins::Mark;
use plan::{Bundle, How};
use strip::{Map, Strip};

/// Where the name of a sheet stands on its parts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Named {
    /// At its views, and where there is room for it.
    #[default]
    WhereBlank,
    /// At each of its parts.
    Always,
    /// Only in the title block: a table or a list that has headings of its own.
    InTitleBlock,
}

/// A drawing with the name under which it is printed.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// What is drawn, such as `Half A, finished`.
    pub title: String,
    /// The drawing as it comes onto paper, mm.
    pub drawing: Drawing,
    /// One millimetre on paper is so many of the thing drawn; 1 is full size.
    pub reduced: u32,
    /// Whether each of its parts must say what it is.
    pub named: Named,
    /// Where a joint may run through it: stretches of x in which plain bar lies. Without any, what
    /// is larger than the paper is cut wherever it must.
    pub plain: Vec<Stretch>,
    /// Where a joint may run too if a view cannot be cut in plain bar alone: bent bar, but no head.
    pub bent: Vec<Stretch>,
}

impl Sheet {
    /// A drawing of full size.
    pub fn full_size(title: impl Into<String>, drawing: Drawing) -> Self {
        Self {
            title: title.into(),
            drawing,
            reduced: 1,
            named: Named::WhereBlank,
            plain: Vec::new(),
            bent: Vec::new(),
        }
    }

    /// The same with its name on every part, for sheets that share pages with those of other things.
    #[must_use]
    pub fn always_named(self) -> Self {
        Self {
            named: Named::Always,
            ..self
        }
    }

    /// The same with its name in the title block alone, for tables and lists with headings of their own.
    #[must_use]
    pub fn named_in_title_block(self) -> Self {
        Self {
            named: Named::InTitleBlock,
            ..self
        }
    }

    /// The same, to be cut here too where no plain bar lies for it.
    #[must_use]
    pub fn bent(self, bent: impl IntoIterator<Item = Stretch>) -> Self {
        let bent = bent.into_iter().collect();
        Self { bent, ..self }
    }

    /// The same, to be cut only where plain bar lies.
    #[must_use]
    pub fn plain(self, plain: impl IntoIterator<Item = Stretch>) -> Self {
        let plain = plain.into_iter().collect();
        Self { plain, ..self }
    }
}

/// What the title block says of every sheet (fields after ISO 7200).
#[derive(Debug, Clone, PartialEq, Default)]
pub struct TitleBlock {
    /// Name of the design.
    pub design: String,
    /// Which size is drawn: `cold size`, or `hot size, 900 °C`. Set in capitals.
    pub size_note: String,
    /// What bare numbers are, such as `sizes in inches`.
    pub unit: String,
    /// The day, as it is to be read.
    pub date: Option<String>,
    /// How the views are laid out, for the symbol.
    pub projection: Projection,
    /// What stands against making the thing, in bold before the notes.
    pub stop: Option<String>,
    /// Further lines, above the title block; the first four lines that they and the Stop fill are shown.
    pub notes: Vec<String>,
}

/// A sheet of a set, with a title block of its own.
#[derive(Debug, Clone, PartialEq)]
pub struct SetSheet {
    /// The drawing and its name.
    pub sheet: Sheet,
    /// What its title block says.
    pub title: TitleBlock,
}

/// A page of paper: items in mm, y up, origin at its lower left corner.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Page {
    /// Width in mm.
    pub width_mm: f64,
    /// Height in mm.
    pub height_mm: f64,
    /// What is on it, back to front.
    pub items: Vec<Item>,
}

/// A page's place among all pages and in its sheet.
struct Place {
    /// Number of the sheet's first page, from 1.
    first: usize,
    /// Number of all pages.
    total: usize,
    /// Column and row of this page, from the left and from the top.
    at: (usize, usize),
}

impl Place {
    /// The number of the page in a column and row of the same sheet.
    fn number(&self, grid: &Grid, (column, row): (usize, usize)) -> usize {
        self.first + row * grid.columns + column
    }
}

/// How pages must be drawn for a printer that is off, so that they print true: how many times as
/// large across the paper as it is fed upright, and along it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Correction {
    /// Across the paper.
    pub across: f64,
    /// Along it.
    pub along: f64,
}

impl Page {
    /// The same page for a printer that is off. It is stretched about its middle; the page itself
    /// keeps its size, and lettering its own.
    #[must_use]
    pub fn corrected(self, by: Correction) -> Self {
        let upright = self.width_mm <= self.height_mm;
        let by = if upright {
            kurbo::Vec2::new(by.across, by.along)
        } else {
            kurbo::Vec2::new(by.along, by.across)
        };
        let middle = kurbo::Point::new(self.width_mm / 2.0, self.height_mm / 2.0);
        let items = self.items.into_iter();
        Self {
            items: items.map(|item| item.stretched(by, middle)).collect(),
            ..self
        }
    }
}

/// Sheets that share pages.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Together {
    /// How many pages they take.
    pub pages: usize,
    /// Which sheets they are, each with the first of these pages that shows it, counted from 0.
    pub sheets: Vec<(usize, usize)>,
}

/// Sheets arranged on pages: they can be counted, and then drawn.
#[derive(Debug)]
pub struct Arranged<'a> {
    bundles: Vec<Bundle<'a>>,
}

/// Lays sheets on pages at full size, numbered through.
///
/// The sheets share pages. Each view is one piece, or is cut in parts where plain bar runs; the
/// parts are laid on as few pages as take them.
pub fn tile(sheets: &[Sheet], options: &PaperOptions, title: &TitleBlock) -> Vec<Page> {
    let laid: Vec<Laid<'_>> = sheets.iter().map(|sheet| (sheet, title)).collect();
    let bundles = plan::plan(&laid, &options.clamped());
    Arranged { bundles }.pages()
}

/// Lays the sheets of a set on pages as [`tile`] does, each with its own title block: neighbours
/// with the same one share pages.
pub fn tile_set(sheets: &[SetSheet], options: &PaperOptions) -> Vec<Page> {
    arranged(sheets, options).pages()
}

/// The sheets of a set arranged on pages, as [`tile_set`] lays them; nothing is drawn yet.
pub fn arranged<'a>(sheets: &'a [SetSheet], options: &PaperOptions) -> Arranged<'a> {
    let laid = sheets.iter().map(|of| (&of.sheet, &of.title));
    let bundles = plan::plan(&laid.collect::<Vec<_>>(), &options.clamped());
    Arranged { bundles }
}

/// A sheet and its title block.
type Laid<'a> = (&'a Sheet, &'a TitleBlock);

impl<'a> Arranged<'a> {
    /// These before others, numbered through.
    #[must_use]
    pub fn then(mut self, others: Self) -> Self {
        self.bundles.extend(others.bundles);
        self
    }

    /// How many pages they take.
    pub fn count(&self) -> usize {
        self.bundles.iter().map(Bundle::pages).sum()
    }

    /// Which sheets share how many pages.
    pub fn together(&self) -> Vec<Together> {
        let together = |bundle: &Bundle<'_>| Together {
            pages: bundle.pages(),
            sheets: bundle.first_pages(),
        };
        self.bundles.iter().map(together).collect()
    }

    /// The pages, drawn.
    pub fn pages(&self) -> Vec<Page> {
        let mut run = Run {
            first: 1,
            total: self.count(),
            letters: 0,
        };
        let mut pages = Vec::with_capacity(run.total);
        for bundle in &self.bundles {
            match &bundle.how {
                How::Shared(shared) => {
                    pages.extend(shared::pages(shared, bundle.title, run));
                    run.letters += shared.cut.joints.len();
                }
                How::Grid(_, sheet, grid) => {
                    let (own, joints) = gridded(sheet, grid, bundle.title, run);
                    pages.extend(own);
                    run.letters += joints;
                }
            }
            run.first = pages.len() + 1;
        }
        pages
    }
}

/// What pages are numbered and marked on from.
#[derive(Debug, Clone, Copy)]
struct Run {
    /// Number of the first page, from 1.
    first: usize,
    /// Number of all pages.
    total: usize,
    /// How many joints have their letters already.
    letters: usize,
}

/// The pages of a drawing that may be cut anywhere, and how many joints they have.
fn gridded(sheet: &Sheet, grid: &Grid, title: &TitleBlock, run: Run) -> (Vec<Page>, usize) {
    let ink = Ink::of(&sheet.drawing.items);
    let grid = grid.clone().settled(&sheet.drawing, &ink);
    let marks = joins::marks(&ink, &grid, run.letters);
    let of = |at| {
        let place = Place {
            first: run.first,
            total: run.total,
            at,
        };
        page(sheet, &grid, &marks, &place, title)
    };
    (grid.places().map(of).collect(), marks.len() / 2)
}

fn page(sheet: &Sheet, grid: &Grid, marks: &[Mark], place: &Place, title: &TitleBlock) -> Page {
    let window = grid.layout.window;
    let shift = grid.shift(place.at);
    let group = |name: &str, items| {
        Item::Group(GroupItem {
            name: name.into(),
            view: None,
            shift,
            clip: Some(window),
            items,
        })
    };
    let mut items = vec![
        group("drawing", ink::inside(&sheet.drawing.items, window - shift)),
        group("joins", joins::draw(marks, grid, place)),
    ];
    let strip = Strip {
        layout: &grid.layout,
        title,
        name: sheet.title.clone(),
        reduced: sheet.reduced,
        number: place.number(grid, place.at),
        total: place.total,
        map: map(grid, place),
    };
    items.extend(furniture(&strip));
    Page {
        width_mm: grid.layout.paper.width(),
        height_mm: grid.layout.paper.height(),
        items,
    }
}

/// All that stands around the drawing.
fn furniture(strip: &Strip<'_>) -> Vec<Item> {
    let mut items = vec![Item::line(outline(strip.layout.window), Line::Frame)];
    items.extend(bars::draw(strip.layout));
    items.extend(strip.draw());
    items
}

/// The pages of a grid in their places.
fn map(grid: &Grid, place: &Place) -> Map {
    let size = grid.layout.paper.size();
    let page = |(column, row): (usize, usize)| {
        let corner = (column as f64 * size.width, -(row as f64) * size.height);
        (Rect::from_origin_size(corner, size), Vec::new())
    };
    Map {
        pages: grid.places().map(page).collect(),
        here: place.at.1 * grid.columns + place.at.0,
        joined: grid.pages() > 1,
    }
}

/// A rectangle as a path.
fn outline(rect: Rect) -> kurbo::BezPath {
    use kurbo::Shape;
    rect.to_path(0.1)
}
