//! Sizes by their rules.

use super::*;

/// The rules that fields bring along: jaw with the work, boss and rivet with the bar, rein and
/// hand gap the same in all.
#[test]
fn rules_are_sensible_before_anything_is_chosen() {
    let family = Family::from_design(&pairs::v_bit());
    let rule = |path: &str| family.rule(path).map(|(rule, _)| rule);
    assert_eq!(rule("jaw.leg"), Some(Rule::WithWork));
    for path in [
        "boss.across",
        "boss.thickness",
        "rivet.diameter",
        "neck.depth",
    ] {
        assert_eq!(rule(path), Some(Rule::WithBar), "{path}");
    }
    for path in ["rein.length", "rein.gap", "rein.hand", "allowances.kerf"] {
        assert_eq!(rule(path), Some(Rule::Same), "{path}");
    }
    assert_eq!(rule("jaw.angle"), None, "angles stay");
}

#[test]
fn a_size_scales_by_its_rules() {
    let mut family =
        Family::from_design(&pairs::starting("v bit", "1/2 in round", "3/4 in square"));
    let mut size = Size::new(work("1 in round"));
    size.bar = Some(bar("1 1/2 in square"));
    family.add(size).unwrap();
    let made = family.take_out(1).unwrap();
    // Twice the work, twice the bar, by hand: each base value below is half of it.
    for (path, base, double) in [
        ("jaw.leg", "7/16 in", "7/8 in"),
        ("boss.across", "1 3/16 in", "2 3/8 in"),
        ("rivet.diameter", "5/16 in", "5/8 in"),
        ("rein.length", "14 1/2 in", "14 1/2 in"),
        ("rein.gap", "1 3/8 in", "1 3/8 in"),
    ] {
        assert_eq!(text_at(&family.base, path), base, "{path}");
        assert_eq!(text_at(&made, path), double, "{path}");
    }
    family.set_rule("rein.length", Rule::WithWork).unwrap();
    assert_eq!(
        text_at(&family.take_out(1).unwrap(), "rein.length"),
        "29 in"
    );
    family.set_rule("rein.length", Rule::Same).unwrap();
    assert!(
        family.rules.is_empty(),
        "a rule that is the usual one is not kept"
    );
}

#[test]
fn what_a_rule_takes_past_its_limits_is_told_and_the_others_work() {
    let mut family = Family::from_design(&pairs::flat());
    family.add(Size::new(work("3 in flat"))).unwrap();
    family.set_rule("rein.length", Rule::WithWork).unwrap();
    let answers = answer_all(&family);
    let told = answers[1]
        .findings
        .iter()
        .find(|f| f.message.contains("by its rule"))
        .unwrap();
    assert_eq!(told.severity, Severity::Stop);
    // 14 1/2 in times 8, against the limit of a rein, 2000 mm or 78.74 in.
    assert!(
        told.message.contains("116 in") && told.message.contains("to 78 1/2 in"),
        "{told}"
    );
    sentence(&told.to_string());
    assert_eq!(answers[1].worst(), Some(Severity::Stop));
    assert!(document::check_limits(&answers[1].document).is_ok());
    assert_eq!(answers[0].document, family.base);
}

/// Lengths typed in millimetres stay so: a family in both units is no harm.
#[test]
fn metric_families_round_to_half_millimetres() {
    let mut family = Family::from_design(&pairs::v_bit());
    family
        .add(Size::new(work("25 mm square on corners")))
        .unwrap();
    let made = family.take_out(1).unwrap();
    // 13.5 mm times 25/16 is 21.09 mm.
    assert_eq!(text_at(&family.base, "jaw.leg"), "13.5 mm");
    assert_eq!(text_at(&made, "jaw.leg"), "21 mm");
    assert_eq!(made.work.size().unit(), Unit::Millimetre);
}
