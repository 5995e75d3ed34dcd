//! From what was asked for to steel. Resolving never fails: what cannot be is told by the checks.

use std::borrow::Cow;

use super::document::Tool;
use super::mount::{Hardy, Hold, Mount, Struck};
use super::solid::{Cut, Outline, Run, sweep};
use crate::finding::Part;
use crate::shape::sweep::Ease;
use crate::shape::{Hole, Mass, Opening, Piece, PieceMark, Slot, SlotEnd, Solid, Stretch};

/// The geometry of a tool.
#[derive(Debug, Clone, PartialEq)]
pub struct Model {
    /// Its steel, from the working end on.
    pub piece: Piece,
    /// The same as runs, a list for each stretch of the piece.
    pub runs: Vec<Vec<Run>>,
    /// The section that the working end stands on.
    pub base: Cut,
    /// Where the working end lies, x in mm.
    pub tip_mm: f64,
    /// By how much the parts are longer together than the tool was asked to be, mm.
    pub over_mm: f64,
    /// By how much its eye reaches into the struck end, mm.
    pub eye_over_mm: f64,
}

/// A stretch of body that is too short for its parts is still so long, mm.
const LEAST_MM: f64 = 0.5;

/// Stretches of a tool from its working end on, and how far below x = 0 it ends.
struct Laid {
    runs: Vec<Vec<Run>>,
    base: Cut,
    over_mm: f64,
    eye_over_mm: f64,
    below_mm: f64,
}

/// The steel of a tool.
pub fn resolve(tool: &Tool) -> Model {
    let laid = match &tool.shape.mount {
        Mount::Struck(struck) => struck_runs(tool, struck),
        Mount::Hardy(hardy) => hardy_runs(tool, hardy),
    };
    let length: f64 = laid.runs.iter().flatten().map(|run| run.length).sum();
    let tip_mm = length - laid.below_mm;
    let piece = piece(tool, &laid, tip_mm);
    Model {
        piece,
        runs: laid.runs,
        base: laid.base,
        tip_mm,
        over_mm: laid.over_mm,
        eye_over_mm: laid.eye_over_mm,
    }
}

fn struck_runs(tool: &Tool, struck: &Struck) -> Laid {
    let base = Cut::of(&struck.body);
    let working = tool.shape.style.working(base);
    // What a drift is drawn back to is the body as it is.
    let stands_on = working.last().map_or(base, |run| run.to);
    let worked: f64 = working.iter().map(|run| run.length).sum();
    let face = struck.face.mm();
    let drawn = stands_on.sized(
        face * stands_on.depth / stands_on.large(),
        face * stands_on.width / stands_on.large(),
    );
    let (mut over_mm, mut eye_over_mm) = (0.0, 0.0);
    let left = |mm: f64, over: &mut f64| {
        *over += (LEAST_MM - mm).max(0.0);
        mm.max(LEAST_MM)
    };
    let chamfer = struck.chamfer.mm();
    let body = struck.length.mm() - worked - chamfer;
    let prism = |length: f64| vec![Run::prism(Part::Body, length, stands_on)];
    let mut runs = vec![working];
    match struck.hold {
        Hold::Hand | Hold::Rod { .. } => runs.push(prism(left(body, &mut over_mm))),
        Hold::Eye {
            along,
            across,
            from_face,
            cheek,
        } => {
            let eye = eye_runs(stands_on, (along.mm(), across.mm()), cheek.mm());
            let long: f64 = eye.iter().map(|run| run.length).sum();
            let above = from_face.mm() - long / 2.0 - chamfer;
            let above = left(above, &mut eye_over_mm);
            runs.push(prism(left(body - above - long, &mut over_mm)));
            runs.push(eye);
            runs.push(prism(above));
        }
    }
    if chamfer > 0.0 {
        runs.push(vec![Run::taper(Part::StruckEnd, chamfer, stands_on, drawn)]);
    } else {
        runs.push(vec![Run::prism(Part::StruckEnd, LEAST_MM, stands_on)]);
    }
    Laid {
        runs,
        base: stands_on,
        over_mm,
        eye_over_mm,
        below_mm: 0.0,
    }
}

/// Flat cheeks about an eye, out to them and back.
fn eye_runs(body: Cut, (along, across): (f64, f64), cheek: f64) -> Vec<Run> {
    /// The cheeks swell out over so much of the eye's length.
    const SWELL: f64 = 0.3;
    let wide = (across + 2.0 * cheek).max(body.width);
    let cheeks = Cut {
        outline: Outline::Chamfered(0.15, 0.15),
        ..body.sized(body.depth, wide)
    };
    let eased = |run: Run| Run {
        ease: Ease::Smooth,
        ..run
    };
    vec![
        eased(Run::taper(Part::Eye, SWELL * along, body, cheeks)),
        Run::prism(Part::Eye, along, cheeks),
        eased(Run::taper(Part::Eye, SWELL * along, cheeks, body)),
    ]
}

fn hardy_runs(tool: &Tool, hardy: &Hardy) -> Laid {
    let block = Cut::boxed(hardy.block_long.mm(), hardy.block_thick.mm());
    let working = tool.shape.style.working(block);
    let (top, end) = (hardy.top_mm().max(LEAST_MM), hardy.end_mm().max(LEAST_MM));
    let corner = hardy.corner.mm().min(hardy.shank.mm() / 2.0);
    let squared = |side: f64| Cut::boxed(side, side);
    let mut shank = Vec::new();
    if corner > 0.0 {
        let fillet = Run::taper(
            Part::HardyShank,
            corner,
            squared(top + 2.0 * corner),
            squared(top),
        );
        shank.push(Run {
            ease: Ease::RoundUp,
            ..fillet
        });
    }
    shank.push(Run::taper(
        Part::HardyShank,
        hardy.shank.mm() - corner,
        squared(top),
        squared(end),
    ));
    Laid {
        runs: vec![
            working,
            vec![Run::prism(Part::Body, hardy.block_high.mm(), block)],
            shank,
        ],
        base: block,
        over_mm: 0.0,
        eye_over_mm: 0.0,
        below_mm: hardy.shank.mm(),
    }
}

fn piece(tool: &Tool, laid: &Laid, tip_mm: f64) -> Piece {
    let mut at = tip_mm;
    let mut stretches = Vec::new();
    let mut starts = Vec::new();
    for runs in &laid.runs {
        let sweep = sweep(runs, at);
        let length = sweep.length();
        let (x, y) = sweep.moments();
        let volume = sweep.volume_mm3();
        stretches.push(Stretch {
            part: runs.first().map_or(Part::Body, |run| run.part),
            solid: Solid::Swept(sweep),
            from: 0.0,
            to: length,
            mass: Mass { volume, x, y },
        });
        starts.push(at);
        at -= length;
    }
    let mut holes = Vec::new();
    let own = tool.shape.style.opening(tip_mm, laid.base);
    let eye = eye(tool, laid, &starts);
    for (stretch, opening) in own.map(|own| (0, own)).into_iter().chain(eye) {
        let (volume_mm3, middle) = taken(&opening);
        holes.push(Hole {
            stretch,
            opening,
            volume_mm3,
        });
        let out = Mass {
            volume: volume_mm3,
            x: volume_mm3 * middle,
            y: 0.0,
        };
        stretches[stretch].mass = stretches[stretch].mass.without(out);
    }
    let marks = (0..stretches.len().saturating_sub(1)).map(|after| {
        let what = meets(stretches[after].part, stretches[after + 1].part);
        PieceMark {
            after,
            what,
            reversed: what,
        }
    });
    let marks = marks.collect();
    let name = Cow::Borrowed(tool.style_kind().name());
    Piece {
        name,
        wanted: 1,
        marks,
        stretches,
        holes,
        dressed: 0,
    }
}

/// What an opening takes away, mm³, and where its middle is, x in mm.
fn taken(opening: &Opening) -> (f64, f64) {
    match opening {
        Opening::Rivet { .. } => (0.0, 0.0),
        Opening::Slot(slot) => (slot.volume_mm3(), slot.middle_mm()),
        Opening::Cup(cup) => (cup.volume_mm3(), cup.middle_mm()),
    }
}

/// The eye of a handle with the stretch that it goes through.
fn eye(tool: &Tool, laid: &Laid, starts: &[f64]) -> Option<(usize, Opening)> {
    let Mount::Struck(Struck {
        hold: Hold::Eye { along, across, .. },
        ..
    }) = tool.shape.mount
    else {
        return None;
    };
    let at = laid
        .runs
        .iter()
        .position(|runs| runs.first().is_some_and(|run| run.part == Part::Eye))?;
    let long: f64 = laid.runs[at].iter().map(|run| run.length).sum();
    let middle = starts[at] - long / 2.0;
    let across_mm = across.mm().min(along.mm());
    let half = (along.mm() - across_mm) / 2.0;
    Some((
        at,
        Opening::Slot(Slot {
            from_mm: middle - half,
            to_mm: middle + half,
            across_mm,
            deep_mm: laid.runs[at][1].from.depth,
            end: SlotEnd::Round,
        }),
    ))
}

/// What meets at a mark, in order along the bar.
fn meets(first: Part, second: Part) -> &'static str {
    match (first, second) {
        (Part::Working, _) => "working end | body",
        (Part::Eye, _) => "eye | body",
        (_, Part::Eye) => "body | eye",
        (_, Part::HardyShank) => "body | hardy shank",
        (_, _) => "body | struck end",
    }
}
