//! Pipe.

use crate::units::{Length, Unit};

use super::same;

/// Nominal size in 1/8 in, outside diameter and wall in 1/1000 in: ASME B36.10, Schedule 40, which
/// is standard weight up to 10 in (read in a copy; the published weights agree).
const INCH: [(u32, u32, u32); 11] = [
    (1, 405, 68),
    (2, 540, 88),
    (3, 675, 91),
    (4, 840, 109),
    (6, 1050, 113),
    (8, 1315, 133),
    (10, 1660, 140),
    (12, 1900, 145),
    (16, 2375, 154),
    (20, 2875, 203),
    (24, 3500, 216),
];

/// DN, outside diameter and wall in mm: EN 10255, medium series, the diameters as ISO 4200 has them
/// for these threads.
const METRIC: [(u32, f64, f64); 11] = [
    (6, 10.2, 2.0),
    (8, 13.5, 2.3),
    (10, 17.2, 2.3),
    (15, 21.3, 2.6),
    (20, 26.9, 2.6),
    (25, 33.7, 3.2),
    (32, 42.4, 3.2),
    (40, 48.3, 3.2),
    (50, 60.3, 3.6),
    (65, 76.1, 3.6),
    (80, 88.9, 4.0),
];

fn mm(number: f64) -> Length {
    Length::decimal(number, Unit::Millimetre)
}

fn nominal(eighths: u32) -> Length {
    Length::fraction(eighths, 8, Unit::Inch)
}

fn thousandths(number: u32) -> Length {
    Length::decimal(f64::from(number) / 1000.0, Unit::Inch)
}

/// Outside and wall of pipe of a nominal size in inches.
pub(crate) fn of_inches(size: Length) -> Option<(Length, Length)> {
    let row = INCH.iter().find(|row| same(nominal(row.0), size))?;
    Some((thousandths(row.1), thousandths(row.2)))
}

/// Outside and wall of pipe of a DN.
pub(crate) fn of_dn(dn: u32) -> Option<(Length, Length)> {
    let row = METRIC.iter().find(|row| row.0 == dn)?;
    Some((mm(row.1), mm(row.2)))
}

pub(super) fn name(outside: Length, wall: Length) -> Option<String> {
    let is = |(d, t): (Length, Length)| same(d, outside) && same(t, wall);
    let inch = INCH
        .iter()
        .find(|row| is((thousandths(row.1), thousandths(row.2))));
    let metric = METRIC.iter().find(|row| is((mm(row.1), mm(row.2))));
    let inch = inch.map(|row| nominal(row.0).to_string());
    inch.or_else(|| metric.map(|row| format!("DN {}", row.0)))
}

/// The nominal sizes that are known, in words.
pub(crate) fn known() -> String {
    let [from, to] = [INCH[0].0, INCH[INCH.len() - 1].0].map(nominal);
    let dn: Vec<String> = METRIC.iter().map(|row| row.0.to_string()).collect();
    format!("{from} to {to} and DN {}", dn.join(", "))
}
