use kurbo::{Point, Vec2};

/// A stretch of constant curvature.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Run {
    /// Arc length, mm.
    pub length: f64,
    /// Curvature, 1/mm; positive turns left.
    pub curvature: f64,
}

/// Where a path is and which way it goes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pose {
    /// The place.
    pub at: Point,
    /// The heading, radians from +x.
    pub heading: f64,
    /// Curvature there, 1/mm; positive turns left.
    pub curvature: f64,
}

impl Pose {
    /// The unit vector along the path.
    pub fn along(&self) -> Vec2 {
        Vec2::from_angle(self.heading)
    }

    /// The unit vector to the left of the path: the outside of a half.
    pub fn left(&self) -> Vec2 {
        self.along().turn_90()
    }

    /// The place `offset` mm to the left.
    pub fn offset(&self, offset: f64) -> Point {
        self.at + self.left() * offset
    }

    /// How far along a run from here x is `x` mm, where it rises all the way. On an arc
    /// `sin(h + t) = sin h + u` with u = κ (x − x₀), and so
    /// `sin t = u (cos h + sin h (2 sin h + u) / (cos h + cos(h + t)))`, exact for u → 0 as well.
    fn along_to_x(&self, x: f64, run: Run) -> f64 {
        let far = x - self.at.x;
        let (sin, cos) = self.heading.sin_cos();
        let u = run.curvature * far;
        let later = (sin + u).clamp(-1.0, 1.0);
        let later_cos = (1.0 - later * later).sqrt();
        let slope = cos + sin * (sin + later) / (cos + later_cos).max(f64::MIN_POSITIVE);
        if u.abs() < 1e-12 {
            return far * slope;
        }
        (u * slope).atan2(cos * later_cos + sin * later) / run.curvature
    }

    fn after(&self, run: Run) -> Self {
        let turn = run.curvature * run.length;
        if run.curvature == 0.0 {
            return Self {
                at: self.at + self.along() * run.length,
                heading: self.heading,
                curvature: 0.0,
            };
        }
        // The chord of an arc: length times sinc of half the turn, at half the turn.
        let half = turn / 2.0;
        let sinc = if half.abs() < 1e-6 {
            1.0 - half * half / 6.0
        } else {
            half.sin() / half
        };
        let chord = Vec2::from_angle(self.heading + half) * (run.length * sinc);
        Self {
            at: self.at + chord,
            heading: self.heading + turn,
            curvature: run.curvature,
        }
    }
}

/// A tangent-continuous path of lines and arcs, measured by arc length.
#[derive(Debug, Clone, PartialEq)]
pub struct Path {
    /// Each run with the pose that it starts from and how far along that is.
    runs: Vec<(f64, Pose, Run)>,
    length: f64,
    end: Pose,
}

impl Path {
    /// A path from `start` along `heading`.
    pub fn new(start: Point, heading: f64, runs: Vec<Run>) -> Self {
        let (mut s, mut pose) = (
            0.0,
            Pose {
                at: start,
                heading,
                curvature: 0.0,
            },
        );
        let mut placed = Vec::with_capacity(runs.len());
        for run in runs {
            placed.push((s, pose, run));
            pose = pose.after(run);
            s += run.length;
        }
        Self {
            runs: placed,
            length: s,
            end: pose,
        }
    }

    /// The runs between poses, for a path from a start along a heading: a line or an arc where
    /// one fits, else two arcs that meet half way (a biarc with equal arms).
    pub fn through(poses: &[(Point, f64)]) -> Vec<Run> {
        poses
            .windows(2)
            .flat_map(|pair| biarc(pair[0], pair[1]))
            .collect()
    }

    /// A straight path.
    pub fn straight(start: Point, heading: f64, length: f64) -> Self {
        Self::new(
            start,
            heading,
            vec![Run {
                length,
                curvature: 0.0,
            }],
        )
    }

    /// Its length, mm.
    pub fn length(&self) -> f64 {
        self.length
    }

    /// The runs, in order.
    pub fn runs(&self) -> impl Iterator<Item = Run> {
        self.runs.iter().map(|(_, _, run)| *run)
    }

    /// Where each run ends, mm along.
    pub fn breaks(&self) -> impl Iterator<Item = f64> {
        self.runs.iter().map(|(s, _, run)| s + run.length)
    }

    /// How far along its x is `x` mm; the nearer end where it does not come by. The path must not
    /// turn back.
    pub(crate) fn along_at_x(&self, x: f64) -> f64 {
        let passed = |(_, pose, _): &(f64, Pose, Run)| pose.at.x < x;
        let Some(last) = self.runs.partition_point(passed).checked_sub(1) else {
            return 0.0;
        };
        if x >= self.end.at.x {
            return self.length;
        }
        let (from, pose, run) = &self.runs[last];
        from + pose.along_to_x(x, *run).clamp(0.0, run.length)
    }

    /// The pose at `s` mm along; the ends are continued straight. At a join the later run counts.
    pub fn at(&self, s: f64) -> Pose {
        let passed = |(from, _, run): &(f64, Pose, Run)| from + run.length <= s;
        match self.runs.get(self.runs.partition_point(passed)) {
            Some((from, pose, run)) => {
                let curvature = if s < 0.0 { 0.0 } else { run.curvature };
                pose.after(Run {
                    length: s - from,
                    curvature,
                })
            }
            None => {
                let past = Run {
                    length: s - self.length,
                    curvature: 0.0,
                };
                Pose {
                    curvature: self.end.curvature,
                    ..self.end.after(past)
                }
            }
        }
    }
}

/// Two arcs from one pose to another, tangent to each other: with arms of one length d along both
/// headings, |v − d (t₁ + t₂)| = 2 d, so d² (2 − 2 t₁·t₂) + 2 d v·(t₁ + t₂) − v·v = 0 with v
/// from start to end. On one line, or on one circle, they are one line or one arc.
fn biarc((from, h1): (Point, f64), (to, h2): (Point, f64)) -> Vec<Run> {
    /// Poses nearer than this are one, mm.
    const LEAST: f64 = 1e-9;
    let (t1, t2) = (Vec2::from_angle(h1), Vec2::from_angle(h2));
    let v = to - from;
    if v.hypot() < LEAST {
        return Vec::new();
    }
    let (a, b, c) = (2.0 * (1.0 - t1.dot(t2)), v.dot(t1 + t2), v.hypot2());
    // The root of a d² + 2 b d − c = 0 that is positive, in the form that is exact for a → 0.
    let d = c / (b + (b * b + a * c).sqrt()).max(LEAST);
    let meet = (from + t1 * d).midpoint(to - t2 * d);
    let (first, second) = (arc_to(from, h1, meet), arc_from(meet, to, h2));
    /// Bends nearer than this are one, 1/mm.
    const ONE: f64 = 1e-10;
    if (first.curvature - second.curvature).abs() > ONE {
        return vec![first, second];
    }
    vec![Run {
        length: first.length + second.length,
        curvature: first.curvature,
    }]
}

/// The arc that leaves a point along a heading and passes through another.
fn arc_to(from: Point, heading: f64, to: Point) -> Run {
    let chord = to - from;
    let half = (chord.atan2() - heading + std::f64::consts::PI).rem_euclid(std::f64::consts::TAU)
        - std::f64::consts::PI;
    arc_over(chord.hypot(), half)
}

/// The arc that comes from a point and arrives at another along a heading.
fn arc_from(from: Point, to: Point, heading: f64) -> Run {
    let chord = to - from;
    let half = (heading - chord.atan2() + std::f64::consts::PI).rem_euclid(std::f64::consts::TAU)
        - std::f64::consts::PI;
    arc_over(chord.hypot(), half)
}

/// The arc over a chord that turns by twice `half` radians.
fn arc_over(chord: f64, half: f64) -> Run {
    /// Turns smaller than this are straight, radians.
    const STRAIGHT: f64 = 1e-12;
    if half.abs() < STRAIGHT || chord == 0.0 {
        return Run {
            length: chord,
            curvature: 0.0,
        };
    }
    let curvature = 2.0 * half.sin() / chord;
    Run {
        length: if curvature.abs() < STRAIGHT {
            chord
        } else {
            2.0 * half / curvature
        },
        curvature,
    }
}
