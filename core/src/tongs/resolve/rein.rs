//! The rein's line, solved so that it passes the hand with the asked gap.
//!
//! Worked in the frame turned half round: +x from the rivet toward the hand, +y to the outside.

use kurbo::{Point, Vec2};

use crate::asked::PlainSection;
use crate::number::roots::turning;
use crate::shape::section::{Profile, plain_profile};
use crate::shape::sweep::{Ease, Edge, Path, Run, Station, Sweep};
use crate::tongs::body::{Limb, LimbEnd, LimbSpec, Rim};
use crate::tongs::document::{Document, HandZone, Rein, ReinEnd, ReinLine, Shoulder};
use crate::tongs::model::Half;

/// What lies behind the rivet: a rein with the shoulder that leads into it.
pub(super) struct Tail {
    pub(super) rein: Sweep,
    /// Where the middle of the hand is, mm along the rein.
    pub(super) hand_at: f64,
    pub(super) shoulder: Limb,
    /// From the rivet to the nearer corner of the rein's start, mm.
    pub(super) near: f64,
}

/// All of a document that the tail follows from, beside the rim of the boss.
pub(super) fn asked(document: &Document) -> (&Rein, &Shoulder) {
    (&document.rein, &document.shoulder)
}

impl Tail {
    pub(super) fn build(document: &Document, rim: &Rim) -> Self {
        let (rein, end) = built(document, rim);
        let spec = LimbSpec {
            depth: document.shoulder.depth.mm(),
            fillet: document.shoulder.fillet.mm(),
            end,
        };
        Self {
            rein,
            hand_at: hand_at(&document.rein),
            shoulder: Limb::grow(rim, &spec),
            near: end.inner.x.min(end.outer.x),
        }
    }

    /// That of a half.
    pub(super) fn of(half: &Half) -> Self {
        Self {
            rein: half.rein.clone(),
            hand_at: half.hand_at,
            shoulder: half.body.shoulder.clone(),
            near: -half.body.plate.faces.shoulder.far,
        }
    }
}

/// The steepest that a bowed rein may leave the shoulder, radians.
const STEEPEST: f64 = 1.1;

/// The rein, and where the shoulder must end.
fn built(document: &Document, rim: &Rim) -> (Sweep, LimbEnd) {
    let rein = &document.rein;
    let (stations, profiles) = stations(rein);
    let depth = rein.start.depth_mm();
    let shoulder_length = document.shoulder.length.mm();
    let hand_at = hand_at(rein);
    let to_hand = ToHand {
        at: hand_at,
        gap: rein.gap.mm(),
        depth: depth_at(&stations, &profiles, hand_at),
    };
    let base = inner_at_boss(document, rim) + depth / 2.0;
    // A rein that leaves steeply starts higher, so that the shoulder runs up to it in one sweep;
    // the line's heading and its start settle each other within a few rounds.
    let mut y = base;
    for _ in 0..ROUNDS {
        y = base + SHARE_OF_RISE * shoulder_length * line(rein, y, &to_hand).heading.max(0.0).tan();
    }
    let mut line = line(rein, y, &to_hand);
    line.runs.extend(bent_end(rein));
    let half = Vec2::from_angle(line.heading).turn_90() * (depth / 2.0);
    // The nearer corner of the rein's start is the shoulder's length from the boss.
    let start = Point::new(rim.half_along() + shoulder_length + half.x.abs(), y);
    let sweep = Sweep {
        path: Path::new(
            Point::new(-start.x, -start.y),
            std::f64::consts::PI + line.heading,
            line.runs,
        ),
        stations,
        profiles,
    };
    let end = LimbEnd {
        inner: start - half,
        outer: start + half,
        inner_slope: first_slope(&sweep, Edge::Inner),
        outer_slope: first_slope(&sweep, Edge::Outer),
    };
    (sweep, end)
}

/// dy/dx of an edge where a sweep starts; a half turn does not change it.
pub(super) fn first_slope(sweep: &Sweep, edge: Edge) -> f64 {
    /// Short enough for the slope at the very start, long enough to keep nine digits.
    const STEP: f64 = 1e-4;
    /// Past this a blend would double back.
    const STEEPEST: f64 = 2.0;
    let (a, b) = (sweep.edge_point(edge, 0.0), sweep.edge_point(edge, STEP));
    ((b.y - a.y) / (b.x - a.x)).clamp(-STEEPEST, STEEPEST)
}

/// How often the line's heading and its start are settled against each other.
const ROUNDS: u32 = 8;

/// How much of the shoulder's rise at the rein's own slope its start is lifted by (judgement,
/// from looking at it: more makes a hump, less a notch behind the boss).
const SHARE_OF_RISE: f64 = 0.6;

/// The height at which the shoulder's inner edge leaves the boss: as low as its depth asks, which
/// decides how early the reins part.
fn inner_at_boss(document: &Document, rim: &Rim) -> f64 {
    let across = rim.half_across();
    let depth = document.shoulder.depth.mm();
    (across - 0.8 * depth).clamp(0.14 * across, 0.5 * across)
}

/// The part of the rein behind which the hand is always drawn: before it there is the joint.
pub(crate) const NO_HAND_BEFORE: f64 = 0.3;

/// Where the middle of the hand is, mm along the rein.
fn hand_at(rein: &Rein) -> f64 {
    let length = rein.length.mm();
    (length - rein.hand.mm()).max(NO_HAND_BEFORE * length)
}

/// What the line must reach.
struct ToHand {
    /// The hand's place, mm along the rein.
    at: f64,
    /// Between the reins there, mm.
    gap: f64,
    /// Depth of the rein there, mm.
    depth: f64,
}

impl ToHand {
    /// Height of the middle line at the hand where it runs level, mm.
    fn level(&self) -> f64 {
        f64::midpoint(self.gap, self.depth)
    }
}

struct LineOfRein {
    heading: f64,
    runs: Vec<Run>,
}

/// Radius to the middle of a clip bend, in depths of the rein: its inside is then a little wider
/// than half the depth, which steel takes without folding (judgement).
const CLIP_RADIUS: f64 = 1.1;

/// How far a curl is rolled, radians: three quarters round, so that its tip looks at the rein.
const ROLLED: f64 = 0.75 * std::f64::consts::TAU;

/// What is bent outwards behind the end of the rein.
fn bent_end(rein: &Rein) -> Vec<Run> {
    let depth = rein.end.depth_mm();
    let arc = |radius: f64, turn: f64| Run {
        length: radius * turn,
        curvature: 1.0 / radius,
    };
    match rein.finish {
        ReinEnd::Square | ReinEnd::Rounded | ReinEnd::Ball { .. } => Vec::new(),
        ReinEnd::ClipBend { angle, length } => vec![
            arc(CLIP_RADIUS * depth, angle.radians()),
            straight_run(length.mm()),
        ],
        ReinEnd::Curl { radius } => vec![arc(radius.mm() + depth / 2.0, ROLLED)],
    }
}

fn line(rein: &Rein, from: f64, hand: &ToHand) -> LineOfRein {
    let length = rein.length.mm();
    match rein.line {
        ReinLine::Straight => straight(from, hand, length),
        ReinLine::Parallel { bend } => parallel(bend.mm(), hand.level() - from, hand.at, length),
        ReinLine::Bowed { bow } => bowed(bow.mm(), hand.level() - from, hand.at, length),
    }
}

fn straight_run(length: f64) -> Run {
    Run {
        length,
        curvature: 0.0,
    }
}

/// The heading h at which the inner edge passes the hand: `from + at sin h − depth/2 cos h` is
/// half the gap.
fn straight(from: f64, hand: &ToHand, length: f64) -> LineOfRein {
    let (along, across) = (hand.at, hand.depth / 2.0);
    let sine = (hand.gap / 2.0 - from) / along.hypot(across);
    let heading = sine.clamp(-0.9, 0.9).asin() + across.atan2(along);
    LineOfRein {
        heading: heading.clamp(-STEEPEST, STEEPEST),
        runs: vec![straight_run(length)],
    }
}

/// Two equal arcs, out and back to level, and the rest straight. They rise by `rise` over `bend`
/// along the tongs, or over as much more as keeps either from turning too far.
fn parallel(bend: f64, rise: f64, hand_at: f64, length: f64) -> LineOfRein {
    /// The farthest that either arc turns, radians.
    const FARTHEST: f64 = 1.2;
    let least = rise.abs() / (FARTHEST / 2.0).tan();
    let bend = bend.max(least);
    let mut turn = 2.0 * (rise.abs() / bend).atan();
    if turn < 1e-6 {
        return LineOfRein {
            heading: 0.0,
            runs: vec![straight_run(length)],
        };
    }
    let mut arc = bend * turn / (2.0 * turn.sin());
    // The bend ends before the hand: a longer one is made tighter, as long as it can be.
    let most = 0.45 * hand_at;
    if arc > most {
        arc = most;
        let rises = |turn: f64| 2.0 * most * (1.0 - turn.cos()) / turn;
        turn = turning((1e-6, FARTHEST), |turn| rises(turn) < rise.abs());
    }
    let curvature = rise.signum() * turn / arc;
    let bent = |curvature: f64| Run {
        length: arc,
        curvature,
    };
    LineOfRein {
        heading: 0.0,
        runs: vec![
            bent(curvature),
            bent(-curvature),
            straight_run(length - 2.0 * arc),
        ],
    }
}

/// An arc out and back, one to level, and the last stretch before the hand and all behind it
/// straight.
fn bowed(bow: f64, rise: f64, hand_at: f64, length: f64) -> LineOfRein {
    let swell = (hand_at - 50.0).max(0.7 * hand_at);
    let (first, second) = (0.7 * swell, 0.3 * swell);
    let bowed = Bowed {
        first,
        second,
        rise,
    };
    let (leave, arrive) = bowed.solve(bow);
    let bent = |length: f64, turn: f64| Run {
        length,
        curvature: turn / length,
    };
    LineOfRein {
        heading: leave,
        runs: vec![
            bent(first, arrive - leave),
            bent(second, -arrive),
            straight_run(length - swell),
        ],
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
        turning((-STEEPEST, STEEPEST), |arrive| rise(arrive) < self.rise)
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
        /// A bow of nothing is still taken outwards, mm: below it any line without a swell
        /// would do, the one that starts inwards too.
        const LEAST: f64 = 0.01;
        /// A rein that reaches far in may leave the shoulder inwards, radians.
        const LOWEST: f64 = -0.2;
        let bow = bow.max(LEAST);
        let leave = turning((LOWEST, STEEPEST), |leave| self.bow(leave) < bow);
        (leave, self.arrive(leave))
    }
}

/// Depth of the rein at `s`, mm.
fn depth_at(stations: &[Station], profiles: &[Profile], s: f64) -> f64 {
    let length = stations.last().map_or(0.0, |station| station.at);
    let sweep = Sweep {
        path: Path::straight(Point::ORIGIN, 0.0, length),
        stations: stations.to_vec(),
        profiles: profiles.to_vec(),
    };
    sweep.section(s).depth
}

fn stations(rein: &Rein) -> (Vec<Station>, Vec<Profile>) {
    let length = rein.length.mm();
    let (start, end) = (&rein.start, &rein.end);
    let mut profiles = vec![plain_profile(start), plain_profile(end)];
    let mut list = vec![station(0.0, start, 0, Ease::Linear)];
    let last = length - finish_length(rein);
    let taper_end = (length - rein.parallel.mm()).clamp(0.1 * length, length);
    if let Some(zone) = &rein.hand_zone {
        profiles.push(plain_profile(&zone.section));
        add_zone(zone, (taper_end, last), rein, &mut list);
    } else if taper_end < last {
        list.push(station(taper_end, end, 1, Ease::Linear));
    }
    add_finish(rein, &mut list);
    // Where two stand nearly at one place the earlier one only says how sizes go on.
    list.dedup_by(|next, before| {
        let same = next.at - before.at < CLOSEST;
        if same {
            before.ease = next.ease;
        }
        same
    });
    if let Some(end) = list.last_mut() {
        end.at = length;
    }
    let bent: f64 = bent_end(rein).iter().map(|run| run.length).sum();
    if bent > 0.0 {
        list.push(station(length + bent, end, 1, Ease::Linear));
    }
    (list, profiles)
}

/// The closest that two stations of a rein stand, mm.
const CLOSEST: f64 = 1e-3;

fn station(at: f64, section: &PlainSection, profile: usize, ease: Ease) -> Station {
    Station {
        at,
        depth: section.depth_mm(),
        width: section.width_mm(),
        rise: 0.0,
        shift: 0.0,
        profile,
        ease,
    }
}

/// A shaped grip between the end of the taper and the finish of the end, as long as there is
/// room for, with a blend before and behind.
fn add_zone(zone: &HandZone, (taper_end, last): (f64, f64), rein: &Rein, list: &mut Vec<Station>) {
    let end = &rein.end;
    let middle = hand_at(rein).min(last);
    let half = zone.length.mm() / 2.0;
    let blend = (0.3 * zone.length.mm()).min(25.0).min(0.1 * last);
    let first = 0.25 * last;
    let to = (middle + half).min(last - blend);
    let from = (middle - half).max(first + blend).min(to);
    let taper_end = taper_end.min(from - blend);
    list.push(station(taper_end, end, 1, Ease::Linear));
    list.push(station(from - blend, end, 1, Ease::Smooth));
    list.push(station(from, &zone.section, 2, Ease::Linear));
    list.push(station(to, &zone.section, 2, Ease::Smooth));
    list.push(station(to + blend, end, 1, Ease::Linear));
}

/// A ball takes this times its diameter of the rein: it runs out into the neck before it.
const BALL_LONG: f64 = 1.1;
/// The most of the rein that its finish takes.
const MOST_FINISH: f64 = 1.0 / 3.0;

/// How much of the end its finish takes, mm; no more than a third of the rein.
pub(crate) fn finish_length(rein: &Rein) -> f64 {
    let half = rein.end.depth_mm().min(rein.end.width_mm()) / 2.0;
    let asked = match rein.finish {
        ReinEnd::Square | ReinEnd::ClipBend { .. } | ReinEnd::Curl { .. } => 0.0,
        ReinEnd::Rounded => half,
        ReinEnd::Ball { .. } => BALL_LONG * ball_mm(rein),
    };
    asked.min(MOST_FINISH * rein.length.mm())
}

/// Diameter of the ball, never less than the rein's end.
fn ball_mm(rein: &Rein) -> f64 {
    let end = rein.end.depth_mm().max(rein.end.width_mm());
    match rein.finish {
        ReinEnd::Ball { diameter } => diameter.mm().max(end),
        ReinEnd::Square | ReinEnd::Rounded | ReinEnd::ClipBend { .. } | ReinEnd::Curl { .. } => end,
    }
}

/// The stations of the end: square (also before it is bent), a quarter-round all round, or a ball.
fn add_finish(rein: &Rein, list: &mut Vec<Station>) {
    /// What is left of a rounded end, so that no section is nothing.
    const LEFT: f64 = 0.12;
    let length = rein.length.mm();
    let sized = |at: f64, depth: f64, width: f64, ease: Ease| Station {
        depth,
        width,
        ..station(at, &rein.end, 1, ease)
    };
    let (depth, width) = (rein.end.depth_mm(), rein.end.width_mm());
    let from = length - finish_length(rein);
    match rein.finish {
        ReinEnd::Square | ReinEnd::ClipBend { .. } | ReinEnd::Curl { .. } => {
            list.push(sized(length, depth, width, Ease::Linear));
        }
        ReinEnd::Rounded => {
            list.push(sized(from, depth, width, Ease::RoundDown));
            list.push(sized(length, LEFT * depth, LEFT * width, Ease::Linear));
        }
        ReinEnd::Ball { .. } => {
            let ball = ball_mm(rein);
            let widest = length - finish_length(rein) * (0.5 / BALL_LONG);
            list.push(sized(from, depth, width, Ease::Smooth));
            list.push(sized(widest, ball, ball, Ease::RoundDown));
            list.push(sized(length, LEFT * ball, LEFT * ball, Ease::Linear));
        }
    }
}
