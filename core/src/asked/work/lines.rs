//! The values of work, a line each.

use super::{AngleHeld, BoltHeld, FlatOf, HexagonOf, RoundOf, SquareOf, Work};
use crate::asked::range::{DETAIL, STEEL};
use crate::asked::walk::fields;

fields! { Work: |it, v| {
    v.choice("shape", it).says("Shape", "What is held: bar of a section, or a piece by its name");
    if it.is_bolt() {
        v.choice_beside("held", it, &BoltHeld::default())
            .says("Held", "By its head, behind its head with the head between the jaws, or by its shank");
    }
    if it.is_angle() {
        v.choice_beside("held", it, &AngleHeld::default())
            .says("Held", "By a leg that lies flat in the jaws, or by its back in a groove");
    }
    match it {
        Self::Flat { thickness, width, of: FlatOf::Bar } => {
            v.value("thickness", thickness, STEEL).says("Thickness", "Between the jaws");
            v.value("width", width, STEEL).says("Width", "Across the jaws");
        }
        Self::Flat { thickness, width, of: FlatOf::AngleLeg { other } } => {
            v.value("thickness", thickness, STEEL).says("Thickness", "Of the leg between the jaws");
            v.value("width", width, STEEL).says("Held leg", "Over its outside");
            v.value("other", other, STEEL).says("Other leg", "Over its outside, beside the jaws");
        }
        Self::Round { diameter, of } => {
            match of {
                RoundOf::Bar => {
                    v.value("diameter", diameter, STEEL).says("Diameter", "Of the round bar");
                }
                RoundOf::Pipe { wall } => {
                    v.value("diameter", diameter, STEEL).says("Outside", "Diameter over all");
                    v.value("wall", wall, STEEL).says("Wall", "Of the pipe");
                }
                RoundOf::Rebar { ribs } => {
                    v.value("diameter", diameter, STEEL)
                        .says("Diameter", "Of plain bar of the same weight");
                    v.value("ribs", ribs, DETAIL).says("Ribs", "How far they stand out");
                }
                RoundOf::BoltShank { flats, height, .. } => {
                    v.value("diameter", diameter, STEEL).says("Shank", "Diameter of the shank");
                    v.value("flats", flats, STEEL).says("Across flats", "Of the bolt's head");
                    v.value("height", height, STEEL).says("Head height", "Along the bolt");
                }
            }
        }
        Self::Square { side, of: SquareOf::AngleBack { thickness }, .. } => {
            v.value("side", side, STEEL).says("Legs", "Each over its outside");
            v.value("thickness", thickness, STEEL).says("Thickness", "Of both legs");
        }
        Self::Square { side, lie, of: SquareOf::Bar } => {
            v.value("side", side, STEEL).says("Side", "Across flats");
            v.choice("lie", lie).says("Lies", "Which way the square is held");
        }
        Self::Hexagon { flats, lie, of } => {
            v.value("flats", flats, STEEL).says("Across flats", "Between two opposite flats");
            v.choice("lie", lie).says("Lies", "Which way it is held");
            match of {
                HexagonOf::Bar => {}
                HexagonOf::BoltHead { height, shank } => {
                    v.value("height", height, STEEL).says("Head height", "Along the bolt");
                    v.value("shank", shank, STEEL).says("Shank", "Diameter of the shank");
                }
                HexagonOf::Nut { height, hole } => {
                    v.value("height", height, STEEL).says("Height", "Of the nut");
                    v.value("hole", hole, STEEL).says("Hole", "Diameter of its thread");
                }
            }
        }
        Self::Octagon { flats, lie } => {
            v.value("flats", flats, STEEL).says("Across flats", "Between two opposite flats");
            v.choice("lie", lie).says("Lies", "Which way the bar is held");
        }
    }
}}
