use serde::{Deserialize, Serialize};

use super::choice::simple_choice;

/// The unit in which computed sizes are shown and bare numbers are read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Units {
    /// Inches in fractions.
    #[default]
    Inch,
    /// Millimetres.
    Millimetre,
}

simple_choice!(Units { Inch => "inches", Millimetre => "millimetres" });

impl Units {
    /// The unit of length behind it.
    pub fn unit(self) -> crate::units::Unit {
        match self {
            Self::Inch => crate::units::Unit::Inch,
            Self::Millimetre => crate::units::Unit::Millimetre,
        }
    }

    /// How computed sizes are shown.
    pub fn show(self) -> crate::units::Show {
        crate::units::Show {
            unit: self.unit(),
            ..Default::default()
        }
    }
}
