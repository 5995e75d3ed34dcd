//! A tool on the bench: what is seen of it, and the panels around it.

use egui::{CentralPanel, Context, Panel, Ui};
use lyon::tessellation::FillTessellator;
use reinwright_core::draw::{self, DrawOptions};
use reinwright_core::forge;
use reinwright_core::heats::{Sources, whole_scale};
use reinwright_core::paper::{Drawing, Paper};
use reinwright_core::shop::mend::Mend;
use reinwright_core::tool::Tool;

use super::edited::edited;
use crate::jobs::{job_sheet, printing};
use crate::window::panels::answers;
use crate::window::panels::dialog::Drawn;
use crate::window::panels::heats::{self, Shown};
use crate::window::panels::operation;
use crate::window::panels::parts::PartsList;
use crate::window::panels::wish::Wish;
use crate::window::sheet::bar_strip::BarStrip;
use crate::window::sheet::stages::Stages;
use crate::window::sheet::tool::ToolSheet;
use crate::window::state::heating::{Heating, Subject};
use crate::window::state::history::Hand;
use crate::window::state::look::{Look, Page, Sight};
use crate::window::state::session::{Opened, Session};
use crate::window::state::shop_heats::ShopHeats;
use crate::window::state::tool::ToolAnswers;

/// Size of the lettering along the bar in a file, mm.
const BAR_TEXT: f64 = 3.5;

/// Everything in the window while a tool is open.
pub(super) struct ToolBench {
    pub(super) session: Session<Tool>,
    answers: ToolAnswers,
    look: Look,
    sheet: ToolSheet,
    parts: PartsList,
    strip: BarStrip,
    stages: Stages,
    /// Its heats, as far as they are known.
    heating: Heating,
}

impl ToolBench {
    /// A tool with these answers beside it.
    pub(super) fn on(session: Session<Tool>, page: Page) -> Self {
        Self {
            answers: ToolAnswers::to(&session.now),
            session,
            look: Look::on(page.of_tool()),
            sheet: ToolSheet::default(),
            parts: PartsList::default(),
            strip: BarStrip::default(),
            stages: Stages::default(),
            heating: Heating::default(),
        }
    }

    /// Goes on with a drag, before anything is drawn.
    pub(super) fn drag(&mut self, ctx: &Context) {
        self.sheet.drag(ctx, &mut self.session.now);
    }

    /// Whether something on the sheet is being dragged.
    pub(super) fn is_dragging(&self) -> bool {
        self.sheet.is_dragging()
    }

    /// Reckons anew what changed.
    pub(super) fn follow(&mut self) {
        self.answers.follow(&self.session.now);
    }

    /// Whether the tool is no more as the answers have it.
    pub(super) fn is_ahead_of_answers(&self) -> bool {
        !self.answers.answer(&self.session.now)
    }

    /// Shows everything under the menu, on a screen of so many points per millimetre, with the heat
    /// sources of the shop.
    pub(super) fn show(
        &mut self,
        ui: &mut Ui,
        (screen, shop): (f32, &mut ShopHeats),
        fills: &mut FillTessellator,
    ) -> Vec<Wish> {
        let hand = self.hand(ui.input(|i| i.pointer.any_down()));
        // A tool that a mend would make is not drawn over it: its sizes are told beside the button.
        self.look.weighed = None;
        let shown = (&mut self.look, &mut ());
        let (parts, session) = (&mut self.parts, &mut self.session);
        let mut asked = edited(ui, parts, session, shown, shop);
        // What was edited in the list shows in the drawing in the same frame.
        self.follow();
        let sound = self.answers.known.balance.trouble().is_none();
        let heats = self.look.page == Page::Heats && sound;
        if heats {
            let planned = self.answers.planned(&self.look.making.asked);
            let of = Subject::Tool(&self.session.now);
            self.heating.follow(ui.ctx(), (&planned, &shop.now), of);
        }
        Panel::right("answers")
            .default_size(272.0)
            .size_range(260.0..=460.0)
            .show(ui, |ui| {
                let heats = Shown {
                    heating: &mut self.heating,
                    shop,
                };
                let of = (&mut self.look, hand);
                let shown = answers::show_tool(ui, &mut self.answers, of, heats);
                asked.extend(shown);
            });
        if self.look.page == Page::Making && sound {
            asked.extend(self.making(ui, fills));
            return asked;
        }
        if heats {
            heats::middle(ui, &mut self.heating, &mut self.look, fills);
            return asked;
        }
        Panel::bottom("bar")
            .default_size(118.0)
            .size_range(90.0..=260.0)
            .resizable(true)
            .show(ui, |ui| {
                self.strip
                    .show(ui, &mut self.answers, &mut self.look, fills);
            });
        CentralPanel::default().show(ui, |ui| {
            asked.extend(self.sheet.tools(ui, screen).map(Wish::Do));
            let of = (&mut self.session.now, &mut self.look);
            self.sheet.show(ui, &mut self.answers, of, fills);
        });
        asked
    }

    /// The stages of the making, and what is done at the one that is shown.
    fn making(&mut self, ui: &mut Ui, fills: &mut FillTessellator) -> Option<Wish> {
        let planned = self.answers.planned(&self.look.making.asked);
        self.look.making.go_on(ui.ctx(), planned.last());
        Panel::bottom("operation")
            .default_size(232.0)
            .size_range(80.0..=420.0)
            .resizable(true)
            .show(ui, |ui| {
                operation::show_tool(ui, &planned, (&self.answers, &mut self.look));
            });
        let shown = CentralPanel::default().show(ui, |ui| {
            let asked = self.stages.tools(ui, &planned, &mut self.look);
            let of = (&planned, &self.answers);
            self.stages.show_tool(ui, of, &mut self.look, fills);
            asked
        });
        shown.inner.map(Wish::Do)
    }

    /// Whether a change is under way.
    fn hand(&self, busy: bool) -> Hand {
        if busy || self.parts.typing || self.is_dragging() {
            Hand::Moving
        } else {
            Hand::AtRest
        }
    }

    /// Takes note of the state, once all is drawn; true when another frame is needed.
    pub(super) fn after(&mut self, time: f64, busy: bool) -> bool {
        let hand = self.hand(busy);
        // A drag that is given up must not end what could be redone.
        if !self.is_dragging() {
            self.session.feed(time, hand);
        }
        self.look.turn() || self.is_ahead_of_answers()
    }
}

/// What it is told to do.
impl ToolBench {
    /// Takes the last change back.
    pub(super) fn undo(&mut self) {
        if self.session.undo() {
            self.parts.forget();
        }
    }

    /// Takes a way to mend it, at once and so as one step; one that sets out from other values is
    /// old news.
    pub(super) fn mend(&mut self, mend: &Mend) {
        if mend.sets_out_from(&self.session.now) {
            self.session.now = mend.taken(&self.session.now);
            self.parts.forget();
        }
    }

    /// Does it again.
    pub(super) fn redo(&mut self) {
        if self.session.redo() {
            self.parts.forget();
        }
    }

    /// Puts what is being typed in its place, as if Enter had been pressed.
    pub(super) fn commit(&mut self) {
        self.parts.commit(&mut self.session.now);
    }

    /// Shows the whole drawing: a tool is seen at a glance.
    pub(super) fn see_all(&mut self) {
        self.sheet.see_all();
        self.stages.see(Sight::All);
    }

    /// The page of answers that is looked at.
    pub(super) fn page(&self) -> Page {
        self.look.page
    }

    /// Reckons its loss to scale from its heats, per cent, as one step.
    ///
    /// # Errors
    /// One sentence when it would be outside the limits of a file.
    pub(super) fn take_scale(&mut self, percent: f64) -> Result<(), String> {
        let before = self.session.now.clone();
        self.session.now.allowances.scale = whole_scale(percent);
        self.parts.forget();
        self.session.keep_within(before)
    }

    /// Looks at a page of answers.
    pub(super) fn show_page(&mut self, page: Page) {
        self.look.page = page;
    }

    /// Shows the drawing at so many points per millimetre.
    pub(super) fn set_scale(&mut self, scale: f32) {
        self.sheet.set_scale(scale);
    }

    /// What stands against making it, as it is now; nothing when nothing does.
    pub(super) fn stop(&self) -> Option<String> {
        let known = reinwright_core::shop::ToolAnswers::to(&self.session.now);
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
        let planned = self.answers.planned(&self.look.making.asked);
        let of = (&self.answers.known, &planned.plan);
        let (tool, day) = (&self.session.now, printing::today());
        Ok(job_sheet::tool_pdf(tool, of, shop, paper, day))
    }

    /// What goes into a drawing's file.
    pub(super) fn drawing(&mut self, drawn: Drawn) -> Drawing {
        self.follow();
        let (tool, known) = (&self.session.now, &self.answers.known);
        match drawn {
            Drawn::Pair | Drawn::Half => draw::tool(tool, &known.model, &DrawOptions::default()),
            Drawn::Bar => forge::bar((&tool.bar, tool.units), &known.balance, BAR_TEXT),
        }
    }
}
