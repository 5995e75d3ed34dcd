//! The signs on a stage: what is hot, where and from which side it is struck, the edge of the anvil
//! under it, which way it is turned, and what calipers are set to.

use kurbo::{BezPath, Point, Rect, Vec2};

use super::super::views;
use super::steel::{Place, covered, place};
use crate::making::{AnvilEdge, Beyond, Blows, Operation, Side, Turning};
use crate::paper::dimension::segment;
use crate::paper::{Align, Fill, Item, Line, View};
use crate::shape::Piece;
use crate::shape::section::lerp;
use crate::units::Show;

/// An operation on the piece that came out of it, with signs so many times as large as on a drawing
/// of full size.
pub(super) struct Signs<'a> {
    pub(super) piece: &'a Piece,
    pub(super) operation: &'a Operation,
    pub(super) mark: f64,
}

impl Signs<'_> {
    fn at(&self, along: f64, view: View) -> Option<Place> {
        place(self.piece, along, view)
    }

    /// What is hot: shaded, and crossed by slanting lines for those who see no colour.
    pub(super) fn hot(&self, view: View) -> Vec<Item> {
        /// From one slanting line to the next, and how far it leans, mm.
        const EVERY: f64 = 5.0;
        const LEAN: f64 = 2.0;
        let Some(hot) = self.operation.hot_after_mm else {
            return Vec::new();
        };
        let areas = covered(self.piece, hot, view).into_iter();
        let mut items: Vec<Item> = areas.map(|area| Item::fill(area, Fill::Hot)).collect();
        let mut lines = BezPath::new();
        let mut along = hot.0 + EVERY * self.mark / 2.0;
        while along < hot.1 {
            if let Some(own) = self.at(along, view) {
                let lean = (LEAN * self.mark).min(own.half);
                lines.move_to(own.middle + Vec2::new(-lean / 2.0, -own.half));
                lines.line_to(own.middle + Vec2::new(lean / 2.0, own.half));
            }
            along += EVERY * self.mark;
        }
        items.push(Item::line(lines, Line::Fine));
        items
    }

    /// Where it is struck, in the view that shows it.
    pub(super) fn blows(&self, view: View) -> Vec<Item> {
        let struck = self.operation.struck_mm;
        let is_side = view == View::Side;
        match self.operation.blows {
            Blows::On(side) if shown_in(side) == view => self.row(view, up(side)),
            Blows::AllRound => [self.row(view, 1.0), self.row(view, -1.0)].concat(),
            Blows::BothEdges if is_side => {
                let middle = f64::midpoint(struck.0, struck.1);
                [self.blow(middle, view, 1.0), self.blow(middle, view, -1.0)].concat()
            }
            Blows::End if is_side => self.on_end(),
            Blows::Through if !is_side => self.blow(struck.0, view, 1.0),
            Blows::Cut if is_side => self.cut(),
            Blows::Bend if is_side => {
                let at = |part: f64| struck.0 + part * (struck.1 - struck.0);
                [
                    self.blow(at(0.05), view, -1.0),
                    self.blow(at(0.5), view, 1.0),
                    self.blow(at(0.95), view, -1.0),
                ]
                .concat()
            }
            Blows::On(_)
            | Blows::BothEdges
            | Blows::End
            | Blows::Through
            | Blows::Cut
            | Blows::Twist
            | Blows::Bend => Vec::new(),
        }
    }

    /// A row of blows along what is struck, from above or, where `up` is −1, from below.
    fn row(&self, view: View, up: f64) -> Vec<Item> {
        /// Steel under one arrow, mm, and the most arrows in a row.
        const EVERY: f64 = 25.0;
        const MOST: f64 = 9.0;
        let (from, to) = self.operation.struck_mm;
        let count = ((to - from) / (EVERY * self.mark)).clamp(1.0, MOST).floor();
        let mut items = Vec::new();
        let mut i = 0.5;
        while i < count {
            items.extend(self.blow(from + (to - from) * i / count, view, up));
            i += 1.0;
        }
        items
    }

    fn blow(&self, along: f64, view: View, up: f64) -> Vec<Item> {
        let own = self.at(along, view);
        let tip = own.map(|own| own.middle + Vec2::new(0.0, up * (own.half + 0.5 * self.mark)));
        tip.map_or_else(Vec::new, |tip| self.arrow(tip, Vec2::new(0.0, up)))
    }

    /// A blow: an arrow whose point is here, out of a direction.
    fn arrow(&self, tip: Point, out: Vec2) -> Vec<Item> {
        const LONG: f64 = 6.0;
        const HEAD: (f64, f64) = (2.4, 1.0);
        let back = tip + out * (HEAD.0 * self.mark);
        let wide = out.turn_90() * (HEAD.1 * self.mark);
        let head = views::polygon(&[tip, back + wide, back - wide]);
        let shaft = segment(back, tip + out * (LONG * self.mark));
        vec![Item::fill(head, Fill::Ink), Item::line(shaft, Line::Fine)]
    }

    /// A blow on the end, along the bar.
    fn on_end(&self) -> Vec<Item> {
        /// How far inside an end it is looked which way the bar runs, mm.
        const INSIDE: f64 = 1.0;
        let at = self.operation.struck_mm.0;
        let inside = if at + INSIDE > self.piece.length_mm() {
            at - INSIDE
        } else {
            at + INSIDE
        };
        match (self.at(at, View::Side), self.at(inside, View::Side)) {
            (Some(end), Some(inner)) if end.middle.distance(inner.middle) > 0.0 => {
                let out = (end.middle - inner.middle).normalize();
                self.arrow(end.middle + out * (0.5 * self.mark), out)
            }
            (Some(_) | None, _) => Vec::new(),
        }
    }

    /// A chisel over the cut.
    fn cut(&self) -> Vec<Item> {
        let Some(own) = self.at(self.operation.struck_mm.0, View::Side) else {
            return Vec::new();
        };
        let top = own.middle + Vec2::new(0.0, own.half);
        let under = own.middle - Vec2::new(0.0, own.half + 3.0 * self.mark);
        let wedge = |x: f64, y: f64| top + Vec2::new(x, y) * self.mark;
        let chisel = views::polygon(&[
            top,
            wedge(-1.4, 4.0),
            wedge(-1.4, 8.0),
            wedge(1.4, 8.0),
            wedge(1.4, 4.0),
        ]);
        vec![
            Item::fill(chisel, Fill::Ink),
            Item::line(segment(top, under), Line::Mark),
        ]
    }

    /// The anvil under a set-down, in the view that shows it.
    pub(super) fn anvil(&self, view: View) -> Vec<Item> {
        let edge = self
            .operation
            .edge
            .filter(|edge| shown_in(edge.under) == view);
        edge.and_then(|edge| self.block(edge, view))
            .unwrap_or_default()
    }

    fn block(&self, edge: AnvilEdge, view: View) -> Option<Vec<Item>> {
        /// What of the anvil is drawn: how thick, mm, and of what lies on it how much.
        const THICK: f64 = 7.0;
        /// Where along what is struck it lies flat on the anvil.
        const FLAT: f64 = 0.8;
        let (toward, part) = match edge.beyond {
            Beyond::Rein => (1.0, 1.0 - FLAT),
            Beyond::Tip => (-1.0, FLAT),
        };
        let struck = self.operation.struck_mm;
        let lies = self.at(lerp(struck.0, struck.1, part), view)?;
        let (x, up) = (self.at(edge.at_mm, view)?.middle.x, up(edge.under));
        let face = lies.middle.y + up * lies.half;
        let far = x + toward * 1.25 * (struck.1 - struck.0);
        let back = face + up * THICK * self.mark;
        let area = Rect::from_points((x, face), (far, back));
        let path = kurbo::Shape::to_path(&area, 0.1);
        let corner = views::polyline(&[
            Point::new(far, face),
            Point::new(x, face),
            Point::new(x, back),
        ]);
        Some(vec![
            Item::fill(path, Fill::Waste),
            Item::line(corner, Line::Outline),
        ])
    }

    /// Which way it is turned first, over a place along it.
    pub(super) fn turn(&self, along: f64) -> Vec<Item> {
        let turn = self.operation.turn;
        let over = |own: Place| own.middle + Vec2::new(0.0, own.half + 7.0 * self.mark);
        let middle = self.at(along, View::Side).map(over);
        middle.map_or_else(Vec::new, |middle| turn_arrow(turn, middle, self.mark))
    }

    /// What calipers are set to, each over the place that it is measured at, on a line at a height.
    pub(super) fn calipers(&self, (low, size): (f64, f64), show: Show) -> Vec<Item> {
        let mut items = Vec::new();
        // From the tip on, which lies to the right.
        let mut free = f64::INFINITY;
        for own in &self.operation.calipers {
            let Some(at) = self.at(own.at_mm, View::Side) else {
                continue;
            };
            let words = format!(
                "{} x {}",
                show.number(own.depth_mm),
                show.text(own.width_mm)
            );
            let text = Item::text(Point::new(at.middle.x, low), words, size, Align::Middle);
            let room = text.bounds().unwrap_or(Rect::ZERO);
            if room.x1 + size / 2.0 > free {
                continue;
            }
            free = room.x0;
            let foot = Point::new(at.middle.x, at.middle.y - at.half);
            let line = segment(foot, Point::new(foot.x, low + size));
            items.extend([Item::line(line, Line::Dimension), text]);
        }
        items
    }
}

/// The view in which a side is an edge.
fn shown_in(side: Side) -> View {
    match side {
        Side::Back | Side::Inside => View::Side,
        Side::Outer | Side::Joint => View::Top,
    }
}

/// Whether a side is the upper edge of its view, as a sign.
fn up(side: Side) -> f64 {
    match side {
        Side::Back | Side::Outer => 1.0,
        Side::Inside | Side::Joint => -1.0,
    }
}

/// Which way the bar is turned, as seen from the rein's end.
pub(in crate::draw) fn turn_arrow(turn: Turning, middle: Point, mark: f64) -> Vec<Item> {
    let radius = 4.0 * mark;
    let quarter = std::f64::consts::FRAC_PI_2;
    let (from, sweep) = match turn {
        Turning::None => return Vec::new(),
        Turning::QuarterLeft => (0.25 * quarter, 1.5 * quarter),
        Turning::QuarterRight | Turning::BetweenBlows => (1.75 * quarter, -1.5 * quarter),
        Turning::Half => (0.0, 2.0 * quarter),
    };
    let on = |angle: f64| middle + Vec2::from_angle(angle) * radius;
    let arc = kurbo::Arc::new(middle, Vec2::new(radius, radius), from, sweep, 0.0);
    let mut path = BezPath::new();
    path.move_to(on(from));
    arc.append_iter(0.05).for_each(|el| path.push(el));
    let head = |angle: f64, way: f64| {
        let (tip, out) = (on(angle), Vec2::from_angle(angle));
        let along = out.turn_90() * way;
        let points = [
            tip + along * (2.0 * mark),
            tip + out * (1.1 * mark),
            tip - out * (1.1 * mark),
        ];
        Item::fill(views::polygon(&points), Fill::Ink)
    };
    let way = sweep.signum();
    let mut items = vec![Item::line(path, Line::Fine), head(from + sweep, way)];
    if turn == Turning::BetweenBlows {
        items.push(head(from, -way));
    }
    items
}
