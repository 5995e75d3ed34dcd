//! The whole window, without the frame that a desktop puts around it.

use std::path::{Path, PathBuf};
use std::sync::mpsc::Receiver;

use egui::{Context, Panel, Theme, Ui};
use lyon::tessellation::FillTessellator;
use reinwright_core::shop::family::Family;
use reinwright_core::tongs::document::Document;
use reinwright_core::tool::Tool;

use super::open::Open;
use crate::disk::kept::Keeper;
use crate::disk::memory::Memory;
use crate::window::paint::{focus, theme};
use crate::window::panels::begin::BeginPair;
use crate::window::panels::begin_tool::BeginTool;
use crate::window::panels::cut::CutList;
use crate::window::panels::dialog::chooser::{Asking, Chooser};
use crate::window::panels::dialog::{Dialog, Kept, Reply};
use crate::window::panels::shelf::Shelf;
use crate::window::panels::sketch::JawShelf;
use crate::window::panels::styles::StyleChooser;
use crate::window::panels::tools_for::ToolsForPair;
use crate::window::panels::wish::Wish;
use crate::window::panels::{progress, question};
use crate::window::state::command::Command;
use crate::window::state::job::Job;
use crate::window::state::look::Page;
use crate::window::state::news::{News, Said};
use crate::window::state::samples;
use crate::window::state::session::Session;
use crate::window::state::shop_heats::ShopHeats;

/// What the window has around it.
#[derive(Debug)]
pub struct Surroundings {
    /// Who is asked for a path.
    pub chooser: Chooser,
    /// Where things are remembered, if anywhere.
    pub folder: Option<PathBuf>,
    /// Where unsaved work and earlier versions are kept, if anywhere.
    pub kept: Option<PathBuf>,
}

/// Everything in the window.
#[allow(
    missing_debug_implementations,
    reason = "the tessellator has no debug form"
)]
pub struct Workbench {
    /// What is worked on.
    pub(super) open: Open,
    pub(super) shown: Shown,
    pub(super) asked: Asked,
    pub(super) remembered: Remembered,
}

/// What is shown over or beside what is open.
pub(super) struct Shown {
    /// The shelf that is looked at, with what is open kept behind it.
    pub(super) shelf: Option<Box<Shelf>>,
    /// The cut list that is looked at.
    pub(super) cut: Option<Box<CutList>>,
    /// The questions that lead to a new pair.
    pub(super) begin: Option<BeginPair>,
    /// Those that lead to a new tool.
    pub(super) begin_tool: Option<BeginTool>,
    /// The tools that the open pair needs.
    pub(super) tools_for: Option<ToolsForPair>,
    /// The chooser of jaw styles.
    pub(super) styles: Option<StyleChooser>,
    /// The shelf of own jaws.
    pub(super) jaws: Option<JawShelf>,
    /// What is being written beside the window.
    pub(super) job: Option<Job>,
    /// The system's viewer, as long as it may say that it did not come.
    pub(super) viewing: Option<Receiver<String>>,
    /// A sentence for the smith: what was done, or why not.
    pub(super) news: News,
    pub(super) fills: FillTessellator,
    title: String,
    dressed: bool,
    /// By which factor everything is drawn, where that came from the room of the window.
    pub(super) fitted: Option<f32>,
}

/// What was asked for, and what the smith is asked.
#[derive(Debug)]
pub(super) struct Asked {
    /// What to do before the next frame.
    pub(super) queue: Vec<Wish>,
    pub(super) dialog: Option<Dialog>,
    pub(super) chooser: Chooser,
    /// The system's chooser, while it is open.
    pub(super) asking: Option<Asking>,
    /// Nothing can be lost any more: the window may close.
    pub(super) may_close: bool,
}

/// What outlasts what is open.
#[derive(Debug)]
pub(super) struct Remembered {
    pub(super) memory: Memory,
    /// Where own jaws are kept, if anywhere.
    pub(super) jaws_folder: Option<PathBuf>,
    /// The page of answers that was looked at last.
    pub(super) page: Page,
    /// The heat sources of the shop.
    pub(super) heats: ShopHeats,
    /// The cut list while it is not looked at.
    pub(super) cut: Option<Box<CutList>>,
    /// What was last kept against a power cut, and when.
    pub(super) rescued: Option<(f64, Kept)>,
    /// What keeps it.
    pub(super) keeper: Keeper,
    /// Where earlier versions are kept, if anywhere.
    pub(super) versions: Option<PathBuf>,
}

/// What is said on the first day.
const HINT: &str = "This pair is an example to try things on. New pair (Ctrl+N) starts from what your tongs must \
    hold, Ready designs under File has more, and pointing at anything tells what it is.";

impl Workbench {
    /// A window on a ready design.
    pub fn new(surroundings: Surroundings) -> Self {
        let mut bench = Self::with(samples::first(), surroundings);
        if bench.remembered.memory.is_first_time() {
            bench.shown.news.say(Said::Hint(HINT));
        }
        bench.offer_rescue();
        bench
    }

    /// A window on a file.
    ///
    /// # Errors
    /// One sentence when the file is no design or cannot be read.
    pub fn open(path: &Path, surroundings: Surroundings) -> Result<Self, String> {
        let mut bench = Self::with(samples::first(), surroundings);
        bench.open_file(path)?;
        bench.offer_rescue();
        Ok(bench)
    }

    /// A window on a file; on a ready design where the file cannot be read, with the sentence that says why.
    pub fn trying(path: &Path, surroundings: Surroundings) -> Self {
        let mut bench = Self::with(samples::first(), surroundings);
        let opened = bench.open_file(path);
        let instead =
            |error| format!("{error}. The file stays as it is; a ready design is open instead");
        bench.tell(opened.map_err(instead));
        bench.offer_rescue();
        bench
    }

    /// A window on a design that has no file.
    pub fn with(document: Document, surroundings: Surroundings) -> Self {
        let open = Open::design(Session::begun(document), Page::Bar);
        Self::around(open, surroundings)
    }

    /// A window on a tool that has no file.
    pub fn with_tool(tool: Tool, surroundings: Surroundings) -> Self {
        let open = Open::tool(Session::begun(tool), Page::Bar);
        Self::around(open, surroundings)
    }

    /// A window on a family that has no file.
    pub fn with_family(family: Family, surroundings: Surroundings) -> Self {
        Self::around(Open::family(Session::unsaved(family)), surroundings)
    }

    /// A window on a family of tools that has no file.
    pub fn with_tools(family: Family<Tool>, surroundings: Surroundings) -> Self {
        Self::around(Open::tools(Session::unsaved(family)), surroundings)
    }

    fn around(open: Open, surroundings: Surroundings) -> Self {
        Self {
            open,
            shown: Shown {
                shelf: None,
                cut: None,
                begin: None,
                begin_tool: None,
                tools_for: None,
                styles: None,
                jaws: None,
                job: None,
                viewing: None,
                news: News::default(),
                fills: FillTessellator::new(),
                title: String::new(),
                dressed: false,
                fitted: None,
            },
            asked: Asked {
                queue: Vec::new(),
                dialog: None,
                chooser: surroundings.chooser,
                asking: None,
                may_close: false,
            },
            remembered: Remembered {
                heats: ShopHeats::of(surroundings.folder.clone()),
                memory: Memory::from(surroundings.folder),
                jaws_folder: None,
                page: Page::Bar,
                cut: None,
                rescued: None,
                keeper: Keeper::in_folder(
                    surroundings.kept.as_ref().map(|kept| kept.join("unsaved")),
                ),
                versions: surroundings.kept.map(|kept| kept.join("versions")),
            },
        }
    }

    /// The same window with a shelf of own jaws in a folder.
    #[must_use]
    pub fn keeping_jaws_in(mut self, folder: PathBuf) -> Self {
        self.remembered.jaws_folder = Some(folder);
        self
    }

    /// The design as it stands, or the base of the family that is open; `None` where it is of a tool.
    pub fn design(&self) -> Option<&Document> {
        self.open.document()
    }

    /// The tool that is open, if it is one.
    pub fn tool(&self) -> Option<&Tool> {
        match &self.open {
            Open::Tool(bench) => Some(&bench.desk.session.now),
            Open::Design(_) | Open::Family(_) | Open::Tools(_) => None,
        }
    }

    /// The family that is open, if it is one.
    pub fn family(&self) -> Option<&Family> {
        match &self.open {
            Open::Design(_) | Open::Tool(_) | Open::Tools(_) => None,
            Open::Family(bench) => Some(&bench.session.now),
        }
    }

    /// The family of tools that is open, if it is one.
    pub fn tools(&self) -> Option<&Family<Tool>> {
        match &self.open {
            Open::Design(_) | Open::Tool(_) | Open::Family(_) => None,
            Open::Tools(bench) => Some(&bench.session.now),
        }
    }

    /// Whether what is open has changes that are not saved.
    pub fn is_changed(&self) -> bool {
        self.open.session().is_changed()
    }

    /// Whether the window may close now.
    pub fn may_close(&self) -> bool {
        self.asked.may_close
    }

    /// Whether something is being written beside the window.
    pub fn is_at_work(&self) -> bool {
        self.shown.job.is_some()
    }

    /// Draws one frame, after doing what the last one asked for.
    pub fn show(&mut self, ui: &mut Ui) {
        let ctx = ui.ctx().clone();
        self.dress(ui);
        self.fit_letters(&ctx);
        self.before(&ctx);
        self.panels(ui);
        self.show_job(&ctx);
        self.question(&ctx);
        self.after(&ctx);
        self.note_room(ui);
        focus::ring(&ctx);
    }

    /// Colours and panels as they were left, once.
    fn dress(&mut self, ui: &Ui) {
        if !std::mem::replace(&mut self.shown.dressed, true) {
            self.set_up_panels(ui);
            self.colour(ui.ctx());
        }
    }

    /// Gives the window its spacing and colours. They take hold with the next frame, so that a window asks for them
    /// before its first.
    pub(super) fn colour(&self, ctx: &Context) {
        theme::dress(ctx);
        ctx.set_theme(self.remembered.memory.theme.unwrap_or(Theme::Light));
    }

    /// Commands, choosers and the close button, before anything is drawn.
    fn before(&mut self, ctx: &Context) {
        self.open.drag(ctx);
        if !self.is_asked() && !self.open.is_dragging() {
            let pressed = Command::pressed(ctx);
            self.asked.queue.extend(pressed.into_iter().map(Wish::Do));
        }
        for wish in std::mem::take(&mut self.asked.queue) {
            self.grant(ctx, wish);
        }
        self.poll_chooser(ctx);
        self.poll_job(ctx);
        self.poll_picture(ctx);
        self.poll_viewer();
        self.hold_the_door(ctx);
        if self.open.is_ahead_of_answers() {
            self.remembered.heats.is_last = false;
        }
        if matches!(
            self.shown.news.said(),
            Some(Said::Done(_) | Said::Printed(..))
        ) && self.open.is_ahead_of_answers()
        {
            // What was done is old news once the design goes on changing.
            self.shown.news.hush();
        }
        self.shown.news.grow_old(ctx);
        self.open.follow();
    }

    /// Whether a dialog is open.
    pub(super) fn is_asked(&self) -> bool {
        let shown = &self.shown;
        self.asked.dialog.is_some()
            || shown.begin.is_some()
            || shown.begin_tool.is_some()
            || shown.tools_for.is_some()
            || shown.styles.is_some()
            || shown.jaws.is_some()
    }

    fn panels(&mut self, ui: &mut Ui) {
        Panel::top("menu").show(ui, |ui| self.menu(ui));
        Panel::bottom("news").show(ui, |ui| self.news(ui));
        self.lend_stock();
        let screen = self.screen(ui.ctx());
        let fills = &mut self.shown.fills;
        let behind = self.open.session().title();
        let asked = match (&mut self.shown.shelf, &mut self.shown.cut) {
            (Some(shelf), _) => shelf.show(ui, &behind, fills),
            (None, Some(cut)) => cut.show(ui, &behind, fills),
            (None, None) => {
                let heats = &mut self.remembered.heats;
                self.open.show(ui, (screen, heats), fills)
            }
        };
        self.asked.queue.extend(asked);
        self.show_own_jaws(ui.ctx());
    }

    /// Points per millimetre of the screen that the window is on.
    pub(super) fn screen(&self, ctx: &Context) -> f32 {
        let memory = &self.remembered.memory;
        memory.screen(which_screen(ctx).as_deref()) / ctx.zoom_factor()
    }

    /// The own jaws over the design that one of them is chosen for.
    fn show_own_jaws(&mut self, ctx: &Context) {
        let alone = self.shown.shelf.is_none() && self.shown.cut.is_none();
        let on_design = alone && self.open.as_design().is_some();
        if let Some(jaws) = self.shown.jaws.as_ref().filter(|_| on_design) {
            let wish = jaws.show(ctx, &mut self.shown.fills);
            self.asked.queue.extend(wish.map(Wish::Jaws));
        }
    }

    fn show_job(&self, ctx: &Context) {
        if let Some(job) = &self.shown.job
            && progress::show(ctx, job)
        {
            job.stop();
        }
    }

    fn question(&mut self, ctx: &Context) {
        if let Some(styles) = &mut self.shown.styles {
            let wish = styles.show(ctx, &mut self.shown.fills);
            self.asked.queue.extend(wish.map(Wish::Styles));
        }
        if let Some(begin) = &mut self.shown.begin
            && let Some(outcome) = begin.show(ctx, &mut self.shown.fills)
        {
            self.begin_pair(ctx, outcome);
            ctx.request_repaint();
        }
        self.questions_of_tools(ctx);
        let dialog = self.asked.dialog.as_mut();
        let fills = &mut self.shown.fills;
        if let Some(reply) = dialog.and_then(|dialog| dialog.show(ctx, fills)) {
            if !matches!(reply, Reply::NotePrinter(_)) {
                self.asked.dialog = None;
            }
            self.answer(ctx, reply);
            ctx.request_repaint();
        }
        question::settle(ctx);
    }

    /// Undo, rescue copy and title, once all is drawn.
    fn after(&mut self, ctx: &Context) {
        let (time, busy) = ctx.input(|i| (i.time, i.pointer.any_down() || !i.keys_down.is_empty()));
        self.feed_heats(time, busy);
        if self.open.after(time, busy) || !self.asked.queue.is_empty() {
            ctx.request_repaint();
        }
        if let Some(design) = self.open.as_design().filter(|_| !busy) {
            design.note_picture(&self.remembered.memory);
        }
        self.rescue(ctx, time);
        self.put_title(ctx);
    }

    fn put_title(&mut self, ctx: &Context) {
        let title = format!("{} - Reinwright", self.open.session().title());
        if title != self.shown.title {
            ctx.send_viewport_cmd(egui::ViewportCommand::Title(title.clone()));
            self.shown.title = title;
        }
    }

    /// The page of answers that is looked at, or was last.
    pub(super) fn page(&self) -> Page {
        match &self.open {
            Open::Design(design) => design.desk.page(),
            // The page of a design is the one to come back to.
            Open::Tool(_) | Open::Family(_) | Open::Tools(_) => self.remembered.page,
        }
    }

    /// Shows something else from now on.
    pub(super) fn show_open(&mut self, open: Open) {
        self.remembered.page = self.page();
        if !matches!(open, Open::Design(_)) {
            // A style is chosen for one design.
            self.shown.styles = None;
        }
        self.open = open;
        self.shown.news.hush();
        if matches!(self.open, Open::Family(_)) {
            let trouble = self.remembered.memory.stock.trouble.clone();
            self.tell(trouble.map_or(Ok(()), Err));
        }
        self.shown.shelf = None;
        self.leave_cut_list();
        self.asked.dialog = None;
    }

    /// Says what was done, or why not.
    pub(super) fn say(&mut self, done: Result<String, String>) {
        self.shown.news.say(match done {
            Ok(words) => Said::Done(words),
            Err(trouble) => Said::Trouble(trouble),
        });
    }

    /// Says why something could not be done; that it could shows of itself.
    pub(super) fn tell(&mut self, done: Result<(), String>) {
        if let Err(trouble) = done {
            self.shown.news.say(Said::Trouble(trouble));
        }
    }
}

/// What tells one screen from another: how large it is, and how finely it is drawn on. `None` where
/// that is not known.
pub(super) fn which_screen(ctx: &Context) -> Option<String> {
    let size = ctx.input(|i| i.viewport().monitor_size)?;
    let size = size * ctx.zoom_factor();
    let fine = ctx.native_pixels_per_point().unwrap_or(1.0);
    Some(format!("{:.0} x {:.0}, {fine}", size.x, size.y))
}
