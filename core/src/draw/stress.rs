//! Stress along a half, in steps of colour over the side view, with its peak pointed out.

use kurbo::{Affine, BezPath, Point};

use super::on_work::with_work;
use super::views::side::rivet;
use super::views::{placed, polygon, slice};
use super::{DrawOptions, Sizes, pair};
use crate::asked::Work;
use crate::finding::Part;
use crate::number::plane::sides;
use crate::paper::dimension::segment;
use crate::paper::lettering::clear;
use crate::paper::{Align, Breaks, Drawing, Fill, Item, Line, Projection, bounds};
use crate::proof::strength::{HalfBending, Station, Strength};
use crate::tongs::document::Document;
use crate::tongs::model::{Half, Model};
use crate::units::Show;

/// The steps of the band end at these parts of what the steel bears; the last has no end.
pub const STRESS_STEPS: [f64; 4] = [0.25, 0.5, 0.75, 1.0];

/// The pair without dimensions; over its side view the worst half with its bending stress in
/// steps of [`STRESS_STEPS`], and a pointer to the peak, under a squeeze of so many newtons.
pub fn stressed(
    document: &Document,
    model: &Model,
    (strength, squeeze_n): (&Strength, f64),
    options: &DrawOptions,
) -> Drawing {
    let bare = DrawOptions {
        sizes: Sizes::None,
        ..*options
    };
    let mut drawing = pair(document, model, &bare);
    let Some(Item::Group(side)) = drawing.items.first_mut() else {
        return drawing;
    };
    let edges = bounds(&side.items).map_or((0.0, 0.0), |area| (area.y0, area.y1));
    let worst = Worst::of(document, model, strength, options.opening);
    let mut items = std::mem::take(&mut side.items);
    items.extend(options.breaks.of(worst.band(squeeze_n)));
    items.extend(rivet(document));
    items.extend(worst.pointer(
        squeeze_n,
        (document.projection, edges, options.breaks),
        (options.scale().text, document.units.show()),
    ));
    side.items = clear(items);
    drawing
}

/// The same with the pair shut on other work, each half turned by `half_angle` (radians) from the
/// set pose; the strength is that on this work.
pub fn stressed_on(
    document: &Document,
    model: &Model,
    (work, half_angle): (&Work, f64),
    under: (&Strength, f64),
    options: &DrawOptions,
) -> Drawing {
    let (document, model) = with_work(document, model, work);
    let opening = options.opening + half_angle;
    let options = DrawOptions {
        opening,
        ..*options
    };
    stressed(&document, &model, under, &options)
}

/// The half that is worst off, in its place in the side view.
struct Worst<'a> {
    half: &'a Half,
    bending: &'a HalfBending,
    pose: Affine,
}

impl<'a> Worst<'a> {
    fn of(document: &Document, model: &'a Model, strength: &'a Strength, opening: f64) -> Self {
        let bending = strength.worst_half();
        let is_second = strength.halves.get(1).is_some_and(|b| b == bending);
        let half = if is_second { &model.b } else { &model.a };
        let halves = placed(model, opening, document.second_jaw.is_some());
        let mine = halves.iter().find(|placed| std::ptr::eq(placed.half, half));
        Self {
            half,
            bending,
            pose: mine.map_or(Affine::IDENTITY, |placed| placed.pose),
        }
    }

    /// The half cut square to the tongs where its stress passes from one step to the next; what is
    /// not bent is plain.
    fn band(&self, squeeze_n: f64) -> Vec<Item> {
        let outline = self.half.outline();
        let points: Vec<Point> = sides(&outline).into_iter().map(|(a, _)| a).collect();
        let outline = self.pose * outline;
        let mut items = vec![Item::fill(outline.clone(), Fill::OtherHalf)];
        for run in runs(&self.bending.stations, squeeze_n) {
            let area = self.pose * slice(&points, run.from, run.to);
            items.push(Item::fill(area.clone(), Fill::Stress(run.step)).of(run.part));
            if usize::from(run.step) == STRESS_STEPS.len() {
                items.push(Item::line(area, Line::Warning));
            }
        }
        items.push(Item::line(outline, Line::Outline));
        items
    }

    /// A leader from the peak to the free side of the view, away from the top view, with its
    /// words.
    fn pointer(
        &self,
        squeeze_n: f64,
        (projection, (low, high), breaks): (Projection, (f64, f64), Breaks),
        (text, show): (f64, Show),
    ) -> Vec<Item> {
        let peak = self.bending.worst();
        let at = breaks.point(self.pose * peak.at);
        let (end, base) = match projection {
            Projection::ThirdAngle => (low - 0.6 * text, low - 1.6 * text),
            Projection::FirstAngle => (high + 2.2 * text, high + 2.5 * text),
        };
        let words = format!(
            "peak {} in the {}, {:.0} % of {}",
            show.stress(peak.stress_mpa(squeeze_n)),
            peak.part,
            100.0 * peak.use_per_n() * squeeze_n,
            show.stress(peak.limit_mpa),
        );
        let back = (end - at.y).signum() * text;
        vec![
            Item::fill(dart(at, back), Fill::Ink),
            Item::line(segment(at, Point::new(at.x, end)), Line::Dimension).of(peak.part),
            Item::text(Point::new(at.x, base), words, text, Align::Middle).of(peak.part),
        ]
    }
}

/// A stretch along the tongs within one step and one part.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Run {
    from: f64,
    to: f64,
    step: u8,
    part: Part,
}

/// The step that a part of what the steel bears falls into.
fn step(used: f64) -> u8 {
    let over = STRESS_STEPS.iter().filter(|&&end| used >= end).count();
    u8::try_from(over).expect("there are four steps and one over")
}

/// Stretches of equal step from the hand to the grip. Between two stations the stress goes
/// straight from one to the other.
fn runs(stations: &[Station], squeeze_n: f64) -> Vec<Run> {
    let place = |station: &Station| Place {
        x: station.at.x,
        used: station.use_per_n() * squeeze_n,
        part: station.part,
    };
    // Where the run of the half turns a corner a section may lie a little behind the one before;
    // the band shows the foremost.
    let mut places: Vec<Place> = Vec::new();
    for next in stations.iter().map(place) {
        if places.last().is_none_or(|last| next.x > last.x) {
            places.push(next);
        }
    }
    let mut all: Vec<Run> = Vec::new();
    for pair in places.windows(2) {
        for run in between(pair[0], pair[1]) {
            match all.last_mut() {
                Some(last) if (last.step, last.part) == (run.step, run.part) => last.to = run.to,
                _ => all.push(run),
            }
        }
    }
    all
}

/// A place along the tongs, with the part of what the steel bears that is used there.
#[derive(Debug, Clone, Copy)]
struct Place {
    x: f64,
    used: f64,
    part: Part,
}

/// The steps between two places.
fn between(a: Place, b: Place) -> Vec<Run> {
    let inside = |end: f64| (end - a.used) * (end - b.used) < 0.0;
    let place = |end: f64| a.x + (b.x - a.x) * (end - a.used) / (b.used - a.used);
    let crossed = STRESS_STEPS.into_iter().filter(|&end| inside(end));
    let mut cuts: Vec<f64> = crossed.map(place).chain([a.x, b.x]).collect();
    cuts.sort_by(f64::total_cmp);
    let used = |x: f64| a.used + (b.used - a.used) * (x - a.x) / (b.x - a.x).max(f64::MIN_POSITIVE);
    let run = |ends: &[f64]| Run {
        from: ends[0],
        to: ends[1],
        step: step(used(f64::midpoint(ends[0], ends[1]))),
        part: a.part,
    };
    let real = cuts.windows(2).filter(|ends| ends[1] > ends[0]);
    real.map(run).collect()
}

/// An arrowhead whose tip is at a point and whose tail lies towards `back`, mm.
fn dart(tip: Point, back: f64) -> BezPath {
    let corner = |side: f64| Point::new(tip.x + side * 0.32 * back.abs(), tip.y + back);
    polygon(&[tip, corner(-1.0), corner(1.0)])
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rein(x: f64, used: f64) -> Place {
        let part = Part::Rein;
        Place { x, used, part }
    }

    /// A straight rise from nothing to twice the limit crosses each step where it should, and no
    /// stretch is left out.
    #[test]
    fn a_straight_rise_passes_every_step() {
        let runs = between(rein(0.0, 0.0), rein(200.0, 2.0));
        let ends: Vec<(f64, f64, u8)> = runs.iter().map(|r| (r.from, r.to, r.step)).collect();
        let expected = [
            (0.0, 25.0, 0),
            (25.0, 50.0, 1),
            (50.0, 75.0, 2),
            (75.0, 100.0, 3),
            (100.0, 200.0, 4),
        ];
        assert_eq!(ends, expected);
    }

    #[test]
    fn a_fall_is_the_rise_turned_round() {
        let steps: Vec<u8> = between(rein(0.0, 0.9), rein(10.0, 0.1))
            .iter()
            .map(|r| r.step)
            .collect();
        assert_eq!(steps, [3, 2, 1, 0]);
    }

    #[test]
    fn the_limit_itself_is_over() {
        assert_eq!(step(1.0), 4);
        assert_eq!(step(0.999), 3);
        assert_eq!(step(0.0), 0);
    }
}
