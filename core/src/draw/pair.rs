//! The pair: three views aligned, with the dimensions that a smith sets a caliper to.

use kurbo::{Affine, BezPath, Circle, Point, Rect, Shape, Vec2};

use super::views::work::{far_end, upright_mm, upright_size};
use super::{DrawOptions, views};
use crate::asked::{PlainSection, RoundOf, Work};
use crate::finding::Part;
use crate::paper::dimension::{Scale, Side, Wish, arrow, rectangle, rows, segment, upright};
use crate::paper::{Align, Drawing, Item, Line, Projection, View, bounds};
use crate::shape::section::Profile;
use crate::shape::sweep::Edge;
use crate::tongs::document::{Boss, BossShape, Document};
use crate::tongs::jaw::{Form, Jaw};
use crate::tongs::model::{Half, Model};
use crate::units::Show;

/// Between one view and the next, in text sizes.
const BETWEEN: f64 = 2.2;

/// The pair: side, top and end view, aligned, with the work in the jaws. Origin at the rivet in
/// the side view.
pub fn pair(document: &Document, model: &Model, options: &DrawOptions) -> Drawing {
    let scale = options.scale();
    let dimensioned = !options.bare && options.opening == 0.0;
    let mut side = views::side::pair(document, model, options.opening);
    side.push(axis(model));
    let mut top = views::top::pair(document, model);
    top.push(axis(model));
    let end = views::end::pair(document, model, options.opening);
    if !options.bare {
        side.extend(gaps(document, model, options.opening, scale));
    }
    if document.projection == Projection::FirstAngle {
        side.extend(looking_arrow(model, scale));
    }
    if dimensioned {
        side.extend(side_rows(document, model, &side, scale));
        top.extend(top_rows(document, model, &top, scale));
    }
    lay_out(document, model, options, [side, top, end], scale)
}

/// Where the top and the end view stand, from the side view, mm on paper.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Shifts {
    /// The top view.
    pub top: Vec2,
    /// The end view.
    pub end: Vec2,
}

impl Shifts {
    /// Read off a drawing that [`pair`] made; views that it does not have stand at the origin.
    pub fn of(drawing: &Drawing) -> Self {
        let of = |view: View| {
            let mut groups = drawing.items.iter().filter_map(|item| match item {
                Item::Group(group) => Some(group),
                Item::Path(_) | Item::Text(_) => None,
            });
            let shown = groups.find(|group| group.view == Some(view));
            shown.map_or(Vec2::ZERO, |group| group.shift)
        };
        Self {
            top: of(View::Top),
            end: of(View::End),
        }
    }
}

/// What the end view is called in first angle, where an arrow with this letter says which way it
/// looks.
const END_BY_ARROW: &str = "End view A";

/// Sets the views about the side view and names them.
fn lay_out(
    document: &Document,
    model: &Model,
    options: &DrawOptions,
    views: [Vec<Item>; 3],
    scale: Scale,
) -> Drawing {
    let boxes = views
        .each_ref()
        .map(|items| bounds(items).unwrap_or(Rect::ZERO));
    let [mut side, mut top, end] = boxes;
    let gap = BETWEEN * scale.text;
    let turned = Affine::rotate(-options.opening) * Model::half_b_pose();
    let over_side = over_rein(&model.b, turned, Edge::Outer, scale) + over_gap(model, scale);
    let over_side = off_texts(over_side, View::Side.name(), &views[0], scale);
    let over_top = over_rein(&model.b, Affine::IDENTITY, Edge::Far, scale);
    // A view reaches as high as its name.
    side.y1 = side.y1.max(over_side.y + scale.text);
    top.y1 = top.y1.max(over_top.y + scale.text);
    let third = document.projection == Projection::ThirdAngle;
    let top_shift = if third {
        side.y1 + gap - top.y0
    } else {
        side.y0 - gap - top.y1
    };
    // Beside the jaws in either projection. In first angle it would belong beyond the rein ends,
    // a sheet away; there a reference arrow says which way it looks (ISO 5456-2).
    let end_shift = side.x1.max(top.x1) + gap - end.x0;
    let shifts = options.shifts.unwrap_or(Shifts {
        top: Vec2::new(0.0, top_shift),
        end: Vec2::new(end_shift, 0.0),
    });
    let shifts = [Vec2::ZERO, shifts.top, shifts.end];
    let over_end = Point::new(end.center().x, end.y1 + 0.9 * scale.text);
    let end_name = if third {
        View::End.name()
    } else {
        END_BY_ARROW
    };
    let titles = [
        (View::Side, View::Side.name(), over_side),
        (View::Top, View::Top.name(), over_top),
        (View::End, end_name, over_end),
    ];
    let mut items = Vec::new();
    for ((mut drawn, shift), (view, name, at)) in views.into_iter().zip(shifts).zip(titles) {
        drawn.extend(view_title((view, name), at, scale));
        items.push(Item::view(view, name, shift, drawn));
    }
    Drawing { items }
}

/// The reference arrow of the end view: along the axis, onto the jaw tips.
fn looking_arrow(model: &Model, scale: Scale) -> Vec<Item> {
    let end = Point::new(far_end(model) + PAST + 0.6 * scale.text, 0.0);
    let start = end + Vec2::new(2.6 * scale.text, 0.0);
    let mut items = vec![
        Item::line(segment(start, end), Line::Outline),
        arrow(end, Vec2::new(-1.0, 0.0), scale),
    ];
    let letter = start + Vec2::new(-0.6 * scale.text, 0.5 * scale.text);
    items.push(Item::text(letter, "A", scale.text, Align::Middle));
    items
}

/// How much higher the side view's name stands where the hand gap has its text above the reins.
fn over_gap(model: &Model, scale: Scale) -> Vec2 {
    let above = if scale.fits_upright(model.hand_gap) {
        0.0
    } else {
        2.2 * scale.text
    };
    Vec2::new(0.0, above)
}

/// A view's name set as much higher as it must be to keep off the texts of the view.
fn off_texts(at: Point, name: &str, items: &[Item], scale: Scale) -> Point {
    let width = NAME_AFTER * scale.text + scale.width(name);
    let room = |at: Point| Rect::from_origin_size(at, (width, scale.text)).inset(0.3 * scale.text);
    let texts = items.iter().filter_map(|item| match item {
        Item::Text(text) => Some(text.bounds()),
        Item::Path(_) | Item::Group(_) => None,
    });
    let mut texts: Vec<Rect> = texts.collect();
    texts.sort_by(|a, b| a.y0.total_cmp(&b.y0));
    texts.iter().fold(at, |at, text| {
        if room(at).overlaps(*text) {
            Point::new(at.x, text.y1 + 0.6 * scale.text)
        } else {
            at
        }
    })
}

/// From the small picture's start to the name beside it, in text sizes.
const NAME_AFTER: f64 = 7.8;

/// Where a view's name stands: clear above the end of the rein, where there is room.
pub(super) fn over_rein(half: &Half, pose: Affine, edge: Edge, scale: Scale) -> Point {
    const PARTS: u32 = 8;
    let length = half.bent_from();
    let name = (16.0 * scale.text).min(0.5 * length);
    let place = |i: u32| {
        let s = length - name * f64::from(i) / f64::from(PARTS);
        pose * half.rein.edge_point(edge, s)
    };
    // A bent end stands up beside the name.
    let bent = half.rein.length() - length;
    let bent = |i: u32| length + bent * f64::from(i) / f64::from(PARTS);
    let ys = (0..=PARTS).flat_map(|i| [place(i), pose * half.rein.edge_point(edge, bent(i))]);
    let highest = ys.map(|p| p.y).fold(f64::MIN, f64::max);
    Point::new(place(0).x, highest + 1.2 * scale.text)
}

/// The name of a view with a small picture of what is looked at.
pub(super) fn view_title((view, name): (View, &str), at: Point, scale: Scale) -> Vec<Item> {
    let small = match view {
        View::Side => small_side(),
        View::Top => small_top(),
        View::End => return vec![Item::text(at, name, scale.text, Align::Middle)],
    };
    let pose = Affine::translate(at.to_vec2() + Vec2::new(0.0, 0.36 * scale.text))
        * Affine::scale(scale.text);
    vec![
        Item::line(pose * small, Line::Fine),
        Item::text(
            at + Vec2::new(NAME_AFTER * scale.text, 0.0),
            name,
            scale.text,
            Align::Start,
        ),
    ]
}

/// Tongs seen along the rivet, in text sizes.
fn small_side() -> BezPath {
    let mut path = Circle::new((4.6, 0.0), 0.5).to_path(0.01);
    for side in [1.0, -1.0] {
        for (a, b) in [((0.0, 0.75), (4.2, 0.3)), ((5.0, 0.3), (7.0, 0.2))] {
            path.move_to((a.0, side * a.1));
            path.line_to((b.0, side * b.1));
        }
    }
    path
}

/// Tongs seen from above, in text sizes.
fn small_top() -> BezPath {
    let boxes = [
        (0.0, -0.2, 3.8, 0.2),
        (3.8, 0.0, 5.4, 0.5),
        (3.8, -0.5, 5.4, 0.0),
        (5.4, -0.4, 7.0, 0.4),
    ];
    let mut path = BezPath::new();
    for (x0, y0, x1, y1) in boxes {
        path.extend(rectangle(Rect::new(x0, y0, x1, y1)));
    }
    path
}

/// How far an axis stands out past what it runs through, mm.
const PAST: f64 = 6.0;

/// The axis of the tongs, through rivet and work.
fn axis(model: &Model) -> Item {
    let ends = (model.a.rein_end() - PAST, far_end(model) + PAST);
    let mut path = segment(Point::new(ends.0, 0.0), Point::new(ends.1, 0.0));
    let up = model.a.body.rim.half_across() + PAST;
    path.move_to((0.0, -up));
    path.line_to((0.0, up));
    Item::line(path, Line::Centre)
}

/// Hand gap and work size, which stay true while the pair opens.
fn gaps(document: &Document, model: &Model, opening: f64, scale: Scale) -> Vec<Item> {
    let show = document.units.show();
    let turn = Affine::rotate(opening);
    let low = turn * model.a.rein.edge_point(Edge::Inner, model.a.hand_at);
    let other = Affine::rotate(-opening) * Model::half_b_pose();
    let high = other * model.b.rein.edge_point(Edge::Inner, model.b.hand_at);
    let high = Point::new(low.x, high.y);
    let text = format!("hand gap {}", show.number(high.y - low.y));
    let mut items = if high.y - low.y > 1.0 {
        upright(low, high, &text, scale, Part::Rein)
    } else {
        Vec::new()
    };
    if opening == 0.0 {
        let (middle, half) = upright_size(model);
        let (low, high) = (middle - half, middle + half);
        items.extend(upright(
            low,
            high,
            &show.number(document_size(document, model)),
            scale,
            Part::Work,
        ));
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
fn side_rows(document: &Document, model: &Model, drawn: &[Item], scale: Scale) -> Vec<Item> {
    let area = bounds(drawn).unwrap_or(Rect::ZERO);
    let a = &model.a;
    let mut above = jaw_wishes(document, &document.jaw, a);
    above.push(boss_note(document, model));
    let below = rein_wishes(document, a);
    let mut items = rows(Side::Above, area.y1, scale, above);
    items.extend(rows(Side::Below, area.y0, scale, below));
    items
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
            Align::End
        } else {
            Align::Start
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
        hang: Align::End,
    }
}

fn boss_size(boss: &Boss, show: Show) -> String {
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

fn rein_wishes(document: &Document, half: &Half) -> Vec<Wish> {
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
        hang: if s < 1.0 { Align::End } else { Align::Start },
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
        span(end, tip, "overall "),
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
        None => wishes.push(note(AT_END * length, section_words(&rein.end, show))),
    }
    wishes
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
fn top_rows(document: &Document, model: &Model, drawn: &[Item], scale: Scale) -> Vec<Item> {
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
            hang: Align::Middle,
        });
    }
    rows(Side::Below, area.y0, scale, wishes)
}
