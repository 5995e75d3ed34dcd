//! Handles set apart, so that on a small drawing no mark covers another.

use std::f32::consts::TAU;

use egui::{Pos2, Vec2};

/// Directions that are looked in, and how far one ring of places is from the next, in parts of
/// the distance that is kept.
const WAYS: u8 = 16;
const RING: f32 = 0.5;
/// Rings that are looked at before a mark stays where it is.
const RINGS: u8 = 24;

/// The places of marks moved apart as little as may be, so that no two are nearer than `apart`
/// points. The first ones keep their places.
pub(super) fn spread(places: &[Pos2], apart: f32) -> Vec<Pos2> {
    let mut set: Vec<Pos2> = Vec::with_capacity(places.len());
    for &place in places {
        let free = |at: &Pos2| set.iter().all(|other| other.distance(*at) >= apart);
        let found = std::iter::once(place).chain(rings(place, apart)).find(free);
        set.push(found.unwrap_or(place));
    }
    set
}

/// Places about a place, the nearest first.
fn rings(place: Pos2, apart: f32) -> impl Iterator<Item = Pos2> {
    (1..=RINGS).flat_map(move |ring| {
        (0..WAYS).map(move |way| {
            let angle = TAU * f32::from(way) / f32::from(WAYS);
            place + Vec2::angled(angle) * (f32::from(ring) * RING * apart)
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Places thrown by a plain rule (a linear congruence), from a heap to a scatter.
    fn thrown(count: u32, within: f32) -> Vec<Pos2> {
        let mut dice = 12345u32;
        let mut throw = move || {
            dice = dice.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            f32::from(u16::try_from(dice >> 16).expect("sixteen bits")) / 65535.0
        };
        (0..count)
            .map(|_| Pos2::new(within * throw(), within * throw()))
            .collect()
    }

    #[test]
    fn no_two_cover_each_other() {
        for (count, within) in [(2, 0.0), (40, 30.0), (40, 120.0), (60, 300.0)] {
            let set = spread(&thrown(count, within), 14.0);
            for (i, a) in set.iter().enumerate() {
                for b in &set[i + 1..] {
                    assert!(a.distance(*b) >= 14.0, "{count} in {within}: {a:?} {b:?}");
                }
            }
        }
    }

    #[test]
    fn what_has_room_stays() {
        let places = [Pos2::new(0.0, 0.0), Pos2::new(20.0, 0.0)];
        assert_eq!(spread(&places, 14.0), places);
    }
}
