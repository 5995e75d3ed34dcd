use serde::{Deserialize, Serialize};

use crate::asked::range::{DETAIL, RUN, STEEL};
use crate::asked::{Hole, fields, simple_choice};
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

fields! { Neck: |Self { depth, fillet }, v| {
    v.value("depth", depth, STEEL).says("Depth", "In the side view, where it leaves the boss");
    v.value("fillet", fillet, DETAIL).says("Corner radius", "Of the inside corners at the boss");
}}

fields! { Boss: |Self { shape, across, along, thickness }, v| {
    v.choice("shape", shape).says("Outline", "In the side view");
    let round = *shape == BossShape::Round;
    let label = if round { "Diameter" } else { "Across" };
    v.value("across", across, STEEL).says(label, "Across the tongs, in the side view");
    if !round {
        v.value("along", along, STEEL).says("Along", "Along the tongs, in the side view");
    }
    v.value("thickness", thickness, STEEL)
        .says("Thickness", "Of one boss; half the bar needs no joggle");
}}

fields! { Shoulder: |Self { length, depth, fillet }, v| {
    v.value("length", length, RUN).says("Length", "From the edge of the boss to the rein");
    v.value("depth", depth, STEEL).says("Depth", "In the side view, where it leaves the boss");
    v.value("fillet", fillet, DETAIL).says("Corner radius", "Of the inside corners at the boss");
}}

fields! { Rivet: |Self { diameter, hole, made, head }, v| {
    v.value("diameter", diameter, STEEL).says("Diameter", "Of the shank");
    v.value("hole", hole, STEEL).says("Hole", "Finished diameter of the hole");
    v.choice("made", made).says("Hole made", "Decides what the hole takes from the bar");
    v.choice("head", head).says("Heads", "Shape of both heads");
}}
