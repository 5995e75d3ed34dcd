//! What is said of an operation that shapes the working end.

use super::told::{Words, Worked, tell};
use crate::tool::forging::Forging;

/// The words of an operation that its style asks for.
pub(super) fn words(worked: &Worked, step: Forging) -> Words {
    match step {
        Forging::SizeFull => size_full(worked),
        Forging::TaperSquare => taper_square(worked),
        Forging::TaperOctagon => taper_octagon(),
        Forging::TaperRound => taper_round(worked),
        Forging::BreakCorners => break_corners(worked),
        Forging::TaperBack => taper_back(worked),
        Forging::FlattenBit => flatten_bit(worked),
        Forging::DrawBlade => draw_blade(worked),
        Forging::FullerSides => fuller_sides(worked),
        Forging::DrawWedge => draw_wedge(worked),
        Forging::SpreadEdge => spread_edge(worked),
        Forging::DrawRidge => draw_ridge(worked),
        Forging::RoundNose => round_nose(worked),
        Forging::DrawEnd => draw_end(worked),
        Forging::CupEnd => cup_end(worked),
        Forging::SquareTop => square_top(worked),
        Forging::PressGroove => press_groove(worked),
        Forging::PressVee => press_vee(worked),
        Forging::DrawTines => draw_tines(worked),
        Forging::Slit => slit(),
        Forging::OpenTines => open_tines(worked),
        Forging::CutBar
        | Forging::DrawShank
        | Forging::SetShoulder
        | Forging::UpsetBlock
        | Forging::UpsetBody
        | Forging::UpsetEnd
        | Forging::ShapeBody
        | Forging::PunchEye
        | Forging::DrawFace
        | Forging::CutOff
        | Forging::Dress
        | Forging::GrindEdge
        | Forging::GrindPoint
        | Forging::Harden
        | Forging::CoolSlowly => tell(step.name().to_owned(), String::new(), String::new(), &[]),
    }
}

fn size_full(worked: &Worked) -> Words {
    let Worked { long, tip, .. } = worked;
    tell(
        format!(
            "Hammer the bar to its full size, {tip}, over {long}: lead, full length and back taper"
        ),
        format!("to {tip} over {long}"),
        format!("{tip} all along that length, calipers all round"),
        &["What is left too large here does not drop through"],
    )
}

fn taper_square(worked: &Worked) -> Words {
    let Worked {
        long, tip, root, ..
    } = worked;
    tell(
        format!(
            "Draw the end out four-sided over {long}, from {root} to {tip} at its end, point first and back from there"
        ),
        format!("four-sided to {tip}, {long} long"),
        "the taper in the middle of the bar, its corners sharp".to_owned(),
        &[
            "Strike no cold taper: its point splits",
            "Keep the sides even: a taper that winds bends in the hole",
        ],
    )
}

fn taper_octagon() -> Words {
    tell(
        "Hammer the corners in until the taper is eight-sided".to_owned(),
        "corners in, eight even sides".to_owned(),
        "eight even sides".to_owned(),
        &["Not straight from square to round: the middle splits"],
    )
}

fn taper_round(worked: &Worked) -> Words {
    let Worked {
        tip, root, gauge, ..
    } = worked;
    tell(
        format!(
            "Round the taper with light blows, turning it all the time, from {root} to {tip} at its end"
        ),
        format!("light blows, to {tip}"),
        gauge.clone(),
        &[],
    )
}

fn break_corners(worked: &Worked) -> Words {
    let Worked { tip, gauge, .. } = worked;
    tell(
        format!(
            "Break the four corners with light blows on the slant, its end {tip} across the flats"
        ),
        format!("corners broken, {tip} at the end"),
        gauge.clone(),
        &["A sharp corner tears the hole that it makes"],
    )
}

fn taper_back(worked: &Worked) -> Words {
    let Worked {
        long, root, gauge, ..
    } = worked;
    tell(
        format!(
            "Turn it end for end and taper it back behind its full size, over {long} to {root}"
        ),
        format!("back to {root} over {long}"),
        gauge.clone(),
        &["Its full size stays its largest: what is larger behind does not drop through"],
    )
}

fn flatten_bit(worked: &Worked) -> Words {
    let Worked { long, tip, .. } = worked;
    tell(
        format!("Hammer the square taper flat on two faces, to a bit of {tip} over {long}"),
        format!("flat to {tip}"),
        "the bit in the middle of the body, its faces even".to_owned(),
        &["Turn it on edge as it spreads, or it grows too wide at the end"],
    )
}

fn draw_blade(worked: &Worked) -> Words {
    let Worked {
        long, tip, gauge, ..
    } = worked;
    tell(
        format!(
            "Draw the blade out over {long} to {tip} and leave its end blunt, from both faces alike"
        ),
        format!("flat to {tip}, {long} long"),
        gauge.clone(),
        &[
            "Dress the sides hot as they swell: folded in they crack",
            "Stop when the red is gone: thin edges chill first",
        ],
    )
}

fn fuller_sides(worked: &Worked) -> Words {
    let Worked { tip, root, .. } = worked;
    tell(
        format!(
            "Fuller both faces in over the block, from {root} towards {tip}, so that steel goes up and not aside"
        ),
        format!("both faces in, to {tip}"),
        "both faces in alike, the steel over the middle of the block".to_owned(),
        &["No sharp fuller: a nick at the root is where a wedge breaks off"],
    )
}

fn draw_wedge(worked: &Worked) -> Words {
    let Worked {
        long,
        tip,
        root,
        gauge,
        ..
    } = worked;
    tell(
        format!(
            "Hammer the end to a wedge on two faces over {long}, from {root} to {tip} at the edge, and dress its sides"
        ),
        format!("wedge {long} long, {tip} at the edge"),
        gauge.clone(),
        &[
            "Dress the sides hot as they swell: folded in they crack",
            "Stop when the red is gone: thin edges chill first",
        ],
    )
}

fn spread_edge(worked: &Worked) -> Words {
    let Worked { tip, gauge, .. } = worked;
    tell(
        format!(
            "Spread the edge with the peen along the wedge until it is {tip}, and true its two faces"
        ),
        format!("peen the edge out to {tip}"),
        gauge.clone(),
        &["Strike the thin edge at a full heat alone: it tears as it cools"],
    )
}

fn draw_ridge(worked: &Worked) -> Words {
    let Worked {
        long, tip, root, ..
    } = worked;
    tell(
        format!(
            "Draw the block in from two faces over {long}, from {root} to a ridge of {tip}, its top flat as yet"
        ),
        format!("two faces in, ridge {tip}"),
        "the ridge over the middle of the block, as thick at both ends".to_owned(),
        &["Keep the ends square: a ridge that runs out at its ends marks the work"],
    )
}

fn round_nose(worked: &Worked) -> Words {
    let Worked { gauge, .. } = worked;
    tell(
        "Round the nose with light blows and a file".to_owned(),
        "round over, no edge".to_owned(),
        gauge.clone(),
        &[],
    )
}

fn draw_end(worked: &Worked) -> Words {
    let Worked { long, tip, .. } = worked;
    tell(
        format!("Hammer the end round to {tip} over {long}, its face flat"),
        format!("round, to {tip}"),
        "the end round and flat, square to the axis".to_owned(),
        &[],
    )
}

fn cup_end(worked: &Worked) -> Words {
    let Worked { gauge, .. } = worked;
    tell(
        "Press the cup into the hot end with a ball of the head's size, held in a cup or on a rod"
            .to_owned(),
        "press the ball in".to_owned(),
        gauge.clone(),
        &[
            "A ball that is held by hand alone flies out: hold it in a washer or a rod with a hollow end",
        ],
    )
}

fn square_top(worked: &Worked) -> Words {
    let Worked { long, tip, .. } = worked;
    tell(
        format!("Square the top of the block up to {tip} over {long}, its top flat and level"),
        format!("square, to {tip}"),
        "four flat sides, the top square to them".to_owned(),
        &[],
    )
}

fn press_groove(worked: &Worked) -> Words {
    let Worked { gauge, .. } = worked;
    tell(
        "Lay a cold round of the groove's size across the hot top and drive it in to its middle"
            .to_owned(),
        "drive a cold round in to its middle".to_owned(),
        gauge.clone(),
        &["Use a smooth round, and lift it out at once: hot steel shrinks on to it"],
    )
}

fn press_vee(worked: &Worked) -> Words {
    let Worked { gauge, .. } = worked;
    tell(
        "Lay the corner of a cold square bar, ground to the groove's angle, across the hot top and drive it in".to_owned(),
        "drive a corner in".to_owned(),
        gauge.clone(),
        &["Break the corner a little: what is sharp at the bottom of a V begins a crack"],
    )
}

fn draw_tines(worked: &Worked) -> Words {
    let Worked { long, tip, .. } = worked;
    tell(
        format!(
            "Draw the block up to {tip} over {long}: the steel of both tines, without their gap"
        ),
        format!("to {tip}, no gap yet"),
        format!("{tip} all along, over the middle of the block"),
        &["Leave steel at the root: a fork breaks where it was necked"],
    )
}

fn slit() -> Words {
    tell(
        "Drill or punch a hole where the gap ends, and slit the end in its middle down to it, half from either side".to_owned(),
        "hole first, then slit the middle".to_owned(),
        "the slit in the middle, a round hole at its bottom".to_owned(),
        &["A slit that ends sharp goes on as a crack"],
    )
}

fn open_tines(worked: &Worked) -> Words {
    let Worked { gauge, .. } = worked;
    tell(
        "Open the tines over the horn, dress their corners round, and set them parallel on the work's size".to_owned(),
        "open, round, set parallel".to_owned(),
        gauge.clone(),
        &[],
    )
}
