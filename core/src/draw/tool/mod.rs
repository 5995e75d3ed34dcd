//! A tool in its views: a struck tool lies with its working end to the right, a hardy tool stands as
//! it stands in the anvil.

mod end;
mod handle;
mod lying;
mod standing;

pub use handle::{ToolHandle, ToolSpot, drag_tool, step_tool, tool_handles};

use kurbo::{Point, Rect, Vec2};

use super::stage::steel::{outlines, piece};
use super::{DrawOptions, Names, Sizes};
use crate::finding::Part;
use crate::paper::dimension::Scale;
use crate::paper::{Align, Drawing, Item, Line, View, bounds};
use crate::tool::{Model, Mount, Tool};

/// A tool full size: side view, top view, end view, and its sections in a row. Lengths and sections are
/// written as the options ask. A hardy tool stands upright, its edge up, with the line of the anvil's
/// face under its shoulder.
pub fn tool(document: &Tool, model: &Model, options: &DrawOptions) -> Drawing {
    let seen = Seen {
        document,
        model,
        scale: options.scale(),
        options,
    };
    let items = match document.shape.mount {
        Mount::Struck(_) => lying::views(&seen),
        Mount::Hardy(_) => standing::views(&seen),
    };
    options.views.of(Drawing { items })
}

/// A tool and how it is drawn.
struct Seen<'a> {
    document: &'a Tool,
    model: &'a Model,
    scale: Scale,
    options: &'a DrawOptions,
}

/// A place along the tool where its section is told.
struct Station {
    /// x in mm.
    x: f64,
    depth: f64,
    width: f64,
    part: Part,
    words: String,
}

impl Seen<'_> {
    fn size(&self, mm: f64) -> String {
        self.document.units.show().number(mm)
    }

    fn sized(&self) -> bool {
        self.options.sizes != Sizes::None
    }

    fn named(&self) -> bool {
        self.options.names == Names::Drawn
    }

    /// Its steel in a view, as it lies.
    fn steel(&self, view: View) -> Vec<Item> {
        let mut items = piece(&self.model.piece, view);
        items.extend(outlines(&self.model.piece, view));
        items
    }

    /// Where parts meet, x in mm from the working end on, and the part before each.
    fn meets(&self) -> Vec<(f64, f64, Part)> {
        let mut at = self.model.tip_mm;
        let mut all = Vec::new();
        for stretch in &self.model.piece.stretches {
            let next = at - stretch.length_mm();
            all.push((at, next, stretch.part));
            at = next;
        }
        all
    }

    /// From where to where each run of the working end goes, x in mm, where it has several: a nose and a taper,
    /// the lead, the full length and the back of a drift.
    fn worked(&self) -> Vec<(f64, f64)> {
        /// A run that is shorter is no more than an edge, mm.
        const LEAST: f64 = 1.0;
        let mut at = self.model.tip_mm;
        let Some(runs) = self.model.runs.first().filter(|runs| runs.len() > 1) else {
            return Vec::new();
        };
        let mut all = Vec::new();
        for run in runs {
            if run.length > LEAST {
                all.push((at, at - run.length));
            }
            at -= run.length;
        }
        all
    }

    /// Sections where runs begin and end, each once.
    fn stations(&self) -> Vec<Station> {
        /// Sections nearer than this in all sizes are one, mm.
        const SAME: f64 = 0.05;
        let show = self.document.units.show();
        let mut at = self.model.tip_mm;
        let mut all: Vec<Station> = Vec::new();
        for run in self.model.runs.iter().flatten() {
            for (x, cut) in [(at, run.from), (at - run.length, run.to)] {
                let words = match (cut.outline, cut.depth == cut.width) {
                    (crate::tool::Outline::Round, true) => {
                        format!("\u{d8}{}", show.number(cut.depth))
                    }
                    (_, true) => format!("{} sq", show.number(cut.depth)),
                    (_, false) => format!(
                        "{} \u{d7} {}",
                        show.number(cut.depth),
                        show.number(cut.width)
                    ),
                };
                let own = Station {
                    x,
                    depth: cut.depth,
                    width: cut.width,
                    part: run.part,
                    words,
                };
                let same = all.last().is_some_and(|last| {
                    (last.depth - own.depth).abs() < SAME && (last.width - own.width).abs() < SAME
                });
                if !same && cut.small() > SAME {
                    all.push(own);
                }
            }
            at -= run.length;
        }
        all
    }

    /// The line along which it is struck.
    fn axis(&self, past: f64) -> Item {
        let (from, to) = self.ends();
        let path = crate::paper::dimension::segment(
            Point::new(from - past, 0.0),
            Point::new(to + past, 0.0),
        );
        Item::line(path, Line::Centre)
    }

    /// From its end to its working end, x in mm.
    fn ends(&self) -> (f64, f64) {
        let tip = self.model.tip_mm;
        (tip - self.model.piece.length_mm(), tip)
    }
}

/// A view's name over what it names.
fn title(words: &str, area: Rect, scale: Scale) -> Item {
    let at = Point::new(area.x0, area.y1 + 0.8 * scale.text);
    Item::text(at, words, scale.text, Align::Start)
}

/// A group so shifted that its lower left corner lies at a point; of a view, where it is one.
fn placed(view: Option<View>, name: &str, corner: Point, items: Vec<Item>) -> Item {
    let area = bounds(&items).unwrap_or(Rect::ZERO);
    let shift = corner - Point::new(area.x0, area.y0);
    match view {
        Some(view) => Item::view(view, name, shift, items),
        None => Item::group(name, shift, items),
    }
}

/// The room of an item in its drawing.
fn room(item: &Item) -> Rect {
    item.bounds().unwrap_or(Rect::ZERO)
}

/// Nowhere moved.
const HERE: Vec2 = Vec2::ZERO;
