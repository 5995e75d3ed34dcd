//! What the workbench does with own jaws.

use std::path::{Path, PathBuf};

use reinwright_core::document::Part;
use reinwright_core::jaw::Jaw;
use reinwright_core::jaw::sketch::KeptJaw;

use super::{JawShelf, ShelfWish};
use crate::own_jaws;
use crate::window::dialog::Purpose;
use crate::window::workbench::{Said, Workbench};

impl Workbench {
    /// Does what was asked of the shelf of own jaws.
    pub(in crate::window) fn at_jaw_shelf(&mut self, wish: ShelfWish) {
        match wish {
            ShelfWish::Open(part) => self.open_jaw_shelf(part),
            ShelfWish::Close => self.jaw_shelf = None,
            ShelfWish::Keep(jaw, name) => self.keep_jaw(&jaw, &name),
            ShelfWish::Use(kept, part) => self.use_jaw(&kept, part),
            ShelfWish::Give(kept) => self.ask(Purpose::OwnJaw(kept)),
            ShelfWish::AskRemove(path) => self.doom_jaw(Some(path)),
            ShelfWish::KeepIt => self.doom_jaw(None),
            ShelfWish::Remove(path, name) => {
                let done = own_jaws::remove(&path);
                self.say(done.map(|()| format!("Took \"{name}\" away from your own jaws")));
                self.read_jaw_shelf();
            }
        }
    }

    fn open_jaw_shelf(&mut self, part: Part) {
        let folder = self.jaws_folder.clone();
        self.jaw_shelf = Some(JawShelf::read(folder, &self.session.document, part));
    }

    fn doom_jaw(&mut self, path: Option<PathBuf>) {
        if let Some(shelf) = &mut self.jaw_shelf {
            shelf.doomed = path;
        }
    }

    fn read_jaw_shelf(&mut self) {
        if let Some(part) = self.jaw_shelf.as_ref().map(JawShelf::part) {
            self.open_jaw_shelf(part);
        }
    }

    fn keep_jaw(&mut self, jaw: &Jaw, name: &str) {
        let Some(kept) = KeptJaw::of(jaw, name, jaw.sketch().map_or("", |sketch| &sketch.about))
        else {
            return;
        };
        let done = self.put_on_shelf(&kept);
        self.say(done);
        self.read_jaw_shelf();
    }

    fn put_on_shelf(&self, kept: &KeptJaw) -> Result<String, String> {
        let folder = self.jaws_folder.as_ref();
        let folder = folder
            .ok_or("this system names no folder for what a user makes: own jaws cannot be kept")?;
        let path = own_jaws::keep(folder, kept)?;
        Ok(format!(
            "Kept \"{}\" among your own jaws: {}",
            kept.sketch.name,
            path.display()
        ))
    }

    fn use_jaw(&mut self, kept: &KeptJaw, part: Part) {
        let work = self.session.document.work;
        let jaw = super::jaw_mut(&mut self.session.document, part);
        *jaw = kept.suited(&work, jaw.heel);
        self.parts.forget();
        self.jaw_shelf = None;
    }

    /// Puts a file on the shelf if it is an own jaw of some smith.
    pub(in crate::window) fn take_in_jaw(&mut self, path: &Path) -> Result<bool, String> {
        let bytes = crate::files::bytes(path)?;
        if !reinwright_core::jaw::sketch::is_kept_jaw(&bytes) {
            return Ok(false);
        }
        let kept = own_jaws::open(path)?;
        let done = self.put_on_shelf(&kept)?;
        self.said = Some(Said::Done(done));
        self.open_jaw_shelf(Part::Jaw);
        Ok(true)
    }

    fn say(&mut self, done: Result<String, String>) {
        self.said = Some(match done {
            Ok(words) => Said::Done(words),
            Err(trouble) => Said::Trouble(trouble),
        });
    }
}
