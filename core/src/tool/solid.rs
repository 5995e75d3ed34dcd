//! The steel of a tool, section after section along a straight line.

use std::sync::Arc;

use kurbo::Point;

use crate::asked::{Edge, PlainSection};
use crate::finding::Part;
use crate::shape::section::Profile;
use crate::shape::sweep::{Ease, Path, Station, Sweep};

/// The shape of a section in the box around it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Outline {
    /// Four sharp corners.
    Box,
    /// An ellipse that fills the box.
    Round,
    /// Eight sides.
    Octagon,
    /// Six sides, a flat up and a flat down.
    Hexagon,
    /// Corners rounded over such parts of the half-width and the half-depth.
    Rounded(f64, f64),
    /// Corners cut off over such parts of the half-width and the half-depth.
    Chamfered(f64, f64),
}

/// A section, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cut {
    /// Along y.
    pub depth: f64,
    /// Along z.
    pub width: f64,
    /// In its box.
    pub outline: Outline,
}

/// A stretch between two sections that belongs to one part.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Run {
    /// The part.
    pub part: Part,
    /// Along the tool, mm.
    pub length: f64,
    /// Where it begins, nearer to the working end.
    pub from: Cut,
    /// Where it ends.
    pub to: Cut,
    /// How sizes go from one to the other.
    pub ease: Ease,
}

impl Outline {
    /// As a profile in its unit box.
    pub fn profile(self) -> Profile {
        match self {
            Self::Box => Profile::rectangle(),
            Self::Round => Profile::rounded(1.0, 1.0),
            Self::Octagon => {
                let leg = 2.0 - 2f64.sqrt();
                Profile::chamfered(leg, leg)
            }
            Self::Hexagon => Profile::chamfered(0.5, 1.0),
            Self::Rounded(a, b) => Profile::rounded(a, b),
            Self::Chamfered(a, b) => Profile::chamfered(a, b),
        }
    }
}

impl Cut {
    /// A round.
    pub fn round(diameter: f64) -> Self {
        Self {
            depth: diameter,
            width: diameter,
            outline: Outline::Round,
        }
    }

    /// A box with sharp corners.
    pub fn boxed(depth: f64, width: f64) -> Self {
        Self {
            depth,
            width,
            outline: Outline::Box,
        }
    }

    /// A plain section as it is asked for; half a round counts as the oval around it.
    pub fn of(section: &PlainSection) -> Self {
        let (depth, width) = (section.depth_mm(), section.width_mm());
        let part = |size: f64, of: f64| (2.0 * size / of).min(1.0);
        let edged = |edge: Edge| match edge {
            Edge::Sharp => Outline::Box,
            Edge::Chamfer(size) => {
                Outline::Chamfered(part(size.mm(), width), part(size.mm(), depth))
            }
            Edge::Radius(size) => Outline::Rounded(part(size.mm(), width), part(size.mm(), depth)),
        };
        let outline = match *section {
            PlainSection::Round { .. }
            | PlainSection::Oval { .. }
            | PlainSection::HalfRound { .. } => Outline::Round,
            PlainSection::Square { edge, .. } | PlainSection::Rectangle { edge, .. } => edged(edge),
            PlainSection::Octagon { .. } => Outline::Octagon,
            PlainSection::Hexagon { .. } => Outline::Hexagon,
        };
        Self {
            depth,
            width,
            outline,
        }
    }

    /// The same shape in another box.
    #[must_use]
    pub fn sized(self, depth: f64, width: f64) -> Self {
        Self {
            depth,
            width,
            ..self
        }
    }

    /// Its larger size, mm.
    pub fn large(self) -> f64 {
        self.depth.max(self.width)
    }

    /// Its smaller size, mm.
    pub fn small(self) -> f64 {
        self.depth.min(self.width)
    }

    /// mm².
    pub fn area_mm2(self) -> f64 {
        self.depth * self.width * self.outline.profile().fullness()
    }
}

impl Run {
    /// In proportion from one section to another.
    pub fn taper(part: Part, length: f64, from: Cut, to: Cut) -> Self {
        Self {
            part,
            length,
            from,
            to,
            ease: Ease::Linear,
        }
    }

    /// One section all along.
    pub fn prism(part: Part, length: f64, cut: Cut) -> Self {
        Self::taper(part, length, cut, cut)
    }

    /// A nose that is half round across the width, from nothing to its whole width.
    pub fn nose(part: Part, cut: Cut) -> Self {
        let from = Cut { width: 0.0, ..cut };
        Self {
            ease: Ease::RoundUp,
            ..Self::taper(part, cut.width / 2.0, from, cut)
        }
    }
}

/// Runs one behind the other as one sweep from x = `from_mm` towards −x.
pub(super) fn sweep(runs: &[Run], from_mm: f64) -> Arc<Sweep> {
    let mut outlines: Vec<Outline> = Vec::new();
    let mut stations: Vec<Station> = Vec::new();
    let mut at = 0.0;
    let mut add = |at: f64, cut: Cut, ease: Ease| {
        let known = outlines.iter().position(|own| *own == cut.outline);
        let profile = known.unwrap_or_else(|| {
            outlines.push(cut.outline);
            outlines.len() - 1
        });
        let (depth, width) = (cut.depth, cut.width);
        stations.push(Station {
            at,
            depth,
            width,
            rise: 0.0,
            shift: 0.0,
            profile,
            ease,
        });
    };
    for run in runs {
        add(at, run.from, run.ease);
        at += run.length;
    }
    if let Some(last) = runs.last() {
        add(at, last.to, Ease::Linear);
    }
    Arc::new(Sweep {
        path: Path::straight(Point::new(from_mm, 0.0), std::f64::consts::PI, at),
        stations,
        profiles: outlines.into_iter().map(Outline::profile).collect(),
    })
}
