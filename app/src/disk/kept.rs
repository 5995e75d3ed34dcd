//! Work that is not saved yet, kept against a crash and a power cut.
//!
//! Each window that has such work keeps one copy of its own, a design or a family like any other,
//! with a few lines in front that say where it belongs. Beside it lies a file that the window holds
//! locked: a copy whose lock nobody holds was left behind.

use std::fs::{self, File};
use std::path::{Path, PathBuf};
use std::time::{Duration, SystemTime};

use super::place::own_folder;
use super::trouble::why;
use super::{files, whole};

/// Lines in front of a copy.
const LINES: [&str; 3] = ["// file: ", "// time: ", "// name: "];

/// The folder for unsaved work and earlier versions: `$XDG_DATA_HOME/reinwright`, else
/// `~/.local/share/reinwright`.
pub(crate) fn folder() -> Option<PathBuf> {
    own_folder("XDG_DATA_HOME", ".local/share")
}

/// Where unsaved work belongs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct About {
    /// Its file, if it has one.
    pub(crate) file: Option<PathBuf>,
    /// What it is called.
    pub(crate) name: String,
    /// When it was kept.
    pub(crate) time: SystemTime,
}

/// A copy that a window left behind.
#[derive(Debug, Clone)]
pub(crate) struct Left {
    /// The copy.
    pub(crate) path: PathBuf,
    /// Where it belongs, as far as it says so.
    pub(crate) about: About,
    /// What was kept, the lines in front with it; or why it cannot be read.
    pub(crate) bytes: Result<Vec<u8>, String>,
}

/// What keeps this window's unsaved work.
#[derive(Debug)]
pub(crate) struct Keeper {
    folder: Option<PathBuf>,
    own: Option<Own>,
}

/// This window's own copy.
#[derive(Debug)]
struct Own {
    copy: PathBuf,
    lock: PathBuf,
    /// Held until the window ends.
    held: File,
}

impl Keeper {
    /// In a folder, if there is one.
    pub(crate) fn in_folder(folder: Option<PathBuf>) -> Self {
        Self { folder, own: None }
    }

    /// Keeps a text, in the place of what was kept before. What cannot be kept is told.
    ///
    /// # Errors
    /// One sentence.
    pub(crate) fn keep(&mut self, about: &About, text: &str) -> Result<(), String> {
        let Some(folder) = &self.folder else {
            return Ok(());
        };
        if self.own.is_none() {
            self.own = Some(Own::make(folder)?);
        }
        let Some(own) = &self.own else {
            return Ok(());
        };
        files::write_whole(&own.copy, (head(about) + text).as_bytes())
    }

    /// Lets go of what was kept: it is saved, or left on purpose.
    pub(crate) fn let_go(&mut self) {
        if let Some(own) = self.own.take() {
            fs::remove_file(&own.copy).ok();
            drop(own.held);
            fs::remove_file(&own.lock).ok();
        }
    }

    /// Lets go of the window's own copy as if the window had ended: it is offered again later.
    pub(crate) fn leave(&mut self) {
        self.own = None;
    }

    /// The files in its folder that end so.
    fn files(&self, ending: &'static str) -> impl Iterator<Item = PathBuf> + use<> {
        let folder = self.folder.as_ref();
        let entries = folder.and_then(|folder| fs::read_dir(folder).ok());
        let paths = entries.into_iter().flatten().flatten();
        paths
            .map(|entry| entry.path())
            .filter(move |path| path.extension().is_some_and(|end| end == ending))
    }

    /// Takes away the locks of windows that are gone and left no copy.
    fn tidy(&self) {
        for lock in self.files("lock") {
            let copy = lock.with_extension("ron");
            if !copy.exists() && is_left(&copy) {
                fs::remove_file(lock).ok();
            }
        }
    }

    /// The copies that windows left behind which are no longer there, the newest first.
    pub(crate) fn left(&self) -> Vec<Left> {
        self.tidy();
        let mut left: Vec<Left> = self
            .files("ron")
            .filter(|copy| is_left(copy))
            .map(Left::read)
            .collect();
        left.sort_by_key(|left| std::cmp::Reverse(left.about.time));
        left
    }
}

/// Throws a copy away that was left behind.
pub(crate) fn throw_away(copy: &Path) {
    fs::remove_file(copy).ok();
    fs::remove_file(lock_of(copy)).ok();
}

impl Own {
    fn make(folder: &Path) -> Result<Self, String> {
        files::make_folder(folder)?;
        let copy = folder.join(format!("unsaved-{:016x}.ron", whole::chance()));
        let lock = lock_of(&copy);
        let held = File::create_new(&lock)
            .map_err(|error| format!("{}: cannot be made ({})", lock.display(), why(&error)))?;
        // Without locks on this disk the copy is offered while the window is still there.
        held.try_lock().ok();
        Ok(Self { copy, lock, held })
    }
}

fn lock_of(copy: &Path) -> PathBuf {
    copy.with_extension("lock")
}

/// Whether no window holds the lock of a copy.
fn is_left(copy: &Path) -> bool {
    match File::open(lock_of(copy)) {
        Ok(lock) => lock.try_lock().is_ok(),
        Err(_) => true,
    }
}

/// Seconds since 1970, to a thousandth: two windows may keep their work within one second.
fn stamp(time: SystemTime) -> String {
    let since = time.duration_since(SystemTime::UNIX_EPOCH);
    format!("{:.3}", since.unwrap_or_default().as_secs_f64())
}

/// What [`stamp`] wrote; `None` for what is none, or no time that a clock shows.
fn stamped(text: &str) -> Option<SystemTime> {
    let seconds: f64 = text.parse().ok()?;
    let since = Duration::try_from_secs_f64(seconds).ok()?;
    SystemTime::UNIX_EPOCH.checked_add(since)
}

fn head(about: &About) -> String {
    let plain = |text: &str| text.replace(['\n', '\r'], " ");
    let file = about.file.as_ref().map(|file| file.display().to_string());
    let says = [
        file.unwrap_or_default(),
        stamp(about.time),
        about.name.clone(),
    ];
    let lines = LINES.iter().zip(says);
    lines
        .map(|(begins, says)| format!("{begins}{}\n", plain(&says)))
        .collect()
}

impl Left {
    fn read(path: PathBuf) -> Self {
        let bytes = files::unnamed_bytes(&path);
        let text = bytes.as_ref().map(|bytes| String::from_utf8_lossy(bytes));
        let text = text.unwrap_or_default();
        let said = |begins: &str| text.lines().find_map(|line| line.strip_prefix(begins));
        let [file, time, name] = LINES.map(said);
        let changed = fs::metadata(&path).and_then(|known| known.modified());
        let time = time.and_then(stamped);
        let about = About {
            file: file.filter(|file| !file.is_empty()).map(PathBuf::from),
            name: name.unwrap_or_default().to_owned(),
            time: time.or(changed.ok()).unwrap_or(SystemTime::UNIX_EPOCH),
        };
        Self { path, about, bytes }
    }
}

/// How long ago something was: `just now`, `12 minutes ago`, `3 days ago`.
pub(crate) fn ago(time: SystemTime, now: SystemTime) -> String {
    const STEPS: [(u64, &str); 3] = [(86_400, "day"), (3600, "hour"), (60, "minute")];
    let passed = now.duration_since(time).unwrap_or_default().as_secs();
    let step = STEPS.iter().find(|(length, _)| passed >= *length);
    match step.map(|(length, name)| (passed / length, name)) {
        None => "just now".to_owned(),
        Some((1, name)) => format!("1 {name} ago"),
        Some((count, name)) => format!("{count} {name}s ago"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn about(name: &str, seconds: u64) -> About {
        About {
            file: Some(PathBuf::from("/designs/pair.ron")),
            name: name.to_owned(),
            time: SystemTime::UNIX_EPOCH + Duration::from_secs(seconds),
        }
    }

    fn keeper(folder: &Path) -> Keeper {
        Keeper::in_folder(Some(folder.join("unsaved")))
    }

    #[test]
    fn what_windows_left_is_found_newest_first_and_what_they_hold_is_not() {
        let folder = tempfile::tempdir().expect("a folder");
        let mut there = keeper(folder.path());
        there.keep(&about("still open", 30), "()").expect("kept");
        for (name, seconds) in [("older", 10), ("newer", 20)] {
            let mut gone = keeper(folder.path());
            gone.keep(&about(name, seconds), "(format: 1)")
                .expect("kept");
            // A window that is killed takes nothing away; its lock goes with it.
        }
        let names = |left: &[Left]| {
            left.iter()
                .map(|of| of.about.name.clone())
                .collect::<Vec<_>>()
        };
        // A child that another test starts at this moment has the locks until it runs its own program.
        let mut left = there.left();
        for _ in 0..100 {
            if left.len() == 2 {
                break;
            }
            std::thread::sleep(Duration::from_millis(10));
            left = there.left();
        }
        assert_eq!(names(&left), ["newer", "older"]);
        assert_eq!(left[0].about, about("newer", 20));
        let bytes = left[0].bytes.clone().expect("it can be read");
        assert!(bytes.ends_with(b"(format: 1)"));
        throw_away(&left[0].path);
        assert_eq!(names(&there.left()), ["older"]);
        there.let_go();
        assert_eq!(names(&keeper(folder.path()).left()), ["older"]);
    }

    #[test]
    fn times_are_told_in_words() {
        let now = SystemTime::UNIX_EPOCH + Duration::from_secs(1_000_000);
        let check = |seconds: u64, words: &str| {
            assert_eq!(ago(now - Duration::from_secs(seconds), now), words);
        };
        check(5, "just now");
        check(61, "1 minute ago");
        check(7200, "2 hours ago");
        check(90_000, "1 day ago");
        assert_eq!(
            ago(now + Duration::from_secs(9), now),
            "just now",
            "a clock was set back"
        );
    }

    /// Where the killed writer of the test below works.
    const IN: &str = "REINWRIGHT_TEST_WRITES_IN";

    /// A design's worth of text in which every line tells its round.
    fn text(round: usize) -> String {
        format!("{round}\n").repeat(4000)
    }

    fn is_whole(text: &str) -> bool {
        let first = text.lines().next().unwrap_or_default();
        text.lines().count() == 4000 && text.lines().all(|line| line == first)
    }

    /// Keeps and saves for as long as it lives.
    #[test]
    #[ignore = "it is started, and killed, by the test below"]
    fn writes_until_it_is_killed() {
        let folder = std::env::var_os(IN).expect("the parent says where");
        let folder = Path::new(&folder);
        let (file, all) = (folder.join("pair.ron"), folder.join("versions"));
        let mut keeper = keeper(folder);
        for round in 0.. {
            keeper.keep(&about("pair", 1), &text(round)).expect("kept");
            crate::disk::versions::put_aside(&all, &file).expect("kept");
            files::write_whole(&file, text(round).as_bytes()).expect("written");
        }
    }

    /// A writer that is killed at any moment, 200 times: no file is ever a part of one, and what
    /// lies about is tidied by the next write.
    #[test]
    fn a_kill_damages_and_leaves_nothing() {
        use std::process::{Command, Stdio};
        const KILLS: u64 = 200;
        let folder = tempfile::tempdir().expect("a folder");
        let file = folder.path().join("pair.ron");
        files::write_whole(&file, text(0).as_bytes()).expect("written");
        let own = std::env::current_exe().expect("this test has a path");
        let name = "disk::kept::tests::writes_until_it_is_killed";
        let mut written = 0;
        for kill in 0..KILLS {
            let mut child = Command::new(&own)
                .args(["--exact", name, "--ignored", "--quiet"])
                .env(IN, folder.path())
                .stdout(Stdio::null())
                .stderr(Stdio::null())
                .spawn()
                .expect("it starts");
            // From before the first write to well among them, in steps that meet every moment.
            std::thread::sleep(Duration::from_micros(5_000 + (kill * 7_919) % 60_000));
            child.kill().expect("it is killed");
            child.wait().expect("it has ended");
            let now = fs::read_to_string(&file).expect("it is there");
            assert!(is_whole(&now), "{} lines", now.lines().count());
            written += u32::from(now != text(0));
        }
        assert!(written > 20, "the kills met {written} writers");
        for left in keeper(folder.path()).left() {
            let text = String::from_utf8(left.bytes.expect("it can be read")).expect("text");
            let body: String = text
                .lines()
                .skip(LINES.len())
                .map(|line| format!("{line}\n"))
                .collect();
            assert!(is_whole(&body));
        }
        let names = |folder: &Path| {
            let entries = fs::read_dir(folder).expect("it is there").flatten();
            let names = entries.map(|entry| entry.file_name().to_string_lossy().into_owned());
            names.collect::<Vec<_>>()
        };
        files::write_whole(&file, b"the end").expect("written");
        let mut there = names(folder.path());
        there.sort();
        assert_eq!(there, ["pair.ron", "unsaved", "versions"]);
        let unsaved = names(&folder.path().join("unsaved"));
        let parts = unsaved
            .iter()
            .filter(|name| name.ends_with(".part"))
            .count();
        // Each of these is tidied by the next copy that is kept there.
        assert!(parts <= 1, "{unsaved:?}");
    }
}
