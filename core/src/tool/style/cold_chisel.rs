use serde::{Deserialize, Serialize};

use super::{MountKind, Style, Use};
use crate::asked::range::{RUN, STEEL};
use crate::asked::{Bar, Choice, Range, fields};
use crate::finding::Part;
use crate::shape::sweep::Ease;
use crate::tool::check::edge::Shaped;
use crate::tool::check::{Check, edge};
use crate::tool::forging::{Forging, Form, Worked};
use crate::tool::mount::Hold;
use crate::tool::solid::{Cut, Run};
use crate::units::{Angle, Length};

/// How the edge runs.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum EdgeLine {
    /// Straight across.
    Straight,
    /// Part of a circle, so that it can be rocked.
    Curved {
        /// How far its middle stands out before its corners.
        bow: Length,
    },
}

/// A blade forged flat, and an edge ground on it at an angle, hardened as its maker says.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ColdChisel {
    /// Along the edge.
    pub edge: Length,
    /// How it runs.
    pub line: EdgeLine,
    /// Included angle of the ground edge.
    pub angle: Angle,
    /// Thickness of the blade where the grinding begins.
    pub blade: Length,
    /// Length of the blade behind the grinding.
    pub taper: Length,
}

/// Included angles of an edge, degrees.
const ANGLE: Range = Range::new(15.0, 120.0);

fields! { ColdChisel: |Self { edge, line, angle, blade, taper }, v| {
    v.value("edge", edge, STEEL).says("Edge", "Along the edge");
    v.all(line);
    v.value("angle", angle, ANGLE).says("Edge angle", "Included angle of the ground edge");
    v.value("blade", blade, STEEL).says("Blade thickness", "Where the grinding begins");
    v.value("taper", taper, RUN).says("Blade", "Its length behind the grinding");
}}

fields! { EdgeLine: |it, v| {
    v.choice("line", it).says("Edge line", "How the edge runs");
    if let Self::Curved { bow } = it {
        v.value("bow", bow, STEEL).says("Bow", "How far its middle stands out before its corners");
    }
}}

impl Choice for EdgeLine {
    const WAYS: &'static [&'static str] = &["straight", "curved"];

    fn chosen(&self) -> usize {
        match self {
            Self::Straight => 0,
            Self::Curved { .. } => 1,
        }
    }

    fn choose(&mut self, index: usize) {
        *self = match (index, *self) {
            (0, _) => Self::Straight,
            (1, Self::Straight) => Self::Curved {
                bow: Length::fraction(1, 8, crate::units::Unit::Inch),
            },
            (_, kept) => kept,
        };
    }
}

impl ColdChisel {
    /// Length of what is ground, mm.
    fn ground_mm(&self) -> f64 {
        self.blade.mm() / 2.0 / (self.angle.radians() / 2.0).tan()
    }

    /// How many runs are ground: a bow is one of its own.
    fn ground_runs(&self) -> usize {
        match self.line {
            EdgeLine::Straight => 1,
            EdgeLine::Curved { .. } => 2,
        }
    }
}

impl Style for ColdChisel {
    const NAME: &'static str = "cold chisel";
    const ABOUT: &'static str = "Cuts cold steel: a stout blade with a ground edge";
    const MOUNT: MountKind = MountKind::Struck;
    const USE: Use = Use::ColdEdge;
    const LEADING: &'static str = "working.edge";

    fn suited(size: Length, bar: &Bar) -> Self {
        let unit = size.unit();
        let side = bar.stock.size().mm();
        Self {
            edge: size,
            line: EdgeLine::Straight,
            angle: Angle::degrees(60.0),
            blade: Length::measured(0.22 * side, unit),
            taper: Length::measured((3.0 * side).clamp(12.0, 100.0), unit),
        }
    }

    fn usual_mm(bar: &Bar) -> f64 {
        1.2 * bar.stock.size().mm()
    }

    fn struck(_size: Length, _bar: &Bar) -> (f64, Hold) {
        (177.8, Hold::Hand)
    }

    fn working(&self, base: Cut) -> Vec<Run> {
        let blade = Cut::boxed(self.edge.mm(), self.blade.mm());
        let ground = self.ground_mm();
        let mut runs = match self.line {
            EdgeLine::Straight => {
                let edge = Cut {
                    width: 0.0,
                    ..blade
                };
                vec![Run::taper(Part::Working, ground, edge, blade)]
            }
            EdgeLine::Curved { bow } => {
                // The bow rises as a quarter-round over its own height, ground with the rest.
                let bow = bow.mm().min(0.8 * ground);
                let at = Cut {
                    width: blade.width * bow / ground,
                    ..blade
                };
                let middle = Cut {
                    depth: 0.0,
                    width: 0.0,
                    ..blade
                };
                let first = Run {
                    ease: Ease::RoundUp,
                    ..Run::taper(Part::Working, bow, middle, at)
                };
                vec![first, Run::taper(Part::Working, ground - bow, at, blade)]
            }
        };
        runs.push(Run::taper(Part::Working, self.taper.mm(), blade, base));
        runs
    }

    fn check(&self, check: &mut Check<'_>) {
        let degrees = self.angle.in_degrees();
        let by = "Edge angle";
        edge::angle(check, &Shaped { degrees, by }, edge::COLD);
        edge::spreads(check, (self.edge.mm(), self.blade.mm()));
        edge::blade(check, self.blade.mm(), self.taper.mm());
        if let EdgeLine::Curved { bow } = self.line {
            edge::bow(check, bow.mm(), self.ground_mm());
        }
    }

    fn forged(&self) -> Vec<Worked> {
        let blade = self.ground_runs();
        let makes = vec![(0..blade, Form::Far), (blade..usize::MAX, Form::Done)];
        vec![Worked {
            step: Forging::DrawBlade,
            makes,
        }]
    }

    fn dressed() -> Forging {
        Forging::GrindEdge
    }

    fn ground_degrees(&self) -> Option<f64> {
        Some(self.angle.in_degrees())
    }

    fn gauge(&self) -> &'static str {
        "the blade in the middle of the body, its sides parallel"
    }
}
