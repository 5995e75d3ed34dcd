//! Places by hand, where the search would find one that says less to a smith.

use std::f64::consts::{FRAC_PI_2, PI};

use super::spot::{Along, Limb, Spot};
use crate::sweep::Edge;

/// Where the value under a path is best held, if there is such a place.
pub(super) fn spot(path: &str) -> Option<Spot> {
    let spot = match path {
        "jaw.heel" => Spot::Edge(Limb::Jaw, Edge::Inner, Along::Part(0.0)),
        "jaw.length" => Spot::Middle(Limb::Jaw, Along::Part(1.0)),
        "second_jaw.heel" => Spot::Edge(Limb::SecondJaw, Edge::Inner, Along::Part(0.0)),
        "second_jaw.length" => Spot::Middle(Limb::SecondJaw, Along::Part(1.0)),
        // Beside neck and shoulder the rim is free.
        "boss.across" => Spot::Rim(0.65 * PI),
        "boss.along" => Spot::Rim(-0.12 * PI),
        "boss.thickness" => Spot::Plate(0.75),
        "shoulder.length" => Spot::Middle(Limb::Rein, Along::Part(0.0)),
        "rein.length" => Spot::Middle(Limb::Rein, Along::End),
        "rein.gap" => Spot::Edge(Limb::Rein, Edge::Inner, Along::Hand),
        "rein.hand" => Spot::Middle(Limb::Rein, Along::Hand),
        "rein.parallel" => Spot::Middle(Limb::Rein, Along::First(1)),
        "rein.hand_zone.length" => Spot::Middle(Limb::Rein, Along::Last(2)),
        "rivet.hole" => Spot::Hole(PI + 0.4),
        "rivet.diameter" => Spot::Shank(FRAC_PI_2),
        _ => return None,
    };
    Some(spot)
}
