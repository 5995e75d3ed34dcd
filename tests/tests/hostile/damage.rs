//! Damage by chance: whatever stands in a file or a field is refused in a sentence or taken, and
//! nothing that is taken is too much work.

use std::path::PathBuf;
use std::time::{Duration, Instant};

use proptest::prelude::*;
use reinwright::jobs::pages::Stack;
use reinwright::jobs::printing::Template;
use reinwright_core::paper::Paper;
use reinwright_core::shop::Answers;
use reinwright_core::tongs::document::{self, Document};
use reinwright_tests::designs::varied;
use reinwright_tests::files::{bytes, names};
use reinwright_tests::input::{ENTRIES, Entry};
use reinwright_tests::pairs;

/// What broke something once, or nearly: a folder for each entry, and the files of all formats.
fn corpus(entry: &str) -> Vec<Vec<u8>> {
    let text = |all: &[&str]| all.iter().map(|text| text.as_bytes().to_vec()).collect();
    match entry {
        "document" => files(|name| !name.starts_with("family-") && !name.starts_with("jaw-")),
        "family" => files(|name| name.starts_with("family-")),
        "own jaw" => files(|name| name.starts_with("jaw-")),
        "marks" => files(|name| name == "marks.ron"),
        "rack" => text(&[
            "(\n    rack: 1,\n    kerf: \"1.6 mm\",\n    bars: [(bar: (stock: Square(side: \"16 mm\"), \
            steel: Mild), length: \"3000 mm\", count: 3)],\n    sold: [],\n)\n",
        ]),
        "came out" => text(&[
            "(\n    came_out: 1,\n    halves: [(name: \"flat\", rein: \"360 mm\", left: \"12 mm\", \
            heat_s: 40.0, gone_percent: 4.5)],\n)\n",
        ]),
        "stock list" => text(&["in round: 1/4, 5/16, 3/8\nmm square: 10, 12 # and more\n"]),
        "size text" => text(&[
            "3/4 in",
            "1 1/2 in",
            "19 mm",
            "2 ft 3 1/4 in",
            "90 deg",
            "600 C",
            "300 x 500 mm",
            "1e308 ft",
            "0/0 in",
            "-0 mm",
            "1/",
            "\u{bd} in",
        ]),
        "stock text" => text(&[
            "3/8 x 1 flat",
            "M16 by its head on corners",
            "1 x 1 x 1/8 in angle by its back",
            "#5 rebar",
            "DN 25",
            "5/8 hex",
            "16 mm square on corners",
            "1e308 in round",
        ]),
        other => panic!("no corpus for {other}"),
    }
}

fn files(wanted: impl Fn(&str) -> bool) -> Vec<Vec<u8>> {
    let folder = PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/files/format-1"));
    let all = names(&folder).into_iter();
    all.filter(|name| wanted(name))
        .map(|name| bytes(&folder.join(name)))
        .collect()
}

/// Texts that stand where a number or a word is looked for.
const BAD: [&str; 16] = [
    "",
    "NaN",
    "inf",
    "-1",
    "1e308",
    "-0.0",
    "18446744073709551616",
    "(",
    "]]",
    "\"",
    "Some(",
    "\u{0}",
    "1e-320 mm",
    "999999 ft",
    "\u{202e}",
    "None",
];

/// Damages bytes in a place: some are taken away, and others put in.
fn damaged(file: &[u8], (at, gone, put): (usize, usize, Vec<u8>)) -> Vec<u8> {
    let at = at % (file.len() + 1);
    let end = (at + gone).min(file.len());
    [&file[..at], &put, &file[end..]].concat()
}

fn put_in() -> impl Strategy<Value = Vec<u8>> {
    let bad = prop::sample::select(&BAD[..]).prop_map(|text| text.as_bytes().to_vec());
    prop_oneof![bad, prop::collection::vec(any::<u8>(), 0..6)]
}

fn entries() -> impl Strategy<Value = Entry> {
    prop::sample::select(&ENTRIES[..])
}

#[test]
fn the_corpus_goes_through() {
    for (name, entry) in ENTRIES {
        let corpus = corpus(name);
        assert!(!corpus.is_empty(), "{name}");
        corpus.iter().for_each(|file| entry(file));
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn damage_is_refused_or_taken(
        entry in entries(),
        which: usize,
        damage in prop::collection::vec((any::<usize>(), 0..12_usize, put_in()), 1..4),
    ) {
        let corpus = corpus(entry.0);
        let file = corpus[which % corpus.len()].clone();
        (entry.1)(&damage.into_iter().fold(file, |file, one| damaged(&file, one)));
    }

    #[test]
    fn any_bytes_are_refused_or_taken(
        entry in entries(),
        file in prop::collection::vec(any::<u8>(), 0..200),
    ) {
        (entry.1)(&file);
    }
}

/// Every stage ends, and says numbers.
#[track_caller]
fn goes_through(design: &Document) {
    /// A stage of a design takes some hundredths of a second; an unoptimised program on a busy
    /// machine takes longer.
    const PATIENCE: Duration = Duration::from_secs(10);
    let begun = Instant::now();
    let answers = Answers::to(design);
    for finding in &answers.findings {
        let text = finding.to_string();
        assert!(!text.contains("NaN") && !text.contains("inf "), "{text}");
    }
    if answers.balance.trouble().is_none() {
        let balance = &answers.balance;
        let masses = [
            balance.bar_length_mm,
            balance.bar_mass_kg(),
            answers.model.mass_kg(),
        ];
        assert!(
            masses
                .iter()
                .all(|number| number.is_finite() && *number >= 0.0),
            "{masses:?}"
        );
        for part in balance.pieces.iter().flat_map(|piece| &piece.parts) {
            assert!(
                part.bar_length_mm >= 0.0 && part.bar_length_mm.is_finite(),
                "{part:?}"
            );
        }
    }
    let template = Template::of(design, None);
    let pages = template.pages(Paper::A4);
    if pages.stack() == Stack::Usual {
        let pdf = template.pdf(Paper::A4, reinwright::jobs::pages::Consent::Usual);
        assert!(pdf.expect("a usual number of pages").starts_with(b"%PDF"));
    }
    let took = begun.elapsed();
    assert!(took < PATIENCE, "{took:?}: {}", document::write(design));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    #[test]
    fn designs_at_their_limits_go_through(dice in prop::collection::vec(any::<u32>(), 160)) {
        goes_through(&varied(&pairs::flat(), &dice, f64::INFINITY));
    }
}
