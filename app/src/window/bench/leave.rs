//! Going on to something else without losing what is open.

use std::path::PathBuf;

use egui::{Context, ViewportCommand};
use reinwright_core::tongs::document::Document;

use super::open::Open;
use super::workbench::Workbench;
use crate::disk::files;
use crate::window::panels::dialog::{Dialog, Kept, Leave, Next, Purpose, Rescue};
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
            Next::Begin(document) => self.show_design(Session::begun(*document)),
            Next::Open(path) => {
                let done = self.open_file(&path);
                self.tell(done);
            }
            Next::OpenAt(path, at) => match self.open_file(&path) {
                Ok(()) => {
                    if let Some(family) = self.open.as_family() {
                        family.choose(at);
                    }
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
        self.remembered.memory.drop_rescue();
        self.asked.may_close = true;
    }

    /// Copies unsaved work now and then; what is saved needs no copy.
    pub(super) fn rescue(&mut self, ctx: &Context, time: f64) {
        let remembered = &mut self.remembered;
        if !self.open.session().is_changed() {
            if remembered.rescued.take().is_some() {
                remembered.memory.drop_rescue();
            }
            return;
        }
        let (last, kept) = match &remembered.rescued {
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
        let kept = self.open.kept();
        remembered.memory.keep_rescue(&kept.text());
        remembered.rescued = Some((time, kept));
    }

    /// Offers work that was left behind; what cannot be read is no help to anyone.
    pub(super) fn offer_rescue(&mut self, path: PathBuf) {
        match files::bytes(&path)
            .ok()
            .and_then(|bytes| Kept::read(&bytes))
        {
            Some(kept) => self.asked.dialog = Some(Dialog::Rescue(Rescue { kept, path })),
            None => {
                std::fs::remove_file(path).ok();
            }
        }
    }
}
