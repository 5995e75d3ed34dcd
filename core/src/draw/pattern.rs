//! A half as a pattern that a beam or a torch cuts out of sheet metal.

use kurbo::{BezPath, Circle, Point, Shape, Vec2};

use super::facts::Which;
use crate::number::offset::offset;
use crate::paper::dimension::segment;
use crate::paper::{Drawing, Item, Line};
use crate::shape::sweep::{Edge, Sweep};
use crate::tongs::model::{Half, Model};

/// Which piece is wanted when the outline is cut.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Kept {
    /// What is inside of it: a pattern as large as the half, to be laid on.
    #[default]
    Inside,
    /// What is outside of it: a window as large as the half, to be laid in.
    Outside,
}

/// The side view of a half as lines that the middle of a cut follows, in three groups: the outline,
/// the hole, and lines to scribe (the axis, the rivet, heel, shoulder and hand). The cut takes
/// `kerf_mm`, half of it on either side of its middle; what is kept has the true size.
pub fn pattern(model: &Model, which: Which, kept: Kept, kerf_mm: f64) -> Drawing {
    let turned;
    let half = match which {
        Which::Either | Which::A => &model.a,
        Which::B => {
            turned = model.turned_over();
            &turned.a
        }
    };
    let aside = kerf_mm / 2.0;
    let (outline, hole) = match kept {
        Kept::Inside => (aside, -aside),
        Kept::Outside => (-aside, aside),
    };
    let radius = half.body.plate.hole_radius + hole;
    let group = |name: &str, paths: Vec<BezPath>, line: Line| {
        let items = paths.into_iter().map(|path| Item::line(path, line));
        Item::group(name, Vec2::ZERO, items.collect())
    };
    let hole = match kept {
        Kept::Inside if radius > 0.0 => vec![Circle::new(Point::ORIGIN, radius).to_path(1e-4)],
        // A window has no plate in which a hole could be.
        Kept::Inside | Kept::Outside => Vec::new(),
    };
    Drawing {
        items: vec![
            group("outline", vec![set_off(half, outline)], Line::Outline),
            group("hole", hole, Line::Outline),
            group("scribe", scribed(half), Line::Fine),
        ],
    }
}

fn set_off(half: &Half, distance: f64) -> BezPath {
    if distance == 0.0 {
        return half.outline();
    }
    offset(&half.outline(), distance)
}

/// Lines that tell on the pattern where the parts meet.
fn scribed(half: &Half) -> Vec<BezPath> {
    /// Half the length of the cross on the rivet, mm.
    const CROSS: f64 = 4.0;
    let across = |sweep: &Sweep, s: f64| {
        segment(
            sweep.edge_point(Edge::Inner, s),
            sweep.edge_point(Edge::Outer, s),
        )
    };
    let arm = |x: f64, y: f64| segment(Point::new(-x, -y), Point::new(x, y));
    vec![
        arm(CROSS, 0.0),
        arm(0.0, CROSS),
        across(&half.jaw, 0.0),
        across(&half.rein, 0.0),
        across(&half.rein, half.hand_at),
    ]
}
