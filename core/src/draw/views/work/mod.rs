//! The work in each view: a piece of bar along the tongs, beside them, or across them.

mod stretch;

use kurbo::{Affine, BezPath, Circle, Point, Shape as _, Vec2};

use super::{polygon, polyline};
use crate::asked::{Head, HexagonOf, RoundOf, Work};
use crate::finding::Part;
use crate::number::region::{Region, split};
use crate::paper::{Fill, Item, Line};
use crate::shape::section::Section;
use crate::tongs::headroom::{corner_radius_mm, short_mm};
use crate::tongs::model::{Lies, Model};
use stretch::{Legs, Seen, Stretch, Stretches};

/// How closely drawn section outlines follow the true ones, mm.
const FINE: f64 = 0.02;

/// The work in one view: its area, the sides that may be hidden, and its break lines.
pub(super) struct Drawn {
    area: BezPath,
    sides: BezPath,
    breaks: BezPath,
    /// Ribs and what lies before its face.
    marks: BezPath,
    /// What its own face hides.
    hidden: BezPath,
    /// The hole that is looked into.
    bore: BezPath,
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
        Lies::Endwise | Lies::Alongside if is_nut(&work.asked) => {
            tip.max(work.from + short_mm(&work.asked).unwrap_or_default())
        }
        Lies::Endwise | Lies::Alongside => {
            let out = (STANDS_OUT * (tip - work.from)).clamp(LEAST_OUT, MOST_OUT);
            tip + out + stretch::in_front_mm(&work.asked)
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

fn is_nut(work: &Work) -> bool {
    let nut = |of: &HexagonOf| matches!(of, HexagonOf::Nut { .. });
    matches!(work, Work::Hexagon { of, .. } if nut(of))
}

impl Drawn {
    /// Seen along the rivet.
    pub(super) fn side(model: &Model) -> Self {
        match model.work.lies {
            Lies::Endwise | Lies::Alongside => along(model, Seen::Upright, 0.0),
            Lies::Crosswise => end_on(model, Affine::translate((model.work.from, 0.0))),
        }
    }

    /// Seen from above the jaws.
    pub(super) fn top(model: &Model) -> Self {
        let work = &model.work;
        match work.lies {
            Lies::Endwise | Lies::Alongside => {
                along(model, Seen::Above, -model.turn_sign * work.beside)
            }
            Lies::Crosswise => {
                let turn = Affine::translate((work.from, 0.0))
                    * Affine::rotate(std::f64::consts::FRAC_PI_2);
                across(model, Seen::Above, turn)
            }
        }
    }

    /// Seen onto the tips.
    pub(super) fn end(model: &Model) -> Self {
        let work = &model.work;
        match work.lies {
            Lies::Endwise | Lies::Alongside => {
                let beside = -model.turn_sign * work.beside;
                end_on(model, Affine::translate((beside, 0.0)))
            }
            Lies::Crosswise => across(model, Seen::Upright, Affine::IDENTITY),
        }
    }

    /// What it covers.
    pub(super) fn area(&self) -> &BezPath {
        &self.area
    }

    /// Painted before the halves: its area, and the lines that nothing before it hides.
    pub(super) fn painted(&self, before: &[&Region]) -> Vec<Item> {
        let fine = |path: BezPath| Item::line(path, Line::Fine).of(Part::Work);
        let seen = |path: &BezPath| split(path, before).seen;
        let mut items = vec![Item::fill(self.area.clone(), Fill::Work).of(Part::Work)];
        if !self.bore.is_empty() {
            items.push(Item::fill(self.bore.clone(), Fill::Paper).of(Part::Work));
            items.push(fine(self.bore.clone()));
        }
        items.push(fine(self.breaks.clone()));
        items.push(fine(seen(&self.sides)));
        if !self.marks.is_empty() {
            items.push(fine(seen(&self.marks)));
        }
        if !self.hidden.is_empty() {
            items.push(Item::line(seen(&self.hidden), Line::Hidden).of(Part::Work));
        }
        items
    }

    /// Its lines that lie behind the halves.
    pub(super) fn behind(&self, before: &[&Region]) -> Option<Item> {
        let behind = split(&self.sides, before).behind;
        (!behind.is_empty()).then(|| Item::line(behind, Line::Hidden).of(Part::Work))
    }
}

/// Whether work beside the tongs lies between them and the eye of the side view.
pub(super) fn is_nearest(model: &Model) -> bool {
    model.work.lies == Lies::Alongside && model.work.beside * model.turn_sign > 0.0
}

/// Work along x, its middle so far beside it.
fn along(model: &Model, seen: Seen, middle: f64) -> Drawn {
    let runs_on = model.work.lies == Lies::Alongside;
    let ends = (near_end(model), far_end(model));
    let stretches = stretch::along(model, seen, ends, runs_on);
    drawn(&stretches, Affine::translate((0.0, middle)))
}

/// Work across the tongs, turned into place.
fn across(model: &Model, seen: Seen, turn: Affine) -> Drawn {
    let widest = |half: &crate::tongs::model::Half| half.jaw.section(half.grip.0).width;
    let wide = widest(&model.a).max(widest(&model.b));
    let out = wide / 2.0 + (0.9 * model.work.width).clamp(8.0, 30.0);
    drawn(&stretch::across(model, seen, out), turn)
}

/// Stretches of work one behind the other along x, broken off at the ends that are open.
fn drawn(work: &Stretches, turn: Affine) -> Drawn {
    let (Some(first), Some(last)) = (work.all.first(), work.all.last()) else {
        unreachable!("work has a stretch at least");
    };
    let end = |open: bool, x: f64, sides: (f64, f64)| {
        if open {
            ragged(x, sides)
        } else {
            upright(x, sides)
        }
    };
    let (from, to) = (
        end(work.open.0, first.ends.0, first.sides),
        end(work.open.1, last.ends.1, last.sides),
    );
    let mut sides = BezPath::new();
    for stretch in &work.all {
        long_lines(&mut sides, stretch);
    }
    for pair in work.all.windows(2) {
        let [low, high] = [pair[0].sides, pair[1].sides];
        let whole = (low.0.min(high.0), low.1.max(high.1));
        sides.extend(upright(pair[1].ends.0, whole));
    }
    let mut breaks = BezPath::new();
    for (open, edge) in [(work.open.0, &from), (work.open.1, &to)] {
        if open {
            breaks.extend(edge.iter());
        } else {
            sides.extend(edge.iter());
        }
    }
    let (mut hidden, mut marks) = (BezPath::new(), BezPath::new());
    for stretch in &work.all {
        for &y in &stretch.hidden {
            level(&mut hidden, stretch.ends, y);
        }
        ribs(&mut marks, stretch);
    }
    Drawn {
        area: turn * outline(work, &from, &to),
        sides: turn * sides,
        breaks: turn * breaks,
        marks: turn * marks,
        hidden: turn * hidden,
        bore: BezPath::new(),
    }
}

/// Around all stretches, between the edges of both ends.
fn outline(work: &Stretches, from: &BezPath, to: &BezPath) -> BezPath {
    let mut whole = BezPath::new();
    whole.extend(from.iter());
    for stretch in &work.all {
        whole.line_to((stretch.ends.0, stretch.sides.1));
        whole.line_to((stretch.ends.1, stretch.sides.1));
    }
    whole.extend(to.reverse_subpaths().iter().skip(1));
    for stretch in work.all.iter().rev() {
        whole.line_to((stretch.ends.1, stretch.sides.0));
        whole.line_to((stretch.ends.0, stretch.sides.0));
    }
    whole.close_path();
    whole
}

fn long_lines(path: &mut BezPath, stretch: &Stretch) {
    let (low, high) = stretch.sides;
    for y in [low, high].into_iter().chain(stretch.edges.iter().copied()) {
        level(path, stretch.ends, y);
    }
}

fn level(path: &mut BezPath, (from, to): (f64, f64), y: f64) {
    path.move_to((from, y));
    path.line_to((to, y));
}

fn upright(x: f64, (low, high): (f64, f64)) -> BezPath {
    polyline(&[Point::new(x, low), Point::new(x, high)])
}

/// Ribs lean over the face of the bar.
fn ribs(path: &mut BezPath, stretch: &Stretch) {
    /// How far a rib leans along the bar, of its width: 60 degrees to the axis (ASTM A615 allows 45
    /// and more).
    const LEANS: f64 = 0.58;
    /// Ribs leave a stripe free on both sides.
    const LONG: f64 = 0.8;
    let Some(pitch) = stretch.ribs.filter(|pitch| *pitch > 0.5) else {
        return;
    };
    let half = LONG * stretch.sides.1;
    let lean = LEANS * half;
    let (from, to) = (stretch.ends.0 + lean, stretch.ends.1 - lean);
    let mut x = from + pitch / 2.0;
    while x < to {
        path.move_to((x - lean, -half));
        path.line_to((x + lean, half));
        x += pitch;
    }
}

/// A break line from one side to the other.
fn ragged(x: f64, (low, high): (f64, f64)) -> BezPath {
    /// How far a break line swings, in half sizes of the work, and at the most, mm.
    const SWING: (f64, f64) = (0.35, 3.0);
    let (middle, half) = (f64::midpoint(low, high), (high - low) / 2.0);
    let wave = (SWING.0 * half).min(SWING.1);
    let y = |part: f64| middle + part * half;
    let mut edge = BezPath::new();
    edge.move_to((x, low));
    edge.curve_to((x + wave, y(-0.6)), (x + wave, y(-0.3)), (x, middle));
    edge.curve_to((x - wave, y(0.3)), (x - wave, y(0.6)), (x, high));
    edge
}

/// The work seen along its own axis.
fn end_on(model: &Model, place: Affine) -> Drawn {
    let work = &model.work;
    let circle = |mm: f64| Circle::new(Point::ORIGIN, mm / 2.0).to_path(FINE);
    let mut drawn = Drawn {
        area: face(model),
        sides: BezPath::new(),
        breaks: BezPath::new(),
        marks: BezPath::new(),
        hidden: BezPath::new(),
        bore: BezPath::new(),
    };
    let bore = stretch::bore_mm(&work.asked);
    if bore > 0.0 {
        drawn.bore = circle(bore);
    }
    match work.asked {
        Work::Round { diameter, of } => match of {
            RoundOf::Bar | RoundOf::Pipe { .. } => {}
            RoundOf::Rebar { .. } => drawn.marks = circle(diameter.mm()),
            RoundOf::BoltShank { flats, head, .. } => {
                let head_face = hexagon(flats.mm());
                match head {
                    Head::Within => drawn.hidden = head_face,
                    Head::InFront => {
                        drawn.hidden = circle(diameter.mm());
                        drawn.area = head_face;
                    }
                }
            }
        },
        Work::Hexagon {
            of: HexagonOf::BoltHead { shank, .. },
            ..
        } => drawn.marks = circle(shank.mm()),
        Work::Flat { .. } | Work::Square { .. } | Work::Hexagon { .. } | Work::Octagon { .. } => {}
    }
    drawn.sides = drawn.area.clone();
    drawn.placed(place)
}

impl Drawn {
    fn placed(self, place: Affine) -> Self {
        Self {
            area: place * self.area,
            sides: place * self.sides,
            breaks: place * self.breaks,
            marks: place * self.marks,
            hidden: place * self.hidden,
            bore: place * self.bore,
        }
    }
}

/// A head with a corner up.
fn hexagon(flats: f64) -> BezPath {
    let radius = corner_radius_mm(flats);
    let corner = |i: u32| {
        let angle = std::f64::consts::FRAC_PI_3 * f64::from(i) + std::f64::consts::FRAC_PI_6;
        Point::new(radius * angle.cos(), radius * angle.sin())
    };
    polygon(&(0..6).map(corner).collect::<Vec<_>>())
}

/// What is held, seen along its axis: its section, or the two legs of an angle.
fn face(model: &Model) -> BezPath {
    let work = &model.work;
    if let Some(legs) = Legs::of(model) {
        let (half, (near, far)) = (legs.thick / 2.0, legs.free);
        let (back, top) = (far + legs.thick, legs.other - half);
        let corners = [
            (near, -half),
            (back, -half),
            (back, top),
            (far, top),
            (far, half),
            (near, half),
        ];
        return polygon(&corners.map(Point::from));
    }
    if let Some([top, outside, inside, corner]) = stretch::back_mm(work) {
        let (wide, narrow) = (top - outside, corner - inside);
        let corners = [
            (0.0, top),
            (wide, outside),
            (narrow, inside),
            (0.0, corner),
            (-narrow, inside),
            (-wide, outside),
        ];
        return polygon(&corners.map(Point::from));
    }
    let outline = Section::new(&work.profile, work.depth, work.width).outline(FINE);
    let points: Vec<Point> = outline.into_iter().map(|(z, y)| Point::new(z, y)).collect();
    polygon(&points)
}

/// The size of the work between the jaws, with the places that a dimension of it may start from.
pub(in crate::draw) fn upright_size(model: &Model) -> (Point, Vec2) {
    /// Of what stands out of the tips.
    const ALONG: f64 = 0.28;
    /// Past the tips where the work lies across them, mm.
    const PAST: f64 = 8.0;
    let tip = model.a.tip().max(model.b.tip());
    let work = &model.work;
    let (low, high) = match stretch::back_mm(work) {
        Some([top, _, inside, _]) => (inside, top),
        None => (-work.depth / 2.0, work.depth / 2.0),
    };
    let short = short_mm(&work.asked);
    let x = match (work.lies, short) {
        (Lies::Endwise | Lies::Alongside, None) => tip + ALONG * (far_end(model) - tip),
        (Lies::Endwise | Lies::Alongside, Some(height)) => work.from + height / 2.0,
        (Lies::Crosswise, _) => tip + PAST,
    };
    let middle = f64::midpoint(low, high);
    (Point::new(x, middle), Vec2::new(0.0, (high - low) / 2.0))
}

/// The size between the jaws that is written at it, mm.
pub(in crate::draw) fn upright_mm(model: &Model) -> f64 {
    2.0 * upright_size(model).1.y
}
