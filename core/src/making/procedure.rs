//! The ways in which a half comes out of its bar, and which of them suit a design.

use crate::asked::{PlainSection, Stock};
use crate::shape::section::smallest_circle_mm;
use crate::shape::sweep::Sweep;
use crate::steel::Steel;
use crate::tongs::document::{Document, ReinEnd};
use crate::tongs::model::Model;

use super::sections::{by_octagon, done_at};
use super::state::{BOSS, JAW, MORE, NECK, REIN, SHOULDER, Shape, State};
use super::step::Step;

/// The order in which a half is made.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Procedure {
    /// Three shoulders against the anvil's edges, then the rein drawn out.
    ThreeShoulders,
    /// The reins drawn in the middle of a blank for two, the heads afterwards.
    ReinsFirst,
    /// The jaw made whole before the rein is drawn.
    JawFirst,
    /// A short half with a rod welded on for the rein.
    WeldedRein,
    /// From flat bar: notches, and a quarter twist behind the jaw.
    FlatTwist,
    /// Round bar hammered flat at the head, then three shoulders.
    RoundFlattened,
    /// A tool cut to its length first and held in tongs.
    ToolCutFirst,
    /// A tool forged on the end of the bar that it is held by, and cut off it.
    ToolOnBar,
}

impl Procedure {
    /// Every procedure of a pair, the plainest first.
    pub const ALL: [Self; 6] = [
        Self::ThreeShoulders,
        Self::ReinsFirst,
        Self::RoundFlattened,
        Self::JawFirst,
        Self::WeldedRein,
        Self::FlatTwist,
    ];

    /// Every procedure of a tool.
    pub const OF_TOOLS: [Self; 2] = [Self::ToolCutFirst, Self::ToolOnBar];

    /// What the smith reads.
    pub fn name(self) -> &'static str {
        match self {
            Self::ThreeShoulders => "three shoulders",
            Self::ReinsFirst => "reins first",
            Self::JawFirst => "jaw first",
            Self::WeldedRein => "welded rein",
            Self::FlatTwist => "flat bar with a twist",
            Self::RoundFlattened => "round bar flattened",
            Self::ToolCutFirst => "cut first",
            Self::ToolOnBar => "on the bar",
        }
    }

    /// The same as one word for a command line.
    pub fn word(self) -> &'static str {
        match self {
            Self::ThreeShoulders => "three-shoulders",
            Self::ReinsFirst => "reins-first",
            Self::JawFirst => "jaw-first",
            Self::WeldedRein => "welded-rein",
            Self::FlatTwist => "flat-twist",
            Self::RoundFlattened => "round-flattened",
            Self::ToolCutFirst => "cut-first",
            Self::ToolOnBar => "on-the-bar",
        }
    }

    /// The procedure that a word names, whatever stands between its words.
    pub fn named(word: &str) -> Option<Self> {
        let plain = |text: &str| text.to_lowercase().replace([' ', '_'], "-");
        Self::ALL
            .into_iter()
            .chain(Self::OF_TOOLS)
            .find(|own| own.word() == plain(word) || plain(own.name()) == plain(word))
    }
}

/// Whether a procedure suits a design.
#[derive(Debug, Clone, PartialEq)]
pub struct Suits {
    /// The procedure.
    pub procedure: Procedure,
    /// Why it does not, in one sentence; `None` where it does.
    pub why_not: Option<String>,
}

/// Which procedures suit a design, and why the others do not.
pub fn suits(document: &Document, model: &Model) -> Vec<Suits> {
    let suit = |procedure| Suits {
        procedure,
        why_not: why_not(procedure, document, model),
    };
    Procedure::ALL.map(suit).into()
}

/// The first procedure that suits a design; three shoulders where none does.
pub fn usual(document: &Document, model: &Model) -> Procedure {
    let first = suits(document, model)
        .into_iter()
        .find(|own| own.why_not.is_none());
    first.map_or(Procedure::ThreeShoulders, |own| own.procedure)
}

/// A flat bar wider than this for its thickness does not stand under set-downs on its edge: it
/// buckles (from memory: 2 to 2.5).
const FLAT_FROM: f64 = 1.6;

fn is_flat(stock: &Stock) -> bool {
    stock.wide_mm() > FLAT_FROM * stock.size().mm()
}

fn why_not(procedure: Procedure, document: &Document, model: &Model) -> Option<String> {
    let show = document.units.show();
    let stock = &document.bar.stock;
    match procedure {
        Procedure::ThreeShoulders => is_flat(stock).then(|| {
            "bar so flat buckles when it is set down on its edge: notch and twist it".to_owned()
        }),
        Procedure::ReinsFirst => reins_first(document, model),
        Procedure::JawFirst => {
            let (jaw, most) = (jaw_circle_mm(model), LARGEST_JAW * stock.wide_mm());
            (jaw > most).then(|| {
                format!(
                    "the finished jaw is {} across: it cannot be held or turned while the rein is \
                     drawn, where up to {} can",
                    show.text(jaw),
                    show.text(most)
                )
            })
        }
        Procedure::WeldedRein => welded(document),
        Procedure::FlatTwist => flat_twist(document),
        Procedure::ToolCutFirst | Procedure::ToolOnBar => {
            Some("it is for a tool, and this is a pair of tongs".to_owned())
        }
        Procedure::RoundFlattened => match stock {
            Stock::Round { .. } => None,
            Stock::Square { .. } | Stock::Flat { .. } => {
                Some("the bar is flat-sided already".to_owned())
            }
        },
    }
}

fn reins_first(document: &Document, model: &Model) -> Option<String> {
    match document.layout {
        crate::asked::Layout::Single { .. } => {
            return Some("each half has its own length of bar: lay both out on one".to_owned());
        }
        crate::asked::Layout::BothOnOneBar => {}
    }
    if !model.alike {
        return Some(
            "the jaws differ, so the halves do not come out of one blank alike".to_owned(),
        );
    }
    is_flat(&document.bar.stock)
        .then(|| "bar so flat buckles when its head is set down: notch and twist it".to_owned())
}

/// A jaw that needs a larger circle than this many bars is in the way when the rein is drawn
/// (judgement: tongs made for the bar still close on it).
const LARGEST_JAW: f64 = 1.5;

/// The circle around all sections of the finished jaw.
fn jaw_circle_mm(model: &Model) -> f64 {
    let jaw = &model.a.jaw;
    let points = jaw.stations.iter().flat_map(|station| {
        let (y, z) = (jaw.middle(station.at).y, station.shift);
        let (h, w) = (station.depth / 2.0, station.width / 2.0);
        [
            (z - w, y - h),
            (z - w, y + h),
            (z + w, y - h),
            (z + w, y + h),
        ]
    });
    let points: Vec<(f64, f64)> = points.collect();
    smallest_circle_mm(&points)
}

fn welded(document: &Document) -> Option<String> {
    match document.bar.steel {
        Steel::Mild => None,
        Steel::Carbon1045
        | Steel::Alloy4130
        | Steel::Alloy4140
        | Steel::Spring5160
        | Steel::ToolH13
        | Steel::ToolW1
        | Steel::ToolO1
        | Steel::ToolS7
        | Steel::Unknown => Some(
            "this steel grows coarse beside a forge weld and breaks there: draw the rein"
                .to_owned(),
        ),
    }
}

fn flat_twist(document: &Document) -> Option<String> {
    let show = document.units.show();
    let stock = &document.bar.stock;
    if !is_flat(stock) {
        return Some("notches and a twist want flat bar".to_owned());
    }
    let (boss, bar) = (document.boss.thickness.mm(), stock.size().mm());
    /// A boss is taken as the bar is, but for the blows that round it.
    const NEAR: f64 = 1.02;
    (boss > NEAR * bar).then(|| {
        format!(
            "the boss is {} thick and the bar only {}",
            show.text(boss),
            show.text(bar)
        )
    })
}

/// The shapes that a rein goes through once it is drawn, and the last of them.
pub(super) fn rein_steps(document: &Document) -> (Vec<Step>, Vec<Step>, Shape) {
    let rein = &document.rein;
    let zone = rein.hand_zone.as_ref().map(|zone| zone.section);
    let ends: [&PlainSection; 2] = [&rein.start, &rein.end];
    let any = |test: &dyn Fn(&PlainSection) -> bool| ends.iter().any(|own| test(own));
    let mut draw = vec![Step::DrawSquare];
    let mut last = Shape::Square;
    if any(&by_octagon) {
        draw.push(Step::DrawOctagon);
        last = Shape::Octagon;
    }
    if any(&|own| done_at(own) == Shape::Round) {
        draw.push(Step::DrawRound);
        last = Shape::Round;
    }
    let mut end = Vec::new();
    if zone.is_some_and(|own| own != rein.end) {
        end.push(Step::Grip);
        last = Shape::Gripped;
    }
    if matches!(rein.finish, ReinEnd::Rounded | ReinEnd::Ball { .. }) {
        end.push(Step::FinishEnd);
        last = Shape::Ended;
    }
    (draw, end, last)
}

/// The operations of a procedure in order, those alone that have something to do.
pub(super) fn steps(
    procedure: Procedure,
    document: &Document,
    state: &State,
    rein: &Sweep,
) -> Vec<Step> {
    let (draw, end, _) = rein_steps(document);
    let head = [
        Step::SetDownJaw,
        Step::SetDownBoss,
        Step::SetDownRein,
        Step::ForgeBoss,
    ];
    let cut = [Step::CutTail, Step::TrimRein];
    let jaw = [Step::RoughJaw, Step::TrimJaw];
    let join = [Step::MakeHole, Step::SetNeck, Step::ShapeJaw];
    // What every half goes through once its rein is drawn, but for a jaw that was made first.
    let behind = [&cut[..], &end, &jaw, &join].concat();
    let all: Vec<Step> = match procedure {
        Procedure::ThreeShoulders | Procedure::ToolCutFirst | Procedure::ToolOnBar => [
            &[Step::CutBar][..],
            &head,
            &[Step::CutApart],
            &draw,
            &behind,
        ]
        .concat(),
        Procedure::RoundFlattened => [
            &[Step::CutBar, Step::Flatten][..],
            &head,
            &[Step::CutApart],
            &draw,
            &behind,
        ]
        .concat(),
        Procedure::ReinsFirst => [
            &[Step::CutBar][..],
            &draw,
            &[
                Step::CutApart,
                Step::SetDownJaw,
                Step::SetDownBoss,
                Step::ForgeBoss,
            ],
            &behind,
        ]
        .concat(),
        Procedure::JawFirst => [
            &[Step::CutBar, Step::SetDownJaw][..],
            &jaw,
            &head[1..],
            &[Step::CutApart],
            &join,
            &draw,
            &cut,
            &end,
        ]
        .concat(),
        Procedure::WeldedRein => [
            &[Step::CutBar][..],
            &head,
            &[Step::DrawStub, Step::Gather, Step::Weld],
            &draw,
            &behind,
        ]
        .concat(),
        Procedure::FlatTwist => [
            &[
                Step::CutBar,
                Step::Notch,
                Step::Twist,
                Step::ForgeBoss,
                Step::CutApart,
            ][..],
            &draw,
            &behind,
        ]
        .concat(),
    };
    let zones = &state.zones;
    let over: f64 = [NECK, BOSS, SHOULDER, REIN]
        .iter()
        .map(|&at| zones[at].spare)
        .sum();
    let needed = [
        (Step::CutBar, state.uncut > 0.0),
        (Step::CutApart, state.double),
        (Step::CutTail, !state.apart && zones[MORE].spare > 0.0),
        (Step::TrimRein, over > 0.0),
        (Step::TrimJaw, zones[JAW].spare > 0.0),
    ];
    let idle: Vec<Step> = needed
        .iter()
        .filter(|own| !own.1)
        .map(|own| own.0)
        .collect();
    let mut all: Vec<Step> = all
        .into_iter()
        .filter(|step| !idle.contains(step))
        .collect();
    if is_bent(rein) {
        all.push(Step::BendRein);
    }
    all
}

/// Whether a rein is anything but straight.
pub(super) fn is_bent(rein: &Sweep) -> bool {
    rein.path.runs().any(|run| run.curvature != 0.0)
}
