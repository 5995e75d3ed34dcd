//! What is open, a design, a tool or a family: how it stands, where it is kept, what can be taken back.

use std::path::{Path, PathBuf};

use reinwright_core::asked::Units;
use reinwright_core::shop::family::{self, Family, InSizes};
use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tool::{self, Tool};

use super::history::{Hand, History};
use crate::disk::files;
use crate::disk::versions::Stamp;

/// What can be open in the window and has a file of its own.
pub(crate) trait Content: Clone + PartialEq {
    /// What it is called in the window's title, where that must be said.
    const KIND: Option<&'static str>;

    /// Its name, as the smith gave it.
    fn name(&self) -> &str;

    /// What files that are made of it are named after.
    fn file_words(&self) -> String;

    /// What its sizes are shown in.
    fn units(&self) -> Units;

    /// Shows its sizes in other units.
    fn set_units(&mut self, units: Units);

    /// The text of its file.
    ///
    /// # Errors
    /// One sentence when no file may carry it.
    fn text(&self) -> Result<String, String>;
}

/// What is edited value by value, each with its limits.
pub(crate) trait Limited: Content {
    /// Whether a file may carry it.
    ///
    /// # Errors
    /// One sentence that says what is outside.
    fn within_limits(&self) -> Result<(), String>;
}

/// Tells of one design or tool how it is open: it has its own name, units, limits and text.
macro_rules! alone {
    ($what:ty, $kind:expr, $room:ident) => {
        impl Content for $what {
            const KIND: Option<&'static str> = $kind;

            fn name(&self) -> &str {
                &self.name
            }

            fn file_words(&self) -> String {
                self.name.clone()
            }

            fn units(&self) -> Units {
                self.units
            }

            fn set_units(&mut self, units: Units) {
                self.units = units;
            }

            fn text(&self) -> Result<String, String> {
                self.within_limits()?;
                Ok($room::write(self))
            }
        }

        impl Limited for $what {
            fn within_limits(&self) -> Result<(), String> {
                $room::check_limits(self).map_err(|error| error.to_string())
            }
        }
    };
}

alone!(Document, None, document);
alone!(Tool, Some("tool"), tool);

impl<D: InSizes> Content for Family<D> {
    const KIND: Option<&'static str> = Some("family");

    fn name(&self) -> &str {
        &self.name
    }

    fn file_words(&self) -> String {
        format!("family {}", self.name)
    }

    fn units(&self) -> Units {
        self.base.units()
    }

    fn set_units(&mut self, units: Units) {
        self.set_units(units);
    }

    fn text(&self) -> Result<String, String> {
        family::whole_text(self).map_err(|error| error.to_string())
    }
}

/// A design, a tool or a family with its file and its history.
#[derive(Debug)]
pub(crate) struct Session<T> {
    /// How it stands in the window.
    pub(crate) now: T,
    /// How it stands on disk, or was begun; `None` when nothing but this window has it.
    saved: Option<T>,
    /// Its file, if it has one.
    path: Option<PathBuf>,
    /// What stood in the file when it was last read or written here.
    stamp: Option<Stamp>,
    history: History<T>,
}

impl<T: Content> Session<T> {
    /// Something begun, that is no loss before it is changed.
    pub(crate) fn begun(what: T) -> Self {
        Self::with(Some(what.clone()), what, None)
    }

    /// Something that nothing but this window has.
    pub(crate) fn unsaved(what: T) -> Self {
        Self::with(None, what, None)
    }

    /// What was read from a file.
    pub(crate) fn on_file(what: T, path: &Path) -> Self {
        Self::with(Some(what.clone()), what, Some(path.to_owned()))
    }

    /// What was kept when a window could not save it, or before it was saved over, and the file it
    /// belongs to.
    pub(crate) fn brought_back(what: T, path: Option<PathBuf>) -> Self {
        Self {
            stamp: None,
            ..Self::with(None, what, path)
        }
    }

    fn with(saved: Option<T>, now: T, path: Option<PathBuf>) -> Self {
        Self {
            history: History::new(&now),
            now,
            saved,
            stamp: path.as_deref().and_then(Stamp::on_disk),
            path,
        }
    }

    /// Takes note of how it stands, once each frame.
    pub(crate) fn feed(&mut self, time: f64, hand: Hand) {
        self.history.feed(time, &self.now, hand);
    }

    fn go_to(&mut self, other: Option<T>) -> bool {
        let Some(other) = other else {
            return false;
        };
        self.now = other;
        true
    }
}

impl<T: Limited> Session<T> {
    /// Goes back to what was there before when what was done is outside the limits of a file: what
    /// cannot be saved is not begun.
    ///
    /// # Errors
    /// One sentence that says what is outside.
    pub(crate) fn keep_within(&mut self, before: T) -> Result<(), String> {
        let checked = self.now.within_limits();
        // Work that was brought back may be outside already: it is mended step by step.
        if checked.is_ok() || before.within_limits().is_err() {
            return Ok(());
        }
        self.now = before;
        checked.map_err(|error| format!("This cannot be done here: {error}"))
    }
}

/// What is the same whatever is open.
pub(crate) trait Opened {
    /// Its name, as the smith gave it.
    fn name(&self) -> &str;

    /// Its file, if it has one.
    fn path(&self) -> Option<&Path>;

    /// Name of the file, or its own when there is none, and whether it is saved.
    fn title(&self) -> String;

    /// A name for a file made from it.
    fn file_name(&self, extension: &str) -> String;

    /// Whether there is something to lose.
    fn is_changed(&self) -> bool;

    /// Whether its own file is no longer as it was read or written here. One that has gone, or was
    /// never this session's, is not.
    fn is_changed_on_disk(&self, path: &Path) -> bool;

    /// Writes it to a file, which is its own from then on.
    ///
    /// # Errors
    /// One sentence that names the file, what is wrong and the mend.
    fn save(&mut self, path: &Path) -> Result<(), String>;

    /// What its sizes are shown in.
    fn units(&self) -> Units;

    /// Shows its sizes in other units.
    fn set_units(&mut self, units: Units);

    /// Whether there is a change to take back.
    fn can_undo(&self) -> bool;

    /// Whether there is a change to do again.
    fn can_redo(&self) -> bool;

    /// Takes the last change back; false when there is none.
    fn undo(&mut self) -> bool;

    /// Does it again; false when there is none.
    fn redo(&mut self) -> bool;
}

impl<T: Content> Opened for Session<T> {
    fn name(&self) -> &str {
        self.now.name()
    }

    fn path(&self) -> Option<&Path> {
        self.path.as_deref()
    }

    fn title(&self) -> String {
        let name = title(self.path(), self.name());
        let changed = self.is_changed().then_some("not saved");
        let about: Vec<&str> = T::KIND.into_iter().chain(changed).collect();
        if about.is_empty() {
            name
        } else {
            format!("{name} ({})", about.join(", "))
        }
    }

    fn file_name(&self, extension: &str) -> String {
        file_name(self.path(), &self.now.file_words(), extension)
    }

    fn is_changed(&self) -> bool {
        let alike = |saved: &T| {
            let mut shown = saved.clone();
            // What sizes are shown in is no change of what is made.
            shown.set_units(self.now.units());
            shown == self.now
        };
        !self.saved.as_ref().is_some_and(alike)
    }

    fn is_changed_on_disk(&self, path: &Path) -> bool {
        let own = self.path.as_deref() == Some(path);
        let on_disk = Stamp::on_disk(path);
        own && on_disk.is_some() && on_disk != self.stamp
    }

    fn save(&mut self, path: &Path) -> Result<(), String> {
        let text = self.now.text()?;
        files::write_whole(path, text.as_bytes())?;
        self.stamp = Some(Stamp::of(text.as_bytes()));
        self.saved = Some(self.now.clone());
        self.path = Some(path.to_owned());
        Ok(())
    }

    fn units(&self) -> Units {
        self.now.units()
    }

    fn set_units(&mut self, units: Units) {
        self.now.set_units(units);
    }

    fn can_undo(&self) -> bool {
        self.history.can_undo(&self.now)
    }

    fn can_redo(&self) -> bool {
        self.history.can_redo(&self.now)
    }

    fn undo(&mut self) -> bool {
        let before = self.history.undo(&self.now);
        self.go_to(before)
    }

    fn redo(&mut self) -> bool {
        let after = self.history.redo(&self.now);
        self.go_to(after)
    }
}

/// Name of a file, or of what is in it when there is none.
fn title(path: Option<&Path>, name: &str) -> String {
    match path.and_then(Path::file_name) {
        Some(file) => file.to_string_lossy().into_owned(),
        None if name.trim().is_empty() => "unnamed".to_owned(),
        None => name.to_owned(),
    }
}

/// A name for a file made from what is called so: plain signs only.
fn file_name(path: Option<&Path>, name: &str, extension: &str) -> String {
    let stem = path.and_then(Path::file_stem);
    let stem = stem.map_or_else(|| name.to_owned(), |s| s.to_string_lossy().into_owned());
    let plain = |c: char| match c {
        c if c.is_alphanumeric() => c.to_ascii_lowercase(),
        _ => '-',
    };
    let plain: String = stem.chars().map(plain).collect();
    let words: Vec<&str> = plain.split('-').filter(|word| !word.is_empty()).collect();
    let words = if words.is_empty() {
        "tongs".to_owned()
    } else {
        words.join("-")
    };
    if extension.is_empty() {
        // A folder of what is drawn, beside the file.
        return format!("{words}-drawings");
    }
    format!("{words}.{extension}")
}

#[cfg(test)]
mod tests {
    use super::*;
    use reinwright_core::asked::{parse_bar, parse_work};
    use reinwright_core::tongs::jaw::JawKind;

    fn design() -> Document {
        let work = parse_work("1/2 in flat").expect("work");
        let bar = parse_bar("3/4 in square").expect("bar");
        Document::starting(JawKind::Flat, work, bar)
    }

    #[track_caller]
    fn check(session: &dyn Opened, title: &str, file: &str) {
        assert_eq!(session.title(), title);
        assert_eq!(session.file_name("pdf"), file);
    }

    #[test]
    fn the_title_tells_what_is_open_and_whether_it_is_saved() {
        let design = Document {
            name: "Bits".to_owned(),
            ..design()
        };
        let family = Family::from_design(&design);
        let path = Path::new("/designs/Light.ron");
        check(&Session::begun(design.clone()), "Bits", "bits.pdf");
        check(
            &Session::unsaved(design.clone()),
            "Bits (not saved)",
            "bits.pdf",
        );
        check(&Session::on_file(design, path), "Light.ron", "light.pdf");
        check(
            &Session::unsaved(family.clone()),
            "Bits (family, not saved)",
            "family-bits.pdf",
        );
        check(
            &Session::on_file(family, path),
            "Light.ron (family)",
            "light.pdf",
        );
    }

    #[test]
    fn a_change_can_be_taken_back_and_done_again() {
        let mut session = Session::begun(design());
        session.now.name = "other".to_owned();
        session.feed(1.0, Hand::AtRest);
        assert!(session.is_changed() && session.can_undo() && !session.can_redo());
        assert!(session.undo() && !session.is_changed());
        assert!(!session.undo(), "there is nothing before the first state");
        assert!(session.redo());
        assert_eq!(session.now.name, "other");
    }

    #[test]
    fn files_and_folders_are_named_after_what_is_open() {
        let path = Path::new("/designs/Round Bits.ron");
        assert_eq!(file_name(Some(path), "", "pdf"), "round-bits.pdf");
        assert_eq!(file_name(Some(path), "", ""), "round-bits-drawings");
        assert_eq!(file_name(None, " 5/8 in, hex ", "ron"), "5-8-in-hex.ron");
        assert_eq!(file_name(None, "...", "svg"), "tongs.svg");
    }
}
