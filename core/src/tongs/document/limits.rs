use super::{Document, FORMAT};
use crate::asked::LimitError;
use crate::tongs::jaw::Sketch;

/// Longest name and note that a file may carry, in characters.
const LONGEST_NAME: usize = 200;

const LONGEST_NOTE: usize = 20_000;

/// Checks every number of a document against its limits.
///
/// # Errors
/// The first value that is not finite or not inside its limits, in the order of
/// [`Document::visit`].
pub fn check_limits(document: &Document) -> Result<(), LimitError> {
    let outside = |path: &str, found: usize, most: usize| LimitError {
        path: path.to_owned(),
        found: format!("{found} characters long"),
        least: "0".to_owned(),
        most: format!("{most} characters"),
    };
    if document.name.chars().count() > LONGEST_NAME {
        return Err(outside("name", document.name.chars().count(), LONGEST_NAME));
    }
    if document.note.chars().count() > LONGEST_NOTE {
        return Err(outside("note", document.note.chars().count(), LONGEST_NOTE));
    }
    if document.format > FORMAT {
        return Err(LimitError {
            path: "format".to_owned(),
            found: document.format.to_string(),
            least: "1".to_owned(),
            most: FORMAT.to_string(),
        });
    }
    let mut first = None;
    document.visit(&mut |field| {
        if first.is_none() {
            first = field.check().err();
        }
    });
    first.map_or(Ok(()), Err)?;
    let jaws = [Some(&document.jaw), document.second_jaw.as_ref()];
    let sketches = jaws.into_iter().flatten().filter_map(|jaw| jaw.sketch());
    sketches
        .map(Sketch::check_limits)
        .find(Result::is_err)
        .unwrap_or(Ok(()))
}
