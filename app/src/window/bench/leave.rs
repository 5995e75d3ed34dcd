//! Going on to something else without losing what is open.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::{Path, PathBuf};
use std::time::SystemTime;

use egui::{Context, ViewportCommand};
use reinwright_core::asked::{Field, Value};
use reinwright_core::shop::{Answers, ToolAnswers};
use reinwright_core::tongs::document::Document;
use reinwright_core::tool::Tool;

use super::open::Open;
use super::workbench::Workbench;
use crate::disk::kept::{self, About};
use crate::disk::{files, versions};
use crate::window::panels::dialog::{Dialog, Kept, Leave, Next, Purpose, Rescue, Versions};
use crate::window::state::session::Session;

/// How often unsaved work is copied against a power cut, seconds.
const RESCUE_EVERY: f64 = 5.0;

impl Workbench {
    /// Goes on to something else, unless work would be lost: then it asks.
    pub(super) fn leave_for(&mut self, ctx: &Context, next: Next) {
        self.open.commit_typed();
        if self.is_changed() {
            let name = match self.open.session().name().trim() {
                "" => "What is open".to_owned(),
                name => format!("\"{name}\""),
            };
            self.asked.dialog = Some(Dialog::Leave(Leave { name, next }));
        } else {
            self.go_on(ctx, next);
        }
    }

    /// Goes on to something else, whatever becomes of what is open.
    pub(super) fn go_on(&mut self, ctx: &Context, next: Next) {
        match next {
            // What is begun is seen first.
            Next::Begin(document) => {
                let page = self.page().beside_drawing();
                self.show_open(Open::design(Session::unsaved(*document), page));
            }
            Next::Ready(document) => self.show_design(Session::begun(*document)),
            Next::BeginTool(tool) => {
                let page = self.page().beside_drawing();
                self.show_open(Open::tool(Session::unsaved(*tool), page));
            }
            Next::ReadyTool(tool) => self.show_tool(Session::begun(*tool)),
            Next::ReadyFamily(family) => self.show_open(Open::family(Session::begun(*family))),
            Next::ReadyTools(set) => self.show_open(Open::tools(Session::begun(*set))),
            Next::Open(path) => {
                let done = self.open_file(&path);
                self.tell(done);
            }
            Next::OpenAt(path, at) => match self.open_file(&path) {
                Ok(()) => {
                    self.open.choose(at);
                }
                Err(trouble) => self.tell(Err(trouble)),
            },
            Next::Choose => self.ask(Purpose::Open),
            Next::Close => {
                self.may_go();
                ctx.send_viewport_cmd(ViewportCommand::Close);
            }
        }
    }

    /// Shows another design.
    pub(super) fn show_design(&mut self, session: Session<Document>) {
        self.show_open(Open::design(session, self.page()));
    }

    /// Shows another tool.
    pub(super) fn show_tool(&mut self, session: Session<Tool>) {
        self.show_open(Open::tool(session, self.page()));
    }

    /// Keeps the window open while there is something to lose.
    pub(super) fn hold_the_door(&mut self, ctx: &Context) {
        let closing = ctx.input(|i| i.viewport().close_requested());
        if !closing || self.asked.may_close {
            return;
        }
        self.open.commit_typed();
        if self.is_changed() {
            ctx.send_viewport_cmd(ViewportCommand::CancelClose);
            self.leave_for(ctx, Next::Close);
        } else {
            self.may_go();
        }
    }

    fn may_go(&mut self) {
        self.remembered.keeper.let_go();
        self.asked.may_close = true;
    }

    /// Copies unsaved work now and then; what is saved needs no copy.
    pub(super) fn rescue(&mut self, ctx: &Context, time: f64) {
        if !self.open.session().is_changed() {
            if self.remembered.rescued.take().is_some() {
                self.remembered.keeper.let_go();
            }
            return;
        }
        let (last, kept) = match &self.remembered.rescued {
            Some((last, kept)) => (*last, self.open.is_kept(kept)),
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
        self.keep_now(time);
    }

    /// Copies what is open, saved or not.
    pub(super) fn keep_now(&mut self, time: f64) {
        let kept = self.open.kept();
        let about = About {
            file: self.open.session().path().map(Path::to_owned),
            name: kept.name().to_owned(),
            time: SystemTime::now(),
        };
        let done = self.remembered.keeper.keep(&about, &kept.text());
        if let Err(why) = done {
            // The smith should know that a crash would cost what is open.
            self.tell(Err(format!("No copy of unsaved work can be kept: {why}")));
        }
        self.remembered.rescued = Some((time, kept));
    }

    /// Keeps what is open after a fault of the program; gives back what the smith is told.
    pub(super) fn keep_after_fault(&mut self) -> String {
        let what = "This is a fault of ours, and nothing that you did.";
        if !self.open.session().is_changed() {
            return format!("{what} What was open is saved.");
        }
        self.remembered.rescued = None;
        self.keep_now(f64::NEG_INFINITY);
        self.remembered.keeper.leave();
        format!("{what} What was open is kept: it is offered when the program starts again.")
    }

    /// Offers work that was left behind.
    pub(super) fn offer_rescue(&mut self) {
        let left = self.remembered.keeper.left();
        if let Some(rescue) = Rescue::of(left) {
            self.asked.dialog = Some(Dialog::Rescue(rescue));
        }
    }

    /// Shows work that was left behind, not saved yet; its copy goes once this window has one. Sizes
    /// so far outside their limits that nothing can be reckoned from them are brought to them, and
    /// then the copy stays too.
    pub(super) fn bring_back(&mut self, kept: Kept, copy: &Path, file: Option<PathBuf>) {
        let (kept, changed) = reckonable(kept);
        self.show_kept(kept, file);
        self.keep_now(f64::NEG_INFINITY);
        if changed {
            self.tell(Err(format!(
                "Sizes that nothing could be reckoned from were set to their limits; what was kept \
                 stays in {}",
                copy.display()
            )));
        } else if self.remembered.rescued.is_some() {
            kept::throw_away(copy);
        }
    }

    fn show_kept(&mut self, kept: Kept, file: Option<PathBuf>) {
        match kept {
            Kept::Design(design) => self.show_design(Session::brought_back(*design, file)),
            Kept::Tool(tool) => self.show_tool(Session::brought_back(*tool, file)),
            Kept::Family(family) => {
                self.show_open(Open::family(Session::brought_back(*family, file)));
            }
            Kept::Tools(family) => {
                self.show_open(Open::tools(Session::brought_back(*family, file)));
            }
        }
    }

    /// Offers what the file that is open was before.
    pub(super) fn offer_versions(&mut self) {
        let file = self.open.session().path().map(Path::to_owned);
        let Some(file) = file else {
            let why = "There is no earlier version of what was never saved";
            self.tell(Err(why.to_owned()));
            return;
        };
        let all = self.remembered.versions.as_ref();
        let versions = all.map(|all| versions::of(all, &file)).unwrap_or_default();
        self.asked.dialog = Some(Dialog::Versions(Versions::of(file, versions)));
    }

    /// Shows an earlier version of a file, not saved yet.
    ///
    /// # Errors
    /// One sentence when it cannot be read.
    pub(super) fn bring_version(&mut self, version: &Path, file: PathBuf) -> Result<(), String> {
        let bytes = files::bytes(version)?;
        let kept = Kept::read(&bytes).map_err(|why| format!("{}: {why}", version.display()))?;
        if self.is_changed() {
            // What was open goes among the copies that can be brought back.
            self.keep_now(f64::NEG_INFINITY);
            self.remembered.keeper.leave();
            self.remembered.rescued = None;
        }
        self.show_kept(kept, Some(file));
        Ok(())
    }
}

/// The same work, or where the program fails on it the work with every size inside its limits; and
/// whether that was needed.
fn reckonable(kept: Kept) -> (Kept, bool) {
    match kept {
        Kept::Design(mut design) => {
            let changed = fails(|| Answers::to(&design));
            if changed {
                design.revise(&mut inside);
            }
            (Kept::Design(design), changed)
        }
        Kept::Tool(mut tool) => {
            let changed = fails(|| ToolAnswers::to(&tool));
            if changed {
                tool.revise(&mut inside);
            }
            (Kept::Tool(tool), changed)
        }
        Kept::Family(_) | Kept::Tools(_) => (kept, false),
    }
}

/// Whether the program fails on something.
fn fails<T>(reckon: impl FnOnce() -> T) -> bool {
    catch_unwind(AssertUnwindSafe(reckon)).is_err()
}

/// A number brought to its limits, if it is outside.
fn inside(field: &Field) -> Option<Value> {
    let (now, range) = (field.value.number()?, field.range);
    let inside = now.clamp(range.least, range.most);
    (inside != now).then(|| field.value.with_number(inside))
}
