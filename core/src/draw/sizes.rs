//! The sizes of a pair: what its dimensions and notes say, and where they want to stand.

use kurbo::{Affine, Point, Rect};

use super::subject::Subject;
use super::views::work::{upright_mm, upright_size};
use crate::asked::{PlainSection, RoundOf, Work};
use crate::finding::Part;
use crate::paper::dimension::{Hang, Side, Wish, rows, upright};
use crate::paper::lettering::Taken;
use crate::paper::{Align, Item, bounds};
use crate::shape::section::Profile;
use crate::shape::sweep::Edge;
use crate::tongs::document::{Boss, BossShape, Document};
use crate::tongs::jaw::{Form, Jaw};
use crate::tongs::model::{Half, Model};
use crate::units::Show;

/// Hand gap and work size, which stay true while the pair opens.
pub(super) fn gaps(subject: &Subject<'_>, drawn: &[Item]) -> Vec<Item> {
    let Subject {
        document,
        model,
        opening,
        breaks,
        scale,
    } = *subject;
    let show = document.units.show();
    let taken = Taken::by(drawn);
    let turn = Affine::rotate(opening);
    let low = breaks.point(turn * model.a.rein.edge_point(Edge::Inner, model.a.hand_at));
    let other = Affine::rotate(-opening) * Model::half_b_pose();
    let high = other * model.b.rein.edge_point(Edge::Inner, model.b.hand_at);
    let high = Point::new(low.x, high.y);
    let text = format!("hand gap {}", show.number(high.y - low.y));
    let mut items = if high.y - low.y > 1.0 {
        upright((low, high), &text, scale, Part::Rein, &taken)
    } else {
        Vec::new()
    };
    if opening == 0.0 {
        let (middle, half) = upright_size(model);
        let (low, high) = (middle - half, middle + half);
        let size = show.number(document_size(document, model));
        let taken = taken.and(&items);
        items.extend(upright((low, high), &size, scale, Part::Work, &taken));
    }
    items
}

/// The size that is held, between the jaws.
fn document_size(document: &Document, model: &Model) -> f64 {
    match document.work {
        Work::Round {
            of: RoundOf::Rebar { .. },
            ..
        } => model.work.depth,
        Work::Flat { .. } | Work::Round { .. } => document.work.size().mm(),
        Work::Square { .. } | Work::Hexagon { .. } | Work::Octagon { .. } => upright_mm(model),
    }
}

/// Rows above and below the side view.
pub(super) fn side_rows(subject: &Subject<'_>, drawn: &[Item]) -> Vec<Item> {
    let Subject {
        document,
        model,
        scale,
        ..
    } = *subject;
    let area = bounds(drawn).unwrap_or(Rect::ZERO);
    let a = &model.a;
    let mut above = jaw_wishes(document, &document.jaw, a);
    above.push(boss_note(document, model));
    let below = rein_wishes(subject, a);
    let mut items = rows(Side::Above, area.y1, scale, above);
    items.extend(rows(Side::Below, area.y0, scale, below));
    items
}

/// How long the pair is, below the side view.
pub(super) fn whole_length(subject: &Subject<'_>, drawn: &[Item]) -> Vec<Item> {
    let area = bounds(drawn).unwrap_or(Rect::ZERO);
    let overall = rein_wishes(subject, &subject.model.a).pop();
    let wishes = overall.into_iter().filter(|wish| match wish {
        Wish::Span { .. } => true,
        Wish::Note { .. } => false,
    });
    rows(Side::Below, area.y0, subject.scale, wishes.collect())
}

fn jaw_wishes(document: &Document, jaw: &Jaw, half: &Half) -> Vec<Wish> {
    let show = document.units.show();
    let (heel, tip) = (half.heel(), half.tip());
    let rivet = Point::new(0.0, half.body.rim.half_across());
    let corner = |s: f64| half.jaw.edge_point(Edge::Outer, s);
    let tip_corner = Point::new(tip, corner(half.jaw.length()).y);
    let span = |from: Point, to: Point, part: Part| Wish::Span {
        from,
        to,
        text: show.number((to.x - from.x).abs()),
        part,
    };
    let mut wishes = vec![
        span(rivet, Point::new(heel, corner(0.0).y), Part::Neck),
        span(Point::new(heel, corner(0.0).y), tip_corner, Part::Jaw),
        span(rivet, tip_corner, Part::Jaw),
    ];
    let plain = jaw.plain_form();
    let told = plain.told();
    for (place, &i) in told.iter().enumerate() {
        let (station, text) = (&plain.stations[i], station_words(&plain, i, show));
        let again = |&next: &usize| station_words(&plain, next, show) == text;
        if told[place + 1..].iter().any(again) {
            continue;
        }
        let at = corner(station.at.min(half.jaw.length() - jaw.tip.mm()));
        let hang = if station.at > NEAR_TIP * half.jaw.length() {
            Hang::Rather(Align::End)
        } else {
            Hang::Rather(Align::Start)
        };
        wishes.push(Wish::Note {
            at,
            text,
            part: Part::Jaw,
            hang,
        });
    }
    wishes
}

fn boss_note(document: &Document, model: &Model) -> Wish {
    let show = document.units.show();
    let text = format!(
        "boss {}, {} thick, hole Ø{}",
        boss_size(&document.boss, show),
        show.number(document.boss.thickness.mm()),
        show.number(document.rivet.hole.mm()),
    );
    Wish::Note {
        at: Point::new(0.0, model.a.body.rim.half_across()),
        text,
        part: Part::Boss,
        hang: Hang::Rather(Align::End),
    }
}

pub(super) fn boss_size(boss: &Boss, show: Show) -> String {
    match boss.shape {
        BossShape::Round => format!("Ø{}", show.number(boss.across.mm())),
        BossShape::Oval | BossShape::Lozenge => {
            format!(
                "{} × {}",
                show.number(boss.across.mm()),
                show.number(boss.along.mm())
            )
        }
    }
}

/// The size of a jaw's section at a station: a diameter where it is round.
pub(super) fn station_words(form: &Form, station: usize, show: Show) -> String {
    let station = &form.stations[station];
    let round = form.profiles[station.profile] == Profile::rounded(1.0, 1.0);
    let (depth, width) = (show.number(station.depth), show.number(station.width));
    if round && station.depth == station.width {
        format!("Ø{depth}")
    } else {
        format!("{depth} × {width}")
    }
}

/// A section as a smith would call it.
pub(super) fn section_words(section: &PlainSection, show: Show) -> String {
    let size = |mm: f64| show.number(mm);
    match section {
        PlainSection::Round { diameter } => format!("Ø{}", size(diameter.mm())),
        PlainSection::Square { side, .. } => format!("{} square", size(side.mm())),
        PlainSection::Octagon { flats } => format!("{} octagon", size(flats.mm())),
        PlainSection::Hexagon { flats } => format!("{} hexagon", size(flats.mm())),
        PlainSection::Rectangle { depth, width, .. } => {
            format!("{} × {}", size(depth.mm()), size(width.mm()))
        }
        PlainSection::Oval { depth, width } => {
            format!("oval {} × {}", size(depth.mm()), size(width.mm()))
        }
        PlainSection::HalfRound { depth, width } => {
            format!("half-round {} × {}", size(depth.mm()), size(width.mm()))
        }
    }
}

fn rein_wishes(subject: &Subject<'_>, half: &Half) -> Vec<Wish> {
    let (document, breaks) = (subject.document, subject.breaks);
    let (rein, show) = (&document.rein, document.units.show());
    let sweep = &half.rein;
    let outer = |s: f64| sweep.edge_point(Edge::Outer, s);
    let span = |from: Point, to: Point, words: &str| Wish::Span {
        from,
        to,
        text: format!("{words}{}", show.number((to.x - from.x).abs())),
        part: Part::Rein,
    };
    let note = |s: f64, text: String| Wish::Note {
        at: outer(s),
        text,
        part: Part::Rein,
        hang: Hang::Rather(if s < 1.0 { Align::End } else { Align::Start }),
    };
    let length = half.bent_from();
    let rivet = Point::new(0.0, -half.body.rim.half_across());
    let end = Point::new(half.rein_end(), outer(BEFORE_END * length).y);
    let tip = Point::new(
        half.tip(),
        -half.jaw.edge_point(Edge::Outer, half.jaw.length()).y,
    );
    let mut wishes = vec![
        note(0.0, section_words(&rein.start, show)),
        span(Point::new(outer(0.0).x, outer(0.0).y), rivet, ""),
        span(
            Point::new(outer(half.hand_at).x, outer(half.hand_at).y),
            rivet,
            "hand ",
        ),
        // From the shoulder, as its field and the balance count it, and along it, as it is forged.
        Wish::Span {
            from: end,
            to: Point::new(outer(0.0).x, end.y),
            text: format!("rein {}", show.number(rein.length.mm())),
            part: Part::Rein,
        },
    ];
    let taper_end = length - rein.parallel.mm();
    match &rein.hand_zone {
        Some(zone) => wishes.push(note(half.hand_at, section_words(&zone.section, show))),
        None if taper_end > LEAST_TAPER * length => {
            wishes.push(note(taper_end, section_words(&rein.end, show)));
            // Measured along the rein, as it is forged.
            wishes.push(Wish::Span {
                from: Point::new(sweep.middle(length).x, end.y),
                to: outer(taper_end),
                text: show.number(rein.parallel.mm()),
                part: Part::Rein,
            });
        }
        None => {
            let near = (length - rein.end.depth_mm()).max(AT_END * length);
            wishes.push(note(near, section_words(&rein.end, show)));
        }
    }
    wishes.push(span(end, tip, "overall "));
    // Over a break the true size still stands, and its line runs on (ISO 129-1).
    let on_paper = |wish: Wish| wish.moved(|p| breaks.point(p));
    wishes.into_iter().map(on_paper).collect()
}

/// Of a jaw: notes farther out hang to the left, where there is steel below them.
const NEAR_TIP: f64 = 0.7;
/// Of a rein: a dimension of its length ends at its edge here, before a rounded end runs in.
const BEFORE_END: f64 = 0.97;
/// Of a rein: a taper that is shorter has no room for a dimension of its own.
const LEAST_TAPER: f64 = 0.2;
/// Of a rein: where the section of its end is named.
const AT_END: f64 = 0.9;

/// Rows below the top view: thickness of the bosses and the step into the middle.
pub(super) fn top_rows(subject: &Subject<'_>, drawn: &[Item]) -> Vec<Item> {
    let Subject {
        document,
        model,
        scale,
        ..
    } = *subject;
    let show = document.units.show();
    let area = bounds(drawn).unwrap_or(Rect::ZERO);
    let edge = model.a.body.rim.half_along();
    let e = model.a.body.plate.faces.thickness;
    let mut wishes = Vec::new();
    if let Some(joggle) = model.joggle_to_bend() {
        let at = Point::new(f64::midpoint(edge, model.a.heel()), -0.6 * e);
        let text = format!("joggle {} each half", show.number(joggle.abs()));
        wishes.push(Wish::Note {
            at,
            text,
            part: Part::Neck,
            hang: Hang::Only(Align::Middle),
        });
    }
    rows(Side::Below, area.y0, scale, wishes)
}
