//! The heat sources of the shop as the window has them: kept with every change, taken back, and never
//! written over what another window has written.

use std::collections::BTreeMap;
use std::path::PathBuf;

use reinwright_core::heats::{HeatField, Machine, Smith, Source, Sources};
use reinwright_core::units::Show;

use super::history::{Hand, History};
use crate::disk::heat_sources;
use crate::disk::versions::Stamp;

/// The sources, how they stand on disk, and what is being typed.
#[derive(Debug)]
pub(crate) struct ShopHeats {
    pub(crate) now: Sources,
    /// As they stand on disk; `None` where nothing is kept yet.
    kept: Option<Sources>,
    folder: Option<PathBuf>,
    /// What stood in the file when it was last read or written here.
    stamp: Option<Stamp>,
    history: History<Sources>,
    drafts: BTreeMap<Place, Draft>,
    /// What could not be read of the file, a sentence each.
    pub(crate) lost: Vec<String>,
    /// Why they are not kept.
    pub(crate) trouble: Option<Trouble>,
    /// Whether a source was the last thing that the smith changed.
    pub(crate) is_last: bool,
}

/// Why the sources are not kept.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Trouble {
    /// Another window or program wrote the file since it was read here.
    Changed,
    /// One sentence.
    Unwritten(String),
}

/// Which value is typed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(crate) enum Place {
    /// The name of the source at a place.
    Name(usize),
    /// A value of the source at a place.
    Source(usize, usize),
    /// A value of the smith.
    Smith(usize),
    /// A value of the machine.
    Machine(usize),
}

/// A text that is not yet, or could not be, taken.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Draft {
    /// Being typed.
    Open(String),
    /// Refused, and why.
    Refused(String, String),
}

impl ShopHeats {
    /// What is kept in a folder, or examples where nothing is.
    pub(crate) fn of(folder: Option<PathBuf>) -> Self {
        let mut own = Self {
            now: Sources::default(),
            kept: None,
            folder,
            stamp: None,
            history: History::new(&Sources::default()),
            drafts: BTreeMap::new(),
            lost: Vec::new(),
            trouble: None,
            is_last: false,
        };
        own.read();
        own
    }

    /// Takes what stands on disk.
    pub(crate) fn read(&mut self) {
        self.drafts.clear();
        self.trouble = None;
        self.stamp = self.path().as_deref().and_then(Stamp::on_disk);
        match heat_sources::kept(self.folder.as_deref()) {
            Ok(None) => self.kept = None,
            Ok(Some(opened)) => {
                self.now = opened.sources;
                self.kept = Some(self.now.clone());
                self.lost = opened.lost;
            }
            Err(why) => self.lost = vec![why],
        }
    }

    /// Takes what another window has kept meanwhile, where nothing here would be lost.
    pub(crate) fn look_again(&mut self) {
        let idle =
            self.drafts.is_empty() && self.kept.as_ref().is_none_or(|kept| *kept == self.now);
        if idle && self.is_changed_on_disk() {
            self.read();
        }
    }

    fn path(&self) -> Option<PathBuf> {
        let folder = self.folder.as_ref()?;
        Some(folder.join(heat_sources::FILE))
    }

    fn is_changed_on_disk(&self) -> bool {
        let there = self.path().as_deref().and_then(Stamp::on_disk);
        there.is_some() && there != self.stamp
    }

    /// Whether these are the smith's own, and not examples that nobody has looked over.
    pub(crate) fn is_own(&self) -> bool {
        self.kept.is_some() || self.now != Sources::default()
    }

    /// Whether they outlast the window.
    pub(crate) fn has_folder(&self) -> bool {
        self.folder.is_some()
    }

    /// Takes note of a frame; keeps what was changed once the hand has come to rest. True where
    /// something was written.
    pub(crate) fn feed(&mut self, time: f64, hand: Hand) -> bool {
        self.history.feed(time, &self.now, hand);
        let known = self.kept.clone().unwrap_or_default();
        let idle = hand == Hand::Moving || self.trouble.is_some() || known == self.now;
        if idle || self.folder.is_none() {
            return false;
        }
        if self.is_changed_on_disk() {
            self.trouble = Some(Trouble::Changed);
            return false;
        }
        self.keep();
        true
    }

    /// Writes them over what stands on disk. A file of which something could not be read is put
    /// aside first.
    pub(crate) fn keep(&mut self) {
        let Some(folder) = &self.folder else { return };
        match heat_sources::keep_over(folder, &self.now) {
            Ok(aside) => {
                self.kept = Some(self.now.clone());
                self.stamp = self.path().as_deref().and_then(Stamp::on_disk);
                self.trouble = None;
                let kept_as =
                    |path: PathBuf| format!("What could not be read is kept as {}", path.display());
                self.lost = aside.map(kept_as).into_iter().collect();
            }
            Err(why) => self.trouble = Some(Trouble::Unwritten(why)),
        }
    }

    pub(crate) fn can_undo(&self) -> bool {
        self.history.can_undo(&self.now)
    }

    pub(crate) fn can_redo(&self) -> bool {
        self.history.can_redo(&self.now)
    }

    /// Takes the last change of a source back.
    pub(crate) fn undo(&mut self) {
        let before = self.history.undo(&self.now);
        self.go_to(before);
    }

    /// Does it again.
    pub(crate) fn redo(&mut self) {
        let after = self.history.redo(&self.now);
        self.go_to(after);
    }

    fn go_to(&mut self, other: Option<Sources>) {
        if let Some(other) = other {
            self.now = other;
            self.drafts.clear();
        }
    }

    /// Adds a source under a name that no other has.
    ///
    /// # Errors
    /// One sentence when there is no room for it.
    pub(crate) fn add(&mut self, mut source: Source) -> Result<(), String> {
        let plain = source.name.clone();
        let taken = |name: &str| self.now.sources.iter().any(|own| own.name == name);
        let named = |count: u32| match count {
            1 => plain.clone(),
            count => format!("{plain} {count}"),
        };
        let free = (1..).map(named).find(|name| !taken(name));
        source.name = free.expect("there are more numbers than sources");
        match self.now.no_room(&source) {
            Some(why) => Err(why),
            None => {
                self.now.sources.push(source);
                self.is_last = true;
                Ok(())
            }
        }
    }

    /// Takes a source away.
    pub(crate) fn remove(&mut self, at: usize) {
        self.now.sources.remove(at);
        self.drafts.clear();
        self.is_last = true;
    }

    /// The induction machine can do this, or nobody knows.
    pub(crate) fn describe_machine(&mut self, machine: Option<Machine>) {
        self.now.machine = machine;
        self.drafts.clear();
        self.is_last = true;
    }

    /// What is being typed at a place.
    pub(crate) fn draft(&self, place: Place) -> Option<&Draft> {
        self.drafts.get(&place)
    }

    /// Somebody types.
    pub(crate) fn type_at(&mut self, place: Place, text: String) {
        self.drafts.insert(place, Draft::Open(text));
    }

    /// Nobody does any more.
    pub(crate) fn forget(&mut self, place: Place) {
        self.drafts.remove(&place);
    }

    /// Takes a text at a place, or keeps why not.
    pub(crate) fn take(&mut self, place: Place, text: &str, show: Show) {
        self.drafts.remove(&place);
        match self.put(place, text, show) {
            Ok(()) => self.is_last = true,
            Err(why) => {
                let refused = Draft::Refused(text.to_owned(), why);
                self.drafts.insert(place, refused);
            }
        }
    }

    fn put(&mut self, place: Place, text: &str, show: Show) -> Result<(), String> {
        let into = |fields: Vec<HeatField<'_>>, at: usize| {
            let own = fields.into_iter().nth(at);
            own.map_or(Ok(()), |mut own| own.read(text, show))
        };
        match place {
            Place::Name(at) => self.rename(at, text),
            Place::Source(source, at) => {
                let source = self.now.sources.get_mut(source);
                source.map_or(Ok(()), |own| into(own.fields(), at))
            }
            Place::Smith(at) => into(self.now.smith.fields(), at),
            Place::Machine(at) => {
                let machine = self.now.machine.as_mut();
                machine.map_or(Ok(()), |own| into(own.fields(), at))
            }
        }
    }

    fn rename(&mut self, at: usize, text: &str) -> Result<(), String> {
        let name = text.trim();
        let mut others = self.now.sources.iter().enumerate();
        if others.any(|(other, own)| other != at && own.name == name) {
            return Err(format!("another source is called \"{name}\" already"));
        }
        if let Some(why) = reinwright_core::heats::wrong_name(name) {
            return Err(why);
        }
        if let Some(own) = self.now.sources.get_mut(at) {
            own.name = name.to_owned();
        }
        Ok(())
    }

    /// Takes everything that is being typed, as if Enter had been pressed.
    pub(crate) fn commit(&mut self, show: Show) {
        let open: Vec<(Place, String)> = self
            .drafts
            .iter()
            .filter_map(|(place, draft)| match draft {
                Draft::Open(text) => Some((*place, text.clone())),
                Draft::Refused(..) => None,
            })
            .collect();
        for (place, text) in open {
            self.take(place, &text, show);
        }
    }

    /// Works by one timed heat from now on: so long it could be worked, of so long in still air, s.
    pub(crate) fn time(&mut self, worked_s: f64, still_air_s: f64) {
        let smith: Smith = self.now.smith;
        self.now.smith = smith.timed(worked_s, still_air_s);
        self.is_last = true;
    }
}
