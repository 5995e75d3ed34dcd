use kurbo::{BezPath, Point, Vec2};

use super::arc::Arc;
use super::path::{Path, Pose};
use super::station::{Ease, Station};
use crate::number::quadrature::{integrate, integrate_steep, nodes, steep_nodes};
use crate::shape::section::{Known, Profile, Section, lerp};

/// Sections carried along a path; between stations depth, width, rise and fullness are eased.
#[derive(Debug, Clone, PartialEq)]
pub struct Sweep {
    /// The path, in the side plane.
    pub path: Path,
    /// The stations, ascending; the first at 0, the last at the path's length.
    pub stations: Vec<Station>,
    /// The profiles that stations name.
    pub profiles: Vec<Profile>,
}

/// One of the four silhouettes of a sweep.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Edge {
    /// Side view, left of the path: the outside of the half.
    Outer,
    /// Side view, right of the path: towards the work and the other rein.
    Inner,
    /// Top view, towards +z.
    Far,
    /// Top view, towards −z.
    Near,
}

/// Sizes between stations.
struct Sizes {
    depth: f64,
    width: f64,
    rise: f64,
    shift: f64,
}

/// Arc length along a stretch between stations, told by an angle where its sizes go as a
/// quarter-round, so that even the steep end has a tangent.
struct Unrolled {
    ease: Ease,
    from: f64,
    length: f64,
}

/// A stretch of a sweep between two stations, bent one way.
struct Stretch<'a> {
    stations: (&'a Station, &'a Station),
    curvature: f64,
    unrolled: Unrolled,
}

impl Unrolled {
    /// The eased fraction at an angle, and how fast it changes with it.
    fn eased(&self, p: f64) -> (f64, f64) {
        match self.ease {
            Ease::Linear | Ease::ArcUp | Ease::ArcDown => (p, 1.0),
            Ease::Smooth => (self.ease.of(p), 6.0 * p * (1.0 - p)),
            Ease::RoundUp => (p.sin(), p.cos()),
            Ease::RoundDown => (1.0 - p.cos(), p.sin()),
        }
    }

    /// How fast the place along changes with the angle, mm.
    fn slope(&self, p: f64) -> f64 {
        let part = match self.ease {
            Ease::Linear | Ease::Smooth | Ease::ArcUp | Ease::ArcDown => 1.0,
            Ease::RoundUp => p.sin(),
            Ease::RoundDown => p.cos(),
        };
        part * self.length
    }

    fn of(&self, s: f64) -> f64 {
        let t = ((s - self.from) / self.length).clamp(0.0, 1.0);
        match self.ease {
            Ease::Linear | Ease::Smooth | Ease::ArcUp | Ease::ArcDown => t,
            Ease::RoundUp => (1.0 - t).acos(),
            Ease::RoundDown => t.asin(),
        }
    }

    fn back(&self, p: f64) -> f64 {
        let t = match self.ease {
            Ease::Linear | Ease::Smooth | Ease::ArcUp | Ease::ArcDown => p,
            Ease::RoundUp => 1.0 - p.cos(),
            Ease::RoundDown => p.sin(),
        };
        self.from + t * self.length
    }
}

impl Sweep {
    /// Its length along the path, mm.
    pub fn length(&self) -> f64 {
        self.path.length()
    }

    /// Whether all four silhouettes are straight about `s`.
    pub(crate) fn is_straight_at(&self, s: f64) -> bool {
        self.between(s).0.ease == Ease::Linear && self.path.at(s).curvature == 0.0
    }

    /// Whether every section about `s` lies in the hull of those at the stations, bends or ends on
    /// either side of it: it goes from one to the other in straight lines.
    pub(crate) fn is_ruled_at(&self, s: f64) -> bool {
        let (a, b, _) = self.between(s);
        self.is_straight_at(s) && a.profile == b.profile
    }

    /// How sizes go on about `s`.
    pub(crate) fn ease_at(&self, s: f64) -> Ease {
        self.between(s).0.ease
    }

    /// The stations on either side of `s`, and the eased fraction between them.
    fn between(&self, s: f64) -> (&Station, &Station, f64) {
        let next = self.stations.partition_point(|station| station.at <= s);
        let next = next.clamp(1, self.stations.len() - 1);
        let (a, b) = (&self.stations[next - 1], &self.stations[next]);
        let t = if b.at > a.at {
            ((s - a.at) / (b.at - a.at)).clamp(0.0, 1.0)
        } else {
            0.0
        };
        (a, b, a.ease.of(t))
    }

    fn sizes(&self, s: f64) -> Sizes {
        let (a, b, t) = self.between(s);
        let mut sizes = Sizes {
            depth: lerp(a.depth, b.depth, t),
            width: lerp(a.width, b.width, t),
            rise: lerp(a.rise, b.rise, t),
            shift: lerp(a.shift, b.shift, t),
        };
        if let Some(arc) = Arc::between(a, b) {
            let back = sizes.rise + sizes.depth / 2.0;
            let (_, inside) = arc.at(arc.angle(s));
            sizes.depth = back - inside;
            sizes.rise = f64::midpoint(back, inside);
        }
        sizes
    }

    /// The section at `s` mm along.
    pub fn section(&self, s: f64) -> Section<'_> {
        let (a, b, t) = self.between(s);
        Section {
            depth: self.sizes(s).depth,
            width: lerp(a.width, b.width, t),
            from: &self.profiles[a.profile],
            to: &self.profiles[b.profile],
            blend: t,
        }
    }

    /// The box's centre to the left of the path at `s`, mm.
    pub fn rise(&self, s: f64) -> f64 {
        self.sizes(s).rise
    }

    /// The box's centre along the rivet at `s`, z in mm.
    pub fn shift(&self, s: f64) -> f64 {
        self.sizes(s).shift
    }

    /// How far along the path its x is `x` mm; the nearer end where it does not come by. The
    /// path must not turn back.
    pub fn along_at_x(&self, x: f64) -> f64 {
        self.path.along_at_x(x)
    }

    /// The middle of the section's box at `s`.
    pub fn middle(&self, s: f64) -> Point {
        self.path.at(s).offset(self.rise(s))
    }

    /// `∫ f(s, section, pose) ds` between two places, split at stations and bends.
    pub fn integrate(
        &self,
        (from, to): (f64, f64),
        mut f: impl FnMut(f64, &Section<'_>, &Pose) -> f64,
    ) -> f64 {
        let mut sum = 0.0;
        for pair in self.cuts(from, to).windows(2) {
            let (a, b) = (pair[0], pair[1]);
            let ease = self.between(f64::midpoint(a, b)).0.ease;
            let value = |s: f64| f(s, &self.section(s), &self.path.at(s));
            sum += match ease {
                Ease::Linear | Ease::Smooth => integrate(a, b, value),
                Ease::RoundUp | Ease::RoundDown | Ease::ArcUp | Ease::ArcDown => {
                    integrate_steep(a, b, value)
                }
            };
        }
        sum
    }

    /// `from`, every station and bend between, `to`.
    pub fn cuts(&self, from: f64, to: f64) -> Vec<f64> {
        let stations = self.stations.iter().map(|station| station.at);
        let inside = |s: &f64| *s > from + 1e-9 && *s < to - 1e-9;
        let mut cuts: Vec<f64> = stations.chain(self.path.breaks()).filter(inside).collect();
        cuts.extend([from, to]);
        cuts.sort_by(f64::total_cmp);
        cuts.dedup_by(|a, b| (*a - *b).abs() < 1e-9);
        cuts
    }

    /// Volume between two places in mm³: `∫ A (1 − κ ē) ds` (Pappus–Guldinus), ē the centroid's
    /// offset from the path towards the centre of curvature.
    pub fn volume_between(&self, from: f64, to: f64) -> f64 {
        let mut known = Known::default();
        let mut sum = 0.0;
        for (s, weight) in self.nodes(from, to) {
            let (section, curvature) = (self.section(s), self.path.at(s).curvature);
            let mut area = section.area_mm2();
            if curvature != 0.0 {
                area *= 1.0 - curvature * (self.rise(s) + known.centroid_mm(&section));
            }
            sum += area * weight;
        }
        sum
    }

    /// Volume in mm³.
    pub fn volume_mm3(&self) -> f64 {
        self.volume_between(0.0, self.length())
    }

    /// First moments of volume about the axes x = 0 and y = 0, mm⁴: `∫∫ (1 − κ v) (p + n v) dA ds`
    /// with v to the left of the path along n, so `A (1 − κ ē) (p + n ē) − κ I n` for each section.
    pub fn moments(&self) -> (f64, f64) {
        let mut sum = Vec2::ZERO;
        let mut known = Known::default();
        for (s, weight) in self.nodes(0.0, self.length()) {
            let (section, pose) = (self.section(s), self.path.at(s));
            let area = section.area_mm2();
            let own = known.properties(&section);
            let centroid = self.rise(s) + own.centroid_mm;
            let turned = area * (1.0 - pose.curvature * centroid);
            sum += pose.offset(centroid).to_vec2() * (turned * weight);
            if pose.curvature != 0.0 {
                sum -= pose.left() * (pose.curvature * own.side_mm4 * weight);
            }
        }
        (sum.x, sum.y)
    }

    /// The places and weights of an integral between two places.
    fn nodes(&self, from: f64, to: f64) -> Vec<(f64, f64)> {
        let mut all = Vec::new();
        for pair in self.cuts(from, to).windows(2) {
            let (a, b) = (pair[0], pair[1]);
            match self.between(f64::midpoint(a, b)).0.ease {
                Ease::Linear | Ease::Smooth => all.extend(nodes(a, b)),
                Ease::RoundUp | Ease::RoundDown | Ease::ArcUp | Ease::ArcDown => {
                    all.extend(steep_nodes(a, b));
                }
            }
        }
        all
    }

    /// A point of a silhouette: (x, y) in the side view, (x, z) in the top view.
    pub fn edge_point(&self, edge: Edge, s: f64) -> Point {
        let (pose, sizes) = (self.path.at(s), self.sizes(s));
        match edge {
            Edge::Outer => pose.offset(sizes.rise + sizes.depth / 2.0),
            Edge::Inner => pose.offset(sizes.rise - sizes.depth / 2.0),
            Edge::Far => Point::new(pose.offset(sizes.rise).x, sizes.shift + sizes.width / 2.0),
            Edge::Near => Point::new(pose.offset(sizes.rise).x, sizes.shift - sizes.width / 2.0),
        }
    }

    /// A silhouette from `from` to `to` (either way round) as a smooth path that begins with a
    /// move: straight where it is straight, else cubics through exact points and tangents.
    pub fn edge(&self, edge: Edge, from: f64, to: f64) -> BezPath {
        let mut cuts = self.cuts(from.min(to), from.max(to));
        let mut path = BezPath::new();
        if from > to {
            cuts.reverse();
        }
        path.move_to(self.edge_point(edge, cuts[0]));
        for pair in cuts.windows(2) {
            self.add_piece(&mut path, edge, (pair[0], pair[1]));
        }
        path
    }

    fn add_piece(&self, path: &mut BezPath, edge: Edge, (a, b): (f64, f64)) {
        let middle = f64::midpoint(a, b);
        let (from, to, _) = self.between(middle);
        let bent = self.path.at(middle).curvature;
        let arc = Arc::between(from, to);
        if let (Some(arc), Edge::Inner) = (&arc, edge) {
            self.add_arc(path, arc, (a, b));
            return;
        }
        if bent == 0.0 && (from.ease == Ease::Linear || arc.is_some()) {
            path.line_to(self.edge_point(edge, b));
            return;
        }
        /// Arcs are cut about every ten degrees.
        const TURN: f64 = 0.18;
        /// Cubics for an eased piece: with six, quarter-rounds and S-curves stray by less than
        /// a ten thousandth of their size.
        const EASED: f64 = 6.0;
        /// So many are enough, even for one that a mistyped size winds up.
        const MOST: f64 = 1000.0;
        let turns = (bent.abs() * (b - a).abs() / TURN).ceil().min(MOST);
        let parts = match from.ease {
            Ease::Linear | Ease::ArcUp | Ease::ArcDown => turns.max(1.0),
            Ease::Smooth | Ease::RoundUp | Ease::RoundDown => turns.max(EASED),
        };
        let stretch = Stretch {
            stations: (from, to),
            curvature: bent,
            unrolled: Unrolled {
                ease: from.ease,
                from: from.at,
                length: to.at - from.at,
            },
        };
        let (start, end) = (stretch.unrolled.of(a), stretch.unrolled.of(b));
        let step = (end - start) / parts;
        let mut last = self.edge_with_slope(edge, &stretch, start);
        let mut i = 1.0;
        while i <= parts {
            let next = self.edge_with_slope(edge, &stretch, start + i * step);
            let third = step / 3.0;
            path.curve_to(last.0 + last.1 * third, next.0 - next.1 * third, next.0);
            last = next;
            i += 1.0;
        }
    }

    /// The inside where it goes in part of a circle.
    fn add_arc(&self, path: &mut BezPath, arc: &Arc, (a, b): (f64, f64)) {
        /// Cubics for an arc, which turns less than half round.
        const PARTS: u32 = 6;
        let (start, end) = (arc.angle(a), arc.angle(b));
        let step = (end - start) / f64::from(PARTS);
        let at = |angle: f64| {
            let ((s, v), (ds, dv)) = (arc.at(angle), arc.slope(angle));
            let pose = self.path.at(s);
            let along = pose.along() * (ds * (1.0 - pose.curvature * v));
            (pose.offset(v), along + pose.along().turn_90() * dv)
        };
        let mut last = at(start);
        for i in 1..=PARTS {
            let next = at(start + f64::from(i) * step);
            let third = step / 3.0;
            path.curve_to(last.0 + last.1 * third, next.0 - next.1 * third, next.0);
            last = next;
        }
    }

    /// A point of a silhouette on a stretch and how it moves with the unrolled parameter: along
    /// the path by `(1 − κ v) ds`, and aside by the change of its offset v.
    fn edge_with_slope(&self, edge: Edge, stretch: &Stretch<'_>, p: f64) -> (Point, Vec2) {
        let unrolled = &stretch.unrolled;
        let (a, b) = stretch.stations;
        let pose = self.path.at(unrolled.back(p));
        let (along, left) = (pose.along(), pose.along().turn_90());
        let (eased, change) = unrolled.eased(p);
        let by = |of: fn(&Station) -> f64| (lerp(of(a), of(b), eased), (of(b) - of(a)) * change);
        let aside = |(v, dv): (f64, f64)| {
            let ds = unrolled.slope(p) * (1.0 - stretch.curvature * v);
            (pose.at + left * v, along * ds + left * dv)
        };
        let along_z = |(z, dz): (f64, f64)| {
            let (at, slope) = aside(by(|s| s.rise));
            (Point::new(at.x, z), Vec2::new(slope.x, dz))
        };
        match edge {
            Edge::Outer => aside(by(|s| s.rise + s.depth / 2.0)),
            Edge::Inner => aside(by(|s| s.rise - s.depth / 2.0)),
            Edge::Far => along_z(by(|s| s.shift + s.width / 2.0)),
            Edge::Near => along_z(by(|s| s.shift - s.width / 2.0)),
        }
    }

    /// The smallest radius of a bend minus the steel on its inside, with its place; `None` when
    /// all is straight. Below zero the steel folds: there is more of it than the bend is wide.
    pub fn tightest_bend(&self) -> Option<(f64, f64)> {
        /// Places looked at in a bend, its ends just inside it: sizes may grow along it.
        const PLACES: [f64; 5] = [1e-6, 0.25, 0.5, 0.75, 1.0 - 1e-6];
        let mut tightest: Option<(f64, f64)> = None;
        let mut start = 0.0;
        for run in self.path.runs() {
            let bent = PLACES.iter().filter(|_| run.curvature != 0.0);
            for s in bent.map(|t| start + t * run.length) {
                let sizes = self.sizes(s);
                let inside = sizes.depth / 2.0 + sizes.rise * run.curvature.signum();
                let spare = 1.0 / run.curvature.abs() - inside;
                if tightest.is_none_or(|(least, _)| spare < least) {
                    tightest = Some((spare, s));
                }
            }
            start += run.length;
        }
        tightest
    }
}
