//! Tools whose every value is thrown inside its limits: nothing panics, and what is said is a sentence.

use proptest::prelude::*;
use reinwright_core::asked::Value;
use reinwright_core::draw::{self, DrawOptions, tool_handles};
use reinwright_core::making::{Procedure, plan_tool};
use reinwright_core::shop::ToolAnswers;
use reinwright_core::tool::{self, Tool, check_limits};
use reinwright_tests::sentence;
use reinwright_tests::tools::all;

/// A tool with every choice and number thrown by the dice, inside its limits.
fn varied(base: &Tool, dice: &[u32], wild: f64) -> Tool {
    let mut own = base.clone();
    let mut at = 0;
    let mut throw = || {
        at += 1;
        dice[at % dice.len()]
    };
    own.revise(&mut |field| {
        let dice = throw();
        match field.value {
            Value::Choice { ways, .. } if field.path != "working.style" => Some(Value::Choice {
                ways,
                chosen: dice as usize % ways.len(),
            }),
            Value::Choice { .. } => None,
            value => {
                let part = f64::from(dice % 1000) / 999.0;
                let (least, most) = (field.range.least, field.range.most);
                let now = value.number()?;
                let near = now * (1.0 + wild * (2.0 * part - 1.0));
                let far = least + part * (most - least);
                let number = if dice % 5 == 0 { far } else { near };
                Some(value.with_number(number.clamp(least, most)))
            }
        }
    });
    own
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn whatever_is_asked_is_answered(
        at in 0_usize..12,
        dice in prop::collection::vec(any::<u32>(), 40),
        wild in 0.0..1.0_f64,
    ) {
        let own = varied(&all()[at].1, &dice, wild);
        prop_assert!(check_limits(&own).is_ok());
        prop_assert_eq!(tool::read(tool::write(&own).as_bytes()), Ok(own.clone()));
        let answers = ToolAnswers::to(&own);
        for finding in &answers.findings {
            sentence(&finding.message);
            sentence(&finding.hint);
        }
        prop_assert!(answers.model.piece.mass().volume.is_finite());
        prop_assert!(answers.model.piece.length_mm().is_finite());
        draw::tool(&own, &answers.model, &DrawOptions::default());
        tool_handles(&own, &answers.model);
        if answers.balance.trouble().is_some() {
            return Ok(());
        }
        for procedure in Procedure::OF_TOOLS {
            let plan = plan_tool(&own, &answers.model, &answers.balance, procedure);
            for at in 0..plan.stages.len() {
                let volume = plan.stages[at].piece.mass().volume;
                prop_assert!(volume.is_finite(), "{}", plan.stages[at].piece.name);
                draw::stage(&answers.model, &plan, at, own.units.show());
            }
        }
    }
}
