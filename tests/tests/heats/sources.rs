//! The shop's heat sources as text.

use reinwright_core::heats::{MOST_FIRES, MOST_SOURCES, Smith, Source, SourceKind, Sources};
use reinwright_tests::{close, sentence};

use super::{coil, gas, shop};
use reinwright_core::heats::Back;

/// The file of these sources.
fn file(sources: &str) -> String {
    format!("(heat_sources: 1, sources: [{sources}])")
}

const FORGE: &str = "(name: \"forge\", ready_minutes: 10, kind: Gas(chamber: \"2280 F\", opening_width: \"4 in\", \
                     opening_height: \"75 mm\", length: \"10 in\", back: Open))";

#[test]
fn ready_examples_are_read_as_they_are_written() {
    let ours = Sources::default();
    let opened = Sources::read(ours.write().as_bytes()).expect("it is ours");
    assert_eq!((opened.sources, opened.lost), (ours, Vec::new()));
}

#[test]
fn a_file_by_hand_is_read() {
    let opened = Sources::read(file(FORGE).as_bytes()).expect("it is whole");
    assert_eq!(opened.lost, Vec::<String>::new());
    assert_eq!(opened.sources.smith, Smith::default());
    let SourceKind::Gas(forge) = &opened.sources.sources[0].kind else {
        panic!("it is a gas forge");
    };
    close("chamber", forge.chamber.celsius(), 1248.9, 1e-4);
}

/// What is wrong in one source costs that one and is said in a sentence.
#[track_caller]
fn check(source: &str, words: &[&str]) {
    let both = file(&format!("{source}, {FORGE}"));
    let opened = Sources::read(both.as_bytes()).expect("the other is whole");
    let names: Vec<&str> = opened
        .sources
        .sources
        .iter()
        .map(|own| own.name.as_str())
        .collect();
    assert_eq!(names, ["forge"], "{source}");
    assert_eq!(opened.lost.len(), 1, "{:?}", opened.lost);
    sentence(&opened.lost[0]);
    for word in words {
        assert!(
            opened.lost[0].contains(word),
            "{word} in {}",
            opened.lost[0]
        );
    }
}

fn coil_text(more: &str) -> String {
    let plain = "bore: \"1 in\", turns: 5, advance: \"3/4 in\", tube: \"1/4 in\", power_kw: 5, \
                 frequency_khz: 50, lead: \"6 in\", efficiency: \"unknown\", cold_lag_s: 3";
    let name = more.split(':').next().unwrap_or_default();
    let kept: Vec<&str> = plain
        .split(", ")
        .filter(|own| !own.starts_with(name))
        .collect();
    format!(
        "(name: \"c\", ready_minutes: 3, kind: Coil({}, {more}))",
        kept.join(", ")
    )
}

#[test]
fn a_source_that_cannot_be_costs_only_itself() {
    check(
        &coil_text("bore: \"9 ft\""),
        &["sources 1", "\"c\"", "bore"],
    );
    check(&coil_text("turns: 0"), &["turns is 0"]);
    check(&coil_text("turns: NaN"), &["turns"]);
    check(&coil_text("tube: \"1 in\""), &["tube is 1 in", "3/4 in"]);
    check(&coil_text("efficiency: \"most\""), &["efficiency", "70 %"]);
    check(&coil_text("efficiency: \"120 %\""), &["efficiency is 120"]);
    check(&coil_text("frequency_khz: -3"), &["frequency_khz"]);
    check(&coil_text("colour: 3"), &["sources 1"]);
    check(
        "(name: \"f\", ready_minutes: 1, kind: Solid(fire: \"300 C\", hot_spot: \"3 in\"))",
        &["fire is 300"],
    );
    check(
        "(name: \"\", ready_minutes: 1, kind: Solid(fire: \"1300 C\", hot_spot: \"3 in\"))",
        &["name"],
    );
    check("7", &["sources 1"]);
}

/// What is wrong is named by its field and its line in the whole file, in the words of the file.
#[test]
fn what_is_wrong_is_named_where_it_stands() {
    let whole = Sources::default().write();
    let check = |from: &str, to: &str, words: &[&str]| {
        assert!(whole.contains(from), "{from}");
        let bad = whole.replacen(from, to, 1);
        let line = bad.lines().position(|line| line.contains(to));
        let line = line.expect("it stands there") + 1;
        let lost = Sources::read(bad.as_bytes()).expect("a file").lost;
        sentence(&lost[0]);
        let place = format!("line {line}:");
        for word in words.iter().chain([&place.as_str()]) {
            assert!(lost[0].contains(word), "{word} in {}", lost[0]);
        }
        for inner in ["Unexpected", "enum", "`", "SourceKind", "Machine"] {
            assert!(!lost[0].contains(inner), "{inner} in {}", lost[0]);
        }
    };
    check(
        "turns: 5.0",
        "turns: \"many\"",
        &["sources 3, turns, ", "a number is expected"],
    );
    check(
        "chamber: \"2300 F\"",
        "chamber: 2300",
        &["sources 1, chamber, ", "write it in quotes"],
    );
    check(
        "kind: Gas(",
        "kind: Gass(",
        &[
            "sources 1, kind, ",
            "Gass is not known here: write one of Gas",
        ],
    );
    check(
        "least_khz: 20.0",
        "lowest_khz: 20.0",
        &["machine, ", "nothing here is called lowest_khz"],
    );
    check(
        "bore: \"1 in\"",
        "bore: \"one\"",
        &["sources 3, bore, ", "\"one\" is not a size"],
    );
}

#[test]
fn a_name_that_is_taken_is_left_out() {
    let both = file(&format!("{FORGE}, {FORGE}"));
    let opened = Sources::read(both.as_bytes()).expect("the first is whole");
    assert_eq!(opened.sources.sources.len(), 1);
    assert!(opened.lost[0].contains("name already"), "{:?}", opened.lost);
}

#[test]
fn there_are_only_so_many() {
    let named = |at: usize| Source {
        name: format!("coil {at}"),
        ..coil("", "1 in", (5.0, "1 in"))
    };
    let many = shop((0..MOST_SOURCES + 2).map(named).collect());
    let opened = Sources::read(many.write().as_bytes()).expect("the others are whole");
    assert_eq!(opened.sources.sources.len(), MOST_SOURCES);
    assert_eq!(opened.lost.len(), 2);
    let named = |at: usize| Source {
        name: format!("forge {at}"),
        ..gas(Back::Open, "10 in")
    };
    let fires = shop((0..MOST_FIRES + 1).map(named).collect());
    let opened = Sources::read(fires.write().as_bytes()).expect("the others are whole");
    assert_eq!(opened.sources.sources.len(), MOST_FIRES);
}

#[test]
fn what_is_no_such_file_is_refused_in_a_sentence() {
    let cases: [(&str, &str); 5] = [
        ("", "empty"),
        ("(format: 1)", "heat_sources"),
        ("(heat_sources: 2, sources: [])", "format 2"),
        ("(heat_sources: 0, sources: [])", "format 0"),
        ("(heat_sources: 1, sources: [", "line 1"),
    ];
    for (text, word) in cases {
        let why = Sources::read(text.as_bytes()).expect_err(text).to_string();
        sentence(&why);
        assert!(why.contains(word), "{word} in {why}");
    }
}

/// The steel's laws end at 1200 °C: the smith who wants more is told, and the usual heat is taken.
#[test]
fn nobody_heats_past_what_is_known() {
    let text = "(heat_sources: 1, smith: (heat_to: \"1250 C\"), sources: [])";
    let opened = Sources::read(text.as_bytes()).expect("the rest is whole");
    assert_eq!(opened.sources.smith, Smith::default());
    assert!(opened.lost[0].contains("1200"), "{:?}", opened.lost);
}

/// Half a minute of work out of a minute of still air.
#[test]
fn one_timed_heat_teaches_how_a_smith_works() {
    let taught = Smith::default().timed(15.0, 60.0);
    close("working", taught.working, 0.25, 1e-12);
    assert!(Smith::default().timed(0.0, 60.0).working > 0.0);
}
