//! Stations along a whole half: rein, shoulder, boss, neck, jaw.

use kurbo::{BezPath, Point, Vec2};

use super::Arms;
use super::beam::{Load, Station, of_section, places, twisted_along_sweep, worst};
use crate::finding::Part;
use crate::number::plane::sides;
use crate::shape::section::{Known, Section};
use crate::tongs::body::Limb;
use crate::tongs::model::Half;

/// What bends a half.
#[derive(Debug, Clone, Copy)]
pub(super) struct Bend {
    /// Where the hand and the work press.
    pub(super) arms: Arms,
    /// The part that the jaw is.
    pub(super) jaw: Part,
}

/// Where a half is loaded across the tongs, z in mm.
#[derive(Debug, Clone, Copy)]
struct Aside {
    hand: f64,
    work: f64,
}

impl Bend {
    /// The moment at a place for each newton at the hand, N·mm/N: it grows from the hand to the
    /// rivet and falls to nothing where the jaw presses.
    fn moment(&self, at: Point) -> f64 {
        let (hand, grip) = (self.arms.hand_mm, self.arms.grip_mm);
        let x = self.along(at);
        let from_hand = hand + x;
        let from_grip = (grip - x) * hand / grip;
        from_hand.min(from_grip).max(0.0)
    }

    /// What twists a half at a place for each newton at the hand, N·mm/N: hand and work press straight
    /// up and down, each beside the middle of the section by so much.
    fn twist(&self, at: Point, z: f64, aside: Aside) -> f64 {
        let (hand, grip) = (self.arms.hand_mm, self.arms.grip_mm);
        let x = self.along(at);
        if x < 0.0 {
            aside.hand - z
        } else if x < grip {
            (aside.work - z) * hand / grip
        } else {
            0.0
        }
    }

    fn load(&self, at: Point, z: f64, aside: Aside) -> Load {
        Load {
            moment_mm: self.moment(at),
            twist_mm: self.twist(at, z, aside),
        }
    }

    /// How far along the tongs from the rivet a place lies once the half has turned, mm.
    fn along(&self, at: Point) -> f64 {
        let (sin, cos) = self.arms.half_angle.sin_cos();
        at.x * cos - at.y * sin
    }
}

/// How far along a jaw from its heel the work presses, mm.
pub(in crate::proof) fn pressed_at(arms: &Arms, half: &Half) -> f64 {
    let (sin, cos) = arms.half_angle.sin_cos();
    let jaw = &half.jaw;
    // The jaw's height above the axis changes slowly along it: two rounds settle its share.
    let mut back = jaw.along_at_x(arms.grip_mm);
    for _ in 0..2 {
        let y = jaw.path.at(back).at.y;
        back = jaw.along_at_x((arms.grip_mm + y * sin) / cos);
    }
    // A sketch may be shorter than any grip.
    back.max(0.5).min(jaw.length())
}

/// One half bent by the hand.
#[derive(Debug, Clone, PartialEq)]
pub struct HalfBending {
    /// From the hand to the grip.
    pub stations: Vec<Station>,
    /// Which station has the most stress for what its steel bears.
    pub peak: usize,
    /// From the hole's centre to the nearest edge of the boss, mm.
    pub edge_mm: f64,
}

/// What every station bears while nothing is known of the steel, MPa.
const EVEN_MPA: f64 = 1.0;

impl HalfBending {
    /// The same of a steel: what it bears in rein, shoulder and boss, and in neck and jaw, MPa.
    #[must_use]
    pub fn bearing(&self, (cold_mpa, hot_mpa): (f64, f64)) -> Self {
        let mut half = self.clone();
        for station in &mut half.stations {
            station.limit_mpa = match station.part {
                Part::Neck | Part::Jaw | Part::SecondJaw => hot_mpa,
                Part::Work
                | Part::Bar
                | Part::Boss
                | Part::Shoulder
                | Part::Rein
                | Part::Rivet
                | Part::Pair
                | Part::Working
                | Part::Body
                | Part::Eye
                | Part::StruckEnd
                | Part::HardyShank
                | Part::Tool => cold_mpa,
            };
        }
        half.peak = worst(&half.stations).unwrap_or(0);
        half
    }

    /// The station with the most stress for what it bears.
    pub fn worst(&self) -> &Station {
        &self.stations[self.peak]
    }

    /// The worst station of some parts.
    pub fn worst_of(&self, parts: &[Part]) -> Option<&Station> {
        let of = self.stations.iter().filter(|s| parts.contains(&s.part));
        of.max_by(|a, b| a.use_per_n().total_cmp(&b.use_per_n()))
    }

    /// The section through the middle of the hole, where the moment is greatest.
    pub fn at_hole(&self) -> Option<&Station> {
        let boss = self.stations.iter().filter(|s| s.part == Part::Boss);
        boss.max_by(|a, b| {
            let moments = a.moment_mm.total_cmp(&b.moment_mm);
            moments.then(b.modulus_mm3.total_cmp(&a.modulus_mm3))
        })
    }

    /// The jaw where it begins.
    pub fn jaw_root(&self) -> Option<&Station> {
        let jaw = |s: &&Station| matches!(s.part, Part::Jaw | Part::SecondJaw);
        self.stations.iter().find(jaw)
    }
}

/// Cuts a half, with its outline, into stations from the hand to where its jaw presses.
pub(super) fn bend((half, outline): (&Half, &BezPath), bend: &Bend) -> HalfBending {
    let to = pressed_at(&bend.arms, half);
    let aside = Aside {
        hand: half.rein.shift(half.hand_at),
        work: half.jaw.shift(to),
    };
    let load = |at: Point, z: f64| bend.load(at, z, aside);
    let rein = (Part::Rein, &half.rein);
    let mut stations = twisted_along_sweep(rein, (half.hand_at, 0.0), EVEN_MPA, &load);
    let sides = sides(outline);
    let body = body(half, (bend, aside), &near_body(half, &sides));
    append(&mut stations, body);
    let jaw = twisted_along_sweep((bend.jaw, &half.jaw), (0.0, to), EVEN_MPA, &load);
    append(&mut stations, jaw);
    let peak = worst(&stations).unwrap_or(0);
    HalfBending {
        stations,
        peak,
        edge_mm: half.body.rim.nearest(),
    }
}

/// A straight side of an outline.
type Line = (Point, Point);

/// The sides that a cut through the body can meet: none that lies wholly out along jaw or rein.
fn near_body(half: &Half, sides: &[Line]) -> Vec<Line> {
    let rim = &half.body.rim;
    // A cut stands nearly upright, so it goes no farther along the tongs than it is deep.
    let depth = 2.0 * rim.half_across() + half.jaw.section(0.0).depth;
    let (from, to) = (half.rein_start().x - depth, half.heel() + depth);
    let near = |(p, q): &&Line| p.x.max(q.x) >= from && p.x.min(q.x) <= to;
    sides.iter().filter(near).copied().collect()
}

/// Continues the stations with others that count from their own start.
fn append(stations: &mut Vec<Station>, more: Vec<Station>) {
    let end = stations.last().map_or(0.0, |last| last.along_mm);
    stations.extend(more.into_iter().map(|station| Station {
        along_mm: station.along_mm + end,
        ..station
    }));
}

/// The middle line of the body from the rein to the jaw, as points.
struct Run {
    points: Vec<Point>,
    parts: Vec<Part>,
}

/// Pieces of a limb's middle line.
const LIMB_PIECES: u32 = 4;

fn run(half: &Half) -> Run {
    let middle = |limb: &Limb, i: u32| {
        let t = f64::from(i) / f64::from(LIMB_PIECES);
        limb.inner_at(t).midpoint(limb.outer_at(t))
    };
    let turned = |p: Point| Point::new(-p.x, -p.y);
    let (neck, shoulder) = (&half.body.neck, &half.body.shoulder);
    let mut points: Vec<Point> = (0..=LIMB_PIECES)
        .rev()
        .map(|i| turned(middle(shoulder, i)))
        .collect();
    let mut parts = vec![Part::Shoulder; LIMB_PIECES as usize];
    points.push(Point::ORIGIN);
    parts.extend([Part::Boss, Part::Boss]);
    points.extend((0..=LIMB_PIECES).map(|i| middle(neck, i)));
    parts.extend(vec![Part::Neck; LIMB_PIECES as usize]);
    Run { points, parts }
}

/// Stations through shoulder, boss and neck: cuts square to the run from edge to edge of the
/// outline, as thick as the faces are there.
fn body(half: &Half, loaded: (&Bend, Aside), outline: &[Line]) -> Vec<Station> {
    let run = run(half);
    let mut known = Known::default();
    let mut stations = Vec::with_capacity(5 * run.parts.len());
    let mut along = 0.0;
    for (pair, &part) in run.points.windows(2).zip(&run.parts) {
        let d = pair[1] - pair[0];
        let length = d.hypot();
        if length < 1e-6 {
            continue;
        }
        let square = (d / length).turn_90();
        for (s, stands_for_mm) in places(0.0, length) {
            let at = pair[0] + d * (s / length);
            let square = narrowest(half, outline, (at, square));
            stations.push(Station {
                along_mm: along + s,
                stands_for_mm,
                ..cut(half, loaded, part, (outline, &mut known), (at, square))
            });
        }
        along += length;
    }
    stations
}

/// Which way the cut through a place of the body goes: square to the run, but through the middle of
/// the hole whichever way leaves the least steel. The moment about the rivet is the same for every
/// cut that parts the neck from the shoulder.
fn narrowest(half: &Half, outline: &[Line], (at, square): (Point, Vec2)) -> Vec2 {
    /// Ways that are tried, a few degrees apart: at its least the width hardly changes.
    const WAYS: i32 = 36;
    /// Nearer than this a place is the middle of the hole, mm.
    const MIDDLE: f64 = 1e-6;
    let hole = half.body.plate.hole_radius;
    if at.to_vec2().hypot() > MIDDLE {
        return square;
    }
    let first = |limb: &Limb| limb.inner_at(0.0).midpoint(limb.outer_at(0.0)).to_vec2();
    let (neck, shoulder) = (first(&half.body.neck), -first(&half.body.shoulder));
    let parts = |way: &Vec2| way.cross(neck) * way.cross(shoulder) < 0.0;
    let ways = (0..WAYS).map(|i| {
        let turn = std::f64::consts::PI * f64::from(i) / f64::from(WAYS);
        (kurbo::Affine::rotate(turn) * square.to_point()).to_vec2()
    });
    let wide = |way: Vec2| {
        let (down, up) = edges_across(outline, at, way);
        // A cut that ends inside the hole ran out along a limb, where it is not looked for.
        (-down > hole && up > hole).then_some((way, up - down))
    };
    let all = ways.filter(parts).filter_map(wide);
    let least = all.min_by(|a, b| a.1.total_cmp(&b.1));
    least.map_or(square, |(way, _)| way)
}

fn cut<'a>(
    half: &'a Half,
    (bend, aside): (&Bend, Aside),
    part: Part,
    (outline, known): (&[Line], &mut Known<'a>),
    (at, square): (Point, Vec2),
) -> Station {
    let (down, up) = edges_across(outline, at, square);
    let middle = at + square * f64::midpoint(down, up);
    let (low, high) = half.body.plate.faces.at(middle.x);
    let [plate, rein] = &half.body.plate.profiles;
    let shoulder = middle.x < 0.0;
    let section = Section {
        depth: up - down,
        width: high - low,
        from: plate,
        to: if shoulder { rein } else { plate },
        blend: if shoulder {
            half.body.plate.faces.blend(middle.x)
        } else {
            0.0
        },
    };
    let hole = half.body.plate.hole_radius;
    let is_holed = at.to_vec2().dot(square.turn_90()).abs() < hole;
    let ends = [at + square * down, at + square * up];
    let part = if is_holed {
        part
    } else {
        named(half, part, (at, ends))
    };
    let own = known.properties(&section);
    let mut load = bend.load(at, f64::midpoint(low, high), aside);
    if is_holed {
        // The rivet and the other half's boss keep the plate from twisting there.
        load.twist_mm = 0.0;
    }
    let station = of_section(part, (&section, own), middle, EVEN_MPA, load);
    less_hole(station, hole, (at, square), (down, up))
}

/// What a cut beside the hole goes through: the boss, where it begins and ends on the boss's own edge,
/// else the limb that grows out of it there.
fn named(half: &Half, part: Part, (at, ends): (Point, [Point; 2])) -> Part {
    /// Farther out than this an edge is no longer the boss's, mm.
    const OFF: f64 = 0.05;
    let rim = &half.body.rim;
    let is_off = |end: Point| (rim.from_core(end) - rim.radius).abs() > OFF;
    match part {
        Part::Boss if ends.into_iter().any(is_off) && at.x > 0.0 => Part::Neck,
        Part::Boss if ends.into_iter().any(is_off) => Part::Shoulder,
        other => other,
    }
}

/// From a point to the outline's nearest sides along a line: how far back and how far on, mm.
fn edges_across(outline: &[Line], at: Point, square: Vec2) -> (f64, f64) {
    /// What a point outside of the outline is given, mm, so that nothing divides by nothing.
    const LEAST: f64 = 0.05;
    let along = square.turn_90();
    let (mut down, mut up) = (f64::MIN, f64::MAX);
    for (p, q) in outline {
        let (a, b) = ((*p - at).dot(along), (*q - at).dot(along));
        if (a > 0.0) == (b > 0.0) {
            continue;
        }
        let (c, d) = ((*p - at).dot(square), (*q - at).dot(square));
        let s = c + (d - c) * a / (a - b);
        if s >= 0.0 {
            up = up.min(s);
        } else {
            down = down.max(s);
        }
    }
    (
        if down == f64::MIN { -LEAST } else { down },
        if up == f64::MAX { LEAST } else { up.max(LEAST) },
    )
}

/// Takes the hole out of a plate's section.
fn less_hole(
    station: Station,
    radius: f64,
    (at, square): (Point, Vec2),
    (down, up): (f64, f64),
) -> Station {
    let from_middle = at.to_vec2();
    let off = from_middle.dot(square.turn_90());
    if off.abs() >= radius {
        return station;
    }
    let half = (radius * radius - off * off).sqrt();
    let foot = -from_middle.dot(square);
    // Two pieces of plate, below and above the hole, or what is left of them.
    let pieces = [(down, (foot - half).min(up)), ((foot + half).max(down), up)];
    let net = net_section(&pieces, station.width_mm);
    Station {
        area_mm2: net.area,
        inertia_mm4: net.inertia,
        modulus_mm3: net.modulus,
        ..station
    }
}

struct Net {
    area: f64,
    inertia: f64,
    modulus: f64,
}

/// Area, second moment and least modulus of pieces of plate in one line, from and to in mm.
fn net_section(pieces: &[(f64, f64)], thick: f64) -> Net {
    let kept = || pieces.iter().filter(|(from, to)| to > from);
    let area: f64 = kept().map(|(a, b)| (b - a) * thick).sum();
    let first: f64 = kept().map(|(a, b)| (b * b - a * a) / 2.0 * thick).sum();
    let centroid = if area > 0.0 { first / area } else { 0.0 };
    let cubed = |s: f64| (s - centroid).powi(3);
    let inertia: f64 = kept()
        .map(|&(a, b)| (cubed(b) - cubed(a)) / 3.0 * thick)
        .sum();
    let far = kept().flat_map(|&(a, b)| [(a - centroid).abs(), (b - centroid).abs()]);
    let far = far.fold(f64::MIN_POSITIVE, f64::max);
    /// What is reckoned with when a hole takes all, a wire that no boss is, so that stresses stay
    /// numbers that can be read: mm⁴ and mm³.
    const NOTHING: f64 = 1.0;
    Net {
        area,
        inertia: inertia.max(NOTHING),
        modulus: (inertia / far).max(NOTHING),
    }
}
