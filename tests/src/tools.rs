//! A tool of each style as it is begun with.

use reinwright_core::asked::parse_bar;
use reinwright_core::tool::{Tool, ToolKind};
use reinwright_core::units::Length;

/// A tool of a style, a size and a bar as they are written.
///
/// # Panics
/// If one of them cannot be read.
pub fn tool(kind: ToolKind, size: &str, bar: &str) -> Tool {
    let size: Length = size.parse().expect("a size");
    Tool::starting(kind, size, parse_bar(bar).expect("a bar"))
}

/// One of each style, from bars that suit.
pub fn all() -> Vec<(&'static str, Tool)> {
    let of = |kind: ToolKind| {
        let (size, bar) = match kind {
            ToolKind::RoundPunch => ("5/16 in", "3/4 in round"),
            ToolKind::SlotPunch => ("3/4 in", "7/8 in round"),
            ToolKind::SquarePunch => ("3/8 in", "3/4 in square"),
            ToolKind::CentrePunch => ("1/4 in", "1/2 in round"),
            ToolKind::Drift => ("1/2 in", "1/2 in round"),
            ToolKind::HotChisel => ("1 1/2 in", "1 1/4 in square"),
            ToolKind::ColdChisel => ("1 in", "3/4 in round"),
            ToolKind::RivetSet => ("8 mm", "25 mm round"),
            ToolKind::CutOff => ("7/8 in", "1 1/4 in square"),
            ToolKind::BottomFuller => ("1 in", "1 1/2 in square"),
            ToolKind::BottomSwage => ("25 mm", "40 mm square"),
            ToolKind::BendingFork => ("1 in", "1 1/2 in square"),
        };
        (kind.name(), tool(kind, size, bar))
    };
    ToolKind::ALL.iter().map(|kind| of(*kind)).collect()
}
