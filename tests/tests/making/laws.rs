//! No steel is lost but what is named, at any stage of any procedure, and what is drawn is what is
//! weighed.

use proptest::prelude::*;
use reinwright_core::making::{Procedure, Stage};
use reinwright_core::shape::{Piece, Solid};
use reinwright_core::shop::balance_of;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::resolve;
use reinwright_tests::designs::{samples, varied};
use reinwright_tests::mesh::Mesh;
use reinwright_tests::{close, pairs, within};

use super::planned;

/// mm³ by rounding, of bars of up to some litres.
const ROUNDING: f64 = 1e-8;

/// The volume of its sweeps, integrated anew; `None` with a plate, which has its own checks.
fn swept_mm3(piece: &Piece) -> Option<f64> {
    let mut sum = 0.0;
    for stretch in &piece.stretches {
        match &stretch.solid {
            Solid::Swept(sweep) => {
                let (a, b) = (stretch.from.min(stretch.to), stretch.from.max(stretch.to));
                sum += sweep.volume_between(a, b);
            }
            Solid::Plated(_) => return None,
        }
    }
    let holes: f64 = piece.holes.iter().map(|hole| hole.volume_mm3).sum();
    Some(sum - holes)
}

/// Everything that holds of every plan.
#[track_caller]
fn check(design: &Document, procedure: Procedure) {
    let model = resolve(design);
    let pieces = model.pieces();
    let plan = planned(design, procedure);
    let name = procedure.name();
    for half in 0..pieces.len() {
        let stages: Vec<&Stage> = plan.stages.iter().filter(|own| own.half == half).collect();
        for pair in stages.windows(2) {
            let own = pair[1].operation.as_ref().expect("it came from one");
            let what = format!("{name}, {}", own.step);
            let (before, after) = (&pair[0].piece, &pair[1].piece);
            let volume = before.mass().volume;
            close(&what, own.before.volume_mm3, volume, ROUNDING);
            let pieces = f64::from(own.after.pieces);
            close(
                &what,
                own.after.volume_mm3,
                pieces * after.mass().volume,
                ROUNDING,
            );
            close(
                &what,
                own.after.volume_mm3 + own.lost_mm3(),
                volume,
                ROUNDING,
            );
            assert!(own.lost.iter().all(|lost| lost.volume_mm3 > 0.0), "{what}");
            assert!(before != after, "{what} does nothing");
            assert!(after.length_mm().is_finite(), "{what}");
            if let Some(swept) = swept_mm3(after) {
                close(&what, swept, after.mass().volume, 1e-6);
            }
        }
        let last = &stages[stages.len() - 1].piece;
        let finished = &pieces[half];
        close(name, last.mass().volume, finished.mass().volume, ROUNDING);
        within(name, last.length_mm(), finished.length_mm(), 1e-6);
        for (own, wanted) in last.stretches.iter().zip(&finished.stretches) {
            assert_eq!(own.part, wanted.part, "{name}");
            close(name, own.mass.volume, wanted.mass.volume, ROUNDING);
        }
    }
}

#[test]
fn every_procedure_of_every_pair_keeps_its_steel() {
    for (_, design) in pairs::all() {
        for procedure in Procedure::ALL {
            check(&design, procedure);
        }
    }
}

#[test]
fn every_procedure_of_every_sample_keeps_its_steel() {
    for (_, design) in samples() {
        for procedure in Procedure::ALL {
            check(&design, procedure);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(8))]
    #[test]
    fn random_designs_keep_their_steel(dice in prop::collection::vec(any::<u32>(), 64)) {
        let design = varied(&pairs::flat(), &dice, 0.2);
        for procedure in Procedure::ALL {
            check(&design, procedure);
        }
    }
}

/// The bar that the first stage shows is the bar of the balance, where all steel comes out of it.
#[test]
fn the_first_stage_is_the_bar_of_the_balance() {
    for (name, design) in samples() {
        let model = resolve(&design);
        let balance = balance_of(&design, &model);
        let plan = planned(&design, Procedure::ThreeShoulders);
        let first = plan.stages.iter().filter(|own| own.operation.is_none());
        let bar: f64 = first.map(|own| own.piece.mass().volume).sum();
        let all = bar * f64::from(plan.repeats);
        let crop = design.allowances.crop.mm() * f64::from(plan.repeats - 1);
        let whole = (balance.bar_length_mm + crop) * balance.bar_area_mm2;
        close(&name, all, whole, ROUNDING);
    }
}

/// Stages as closed meshes, measured by parry3d (an independent collision library).
#[test]
fn stages_are_the_volume_of_their_meshes() {
    for (name, design) in [("flat", pairs::flat()), ("V bit", pairs::v_bit())] {
        let body = resolve(&design).a.body;
        for procedure in [Procedure::ThreeShoulders, Procedure::WeldedRein] {
            for stage in planned(&design, procedure).stages {
                let piece = &stage.piece;
                let mesh = Mesh::piece(piece, &body);
                assert!(mesh.is_closed(), "{name}, {}: the mesh is open", piece.name);
                let holes: f64 = piece.holes.iter().map(|hole| hole.volume_mm3).sum();
                let found = mesh.measured().volume_mm3 - holes;
                close(
                    &format!("{name}, {}", piece.name),
                    piece.mass().volume,
                    found,
                    1e-3,
                );
            }
        }
    }
}
