//! The sentences of each operation: what to do, how to check it, what can go wrong.

mod brief;
mod cut;
mod head;
mod rein;
mod weld;

use crate::tongs::model::Model;
use crate::units::Show;

use super::side::Side;
use super::state::{Shape, State, Task};
use super::step::Step;

/// What is done and how it is checked.
pub(super) struct Words {
    pub(super) what: String,
    pub(super) check: String,
    pub(super) cautions: Vec<&'static str>,
}

fn words(what: String, check: String, cautions: &[&'static str]) -> Words {
    Words {
        what,
        check,
        cautions: cautions.into(),
    }
}

/// What the sentences are made from.
pub(super) struct Told<'a> {
    pub(super) task: &'a Task<'a>,
    pub(super) model: &'a Model,
    pub(super) before: &'a State,
    /// How long what is worked is afterwards.
    pub(super) worked_mm: f64,
}

impl Told<'_> {
    fn show(&self) -> Show {
        self.task.document.units.show()
    }

    fn size(&self, mm: f64) -> String {
        self.show().text(mm)
    }

    fn by(&self, depth: f64, width: f64) -> String {
        format!("{} x {}", self.show().number(depth), self.size(width))
    }

    fn bare(&self, depth: f64, width: f64) -> String {
        let show = self.show();
        format!("{} x {}", show.number(depth), show.number(width))
    }

    /// A length that nobody measures closer.
    fn rough(&self, mm: f64) -> String {
        self.size(self.show().roughly(mm))
    }

    /// "on both ends" while both halves hang together.
    fn both(&self) -> &'static str {
        if self.before.double {
            ", the same at the other end"
        } else {
            ""
        }
    }

    pub(super) fn words(&self, step: Step) -> Words {
        match step {
            Step::CutBar => self.cut_bar(),
            Step::CutApart => self.cut_apart(),
            Step::CutTail => self.cut_tail(),
            Step::TrimRein => self.trim_rein(),
            Step::TrimJaw => self.trim_jaw(),
            Step::Flatten => self.flatten(),
            Step::Notch => self.notch(),
            Step::Twist => self.twist(),
            Step::SetDownJaw => self.set_down_jaw(),
            Step::SetDownBoss => self.set_down_boss(),
            Step::SetDownRein => self.set_down_rein(),
            Step::ForgeBoss => self.forge_boss(),
            Step::RoughJaw => self.rough_jaw(),
            Step::MakeHole => self.make_hole(),
            Step::SetNeck => self.set_neck(),
            Step::ShapeJaw => self.shape_jaw(),
            Step::DrawStub => self.draw_stub(),
            Step::Gather => self.gather(),
            Step::Weld => self.weld(),
            Step::DrawSquare => self.draw_square(),
            Step::DrawOctagon => self.draw_octagon(),
            Step::DrawRound => self.draw_round(),
            Step::Grip => self.grip(),
            Step::FinishEnd => self.finish_end(),
            Step::BendRein => self.bend_rein(),
            Step::Tool(own) => words(own.name().to_owned(), own.name().to_owned(), &[]),
        }
    }
}

/// The last shape of a rein that is straight.
pub(super) fn is_last(task: &Task<'_>, shape: Shape) -> bool {
    super::procedure::rein_steps(task.document).2 == shape
}
