//! A struck tool, lying.

use kurbo::{Point, Rect, Vec2};

use super::{HERE, Seen, end, placed, room, title};
use crate::finding::Part;
use crate::paper::dimension::{Hang, Side, Wish, rows, segment};
use crate::paper::lettering::clear;
use crate::paper::{Align, Item, Line, Projection, View, bounds};
use crate::tool::{Hold, Mount, Struck};

/// Side view, top view on the side that the projection asks for, end view, sections.
pub(super) fn views(seen: &Seen<'_>) -> Vec<Item> {
    let scale = seen.scale;
    let gap = 2.0 * scale.text;
    let mut side = seen.steel(View::Side);
    side.push(seen.axis(0.6 * scale.text));
    let bare = bounds(&side).unwrap_or(Rect::ZERO);
    if seen.sized() {
        side.extend(lengths(seen, bare));
        side.extend(sections(seen, bare));
    }
    let mut top = seen.steel(View::Top);
    top.push(seen.axis(0.6 * scale.text));
    top.extend(rod(seen));
    if seen.sized() {
        let bare = bounds(&top).unwrap_or(Rect::ZERO);
        top.extend(held(seen, bare));
    }
    if seen.named() {
        for (items, view) in [(&mut side, View::Side), (&mut top, View::Top)] {
            let area = bounds(items).unwrap_or(Rect::ZERO);
            items.push(title(view.name(), area, scale));
        }
    }
    let side = Item::view(View::Side, View::Side.name(), HERE, clear(side));
    let (area, under) = (room(&side), bounds(&top).unwrap_or(Rect::ZERO));
    let drop = match seen.document.projection {
        Projection::ThirdAngle => area.y1 + gap - under.y0,
        Projection::FirstAngle => area.y0 - gap - under.y1,
    };
    let top = Item::view(
        View::Top,
        View::Top.name(),
        Vec2::new(0.0, drop),
        clear(top),
    );
    let both = area.union(room(&top));
    let end = end::view(seen);
    let high = bounds(&end).map_or(0.0, |area| area.height());
    let end = placed(
        Some(View::End),
        View::End.name(),
        Point::new(area.x1 + gap, -high / 2.0),
        end,
    );
    let row = end::sections(seen, f64::INFINITY);
    let tall = bounds(&row).map_or(0.0, |area| area.height());
    let row = placed(
        None,
        "Sections",
        Point::new(both.x0, both.y0 - gap - tall),
        row,
    );
    vec![side, top, end, row]
}

/// Each part and the whole, under the side view.
fn lengths(seen: &Seen<'_>, bare: Rect) -> Vec<Item> {
    let half = |x: f64| {
        let cross = seen.model.piece.cross((seen.model.tip_mm - x).max(0.0));
        cross.map_or(0.0, |own| own.depth_mm / 2.0)
    };
    let foot = |x: f64| Point::new(x, -half(x));
    let span = |from: f64, to: f64, part: Part| Wish::Span {
        from: foot(to),
        to: foot(from),
        text: seen.size(from - to),
        part,
    };
    let mut wishes: Vec<Wish> = seen
        .meets()
        .into_iter()
        .map(|(from, to, part)| span(from, to, part))
        .collect();
    wishes.extend(
        seen.worked()
            .into_iter()
            .map(|(from, to)| span(from, to, Part::Working)),
    );
    let (from, to) = seen.ends();
    wishes.push(span(to, from, Part::Tool));
    rows(Side::Below, bare.y0, seen.scale, wishes)
}

/// The sections where they change, over the side view.
fn sections(seen: &Seen<'_>, bare: Rect) -> Vec<Item> {
    let middle = f64::midpoint(bare.x0, bare.x1);
    let notes = seen.stations().into_iter().map(|own| Wish::Note {
        at: Point::new(own.x, own.depth / 2.0),
        text: own.words,
        part: own.part,
        // Inward, so that no figure makes the drawing longer than the tool.
        hang: Hang::Rather(if own.x > middle {
            Align::End
        } else {
            Align::Start
        }),
    });
    rows(Side::Above, bare.y1, seen.scale, notes.collect())
}

/// A rod that is wound about a tool, mm thick (common practice, no source: 5/16 in).
const ROD_MM: f64 = 7.9375;

/// Where a rod stands off the tool, x in mm: in the middle of its plain body.
fn rod_at(seen: &Seen<'_>) -> Option<(f64, f64)> {
    let Mount::Struck(Struck {
        hold: Hold::Rod { reach },
        ..
    }) = seen.document.shape.mount
    else {
        return None;
    };
    let body = seen.meets().into_iter().find(|own| own.2 == Part::Body)?;
    Some((f64::midpoint(body.0, body.1), reach.mm()))
}

/// The rod in the top view, broken off.
fn rod(seen: &Seen<'_>) -> Vec<Item> {
    let Some((x, _)) = rod_at(seen) else {
        return Vec::new();
    };
    let (half, out) = (seen.model.base.width / 2.0, 3.0 * seen.scale.text);
    let side = |by: f64| {
        let (from, to) = (Point::new(x + by, half), Point::new(x + by, half + out));
        Item::line(segment(from, to), Line::Neighbour)
    };
    [-ROD_MM / 2.0, ROD_MM / 2.0].map(side).into()
}

/// How it is held, over the top view: the eye, or the rod.
fn held(seen: &Seen<'_>, bare: Rect) -> Vec<Item> {
    let Some((x, reach)) = rod_at(seen) else {
        return eye(seen, bare);
    };
    let wish = Wish::Note {
        at: Point::new(x, bare.y1),
        text: format!("on a rod, {} to the hand", seen.size(reach)),
        part: Part::Body,
        hang: Hang::Rather(Align::Middle),
    };
    rows(Side::Above, bare.y1, seen.scale, vec![wish])
}

/// The eye, over the top view.
fn eye(seen: &Seen<'_>, bare: Rect) -> Vec<Item> {
    let Mount::Struck(Struck {
        hold:
            Hold::Eye {
                along,
                across,
                from_face,
                ..
            },
        ..
    }) = seen.document.shape.mount
    else {
        return Vec::new();
    };
    let (middle, half) = (from_face.mm(), along.mm() / 2.0);
    let wishes = vec![
        Wish::Span {
            from: Point::new(0.0, 0.0),
            to: Point::new(middle, across.mm() / 2.0),
            text: seen.size(middle),
            part: Part::Eye,
        },
        Wish::Note {
            at: Point::new(middle + half * 0.5, across.mm() / 2.0),
            text: format!(
                "eye {} \u{d7} {}",
                seen.size(along.mm()),
                seen.size(across.mm())
            ),
            part: Part::Eye,
            hang: Hang::Rather(Align::Start),
        },
    ];
    rows(Side::Above, bare.y1, seen.scale, wishes)
}
