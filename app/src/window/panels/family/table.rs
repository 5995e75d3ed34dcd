//! The family as a table: what is typed in it, and what is done there.

use reinwright_core::shop::family::{EditError, Family, Row, Rule};
use reinwright_core::tongs::document::SetError;

use super::seen::Seen;
use super::set::Set;

/// Whose value a cell holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Column {
    /// The base's.
    Base,
    /// That of the size at a place.
    Size(usize),
}

/// Which values are shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Filter {
    /// All.
    All,
    /// Those that are not the same in all sizes.
    Differing,
}

/// What is being typed, and what was refused.
#[derive(Debug)]
pub(super) struct TableView {
    /// A text that is not yet in the family.
    pub(super) open: Option<(Place, String)>,
    /// The cell whose text could not be taken, and why.
    refused: Option<(Place, String)>,
    pub(super) filter: Filter,
    /// A size to be brought into sight.
    pub(super) reveal: Option<usize>,
}

/// Where a cell stands.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Place {
    pub(super) column: Column,
    pub(super) path: String,
}

/// What was done in the table.
#[derive(Debug)]
pub(super) enum TableDeed {
    /// A text was typed or a way chosen.
    Put(Place, String),
    /// An override was let go.
    LetGo(Place),
    /// A rule was chosen.
    Rule(String, Rule),
    /// A size was chosen.
    Choose(usize),
}

impl TableView {
    pub(super) fn new() -> Self {
        Self {
            open: None,
            refused: None,
            filter: Filter::All,
            reveal: None,
        }
    }

    /// Forgets what was being typed.
    pub(super) fn forget(&mut self) {
        self.open = None;
        self.refused = None;
    }

    /// Whether a text is open in a cell.
    pub(super) fn is_typing(&self) -> bool {
        self.open.is_some()
    }

    /// Puts what is being typed into the family, as if Enter had been pressed.
    pub(super) fn commit<D: Seen>(&mut self, family: &mut Family<D>) {
        if let Some((place, text)) = self.open.take() {
            self.put(family, place, &text);
        }
    }

    /// Puts a text in its place; what cannot be taken is told and the old value stays.
    pub(super) fn put<D: Seen>(&mut self, family: &mut Family<D>, place: Place, text: &str) {
        let outcome = match place.column {
            Column::Base => family.set_base(&place.path, text),
            Column::Size(at) => family.set(at, &place.path, text),
        };
        self.refused = outcome.err().map(|error| (place, why(error)));
    }

    /// Lets an override go.
    pub(super) fn let_go<D: Seen>(
        &mut self,
        family: &mut Family<D>,
        place: &Place,
    ) -> Result<(), EditError> {
        self.refused = None;
        match place.column {
            Column::Base => Ok(()),
            Column::Size(at) => family.let_go(at, &place.path).map(|_there_was| ()),
        }
    }

    /// The sentence about a text that was refused, over the table.
    pub(super) fn trouble<D: Seen>(&self, set: &Set<D>) -> Option<String> {
        let (place, why) = self.refused.as_ref()?;
        let row = set
            .table
            .rows
            .iter()
            .find(|row| row.field.path == place.path)?;
        Some(format!("{}: {why}", name(set, row, place.column)))
    }

    /// Whether the text of a cell was refused.
    pub(super) fn is_refused(&self, place: &Place) -> bool {
        self.refused.as_ref().is_some_and(|(at, _)| at == place)
    }

    /// Takes note of a text; gives back one that was open in another cell, out of sight.
    pub(super) fn take_text(&mut self, place: Place, text: String) -> Option<(Place, String)> {
        let before = self.open.replace((place.clone(), text));
        before.filter(|(at, _)| *at != place)
    }
}

fn why(error: EditError) -> String {
    match error {
        EditError::Set(SetError::Value(_path, why)) => why.to_string(),
        EditError::NoSize(..)
        | EditError::Set(SetError::NoField(_))
        | EditError::NoLength(_)
        | EditError::Full
        | EditError::Last
        | EditError::NoBetween(..) => error.to_string(),
    }
}

/// `3/8 in: Boss thickness`, for a screen reader, tests and messages.
pub(super) fn name<D: Seen>(set: &Set<D>, row: &Row, column: Column) -> String {
    let field = &row.field;
    let whose = match column {
        Column::Base => "Base",
        Column::Size(at) => set.table.labels.get(at).map_or("", String::as_str),
    };
    format!("{whose}: {}", field.full_name())
}
