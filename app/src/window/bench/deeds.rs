//! What the workbench does when it is told to.

use egui::{Context, Theme};

use super::open::Open;
use super::workbench::{Workbench, which_screen};
use crate::disk::kept;
use crate::window::panels::begin::{BeginPair, Outcome};
use crate::window::panels::dialog::{
    About, Card, Dialog, Next, PrintDrawings, PrintJob, PrintSvg, Purpose, Reply,
};
use crate::window::panels::wish::Wish;
use crate::window::state::bar::Forged;
use crate::window::state::command::Command;
use crate::window::state::look::Page;
use crate::window::state::news::Said;
use reinwright_core::asked::Units;

/// What is said where a making is asked of a family of pairs, and of one of tools.
const OF_ONE_DESIGN: &str = "A making is of one design, and a family is open: choose a size and \
                             press \"Take out as a design\" first";
const OF_ONE_TOOL: &str = "A making is of one tool, and a family is open: choose a size and press \
                           \"Take out as a tool\" first";

impl Workbench {
    /// Does what was clicked or typed.
    pub(super) fn grant(&mut self, ctx: &Context, wish: Wish) {
        match wish {
            Wish::Do(command) => self.run(ctx, command),
            Wish::Open(path) => self.leave_for(ctx, Next::Open(path)),
            Wish::OpenAt(path, at) => self.leave_for(ctx, Next::OpenAt(path, at)),
            Wish::ShelfOf(folder) => {
                let done = self.show_shelf(&folder);
                self.tell(done);
            }
            Wish::Mark(at, mark) => self.mark_on_shelf(at, mark),
            Wish::LeaveShelf => self.shown.shelf = None,
            Wish::Begin(document) => self.leave_for(ctx, Next::Begin(document)),
            Wish::Ready(document) => self.leave_for(ctx, Next::Ready(document)),
            Wish::BeginTool(tool) => self.leave_for(ctx, Next::BeginTool(tool)),
            Wish::ReadyTool(tool) => self.leave_for(ctx, Next::ReadyTool(tool)),
            Wish::ReadyFamily(family) => self.leave_for(ctx, Next::ReadyFamily(family)),
            Wish::ReadyTools(set) => self.leave_for(ctx, Next::ReadyTools(set)),
            Wish::Mend(mend) => match &mut self.open {
                Open::Design(design) => design.desk.mend(&mend),
                Open::Tool(tool) => tool.desk.mend(&mend),
                Open::Family(_) | Open::Tools(_) => {}
            },
            Wish::Jaws(wish) => self.at_own_jaws(wish),
            Wish::Styles(wish) => self.at_styles(wish),
            Wish::CameOut(measured) => {
                let shop = self.remembered.memory.shelf.clone();
                let shop = shop.filter(|folder| folder.is_dir());
                let design = self.open.as_design();
                let done = design.map_or(Ok(()), |own| own.came_out(&measured, shop.as_deref()));
                self.tell(done);
            }
            Wish::TakeOwn(own) => {
                let design = self.open.as_design();
                let done = design.map_or(Ok(()), |design| design.take_own(&own));
                self.tell(done);
            }
            Wish::Cut(wish) => self.at_cut_list(wish),
            Wish::Heats(wish) => self.at_heats(wish),
            Wish::Stock(sizes) => self.note_stock(*sizes),
            Wish::Say(said) => self.shown.news.say(said),
            Wish::Unsay(old) => self.unsay(&old),
        }
    }

    fn unsay(&mut self, old: &str) {
        if matches!(self.shown.news.said(), Some(Said::Trouble(said)) if said == old) {
            self.shown.news.hush();
        }
    }

    fn run(&mut self, ctx: &Context, command: Command) {
        if !matches!(command, Command::Undo | Command::Redo) {
            // What stands typed in a field counts, whether or not Enter was pressed.
            self.open.commit_typed();
            let show = self.open.session().units().show();
            self.remembered.heats.commit(show);
        }
        // What is looked at is printed.
        if command == Command::ExportPdf && self.ask_for_cut_list() {
            return;
        }
        if !self.may_run_at_shelf(command) {
            return;
        }
        let units = self.open.session().units();
        let screen = self.screen(ctx);
        match command {
            Command::New => self.ask_for_pair(units),
            Command::NewTool => self.ask_for_tool(units),
            Command::ToolsForPair => self.show_tools_for_pair(),
            Command::Open => self.leave_for(ctx, Next::Choose),
            Command::Save => self.save(ctx, None),
            Command::SaveAs => self.ask(Purpose::Save(None)),
            Command::Earlier => self.offer_versions(),
            Command::ExportPdf => {
                let done = self.ask_what_to_print(units);
                self.tell(done);
            }
            Command::ExportSvg => self.put_question(match &self.open {
                Open::Design(_) => Dialog::PrintSvg(PrintSvg::new(Forged::Pair, self.open.stop())),
                Open::Tool(_) => Dialog::PrintSvg(PrintSvg::new(Forged::Tool, self.open.stop())),
                Open::Family(bench) => Dialog::PrintDrawings(PrintDrawings::new(
                    (Forged::Pair, bench.session.now.sizes.len()),
                    self.open.stop(),
                )),
                Open::Tools(bench) => Dialog::PrintDrawings(PrintDrawings::new(
                    (Forged::Tool, bench.session.now.sizes.len()),
                    self.open.stop(),
                )),
            }),
            Command::MakeFamily => self.make_family(),
            Command::Shelf => self.open_shelf(),
            Command::ShelfFolder => self.ask(Purpose::Shelf),
            Command::Undo => self.undo(),
            Command::Redo => self.redo(),
            Command::Show(sight) => self.open.see(sight),
            Command::TrueSize => self.open.set_scale(screen),
            Command::Making => self.show_making(),
            Command::Heats => self.show_heats(),
            Command::CutList => self.show_cut_list(),
            Command::JobSheet => {
                let of = match &self.open {
                    Open::Design(_) => Forged::Pair,
                    Open::Tool(_) => Forged::Tool,
                    Open::Family(_) => return self.tell(Err(OF_ONE_DESIGN.to_owned())),
                    Open::Tools(_) => return self.tell(Err(OF_ONE_TOOL.to_owned())),
                };
                let job = PrintJob::new(of, self.sheet_paper(units), self.open.stop());
                self.put_question(Dialog::JobSheet(job));
            }
            Command::Trace => self.ask_for_picture(),
            Command::Calibrate => self.put_question(Dialog::Card(Card::new(screen))),
            Command::About => self.put_question(Dialog::About(About)),
            Command::SwitchTheme => self.switch_theme(ctx),
            Command::Quit => self.leave_for(ctx, Next::Close),
        }
    }

    fn ask_for_pair(&mut self, units: Units) {
        let used = |units| self.remembered.memory.usual_bar(units);
        self.shown.begin = Some(BeginPair::new(units, used, self.own_jaws()));
    }

    /// Begins the pair that the questions led to, and remembers its bar.
    pub(super) fn begin_pair(&mut self, ctx: &Context, outcome: Outcome) {
        self.shown.begin = None;
        if let Outcome::Pair(pair) = outcome {
            let memory = &self.remembered.memory;
            memory.note_bar(pair.units, &pair.bar.stock.words());
            self.leave_for(ctx, Next::Begin(pair));
        }
    }

    pub(super) fn put_question(&mut self, dialog: Dialog) {
        self.asked.dialog = Some(dialog);
    }

    fn ask_for_picture(&mut self) {
        match self.open {
            Open::Design(_) => self.ask(Purpose::Picture),
            Open::Tool(_) | Open::Family(_) | Open::Tools(_) => self.tell(Err(
                "A picture is traced under one pair of tongs: open one first".to_owned(),
            )),
        }
    }

    fn show_making(&mut self) {
        match &mut self.open {
            Open::Design(design) => design.desk.show_page(Page::Making),
            Open::Tool(tool) => tool.desk.show_page(Page::Making),
            Open::Family(_) => self.tell(Err(OF_ONE_DESIGN.to_owned())),
            Open::Tools(_) => self.tell(Err(OF_ONE_TOOL.to_owned())),
        }
    }

    fn switch_theme(&mut self, ctx: &Context) {
        let theme = match ctx.theme() {
            Theme::Dark => Theme::Light,
            Theme::Light => Theme::Dark,
        };
        ctx.set_theme(theme);
        self.remembered.memory.note_theme(theme);
    }

    /// Takes in a picture that was asked for, or says why there is none.
    pub(super) fn poll_picture(&mut self, ctx: &Context) {
        if let Some(design) = self.open.as_design() {
            let done = design.poll_picture(ctx);
            self.tell(done);
        }
    }

    /// Does what a question was answered with.
    pub(super) fn answer(&mut self, ctx: &Context, reply: Reply) {
        match reply {
            Reply::Stay => {}
            Reply::SaveThen(next) => self.save(ctx, Some(next)),
            Reply::Leave(next) => self.go_on(ctx, next),
            Reply::Path(purpose, path) => self.try_path(ctx, purpose, &path),
            Reply::Screen(points_per_mm) => {
                let which = which_screen(ctx);
                let memory = &mut self.remembered.memory;
                memory.note_screen(which.as_deref(), points_per_mm * ctx.zoom_factor());
                self.open.set_scale(points_per_mm);
            }
            Reply::Jaws(wish) => self.at_own_jaws(wish),
            Reply::Ask(purpose) => self.ask(purpose),
            Reply::Rescue(kept, copy, file) => self.bring_back(kept, &copy, file),
            Reply::Discard(copy) => {
                kept::throw_away(&copy);
                self.offer_rescue();
            }
            Reply::KeepMine(path, next) => {
                let done = self.save_over(ctx, &path, next);
                self.tell(done);
            }
            Reply::NotePrinter(printer) => self.note_printer(printer),
            Reply::TakeTheirs(path) => self.go_on(ctx, Next::Open(path)),
            Reply::Version(version, file) => {
                let done = self.bring_version(&version, file);
                self.tell(done);
            }
        }
    }
}
