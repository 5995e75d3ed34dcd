//! The work in each view: a piece of bar along the tongs, beside them, or across them.

use kurbo::{Affine, BezPath, Point, Vec2};

use super::{polygon, polyline};
use crate::finding::Part;
use crate::number::plane::{Region, split};
use crate::paper::{Fill, Item, Line};
use crate::shape::section::Section;
use crate::tongs::model::{Lies, Model};

/// How closely drawn section outlines follow the true ones, mm.
const FINE: f64 = 0.02;

/// The work in one view: its area, the sides that may be hidden, and its break lines.
pub(super) struct Drawn {
    area: BezPath,
    sides: BezPath,
    breaks: BezPath,
}

/// How far work stands out of the tips, of what lies between the jaws, and in mm: enough to see
/// what it is, too little to take the sheet (judgement).
const STANDS_OUT: f64 = 0.45;
const LEAST_OUT: f64 = 18.0;
const MOST_OUT: f64 = 45.0;

/// The farthest x at which work is drawn, mm.
pub(in crate::draw) fn far_end(model: &Model) -> f64 {
    let (work, tip) = (&model.work, model.a.tip().max(model.b.tip()));
    match work.lies {
        Lies::Endwise | Lies::Alongside => {
            tip + (STANDS_OUT * (tip - work.from)).clamp(LEAST_OUT, MOST_OUT)
        }
        Lies::Crosswise => tip.max(work.from + work.width / 2.0),
    }
}

/// Where work that lies along the tongs begins, x in mm; beside them it runs on past the boss.
pub(in crate::draw) fn near_end(model: &Model) -> f64 {
    /// So much of it is drawn behind the boss, mm.
    const PAST: f64 = 25.0;
    match model.work.lies {
        Lies::Endwise | Lies::Crosswise => model.work.from,
        Lies::Alongside => -model.a.body.rim.reach() - PAST,
    }
}

impl Drawn {
    /// Seen along the rivet.
    pub(super) fn side(model: &Model) -> Self {
        let work = &model.work;
        match work.lies {
            Lies::Endwise | Lies::Alongside => {
                let mut drawn = along(model, work.depth / 2.0, 0.0);
                drawn.sides.extend(long_edges(model));
                drawn
            }
            Lies::Crosswise => end_on(model, Affine::translate((work.from, 0.0)), FINE),
        }
    }

    /// Seen from above the jaws.
    pub(super) fn top(model: &Model) -> Self {
        let work = &model.work;
        let middle = -model.hand_sign * work.beside;
        match work.lies {
            Lies::Endwise | Lies::Alongside => along(model, work.width / 2.0, middle),
            Lies::Crosswise => {
                let turn = Affine::translate((work.from, 0.0))
                    * Affine::rotate(std::f64::consts::FRAC_PI_2);
                across(model, work.width / 2.0, turn)
            }
        }
    }

    /// Seen onto the tips.
    pub(super) fn end(model: &Model) -> Self {
        let work = &model.work;
        match work.lies {
            Lies::Endwise | Lies::Alongside => {
                let beside = -model.hand_sign * work.beside;
                end_on(model, Affine::translate((beside, 0.0)), FINE)
            }
            Lies::Crosswise => across(model, work.depth / 2.0, Affine::IDENTITY),
        }
    }

    /// Painted before the halves: its area, and the lines that nothing before it hides.
    pub(super) fn painted(&self, before: &[&Region]) -> Vec<Item> {
        vec![
            Item::fill(self.area.clone(), Fill::Work).of(Part::Work),
            Item::line(self.breaks.clone(), Line::Fine).of(Part::Work),
            Item::line(split(&self.sides, before).seen, Line::Fine).of(Part::Work),
        ]
    }

    /// What it covers.
    pub(super) fn area(&self) -> &BezPath {
        &self.area
    }

    /// Its lines that lie behind the halves.
    pub(super) fn behind(&self, before: &[&Region]) -> Option<Item> {
        let behind = split(&self.sides, before).behind;
        (!behind.is_empty()).then(|| Item::line(behind, Line::Hidden).of(Part::Work))
    }
}

/// Whether work beside the tongs lies between them and the eye of the side view.
pub(super) fn is_nearest(model: &Model) -> bool {
    model.work.lies == Lies::Alongside && model.work.beside * model.hand_sign > 0.0
}

/// A bar along x, `half` mm to each side of its middle.
fn along(model: &Model, half: f64, middle: f64) -> Drawn {
    let (from, to) = (near_end(model), far_end(model));
    let open = model.work.lies == Lies::Alongside;
    bar(
        (from, to),
        half,
        (open, true),
        Affine::translate((0.0, middle)),
    )
}

/// A bar across the tongs, turned into place.
fn across(model: &Model, half: f64, turn: Affine) -> Drawn {
    let widest = |half: &crate::tongs::model::Half| half.jaw.section(half.grip.0).width;
    let wide = widest(&model.a).max(widest(&model.b));
    let out = wide / 2.0 + (0.9 * model.work.width).clamp(8.0, 30.0);
    bar((-out, out), half, (true, true), turn)
}

/// A bar from one place to another along x, broken off at the ends that are open.
fn bar(
    (from, to): (f64, f64),
    half: f64,
    (open_from, open_to): (bool, bool),
    turn: Affine,
) -> Drawn {
    let straight = |x: f64| polyline(&[Point::new(x, -half), Point::new(x, half)]);
    let end = |open: bool, x: f64| if open { ragged(x, half) } else { straight(x) };
    let (first, last) = (end(open_from, from), end(open_to, to));
    let mut whole = first.clone();
    whole.line_to((to, half));
    whole.extend(last.reverse_subpaths().iter().skip(1));
    whole.close_path();
    let mut sides = BezPath::new();
    for y in [-half, half] {
        sides.move_to((from, y));
        sides.line_to((to, y));
    }
    let mut breaks = BezPath::new();
    for (open, edge) in [(open_from, first), (open_to, last)] {
        if open {
            breaks.extend(edge);
        } else {
            sides.extend(edge);
        }
    }
    Drawn {
        area: turn * whole,
        sides: turn * sides,
        breaks: turn * breaks,
    }
}

/// A break line from (x, −half) to (x, half).
fn ragged(x: f64, half: f64) -> BezPath {
    /// How far a break line swings, in half sizes of the work, and at the most, mm.
    const SWING: (f64, f64) = (0.35, 3.0);
    let wave = (SWING.0 * half).min(SWING.1);
    let mut edge = BezPath::new();
    edge.move_to((x, -half));
    edge.curve_to((x + wave, -0.6 * half), (x + wave, -0.3 * half), (x, 0.0));
    edge.curve_to((x - wave, 0.3 * half), (x - wave, 0.6 * half), (x, half));
    edge
}

/// The section of the work, seen end on.
fn end_on(model: &Model, place: Affine, fine: f64) -> Drawn {
    let work = &model.work;
    let outline = Section::new(&work.profile, work.depth, work.width).outline(fine);
    let points: Vec<Point> = outline.into_iter().map(|(z, y)| Point::new(z, y)).collect();
    let area = place * polygon(&points);
    Drawn {
        sides: area.clone(),
        area,
        breaks: BezPath::new(),
    }
}

/// The long edges of the work that face the eye of the side view.
fn long_edges(model: &Model) -> BezPath {
    /// A corner in the middle of the section is no long edge on this side of it.
    const MIDDLE: f64 = 0.05;
    /// Of the depth: what lies farther out runs along the outline.
    const OUTLINE: f64 = 0.48;
    let work = &model.work;
    let mut path = BezPath::new();
    if work.profile.curved() {
        return path;
    }
    let section = Section::new(&work.profile, work.depth, work.width);
    let (from, to) = (near_end(model), far_end(model));
    for u in section.breaks().into_iter().filter(|&u| u > MIDDLE) {
        for y in [section.upper(u), section.lower(u)] {
            if y.abs() < OUTLINE * work.depth {
                path.move_to((from, y));
                path.line_to((to, y));
            }
        }
    }
    path
}

/// The size of the work between the jaws, with the places that a dimension of it may start from.
pub(in crate::draw) fn upright_size(model: &Model) -> (Point, Vec2) {
    /// Of what stands out of the tips.
    const ALONG: f64 = 0.28;
    /// Past the tips where the work lies across them, mm.
    const PAST: f64 = 8.0;
    let tip = model.a.tip().max(model.b.tip());
    let half = Vec2::new(0.0, model.work.depth / 2.0);
    let x = match model.work.lies {
        Lies::Endwise | Lies::Alongside => tip + ALONG * (far_end(model) - tip),
        Lies::Crosswise => tip + PAST,
    };
    (Point::new(x, 0.0), half)
}
