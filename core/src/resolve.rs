//! From what the smith asked for to geometry.
//!
//! Resolving never fails: what cannot be made as asked is made as near as it can be drawn, with a
//! Stop finding at its part.

mod check;
mod rein;

use kurbo::Point;

use crate::body::{Blend, Body, Faces, Limb, LimbEnd, LimbSpec, Rim};
use crate::document::{BossShape, Document, Hand};
use crate::jaw::Jaw;
use crate::model::{Half, Model, WorkInJaws};
use crate::seat::{Seat, seat, work_section};
use crate::section::{Profile, Section, plain_profile};

/// Play between a turning neck or shoulder and the other half's boss, mm (judgement: a hair more
/// than scale).
pub const TURNING_PLAY: f64 = 1.0;

/// The least length in which faces can step from boss to jaw or rein, mm; below it the drawing
/// would have a cliff.
const LEAST_STEP: f64 = 1.5;

/// Resolves a document into a pair in the set pose.
pub fn resolve(document: &Document) -> Model {
    let (profile, depth, width) = work_section(&document.work);
    let work = Section::new(&profile, depth, width);
    let second = document.second_jaw.as_ref().unwrap_or(&document.jaw);
    let seats = [seat_jaw(&document.jaw, &work), seat_jaw(second, &work)];
    let a = build_half(document, &document.jaw, seats[0].face);
    let b = match &document.second_jaw {
        None => a.clone(),
        Some(jaw) => build_half(document, jaw, seats[1].face),
    };
    let from = work_from(&a, &b);
    let mut model = Model {
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
        },
        findings: Vec::new(),
        alike: document.second_jaw.is_none(),
        seats,
        a,
        b,
    };
    model.findings = check::noticed(document, &model);
    model
}

/// Thickness of the bar in the direction in which the boss is set down, mm.
fn bar_across_mm(document: &Document) -> f64 {
    document.bar.stock.size().mm()
}

/// Brings a jaw down on the work, in the middle of its grip.
fn seat_jaw(jaw: &Jaw, work: &Section<'_>) -> Seat {
    let form = jaw.form();
    let placed = form.placed(0.0, 0.0);
    let middle = f64::midpoint(form.grip_from, placed.length());
    seat(&placed.section(middle), placed.rise(middle), work)
}

/// Where the end of the work lies: a little behind the start of the shorter grip.
fn work_from(a: &Half, b: &Half) -> f64 {
    let start = |half: &Half| half.heel() + half.grip_from;
    start(a).max(start(b))
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

fn build_half(document: &Document, jaw: &Jaw, face: f64) -> Half {
    let rim = rim(document);
    let form = jaw.form();
    // A jaw that starts inside the other boss is drawn just clear of it; `check` says so.
    let heel = jaw.heel.mm().max(rim.reach() + TURNING_PLAY + LEAST_STEP);
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
        grip_from: form.grip_from,
        body,
        rein: rein.sweep,
        hand_at: rein.hand_at,
    }
}

fn neck_spec(document: &Document, jaw: &crate::sweep::Sweep) -> LimbSpec {
    use crate::sweep::Edge;
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
    rein: &crate::sweep::Sweep,
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
    fn hand_gap(&self) -> f64 {
        -2.0 * self
            .rein
            .edge_point(crate::sweep::Edge::Inner, self.hand_at)
            .y
    }

    /// The middle of the rein's start.
    pub fn rein_start(&self) -> Point {
        self.rein.middle(0.0)
    }
}
