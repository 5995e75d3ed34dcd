use kurbo::{BezPath, Point, Rect, Vec2};

use super::Place;
use super::grid::Grid;
use super::ink::Ink;
use super::joint::Joint;
use crate::paper::font::text_width;
use crate::paper::{Align, Item, Line, TextItem};

/// Half the length of a cross's arms, mm.
const ARM: f64 = 2.5;
/// Size of a mark's letter, mm.
const LETTER: f64 = 3.2;
/// Size of the lettering that names the neighbour, mm.
const NAME: f64 = 2.3;
/// How far from a cross its neighbour's name begins, mm, and how far it may reach.
const NAME_FROM: f64 = 5.0;
const NAME_TO: f64 = 14.0;

/// Size of the name of a part's neighbour, mm: 9 pt.
const NEIGHBOUR: f64 = 3.2;

/// How a joint runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Runs {
    /// From below to above, between a left and a right page.
    Up,
    /// From left to right, between an upper and a lower page.
    Across,
}

/// A cross on the middle of an overlap, at the same place of the drawing on both pages.
#[derive(Debug, Clone)]
pub(super) struct Mark {
    at: Point,
    letter: String,
    runs: Runs,
    /// The left or upper page.
    before: (usize, usize),
    /// The right or lower page.
    after: (usize, usize),
}

/// The marks of a whole sheet, two at each joint, where the drawing leaves the paper blank if it
/// does. The letters of so many joints are in use already.
pub(super) fn marks(ink: &Ink, grid: &Grid, used: usize) -> Vec<Mark> {
    if grid.pages() == 1 {
        return Vec::new();
    }
    let mut marks = Vec::new();
    for (column, row) in grid.places() {
        let right = (column + 1, row);
        let below = (column, row + 1);
        if right.0 < grid.columns {
            add_joint(
                &mut marks,
                Runs::Up,
                (grid, used),
                ink,
                [(column, row), right],
            );
        }
        if below.1 < grid.rows {
            add_joint(
                &mut marks,
                Runs::Across,
                (grid, used),
                ink,
                [(column, row), below],
            );
        }
    }
    marks
}

fn add_joint(
    marks: &mut Vec<Mark>,
    runs: Runs,
    (grid, used): (&Grid, usize),
    ink: &Ink,
    [before, after]: [(usize, usize); 2],
) {
    let joint = letter(used + marks.len() / 2);
    for (number, share) in [(1, Share::First), (2, Share::Second)] {
        marks.push(Mark {
            at: blank_place(seam(grid, runs, before), runs, share, ink),
            letter: format!("{joint}{number}"),
            runs,
            before,
            after,
        });
    }
}

/// The middle of the overlap after a page, where no third page shows it.
fn seam(grid: &Grid, runs: Runs, before: (usize, usize)) -> (Point, Point) {
    let shown = grid.shown(before);
    let half = grid.overlap / 2.0;
    let end = |pages: usize| if pages > 1 { grid.overlap } else { 2.0 * ARM };
    match runs {
        Runs::Up => {
            let (x, end) = (shown.x1 - half, end(grid.rows));
            (Point::new(x, shown.y0 + end), Point::new(x, shown.y1 - end))
        }
        Runs::Across => {
            let (y, end) = (shown.y0 + half, end(grid.columns));
            (Point::new(shown.x0 + end, y), Point::new(shown.x1 - end, y))
        }
    }
}

/// Which half of a seam a mark is looked for in, from which end.
#[derive(Debug, Clone, Copy)]
enum Share {
    First,
    Second,
}

/// The first place from a seam's end that is blank enough for cross, letter and name; or else for
/// cross and letter.
fn blank_place(seam: (Point, Point), runs: Runs, share: Share, ink: &Ink) -> Point {
    /// Places that are tried in each half.
    const TRIES: u32 = 24;
    let place = |index: u32| {
        let along = f64::from(index) / f64::from(2 * TRIES);
        match share {
            Share::First => seam.0.lerp(seam.1, along),
            Share::Second => seam.1.lerp(seam.0, along) - runs.along() * NAME_TO,
        }
    };
    let blank = |at: Point, reach: f64| {
        let half = runs.beside() * (ARM + 1.0);
        let ends = (runs.along() * ARM, runs.along() * reach);
        ink.leaves_blank(Rect::from_points(at - half - ends.0, at + half + ends.1))
    };
    let first = |reach: f64| (0..TRIES).map(place).find(|at| blank(*at, reach));
    first(NAME_TO)
        .or_else(|| first(ARM + 1.0))
        .unwrap_or_else(|| place(TRIES / 3))
}

impl Runs {
    fn along(self) -> Vec2 {
        match self {
            Self::Up => Vec2::new(0.0, 1.0),
            Self::Across => Vec2::new(1.0, 0.0),
        }
    }

    /// Across the joint, to the page after it.
    fn beside(self) -> Vec2 {
        match self {
            Self::Up => Vec2::new(1.0, 0.0),
            Self::Across => Vec2::new(0.0, -1.0),
        }
    }
}

/// A, B, … Z, AA, AB, …
pub(super) fn letter(index: usize) -> String {
    let last = u32::try_from(index % 26).expect("less than 26");
    let sign = char::from_u32(u32::from('A') + last).expect("a letter from A to Z");
    match index / 26 {
        0 => sign.to_string(),
        more => format!("{}{sign}", letter(more - 1)),
    }
}

/// The joints of one page, in the drawing's coordinates.
pub(super) fn draw(marks: &[Mark], grid: &Grid, place: &Place) -> Vec<Item> {
    let mut items = lines(grid, place.at);
    for mark in marks {
        if mark.before == place.at {
            items.extend(mark.draw(place.number(grid, mark.after), 1.0));
        } else if mark.after == place.at {
            items.extend(mark.draw(place.number(grid, mark.before), -1.0));
        }
    }
    items
}

/// On which side of a joint a part lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Lies {
    Left,
    Right,
}

/// A joint as one of its parts shows it, in the drawing's coordinates: the line to cut along, two
/// crosses with the joint's letter and their numbers, and the page of the other part. What is
/// written stands on the part's own side.
pub(super) fn draw_joint(
    joint: &Joint,
    lies: Lies,
    (letter, page): (&str, usize),
    shown: Rect,
) -> Vec<Item> {
    /// From the line to the lettering, between two words of it, and how high it stands, mm.
    const OFF: f64 = 1.0;
    const APART: f64 = 1.5;
    const LIFT: f64 = 0.7;
    let cut = straight(
        Point::new(joint.at, shown.y0),
        Point::new(joint.at, shown.y1),
    );
    let mut items = vec![Item::line(cut, Line::Join)];
    let (side, align) = match lies {
        Lies::Left => (-1.0, Align::End),
        Lies::Right => (1.0, Align::Start),
    };
    for (number, y) in (1..).zip(joint.marks) {
        let at = Point::new(joint.at, y);
        for arm in [Vec2::new(ARM, 0.0), Vec2::new(0.0, ARM)] {
            items.push(Item::line(straight(at - arm, at + arm), Line::Frame));
        }
        let mark = format!("{letter}{number}");
        let beyond = OFF + text_width(&mark, LETTER, false) + APART;
        let place = |off: f64| at + Vec2::new(side * off, LIFT);
        items.push(Item::text(place(OFF), mark, LETTER, align));
        let page = format!("page {page}");
        items.push(Item::text(place(beyond), page, NEIGHBOUR, align));
    }
    items
}

/// The line to cut along, on each side that has a neighbour.
fn lines(grid: &Grid, at: (usize, usize)) -> Vec<Item> {
    let shown = grid.shown(at);
    let half = grid.overlap / 2.0;
    let up = |x: f64| straight(Point::new(x, shown.y0), Point::new(x, shown.y1));
    let across = |y: f64| straight(Point::new(shown.x0, y), Point::new(shown.x1, y));
    let sides = [
        (at.0 > 0, up(shown.x0 + half)),
        (at.0 + 1 < grid.columns, up(shown.x1 - half)),
        (at.1 > 0, across(shown.y1 - half)),
        (at.1 + 1 < grid.rows, across(shown.y0 + half)),
    ];
    sides
        .into_iter()
        .filter_map(|(has, line)| has.then(|| Item::line(line, Line::Join)))
        .collect()
}

fn straight(from: Point, to: Point) -> BezPath {
    let mut path = BezPath::new();
    path.move_to(from);
    path.line_to(to);
    path
}

impl Mark {
    /// The cross, its letter, and the neighbour's number on the side (`1.0` or `-1.0`) where the
    /// neighbour lies.
    fn draw(&self, neighbour: usize, side: f64) -> Vec<Item> {
        let (along, beside) = (self.runs.along() * ARM, self.runs.beside() * ARM);
        let letter_at = self.at + Vec2::new(0.7, 0.7);
        vec![
            Item::line(straight(self.at - along, self.at + along), Line::Frame),
            Item::line(straight(self.at - beside, self.at + beside), Line::Frame),
            Item::text(letter_at, self.letter.clone(), LETTER, Align::Start),
            self.name(neighbour, side),
        ]
    }

    fn name(&self, neighbour: usize, side: f64) -> Item {
        /// From the line to the middle of the letters, mm.
        const OFF: f64 = 2.0;
        let middle = self.runs.along() * NAME_FROM + self.runs.beside() * (OFF * side);
        let (turn, drop) = match self.runs {
            Runs::Up => (std::f64::consts::FRAC_PI_2, Vec2::new(0.35 * NAME, 0.0)),
            Runs::Across => (0.0, Vec2::new(0.0, -0.35 * NAME)),
        };
        Item::Text(TextItem {
            at: self.at + middle + drop,
            text: format!("page {neighbour}"),
            size: NAME,
            align: Align::Start,
            turn,
            bold: false,
            part: None,
        })
    }
}
