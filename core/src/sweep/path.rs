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

    /// The pose at `s` mm along; the ends are continued straight. At a join the later run counts.
    pub fn at(&self, s: f64) -> Pose {
        let within = self
            .runs
            .iter()
            .find(|(from, _, run)| s < from + run.length);
        match within {
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
