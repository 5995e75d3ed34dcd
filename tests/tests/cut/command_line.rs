//! `reinwright cut`.

use reinwright_core::shop::cut::RACK_FILE;
use reinwright_core::tongs::document;
use reinwright_tests::command_line::{ask, done, json, refused, text};
use reinwright_tests::designs::samples_folder;
use reinwright_tests::files::{bytes, folder, pages, put};
use reinwright_tests::pairs::starting;

/// Eight flat pairs for 6 mm work from 16 mm square.
fn class(folder: &tempfile::TempDir) -> String {
    let design = starting("flat", "6 mm flat", "16 mm square");
    put(folder.path(), "flat.ron", document::write(&design));
    text(&folder.path().join("flat.ron")).to_owned()
}

/// A class of eight out of three bars of 3 m. What two pieces to a bar more would take is reckoned
/// here from the lengths alone: no number of bars below the answer has room for them.
#[test]
fn a_class_of_eight_out_of_three_bars() {
    let folder = folder();
    let file = class(&folder);
    let asked = ["cut", &file, "--pairs", "8", "--bars", "3 x 3 m"];
    let answer = json(&[&asked[..], &["--json"]].concat());
    let bars = answer["bars"].as_array().unwrap();
    assert_eq!(answer["bars_needed"], bars.len());
    assert_eq!(answer["proven_least"], true);
    let pieces: Vec<f64> = bars
        .iter()
        .flat_map(|bar| bar["pieces"].as_array().unwrap())
        .map(|piece| piece["length_mm"].as_f64().unwrap())
        .collect();
    assert_eq!(pieces.len(), 8);
    let kerf = answer["stocks"][0]["kerf_mm"].as_f64().unwrap();
    let to_a_bar = ((3000.0 + kerf) / (pieces[0] + kerf)).floor();
    let needed = (8.0 / to_a_bar).ceil();
    assert_eq!(answer["bars_needed"].as_f64().unwrap(), needed);
    for bar in bars {
        let cut = bar["pieces"].as_array().unwrap().len();
        let cut = f64::from(u32::try_from(cut).unwrap()) * (pieces[0] + kerf);
        let left = bar["offcut_mm"].as_f64().unwrap();
        assert!(
            (bar["length_mm"].as_f64().unwrap() - cut - left).abs() < 1e-6,
            "{bar}"
        );
    }
    let told = done(&asked);
    assert!(told.contains("proven that none fewer will do"), "{told}");
}

#[test]
fn families_and_several_designs_go_together() {
    let sample = |name: &str| text(&samples_folder().join(name)).to_owned();
    let [family, design] = ["family-flat.ron", "light-flat.ron"].map(sample);
    let answer = json(&["cut", &family, &design, "--pairs", "2", "--json"]);
    let stocks = answer["stocks"].as_array().unwrap();
    assert!(stocks.len() > 1, "{answer}");
    refused(
        &["cut", &family, &design, "--bars", "3 x 3 m"],
        &["--bars", "of which"],
    );
}

#[test]
fn the_rack_is_read_and_what_is_cut_is_taken_off() {
    let folder = folder();
    let file = class(&folder);
    let shop = text(folder.path()).to_owned();
    let bar = "bar: (stock: Square(side: \"16 mm\"))";
    let rack = format!(
        "(rack: 1, kerf: \"2 mm\", least_offcut: \"150 mm\", bars: [({bar}, length: \"3000 mm\", count: 1)], \
         sold: [({bar}, length: \"6000 mm\", price: 21.5)])"
    );
    put(folder.path(), RACK_FILE, rack);
    let before = bytes(&folder.path().join(RACK_FILE));
    let asked = ["cut", &file, "--pairs", "8", "--rack", &shop, "--json"];
    let answer = json(&asked);
    assert_eq!(answer["stocks"][0]["kerf_mm"], 2.0);
    assert_eq!(
        answer["price"],
        21.5 * answer["bars_to_buy"].as_f64().unwrap()
    );
    assert_eq!(
        before,
        bytes(&folder.path().join(RACK_FILE)),
        "asking changes nothing"
    );
    done(&[&asked[..6], &["--take"]].concat());
    let after =
        reinwright_core::shop::cut::Rack::read(&bytes(&folder.path().join(RACK_FILE))).unwrap();
    assert!(
        after.bars.iter().all(|bar| bar.length.mm() < 3000.0),
        "{after:?}"
    );
    // The rack is no design, and the shelf does not take it for one.
    let shelf = json(&["shelf", &shop, "--json"]);
    assert_eq!(shelf["not_read"].as_array().unwrap().len(), 0);
}

#[test]
fn a_rack_that_cannot_be_read_is_one_line_and_stays() {
    let folder = folder();
    let file = class(&folder);
    put(folder.path(), RACK_FILE, "(rack: 1, bars: 3)");
    refused(
        &["cut", &file, "--rack", text(folder.path()), "--take"],
        &[RACK_FILE, "line 1"],
    );
    assert_eq!(bytes(&folder.path().join(RACK_FILE)), b"(rack: 1, bars: 3)");
}

#[test]
fn bars_are_printed_with_their_pieces() {
    let folder = folder();
    let file = class(&folder);
    let [pdf, svg] = ["cut.pdf", "cut.svg"].map(|name| folder.path().join(name));
    for out in [&pdf, &svg] {
        done(&[
            "cut",
            &file,
            "--pairs",
            "8",
            "--bars",
            "3 x 3 m",
            "--out",
            text(out),
        ]);
    }
    let all = pages(&bytes(&pdf));
    assert_eq!(all.len(), 1);
    assert!(all[0].contains("both halves"), "{}", all[0]);
    assert!(
        String::from_utf8(bytes(&svg))
            .unwrap()
            .contains("both halves")
    );
    refused(
        &["cut", &file, "--out", &file],
        &["this is the design itself"],
    );
}

#[test]
fn what_is_wrong_is_said() {
    let folder = folder();
    let file = class(&folder);
    refused(&["cut", &file, "--bars", "three bars"], &["--bars"]);
    refused(
        &["cut", &file, "--bars", "3 x 90 m"],
        &["--bars", "90000 mm"],
    );
    refused(
        &["cut", &file, "--bars", "2 x 3 m of 5/8 in round"],
        &["--bars", "leave it out"],
    );
    refused(
        &["cut", &file, "--bars", "1 x 200 mm"],
        &["wants", "longest bar"],
    );
    refused(&["cut", &file, "--kerf", "wide"], &["--kerf"]);
    refused(&["cut", &file, "--take"], &["--rack"]);
    assert_eq!(ask(&["cut"]).status, 3);
}

/// A list in inches is refused in inches.
#[test]
fn what_fits_no_bar_is_told_in_the_units_of_the_design() {
    let folder = folder();
    let design = starting("flat", "3/8 in flat", "3/4 in square");
    put(folder.path(), "inch.ron", document::write(&design));
    let file = folder.path().join("inch.ron");
    let said = [" in of 3/4 in square in one", "gives 5 in: "];
    refused(&["cut", text(&file), "--bars", "1 x 5 in"], &said);
    let said = [" mm of 16 mm square in one", "gives 100 mm: "];
    refused(&["cut", &class(&folder), "--bars", "1 x 100 mm"], &said);
}
