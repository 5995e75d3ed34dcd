//! Places by hand, where the search would find one that says less to a smith.

use std::f64::consts::{FRAC_PI_2, PI};

use super::limb::Limb;
use super::spot::{Along, Face, Spot};
use crate::shape::sweep::Edge;
use crate::tongs::document::Document;
use crate::tongs::jaw::{Jaw, JawStyle, Notch, NotchKind};

/// Where the value under a path is best held, if there is such a place.
pub(super) fn spot(document: &Document, path: &str) -> Option<Spot> {
    let of_jaw =
        |limb, jaw: Option<&Jaw>, path: &str| jaw.and_then(|jaw| in_jaw(limb, &jaw.style, path));
    if let Some(path) = path.strip_prefix("jaw.") {
        return of_jaw(Limb::Jaw, Some(&document.jaw), path);
    }
    if let Some(path) = path.strip_prefix("second_jaw.") {
        return of_jaw(Limb::SecondJaw, document.second_jaw.as_ref(), path);
    }
    let spot = match path {
        // Its ends slide along boss and jaw.
        "neck.depth" => Spot::Body(Face::NeckOuter, 0.65),
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

fn in_jaw(limb: Limb, style: &JawStyle, path: &str) -> Option<Spot> {
    let at = |edge, part| Spot::Edge(limb, edge, Along::Part(part));
    let spot = match path {
        "heel" => at(Edge::Inner, 0.0),
        "length" => Spot::Middle(limb, Along::Part(1.0)),
        // Behind the bit a bow comes and goes with it, and seems to move more.
        "bit.leg" => at(Edge::Far, 0.93),
        // The face stays on the work; the middle is where the marks of a node stand.
        "fits" => at(Edge::Outer, 0.85),
        "first.size" | "second.size" | "third.size" => {
            Spot::Edge(limb, Edge::Inner, bottom_of_notch(style, path)?)
        }
        _ => return None,
    };
    Some(spot)
}

/// The bottom of a notch: each one pushes those behind it along, and would be held there else.
fn bottom_of_notch(style: &JawStyle, path: &str) -> Option<Along> {
    let JawStyle::Notched(jaw) = style else {
        return None;
    };
    let before: &[Notch] = match path {
        "first.size" => &[],
        "second.size" => &[jaw.first],
        _ => &[jaw.first, jaw.second],
    };
    // A V has a station at each lip and one in its bottom, a flat notch one at each end of it.
    let stations = |notch: &Notch| match notch.kind {
        NotchKind::V => 3,
        NotchKind::Flat => 4,
    };
    // The heel's comes first, then the lip's.
    Some(Along::Station(
        2 + before.iter().map(stations).sum::<usize>(),
    ))
}
