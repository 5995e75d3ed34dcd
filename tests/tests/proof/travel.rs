//! How far a pair opens and shuts, against areas measured by geo, and what is told of a pair that
//! does not.

use geo::{Area, BooleanOps, Coord, MultiPolygon, Polygon, Rect};
use kurbo::Affine;
use reinwright_core::finding::{Finding, Severity};
use reinwright_core::proof::fit::{self, NoContact};
use reinwright_core::tongs::document::{BossShape, Document};
use reinwright_core::tongs::jaw::JawStyle;
use reinwright_core::tongs::model::{Half, Model};
use reinwright_core::tongs::resolve;
use reinwright_tests::INCH;
use reinwright_tests::outline::polygon;
use reinwright_tests::pairs::{self, mm, starting};

use super::{fitted, two_jaws};

/// A half as a polygon in the side view, turned by an angle in its own frame.
fn turned(half: &Half, angle: f64) -> Polygon {
    polygon(&(Affine::rotate(angle) * half.outline()))
}

/// What of a half reaches over the middle plane: all of it past the place where its faces begin
/// to step, towards jaw and rein.
fn across(half: &Half, angle: f64) -> MultiPolygon {
    const FAR: f64 = 5000.0;
    let faces = &half.body.plate.faces;
    let strip = |from: f64, to: f64| {
        Rect::new(Coord { x: from, y: -FAR }, Coord { x: to, y: FAR }).to_polygon()
    };
    let whole = polygon(&half.outline());
    let front = whole.intersection(&strip(faces.neck.boss, FAR));
    let back = whole.intersection(&strip(-FAR, faces.shoulder.boss));
    let turn = |p: Coord| {
        let at = Affine::rotate(angle) * kurbo::Point::new(p.x, p.y);
        Coord { x: at.x, y: at.y }
    };
    use geo::MapCoords;
    front.union(&back).map_coords(turn)
}

/// Half B in its place: turned in its own frame as half A is, then over the axis of the work.
fn over(polygons: &MultiPolygon) -> MultiPolygon {
    use geo::MapCoords;
    polygons.map_coords(|p| Coord { x: p.x, y: -p.y })
}

/// Area in which steel of both halves lies in one layer, mm².
fn shared(model: &Model, half_angle: f64) -> f64 {
    let a = MultiPolygon::from(turned(&model.a, half_angle));
    let b = over(&MultiPolygon::from(turned(&model.b, half_angle)));
    let (a_across, b_across) = (
        across(&model.a, half_angle),
        over(&across(&model.b, half_angle)),
    );
    a_across.intersection(&b).unsigned_area() + a.intersection(&b_across).unsigned_area()
}

#[test]
fn halves_are_clear_of_each_other_within_the_travel_and_not_past_it() {
    let (two, _) = two_jaws();
    let pairs = pairs::all().into_iter().chain([("two jaws", two)]);
    for (name, pair) in pairs {
        let (model, fit) = fitted(&pair);
        let travel = fit.travel.unwrap_or_else(|| panic!("{name}: no travel"));
        let (shut, open) = (travel.shut.half_angle, travel.open.half_angle);
        assert!(shut < open, "{name}: {shut} to {open}");
        for i in 0..=12 {
            let at = shut + (open - shut) * f64::from(i) / 12.0;
            let area = shared(&model, at);
            // Touching by a thousandth of a mm along a rein of 400 mm is 0.4 mm².
            assert!(area < 0.5, "{name}: {area} mm2 overlap at {at} rad");
        }
        // A hundredth of a radian past either end they must cut into each other.
        for (past, end) in [(shut - 0.01, travel.shut), (open + 0.01, travel.open)] {
            let area = shared(&model, past);
            assert!(
                end.clash.is_none() || area > 0.002,
                "{name}: {area} mm2 at {past} rad, {end:?}"
            );
        }
    }
}

fn findings(pair: &Document) -> Vec<Finding> {
    let (model, fit) = fitted(pair);
    fit::findings(pair, &model, &fit)
}

#[track_caller]
fn sees(pair: &Document, severity: Severity, word: &str) {
    let found = findings(pair);
    let is = |f: &Finding| f.severity == severity && f.message.contains(word);
    assert!(found.iter().any(is), "{word}: {found:#?}");
}

#[test]
fn a_sound_pair_has_nothing_worse_than_a_note() {
    for (name, pair) in [("flat", pairs::flat()), ("V", pairs::v_bit())] {
        let found = findings(&pair);
        let bad = |f: &Finding| f.severity > Severity::Note;
        assert!(!found.iter().any(bad), "{name}: {found:#?}");
    }
}

#[test]
fn what_is_wrong_is_told() {
    let mut wide = pairs::flat();
    wide.rein.gap = mm(90.0);
    sees(&wide, Severity::Mend, "over all at the hand");
    let mut narrow = pairs::flat();
    narrow.rein.gap = mm(15.0);
    sees(&narrow, Severity::Note, "over all at the hand");
    let mut heavy = starting("flat", "1 in flat", "1 1/4 in square");
    heavy.rein.end = heavy.rein.start;
    sees(&heavy, Severity::Mend, "5.07 lb for one hand");
    // A hollow bit without a gap leaves no room for its necks past the bosses.
    let mut tight = starting("hollow bit", "1/8 in round", "3/4 in round");
    (tight.neck.depth, tight.boss.across) = (mm(11.1), mm(INCH));
    if let JawStyle::HollowBit(bit) = &mut tight.jaw.style {
        (bit.radius, bit.groove) = (mm(INCH / 16.0), mm(INCH / 16.0));
        bit.wall = mm(INCH * 3.0 / 16.0);
    }
    sees(&tight, Severity::Stop, "overlap");
    sees(&tight, Severity::Stop, "cannot hold its own");
}

#[test]
fn a_pair_that_cannot_be_opened_or_put_together_is_stopped() {
    // A boss drawn out across the tongs with the rein starting inside the other boss's reach.
    let mut stuck = pairs::flat();
    stuck.boss.shape = BossShape::Oval;
    (stuck.boss.along, stuck.boss.across) = (mm(30.0), mm(60.0));
    stuck.shoulder.length = mm(2.0);
    sees(&stuck, Severity::Stop, "no work goes in");
    // Halves whose bosses lie in one layer fill each other's place at every angle.
    let pair = pairs::flat();
    let mut model = resolve(&pair);
    for half in [&mut model.a, &mut model.b] {
        half.body.plate.faces.neck.boss = 1.0;
        half.body.plate.faces.shoulder.boss = -1.0;
    }
    let fit = fit::fit(&pair, &model);
    assert_eq!(fit.travel, None);
    assert_eq!(fit.nominal, Err(NoContact::NoTravel));
    let found = fit::findings(&pair, &model, &fit);
    let stopped =
        |f: &Finding| f.severity == Severity::Stop && f.message.contains("cannot be put together");
    assert!(found.iter().any(stopped), "{found:#?}");
    for i in 0..18 {
        let area = shared(&model, f64::from(i) * std::f64::consts::PI / 36.0);
        assert!(area > 1.0, "free at {} degrees: {area} mm2", 5 * i);
    }
}
