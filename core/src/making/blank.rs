//! Steel on its way: sections one behind the other along a straight line, each stretch as long as its
//! volume makes it.

use std::sync::Arc;

use kurbo::Point;

use crate::number::quadrature::{integrate, integrate_steep};
use crate::shape::Mass;
use crate::shape::section::{Profile, Section, lerp};
use crate::shape::sweep::{Ease, Path, Station, Sweep};

/// Places of the profiles that every blank has; those of the finished rein follow.
pub(super) const BOX: usize = 0;
pub(super) const OCTAGON: usize = 1;
pub(super) const ROUND: usize = 2;
pub(super) const OWN: usize = 3;

/// A section where it stands, mm: depth along y, width along the rivet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Sect {
    pub(super) depth: f64,
    pub(super) width: f64,
    /// Its middle.
    pub(super) y: f64,
    pub(super) z: f64,
    pub(super) profile: usize,
}

/// A stretch between two sections. How long it is follows from its volume.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Segment {
    /// The zone of the half that it belongs to.
    pub(super) zone: usize,
    pub(super) volume: f64,
    pub(super) from: Sect,
    pub(super) to: Sect,
    pub(super) ease: Ease,
}

impl Sect {
    pub(super) fn area(&self, profiles: &[Profile]) -> f64 {
        self.depth * self.width * profiles[self.profile].fullness()
    }

    /// So many times as large both ways, about its own middle.
    pub(super) fn grown(self, times: f64) -> Self {
        Self {
            depth: self.depth * times,
            width: self.width * times,
            ..self
        }
    }

    fn is(&self, other: &Self) -> bool {
        const SAME: f64 = 1e-9;
        let near = |a: f64, b: f64| (a - b).abs() < SAME;
        self.profile == other.profile
            && near(self.depth, other.depth)
            && near(self.width, other.width)
            && near(self.y, other.y)
            && near(self.z, other.z)
    }
}

impl Segment {
    /// One section all along.
    pub(super) fn prism(zone: usize, volume: f64, sect: Sect) -> Self {
        Self {
            zone,
            volume,
            from: sect,
            to: sect,
            ease: Ease::Linear,
        }
    }

    /// Its area on the average, mm².
    fn mean_area(&self, profiles: &[Profile]) -> f64 {
        let (a, b) = (&self.from, &self.to);
        let area = |t: f64| {
            let blend = self.ease.of(t);
            let section = Section {
                depth: lerp(a.depth, b.depth, blend),
                width: lerp(a.width, b.width, blend),
                from: &profiles[a.profile],
                to: &profiles[b.profile],
                blend,
            };
            section.area_mm2()
        };
        match self.ease {
            // Grooves alone go in arcs, and no groove is laid out as a stretch of bar.
            Ease::Linear | Ease::Smooth | Ease::ArcUp | Ease::ArcDown => integrate(0.0, 1.0, area),
            Ease::RoundUp | Ease::RoundDown => integrate_steep(0.0, 1.0, area),
        }
    }

    pub(super) fn length(&self, profiles: &[Profile]) -> f64 {
        self.volume / self.mean_area(profiles)
    }

    /// The same steel told from its other end, turned end for end about the rivet's direction.
    pub(super) fn turned(&self) -> Self {
        let over = |sect: Sect| Sect { y: -sect.y, ..sect };
        Self {
            from: over(self.to),
            to: over(self.from),
            ease: match self.ease {
                Ease::Linear | Ease::Smooth => self.ease,
                Ease::RoundUp => Ease::RoundDown,
                Ease::RoundDown => Ease::RoundUp,
                Ease::ArcUp => Ease::ArcDown,
                Ease::ArcDown => Ease::ArcUp,
            },
            ..*self
        }
    }
}

/// Puts a shoulder of a radius between stretches that do not meet in one section. Its steel comes
/// out of the thicker neighbour.
pub(super) fn shouldered(segments: &[Segment], radius: f64, profiles: &[Profile]) -> Vec<Segment> {
    /// The most of a stretch that goes into the shoulder at its end.
    const MOST: f64 = 0.4;
    let mut all: Vec<Segment> = segments.to_vec();
    let mut linked = Vec::with_capacity(2 * all.len());
    for i in 0..all.len() {
        linked.push(all[i]);
        let at = linked.len() - 1;
        let Some(next) = all.get(i + 1).copied() else {
            break;
        };
        if all[i].to.is(&next.from) {
            continue;
        }
        let grows = next.from.area(profiles) > all[i].to.area(profiles);
        let mut step = Segment {
            zone: if grows { next.zone } else { all[i].zone },
            volume: 0.0,
            from: all[i].to,
            to: next.from,
            ease: if grows {
                Ease::RoundDown
            } else {
                Ease::RoundUp
            },
        };
        let giver = if grows {
            next.volume
        } else {
            linked[at].volume
        };
        step.volume = (radius * step.mean_area(profiles)).min(MOST * giver);
        if grows {
            all[i + 1].volume -= step.volume;
        } else {
            linked[at].volume -= step.volume;
        }
        linked.push(step);
    }
    linked
}

/// Where a line of segments begins, and how its sections stand about it.
pub(super) struct Stand<'a> {
    pub(super) start: Point,
    /// Radians from +x.
    pub(super) heading: f64,
    /// Middle of a section to the left of the line, and along the rivet, mm.
    pub(super) offset: &'a dyn Fn(&Sect) -> (f64, f64),
}

/// A run of a laid line that belongs to one zone.
pub(super) struct Laid {
    pub(super) zone: usize,
    pub(super) from: f64,
    pub(super) to: f64,
    pub(super) mass: Mass,
}

/// Lays segments along a straight line.
pub(super) fn lay(
    segments: &[Segment],
    stand: &Stand<'_>,
    profiles: &[Profile],
) -> (Arc<Sweep>, Vec<Laid>) {
    let mut stations = Vec::with_capacity(segments.len() + 1);
    let mut runs: Vec<(usize, f64, f64, f64)> = Vec::new();
    let mut at = 0.0;
    for segment in segments {
        stations.push(station(at, &segment.from, segment.ease, stand));
        let from = at;
        at += segment.length(profiles);
        match runs.last_mut() {
            Some((zone, _, to, volume)) if *zone == segment.zone => {
                *to = at;
                *volume += segment.volume;
            }
            Some(_) | None => runs.push((segment.zone, from, at, segment.volume)),
        }
    }
    if let Some(last) = segments.last() {
        stations.push(station(at, &last.to, Ease::Linear, stand));
    }
    let sweep = Arc::new(Sweep {
        path: Path::straight(stand.start, stand.heading, at),
        stations,
        profiles: profiles.to_vec(),
    });
    let laid = runs.into_iter().map(|(zone, from, to, volume)| Laid {
        zone,
        from,
        to,
        mass: mass(&sweep, (from, to), volume),
    });
    let laid = laid.collect();
    (sweep, laid)
}

fn station(at: f64, sect: &Sect, ease: Ease, stand: &Stand<'_>) -> Station {
    let (rise, shift) = (stand.offset)(sect);
    Station {
        at,
        depth: sect.depth,
        width: sect.width,
        rise,
        shift,
        profile: sect.profile,
        ease,
    }
}

/// Volume and moments of a straight run.
fn mass(sweep: &Sweep, range: (f64, f64), volume: f64) -> Mass {
    let middle = |s: f64, section: &Section<'_>, pose: &crate::shape::sweep::Pose| {
        pose.offset(sweep.rise(s) + section.centroid_mm())
    };
    Mass {
        volume,
        x: sweep.integrate(range, |s, section, pose| {
            section.area_mm2() * middle(s, section, pose).x
        }),
        y: sweep.integrate(range, |s, section, pose| {
            section.area_mm2() * middle(s, section, pose).y
        }),
    }
}
