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
    start: Point,
    heading: f64,
    runs: Vec<Run>,
}

impl Path {
    /// A path from `start` along `heading`.
    pub fn new(start: Point, heading: f64, runs: Vec<Run>) -> Self {
        Self {
            start,
            heading,
            runs,
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
        self.runs.iter().map(|run| run.length).sum()
    }

    /// The runs, in order.
    pub fn runs(&self) -> &[Run] {
        &self.runs
    }

    /// Where each run ends, mm along.
    pub fn breaks(&self) -> impl Iterator<Item = f64> {
        self.runs.iter().scan(0.0, |s, run| {
            *s += run.length;
            Some(*s)
        })
    }

    /// The pose at `s` mm along; the ends are continued straight. At a join the later run counts.
    pub fn at(&self, s: f64) -> Pose {
        let mut pose = Pose {
            at: self.start,
            heading: self.heading,
            curvature: 0.0,
        };
        let mut left = s;
        for run in &self.runs {
            if left < run.length {
                let curvature = if left < 0.0 { 0.0 } else { run.curvature };
                return pose.after(Run {
                    length: left,
                    curvature,
                });
            }
            pose = pose.after(*run);
            left -= run.length;
        }
        let curvature = pose.curvature;
        Pose {
            curvature,
            ..pose.after(Run {
                length: left,
                curvature: 0.0,
            })
        }
    }
}
