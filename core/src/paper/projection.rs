use serde::{Deserialize, Serialize};

use crate::asked::simple_choice;

/// How the views are laid about the side view (ISO 5456-2).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Projection {
    /// The top view stands above the side view.
    #[default]
    ThirdAngle,
    /// The top view stands below the side view.
    FirstAngle,
}

simple_choice!(Projection { ThirdAngle => "third angle", FirstAngle => "first angle" });
