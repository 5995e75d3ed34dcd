//! The rein's line, solved so that it passes the hand with the asked gap.
//!
//! Worked in the frame turned half round: +x from the rivet toward the hand, +y to the outside.

use kurbo::{Point, Vec2};

use crate::body::{LimbEnd, LimbSpec, Rim};
use crate::document::{Document, Rein, ReinEnd, ReinLine};
use crate::section::plain_profile;
use crate::sweep::{Ease, Path, Run, Station, Sweep};

/// A rein with the shoulder that must lead into it.
pub(super) struct BuiltRein {
    pub(super) sweep: Sweep,
    pub(super) shoulder: LimbSpec,
    pub(super) hand_at: f64,
}

/// The steepest that a bowed rein may leave the shoulder, radians.
const STEEPEST: f64 = 1.1;

pub(super) fn build(document: &Document, rim: &Rim) -> BuiltRein {
    let rein = &document.rein;
    let (stations, profiles) = stations(rein);
    let depth = rein.start.depth_mm();
    let shoulder_depth = document.shoulder.depth.mm();
    // The shoulder leaves the lower half of the boss; how low decides how early the reins part.
    let across = rim.half_across();
    let inner = (across - 0.8 * shoulder_depth).clamp(0.14 * across, 0.5 * across);
    let start = Point::new(
        rim.half_along() + document.shoulder.length.mm(),
        inner + depth / 2.0,
    );
    let length = rein.length.mm();
    let hand_at = (length - rein.hand.mm()).max(0.3 * length);
    let depth_at_hand = depth_at(&stations, hand_at);
    let goal = rein.gap.mm() / 2.0 + depth_at_hand / 2.0;
    let line = line(rein, start.y, goal, hand_at, length);
    let along = Vec2::from_angle(line.heading);
    let half = along.turn_90() * (depth / 2.0);
    let slope = line.heading.tan();
    let shoulder = LimbSpec {
        depth: shoulder_depth,
        fillet: document.shoulder.fillet.mm(),
        end: LimbEnd {
            inner: start - half,
            outer: start + half,
            inner_slope: slope,
            outer_slope: slope,
        },
    };
    let path = Path::new(
        Point::new(-start.x, -start.y),
        std::f64::consts::PI + line.heading,
        line.runs,
    );
    BuiltRein {
        sweep: Sweep {
            path,
            stations,
            profiles,
        },
        shoulder,
        hand_at,
    }
}

struct LineOfRein {
    heading: f64,
    runs: Vec<Run>,
}

fn line(rein: &Rein, from: f64, to: f64, hand_at: f64, length: f64) -> LineOfRein {
    let straight = |length: f64| Run {
        length,
        curvature: 0.0,
    };
    match rein.line {
        ReinLine::Straight => {
            let heading = ((to - from) / hand_at).clamp(-0.9, 0.9).asin();
            LineOfRein {
                heading,
                runs: vec![straight(length)],
            }
        }
        ReinLine::Parallel { bend } => {
            let bend = bend.mm().min(0.9 * hand_at);
            let half_turn = 2.0 * ((to - from).abs() / bend).atan();
            if half_turn < 1e-6 {
                return LineOfRein {
                    heading: 0.0,
                    runs: vec![straight(length)],
                };
            }
            let radius = bend / (2.0 * half_turn.sin());
            let curvature = (to - from).signum() / radius;
            // Never longer than the way to the hand.
            let arc = (radius * half_turn).min(0.45 * hand_at);
            let rest = straight(length - 2.0 * arc);
            let runs = vec![
                Run {
                    length: arc,
                    curvature,
                },
                Run {
                    length: arc,
                    curvature: -curvature,
                },
                rest,
            ];
            LineOfRein { heading: 0.0, runs }
        }
        ReinLine::Bowed { bow } => {
            // The last stretch before the hand, and all behind it, is straight.
            let swell = (hand_at - 50.0).max(0.7 * hand_at);
            let (first, second) = (0.7 * swell, 0.3 * swell);
            let bowed = Bowed {
                first,
                second,
                rise: to - from,
            };
            let (leave, arrive) = bowed.solve(bow.mm());
            let runs = vec![
                Run {
                    length: first,
                    curvature: (arrive - leave) / first,
                },
                Run {
                    length: second,
                    curvature: -arrive / second,
                },
                straight(length - swell),
            ];
            LineOfRein {
                heading: leave,
                runs,
            }
        }
    }
}

/// Two arcs: the first turns from the leaving to the arriving direction, the second back to
/// parallel.
struct Bowed {
    first: f64,
    second: f64,
    rise: f64,
}

impl Bowed {
    /// How far an arc rises whose heading goes from `a` to `b` over `length`.
    fn rise_of(length: f64, a: f64, b: f64) -> f64 {
        if (b - a).abs() < 1e-9 {
            length * a.sin()
        } else {
            length * (a.cos() - b.cos()) / (b - a)
        }
    }

    /// The heading at the end of the first arc that brings the whole to the asked rise.
    fn arrive(&self, leave: f64) -> f64 {
        let rise = |arrive: f64| {
            Self::rise_of(self.first, leave, arrive) + Self::rise_of(self.second, arrive, 0.0)
        };
        bisect((-STEEPEST, STEEPEST), |arrive| rise(arrive) - self.rise)
    }

    /// How far the swell stands above the end.
    fn bow(&self, leave: f64) -> f64 {
        let arrive = self.arrive(leave);
        if arrive >= 0.0 || leave <= 0.0 {
            return 0.0;
        }
        let to_top = self.first * leave / (leave - arrive);
        Self::rise_of(to_top, leave, 0.0) - self.rise
    }

    /// Leaving and arriving headings for a bow, as near as can be made.
    fn solve(&self, bow: f64) -> (f64, f64) {
        let leave = bisect((-0.2, STEEPEST), |leave| self.bow(leave) - bow);
        (leave, self.arrive(leave))
    }
}

/// The zero of a rising function, or the end of the range that is nearer to it.
fn bisect((mut low, mut high): (f64, f64), f: impl Fn(f64) -> f64) -> f64 {
    for _ in 0..50 {
        let middle = f64::midpoint(low, high);
        if f(middle) < 0.0 {
            low = middle
        } else {
            high = middle
        }
    }
    f64::midpoint(low, high)
}

fn depth_at(stations: &[Station], s: f64) -> f64 {
    let next = stations
        .partition_point(|station| station.at <= s)
        .clamp(1, stations.len() - 1);
    let (a, b) = (&stations[next - 1], &stations[next]);
    let t = if b.at > a.at {
        ((s - a.at) / (b.at - a.at)).clamp(0.0, 1.0)
    } else {
        0.0
    };
    // The hand lies in a parallel or tapering stretch, never in a rounded end.
    crate::section::lerp(a.depth, b.depth, t)
}

fn stations(rein: &Rein) -> (Vec<Station>, Vec<crate::section::Profile>) {
    let length = rein.length.mm();
    let (start, end) = (&rein.start, &rein.end);
    let mut profiles = vec![plain_profile(start), plain_profile(end)];
    let station =
        |at: f64, section: &crate::document::PlainSection, profile: usize, ease: Ease| Station {
            at,
            depth: section.depth_mm(),
            width: section.width_mm(),
            rise: 0.0,
            profile,
            ease,
        };
    let mut list = vec![station(0.0, start, 0, Ease::Linear)];
    let mut taper_end = (length - rein.parallel.mm()).clamp(0.1 * length, length);
    let finish = finish_length(rein);
    let last = length - finish;
    if let Some(zone) = &rein.hand_zone {
        profiles.push(plain_profile(&zone.section));
        let half = zone.length.mm() / 2.0;
        let middle = length - rein.hand.mm();
        let ease = (0.3 * zone.length.mm()).min(25.0);
        let from = (middle - half).clamp(0.3 * length, last - 2.0);
        let to = (middle + half).clamp(from + 1.0, last - 1.0);
        taper_end = taper_end.min(from - ease).max(0.1 * length);
        list.push(station(taper_end, end, 1, Ease::Linear));
        if from - ease > taper_end + 1e-6 {
            list.push(station(from - ease, end, 1, Ease::Linear));
        }
        if let Some(before) = list.last_mut() {
            before.ease = Ease::Smooth;
        }
        list.push(station(from, &zone.section, 2, Ease::Linear));
        list.push(station(to, &zone.section, 2, Ease::Smooth));
        let back = (to + ease).min(last - 0.5);
        list.push(station(back, end, 1, Ease::Linear));
    } else if taper_end < last - 1e-6 {
        list.push(station(taper_end, end, 1, Ease::Linear));
    }
    add_finish(rein, length, &mut list);
    (list, profiles)
}

/// How much of the end its finish takes, mm.
fn finish_length(rein: &Rein) -> f64 {
    let half = rein.end.depth_mm().min(rein.end.width_mm()) / 2.0;
    match rein.finish {
        ReinEnd::Square => 0.0,
        ReinEnd::Rounded => half,
        ReinEnd::Ball { diameter } => diameter.mm().max(2.2 * half),
    }
}

/// The stations of the end: square, a quarter-round all round, or a ball.
fn add_finish(rein: &Rein, length: f64, list: &mut Vec<Station>) {
    /// What is left of a rounded end, so that no section is nothing.
    const LEFT: f64 = 0.12;
    let end = |at: f64, size: f64, ease: Ease| Station {
        at,
        depth: rein.end.depth_mm() * size,
        width: rein.end.width_mm() * size,
        rise: 0.0,
        profile: 1,
        ease,
    };
    let finish = finish_length(rein);
    match rein.finish {
        ReinEnd::Square => list.push(end(length, 1.0, Ease::Linear)),
        ReinEnd::Rounded => {
            list.push(end(length - finish, 1.0, Ease::RoundDown));
            list.push(end(length, LEFT, Ease::Linear));
        }
        ReinEnd::Ball { diameter } => {
            let ball = diameter.mm().max(rein.end.depth_mm());
            let round = |at: f64, size: f64, ease: Ease| Station {
                depth: size,
                width: size,
                ..end(at, 1.0, ease)
            };
            list.push(end(length - finish, 1.0, Ease::RoundUp));
            list.push(round(length - finish / 2.0, ball, Ease::RoundDown));
            list.push(round(length, ball * LEFT, Ease::Linear));
        }
    }
}
