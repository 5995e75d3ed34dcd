//! From a drawing to pages of paper, true to size: one millimetre stays one millimetre.
//!
//! [`tile`] chooses how the paper lies, cuts the drawing into windows that overlap, and puts the
//! page furniture around them: check bars, joining marks, page map, title block.

mod bars;
mod grid;
mod ink;
mod joins;
mod layout;
mod lettering;
mod paper;
mod strip;
mod symbol;

pub(crate) use lettering::{Weight, text, wrap};
pub use paper::{LARGEST_SIDE, OwnPaper, Paper, PaperError, PaperOptions, SMALLEST_SIDE};

use kurbo::Rect;

use super::{Drawing, GroupItem, Item, Line};
use crate::paper::Projection;
use grid::Grid;
use ink::Ink;
use joins::Mark;

/// A drawing with the name under which it is printed.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// What is drawn, such as `Half A, finished`.
    pub title: String,
    /// The drawing as it comes onto paper, mm.
    pub drawing: Drawing,
    /// One millimetre on paper is so many of the thing drawn; 1 is full size.
    pub reduced: u32,
}

impl Sheet {
    /// A drawing of full size.
    pub fn full_size(title: impl Into<String>, drawing: Drawing) -> Self {
        Self {
            title: title.into(),
            drawing,
            reduced: 1,
        }
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

/// Lays sheets on pages at full size, numbered through, left to right and from the top down.
///
/// Each sheet's paper lies the way that needs fewest pages, then the way that leaves most room
/// around the drawing. A drawing that fits on a page stands in its middle; joints go where they
/// cut fewest lines and texts.
pub fn tile(sheets: &[Sheet], options: &PaperOptions, title: &TitleBlock) -> Vec<Page> {
    let laid: Vec<Laid<'_>> = sheets.iter().map(|sheet| (sheet, title)).collect();
    lay(&laid, options)
}

/// Lays the sheets of a set on pages as [`tile`] does, each with its own title block.
pub fn tile_set(sheets: &[SetSheet], options: &PaperOptions) -> Vec<Page> {
    let laid = sheets.iter().map(|of| (&of.sheet, &of.title));
    lay(&laid.collect::<Vec<_>>(), options)
}

/// How many pages each sheet takes, as [`tile`] lays them; nothing is laid for it.
pub fn pages_of(sheets: &[Sheet], options: &PaperOptions, title: &TitleBlock) -> Vec<usize> {
    let options = options.clamped();
    let pages = |sheet: &Sheet| grid::count(&sheet.drawing, &options, title);
    sheets.iter().map(pages).collect()
}

/// How many pages each sheet of a set takes, as [`tile_set`] lays them.
pub fn pages_of_set(sheets: &[SetSheet], options: &PaperOptions) -> Vec<usize> {
    let options = options.clamped();
    let pages = |of: &SetSheet| grid::count(&of.sheet.drawing, &options, &of.title);
    sheets.iter().map(pages).collect()
}

/// A sheet and its title block.
type Laid<'a> = (&'a Sheet, &'a TitleBlock);

fn lay(sheets: &[Laid<'_>], options: &PaperOptions) -> Vec<Page> {
    let options = options.clamped();
    let inks: Vec<Ink> = sheets.iter().map(|of| Ink::of(&of.0.drawing)).collect();
    let grids: Vec<Grid> = sheets
        .iter()
        .zip(&inks)
        .map(|((sheet, title), ink)| grid::arrange(&sheet.drawing, ink, &options, title))
        .collect();
    let total = grids.iter().map(Grid::pages).sum();
    let mut pages = Vec::with_capacity(total);
    for ((&(sheet, title), grid), ink) in sheets.iter().zip(&grids).zip(&inks) {
        let marks = joins::marks(ink, grid);
        let first = pages.len() + 1;
        pages.extend(grid.places().map(|at| {
            let place = Place { first, total, at };
            page(sheet, grid, &marks, &place, title)
        }));
    }
    pages
}

fn page(sheet: &Sheet, grid: &Grid, marks: &[Mark], place: &Place, title: &TitleBlock) -> Page {
    let window = grid.layout.window;
    let shift = grid.shift(place.at);
    let mut items = vec![Item::Group(GroupItem {
        name: "drawing".into(),
        view: None,
        shift,
        clip: Some(window),
        items: ink::inside(&sheet.drawing.items, window - shift),
    })];
    items.push(Item::Group(GroupItem {
        name: "joins".into(),
        view: None,
        shift,
        clip: Some(window),
        items: joins::draw(marks, grid, place),
    }));
    items.push(Item::line(outline(window), Line::Frame));
    items.extend(bars::draw(&grid.layout));
    items.extend(strip::draw(sheet, grid, place, title));
    Page {
        width_mm: grid.layout.paper.width(),
        height_mm: grid.layout.paper.height(),
        items,
    }
}

/// A rectangle as a path.
fn outline(rect: Rect) -> kurbo::BezPath {
    use kurbo::Shape;
    rect.to_path(0.1)
}
