//! Where the furniture of a page goes: its measures in one place.

use kurbo::{Rect, Vec2};

use super::TitleBlock;
use super::lettering::{Weight, wrap};
use super::paper::PaperOptions;

/// Thickness of a check bar, mm.
pub(super) const THICK: f64 = 2.2;

/// Between the two bars, mm.
pub(super) const APART: f64 = 0.6;

/// From the cell's corner to a bar's beginning, mm.
pub(super) const INSET: f64 = 1.0;

/// Width of the strip with the bars that stand upright, mm.
pub(super) const COLUMN: f64 = 2.0 * THICK + APART + 0.5;

/// Width that the lying bars with their lettering need, mm.
pub(super) const BAR_ROOM: f64 = 112.5;

/// Height of the lying bars with their rim, mm.
pub(super) const BAR_HEIGHT: f64 = 2.0 * THICK + APART + INSET;

/// Height of the strip with check bars and title block, mm.
pub(super) const ROW: f64 = 20.0;

/// A strip narrower than this carries the title block above the check bars, mm.
pub(super) const NARROW: f64 = BAR_ROOM + 56.0;

/// Size of the notes' lettering, mm, and its line spacing.
pub(super) const NOTE: f64 = 2.8;

pub(super) const NOTE_SPACING: f64 = 3.6;

/// A line of the notes and its weight.
pub(super) type NoteLine = (String, Weight);

/// The notes broken into lines, what stands against making the thing first and bold.
pub(super) fn note_lines(title: &TitleBlock, room: f64) -> Vec<NoteLine> {
    let stop = title.stop.iter().map(|note| (note, Weight::Bold));
    let notes = title.notes.iter().map(|note| (note, Weight::Plain));
    stop.chain(notes)
        .flat_map(|(note, weight)| {
            let lines = wrap(note, NOTE, weight, room);
            lines.into_iter().map(move |line| (line, weight))
        })
        .take(NOTES)
        .collect()
}

/// Height that lines of notes take, mm.
pub(super) fn notes_height(lines: &[NoteLine]) -> f64 {
    lines.iter().map(|_| NOTE_SPACING).sum()
}

/// Space between strips and window, mm.
const GAP: f64 = 1.5;

/// Where things go on one lie of the paper, mm from the lower left corner.
#[derive(Debug, Clone)]
pub(super) struct Layout {
    /// The whole page.
    pub(super) paper: Rect,
    /// The check bars that stand upright.
    pub(super) column: Rect,
    /// The check bars that lie, with what to do.
    pub(super) checks: Rect,
    /// The title block.
    pub(super) title: Rect,
    /// The notes, above both.
    pub(super) notes: Rect,
    /// The wrapped notes.
    pub(super) lines: Vec<NoteLine>,
    /// The window for the drawing.
    pub(super) window: Rect,
}

pub(super) fn layout(
    width: f64,
    height: f64,
    options: &PaperOptions,
    title: &TitleBlock,
) -> Layout {
    let paper = Rect::new(0.0, 0.0, width, height);
    let free = paper.inset(-options.margin);
    let left = free.x0 + COLUMN + GAP;
    let wide = free.x1 - left;
    let (checks, block, top) = if wide < NARROW {
        let checks = Rect::new(left, free.y0, free.x1, free.y0 + ROW);
        (checks, checks + Vec2::new(0.0, ROW), checks.y1 + ROW)
    } else {
        let middle = left + checks_width(wide);
        let (y0, y1) = (free.y0, free.y0 + ROW);
        let checks = Rect::new(left, y0, middle, y1);
        (checks, Rect::new(middle, y0, free.x1, y1), y1)
    };
    let lines = note_lines(title, wide);
    let notes = Rect::new(left, top, free.x1, top + notes_height(&lines));
    Layout {
        paper,
        column: Rect::new(free.x0, free.y0, free.x0 + COLUMN, free.y1),
        checks,
        title: block,
        notes,
        lines,
        window: Rect::new(left, notes.y1 + GAP, free.x1, free.y1),
    }
}

/// The check bars' share of a strip: what they need, and the rest when the title has enough.
fn checks_width(wide: f64) -> f64 {
    /// A title block wider than this gains nothing.
    const TITLE: f64 = 110.0;
    (wide - TITLE).max(BAR_ROOM)
}

/// The most lines of notes.
const NOTES: usize = 4;
