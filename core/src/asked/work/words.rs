//! Work in words that [`crate::asked::parse_work`] reads back.

use super::{BoltHeld, FlatOf, HexagonOf, Lie, RoundOf, SquareOf, Work};
use crate::asked::choice::Choice;
use crate::asked::published;

impl Work {
    /// In words that [`crate::asked::parse_work`] reads back: `5/8 in hexagon on corners`,
    /// `M16 bolt by its head`.
    pub fn words(&self) -> String {
        let mut words = self.told();
        if let Some(held) = self.bolt_held() {
            let comma = if self.is_published() { "" } else { "," };
            words += &format!("{comma} {}", held.way());
        }
        if let Some(held) = self.angle_held() {
            words += &format!(" {}", held.way());
        }
        if self.lies() == Some(Lie::OnCorners) {
            words += " on corners";
        }
        if self.is_on_edge() {
            words += " on edge";
        }
        words
    }

    /// What it is called, or else its size with its shape: `M16 bolt`, `5/8 in hexagon`.
    pub fn name(&self) -> String {
        match self.bolt_held() {
            // A bolt without a name is told by what is held.
            Some(held) if !self.is_published() => {
                let part = match held {
                    BoltHeld::ByHead => "head",
                    BoltHeld::BehindHead | BoltHeld::ByShank => "shank",
                };
                format!("bolt with a {} {part}", self.size())
            }
            Some(_) => self.told(),
            None => match self {
                Self::Flat {
                    of: FlatOf::Bar, ..
                } if self.is_on_edge() => self.words(),
                Self::Flat {
                    of: FlatOf::Bar, ..
                } => format!("{} {}", self.size(), self.way()),
                Self::Hexagon {
                    of: HexagonOf::Nut { .. },
                    ..
                } if !self.is_published() => format!("{} nut", self.size()),
                Self::Flat { .. }
                | Self::Round { .. }
                | Self::Square { .. }
                | Self::Hexagon { .. }
                | Self::Octagon { .. } => self.told(),
            },
        }
    }

    /// How it was understood, with its sizes: `1/2 in pipe: 0.84 in outside, 0.109 in wall`.
    pub fn reading(&self) -> String {
        let held = |part: &str| format!("{}: {part}", self.words());
        match *self {
            Self::Flat {
                thickness,
                width,
                of: FlatOf::Bar,
            } if self.is_on_edge() => {
                format!("flat on edge, {thickness} between the jaws, {width} thick")
            }
            Self::Flat {
                thickness,
                width,
                of: FlatOf::Bar,
            } => format!("flat, {thickness} thick between the jaws, {width} wide"),
            Self::Flat {
                thickness,
                width,
                of: FlatOf::AngleLeg { other },
            } => held(&format!(
                "{thickness} thick, the leg of {width} in the jaws, that of {other} beside them"
            )),
            Self::Round { diameter, of } => match of {
                RoundOf::Bar => self.words(),
                RoundOf::Pipe { wall } => held(&format!("{diameter} outside, {wall} wall")),
                RoundOf::Rebar { ribs } => held(&format!("{diameter}, ribs {ribs} high")),
                RoundOf::BoltShank { flats, height, .. } => held(&format!(
                    "{diameter} shank, head {flats} across flats and {height} high"
                )),
            },
            Self::Hexagon { flats, of, .. } => match of {
                HexagonOf::Bar => self.words(),
                HexagonOf::BoltHead { height, shank } => held(&format!(
                    "head {flats} across flats and {height} high, {shank} shank"
                )),
                HexagonOf::Nut { height, hole } => {
                    held(&format!("{flats} across flats, {height} high, {hole} hole"))
                }
            },
            Self::Square { .. } | Self::Octagon { .. } => self.words(),
        }
    }

    fn is_published(&self) -> bool {
        published::name(self).is_some()
    }

    /// Its name or its sizes, without how it is held.
    fn told(&self) -> String {
        let shape = self.way();
        if let Some(name) = published::name(self) {
            return format!("{name} {shape}");
        }
        match *self {
            Self::Flat {
                thickness,
                width,
                of,
            } => match of {
                FlatOf::Bar if self.is_on_edge() => format!("{width} x {thickness} {shape}"),
                FlatOf::Bar => format!("{thickness} x {width} {shape}"),
                FlatOf::AngleLeg { other } => format!("{width} x {other} x {thickness} {shape}"),
            },
            Self::Round { diameter, of } => match of {
                RoundOf::Pipe { wall } => format!("{diameter} x {wall} {shape}"),
                RoundOf::Rebar { ribs } => format!("{diameter} {shape}, {ribs} ribs"),
                RoundOf::Bar => format!("{diameter} {shape}"),
                RoundOf::BoltShank { flats, height, .. } => {
                    format!("bolt {flats} across flats, {height} high, {diameter} shank")
                }
            },
            Self::Square { side, of, .. } => match of {
                SquareOf::Bar => format!("{side} {shape}"),
                SquareOf::AngleBack { thickness } => {
                    format!("{side} x {side} x {thickness} {shape}")
                }
            },
            Self::Hexagon { flats, of, .. } => match of {
                HexagonOf::Bar => format!("{flats} {shape}"),
                HexagonOf::BoltHead { height, shank } => {
                    format!("bolt {flats} across flats, {height} high, {shank} shank")
                }
                HexagonOf::Nut { height, hole } => {
                    format!("nut {flats} across flats, {height} high, {hole} hole")
                }
            },
            Self::Octagon { flats, .. } => format!("{flats} {shape}"),
        }
    }
}
