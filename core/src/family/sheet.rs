//! What only a family has to draw: its table, its ranges, all sizes side by side and one over
//! the other.
//!
//! Tables and charts are laid out for paper. Pictures of the pairs come at a scale of 1 : n from
//! [`REDUCTIONS`], which the sheet's title names; the window asks for 1 : 1.

use kurbo::{Affine, BezPath, Circle, Point, Rect, Shape, Vec2};

use super::table::{Cell, Row, Table};
use super::{Coverage, Family, Gap, SizeAnswer, coverage, totals};
use crate::document::{Stock, Units};
use crate::drawing::font::text_width;
use crate::drawing::{Align, Drawing, Fill, Item, Line, PathItem, TextItem};
use crate::model::Model;

/// Scales of reduction for pictures (ISO 5455), full size first.
pub const REDUCTIONS: [u32; 5] = [1, 2, 5, 10, 20];

/// What a picture may take on paper, mm: the window of an A4 page, upright or across.
pub const ROOM: (f64, f64) = (165.0, 225.0);

/// Size of the lettering, mm.
const TEXT: f64 = 3.0;
/// From one row of a table to the next, mm.
const ROW: f64 = 4.8;
/// Between columns, mm.
const COLUMN_GAP: f64 = 4.0;

/// The largest scale at which a drawing of full size fits the room, lying either way.
pub fn reduction(full_size: &Drawing, room: (f64, f64)) -> u32 {
    let size = full_size.bounds().size();
    let fits = |n: u32| {
        let (w, h) = (size.width / f64::from(n), size.height / f64::from(n));
        (w <= room.0 && h <= room.1) || (w <= room.1 && h <= room.0)
    };
    let fitting = REDUCTIONS.into_iter().find(|n| fits(*n));
    fitting.unwrap_or(REDUCTIONS[REDUCTIONS.len() - 1])
}

/// All sizes under each other, seen along the rivet, rivets in one line, at 1 : `reduced`.
pub fn strip(answers: &[SizeAnswer], reduced: u32) -> Drawing {
    let mut items = Vec::new();
    let mut top = 0.0;
    for answer in answers {
        let picture = picture(&answer.model, reduced);
        let area = crate::drawing::bounds(&picture).unwrap_or(Rect::ZERO);
        let shift = Vec2::new(0.0, top - 1.4 * TEXT - area.y1);
        let mut group = picture;
        let at = Point::new(area.x0, area.y1 + 0.4 * TEXT);
        group.push(Item::text(at, answer.label.clone(), TEXT, Align::Start));
        items.push(Item::group(answer.label.clone(), shift, group));
        top = shift.y + area.y0 - TEXT;
    }
    Drawing { items }
}

/// A pair as set on its work, seen along the rivet.
fn picture(model: &Model, reduced: u32) -> Vec<Item> {
    let pose = Affine::scale(1.0 / f64::from(reduced));
    let (front, back) = (model.a.outline(), Model::half_b_pose() * model.b.outline());
    let rivet = Circle::new(Point::ZERO, model.rivet / 2.0).to_path(0.01);
    let (half, from) = (model.work.depth / 2.0, model.work.from);
    let tip = model.a.tip().max(model.b.tip());
    let work = Rect::new(from, -half, tip + 0.4 * (tip - from), half).to_path(0.1);
    vec![
        both(pose * work, Fill::Work, Line::Fine),
        both(pose * back, Fill::OtherHalf, Line::Outline),
        both(pose * front, Fill::Paper, Line::Outline),
        both(pose * rivet, Fill::Rivet, Line::Fine),
    ]
}

fn both(path: BezPath, fill: Fill, line: Line) -> Item {
    Item::Path(PathItem {
        path,
        line: Some(line),
        fill: Some(fill),
        part: None,
    })
}

/// Half A of every size, one over the other with their rivets together, at 1 : `reduced`; a
/// leader from each tip to its name.
pub fn overlay(answers: &[SizeAnswer], reduced: u32) -> Drawing {
    let pose = Affine::scale(1.0 / f64::from(reduced));
    let mut items = Vec::new();
    for answer in answers {
        items.push(Item::line(pose * answer.model.a.outline(), Line::Fine));
        let hole = answer.document.rivet.hole.mm() / 2.0;
        let hole = Circle::new(Point::ZERO, hole).to_path(0.01);
        items.push(Item::line(pose * hole, Line::Fine));
    }
    items.extend(names(answers, pose));
    Drawing { items }
}

/// The names of an overlay beside the tips, from the innermost tip down, none over another.
fn names(answers: &[SizeAnswer], pose: Affine) -> Vec<Item> {
    let tip = |answer: &SizeAnswer| {
        let jaw = &answer.model.a.jaw;
        pose * jaw.edge_point(crate::sweep::Edge::Outer, jaw.length())
    };
    let mut tips: Vec<_> = answers.iter().map(|a| (tip(a), &a.label)).collect();
    tips.sort_by(|a, b| b.0.y.total_cmp(&a.0.y));
    let right = tips.iter().map(|(p, _)| p.x).fold(0.0, f64::max) + 3.0 * TEXT;
    let first = tips.first().map_or(0.0, |(p, _)| p.y) + ROW;
    let mut items = Vec::new();
    let mut y = first;
    for (from, label) in tips {
        y = (from.y - 0.3 * TEXT).min(y - ROW).max(y - 2.0 * ROW);
        let mut leader = BezPath::new();
        leader.move_to(from);
        leader.line_to((right - 1.0, y + 0.35 * TEXT));
        items.push(Item::line(leader, Line::Dimension));
        items.push(Item::text(
            Point::new(right, y),
            label.as_str(),
            TEXT,
            Align::Start,
        ));
    }
    items
}

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

/// A bar as it is bought: `3/4 in square`.
pub fn bar_words(stock: &Stock) -> String {
    match stock {
        Stock::Round { diameter } => format!("{diameter} round"),
        Stock::Square { side } => format!("{side} square"),
        Stock::Flat { thickness, width } => format!("{thickness} x {width}"),
    }
}

/// A mass in the document's units: pounds or kilograms.
pub fn mass(units: Units, kg: f64) -> String {
    /// Kilograms in a pound, exact by the international agreement of 1959.
    const KG_PER_LB: f64 = 0.453_592_37;
    match units {
        Units::Inch => format!("{:.2} lb", kg / KG_PER_LB),
        Units::Millimetre => format!("{kg:.2} kg"),
    }
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

fn letters(at: Point, text: &str, bold: bool) -> Item {
    Item::Text(TextItem {
        at,
        text: text.to_owned(),
        size: TEXT,
        align: Align::Start,
        turn: 0.0,
        bold,
        part: None,
    })
}

/// What the set holds, shape by shape: a bar for each size with a tick at its own work, gaps
/// marked and put in words; beside it the bar and the mass of each pair. Then the bar for the
/// whole set.
pub fn ranges(family: &Family, answers: &[SizeAnswer], pairs_of_each: u32) -> Drawing {
    let units = family.base.units;
    let mut chart = Chart {
        units,
        answers,
        items: Vec::new(),
        y: 0.0,
        names: answers
            .iter()
            .map(|a| text_width(&a.label, TEXT, false))
            .fold(0.0, f64::max),
    };
    let all = coverage(answers);
    all.iter().for_each(|coverage| chart.coverage(coverage));
    chart.without_range();
    chart.totals(pairs_of_each);
    Drawing { items: chart.items }
}

struct Chart<'a> {
    units: Units,
    answers: &'a [SizeAnswer],
    items: Vec<Item>,
    y: f64,
    names: f64,
}

/// Width of the chart's bars, mm.
const CHART: f64 = 80.0;

impl Chart<'_> {
    fn line(&mut self, text: &str, bold: bool) {
        self.items
            .push(letters(Point::new(0.0, self.y), text, bold));
        self.y -= ROW;
    }

    fn coverage(&mut self, coverage: &Coverage) {
        let from = coverage
            .spans
            .iter()
            .map(|s| s.from_mm)
            .fold(f64::MAX, f64::min);
        let to = coverage.spans.iter().map(|s| s.to_mm).fold(0.0, f64::max);
        let (left, scale) = (self.names + COLUMN_GAP, CHART / (to - from).max(1e-9));
        let x = |mm: f64| left + (mm - from) * scale;
        self.line(&format!("Holds {}", coverage.shape), true);
        let top = self.y + 0.8 * TEXT;
        for span in &coverage.spans {
            self.span(span.size, (x(span.from_mm), x(span.to_mm)), x);
        }
        for gap in &coverage.gaps {
            self.gap((x(gap.from_mm), x(gap.to_mm)), top);
        }
        let show = self.units.show();
        let ends = [
            (left, show.text(from), Align::Start),
            (left + CHART, show.text(to), Align::End),
        ];
        for (x, text, align) in ends {
            self.items
                .push(Item::text(Point::new(x, self.y), text, TEXT, align));
        }
        self.y -= ROW;
        coverage.gaps.iter().for_each(|gap| self.say(gap));
        self.y -= ROW;
    }

    fn span(&mut self, size: usize, (from, to): (f64, f64), x: impl Fn(f64) -> f64) {
        let answer = &self.answers[size];
        let y = self.y;
        self.items
            .push(letters(Point::new(0.0, y), &answer.label, false));
        let bar = Rect::new(from, y - 0.1 * TEXT, to, y + 0.8 * TEXT).to_path(0.1);
        self.items.push(both(
            bar,
            Fill::Part(crate::document::Part::Jaw),
            Line::Fine,
        ));
        let own = x(answer.document.work.size().mm());
        let mut tick = BezPath::new();
        tick.move_to((own, y - 0.3 * TEXT));
        tick.line_to((own, y + TEXT));
        self.items.push(Item::line(tick, Line::Mark));
        let right = self.names + 2.0 * COLUMN_GAP + CHART;
        let about = self.about(answer);
        self.items
            .push(letters(Point::new(right, y), &about, false));
        self.y -= ROW;
    }

    fn about(&self, answer: &SizeAnswer) -> String {
        let bar = self.units.show().text(answer.balance.pair_bar_length_mm);
        let mass = mass(self.units, answer.balance.pair_mass_kg);
        format!("{bar} of {}, {mass}", bar_words(&answer.document.bar.stock))
    }

    fn gap(&mut self, (from, to): (f64, f64), top: f64) {
        let area = Rect::new(from, self.y + 0.8 * TEXT, to.max(from + 0.3), top);
        self.items
            .push(both(area.to_path(0.1), Fill::Warning, Line::Warning));
    }

    fn say(&mut self, gap: &Gap) {
        self.line(&gap.sentence(self.units), false);
    }

    /// Sizes that hold nothing at all are not forgotten.
    fn without_range(&mut self) {
        for answer in self.answers {
            if let Err(no) = &answer.fit.range {
                self.line(&format!("{} holds nothing: {no}", answer.label), false);
            }
        }
    }

    fn totals(&mut self, pairs_of_each: u32) {
        let pairs = if pairs_of_each == 1 { "pair" } else { "pairs" };
        self.line(
            &format!("Bar for {pairs_of_each} {pairs} of each size"),
            true,
        );
        for total in totals(self.answers, pairs_of_each) {
            let text = format!(
                "{} of {} {}, {}, for {} pairs",
                self.units.show().text(total.length_mm),
                bar_words(&total.bar.stock),
                total.bar.steel.name(),
                mass(self.units, total.mass_kg),
                total.pairs
            );
            self.line(&text, false);
        }
    }
}

/// A contents page: each sheet's name and its first page.
pub fn contents(title: &str, entries: &[(String, usize)]) -> Drawing {
    /// From the names' start to the page numbers' end, mm.
    const WIDE: f64 = 150.0;
    let mut items = vec![letters(Point::ZERO, title, true)];
    for (row, (name, page)) in (1_u32..).zip(entries) {
        let y = -ROW * (f64::from(row) + 0.5);
        items.push(letters(Point::new(0.0, y), name, false));
        let at = Point::new(WIDE, y);
        items.push(Item::text(at, page.to_string(), TEXT, Align::End));
    }
    Drawing { items }
}
