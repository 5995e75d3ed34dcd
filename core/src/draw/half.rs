//! One half as a template to lay the hot work against.

use kurbo::{Affine, Point, Rect, Vec2};

use super::names::{Over, clear_of, over_rein, view_title};
use super::sizes::station_words;
use super::{DrawOptions, Names, Sizes, views};
use crate::finding::Part;
use crate::number::roots::turning;
use crate::paper::dimension::{Hang, Origin, Scale, Side, Wish, rows, running, segment};
use crate::paper::lettering::clear;
use crate::paper::{Align, Breaks, Drawing, Item, Line, Projection, View, bounds};
use crate::shape::sweep::Edge;
use crate::tongs::document::Document;
use crate::tongs::model::{Half, Lies, Model};
use crate::units::{MM_PER_INCH, Unit};

/// One half as a template: side and top view, with depth × width at every caliper station.
/// Origin at the rivet in the side view.
pub fn half(document: &Document, model: &Model, options: &DrawOptions) -> Drawing {
    let scale = options.scale();
    let half = &model.a;
    let mut side = views::side::half(model);
    side.push(axis(half));
    side = options.breaks.of(side);
    if options.sizes != Sizes::None {
        caliper(document, half, options, &mut side);
    }
    let mut top = views::top::half(model);
    top.push(axis(half));
    let top = options.breaks.of(top);
    options
        .views
        .of(stack((document, options), model, side, top, scale))
}

/// What a caliper is set to, over and under the side view.
fn caliper(document: &Document, half: &Half, options: &DrawOptions, side: &mut Vec<Item>) {
    let scale = options.scale();
    let area = bounds(side).unwrap_or(Rect::ZERO);
    let (jaw, rein) = stations(document, half);
    let [jaw, rein] = [jaw, rein].map(|of| shown(of, &options.breaks));
    side.extend(jaw.iter().chain(&rein).map(|station| {
        Item::line(segment(station.inner, station.outer), Line::Fine).of(station.part)
    }));
    let note = |station: &Station| {
        station.text.clone().map(|text| Wish::Note {
            at: station.outer,
            hang: Hang::Only(hang(station, &text, scale)),
            text,
            part: station.part,
        })
    };
    for (stations, place, base) in [(&jaw, Side::Above, area.y1), (&rein, Side::Below, area.y0)] {
        let notes = rows(
            place,
            base,
            scale,
            stations.iter().filter_map(note).collect(),
        );
        let noted = bounds(&notes).unwrap_or(Rect::new(0.0, base, 0.0, base));
        side.extend(distances(
            (document, options),
            half,
            stations,
            (place, base, noted),
            scale,
        ));
        // On their patches of paper the notes stand over the lines of the distances.
        side.extend(notes);
    }
}

/// The stations that are shown, where they lie on the paper.
fn shown(stations: Vec<Station>, breaks: &Breaks) -> Vec<Station> {
    let hidden = |station: &Station| breaks.hide(station.outer.x);
    let moved = |station: Station| Station {
        inner: breaks.point(station.inner),
        outer: breaks.point(station.outer),
        ..station
    };
    let seen = stations.into_iter().filter(|station| !hidden(station));
    seen.map(moved).collect()
}

/// The other half as a template, as it lies when it is turned into the place of the first.
pub fn other_half(document: &Document, model: &Model, options: &DrawOptions) -> Drawing {
    let (document, model) = turned_over(document, model);
    half(&document, &model, options)
}

/// The pair turned over, so that its second half is the first.
pub(super) fn turned_over(document: &Document, model: &Model) -> (Document, Model) {
    let mut document = document.clone();
    if let Some(second) = &mut document.second_jaw {
        std::mem::swap(&mut document.jaw, second);
    }
    (document, model.turned_over())
}

/// On which side of its line a note stands: before the heel where the rivet's line leaves room,
/// clear of the lines that follow; before the tip, where steel lies under it and it takes no paper
/// of its own; else behind its own line.
fn hang(station: &Station, text: &str, scale: Scale) -> Align {
    let room = station.outer.x > scale.width(text) + scale.text;
    match station.end {
        Some(JawEnd::Heel | JawEnd::Tip) if room => Align::End,
        Some(JawEnd::Heel | JawEnd::Tip) | None => Align::Start,
    }
}

fn stack(
    (document, options): (&Document, &DrawOptions),
    model: &Model,
    mut side: Vec<Item>,
    mut top: Vec<Item>,
    scale: Scale,
) -> Drawing {
    let boxes = [
        bounds(&side).unwrap_or(Rect::ZERO),
        bounds(&top).unwrap_or(Rect::ZERO),
    ];
    let gap = 2.2 * scale.text;
    let third = document.projection == Projection::ThirdAngle;
    let shift = if third {
        boxes[0].y1 + gap - boxes[1].y0
    } else {
        boxes[0].y0 - gap - boxes[1].y1
    };
    let half = &model.a;
    let over = |edge: Edge| Over {
        half,
        pose: Affine::IDENTITY,
        edge,
        breaks: options.breaks,
    };
    if options.names == Names::Drawn {
        let at = over_rein(&over(Edge::Inner), scale);
        // Above the axis, which runs over the rein of a single half.
        let at = Point::new(at.x, at.y.max(1.2 * scale.text));
        let at = clear_of(at, View::Side.name(), &side, scale);
        side.extend(view_title((View::Side, View::Side.name()), at, scale));
        let title = match model.work.lies {
            Lies::Alongside => "Top view; the other half steps to the other side",
            Lies::Endwise | Lies::Crosswise => View::Top.name(),
        };
        let over_top = clear_of(over_rein(&over(Edge::Far), scale), title, &top, scale);
        top.extend(view_title((View::Top, title), over_top, scale));
    }
    let view = |view: View, shift: Vec2, items| Item::view(view, view.name(), shift, clear(items));
    Drawing {
        items: vec![
            view(View::Side, Vec2::ZERO, side),
            view(View::Top, Vec2::new(0.0, shift), top),
        ],
    }
}

fn axis(half: &Half) -> Item {
    const PAST: f64 = 6.0;
    let up = half.body.rim.half_across() + PAST;
    let mut path = segment(
        Point::new(half.rein_end() - PAST, 0.0),
        Point::new(half.tip() + PAST, 0.0),
    );
    path.move_to((0.0, -up));
    path.line_to((0.0, up));
    Item::line(path, Line::Centre)
}

/// A place where the smith sets a caliper.
struct Station {
    inner: Point,
    outer: Point,
    /// How far it is from the rivet along the tongs, mm.
    from_rivet: f64,
    /// Depth × width, where it is named.
    text: Option<String>,
    part: Part,
    /// Whether the jaw begins or ends here.
    end: Option<JawEnd>,
}

/// An end of the jaw.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum JawEnd {
    Heel,
    Tip,
}

/// Stations of the rein stand so far apart, mm: a hand's breadth in round numbers, 3 in or 75 mm.
const APART: (f64, f64) = (3.0 * MM_PER_INCH, 75.0);

/// Parts of that distance in which a station would crowd the rein's end, and its start.
const NEAR_END: f64 = 0.2;
const NEAR_START: f64 = 0.3;

/// Stations of the jaw where its sections are given, and of the rein at round distances from the
/// rivet.
fn stations(document: &Document, half: &Half) -> (Vec<Station>, Vec<Station>) {
    let show = document.units.show();
    let station = |sweep: &crate::shape::sweep::Sweep, s: f64, part: Part| {
        let section = sweep.section(s);
        let outer = sweep.edge_point(Edge::Outer, s);
        Station {
            inner: sweep.edge_point(Edge::Inner, s),
            outer,
            from_rivet: outer.x.abs(),
            text: Some(format!(
                "{} × {}",
                show.number(section.depth),
                show.number(section.width)
            )),
            part,
            end: None,
        }
    };
    let every = match document.units.unit() {
        Unit::Inch | Unit::Foot => APART.0,
        Unit::Millimetre | Unit::Centimetre => APART.1,
    };
    let mut rein = vec![0.0];
    let mut reach = every;
    let end = half.rein.middle(half.bent_from()).x;
    while -reach > end + NEAR_END * every {
        if -reach < half.rein_start().x - NEAR_START * every {
            rein.push(along_rein(half, -reach));
        }
        reach += every;
    }
    let jaw = jaw_stations(document, half);
    let rein = rein
        .into_iter()
        .map(|s| station(&half.rein, s, Part::Rein))
        .collect();
    (jaw, rein)
}

/// A place where a caliper is set, as a table has it.
pub(super) struct Measured {
    pub(super) part: Part,
    /// Along the tongs, mm; behind the rivet below nothing.
    pub(super) from_rivet: f64,
    /// Depth × width.
    pub(super) size: String,
}

/// All places where a caliper is set, those too whose size the next one repeats.
pub(super) fn measured(document: &Document, half: &Half) -> Vec<Measured> {
    let show = document.units.show();
    let plain = document.jaw.plain_form();
    let jaw = plain.told().into_iter().map(|i| Measured {
        part: Part::Jaw,
        from_rivet: half.jaw.edge_point(Edge::Inner, plain.stations[i].at).x,
        size: station_words(&plain, i, show),
    });
    let (_, rein) = stations(document, half);
    let rein = rein.into_iter().filter_map(|station| {
        Some(Measured {
            part: station.part,
            from_rivet: -station.from_rivet,
            size: station.text?,
        })
    });
    jaw.chain(rein).collect()
}

/// Stations of the jaw: where its sections are asked for, unless the heel is near; a section that
/// runs on to the next station is named there.
fn jaw_stations(document: &Document, half: &Half) -> Vec<Station> {
    let show = document.units.show();
    let length = half.jaw.length();
    let plain = document.jaw.plain_form();
    let told = plain.told();
    let words = |i: usize| station_words(&plain, i, show);
    let runs_on = |place: usize| {
        let here = words(told[place]);
        told[place + 1..].iter().any(|&next| words(next) == here)
    };
    told.iter()
        .enumerate()
        .map(|(place, &i)| {
            let station = &plain.stations[i];
            let unbroken = station.at.min(length - document.jaw.tip.mm());
            // Measured to the tip itself, at the height of the back before it is broken.
            let outer = half.jaw.edge_point(Edge::Outer, unbroken);
            let inner = half.jaw.edge_point(Edge::Inner, station.at);
            let end = if station.at == 0.0 {
                Some(JawEnd::Heel)
            } else {
                (place + 1 == told.len()).then_some(JawEnd::Tip)
            };
            Station {
                inner,
                outer: Point::new(inner.x, outer.y),
                from_rivet: inner.x.abs(),
                text: (!runs_on(place)).then(|| words(i)),
                part: Part::Jaw,
                end,
            }
        })
        .collect()
}

/// How far each station is from the rivet, in one running row outside the notes.
fn distances(
    (document, options): (&Document, &DrawOptions),
    half: &Half,
    stations: &[Station],
    (side, base, noted): (Side, f64, Rect),
    scale: Scale,
) -> Vec<Item> {
    let sign = if side == Side::Above { 1.0 } else { -1.0 };
    /// Rows outside the notes: those of near stations may need two, and sometimes more.
    const OUTSIDE: f64 = 3.2;
    let usual = base + sign * OUTSIDE * scale.row();
    let row = if side == Side::Above {
        usual.max(noted.y1 + scale.row())
    } else {
        usual.min(noted.y0 - scale.row())
    };
    let show = document.units.show();
    let places: Vec<(Point, String)> = stations
        .iter()
        .map(|station| (station.outer, show.number(station.from_rivet)))
        .collect();
    let rivet = Point::new(0.0, sign * half.body.rim.half_across());
    let breaks = &options.breaks;
    let origin = if breaks.hide(rivet.x) {
        Origin::LeftOut(breaks.point(rivet), "from the rivet")
    } else {
        Origin::Shown(breaks.point(rivet))
    };
    running((side, row), origin, &places, scale, Part::Boss)
}

/// Where along the rein its middle has an x.
fn along_rein(half: &Half, x: f64) -> f64 {
    let before = |s: f64| half.rein.edge_point(Edge::Outer, s).x > x;
    turning((0.0, half.bent_from()), before)
}
