//! Reinforcing bar.

use crate::units::{Length, Unit};

use super::same;

/// Number, nominal diameter and least mean height of the ribs, both in 1/1000 in: ASTM A615,
/// Table 1 (read in a copy of ASTM A706, which has the same bars).
const INCH: [(u32, u32, u32); 11] = [
    (3, 375, 15),
    (4, 500, 20),
    (5, 625, 28),
    (6, 750, 38),
    (7, 875, 44),
    (8, 1000, 50),
    (9, 1128, 56),
    (10, 1270, 64),
    (11, 1410, 71),
    (14, 1693, 85),
    (18, 2257, 102),
];

/// Nominal diameters in mm: EN 10080, the preferred ones.
const METRIC: [u32; 11] = [6, 8, 10, 12, 14, 16, 20, 25, 28, 32, 40];

/// Height of the ribs against the diameter: DIN 488-2 (from memory), inside the 0.03 to 0.15 that
/// EN 10080 leaves; the table of ASTM A615 begins at 0.04 and reaches 0.05.
const RIBS: f64 = 0.065;

fn thousandths(number: u32) -> Length {
    let inches = f64::from(number) / 1000.0;
    Length::from_mm(inches * Unit::Inch.mm(), Unit::Inch)
}

/// Nominal diameter and height of the ribs of a bar by its number of eighths.
pub(crate) fn of_number(number: u32) -> Option<(Length, Length)> {
    let row = INCH.iter().find(|row| row.0 == number)?;
    Some((thousandths(row.1), thousandths(row.2)))
}

/// Height of the ribs of a bar by its diameter.
pub(crate) fn usual_ribs(diameter: Length) -> Length {
    let number = INCH.iter().find(|row| same(thousandths(row.1), diameter));
    if let Some(row) = number {
        return thousandths(row.2);
    }
    let ribs = (diameter.mm() * RIBS * 100.0).round() / 100.0;
    Length::decimal(ribs, Unit::Millimetre)
}

pub(super) fn name(diameter: Length, ribs: Length) -> Option<String> {
    if !same(ribs, usual_ribs(diameter)) {
        return None;
    }
    let number = INCH.iter().find(|row| same(thousandths(row.1), diameter));
    let metric = |row: &&u32| same(Length::fraction(**row, 1, Unit::Millimetre), diameter);
    let metric = METRIC.iter().find(metric);
    match (number, metric) {
        (Some(row), _) => Some(format!("#{}", row.0)),
        (None, Some(mm)) => Some(format!("{mm} mm")),
        (None, None) => None,
    }
}

/// The bars that are known, in words.
pub(crate) fn known() -> String {
    let numbers: Vec<String> = INCH.iter().map(|row| format!("#{}", row.0)).collect();
    let metric: Vec<String> = METRIC.iter().map(ToString::to_string).collect();
    format!("{} and {} mm", numbers.join(", "), metric.join(", "))
}
