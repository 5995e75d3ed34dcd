//! All that follows from a tool, reckoned anew only when it changed.

use std::rc::Rc;

use egui::Context;
use kurbo::{Point, Rect};
use reinwright_core::asked::Units;
use reinwright_core::draw::{self, DrawOptions, ToolHandle};
use reinwright_core::forge;
use reinwright_core::paper::Drawing;
use reinwright_core::shop::ToolAnswers as Known;
use reinwright_core::shop::mend::{Ways, tool_ways};
use reinwright_core::tool::Tool;

use super::bar::{Account, Forged, OfBar};
use super::history::Hand;
use super::making::{Asked, Planned};
use super::mends::Mends;
use super::reckon::{Drawn, drawn};

/// The answers to one tool.
#[derive(Debug)]
pub(crate) struct ToolAnswers {
    /// What they answer.
    tool: Tool,
    /// Counts up with each change.
    revision: u64,
    /// All that is known of it.
    pub(crate) known: Known,
    mends: Mends,
    planned: Option<Rc<Planned>>,
    handles: Option<Rc<[ToolHandle]>>,
    views: Option<Drawn<f64>>,
    bar: Option<Drawn<f64>>,
}

impl ToolAnswers {
    pub(crate) fn to(tool: &Tool) -> Self {
        Self {
            tool: tool.clone(),
            revision: 0,
            known: Known::to(tool),
            mends: Mends::default(),
            planned: None,
            handles: None,
            views: None,
            bar: None,
        }
    }

    /// Whether these are the answers to this tool.
    pub(crate) fn answer(&self, tool: &Tool) -> bool {
        self.tool == *tool
    }

    /// Reckons anew if the tool is another one.
    pub(crate) fn follow(&mut self, tool: &Tool) {
        if !self.answer(tool) {
            let revision = self.revision + 1;
            *self = Self {
                revision,
                ..Self::to(tool)
            };
        }
    }

    /// What sizes are shown in.
    pub(crate) fn units(&self) -> Units {
        self.tool.units
    }

    /// What they are the answers to.
    pub(crate) fn tool(&self) -> &Tool {
        &self.tool
    }

    /// The ways to mend each finding, in their order; `None` while they are still looked for, which
    /// begins when the hand is at rest.
    pub(crate) fn mends(&mut self, ctx: &Context, hand: Hand) -> Option<&[Option<Ways>]> {
        let (tool, known) = (&self.tool, &self.known);
        self.mends.ask(ctx, hand, || {
            let (tool, known) = (tool.clone(), known.clone());
            Box::new(move || tool_ways(&tool, &known))
        })
    }

    /// The places that can be dragged, found when they are first asked for.
    pub(crate) fn handles(&mut self) -> Rc<[ToolHandle]> {
        let (tool, model) = (&self.tool, &self.known.model);
        let found = || draw::tool_handles(tool, model).into();
        Rc::clone(self.handles.get_or_insert_with(found))
    }

    /// Where a handle lies in its view, mm.
    pub(crate) fn place(&self, handle: &ToolHandle) -> Option<Point> {
        handle.place(&self.tool, &self.known.model)
    }

    /// How the tool is made, reckoned when it is first asked for.
    pub(crate) fn planned(&mut self, asked: &Asked) -> Rc<Planned> {
        let other = |kept: &Rc<Planned>| !kept.answers(asked);
        if self.planned.as_ref().is_some_and(other) {
            self.planned = None;
        }
        let (tool, known) = (&self.tool, &self.known);
        let reckon = || Rc::new(Planned::of_tool(asked, tool, known));
        Rc::clone(self.planned.get_or_insert_with(reckon))
    }

    /// The tool in its views, with text of so many mm, and what they cover in mm.
    pub(crate) fn views(&mut self, text: f64) -> (&Drawing, Rect) {
        let (tool, model) = (&self.tool, &self.known.model);
        let options = DrawOptions {
            text,
            ..DrawOptions::default()
        };
        drawn(&mut self.views, text, || draw::tool(tool, model, &options))
    }
}

impl OfBar for ToolAnswers {
    fn revision(&self) -> u64 {
        self.revision
    }

    fn account(&self) -> Account<'_> {
        Account {
            bar: &self.tool.bar,
            units: self.tool.units,
            balance: &self.known.balance,
            mass_kg: self
                .known
                .balance
                .pieces
                .iter()
                .map(|piece| piece.mass_kg)
                .sum(),
            of: Forged::Tool,
        }
    }

    fn bar(&mut self, text: f64) -> (&Drawing, Rect) {
        let (tool, balance) = (&self.tool, &self.known.balance);
        drawn(&mut self.bar, text, || {
            forge::bar_in_short((&tool.bar, tool.units), balance, text)
        })
    }
}
