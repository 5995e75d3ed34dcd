//! Every label can be read: no line runs through a text, no arrow lies on it, and no other text.

use kurbo::{BezPath, PathEl, Point, Rect, Vec2};
use reinwright_core::asked::Units;
use reinwright_core::draw::{self, DrawOptions, EndView, breaks};
use reinwright_core::paper::{Breaks, Drawing, Fill, Item};
use reinwright_core::proof::strength::{StrengthLoad, strength};
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::JawKind;
use reinwright_core::tongs::resolve;
use reinwright_tests::designs::samples;
use reinwright_tests::pairs::starting;

/// What can strike a text.
struct Ink {
    texts: Vec<(String, Rect)>,
    strokes: Vec<(Point, Point)>,
    /// Arrowheads and dots.
    solid: Vec<Rect>,
}

impl Ink {
    fn of(drawing: &Drawing) -> Self {
        let mut ink = Self {
            texts: Vec::new(),
            strokes: Vec::new(),
            solid: Vec::new(),
        };
        ink.gather(&drawing.items, Vec2::ZERO);
        ink
    }

    fn gather(&mut self, items: &[Item], shift: Vec2) {
        for item in items {
            match item {
                Item::Text(text) => self.texts.push((text.text.clone(), text.bounds() + shift)),
                Item::Group(group) => self.gather(&group.items, shift + group.shift),
                Item::Path(path) if path.line.is_some() => {
                    let sides = sides(&path.path).into_iter();
                    self.strokes
                        .extend(sides.map(|(a, b)| (a + shift, b + shift)));
                }
                Item::Path(path) if path.fill == Some(Fill::Ink) => {
                    self.solid.push(path.path.control_box() + shift);
                }
                Item::Path(_) => {}
            }
        }
    }
}

fn sides(path: &BezPath) -> Vec<(Point, Point)> {
    let (mut all, mut first, mut last) = (Vec::new(), Point::ZERO, Point::ZERO);
    kurbo::flatten(path, 0.01, |el| match el {
        PathEl::MoveTo(p) => (first, last) = (p, p),
        PathEl::LineTo(p) => {
            all.push((last, p));
            last = p;
        }
        PathEl::ClosePath => {
            all.push((last, first));
            last = first;
        }
        PathEl::QuadTo(..) | PathEl::CurveTo(..) => {}
    });
    all
}

/// Whether a straight line has a part inside a box, looked for in small steps.
fn runs_through((a, b): (Point, Point), room: Rect) -> bool {
    let around = Rect::from_points(a, b);
    if around.x0 > room.x1 || around.x1 < room.x0 || around.y0 > room.y1 || around.y1 < room.y0 {
        return false;
    }
    let step = room.height().min(room.width()) / 8.0;
    let steps = (a.distance(b) / step).ceil().max(1.0);
    let mut t = 0.0;
    while t <= steps {
        if room.contains(a.lerp(b, t / steps)) {
            return true;
        }
        t += 1.0;
    }
    false
}

#[track_caller]
fn check(name: &str, drawing: &Drawing) {
    let ink = Ink::of(drawing);
    assert!(!ink.texts.is_empty(), "{name} has no text");
    let mut struck = Vec::new();
    for (index, (text, place)) in ink.texts.iter().enumerate() {
        let hair = 0.02 * place.height();
        let room = place.inflate(-hair, -hair);
        let line = ink.strokes.iter().find(|line| runs_through(**line, room));
        struck.extend(line.map(|line| format!("\"{text}\" at {room:?}: {line:?}")));
        let solid = ink.solid.iter().find(|solid| apart(**solid, room));
        struck.extend(solid.map(|solid| format!("\"{text}\" at {room:?}: {solid:?}")));
        let others = ink.texts[index + 1..].iter();
        let other = others.clone().find(|(_, there)| apart(*there, room));
        struck.extend(other.map(|(other, _)| format!("\"{text}\" stands on \"{other}\"")));
    }
    assert!(struck.is_empty(), "{name}: {struck:#?}");
}

/// Whether two boxes overlap.
fn apart(a: Rect, b: Rect) -> bool {
    let both = a.intersect(b);
    both.width() > 0.0 && both.height() > 0.0
}

/// The ways in which a window or a sheet shows a pair: whole and broken, the end view beside and
/// under, the lettering of a template and of small windows.
fn ways(breaks: Breaks) -> Vec<DrawOptions> {
    let whole = Breaks::default();
    let looks = [
        (whole, EndView::Beside),
        (breaks, EndView::Beside),
        (breaks, EndView::Under),
    ];
    let of = |text: f64| {
        looks.map(|(breaks, end)| DrawOptions {
            text,
            breaks,
            end,
            ..DrawOptions::default()
        })
    };
    [3.5, 8.0, 20.0].into_iter().flat_map(of).collect()
}

fn check_all(name: &str, design: &Document) {
    let model = resolve(design);
    for options in ways(breaks(&model, 0.0)) {
        let broken = if options.breaks.is_whole() {
            "whole"
        } else {
            "broken"
        };
        let name = format!(
            "{name}, pair, {broken}, {:?}, {} mm",
            options.end, options.text
        );
        check(&name, &draw::pair(design, &model, &options));
    }
    check(
        &format!("{name}, half"),
        &draw::half(design, &model, &DrawOptions::default()),
    );
}

fn work_for(style: JawKind) -> &'static str {
    match style {
        JawKind::Flat
        | JawKind::BoxJaw
        | JawKind::Duckbill
        | JawKind::HammerEye
        | JawKind::ChiselHead => "flat",
        JawKind::SquareMouth => "square",
        _ => "round",
    }
}

#[test]
fn no_label_is_struck_whatever_the_jaw_and_the_work() {
    let sizes = [
        ("6 mm", "10 mm square", Units::Millimetre),
        ("50 mm", "25 mm square", Units::Millimetre),
        ("1/4 in", "3/8 in square", Units::Inch),
        ("2 in", "1 in square", Units::Inch),
    ];
    for &style in JawKind::ALL {
        for (size, bar, units) in sizes {
            let work = format!("{size} {}", work_for(style));
            let mut design = starting(style.name(), &work, bar);
            design.units = units;
            check_all(&format!("{style} on {work}"), &design);
        }
    }
}

#[test]
fn no_label_of_a_sample_is_struck() {
    for (name, design) in samples() {
        check_all(&name, &design);
    }
}

#[test]
fn no_label_of_the_stresses_is_struck() {
    for (name, design) in samples() {
        let model = resolve(&design);
        let strength = strength(&design, &model, &StrengthLoad::default());
        for options in ways(breaks(&model, 0.0)) {
            let drawing = draw::stressed(&design, &model, (&strength, 160.0), &options);
            check(&format!("{name}, {} mm", options.text), &drawing);
        }
    }
}
