//! Tips that are broken: no corner gets a notch by it.

use reinwright_core::tongs::resolve;
use reinwright_tests::pairs::starting;

/// Seen from above the tip of a duckbill bulges all round: its width falls faster and faster.
#[test]
fn the_corner_of_a_duckbill_has_no_notch() {
    for (work, bar) in [
        ("3/8 in flat", "3/4 in square"),
        ("6 mm flat", "16 mm square"),
    ] {
        let design = starting("duckbill", work, bar);
        let jaw = resolve(&design).a.jaw;
        let from = jaw.stations[jaw.stations.len() - 4].at;
        let step = (jaw.length() - from) / 200.0;
        let width = |i: u32| jaw.section(from + step * f64::from(i)).width;
        let fall = |i: u32| width(i) - width(i + 1);
        let slower = (1..199).find(|&i| fall(i) < fall(i - 1) - 1e-6);
        assert_eq!(slower, None, "{}: it narrows less again", design.name);
        assert!(fall(198) > 0.0, "{}: the tip narrows", design.name);
    }
}
