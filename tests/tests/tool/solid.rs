//! The steel of tools against closed forms and an independent solid.

use std::f64::consts::PI;

use reinwright_core::asked::Allowances;
use reinwright_core::finding::Part;
use reinwright_core::shape::{Opening, Piece, SlotEnd};
use reinwright_core::shop::ToolAnswers;
use reinwright_core::tool::{Model, Mount, Tool, ToolKind, resolve};
use reinwright_tests::mesh::Mesh;
use reinwright_tests::tools::{all, tool};
use reinwright_tests::{INCH, close, within};

fn volume(piece: &Piece, part: Part) -> f64 {
    let own = piece.stretches.iter().filter(|own| own.part == part);
    own.map(|own| own.mass.volume).sum()
}

#[track_caller]
fn set(tool: &mut Tool, path: &str, text: &str) {
    tool.set(path, text)
        .unwrap_or_else(|why| panic!("{path}: {why}"));
}

fn frustum(long: f64, a: f64, b: f64) -> f64 {
    long / 3.0 * (a + b + (a * b).sqrt())
}

/// The solids as parry3d weighs them, less what the openings take by their own closed forms.
#[test]
fn every_tool_weighs_what_its_mesh_does() {
    for (name, own) in all() {
        let model = resolve(&own);
        let mesh = Mesh::swept(&model.piece);
        assert!(mesh.is_closed(), "{name}");
        let measured = mesh.measured();
        let taken: f64 = model
            .piece
            .holes
            .iter()
            .map(|hole| out_of(&hole.opening))
            .sum();
        close(
            name,
            model.piece.mass().volume,
            measured.volume_mm3 - taken,
            2e-3,
        );
        if model.piece.holes.is_empty() {
            let mass = model.piece.mass();
            within(
                &format!("{name}: middle"),
                mass.x / mass.volume,
                measured.centre[0],
                0.05,
            );
        }
    }
}

/// A stadium by its two halves and the box between, a cap by the ball's two integrals.
fn out_of(opening: &Opening) -> f64 {
    match opening {
        Opening::Rivet { .. } => 0.0,
        Opening::Slot(slot) => {
            let r = slot.across_mm / 2.0;
            let (from, to) = slot.ends_mm();
            let steps = 200_000;
            let step = (to - from) / f64::from(steps);
            let wide = |x: f64| {
                if let SlotEnd::Vee(high) = slot.end {
                    return slot.across_mm * (x - from) / high;
                }
                let before = (slot.from_mm - x).max(0.0).min(r);
                let after = (x - slot.to_mm).max(0.0).min(r);
                2.0 * (r * r - before.max(after).powi(2)).max(0.0).sqrt()
            };
            let area: f64 = (0..steps)
                .map(|i| wide(from + (f64::from(i) + 0.5) * step) * step)
                .sum();
            area * slot.deep_mm
        }
        Opening::Cup(cup) => {
            let r = cup.radius_mm();
            let steps = 20_000;
            let step = cup.deep_mm / f64::from(steps);
            let slice = |i: i32| {
                let y = r - (f64::from(i) + 0.5) * step;
                PI * (r * r - y * y) * step
            };
            (0..steps).map(slice).sum()
        }
    }
}

/// A round punch is a frustum on a cylinder with a frustum for its struck end.
#[test]
fn a_round_punch_is_frusta_and_a_cylinder() {
    let own = tool(ToolKind::RoundPunch, "5/16 in", "3/4 in round");
    let (model, area) = (resolve(&own), |d: f64| PI / 4.0 * d * d);
    let taper = own
        .field("working.taper")
        .expect("it has a taper")
        .value
        .number()
        .expect("a size");
    let found = volume(&model.piece, Part::Working);
    close(
        "its taper",
        found,
        frustum(taper, area(5.0 / 16.0 * INCH), area(0.75 * INCH)),
        1e-9,
    );
    let Mount::Struck(struck) = own.shape.mount else {
        panic!("it is struck")
    };
    let long = struck.length.mm() - taper - struck.chamfer.mm();
    close(
        "its body",
        volume(&model.piece, Part::Body),
        long * area(0.75 * INCH),
        1e-9,
    );
    let face = frustum(
        struck.chamfer.mm(),
        area(0.75 * INCH),
        area(struck.face.mm()),
    );
    close(
        "its struck end",
        volume(&model.piece, Part::StruckEnd),
        face,
        1e-9,
    );
    within("its length", model.piece.length_mm(), 254.0, 1e-9);
}

/// Bar for the taper of a punch: the frustum over the bar's section, with nothing lost.
#[test]
fn a_tapered_punch_takes_the_frustum_of_bar() {
    let mut own = tool(ToolKind::RoundPunch, "10 mm", "20 mm round");
    own.allowances = Allowances::NONE;
    set(&mut own, "working.taper", "60 mm");
    let answers = ToolAnswers::to(&own);
    let part = answers.balance.pieces[0].parts[0];
    assert_eq!(part.part, Part::Working);
    // L/3 (1 + 1/2 + 1/4) = 7/12 L.
    close("taper", part.bar_length_mm, 35.0, 1e-9);
    let whole = answers.balance.bar_length_mm * answers.balance.bar_area_mm2;
    close(
        "volume in is volume out",
        whole,
        answers.model.piece.mass().volume,
        1e-12,
    );
}

/// A cone point: r² π h / 3.
#[test]
fn a_centre_punch_has_a_cone() {
    let mut own = tool(ToolKind::CentrePunch, "10 mm", "10 mm round");
    set(&mut own, "working.point", "60 deg");
    set(&mut own, "working.taper", "20 mm");
    // From 60° the height is r √3; behind it the taper is a cylinder here.
    let cone = PI * 25.0 * 5.0 * 3f64.sqrt() / 3.0;
    let found = volume(&resolve(&own).piece, Part::Working);
    close("point and taper", found, cone + PI * 25.0 * 20.0, 1e-9);
}

/// A wedge between two rectangles is a prismatoid: h/6 (A₁ + 4 Aₘ + A₂).
#[test]
fn a_cut_off_is_a_prismatoid() {
    let own = tool(ToolKind::CutOff, "7/8 in", "1 1/4 in square");
    let model = resolve(&own);
    let read = |path: &str| {
        own.field(path)
            .expect("a field")
            .value
            .number()
            .expect("a size")
    };
    let (edge, land, high) = (
        read("working.edge"),
        read("working.land"),
        read("working.high"),
    );
    let (long, thick) = (read("shank.block_long"), read("shank.block_thick"));
    let middle = (edge + long) / 2.0 * (land + thick) / 2.0;
    let wedge = high / 6.0 * (edge * land + 4.0 * middle + long * thick);
    close("wedge", volume(&model.piece, Part::Working), wedge, 1e-9);
}

/// A triangle out of a block: a V of 60° and 20 mm is 17.32 mm deep, and takes half of 20 by that.
#[test]
fn a_v_swage_lacks_a_prism() {
    let round = tool(ToolKind::BottomSwage, "25 mm", "40 mm square");
    let mut own = round.clone();
    for (path, text) in [
        ("working.shape", "V"),
        ("working.angle", "60 deg"),
        ("working.groove", "20 mm"),
        ("working.long", "30 mm"),
        ("working.high", "40 mm"),
        ("working.wide", "40 mm"),
    ] {
        set(&mut own, path, text);
    }
    let model = resolve(&own);
    let hole = &model.piece.holes[0];
    let deep = 10.0 * 3f64.sqrt();
    close("taken out", hole.volume_mm3, 10.0 * deep * 30.0, 1e-9);
    let Opening::Slot(slot) = hole.opening else {
        panic!("{hole:?}");
    };
    within("middle", model.tip_mm - slot.middle_mm(), deep / 3.0, 1e-9);
    let text = reinwright_core::tool::write(&own);
    let again = reinwright_core::tool::read(text.as_bytes()).expect("it is a tool");
    assert_eq!(again, own);
    // What has no V is written as it always was.
    assert!(!reinwright_core::tool::write(&round).contains("shape: Round"));
}

/// Half a cylinder out of a block: a bottom swage.
#[test]
fn a_swage_lacks_half_a_cylinder() {
    let own = tool(ToolKind::BottomSwage, "25 mm", "40 mm square");
    let model = resolve(&own);
    let read = |path: &str| {
        own.field(path)
            .expect("a field")
            .value
            .number()
            .expect("a size")
    };
    let (groove, long) = (read("working.groove"), read("working.long"));
    let half = PI / 8.0 * groove * groove * long;
    close("groove", model.piece.holes[0].volume_mm3, half, 1e-9);
}

/// A nose is half a cylinder: a bottom fuller.
#[test]
fn a_fuller_has_half_a_cylinder_for_a_nose() {
    let own = tool(ToolKind::BottomFuller, "1 in", "1 1/2 in square");
    let model: Model = resolve(&own);
    let nose = model.runs[0][0];
    let first = model.piece.stretches[0].clone();
    let read = |path: &str| {
        own.field(path)
            .expect("a field")
            .value
            .number()
            .expect("a size")
    };
    let (r, ridge) = (read("working.nose"), read("working.ridge"));
    within("as high as its radius", nose.length, r, 1e-9);
    let (block, high) = (
        read("shank.block_thick") * read("shank.block_long"),
        read("working.high"),
    );
    let middle =
        (2.0 * r + read("shank.block_thick")) / 2.0 * (ridge + read("shank.block_long")) / 2.0;
    let under = high / 6.0 * (2.0 * r * ridge + 4.0 * middle + block);
    close(
        "nose",
        first.mass.volume - under,
        PI / 2.0 * r * r * ridge,
        1e-6,
    );
}

/// A drift's taper by its lengths: from half of 20 mm to all of it over 100 mm, 1 in 10.
#[test]
fn a_drifts_taper_is_what_its_lengths_say() {
    let own = tool(ToolKind::Drift, "20 mm", "20 mm round");
    let model = resolve(&own);
    let lead = model.runs[0][0];
    within("growth", lead.to.depth - lead.from.depth, 10.0, 1e-9);
    within(
        "one in ten",
        lead.length / (lead.to.depth - lead.from.depth),
        10.0,
        1e-9,
    );
    // It grows all the way to full size and never again.
    let sizes: Vec<f64> = model
        .runs
        .iter()
        .flatten()
        .flat_map(|run| [run.from.depth, run.to.depth])
        .collect();
    let full = sizes.iter().copied().fold(0.0, f64::max);
    within("full size", full, 20.0, 1e-9);
    let at = sizes.iter().position(|d| *d == full).expect("it is there");
    assert!(
        sizes[..=at].is_sorted() && sizes[at..].iter().rev().is_sorted(),
        "{sizes:?}"
    );
}
