use kurbo::{BezPath, Point, Vec2};

use super::{COLUMN_GAP, HEAD, ROOM, ROW, ROWS_OF_A_PAGE, TEXT, bar_words, letters};
use crate::asked::{Units, section};
use crate::paper::font::{cut_short, text_width};
use crate::paper::{Drawing, Item, Line};
use crate::shop::family::{Cell, Family, InSizes, OfSize, Row, SizeAnswer, Table, ToolSizeAnswer};
use crate::tongs::document::Document;
use crate::tool::Tool;

/// What each size takes and holds, and every value that is not the same in all sizes. A value set
/// by hand is set bold with a star.
pub fn table<D: InTable>(family: &Family<D>, answers: &[D::Answer]) -> Drawing {
    Drawing {
        items: set_in_columns(&table_lines(family, answers)),
    }
}

/// The same as so many drawings as it takes for each to fit a page: a column is never cut.
pub fn table_pages<D: InTable>(family: &Family<D>, answers: &[D::Answer]) -> Vec<Drawing> {
    let lines = table_lines(family, answers);
    let tall = ROW * f64::from(u32::try_from(lines.len()).unwrap_or(u32::MAX));
    let wide = if tall > ROOM.0 { ROOM.0 } else { ROOM.1 };
    let starts = column_starts(&lines);
    let mut pages = Vec::new();
    let mut from = 0;
    while from + 1 < starts.len() {
        let room = starts[from] + wide - starts[0];
        let fitting = starts[from..].iter().take_while(|end| **end <= room);
        let end = from + fitting.count().saturating_sub(1).max(1);
        let part: Vec<Texts> = lines.iter().map(|line| line.only(from..end)).collect();
        pages.push(Drawing {
            items: set_in_columns(&part),
        });
        from = end;
    }
    pages
}

fn table_lines<D: InTable>(family: &Family<D>, answers: &[D::Answer]) -> Vec<Texts> {
    let table = table_of(family, answers);
    let varying: Vec<&Row> = table.rows.iter().filter(|row| row.varies()).collect();
    let mut lines = vec![head(&table)];
    lines.extend(facts::<D>(family.base.units(), answers));
    if !varying.is_empty() {
        lines.push(Texts::heading("Differs"));
    }
    lines.extend(varying.iter().map(|row| Texts::of(row)));
    if varying
        .iter()
        .any(|row| row.cells.iter().any(|cell| cell.by_hand))
    {
        lines.push(Texts::heading("* set by hand for this size"));
    }
    lines
}

/// Every value that is the same in all sizes; two columns of them where one is higher than a page.
pub fn same_in_all<D: InSizes>(family: &Family<D>, answers: &[D::Answer]) -> Drawing {
    let table = table_of(family, answers);
    let same = table.rows.iter().filter(|row| !row.varies());
    let mut lines = vec![Texts::heading("The same in all sizes")];
    lines.extend(same.map(Texts::same));
    if lines.len() <= ROWS_OF_A_PAGE {
        return Drawing {
            items: set_in_columns(&lines),
        };
    }
    let second = lines.split_off(lines.len().div_ceil(2));
    let starts = column_starts(&lines);
    let beside = Vec2::new(starts[starts.len() - 1] + 3.0 * COLUMN_GAP, 0.0);
    let mut items = set_in_columns(&lines);
    items.push(Item::group("", beside, letters_in_columns(&second)));
    Drawing { items }
}

fn table_of<D: InSizes>(family: &Family<D>, answers: &[D::Answer]) -> Table {
    let documents: Vec<_> = answers.iter().map(|a| a.document().clone()).collect();
    family.table_of(&documents)
}

/// One line of the table.
struct Texts {
    name: String,
    cells: Vec<(String, bool)>,
    bold: bool,
}

impl Texts {
    fn plain(name: &str, cells: impl Iterator<Item = String>) -> Self {
        Self {
            name: name.to_owned(),
            cells: cells.map(|cell| (cell, false)).collect(),
            bold: false,
        }
    }

    fn heading(words: &str) -> Self {
        Self {
            name: words.to_owned(),
            cells: Vec::new(),
            bold: true,
        }
    }

    /// The same line with some of its columns.
    fn only(&self, columns: std::ops::Range<usize>) -> Self {
        Self {
            name: self.name.clone(),
            cells: self.cells.get(columns).unwrap_or_default().to_vec(),
            bold: self.bold,
        }
    }

    fn of(row: &Row) -> Self {
        let cell = |cell: &Cell| match (&cell.text, cell.by_hand) {
            (Some(text), true) => (format!("{text} *"), true),
            (Some(text), false) => (text.clone(), false),
            (None, _) => ("-".to_owned(), false),
        };
        Self {
            name: name_of(row),
            cells: row.cells.iter().map(cell).collect(),
            bold: false,
        }
    }

    fn same(row: &Row) -> Self {
        let first = row.cells.first().and_then(|cell| cell.text.clone());
        Self::plain(&name_of(row), first.into_iter())
    }
}

fn name_of(row: &Row) -> String {
    let part = row.field.part.name();
    let label = row.field.label.to_lowercase();
    // Two ends of a rein have sections of the same labels.
    match section(row.field.part, &row.field.path) {
        Some(place) => format!("{part} {place}, {label}"),
        None => format!("{part}, {label}"),
    }
}

fn head(table: &Table) -> Texts {
    let labels = table.labels.iter();
    let labels = labels.map(|label| cut_short(label, TEXT, true, HEAD));
    Texts {
        bold: true,
        ..Texts::plain("Size", labels)
    }
}

/// What a table tells of a size beside its values.
pub trait InTable: InSizes {
    /// Facts that only such a thing has: what each is called, and its text for a size.
    const FACTS: &'static [(&'static str, Fact<Self>)];
}

/// A fact of a size in the family's units.
pub type Fact<D> = fn(&<D as InSizes>::Answer, Units) -> String;

impl InTable for Document {
    const FACTS: &'static [(&'static str, Fact<Self>)] = &[
        ("holds from", |a, units| {
            held(a, |r| units.show().text(r.least.size_mm))
        }),
        ("holds to", |a, units| {
            held(a, |r| units.show().text(r.most.size_mm))
        }),
    ];
}

impl InTable for Tool {
    const FACTS: &'static [(&'static str, Fact<Self>)] = &[("it is", tool_words)];
}

fn tool_words(answer: &ToolSizeAnswer, _units: Units) -> String {
    answer.document.style_kind().name().to_owned()
}

/// Bar, mass and what else is to be known of each size.
fn facts<D: InTable>(units: Units, answers: &[D::Answer]) -> Vec<Texts> {
    let show = units.show();
    let row = |name: &str, text: &dyn Fn(&D::Answer) -> String| {
        Texts::plain(name, answers.iter().map(text))
    };
    let mut rows = vec![
        row("forged from", &|a| bar_words(&a.document().bar().stock)),
        row(&format!("bar for a {}", D::NAME), &|a| {
            a.balance().cut_text(units)
        }),
        row(&format!("mass of a {}", D::NAME), &|a| {
            show.mass(a.mass_kg())
        }),
    ];
    let own = D::FACTS.iter();
    rows.extend(own.map(|(name, fact)| row(name, &|a| fact(a, units))));
    rows.push(row("worst finding", &|a| {
        a.worst()
            .map_or("none", crate::finding::Severity::name)
            .to_owned()
    }));
    rows
}

fn held(answer: &SizeAnswer, text: impl Fn(&crate::proof::fit::WorkRange) -> String) -> String {
    answer
        .fit
        .range
        .as_ref()
        .map_or_else(|_| "nothing".to_owned(), text)
}

/// Lines of text with each column as wide as its widest cell, and a line under the first.
fn set_in_columns(lines: &[Texts]) -> Vec<Item> {
    let starts = column_starts(lines);
    let mut items = letters_in_columns(lines);
    items.push(rule(starts[starts.len() - 1]));
    items
}

fn letters_in_columns(lines: &[Texts]) -> Vec<Item> {
    let starts = column_starts(lines);
    let mut items = Vec::new();
    for (row, line) in (0_u32..).zip(lines) {
        let y = -ROW * f64::from(row);
        items.push(letters(Point::new(0.0, y), &line.name, line.bold));
        for ((text, by_hand), x) in line.cells.iter().zip(&starts) {
            items.push(letters(Point::new(*x, y), text, *by_hand || line.bold));
        }
    }
    items
}

/// Where each column of cells begins, and the last one ends, mm.
fn column_starts(lines: &[Texts]) -> Vec<f64> {
    let count = lines.iter().map(|line| line.cells.len()).max().unwrap_or(0);
    let widest = |column: usize| {
        let cells = lines.iter().filter(|line| line.cells.len() == count);
        let widths = cells.filter_map(|line| line.cells.get(column));
        widths
            .map(|(text, _)| text_width(text, TEXT, true))
            .fold(0.0, f64::max)
            + COLUMN_GAP
    };
    let named = lines.iter().filter(|line| !line.cells.is_empty());
    let names = named.map(|line| text_width(&line.name, TEXT, line.bold));
    let mut starts = vec![names.fold(0.0, f64::max) + COLUMN_GAP];
    for column in 0..count {
        starts.push(starts[column] + widest(column));
    }
    starts
}

/// The line under the head.
fn rule(to: f64) -> Item {
    let mut line = BezPath::new();
    line.move_to((0.0, -0.4 * TEXT));
    line.line_to((to, -0.4 * TEXT));
    Item::line(line, Line::Fine)
}
