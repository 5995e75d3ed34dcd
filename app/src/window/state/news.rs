//! A sentence for the smith, for as long as it takes to read it.

use std::path::PathBuf;
use std::time::Duration;

use egui::{Context, InputState};

/// A sentence in the line at the foot of the window.
#[derive(Debug, Clone)]
pub(crate) enum Said {
    /// Something was done.
    Done(String),
    /// Pages were written into this file.
    Printed(String, PathBuf),
    /// Something could not be done, and why.
    Trouble(String),
    /// What one who is here for the first time may want to know; it stands until it is put away.
    Hint(&'static str),
}

/// Seconds that a sentence stands at least.
const LEAST: f64 = 4.0;
/// Seconds a letter: slow readers take in some 15 letters a second (from memory).
const A_LETTER: f64 = 1.0 / 15.0;

/// What was said last, and since when it has been seen.
#[derive(Debug, Default)]
pub(crate) struct News {
    said: Option<Said>,
    since: Option<f64>,
}

impl News {
    /// Says something else from now on.
    pub(crate) fn say(&mut self, said: Said) {
        self.said = Some(said);
        self.since = None;
    }

    /// Nothing is said any more.
    pub(crate) fn hush(&mut self) {
        *self = Self::default();
    }

    /// What is said.
    pub(crate) fn said(&self) -> Option<&Said> {
        self.said.as_ref()
    }

    /// Lets go of what has been read: what was done by itself, and what went wrong once the smith
    /// goes on, so that it is not missed by one who looks away.
    pub(crate) fn grow_old(&mut self, ctx: &Context) {
        let input = |i: &InputState| (i.time, i.pointer.any_pressed() || !i.keys_down.is_empty());
        let (now, goes_on) = ctx.input(input);
        if let Some(left) = self.age(now, goes_on) {
            ctx.request_repaint_after(Duration::from_secs_f64(left));
        }
    }

    /// The same at a time in seconds; how long until there is something to let go of by itself.
    fn age(&mut self, now: f64, goes_on: bool) -> Option<f64> {
        let said = self.said.as_ref()?;
        let left = reading_time(said) - (now - *self.since.get_or_insert(now));
        match said {
            Said::Done(_) | Said::Printed(..) if left > 0.0 => return Some(left),
            Said::Trouble(_) if left > 0.0 || !goes_on => {}
            Said::Hint(_) => {}
            Said::Done(_) | Said::Printed(..) | Said::Trouble(_) => self.hush(),
        }
        None
    }
}

fn reading_time(said: &Said) -> f64 {
    let text = match said {
        Said::Done(text) | Said::Printed(text, _) | Said::Trouble(text) => text.as_str(),
        Said::Hint(text) => text,
    };
    let letters = u32::try_from(text.chars().count()).unwrap_or(u32::MAX);
    LEAST + A_LETTER * f64::from(letters)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn news_stands_until_it_is_read() {
        let mut news = News::default();
        news.say(Said::Done("Written".to_owned()));
        let left = news.age(100.0, false).expect("it is to be looked at again");
        assert!((LEAST..LEAST + 1.0).contains(&left), "{left}");
        news.age(103.0, true);
        assert!(news.said().is_some(), "nobody reads so fast");
        news.age(105.0, false);
        assert!(news.said().is_none(), "it was there for five seconds");
    }

    #[test]
    fn trouble_waits_for_the_smith() {
        let mut news = News::default();
        news.say(Said::Trouble("the disk is full".to_owned()));
        assert_eq!(news.age(100.0, false), None);
        news.age(200.0, false);
        assert!(news.said().is_some(), "the smith may have looked away");
        news.age(201.0, true);
        assert!(news.said().is_none(), "it was read, and work goes on");
    }
}
