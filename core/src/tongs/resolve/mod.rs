//! From what the smith asked for to geometry.
//!
//! Resolving never fails: what cannot be made as asked is made as near as it can be drawn, and the
//! check of the pair says so.

mod head;
mod rein;

use kurbo::Point;

use crate::shape::section::{Profile, plain_profile, work_section};
use crate::shape::{Blend, Faces};
use crate::tongs::body::{Body, Limb, Rim};
use crate::tongs::document::{BossShape, Document, Turn};
use crate::tongs::headroom;
use crate::tongs::model::{Half, Model, Reckoned, WorkInJaws};
use head::{Head, Heads};
use rein::Tail;

pub(crate) use head::least_heel;
pub(crate) use rein::{NO_HAND_BEFORE, finish_length};

/// Play between a turning neck or shoulder and the other half's boss, mm (judgement: a hair more
/// than scale).
pub(crate) const TURNING_PLAY: f64 = 1.0;

/// The least length in which faces can step from boss to jaw or rein, mm; below it the drawing
/// would have a cliff.
pub(crate) const LEAST_STEP: f64 = 1.5;

/// Resolves a document into a pair in the set pose.
pub fn resolve(document: &Document) -> Model {
    let rim = rim(document);
    let heads = Heads::build(document, &rim);
    let tail = Tail::build(document, &rim);
    put_together(document, &rim, heads, &tail)
}

/// Resolves a document of which another one, that differs in some values, is resolved: the heads
/// or the tails are taken from there where they follow from the same values.
pub(crate) fn resolve_changed(document: &Document, (was, model): (&Document, &Model)) -> Model {
    let rim = rim(document);
    let same_rim = rim == model.a.body.rim;
    let heads = if same_rim && head::asked(document) == head::asked(was) {
        Heads::of(model)
    } else {
        Heads::build(document, &rim)
    };
    let tail = if same_rim && rein::asked(document) == rein::asked(was) {
        Tail::of(&model.a)
    } else {
        Tail::build(document, &rim)
    };
    put_together(document, &rim, heads, &tail)
}

fn put_together(document: &Document, rim: &Rim, heads: Heads, tail: &Tail) -> Model {
    let a = half(document, rim, heads.first, tail);
    let second = heads.second.map(|head| half(document, rim, head, tail));
    let b = second.unwrap_or_else(|| a.clone());
    let tip = |half: &Half| half.jaw.path.at(half.grip.1).at.x;
    let to = tip(&a).min(tip(&b));
    let (bar_from, lies) = heads.bar;
    let end = headroom::end_of(&document.work, [&a, &b], heads.bar);
    let beside = a.jaw.shift(f64::midpoint(a.grip.0, a.grip.1));
    let (profile, depth, width) = work_section(&document.work);
    let seats = heads.seats;
    Model {
        jaw_gap: seats[0].face + seats[1].face,
        hand_gap: a.hand_gap() / 2.0 + b.hand_gap() / 2.0,
        rivet: document.rivet.diameter.mm(),
        joggle: document.boss.thickness.mm() - bar_across_mm(document) / 2.0,
        turn_sign: if document.hand == Turn::Left {
            1.0
        } else {
            -1.0
        },
        work: WorkInJaws {
            asked: document.work,
            profile,
            depth,
            width,
            from: end,
            to,
            bar_from,
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

fn half(document: &Document, rim: &Rim, head: Head, tail: &Tail) -> Half {
    let faces = faces(document, rim, &head, tail);
    let profiles = [Profile::rectangle(), plain_profile(&document.rein.start)];
    let hole = document.rivet.hole.mm() / 2.0;
    let shoulder = tail.shoulder.clone();
    Half {
        jaw: head.jaw,
        grip: head.grip,
        face: head.face,
        body: Body::new((rim.clone(), faces), head.neck, shoulder, profiles, hole),
        rein: tail.rein.clone(),
        hand_at: tail.hand_at,
    }
}

/// Thickness of the bar in the direction in which the boss is set down, mm.
fn bar_across_mm(document: &Document) -> f64 {
    document.bar.stock.size().mm()
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

fn faces(document: &Document, rim: &Rim, head: &Head, tail: &Tail) -> Faces {
    let blend = |limb: &Limb, far: f64, width: f64, fullness: f64, sign: f64| Blend {
        boss: sign * clear(rim, limb).min(far - LEAST_STEP),
        far: sign * far,
        half_width: width / 2.0,
        fullness,
    };
    let start = tail.rein.section(0.0);
    let jaw_width = head.jaw.section(0.0).width;
    Faces {
        thickness: document.boss.thickness.mm(),
        neck: blend(&head.neck, head.heel, jaw_width, 1.0, 1.0),
        shoulder: blend(
            &tail.shoulder,
            tail.near,
            start.width,
            start.fullness(),
            -1.0,
        ),
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::asked::{parse_bar, parse_work};
    use crate::tongs::jaw::JawKind;

    /// Every value of a pair of every style, a little larger and a little smaller: whatever is taken over from
    /// the pair before, the pair is the one that the document gives.
    #[test]
    fn a_changed_pair_is_the_pair_of_its_document() {
        let mut changes = 0;
        for kind in JawKind::ALL {
            let work = parse_work("5/8 in round").expect("a size and a shape");
            let bar = parse_bar("3/4 in square").expect("a size and a shape");
            let mut document = Document::starting(*kind, work, bar);
            for second in [None, Some(JawKind::Flat)] {
                document.second_jaw = second.map(|kind| Document::starting(kind, work, bar).jaw);
                let model = resolve(&document);
                for field in document.fields() {
                    let Some(now) = field.value.number() else {
                        continue;
                    };
                    for by in [-0.3, 0.4] {
                        let mut changed = document.clone();
                        changed.put(&field.path, field.value.with_number(now + by));
                        let found = resolve_changed(&changed, (&document, &model));
                        assert_eq!(found, resolve(&changed), "{} {by}", field.path);
                        changes += 1;
                    }
                }
            }
        }
        assert!(changes > 1000, "{changes}");
    }
}
