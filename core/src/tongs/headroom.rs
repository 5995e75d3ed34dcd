//! Where the end of the work lies when it is a bolt or a nut, and the room that the jaws leave for a
//! bolt's head behind the bits.

use crate::asked::{Head, HexagonOf, RoundOf, Work};
use crate::shape::sweep::Edge;
use crate::tongs::model::{Half, Lies, Model};

/// The stretch behind the bits in which the jaws stand clear of a head, x in mm from the rivet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeadRoom {
    /// Where it begins.
    pub from: f64,
    /// Where it ends, towards the bits.
    pub to: f64,
}

impl HeadRoom {
    /// How much head goes in, mm.
    pub fn free_mm(self) -> f64 {
        (self.to - self.from).max(0.0)
    }
}

/// Half of a hexagon across its corners, of its size across flats.
pub fn corner_radius_mm(flats_mm: f64) -> f64 {
    flats_mm / 3f64.sqrt()
}

/// The room for a head of so much radius between the jaws, mm: its corners may turn in it.
pub fn head_room([a, b]: [&Half; 2], radius: f64) -> HeadRoom {
    let (a, b) = (clear(a, radius), clear(b, radius));
    HeadRoom {
        from: a.from.max(b.from),
        to: a.to.min(b.to),
    }
}

/// What keeps a bolt from being held behind its head.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lack {
    /// The head over its corners, mm.
    pub across: f64,
    /// Its height, mm.
    pub height: f64,
    /// How much of that goes between the jaws, mm.
    pub room: f64,
}

/// What a pair lacks to hold some work behind its head, if it is to be held so.
pub fn lacks(work: &Work, model: &Model) -> Option<Lack> {
    let Work::Round {
        of:
            RoundOf::BoltShank {
                flats,
                height,
                head: Head::Within,
            },
        ..
    } = *work
    else {
        return None;
    };
    let radius = corner_radius_mm(flats.mm());
    let room = match model.work.lies {
        Lies::Endwise => head_room([&model.a, &model.b], radius).free_mm(),
        Lies::Alongside | Lies::Crosswise => 0.0,
    };
    let lack = Lack {
        across: 2.0 * radius,
        height: height.mm(),
        room,
    };
    (room < lack.height).then_some(lack)
}

/// The stretch next to the bit of one half in which its inside lies farther out than `radius`.
fn clear(half: &Half, radius: f64) -> HeadRoom {
    let points = inside(half);
    let start = points.last().map_or(0.0, |point| point.0);
    let mut room = HeadRoom {
        from: start,
        to: start,
    };
    let mut open = false;
    for pair in points.windows(2).rev() {
        let [(x0, y0), (x1, y1)] = [pair[0], pair[1]];
        let part = ((radius - y0) / (y1 - y0)).clamp(0.0, 1.0);
        let crossing = x0 + (x1 - x0) * part;
        match (open, y0 >= radius) {
            (false, true) => {
                open = true;
                room = HeadRoom {
                    from: x0,
                    to: if y1 >= radius { x1 } else { crossing },
                };
            }
            (true, true) => room.from = x0,
            (true, false) => {
                room.from = crossing;
                break;
            }
            (false, false) => {}
        }
    }
    room
}

/// The inside of a jaw from its heel to its grip, (x, y) in mm.
fn inside(half: &Half) -> Vec<(f64, f64)> {
    /// Parts of a stretch between two stations or bends: a head is found to a hundredth of a mm.
    const PARTS: u32 = 24;
    let cuts = half.jaw.cuts(0.0, half.grip.0);
    let between = |pair: &[f64]| {
        let (a, b) = (pair[0], pair[1]);
        (0..PARTS)
            .map(move |i| a + (b - a) * f64::from(i) / f64::from(PARTS))
            .collect::<Vec<_>>()
    };
    let mut places: Vec<f64> = cuts.windows(2).flat_map(between).collect();
    places.push(half.grip.0);
    let at = |s: f64| half.jaw.edge_point(Edge::Inner, s);
    places.into_iter().map(|s| (at(s).x, at(s).y)).collect()
}

/// Where the end of the work lies between two halves, x in mm: where other work ends at `from`, a
/// head or a nut lies as far out as the bits reach, and a head behind the bits as near to them as it
/// goes.
pub(super) fn end_of(work: &Work, halves: [&Half; 2], (from, lies): (f64, Lies)) -> f64 {
    if lies != Lies::Endwise {
        return from;
    }
    let [a, b] = halves;
    let start = |half: &Half| half.jaw.path.at(half.grip.0).at.x;
    match short_mm(work) {
        Some(length) => {
            let tip = a.tip().min(b.tip());
            (tip - length).max(start(a).max(start(b)))
        }
        None => match *work {
            Work::Round {
                of:
                    RoundOf::BoltShank {
                        flats,
                        height,
                        head: Head::Within,
                    },
                ..
            } => head_room(halves, corner_radius_mm(flats.mm())).to - height.mm(),
            Work::Flat { .. }
            | Work::Round { .. }
            | Work::Square { .. }
            | Work::Hexagon { .. }
            | Work::Octagon { .. } => from,
        },
    }
}

/// The length of what is held, mm, where it is no longer than a head or a nut.
pub fn short_mm(work: &Work) -> Option<f64> {
    match *work {
        Work::Hexagon {
            of: HexagonOf::BoltHead { height, .. } | HexagonOf::Nut { height, .. },
            ..
        } => Some(height.mm()),
        Work::Flat { .. }
        | Work::Round { .. }
        | Work::Square { .. }
        | Work::Hexagon { .. }
        | Work::Octagon { .. } => None,
    }
}
