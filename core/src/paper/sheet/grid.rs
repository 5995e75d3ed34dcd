use kurbo::{Point, Rect, Vec2};

use super::TitleBlock;
use super::ink::Ink;
use super::layout::{Layout, layout};
use super::paper::PaperOptions;
use crate::paper::display::Drawing;

/// Half the width of the widest line, mm, so that an edge's ink is not cut off.
pub(super) const INK: f64 = 0.5;
/// Rounding that may not cost a page, mm.
const HAIR: f64 = 1e-6;

/// How a sheet is cut into pages.
#[derive(Debug, Clone)]
pub(super) struct Grid {
    /// Pages side by side.
    pub(super) columns: usize,
    /// Pages above each other.
    pub(super) rows: usize,
    /// The page.
    pub(super) layout: Layout,
    /// What neighbouring pages both show, mm.
    pub(super) overlap: f64,
    /// What all windows together show of the drawing, mm.
    pub(super) covered: Rect,
}

/// What pages must cover of a drawing.
fn ground(drawing: &Drawing) -> Rect {
    drawing.bounds().inflate(INK, INK)
}

/// The better of the two lies of the paper, the drawing in the middle of all its pages.
pub(super) fn laid(drawing: &Drawing, options: &PaperOptions, title: &TitleBlock) -> Grid {
    let bounds = ground(drawing);
    let (width, height) = options.paper.size();
    let upright = cut(bounds, layout(width, height, options, title), options);
    let across = cut(bounds, layout(height, width, options, title), options);
    let better = across.pages() < upright.pages()
        || across.pages() == upright.pages() && across.room(bounds) > upright.room(bounds);
    if better { across } else { upright }
}

/// Places within so much room on both sides, the middle first.
fn nudges(room: f64) -> impl Iterator<Item = f64> {
    /// Places that are tried on each side.
    const TRIES: u32 = 8;
    (0..=TRIES).flat_map(move |step| {
        let far = room * f64::from(step) / f64::from(TRIES);
        [far, -far]
    })
}

fn cut(bounds: Rect, layout: Layout, options: &PaperOptions) -> Grid {
    let overlap = options.overlap;
    let columns = pieces(bounds.width(), layout.window.width(), overlap);
    let rows = pieces(bounds.height(), layout.window.height(), overlap);
    let across = span(columns, layout.window.width(), overlap);
    let up = span(rows, layout.window.height(), overlap);
    Grid {
        columns,
        rows,
        layout,
        overlap,
        covered: Rect::from_center_size(bounds.center(), (across, up)),
    }
}

/// The fewest windows, overlapping, that cover a length.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a drawing of a metre on paper of a hand's width is some tens of pages"
)]
fn pieces(length: f64, window: f64, overlap: f64) -> usize {
    (((length - overlap - HAIR) / (window - overlap)).ceil()).max(1.0) as usize
}

/// What so many windows cover together.
fn span(count: usize, window: f64, overlap: f64) -> f64 {
    let count = count as f64;
    count * window - (count - 1.0) * overlap
}

impl Grid {
    /// How many pages there are.
    pub(super) fn pages(&self) -> usize {
        self.columns.saturating_mul(self.rows)
    }

    /// Column and row of every page, in the order of their numbers.
    pub(super) fn places(&self) -> impl Iterator<Item = (usize, usize)> + use<> {
        let columns = self.columns;
        (0..self.rows).flat_map(move |row| (0..columns).map(move |column| (column, row)))
    }

    /// What a page shows of the drawing, in the drawing's coordinates.
    pub(super) fn shown(&self, (column, row): (usize, usize)) -> Rect {
        let window = self.layout.window;
        let step = window.size() - kurbo::Size::new(self.overlap, self.overlap);
        let left = self.covered.x0 + column as f64 * step.width;
        let top = self.covered.y1 - row as f64 * step.height;
        let corner = Point::new(left, top - window.height());
        Rect::from_origin_size(corner, window.size())
    }

    /// From the drawing's coordinates to the page's.
    pub(super) fn shift(&self, at: (usize, usize)) -> Vec2 {
        self.layout.window.origin() - self.shown(at).origin()
    }

    /// The same pages, moved over the drawing by the room that is left so that joints cut as few
    /// lines and texts as can be; without a joint the drawing stays in the middle.
    pub(super) fn settled(mut self, drawing: &Drawing, ink: &Ink) -> Self {
        let bounds = ground(drawing);
        let middle = self.covered;
        let room = (middle.size() - bounds.size()) / 2.0;
        let best = |grid: &mut Self, room: f64, along: Vec2| {
            let from = grid.covered;
            let cost = |nudge: &f64| {
                grid.covered = from + along * *nudge;
                grid.seams(along)
                    .map(|band| ink.cut_by(band))
                    .sum::<usize>()
            };
            let nudge = nudges(room).min_by_key(cost).unwrap_or(0.0);
            grid.covered = from + along * nudge;
        };
        if self.columns > 1 {
            best(&mut self, room.width, Vec2::new(1.0, 0.0));
        }
        if self.rows > 1 {
            best(&mut self, room.height, Vec2::new(0.0, 1.0));
        }
        self
    }

    /// What two pages both show, at each joint that is crossed when going along.
    fn seams(&self, along: Vec2) -> impl Iterator<Item = Rect> + '_ {
        let (right, below) = if along.x > 0.0 { (1, 0) } else { (0, 1) };
        let places = self.places();
        let pairs = places.map(move |(column, row)| ((column, row), (column + right, row + below)));
        pairs
            .filter(|(_, next)| next.0 < self.columns && next.1 < self.rows)
            .map(|(place, next)| self.shown(place).intersect(self.shown(next)))
    }

    /// How many times the drawing would fit, the tighter way.
    fn room(&self, bounds: Rect) -> f64 {
        let across = self.covered.width() / bounds.width();
        across.min(self.covered.height() / bounds.height())
    }
}
