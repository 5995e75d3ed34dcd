//! The work as stretches along its own axis: bar, shank, head.

use crate::asked::{FlatOf, Head, HexagonOf, RoundOf, SquareOf, Work};
use crate::shape::section::Section;
use crate::tongs::headroom::corner_radius_mm;
use crate::tongs::model::{Model, WorkInJaws};

/// From which side the axis is seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Seen {
    /// So that the size between the jaws is seen.
    Upright,
    /// From above the jaws.
    Above,
}

/// What a stretch is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum What {
    /// What is held.
    Held,
    /// The shank of a bolt that is held by its head.
    Shank,
    /// The head of a bolt that is held by its shank.
    Head,
}

/// A stretch of the work, mm.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Stretch {
    /// Where it begins and ends along the axis.
    pub(super) ends: (f64, f64),
    /// Its lowest and highest place beside the axis.
    pub(super) sides: (f64, f64),
    /// Long edges that are seen.
    pub(super) edges: Vec<f64>,
    /// Long edges behind its face.
    pub(super) hidden: Vec<f64>,
    /// From one rib to the next.
    pub(super) ribs: Option<f64>,
}

/// The work as stretches, and whether it runs on past its first and its last end.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Stretches {
    pub(super) all: Vec<Stretch>,
    pub(super) open: (bool, bool),
}

/// Along the tongs from one place to another, beyond which it may run on.
pub(super) fn along(model: &Model, seen: Seen, (from, to): (f64, f64), runs_on: bool) -> Stretches {
    let work = &model.work;
    let (what, last) = match head_mm(&work.asked) {
        None => (vec![(What::Held, from, to)], true),
        Some((Lump::Held, height)) => (
            vec![
                (What::Held, from, from + height),
                (What::Shank, from + height, to.max(from + height)),
            ],
            true,
        ),
        Some((Lump::Alone, height)) => (vec![(What::Held, from, from + height)], false),
        Some((Lump::Within, height)) => (
            vec![
                (What::Head, from, from + height),
                (What::Held, from + height, to),
            ],
            true,
        ),
        Some((Lump::InFront, height)) => (
            vec![
                (What::Held, from, to - height),
                (What::Head, to - height, to),
            ],
            false,
        ),
    };
    Stretches {
        all: what
            .into_iter()
            .map(|it| stretch(model, seen, it))
            .collect(),
        open: (runs_on, last),
    }
}

/// Across the tongs, standing out by so much to each side.
pub(super) fn across(model: &Model, seen: Seen, out: f64) -> Stretches {
    let (what, open) = match head_mm(&model.work.asked) {
        None => (vec![(What::Held, -out, out)], (true, true)),
        Some((Lump::Held, height)) => {
            let half = height / 2.0;
            let shank = (What::Shank, half, half + out);
            (vec![(What::Held, -half, half), shank], (false, true))
        }
        Some((Lump::Alone, height)) => {
            let half = height / 2.0;
            (vec![(What::Held, -half, half)], (false, false))
        }
        Some((Lump::Within | Lump::InFront, height)) => {
            let head = (What::Head, out, out + height);
            (vec![(What::Held, -out, out), head], (true, false))
        }
    };
    Stretches {
        all: what
            .into_iter()
            .map(|it| stretch(model, seen, it))
            .collect(),
        open,
    }
}

/// A head or a nut.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Lump {
    /// It is held, and a shank stands out of it.
    Held,
    /// It is all there is.
    Alone,
    /// It is between the jaws, and its shank is held.
    Within,
    /// It is in front of the tongs, and its shank is held.
    InFront,
}

/// The head of the work with its height, mm.
fn head_mm(work: &Work) -> Option<(Lump, f64)> {
    match *work {
        Work::Hexagon { of, .. } => match of {
            HexagonOf::Bar => None,
            HexagonOf::BoltHead { height, .. } => Some((Lump::Held, height.mm())),
            HexagonOf::Nut { height, .. } => Some((Lump::Alone, height.mm())),
        },
        Work::Round {
            of: RoundOf::BoltShank { height, head, .. },
            ..
        } => Some((
            match head {
                Head::Within => Lump::Within,
                Head::InFront => Lump::InFront,
            },
            height.mm(),
        )),
        Work::Flat { .. } | Work::Round { .. } | Work::Square { .. } | Work::Octagon { .. } => None,
    }
}

/// The height of a head that stands in front of the tongs, mm.
pub(super) fn in_front_mm(work: &Work) -> f64 {
    match head_mm(work) {
        Some((Lump::InFront, height)) => height,
        Some((Lump::Held | Lump::Alone | Lump::Within, _)) | None => 0.0,
    }
}

fn stretch(model: &Model, seen: Seen, (what, from, to): (What, f64, f64)) -> Stretch {
    let plain = |half: f64, edges: Vec<f64>| Stretch {
        ends: (from, to),
        sides: (-half, half),
        edges,
        hidden: Vec::new(),
        ribs: None,
    };
    match what {
        What::Held => Stretch {
            ends: (from, to),
            ..held(model, seen)
        },
        What::Shank => plain(shank_mm(&model.work.asked) / 2.0, Vec::new()),
        // Bolts are drawn with a corner of their head up, three of its faces to the eye.
        What::Head => {
            let flats = flats_mm(&model.work.asked);
            let corner = corner_radius_mm(flats);
            match seen {
                Seen::Upright => plain(corner, vec![-corner / 2.0, corner / 2.0]),
                Seen::Above => plain(flats / 2.0, vec![0.0]),
            }
        }
    }
}

/// The shank of a bolt that is held by its head, mm.
pub(super) fn shank_mm(work: &Work) -> f64 {
    match *work {
        Work::Hexagon {
            of: HexagonOf::BoltHead { shank, .. },
            ..
        } => shank.mm(),
        Work::Flat { .. }
        | Work::Round { .. }
        | Work::Square { .. }
        | Work::Hexagon { .. }
        | Work::Octagon { .. } => 0.0,
    }
}

/// The head of a bolt that is held by its shank, across flats, mm.
pub(super) fn flats_mm(work: &Work) -> f64 {
    match *work {
        Work::Round {
            of: RoundOf::BoltShank { flats, .. },
            ..
        } => flats.mm(),
        Work::Flat { .. }
        | Work::Round { .. }
        | Work::Square { .. }
        | Work::Hexagon { .. }
        | Work::Octagon { .. } => 0.0,
    }
}

/// What is held, from nowhere to nowhere.
fn held(model: &Model, seen: Seen) -> Stretch {
    let work = &model.work;
    let half = match seen {
        Seen::Upright => work.depth / 2.0,
        Seen::Above => work.width / 2.0,
    };
    let plain = Stretch {
        ends: (0.0, 0.0),
        sides: (-half, half),
        edges: match seen {
            Seen::Upright => long_edges(work),
            Seen::Above => Vec::new(),
        },
        hidden: Vec::new(),
        ribs: None,
    };
    let bore = |mm: f64| vec![-mm / 2.0, mm / 2.0];
    match work.asked {
        Work::Round { diameter, of } => match of {
            RoundOf::Bar | RoundOf::BoltShank { .. } => plain,
            RoundOf::Pipe { .. } => Stretch {
                hidden: bore(bore_mm(&work.asked)),
                ..plain
            },
            RoundOf::Rebar { .. } => Stretch {
                ribs: Some(RIB_PITCH * diameter.mm()),
                ..plain
            },
        },
        Work::Hexagon {
            of: HexagonOf::Nut { .. },
            ..
        } => Stretch {
            hidden: bore(bore_mm(&work.asked)),
            ..plain
        },
        Work::Flat {
            of: FlatOf::AngleLeg { .. },
            ..
        } => leg(model, seen, plain),
        Work::Square {
            of: SquareOf::AngleBack { .. },
            ..
        } => back(work, seen, plain),
        Work::Flat { .. } | Work::Square { .. } | Work::Hexagon { .. } | Work::Octagon { .. } => {
            plain
        }
    }
}

/// From one rib to the next, in diameters: ASTM A615 asks for 0.7 at the most, and closer ones tell
/// rebar by a short piece of it.
const RIB_PITCH: f64 = 0.4;

/// The hole along the work, mm; nothing where it has none.
pub(super) fn bore_mm(work: &Work) -> f64 {
    match *work {
        Work::Round {
            diameter,
            of: RoundOf::Pipe { wall },
        } => (diameter.mm() - 2.0 * wall.mm()).max(0.0),
        Work::Hexagon {
            of: HexagonOf::Nut { hole, .. },
            ..
        } => hole.mm(),
        Work::Flat { .. }
        | Work::Round { .. }
        | Work::Square { .. }
        | Work::Hexagon { .. }
        | Work::Octagon { .. } => 0.0,
    }
}

/// An angle by its leg: the other leg stands up at its far side, as the side view sees it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Legs {
    /// Thickness of both, mm.
    pub(super) thick: f64,
    /// Where the free part of the held leg begins and ends towards the far side, mm.
    pub(super) free: (f64, f64),
    /// The other leg, over its outside, mm.
    pub(super) other: f64,
}

impl Legs {
    pub(super) fn of(model: &Model) -> Option<Self> {
        let work = &model.work;
        let Work::Flat {
            thickness,
            of: FlatOf::AngleLeg { other },
            ..
        } = work.asked
        else {
            return None;
        };
        // A jaw that is wider than the free part hangs over its edge: the other leg clears it.
        let wide = |half: &crate::tongs::model::Half| half.jaw.section(half.grip.0).width;
        let jaw = wide(&model.a).max(wide(&model.b));
        let off = ((jaw - work.width) / 2.0).max(0.0);
        Some(Self {
            thick: thickness.mm(),
            free: (off - work.width / 2.0, off + work.width / 2.0),
            other: other.mm(),
        })
    }
}

fn leg(model: &Model, seen: Seen, plain: Stretch) -> Stretch {
    let Some(legs) = Legs::of(model) else {
        return plain;
    };
    let half = legs.thick / 2.0;
    match seen {
        Seen::Upright => Stretch {
            sides: (-half, legs.other - half),
            edges: vec![half],
            ..plain
        },
        Seen::Above => Stretch {
            sides: (legs.free.0, legs.free.1 + legs.thick),
            edges: vec![legs.free.1],
            ..plain
        },
    }
}

/// The edges of an angle by its back, over its middle, mm: its back, the outside of the edges of its
/// legs, their inside, and the corner between the legs.
pub(super) fn back_mm(work: &WorkInJaws) -> Option<[f64; 4]> {
    let Work::Square {
        side,
        of: SquareOf::AngleBack { thickness },
        ..
    } = work.asked
    else {
        return None;
    };
    let (leg, thick, root) = (side.mm(), thickness.mm(), 2f64.sqrt());
    let top = leg / root;
    Some([top, 0.0, top - (leg + thick) / root, top - thick * root])
}

fn back(work: &WorkInJaws, seen: Seen, plain: Stretch) -> Stretch {
    let (Some([top, outside, inside, corner]), Seen::Upright) = (back_mm(work), seen) else {
        return Stretch {
            edges: vec![0.0],
            ..plain
        };
    };
    Stretch {
        sides: (inside, top),
        edges: vec![outside],
        hidden: vec![corner],
        ..plain
    }
}

/// The long edges of the work that face the eye of the side view.
fn long_edges(work: &WorkInJaws) -> Vec<f64> {
    /// A corner in the middle of the section is no long edge on this side of it.
    const MIDDLE: f64 = 0.05;
    /// Of the depth: what lies farther out runs along the outline.
    const OUTLINE: f64 = 0.48;
    if work.profile.curved() {
        return Vec::new();
    }
    let section = Section::new(&work.profile, work.depth, work.width);
    let corners = section.breaks().into_iter().filter(|&u| u > MIDDLE);
    let edges = corners.flat_map(|u| [section.upper(u), section.lower(u)]);
    edges.filter(|y| y.abs() < OUTLINE * work.depth).collect()
}
