//! How tools are made: what holds of every stage, and that no style is made as another is.

use reinwright_core::asked::Units;
use reinwright_core::finding::{Kind, Part};
use reinwright_core::heats::{How, Prepared, Sources, heat_plan};
use reinwright_core::making::{Plan, Procedure, Step, plan_tool, suits_tool, usual_for_tool};
use reinwright_core::shape::Piece;
use reinwright_core::shop::ToolAnswers;
use reinwright_core::shop::cut::order_of_tool;
use reinwright_core::steel::Steel;
use reinwright_core::tool::Tool;
use reinwright_core::tool::forging::Forging;
use reinwright_core::units::MM_PER_INCH;
use reinwright_tests::mesh::Mesh;
use reinwright_tests::tools::all;
use reinwright_tests::{close, sentence, within};

fn planned(own: &Tool) -> Plan {
    let answers = ToolAnswers::to(own);
    plan_tool(own, &answers.model, &answers.balance, usual_for_tool(own))
}

/// The same on the bar that it is held by.
fn on_bar(own: &Tool) -> Tool {
    let mut own = own.clone();
    own.tail = "10 in".parse().expect("a size");
    own
}

fn volume(piece: &Piece) -> f64 {
    piece.mass().volume
}

/// What goes in comes out: bar, stage after stage, tool.
#[test]
fn a_stage_has_the_volume_of_the_one_before_less_what_is_named() {
    for (name, own) in all() {
        for own in [own.clone(), on_bar(&own)] {
            let answers = ToolAnswers::to(&own);
            let plan = plan_tool(&own, &answers.model, &answers.balance, usual_for_tool(&own));
            let bar = answers.balance.bar_length_mm * answers.balance.bar_area_mm2;
            close(
                &format!("{name}: bar"),
                volume(&plan.stages[0].piece),
                bar,
                1e-9,
            );
            for pair in plan.stages.windows(2) {
                let done = pair[1].operation.as_ref().expect("something was done");
                let what = format!("{name}: {}", done.step);
                close(
                    &what,
                    volume(&pair[1].piece),
                    volume(&pair[0].piece) - done.lost_mm3(),
                    1e-9,
                );
                close(&what, done.after.volume_mm3, volume(&pair[1].piece), 1e-9);
            }
            let last = plan.stages.last().expect("there are stages");
            assert_eq!(
                last.piece.stretches, answers.model.piece.stretches,
                "{name}"
            );
            assert_eq!(last.piece.holes, answers.model.piece.holes, "{name}");
        }
    }
}

/// Each stage is a solid that parry3d weighs alike, what is sunk into it taken out.
#[test]
fn every_stage_weighs_what_its_mesh_does() {
    for (name, own) in all() {
        for stage in planned(&own).stages {
            let mut mesh = Mesh::default();
            let mut last = None;
            for stretch in &stage.piece.stretches {
                if let reinwright_core::shape::Solid::Swept(sweep) = &stretch.solid {
                    let own = std::sync::Arc::as_ptr(sweep);
                    if last.replace(own) != Some(own) {
                        mesh.add_sweep(sweep);
                    }
                }
            }
            let holes: f64 = stage.piece.holes.iter().map(|hole| hole.volume_mm3).sum();
            close(
                name,
                volume(&stage.piece),
                mesh.measured().volume_mm3 - holes,
                2e-3,
            );
        }
    }
}

/// No style is a renamed other one: its shape, its checks and its stages differ from all others.
#[test]
fn no_style_is_made_as_another() {
    let tools = all();
    let told: Vec<String> = tools
        .iter()
        .map(|(_, own)| {
            let plan = planned(own);
            let steps: Vec<String> = plan.operations().map(|own| own.what.clone()).collect();
            steps.join("; ")
        })
        .collect();
    for (at, own) in told.iter().enumerate() {
        assert!(!told[..at].contains(own), "{}: {own}", tools[at].0);
    }
    let forged: Vec<Vec<Forging>> = tools.iter().map(|own| forged(&own.1)).collect();
    for (at, own) in forged.iter().enumerate() {
        let like = forged[..at].iter().position(|other| other == own);
        assert_eq!(like, None, "{}: {own:?}", tools[at].0);
    }
}

/// What the style itself asks for, and how it is dressed.
fn forged(own: &Tool) -> Vec<Forging> {
    let all = own.shape.style.forged().into_iter().map(|own| own.step);
    all.chain([own.style_kind().dressed()]).collect()
}

/// A hot edge is left to cool, unknown and mild steel too, and nobody is told a hardening heat.
#[test]
fn what_must_not_be_hardened_is_not() {
    let last = |own: &Tool| {
        let plan = planned(own);
        plan.operations().last().map(|own| own.step)
    };
    for (name, mut own) in all() {
        let edge = matches!(name, "hot chisel" | "cut-off hardy");
        let step = if edge {
            Forging::CoolSlowly
        } else {
            Forging::Harden
        };
        assert_eq!(last(&own), Some(Step::Tool(step)), "{name}");
        for steel in [Steel::Unknown, Steel::Mild] {
            own.bar.steel = steel;
            assert_eq!(last(&own), Some(Step::Tool(Forging::CoolSlowly)), "{name}");
        }
    }
}

/// A tool is forged on the bar only where there is bar to hold it by.
#[test]
fn a_procedure_that_does_not_suit_says_why() {
    let own = &all()[0].1;
    let answers = ToolAnswers::to(own);
    assert_eq!(usual_for_tool(own), Procedure::ToolCutFirst);
    let held = on_bar(own);
    assert_eq!(usual_for_tool(&held), Procedure::ToolOnBar);
    for suits in suits_tool(own).into_iter().chain(suits_tool(&held)) {
        if let Some(why) = suits.why_not {
            sentence(&why);
        }
    }
    for procedure in [Procedure::ToolOnBar, Procedure::ThreeShoulders] {
        let plan = plan_tool(own, &answers.model, &answers.balance, procedure);
        assert_eq!(plan.findings[0].kind, Kind::ProcedureUnsuited);
    }
}

/// The heats of a tool's plan are those of one piece, and its cold operations want none.
#[test]
fn a_tools_plan_has_heats() {
    let shop = Sources::default();
    for (name, own) in all() {
        let plan = planned(&own);
        let prepared = Prepared::new(own.bar.steel, &plan, &shop);
        assert_eq!(prepared.halves, 1, "{name}");
        let heats = heat_plan(&prepared);
        assert!(
            heats.totals.heats > 0 && heats.totals.unserved == 0,
            "{name}: {:?}",
            heats.totals
        );
        for (operation, heated) in plan.operations().zip(&heats.operations) {
            let cold = operation.needs_hot_mm.is_none();
            assert_eq!(heated.how == How::Cold, cold, "{name}: {}", operation.step);
        }
    }
}

/// A tool is cut to one length, whoever says it: a piece alone has no middle that is to lie on the rule.
#[test]
fn the_cut_list_and_the_balance_cut_a_tool_alike() {
    for (name, own) in all() {
        let balance = ToolAnswers::to(&own).balance;
        let listed = order_of_tool(&own, &balance, 1).pieces[0].length_mm;
        within(name, listed, balance.cut_length(own.units).mm(), 1e-9);
    }
}

/// Tongs close on an inch of cold steel at the least (common practice, no source); where less stays
/// cold, the smith is told.
#[test]
fn tongs_on_hot_steel_are_told() {
    let mut told = [0, 0];
    for (name, own) in all() {
        for pair in planned(&own).stages.windows(2) {
            let done = pair[1].operation.as_ref().expect("something was done");
            let Some((from, to)) = done.hot_mm else {
                continue;
            };
            let cold = from.max(pair[0].piece.length_mm() - to);
            let words = done.held_words(own.units.show());
            let is_hot = words.contains("on hot steel");
            assert_eq!(is_hot, cold < MM_PER_INCH, "{name}: {}: {words}", done.step);
            told[usize::from(is_hot)] += 1;
        }
    }
    assert!(told[0] > 0 && told[1] > 0, "both are met: {told:?}");
}

/// What becomes of a length is said as a smith says it, in rough sizes: an eighth of an inch, a millimetre.
#[test]
fn a_length_stays_comes_or_grows() {
    let (_, own) = all().into_iter().next().expect("a tool");
    let plan = planned(&own);
    let some = plan.operations().next().expect("an operation");
    let words = |unit: Units, [before, after]: [f64; 2]| {
        let mut own = some.clone();
        own.part = Part::StruckEnd;
        own.parts.clear();
        own.before.part_length_mm = before;
        own.after.part_length_mm = after;
        own.lengths(unit.show())
    };
    let table = [
        (
            Units::Inch,
            [0.0, 3.0],
            "the struck end: drawn to 1/8 in long",
        ),
        (
            Units::Inch,
            [1.0, 3.0],
            "the struck end: drawn to 1/8 in long",
        ),
        (Units::Inch, [25.4, 25.0], "the struck end stays 1 in long"),
        (
            Units::Inch,
            [25.4, 38.1],
            "the struck end: 1 in long, then 1 1/2 in",
        ),
        (
            Units::Millimetre,
            [0.4, 2.6],
            "the struck end: drawn to 3 mm long",
        ),
        (
            Units::Millimetre,
            [40.2, 39.9],
            "the struck end stays 40 mm long",
        ),
        (
            Units::Millimetre,
            [40.0, 53.0],
            "the struck end: 40 mm long, then 53 mm",
        ),
    ];
    for (unit, lengths, expected) in table {
        assert_eq!(words(unit, lengths), expected);
    }
}
