//! What is wrong with a sketch: what cannot be read, and what cannot be drawn as it was asked.

use super::edit::{FARTHEST, MOST_NODES, WIDEST};
use super::grown::LONGEST_LINE;
use super::{LEAST_APART, Placed, STEEPEST, Sketch, SketchLay, Steel};
use crate::asked::LimitError;
use crate::asked::range::STEEL;
use crate::finding::{GEOMETRY, Kind};
use crate::tongs::jaw::Remark;
use crate::units::Show;

impl Sketch {
    /// Checks every number of a sketch that was read from a file.
    ///
    /// # Errors
    /// The first value that is not finite or not within its limits.
    pub(crate) fn check_limits(&self) -> Result<(), LimitError> {
        let count = self.nodes.len();
        within("jaw.nodes", count, (2, MOST_NODES))?;
        within("jaw.shapes", self.shapes.len(), (1, MOST_NODES))?;
        within("jaw.grip", self.grip.0, (0, count - 2))?;
        within("jaw.grip", self.grip.1, (self.grip.0 + 1, count - 1))?;
        size("jaw.drawn_for".to_owned(), self.drawn_for.mm(), STEEL.most)?;
        if let SketchLay::Stopped { at } | SketchLay::Crosswise { at } = self.lay {
            size("jaw.lay".to_owned(), at.mm(), FARTHEST)?;
        }
        for (index, node) in self.nodes.iter().enumerate() {
            let place = |what: &str| format!("jaw.nodes[{index}].{what}");
            size(place("x"), node.x.mm(), FARTHEST)?;
            size(place("y"), node.y.mm(), WIDEST)?;
            measure(place("slope"), (node.slope, "deg"), STEEPEST)?;
            if let Some(steel) = &node.steel {
                self.check_steel(steel, &place)?;
            }
        }
        for (index, shape) in self.shapes.iter().enumerate() {
            if let Some(fault) = shape.fault() {
                return Err(LimitError {
                    path: format!("jaw.shapes[{index}]"),
                    found: format!("no section: {fault}"),
                    least: "-1".to_owned(),
                    most: "1".to_owned(),
                });
            }
        }
        Ok(())
    }

    fn check_steel(
        &self,
        steel: &Steel,
        place: &impl Fn(&str) -> String,
    ) -> Result<(), LimitError> {
        size(place("inside"), steel.inside.mm(), WIDEST)?;
        size(place("back"), steel.back.mm(), WIDEST)?;
        size(place("width"), steel.width.mm(), WIDEST)?;
        size(place("shift"), steel.shift.mm(), WIDEST)?;
        within(&place("shape"), steel.shape, (0, self.shapes.len() - 1))
    }

    /// What cannot be drawn as it was asked, with the node where it is.
    pub(super) fn notices(&self, length: f64) -> Vec<Remark> {
        let mut all = Vec::new();
        let nodes = self.nodes.windows(2).enumerate();
        for (index, pair) in nodes {
            let apart = pair[1].x.mm() - pair[0].x.mm();
            if apart < LEAST_APART {
                all.push(turned_back(index + 2, apart));
            }
        }
        all.extend(self.thin());
        let placed = self.placed(length);
        all.extend(swings(placed.line));
        all.extend(self.folds(placed));
        all
    }

    /// A line that bends tighter than the steel on the inside of the bend is thick folds the
    /// steel.
    fn folds(&self, placed: Placed) -> Option<Remark> {
        let along = placed.along.clone();
        let (spare, s) = self.form_of(placed).placed(0.0, 0.0).tightest_bend()?;
        let node = along.iter().filter(|at| **at <= s).count().max(1);
        let words = move |show: Show| {
            // A hair is a size that no smith reads.
            let tighter = if spare < -Remark::NEAR {
                format!("{} tighter", show.text(-spare))
            } else {
                "tighter".to_owned()
            };
            format!(
                "folds on itself past node {node}: the bend is {tighter} than the steel is deep there"
            )
        };
        let hint = "move the nodes farther apart, or level their slopes";
        let remark = || Remark::stop(Kind::JawFolds, words, hint, GEOMETRY).held(-spare, 0.0);
        (spare < 0.0).then(remark)
    }

    fn thin(&self) -> Vec<Remark> {
        let thin = |(index, node): (usize, &super::Node)| {
            let steel = node.steel?;
            let depth = steel.back.mm() - steel.inside.mm();
            (depth < super::LEAST_STEEL).then(|| without_steel(index + 1, depth))
        };
        self.nodes.iter().enumerate().filter_map(thin).collect()
    }
}

/// A line that is longer than any jaw is wound, or slopes that point away from the next node, so
/// that it swings out: it is drawn straight.
fn swings(line: f64) -> Option<Remark> {
    let words = move |show: Show| {
        format!(
            "is drawn straight: its line would be {} long, {} is the most",
            show.text(line),
            show.text(LONGEST_LINE)
        )
    };
    let hint = "turn the slopes towards the next node, or bring the nodes in line";
    let remark = || {
        let remark = Remark::stop(Kind::SketchTurnsBack, words, hint, GEOMETRY);
        remark.held(line, LONGEST_LINE)
    };
    (line > LONGEST_LINE).then(remark)
}

/// A node whose back lies on its inside, or within it.
fn without_steel(node: usize, depth: f64) -> Remark {
    let least = super::LEAST_STEEL;
    let words = move |show: Show| {
        format!(
            "has no steel at node {node}: its back lies {} outside of its inside, {} is the least",
            show.text(depth),
            show.text(least)
        )
    };
    let hint = "move the back out, or the inside in";
    Remark::stop(Kind::SketchWithoutSteel, words, hint, GEOMETRY).held(depth, least)
}

/// A node at the same place as the one before, or behind it.
fn turned_back(node: usize, apart: f64) -> Remark {
    let words = move |show: Show| {
        let lies = if apart > -Remark::NEAR {
            "where the one before lies".to_owned()
        } else {
            format!("{} behind the one before", show.text(-apart))
        };
        format!("turns back on itself at node {node}: it lies {lies}")
    };
    let hint = "move the node towards the tip, or take it out";
    Remark::stop(Kind::SketchTurnsBack, words, hint, GEOMETRY).held(-apart, 0.0)
}

fn within(path: &str, found: usize, (least, most): (usize, usize)) -> Result<(), LimitError> {
    if (least..=most).contains(&found) {
        return Ok(());
    }
    Err(LimitError {
        path: path.to_owned(),
        found: found.to_string(),
        least: least.to_string(),
        most: most.to_string(),
    })
}

/// Checks a size in mm.
fn size(path: String, found: f64, most: f64) -> Result<(), LimitError> {
    measure(path, (found, "mm"), most)
}

fn measure(path: String, (found, unit): (f64, &str), most: f64) -> Result<(), LimitError> {
    if found.is_finite() && found.abs() <= most {
        return Ok(());
    }
    let text = |number: f64| format!("{number} {unit}");
    Err(LimitError {
        path,
        found: text(found),
        least: text(-most),
        most: text(most),
    })
}
