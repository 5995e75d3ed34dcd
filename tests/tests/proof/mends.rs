//! Ways to mend: what must be offered for what breaks the trade's rules, and laws that hold for
//! whatever is offered.

use reinwright_core::asked::{Step, Value};
use reinwright_core::finding::{Finding, Kind, Part, Severity};
use reinwright_core::proof::strength::StrengthLoad;
use reinwright_core::shop::Answers;
use reinwright_core::shop::mend::{Change, MOST_MENDS, Mend, Ways, ways};
use reinwright_core::tongs::document::Document;
use reinwright_tests::designs::{samples, varied};
use reinwright_tests::pairs::{self, flat, starting, v_bit};
use reinwright_tests::within;

const COLD: f64 = 20.0;

/// A design with some values set by their paths.
#[track_caller]
fn with(mut design: Document, values: &[(&str, &str)]) -> Document {
    for (path, text) in values {
        design.set(path, text).expect("the test names a value");
    }
    design
}

/// The ways to mend the first finding of a kind.
#[track_caller]
fn ways_of(design: &Document, kind: Kind, celsius: f64) -> Ways {
    let answers = Answers::under(design, &StrengthLoad::with_jaws_at(celsius));
    let all = ways(design, &answers);
    assert_eq!(all.len(), answers.findings.len());
    let at = answers.findings.iter().position(|found| found.kind == kind);
    let at = at.unwrap_or_else(|| panic!("{kind:?} in {:#?}", answers.findings));
    all[at].clone().expect("it asks for a mend")
}

fn told(mend: &Mend) -> Vec<(&str, String)> {
    let changes = mend.changes.iter();
    changes
        .map(|change| (change.path.as_str(), change.to.to_string()))
        .collect()
}

/// Among the mends of a kind of finding is this value, alone.
#[track_caller]
fn offers(design: &Document, kind: Kind, (path, to): (&str, &str)) {
    let ways = ways_of(design, kind, COLD);
    let wanted = vec![(path, to.to_owned())];
    let all: Vec<_> = ways.mends().iter().map(told).collect();
    assert!(all.contains(&wanted), "{path} to {to} in {all:#?}");
}

/// Rules and their sources are those of the findings; the values are the first on the smith's grid
/// that keep them, reckoned by hand.
#[test]
fn the_value_that_breaks_a_rule_is_mended_to_the_nearest_that_keeps_it() {
    // Six tenths of a bar of 5/8 in are 3/8 in.
    let bolt = starting("bolt", "5/8 in hexagon", "5/8 in square");
    let thin = with(bolt, &[("neck.depth", "1/4 in")]);
    offers(&thin, Kind::NeckThin, ("neck.depth", "3/8 in"));
    // The bar is 3/4 in.
    let deep = with(flat(), &[("neck.depth", "13/16 in")]);
    offers(&deep, Kind::NeckOverBar, ("neck.depth", "3/4 in"));
    let thick = with(flat(), &[("boss.thickness", "1 in")]);
    offers(&thick, Kind::BossOverBar, ("boss.thickness", "3/4 in"));
    let slight = with(flat(), &[("boss.thickness", "5/16 in")]);
    offers(&slight, Kind::BossThin, ("boss.thickness", "3/8 in"));
    // A fifth of the bar is 0.15 in, less the hair of 0.3 mm.
    let sharp = with(flat(), &[("neck.fillet", "1/16 in")]);
    offers(&sharp, Kind::CornerSharp, ("neck.fillet", "3/16 in"));
    // A wall as thick as the hole: 19/32 in from its centre to the rim leave a hole of 3/8 in,
    // and a hole of 1/2 in wants a boss of 1 1/2 in.
    let near = with(flat(), &[("rivet.hole", "1/2 in")]);
    offers(&near, Kind::HoleNearEdge, ("rivet.hole", "3/8 in"));
    offers(&near, Kind::HoleNearEdge, ("boss.across", "1 1/2 in"));
    // The hole is 21/64 in.
    let tight = with(flat(), &[("rivet.diameter", "3/8 in")]);
    offers(&tight, Kind::RivetOverHole, ("rivet.hole", "3/8 in"));
    offers(&tight, Kind::RivetOverHole, ("rivet.diameter", "5/16 in"));
    // A finger is 12 mm.
    let pinched = with(flat(), &[("rein.gap", "1/4 in")]);
    offers(&pinched, Kind::FingersPinched, ("rein.gap", "1/2 in"));
}

/// A finger is 12 mm; in less than 18.9 mm, twice what 100 N closes them by, the reins are whippy.
#[test]
fn a_metric_design_is_mended_in_half_millimetres() {
    let pinched = with(v_bit(), &[("rein.gap", "5.2 mm")]);
    offers(&pinched, Kind::FingersPinched, ("rein.gap", "19 mm"));
}

/// The hand is brought out of the joint too, not only back on to the rein.
#[test]
fn a_mend_goes_on_until_it_does_no_harm() {
    let past = with(flat(), &[("rein.hand", "16 in")]);
    let ways = ways_of(&past, Kind::HandPastRein, COLD);
    let hand = ways
        .mends()
        .iter()
        .find(|mend| mend.changes[0].path == "rein.hand");
    let to = hand.expect("the hand is moved").changes[0].to;
    let length = past.rein.length.mm();
    let to = to.number().expect("a size");
    assert!(to < 0.75 * length, "{to} mm of {length} mm");
}

#[test]
fn choices_are_tried_and_the_work_is_only_laid_otherwise() {
    let sunk = with(
        flat(),
        &[
            ("rivet.head", "countersunk"),
            ("boss.thickness", "3/8 in"),
            ("rivet.hole", "1/2 in"),
            ("rivet.diameter", "1/2 in"),
        ],
    );
    offers(&sunk, Kind::HeadSinksDeep, ("rivet.head", "button"));
    let on_flats = with(v_bit(), &[("work.lie", "on its flats")]);
    offers(
        &on_flats,
        Kind::WorkBearsBadly,
        ("work.lie", "on its corners"),
    );
}

/// Steel has little left at 600 °C and nothing to speak of at 1000 °C (EN 1993-1-2, Table 3.1): a
/// shorter lever helps the one, nothing the other.
#[test]
fn jaws_that_are_too_hot() {
    let hot = ways_of(&flat(), Kind::NeckBends, 600.0);
    let paths: Vec<_> = hot.mends().iter().flat_map(|mend| told(mend)).collect();
    assert!(
        paths.iter().any(|(path, _)| *path == "rein.length"),
        "{hot:#?}"
    );
    let molten = ways_of(&v_bit(), Kind::NeckBends, 1000.0);
    assert_eq!(molten, Ways::NotFromThisBar);
    assert!(
        molten
            .said()
            .expect("it is said")
            .starts_with("Not from this bar")
    );
}

/// The hole can neither be smaller, for its rivet, nor the boss larger, for its bar of 3/4 in
/// square: 1 5/16 in by 1/2 in are 1.17 times 9/16 in². With a boss of 7/16 in they are 1.02 times.
#[test]
fn where_one_value_cannot_do_it_two_do() {
    let both = with(
        flat(),
        &[
            ("boss.thickness", "1/2 in"),
            ("boss.across", "1 1/8 in"),
            ("rivet.hole", "7/16 in"),
            ("rivet.diameter", "7/16 in"),
        ],
    );
    let ways = ways_of(&both, Kind::HoleWallThin, COLD);
    let expected = vec![
        ("boss.across", "1 5/16 in".to_owned()),
        ("boss.thickness", "7/16 in".to_owned()),
    ];
    assert_eq!(told(&ways.mends()[0]), expected);
}

/// A jaw of 1/2 in by 7/8 in is 0.44 in²: bar of 5/8 in square has 0.39 in², of 3/4 in 0.56 in².
#[test]
fn where_no_value_does_it_the_bar_that_does_is_named() {
    let slight = with(flat(), &[("bar.side", "1/2 in")]);
    let ways = ways_of(&slight, Kind::NeedsUpsetting, COLD);
    let Ways::FromOtherBar(mend) = &ways else {
        panic!("{ways:#?}");
    };
    assert_eq!(told(mend), [("bar.side", "3/4 in".to_owned())]);
    let words = mend.words(slight.units);
    assert!(
        words.starts_with("Bar side 1/2 in to 3/4 in: to be cut "),
        "{words}"
    );
}

#[test]
fn a_note_asks_for_no_mend_and_samples_have_nothing_to_mend() {
    for (name, sample) in samples() {
        let answers = Answers::to(&sample);
        let all = ways(&sample, &answers);
        for (finding, ways) in answers.findings.iter().zip(&all) {
            assert_eq!(
                ways.is_some(),
                finding.severity > Severity::Note,
                "{name}: {finding}"
            );
        }
    }
}

/// Pairs varied by chance, a quarter up or down, in everything.
fn by_chance(count: u32) -> Vec<(String, Document)> {
    let bases = pairs::all();
    // Numbers as a linear congruence gives them (Knuth's MMIX constants).
    let mut state = 1_u64;
    let mut throw = || {
        state = state.wrapping_mul(6_364_136_223_846_793_005);
        state = state.wrapping_add(1_442_695_040_888_963_407);
        u32::try_from(state >> 32).expect("32 bits are left")
    };
    let one = |at: u32| {
        let (name, base) = &bases[at as usize % bases.len()];
        let dice: Vec<u32> = (0..97).map(|_| throw()).collect();
        (format!("{name}, throw {at}"), varied(base, &dice, 0.25))
    };
    (0..count).map(one).collect()
}

/// What is asked of every mend: taken as the window takes it, it clears its finding and raises
/// nothing, its values are on the grid and inside their limits, the work is the same, and it costs
/// what it says. Of one value alone no nearer one would do.
#[test]
fn what_is_offered_mends() {
    let mut offered = 0;
    for (name, design) in by_chance(28) {
        let before = Answers::to(&design);
        for (finding, ways) in before.findings.iter().zip(ways(&design, &before)) {
            let Some(ways) = ways else { continue };
            let mends = ways.mends();
            assert!(mends.len() <= MOST_MENDS, "{name}: {finding}");
            for mend in mends {
                let name = format!("{name}: {finding}: {}", mend.words(design.units));
                holds(&name, (&design, &before), (finding, mend));
                offered += 1;
            }
        }
    }
    assert!(offered > 40, "only {offered} mends were offered");
}

#[track_caller]
fn holds(name: &str, (design, before): (&Document, &Answers), (meant, mend): (&Finding, &Mend)) {
    assert!(
        mend.sets_out_from(design),
        "{name}: the values are as they stand"
    );
    let mended = mend.taken(design);
    let after = Answers::to(&mended);
    assert_eq!(wrong(meant, before, &after), None, "{name}");
    assert_eq!(mended.work.size(), design.work.size(), "{name}: the work");
    for change in &mend.changes {
        on_the_grid(name, design, change);
    }
    let bar = after.balance.bar_length_mm - before.balance.bar_length_mm;
    within(name, mend.cost.adds_bar_mm, bar, 1e-9);
    let mass = after.model.mass_kg() - before.model.mass_kg();
    within(name, mend.cost.adds_mass_kg, mass, 1e-9);
    if let [change] = mend.changes.as_slice()
        && change.part != Part::Bar
        && let Some(nearer) = nearer(design, change)
    {
        let answers = Answers::to(&nearer);
        assert!(
            wrong(meant, before, &answers).is_some(),
            "{name}: a nearer value does it too"
        );
    }
}

/// Why a design is not mended: the finding is there still, or another has come.
fn wrong(meant: &Finding, before: &Answers, after: &Answers) -> Option<String> {
    let like = |a: &Finding, b: &Finding| a.kind == b.kind && a.part == b.part;
    let bad = |finding: &&Finding| finding.severity > Severity::Note;
    let count = |finding: &Finding, all: &Answers| {
        let as_bad = |f: &&Finding| like(f, finding) && f.severity >= finding.severity;
        all.findings.iter().filter(as_bad).count()
    };
    let mut all = after.findings.iter().filter(bad);
    let mut come = all
        .clone()
        .filter(|found| count(found, after) > count(found, before));
    let left = all.find(|found| like(found, meant));
    left.or_else(|| come.next()).map(ToString::to_string)
}

#[track_caller]
fn on_the_grid(name: &str, design: &Document, change: &Change) {
    let field = design.field(&change.path).expect("it changes a field");
    assert!(
        change.to.is_inside(field.range),
        "{name}: {} is outside",
        change.to
    );
    assert_ne!(change.to, change.from, "{name}");
    let step = change.to.step(Step::Usual, design.units.unit());
    let Some((number, step)) = change.to.number().zip(step) else {
        let to = matches!(change.to, Value::Choice { .. });
        assert!(to, "{name}: {} has no steps and is no choice", change.to);
        return;
    };
    // Bars are sold in their own unit.
    if change.part != Part::Bar {
        let off = (number / step).round() * step - number;
        within(&format!("{name}: off the grid"), off, 0.0, 1e-6);
    }
}

/// The design with the value one step nearer to where it stood, if that is another value.
fn nearer(design: &Document, change: &Change) -> Option<Document> {
    let unit = design.units.unit();
    let (from, to) = change.from.number().zip(change.to.number())?;
    let step = change.to.step(Step::Usual, unit)?;
    let field = design.field(&change.path)?;
    let back = to - (to - from).signum() * step;
    let between = (back - from) * (to - from) > 0.0;
    let value = field
        .value
        .at_step(back, field.range, (Step::Usual, unit))?;
    let mut nearer = design.clone();
    nearer.put(&change.path, value);
    between.then_some(nearer)
}

/// A shoulder that bends by a hair is made sound by a sixteenth at many places; what the advice says, to leave it
/// deeper, is among what can be taken.
#[test]
fn a_shoulder_that_bends_can_be_left_deeper() {
    let bends = with(
        starting("v bit", "1/2 in square on corners", "1 in round"),
        &[("shoulder.depth", "3/8 in"), ("rein.hand", "2 in")],
    );
    let at = Answers::to(&bends);
    let found = at.findings.iter().find(|own| own.kind == Kind::ReinBends);
    assert_eq!(
        found.map(|own| own.part),
        Some(Part::Shoulder),
        "{:#?}",
        at.findings
    );
    let ways = ways_of(&bends, Kind::ReinBends, COLD);
    let told: Vec<_> = ways.mends().iter().flat_map(told).collect();
    assert!(
        told.iter().any(|(path, _)| *path == "shoulder.depth"),
        "{told:?}"
    );
}

/// Where one of the values that a finding's hint speaks of mends it alone, one of them is offered: over pairs of
/// every style.
#[test]
fn what_is_advised_can_be_taken() {
    /// So many steps are tried either way.
    const STEPS: i32 = 16;
    let (mut advised, mut missing) = (0, Vec::new());
    for (name, design) in by_chance(28) {
        let before = Answers::to(&design);
        for (finding, ways) in before.findings.iter().zip(ways(&design, &before)) {
            let Some(ways) = ways.filter(|_| !finding.advises.is_empty()) else {
                continue;
            };
            let is_advised = |part: Part, path: &str| {
                let last = path.rsplit('.').next();
                part == finding.part && last.is_some_and(|last| finding.advises.contains(&last))
            };
            let one = |mend: &Mend| matches!(mend.changes.as_slice(), [own] if is_advised(own.part, &own.path));
            let mut fields = design.fields();
            fields.retain(|field| is_advised(field.part, &field.path));
            assert!(
                !fields.is_empty(),
                "{name}: {finding}: no value is called so"
            );
            let mends = fields.iter().any(|field| {
                (1..=STEPS).flat_map(|steps| [steps, -steps]).any(|steps| {
                    moved(&design, &field.path, steps).is_some_and(|other| {
                        wrong(finding, &before, &Answers::to(&other)).is_none()
                    })
                })
            });
            advised += usize::from(mends);
            if mends && !ways.mends().iter().any(one) {
                let told: Vec<_> = ways.mends().iter().map(told).collect();
                missing.push(format!("{name}: {finding}: {told:?}"));
            }
        }
    }
    assert!(advised > 10, "only {advised} could be mended as advised");
    assert!(missing.is_empty(), "{advised}: {missing:#?}");
}

/// The design with a value moved by steps of the smith's grid.
fn moved(design: &Document, path: &str, steps: i32) -> Option<Document> {
    let unit = design.units.unit();
    let field = design.field(path)?;
    let step = field.value.step(Step::Usual, unit)?;
    let now = (field.value.number()? / step).round();
    let value = (now + f64::from(steps)) * step;
    let value = field
        .value
        .at_step(value, field.range, (Step::Usual, unit))?;
    let mut other = design.clone();
    other.put(path, value);
    Some(other)
}
