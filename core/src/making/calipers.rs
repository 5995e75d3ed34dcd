//! What calipers are set to after an operation.

use super::operation::Caliper;
use super::stage::Stood;
use super::state::NECK;
use super::step::Step;

/// Parts of the way along what a step works at which it is measured, off its shoulders. What is bent,
/// cut or checked on a template is not measured.
fn places(step: Step) -> &'static [f64] {
    match step {
        // Only its beginning is worked.
        Step::SetDownRein | Step::Gather => &[0.03],
        Step::SetDownBoss | Step::ForgeBoss | Step::Notch => &[0.5],
        Step::Flatten
        | Step::SetDownJaw
        | Step::DrawStub
        | Step::Weld
        | Step::DrawSquare
        | Step::DrawOctagon
        | Step::DrawRound
        | Step::Grip
        | Step::RoughJaw => &[0.1, 0.5, 0.95],
        Step::CutBar
        | Step::Twist
        | Step::CutApart
        | Step::CutTail
        | Step::TrimRein
        | Step::FinishEnd
        | Step::TrimJaw
        | Step::MakeHole
        | Step::SetNeck
        | Step::ShapeJaw
        | Step::BendRein
        | Step::Tool(_) => &[],
    }
}

/// Sizes nearer than this are one for calipers, mm.
const SAME: f64 = 0.1;

/// The sizes along what was worked, each once where it stays the same.
pub(super) fn calipers(step: Step, after: &Stood) -> Vec<Caliper> {
    let zone = if step == Step::Notch {
        NECK
    } else {
        step.zone()
    };
    let (from, to) = after.span(&[zone]).unwrap_or_default();
    let mut all: Vec<Caliper> = Vec::new();
    for part in places(step) {
        let at_mm = from + part * (to - from);
        let Some(cross) = after.piece.cross(at_mm) else {
            continue;
        };
        let own = Caliper {
            at_mm,
            depth_mm: cross.depth_mm,
            width_mm: cross.width_mm,
        };
        if !all.last().is_some_and(|last| last.is_near(&own)) {
            all.push(own);
        }
    }
    all
}

impl Caliper {
    fn is_near(&self, other: &Self) -> bool {
        (self.depth_mm - other.depth_mm).abs() < SAME
            && (self.width_mm - other.width_mm).abs() < SAME
    }
}
