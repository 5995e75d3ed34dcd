//! A design on the bench: what is seen of it, and the panels around it.

use std::path::{Path, PathBuf};

use egui::{CentralPanel, Context, Ui};
use lyon::tessellation::FillTessellator;
use reinwright_core::draw::{self, DrawOptions};
use reinwright_core::finding::Part;
use reinwright_core::forge;
use reinwright_core::heats::{Sources, with_scale_of};
use reinwright_core::paper::{Drawing, Paper as Sheet};
use reinwright_core::shop::came_out::{self, CameOut, Measured, Own};
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::sketch::KeptJaw;

use super::desk::{Desk, answers_panel, bar_panel, operation_panel};
use crate::disk::folder;
use crate::disk::memory::Memory;
use crate::jobs::{job_sheet, printing};
use crate::window::panels::answers;
use crate::window::panels::dialog::Drawn;
use crate::window::panels::heats::{self, Shown};
use crate::window::panels::operation;
use crate::window::panels::sketch::{Sketching, jaw_mut};
use crate::window::panels::wish::Wish;
use crate::window::sheet::ghost::Ghost;
use crate::window::sheet::handles::Handles;
use crate::window::sheet::paper::{Hand as PaperHand, Paper};
use crate::window::sheet::trace::{Kept as KeptPicture, Trace};
use crate::window::state::heating::Subject;
use crate::window::state::look::{Page, Sight};
use crate::window::state::making::{CameOutForm, Told};
use crate::window::state::reckon::Answers;
use crate::window::state::session::{Opened, Session};
use crate::window::state::shop_heats::ShopHeats;

/// Size of the lettering along the bar in a file, mm.
const BAR_TEXT: f64 = 3.5;

/// Everything in the window while a design is open.
pub(super) struct DesignBench {
    pub(super) desk: Desk<Document>,
    answers: Answers,
    paper: Paper,
    handles: Handles,
    /// The picture under the drawing, if there is one.
    trace: Trace,
    /// What was last remembered of it, for which file.
    noted_picture: Option<(PathBuf, Option<KeptPicture>)>,
    /// What is chosen in a sketched jaw.
    sketching: Sketching,
}

impl DesignBench {
    /// A design with these answers beside it.
    pub(super) fn on(session: Session<Document>, page: Page) -> Self {
        Self {
            answers: Answers::to(&session.now),
            desk: Desk::on(session, page),
            paper: Paper::default(),
            handles: Handles::default(),
            trace: Trace::default(),
            noted_picture: None,
            sketching: Sketching::default(),
        }
    }

    /// Goes on with a drag, before anything is drawn.
    pub(super) fn drag(&mut self, ctx: &Context) {
        self.handles.drag(ctx, &mut self.desk.session.now);
    }

    /// Whether something on the sheet is being dragged.
    pub(super) fn is_dragging(&self) -> bool {
        self.handles.busy()
    }

    /// Reckons anew what changed.
    pub(super) fn follow(&mut self) {
        self.answers.bear(self.desk.look.load);
        self.answers.follow(&self.desk.session.now);
    }

    /// Whether the design is no more as the answers have it.
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
        let mut asked = self.desk.listed(ui, &mut self.sketching, shop);
        // What was edited in the list shows in the drawing in the same frame.
        self.follow();
        let heats =
            self.desk.look.page == Page::Heats && self.answers.known.balance.trouble().is_none();
        if heats {
            let planned = self.answers.planned(&self.desk.look.making.asked);
            let of = Subject::Pair(&self.desk.session.now, &self.answers.known);
            self.desk
                .heating
                .follow(ui.ctx(), (&planned, &shop.now), of);
        }
        let hand = self
            .desk
            .hand(ui.input(|i| i.pointer.any_down()) || self.is_dragging());
        answers_panel(ui, |ui| {
            let shown = (&mut self.answers, &mut self.desk.look, &mut *fills);
            let heats = Shown {
                heating: &mut self.desk.heating,
                shop,
            };
            asked.extend(answers::show(
                ui,
                (&self.desk.session.now, hand),
                shown,
                heats,
            ));
        });
        if self.desk.look.page == Page::Making && self.answers.known.balance.trouble().is_none() {
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
        CentralPanel::default().show(ui, |ui| asked.extend(self.sheet(ui, screen, fills)));
        asked
    }

    /// The stages of the making, and what is done at the one that is shown.
    fn making(&mut self, ui: &mut Ui, fills: &mut FillTessellator) -> Option<Wish> {
        let planned = self.answers.planned(&self.desk.look.making.asked);
        self.desk.look.making.go_on(ui.ctx(), planned.last());
        operation_panel(ui, |ui| {
            operation::show(ui, &planned, (&self.answers, &mut self.desk.look));
        });
        let shown = CentralPanel::default().show(ui, |ui| {
            let asked = self.desk.stages.tools(ui, &planned, &mut self.desk.look);
            let of = (&planned, &mut self.answers);
            self.desk.stages.show(ui, of, &mut self.desk.look, fills);
            asked
        });
        shown.inner.map(Wish::Do)
    }

    fn sheet(&mut self, ui: &mut Ui, screen: f32, fills: &mut FillTessellator) -> Option<Wish> {
        let asked = self.paper.tools(ui, &mut self.desk.look, screen);
        self.trace.tools(ui, self.desk.session.now.units);
        self.paper.frozen = self.handles.frozen();
        self.paper.under = self.trace.under();
        let weighed = self.desk.look.weighed.take();
        self.paper.ghost = weighed.map(|mend| Ghost::of(&mend, &self.desk.session.now));
        self.paper.hand = if self.trace.has_hand() {
            PaperHand::OnPicture
        } else {
            PaperHand::OnDrawing
        };
        let (answers, look) = (&mut self.answers, &mut self.desk.look);
        let sheet = self.paper.show(ui, answers, look, fills);
        if self.trace.has_hand() {
            self.trace.on_sheet(&sheet.response, sheet.lies.view);
        } else {
            let what = (&mut self.desk.session.now, look, self.sketching.drawn_on());
            if let Some(handle) = self.handles.show(ui, &sheet, answers, what) {
                self.sketching.choose_by(&handle);
            }
        }
        asked.map(Wish::Do)
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
impl DesignBench {
    /// Shows so much of the drawing.
    pub(super) fn see(&mut self, sight: Sight) {
        match self.desk.look.page {
            Page::Making => self.desk.stages.see(sight),
            Page::Bar | Page::Fit | Page::Strength | Page::Heats | Page::Findings => {
                self.desk.show_drawing();
                self.paper.see(sight);
            }
        }
    }

    /// Shows the drawing at so many points per millimetre.
    pub(super) fn set_scale(&mut self, scale: f32) {
        self.desk.show_drawing();
        self.paper.set_scale(scale);
    }

    /// Puts an own jaw on a part, in proportion to the work.
    ///
    /// # Errors
    /// One sentence when it does not grow to the work, or would be outside the limits of a file.
    pub(super) fn use_jaw(&mut self, kept: &KeptJaw, part: Part) -> Result<(), String> {
        let mut changed = self.desk.session.now.clone();
        let work = changed.work;
        let jaw = jaw_mut(&mut changed, part);
        let suited = kept.suited(&work, jaw.heel);
        *jaw = suited.map_err(|outgrown| outgrown.to_string())?;
        self.desk.change(changed)
    }

    /// Works out what was measured on a half of it, and keeps that with a shop if there is one.
    ///
    /// # Errors
    /// One sentence when what was measured cannot be, or cannot be kept.
    pub(super) fn came_out(
        &mut self,
        measured: &Measured,
        shop: Option<&Path>,
    ) -> Result<(), String> {
        let known = &self.answers.known;
        let meant = came_out::reckon((&known.model, &known.balance), measured);
        let meant = meant.map_err(|error| error.to_string())?;
        let before = match shop {
            Some(shop) => folder::came_out(shop)?,
            None => CameOut::default(),
        };
        let all = before.with(&self.desk.session.now.name, measured, &meant);
        if let Some(shop) = shop {
            folder::keep_came_out(shop, &all)?;
        }
        let told = |own| Told {
            meant,
            own,
            kept: shop.is_some(),
        };
        self.desk.look.making.came_out = CameOutForm {
            told: all.own().map(told),
            ..CameOutForm::default()
        };
        Ok(())
    }

    /// Forges it by the smith's own values from now on, as one step.
    ///
    /// # Errors
    /// One sentence when it would be outside the limits of a file.
    pub(super) fn take_own(&mut self, own: &Own) -> Result<(), String> {
        let mut changed = self.desk.session.now.clone();
        changed.allowances = own.on(changed.allowances);
        self.desk.change(changed)
    }

    /// Reckons its loss to scale from its heats, per cent, as one step.
    ///
    /// # Errors
    /// One sentence when it would be outside the limits of a file.
    pub(super) fn take_scale(&mut self, percent: f64) -> Result<(), String> {
        let changed = with_scale_of(&self.desk.session.now, percent);
        self.desk.change(changed)
    }

    /// Puts the jaw and the work of a pair into the design, at once and so as one step.
    ///
    /// # Errors
    /// One sentence when it would be outside the limits of a file.
    pub(super) fn take_style(&mut self, pair: Document, part: Part) -> Result<(), String> {
        let mut design = self.desk.session.now.clone();
        // A name that the smith gave stays; one that says what it is goes with it.
        let named = design.name != design.usual_name();
        design.work = pair.work;
        if part == Part::SecondJaw {
            design.second_jaw = Some(pair.jaw);
        } else {
            design.jaw = pair.jaw;
        }
        if !named {
            design.name = design.usual_name();
        }
        self.desk.change(design)
    }

    /// The pages of the job sheet, by the way that is looked at.
    ///
    /// # Errors
    /// One sentence when no bar can be reckoned.
    pub(super) fn job_sheet(
        &mut self,
        paper: Sheet,
        shop: Option<&Sources>,
    ) -> Result<Vec<u8>, String> {
        self.answers.follow(&self.desk.session.now);
        if let Some(trouble) = self.answers.known.balance.trouble() {
            return Err(trouble);
        }
        let planned = self.answers.planned(&self.desk.look.making.asked);
        let of = (&self.answers.known, &planned.plan);
        Ok(job_sheet::pdf(
            &self.desk.session.now,
            of,
            shop,
            paper,
            printing::today(),
        ))
    }

    /// What goes into a drawing's file.
    pub(super) fn drawing(&mut self, drawn: Drawn) -> Drawing {
        self.answers.follow(&self.desk.session.now);
        let (document, answers) = (&self.desk.session.now, &self.answers);
        match drawn {
            Drawn::Pair => draw::pair(document, &answers.known.model, &DrawOptions::default()),
            Drawn::Half => draw::half(document, &answers.known.model, &DrawOptions::default()),
            Drawn::Bar => forge::bar(
                (&document.bar, document.units),
                &answers.known.balance,
                BAR_TEXT,
            ),
        }
    }
}

/// The picture under it, and where that is remembered.
impl DesignBench {
    /// Begins to read a picture to be traced.
    pub(super) fn trace(&mut self, ctx: &Context, path: &Path) {
        self.trace.load(ctx, path, None);
    }

    /// Takes in a picture that was asked for.
    ///
    /// # Errors
    /// One sentence on why there is none.
    pub(super) fn poll_picture(&mut self, ctx: &Context) -> Result<(), String> {
        let a = &self.answers.known.model.a;
        self.trace.poll(ctx, (a.rein_end(), a.tip()))
    }

    /// Lays the picture that lay under the design when it was last open.
    pub(super) fn bring_back_picture(&mut self, memory: &Memory) {
        let Some(path) = self.desk.session.path().map(Path::to_owned) else {
            return;
        };
        let line = memory.trace_of(&path);
        let kept = line.and_then(|line| KeptPicture::read(&line));
        self.trace.bring_back(kept.clone());
        self.noted_picture = Some((path, kept));
    }

    /// Remembers where the picture lies, once the hand is at rest. One that could not be read is
    /// not forgotten: it may be on a disk that is not there today.
    pub(super) fn note_picture(&mut self, memory: &Memory) {
        let Some(path) = self.desk.session.path().map(Path::to_owned) else {
            return;
        };
        if self.trace.is_loading() {
            return;
        }
        let now = self.trace.kept().cloned();
        let known = match &self.noted_picture {
            Some((of, noted)) if *of == path => *noted == now || self.trace.has_failed(),
            Some(_) | None => now.is_none(),
        };
        if !known {
            let line = now.as_ref().map(KeptPicture::line);
            memory.note_trace(&path, line.as_deref());
            self.noted_picture = Some((path, now));
        }
    }
}
