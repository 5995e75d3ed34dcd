//! What the workbench does with own jaws.

use std::path::{Path, PathBuf};

use reinwright_core::finding::Part;
use reinwright_core::tongs::jaw::Jaw;
use reinwright_core::tongs::jaw::sketch::KeptJaw;

use super::workbench::Workbench;
use crate::disk::own_jaws::{self, Kept};
use crate::window::panels::dialog::{Dialog, NameTaken, Purpose};
use crate::window::panels::sketch::JawShelf;
use crate::window::panels::wish::JawWish;

impl Workbench {
    /// Does what was asked of the shelf of own jaws.
    pub(super) fn at_own_jaws(&mut self, wish: JawWish) {
        match wish {
            JawWish::Open(part) => self.open_jaw_shelf(part),
            JawWish::Close => self.shown.jaws = None,
            JawWish::Keep(jaw, name) => self.keep_jaw(&jaw, &name),
            JawWish::Replace(kept, path) => {
                let done = own_jaws::replace(&path, &kept);
                self.say(done.map(|()| said_kept(&kept.sketch.name, &path)));
                self.read_jaw_shelf();
            }
            JawWish::KeepBeside(kept) => {
                let done = self
                    .jaws_folder()
                    .and_then(|folder| own_jaws::keep_beside(&folder, &kept));
                self.say(done.map(|name| format!("Kept as \"{name}\" among your own jaws")));
                self.read_jaw_shelf();
            }
            JawWish::Use(kept, part) => self.use_jaw(&kept, part),
            JawWish::Give(kept) => self.ask(Purpose::OwnJaw(kept)),
            JawWish::AskRemove(path) => self.doom_jaw(Some(path)),
            JawWish::KeepIt => self.doom_jaw(None),
            JawWish::Remove(path, name) => {
                let done = own_jaws::remove(&path);
                self.say(done.map(|()| format!("Deleted \"{name}\"")));
                self.read_jaw_shelf();
            }
        }
    }

    fn open_jaw_shelf(&mut self, part: Part) {
        let folder = self.remembered.jaws_folder.clone();
        let design = self.open.document();
        self.shown.jaws = design.map(|design| JawShelf::read(folder, design, part));
    }

    fn doom_jaw(&mut self, path: Option<PathBuf>) {
        if let Some(shelf) = &mut self.shown.jaws {
            shelf.doomed = path;
        }
    }

    fn read_jaw_shelf(&mut self) {
        if let Some(part) = self.shown.jaws.as_ref().map(JawShelf::part) {
            self.open_jaw_shelf(part);
        }
    }

    fn keep_jaw(&mut self, jaw: &Jaw, name: &str) {
        let Some(kept) = KeptJaw::of(jaw, name, jaw.sketch().map_or("", |sketch| &sketch.about))
        else {
            return;
        };
        let done = self.put_on_shelf(kept);
        self.tell(done);
        self.read_jaw_shelf();
    }

    /// The own jaws that can be read.
    pub(super) fn own_jaws(&self) -> Vec<KeptJaw> {
        let folder = self.remembered.jaws_folder.as_deref();
        folder.map(own_jaws::readable).unwrap_or_default()
    }

    fn jaws_folder(&self) -> Result<PathBuf, String> {
        let folder = self.remembered.jaws_folder.clone();
        folder.ok_or_else(|| {
            "this system names no folder for what a user makes: own jaws cannot be kept".to_owned()
        })
    }

    /// Keeps a jaw and says so; asks what is to be done when another one has its name.
    fn put_on_shelf(&mut self, kept: KeptJaw) -> Result<(), String> {
        match own_jaws::keep(&self.jaws_folder()?, &kept)? {
            Kept::Written(path) => self.say(Ok(said_kept(&kept.sketch.name, &path))),
            Kept::Already(path) => self.say(Ok(format!(
                "\"{}\" was kept already: {}",
                kept.sketch.name,
                path.display()
            ))),
            Kept::NameTaken(path) => {
                let kept = Box::new(kept);
                self.asked.dialog = Some(Dialog::NameTaken(NameTaken { kept, path }));
            }
        }
        Ok(())
    }

    fn use_jaw(&mut self, kept: &KeptJaw, part: Part) {
        let design = self.open.as_design();
        let done = design.map_or(Ok(()), |design| design.use_jaw(kept, part));
        self.shown.jaws = None;
        self.tell(done);
    }

    /// Puts a file on the shelf if it is an own jaw of some smith.
    pub(super) fn take_in_jaw(&mut self, path: &Path) -> Result<bool, String> {
        let bytes = crate::disk::files::bytes(path)?;
        if !reinwright_core::tongs::jaw::sketch::is_kept_jaw(&bytes) {
            return Ok(false);
        }
        let kept = own_jaws::open(path)?;
        self.put_on_shelf(kept)?;
        self.open_jaw_shelf(Part::Jaw);
        Ok(true)
    }
}

fn said_kept(name: &str, path: &Path) -> String {
    format!("Kept \"{name}\" among your own jaws: {}", path.display())
}
