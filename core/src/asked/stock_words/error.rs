use thiserror::Error;

use crate::units::SizeError;

/// Why a text such as `3/4 in square` names no stock.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum StockError {
    /// The size cannot be read.
    #[error(transparent)]
    Size(#[from] SizeError),
    /// The shape is missing or unknown.
    #[error("\"{0}\" names no shape that is known here: end it with {1}")]
    Shape(String, &'static str),
    /// A word that says nothing of such stock.
    #[error("\"{word}\" is not understood of the {of}: {understood}")]
    Word {
        /// What was written.
        word: String,
        /// The kind of stock.
        of: &'static str,
        /// What is understood.
        understood: &'static str,
    },
    /// No table has it.
    #[error("no {kind} is called \"{asked}\" in the tables, which have {known}; {otherwise}")]
    NoSuch {
        /// The kind of stock.
        kind: &'static str,
        /// What was asked for.
        asked: String,
        /// What the tables have.
        known: String,
        /// How to tell any other.
        otherwise: &'static str,
    },
    /// Too few sizes, too many, or sizes that do not go together.
    #[error("\"{asked}\" is no {kind}: {wanted}")]
    Sizes {
        /// The kind of stock.
        kind: &'static str,
        /// What was asked for.
        asked: String,
        /// What is wanted.
        wanted: &'static str,
    },
}
