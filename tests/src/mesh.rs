//! A half as triangles, made from the surfaces that the core gives and from nothing that it has
//! integrated.
//!
//! Every solid is a slab: a lower and an upper sheet of points over the same grid, closed round
//! the rim. Sweeps are one slab each; the body is one slab for each trapezoid of its outline
//! between two close x, as wide as its faces stand there, and the hole is a slab turned inside
//! out.

use std::sync::Arc;

use parry3d::mass_properties::MassProperties;
use parry3d::math::Vector;
use reinwright_core::shape::section::Section;
use reinwright_core::shape::sweep::Sweep;
use reinwright_core::shape::{Piece, Solid};
use reinwright_core::tongs::body::Body;
use reinwright_core::tongs::model::Half;

use crate::outline::corners;

/// The inner or the outer surface of a section over u.
type Surface = for<'a, 'b> fn(&'a Section<'b>, f64) -> f64;

fn lower(section: &Section<'_>, u: f64) -> f64 {
    section.lower(u)
}

fn upper(section: &Section<'_>, u: f64) -> f64 {
    section.upper(u)
}

/// Points over a grid.
type Sheet = Vec<Vec<[f64; 3]>>;

/// Triangles, seen anticlockwise from outside.
#[derive(Debug, Clone, Default)]
pub struct Mesh {
    /// The corners.
    pub points: Vec<[f64; 3]>,
    /// Each triangle's corners.
    pub triangles: Vec<[u32; 3]>,
}

/// What is measured of a mesh.
#[derive(Debug, Clone, Copy)]
pub struct Measured {
    /// mm³.
    pub volume_mm3: f64,
    /// Centre of mass, mm.
    pub centre: [f64; 3],
}

/// How finely one stretch of a sweep, one piece of a section and the body are cut.
const ALONG: u32 = 16;
const ACROSS: u32 = 72;
const SLICE_MM: f64 = 0.5;

impl Mesh {
    /// The whole half: jaw, body, rein, and the hole inside out.
    pub fn half(half: &Half) -> Self {
        let mut mesh = Self::default();
        mesh.add_sweep(&half.jaw);
        mesh.add_sweep(&half.rein);
        mesh.add_body(&half.body);
        mesh.add_hole(&half.body);
        mesh
    }

    /// The solids of a piece without their holes, each once; a plate is told as the body that it is.
    pub fn piece(piece: &Piece, body: &Body) -> Self {
        let mut mesh = Self::default();
        let solids = piece.stretches.iter().map(|stretch| &stretch.solid);
        let mut last: Option<*const ()> = None;
        for solid in solids {
            let own: *const () = match solid {
                Solid::Swept(sweep) => Arc::as_ptr(sweep).cast(),
                Solid::Plated(plate) => Arc::as_ptr(plate).cast(),
            };
            if last.replace(own) == Some(own) {
                continue;
            }
            match solid {
                Solid::Swept(sweep) => mesh.add_sweep(sweep),
                Solid::Plated(_) => mesh.add_body(body),
            }
        }
        mesh
    }

    /// The solids of a piece of sweeps alone, without what is sunk into them.
    pub fn swept(piece: &Piece) -> Self {
        let mut mesh = Self::default();
        for stretch in &piece.stretches {
            match &stretch.solid {
                Solid::Swept(sweep) => mesh.add_sweep(sweep),
                Solid::Plated(_) => {}
            }
        }
        mesh
    }

    /// A sweep, from its sections along its path.
    pub fn add_sweep(&mut self, sweep: &Sweep) {
        let cuts = sweep.cuts(0.0, sweep.length());
        let pieces = cuts.windows(2).flat_map(|w| {
            let (a, b) = (w[0], w[1]);
            let turn = sweep.path.at(f64::midpoint(a, b)).curvature.abs() * (b - a);
            spread(a, b, ALONG.max(parts_of(turn)))
        });
        let mut stops: Vec<f64> = pieces.collect();
        stops.dedup_by(|a, b| (*a - *b).abs() < 1e-9);
        let us = across(&cuts.iter().map(|&s| sweep.section(s)).collect::<Vec<_>>());
        let sheet = |surface: Surface| -> Sheet {
            let row = |&s: &f64| {
                let (pose, section, rise) = (sweep.path.at(s), sweep.section(s), sweep.rise(s));
                let point = |&u: &f64| {
                    let p = pose.offset(rise + surface(&section, u));
                    [p.x, p.y, sweep.shift(s) + u * section.width / 2.0]
                };
                us.iter().map(point).collect()
            };
            stops.iter().map(row).collect()
        };
        self.add_slab(&sheet(lower), &sheet(upper));
    }

    /// Neck, boss and shoulder without the hole.
    pub fn add_body(&mut self, body: &Body) {
        self.add_body_between(body, f64::MIN, f64::MAX);
    }

    /// The part of the body between two x.
    pub fn add_body_between(&mut self, body: &Body, from: f64, to: f64) {
        let corners = corners(&body.plate.path());
        let mut xs: Vec<f64> = corners.iter().map(|p| p.0).collect();
        xs.extend(body.plate.faces.cuts());
        xs.sort_by(f64::total_cmp);
        let (first, last) = (xs[0].max(from), xs[xs.len() - 1].min(to));
        let mut x = first;
        while x < last {
            xs.push(x);
            x += SLICE_MM;
        }
        xs.push(last);
        xs.retain(|x| (first..=last).contains(x));
        xs.sort_by(f64::total_cmp);
        xs.dedup_by(|a, b| (*a - *b).abs() < 1e-7);
        for pair in xs.windows(2) {
            self.add_slice(body, &corners, (pair[0], pair[1]));
        }
    }

    /// The outline between two x with no corner between them: trapezoids.
    fn add_slice(&mut self, body: &Body, corners: &[(f64, f64)], (a, b): (f64, f64)) {
        let middle = f64::midpoint(a, b);
        let n = corners.len();
        let sides = (0..n).map(|i| (corners[i], corners[(i + 1) % n]));
        let mut crossing: Vec<_> = sides
            .filter(|(p, q)| (p.0 - middle) * (q.0 - middle) < 0.0)
            .map(|(p, q)| move |x: f64| p.1 + (q.1 - p.1) * (x - p.0) / (q.0 - p.0))
            .collect();
        crossing.sort_by(|f, g| f(middle).total_cmp(&g(middle)));
        let [plain, own] = &body.plate.profiles;
        for pair in crossing.chunks_exact(2) {
            let section = |x: f64| {
                let (low, high) = body.plate.faces.at(x);
                Section {
                    depth: pair[1](x) - pair[0](x),
                    width: high - low,
                    from: plain,
                    to: if middle < 0.0 { own } else { plain },
                    blend: body.plate.faces.blend(x),
                }
            };
            let us = across(&[section(middle)]);
            // The outside of the half is up at the jaw and down at the rein.
            let up = if middle < 0.0 { -1.0 } else { 1.0 };
            let sheet = |surface: Surface| -> Sheet {
                let row = |x: f64| {
                    let (section, (low, high)) = (section(x), body.plate.faces.at(x));
                    let centre = f64::midpoint(pair[0](x), pair[1](x));
                    let z = |u: f64| f64::midpoint(low, high) + up * u * section.width / 2.0;
                    let point = |&u: &f64| [x, centre + up * surface(&section, u), z(u)];
                    us.iter().map(point).collect()
                };
                vec![row(a), row(b)]
            };
            self.add_slab(&sheet(lower), &sheet(upper));
        }
    }

    /// The hole, inside out: its volume counts as less than nothing.
    pub fn add_hole(&mut self, body: &Body) {
        let (r, high) = (body.plate.hole_radius, body.plate.faces.thickness);
        let xs = spread(-r, r, 2 * ACROSS);
        let y = |x: f64| (r * r - x * x).max(0.0).sqrt();
        let sheet = |sign: f64| -> Sheet {
            let row = |&x: &f64| vec![[x, sign * y(x), high], [x, sign * y(x), 0.0]];
            xs.iter().map(row).collect()
        };
        self.add_slab(&sheet(-1.0), &sheet(1.0));
    }

    /// A closed solid between two sheets: rows run along, places in a row across to the left.
    fn add_slab(&mut self, lower: &Sheet, upper: &Sheet) {
        let base = u32::try_from(self.points.len()).expect("a half has fewer than 2^32 points");
        let count = |n: usize| u32::try_from(n).expect("a sheet is small");
        let (rows, columns) = (count(lower.len()), count(lower[0].len()));
        self.points.extend(lower.iter().flatten());
        self.points.extend(upper.iter().flatten());
        let low = |i: u32, j: u32| base + i * columns + j;
        let up = |i: u32, j: u32| base + (rows + i) * columns + j;
        for i in 0..rows - 1 {
            for j in 0..columns - 1 {
                self.add_quad([low(i, j), low(i + 1, j), low(i + 1, j + 1), low(i, j + 1)]);
                self.add_quad([up(i, j), up(i, j + 1), up(i + 1, j + 1), up(i + 1, j)]);
            }
            let last = columns - 1;
            self.add_quad([low(i, 0), up(i, 0), up(i + 1, 0), low(i + 1, 0)]);
            self.add_quad([low(i, last), low(i + 1, last), up(i + 1, last), up(i, last)]);
        }
        for j in 0..columns - 1 {
            let last = rows - 1;
            self.add_quad([low(0, j), low(0, j + 1), up(0, j + 1), up(0, j)]);
            self.add_quad([low(last, j), up(last, j), up(last, j + 1), low(last, j + 1)]);
        }
    }

    fn add_quad(&mut self, [a, b, c, d]: [u32; 4]) {
        self.triangles.extend([[a, b, c], [a, c, d]]);
    }

    /// Whether every edge of every triangle is run along once each way: nothing is open.
    pub fn is_closed(&self) -> bool {
        let mut edges = std::collections::BTreeMap::new();
        for [a, b, c] in &self.triangles {
            for (p, q) in [(a, b), (b, c), (c, a)] {
                let way = if p < q { 1 } else { -1 };
                *edges.entry((p.min(q), p.max(q))).or_insert(0) += way;
            }
        }
        edges.values().all(|&sum| sum == 0)
    }

    /// The mesh measured by parry3d at a density of one.
    pub fn measured(&self) -> Measured {
        #[allow(
            clippy::cast_possible_truncation,
            reason = "parry3d measures in single precision"
        )]
        let point = |p: &[f64; 3]| Vector::new(p[0] as f32, p[1] as f32, p[2] as f32);
        let points: Vec<Vector> = self.points.iter().map(point).collect();
        let mass = MassProperties::from_trimesh(1.0, &points, &self.triangles);
        let com = mass.local_com;
        Measured {
            volume_mm3: f64::from(mass.mass()),
            centre: [com.x, com.y, com.z].map(f64::from),
        }
    }
}

/// Facets of a bend: one every two degrees, so that what they cut off is under a thousandth.
fn parts_of(turn: f64) -> u32 {
    const EVERY: f64 = 0.035;
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "no bend here turns by more than a few rounds"
    )]
    let parts = (turn / EVERY).clamp(0.0, 1000.0).ceil() as u32;
    parts
}

/// Places from `a` to `b`, closer together towards both ends.
fn spread(a: f64, b: f64, parts: u32) -> Vec<f64> {
    let at = |i: u32| {
        let t = f64::from(i) / f64::from(parts);
        a + (b - a) * (1.0 - (std::f64::consts::PI * t).cos()) / 2.0
    };
    (0..=parts).map(at).collect()
}

/// Places in u that suit all these sections: every corner from both sides, and finely between
/// where a surface may be round.
fn across(sections: &[Section<'_>]) -> Vec<f64> {
    /// Just off a corner, so that a jump is seen from both sides.
    const STEP: f64 = 1e-9;
    let mut breaks: Vec<f64> = sections.iter().flat_map(Section::breaks).collect();
    breaks.sort_by(f64::total_cmp);
    breaks.dedup_by(|a, b| (*a - *b).abs() < 1e-9);
    let round = |s: &Section<'_>| s.from.curved() || s.to.curved();
    let parts = if sections.iter().any(round) {
        ACROSS
    } else {
        1
    };
    let pairs = breaks.windows(2);
    pairs
        .flat_map(|w| spread(w[0] + STEP, w[1] - STEP, parts))
        .collect()
}
