//! What is open on the bench: one design, one tool, or one family of either.

use std::path::Path;

use egui::{Context, Ui};
use lyon::tessellation::FillTessellator;
use reinwright_core::shop::Answers;
use reinwright_core::shop::family::{self, Family, InSizes};
use reinwright_core::tongs::document::Document;
use reinwright_core::tool::{self, Tool};

use super::design::DesignBench;
use super::tool::ToolBench;
use crate::disk::files;
use crate::jobs::printing;
use crate::window::panels::dialog::Kept;
use crate::window::panels::family::FamilyBench;
use crate::window::panels::wish::Wish;
use crate::window::state::look::{Page, Sight};
use crate::window::state::session::{Opened, Session};
use crate::window::state::shop_heats::ShopHeats;

/// What is open, with everything that is seen of it.
pub(super) enum Open {
    Design(Box<DesignBench>),
    Tool(Box<ToolBench>),
    Family(Box<FamilyBench>),
    Tools(Box<FamilyBench<Tool>>),
}

impl Open {
    pub(super) fn design(session: Session<Document>, page: Page) -> Self {
        Self::Design(Box::new(DesignBench::on(session, page)))
    }

    pub(super) fn tool(session: Session<Tool>, page: Page) -> Self {
        Self::Tool(Box::new(ToolBench::on(session, page)))
    }

    pub(super) fn family(session: Session<Family>) -> Self {
        Self::Family(Box::new(FamilyBench::on(session)))
    }

    pub(super) fn tools(session: Session<Family<Tool>>) -> Self {
        Self::Tools(Box::new(FamilyBench::on(session)))
    }

    /// What a file holds, and a sentence where that is not all that stands in it. A design comes
    /// with this page of answers beside it.
    ///
    /// # Errors
    /// One sentence that names the file, what is wrong and the mend.
    pub(super) fn from_file(path: &Path, page: Page) -> Result<(Self, Option<String>), String> {
        let bytes = files::bytes(path)?;
        if tool::is_tool(&bytes) {
            let read = tool::read(&bytes).map_err(|why| format!("{}: {why}", path.display()))?;
            return Ok((Self::tool(Session::on_file(read, path), page), None));
        }
        if let Some((open, lost)) = Self::newer(&bytes, page) {
            return Ok((open, Some(from_newer(path, &lost))));
        }
        if family::is_tool_family(&bytes) {
            return Self::family_on(path, &bytes, Self::tools);
        }
        if !family::is_family(&bytes) {
            let session = Session::on_file(files::open(path)?, path);
            return Ok((Self::design(session, page), None));
        }
        Self::family_on(path, &bytes, Self::family)
    }

    /// A family on its file; a damaged one has none, and a sentence.
    fn family_on<D: InSizes>(
        path: &Path,
        bytes: &[u8],
        open: fn(Session<Family<D>>) -> Self,
    ) -> Result<(Self, Option<String>), String> {
        let opened = family::open_of(bytes).map_err(|why| format!("{}: {why}", path.display()))?;
        if opened.lost.is_empty() {
            return Ok((open(Session::on_file(opened.family, path)), None));
        }
        let lost = opened.lost.join("; ");
        let damaged = format!(
            "{} is damaged: {lost}. Look it over and save it under another name.",
            path.display()
        );
        // A damaged file is not written over unasked.
        Ok((open(Session::unsaved(opened.family)), Some(damaged)))
    }

    /// What can be read of a file that a newer program wrote, which is never written over unasked:
    /// it has no file here. `None` for any other file.
    fn newer(bytes: &[u8], page: Page) -> Option<(Self, Vec<String>)> {
        if let Some((design, lost)) = family::newer_design(bytes) {
            return Some((Self::design(Session::unsaved(design), page), lost));
        }
        if let Some((tools, lost)) = family::newer_of::<Tool>(bytes) {
            return Some((Self::tools(Session::unsaved(tools)), lost));
        }
        let (family, lost) = family::newer_family(bytes)?;
        Some((Self::family(Session::unsaved(family)), lost))
    }

    /// The design, if one is open.
    pub(super) fn as_design(&mut self) -> Option<&mut DesignBench> {
        match self {
            Self::Design(bench) => Some(bench),
            Self::Tool(_) | Self::Family(_) | Self::Tools(_) => None,
        }
    }

    /// What stands against making what is open, as it is now; nothing when nothing does.
    pub(super) fn stop(&self) -> Option<String> {
        match self {
            Self::Design(bench) => printing::stop(&Answers::to(&bench.desk.session.now).findings),
            Self::Tool(bench) => bench.stop(),
            Self::Family(bench) => bench.stop(),
            Self::Tools(bench) => bench.stop(),
        }
    }

    /// The family, if one is open.
    pub(super) fn as_family(&mut self) -> Option<&mut FamilyBench> {
        match self {
            Self::Design(_) | Self::Tool(_) | Self::Tools(_) => None,
            Self::Family(bench) => Some(bench),
        }
    }

    /// Looks at a size, where a family is open.
    pub(super) fn choose(&mut self, at: usize) {
        match self {
            Self::Design(_) | Self::Tool(_) => {}
            Self::Family(bench) => bench.choose(at),
            Self::Tools(bench) => bench.choose(at),
        }
    }

    /// Name, file and history, whichever it is.
    pub(super) fn session(&self) -> &dyn Opened {
        match self {
            Self::Design(bench) => &bench.desk.session,
            Self::Tool(bench) => &bench.desk.session,
            Self::Family(bench) => &bench.session,
            Self::Tools(bench) => &bench.session,
        }
    }

    /// The same, to be changed.
    pub(super) fn session_mut(&mut self) -> &mut dyn Opened {
        match self {
            Self::Design(bench) => &mut bench.desk.session,
            Self::Tool(bench) => &mut bench.desk.session,
            Self::Family(bench) => &mut bench.session,
            Self::Tools(bench) => &mut bench.session,
        }
    }

    /// The design, or the base of the family; a tool is neither.
    pub(super) fn document(&self) -> Option<&Document> {
        match self {
            Self::Design(bench) => Some(&bench.desk.session.now),
            Self::Tool(_) | Self::Tools(_) => None,
            Self::Family(bench) => Some(&bench.session.now.base),
        }
    }

    /// Shows everything under the menu, on a screen of so many points per millimetre, with the heat
    /// sources of the shop.
    pub(super) fn show(
        &mut self,
        ui: &mut Ui,
        (screen, heats): (f32, &mut ShopHeats),
        fills: &mut FillTessellator,
    ) -> Vec<Wish> {
        match self {
            Self::Design(bench) => bench.show(ui, (screen, heats), fills),
            Self::Tool(bench) => bench.show(ui, (screen, heats), fills),
            Self::Family(bench) => bench.show(ui, screen, fills),
            Self::Tools(bench) => bench.show(ui, screen, fills),
        }
    }

    /// Goes on with what is being dragged, before anything is drawn.
    pub(super) fn drag(&mut self, ctx: &Context) {
        match self {
            Self::Design(bench) => bench.drag(ctx),
            Self::Tool(bench) => bench.drag(ctx),
            Self::Family(_) | Self::Tools(_) => {}
        }
    }

    pub(super) fn is_dragging(&self) -> bool {
        match self {
            Self::Design(bench) => bench.is_dragging(),
            Self::Tool(bench) => bench.is_dragging(),
            Self::Family(_) | Self::Tools(_) => false,
        }
    }

    /// Reckons anew what changed; a family does so while it is shown.
    pub(super) fn follow(&mut self) {
        match self {
            Self::Design(bench) => bench.follow(),
            Self::Tool(bench) => bench.follow(),
            Self::Family(_) | Self::Tools(_) => {}
        }
    }

    /// Whether a design or a tool is no more as its answers have it.
    pub(super) fn is_ahead_of_answers(&self) -> bool {
        match self {
            Self::Design(bench) => bench.is_ahead_of_answers(),
            Self::Tool(bench) => bench.is_ahead_of_answers(),
            Self::Family(_) | Self::Tools(_) => false,
        }
    }

    /// Takes note of the state, once all is drawn; true when another frame is needed.
    pub(super) fn after(&mut self, time: f64, busy: bool) -> bool {
        match self {
            Self::Design(bench) => bench.after(time, busy),
            Self::Tool(bench) => bench.after(time, busy),
            Self::Family(bench) => bench.after(time, busy),
            Self::Tools(bench) => bench.after(time, busy),
        }
    }

    /// Puts what is being typed in its place, as if Enter had been pressed.
    pub(super) fn commit_typed(&mut self) {
        match self {
            Self::Design(bench) => bench.desk.commit(),
            Self::Tool(bench) => bench.desk.commit(),
            Self::Family(bench) => bench.commit(),
            Self::Tools(bench) => bench.commit(),
        }
    }

    pub(super) fn undo(&mut self) {
        match self {
            Self::Design(bench) => bench.desk.undo(),
            Self::Tool(bench) => bench.desk.undo(),
            Self::Family(bench) => bench.undo(),
            Self::Tools(bench) => bench.undo(),
        }
    }

    pub(super) fn redo(&mut self) {
        match self {
            Self::Design(bench) => bench.desk.redo(),
            Self::Tool(bench) => bench.desk.redo(),
            Self::Family(bench) => bench.redo(),
            Self::Tools(bench) => bench.redo(),
        }
    }

    /// Shows so much of the sheet that is looked at.
    pub(super) fn see(&mut self, sight: Sight) {
        match self {
            Self::Design(bench) => bench.see(sight),
            Self::Tool(bench) => bench.see_all(),
            Self::Family(bench) => bench.see(sight),
            Self::Tools(bench) => bench.see(sight),
        }
    }

    /// Shows what is drawn at so many points per millimetre.
    pub(super) fn set_scale(&mut self, scale: f32) {
        match self {
            Self::Design(bench) => bench.set_scale(scale),
            Self::Tool(bench) => bench.set_scale(scale),
            Self::Family(bench) => bench.set_scale(scale),
            Self::Tools(bench) => bench.set_scale(scale),
        }
    }

    /// What is to be kept against a power cut.
    pub(super) fn kept(&self) -> Kept {
        match self {
            Self::Design(bench) => Kept::Design(Box::new(bench.desk.session.now.clone())),
            Self::Tool(bench) => Kept::Tool(Box::new(bench.desk.session.now.clone())),
            Self::Family(bench) => Kept::Family(Box::new(bench.session.now.clone())),
            Self::Tools(bench) => Kept::Tools(Box::new(bench.session.now.clone())),
        }
    }

    /// Whether that is what was kept.
    pub(super) fn is_kept(&self, kept: &Kept) -> bool {
        match (kept, self) {
            (Kept::Family(kept), Self::Family(bench)) => **kept == bench.session.now,
            (Kept::Design(kept), Self::Design(bench)) => **kept == bench.desk.session.now,
            (Kept::Tool(kept), Self::Tool(bench)) => **kept == bench.desk.session.now,
            (Kept::Tools(kept), Self::Tools(bench)) => **kept == bench.session.now,
            (Kept::Family(_) | Kept::Design(_) | Kept::Tool(_) | Kept::Tools(_), _) => false,
        }
    }
}

/// What is said of a file that a newer program wrote.
fn from_newer(path: &Path, lost: &[String]) -> String {
    let lost = match lost {
        [] => "all that this one knows could be read".to_owned(),
        lost => lost.join("; "),
    };
    format!(
        "{} comes from a newer Reinwright: {lost}. It is shown to be looked at; save it under another name.",
        path.display()
    )
}
