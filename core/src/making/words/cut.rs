//! Cutting.

use super::{Told, Words, words};

/// What a hot cut end does.
const FALLS: &str = "Hot cut ends fall: keep feet and hands away";

impl Told<'_> {
    pub(super) fn cut_bar(&self) -> Words {
        cut("Cut the bar off at its last mark")
    }

    pub(super) fn cut_apart(&self) -> Words {
        words(
            "Cut the blank in the middle: two halves that are the same, not mirrored".to_owned(),
            "lay both halves side by side: shoulders in line".to_owned(),
            &[FALLS],
        )
    }

    pub(super) fn cut_tail(&self) -> Words {
        cut("Cut the handling tail off behind the rein")
    }

    pub(super) fn trim_rein(&self) -> Words {
        words(
            "Cut the rein to its length and break the burr".to_owned(),
            format!(
                "{} from the shoulder to the end",
                self.rough(self.worked_mm)
            ),
            &[FALLS],
        )
    }

    pub(super) fn trim_jaw(&self) -> Words {
        words(
            "Cut the tip square and file off fins and laps".to_owned(),
            "square, no burr".to_owned(),
            &[
                "What is cut off cold flies: saw it, or wear eye protection and let nobody stand in its way",
            ],
        )
    }
}

fn cut(what: &str) -> Words {
    words(what.to_owned(), "square, no burr".to_owned(), &[FALLS])
}
