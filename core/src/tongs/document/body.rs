use serde::{Deserialize, Serialize};

use crate::asked::{Follows, Hole, Range, Visitor, simple_choice};
use crate::units::Length;

/// Between boss and jaw.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Neck {
    /// Depth in the side view where the neck leaves the boss.
    pub depth: Length,
    /// Radius of the inside corners against the boss.
    pub fillet: Length,
}

/// The outline of the boss in the side view.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum BossShape {
    /// A disc.
    #[default]
    Round,
    /// A disc drawn out along the tongs (or across them).
    Oval,
    /// A diamond with well-rounded corners.
    Lozenge,
}

simple_choice!(BossShape { Round => "round", Oval => "oval", Lozenge => "lozenge" });

/// The plate around the rivet.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Boss {
    /// Outline in the side view.
    #[serde(default)]
    pub shape: BossShape,
    /// Across the tongs: the diameter of a round boss.
    pub across: Length,
    /// Along the tongs; a round boss does not use it.
    pub along: Length,
    /// Thickness of one boss.
    pub thickness: Length,
}

/// Between boss and rein.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Shoulder {
    /// From the edge of the boss to the start of the rein, along the tongs.
    pub length: Length,
    /// Depth in the side view where the shoulder leaves the boss.
    pub depth: Length,
    /// Radius of the inside corners against the boss.
    pub fillet: Length,
}

/// The rivet's heads.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum HeadKind {
    /// A high round head.
    #[default]
    Button,
    /// A lower round head.
    Snap,
    /// A flat disc.
    Flat,
    /// Sunk into the boss.
    Countersunk,
}

simple_choice!(HeadKind {
    Button => "button",
    Snap => "snap",
    Flat => "flat",
    Countersunk => "countersunk",
});

/// The pin that joins the halves.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rivet {
    /// Shank diameter.
    pub diameter: Length,
    /// Diameter of the finished hole.
    pub hole: Length,
    /// How the hole is made.
    #[serde(default)]
    pub made: Hole,
    /// Both heads.
    #[serde(default)]
    pub head: HeadKind,
}

impl Neck {
    pub(super) fn fields(&mut self, v: &mut Visitor<'_>) {
        let steel = (Range::STEEL, Follows::Bar);
        v.length(
            "depth",
            "Depth",
            "In the side view, where it leaves the boss",
            steel,
            &mut self.depth,
        );
        let detail = (Range::DETAIL, Follows::Bar);
        v.length(
            "fillet",
            "Corner radius",
            "Of the inside corners at the boss",
            detail,
            &mut self.fillet,
        );
    }
}

impl Boss {
    pub(super) fn fields(&mut self, v: &mut Visitor<'_>) {
        let steel = (Range::STEEL, Follows::Bar);
        v.choice("shape", "Outline", "In the side view", &mut self.shape);
        let across = if self.shape == BossShape::Round {
            "Diameter"
        } else {
            "Across"
        };
        v.length(
            "across",
            across,
            "Across the tongs, in the side view",
            steel,
            &mut self.across,
        );
        if self.shape != BossShape::Round {
            v.length(
                "along",
                "Along",
                "Along the tongs, in the side view",
                steel,
                &mut self.along,
            );
        }
        v.length(
            "thickness",
            "Thickness",
            "Of one boss; half the bar needs no joggle",
            steel,
            &mut self.thickness,
        );
    }
}

impl Shoulder {
    pub(super) fn fields(&mut self, v: &mut Visitor<'_>) {
        let run = (Range::RUN, Follows::Bar);
        v.length(
            "length",
            "Length",
            "From the edge of the boss to the rein",
            run,
            &mut self.length,
        );
        let steel = (Range::STEEL, Follows::Bar);
        v.length(
            "depth",
            "Depth",
            "In the side view, where it leaves the boss",
            steel,
            &mut self.depth,
        );
        let detail = (Range::DETAIL, Follows::Bar);
        v.length(
            "fillet",
            "Corner radius",
            "Of the inside corners at the boss",
            detail,
            &mut self.fillet,
        );
    }
}

impl Rivet {
    pub(super) fn fields(&mut self, v: &mut Visitor<'_>) {
        let steel = (Range::STEEL, Follows::Bar);
        v.length(
            "diameter",
            "Diameter",
            "Of the shank",
            steel,
            &mut self.diameter,
        );
        v.length(
            "hole",
            "Hole",
            "Finished diameter of the hole",
            steel,
            &mut self.hole,
        );
        v.choice(
            "made",
            "Hole made",
            "Decides what the hole takes from the bar",
            &mut self.made,
        );
        v.choice("head", "Heads", "Shape of both heads", &mut self.head);
    }
}
