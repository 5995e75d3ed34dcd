//! By which part a bolt or an angle is held.

use super::{FlatOf, Head, HexagonOf, Lie, RoundOf, SquareOf, Work};
use crate::asked::choice::{ChoiceBeside, simple_choice};

/// By which part of it a bolt is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum BoltHeld {
    /// The head is between the bits.
    #[default]
    ByHead,
    /// The bits hold the shank, the head is between the jaws behind them.
    BehindHead,
    /// The bits hold the shank, the head is in front of the tongs.
    ByShank,
}

simple_choice!(BoltHeld {
    ByHead => "by its head",
    BehindHead => "behind its head",
    ByShank => "by its shank",
});

/// By which part of it an angle is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum AngleHeld {
    /// One leg lies flat between the jaws.
    #[default]
    ByLeg,
    /// Its back is in a groove.
    ByBack,
}

simple_choice!(AngleHeld { ByLeg => "by a leg", ByBack => "by its back" });

impl Work {
    /// By which part it is held, if it is a bolt.
    pub fn bolt_held(&self) -> Option<BoltHeld> {
        match self {
            Self::Hexagon {
                of: HexagonOf::BoltHead { .. },
                ..
            } => Some(BoltHeld::ByHead),
            Self::Round {
                of: RoundOf::BoltShank { head, .. },
                ..
            } => Some(match head {
                Head::Within => BoltHeld::BehindHead,
                Head::InFront => BoltHeld::ByShank,
            }),
            Self::Flat { .. }
            | Self::Round { .. }
            | Self::Square { .. }
            | Self::Hexagon { .. }
            | Self::Octagon { .. } => None,
        }
    }

    /// Whether it is flat bar whose edges lie in the jaws: what lies between them is more than its thickness.
    pub fn is_on_edge(&self) -> bool {
        match self {
            Self::Flat {
                thickness,
                width,
                of: FlatOf::Bar,
            } => thickness.mm() > width.mm(),
            Self::Flat { .. }
            | Self::Round { .. }
            | Self::Square { .. }
            | Self::Hexagon { .. }
            | Self::Octagon { .. } => false,
        }
    }

    /// Turns flat bar, so that its edges lie in the jaws; whether it could be turned.
    pub(crate) fn turn_on_edge(&mut self) -> bool {
        match self {
            Self::Flat {
                thickness,
                width,
                of: FlatOf::Bar,
            } => {
                std::mem::swap(thickness, width);
                true
            }
            Self::Flat { .. }
            | Self::Round { .. }
            | Self::Square { .. }
            | Self::Hexagon { .. }
            | Self::Octagon { .. } => false,
        }
    }

    /// By which part it is held, if it is an angle.
    pub fn angle_held(&self) -> Option<AngleHeld> {
        match self {
            Self::Flat {
                of: FlatOf::AngleLeg { .. },
                ..
            } => Some(AngleHeld::ByLeg),
            Self::Square {
                of: SquareOf::AngleBack { .. },
                ..
            } => Some(AngleHeld::ByBack),
            Self::Flat { .. }
            | Self::Round { .. }
            | Self::Square { .. }
            | Self::Hexagon { .. }
            | Self::Octagon { .. } => None,
        }
    }

    pub(super) fn is_bolt(&self) -> bool {
        self.bolt_held().is_some()
    }

    pub(super) fn is_angle(&self) -> bool {
        self.angle_held().is_some()
    }

    /// The same bolt held by another part; other work stays.
    pub fn hold_bolt(&mut self, wanted: BoltHeld) {
        let (flats, height, shank) = match *self {
            Self::Hexagon {
                flats,
                of: HexagonOf::BoltHead { height, shank },
                ..
            } => (flats, height, shank),
            Self::Round {
                diameter,
                of: RoundOf::BoltShank { flats, height, .. },
            } => (flats, height, diameter),
            Self::Flat { .. }
            | Self::Round { .. }
            | Self::Square { .. }
            | Self::Hexagon { .. }
            | Self::Octagon { .. } => return,
        };
        if self.bolt_held() == Some(wanted) {
            return;
        }
        let by_shank = |head| Self::Round {
            diameter: shank,
            of: RoundOf::BoltShank {
                flats,
                height,
                head,
            },
        };
        *self = match wanted {
            BoltHeld::ByHead => Self::Hexagon {
                flats,
                lie: Lie::OnFlats,
                of: HexagonOf::BoltHead { height, shank },
            },
            BoltHeld::BehindHead => by_shank(Head::Within),
            BoltHeld::ByShank => by_shank(Head::InFront),
        };
    }

    /// The same angle held by another part. Other work stays, and so does an angle of unequal
    /// legs, which lies in no groove by its back.
    pub fn hold_angle(&mut self, wanted: AngleHeld) {
        *self = match (*self, wanted) {
            (
                Self::Flat {
                    thickness,
                    width,
                    of: FlatOf::AngleLeg { other },
                },
                AngleHeld::ByBack,
            ) if (width.mm() - other.mm()).abs() < ALIKE => Self::Square {
                side: width,
                lie: Lie::OnCorners,
                of: SquareOf::AngleBack { thickness },
            },
            (
                Self::Square {
                    side,
                    of: SquareOf::AngleBack { thickness },
                    ..
                },
                AngleHeld::ByLeg,
            ) => Self::Flat {
                thickness,
                width: side,
                of: FlatOf::AngleLeg { other: side },
            },
            (same, AngleHeld::ByLeg | AngleHeld::ByBack) => same,
        };
    }
}

/// Legs that differ by less are equal, mm.
pub(super) const ALIKE: f64 = 0.01;

impl ChoiceBeside<BoltHeld> for Work {
    const WAYS: &'static [&'static str] = <BoltHeld as crate::asked::Choice>::WAYS;

    fn chosen(&self) -> usize {
        self.bolt_held().unwrap_or_default() as usize
    }

    fn choose(&mut self, index: usize, _: &BoltHeld) {
        let all = [BoltHeld::ByHead, BoltHeld::BehindHead, BoltHeld::ByShank];
        if let Some(wanted) = all.get(index) {
            self.hold_bolt(*wanted);
        }
    }
}

impl ChoiceBeside<AngleHeld> for Work {
    const WAYS: &'static [&'static str] = <AngleHeld as crate::asked::Choice>::WAYS;

    fn chosen(&self) -> usize {
        self.angle_held().unwrap_or_default() as usize
    }

    fn choose(&mut self, index: usize, _: &AngleHeld) {
        if let Some(wanted) = [AngleHeld::ByLeg, AngleHeld::ByBack].get(index) {
            self.hold_angle(*wanted);
        }
    }
}
