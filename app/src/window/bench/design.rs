//! A design on the bench: what is seen of it, and the panels around it.

use std::path::{Path, PathBuf};

use egui::{CentralPanel, Context, Panel, Ui};
use lyon::tessellation::FillTessellator;
use reinwright_core::draw::{self, DrawOptions};
use reinwright_core::finding::Part;
use reinwright_core::forge;
use reinwright_core::heats::{Sources, with_scale_of};
use reinwright_core::paper::{Drawing, Paper as Sheet};
use reinwright_core::shop::came_out::{self, CameOut, Measured, Own};
use reinwright_core::shop::mend::Mend;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::sketch::KeptJaw;

use super::edited::edited;
use crate::disk::folder;
use crate::disk::memory::Memory;
use crate::jobs::{job_sheet, printing};
use crate::window::panels::answers;
use crate::window::panels::dialog::Drawn;
use crate::window::panels::heats::{self, Shown};
use crate::window::panels::operation;
use crate::window::panels::parts::PartsList;
use crate::window::panels::sketch::{Sketching, jaw_mut};
use crate::window::panels::wish::Wish;
use crate::window::sheet::bar_strip::BarStrip;
use crate::window::sheet::ghost::Ghost;
use crate::window::sheet::handles::Handles;
use crate::window::sheet::paper::{Hand as PaperHand, Paper};
use crate::window::sheet::stages::Stages;
use crate::window::sheet::trace::{Kept as KeptPicture, Trace};
use crate::window::state::heating::{Heating, Subject};
use crate::window::state::history::Hand;
use crate::window::state::look::{Look, Page, Sight};
use crate::window::state::making::{CameOutForm, Told};
use crate::window::state::reckon::Answers;
use crate::window::state::session::{Opened, Session};
use crate::window::state::shop_heats::ShopHeats;

/// Size of the lettering along the bar in a file, mm.
const BAR_TEXT: f64 = 3.5;

/// Everything in the window while a design is open.
pub(super) struct DesignBench {
    pub(super) session: Session<Document>,
    answers: Answers,
    look: Look,
    paper: Paper,
    handles: Handles,
    /// The picture under the drawing, if there is one.
    trace: Trace,
    /// What was last remembered of it, for which file.
    noted_picture: Option<(PathBuf, Option<KeptPicture>)>,
    parts: PartsList,
    /// What is chosen in a sketched jaw.
    sketching: Sketching,
    strip: BarStrip,
    stages: Stages,
    /// The heats of the pair, as far as they are known.
    heating: Heating,
}

impl DesignBench {
    /// A design with these answers beside it.
    pub(super) fn on(session: Session<Document>, page: Page) -> Self {
        Self {
            answers: Answers::to(&session.now),
            session,
            look: Look::on(page),
            paper: Paper::default(),
            handles: Handles::default(),
            trace: Trace::default(),
            noted_picture: None,
            parts: PartsList::default(),
            sketching: Sketching::default(),
            strip: BarStrip::default(),
            stages: Stages::default(),
            heating: Heating::default(),
        }
    }

    /// The page of answers that is looked at.
    pub(super) fn page(&self) -> Page {
        self.look.page
    }

    /// Looks at a page of answers.
    pub(super) fn show_page(&mut self, page: Page) {
        self.look.page = page;
    }

    /// Goes on with a drag, before anything is drawn.
    pub(super) fn drag(&mut self, ctx: &Context) {
        self.handles.drag(ctx, &mut self.session.now);
    }

    /// Whether something on the sheet is being dragged.
    pub(super) fn is_dragging(&self) -> bool {
        self.handles.busy()
    }

    /// Reckons anew what changed.
    pub(super) fn follow(&mut self) {
        self.answers.bear(self.look.load);
        self.answers.follow(&self.session.now);
    }

    /// Whether the design is no more as the answers have it.
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
        let shown = (&mut self.look, &mut self.sketching);
        let (parts, session) = (&mut self.parts, &mut self.session);
        let mut asked = edited(ui, parts, session, shown, shop);
        // What was edited in the list shows in the drawing in the same frame.
        self.follow();
        let heats = self.look.page == Page::Heats && self.answers.known.balance.trouble().is_none();
        if heats {
            let planned = self.answers.planned(&self.look.making.asked);
            let of = Subject::Pair(&self.session.now, &self.answers.known);
            self.heating.follow(ui.ctx(), (&planned, &shop.now), of);
        }
        let hand = self.hand(ui.input(|i| i.pointer.any_down()));
        Panel::right("answers")
            .default_size(272.0)
            .size_range(260.0..=460.0)
            .show(ui, |ui| {
                let shown = (&mut self.answers, &mut self.look, &mut *fills);
                let heats = Shown {
                    heating: &mut self.heating,
                    shop,
                };
                asked.extend(answers::show(ui, (&self.session.now, hand), shown, heats));
            });
        if self.look.page == Page::Making && self.answers.known.balance.trouble().is_none() {
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
        CentralPanel::default().show(ui, |ui| asked.extend(self.sheet(ui, screen, fills)));
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
                operation::show(ui, &planned, (&self.answers, &mut self.look));
            });
        let shown = CentralPanel::default().show(ui, |ui| {
            let asked = self.stages.tools(ui, &planned, &mut self.look);
            let of = (&planned, &mut self.answers);
            self.stages.show(ui, of, &mut self.look, fills);
            asked
        });
        shown.inner.map(Wish::Do)
    }

    fn sheet(&mut self, ui: &mut Ui, screen: f32, fills: &mut FillTessellator) -> Option<Wish> {
        let asked = self.paper.tools(ui, &mut self.look, screen);
        self.trace.tools(ui, self.session.now.units);
        self.paper.frozen = self.handles.frozen();
        self.paper.under = self.trace.under();
        let weighed = self.look.weighed.take();
        self.paper.ghost = weighed.map(|mend| Ghost::of(&mend, &self.session.now));
        self.paper.hand = if self.trace.has_hand() {
            PaperHand::OnPicture
        } else {
            PaperHand::OnDrawing
        };
        let (answers, look) = (&mut self.answers, &mut self.look);
        let sheet = self.paper.show(ui, answers, look, fills);
        if self.trace.has_hand() {
            self.trace.on_sheet(&sheet.response, sheet.lies.view);
        } else {
            let what = (&mut self.session.now, look, self.sketching.drawn_on());
            if let Some(handle) = self.handles.show(ui, &sheet, answers, what) {
                self.sketching.choose_by(&handle);
            }
        }
        asked.map(Wish::Do)
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
impl DesignBench {
    /// Takes the last change back.
    pub(super) fn undo(&mut self) {
        if self.session.undo() {
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

    /// Shows so much of the drawing.
    pub(super) fn see(&mut self, sight: Sight) {
        match self.look.page {
            Page::Making => self.stages.see(sight),
            Page::Bar | Page::Fit | Page::Strength | Page::Heats | Page::Findings => {
                self.paper.see(sight);
            }
        }
    }

    /// Shows the drawing at so many points per millimetre.
    pub(super) fn set_scale(&mut self, scale: f32) {
        self.paper.set_scale(scale);
    }

    /// Puts an own jaw on a part, in proportion to the work.
    ///
    /// # Errors
    /// One sentence when it does not grow to the work, or would be outside the limits of a file.
    pub(super) fn use_jaw(&mut self, kept: &KeptJaw, part: Part) -> Result<(), String> {
        let before = self.session.now.clone();
        let jaw = jaw_mut(&mut self.session.now, part);
        let suited = kept.suited(&before.work, jaw.heel);
        *jaw = suited.map_err(|outgrown| outgrown.to_string())?;
        self.parts.forget();
        self.within_limits(before)
    }

    /// Takes a way to mend it, at once and so as one step; one that sets out from other values is
    /// old news.
    pub(super) fn mend(&mut self, mend: &Mend) {
        if mend.sets_out_from(&self.session.now) {
            self.session.now = mend.taken(&self.session.now);
            self.parts.forget();
        }
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
        let all = before.with(&self.session.now.name, measured, &meant);
        if let Some(shop) = shop {
            folder::keep_came_out(shop, &all)?;
        }
        let told = |own| Told {
            meant,
            own,
            kept: shop.is_some(),
        };
        self.look.making.came_out = CameOutForm {
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
        let before = self.session.now.clone();
        let design = &mut self.session.now;
        design.allowances = own.on(design.allowances);
        self.parts.forget();
        self.within_limits(before)
    }

    /// Reckons its loss to scale from its heats, per cent, as one step.
    ///
    /// # Errors
    /// One sentence when it would be outside the limits of a file.
    pub(super) fn take_scale(&mut self, percent: f64) -> Result<(), String> {
        let before = self.session.now.clone();
        self.session.now = with_scale_of(&before, percent);
        self.parts.forget();
        self.within_limits(before)
    }

    /// Puts the jaw and the work of a pair into the design, at once and so as one step.
    ///
    /// # Errors
    /// One sentence when it would be outside the limits of a file.
    pub(super) fn take_style(&mut self, pair: Document, part: Part) -> Result<(), String> {
        let before = self.session.now.clone();
        let design = &mut self.session.now;
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
        self.parts.forget();
        self.within_limits(before)
    }

    /// Goes back to what was there before when no file could carry what was done.
    ///
    /// # Errors
    /// One sentence that says what is outside.
    fn within_limits(&mut self, before: Document) -> Result<(), String> {
        let kept = self.session.keep_within(before);
        if kept.is_err() {
            self.parts.forget();
        }
        kept
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
        self.answers.follow(&self.session.now);
        if let Some(trouble) = self.answers.known.balance.trouble() {
            return Err(trouble);
        }
        let planned = self.answers.planned(&self.look.making.asked);
        let of = (&self.answers.known, &planned.plan);
        Ok(job_sheet::pdf(
            &self.session.now,
            of,
            shop,
            paper,
            printing::today(),
        ))
    }

    /// What goes into a drawing's file.
    pub(super) fn drawing(&mut self, drawn: Drawn) -> Drawing {
        self.answers.follow(&self.session.now);
        let (document, answers) = (&self.session.now, &self.answers);
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
        let Some(path) = self.session.path().map(Path::to_owned) else {
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
        let Some(path) = self.session.path().map(Path::to_owned) else {
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
