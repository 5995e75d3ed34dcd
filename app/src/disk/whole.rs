//! The one way in which this program writes files: whole, beside the target, then into its place.
//!
//! A reader sees the old file or the new one and never a part of it, whoever else writes, and
//! whether the power goes or the program is killed. No library keeps all that a smith expects of it
//! (mode, owner, links, a promise against power cuts, and leftovers taken away), so that the steps
//! stand here.

use std::collections::hash_map::RandomState;
use std::fs::{self, File, OpenOptions};
use std::hash::BuildHasher;
use std::io::{self, ErrorKind, Write};
use std::path::{Path, PathBuf};

/// How the names of files that are being written begin and end.
const BEGINS: &str = ".reinwright-";
const ENDS: &str = ".part";

/// Links that are followed from one to the next before they are taken for a circle.
const MOST_LINKS: u32 = 32;

/// How often a file is begun anew when somebody tidies it away.
const TRIES: u32 = 8;

/// A step on the way of a file to its place; a test lets one of them fail.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Step {
    /// A file of a name that nobody has is made beside the target.
    Make,
    /// It is written.
    Write,
    /// It gets mode and owner of the target.
    Dress,
    /// It is brought to the disk.
    Flush,
    /// It takes the place of the target.
    Place,
}

/// What is asked before every step: an error is as good as one from the disk.
pub(super) type Before<'a> = &'a mut dyn FnMut(Step) -> io::Result<()>;

/// Why a file was not written.
#[derive(Debug)]
pub(super) enum Refused {
    /// The target may not be written over.
    ReadOnly,
    /// The target is a folder.
    Folder,
    /// The target is a device, a pipe or the like.
    NoFile,
    /// There is no folder for it.
    NoFolder(PathBuf),
    /// It belongs to somebody else, whom it would be taken from.
    Owner,
    /// The disk says no.
    Disk(io::Error),
}

impl From<io::Error> for Refused {
    fn from(error: io::Error) -> Self {
        Self::Disk(error)
    }
}

/// Writes a file whole. A link is followed to what it names; mode and owner of a file that is there
/// already are kept.
pub(super) fn write(path: &Path, bytes: &[u8], before: Before<'_>) -> Result<(), Refused> {
    let target = followed(path)?;
    let old = may_write(&target)?;
    let folder = folder_of(&target);
    if !folder.is_dir() {
        return Err(Refused::NoFolder(folder));
    }
    for _ in 0..TRIES {
        let part = Part::make(&folder, before)?;
        match part.put(&target, (bytes, old.as_ref()), before) {
            // Another window took it for a leftover: it is written once more.
            Err(Refused::Disk(error)) if error.kind() == ErrorKind::NotFound && folder.is_dir() => {
            }
            done => {
                tidy(&folder);
                return done;
            }
        }
    }
    Err(Refused::Disk(ErrorKind::NotFound.into()))
}

/// What a link leads to, whether or not there is anything; a plain path itself.
fn followed(path: &Path) -> io::Result<PathBuf> {
    let mut at = path.to_owned();
    for _ in 0..MOST_LINKS {
        let is_link = fs::symlink_metadata(&at).is_ok_and(|known| known.is_symlink());
        if !is_link {
            return Ok(at);
        }
        at = folder_of(&at).join(fs::read_link(&at)?);
    }
    Err(io::Error::other("its links lead in a circle"))
}

fn folder_of(path: &Path) -> PathBuf {
    match path.parent() {
        Some(parent) if !parent.as_os_str().is_empty() => parent.to_owned(),
        Some(_) | None => PathBuf::from("."),
    }
}

/// What is known of the target, if it is there and may be written over.
fn may_write(target: &Path) -> Result<Option<fs::Metadata>, Refused> {
    let known = match fs::metadata(target) {
        Ok(known) => known,
        Err(error) if error.kind() == ErrorKind::NotFound => return Ok(None),
        Err(error) => return Err(error.into()),
    };
    if known.is_dir() {
        Err(Refused::Folder)
    } else if !known.is_file() {
        Err(Refused::NoFile)
    } else if known.permissions().readonly() {
        Err(Refused::ReadOnly)
    } else {
        Ok(Some(known))
    }
}

/// A file beside its target, locked as long as it is written.
struct Part {
    path: PathBuf,
    file: File,
}

impl Part {
    /// A new file of a name that nobody has: what is there already is never opened.
    fn make(folder: &Path, before: Before<'_>) -> Result<Self, Refused> {
        for _ in 0..TRIES {
            before(Step::Make)?;
            let path = folder.join(format!("{BEGINS}{:016x}{ENDS}", chance()));
            match OpenOptions::new().write(true).create_new(true).open(&path) {
                Ok(file) => {
                    // A disk without locks has no one else's leftovers taken away.
                    file.try_lock().ok();
                    return Ok(Self { path, file });
                }
                Err(error) if error.kind() == ErrorKind::AlreadyExists => {}
                Err(error) => return Err(error.into()),
            }
        }
        Err(Refused::Disk(ErrorKind::AlreadyExists.into()))
    }

    /// Fills it and puts it in place; what fails leaves nothing behind.
    fn put(
        mut self,
        target: &Path,
        (bytes, old): (&[u8], Option<&fs::Metadata>),
        before: Before<'_>,
    ) -> Result<(), Refused> {
        let done = self.fill((bytes, old), before).and_then(|()| {
            before(Step::Place)?;
            fs::rename(&self.path, target)?;
            Ok(())
        });
        match done {
            Ok(()) => bring_to_disk(&folder_of(target)),
            Err(_) => {
                fs::remove_file(&self.path).ok();
            }
        }
        done
    }

    fn fill(
        &mut self,
        (bytes, old): (&[u8], Option<&fs::Metadata>),
        before: Before<'_>,
    ) -> Result<(), Refused> {
        before(Step::Write)?;
        self.file.write_all(bytes)?;
        if let Some(old) = old {
            before(Step::Dress)?;
            keep_owner(&self.file, old)?;
            self.file.set_permissions(old.permissions())?;
        }
        before(Step::Flush)?;
        self.file.sync_all()?;
        Ok(())
    }
}

/// A number that no other writer has: the keys of a hasher are random.
pub(super) fn chance() -> u64 {
    RandomState::new().hash_one(std::process::id())
}

#[cfg(unix)]
fn keep_owner(file: &File, old: &fs::Metadata) -> Result<(), Refused> {
    use std::os::unix::fs::{MetadataExt, fchown};
    let new = file.metadata()?;
    if (new.uid(), new.gid()) == (old.uid(), old.gid()) {
        return Ok(());
    }
    fchown(file, Some(old.uid()), Some(old.gid())).map_err(|_not_ours| Refused::Owner)
}

#[cfg(not(unix))]
fn keep_owner(_file: &File, _old: &fs::Metadata) -> Result<(), Refused> {
    Ok(())
}

/// A name that was changed is only sure once its folder is on the disk; where a folder cannot be
/// opened, the system does so by itself.
fn bring_to_disk(folder: &Path) {
    if let Ok(folder) = File::open(folder) {
        folder.sync_all().ok();
    }
}

/// Takes away what writers left that were killed: nobody holds a lock on it.
fn tidy(folder: &Path) {
    let Ok(entries) = fs::read_dir(folder) else {
        return;
    };
    for entry in entries.flatten() {
        let name = entry.file_name();
        let ours = name
            .to_str()
            .is_some_and(|name| name.starts_with(BEGINS) && name.ends_with(ENDS));
        let plain = entry.file_type().is_ok_and(|kind| kind.is_file());
        if ours && plain && is_left(&entry.path()) {
            fs::remove_file(entry.path()).ok();
        }
    }
}

fn is_left(path: &Path) -> bool {
    File::open(path).is_ok_and(|file| file.try_lock().is_ok())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn folder() -> tempfile::TempDir {
        tempfile::tempdir().expect("a folder for the test")
    }

    fn on_disk(path: &Path, bytes: &[u8]) -> Result<(), Refused> {
        write(path, bytes, &mut |_| Ok(()))
    }

    fn names(folder: &Path) -> Vec<String> {
        let entries = fs::read_dir(folder).expect("the folder is there").flatten();
        let name = |entry: fs::DirEntry| entry.file_name().to_string_lossy().into_owned();
        let mut names: Vec<String> = entries.map(name).collect();
        names.sort();
        names
    }

    /// Whatever step the disk refuses, the old file stands, and nothing lies beside it.
    #[test]
    fn a_step_that_fails_leaves_the_old_file() {
        let folder = folder();
        let path = folder.path().join("pair.ron");
        for step in [
            Step::Make,
            Step::Write,
            Step::Dress,
            Step::Flush,
            Step::Place,
        ] {
            for kind in [
                ErrorKind::StorageFull,
                ErrorKind::PermissionDenied,
                ErrorKind::ReadOnlyFilesystem,
            ] {
                on_disk(&path, b"old").expect("written");
                let mut fail = |at: Step| if at == step { Err(kind.into()) } else { Ok(()) };
                let refused = write(&path, b"new", &mut fail).expect_err("it must fail");
                assert!(
                    matches!(&refused, Refused::Disk(error) if error.kind() == kind),
                    "{step:?}: {refused:?}"
                );
                assert_eq!(fs::read(&path).expect("still there"), b"old", "{step:?}");
                assert_eq!(names(folder.path()), ["pair.ron"], "{step:?}");
            }
        }
    }

    /// The folder goes away while a file is written.
    #[test]
    fn a_folder_that_vanishes_is_told() {
        let folder = folder();
        let inner = folder.path().join("inner");
        fs::create_dir(&inner).expect("made");
        let mut vanish = |at: Step| {
            if at == Step::Place {
                fs::remove_dir_all(&inner)?;
            }
            Ok(())
        };
        let refused = write(&inner.join("pair.ron"), b"new", &mut vanish);
        assert!(matches!(refused, Err(Refused::Disk(_))), "{refused:?}");
    }

    #[test]
    fn what_a_killed_writer_left_is_tidied_and_what_another_writes_is_not() {
        let folder = folder();
        let left = folder.path().join(".reinwright-0000000000000001.part");
        fs::write(&left, b"half a fi").expect("written");
        let held = folder.path().join(".reinwright-0000000000000002.part");
        let other = File::create(&held).expect("made");
        other.lock().expect("locked");
        let own = folder.path().join("notes.part");
        fs::write(&own, b"the smith's own").expect("written");
        on_disk(&folder.path().join("pair.ron"), b"new").expect("written");
        assert_eq!(
            names(folder.path()),
            [
                ".reinwright-0000000000000002.part",
                "notes.part",
                "pair.ron"
            ]
        );
    }

    #[cfg(unix)]
    #[test]
    fn mode_links_and_special_files_are_respected() {
        use std::os::unix::fs::{PermissionsExt, symlink};
        let folder = folder();
        let path = |name: &str| folder.path().join(name);
        let mode = |name: &str| {
            fs::metadata(path(name))
                .expect("there")
                .permissions()
                .mode()
                & 0o777
        };
        let set = |name: &str, mode: u32| {
            fs::set_permissions(path(name), PermissionsExt::from_mode(mode)).expect("set");
        };
        on_disk(&path("private.ron"), b"old").expect("written");
        set("private.ron", 0o600);
        on_disk(&path("private.ron"), b"new").expect("written");
        assert_eq!(mode("private.ron"), 0o600);
        set("private.ron", 0o440);
        let refused = on_disk(&path("private.ron"), b"newer");
        assert!(matches!(refused, Err(Refused::ReadOnly)), "{refused:?}");
        assert_eq!(fs::read(path("private.ron")).expect("there"), b"new");
        // A link is followed, and stays one; so is one whose target is not there yet.
        fs::create_dir(path("else")).expect("made");
        symlink("else/real.ron", path("link.ron")).expect("linked");
        for bytes in [b"one", b"two"] {
            on_disk(&path("link.ron"), bytes).expect("written");
            assert_eq!(fs::read(path("else/real.ron")).expect("there"), bytes);
        }
        assert!(
            fs::symlink_metadata(path("link.ron"))
                .expect("there")
                .is_symlink()
        );
        symlink("round.ron", path("round.ron")).expect("linked");
        assert!(on_disk(&path("round.ron"), b"x").is_err());
        // Devices and folders are not written to.
        let device = on_disk(Path::new("/dev/null"), b"x");
        assert!(matches!(device, Err(Refused::NoFile)), "{device:?}");
        let refused = on_disk(&path("else"), b"x");
        assert!(matches!(refused, Err(Refused::Folder)), "{refused:?}");
        let refused = on_disk(&path("none/pair.ron"), b"x");
        assert!(matches!(refused, Err(Refused::NoFolder(_))), "{refused:?}");
    }

    /// Four writers at once: a reader sees one of their files, whole, at any moment.
    #[test]
    fn a_reader_never_sees_a_part() {
        /// Rounds of each writer.
        const ROUNDS: usize = 1000;
        let folder = folder();
        let path = folder.path().join("pair.ron");
        on_disk(&path, &[b'0'; 50_000]).expect("written");
        std::thread::scope(|scope| {
            let writers: Vec<_> = (b'1'..=b'4')
                .map(|sign| {
                    let path = &path;
                    scope.spawn(move || {
                        for round in 0..ROUNDS {
                            let bytes = vec![sign; 20_000 + 25 * round];
                            on_disk(path, &bytes).expect("written");
                        }
                    })
                })
                .collect();
            let mut seen = 0;
            while writers.iter().any(|writer| !writer.is_finished()) {
                let bytes = fs::read(&path).expect("it is always there");
                assert!(bytes.len() >= 20_000, "{} bytes", bytes.len());
                assert!(
                    bytes.iter().all(|sign| *sign == bytes[0]),
                    "two files in one"
                );
                seen += 1;
            }
            assert!(seen > 0);
        });
        assert_eq!(names(folder.path()), ["pair.ron"]);
    }
}
