//! What a half is beside its outline: its letter, which face is marked, boss, neck and rein in
//! figures, and its sections to lay a piece against.

use kurbo::{Point, Rect, Vec2};

use super::half::turned_over;
use super::sizes::{boss_size, section_words, station_words};
use super::views::polygon;
use crate::finding::Part;
use crate::paper::{Align, Fill, Item, Line, bounds};
use crate::shape::section::Section;
use crate::tongs::document::Document;
use crate::tongs::model::{Half, Lies, Model};

/// Size of figures, mm: 12 pt. That of words is 9 pt.
const FIGURES: f64 = 4.3;
const WORDS: f64 = 3.2;
/// From one line to the next, in sizes.
const SPACING: f64 = 1.4;
/// Between two sections, mm.
const APART: f64 = 6.0;
/// How closely a section's outline is drawn, mm.
const ROUND: f64 = 0.02;

/// Which half of a pair.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Which {
    /// Both are alike.
    Either,
    /// The first.
    A,
    /// The second.
    B,
}

impl Which {
    /// What is punched on it.
    fn letters(self) -> &'static str {
        match self {
            Self::Either => "A and B",
            Self::A => "A",
            Self::B => "B",
        }
    }
}

/// The facts of a half as two groups under each other, from the origin down: lines of text, then
/// its sections in a row.
pub fn facts(document: &Document, model: &Model, which: Which) -> Vec<Item> {
    match which {
        Which::Either | Which::A => written(document, model, which),
        Which::B => {
            let (document, model) = turned_over(document, model);
            written(&document, &model, which)
        }
    }
}

fn written(document: &Document, model: &Model, which: Which) -> Vec<Item> {
    let mut items = Vec::new();
    let mut y = 0.0;
    let mut line = |words: String, size: f64| {
        y -= SPACING * size;
        items.push(Item::text(Point::new(0.0, y), words, size, Align::Start));
    };
    for words in letters(model, which) {
        line(words, WORDS);
    }
    for words in figures(document, model) {
        line(words, FIGURES);
    }
    let low = y - FIGURES;
    vec![
        Item::group("facts", Vec2::ZERO, items),
        Item::group("sections", Vec2::ZERO, sections(document, model, low)),
    ]
}

/// Which half it is, and how its marked face lies.
fn letters(model: &Model, which: Which) -> Vec<String> {
    let face = if model.turn_sign > 0.0 {
        "carries the rivet head"
    } else {
        "bears on the other half"
    };
    let letters = which.letters();
    let over = match model.work.lies {
        Lies::Alongside => {
            "turn the half a quarter towards you. The other half steps to the other side."
        }
        Lies::Endwise | Lies::Crosswise => {
            "turn the half a quarter towards you, back of the jaw up."
        }
    };
    let halves = match which {
        Which::Either => "Half A, and B like it",
        Which::A => "Half A",
        Which::B => "Half B",
    };
    vec![
        format!("{halves}: the face shown in the side view {face}."),
        format!("Punch {letters} on this face of the boss. The top view looks down on it:"),
        over.to_owned(),
    ]
}

fn figures(document: &Document, model: &Model) -> Vec<String> {
    let show = document.units.show();
    let number = |mm: f64| show.number(mm);
    let half = &model.a;
    let rein = &document.rein;
    vec![
        format!(
            "boss {}, {} thick, hole Ø{}, neck {} deep",
            boss_size(&document.boss, show),
            number(document.boss.thickness.mm()),
            number(document.rivet.hole.mm()),
            number(document.neck.depth.mm()),
        ),
        format!(
            "rein {} along, its last {} alike; overall {}",
            number(rein.length.mm()),
            number(rein.parallel.mm()),
            number(half.tip() - half.rein_end()),
        ),
    ]
}

/// The sections in a row under a y, each with its place and its size.
fn sections(document: &Document, model: &Model, top: f64) -> Vec<Item> {
    let show = document.units.show();
    let half = &model.a;
    let form = document.jaw.plain_form();
    let told = form.told();
    let last = told.len().saturating_sub(1);
    let jaw = told.iter().enumerate().map(|(place, &i)| {
        let name = match place {
            0 => "heel".to_owned(),
            place if place == last => "tip".to_owned(),
            _ => format!("at {}", show.number(form.stations[i].at)),
        };
        let section = half.jaw.section(form.stations[i].at);
        (Part::Jaw, name, station_words(&form, i, show), section)
    });
    let rein = [
        (
            "rein, start",
            0.0,
            section_words(&document.rein.start, show),
        ),
        rein_end(document, half),
    ];
    let rein = rein.map(|(name, at, words)| {
        let section = half.rein.section(at);
        (Part::Rein, name.to_owned(), words, section)
    });
    let mut items = Vec::new();
    let mut x = 0.0;
    for (part, name, words, section) in jaw.chain(rein) {
        let one = section_drawn(part, &section, [name, words]);
        let area = bounds(&one).unwrap_or(Rect::ZERO);
        let shift = Vec2::new(x - area.x0, top - area.y1);
        items.push(Item::group("section", shift, one));
        x += area.width() + APART;
    }
    items
}

/// The section in which a rein ends, or that of the hand where it has one of its own: its name,
/// where along the rein it is seen, and its words.
fn rein_end(document: &Document, half: &Half) -> (&'static str, f64, String) {
    let (rein, show) = (&document.rein, document.units.show());
    if let Some(zone) = &rein.hand_zone {
        return ("hand", half.hand_at, section_words(&zone.section, show));
    }
    // Before what is bent, rolled or rounded at the end.
    let before = (rein.parallel.mm() / 2.0).max(1.5 * rein.end.depth_mm());
    let at = half.bent_from() - before;
    ("rein, end", at, section_words(&rein.end, show))
}

/// A section at full size, with its name over it and its size under it: depth × width.
fn section_drawn(part: Part, section: &Section<'_>, [name, words]: [String; 2]) -> Vec<Item> {
    let outline: Vec<Point> = section
        .outline(ROUND)
        .into_iter()
        .map(Point::from)
        .collect();
    let path = polygon(&outline);
    let (up, down) = (section.depth / 2.0 + 0.5 * WORDS, -section.depth / 2.0);
    vec![
        Item::fill(path.clone(), Fill::Part(part)).of(part),
        Item::line(path, Line::Outline).of(part),
        Item::text(Point::new(0.0, up), name, WORDS, Align::Middle),
        Item::text(
            Point::new(0.0, down - 1.15 * FIGURES),
            words,
            FIGURES,
            Align::Middle,
        ),
    ]
}
