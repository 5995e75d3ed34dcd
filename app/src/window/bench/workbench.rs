//! The whole window, without the frame that a desktop puts around it.

use std::path::PathBuf;

use egui::{CentralPanel, Context, Panel, Theme, Ui};
use lyon::tessellation::FillTessellator;
use reinwright_core::document::Document;
use reinwright_core::family::Family;

use super::bar_strip::BarStrip;
use super::chooser::{Asking, Chooser};
use super::command::Command;
use super::dialog::{Dialog, Kept};
use super::family::{FamilyBench, Lent};
use super::handles::Handles;
use super::history::{Hand, History};
use super::job::Job;
use super::look::{Look, Page};
use super::memory::Memory;
use super::paper::{Hand as PaperHand, Paper};
use super::parts::PartsList;
use super::reckon::Answers;
use super::session::Session;
use super::shelf::{self, Shelf};
use super::sketch::{JawShelf, ShelfWish, Sketching};
use super::styles::{StyleChooser, StyleWish};
use super::trace::{Kept as KeptTrace, Trace};
use super::{answers, samples, theme};

/// How often an unsaved design is copied against a power cut, seconds.
const RESCUE_EVERY: f64 = 5.0;

/// What the window has around it.
#[derive(Debug)]
pub struct Surroundings {
    /// Who is asked for a path.
    pub chooser: Chooser,
    /// Where things are remembered, if anywhere.
    pub folder: Option<PathBuf>,
}

/// Everything in the window.
#[allow(
    missing_debug_implementations,
    reason = "the tessellator has no debug form"
)]
pub struct Workbench {
    pub(super) session: Session,
    /// The family that is open instead of a design, if one is.
    pub(super) family: Option<Box<FamilyBench>>,
    /// The shelf that is looked at, with the design or family kept behind it.
    pub(super) shelf: Option<Box<Shelf>>,
    /// What is being written beside the window.
    pub(super) job: Option<Job>,
    pub(super) history: History,
    pub(super) answers: Answers,
    pub(super) look: Look,
    pub(super) paper: Paper,
    pub(super) handles: Handles,
    /// The picture under the drawing, if there is one.
    pub(super) trace: Trace,
    /// What was last remembered of it, for which design.
    pub(super) noted_trace: Option<(PathBuf, Option<KeptTrace>)>,
    pub(super) parts: PartsList,
    pub(super) memory: Memory,
    pub(super) chooser: Chooser,
    pub(super) asking: Option<Asking>,
    pub(super) dialog: Option<Dialog>,
    /// Commands to run before the next frame.
    pub(super) queue: Vec<Wish>,
    /// A sentence for the smith: what was done, or why not.
    pub(super) said: Option<Said>,
    /// Nothing can be lost any more: the window may close.
    pub(super) may_close: bool,
    /// What is chosen in a sketched jaw.
    pub(super) sketching: Sketching,
    /// The chooser of jaw styles, if it is open.
    pub(super) styles: Option<StyleChooser>,
    /// The shelf of own jaws, while it is open.
    pub(super) jaw_shelf: Option<JawShelf>,
    /// Where own jaws are kept, if anywhere.
    pub(super) jaws_folder: Option<PathBuf>,
    strip: BarStrip,
    fills: FillTessellator,
    title: String,
    dressed: bool,
    rescued: Option<(f64, Kept)>,
}

/// What was clicked while the window was drawn.
#[derive(Debug, Clone)]
pub(super) enum Wish {
    Do(Command),
    /// A recent file.
    Open(PathBuf),
    /// A file of the shelf, and of a family the size at a place.
    OpenAt(PathBuf, usize),
    /// A folder as a shelf.
    ShelfOf(PathBuf),
    /// Back to what is open.
    LeaveShelf,
    /// A sample.
    Begin(Box<Document>),
    /// Something about own jaws.
    Shelf(ShelfWish),
    /// The chooser of jaw styles.
    Styles(StyleWish),
}

/// A sentence in the line under the menu.
#[derive(Debug, Clone)]
pub(super) enum Said {
    Done(String),
    Trouble(String),
}

impl Workbench {
    /// A window on a ready design.
    pub fn new(surroundings: Surroundings) -> Self {
        let session = Session::begun(samples::first());
        let mut bench = Self::around(session, surroundings);
        if let Some(path) = bench.memory.left_behind() {
            bench.offer_rescue(path);
        }
        bench
    }

    /// A window on a file.
    ///
    /// # Errors
    /// One sentence when the file is no design or cannot be read.
    pub fn open(path: &std::path::Path, surroundings: Surroundings) -> Result<Self, String> {
        let mut bench = Self::around(Session::begun(samples::first()), surroundings);
        bench.open_file(path)?;
        Ok(bench)
    }

    /// A window on a design that has no file.
    pub fn with(document: Document, surroundings: Surroundings) -> Self {
        Self::around(Session::begun(document), surroundings)
    }

    fn around(session: Session, surroundings: Surroundings) -> Self {
        Self {
            family: None,
            shelf: None,
            job: None,
            history: History::new(&session.document),
            answers: Answers::to(&session.document),
            look: Look::on(Page::Bar),
            paper: Paper::default(),
            handles: Handles::default(),
            trace: Trace::default(),
            noted_trace: None,
            parts: PartsList::default(),
            memory: Memory::from(surroundings.folder),
            chooser: surroundings.chooser,
            asking: None,
            dialog: None,
            queue: Vec::new(),
            said: None,
            may_close: false,
            sketching: Sketching::default(),
            styles: None,
            jaw_shelf: None,
            jaws_folder: None,
            strip: BarStrip::default(),
            fills: FillTessellator::new(),
            title: String::new(),
            dressed: false,
            rescued: None,
            session,
        }
    }

    /// The same window with a shelf of own jaws in a folder.
    #[must_use]
    pub fn keeping_jaws_in(mut self, folder: PathBuf) -> Self {
        self.jaws_folder = Some(folder);
        self
    }

    /// The design as it stands.
    pub fn document(&self) -> &Document {
        &self.session.document
    }

    /// The family that is open, if it is one.
    pub fn family(&self) -> Option<&Family> {
        self.family.as_ref().map(|bench| &bench.session.family)
    }

    /// Whether the design or the family has changes that are not saved.
    pub fn is_changed(&self) -> bool {
        match &self.family {
            Some(bench) => bench.session.is_changed(),
            None => self.session.is_changed(),
        }
    }

    /// Whether the window may close now.
    pub fn may_close(&self) -> bool {
        self.may_close
    }

    /// Draws one frame, after doing what the last one asked for.
    pub fn show(&mut self, ui: &mut Ui) {
        let ctx = ui.ctx().clone();
        self.dress(&ctx);
        self.before(&ctx);
        self.panels(ui);
        self.show_job(&ctx);
        self.question(&ctx);
        self.after(&ctx);
    }

    /// Colours, once; a theme needs a frame to take hold.
    fn dress(&mut self, ctx: &Context) {
        if !std::mem::replace(&mut self.dressed, true) {
            theme::dress(ctx);
            ctx.set_theme(self.memory.theme.unwrap_or(Theme::Light));
        }
    }

    /// Commands, choosers and the close button, before anything is drawn.
    fn before(&mut self, ctx: &Context) {
        self.handles.drag(ctx, &mut self.session.document);
        if self.dialog.is_none() && !self.handles.busy() {
            let pressed = Command::pressed(ctx);
            self.queue.extend(pressed.into_iter().map(Wish::Do));
        }
        for wish in std::mem::take(&mut self.queue) {
            self.grant(ctx, wish);
        }
        self.poll_chooser(ctx);
        self.poll_job(ctx);
        self.poll_picture(ctx);
        self.hold_the_door(ctx);
        if matches!(self.said, Some(Said::Done(_))) && self.answers_are_behind() {
            // What was done is old news once the design goes on changing.
            self.said = None;
        }
        self.answers.bear(self.look.load);
        self.answers.follow(&self.session.document);
    }

    fn panels(&mut self, ui: &mut Ui) {
        Panel::top("menu").show(ui, |ui| self.menu(ui));
        if self.said.is_some() || self.asking.is_some() {
            self.said_over(ui.ctx());
        }
        if self.shelf.is_some() {
            self.shelf_page(ui);
            return;
        }
        if let Some(family) = &mut self.family {
            let mut lent = Lent {
                queue: &mut self.queue,
                said: &mut self.said,
                fills: &mut self.fills,
                screen: self.memory.screen,
            };
            family.show(ui, &mut lent);
            return;
        }
        Panel::left("parts")
            .default_size(258.0)
            .size_range(258.0..=420.0)
            .show(ui, |ui| {
                let sketching = &mut self.sketching;
                let wish =
                    self.parts
                        .show(ui, &mut self.session.document, (&mut self.look, sketching));
                self.queue.extend(wish.map(Wish::Shelf));
                let styles = self.parts.choose_style.take();
                self.queue
                    .extend(styles.map(|part| Wish::Styles(StyleWish::Open(part))));
            });
        if let Some(shelf) = &self.jaw_shelf {
            let wish = shelf.show(ui.ctx(), &mut self.fills);
            self.queue.extend(wish.map(Wish::Shelf));
        }
        // What was edited in the list shows in the drawing in the same frame.
        self.answers.bear(self.look.load);
        self.answers.follow(&self.session.document);
        Panel::right("answers")
            .default_size(272.0)
            .size_range(260.0..=460.0)
            .show(ui, |ui| {
                let shown = (&mut self.answers, &mut self.look, &mut self.fills);
                answers::show(ui, &self.session.document, shown);
            });
        Panel::bottom("bar")
            .default_size(118.0)
            .size_range(90.0..=260.0)
            .resizable(true)
            .show(ui, |ui| {
                self.strip
                    .show(ui, &mut self.answers, &mut self.look, &mut self.fills);
            });
        CentralPanel::default().show(ui, |ui| self.sheet(ui));
    }

    fn shelf_page(&mut self, ui: &mut Ui) {
        let behind = self.open_title();
        if let Some(shelf) = &mut self.shelf {
            let mut lent = shelf::Lent {
                queue: &mut self.queue,
                said: &mut self.said,
                fills: &mut self.fills,
                behind,
            };
            shelf.show(ui, &mut lent);
        }
    }

    fn sheet(&mut self, ui: &mut Ui) {
        let asked = self.paper.tools(ui, &mut self.look, self.memory.screen);
        self.queue.extend(asked.map(Wish::Do));
        self.trace.tools(ui, self.session.document.units);
        self.paper.frozen = self.handles.frozen();
        self.paper.under = self.trace.under();
        self.paper.hand = if self.trace.has_hand() {
            PaperHand::OnPicture
        } else {
            PaperHand::OnDrawing
        };
        let (answers, look) = (&mut self.answers, &mut self.look);
        let sheet = self.paper.show(ui, answers, look, &mut self.fills);
        if self.trace.has_hand() {
            self.trace.on_sheet(&sheet.response, sheet.lies.view);
            return;
        }
        let what = (&mut self.session.document, look, &mut self.sketching);
        self.handles.show(ui, &sheet, answers, what);
    }

    fn question(&mut self, ctx: &Context) {
        if let Some(styles) = &mut self.styles {
            let wish = styles.show(ctx, &mut self.fills);
            self.queue.extend(wish.map(Wish::Styles));
        }
        let reply = self.dialog.as_mut().and_then(|dialog| dialog.show(ctx));
        if let Some(reply) = reply {
            self.dialog = None;
            self.answer(ctx, reply);
            ctx.request_repaint();
        }
    }

    /// Undo, rescue copy and title, once all is drawn.
    fn after(&mut self, ctx: &Context) {
        let (time, busy) = ctx.input(|i| (i.time, i.pointer.any_down() || !i.keys_down.is_empty()));
        let hand = if busy || self.parts.typing {
            Hand::Moving
        } else {
            Hand::AtRest
        };
        let family = self
            .family
            .as_mut()
            .is_some_and(|family| family.after(time, busy));
        // A drag that is given up must not end what could be redone.
        if self.family.is_none() && !self.handles.busy() {
            self.history.feed(time, &self.session.document, hand);
        }
        let lit_changed = self.look.turn() || family;
        if lit_changed || !self.queue.is_empty() || self.answers_are_behind() {
            ctx.request_repaint();
        }
        if !busy {
            self.note_picture();
        }
        self.rescue(ctx, time);
        self.put_title(ctx);
    }

    fn answers_are_behind(&self) -> bool {
        !self.answers.answer(&self.session.document)
    }

    fn put_title(&mut self, ctx: &Context) {
        let title = format!("{} - Reinwright", self.open_title());
        if title != self.title {
            ctx.send_viewport_cmd(egui::ViewportCommand::Title(title.clone()));
            self.title = title;
        }
    }

    /// Copies unsaved work now and then; what is saved needs no copy.
    fn rescue(&mut self, ctx: &Context, time: f64) {
        if !self.is_changed() {
            if self.rescued.take().is_some() {
                self.memory.drop_rescue();
            }
            return;
        }
        let (last, kept) = match &self.rescued {
            Some((last, kept)) => (*last, self.is_kept(kept)),
            None => (f64::NEG_INFINITY, false),
        };
        if kept {
            return;
        }
        let wait = last + RESCUE_EVERY - time;
        if wait > 0.0 {
            ctx.request_repaint_after(std::time::Duration::from_secs_f64(wait));
            return;
        }
        let kept = self.kept();
        self.memory.keep_rescue(&kept.text());
        self.rescued = Some((time, kept));
    }
}
