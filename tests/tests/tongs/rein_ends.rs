//! The ends of reins: what is bent out for a clip, and what is rolled.

use std::f64::consts::{FRAC_PI_4, PI};

use reinwright_core::asked::PlainSection;
use reinwright_core::draw::{DrawOptions, Sizes, pair};
use reinwright_core::finding::{self, Severity};
use reinwright_core::paper::Item;
use reinwright_core::shop::{Answers, balance_of};
use reinwright_core::tongs::document::{self, Document, ReinEnd, ReinLine};
use reinwright_core::tongs::resolve;
use reinwright_core::units::Angle;
use reinwright_tests::pairs::{self, mm};
use reinwright_tests::{close, within};

/// Across the round end of every rein here, mm.
const END: f64 = 10.0;

/// A pair on round rein ends.
fn with(finish: ReinEnd) -> Document {
    let mut pair = pairs::flat();
    pair.rein.end = PlainSection::Round { diameter: mm(END) };
    pair.rein.finish = finish;
    pair
}

fn clip(degrees: f64, length: f64) -> ReinEnd {
    ReinEnd::ClipBend {
        angle: Angle::degrees(degrees),
        length: mm(length),
    }
}

fn curl(radius: f64) -> ReinEnd {
    ReinEnd::Curl { radius: mm(radius) }
}

/// Steel that an end adds to a rein that is cut square, mm³.
fn added(finish: ReinEnd) -> f64 {
    let volume = |finish| resolve(&with(finish)).a.rein.volume_mm3();
    volume(finish) - volume(ReinEnd::Square)
}

/// Volume by arc length: area of the round times the way of its middle (Pappus–Guldinus). The
/// clip's bend has a middle radius of 1.1 depths, the curl is rolled three quarters round.
#[test]
fn ends_add_their_area_times_the_way_of_their_middle() {
    let area = FRAC_PI_4 * END * END;
    for (degrees, length) in [(20.0, 10.0), (40.0, 22.0), (90.0, 30.0), (120.0, 5.0)] {
        let way = 1.1 * END * f64::to_radians(degrees) + length;
        close("clip bend", added(clip(degrees, length)), area * way, 1e-6);
    }
    for radius in [6.0, 9.0, 30.0] {
        let way = 1.5 * PI * (radius + END / 2.0);
        close("curl", added(curl(radius)), area * way, 1e-6);
    }
}

/// What is added to the rein is asked from the bar.
#[test]
fn ends_are_cut_from_the_bar() {
    let bar = |finish| {
        let design = with(finish);
        balance_of(&design, &resolve(&design)).bar_length_mm
    };
    let design = with(ReinEnd::Square);
    let area = balance_of(&design, &resolve(&design)).bar_area_mm2;
    let plain = bar(ReinEnd::Square);
    for end in [clip(40.0, 22.0), curl(9.0)] {
        let least = 2.0 * added(end) / area;
        let more = bar(end) - plain;
        assert!(
            (least..1.2 * least).contains(&more),
            "{end:?} asks {more} mm more of bar, its steel is {least} mm of it"
        );
    }
}

/// The hand and its gap stay as they were asked on every line of rein.
#[test]
fn a_bent_end_leaves_the_hand_alone() {
    for line in [
        ReinLine::Straight,
        ReinLine::Parallel { bend: mm(70.0) },
        ReinLine::Bowed { bow: mm(8.0) },
    ] {
        let hand = |finish| {
            let mut design = with(finish);
            design.rein.line = line;
            let model = resolve(&design);
            (model.hand_gap, model.a.hand(), design.rein.gap.mm())
        };
        let (plain_gap, plain, asked) = hand(ReinEnd::Square);
        within("the gap of a plain end", plain_gap, asked, 0.01);
        for end in [clip(60.0, 20.0), curl(9.0)] {
            let (gap, at, _) = hand(end);
            within("hand gap", gap, plain_gap, 1e-9);
            within("hand", at.distance(plain), 0.0, 1e-9);
        }
    }
}

/// Both bend outwards, away from the other rein, and reach past the straight end.
#[test]
fn ends_are_bent_outwards() {
    for end in [clip(40.0, 22.0), curl(9.0)] {
        let model = resolve(&with(end));
        let half = &model.a;
        let rein = &half.rein;
        let (from, to) = (half.bent_from(), rein.length());
        let straight = resolve(&with(ReinEnd::Square)).a.rein.length();
        within(
            "the bend begins at the end of the rein",
            from,
            straight,
            1e-9,
        );
        let line = rein.middle(from);
        for i in 1..=20u8 {
            let p = rein.middle(from + (to - from) * f64::from(i) / 20.0);
            assert!(p.y < line.y, "{end:?} at {p:?} is not outside of {line:?}");
        }
        assert!(half.rein_end() < line.x - 4.0, "{end:?}");
    }
}

/// The farthest of a curl is its middle radius and half the steel past the end of the rein.
#[test]
fn a_curl_reaches_as_far_as_its_ring() {
    let mut design = with(curl(9.0));
    design.rein.line = ReinLine::Parallel { bend: mm(70.0) };
    let half = resolve(&design).a;
    let end = half.rein.middle(half.bent_from());
    within("reach", end.x - half.rein_end(), 9.0 + END, 0.05);
}

/// Side and top view show it: both reach as far as the steel does.
#[test]
fn ends_are_drawn_in_both_views() {
    for end in [clip(80.0, 22.0), curl(9.0)] {
        let design = with(end);
        let model = resolve(&design);
        let options = DrawOptions {
            sizes: Sizes::None,
            ..DrawOptions::default()
        };
        let drawing = pair(&design, &model, &options);
        for view in ["Side view", "Top view"] {
            let group = drawing.items.iter().find_map(|item| match item {
                Item::Group(group) if group.name == view => Some(group),
                Item::Group(_) | Item::Path(_) | Item::Text(_) => None,
            });
            let steel = group.expect("the view is drawn").items.iter().filter(
                |item| matches!(item, Item::Path(path) if path.part == Some(finding::Part::Rein)),
            );
            let reach = steel.filter_map(Item::bounds).map(|area| area.x0);
            let reach = reach.fold(f64::MAX, f64::min);
            within(view, reach, model.a.rein_end(), 0.1);
        }
    }
}

#[test]
fn ends_are_kept_in_the_file() {
    for end in [clip(40.0, 22.0), curl(9.0)] {
        let design = with(end);
        let text = document::write(&design);
        assert_eq!(document::read(text.as_bytes()).expect("reads"), design);
    }
    let text = document::write(&with(curl(9.0))).replace("9 mm", "0.1 mm");
    let error = document::read(text.as_bytes()).expect_err("too tight");
    assert!(error.to_string().contains("rein.curl is 0.1 mm"), "{error}");
}

/// A curl tighter than half the steel is deep would split (common practice, no source).
#[test]
fn a_tight_curl_is_found() {
    let found = |radius: f64| {
        let findings = Answers::to(&with(curl(radius))).findings;
        findings.into_iter().any(|f| {
            f.severity != Severity::Note && f.message.contains("bends to an inside radius")
        })
    };
    assert!(found(4.0));
    assert!(!found(6.0));
}
