//! Choosing what is held.

use super::{FlatOf, HexagonOf, Lie, RoundOf, SquareOf, Work, wider};
use crate::asked::choice::Choice;
use crate::asked::published::{self, rebar};
use crate::units::Length;

impl Choice for Work {
    const WAYS: &'static [&'static str] = &[
        "flat", "round", "square", "hexagon", "octagon", "bolt", "nut", "pipe", "rebar", "angle",
    ];

    fn chosen(&self) -> usize {
        match self {
            Self::Flat { of, .. } => match of {
                FlatOf::Bar => 0,
                FlatOf::AngleLeg { .. } => 9,
            },
            Self::Round { of, .. } => match of {
                RoundOf::Bar => 1,
                RoundOf::BoltShank { .. } => 5,
                RoundOf::Pipe { .. } => 7,
                RoundOf::Rebar { .. } => 8,
            },
            Self::Square { of, .. } => match of {
                SquareOf::Bar => 2,
                SquareOf::AngleBack { .. } => 9,
            },
            Self::Hexagon { of, .. } => match of {
                HexagonOf::Bar => 3,
                HexagonOf::BoltHead { .. } => 5,
                HexagonOf::Nut { .. } => 6,
            },
            Self::Octagon { .. } => 4,
        }
    }

    fn choose(&mut self, index: usize) {
        if index == self.chosen() {
            return;
        }
        let size = self.size();
        let lie = self.lies().unwrap_or_default();
        *self = match index {
            0 => Self::flat(size, wider(size)),
            1 => Self::round(size),
            2 => Self::square(size, lie),
            3 => Self::hexagon(size, lie),
            4 => Self::Octagon { flats: size, lie },
            5 => published::nearest_bolt(self),
            6 => published::nearest_nut(self),
            7 => Self::pipe(size, part(size, PIPE_WALL)),
            8 => Self::Round {
                diameter: size,
                of: RoundOf::Rebar {
                    ribs: rebar::usual_ribs(size),
                },
            },
            9 => self.as_angle(),
            _ => *self,
        };
    }
}

/// The wall of a likely pipe against its outside (judgement).
const PIPE_WALL: f64 = 0.1;
/// The thickness of a likely angle against its legs (judgement).
const ANGLE_LEG: f64 = 0.125;

/// A part of a size, as a smith measures it.
fn part(size: Length, part: f64) -> Length {
    Length::measured((size.mm() * part).max(1.0), size.unit())
}

impl Work {
    pub(in crate::asked) const fn pipe(outside: Length, wall: Length) -> Self {
        Self::Round {
            diameter: outside,
            of: RoundOf::Pipe { wall },
        }
    }

    /// An angle of equal legs: flat bar becomes a leg of it.
    fn as_angle(&self) -> Self {
        let size = self.size();
        let (thickness, leg) = match *self {
            Self::Flat {
                thickness, width, ..
            } => (thickness, width),
            Self::Round { .. }
            | Self::Square { .. }
            | Self::Hexagon { .. }
            | Self::Octagon { .. } => (part(size, ANGLE_LEG), size),
        };
        let mut angle = Self::angle(thickness, [leg, leg]);
        if self.lies() == Some(Lie::OnCorners) {
            angle.hold_angle(super::AngleHeld::ByBack);
        }
        angle
    }

    /// An angle held by the first of its legs.
    pub(in crate::asked) const fn angle(thickness: Length, [held, other]: [Length; 2]) -> Self {
        Self::Flat {
            thickness,
            width: held,
            of: FlatOf::AngleLeg { other },
        }
    }
}
