//! What of a tool's drawing can be dragged, found by asking the model: each value has its mark where
//! the steel answers to it most.

use kurbo::{Point, Vec2};

use super::super::handle::SLOWEST;
use crate::asked::{Field, Step, Value};
use crate::finding::Part;
use crate::paper::View;
use crate::tool::{Model, Mount, Tool, resolve};

/// A place on the steel of a tool.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct ToolSpot {
    /// The stretch, by its place among the runs of the model.
    stretch: usize,
    /// The run in it.
    run: usize,
    /// Which of its ends.
    end: RunEnd,
    /// Where across it.
    across: Across,
}

/// An end of a run.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
enum RunEnd {
    /// Nearer to the working end.
    From,
    /// The other one.
    To,
}

/// Where across a section.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
enum Across {
    /// On the axis, in the side view.
    Axis,
    /// On its upper edge in the side view.
    Depth,
    /// On its far edge in the top view, which is the front view of a hardy tool.
    Width,
    /// On the rim of what is open in the top view.
    Opening,
}

/// A place on a tool's drawing that can be dragged.
#[derive(Debug, Clone, PartialEq)]
pub struct ToolHandle {
    /// The value that it changes, such as `working.taper`.
    pub path: String,
    /// What it is called.
    pub label: String,
    /// The part that it shapes.
    pub part: Part,
    /// The place that it holds.
    pub spot: ToolSpot,
    /// What its spot moves by on paper, mm in its view, when the value grows by 1 mm or 1 degree.
    /// Never shorter than [`SLOWEST`].
    pub answer: Vec2,
}

impl ToolHandle {
    /// The view that it lies in: of a hardy tool the top view is the front view.
    pub fn view(&self) -> View {
        match self.spot.across {
            Across::Axis | Across::Depth => View::Side,
            Across::Width | Across::Opening => View::Top,
        }
    }

    /// Where it lies in its view, mm, as the view is drawn: a hardy tool stands. Nothing for a tool that
    /// has no such place.
    pub fn place(&self, tool: &Tool, model: &Model) -> Option<Point> {
        place(self.spot, tool, model)
    }
}

fn place(spot: ToolSpot, tool: &Tool, model: &Model) -> Option<Point> {
    let mut x = model.tip_mm;
    for runs in &model.runs[..spot.stretch] {
        x -= runs.iter().map(|run| run.length).sum::<f64>();
    }
    let runs = model.runs.get(spot.stretch)?;
    let run = runs.get(spot.run)?;
    x -= runs[..spot.run].iter().map(|run| run.length).sum::<f64>();
    let cut = match spot.end {
        RunEnd::From => run.from,
        RunEnd::To => {
            x -= run.length;
            run.to
        }
    };
    let lies = match spot.across {
        Across::Axis => Point::new(x, 0.0),
        Across::Depth => Point::new(x, cut.depth / 2.0),
        Across::Width => Point::new(x, cut.width / 2.0),
        Across::Opening => rim(model, spot.stretch, spot.end)?,
    };
    Some(match tool.shape.mount {
        Mount::Struck(_) => lies,
        // A quarter turn: the working end is up.
        Mount::Hardy(_) => Point::new(-lies.y, lies.x),
    })
}

/// The rim of an opening, at its bottom or at its side.
fn rim(model: &Model, stretch: usize, end: RunEnd) -> Option<Point> {
    use crate::shape::Opening;
    let hole = model
        .piece
        .holes
        .iter()
        .find(|hole| hole.stretch == stretch)?;
    match (hole.opening, end) {
        (Opening::Rivet { .. }, _) => None,
        (Opening::Cup(cup), RunEnd::From) => Some(Point::new(cup.at_mm, cup.across_mm / 2.0)),
        (Opening::Cup(cup), RunEnd::To) => Some(Point::new(cup.at_mm - cup.deep_mm, 0.0)),
        (Opening::Slot(slot), RunEnd::From) => Some(Point::new(slot.to_mm, slot.across_mm / 2.0)),
        (Opening::Slot(slot), RunEnd::To) => Some(Point::new(slot.ends_mm().0, 0.0)),
    }
}

/// Every place that steel of a tool can be held by.
fn spots(model: &Model) -> Vec<ToolSpot> {
    let mut all = Vec::new();
    for (stretch, runs) in model.runs.iter().enumerate() {
        for run in 0..runs.len() {
            for end in [RunEnd::From, RunEnd::To] {
                for across in [Across::Axis, Across::Depth, Across::Width] {
                    all.push(ToolSpot {
                        stretch,
                        run,
                        end,
                        across,
                    });
                }
            }
        }
        let across = Across::Opening;
        all.extend([RunEnd::From, RunEnd::To].map(|end| ToolSpot {
            stretch,
            run: 0,
            end,
            across,
        }));
    }
    all
}

/// Every handle of a tool, in the order of its values. Values that nothing on the paper answers to have
/// none, and no two hold one place.
pub fn tool_handles(tool: &Tool, model: &Model) -> Vec<ToolHandle> {
    let mut all: Vec<ToolHandle> = Vec::new();
    for field in tool.fields() {
        let of_shape = matches!(
            field.part,
            Part::Working | Part::Body | Part::Eye | Part::StruckEnd | Part::HardyShank
        );
        let moves = matches!(field.value, Value::Length(_) | Value::Angle(_));
        if of_shape && moves {
            let found = best(tool, model, (&field, &all));
            all.extend(found);
        }
    }
    all
}

/// The place that answers most to a value and that no other handle holds.
fn best(tool: &Tool, model: &Model, (field, held): (&Field, &[ToolHandle])) -> Option<ToolHandle> {
    /// What a value is changed by to see what moves, mm or degrees.
    const ASKED: f64 = 0.05;
    /// Nearer than this two marks are one, mm.
    const APART: f64 = 1.0;
    let number = field.value.number()?;
    let mut other = tool.clone();
    other.put(&field.path, field.value.with_number(number + ASKED));
    let moved = resolve(&other);
    if moved
        .runs
        .iter()
        .map(Vec::len)
        .ne(model.runs.iter().map(Vec::len))
    {
        return None;
    }
    let answers = spots(model).into_iter().filter_map(|spot| {
        let (a, b) = (place(spot, tool, model)?, place(spot, &other, &moved)?);
        let by = (b - a) / ASKED;
        let taken = held.iter().any(|own| {
            let there = own.place(tool, model);
            own.view() == view_of(spot) && there.is_some_and(|there| there.distance(a) < APART)
        });
        (by.hypot() > SLOWEST && !taken).then_some((spot, by))
    });
    // On equal terms the first place is taken.
    let best = answers.fold(None, |best: Option<(ToolSpot, Vec2)>, next| match best {
        Some(best) if next.1.hypot() <= 1.02 * best.1.hypot() => Some(best),
        Some(_) | None => Some(next),
    });
    best.map(|(spot, answer)| ToolHandle {
        path: field.path.clone(),
        label: field.full_name(),
        part: field.part,
        spot,
        answer,
    })
}

fn view_of(spot: ToolSpot) -> View {
    match spot.across {
        Across::Axis | Across::Depth => View::Side,
        Across::Width | Across::Opening => View::Top,
    }
}

/// Drags a handle of `start` by so many mm on the paper: the tool with the new value, held inside its
/// limits and set to what a smith measures. A drag of less than half a step changes nothing.
pub fn drag_tool(start: &Tool, handle: &ToolHandle, moved: Vec2, step: Step) -> Tool {
    let more = moved.dot(handle.answer) / handle.answer.hypot2().max(SLOWEST * SLOWEST);
    let unit = start.units.unit();
    let value = start.field(&handle.path).and_then(|field| {
        let (now, size) = (field.value.number()?, field.value.step(step, unit)?);
        let gone = more.is_finite() && more.abs() >= size / 2.0;
        gone.then(|| field.value.at_step(now + more, field.range, (step, unit)))?
    });
    let mut tool = start.clone();
    if let Some(value) = value {
        tool.put(&handle.path, value);
    }
    tool
}

/// Sets a handle's value on by so many steps, for the keys.
pub fn step_tool(start: &Tool, handle: &ToolHandle, steps: f64, step: Step) -> Tool {
    let mut tool = start.clone();
    let field = start.field(&handle.path).filter(|_| steps.is_finite());
    if let Some(value) = field.and_then(|field| field.stepped(steps, (step, start.units.unit()))) {
        tool.put(&handle.path, value);
    }
    tool
}
