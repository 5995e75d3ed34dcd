//! The last versions of each file that was saved over, numbered, with a way back.

use std::collections::hash_map::DefaultHasher;
use std::fs;
use std::hash::{Hash, Hasher};
use std::path::{Path, PathBuf};
use std::time::SystemTime;

use super::files;

/// How many versions of a file are kept.
const MOST: usize = 20;

/// An earlier version of a file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Version {
    /// Where it is kept.
    pub(crate) path: PathBuf,
    /// Its number, from 1.
    pub(crate) number: u32,
    /// When it was last saved.
    pub(crate) time: SystemTime,
}

/// The state of a file on disk, to see whether another program changed it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Stamp(u64);

impl Stamp {
    /// Of what stands in a file.
    pub(crate) fn of(bytes: &[u8]) -> Self {
        let mut hasher = DefaultHasher::new();
        bytes.hash(&mut hasher);
        Self(hasher.finish())
    }

    /// Of a file; `None` when there is none, or it cannot be read.
    pub(crate) fn on_disk(path: &Path) -> Option<Self> {
        fs::read(path).ok().map(|bytes| Self::of(&bytes))
    }
}

/// Puts what stands in a file aside before it is saved over; `None` where there is nothing new to
/// put aside.
///
/// # Errors
/// One sentence when it cannot be kept.
pub(crate) fn put_aside(all: &Path, file: &Path) -> Result<Option<Version>, String> {
    let Ok(bytes) = fs::read(file) else {
        return Ok(None);
    };
    let before = of(all, file);
    let newest = before.first();
    if newest.is_some_and(|newest| Stamp::on_disk(&newest.path) == Some(Stamp::of(&bytes))) {
        return Ok(None);
    }
    let folder = folder_of(all, file);
    files::make_folder(&folder)?;
    let number = newest.map_or(1, |newest| newest.number + 1);
    let path = folder.join(format!("{number:04}.ron"));
    files::write_whole(&path, &bytes)?;
    let changed = fs::metadata(file).and_then(|known| known.modified());
    let time = changed.unwrap_or_else(|_| SystemTime::now());
    if let Ok(kept) = fs::OpenOptions::new().write(true).open(&path) {
        // The time at which the smith saved it, not that at which it was put aside.
        kept.set_modified(time).ok();
    }
    for old in before.iter().skip(MOST - 1) {
        fs::remove_file(&old.path).ok();
    }
    Ok(Some(Version { path, number, time }))
}

/// The versions of a file that are kept, the newest first.
pub(crate) fn of(all: &Path, file: &Path) -> Vec<Version> {
    let entries = fs::read_dir(folder_of(all, file))
        .into_iter()
        .flatten()
        .flatten();
    let version = |entry: fs::DirEntry| {
        let path = entry.path();
        let number = path.file_stem()?.to_str()?.parse().ok()?;
        let time = entry.metadata().and_then(|known| known.modified()).ok()?;
        Some(Version { path, number, time })
    };
    let mut versions: Vec<Version> = entries.filter_map(version).collect();
    versions.sort_by_key(|version| std::cmp::Reverse(version.number));
    versions
}

/// Where the versions of a file are kept: under its name, and a number of its whole path.
fn folder_of(all: &Path, file: &Path) -> PathBuf {
    let whole = fs::canonicalize(file).or_else(|_| std::path::absolute(file));
    let whole = whole.unwrap_or_else(|_| file.to_owned());
    let stem = file.file_stem().unwrap_or_default().to_string_lossy();
    let plain: String = stem
        .chars()
        .filter(|c| c.is_alphanumeric())
        .take(40)
        .collect();
    let Stamp(number) = Stamp::of(whole.as_os_str().as_encoded_bytes());
    all.join(format!("{plain}-{number:016x}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_versions_are_numbered() {
        let folder = tempfile::tempdir().expect("a folder");
        let (all, file) = (
            folder.path().join("versions"),
            folder.path().join("pair.ron"),
        );
        assert_eq!(put_aside(&all, &file), Ok(None), "there is nothing yet");
        for round in 1..=25_u32 {
            fs::write(&file, round.to_string()).expect("written");
            let kept = put_aside(&all, &file).expect("kept").expect("it is new");
            assert_eq!(kept.number, round);
            assert_eq!(put_aside(&all, &file), Ok(None), "it is kept once");
        }
        let versions = of(&all, &file);
        let numbers: Vec<u32> = versions.iter().map(|version| version.number).collect();
        assert_eq!(numbers, (6..=25).rev().collect::<Vec<_>>());
        assert_eq!(fs::read_to_string(&versions[0].path).expect("kept"), "25");
        let other = folder.path().join("elsewhere").join("pair.ron");
        assert_eq!(of(&all, &other), [], "another file of that name");
    }
}
