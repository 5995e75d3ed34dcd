//! Ways back: to work that a window could not save, and to what a file was before.

use std::path::PathBuf;
use std::time::SystemTime;

use egui::{RichText, ScrollArea, Ui};
use reinwright_core::shop::family::{self, Family};
use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tool::{self, Tool};

use super::Reply;
use crate::disk::kept::{Left, ago};
use crate::disk::versions::Version;
use crate::window::paint::focus::follow;
use crate::window::paint::theme::Palette;
use crate::window::panels::question::{foot, lead};

/// Height of a list, in points.
const LIST: f32 = 260.0;

/// Work that is kept against a power cut.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Kept {
    Design(Box<Document>),
    Tool(Box<Tool>),
    Family(Box<Family>),
    Tools(Box<Family<Tool>>),
}

impl Kept {
    /// What was kept, from the bytes of its file, whatever its sizes.
    ///
    /// # Errors
    /// What is wrong, in one sentence.
    pub(crate) fn read(bytes: &[u8]) -> Result<Self, String> {
        if family::is_family(bytes) {
            let opened = family::open(bytes).map_err(|why| why.to_string())?;
            return Ok(Self::Family(Box::new(opened.family)));
        }
        if family::is_tool_family(bytes) {
            let opened = family::open_of(bytes).map_err(|why| why.to_string())?;
            return Ok(Self::Tools(Box::new(opened.family)));
        }
        if tool::is_tool(bytes) {
            let tool = tool::read_any(bytes).map_err(|why| why.to_string())?;
            return Ok(Self::Tool(Box::new(tool)));
        }
        let design = document::read_any(bytes).map_err(|why| why.to_string())?;
        Ok(Self::Design(Box::new(design)))
    }

    /// The text of its file.
    pub(crate) fn text(&self) -> String {
        match self {
            Self::Design(design) => document::write(design),
            Self::Tool(tool) => tool::write(tool),
            Self::Family(family) => family::write(family),
            Self::Tools(family) => family::write(family),
        }
    }

    /// What it is called.
    pub(crate) fn name(&self) -> &str {
        match self {
            Self::Design(design) => &design.name,
            Self::Tool(tool) => &tool.name,
            Self::Family(family) => &family.name,
            Self::Tools(family) => &family.name,
        }
    }
}

/// Work that windows could not save before they ended, the newest first.
#[derive(Debug)]
pub(crate) struct Rescue {
    left: Vec<(Left, Result<Kept, String>)>,
    now: SystemTime,
}

impl Rescue {
    /// What was left; `None` when nothing was.
    pub(crate) fn of(left: Vec<Left>) -> Option<Self> {
        let read = |left: Left| {
            let kept = left.bytes.clone().and_then(|bytes| Kept::read(&bytes));
            (left, kept)
        };
        let left: Vec<_> = left.into_iter().map(read).collect();
        let now = SystemTime::now();
        (!left.is_empty()).then_some(Self { left, now })
    }

    pub(super) fn show(&self, ui: &mut Ui) -> Option<Reply> {
        ui.heading("Work that was not saved");
        ui.label("A window ended before this was saved. A copy was kept.");
        let mut reply = None;
        let list = ScrollArea::vertical().max_height(LIST);
        list.show(ui, |ui| {
            for (left, kept) in &self.left {
                ui.separator();
                reply = self.one(ui, left, kept).or(reply.take());
            }
            follow(ui);
        });
        ui.separator();
        let later = foot(ui, None, &["Later"]).map(|_later| Reply::Stay);
        reply.or(later)
    }

    fn one(&self, ui: &mut Ui, left: &Left, kept: &Result<Kept, String>) -> Option<Reply> {
        let when = ago(left.about.time, self.now);
        let name = match kept {
            Ok(kept) if !kept.name().trim().is_empty() => kept.name(),
            Ok(_) | Err(_) => &left.about.name,
        };
        ui.label(RichText::new(format!("\"{name}\", {when}")).strong());
        let file = left.about.file.as_ref();
        ui.weak(file.map_or("It had no file yet".to_owned(), |file| {
            file.display().to_string()
        }));
        match kept {
            Ok(kept) => {
                ui.horizontal(|ui| {
                    let back = ui.button("Bring it back");
                    lead(&back);
                    if back.clicked() {
                        let file = left.about.file.clone();
                        return Some(Reply::Rescue(kept.clone(), left.path.clone(), file));
                    }
                    let thrown = ui.button("Throw it away").clicked();
                    thrown.then(|| Reply::Discard(left.path.clone()))
                })
                .inner
            }
            Err(why) => {
                let path = left.path.display();
                let words = format!("It cannot be read ({why}); it stays in {path}");
                ui.colored_label(Palette::of(ui.visuals()).stop, words);
                None
            }
        }
    }
}

/// What a file was before it was saved over.
#[derive(Debug)]
pub(crate) struct Versions {
    file: PathBuf,
    versions: Vec<Version>,
    now: SystemTime,
}

impl Versions {
    /// Of a file.
    pub(crate) fn of(file: PathBuf, versions: Vec<Version>) -> Self {
        Self {
            file,
            versions,
            now: SystemTime::now(),
        }
    }

    pub(super) fn show(&self, ui: &mut Ui) -> Option<Reply> {
        ui.heading("Earlier versions");
        ui.label(format!(
            "Of {}, as it was before each time that it was saved. One that is brought back is not \
             saved until you save it.",
            self.file.display()
        ));
        if self.versions.is_empty() {
            ui.weak("It was not saved over yet.");
        }
        let mut reply = None;
        let list = ScrollArea::vertical().max_height(LIST);
        list.show(ui, |ui| {
            for version in &self.versions {
                ui.horizontal(|ui| {
                    let back = ui.button("Bring back");
                    lead(&back);
                    let name = format!("Bring back version {}", version.number);
                    if back.on_hover_text(&name).accessible_name(name).clicked() {
                        let (path, file) = (version.path.clone(), self.file.clone());
                        reply = Some(Reply::Version(path, file));
                    }
                    let when = ago(version.time, self.now);
                    ui.label(format!("Version {}, saved {when}", version.number));
                });
            }
            follow(ui);
        });
        reply.or(foot(ui, None, &["Close"]).map(|_close| Reply::Stay))
    }
}
