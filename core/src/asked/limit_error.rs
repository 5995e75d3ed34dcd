use thiserror::Error;

/// A value outside its limits; the message names the place, the limit and so the mend.
#[derive(Debug, Clone, PartialEq, Error)]
#[error("{path} is {found}: give a value from {least} to {most}")]
pub struct LimitError {
    /// Where it stands, such as `boss.thickness`.
    pub path: String,
    /// What stands there.
    pub found: String,
    /// The least that may stand there.
    pub least: String,
    /// The most that may stand there.
    pub most: String,
}
