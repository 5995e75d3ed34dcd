//! `plan --sources`, `sources` and `coil`.

use reinwright::command_line::Places;
use reinwright::disk::heat_sources;
use reinwright_core::heats::Sources;
use reinwright_core::tongs::document;
use reinwright_tests::command_line::{ask, ask_in, done, json, refused, text};
use reinwright_tests::files::{folder, names, put};
use reinwright_tests::pairs::starting;

struct Shop {
    folder: tempfile::TempDir,
    design: String,
    sources: String,
}

fn shop() -> Shop {
    let folder = folder();
    let design = starting("v bit", "1/2 in square on corners", "3/4 in round");
    put(folder.path(), "v.ron", document::write(&design));
    let path = |name: &str| text(&folder.path().join(name)).to_owned();
    let (design, sources) = (path("v.ron"), path("sources.ron"));
    let said = done(&["sources", "--out", &sources]);
    assert!(said.contains("gas forge"), "{said}");
    Shop {
        folder,
        design,
        sources,
    }
}

#[test]
fn the_answer_has_a_heat_at_every_operation() {
    let shop = shop();
    let plain = json(&["plan", &shop.design, "--json"]);
    let answer = json(&["plan", &shop.design, "--sources", &shop.sources, "--json"]);
    let operations = answer["operations"].as_array().unwrap();
    assert_eq!(
        operations.len(),
        plain["operations"].as_array().unwrap().len()
    );
    let (mut heats, mut time) = (0, 0.0);
    for operation in operations {
        let heat = &operation["heat"];
        assert_eq!(
            heat["goes_in"].as_bool().unwrap(),
            !heat["source"].is_null()
        );
        heats += heat["pieces"].as_u64().unwrap() * heat["heats"].as_u64().unwrap();
        time += heat["heating_s"].as_f64().unwrap();
        if operation["hot_from_mm"].is_null() {
            assert!(heat["source"].is_null());
        } else {
            assert_eq!(
                heat["fits"].as_array().unwrap().len(),
                Sources::default().sources.len()
            );
        }
    }
    let totals = &answer["totals"];
    assert_eq!(totals["heats"].as_u64().unwrap(), heats);
    assert!(time > 0.0 && totals["time_s"].as_f64().unwrap() > time);
    assert!(totals["changes"].as_u64().is_some());
    // What stood before stands there still.
    assert_eq!(totals["bar_volume_mm3"], plain["totals"]["bar_volume_mm3"]);
    assert!(plain["operations"][1]["heat"].is_null());
}

#[test]
fn people_read_sources_choices_and_cautions() {
    let shop = shop();
    let told = done(&["plan", &shop.design, "--sources", &shop.sources]);
    for words in [
        "The pair: ",
        "Other choices:",
        "What each source lets through:",
        "pacemaker",
        "carbon monoxide",
    ] {
        assert!(told.contains(words), "{words} in {told}");
    }
}

#[test]
fn a_source_that_cannot_be_read_is_named_and_the_others_stay() {
    let shop = shop();
    let damaged = Sources::default()
        .write()
        .replace("bore: \"1 1/2 in\"", "bore: \"wide\"");
    put(shop.folder.path(), "sources.ron", damaged);
    let told = done(&["plan", &shop.design, "--sources", &shop.sources]);
    assert!(
        told.contains("not read: ") && told.contains("sources 5"),
        "{told}"
    );
    assert!(told.contains("gas forge"), "{told}");
    put(shop.folder.path(), "sources.ron", "(heat_sources: 1");
    refused(
        &["plan", &shop.design, "--sources", &shop.sources],
        &["sources.ron", "line 1"],
    );
    refused(
        &["plan", &shop.design, "--sources", "no-such.ron"],
        &["no-such.ron"],
    );
}

/// What is kept in the shop is gone by, and nothing is asked where nothing is kept.
#[test]
fn sources_that_are_kept_are_gone_by() {
    let shop = shop();
    let kept = folder();
    heat_sources::keep(kept.path(), &Sources::default()).expect("it can be written");
    assert_eq!(names(kept.path()), [heat_sources::FILE]);
    let places = Places {
        remembered: Some(kept.path().to_owned()),
        ..Places::default()
    };
    let with = ask_in(&places, &["plan", &shop.design]);
    assert!(with.text.contains("Other choices:"), "{}", with.error);
    let without = ask(&["plan", &shop.design]);
    assert!(!without.text.contains("Other choices:"));
}

/// The loss to scale of its own heats changes the bar.
#[test]
fn scale_is_fed_back_when_it_is_asked_for() {
    let shop = shop();
    let bar = |more: &[&str]| {
        let asked = ["plan", &shop.design, "--sources", &shop.sources, "--json"];
        let answer = json(&[&asked[..], more].concat());
        answer["totals"]["bar_volume_mm3"].as_f64().unwrap()
    };
    assert!(bar(&["--scale-from-heats"]) < bar(&[]));
}

#[test]
fn each_operation_is_drawn_in_its_source() {
    let shop = shop();
    let drawn = shop.folder.path().join("drawn");
    let into = text(&drawn).to_owned();
    done(&[
        "plan",
        &shop.design,
        "--sources",
        &shop.sources,
        "--drawings",
        &into,
    ]);
    let names = names(&drawn);
    assert!(names.len() > 8, "{names:?}");
    for name in names {
        let svg = reinwright_tests::files::bytes(&drawn.join(&name));
        let (wide, high) = reinwright_tests::files::svg_size_mm(&svg);
        assert!(wide > 100.0 && high > 30.0, "{name}: {wide} x {high}");
    }
}

#[test]
fn the_coil_helper_answers() {
    let shop = shop();
    let answer = json(&["coil", &shop.design, "--sources", &shop.sources, "--json"]);
    assert!(answer["serves"].as_u64().unwrap() > 5, "{answer}");
    let said = done(&["coil", &shop.design, "--sources", &shop.sources]);
    assert!(said.contains("turns"), "{said}");
}
