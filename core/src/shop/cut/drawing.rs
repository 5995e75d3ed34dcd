//! Bars with their pieces, to one scale.

use kurbo::{BezPath, Point, Rect, Shape};

use super::plan::{CutBar, CutPiece, CutPlan, StockPlan};
use crate::asked::Units;
use crate::finding::Part;
use crate::paper::font::{cut_short, text_width};
use crate::paper::{Align, Drawing, Fill, Item, Line, TextItem};
use crate::shop::family::sheet::bar_words;

/// What the longest bar may take on paper, mm: the window of an A4 page, upright.
const WIDE: f64 = 165.0;
/// Scales of reduction (ISO 5455).
const REDUCTIONS: [u32; 6] = [2, 5, 10, 20, 50, 100];
/// How thick bars are drawn, mm: steel is told in words, and thin bars would not show.
const THICK: f64 = 8.0;
/// Size of the lettering, mm.
const TEXT: f64 = 3.0;
/// From one line of text to the next, mm.
const ROW: f64 = 4.8;
/// Between the lines of a hatching, mm.
const HATCH: f64 = 1.6;
/// The narrowest that a cut is drawn, mm: thinner ones would not show.
const CUT: f64 = 0.4;
/// Colours of pieces, one after the other and over again: each has its letter, too.
const COLOURS: [Part; 5] = [
    Part::Jaw,
    Part::Boss,
    Part::Rein,
    Part::Neck,
    Part::Shoulder,
];

/// One millimetre on the drawing is so many of bar: the largest scale at which the longest bar has
/// room on a page.
pub fn reduction(plan: &CutPlan) -> u32 {
    let bars = plan.stocks.iter().flat_map(|stock| &stock.bars);
    let longest = bars.map(|bar| bar.length_mm).fold(1.0, f64::max);
    let fits = |by: &u32| longest / f64::from(*by) <= WIDE;
    let last = REDUCTIONS[REDUCTIONS.len() - 1];
    REDUCTIONS.into_iter().find(fits).unwrap_or(last)
}

/// Every bar of a cut list with its pieces, each with its letter and its length, cuts and short ends
/// hatched, under each other; bars that are cut alike once, with their number. All are at the scale
/// of [`reduction`] along, and as thick as their letters want.
pub fn drawing(plan: &CutPlan, units: Units) -> Drawing {
    let mut sheet = Sheet {
        units,
        along: 1.0 / f64::from(reduction(plan)),
        names: Vec::new(),
        items: Vec::new(),
        y: 0.0,
    };
    plan.stocks.iter().for_each(|stock| sheet.stock(stock));
    if let Some(price) = plan.price().filter(|price| *price > 0.0) {
        sheet.line(&format!("To buy, together: {price:.2}"), true);
    }
    Drawing { items: sheet.items }
}

/// Bars that are cut alike, one after the other: the first, and how many there are.
pub fn alike(bars: &[CutBar]) -> Vec<(&CutBar, usize)> {
    let mut all: Vec<(&CutBar, usize)> = Vec::new();
    for bar in bars {
        match all.last_mut() {
            Some((same, count)) if *same == bar => *count += 1,
            Some(_) | None => all.push((bar, 1)),
        }
    }
    all
}

struct Sheet {
    units: Units,
    /// Millimetres on paper to one of bar.
    along: f64,
    /// What is cut, in the order of its letters.
    names: Vec<CutPiece>,
    items: Vec<Item>,
    y: f64,
}

impl Sheet {
    fn size(&self, mm: f64) -> String {
        self.units.show().text(mm)
    }

    fn line(&mut self, text: &str, bold: bool) {
        self.items.push(Item::Text(TextItem {
            at: Point::new(0.0, self.y),
            text: text.to_owned(),
            size: TEXT,
            align: Align::Start,
            turn: 0.0,
            bold,
            part: None,
        }));
        self.y -= ROW;
    }

    fn stock(&mut self, stock: &StockPlan) {
        let steel = stock.bar.steel.name();
        self.line(&format!("{}, {steel}", bar_words(&stock.bar.stock)), true);
        self.legend(stock);
        self.y -= 0.4 * ROW;
        for (bar, count) in alike(&stock.bars) {
            self.bar(stock, (bar, count));
        }
        for line in sums(stock, self.units) {
            self.line(&line, false);
        }
        self.y -= ROW;
    }

    /// Which letter is which piece.
    fn legend(&mut self, stock: &StockPlan) {
        let mut counts: Vec<(&CutPiece, usize)> = Vec::new();
        for piece in stock.bars.iter().flat_map(|bar| &bar.pieces) {
            match counts.iter_mut().find(|(known, _)| *known == piece) {
                Some((_, count)) => *count += 1,
                None => counts.push((piece, 1)),
            }
        }
        for (piece, count) in counts {
            let letter = letter(self.known(piece));
            let size = self.size(piece.length_mm);
            let words = format!("{letter}: {}, {count} of {size}", piece.what);
            self.line(&cut_short(&words, TEXT, false, WIDE), false);
        }
    }

    fn bar(&mut self, stock: &StockPlan, (bar, count): (&CutBar, usize)) {
        let (length, left) = (self.size(bar.length_mm), self.size(bar.offcut_mm));
        let from = bar.from.name();
        let head = format!("{count} x {length} ({from}), {left} left over");
        self.line(&head, false);
        self.y -= THICK - 0.6 * TEXT;
        let mut at = stock.crop_mm;
        let mut lost = vec![(0.0, at)];
        for piece in &bar.pieces {
            let end = at + piece.length_mm;
            self.piece((at, end), piece);
            at = end + stock.kerf_mm.min(bar.length_mm - end).max(0.0);
            lost.push((end, at));
        }
        // Cuts go over the pieces: they are drawn wider than they are.
        lost.into_iter().for_each(|stretch| self.lost(stretch));
        self.end(at, bar);
        let frame = self.area(0.0, bar.length_mm);
        self.items
            .push(Item::line(frame.to_path(0.1), Line::Outline));
        self.y -= 1.6 * ROW;
    }

    /// The place of a stretch of bar on paper.
    fn area(&self, from: f64, to: f64) -> Rect {
        Rect::new(from * self.along, self.y, to * self.along, self.y + THICK)
    }

    fn piece(&mut self, (from, to): (f64, f64), piece: &CutPiece) {
        let area = self.area(from, to);
        let at = self.known(piece);
        let colour = Fill::Part(COLOURS[at % COLOURS.len()]);
        self.items.push(Item::fill(area.to_path(0.1), colour));
        self.items.push(Item::line(area.to_path(0.1), Line::Fine));
        let size = self.size(piece.length_mm);
        self.words(area, 0.56, &letter(at));
        self.words(area, 0.14, &size);
    }

    /// Words in the middle of an area, where they have room.
    fn words(&mut self, area: Rect, up: f64, words: &str) {
        let room = area.width() - 0.3 * TEXT;
        if text_width(words, TEXT, false) <= room {
            let at = Point::new(area.center().x, area.y0 + up * THICK);
            self.items.push(Item::text(at, words, TEXT, Align::Middle));
        }
    }

    /// The place of a piece among those that are named.
    fn known(&mut self, piece: &CutPiece) -> usize {
        let at = self.names.iter().position(|known| known == piece);
        at.unwrap_or_else(|| {
            self.names.push(piece.clone());
            self.names.len() - 1
        })
    }

    /// A stretch that is lost.
    fn lost(&mut self, (from, to): (f64, f64)) {
        if to > from {
            let mut area = self.area(from, to);
            area.x1 = area.x1.max(area.x0 + CUT);
            self.hatched(area);
        }
    }

    /// What is left: plain and named where it is kept, hatched where it is too short.
    fn end(&mut self, from: f64, bar: &CutBar) {
        if bar.offcut_mm <= 0.0 {
            return;
        }
        let area = self.area(from, bar.length_mm);
        if bar.kept_mm > 0.0 {
            let size = self.size(bar.kept_mm);
            self.words(area, 0.56, "left over");
            self.words(area, 0.12, &size);
        } else {
            self.hatched(area);
        }
    }

    fn hatched(&mut self, area: Rect) {
        self.items.push(Item::fill(area.to_path(0.1), Fill::Waste));
        self.items.push(Item::line(hatching(area), Line::Fine));
    }
}

/// A, B, ... Z, AA, AB, ...
fn letter(at: usize) -> String {
    const ALPHABET: &[u8; 26] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZ";
    let last = char::from(ALPHABET[at % ALPHABET.len()]);
    match at / ALPHABET.len() {
        0 => last.to_string(),
        more => letter(more - 1) + &last.to_string(),
    }
}

/// Slanting lines over an area, none outside it.
fn hatching(area: Rect) -> BezPath {
    let mut lines = BezPath::new();
    let mut at = area.x0 - area.height() + HATCH;
    while at < area.x1 {
        // The line y - y0 = x - at, from the lower or left edge to the upper or right one.
        let (from, to) = (at.max(area.x0), (at + area.height()).min(area.x1));
        if to > from {
            lines.move_to((from, area.y0 + from - at));
            lines.line_to((to, area.y0 + to - at));
        }
        at += HATCH;
    }
    lines
}

/// What a stock's bars come to, a line each.
pub fn sums(stock: &StockPlan, units: Units) -> Vec<String> {
    let show = units.show();
    let part = |name: &str, length: f64| {
        format!(
            "{name} {}, {}",
            show.text(length),
            units.show().mass(stock.mass_kg(length))
        )
    };
    let (all, pieces, kept) = (
        stock.sum(|bar| bar.length_mm),
        stock.sum(CutBar::pieces_mm),
        stock.sum(|bar| bar.kept_mm),
    );
    vec![
        format!("{}; {}", told(stock), kept_told(stock)),
        format!(
            "{}; {}; {}; {}",
            part("bars", all),
            part("pieces", pieces),
            part("kept", kept),
            part("lost", all - pieces - kept)
        ),
        format!(
            "cut {}, crop {}, ends from {} are kept",
            show.text(stock.kerf_mm),
            show.text(stock.crop_mm),
            show.text(stock.least_mm)
        ),
    ]
}

/// `3 bars, and no plan has fewer`.
fn told(stock: &StockPlan) -> String {
    let bars = stock.bars.len();
    let word = if bars == 1 { "bar" } else { "bars" };
    if stock.proven_least {
        format!("{bars} {word}: proven that none fewer will do")
    } else {
        format!(
            "{bars} {word}: not proven to be the fewest, at least {} are needed",
            stock.lower_bound
        )
    }
}

fn kept_told(stock: &StockPlan) -> &'static str {
    if stock.proven_offcut {
        "nothing keeps more in ends worth keeping"
    } else {
        "another order might keep a longer end"
    }
}
