//! What the system says against a file, in plain words and without its numbers.

use std::io::{Error, ErrorKind};

/// How the system's number begins behind its words.
const NUMBER: &str = " (os error ";

/// Why something cannot be done on disk, to stand in brackets behind what that is.
pub(crate) fn why(error: &Error) -> String {
    let known = match error.kind() {
        ErrorKind::NotFound => "it is not there any more",
        ErrorKind::PermissionDenied => "its owner does not allow it",
        ErrorKind::ReadOnlyFilesystem => "this disk can only be read",
        ErrorKind::StorageFull | ErrorKind::QuotaExceeded => "the disk is full",
        ErrorKind::NotADirectory => "a part of its path is a file and no folder",
        ErrorKind::AlreadyExists => "there is a file of this name",
        ErrorKind::DirectoryNotEmpty => "there is something in it",
        ErrorKind::InvalidFilename => {
            "its name is too long or has signs that this disk does not take"
        }
        // The system knows more kinds than can be mended here; it has words for each of its own.
        _ => return unnumbered(&error.to_string()),
    };
    known.to_owned()
}

fn unnumbered(words: &str) -> String {
    let end = words.find(NUMBER).unwrap_or(words.len());
    words[..end].to_lowercase()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(error: &Error, expected: &str) {
        assert_eq!(why(error), expected);
    }

    #[test]
    fn no_number_of_the_system_is_told() {
        check(&ErrorKind::StorageFull.into(), "the disk is full");
        check(
            &ErrorKind::PermissionDenied.into(),
            "its owner does not allow it",
        );
        check(
            &Error::other("its links lead in a circle"),
            "its links lead in a circle",
        );
        // Whatever the system has to say under its first numbers.
        for number in 1..140 {
            let told = why(&Error::from_raw_os_error(number));
            assert!(
                !told.contains("os error") && !told.is_empty(),
                "{number}: {told}"
            );
        }
    }
}
