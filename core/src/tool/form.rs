//! The steel of a run on its way: what a form makes of the sections that it will have.

use super::forging::Form;
use super::solid::{Cut, Outline, Run};
use crate::asked::Stock;
use crate::shape::sweep::Ease;

/// What a run is forged from, and what the working end stands on.
#[derive(Debug, Clone, Copy)]
pub struct From {
    /// The bar.
    pub bar: Cut,
    /// The body.
    pub body: Cut,
}

impl Cut {
    /// The section of a bar.
    pub fn of_bar(stock: &Stock) -> Self {
        match *stock {
            Stock::Round { diameter } => Self::round(diameter.mm()),
            Stock::Square { side } => Self::boxed(side.mm(), side.mm()),
            Stock::Flat { thickness, width } => Self::boxed(width.mm(), thickness.mm()),
        }
    }

    /// The same steel in another shape of the same proportions.
    #[must_use]
    fn reshaped(self, outline: Outline) -> Self {
        let fullness = |own: Outline| own.profile().fullness();
        let by = (fullness(self.outline) / fullness(outline)).sqrt();
        Self {
            outline,
            ..self.sized(by * self.depth, by * self.width)
        }
    }

    /// The same steel, square.
    fn even(self) -> Self {
        let side = self.area_mm2().sqrt();
        Self::boxed(side, side)
    }

    /// The same proportions with another area.
    #[must_use]
    fn grown_to(self, area_mm2: f64) -> Self {
        let by = (area_mm2 / self.area_mm2()).sqrt();
        self.sized(by * self.depth, by * self.width)
    }

    /// Whether a smith's eye takes it for another: its area within a few parts of a hundred, and no
    /// flatter.
    pub fn is_like(self, other: Self) -> bool {
        /// What an edge that is broken takes off a bar.
        const NEAR: f64 = 0.03;
        let flatness = |cut: Self| cut.depth / cut.width;
        let flat = flatness(self) / flatness(other);
        (self.area_mm2() / other.area_mm2() - 1.0).abs() < NEAR && (0.9..1.1).contains(&flat)
    }
}

impl Run {
    /// Its largest section, mm².
    pub fn largest_mm2(&self) -> f64 {
        self.from.area_mm2().max(self.to.area_mm2())
    }

    /// One section all along.
    fn all_along(&self, cut: Cut) -> Self {
        Self {
            from: cut,
            to: cut,
            ease: Ease::Linear,
            ..*self
        }
    }

    /// The same with other sections.
    fn with(&self, from: Cut, to: Cut) -> Self {
        Self { from, to, ..*self }
    }

    /// As it is before it has an edge or a point.
    fn blunt(&self) -> Self {
        if self.from.small() > 0.0 {
            *self
        } else {
            self.all_along(self.to)
        }
    }
}

/// A run of a tool as it is in a form.
pub fn formed(run: &Run, form: Form, from: From) -> Run {
    let blunt = run.blunt();
    match form {
        Form::Done => *run,
        Form::Bar => run.all_along(from.bar),
        Form::Gathered => run.all_along(from.bar.grown_to(run.largest_mm2())),
        Form::Body => run.all_along(from.body),
        Form::Near => run.all_along(run.from),
        Form::Far => run.all_along(run.to),
        Form::Even => blunt.with(blunt.from.even(), root(&blunt)),
        Form::Square => with_outline(&blunt, Outline::Box),
        Form::Octagon => with_outline(&blunt, Outline::Octagon),
        Form::Half => {
            let Run { from, to, .. } = *run;
            let half = from.sized(
                f64::midpoint(from.depth, to.depth),
                f64::midpoint(from.width, to.width),
            );
            run.with(half, to)
        }
        Form::Unspread => {
            let depth = run.from.depth.min(run.to.depth);
            run.with(run.from.sized(depth, run.from.width), run.to)
        }
        Form::Shut(gap) => {
            let shut = |cut: Cut| cut.sized(cut.depth, cut.width - gap);
            let to = if run.to == run.from {
                shut(run.to)
            } else {
                run.to
            };
            run.with(shut(run.from), to)
        }
    }
}

/// What a square taper runs out of: square where it is all one section, else as the body is.
fn root(run: &Run) -> Cut {
    if run.from == run.to {
        run.to.even()
    } else {
        run.to.reshaped(Outline::Box)
    }
}

fn with_outline(run: &Run, outline: Outline) -> Run {
    run.with(run.from.reshaped(outline), run.to.reshaped(outline))
}
