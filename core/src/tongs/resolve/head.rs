//! What stands before the rivet: the jaws brought down on the work, and the necks that lead to them.

use super::rein::first_slope;
use super::{LEAST_STEP, TURNING_PLAY};
use crate::asked::Work;
use crate::shape::section::{Section, work_section};
use crate::shape::sweep::{Edge, Sweep};
use crate::tongs::body::{Limb, LimbEnd, LimbSpec, Rim};
use crate::tongs::document::{Document, Neck};
use crate::tongs::jaw::{Form, Jaw, Lay};
use crate::tongs::model::{Half, Lies, Model};
use crate::tongs::seat::{Inside, Seat, seat};

/// A jaw in its place, with its neck.
pub(super) struct Head {
    pub(super) jaw: Sweep,
    /// Between these places the work may bear, mm along the jaw from its heel.
    pub(super) grip: (f64, f64),
    /// x of the heel, mm.
    pub(super) heel: f64,
    /// The line of its faces or lips, y in mm.
    pub(super) face: f64,
    pub(super) neck: Limb,
}

/// Both jaws on the work.
pub(super) struct Heads {
    /// How each of them rests on it.
    pub(super) seats: [Seat; 2],
    pub(super) first: Head,
    /// That of half B, where it is not the same.
    pub(super) second: Option<Head>,
    /// Where the end of bar would lie, x in mm, and how the work lies.
    pub(super) bar: (f64, Lies),
}

/// All of a document that the heads follow from, beside the rim of the boss.
pub(super) fn asked(document: &Document) -> (&Work, &Jaw, Option<&Jaw>, &Neck) {
    let second = document.second_jaw.as_ref();
    (&document.work, &document.jaw, second, &document.neck)
}

impl Heads {
    pub(super) fn build(document: &Document, rim: &Rim) -> Self {
        let (profile, depth, width) = work_section(&document.work);
        let work = Section::new(&profile, depth, width);
        let second = document.second_jaw.as_ref();
        let form_a = document.jaw.form();
        let form_b = second.map_or_else(|| form_a.clone(), Jaw::form);
        let jaw_b = second.unwrap_or(&document.jaw);
        let laid = Laid::of([(&document.jaw, &form_a), (jaw_b, &form_b)]);
        let first_seat = seat_jaw((&document.jaw, &form_a), &work, laid);
        let second_seat = |jaw| seat_jaw((jaw, &form_b), &work, laid);
        let other_seat = second.map_or_else(|| first_seat.clone(), second_seat);
        let head = |jaw, form, seat: &Seat| Head::build((document, rim), (jaw, form), seat.face);
        let first = head(&document.jaw, form_a, &first_seat);
        let second = if form_b.lay == Lay::Alongside {
            // Bits that are bent to one side meet only if one is bent the other way.
            Some(head(jaw_b, mirrored(form_b), &other_seat))
        } else {
            second.map(|jaw| head(jaw, form_b, &other_seat))
        };
        Self {
            bar: laid.place(&first, second.as_ref().unwrap_or(&first)),
            seats: [first_seat, other_seat],
            first,
            second,
        }
    }

    /// Those of a pair.
    pub(super) fn of(model: &Model) -> Self {
        Self {
            seats: model.seats.clone(),
            first: Head::of(&model.a),
            second: (!model.same()).then(|| Head::of(&model.b)),
            bar: (model.work.bar_from, model.work.lies),
        }
    }
}

impl Head {
    fn build((document, rim): (&Document, &Rim), (jaw, form): (&Jaw, Form), face: f64) -> Self {
        // A jaw that starts inside the other boss is drawn just clear of it; `check` says so.
        let heel = jaw.heel.mm().max(least_heel(rim, &form));
        let face = face.max(least_face(rim, &form));
        let jaw = form.placed(heel, face);
        Self {
            neck: Limb::grow(rim, &neck_spec(document, &jaw)),
            jaw,
            grip: form.grip,
            heel,
            face,
        }
    }

    fn of(half: &Half) -> Self {
        Self {
            jaw: half.jaw.clone(),
            grip: half.grip,
            heel: half.body.plate.faces.neck.far,
            face: half.face,
            neck: half.body.neck.clone(),
        }
    }
}

/// How both jaws together lay the work.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Laid {
    /// Its end at this x, mm, if a jaw has a stop for it.
    Endwise(Option<f64>),
    Alongside,
    /// Its axis at this x, mm.
    Crosswise(f64),
}

impl Laid {
    /// The first jaw that does not simply hold it endwise decides.
    fn of(jaws: [(&Jaw, &Form); 2]) -> Self {
        let mut stop: Option<f64> = None;
        for (jaw, form) in jaws {
            let heel = jaw.heel.mm();
            match form.lay {
                Lay::Crosswise { at } => return Self::Crosswise(heel + at),
                Lay::Alongside => return Self::Alongside,
                Lay::Endwise { end } => {
                    stop = stop.or(end.map(|end| heel + end));
                }
            }
        }
        Self::Endwise(stop)
    }

    /// Where the work lies between two jaws, x in mm, and how.
    fn place(self, a: &Head, b: &Head) -> (f64, Lies) {
        // Endwise it reaches back to the start of the shorter grip.
        let start = |head: &Head| head.jaw.path.at(head.grip.0).at.x;
        let from = start(a).max(start(b));
        match self {
            Self::Endwise(stop) => (stop.unwrap_or(from), Lies::Endwise),
            Self::Alongside => (from, Lies::Alongside),
            Self::Crosswise(at) => (at, Lies::Crosswise),
        }
    }
}

/// The same jaw bent to the other side.
fn mirrored(mut form: Form) -> Form {
    for station in &mut form.stations {
        station.shift = -station.shift;
    }
    form
}

/// Brings a jaw down on the work, in the middle of its grip or where the work lies across it.
fn seat_jaw((jaw, form): (&Jaw, &Form), work: &Section<'_>, laid: Laid) -> Seat {
    let placed = form.placed(0.0, 0.0);
    if let Laid::Crosswise(at) = laid {
        return Inside::new(&placed, (at - jaw.heel.mm(), 0.0)).seat(work);
    }
    let at = |s: f64| {
        let mut seat = seat(&placed.section(s), placed.rise(s), work);
        seat.face -= placed.path.at(s).at.y;
        seat
    };
    let middle = at(f64::midpoint(form.grip.0, form.grip.1));
    // The broken tip grips like the rest: only its back is rounded.
    let tip = jaw.tip.mm().min(0.25 * (form.grip.1 - form.grip.0));
    let grip = (form.grip.0, form.grip.1 - tip);
    if is_even(&placed, grip) {
        return middle;
    }
    // An inside that rises and falls rests on the work where it stands in farthest.
    let deepest = |best: Seat, s: f64| {
        let next = at(s);
        if next.face > best.face { next } else { best }
    };
    places(&placed, grip).into_iter().fold(middle, deepest)
}

/// Places along a grip that follow its inside, mm from the heel.
fn places(jaw: &Sweep, (from, to): (f64, f64)) -> Vec<f64> {
    const PARTS: u32 = 6;
    let cuts = jaw.cuts(from, to);
    let between = |pair: &[f64]| {
        let (a, b) = (pair[0], pair[1]);
        (0..PARTS)
            .map(|i| a + (b - a) * f64::from(i) / f64::from(PARTS))
            .collect::<Vec<_>>()
    };
    let mut all: Vec<f64> = cuts.windows(2).flat_map(between).collect();
    all.push(to);
    all
}

/// Whether the lips or the face of a grip run straight along the work, as those of a plain bit do.
/// What lies between them may change: a crease runs in from the heel, and a groove deepens.
fn is_even(jaw: &Sweep, (from, to): (f64, f64)) -> bool {
    const SAME: f64 = 1e-6;
    let inside = |s: f64| jaw.edge_point(Edge::Inner, s).y;
    let cuts = jaw.cuts(from, to);
    let middles = cuts.windows(2).map(|pair| f64::midpoint(pair[0], pair[1]));
    let first = inside(f64::midpoint(from, to));
    let level = |s: f64| (inside(s) - first).abs() < SAME;
    cuts.iter().copied().chain(middles).all(level)
}

/// Where a jaw may begin at the earliest, mm from the rivet: clear of the other boss, the back of
/// a root that leans towards it too.
pub(crate) fn least_heel(rim: &Rim, form: &Form) -> f64 {
    let back = form.placed(0.0, 0.0).edge_point(Edge::Outer, 0.0);
    rim.reach() + TURNING_PLAY + LEAST_STEP + (-back.x).max(0.0)
}

/// The lowest line of faces or lips at which a neck can still reach the heel, mm. Jaws that would
/// lie lower pass through each other and are drawn as near as they can be; `check` says so.
fn least_face(rim: &Rim, form: &Form) -> f64 {
    /// Of the boss's half size across: a steep neck that came from farther down would leave the
    /// boss past its own shoulder.
    const LOWEST: f64 = 0.25;
    let heel = form.placed(0.0, 0.0).edge_point(Edge::Inner, 0.0).y;
    -LOWEST * rim.half_across() - heel
}

fn neck_spec(document: &Document, jaw: &Sweep) -> LimbSpec {
    let root = |edge: Edge| jaw.edge_point(edge, 0.0);
    LimbSpec {
        depth: document.neck.depth.mm(),
        fillet: document.neck.fillet.mm(),
        end: LimbEnd {
            inner: root(Edge::Inner),
            outer: root(Edge::Outer),
            inner_slope: first_slope(jaw, Edge::Inner),
            outer_slope: first_slope(jaw, Edge::Outer),
        },
    }
}
