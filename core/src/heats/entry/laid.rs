//! A piece that is laid in from the side, between the sides of an open coil.

use super::slides::Spread;
use super::{AtOnce, Entry, HAIR, Need, Room, WayIn, WhyNot};
use crate::finding::Part;
use crate::heats::stand::{End, Slice, Stand};

/// Lays what must be hot between the sides of an open coil. Each stretch as long as the coil must be thinner
/// than they are apart, as it stands or a quarter turn round.
pub(super) fn laid(
    stand: &Stand,
    (room, need): (&Room, Need),
    (high_mm, long_mm): (f64, f64),
) -> Result<Entry, WhyNot> {
    let (from, to) = need.from_to_mm;
    let half = long_mm / 2.0;
    let middles = match need.at_once {
        AtOnce::Whole => vec![f64::midpoint(from, to)],
        AtOnce::InTurns => {
            let inside = |slice: &&Slice| (from + half..=to - half).contains(&slice.at_mm);
            let own = stand.slices.iter().filter(inside).map(|own| own.at_mm);
            own.chain([f64::midpoint(from, to)]).collect()
        }
    };
    let mut thickest = 0.0_f64;
    for middle in middles {
        let about = (middle - half, middle + half);
        let thick = thick_mm(stand, about);
        if thick > high_mm + HAIR {
            let inside = |slice: &&Slice| (about.0..=about.1).contains(&slice.at_mm);
            let own = stand.slices.iter().filter(inside);
            let worst = own.max_by(|a, b| a.circle_mm.total_cmp(&b.circle_mm));
            let worst = worst.or_else(|| stand.near(middle));
            return Err(WhyNot::TooThick {
                part: worst.map_or(Part::Bar, |slice| slice.part),
                at_mm: worst.map_or(middle, |slice| slice.at_mm),
                thick_mm: thick,
                clear_mm: high_mm,
            });
        }
        thickest = thickest.max(thick);
    }
    let middle = match need.at_once {
        AtOnce::Whole => f64::midpoint(from, to),
        AtOnce::InTurns => from + room.hot_mm / 2.0,
    };
    let reach = room.hot_mm / 2.0;
    let end = if middle < stand.length_mm / 2.0 {
        End::Tip
    } else {
        End::Rein
    };
    Ok(Entry {
        end,
        way: WayIn::Laid,
        tilt: None,
        circle_mm: thickest,
        slides_mm: stand.length_mm,
        heated_mm: (
            (middle - reach).max(0.0),
            (middle + reach).min(stand.length_mm),
        ),
    })
}

/// How thick all is that lies between two places, mm: as it stands or a quarter turn round.
fn thick_mm(stand: &Stand, (from, to): (f64, f64)) -> f64 {
    let mut spread = Spread::NOTHING;
    let inside = |slice: &&Slice| (from..=to).contains(&slice.at_mm);
    for slice in stand.slices.iter().filter(inside) {
        spread.add(&slice.points);
    }
    let (y, z) = spread.size();
    y.min(z).max(0.0)
}
