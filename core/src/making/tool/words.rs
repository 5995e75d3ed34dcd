//! What is said of each operation on a tool.

use super::Task;
use super::told::{Words, Worked, made, sizes, tell};
use super::work::Work;
use super::working;
use crate::forge::upsetting::MOST_UPSET;
use crate::tool::forging::Forging;
use crate::tool::steels::{standard, temper};
use crate::tool::{Hold, Mount, Struck, stouter};

/// The words of an operation, with from where to where it worked afterwards, mm from the working end.
pub(super) fn words(task: &Task<'_>, work: &Work, span: Option<(f64, f64)>) -> Words {
    match work.step {
        Forging::CutBar => tell(
            format!(
                "Cut the bar to {}",
                task.balance.cut_length(task.tool.units)
            ),
            "at the last mark".to_owned(),
            "square to the bar".to_owned(),
            &["Wear eye protection: what is cut off flies"],
        ),
        Forging::UpsetBlock | Forging::UpsetBody | Forging::UpsetEnd => upset(task, work),
        Forging::DrawShank => shank(task),
        Forging::SetShoulder => shoulder(),
        Forging::ShapeBody => body(task),
        Forging::PunchEye => eye(task),
        Forging::DrawFace => face(task),
        Forging::CutOff => cut_off(task),
        Forging::Dress | Forging::GrindEdge | Forging::GrindPoint => dressing(task, work.step),
        Forging::Harden => harden(task),
        Forging::CoolSlowly => tell(
            "Let it cool slowly, in ashes or in still air, and do not quench it".to_owned(),
            "cool slowly, no quench".to_owned(),
            "a file bites".to_owned(),
            &["What is not known to harden is not quenched, and a hot cut never is"],
        ),
        Forging::SizeFull
        | Forging::TaperSquare
        | Forging::TaperOctagon
        | Forging::TaperRound
        | Forging::BreakCorners
        | Forging::FlattenBit
        | Forging::DrawBlade
        | Forging::FullerSides
        | Forging::DrawWedge
        | Forging::SpreadEdge
        | Forging::DrawRidge
        | Forging::TaperBack
        | Forging::RoundNose
        | Forging::DrawEnd
        | Forging::CupEnd
        | Forging::SquareTop
        | Forging::PressGroove
        | Forging::PressVee
        | Forging::DrawTines
        | Forging::Slit
        | Forging::OpenTines => working::words(&Worked::of(task, work, span), work.step),
    }
}

/// Steel is gathered in heats that are short enough not to bend: so much stands free, in diameters.
fn upset(task: &Task<'_>, work: &Work) -> Words {
    let (what, part) = if work.step == Forging::UpsetBlock {
        ("block", "over its shoulder")
    } else if work.step == Forging::UpsetBody {
        ("body", "along its length")
    } else {
        ("end", "where it is to work")
    };
    let show = task.show();
    let runs = made(task, work);
    let most = runs
        .iter()
        .max_by(|a, b| a.largest_mm2().total_cmp(&b.largest_mm2()));
    let size = most.map_or(String::new(), |run| {
        let stoutest = if run.from.area_mm2() > run.to.area_mm2() {
            run.from
        } else {
            run.to
        };
        sizes(task, stoutest)
    });
    let known = stouter(task.tool, task.model).into_iter();
    let (length, heats) = known
        .filter(|own| runs.iter().any(|run| run.part == own.part))
        .fold((0.0, 0), |(length, heats), own| {
            (length + own.upset.length_mm, heats + own.upset.heats)
        });
    let heats = if heats == 1 {
        "one heat".to_owned()
    } else {
        format!("{heats} heats")
    };
    tell(
        format!(
            "Upset the {what} to {size} {part}, out of {} of bar, in {heats}, no more than {MOST_UPSET:.0} diameters \
             of it free at once, and square it up",
            show.text(show.roughly(length))
        ),
        format!("to {size}, {heats}"),
        format!("{size}; no fold at the corners"),
        &["Straighten at once what bends: a bent end folds into a cold shut"],
    )
}

fn shoulder() -> Words {
    tell(
        "Drop the shank hot into the hardy hole and hammer the shoulder down until it bears all round, \
         then lift it out before it shrinks"
            .to_owned(),
        "hot into its hole, shoulder down".to_owned(),
        "no light under the shoulder; it drops in by itself and lifts out by hand".to_owned(),
        &[
            "Never drive a tight shank: it wedges and breaks the heel of the anvil",
            "Lift it out at once: steel that cools in the hole can stick",
        ],
    )
}

fn body(task: &Task<'_>) -> Words {
    let base = sizes(task, task.model.base);
    tell(
        format!("Hammer the bar to the body's section, {base}"),
        format!("to {base}"),
        format!("{base} all along, straight"),
        &[],
    )
}

fn cut_off(task: &Task<'_>) -> Words {
    let long = task.show().text(task.model.piece.length_mm());
    tell(
        format!("Cut it off the bar, {long} from its end"),
        "cut off at the mark".to_owned(),
        "square to the axis".to_owned(),
        &["Wear eye protection: what is cut off flies, and it is hot"],
    )
}

/// Filed or ground: an edge and a point get their angle only here.
fn dressing(task: &Task<'_>, step: Forging) -> Words {
    let gauge = task.tool.shape.style.gauge();
    let long = task.show().text(task.model.piece.length_mm());
    let end = match task.tool.shape.style.ground_degrees() {
        Some(angle) if step == Forging::GrindEdge => {
            format!("grind the edge to {angle:.0}\u{b0} from both faces alike")
        }
        Some(angle) => format!(
            "grind the point to {angle:.0}\u{b0}, turning it all the time, the scratches along the axis"
        ),
        None => "file or grind the working end to its shape".to_owned(),
    };
    tell(
        format!("Cut it square to {long}, {end}, and every sharp rim round"),
        format!("to {long}, {end}"),
        gauge.to_owned(),
        &[
            "Wear eye protection",
            "Grind lightly: blue steel is soft steel",
        ],
    )
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
