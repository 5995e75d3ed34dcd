//! A tool looked at along its axis, and its sections.

use kurbo::{Affine, BezPath, Point, Rect, Vec2};

use super::super::views::polygon;
use super::{Seen, title};
use crate::finding::Part;
use crate::paper::{Align, Fill, Item, Line, bounds};
use crate::shape::section::Section;
use crate::shape::sweep::Ease;
use crate::shape::{Opening, Slot, SlotEnd};
use crate::tool::{Cut, Mount, Outline};

/// How closely an outline is followed, mm.
const ROUND: f64 = 0.02;

/// Onto the working end: sections from the far end to the near one, so that what is nearer covers what
/// is behind. On paper x is z and up is y; a hardy tool is seen from above, its edge upright on paper.
pub(super) fn view(seen: &Seen<'_>) -> Vec<Item> {
    let mut cuts: Vec<(Part, Cut)> = seen
        .model
        .runs
        .iter()
        .flatten()
        .flat_map(|run| [(run.part, run.from), (run.part, run.to)])
        .collect();
    cuts.dedup_by(|a, b| a.1 == b.1);
    let mut items = Vec::new();
    for (part, cut) in cuts.into_iter().rev() {
        if cut.depth <= 0.0 {
            continue;
        }
        if cut.width <= 0.0 {
            // An edge.
            let line = crate::paper::dimension::segment(
                Point::new(0.0, -cut.depth / 2.0),
                Point::new(0.0, cut.depth / 2.0),
            );
            items.push(Item::line(line, Line::Outline).of(part));
            continue;
        }
        let path = outline(cut);
        items.push(Item::fill(path.clone(), Fill::Part(part)).of(part));
        items.push(Item::line(path, Line::Outline).of(part));
    }
    items.extend(opening(seen));
    if seen.named() {
        let area = bounds(&items).unwrap_or(Rect::ZERO);
        let name = match seen.document.shape.mount {
            Mount::Struck(_) => "End view",
            Mount::Hardy(_) => "From above",
        };
        items.push(title(name, area, seen.scale));
    }
    items
}

/// What is sunk into the working end.
fn opening(seen: &Seen<'_>) -> Vec<Item> {
    let Some(hole) = seen
        .model
        .piece
        .holes
        .first()
        .filter(|hole| hole.stretch == 0)
    else {
        return Vec::new();
    };
    match hole.opening {
        Opening::Rivet { .. } => Vec::new(),
        Opening::Cup(cup) => {
            let circle = kurbo::Circle::new(Point::ORIGIN, cup.across_mm / 2.0);
            vec![Item::line(
                kurbo::Shape::to_path(&circle, ROUND),
                Line::Outline,
            )]
        }
        Opening::Slot(slot) => match slot.end {
            SlotEnd::Round => Vec::new(),
            SlotEnd::Open => rims(&slot),
            // The line in which both flats meet.
            SlotEnd::Vee(_) => {
                let half = slot.deep_mm / 2.0;
                let (low, high) = (Point::new(0.0, -half), Point::new(0.0, half));
                let line = crate::paper::dimension::segment(low, high);
                let mut items = rims(&slot);
                items.push(Item::line(line, Line::Outline));
                items
            }
        },
    }
}

/// A groove from above, from rim to rim.
fn rims(slot: &Slot) -> Vec<Item> {
    let (z, y) = (slot.across_mm / 2.0, slot.deep_mm / 2.0);
    let path = crate::paper::dimension::rectangle(Rect::new(-z, -y, z, y));
    vec![Item::line(path, Line::Outline)]
}

fn outline(cut: Cut) -> BezPath {
    let profile = cut.outline.profile();
    let points = Section::new(&profile, cut.depth, cut.width).outline(ROUND);
    let points: Vec<Point> = points.into_iter().map(|(z, y)| Point::new(z, y)).collect();
    polygon(&points)
}

/// What a caliper measures of a section: a diameter where it is round.
fn measured(seen: &Seen<'_>, cut: Cut) -> String {
    let depth = seen.size(cut.depth);
    if cut.outline == Outline::Round && cut.depth == cut.width {
        format!("\u{d8}{depth}")
    } else {
        format!("{depth} \u{d7} {}", seen.size(cut.width))
    }
}

/// Sections in rows no wider than so many mm, each with what it measures, to lay a piece against.
pub(super) fn sections(seen: &Seen<'_>, room: f64) -> Vec<Item> {
    /// Between two sections, in text sizes.
    const APART: f64 = 1.5;
    let scale = seen.scale;
    let mut items = Vec::new();
    let (mut x, mut base, mut tall): (f64, f64, f64) = (0.0, 0.0, 0.0);
    for (part, cut) in told_once(seen) {
        let words = measured(seen, cut);
        let (lettered, under) = if seen.sized() {
            (scale.width(&words), 1.2 * scale.text)
        } else {
            (0.0, 0.0)
        };
        let wide = cut.width.max(lettered);
        if x > 0.0 && x + wide > room {
            base -= tall + under + APART * scale.text;
            (x, tall) = (0.0, 0.0);
        }
        tall = tall.max(cut.depth);
        let middle = Vec2::new(x + wide / 2.0, base - cut.depth / 2.0);
        let path = Affine::translate(middle) * outline(cut);
        items.push(Item::fill(path.clone(), Fill::Part(part)).of(part));
        items.push(Item::line(path, Line::Outline).of(part));
        if seen.sized() {
            let at = Point::new(middle.x, base - cut.depth - 1.2 * scale.text);
            items.push(Item::text(at, words, scale.text, Align::Middle).of(part));
        }
        x += wide + APART * scale.text;
    }
    if seen.named() {
        let area = bounds(&items).unwrap_or(Rect::ZERO);
        items.push(title("Sections", area, scale));
    }
    items
}

/// Every section that a piece is laid against, once. The corner under a shoulder is none: the hardy hole shapes it.
fn told_once(seen: &Seen<'_>) -> Vec<(Part, Cut)> {
    let mut all: Vec<(Part, Cut)> = Vec::new();
    for run in seen.model.runs.iter().flatten() {
        let is_corner = run.part == Part::HardyShank && run.ease != Ease::Linear;
        for cut in [run.from, run.to] {
            let known = all.iter().any(|(_, own)| *own == cut);
            if cut.small() > 0.05 && !known && !is_corner {
                all.push((run.part, cut));
            }
        }
    }
    all
}
