//! What is said of each operation on a tool.

use super::Task;
use crate::tool::forging::Forging;
use crate::tool::steels::{standard, temper};
use crate::tool::{Hold, Mount, Struck};

/// What is done, how it is checked, what can go wrong.
pub(super) struct Words {
    pub(super) what: String,
    pub(super) brief: String,
    pub(super) check: String,
    pub(super) cautions: Vec<&'static str>,
}

/// The words of an operation, with from where to where it worked afterwards, mm from the working end.
pub(super) fn words(task: &Task<'_>, step: Forging, span: Option<(f64, f64)>) -> Words {
    let show = task.show();
    let long = span.map_or(0.0, |(from, to)| to - from);
    let long = show.text(show.roughly(long));
    let end = task
        .model
        .runs
        .first()
        .and_then(|runs| runs.iter().find(|run| run.from.small() > 0.0));
    let by = |depth: f64, width: f64| format!("{} x {}", show.number(depth), show.text(width));
    let tip = end.map_or(String::new(), |run| by(run.from.depth, run.from.width));
    let base = by(task.model.base.depth, task.model.base.width);
    let gauge = task.tool.shape.style.gauge().to_owned();
    match step {
        Forging::CutBar => tell(
            format!("Cut the bar to {}", task.balance.cut_length(task.tool.units)),
            "at the last mark".to_owned(),
            "square to the bar".to_owned(),
            &["Wear eye protection: what is cut off flies"],
        ),
        Forging::UpsetBlock => tell(
            format!("Upset the block to {base} over its shoulder, in short heats, and square it up"),
            format!("to {base}"),
            format!("{base}; no fold at the corners"),
            &["Straighten at once what bends: a bent end folds into a cold shut"],
        ),
        Forging::DrawShank => shank(task),
        Forging::SetShoulder => tell(
            "Drop the shank hot into the hardy hole and hammer the shoulder down until it bears all round, \
             then lift it out before it shrinks"
                .to_owned(),
            "hot into its hole, shoulder down".to_owned(),
            "no light under the shoulder; it drops in by itself and lifts out by hand".to_owned(),
            &[
                "Never drive a tight shank: it wedges and breaks the heel of the anvil",
                "Lift it out at once: steel that cools in the hole can stick",
            ],
        ),
        Forging::ShapeBody => tell(
            format!("Hammer the bar to the body's section, {base}"),
            format!("to {base}"),
            format!("{base} all along, straight"),
            &[],
        ),
        Forging::TaperSquare => tell(
            format!("Draw the end out four-sided over {long}, towards {tip}, point first and back from there"),
            format!("four-sided, {long} long"),
            "the taper in the middle of the bar, its corners sharp".to_owned(),
            &["Strike no cold taper: its point splits", "Keep the sides even: a taper that winds bends in the hole"],
        ),
        Forging::TaperOctagon => tell(
            "Hammer the corners in until the taper is eight-sided".to_owned(),
            "corners in, eight even sides".to_owned(),
            "eight even sides".to_owned(),
            &["Not straight from square to round: the middle splits"],
        ),
        Forging::TaperRound => tell(
            format!("Round the taper with light blows, turning it all the time, to {tip} at its end"),
            format!("light blows, to {tip}"),
            gauge,
            &[],
        ),
        Forging::TaperBack => tell(
            format!("Leave its full size as it is, and taper it back to {base} behind"),
            format!("back to {base}"),
            gauge,
            &["Its full size stays its largest: what is larger behind does not drop through"],
        ),
        Forging::DrawBlade => tell(
            format!("Draw the blade out over {long} and spread it to {tip} at the edge, from both faces alike"),
            format!("to {tip}, {long} long"),
            gauge,
            &["Dress the sides hot as they swell: folded in they crack", "Stop when the red is gone: thin edges chill first"],
        ),
        Forging::RoundNose => tell(
            "Round the nose with light blows and a file".to_owned(),
            "round over, no edge".to_owned(),
            gauge,
            &[],
        ),
        Forging::PunchEye => eye(task),
        Forging::CupEnd => tell(
            "Press the cup into the hot end with a ball of the head's size, held in a cup or on a rod".to_owned(),
            "press the ball in".to_owned(),
            gauge,
            &["A ball that is held by hand alone flies out: hold it in a washer or a rod with a hollow end"],
        ),
        Forging::PressGroove => tell(
            "Lay a cold round of the groove's size across the hot top and drive it in to its middle".to_owned(),
            "drive a cold round in to its middle".to_owned(),
            gauge,
            &["Use a smooth round, and lift it out at once: hot steel shrinks on to it"],
        ),
        Forging::Slit => tell(
            "Slit the end in its middle with a hot chisel, half from either side, down to the bottom of the gap".to_owned(),
            "slit the middle, from both sides".to_owned(),
            "the slit in the middle, a drilled hole or a round end at its bottom".to_owned(),
            &["A slit that ends sharp goes on as a crack"],
        ),
        Forging::OpenTines => tell(
            "Open the tines over the horn, dress their corners round, and set them parallel on the work's size".to_owned(),
            "open, round, set parallel".to_owned(),
            gauge,
            &[],
        ),
        Forging::DrawFace => face(task),
        Forging::CutOff => tell(
            format!("Cut it off the bar, {} from its end", show.text(task.model.piece.length_mm())),
            "cut off at the mark".to_owned(),
            "square to the axis".to_owned(),
            &["Wear eye protection: what is cut off flies, and it is hot"],
        ),
        Forging::Dress => tell(
            format!(
                "Cut it square to {}, file or grind the working end to its shape, and every sharp rim round",
                show.text(task.model.piece.length_mm())
            ),
            format!("to {}, file to its shape", show.text(task.model.piece.length_mm())),
            gauge,
            &["Wear eye protection", "Grind lightly: blue steel is soft steel"],
        ),
        Forging::Harden => harden(task),
        Forging::CoolSlowly => tell(
            "Let it cool slowly, in ashes or in still air, and do not quench it".to_owned(),
            "cool slowly, no quench".to_owned(),
            "a file bites".to_owned(),
            &["What is not known to harden is not quenched, and a hot cut never is"],
        ),
    }
}

fn shank(task: &Task<'_>) -> Words {
    let Mount::Hardy(hardy) = task.tool.shape.mount else {
        return tell(
            "Draw the shank".to_owned(),
            String::new(),
            String::new(),
            &[],
        );
    };
    let show = task.show();
    tell(
        format!(
            "Draw the shank square behind the block, {} under the shoulder and {} at its end",
            show.text(hardy.top_mm()),
            show.text(hardy.end_mm())
        ),
        format!(
            "square, {} to {}",
            show.number(hardy.top_mm()),
            show.text(hardy.end_mm())
        ),
        format!(
            "cold it drops into the {} hole with {} of play",
            show.text(hardy.hole.mm()),
            show.text(hardy.play.mm())
        ),
        &["Measure your own hole: no two anvils have the same"],
    )
}

fn eye(task: &Task<'_>) -> Words {
    let Mount::Struck(Struck {
        hold: Hold::Eye { along, across, .. },
        ..
    }) = task.tool.shape.mount
    else {
        return tell(
            "Punch the eye".to_owned(),
            String::new(),
            String::new(),
            &[],
        );
    };
    let show = task.show();
    tell(
        format!(
            "Slot-punch the eye from both sides, knock out the slug, and drift it to {} by {}; the cheeks swell \
             on the drift",
            show.text(along.mm()),
            show.text(across.mm())
        ),
        format!(
            "slot from both sides, drift to {} x {}",
            show.number(along.mm()),
            show.text(across.mm())
        ),
        "seen from both sides the eye is in the middle and square to the tool".to_owned(),
        &[
            "A crooked eye makes a crooked tool: turn over when the punch feels solid, and look before every blow",
        ],
    )
}

fn face(task: &Task<'_>) -> Words {
    let Mount::Struck(struck) = task.tool.shape.mount else {
        return tell(
            "Draw in the struck end".to_owned(),
            String::new(),
            String::new(),
            &[],
        );
    };
    let show = task.show();
    tell(
        format!(
            "Draw the struck end in to {} over {} and round its rim",
            show.text(struck.face.mm()),
            show.text(struck.chamfer.mm())
        ),
        format!("to {} across", show.text(struck.face.mm())),
        "the face square to the axis and a little crowned".to_owned(),
        &["It is never hardened: a hard struck end throws chips"],
    )
}

/// How it is hardened its maker says: no temperature of a hardening heat stands here.
fn harden(task: &Task<'_>) -> Words {
    let (show, steel) = (task.show(), task.tool.bar.steel);
    let range = temper(steel).map_or(String::new(), |own| {
        format!(
            "; published tables temper it between {} and {}",
            show.temperature(own.least_celsius),
            show.temperature(own.most_celsius)
        )
    });
    // What stands in the anvil is not struck.
    let (soft, file) = match task.tool.shape.mount {
        Mount::Struck(_) => (
            "; leave the struck end soft",
            ", and a file bites freely on the struck end",
        ),
        Mount::Hardy(_) => (
            "; leave the shank soft",
            ", and a file bites freely on the shank",
        ),
    };
    tell(
        format!(
            "Harden and temper the working end alone as the maker's sheet for {} ({}) says{range}{soft}",
            steel.name(),
            standard(steel)
        ),
        "as the maker's sheet says".to_owned(),
        format!("the working end as hard as that sheet gives for its temper{file}"),
        &[
            "Quench fumes and oil flames: in the open air, a lid at hand, no water near hot oil",
            "Fresh from the quench it is as brittle as glass: temper it at once, strike nothing with it before",
        ],
    )
}

fn tell(what: String, brief: String, check: String, cautions: &[&'static str]) -> Words {
    Words {
        what,
        brief,
        check,
        cautions: cautions.into(),
    }
}
