//! Files read and pairs worked out a few at a time.

use std::path::PathBuf;
use std::time::{Duration, Instant};

use reinwright_core::draw;
use reinwright_core::paper::Drawing;
use reinwright_core::shop::shelf::{Filed, Held, Pair, Stock};

use super::Shelf;
use crate::disk::folder;

/// A file of the folder.
#[derive(Debug)]
pub(super) struct OnFile {
    pub(super) path: PathBuf,
    pub(super) name: String,
    /// What is in it, once it was read.
    filed: Option<Result<Filed, String>>,
    /// What the tool is called, if it is one.
    pub(super) tool: Option<String>,
}

impl OnFile {
    pub(super) fn unread(path: PathBuf) -> Self {
        Self {
            name: folder::name(&path),
            path,
            filed: None,
            tool: None,
        }
    }

    pub(super) fn is_unread(&self) -> bool {
        self.filed.is_none()
    }

    pub(super) fn filed(&self) -> Option<&Filed> {
        self.filed.as_ref()?.as_ref().ok()
    }

    /// What is wrong with it, in one line.
    pub(super) fn trouble(&self) -> Option<String> {
        if self.tool.is_some() {
            return None;
        }
        let what = match self.filed.as_ref()? {
            Err(why) => why.clone(),
            Ok(Filed::Family(_, lost)) if !lost.is_empty() => lost.join("; "),
            Ok(Filed::Family(..) | Filed::Design(_)) => return None,
        };
        Some(format!("{}: {what}", self.name))
    }
}

/// A pair on the shelf, as far as it is known.
#[derive(Debug)]
pub(super) struct Card {
    /// Which file it is from, by its place.
    pub(super) file: usize,
    /// Its place in a family.
    pub(super) at: usize,
    /// What the smith calls it.
    pub(super) title: String,
    /// Its size's name when it is one of a family, else nothing.
    pub(super) size: String,
    pub(super) pair: Option<Box<Pair>>,
    /// How it holds what was asked for.
    pub(super) held: Option<Held>,
    /// The side view, and what it covers, mm.
    pub(super) picture: Option<(Drawing, kurbo::Rect)>,
}

impl Card {
    fn of(file: usize, at: usize, filed: &Filed) -> Self {
        let size = match filed {
            Filed::Design(_) => String::new(),
            Filed::Family(family, _) => family
                .sizes
                .get(at)
                .map(|size| size.label())
                .unwrap_or_default(),
        };
        let name = match filed.name().trim() {
            "" => "unnamed",
            name => name,
        };
        let title = if size.is_empty() {
            name.to_owned()
        } else {
            format!("{name}: {size}")
        };
        Self {
            file,
            at,
            title,
            size,
            pair: None,
            held: None,
            picture: None,
        }
    }

    /// Whether there is more to be known of it.
    pub(super) fn is_open(&self, asked: Option<&Stock>) -> bool {
        self.pair.is_none() || (asked.is_some() && self.held.is_none())
    }

    /// Another thing is asked for.
    pub(super) fn forget_answer(&mut self) {
        self.held = None;
        self.picture = None;
    }

    fn answer(&mut self, stock: &Stock) {
        self.held = self.pair.as_ref().map(|pair| pair.on(stock));
        self.picture = None;
    }

    /// The side view of the pair, shut on what was asked for if it reaches that, else on its own.
    pub(super) fn picture(&mut self) -> Option<&(Drawing, kurbo::Rect)> {
        let pair = self.pair.as_ref()?;
        let held = self.held.as_ref();
        Some(self.picture.get_or_insert_with(|| {
            let asked = held.and_then(|held| Some((&held.work, held.contact.as_ref()?.half_angle)));
            let own = (
                &pair.document.work,
                pair.fit.nominal.as_ref().map_or(0.0, |it| it.half_angle),
            );
            let (work, half_angle) = asked.unwrap_or(own);
            let drawing = draw::fit_picture(&pair.document, &pair.model, work, half_angle);
            let bounds = drawing.bounds();
            (drawing, bounds)
        }))
    }
}

impl Shelf {
    /// Works for so long at most, one step at least; true when there is more to do.
    pub(super) fn work(&mut self, time: Duration) -> bool {
        let begun = Instant::now();
        while self.step() {
            if begun.elapsed() >= time {
                return true;
            }
        }
        false
    }

    /// Reads a file, works out a pair or answers for one; false when all is done.
    fn step(&mut self) -> bool {
        if let Some(file) = self.files.iter().position(OnFile::is_unread) {
            self.read(file);
            return true;
        }
        let asked = self.asked.as_ref();
        let Some(at) = self.cards.iter().position(|card| card.is_open(asked)) else {
            return false;
        };
        self.work_out(at);
        true
    }

    fn read(&mut self, file: usize) {
        let on = &mut self.files[file];
        let filed = folder::read(&on.path);
        if let Ok(filed) = &filed {
            let cards = (0..filed.len()).map(|at| Card::of(file, at, filed));
            self.cards.extend(cards);
        }
        if filed.is_err() {
            on.tool = folder::tool(&on.path).map(|tool| tool.name);
        }
        on.filed = Some(filed);
        self.stale = true;
    }

    /// Works a pair out and answers for it.
    pub(super) fn work_out(&mut self, at: usize) {
        let card = &mut self.cards[at];
        if card.pair.is_none() {
            let filed = self.files[card.file].filed();
            card.pair = filed.and_then(|filed| filed.pair(card.at)).map(Box::new);
        }
        if let Some(stock) = &self.asked {
            card.answer(stock);
            self.stale = true;
        }
    }
}
