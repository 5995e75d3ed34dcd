//! The outline of the middle of a half is one fair line: no corner where neck or shoulder leaves
//! the boss, and outside no arc so tight that it reads as one.

use reinwright_core::shape::Curve;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::JawKind;
use reinwright_core::tongs::model::Half;
use reinwright_core::tongs::resolve;
use reinwright_tests::designs::sample;
use reinwright_tests::pairs::starting;

/// The sharpest corner between one piece of an outline and the next, degrees.
fn sharpest(curves: &[Curve]) -> f64 {
    let turn = |pair: &[Curve]| {
        let (a, b) = (pair[0].slope(1.0), pair[1].slope(0.0));
        a.cross(b).atan2(a.dot(b)).to_degrees().abs()
    };
    curves.windows(2).map(turn).fold(0.0, f64::max)
}

#[track_caller]
fn check(name: &str, design: &Document) {
    let model = resolve(design);
    for half in [&model.a, &model.b] {
        for edge in half.body.edges() {
            let corner = sharpest(&edge);
            assert!(corner < 0.5, "{name}: a corner of {corner:.1} degrees");
        }
    }
}

#[test]
fn boss_neck_and_shoulder_make_one_line() {
    for &style in JawKind::ALL {
        for (size, bar) in [
            ("6 mm", "12 mm square"),
            ("16 mm", "20 mm square"),
            ("50 mm", "25 mm square"),
        ] {
            for shape in ["round", "flat", "square"] {
                let work = format!("{size} {shape}");
                check(
                    &format!("{style} on {work}"),
                    &starting(style.name(), &work, bar),
                );
            }
        }
    }
}

/// The radius of the arc in which the outside of the neck leaves the boss.
#[track_caller]
fn outer_radius(half: &Half) -> f64 {
    let edge = half.body.neck.outer_edge();
    let Some(Curve::Arc { radius, .. }) = edge.last() else {
        panic!("no arc between neck and boss: {edge:?}");
    };
    *radius
}

/// Over the rivet, where a small arc looked like a corner, it is larger than the boss itself.
#[test]
fn necks_that_rise_over_the_rivet_leave_the_boss_in_a_wide_arc() {
    for name in ["open-flat", "light-flat", "v-over-flat"] {
        let model = resolve(&sample(name));
        let (radius, boss) = (outer_radius(&model.a), model.a.body.rim.nearest());
        assert!(
            radius > 1.2 * boss,
            "{name}: {radius:.1} on a boss of {boss:.1}"
        );
    }
}
