//! How much hammering an operation is, and how it takes its length.

use super::entry::AtOnce;
use crate::making::{Measure, Operation, Step};
use crate::tool::forging::Forging;

/// Steel that a hand hammer moves, mm³ a second for a natural strain of one: half of 40 W (some 25 J a
/// blow, one and a half a second) against a flow stress of 85 MPa at forging heat (judgement).
const MOVED_MM3_S: f64 = 235.0;

impl Measure {
    /// How much of the worked part is steel, mm³.
    fn part_volume_mm3(&self) -> f64 {
        self.section
            .map_or(0.0, |section| section.area_mm2 * self.part_length_mm)
    }
}

/// Hammering that an operation takes one piece, s, for a practised hand: the steel that is moved, and
/// what an operation asks beside it (common practice, no source).
pub(super) fn hammering_s(operation: &Operation) -> f64 {
    let (before, after) = (&operation.before, &operation.after);
    let volume = before.part_volume_mm3().min(after.part_volume_mm3());
    let moved = volume * strain(before, after) / MOVED_MM3_S;
    let shaped = match hammered(operation.step) {
        Hammered::Moved => moved,
        Hammered::Bent => 0.0,
    };
    shaped + beside_s(operation.step)
}

/// How much longer, thinner or wider the worked part becomes, as a natural strain: the largest of the
/// three.
fn strain(before: &Measure, after: &Measure) -> f64 {
    let (Some(a), Some(b)) = (before.section, after.section) else {
        return 0.0;
    };
    let log = |from: f64, to: f64| (to / from.max(f64::MIN_POSITIVE)).ln().abs();
    let all = [
        log(a.depth_mm, b.depth_mm),
        log(a.width_mm, b.width_mm),
        log(a.area_mm2, b.area_mm2),
    ];
    /// No bar is drawn out farther in one operation: what comes out larger is a bend or a bow.
    const MOST: f64 = 2.5;
    all.into_iter()
        .filter(|own| own.is_finite())
        .fold(0.0, f64::max)
        .min(MOST)
}

enum Hammered {
    /// Steel is moved.
    Moved,
    /// It is bent, cut or pierced, and keeps its sections.
    Bent,
}

fn hammered(step: Step) -> Hammered {
    match step {
        Step::Flatten
        | Step::SetDownJaw
        | Step::SetDownBoss
        | Step::ForgeBoss
        | Step::DrawStub
        | Step::DrawSquare
        | Step::DrawOctagon
        | Step::DrawRound
        | Step::RoughJaw => Hammered::Moved,
        Step::CutBar
        | Step::Notch
        | Step::Twist
        | Step::SetDownRein
        | Step::CutApart
        | Step::Gather
        | Step::Weld
        | Step::CutTail
        | Step::TrimRein
        | Step::Grip
        | Step::FinishEnd
        | Step::TrimJaw
        | Step::MakeHole
        | Step::SetNeck
        | Step::ShapeJaw
        | Step::BendRein => Hammered::Bent,
        Step::Tool(own) => hammered_tool(own),
    }
}

/// Setting, turning, bending, trying against the template, s.
fn beside_s(step: Step) -> f64 {
    match step {
        Step::CutBar => 120.0,
        Step::CutApart | Step::CutTail | Step::TrimRein => 60.0,
        Step::TrimJaw => 240.0,
        Step::Weld | Step::Twist => 8.0,
        Step::SetDownJaw | Step::SetDownBoss | Step::ForgeBoss | Step::SetDownRein => 20.0,
        Step::Flatten | Step::DrawStub | Step::DrawSquare | Step::DrawOctagon => 5.0,
        Step::DrawRound | Step::FinishEnd => 15.0,
        Step::Notch | Step::SetNeck | Step::BendRein | Step::RoughJaw => 20.0,
        Step::Gather | Step::Grip | Step::MakeHole => 25.0,
        Step::ShapeJaw => 45.0,
        Step::Tool(own) => beside_tool_s(own),
    }
}

/// Reins are worked a stretch at a time, and so is a head that is flattened; all else must be hot at once.
pub(super) fn at_once(step: Step) -> AtOnce {
    match step {
        Step::Flatten
        | Step::DrawStub
        | Step::DrawSquare
        | Step::DrawOctagon
        | Step::DrawRound
        | Step::Grip
        | Step::BendRein => AtOnce::InTurns,
        Step::Tool(Forging::ShapeBody | Forging::UpsetBody | Forging::SizeFull) => AtOnce::InTurns,
        Step::Tool(_) => AtOnce::Whole,
        Step::CutBar
        | Step::Notch
        | Step::Twist
        | Step::SetDownJaw
        | Step::SetDownBoss
        | Step::SetDownRein
        | Step::ForgeBoss
        | Step::CutApart
        | Step::Gather
        | Step::Weld
        | Step::CutTail
        | Step::TrimRein
        | Step::FinishEnd
        | Step::RoughJaw
        | Step::TrimJaw
        | Step::MakeHole
        | Step::SetNeck
        | Step::ShapeJaw => AtOnce::Whole,
    }
}

/// Whether it is a forge weld, which wants the hottest heat.
pub(super) fn is_weld(step: Step) -> bool {
    step == Step::Weld
}

/// How a tool is worked: drawn, or pressed, pierced and cut.
fn hammered_tool(own: Forging) -> Hammered {
    match own {
        Forging::DrawShank
        | Forging::UpsetBlock
        | Forging::UpsetBody
        | Forging::UpsetEnd
        | Forging::ShapeBody
        | Forging::SizeFull
        | Forging::TaperSquare
        | Forging::TaperOctagon
        | Forging::TaperRound
        | Forging::FlattenBit
        | Forging::DrawBlade
        | Forging::FullerSides
        | Forging::DrawWedge
        | Forging::SpreadEdge
        | Forging::DrawRidge
        | Forging::TaperBack
        | Forging::DrawEnd
        | Forging::SquareTop
        | Forging::DrawTines
        | Forging::DrawFace => Hammered::Moved,
        Forging::CutBar
        | Forging::SetShoulder
        | Forging::BreakCorners
        | Forging::RoundNose
        | Forging::PunchEye
        | Forging::CupEnd
        | Forging::PressGroove
        | Forging::PressVee
        | Forging::Slit
        | Forging::OpenTines
        | Forging::CutOff
        | Forging::Dress
        | Forging::GrindEdge
        | Forging::GrindPoint
        | Forging::Harden
        | Forging::CoolSlowly => Hammered::Bent,
    }
}

/// What an operation on a tool asks beside the steel that it moves, s (common practice, no source).
fn beside_tool_s(own: Forging) -> f64 {
    match own {
        Forging::CutBar => 120.0,
        Forging::CutOff => 60.0,
        Forging::Dress | Forging::GrindEdge | Forging::GrindPoint => 600.0,
        // Nobody hammers meanwhile.
        Forging::Harden | Forging::CoolSlowly => 0.0,
        Forging::PunchEye => 90.0,
        Forging::Slit | Forging::OpenTines => 40.0,
        Forging::SetShoulder
        | Forging::CupEnd
        | Forging::PressGroove
        | Forging::PressVee
        | Forging::RoundNose => 20.0,
        Forging::UpsetBlock
        | Forging::UpsetBody
        | Forging::UpsetEnd
        | Forging::DrawShank
        | Forging::DrawBlade
        | Forging::FullerSides
        | Forging::DrawWedge
        | Forging::SpreadEdge
        | Forging::DrawRidge
        | Forging::DrawTines
        | Forging::DrawFace => 20.0,
        Forging::ShapeBody
        | Forging::SizeFull
        | Forging::BreakCorners
        | Forging::FlattenBit
        | Forging::DrawEnd
        | Forging::SquareTop
        | Forging::TaperSquare
        | Forging::TaperOctagon
        | Forging::TaperRound
        | Forging::TaperBack => 10.0,
    }
}
