//! Long work beside the window: what is written goes on in a thread, and can be stopped.

use std::ops::ControlFlow;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, Sender, TryRecvError, channel};
use std::time::Duration;

use egui::{Align2, Context, ProgressBar};
use reinwright_core::family::{Family, SizeAnswer};

use super::workbench::{Said, Workbench};
use crate::files;
use crate::set_printing::{self, Progress, Wanted, Watch};

/// How often a job is looked at.
const PATIENCE: Duration = Duration::from_millis(40);

/// A job that runs.
#[derive(Debug)]
pub(super) struct Job {
    title: &'static str,
    progress: Progress,
    told: Receiver<Told>,
    stop: Arc<AtomicBool>,
}

/// What a job tells of itself.
#[derive(Debug)]
enum Told {
    Step(Progress),
    Ended(Ended),
}

/// How a job ended.
#[derive(Debug)]
enum Ended {
    /// With a sentence of what was done.
    Done(String),
    /// Nothing was written, since it was stopped.
    Stopped,
    /// With a sentence of why not.
    Failed(String),
}

/// What is written for a set, beside the file that is open.
#[derive(Debug)]
pub(super) struct SetWork {
    pub(super) family: Family,
    pub(super) answers: Vec<SizeAnswer>,
    pub(super) wanted: Wanted,
    pub(super) open: Option<PathBuf>,
}

impl SetWork {
    /// The pages of the set; nothing is written before the last one is there.
    pub(super) fn pdf(self, path: PathBuf) -> Job {
        Job::start("Printing the set", move |watch| {
            let Some(pdf) = set_printing::pdf(&self.family, &self.answers, &self.wanted, watch)
            else {
                return Ended::Stopped;
            };
            let written = files::write_beside(self.open.as_deref(), &path, &pdf);
            written.map_or_else(Ended::Failed, |()| Ended::Done(format!(
                "The set was written to {}. Print at actual size (100 %), then measure the check bars.",
                path.display()
            )))
        })
    }

    /// The drawings of the set; none is written before the last one is there.
    pub(super) fn drawings(self, folder: PathBuf) -> Job {
        Job::start("Drawing the set", move |watch| {
            let pairs = self.wanted.pairs_of_each;
            let Some(svgs) = set_printing::svgs(&self.family, &self.answers, pairs, watch) else {
                return Ended::Stopped;
            };
            match self.write(&folder, &svgs) {
                Ok(()) => Ended::Done(format!(
                    "{} drawings written to {}",
                    svgs.len(),
                    folder.display()
                )),
                Err(trouble) => Ended::Failed(trouble),
            }
        })
    }

    fn write(&self, folder: &Path, svgs: &[(String, String)]) -> Result<(), String> {
        files::make_folder(folder)?;
        svgs.iter().try_for_each(|(name, svg)| {
            files::write_beside(self.open.as_deref(), &folder.join(name), svg.as_bytes())
        })
    }
}

impl Job {
    fn start(title: &'static str, work: impl FnOnce(Watch<'_>) -> Ended + Send + 'static) -> Self {
        let (teller, told) = channel();
        let stop = Arc::new(AtomicBool::new(false));
        let stopped = Arc::clone(&stop);
        std::thread::spawn(move || tell(&teller, &stopped, work));
        Self {
            title,
            progress: Progress { done: 0, total: 1 },
            told,
            stop,
        }
    }

    /// Takes note of how far it is; gives back how it ended, once it has.
    fn poll(&mut self) -> Option<Ended> {
        loop {
            match self.told.try_recv() {
                Ok(Told::Step(progress)) => self.progress = progress,
                Ok(Told::Ended(ended)) => return Some(ended),
                Err(TryRecvError::Empty) => return None,
                Err(TryRecvError::Disconnected) => {
                    let why = format!("{} broke off: try it once more", self.title);
                    return Some(Ended::Failed(why));
                }
            }
        }
    }

    fn stop(&self) {
        self.stop.store(true, Ordering::Relaxed);
    }

    /// Shows how far it is, with a button to stop it; the rest of the window stays as it is.
    fn show(&self, ctx: &Context) {
        let Progress { done, total } = self.progress;
        egui::Window::new(self.title)
            .id(egui::Id::unique("job"))
            .anchor(Align2::RIGHT_BOTTOM, [-24.0, -24.0])
            .resizable(false)
            .collapsible(false)
            .show(ctx, |ui| {
                ui.set_width(320.0);
                let part = fraction(done, total);
                let bar = ProgressBar::new(part).text(format!("{done} of {total}"));
                ui.add(bar);
                if self.stop.load(Ordering::Relaxed) {
                    ui.label("Stopping after this step");
                } else if done == total {
                    ui.label("Writing");
                } else if ui.button("Cancel").clicked() {
                    self.stop();
                }
            });
    }
}

impl Drop for Job {
    /// Nobody waits for it any more.
    fn drop(&mut self) {
        self.stop();
    }
}

#[allow(
    clippy::cast_precision_loss,
    reason = "a bar on the screen shows far less than f32 holds"
)]
fn fraction(done: usize, total: usize) -> f32 {
    done as f32 / total.max(1) as f32
}

/// Does the work and tells of it; a window that is gone is told nothing.
fn tell(teller: &Sender<Told>, stop: &AtomicBool, work: impl FnOnce(Watch<'_>) -> Ended) {
    let mut watch = |progress: Progress| {
        teller.send(Told::Step(progress)).ok();
        if stop.load(Ordering::Relaxed) {
            ControlFlow::Break(())
        } else {
            ControlFlow::Continue(())
        }
    };
    let ended = work(&mut watch);
    teller.send(Told::Ended(ended)).ok();
}

impl Workbench {
    /// Whether something is being written beside the window.
    pub fn is_at_work(&self) -> bool {
        self.job.is_some()
    }

    /// Begins a job, unless one is running.
    ///
    /// # Errors
    /// One sentence when one is.
    pub(super) fn begin_job(&mut self, start: impl FnOnce() -> Job) -> Result<(), String> {
        if self.job.is_some() {
            let why = "a set is being written already: wait for it, or cancel it first";
            return Err(why.to_owned());
        }
        self.job = Some(start());
        Ok(())
    }

    /// Takes the outcome of a job that has ended.
    pub(super) fn poll_job(&mut self, ctx: &Context) {
        let Some(job) = &mut self.job else {
            return;
        };
        match job.poll() {
            None => ctx.request_repaint_after(PATIENCE),
            Some(ended) => {
                self.job = None;
                self.said = Some(match ended {
                    Ended::Done(what) => Said::Done(what),
                    Ended::Stopped => Said::Done("Stopped: nothing was written".to_owned()),
                    Ended::Failed(why) => Said::Trouble(why),
                });
            }
        }
    }

    pub(super) fn show_job(&self, ctx: &Context) {
        if let Some(job) = &self.job {
            job.show(ctx);
        }
    }
}
