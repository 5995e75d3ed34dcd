//! The side view: along the rivet. Shows the opening.

use kurbo::{BezPath, Circle, Point, Shape as _};

use super::work::{Drawn, is_nearest};
use super::{Placed, part_areas, placed, polyline};
use crate::finding::Part;
use crate::number::region::{Region, split};
use crate::paper::{Fill, Item, Line};
use crate::shape::sweep::Sweep;
use crate::tongs::document::Document;
use crate::tongs::model::Model;

/// The pair with its work, without dimensions.
pub(in crate::draw) fn pair(document: &Document, model: &Model, opening: f64) -> Vec<Item> {
    let [front, back] = placed(model, opening, document.second_jaw.is_some());
    let shape = Shape::of(&front, model);
    let other = (!model.same()).then(|| Shape::of(&back, model));
    let other = other.as_ref().unwrap_or(&shape);
    let front_line = front.pose * shape.outline.clone();
    let back_line = back.pose * other.outline.clone();
    let (front_area, back_area) = (Region::new(&front_line), Region::new(&back_line));
    let work = Drawn::side(model);
    let nearest = is_nearest(model);
    let regions = [&front_area, &back_area];
    let mut items = if nearest {
        Vec::new()
    } else {
        work.painted(&regions)
    };
    items.extend(fills(&back, other, |_| Fill::OtherHalf));
    let back_split = split(&back_line, &[&front_area]);
    items.push(Item::line(back_split.seen.clone(), Line::Outline));
    items.extend(other.groove(&back));
    items.extend(fills(&front, &shape, Fill::Part));
    items.push(Item::line(front_line.clone(), Line::Outline));
    items.push(Item::line(back_split.behind, Line::Hidden));
    items.extend(shape.groove(&front));
    items.extend((!nearest).then(|| work.behind(&regions)).flatten());
    items.extend(rivet(document));
    if nearest {
        items.extend(work.painted(&[]));
        let before = Region::new(work.area());
        let behind = |line: &BezPath| Item::line(split(line, &[&before]).behind, Line::Hidden);
        let head = circle(document.rivet.head_across_mm());
        items.extend([&front_line, &back_split.seen, &head].map(behind));
    }
    items
}

/// One half alone, without dimensions.
pub(in crate::draw) fn half(model: &Model) -> Vec<Item> {
    let alone = Placed {
        half: &model.a,
        pose: kurbo::Affine::IDENTITY,
        jaw: Part::Jaw,
    };
    let shape = Shape::of(&alone, model);
    let groove = shape.groove(&alone);
    let mut items = fills(&alone, &shape, Fill::Part);
    items.push(Item::line(shape.outline, Line::Outline));
    items.extend(groove);
    let hole = Circle::new(Point::ORIGIN, model.a.body.plate.hole_radius).to_path(0.01);
    items.push(Item::fill(hole.clone(), Fill::Paper));
    items.push(Item::line(hole, Line::Outline).of(Part::Rivet));
    items
}

/// A half in its own frame: drawn once for both where they are the same.
struct Shape {
    outline: BezPath,
    parts: [(Part, BezPath); 5],
    /// The bottom of a groove, which the lips hide.
    groove: Option<BezPath>,
}

impl Shape {
    fn of(placed: &Placed<'_>, model: &Model) -> Self {
        let [a, b] = model.outlines();
        let first = std::ptr::eq(placed.half, &raw const model.a);
        Self {
            outline: if first { a } else { b }.clone(),
            parts: part_areas(placed.half, placed.jaw),
            groove: groove(&placed.half.jaw),
        }
    }

    fn groove(&self, placed: &Placed<'_>) -> Option<Item> {
        let line = placed.pose * self.groove.clone()?;
        Some(Item::line(line, Line::Hidden).of(placed.jaw))
    }
}

fn fills(placed: &Placed<'_>, shape: &Shape, fill: impl Fn(Part) -> Fill) -> Vec<Item> {
    let own = |part: Part| match part {
        Part::Jaw | Part::SecondJaw => placed.jaw,
        part => part,
    };
    let posed = |(part, area): &(Part, BezPath)| {
        let part = own(*part);
        Item::fill(placed.pose * area.clone(), fill(part)).of(part)
    };
    shape.parts.iter().map(posed).collect()
}

/// The bottom of a jaw's groove in its own frame.
fn groove(jaw: &Sweep) -> Option<BezPath> {
    let bottom = |s: f64| {
        let section = jaw.section(s);
        jaw.path.at(s).offset(jaw.rise(s) + section.lower(0.0))
    };
    let deep = |s: f64| jaw.section(s).lower(0.0) + jaw.section(s).depth / 2.0 > 0.2;
    let cuts: Vec<f64> = samples(jaw).into_iter().filter(|&s| deep(s)).collect();
    (cuts.len() > 1).then(|| {
        let points: Vec<Point> = cuts.into_iter().map(bottom).collect();
        polyline(&points)
    })
}

/// Places along a jaw that follow its blends.
fn samples(jaw: &Sweep) -> Vec<f64> {
    let cuts = jaw.cuts(0.0, jaw.length());
    // Many stations follow the shape by themselves.
    let parts: u32 = if cuts.len() < 24 { 8 } else { 2 };
    let between = |pair: &[f64]| {
        let (a, b) = (pair[0], pair[1]);
        (0..parts)
            .map(move |i| a + (b - a) * f64::from(i) / f64::from(parts))
            .collect::<Vec<_>>()
    };
    let mut all: Vec<f64> = cuts.windows(2).flat_map(between).collect();
    all.push(jaw.length());
    all
}

/// A circle about the rivet.
fn circle(diameter: f64) -> BezPath {
    Circle::new(Point::ORIGIN, diameter / 2.0).to_path(0.01)
}

pub(in crate::draw) fn rivet(document: &Document) -> Vec<Item> {
    let head = circle(document.rivet.head_across_mm());
    let shank = circle(document.rivet.diameter.mm());
    vec![
        Item::fill(head.clone(), Fill::Rivet).of(Part::Rivet),
        Item::line(head, Line::Outline).of(Part::Rivet),
        Item::line(shank, Line::Hidden).of(Part::Rivet),
    ]
}
