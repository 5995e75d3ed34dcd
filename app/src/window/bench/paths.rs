//! Files that are opened and written: asking where they are, and what is done with the answer.

use std::path::{Path, PathBuf};

use egui::Context;
use reinwright_core::paper::{Paper, ink};

use super::open::Open;
use super::workbench::Workbench;
use crate::disk::{files, versions};
use crate::window::panels::dialog::chooser::{Answer, Asking, Chooser};
use crate::window::panels::dialog::{Changed, Dialog, Drawn, Next, PathField, Purpose};
use crate::window::state::news::Said;

impl Workbench {
    /// Opens a design, a tool or a family, or takes an own jaw in.
    ///
    /// # Errors
    /// One sentence that names the file, what is wrong and the mend.
    pub(super) fn open_file(&mut self, path: &Path) -> Result<(), String> {
        if self.take_in_jaw(path)? {
            return Ok(());
        }
        let (open, lost) = Open::from_file(path, self.page())?;
        self.remembered.memory.note_file(path);
        self.show_open(open);
        if let Some(design) = self.open.as_design() {
            design.bring_back_picture(&self.remembered.memory);
        }
        if let Some(lost) = lost {
            self.tell(Err(lost));
        }
        Ok(())
    }

    /// Saves where it was opened, else asks where; then goes on.
    pub(super) fn save(&mut self, ctx: &Context, next: Option<Next>) {
        let Some(path) = self.open.session().path().map(Path::to_owned) else {
            self.ask(Purpose::Save(next));
            return;
        };
        let done = self.save_to(ctx, &path, next);
        self.tell(done);
    }

    /// Saves to a file, unless another program changed it since it was opened: then it asks.
    fn save_to(&mut self, ctx: &Context, path: &Path, next: Option<Next>) -> Result<(), String> {
        if self.open.session().is_changed_on_disk(path) {
            let path = path.to_owned();
            self.asked.dialog = Some(Dialog::Changed(Changed { path, next }));
            return Ok(());
        }
        self.save_over(ctx, path, next)
    }

    /// Saves to a file whatever stands in it, which is put aside first.
    ///
    /// # Errors
    /// One sentence that names the file, what is wrong and the mend.
    pub(super) fn save_over(
        &mut self,
        ctx: &Context,
        path: &Path,
        next: Option<Next>,
    ) -> Result<(), String> {
        let aside = match &self.remembered.versions {
            Some(all) => versions::put_aside(all, path).map(|_version| ()),
            None => Ok(()),
        };
        self.open.session_mut().save(path)?;
        self.remembered.memory.note_file(path);
        self.say(match aside {
            Ok(()) => Ok(format!("Saved to {}", path.display())),
            Err(why) => Err(format!(
                "Saved to {}, but the version before it could not be kept: {why}",
                path.display()
            )),
        });
        if let Some(next) = next {
            self.go_on(ctx, next);
        }
        Ok(())
    }

    /// Asks for a path.
    pub(super) fn ask(&mut self, purpose: Purpose) {
        self.shown.news.hush();
        match self.asked.chooser {
            Chooser::System => {
                let name = purpose.name(self.open.session());
                let folder = self.usual_folder();
                self.asked.asking = Some(Asking::start(purpose, &folder, &name));
            }
            Chooser::OwnField => self.ask_in_field(purpose),
        }
    }

    /// Asks in the window's own field what the system's chooser was asked.
    pub(super) fn ask_own_field(&mut self) {
        if let Some(asking) = self.asked.asking.take() {
            self.ask_in_field(asking.purpose);
        }
    }

    /// Where files are looked for first: beside what is open, or else beside what was open last.
    fn usual_folder(&self) -> PathBuf {
        let of_file = self.open.session().path().and_then(Path::parent);
        let recent = self.remembered.memory.recent.first();
        of_file
            .or(recent.and_then(|path| path.parent()))
            .map(Path::to_path_buf)
            .or_else(std::env::home_dir)
            .unwrap_or_default()
    }

    fn ask_in_field(&mut self, purpose: Purpose) {
        let open = self.open.session();
        let folder = self.usual_folder();
        let name = purpose.name(open);
        self.asked.dialog = Some(Dialog::Path(PathField::new(purpose, &folder, &name)));
    }

    /// Takes the answer of the system's chooser, if there is one.
    pub(super) fn poll_chooser(&mut self, ctx: &Context) {
        let Some(asking) = &mut self.asked.asking else {
            return;
        };
        match asking.poll(ctx) {
            Answer::Waiting => {}
            Answer::Cancelled => self.asked.asking = None,
            Answer::NoChooser => {
                self.asked.chooser = Chooser::OwnField;
                self.ask_own_field();
            }
            Answer::Path(path) => {
                if let Some(asking) = self.asked.asking.take() {
                    let path = asking.purpose.ended(path);
                    let done = self.use_path(ctx, &asking.purpose, &path);
                    self.tell(done);
                }
            }
        }
    }

    /// Uses the path from the window's own field; what is wrong with it is said there.
    pub(super) fn try_path(&mut self, ctx: &Context, purpose: Purpose, path: &Path) {
        if let Err(trouble) = self.use_path(ctx, &purpose, path) {
            self.asked.dialog = Some(Dialog::Path(PathField::again(purpose, path, trouble)));
        }
    }

    fn use_path(&mut self, ctx: &Context, purpose: &Purpose, path: &Path) -> Result<(), String> {
        match purpose {
            Purpose::Open => self.open_file(path),
            Purpose::Save(next) => self.save_to(ctx, path, next.clone()),
            Purpose::Pdf(order, asked) => self.print(path, order, *asked),
            Purpose::CheckPage(paper) => self.print_check_page(path, *paper),
            Purpose::Svg(drawn) => self.draw_design(path, *drawn),
            Purpose::Folder(pairs) => self.draw_set(path, *pairs),
            Purpose::Shelf => self.show_shelf(path),
            Purpose::Shop => self.go_to_shop(path),
            Purpose::CutDesign => self.cut_pairs_of(path),
            Purpose::JobSheet(paper) => self.print_job_sheet(path, *paper),
            Purpose::CutPdf(paper) => self.print_cut_list(path, *paper),
            Purpose::Tools(tools) => self.keep_tools(path, tools),
            Purpose::Picture => {
                if let Some(design) = self.open.as_design() {
                    design.trace(ctx, path);
                }
                Ok(())
            }
            Purpose::OwnJaw(kept) => {
                files::write_whole(path, kept.write().as_bytes())?;
                self.say_written(path, "");
                Ok(())
            }
        }
    }

    /// Writes the job sheet of the way that is looked at.
    fn print_job_sheet(&mut self, path: &Path, paper: Paper) -> Result<(), String> {
        // Examples that nobody has looked over are not the shop's.
        let heats = &self.remembered.heats;
        let shop = heats.is_own().then_some(&heats.now);
        let pdf = match &mut self.open {
            Open::Design(design) => design.job_sheet(paper, shop)?,
            Open::Tool(tool) => tool.job_sheet(paper, shop)?,
            Open::Family(_) | Open::Tools(_) => return Ok(()),
        };
        self.write_beside(path, &pdf)?;
        self.remembered.memory.note_sheet_paper(paper);
        self.say_written(path, "");
        Ok(())
    }

    fn draw_design(&mut self, path: &Path, drawn: Drawn) -> Result<(), String> {
        let drawing = match &mut self.open {
            Open::Design(design) => design.drawing(drawn),
            Open::Tool(tool) => tool.drawing(drawn),
            Open::Family(_) | Open::Tools(_) => return Ok(()),
        };
        let svg = ink::svg(&drawing, self.open.session().name());
        self.write_beside(path, svg.as_bytes())?;
        self.say_written(path, "");
        Ok(())
    }

    pub(super) fn say_written(&mut self, path: &Path, and: &str) {
        let words = format!("Written to {}{and}", path.display());
        self.shown.news.say(match path.extension() {
            Some(ending) if ending == "pdf" => Said::Printed(words, path.to_owned()),
            Some(_) | None => Said::Done(words),
        });
    }

    /// Writes what was made of the open design or family, never over the file it came from.
    pub(super) fn write_beside(&self, path: &Path, bytes: &[u8]) -> Result<(), String> {
        files::write_beside(self.open.session().path(), path, bytes)
    }
}
