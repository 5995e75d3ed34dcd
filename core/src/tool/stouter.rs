//! What of a tool is stouter than its bar, and must be gathered from it before it is forged.

use super::document::Tool;
use super::forging::{Form, Worked};
use super::form::{From, formed};
use super::resolve::Model;
use super::solid::{Cut, Run, sweep};
use crate::finding::Part;
use crate::forge::upsetting::{Upset, upset};

/// A smith's eye and a bar's own tolerance are no finer.
const FROM: f64 = 1.03;

/// A part that is stouter than the bar.
#[derive(Debug, Clone, PartialEq)]
pub struct Stouter {
    /// The part.
    pub part: Part,
    /// Which of its runs, as stretch and run of the model.
    pub runs: Vec<(usize, usize)>,
    /// Its largest section as it is hammered, mm².
    pub most_mm2: f64,
    /// How much bar goes into it.
    pub upset: Upset,
}

/// Working end, block or body, and shank, as far as they are stouter than the bar. An eye is not: its
/// cheeks swell as it is slotted; nor is the corner under a shoulder, which the hardy hole shapes.
pub fn stouter(tool: &Tool, model: &Model) -> Vec<Stouter> {
    let parts = [Part::Working, Part::Body, Part::HardyShank].into_iter();
    parts
        .filter_map(|part| of_part(part, tool, model))
        .collect()
}

fn of_part(part: Part, tool: &Tool, model: &Model) -> Option<Stouter> {
    let bar_mm2 = tool.bar.stock.area_mm2();
    let forged = tool.shape.style.forged();
    let from = From {
        bar: Cut::of_bar(&tool.bar.stock),
        body: model.base,
    };
    let (mut runs, mut most_mm2, mut volume) = (Vec::new(), 0.0, 0.0);
    for (stretch, own) in model.runs.iter().enumerate() {
        for (at, run) in own.iter().enumerate() {
            let rough = if part == Part::Working {
                first_forged(run, at, (&forged, from))
            } else {
                *run
            };
            let is_corner = part == Part::HardyShank && at + 1 < own.len();
            let most = rough.largest_mm2();
            if run.part != part || is_corner || most <= FROM * bar_mm2 {
                continue;
            }
            runs.push((stretch, at));
            most_mm2 = f64::max(most_mm2, most);
            volume += sweep(&[*run], 0.0).volume_mm3();
            if at == 0 {
                volume -= sunk_mm3(model, stretch);
            }
        }
    }
    let upset = upset(volume, bar_mm2);
    (!runs.is_empty()).then_some(Stouter {
        part,
        runs,
        most_mm2,
        upset,
    })
}

/// What is open in the first run of a stretch, mm³.
fn sunk_mm3(model: &Model, stretch: usize) -> f64 {
    let its = model
        .piece
        .holes
        .iter()
        .filter(|own| own.stretch == stretch);
    its.map(|own| own.volume_mm3).sum()
}

/// A run as the hammer first shapes it: a gap in it is still shut.
fn first_forged(run: &Run, at: usize, (forged, from): (&[Worked], From)) -> Run {
    let form = forged.iter().find_map(|own| own.form(at));
    formed(run, form.unwrap_or(Form::Done), from)
}
