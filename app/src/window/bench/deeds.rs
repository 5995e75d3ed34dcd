//! What the workbench does when it is told to.

use std::path::{Path, PathBuf};

use egui::{Context, Theme, ViewportCommand};
use reinwright_core::document::Document;
use reinwright_core::drawing::{self, DrawOptions, Drawing};
use reinwright_core::export;

use super::chooser::{Answer, Asking, Chooser};
use super::command::Command;
use super::dialog::{
    Card, Dialog, Drawn, Kept, Leave, NewPair, Next, PathField, Print, PrintSvg, Purpose, Reply,
    Rescue,
};
use super::history::History;
use super::look::Look;
use super::session::Session;
use super::styles::StyleWish;
use super::workbench::{Said, Wish, Workbench};
use crate::{files, printing};

/// Size of the lettering along the bar in a file, mm.
const BAR_TEXT: f64 = 3.5;

impl Workbench {
    /// Does what was clicked or typed.
    pub(super) fn grant(&mut self, ctx: &Context, wish: Wish) {
        match wish {
            Wish::Do(command) => self.run(ctx, command),
            Wish::Open(path) => self.leave_for(ctx, Next::Open(path)),
            Wish::OpenAt(path, at) => self.leave_for(ctx, Next::OpenAt(path, at)),
            Wish::ShelfOf(folder) => self.show_shelf(&folder),
            Wish::LeaveShelf => self.shelf = None,
            Wish::Begin(document) => self.leave_for(ctx, Next::Begin(document)),
            Wish::Shelf(wish) => self.at_jaw_shelf(wish),
            Wish::Styles(wish) => self.at_styles(ctx, wish),
        }
    }

    fn run(&mut self, ctx: &Context, command: Command) {
        if !matches!(command, Command::Undo | Command::Redo) {
            // What stands typed in a field counts, whether or not Enter was pressed.
            self.commit_typed();
        }
        if !self.may_run_at_shelf(command) {
            return;
        }
        if self.family.is_some() && self.run_in_family(command) {
            return;
        }
        let units = self.session.document.units;
        match command {
            Command::New => self.dialog = Some(Dialog::New(NewPair::new(units))),
            Command::Open => self.leave_for(ctx, Next::Choose),
            Command::Save => self.save(ctx, None),
            Command::SaveAs => self.ask(Purpose::Save(None)),
            Command::ExportPdf => self.dialog = Some(Dialog::Print(Print::new(units))),
            Command::ExportSvg => self.dialog = Some(Dialog::PrintSvg(PrintSvg::new())),
            Command::MakeFamily => self.make_family(),
            Command::Shelf => self.open_shelf(),
            Command::ShelfFolder => self.ask(Purpose::Shelf),
            Command::Undo => {
                let before = self.history.undo(&self.session.document);
                self.go_to(before);
            }
            Command::Redo => {
                let after = self.history.redo(&self.session.document);
                self.go_to(after);
            }
            Command::ZoomFit => self.paper.fit(),
            Command::Trace => self.ask(Purpose::Picture),
            Command::TrueSize => self.paper.set_scale(self.memory.screen),
            Command::Calibrate => self.dialog = Some(Dialog::Card(Card::new(self.memory.screen))),
            Command::SwitchTheme => self.switch_theme(ctx),
            Command::Quit => self.leave_for(ctx, Next::Close),
        }
    }

    fn go_to(&mut self, document: Option<Document>) {
        if let Some(document) = document {
            self.session.document = document;
            self.parts.forget();
        }
    }

    fn switch_theme(&mut self, ctx: &Context) {
        let theme = match ctx.theme() {
            Theme::Dark => Theme::Light,
            Theme::Light => Theme::Dark,
        };
        ctx.set_theme(theme);
        self.memory.note_theme(theme);
    }

    /// Goes on to something else, unless work would be lost: then it asks.
    pub(super) fn leave_for(&mut self, ctx: &Context, next: Next) {
        self.commit_typed();
        if self.is_changed() {
            let name = match self.open_name().trim() {
                "" => "What is open".to_owned(),
                name => format!("\"{name}\""),
            };
            self.dialog = Some(Dialog::Leave(Leave { name, next }));
        } else {
            self.go_on(ctx, next);
        }
    }

    fn go_on(&mut self, ctx: &Context, next: Next) {
        match next {
            Next::Begin(document) => self.show_session(Session::begun(*document)),
            Next::Open(path) => {
                if let Err(trouble) = self.open_file(&path) {
                    self.said = Some(Said::Trouble(trouble));
                }
            }
            Next::OpenAt(path, at) => match self.open_file(&path) {
                Ok(()) => self.choose_size(at),
                Err(trouble) => self.said = Some(Said::Trouble(trouble)),
            },
            Next::Choose => self.ask(Purpose::Open),
            Next::Close => {
                self.memory.drop_rescue();
                self.may_close = true;
                ctx.send_viewport_cmd(ViewportCommand::Close);
            }
        }
    }

    fn show_session(&mut self, session: Session) {
        self.history = History::new(&session.document);
        self.look = Look::on(self.look.page);
        self.parts.forget();
        self.handles.forget();
        self.trace.remove();
        self.paper.fit();
        self.said = None;
        self.family = None;
        self.shelf = None;
        self.session = session;
    }

    pub(super) fn open_file(&mut self, path: &Path) -> Result<(), String> {
        if self.open_family(path)? || self.take_in_jaw(path)? {
            return Ok(());
        }
        let session = Session::open(path)?;
        self.memory.note_file(path);
        self.show_session(session);
        self.bring_back_picture();
        Ok(())
    }

    pub(super) fn save(&mut self, ctx: &Context, next: Option<Next>) {
        let Some(path) = self.open_path().map(Path::to_path_buf) else {
            self.ask(Purpose::Save(next));
            return;
        };
        match self.save_to(&path) {
            Ok(()) => {
                if let Some(next) = next {
                    self.go_on(ctx, next);
                }
            }
            Err(trouble) => self.said = Some(Said::Trouble(trouble)),
        }
    }

    fn save_to(&mut self, path: &Path) -> Result<(), String> {
        match &mut self.family {
            Some(bench) => bench.session.save(path)?,
            None => self.session.save(path)?,
        }
        self.memory.note_file(path);
        self.said = Some(Said::Done(format!("Saved to {}", path.display())));
        Ok(())
    }

    /// Asks for a path.
    pub(super) fn ask(&mut self, purpose: Purpose) {
        self.said = None;
        match self.chooser {
            Chooser::System => {
                let name = self.open_file_name(purpose.files().1);
                self.asking = Some(Asking::start(purpose, &name));
            }
            Chooser::OwnField => self.ask_in_field(purpose),
        }
    }

    /// Asks in the window's own field what the system's chooser was asked.
    pub(super) fn ask_own_field(&mut self) {
        if let Some(asking) = self.asking.take() {
            self.ask_in_field(asking.purpose);
        }
    }

    fn ask_in_field(&mut self, purpose: Purpose) {
        let of_file = self.open_path().and_then(Path::parent);
        let recent = self.memory.recent.first().and_then(|path| path.parent());
        let folder = of_file
            .or(recent)
            .map(Path::to_path_buf)
            .or_else(std::env::home_dir)
            .unwrap_or_default();
        let name = self.open_file_name(purpose.files().1);
        self.dialog = Some(Dialog::Path(PathField::new(purpose, &folder, &name)));
    }

    /// Takes the answer of the system's chooser, if there is one.
    pub(super) fn poll_chooser(&mut self, ctx: &Context) {
        let Some(asking) = &mut self.asking else {
            return;
        };
        match asking.poll(ctx) {
            Answer::Waiting => {}
            Answer::Cancelled => self.asking = None,
            Answer::NoChooser => {
                self.chooser = Chooser::OwnField;
                self.ask_own_field();
            }
            Answer::Path(path) => {
                if let Some(asking) = self.asking.take() {
                    let path = asking.purpose.ended(path);
                    if let Err(trouble) = self.use_path(ctx, &asking.purpose, &path) {
                        self.said = Some(Said::Trouble(trouble));
                    }
                }
            }
        }
    }

    fn use_path(&mut self, ctx: &Context, purpose: &Purpose, path: &Path) -> Result<(), String> {
        match purpose {
            Purpose::Open => self.open_file(path)?,
            Purpose::Save(next) => {
                self.save_to(path)?;
                if let Some(next) = next.clone() {
                    self.go_on(ctx, next);
                }
            }
            Purpose::SetPdf(paper, pairs) => self.print_set(path, (*paper, *pairs))?,
            Purpose::Folder(pairs) => self.draw_set(path, *pairs)?,
            Purpose::Shelf => self.try_shelf(path)?,
            Purpose::Picture => self.trace.load(ctx, path, None),
            Purpose::OwnJaw(kept) => {
                files::write_whole(path, kept.write().as_bytes())?;
                self.said = Some(Said::Done(format!("Written to {}", path.display())));
            }
            Purpose::Pdf(paper) => {
                let design = &self.session.document;
                let pdf = printing::template_pdf(design, *paper, printing::today());
                self.write_beside(path, &pdf)?;
                self.said = Some(Said::Done(format!(
                    "Written to {}. Print at actual size (100 %), then measure the check bars.",
                    path.display()
                )));
            }
            Purpose::Svg(drawn) => {
                let svg = export::svg(&self.drawing(*drawn), &self.session.document.name);
                self.write_beside(path, svg.as_bytes())?;
                self.said = Some(Said::Done(format!("Written to {}", path.display())));
            }
        }
        Ok(())
    }

    /// Writes what was made of the open design or family, never over the file it came from.
    fn write_beside(&self, path: &Path, bytes: &[u8]) -> Result<(), String> {
        files::write_beside(self.open_path(), path, bytes)
    }

    fn drawing(&mut self, drawn: Drawn) -> Drawing {
        self.answers.follow(&self.session.document);
        let (document, answers) = (&self.session.document, &self.answers);
        match drawn {
            Drawn::Pair => drawing::pair(document, &answers.model, &DrawOptions::default()),
            Drawn::Half => drawing::half(document, &answers.model),
            Drawn::Bar => drawing::bar(document, &answers.balance, BAR_TEXT),
        }
    }

    /// Does what a question was answered with.
    pub(super) fn answer(&mut self, ctx: &Context, reply: Reply) {
        match reply {
            Reply::Stay => {}
            Reply::SaveThen(next) => self.save(ctx, Some(next)),
            Reply::Leave(next) => self.go_on(ctx, next),
            Reply::Path(purpose, path) => {
                if let Err(trouble) = self.use_path(ctx, &purpose, &path) {
                    self.dialog = Some(Dialog::Path(PathField::again(purpose, &path, trouble)));
                }
            }
            Reply::Begin(document) => self.leave_for(ctx, Next::Begin(document)),
            Reply::Styles(work, bar) => self.at_styles(ctx, StyleWish::New(work, bar)),
            Reply::Screen(points_per_mm) => {
                self.memory.note_screen(points_per_mm);
                self.paper.set_scale(points_per_mm);
            }
            Reply::Ask(purpose) => self.ask(purpose),
            Reply::Rescue(kept, path) => {
                std::fs::remove_file(path).ok();
                match kept {
                    Kept::Design(design) => self.show_session(Session::rescued(*design)),
                    Kept::Family(family) => self.begin_family(*family),
                }
            }
            Reply::Discard(path) => {
                std::fs::remove_file(path).ok();
            }
        }
    }

    /// Offers a design that was left behind; one that cannot be read is no help to anyone.
    pub(super) fn offer_rescue(&mut self, path: PathBuf) {
        match files::bytes(&path)
            .ok()
            .and_then(|bytes| Kept::read(&bytes))
        {
            Some(kept) => self.dialog = Some(Dialog::Rescue(Rescue { kept, path })),
            None => {
                std::fs::remove_file(path).ok();
            }
        }
    }

    /// Keeps the window open while there is something to lose.
    pub(super) fn hold_the_door(&mut self, ctx: &Context) {
        let closing = ctx.input(|i| i.viewport().close_requested());
        if !closing || self.may_close {
            return;
        }
        self.commit_typed();
        if self.is_changed() {
            ctx.send_viewport_cmd(ViewportCommand::CancelClose);
            self.leave_for(ctx, Next::Close);
        } else {
            self.memory.drop_rescue();
            self.may_close = true;
        }
    }
}
