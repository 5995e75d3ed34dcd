//! The stages of a making one after the other on one ground: nothing jumps from one to the next but
//! the steel that was struck. Sizes where a caliper is set, what is hot, what was struck.

use kurbo::{Point, Rect, Vec2};

use super::super::names::{clear_of, view_title};
use super::steel::{outlines, piece, place};
use super::{Finished, TEXT, ghosts, signs, view_of};
use crate::finding::Part;
use crate::making::{Operation, Plan, Stage, Step};
use crate::number::plane::sides;
use crate::paper::dimension::{Scale, segment};
use crate::paper::lettering::clear;
use crate::paper::{Align, Drawing, Item, Line, View, bounds};
use crate::shape::{Piece, Stretch};
use crate::tool::forging::Forging;
use crate::units::Show;

/// The room that the stages of a plan take in both views, mm.
#[derive(Debug, Clone, PartialEq)]
pub struct Ground {
    side: Rect,
    top: Rect,
    /// Highest steel of any stage in the side view.
    steel: f64,
    /// Whether what lies farther back is left out.
    cut: bool,
    /// The sizes of each stage: where each is measured, and its width in text sizes.
    sizes: Vec<Vec<(f64, f64)>>,
}

/// In text sizes: over the highest steel, for arrows and turns; a row of sizes; under a view, for
/// its name or for what is hot.
const ARROWS: f64 = 3.3;
const ROW: f64 = 1.35;
const UNDER: f64 = 2.6;

/// The room that all stages of a plan take together, from a place on, mm from the rivet: from minus
/// infinity all of it.
pub fn ground<'a>(finished: impl Into<Finished<'a>>, plan: &Plan, from: f64, show: Show) -> Ground {
    let finished = finished.into();
    let mut ground = Ground {
        side: Rect::ZERO,
        top: Rect::ZERO,
        steel: 0.0,
        cut: from > f64::NEG_INFINITY,
        sizes: Vec::new(),
    };
    let right_of = |items: &[Item]| right_of(items, from);
    for stage in &plan.stages {
        let steel = |view| {
            let parts = piece(&stage.piece, view);
            right_of(&[parts, outlines(&stage.piece, view)].concat())
        };
        let around = |view| right_of(&ghosts(finished, stage, view)).union(steel(view));
        ground.steel = ground.steel.max(steel(View::Side).y1);
        ground.side = ground.side.union(around(View::Side));
        ground.top = ground.top.union(around(View::Top));
        let wide = |size: Size| (size.at.x, Scale { text: 1.0 }.width(&size.text));
        let sizes = sizes_of(stage, show).into_iter();
        let sizes = sizes.filter(|size| size.at.x >= from).map(wide);
        ground.sizes.push(sizes.collect());
    }
    ground
}

/// What items cover to the right of a place.
fn right_of(items: &[Item], from: f64) -> Rect {
    if from == f64::NEG_INFINITY {
        return bounds(items).unwrap_or(Rect::ZERO);
    }
    let paths = items.iter().filter_map(|item| match item {
        Item::Path(path) => Some(&path.path),
        Item::Text(_) | Item::Group(_) => None,
    });
    let sides = paths.flat_map(sides).map(|(a, _)| a);
    let inside = sides.filter(|p| p.x >= from);
    let found = inside.fold(None, |found: Option<Rect>, p| {
        let own = Rect::from_points(p, p);
        Some(found.map_or(own, |found| found.union(own)))
    });
    let found = found.unwrap_or(Rect::ZERO);
    Rect { x0: from, ..found }
}

impl Ground {
    /// All that a stage covers when its text is so large, mm.
    pub fn room(&self, text: f64) -> Rect {
        let low = self.top.y0 + self.drop(text) - UNDER * text;
        let high = self.sizes_from(text) + self.rows(text) * ROW * text;
        Rect::new(self.side.x0, low, self.side.x1, high)
    }

    /// How many rows of sizes the stage with the most of them has.
    fn rows(&self, text: f64) -> f64 {
        let of = |sizes: &Vec<(f64, f64)>| {
            let wide = sizes.iter().map(|own| (own.0, own.1 * text));
            let rows = rows(wide, self.side.x0, text);
            rows.iter().map(|own| own.row + 1.0).fold(0.0, f64::max)
        };
        self.sizes.iter().map(of).fold(0.0, f64::max)
    }

    /// Where the side view's name stands: over the rein and over the arrows of blows and turns, or
    /// where that is left out beside the highest row of sizes, which rise away from it.
    fn name_over(&self, text: f64) -> f64 {
        if self.cut {
            self.sizes_from(text) + (self.rows(text) - 1.6) * ROW * text
        } else {
            self.steel + ARROWS * text
        }
    }

    /// How far the top view stands under the side view.
    fn drop(&self, text: f64) -> f64 {
        self.side.y0 - UNDER * text - self.top.y1
    }

    /// The base line of the lowest row of sizes.
    fn sizes_from(&self, text: f64) -> f64 {
        (self.steel + ARROWS * text).max(self.side.y1 + 0.8 * text)
    }
}

/// A stage of a plan on its ground, with text of so many mm. The first stage is 0, the bar. Nothing
/// is drawn for a stage that is not there.
pub fn staged<'a>(
    finished: impl Into<Finished<'a>>,
    plan: &Plan,
    at: usize,
    (ground, text): (&Ground, f64),
    show: Show,
) -> Drawing {
    let finished = finished.into();
    let Some(shown) = plan.stages.get(at) else {
        return Drawing::default();
    };
    let scale = Scale { text };
    let mark = text / TEXT;
    let [mut side, mut top] = [View::Side, View::Top].map(|view| {
        let mut items = view_of(shown, view, mark);
        items.extend(ghosts(finished, shown, view));
        items
    });
    if let Some(signs) = signs(shown, mark) {
        side.extend(signs.turn(signs.operation.held_at_mm));
    }
    side.extend(sizes(shown, ground, scale, show));
    let under = ground.top.y0 - 0.8 * text;
    let bracket = shown.operation.as_ref().and_then(|operation| {
        let hot = (operation, operation.hot_after_mm?);
        Some(hot_bracket(
            shown,
            hot,
            (under, ground.side.x0, scale),
            show,
        ))
    });
    top.extend(bracket.into_iter().flatten());
    if is_bar(shown) {
        top.extend(marks(plan, shown, (under, scale), show));
    }
    let names = [
        (View::Side, side, ground.name_over(text)),
        (View::Top, top, ground.top.y1),
    ];
    let [side, top] = names.map(|(view, mut items, low)| {
        let from = Point::new(ground.side.x0, low + 0.6 * text);
        let at = clear_of(from, view.name(), &items, scale);
        items.extend(match finished {
            Finished::Pair(_) => view_title((view, view.name()), at, scale),
            // The small picture is of tongs.
            Finished::Tool(_) => vec![Item::text(at, view.name(), text, Align::Start)],
        });
        clear(items)
    });
    let drop = Vec2::new(0.0, ground.drop(text));
    Drawing {
        items: vec![
            Item::view(View::Side, View::Side.name(), Vec2::ZERO, side),
            Item::view(View::Top, View::Top.name(), drop, top),
        ],
    }
}

/// A size and where it is measured, mm.
struct Size {
    at: Point,
    text: String,
    part: Part,
}

/// The sections of a stage, where they differ from the one before, from the rein to the tip.
fn sizes_of(shown: &Stage, show: Show) -> Vec<Size> {
    let piece = &shown.piece;
    let mut found: Vec<Size> = Vec::new();
    let mut start = 0.0;
    for (at, stretch) in piece.stretches.iter().enumerate() {
        if piece.stretches[..at]
            .iter()
            .any(|own| own.part == stretch.part)
        {
            // The other half of a blank for two.
            break;
        }
        let length = stretch.length_mm();
        for share in places(piece, stretch, start) {
            let along = start + share * length;
            let size = piece.cross(along).and_then(|cross| {
                let own = place(piece, along, View::Side)?;
                Some(Size {
                    at: own.middle + Vec2::new(0.0, own.half),
                    text: cross.words(show),
                    part: stretch.part,
                })
            });
            found.extend(size.filter(|size| found.last().is_none_or(|own| own.text != size.text)));
        }
        start += length;
    }
    found.reverse();
    found
}

/// Where along a stretch its section is told: in the middle, or near both ends of one that tapers
/// over a length.
fn places(piece: &Piece, stretch: &Stretch, start: f64) -> &'static [f64] {
    /// A stretch so many times as long as it is deep tells both its ends.
    const LONG: f64 = 4.0;
    let length = stretch.length_mm();
    let middle = piece.cross(start + length / 2.0);
    if middle.is_some_and(|own| length > LONG * own.depth_mm) {
        &[0.06, 0.94]
    } else {
        &[0.5]
    }
}

/// The place of a size in the rows.
struct InRow {
    row: f64,
    align: Align,
}

/// Rows that rise towards the tip, for sizes from the rein to the tip, each at the end of a line down
/// to where it is measured: so no line runs through a size. None begins left of a place.
fn rows(sizes: impl Iterator<Item = (f64, f64)>, left: f64, text: f64) -> Vec<InRow> {
    let mut placed: Vec<(f64, f64, f64)> = Vec::new();
    let row = |(x, wide): (f64, f64)| {
        let wide = wide + 0.5 * text;
        let align = if x - wide < left {
            Align::Start
        } else {
            Align::End
        };
        let (from, to) = match align {
            Align::Start => (x, x + wide),
            Align::Middle | Align::End => (x - wide, x),
        };
        let under = placed.iter().filter(|own| own.0 < to && own.1 > from);
        let row = under.map(|own| own.2 + 1.0).fold(0.0, f64::max);
        placed.push((from, to, row));
        InRow { row, align }
    };
    sizes.map(row).collect()
}

fn sizes(shown: &Stage, ground: &Ground, scale: Scale, show: Show) -> Vec<Item> {
    let (left, text) = (ground.side.x0, scale.text);
    let found = sizes_of(shown, show).into_iter();
    let found: Vec<Size> = found.filter(|size| size.at.x >= left).collect();
    let wide = found
        .iter()
        .map(|size| (size.at.x, scale.width(&size.text)));
    let rows = rows(wide, left, text);
    let base = ground.sizes_from(text);
    let mut items = Vec::new();
    for (size, InRow { row, align }) in found.into_iter().zip(rows) {
        let (x, y) = (size.at.x, base + row * ROW * text);
        let line = segment(size.at, Point::new(x, y + 0.9 * text));
        items.push(Item::line(line, Line::Dimension).of(size.part));
        let off = match align {
            Align::Start => 0.25,
            Align::Middle | Align::End => -0.25,
        };
        let at = Point::new(x + off * text, y);
        items.push(Item::text(at, size.text, text, align).of(size.part));
    }
    items
}

/// Whether a stage is still the bar, with its marks where they were measured. The steel of a second
/// half is drawn by itself, and its marks with the whole bar alone.
fn is_bar(shown: &Stage) -> bool {
    let step = shown.operation.as_ref().map(|operation| operation.step);
    let cut = [Step::CutBar, Step::Tool(Forging::CutBar)];
    shown.half == 0 && step.is_none_or(|step| cut.contains(&step))
}

/// The marks on the bar, each with what the rule shows from the end where the first jaw will be.
fn marks(plan: &Plan, shown: &Stage, (y, scale): (f64, Scale), show: Show) -> Vec<Item> {
    let mut items = Vec::new();
    // Marks close together stand under each other: how far left each row is taken.
    let mut rows = [f64::INFINITY; 3];
    for mark in &plan.marks {
        /// Inside the end by so much, mm, so that rounding finds steel; and past it, so that a rule's
        /// mark does.
        const INSIDE: f64 = 1e-6;
        const PAST: f64 = 1.0;
        let length = shown.piece.length_mm();
        if mark.at_mm > length + PAST {
            // It is of the other half's steel, where the jaws differ.
            continue;
        }
        let along = mark.at_mm.min(length - INSIDE);
        let Some(own) = place(&shown.piece, along, View::Top) else {
            continue;
        };
        let (middle, z) = (own.middle, own.middle.y + own.half);
        let words = show.number(mark.measured.mm());
        let half = scale.width(&words) / 2.0;
        let row = rows
            .iter()
            .position(|left| middle.x + half < *left)
            .unwrap_or(0);
        rows[row] = middle.x - half - 0.3 * scale.text;
        #[allow(clippy::cast_precision_loss, reason = "three rows")]
        let low = y - (0.9 + 1.2 * row as f64) * scale.text;
        let line = segment(
            Point::new(middle.x, z),
            Point::new(middle.x, low + 0.9 * scale.text),
        );
        items.push(Item::line(line, Line::Mark));
        items.push(Item::text(
            Point::new(middle.x, low),
            words,
            scale.text,
            Align::Middle,
        ));
    }
    items
}

/// Under the steel that is hot a bracket with from where to where.
fn hot_bracket(
    shown: &Stage,
    (operation, after): (&Operation, (f64, f64)),
    (y, left, scale): (f64, f64, Scale),
    show: Show,
) -> Vec<Item> {
    let x = |along| place(&shown.piece, along, View::Side).map(|own| own.middle.x);
    let (Some(from), Some(to), Some(hot)) = (x(after.1), x(after.0), operation.hot_mm) else {
        return Vec::new();
    };
    let tick = 0.5 * scale.text;
    let mut path = segment(Point::new(from, y), Point::new(to, y));
    for end in [from, to] {
        path.move_to((end, y));
        path.line_to((end, y + tick));
    }
    let (first, last) = (show.roughly(hot.0), show.roughly(hot.1));
    let words = format!(
        "hot, {} to {} from the tip",
        show.number(first),
        show.text(last)
    );
    // It ends where the bracket does: the head lies at the right edge.
    let end = to.max(left + scale.width(&words));
    let at = Point::new(end, y - 1.05 * scale.text);
    vec![
        Item::line(path, Line::Warning),
        Item::text(at, words, scale.text, Align::End),
    ]
}
