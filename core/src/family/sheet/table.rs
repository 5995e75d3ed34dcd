use kurbo::{BezPath, Point};

use super::{COLUMN_GAP, ROW, TEXT, bar_words, letters, mass};
use crate::document::Units;
use crate::drawing::font::text_width;
use crate::drawing::{Drawing, Item, Line};
use crate::family::{Cell, Family, Row, SizeAnswer, Table};

/// What each size takes and holds, and every value that is not the same in all sizes. A value set
/// by hand is set bold with a star.
pub fn table(family: &Family, answers: &[SizeAnswer]) -> Drawing {
    let table = table_of(family, answers);
    let varying: Vec<&Row> = table.rows.iter().filter(|row| row.varies()).collect();
    let mut lines = vec![head(&table)];
    lines.extend(facts(family.base.units, answers));
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
    Drawing {
        items: set_in_columns(&lines),
    }
}

/// Every value that is the same in all sizes.
pub fn same_in_all(family: &Family, answers: &[SizeAnswer]) -> Drawing {
    let table = table_of(family, answers);
    let same = table.rows.iter().filter(|row| !row.varies());
    let mut lines = vec![Texts::heading("The same in all sizes")];
    lines.extend(same.map(Texts::same));
    Drawing {
        items: set_in_columns(&lines),
    }
}

fn table_of(family: &Family, answers: &[SizeAnswer]) -> Table {
    let documents: Vec<_> = answers.iter().map(|a| a.document.clone()).collect();
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
    // Two ends of a rein have sections of the same labels.
    let place = row
        .field
        .path
        .split('.')
        .nth(1)
        .filter(|place| row.field.path.split('.').count() > 2 && !place.is_empty());
    let part = row.field.part.name();
    let label = row.field.label.to_lowercase();
    match place {
        Some(place) => format!("{part} {}, {label}", place.replace('_', " ")),
        None => format!("{part}, {label}"),
    }
}

fn head(table: &Table) -> Texts {
    Texts {
        bold: true,
        ..Texts::plain("Size", table.labels.iter().cloned())
    }
}

/// Bar, mass and range of each size.
fn facts(units: Units, answers: &[SizeAnswer]) -> Vec<Texts> {
    let show = units.show();
    let row = |name: &str, text: &dyn Fn(&SizeAnswer) -> String| {
        Texts::plain(name, answers.iter().map(text))
    };
    vec![
        row("forged from", &|a| bar_words(&a.document.bar.stock)),
        row("bar for a pair", &|a| {
            show.text(a.balance.pair_bar_length_mm)
        }),
        row("mass of a pair", &|a| mass(units, a.balance.pair_mass_kg)),
        row("holds from", &|a| held(a, |r| show.text(r.least.size_mm))),
        row("holds to", &|a| held(a, |r| show.text(r.most.size_mm))),
        row("to know", &|a| {
            a.worst()
                .map_or("nothing", crate::finding::Severity::name)
                .to_owned()
        }),
    ]
}

fn held(answer: &SizeAnswer, text: impl Fn(&crate::fit::WorkRange) -> String) -> String {
    answer
        .fit
        .range
        .as_ref()
        .map_or_else(|_| "nothing".to_owned(), text)
}

/// Lines of text with each column as wide as its widest cell.
fn set_in_columns(lines: &[Texts]) -> Vec<Item> {
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
    let mut items = Vec::new();
    for (row, line) in (0_u32..).zip(lines) {
        let y = -ROW * f64::from(row);
        items.push(letters(Point::new(0.0, y), &line.name, line.bold));
        for ((text, by_hand), x) in line.cells.iter().zip(&starts) {
            items.push(letters(Point::new(*x, y), text, *by_hand || line.bold));
        }
    }
    items.push(rule(starts[count]));
    items
}

/// The line under the head.
fn rule(to: f64) -> Item {
    let mut line = BezPath::new();
    line.move_to((0.0, -0.4 * TEXT));
    line.line_to((to, -0.4 * TEXT));
    Item::line(line, Line::Fine)
}
