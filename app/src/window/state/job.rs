//! Long work beside the window: what is written goes on in a thread, and can be stopped.

use std::ops::ControlFlow;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, Sender, TryRecvError, channel};
use std::time::Duration;

use egui::Context;
use reinwright_core::paper::Paper;
use reinwright_core::shop::family::{Family, SizeAnswer};

use crate::disk::files;
use crate::jobs::pages::{Consent, Pages, Stack};
use crate::jobs::printing::Template;
use crate::jobs::set_printing::{self, Progress, Wanted, Watch};

/// How often a job is looked at.
const PATIENCE: Duration = Duration::from_millis(40);

/// A job that runs.
#[derive(Debug)]
pub(crate) struct Job {
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
pub(crate) enum Ended {
    /// With a sentence of what was done.
    Done(String),
    /// Nothing was written, since it was stopped.
    Stopped,
    /// With a sentence of why not.
    Failed(String),
}

/// What a count of pages tells.
#[derive(Debug)]
pub(crate) enum Counted {
    /// How far it is.
    Step(Progress),
    /// How many there are on each of [`Paper::NAMED`].
    Pages(Vec<Pages>),
}

/// What is written for a set, beside the file that is open.
#[derive(Debug)]
pub(crate) struct SetWork {
    pub(crate) family: Family,
    pub(crate) answers: Vec<SizeAnswer>,
    pub(crate) wanted: Wanted,
    pub(crate) open: Option<PathBuf>,
}

impl SetWork {
    /// The pages of the set; nothing is written before the last one is there.
    pub(crate) fn pdf(self, path: PathBuf, asked: Consent) -> Job {
        Job::start("Printing the set", move |watch| {
            let (family, answers) = (&self.family, &self.answers);
            let pages = set_printing::pages_wanted(family, answers, &self.wanted, watch);
            let Some(pages) = pages else {
                return Ended::Stopped;
            };
            let paper = self.wanted.paper;
            match (pages.stack(), asked) {
                (Stack::Usual, _) | (Stack::Many, Consent::All) => {}
                (Stack::Many, Consent::Usual) => {
                    return Ended::Failed(format!(
                        "Nothing was written: {}. Print once more, and wait until they are counted.",
                        pages.words(paper)
                    ));
                }
                (Stack::TooMany, _) => return Ended::Failed(pages.refusal(paper)),
            }
            let Some(pdf) = set_printing::pdf(family, answers, &self.wanted, watch) else {
                return Ended::Stopped;
            };
            let written = files::write_beside(self.open.as_deref(), &path, &pdf);
            let lacking = set_printing::without_letters(family, answers);
            let lacking = lacking.map_or_else(String::new, |why| format!(" {why}."));
            written.map_or_else(Ended::Failed, |()| Ended::Done(format!(
                "The set was written to {}. Print at actual size (100 %), then measure the check bars.{lacking}",
                path.display()
            )))
        })
    }

    /// Counts the pages on each of [`Paper::NAMED`] in a thread, for as long as somebody listens.
    pub(crate) fn count(self) -> Receiver<Counted> {
        let (teller, told) = channel();
        std::thread::spawn(move || {
            let Self {
                family,
                answers,
                wanted,
                open: _,
            } = &self;
            let watch = &mut |progress| match teller.send(Counted::Step(progress)) {
                Ok(()) => ControlFlow::Continue(()),
                // The question was answered already.
                Err(_) => ControlFlow::Break(()),
            };
            let pages = set_printing::pages(family, answers, wanted, &Paper::NAMED, watch);
            teller.send(Counted::Pages(pages.unwrap_or_default())).ok();
        });
        told
    }

    /// The drawings of the set; none is written before the last one is there.
    pub(crate) fn drawings(self, folder: PathBuf) -> Job {
        Job::start("Drawing the set", move |watch| {
            let Some(svgs) = set_printing::svgs(&self.family, &self.answers, &self.wanted, watch)
            else {
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

/// What is written for a pair that takes many pages.
#[derive(Debug)]
pub(crate) struct PairWork {
    pub(crate) template: Template,
    pub(crate) paper: Paper,
    pub(crate) open: Option<PathBuf>,
    /// What is said behind the name of the file.
    pub(crate) and: String,
}

impl PairWork {
    /// The pages of the pair; nothing is written before the last one is there.
    pub(crate) fn pdf(self, path: PathBuf) -> Job {
        Job::start("Printing the pair", move |watch| {
            let pdf = match self.template.pdf(self.paper, Consent::All) {
                Ok(pdf) => pdf,
                Err(why) => return Ended::Failed(why),
            };
            if watch(Progress { done: 1, total: 1 }).is_break() {
                return Ended::Stopped;
            }
            let written = files::write_beside(self.open.as_deref(), &path, &pdf);
            let done = format!("Written to {}{}", path.display(), self.and);
            written.map_or_else(Ended::Failed, |()| Ended::Done(done))
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

    /// Takes note of how far it is; gives back how it ended, once it has, and asks for a frame soon
    /// while it has not.
    pub(crate) fn poll(&mut self, ctx: &Context) -> Option<Ended> {
        loop {
            match self.told.try_recv() {
                Ok(Told::Step(progress)) => self.progress = progress,
                Ok(Told::Ended(ended)) => return Some(ended),
                Err(TryRecvError::Empty) => {
                    ctx.request_repaint_after(PATIENCE);
                    return None;
                }
                Err(TryRecvError::Disconnected) => {
                    let why = format!("{} broke off: try it once more", self.title);
                    return Some(Ended::Failed(why));
                }
            }
        }
    }

    /// What is being done.
    pub(crate) fn title(&self) -> &'static str {
        self.title
    }

    /// How far it is.
    pub(crate) fn progress(&self) -> Progress {
        self.progress
    }

    /// Asks it to stop after the step it is at.
    pub(crate) fn stop(&self) {
        self.stop.store(true, Ordering::Relaxed);
    }

    /// Whether it was asked to stop.
    pub(crate) fn is_stopping(&self) -> bool {
        self.stop.load(Ordering::Relaxed)
    }
}

impl Drop for Job {
    /// Nobody waits for it any more.
    fn drop(&mut self) {
        self.stop();
    }
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

#[cfg(test)]
mod tests {
    use super::*;
    use reinwright_core::asked::{parse_bar, parse_work};
    use reinwright_core::tongs::document::Document;
    use reinwright_core::tongs::jaw::JawKind;

    /// How printing a pair into a file ends, and whether the file is there then.
    #[track_caller]
    fn printed(stopped: bool) -> (Ended, bool) {
        let work = parse_work("1/2 in flat").expect("work");
        let bar = parse_bar("3/4 in square").expect("bar");
        let design = Document::starting(JawKind::Flat, work, bar);
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join("pair.pdf");
        let pair = PairWork {
            template: Template::of(&design, None),
            paper: Paper::A4,
            open: None,
            and: ", so many pages".to_owned(),
        };
        let mut job = pair.pdf(path.clone());
        if stopped {
            job.stop();
        }
        for _ in 0..6000 {
            if let Some(ended) = job.poll(&Context::default()) {
                return (ended, path.exists());
            }
            std::thread::sleep(Duration::from_millis(10));
        }
        panic!("a pair is printed for more than a minute");
    }

    #[test]
    fn a_pair_is_written_once_it_is_whole_or_not_at_all() {
        let (ended, there) = printed(false);
        assert!(there && matches!(&ended, Ended::Done(said) if said.ends_with("so many pages")));
        // It may be done before it is stopped.
        let (ended, there) = printed(true);
        assert_eq!(matches!(ended, Ended::Done(_)), there, "{ended:?}");
    }
}
