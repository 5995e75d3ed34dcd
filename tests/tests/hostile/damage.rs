//! Damage by chance: whatever stands in a file or a field is refused in a sentence or taken, and
//! nothing that is taken is too much work.

use std::path::Path;
use std::time::{Duration, Instant};

use proptest::prelude::*;
use reinwright::jobs::pages::{Consent, Stack};
use reinwright::jobs::printing::Template;
use reinwright_core::asked::{Field, Value};
use reinwright_core::draw::{self, DrawOptions};
use reinwright_core::making::{plan, usual};
use reinwright_core::paper::{Paper, ink};
use reinwright_core::shop::Answers;
use reinwright_core::tongs::document::{self, Document};
use reinwright_tests::designs::varied;
use reinwright_tests::files::{bytes, names};
use reinwright_tests::input::{ENTRIES, Entry};
use reinwright_tests::{pairs, sentence};

/// What is damaged: the files of all formats, and a folder for each entry, with what broke something
/// once.
fn corpus(entry: &str) -> Vec<Vec<u8>> {
    let written = |wanted: &dyn Fn(&str) -> bool| read("format-1", wanted);
    let mut all = match entry {
        "document" => written(&|name| !name.starts_with("family-") && !name.starts_with("jaw-")),
        "family" => written(&|name| name.starts_with("family-")),
        "own jaw" => written(&|name| name.starts_with("jaw-")),
        "tool family" => read("tool-family-1", &|_| true),
        "marks" => written(&|name| name == "marks.ron"),
        _ => Vec::new(),
    };
    all.extend(read(
        &format!("corpus/{}", entry.replace(' ', "-")),
        &|_| true,
    ));
    all
}

fn read(folder: &str, wanted: &dyn Fn(&str) -> bool) -> Vec<Vec<u8>> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("files")
        .join(folder);
    let there = folder.exists().then(|| names(&folder));
    let all = there.into_iter().flatten();
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
    /// All stages together; an unoptimised program on a busy machine takes longer.
    const PATIENCE: Duration = Duration::from_secs(if cfg!(debug_assertions) { 10 } else { 1 });
    let begun = Instant::now();
    let answers = Answers::to(design);
    let Answers {
        model,
        balance,
        fit,
        strength,
        findings,
    } = &answers;
    for finding in findings {
        is_number(&finding.to_string());
    }
    is_number(&format!("{fit:?}"));
    is_number(&format!("{strength:?}"));
    if balance.trouble().is_none() {
        is_number(&format!("{balance:?}"));
        let parts = balance.pieces.iter().flat_map(|piece| &piece.parts);
        let parts = parts.map(|part| part.bar_length_mm);
        let wholes = [
            balance.bar_length_mm,
            balance.bar_mass_kg(),
            model.mass_kg(),
        ];
        for number in parts.chain(wholes) {
            assert!(number.is_finite() && number >= 0.0, "{number}");
        }
    }
    let made = plan(design, model, balance, usual(design, model));
    for operation in made.operations() {
        is_number(&format!("{operation:?}"));
    }
    let svg = ink::svg(
        &draw::pair(design, model, &DrawOptions::default()),
        "the pair",
    );
    is_number(&svg);
    let template = Template::of(design, None);
    let pages = template.pages(Paper::A4);
    if pages.stack() == Stack::Usual {
        let pdf = template.pdf(Paper::A4, Consent::Usual);
        assert!(pdf.expect("a usual number of pages").starts_with(b"%PDF"));
    }
    let took = begun.elapsed();
    assert!(took < PATIENCE, "{took:?}: {}", document::write(design));
    let most = most_memory();
    assert!(most < 1 << 30, "{most} bytes: {}", document::write(design));
}

/// No number of it is none, or past counting.
#[track_caller]
fn is_number(text: &str) {
    let words = || text.split(|c: char| !c.is_alphanumeric());
    let none = words().find(|word| ["NaN", "inf"].contains(word));
    assert_eq!(none, None, "{text}");
}

/// The most memory that the tests of this binary have held at once, bytes, where the system tells:
/// none of them, and no stage of theirs, has taken more.
fn most_memory() -> u64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let most = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    let kib = most.and_then(|most| {
        most.trim()
            .trim_end_matches("kB")
            .trim()
            .parse::<u64>()
            .ok()
    });
    kib.map_or(0, |kib| kib * 1024)
}

/// A number far past its range: nothing, less than nothing, or many times its most.
fn past(field: &Field, dice: u32) -> Option<Value> {
    let number = field.value.number()?;
    let past = match dice % 4 {
        0 => 0.0,
        1 => 1e6 * field.range.most,
        2 => field.range.least / 1e3,
        _ => number,
    };
    Some(field.value.with_number(past))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    #[test]
    fn designs_at_their_limits_go_through(dice in prop::collection::vec(any::<u32>(), 160)) {
        goes_through(&varied(&pairs::flat(), &dice, f64::INFINITY));
    }

    /// A file that is past its limits anywhere is refused with the place, and inside them taken.
    #[test]
    fn designs_past_their_limits_are_refused(
        choices in prop::collection::vec(any::<u32>(), 160),
        numbers in prop::collection::vec(any::<u32>(), 160),
    ) {
        let mut design = varied(&pairs::flat(), &choices, 0.0);
        let mut numbers = numbers.into_iter().cycle();
        design.revise(&mut |field| past(field, numbers.next().unwrap_or(0)));
        match document::read(document::write(&design).as_bytes()) {
            Ok(read) => goes_through(&read),
            Err(why) => sentence(&why.to_string()),
        }
    }
}
