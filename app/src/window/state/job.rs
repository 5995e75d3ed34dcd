//! Long work beside the window: what is written goes on in a thread, and can be stopped.

use std::ops::ControlFlow;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, Sender, TryRecvError, channel};
use std::time::Duration;

use egui::Context;
use reinwright_core::shop::family::Family;

use crate::disk::files;
use crate::jobs::pages::{Consent, Pages, Stack};
use crate::jobs::preview::{self, Printable};
use crate::jobs::printing::Template;
use crate::jobs::set_printing::in_set::{InSet, Set};
use crate::jobs::set_printing::{self, Wanted};
use crate::jobs::watch::{Progress, Watch};

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
    /// With the same, and pages in this file.
    Printed(String, PathBuf),
    /// Nothing was written, since it was stopped.
    Stopped,
    /// With a sentence of why not.
    Failed(String),
}

/// What is printed, beside the file that is open.
#[derive(Debug)]
pub(crate) struct PrintWork {
    pub(crate) of: Printable,
    pub(crate) wanted: Wanted,
    pub(crate) open: Option<PathBuf>,
    /// What stands against making it, as sentences behind the others.
    pub(crate) against: String,
}

impl PrintWork {
    /// The pages; nothing is written before the last one is there.
    pub(crate) fn pdf(self, path: PathBuf, asked: Consent) -> Job {
        Job::start("Printing", move |watch| match self.made(asked, watch) {
            Ok(Some((pdf, lacking))) => {
                let written = files::write_beside(self.open.as_deref(), &path, &pdf);
                let done = format!(
                    "Written to {}. Print at actual size (100 %), then measure the check bars.{}{lacking}",
                    path.display(),
                    self.against
                );
                written.map_or_else(Ended::Failed, |()| Ended::Printed(done, path))
            }
            Ok(None) => Ended::Stopped,
            Err(why) => Ended::Failed(why),
        })
    }

    /// The PDF, and what is to be said of it; `None` when the watch stopped it.
    fn made(&self, asked: Consent, watch: Watch<'_>) -> Result<Option<(Vec<u8>, String)>, String> {
        match &self.of {
            Printable::Design(design) => {
                self.of_one(preview::template(design, &self.wanted), asked, watch)
            }
            Printable::Tool(tool) => {
                self.of_one(preview::tool_template(tool, &self.wanted), asked, watch)
            }
            Printable::Set(family, answers) => self.of_set((family, answers), asked, watch),
            Printable::Tools(family, answers) => self.of_set((family, answers), asked, watch),
        }
    }

    fn of_set<D: InSet>(
        &self,
        (family, answers): Set<'_, D>,
        asked: Consent,
        watch: Watch<'_>,
    ) -> Result<Option<(Vec<u8>, String)>, String> {
        let pages = set_printing::pages_wanted(family, answers, &self.wanted, watch);
        let Some(pages) = pages else {
            return Ok(None);
        };
        self.allow(&pages, asked)?;
        let pdf = set_printing::pdf(family, answers, &self.wanted, watch);
        let lacking = || sentences([set_printing::without_letters(family, answers)]);
        Ok(pdf.map(|pdf| (pdf, lacking())))
    }

    fn of_one(
        &self,
        template: Template,
        asked: Consent,
        watch: Watch<'_>,
    ) -> Result<Option<(Vec<u8>, String)>, String> {
        self.allow(&template.pages(self.wanted.order.paper), asked)?;
        let pdf = template.pdf(self.wanted.order.paper, Consent::All)?;
        let lacking = [template.without_bar, template.without_letters];
        let stopped = watch(Progress { done: 1, total: 1 }).is_break();
        Ok((!stopped).then(|| (pdf, sentences(lacking))))
    }

    /// Refuses more pages than stood in the button that was pressed.
    fn allow(&self, pages: &Pages, asked: Consent) -> Result<(), String> {
        let paper = self.wanted.order.paper;
        match (pages.stack(), asked) {
            (Stack::Usual, _) | (Stack::Many, Consent::All) => Ok(()),
            (Stack::Many, Consent::Usual) => Err(format!(
                "Nothing was written: {}. Print once more, and wait until they are counted.",
                pages.words(paper)
            )),
            (Stack::TooMany, _) => Err(pages.refusal(paper)),
        }
    }
}

/// What is said, each as a sentence behind what was said before.
pub(crate) fn sentences(said: impl IntoIterator<Item = Option<String>>) -> String {
    let said = said.into_iter().flatten();
    said.map(|why| format!(" {why}.")).collect()
}

/// What is drawn of a set, beside the file that is open.
#[derive(Debug)]
pub(crate) struct SetWork<D: InSet> {
    pub(crate) family: Family<D>,
    pub(crate) answers: Vec<D::Answer>,
    pub(crate) wanted: Wanted,
    pub(crate) open: Option<PathBuf>,
}

impl<D: InSet<Answer: Send, Measure: Send> + Send> SetWork<D> {
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
    use crate::jobs::order::Order;
    use reinwright_core::asked::{StockSizes, parse_bar, parse_work};
    use reinwright_core::paper::Paper;
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
        let pair = PrintWork {
            of: Printable::Design(Box::new(design)),
            wanted: Wanted {
                order: Order::usual(Paper::A4),
                day: None,
                stock: StockSizes::default(),
            },
            open: None,
            against: " So it is.".to_owned(),
        };
        let mut job = pair.pdf(path.clone(), Consent::Usual);
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
        assert!(there && matches!(&ended, Ended::Printed(said, _) if said.ends_with("So it is.")));
        // It may be done before it is stopped.
        let (ended, there) = printed(true);
        assert_eq!(matches!(ended, Ended::Printed(..)), there, "{ended:?}");
    }
}
