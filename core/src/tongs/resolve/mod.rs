//! From what the smith asked for to geometry.
//!
//! Resolving never fails: what cannot be made as asked is made as near as it can be drawn, and the
//! check of the pair says so.

mod rein;

use kurbo::Point;

use crate::shape::section::{Profile, Section, plain_profile, work_section};
use crate::shape::sweep::{Edge, Sweep};
use crate::shape::{Blend, Faces};
use crate::tongs::body::{Body, Limb, LimbEnd, LimbSpec, Rim};
use crate::tongs::document::{BossShape, Document, Hand};
use crate::tongs::jaw::{Form, Jaw, Lay};
use crate::tongs::model::{Half, Lies, Model, Reckoned, WorkInJaws};
use crate::tongs::seat::{Inside, Seat, seat};

pub(crate) use rein::{NO_HAND_BEFORE, finish_length};

/// Play between a turning neck or shoulder and the other half's boss, mm (judgement: a hair more
/// than scale).
pub(crate) const TURNING_PLAY: f64 = 1.0;

/// The least length in which faces can step from boss to jaw or rein, mm; below it the drawing
/// would have a cliff.
pub(crate) const LEAST_STEP: f64 = 1.5;

/// Resolves a document into a pair in the set pose.
pub fn resolve(document: &Document) -> Model {
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
    let seats = [first_seat, other_seat];
    let a = build_half(document, (&document.jaw, form_a), seats[0].face);
    let b = if form_b.lay == Lay::Alongside {
        // Bits that are bent to one side meet only if one is bent the other way.
        build_half(document, (jaw_b, mirrored(form_b)), seats[1].face)
    } else if document.second_jaw.is_none() {
        a.clone()
    } else {
        build_half(document, (jaw_b, form_b), seats[1].face)
    };
    let (from, lies) = laid.place(&a, &b);
    let beside = a.jaw.shift(f64::midpoint(a.grip.0, a.grip.1));
    Model {
        jaw_gap: seats[0].face + seats[1].face,
        hand_gap: a.hand_gap() / 2.0 + b.hand_gap() / 2.0,
        rivet: document.rivet.diameter.mm(),
        joggle: document.boss.thickness.mm() - bar_across_mm(document) / 2.0,
        hand_sign: if document.hand == Hand::Left {
            1.0
        } else {
            -1.0
        },
        work: WorkInJaws {
            profile,
            depth,
            width,
            from,
            lies,
            beside,
        },
        masses: Reckoned::default(),
        outlines: Reckoned::default(),
        alike: document.second_jaw.is_none(),
        seats,
        a,
        b,
    }
}

/// Thickness of the bar in the direction in which the boss is set down, mm.
fn bar_across_mm(document: &Document) -> f64 {
    document.bar.stock.size().mm()
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

    /// Where the work lies between two halves, x in mm, and how.
    fn place(self, a: &Half, b: &Half) -> (f64, Lies) {
        // Endwise it reaches back to the start of the shorter grip.
        let start = |half: &Half| half.jaw.path.at(half.grip.0).at.x;
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

fn rim(document: &Document) -> Rim {
    let boss = &document.boss;
    let (across, along) = (boss.across.mm(), boss.along.mm());
    match boss.shape {
        BossShape::Round => Rim::round(across / 2.0),
        BossShape::Oval => Rim::oval(along, across),
        BossShape::Lozenge => Rim::lozenge(along, across),
    }
}

fn build_half(document: &Document, (jaw, form): (&Jaw, Form), face: f64) -> Half {
    let rim = rim(document);
    // A jaw that starts inside the other boss is drawn just clear of it; `check` says so.
    let heel = jaw.heel.mm().max(least_heel(&rim, &form));
    let face = face.max(least_face(&rim, &form));
    let jaw = form.placed(heel, face);
    let rein = rein::build(document, &rim);
    let neck = Limb::grow(&rim, &neck_spec(document, &jaw));
    let shoulder = Limb::grow(&rim, &rein.shoulder);
    let faces = faces(
        document,
        [clear(&rim, &neck), clear(&rim, &shoulder)],
        (heel, jaw.section(0.0).width),
        &rein.sweep,
        &rein.shoulder,
    );
    let profiles = [Profile::rectangle(), plain_profile(&document.rein.start)];
    let hole = document.rivet.hole.mm() / 2.0;
    let body = Body::new((rim, faces), neck, shoulder, profiles, hole);
    Half {
        jaw,
        grip: form.grip,
        face,
        body,
        rein: rein.sweep,
        hand_at: rein.hand_at,
    }
}

/// Where a jaw may begin at the earliest, mm from the rivet: clear of the other boss, the back of
/// a root that leans towards it too.
pub(crate) fn least_heel(rim: &Rim, form: &Form) -> f64 {
    let back = form
        .placed(0.0, 0.0)
        .edge_point(crate::shape::sweep::Edge::Outer, 0.0);
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

fn neck_spec(document: &Document, jaw: &crate::shape::sweep::Sweep) -> LimbSpec {
    let root = |edge: Edge| jaw.edge_point(edge, 0.0);
    LimbSpec {
        depth: document.neck.depth.mm(),
        fillet: document.neck.fillet.mm(),
        end: LimbEnd {
            inner: root(Edge::Inner),
            outer: root(Edge::Outer),
            inner_slope: rein::first_slope(jaw, Edge::Inner),
            outer_slope: rein::first_slope(jaw, Edge::Outer),
        },
    }
}

/// The x at which a limb may begin to cross the middle plane: clear of the other boss, and not
/// before its inside, corner and all, has risen over the other half's.
fn clear(rim: &Rim, limb: &Limb) -> f64 {
    /// So much over the middle, mm, where there is room, so that the pair can shut a little more.
    const OVER: f64 = 0.5;
    let clear = rim.reach() + TURNING_PLAY;
    let end = limb.inner_end().y;
    if end <= 0.0 {
        return clear;
    }
    clear.max(limb.rises_over(OVER.min(end / 2.0)))
}

fn faces(
    document: &Document,
    [neck_clear, shoulder_clear]: [f64; 2],
    (heel, jaw_width): (f64, f64),
    rein: &crate::shape::sweep::Sweep,
    shoulder: &LimbSpec,
) -> Faces {
    let blend = |clear: f64, far: f64, width: f64, fullness: f64, sign: f64| Blend {
        boss: sign * clear.min(far - LEAST_STEP),
        far: sign * far,
        half_width: width / 2.0,
        fullness,
    };
    let start = rein.section(0.0);
    let near = shoulder.end.inner.x.min(shoulder.end.outer.x);
    Faces {
        thickness: document.boss.thickness.mm(),
        neck: blend(neck_clear, heel, jaw_width, 1.0, 1.0),
        shoulder: blend(shoulder_clear, near, start.width, start.fullness(), -1.0),
    }
}

impl Half {
    /// Between this rein and its like at the hand, mm.
    pub fn hand_gap(&self) -> f64 {
        -2.0 * self
            .rein
            .edge_point(crate::shape::sweep::Edge::Inner, self.hand_at)
            .y
    }

    /// The middle of the rein's start.
    pub fn rein_start(&self) -> Point {
        self.rein.middle(0.0)
    }
}
