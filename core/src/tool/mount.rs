//! What a working end stands on: bar that is struck, or a block with a shank for the hardy hole.

use serde::{Deserialize, Serialize};

use crate::asked::range::{DETAIL, REIN, RUN, STEEL, STRETCH};
use crate::asked::{Bar, Choice, Follows, PlainSection, Stock, fields};
use crate::units::Length;

/// How a struck tool is held.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Hold {
    /// In the bare hand.
    Hand,
    /// In a rod that is wound around it, or in tongs.
    Rod {
        /// From the tool to the hand.
        reach: Length,
    },
    /// By a handle through a punched eye.
    Eye {
        /// Along the tool.
        along: Length,
        /// Across it.
        across: Length,
        /// From the struck face to the middle of the eye.
        from_face: Length,
        /// Steel on either side of the eye.
        cheek: Length,
    },
}

/// A tool that a hammer strikes.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Struck {
    /// From the struck face to the end that works.
    pub length: Length,
    /// The section between both ends.
    pub body: PlainSection,
    /// Across the struck face.
    pub face: Length,
    /// Over how much of the length the body is drawn in to the struck face.
    pub chamfer: Length,
    /// How it is held.
    pub hold: Hold,
}

/// A tool that stands in the hardy hole of the anvil.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Hardy {
    /// The smith's own hole, across flats.
    pub hole: Length,
    /// To how much the edge of the hole is broken.
    pub hole_edge: Length,
    /// How much smaller the shank is than the hole, under the shoulder.
    pub play: Length,
    /// Length of the shank.
    pub shank: Length,
    /// How much smaller the shank is at its end than under the shoulder.
    pub taper: Length,
    /// Radius of the corner between shank and shoulder.
    pub corner: Length,
    /// The block over the shoulder: along the edge.
    pub block_long: Length,
    /// Across the edge.
    pub block_thick: Length,
    /// Height of the block, up to where the working end begins.
    pub block_high: Length,
}

/// What the working end stands on.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Mount {
    /// Bar that is struck.
    Struck(Struck),
    /// A block with a shank.
    Hardy(Hardy),
}

fields! { Struck: |Self { length, body, face, chamfer, hold }, v| {
    let grows = v.follows();
    v.value("length", length, REIN).grows(hold.grows(grows)).says("Length", "Of the whole tool");
    v.within("body", grows, body);
    v.value("face", face, STEEL).says("Struck face", "Across the face that is struck");
    v.value("chamfer", chamfer, DETAIL)
        .says("Chamfer length", "Over which the body is drawn in to the struck face");
    v.within("hold", Follows::Nothing, hold);
}}

fields! { Hold: |it, v| {
    v.choice("held", it).says("Held", "How the tool is held while it is struck");
    match it {
        Self::Hand => {}
        Self::Rod { reach } => {
            v.value("reach", reach, STRETCH).says("Reach", "From the tool to the hand");
        }
        Self::Eye { along, across, from_face, cheek } => {
            v.value("along", along, STEEL).says("Eye length", "Along the tool");
            v.value("across", across, STEEL).says("Eye width", "Across the tool");
            v.value("from_face", from_face, RUN)
                .says("Eye place", "From the struck face to the middle of the eye");
            v.value("cheek", cheek, STEEL).says("Cheek", "Steel on either side of the eye");
        }
    }
}}

fields! { Hardy: |it, v| {
    let Self { hole, hole_edge, play, shank, taper, corner, .. } = it;
    v.value("hole", hole, STEEL).says("Hardy hole", "Across the flats of your own hole: measure it");
    v.value("hole_edge", hole_edge, DETAIL)
        .grows(Follows::Nothing)
        .says("Edge of the hole", "To which it is broken");
    v.value("play", play, DETAIL)
        .grows(Follows::Nothing)
        .says("Play", "How much smaller the shank is than the hole");
    v.value("shank", shank, RUN).says("Shank length", "From the shoulder down");
    v.value("taper", taper, DETAIL)
        .grows(Follows::Nothing)
        .says("Shank taper", "How much smaller it is at its end");
    v.value("corner", corner, DETAIL)
        .grows(Follows::Nothing)
        .says("Shank corner", "Radius between shank and shoulder");
    let Self { block_long, block_thick, block_high, .. } = it;
    // A block is what the bar gives.
    v.value("block_long", block_long, STEEL)
        .grows(Follows::Bar)
        .says("Block length", "Along the edge, over the shoulder");
    v.value("block_thick", block_thick, STEEL)
        .grows(Follows::Bar)
        .says("Block thickness", "Across the edge");
    v.value("block_high", block_high, RUN)
        .grows(Follows::Bar)
        .says("Block height", "From the shoulder to where the working end begins");
}}

fields! { Mount: |it, v| {
    match it {
        Self::Struck(struck) => v.all(struck),
        Self::Hardy(hardy) => v.all(hardy),
    }
}}

impl Choice for Hold {
    const WAYS: &'static [&'static str] = &["in the hand", "on a rod", "by a handle"];

    fn chosen(&self) -> usize {
        match self {
            Self::Hand => 0,
            Self::Rod { .. } => 1,
            Self::Eye { .. } => 2,
        }
    }

    fn choose(&mut self, index: usize) {
        if index == self.chosen() {
            return;
        }
        *self = match index {
            0 => Self::Hand,
            1 => Self::rod(),
            2 => Self::eye(),
            _ => *self,
        };
    }
}

/// Reach of a rod, mm: 12 in (common practice, no source).
const ROD_MM: f64 = 304.8;

impl Hold {
    /// What the length of a tool so held grows with: bar in the bare hand is as long as the hand
    /// wants it.
    fn grows(&self, body: Follows) -> Follows {
        match (self, body) {
            (Self::Hand, Follows::Bar) => Follows::Nothing,
            (Self::Hand | Self::Rod { .. } | Self::Eye { .. }, other) => other,
        }
    }

    /// The same in lengths that are measured in a unit.
    fn measured_in(self, unit: crate::units::Unit) -> Self {
        let measured = |own: Length| Length::measured(own.mm(), unit);
        match self {
            Self::Hand => Self::Hand,
            Self::Rod { reach } => Self::Rod {
                reach: measured(reach),
            },
            Self::Eye {
                along,
                across,
                from_face,
                cheek,
            } => Self::Eye {
                along: measured(along),
                across: measured(across),
                from_face: measured(from_face),
                cheek: measured(cheek),
            },
        }
    }

    /// A rod as smiths wind it.
    pub fn rod() -> Self {
        Self::Rod {
            reach: inches(ROD_MM),
        }
    }

    /// An eye for a light handle: 1 in by 5/8 in, 1 1/2 in from the face (common practice, no source).
    pub fn eye() -> Self {
        Self::Eye {
            along: inches(25.4),
            across: inches(15.875),
            from_face: inches(44.45),
            cheek: inches(7.9375),
        }
    }
}

fn inches(mm: f64) -> Length {
    Length::measured(mm, crate::units::Unit::Inch)
}

impl Struck {
    /// Bar of its own section, drawn in to four fifths of it at the struck face.
    pub fn suited(length_mm: f64, bar: &Bar, hold: Hold) -> Self {
        let (size, unit) = (bar.stock.size(), bar.stock.size().unit());
        let body = match bar.stock {
            Stock::Round { diameter } => PlainSection::Round { diameter },
            Stock::Square { side } => PlainSection::Square {
                side,
                edge: crate::asked::Edge::Chamfer(Length::measured(0.1 * side.mm(), unit)),
            },
            Stock::Flat { thickness, width } => PlainSection::Rectangle {
                depth: width,
                width: thickness,
                edge: crate::asked::Edge::Sharp,
            },
        };
        Self {
            length: Length::measured(length_mm, unit),
            body,
            face: Length::measured(0.75 * size.mm(), unit),
            chamfer: Length::measured(0.5 * size.mm(), unit),
            hold: hold.measured_in(unit),
        }
    }
}

impl Struck {
    /// The same with another body, drawn in to its struck face as much.
    #[must_use]
    pub fn of(self, body: PlainSection) -> Self {
        let (size, unit) = (body.depth_mm(), self.length.unit());
        Self {
            body,
            face: Length::measured(0.7 * size, unit),
            chamfer: Length::measured(0.5 * size, unit),
            ..self
        }
    }
}

impl Hardy {
    /// A shank for a hole, and a block that the bar gives without more upsetting than its shoulder.
    pub fn suited(hole: Length, bar: &Bar) -> Self {
        let unit = hole.unit();
        let size = |mm: f64| Length::measured(mm, unit);
        let (side, wide) = (bar.stock.size().mm(), bar.stock.wide_mm());
        let least = hole.mm() + 2.0 * super::check::LEAST_SHOULDER_MM + 1.0;
        Self {
            hole,
            hole_edge: size(1.5875),
            play: size(0.8),
            shank: size(1.6 * hole.mm()),
            taper: size(1.5875),
            corner: size(1.5875),
            block_long: size(wide.max(least)),
            block_thick: size(side.max(least)),
            block_high: size(0.6 * hole.mm()),
        }
    }

    /// The shank under the shoulder, mm across flats.
    pub fn top_mm(&self) -> f64 {
        self.hole.mm() - self.play.mm()
    }

    /// The shank at its end, mm across flats.
    pub fn end_mm(&self) -> f64 {
        (self.top_mm() - self.taper.mm()).max(0.0)
    }
}
