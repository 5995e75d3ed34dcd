//! Which style for which work. The verdicts are the trade's (common practice, no source); that a
//! pair meets, rides or tips is reckoned and checked against plane geometry.

use reinwright_core::asked::{Lie, Work, parse_work, parse_work_in};
use reinwright_core::shop::{
    Advice, advise, advise_own, advise_own_laid, choose, choose_among, held_best,
};
use reinwright_core::tongs::jaw::sketch::KeptJaw;
use reinwright_core::tongs::jaw::{Jaw, JawKind, Verdict, Way};
use reinwright_core::units::Unit;
use reinwright_tests::pairs::{self, bar};

fn asked(work: &str, way: Way) -> Vec<Advice> {
    choose(&pairs::work(work), way, &bar("3/4 in square"))
}

#[track_caller]
fn check(work: &str, way: Way, expected: &[(&str, Verdict)]) {
    let found = asked(work, way);
    for (style, verdict) in expected {
        let advice = found.iter().find(|advice| advice.style.name() == *style);
        let advice = advice.unwrap_or_else(|| panic!("nothing is said of {style}"));
        assert_eq!(
            &advice.verdict, verdict,
            "{style} for {work}: {}",
            advice.reason
        );
    }
}

#[test]
fn round_bar_end_on() {
    check(
        "5/8 in round",
        Way::EndOn,
        &[
            ("V bit", Verdict::Well),
            ("hollow bit", Verdict::Well),
            ("bolt", Verdict::WithAWord),
            ("flat", Verdict::Unsafe),
            ("open mouth", Verdict::Unsafe),
            ("duckbill", Verdict::Unsafe),
            ("notched", Verdict::Unsafe),
            ("box", Verdict::Unsafe),
            ("square mouth", Verdict::Unsafe),
            ("goose neck", Verdict::Well),
            ("bent bit", Verdict::Badly),
        ],
    );
    let flat = advise(
        JawKind::Flat,
        &pairs::work("5/8 in round"),
        Way::EndOn,
        &bar("3/4 in square"),
    );
    let reason = flat.reason;
    assert!(
        reason.contains("rolls") && reason.contains("fly out"),
        "{reason}"
    );
}

#[test]
fn flat_bar_end_on() {
    check(
        "1/4 x 1 in flat",
        Way::EndOn,
        &[
            ("flat", Verdict::Well),
            ("duckbill", Verdict::Well),
            ("open mouth", Verdict::WithAWord),
            ("pick-up", Verdict::WithAWord),
            ("V bit", Verdict::Unsafe),
            ("box", Verdict::Well),
            ("square mouth", Verdict::Badly),
            ("scrolling", Verdict::Badly),
        ],
    );
}

#[test]
fn hexagon_goes_into_a_v_on_its_corners_and_between_faces_on_its_flats() {
    let found = asked("5/8 in hexagon", Way::EndOn);
    let lie = |style: &str| {
        let advice = found.iter().find(|advice| advice.style.name() == style);
        match advice.expect("a style").pair.work {
            Work::Hexagon { lie, .. } => lie,
            other => panic!("{other:?}"),
        }
    };
    assert_eq!((lie("V bit"), lie("flat")), (Lie::OnCorners, Lie::OnFlats));
    check(
        "5/8 in hexagon",
        Way::EndOn,
        &[("V bit", Verdict::Well), ("flat", Verdict::WithAWord)],
    );
}

#[test]
fn other_ways_of_holding() {
    check(
        "3/8 in round",
        Way::Across,
        &[
            ("link", Verdict::Well),
            ("pick-up", Verdict::Well),
            ("scrolling", Verdict::Well),
            ("notched", Verdict::Well),
            ("V bit", Verdict::Badly),
            ("flat", Verdict::Unsafe),
        ],
    );
    check(
        "1/2 in round",
        Way::ByHead,
        &[("bolt", Verdict::Well), ("V bit", Verdict::Badly)],
    );
    check("1 in round", Way::Across, &[("scrolling", Verdict::Unsafe)]);
    check(
        "3/8 in round",
        Way::Beside,
        &[("flat", Verdict::Badly), ("bent bit", Verdict::Well)],
    );
    check(
        "1 in square",
        Way::ByEye,
        &[
            ("hammer eye", Verdict::Well),
            ("chisel head", Verdict::Well),
            ("bolt", Verdict::Badly),
        ],
    );
}

#[test]
fn what_suits_comes_first_and_every_style_is_spoken_of_once() {
    for way in Way::ALL {
        let found = asked("5/8 in square", way);
        let verdicts: Vec<Verdict> = found.iter().map(|advice| advice.verdict).collect();
        assert!(verdicts.is_sorted(), "{way:?}: {verdicts:?}");
        let mut kinds: Vec<JawKind> = found.iter().map(|advice| advice.style).collect();
        kinds.sort_unstable();
        let all = JawKind::ALL.iter().copied();
        let all: Vec<JawKind> = all.filter(|kind| *kind != JawKind::Sketch).collect();
        assert_eq!(kinds, all);
        for advice in &found {
            assert!(
                !advice.reason.is_empty() && !advice.reason.ends_with('.'),
                "{advice:?}"
            );
        }
    }
}

#[test]
fn wide_work_that_tips_is_told_of_where_the_style_would_suit() {
    // The flat jaw on 3/4 in bar is 1.17 · 19.05 = 22.3 mm wide: over four times that is tipping.
    let wide = asked("6 x 100 mm flat", Way::EndOn);
    let flat = wide
        .iter()
        .find(|advice| advice.style == JawKind::Flat)
        .expect("flat");
    assert_eq!(flat.verdict, Verdict::WithAWord);
    assert!(flat.reason.ends_with("it tips"), "{}", flat.reason);
    let duckbill = wide
        .iter()
        .find(|advice| advice.style == JawKind::Duckbill)
        .expect("duckbill");
    assert_eq!(duckbill.verdict, Verdict::Well, "{}", duckbill.reason);
}

#[test]
fn ways_are_known_by_their_names() {
    for way in Way::ALL {
        assert_eq!(Way::named(way.name()), Some(way));
        assert_eq!(Way::named(&way.name().replace(' ', "-")), Some(way));
    }
    assert_eq!(Way::named("By-Head"), Some(Way::ByHead));
    assert_eq!(Way::named("sideways"), None);
}

#[test]
fn work_is_read_without_its_unit_and_said_in_words_that_are_read_back() {
    let work = |text: &str, unit: Unit| parse_work_in(text, unit).expect("work");
    for (text, unit, words) in [
        ("5/8 hex", Unit::Inch, "5/8 in hexagon"),
        ("5/8 hex", Unit::Millimetre, "5/8 in hexagon"),
        (
            "16 square on corners",
            Unit::Millimetre,
            "16 mm square on corners",
        ),
        (
            "5/8 square on the diamond",
            Unit::Inch,
            "5/8 in square on corners",
        ),
        ("16 mm round", Unit::Inch, "16 mm round"),
        ("1/4 x 1 flat", Unit::Inch, "1/4 in x 1 in flat"),
    ] {
        let read = work(text, unit);
        assert_eq!(read.words(), words);
        assert_eq!(parse_work(&read.words()), Ok(read));
    }
    assert!(parse_work_in("thick hex", Unit::Inch).is_err());
    assert_eq!(parse_work("5/8 hex"), parse_work("5/8 in hex"));
    assert!(
        parse_work("16 hex").is_err(),
        "without a unit it is not known what 16 is"
    );
}

/// A style drawn on and kept under a name.
fn own(style: JawKind, name: &str) -> KeptJaw {
    let (work, bar) = (pairs::work("1/2 in round"), bar("3/4 in square"));
    let jaw = Jaw::suited(style, &work, &bar).sketched(work.size());
    KeptJaw::of(&jaw, name, "").expect("a sketch")
}

/// An own jaw stands among the styles with a verdict on the same work, and a V that is an own jaw
/// holds a round bar where a flat one lets it roll.
#[test]
fn own_jaws_are_judged_among_the_styles() {
    let own = [own(JawKind::Flat, "My flat"), own(JawKind::VBit, "My V")];
    let work = pairs::work("5/8 in round");
    let all = choose_among(&own, &work, Way::EndOn, &bar("3/4 in square"));
    assert_eq!(all.len(), JawKind::ALL.len() - 1 + 2);
    assert!(all.is_sorted_by_key(|advice| advice.verdict));
    let found = |name: &str| {
        let mut own = all.iter().filter(|advice| advice.own() == Some(name));
        own.next().expect(name).clone()
    };
    let (flat, vee) = (found("My flat"), found("My V"));
    assert_eq!(flat.verdict, Verdict::Unsafe, "{}", flat.reason);
    assert!(vee.verdict < Verdict::Badly, "{}", vee.reason);
    assert_eq!((vee.name(), vee.style), ("My V", JawKind::Sketch));
    assert_eq!(vee.pair.work, work);
    assert_eq!(vee.pair.name, "My V tongs for 5/8 in round");
    assert_eq!(
        all.iter().filter(|advice| advice.own().is_none()).count(),
        choose(&work, Way::EndOn, &bar("3/4 in square")).len()
    );
}

/// An own jaw drawn as a V takes a hexagon as a V does, on its corners, whichever way it is named; told to
/// lie on its flats the hexagon bears by its corners alone, and a square so turns (common practice, no
/// source: the same words as of a hollow bit).
#[test]
fn an_own_v_lays_the_work_as_it_holds_it_best() {
    let (hexagon, stock) = (pairs::work("16 mm hexagon on corners"), bar("20 mm square"));
    let jaw = Jaw::suited(JawKind::VBit, &hexagon, &stock).sketched(hexagon.size());
    let kept = KeptJaw::of(&jaw, "My V", "").expect("a sketch");
    for size in ["16 mm", "18 mm", "20 mm"] {
        let named = pairs::work(&format!("{size} hexagon"));
        let advice = advise_own(&kept, &named, Way::EndOn, &stock);
        assert!(advice.verdict <= Verdict::WithAWord, "{}", advice.reason);
        assert_eq!(
            advice.pair.work,
            pairs::work(&format!("{size} hexagon on corners"))
        );
        assert_eq!(held_best(&advice.pair, &named), advice.pair.work);
        let flats = advise_own_laid(&kept, &named, Way::EndOn, &stock);
        assert_eq!(flats.verdict, Verdict::WithAWord, "{}", flats.reason);
        assert!(
            flats.reason.contains("at its corners only"),
            "{}",
            flats.reason
        );
    }
    let square = own(JawKind::VBit, "My V");
    for (lie, verdict) in [("on corners", Verdict::Well), ("on flats", Verdict::Unsafe)] {
        let laid = pairs::work(&format!("5/8 in square {lie}"));
        let advice = advise_own_laid(&square, &laid, Way::EndOn, &bar("3/4 in square"));
        assert_eq!(advice.verdict, verdict, "{lie}: {}", advice.reason);
    }
}

#[test]
fn an_own_jaw_that_does_not_grow_so_far_says_so() {
    let advice = advise_own(
        &own(JawKind::Flat, "My flat"),
        &pairs::work("7 in flat"),
        Way::EndOn,
        &bar("1 in square"),
    );
    assert_eq!(advice.verdict, Verdict::Unsafe);
    assert!(advice.reason.contains("does not grow"), "{}", advice.reason);
}

/// Bar without a head and headed bar are told apart in both answers to a bolt jaw on bar.
#[test]
fn a_bow_on_bar_says_when_it_is_idle() {
    for way in [Way::EndOn, Way::ByHead] {
        let bolt = advise(
            JawKind::Bolt,
            &pairs::work("20 mm square"),
            way,
            &bar("20 mm square"),
        );
        assert!(bolt.reason.contains("headed bar"), "{}", bolt.reason);
        assert!(bolt.reason.contains("idle"), "{}", bolt.reason);
    }
}
