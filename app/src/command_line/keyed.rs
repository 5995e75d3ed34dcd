//! Numbers whose names end with their unit.

use reinwright_core::units::Quantity;
use serde::ser::{Serialize, SerializeMap, Serializer};

/// A figure and what it is held against, for a script: `value_mm` and `limit_mm`.
pub(super) struct Keyed {
    of: Quantity,
    named: [(&'static str, f64); 2],
}

impl Keyed {
    /// Numbers by their names, all of one quantity, in the unit of the core.
    pub(super) fn new(of: Quantity, named: [(&'static str, f64); 2]) -> Self {
        Self { of, named }
    }
}

impl Serialize for Keyed {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(self.named.len()))?;
        for (name, value) in self.named {
            map.serialize_entry(&self.of.key(name), &value)?;
        }
        map.end()
    }
}
