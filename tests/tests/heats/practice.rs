//! Against what smiths do: rules of thumb, and the coils that an experienced one would take.

use reinwright_core::finding::{Kind, Severity};
use reinwright_core::heats::clock::{Clock, HeatTable, Surroundings};
use reinwright_core::heats::{
    Back, Compared, Heated, How, Other, Prepared, Source, Sources, cautions, compare, heat_plan,
    noticed, plan_of, priced, scale_percent, with_scale_of,
};
use reinwright_core::making::{Procedure, Step};
use reinwright_core::resolve;
use reinwright_core::shop::balance_of;
use reinwright_core::steel::{Steel, caution};
use reinwright_core::tongs::document::Document;
use reinwright_core::units::Show;
use reinwright_tests::designs::sample;
use reinwright_tests::pairs::{length, starting};
use reinwright_tests::{INCH, close, sentence, within};

use super::{coil, from, gas, heated, planned, shop, usual};

const WIDE: usize = 0;
const SHORT: usize = 1;
const LONG: usize = 2;
const GAS: usize = 3;

/// Three coils: 1 1/2 in bore and short, 1 in bore at 3/4 in and at 1 in from turn to turn; and a gas forge that is
/// put away unless it is asked for.
fn coils() -> Vec<Source> {
    vec![
        coil("wide", "1 1/2 in", (3.0, "3/4 in")),
        coil("tight short", "1 in", (5.0, "3/4 in")),
        coil("tight long", "1 in", (5.0, "1 in")),
    ]
}

fn with_gas() -> Sources {
    let mut all = coils();
    all.push(gas(Back::Open, "10 in"));
    shop(all)
}

/// Five turns at 3/4 in give about 4 in of heat, at 1 in about 6 in (common practice, no source).
#[test]
fn five_turns_give_the_heat_that_smiths_tell_of() {
    let all = coils();
    close("3/4 in", all[SHORT].hot_length_mm(), 4.0 * INCH, 0.1);
    close("1 in", all[LONG].hot_length_mm(), 6.0 * INCH, 0.1);
}

/// A 3/4 in bar takes nearly a minute cold and roughly half a minute warm, and gives half a minute of
/// working (common practice, no source).
#[test]
fn a_three_quarter_bar_heats_and_works_as_smiths_say() {
    let design = v_bit();
    let plan = planned(&design, Procedure::ThreeShoulders);
    let shop = shop(coils());
    let (prepared, _) = heated(&design, &plan, &shop);
    let row = prepared
        .rows
        .iter()
        .position(|row| row.step == Step::SetDownJaw)
        .expect("it is set down");
    let offer = prepared.offer(row, SHORT).expect("a bar goes in");
    let cold = offer.curve.heat_s(20.0, 1150.0);
    // Back at a dark red.
    let warm = offer.curve.heat_s(700.0, 1150.0);
    within("cold", cold, 55.0, 12.0);
    within("warm", warm, 30.0, 7.0);
    within("working", offer.working_s, 30.0, 4.0);
}

/// The light V-bit pair of 3/4 in round on which the advice is tried.
fn v_bit() -> Document {
    starting("v bit", "1/2 in square on corners", "3/4 in round")
}

/// The source of every operation that is heated, by its step.
fn chosen(
    design: &Document,
    plan: &reinwright_core::making::Plan,
    shop: &Sources,
) -> Vec<(Step, Option<usize>)> {
    let (_, heats) = heated(design, plan, shop);
    let hot = heats.operations.iter().filter(|own| own.how != How::Cold);
    hot.map(|own| (own.step, own.source)).collect()
}

/// Reins in the long tight coil, the head in the wide short one: drawn first, in the middle of the bar, the reins
/// go through the tight coil, and the coil is changed once for the heads.
#[test]
fn reins_go_into_the_long_tight_coil_and_the_head_into_the_wide_short_one() {
    let design = v_bit();
    let plan = planned(&design, Procedure::ReinsFirst);
    let shop = shop(coils());
    let all = chosen(&design, &plan, &shop);
    for (step, source) in &all {
        let wanted = match step {
            Step::DrawSquare | Step::DrawOctagon | Step::DrawRound => LONG,
            Step::ForgeBoss | Step::RoughJaw | Step::MakeHole | Step::ShapeJaw => WIDE,
            _ => continue,
        };
        assert_eq!(*source, Some(wanted), "{step}: {all:?}");
    }
    let (_, heats) = heated(&design, &plan, &shop);
    assert_eq!(heats.totals.changes, 1);
}

/// With the shoulders first the spread shoulder keeps the rein out of the tight coil until it is drawn, and the wide one
/// stays on: two changes save less than they cost.
#[test]
fn shoulders_first_keep_the_wide_coil_on() {
    let design = v_bit();
    let plan = planned(&design, Procedure::ThreeShoulders);
    let shop = shop(coils());
    let (prepared, heats) = heated(&design, &plan, &shop);
    assert!(heats.totals.changes <= 1, "{:?}", heats.totals);
    let drawn = prepared
        .rows
        .iter()
        .find(|row| row.step == Step::DrawSquare)
        .expect("it is drawn");
    assert!(drawn.offers[LONG].is_err());
    let rounded = prepared
        .rows
        .iter()
        .find(|row| row.step == Step::DrawRound)
        .expect("it is rounded");
    assert!(rounded.offers[LONG].is_ok());
}

/// No operation of a single heat stands alone in a source when its neighbours' source serves it as well.
#[test]
fn nobody_changes_a_coil_for_a_single_heat() {
    for procedure in [Procedure::ThreeShoulders, Procedure::JawFirst] {
        let design = v_bit();
        let plan = planned(&design, procedure);
        let shop = shop(coils());
        let (prepared, heats) = heated(&design, &plan, &shop);
        let hot: Vec<_> = heats
            .operations
            .iter()
            .filter(|own| own.how == How::Hot)
            .collect();
        for three in hot.windows(3) {
            let [before, own, after] = three else {
                continue;
            };
            let alone = before.source == after.source && own.source != before.source;
            let around = before
                .source
                .and_then(|source| prepared.offer(own.row, source));
            if own.heats_s.len() == 1 && alone {
                assert!(around.is_none(), "{}: {:?}", own.step, own.source);
            }
        }
    }
}

/// A light flat pair goes entirely into the tight coil: no coil is changed.
#[test]
fn a_light_flat_pair_stays_in_the_tight_coil() {
    let design = from(
        "3/8 in square",
        starting("flat", "1/8 in flat", "3/8 in square"),
    );
    let plan = usual(&design);
    let shop = shop(coils());
    let (_, heats) = heated(&design, &plan, &shop);
    assert_eq!(heats.totals.unserved, 0);
    assert_eq!(
        heats.totals.changes,
        0,
        "{:?}",
        chosen(&design, &plan, &shop)
    );
    for (step, source) in chosen(&design, &plan, &shop) {
        assert!(matches!(source, Some(SHORT | LONG)), "{step}: {source:?}");
    }
}

/// Where a machine is at hand nobody lights the gas forge for a pair that goes through its coils; a jaw wider than
/// every coil goes there.
#[test]
fn the_gas_forge_takes_what_no_coil_does() {
    let shop = with_gas();
    let narrow = v_bit();
    let plan = planned(&narrow, Procedure::ThreeShoulders);
    assert!(
        chosen(&narrow, &plan, &shop)
            .iter()
            .all(|(_, source)| *source != Some(GAS))
    );
    let wide = starting("v bit", "3/4 in round", "3/4 in round");
    let plan = planned(&wide, Procedure::ThreeShoulders);
    let all = chosen(&wide, &plan, &shop);
    let shaped = all
        .iter()
        .find(|(step, _)| *step == Step::ShapeJaw)
        .expect("it is shaped");
    assert_eq!(shaped.1, Some(GAS), "{all:?}");
}

/// A forge of the usual kind heats 3/4 in bar in 3 to 6 minutes from cold (common practice, no source; one smith
/// reports five).
#[test]
fn a_gas_forge_takes_some_minutes() {
    let design = v_bit();
    let plan = planned(&design, Procedure::ThreeShoulders);
    let shop = with_gas();
    let (prepared, _) = heated(&design, &plan, &shop);
    let row = prepared
        .rows
        .iter()
        .position(|row| row.step == Step::SetDownJaw)
        .expect("it is set down");
    let offer = prepared.offer(row, GAS).expect("it goes in");
    let minutes = offer.curve.heat_s(20.0, 1150.0) / 60.0;
    assert!((3.0..6.0).contains(&minutes), "{minutes}");
}

/// A skilled smith makes a pair in 16 to 25 heats, a learner in 35 to 60 and more (common practice, no source): this
/// plan finishes every rein four times over and lies at the learner's end.
#[test]
fn a_pair_takes_as_many_heats_as_smiths_count() {
    for (name, procedure) in [
        ("textbook-light-chain", Procedure::ThreeShoulders),
        ("light-flat", Procedure::ThreeShoulders),
    ] {
        let design = sample(name);
        let plan = planned(&design, procedure);
        let shop = shop(vec![gas(Back::Open, "10 in")]);
        let (_, heats) = heated(&design, &plan, &shop);
        assert_eq!(heats.totals.unserved, 0, "{name}");
        assert!(
            (16..=70).contains(&heats.totals.heats),
            "{name}: {}",
            heats.totals.heats
        );
    }
}

/// What is impossible is a Stop that names the operation and what would serve.
#[test]
fn an_operation_that_nothing_heats_is_a_stop() {
    let wide = starting("v bit", "3/4 in round", "3/4 in round");
    let plan = planned(&wide, Procedure::ThreeShoulders);
    let shop = shop(coils());
    let (prepared, heats) = heated(&wide, &plan, &shop);
    let found = noticed(&prepared, &heats, Show::default());
    let stops: Vec<_> = found
        .iter()
        .filter(|own| own.kind == Kind::NoHeatServes)
        .collect();
    assert_eq!(stops.len(), 1, "{found:?}");
    let stop = stops[0];
    assert_eq!(stop.severity, Severity::Stop);
    sentence(&stop.message);
    sentence(&stop.hint);
    assert!(stop.message.contains("shape the jaw"), "{stop}");
    assert!(stop.hint.contains("bore of 1 3/4 in"), "{stop}");
    let none = super::shop(Vec::new());
    let (prepared, heats) = heated(&wide, &plan, &none);
    let found = noticed(&prepared, &heats, Show::default());
    assert!(found.iter().all(|own| own.severity == Severity::Stop) && found.len() > 5);
    assert!(found[0].message.contains("no heat source"), "{}", found[0]);
}

/// The plan that was chosen is what its own times add up to, and no better than any other that was tried.
#[test]
fn the_plan_adds_up() {
    let design = v_bit();
    let plan = planned(&design, Procedure::ThreeShoulders);
    let shop = with_gas();
    let (prepared, heats) = heated(&design, &plan, &shop);
    let totals = heats.totals;
    let parts = totals.heating_s + totals.ready_s + totals.handling_s + totals.working_s;
    within("parts", parts, totals.time_s, 1e-6);
    let each: f64 = heats.operations.iter().map(|own| own.total_s).sum();
    within("operations", each, totals.time_s, 1e-6);
    let mut now = 0.0;
    for span in &heats.spans {
        within("one after the other", span.from_s, now, 1e-9);
        assert!(span.to_s > span.from_s);
        now = span.to_s;
    }
    for source in 0..shop.sources.len() {
        let all = vec![Some(source); heats.operations.len()];
        let other = plan_of(&prepared, &all);
        if other.totals.unserved == 0 && other.totals.burnt <= totals.burnt {
            assert!(other.totals.time_s >= totals.time_s - 1e-6, "{source}");
        }
    }
}

/// A thin lip beside a thick boss burns in a hot coal fire and not in a forge no hotter than its steel bears (common
/// practice, no source): the forge is lit for it, though it is slower. With the fire alone it is to be mended, beside
/// the operation too.
#[test]
fn a_fire_that_burns_loses_to_a_forge_that_does_not() {
    let design = starting("v bit", "1/2 in square on corners", "1 in round");
    let plan = planned(&design, Procedure::ThreeShoulders);
    let mut ready = reinwright_core::heats::ready();
    ready.retain(|own| ["coal fire", "gas forge"].contains(&own.name.as_str()));
    let coal = ready.iter().find(|own| own.name == "coal fire");
    let coal = shop(vec![coal.expect("it is ready").clone()]);
    let both = shop(ready);
    let (_, heats) = heated(&design, &plan, &both);
    assert_eq!(heats.totals.burnt, 0);
    let (prepared, alone) = heated(&design, &plan, &coal);
    assert!(alone.totals.burnt > 0 && alone.totals.time_s < heats.totals.time_s);
    let found = noticed(&prepared, &alone, Show::default());
    let burns = found.iter().filter(|own| own.kind == Kind::ThinPartBurns);
    let burns: Vec<_> = burns.collect();
    assert_eq!(burns.len(), alone.totals.burnt as usize);
    for own in burns {
        assert_eq!(own.severity, Severity::Mend, "{own}");
        assert!(own.hint.contains("blast"), "{own}");
    }
    for own in alone.operations.iter().filter(|own| own.burns.is_some()) {
        let words = own.words(&prepared).expect("it is hot");
        assert!(words.contains("burns before the rest is hot"), "{words}");
    }
}

/// Other choices are priced in sentences, and none is better.
#[test]
fn other_choices_cost_more() {
    let design = v_bit();
    let plan = planned(&design, Procedure::ThreeShoulders);
    let shop = with_gas();
    let (prepared, heats) = heated(&design, &plan, &shop);
    let all = priced(&prepared, &heats);
    assert!(
        all.iter()
            .any(|own| own.said.starts_with("with gas forge only: ") && own.said.contains(" more"))
    );
    let tight = all
        .iter()
        .find(|own| own.said.starts_with("with tight short only"))
        .expect("it is told");
    assert!(
        tight.longer_s.is_none() && !tight.unserved.is_empty(),
        "{}",
        tight.said
    );
    for own in &all {
        sentence(&own.said);
        assert!(
            own.longer_s
                .is_none_or(|longer| longer > -1e-6 || !own.burns.is_empty()),
            "{}",
            own.said
        );
    }
}

/// A choice that takes less time says what it burns, also where the best burns the same place in a coil,
/// which is turned down; one that spares a place says so; and another source at one operation tells
/// what all of it takes then.
#[test]
fn quicker_choices_say_what_they_burn() {
    let ready = reinwright_core::heats::ready();
    let named = |names: &[&str]| {
        let own = ready
            .iter()
            .filter(|own| names.contains(&own.name.as_str()));
        shop(own.cloned().collect())
    };
    let design = starting("box", "3/8 x 1 in flat", "7/8 in round");
    let plan = planned(&design, Procedure::ThreeShoulders);
    let (prepared, heats) = heated(&design, &plan, &named(&["coal fire", "wide coil"]));
    let in_coil = |own: &&Heated| own.burns.is_some() && own.source == Some(1);
    let held_back: Vec<usize> = heats
        .operations
        .iter()
        .filter(in_coil)
        .map(|own| own.number)
        .collect();
    assert!(!held_back.is_empty());
    let all = priced(&prepared, &heats);
    let only = all
        .iter()
        .find(|own| own.said.starts_with("with coal fire only"));
    let only = only.expect("it is told");
    assert!(
        held_back.iter().all(|own| only.burns.contains(own)),
        "{}",
        only.said
    );
    assert!(only.said.contains("in a fire"), "{}", only.said);
    let faster: Vec<_> = all
        .iter()
        .filter(|own| matches!(own.what, Other::Faster { .. }))
        .collect();
    for own in faster {
        let Other::Faster { row, source } = own.what else {
            unreachable!()
        };
        let mut chosen = vec![None; prepared.rows.len()];
        for of in &heats.operations {
            chosen[of.row] = of.source;
        }
        chosen[row] = Some(source);
        let with = plan_of(&prepared, &chosen).totals.time_s - heats.totals.time_s;
        assert!(with > 0.0 && own.longer_s == Some(with), "{}", own.said);
    }
    let (prepared, heats) = heated(&design, &plan, &named(&["gas forge", "wide coil"]));
    let spared: Vec<usize> = heats
        .operations
        .iter()
        .filter(in_coil)
        .map(|own| own.number)
        .collect();
    let all = priced(&prepared, &heats);
    let gas = all
        .iter()
        .find(|own| own.said.starts_with("with gas forge only"));
    let gas = gas.expect("it is told");
    assert_eq!(gas.spares, spared, "{}", gas.said);
    assert!(
        !spared.is_empty() && gas.said.contains("nothing burns at"),
        "{}",
        gas.said
    );
}

/// Procedures are compared by heats, changes and minutes.
#[test]
fn procedures_are_compared() {
    let design = v_bit();
    let model = resolve(&design);
    let shop = shop(coils());
    let all = compare(&design, (&model, &balance_of(&design, &model)), &shop);
    assert!(all.len() > 2);
    for pair in all.windows(2) {
        let rank = |own: &Compared| (own.unserved, own.burnt, own.time_s);
        assert!(rank(&pair[0]) <= rank(&pair[1]));
        let said = pair[0].against(&pair[1]);
        sentence(&said);
        let words = match pair[1].unserved > pair[0].unserved {
            true => "no heat of the shop serves",
            false => " before ",
        };
        assert!(said.contains(words), "{said}");
    }
}

/// Coils make little scale and fires much, and the balance takes it when it is asked.
#[test]
fn scale_follows_from_the_heats() {
    let design = v_bit();
    let plan = planned(&design, Procedure::ThreeShoulders);
    let [coil, fire] = [shop(coils()), shop(vec![gas(Back::Open, "10 in")])];
    let of = |shop: &Sources| {
        let (prepared, heats) = heated(&design, &plan, shop);
        scale_percent(&prepared, &heats)
    };
    let (coil, fire) = (of(&coil), of(&fire));
    assert!(coil < fire && fire <= 8.0, "{coil} and {fire}");
    let fed = with_scale_of(&design, fire);
    let lost = |design: &Document| balance_of(design, &resolve(design)).bar_length_mm;
    assert!(lost(&fed) != lost(&design));
}

/// What the last heat left makes the next one shorter, and a change lets it cool.
#[test]
fn a_warm_piece_heats_faster() {
    let design = v_bit();
    let plan = planned(&design, Procedure::ThreeShoulders);
    let shop = shop(coils());
    let (_, heats) = heated(&design, &plan, &shop);
    let boss = heats
        .operations
        .iter()
        .find(|own| own.step == Step::SetDownBoss)
        .expect("it is set down");
    assert!(boss.starts_celsius > 100.0, "{}", boss.starts_celsius);
    let jaw = heats
        .operations
        .iter()
        .find(|own| own.step == Step::SetDownJaw)
        .expect("it is set down");
    within("first", jaw.starts_celsius, 20.0, 1e-9);
    assert!(boss.heats_s[0] < jaw.heats_s[0]);
}

/// The working time is the cooling of the section times the smith's own factor.
#[test]
fn working_time_is_cooling_times_the_smiths_factor() {
    let design = v_bit();
    let plan = planned(&design, Procedure::ThreeShoulders);
    let mut shop = shop(coils());
    shop.smith.working = 0.8;
    let prepared = Prepared::new(Steel::Mild, &plan, &shop);
    let air = Clock::new(&HeatTable::default(), Surroundings::AIR);
    for row in 0..prepared.rows.len() {
        if let Some(offer) = prepared.offer(row, WIDE) {
            let still = air.between_s(offer.target_celsius, 850.0, offer.ratio_mm);
            close("working", offer.working_s, 0.8 * still, 1e-9);
        }
    }
}

/// A wide clearance keeps out what a small one lets in.
#[test]
fn clearance_is_the_smiths() {
    let design = v_bit();
    let plan = planned(&design, Procedure::ThreeShoulders);
    let served = |clearance: &str| {
        let mut shop = shop(coils());
        shop.smith.clearance = length(clearance);
        let prepared = Prepared::new(Steel::Mild, &plan, &shop);
        let hot = prepared.rows.iter().filter(|row| row.needs_mm.is_some());
        hot.filter(|row| row.offers[LONG].is_ok()).count()
    };
    assert!(served("1/4 in") < served("1/8 in") && served("1/8 in") <= served("0 in"));
    let all = heat_plan(&Prepared::new(Steel::Mild, &plan, &shop(coils())));
    assert_eq!(all.totals.unserved, 0);
}

/// Implants, rings and watches beside a machine; gas and fire beside a forge; local codes first.
#[test]
fn cautions_are_those_of_what_is_there() {
    let words = |shop: &Sources| cautions(shop, Steel::Mild).join(" ");
    let coil = words(&shop(coils()));
    let fire = words(&shop(vec![gas(Back::Open, "10 in")]));
    for word in ["pacemaker", "rings", "watches", "quench"] {
        assert!(coil.contains(word), "{word}");
    }
    for word in ["carbon monoxide", "fumes", "extinguisher", "burns"] {
        assert!(fire.contains(word), "{word}");
    }
    assert!(!fire.contains("pacemaker"));
    assert_eq!(cautions(&shop(coils()), Steel::Mild)[0], caution::FIRST);
}
