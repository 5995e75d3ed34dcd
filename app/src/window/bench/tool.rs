//! A tool on the bench: what is seen of it, and the panels around it.

use egui::{CentralPanel, Context, Ui};
use lyon::tessellation::FillTessellator;
use reinwright_core::draw::{self, DrawOptions};
use reinwright_core::forge;
use reinwright_core::heats::{Sources, whole_scale};
use reinwright_core::paper::{Drawing, Paper};
use reinwright_core::tool::Tool;

use super::desk::{Desk, answers_panel, bar_panel, operation_panel};
use crate::jobs::{job_sheet, printing};
use crate::window::panels::answers;
use crate::window::panels::dialog::Drawn;
use crate::window::panels::heats::{self, Shown};
use crate::window::panels::operation;
use crate::window::panels::wish::Wish;
use crate::window::sheet::tool::ToolSheet;
use crate::window::state::heating::Subject;
use crate::window::state::look::{Page, Sight};
use crate::window::state::session::Session;
use crate::window::state::shop_heats::ShopHeats;
use crate::window::state::tool::ToolAnswers;

/// Size of the lettering along the bar in a file, mm.
const BAR_TEXT: f64 = 3.5;

/// Everything in the window while a tool is open.
pub(super) struct ToolBench {
    pub(super) desk: Desk<Tool>,
    answers: ToolAnswers,
    sheet: ToolSheet,
}

impl ToolBench {
    /// A tool with these answers beside it.
    pub(super) fn on(session: Session<Tool>, page: Page) -> Self {
        Self {
            answers: ToolAnswers::to(&session.now),
            desk: Desk::on(session, page.of_tool()),
            sheet: ToolSheet::default(),
        }
    }

    /// Goes on with a drag, before anything is drawn.
    pub(super) fn drag(&mut self, ctx: &Context) {
        self.sheet.drag(ctx, &mut self.desk.session.now);
    }

    /// Whether something on the sheet is being dragged.
    pub(super) fn is_dragging(&self) -> bool {
        self.sheet.is_dragging()
    }

    /// Reckons anew what changed.
    pub(super) fn follow(&mut self) {
        self.answers.follow(&self.desk.session.now);
    }

    /// Whether the tool is no more as the answers have it.
    pub(super) fn is_ahead_of_answers(&self) -> bool {
        !self.answers.answer(&self.desk.session.now)
    }

    /// Shows everything under the menu, on a screen of so many points per millimetre, with the heat
    /// sources of the shop.
    pub(super) fn show(
        &mut self,
        ui: &mut Ui,
        (screen, shop): (f32, &mut ShopHeats),
        fills: &mut FillTessellator,
    ) -> Vec<Wish> {
        let hand = self
            .desk
            .hand(ui.input(|i| i.pointer.any_down()) || self.is_dragging());
        // A tool that a mend would make is not drawn over it: its sizes are told beside the button.
        self.desk.look.weighed = None;
        let mut asked = self.desk.listed(ui, &mut (), shop);
        // What was edited in the list shows in the drawing in the same frame.
        self.follow();
        let sound = self.answers.known.balance.trouble().is_none();
        let heats = self.desk.look.page == Page::Heats && sound;
        if heats {
            let planned = self.answers.planned(&self.desk.look.making.asked);
            let of = Subject::Tool(&self.desk.session.now);
            self.desk
                .heating
                .follow(ui.ctx(), (&planned, &shop.now), of);
        }
        answers_panel(ui, |ui| {
            let heats = Shown {
                heating: &mut self.desk.heating,
                shop,
            };
            let of = (&mut self.desk.look, hand);
            let shown = answers::show_tool(ui, &mut self.answers, of, heats);
            asked.extend(shown);
        });
        if self.desk.look.page == Page::Making && sound {
            asked.extend(self.making(ui, fills));
            return asked;
        }
        if heats {
            heats::middle(ui, &mut self.desk.heating, &mut self.desk.look, fills);
            return asked;
        }
        bar_panel(ui, |ui| {
            self.desk
                .strip
                .show(ui, &mut self.answers, &mut self.desk.look, fills);
        });
        CentralPanel::default().show(ui, |ui| {
            asked.extend(self.sheet.tools(ui, screen).map(Wish::Do));
            let of = (&mut self.desk.session.now, &mut self.desk.look);
            self.sheet.show(ui, &mut self.answers, of, fills);
        });
        asked
    }

    /// The stages of the making, and what is done at the one that is shown.
    fn making(&mut self, ui: &mut Ui, fills: &mut FillTessellator) -> Option<Wish> {
        let planned = self.answers.planned(&self.desk.look.making.asked);
        self.desk.look.making.go_on(ui.ctx(), planned.last());
        operation_panel(ui, |ui| {
            operation::show_tool(ui, &planned, (&self.answers, &mut self.desk.look));
        });
        let shown = CentralPanel::default().show(ui, |ui| {
            let asked = self.desk.stages.tools(ui, &planned, &mut self.desk.look);
            let of = (&planned, &self.answers);
            self.desk
                .stages
                .show_tool(ui, of, &mut self.desk.look, fills);
            asked
        });
        shown.inner.map(Wish::Do)
    }

    /// Takes note of the state, once all is drawn; true when another frame is needed.
    pub(super) fn after(&mut self, time: f64, busy: bool) -> bool {
        // A drag that is given up must not end what could be redone.
        let turned = if self.is_dragging() {
            self.desk.look.turn()
        } else {
            self.desk.after(time, self.desk.hand(busy))
        };
        turned || self.is_ahead_of_answers()
    }
}

/// What it is told to do.
impl ToolBench {
    /// Shows the whole drawing: a tool is seen at a glance.
    pub(super) fn see_all(&mut self) {
        if self.desk.look.page == Page::Heats {
            self.desk.show_drawing();
        }
        self.sheet.see_all();
        self.desk.stages.see(Sight::All);
    }

    /// Reckons its loss to scale from its heats, per cent, as one step.
    ///
    /// # Errors
    /// One sentence when it would be outside the limits of a file.
    pub(super) fn take_scale(&mut self, percent: f64) -> Result<(), String> {
        let mut changed = self.desk.session.now.clone();
        changed.allowances.scale = whole_scale(percent);
        self.desk.change(changed)
    }

    /// Shows the drawing at so many points per millimetre.
    pub(super) fn set_scale(&mut self, scale: f32) {
        self.desk.show_drawing();
        self.sheet.set_scale(scale);
    }

    /// What stands against making it, as it is now; nothing when nothing does.
    pub(super) fn stop(&self) -> Option<String> {
        let known = reinwright_core::shop::ToolAnswers::to(&self.desk.session.now);
        printing::stop(&known.findings)
    }

    /// The pages of the job sheet, by the way that is looked at, with heats where the shop has
    /// sources of its own.
    ///
    /// # Errors
    /// One sentence when no bar can be reckoned.
    pub(super) fn job_sheet(
        &mut self,
        paper: Paper,
        shop: Option<&Sources>,
    ) -> Result<Vec<u8>, String> {
        self.follow();
        if let Some(trouble) = self.answers.known.balance.trouble() {
            return Err(trouble);
        }
        let planned = self.answers.planned(&self.desk.look.making.asked);
        let of = (&self.answers.known, &planned.plan);
        let (tool, day) = (&self.desk.session.now, printing::today());
        Ok(job_sheet::tool_pdf(tool, of, shop, paper, day))
    }

    /// What goes into a drawing's file.
    pub(super) fn drawing(&mut self, drawn: Drawn) -> Drawing {
        self.follow();
        let (tool, known) = (&self.desk.session.now, &self.answers.known);
        match drawn {
            Drawn::Pair | Drawn::Half => draw::tool(tool, &known.model, &DrawOptions::default()),
            Drawn::Bar => forge::bar((&tool.bar, tool.units), &known.balance, BAR_TEXT),
        }
    }
}
