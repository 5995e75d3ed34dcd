//! A piece in its heat, to scale: the turns of the coil around it, the opening before it, the hot spot over
//! it, and where it is stopped.

use std::f64::consts::FRAC_PI_2;

use kurbo::{BezPath, Circle, Point, Rect, Shape, Vec2};

use super::stage::steel;
use super::views::polygon;
use crate::heats::{
    Back, Coil, End, Gas, Mouth, Prepared, Room, Row, Slice, SourceKind, Stand, WhyNot, Wound,
};
use crate::making::Plan;
use crate::paper::dimension::segment;
use crate::paper::{Align, Drawing, Fill, Item, Line, View, bounds};
use crate::shape::section::Growing;
use crate::units::Show;

/// Text beside the drawing, mm.
const TEXT: f64 = 3.5;

/// An operation of a plan in a source: side view and top view of the piece with the source around it,
/// and what is said of it. Nothing is drawn for cold work or a source that is not there.
pub fn heat(prepared: &Prepared, plan: &Plan, at: (usize, usize), show: Show) -> Drawing {
    let mut drawing = heat_bare(prepared, plan, at);
    let (Some(row), Some(area)) = (prepared.rows.get(at.0), bounds(&drawing.items)) else {
        return drawing;
    };
    let mut corner = Point::new(area.x0, area.y1 + 2.0 * TEXT);
    for line in lettering(prepared, (row, at.1), show).into_iter().rev() {
        let text = Item::text(corner, line, TEXT, Align::Start);
        drawing.items.push(text);
        corner.y += 1.5 * TEXT;
    }
    drawing
}

/// The same without a word.
pub fn heat_bare(prepared: &Prepared, plan: &Plan, (row, source): (usize, usize)) -> Drawing {
    let shown = prepared.rows.get(row).and_then(|row| {
        let stage = plan.stages.get(row.stage)?;
        Some((row, row.stand.as_ref()?, &stage.piece))
    });
    let (Some((row, stand, piece)), Some(offer)) = (
        shown,
        prepared
            .rows
            .get(row)
            .and_then(|row| row.offers.get(source)),
    ) else {
        return Drawing::default();
    };
    let own = &prepared.shop.sources[source];
    let room = Room::of(own, &prepared.shop.smith);
    let (middle, tilt, end) = match offer {
        Ok(offer) => {
            let (from, to) = offer.entry.heated_mm;
            let tilt = offer.entry.tilt.unwrap_or(0.0);
            (f64::midpoint(from, to), tilt, offer.entry.end)
        }
        Err(why) => stopped(row, (*why, room)),
    };
    let around = Around {
        kind: &own.kind,
        at: centred(stand, (middle, tilt, end), &room),
        tilt,
        end,
        clearance: prepared.shop.smith.clearance.mm(),
        open: open_in(&own.kind, (stand, middle)),
    };
    let hot = row.needs_mm.unwrap_or_default();
    let views = [View::Side, View::Top].map(|view| {
        let mut items = steel::piece(piece, view);
        let glow = steel::covered(piece, hot, view).into_iter();
        items.extend(glow.map(|path| Item::fill(path, Fill::Hot)));
        items.extend(steel::outlines(piece, view));
        items.extend(around.drawn(view));
        if let Err(WhyNot::TooWide { at_mm, .. }) = offer {
            items.extend(wide((stand, *at_mm), view));
        }
        items
    });
    stacked(views)
}

/// A place along the piece in the frame: the middle of its section. Past an end it goes on as far before
/// the tip or behind the rein.
fn at(stand: &Stand, along_mm: f64) -> [f64; 3] {
    let Some(slice) = stand.near(along_mm) else {
        return [0.0; 3];
    };
    let span = |axis: usize| {
        let all = slice.points.iter().map(|point| point[axis]);
        let (low, high) = all.fold((f64::MAX, f64::MIN), |(a, b), x| (a.min(x), b.max(x)));
        f64::midpoint(low, high)
    };
    let past = along_mm - along_mm.clamp(0.0, stand.length_mm);
    [span(0) - past, span(1), span(2)]
}

/// Where the middle of a source lies: about the circle around all that has gone in, or of what is in it where
/// the piece is held aslant.
fn centred(stand: &Stand, (middle, tilt, end): (f64, f64, End), room: &Room) -> [f64; 3] {
    let half = room.hot_mm / 2.0 - room.past_mm;
    let (from, to) = (middle - half, middle + half);
    let inside = |along: f64| match (end, tilt == 0.0) {
        (_, false) => (from..=to).contains(&along),
        (End::Tip, true) => along <= to,
        (End::Rein, true) => along >= from,
    };
    let [x, y, z] = at(stand, middle);
    let (sin, cos) = tilt.sin_cos();
    let mut grown = Growing::default();
    for slice in stand.slices.iter().filter(|slice| inside(slice.at_mm)) {
        // Seen along the source, from its middle.
        let seen = slice
            .points
            .iter()
            .map(|point| (point[2], (point[1] - y) * cos - (point[0] - x) * sin));
        grown.add(seen.collect());
    }
    let (across, up) = grown.centre();
    match room.mouth {
        Mouth::Open | Mouth::Slot { .. } => [x, y, z],
        Mouth::Round { .. } | Mouth::Opening { .. } => [x - up * sin, y + up * cos, across],
    }
}

/// Where a source waits that a piece does not go into: before what stops it.
fn stopped(row: &Row, (why, room): (WhyNot, Room)) -> (f64, f64, End) {
    let needs = row.needs_mm.unwrap_or_default();
    let middle = f64::midpoint(needs.0, needs.1);
    match why {
        WhyNot::TooWide { at_mm, end, .. } => {
            let half = room.hot_mm / 2.0 - room.past_mm;
            let place = match end {
                End::Tip => at_mm - half,
                End::Rein => at_mm + half,
            };
            (place, 0.0, end)
        }
        WhyNot::TooThick { .. }
        | WhyNot::TooDeep { .. }
        | WhyNot::TooShort { .. }
        | WhyNot::TooCold { .. } => (middle, 0.0, End::Tip),
    }
}

/// A line across the piece where it is too wide.
fn wide((stand, along): (&Stand, f64), view: View) -> Option<Item> {
    let slice = stand.near(along)?;
    let axis = axis_of(view);
    let [x, ..] = at(stand, along);
    let all = slice.points.iter().map(|point| point[axis]);
    let (low, high) = all.fold((f64::MAX, f64::MIN), |(a, b), v| (a.min(v), b.max(v)));
    let across = segment(Point::new(x, low), Point::new(x, high));
    Some(Item::line(across, Line::Warning))
}

fn axis_of(view: View) -> usize {
    match view {
        View::Side => 1,
        View::Top | View::End => 2,
    }
}

/// A source where it stands.
struct Around<'a> {
    kind: &'a SourceKind,
    at: [f64; 3],
    /// How far it leans in the side view, radians.
    tilt: f64,
    end: End,
    clearance: f64,
    /// The view in which the side is seen through which a piece is laid in; `None` of what goes in with an end first.
    open: Option<View>,
}

/// The view in which an open coil is seen with its open side: the other one than that in which what lies between
/// its sides is thin.
fn open_in(kind: &SourceKind, (stand, middle): (&Stand, f64)) -> Option<View> {
    let SourceKind::Coil(coil) = kind else {
        return None;
    };
    let half = coil.length_mm() / 2.0;
    let inside = |slice: &&Slice| (slice.at_mm - middle).abs() <= half;
    let span = |axis: usize| {
        let lying = stand.slices.iter().filter(inside);
        let all = lying.flat_map(|slice| slice.points.iter().map(|point| point[axis]));
        let (low, high) = all.fold((f64::MAX, f64::MIN), |(a, b), v| (a.min(v), b.max(v)));
        high - low
    };
    let thin = if span(axis_of(View::Side)) <= span(axis_of(View::Top)) {
        View::Top
    } else {
        View::Side
    };
    (coil.wound == Wound::Open).then_some(thin)
}

impl Around<'_> {
    /// A place so far along the source's axis and off it, as it is seen.
    fn place(&self, view: View, along: f64, off: f64) -> Point {
        let tilt = match view {
            View::Side => self.tilt,
            View::Top | View::End => 0.0,
        };
        let middle = Point::new(self.at[0], self.at[axis_of(view)]);
        middle + Vec2::from_angle(tilt) * along + Vec2::from_angle(tilt + FRAC_PI_2) * off
    }

    fn drawn(&self, view: View) -> Vec<Item> {
        match self.kind {
            SourceKind::Coil(coil) => self.coil(coil, view),
            SourceKind::Gas(gas) => self.chamber(gas, view),
            SourceKind::Solid(fire) => {
                let half = fire.hot_spot.mm() / 2.0;
                /// Half as high as coals are heaped, mm, to be seen by.
                const HEAP: f64 = 40.0;
                vec![Item::line(
                    self.block(view, (-half, half), HEAP),
                    Line::Neighbour,
                )]
            }
        }
    }

    fn block(&self, view: View, (from, to): (f64, f64), half: f64) -> BezPath {
        let corner = |along, off| self.place(view, along, off);
        polygon(&[
            corner(from, -half),
            corner(to, -half),
            corner(to, half),
            corner(from, half),
        ])
    }

    /// Every turn cut through, the bore and what the clearance leaves of it; nothing on a side that is open.
    fn coil(&self, coil: &Coil, view: View) -> Vec<Item> {
        let (bore, tube) = (coil.bore.mm() / 2.0, coil.tube.mm() / 2.0);
        let half = coil.length_mm() / 2.0;
        let clear = bore - self.clearance;
        let mut items = Vec::new();
        let turns = coil.turns.ceil();
        let sides: &[f64] = if self.open == Some(view) {
            &[-1.0]
        } else {
            &[1.0, -1.0]
        };
        let mut turn = 0.5;
        while turn < turns {
            let along = (turn / turns - 0.5) * coil.length_mm();
            for off in sides.iter().map(|side| side * (bore + tube)) {
                let round = Circle::new(self.place(view, along, off), tube).to_path(0.01);
                items.push(Item::fill(round.clone(), Fill::Paper));
                items.push(Item::line(round, Line::Outline));
            }
            turn += 1.0;
        }
        for off in sides.iter().map(|side| side * bore) {
            items.push(self.along(view, half, off, Line::Fine));
        }
        for off in sides.iter().map(|side| side * clear) {
            items.push(self.along(view, half, off, Line::Hidden));
        }
        items.push(self.along(view, half + coil.past_end_mm(), 0.0, Line::Centre));
        items
    }

    fn along(&self, view: View, half: f64, off: f64, line: Line) -> Item {
        let ends = [-half, half].map(|along| self.place(view, along, off));
        Item::line(segment(ends[0], ends[1]), line)
    }

    fn chamber(&self, gas: &Gas, view: View) -> Vec<Item> {
        let half = gas.length.mm() / 2.0;
        let high = match view {
            View::Side => gas.opening_height.mm(),
            View::Top | View::End => gas.opening_width.mm(),
        } / 2.0;
        let mut items = Vec::new();
        for off in [high, -high] {
            items.push(self.along(view, half, off, Line::Outline));
            let clear = off - self.clearance.copysign(off);
            items.push(self.along(view, half, clear, Line::Hidden));
        }
        // The piece comes out toward its other end, and the back is on the far side.
        let back = match self.end {
            End::Tip => half,
            End::Rein => -half,
        };
        if gas.back == Back::Closed {
            let ends = [high, -high].map(|off| self.place(view, back, off));
            items.push(Item::line(segment(ends[0], ends[1]), Line::Outline));
        }
        items
    }
}

fn lettering(prepared: &Prepared, (row, source): (&Row, usize), show: Show) -> Vec<String> {
    let own = &prepared.shop.sources[source];
    let said = match &row.offers[source] {
        Ok(offer) => format!("goes in, {}", offer.entry.words_for(row.step)),
        Err(why) => format!("no: {}", why.words(show)),
    };
    vec![format!("{}  {}: {}", row.number, row.step, own.name), said]
}

fn stacked([side, top]: [Vec<Item>; 2]) -> Drawing {
    let area = bounds(&side).unwrap_or(Rect::ZERO);
    let under = bounds(&top).unwrap_or(Rect::ZERO);
    let drop = Vec2::new(0.0, area.y0 - 4.0 * TEXT - under.y1);
    let items = vec![
        Item::view(View::Side, "side", Vec2::ZERO, side),
        Item::view(View::Top, "top", drop, top),
    ];
    Drawing { items }
}
