//! How the making of a pair or a tool is looked at: by which procedure, with what changed, and how far along.

use egui::{Context, Key, Modifiers};
use reinwright_core::draw::{self, Ground};
use reinwright_core::making::{
    Changes, Plan, Procedure, Stage, plan_tool, plan_with, usual, usual_for_tool,
};
use reinwright_core::shop::came_out::{Meant, Own};
use reinwright_core::shop::{Answers, ToolAnswers};
use reinwright_core::tongs::document::Document;
use reinwright_core::tool::Tool;

use super::bar::Forged;

/// Seconds that a stage is shown while it plays: enough to read what is done.
const STAGE_SECONDS: f64 = 1.6;

/// How far behind the rivet the head is looked at, in lengths before it.
const BEHIND: f64 = 0.7;

/// What is asked of a plan.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Asked {
    /// Chosen by the smith; without one the first that suits.
    pub(crate) procedure: Option<Procedure>,
    /// What is done otherwise.
    pub(crate) changes: Changes,
}

/// What the smith looks at.
#[derive(Debug, Default)]
pub(crate) struct Making {
    pub(crate) asked: Asked,
    /// The stage that is shown: 0 is the bar; of a pair one past the last is the pair.
    pub(crate) at: usize,
    /// What came out when it was forged.
    pub(crate) came_out: CameOutForm,
    /// When the next one is due, while it plays, in seconds.
    due: Option<f64>,
}

/// What a smith measured, as it is typed, and what it meant the last time.
#[derive(Debug, Default)]
pub(crate) struct CameOutForm {
    pub(crate) rein: String,
    pub(crate) left: String,
    pub(crate) heat: String,
    /// What is wrong with what is typed.
    pub(crate) trouble: Option<String>,
    pub(crate) told: Option<Told>,
}

/// What a measurement means, and what the smith can go by from now on.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Told {
    pub(crate) meant: Meant,
    pub(crate) own: Own,
    /// Whether it is kept with a shop.
    pub(crate) kept: bool,
}

/// A plan with the room that its stages take.
#[derive(Debug)]
pub(crate) struct Planned {
    /// What it answers.
    asked: Asked,
    pub(crate) of: Forged,
    pub(crate) plan: Plan,
    pub(crate) ground: Ground,
    /// The same about the head alone.
    pub(crate) about_head: Ground,
}

impl Planned {
    pub(crate) fn of(asked: &Asked, document: &Document, known: &Answers) -> Self {
        let model = &known.model;
        let (show, before) = (document.units.show(), model.a.tip().max(model.b.tip()));
        let procedure = asked.procedure.unwrap_or_else(|| usual(document, model));
        let plan = plan_with(document, (model, &known.balance), procedure, &asked.changes);
        Self {
            asked: asked.clone(),
            of: Forged::Pair,
            ground: draw::ground(model, &plan, f64::NEG_INFINITY, show),
            about_head: draw::ground(model, &plan, -BEHIND * before, show),
            plan,
        }
    }

    /// How a tool is made: what is forged is all of it, so that no part is looked at alone.
    pub(crate) fn of_tool(asked: &Asked, tool: &Tool, known: &ToolAnswers) -> Self {
        let (model, show) = (&known.model, tool.units.show());
        let procedure = asked.procedure.unwrap_or_else(|| usual_for_tool(tool));
        let plan = plan_tool(tool, model, &known.balance, procedure);
        let ground = || draw::ground(model, &plan, f64::NEG_INFINITY, show);
        Self {
            asked: asked.clone(),
            of: Forged::Tool,
            ground: ground(),
            about_head: ground(),
            plan,
        }
    }

    /// Whether it answers this.
    pub(crate) fn answers(&self, asked: &Asked) -> bool {
        self.asked == *asked
    }

    /// The last place: the pair, behind all stages; or the stage that is the finished tool.
    pub(crate) fn last(&self) -> usize {
        match self.of {
            Forged::Pair => self.plan.stages.len(),
            Forged::Tool => self.plan.stages.len() - 1,
        }
    }

    /// The stage at a place; `None` for the pair.
    pub(crate) fn stage(&self, at: usize) -> Option<&Stage> {
        self.plan.stages.get(at)
    }

    /// What a stage is called.
    pub(crate) fn name(&self, at: usize) -> &'static str {
        match self.stage(at) {
            None => "the pair",
            Some(Stage {
                operation: Some(own),
                ..
            }) => own.step.name(),
            Some(Stage { half: 0, .. }) => "the bar",
            Some(_) => "bar of the second half",
        }
    }
}

impl Making {
    /// Shows a stage, and plays no further.
    pub(crate) fn go(&mut self, at: usize) {
        self.at = at;
        self.due = None;
    }

    pub(crate) fn is_playing(&self) -> bool {
        self.due.is_some()
    }

    /// Begins to play, from the bar if the end is reached, or stops.
    pub(crate) fn play(&mut self, now: f64, last: usize) {
        if self.due.take().is_none() {
            if self.at >= last {
                self.at = 0;
            }
            self.due = Some(now + STAGE_SECONDS);
        }
    }

    /// Goes on with what plays; Space begins and ends it while nothing else has the keyboard, which
    /// Space would press or type into.
    pub(crate) fn go_on(&mut self, ctx: &Context, last: usize) {
        self.at = self.at.min(last);
        let pressed = |i: &mut egui::InputState| i.consume_key(Modifiers::NONE, Key::Space);
        let now = ctx.input(|i| i.time);
        let is_free = ctx.memory(|memory| memory.focused().is_none());
        if is_free && ctx.input_mut(pressed) {
            self.play(now, last);
        }
        let Some(due) = self.due else { return };
        if now >= due {
            self.at = (self.at + 1).min(last);
            self.due = (self.at < last).then_some(now + STAGE_SECONDS);
        }
        if let Some(due) = self.due {
            ctx.request_repaint_after_secs(seconds(due - now));
        }
    }
}

#[allow(clippy::cast_possible_truncation, reason = "a second or two")]
fn seconds(left: f64) -> f32 {
    left as f32
}
