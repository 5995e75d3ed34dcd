//! The command line with families of tools, and with what it cannot use.

use std::path::Path;

use reinwright_core::shop::family::{self, Family};
use reinwright_core::tool::{self, Tool};
use reinwright_tests::close;
use reinwright_tests::command_line::{ask, done, json, refused, text};
use reinwright_tests::designs::samples_folder;
use reinwright_tests::files::{bytes, folder, names, pages, put};

fn drifts() -> String {
    text(&samples_folder().join("tools/drift-set.ron")).to_owned()
}

fn sample(name: &str) -> String {
    text(&samples_folder().join(name)).to_owned()
}

fn read(path: &Path) -> Family<Tool> {
    family::read_of(&bytes(path)).unwrap_or_else(|why| panic!("{}: {why}", path.display()))
}

/// A new family is in proportion to its first size, from the bars that were said.
#[test]
fn a_family_is_begun_by_its_sizes() {
    let folder = folder();
    let file = folder.path().join("punches.ron");
    let mut new = vec![
        "new",
        "--tool",
        "round punch",
        "--bar",
        "3/4 in round",
        "--sizes",
    ];
    new.extend(["3/8 in, 1/4 in of 5/8 in round", "--out", text(&file)]);
    assert!(done(&new).contains("sizes: 2"));
    let family = read(&file);
    let labels: Vec<String> = family.sizes.iter().map(|size| size.label()).collect();
    assert_eq!(labels, ["1/4 in", "3/8 in"]);
    assert_eq!(family.base.name, "3/8 in round punch");
    let bar = family.sizes[0].bar.expect("its own bar");
    assert_eq!(bar.stock.words(), "5/8 in round");
    assert_eq!(bar.steel, family.base.bar.steel);
    let mut bad = new.clone();
    bad[6] = "3/8 in, a lot";
    refused(&bad, &["--sizes", "a lot"]);
    bad[6] = "3/8 in of butter";
    refused(&bad, &["--sizes"]);
    let mut both = new.clone();
    both.extend(["--size", "1 in"]);
    refused(&both, &["--size"]);
}

/// A set of swages is for one hardy hole, and led by what each rounds.
#[test]
fn swages_are_for_one_hole() {
    let folder = folder();
    let file = folder.path().join("swages.ron");
    let mut new = vec![
        "new",
        "--tool",
        "bottom-swage",
        "--bar",
        "2 in square",
        "--sizes",
    ];
    new.extend(["1/2 in, 5/8 in", "--size", "1 in", "--out", text(&file)]);
    done(&new);
    for size in &read(&file).sizes {
        let made = read(&file).made(size).document;
        let at = |path: &str| made.field(path).expect("a field").value.to_string();
        assert_eq!(
            (at("shank.hole"), at("working.groove")),
            ("1 in".to_owned(), size.label())
        );
    }
}

#[test]
fn a_set_is_balanced_and_noticed_size_by_size() {
    let balance = json(&["balance", &drifts(), "--json"]);
    assert_eq!(balance["sizes"].as_array().expect("sizes").len(), 7);
    let of = |all: &serde_json::Value, key: &str| -> f64 {
        let all = all.as_array().expect("a list").iter();
        all.map(|own| own[key].as_f64().expect("a number")).sum()
    };
    close(
        "bar",
        of(&balance["totals"], "cut_length_mm"),
        of(&balance["sizes"], "cut_length_mm"),
        1e-12,
    );
    assert_eq!(of(&balance["totals"], "tools"), 7.0);
    let told = done(&["balance", &drifts()]);
    assert!(
        told.contains("One tool of each size") && told.contains("for 2 tools"),
        "{told}"
    );
    let findings = json(&["findings", &drifts(), "--json"]);
    assert_eq!(findings["worst"], "Note");
    assert!(findings.get("gaps").is_none(), "no tool holds stock");
    assert_eq!(ask(&["findings", &drifts()]).status, 0);
}

#[test]
fn a_set_is_written_as_one_pdf_drawings_and_tools() {
    let folder = folder();
    let out = folder.path().join("set");
    done(&["family", &drifts(), "--out", text(&out)]);
    let pages = pages(&bytes(&out.join("drifts-for-the-benches.pdf")));
    let all = pages.concat();
    for words in [
        "Contents",
        "Table of sizes",
        "The bar of the set",
        "All sizes",
        "3/4 in: The tool",
    ] {
        assert!(all.contains(words), "{words}");
    }
    // In the contents and in the title block, never among the rows of the table itself.
    assert_eq!(all.matches("Table of sizes").count(), 2, "{all}");
    let designs = names(&out.join("designs"));
    assert_eq!(designs.len(), 7);
    for name in &designs {
        tool::read(&bytes(&out.join("designs").join(name))).expect("a tool");
    }
    assert_eq!(names(&out.join("svg")).len(), 7 + 4);
    // One size alone, and nothing of the set.
    let one = folder.path().join("one");
    done(&["family", &drifts(), "--out", text(&one), "--sizes", "2"]);
    let one = reinwright_tests::files::pages(&bytes(&one.join("drifts-for-the-benches.pdf")));
    assert!(one.len() < pages.len() && !one.concat().contains("Contents"));
}

/// One PDF has the job sheets of all sizes.
#[test]
fn job_sheets_of_a_set_are_bound_together() {
    let folder = folder();
    let out = folder.path().join("sheets.pdf");
    for file in [drifts(), sample("family-v-bit.ron")] {
        let said = done(&["job-sheet", &file, "--out", text(&out)]);
        let pages = pages(&bytes(&out));
        assert!(said.contains(&format!("{} pages", pages.len())), "{said}");
    }
    let stages = [
        "job-sheet",
        &drifts(),
        "--out",
        text(&out),
        "--stages",
        text(folder.path()),
    ];
    refused(&stages, &["--stages", "one size"]);
}

#[test]
fn cut_list_shelf_and_coil_take_a_set() {
    let cut = json(&["cut", &drifts(), "--json"]);
    let pieces: usize = cut["bars"]
        .as_array()
        .expect("bars")
        .iter()
        .map(|bar| bar["pieces"].as_array().expect("pieces").len())
        .sum();
    assert_eq!(pieces, 7);
    let folder = text(&samples_folder().join("tools")).to_owned();
    let shelf = json(&["shelf", &folder, "--json"]);
    assert_eq!(shelf["tools"].as_array().expect("tools").len(), 4 + 7);
    assert_eq!(shelf["not_read"].as_array().map(Vec::len), Some(0));
    let coil = json(&["coil", &drifts(), &sample("family-v-bit.ron"), "--json"]);
    assert!(coil["serves"].as_u64() > Some(0), "{coil}");
}

/// A damaged size is told and left out of what is reckoned; a guessed base gives no numbers.
#[test]
fn a_damaged_set_says_what_is_wrong() {
    let folder = folder();
    let whole = String::from_utf8(bytes(drifts().as_ref())).expect("text");
    put(
        folder.path(),
        "one.ron",
        whole.replacen("\"5/16 in\"", "\"5/16 butter\"", 1),
    );
    let one = text(&folder.path().join("one.ron")).to_owned();
    let answer = ask(&["balance", &one]);
    assert_eq!(answer.status, 2);
    assert!(
        answer.text.starts_with("Stop: file: sizes 2"),
        "{}",
        answer.text
    );
    put(
        folder.path(),
        "base.ron",
        whole.replacen("section: Round", "section: Flat", 1),
    );
    let base = text(&folder.path().join("base.ron")).to_owned();
    refused(&["balance", &base], &["base.shape", "mend the file first"]);
    assert_eq!(ask(&["findings", &base]).status, 2);
    refused(&["cut", &one], &["sizes 2", "mend the file first"]);
}

#[test]
fn jobs_for_one_design_say_that_this_is_a_set() {
    for job in ["plan", "fit"] {
        refused(
            &[job, &drifts()],
            &["a family of tools", "reinwright family"],
        );
    }
    let tool = sample("tools/textbook-drift.ron");
    let folder = folder();
    let out = text(folder.path()).to_owned();
    refused(
        &["family", &tool, "--out", &out],
        &["one tool and no family"],
    );
    refused(
        &["tools-for", &drifts(), "--out", &out],
        &["a family of tools"],
    );
}

/// Each kind of tool is one file of sizes, and makes the very tools that stand alone otherwise.
#[test]
fn tools_for_a_family_may_be_families() {
    let folder = folder();
    let (alone, sets) = (folder.path().join("alone"), folder.path().join("sets"));
    let file = sample("family-v-bit.ron");
    done(&["tools-for", &file, "--out", text(&alone)]);
    let said = done(&["tools-for", &file, "--out", text(&sets), "--as-families"]);
    assert!(said.contains("drift-family.ron"), "{said}");
    let alone: Vec<Tool> = names(&alone)
        .iter()
        .map(|name| tool::read(&bytes(&alone.join(name))).expect("a tool"))
        .collect();
    let mut count = 0;
    for name in names(&sets) {
        let family = read(&sets.join(name));
        for size in &family.sizes {
            let made = family.made(size).document;
            let same = |own: &Tool| own.fields() == made.fields();
            assert!(alone.iter().any(same), "{}", made.name);
            count += 1;
        }
    }
    assert_eq!(count, alone.len());
}

/// What is wrong is said in words that stand in the file or in what was typed.
#[test]
fn what_is_wrong_is_named_where_it_stands() {
    let folder = folder();
    let at = |name: &str| text(&folder.path().join(name)).to_owned();
    let whole =
        String::from_utf8(bytes(sample("tools/textbook-drift.ron").as_ref())).expect("text");
    let check = |from: &str, to: &str, words: &[&str]| {
        assert!(whole.contains(from), "{from}");
        put(folder.path(), "bad.ron", whole.replacen(from, to, 1));
        refused(&["findings", &at("bad.ron")], words);
    };
    check("kind: Tool,", "", &["kind is missing", "write kind: Tool"]);
    check(
        "size: \"5/16 in\"",
        "size: \"500 in\"",
        &["shape.style.size is 500 in"],
    );
    check(
        "diameter: \"3/8 in\"",
        "diameter: \"0 in\"",
        &["bar.stock.diameter"],
    );
    check(
        "length: \"3 11/16 in\"",
        "length: \"0 in\"",
        &["shape.mount.length"],
    );
    check("tail: \"0 mm\"", "tail: \"5000 m\"", &["line"]);
    check(
        "section: Round",
        "section: Flat",
        &["Flat is not known here: write one of Round"],
    );
    check("tail:", "tale:", &["nothing here is called tale"]);
    let new = |more: &[&str], words: &[&str]| {
        let out = at("x.ron");
        let mut all = vec!["new", "--out", &out, "--tool", "drift"];
        all.extend(more);
        refused(&all, words);
    };
    new(
        &["--bar", "3000 in round"],
        &["--bar", "bar diameter comes to 3000 in"],
    );
    new(
        &["--bar", "1 in round", "--size", "4000 in"],
        &["--size", "4000 in"],
    );
    new(
        &["--bar", "1 in round", "--jaw", "flat"],
        &["--tool", "--jaw", "cannot be used"],
    );
    refused(
        &["shelf", &sample("light-flat.ron")],
        &["this is a file", "folder"],
    );
    let flat = sample("light-flat.ron");
    refused(&["plan", &flat, "--across", "-5"], &["--across", "-5"]);
    refused(
        &["template", &flat, "--out", &at("t.pdf"), "--hot", "-5 C"],
        &["--hot", "-5"],
    );
}
