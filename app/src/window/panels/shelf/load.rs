//! Files read and pairs worked out a few at a time.

use std::path::PathBuf;
use std::time::{Duration, Instant};

use reinwright_core::draw;
use reinwright_core::paper::Drawing;
use reinwright_core::shop::shelf::{Filed, Held, Pair, Stock};

use super::Shelf;
use crate::disk::folder;
use crate::window::panels::tool_card::Pictured;

/// A file of the folder.
#[derive(Debug)]
pub(super) struct OnFile {
    pub(super) path: PathBuf,
    pub(super) name: String,
    /// What is in it, once it was read.
    filed: Option<Result<Filed, String>>,
}

impl OnFile {
    pub(super) fn unread(path: PathBuf) -> Self {
        Self {
            name: folder::name(&path),
            path,
            filed: None,
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
        let what = match self.filed.as_ref()? {
            Err(why) => why.clone(),
            Ok(filed) if filed.lost().is_empty() => return None,
            Ok(filed) => filed.lost().join("; "),
        };
        Some(format!("{}: {what}", self.name))
    }
}

/// A pair or a tool on the shelf, as far as it is known.
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
    pub(super) hung: Hung,
    /// How it holds what was asked for.
    pub(super) held: Option<Held>,
    /// The side view of the pair, and what it covers, mm.
    pub(super) picture: Option<(Drawing, kurbo::Rect)>,
}

/// What hangs there.
#[derive(Debug)]
pub(super) enum Hung {
    /// A pair, once it is worked out.
    Pair(Option<Box<Pair>>),
    /// A tool, likewise. It holds no work, so that nothing is asked of it.
    Tool(Option<Box<Pictured>>),
}

impl Card {
    fn of(file: usize, at: usize, filed: &Filed) -> Self {
        let size = filed.size(at).unwrap_or_default();
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
            hung: if filed.is_of_tools() {
                Hung::Tool(None)
            } else {
                Hung::Pair(None)
            },
            held: None,
            picture: None,
        }
    }

    /// Whether there is more to be known of it.
    pub(super) fn is_open(&self, asked: Option<&Stock>) -> bool {
        match &self.hung {
            Hung::Pair(pair) => pair.is_none() || (asked.is_some() && self.held.is_none()),
            Hung::Tool(tool) => tool.is_none(),
        }
    }

    /// Whether it is of a tool.
    pub(super) fn is_tool(&self) -> bool {
        match self.hung {
            Hung::Tool(_) => true,
            Hung::Pair(_) => false,
        }
    }

    /// The pair, once it is worked out.
    pub(super) fn pair(&self) -> Option<&Pair> {
        match &self.hung {
            Hung::Pair(pair) => pair.as_deref(),
            Hung::Tool(_) => None,
        }
    }

    /// The tool, once it is worked out.
    pub(super) fn tool(&self) -> Option<&Pictured> {
        match &self.hung {
            Hung::Tool(tool) => tool.as_deref(),
            Hung::Pair(_) => None,
        }
    }

    /// Works it out from its file, if it is not known yet.
    fn work_out(&mut self, filed: &Filed) {
        match &mut self.hung {
            Hung::Pair(pair) if pair.is_none() => *pair = filed.pair(self.at).map(Box::new),
            Hung::Tool(tool) if tool.is_none() => {
                *tool = filed.tool(self.at).map(|own| Box::new(Pictured::of(own)));
            }
            Hung::Pair(_) | Hung::Tool(_) => {}
        }
    }

    /// Another thing is asked for.
    pub(super) fn forget_answer(&mut self) {
        self.held = None;
        self.picture = None;
    }

    fn answer(&mut self, stock: &Stock) {
        self.held = self.pair().map(|pair| pair.on(stock));
        self.picture = None;
    }

    /// The side view of the pair, shut on what was asked for if it reaches that, else on its own.
    pub(super) fn picture(&mut self) -> Option<&(Drawing, kurbo::Rect)> {
        let Hung::Pair(Some(pair)) = &self.hung else {
            return None;
        };
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
        on.filed = Some(filed);
        self.stale = true;
    }

    /// Works a pair out and answers for it.
    pub(super) fn work_out(&mut self, at: usize) {
        let card = &mut self.cards[at];
        if let Some(filed) = self.files[card.file].filed() {
            card.work_out(filed);
        }
        if let Some(stock) = &self.asked {
            card.answer(stock);
            self.stale = true;
        }
    }
}
