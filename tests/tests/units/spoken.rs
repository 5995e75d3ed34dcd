//! What the smith reads is in the document's units throughout, and says the same in both.

use reinwright_core::asked::{PlainSection, Units};
use reinwright_core::draw::{DrawOptions, stressed};
use reinwright_core::finding::Finding;
use reinwright_core::paper::Item;
use reinwright_core::proof::strength::StrengthLoad;
use reinwright_core::shop::{Answers, family};
use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tongs::jaw::JawKind;
use reinwright_tests::command_line::{done, json, text};
use reinwright_tests::designs::{family_paths, samples};
use reinwright_tests::files::{bytes, folder, put};
use reinwright_tests::pairs::{self, mm, starting};

/// Signs of units that a smith reads: which document has them, and what one is in N, MPa, kg or °C.
/// Pound of 1959; pound-force and ksi by NIST SP 811, appendix B.
const SIGNS: [(&str, Units, f64); 8] = [
    ("lbf", Units::Inch, 4.448_221_615_260_5),
    ("ksi", Units::Inch, 6.894_757),
    ("lb", Units::Inch, 0.453_592_37),
    ("°F", Units::Inch, 1.0 / 1.8),
    ("N", Units::Millimetre, 1.0),
    ("MPa", Units::Millimetre, 1.0),
    ("kg", Units::Millimetre, 1.0),
    ("°C", Units::Millimetre, 1.0),
];
/// A unit that stands for another of its own system, a thousand of it.
const KILO: (&str, &str) = ("kN", "N");

/// A number with its unit, in N, MPa, kg or °C, and how far it may be off by rounding.
#[derive(Debug, Clone, Copy)]
struct Read {
    kind: usize,
    value: f64,
    rounded_by: f64,
}

/// Every number with one of the signs in a text, each of which must be of these units.
#[track_caller]
fn read(text: &str, units: Units) -> Vec<Read> {
    let words: Vec<&str> = text.split_whitespace().collect();
    let plain = |word: &str| word.trim_matches([',', '.', ';', ':', '(', ')']).to_owned();
    let mut all = Vec::new();
    for (at, word) in words.iter().enumerate() {
        let mut sign = plain(word);
        let kilo = sign == KILO.0;
        if kilo {
            sign = KILO.1.to_owned();
        }
        let Some(which) = SIGNS.iter().position(|(it, ..)| *it == sign) else {
            continue;
        };
        let (_, of, size) = SIGNS[which];
        assert_eq!(of, units, "{sign} in: {text}");
        let number = plain(words[at - 1]);
        let decimals = number.split_once('.').map_or(0, |(_, rest)| rest.len());
        let size = if kilo { 1000.0 * size } else { size };
        let number: f64 = number
            .parse()
            .unwrap_or_else(|_| panic!("{number} {sign} in: {text}"));
        let freezing = if sign == "°F" { 32.0 } else { 0.0 };
        all.push(Read {
            kind: which % 4,
            value: (number - freezing) * size,
            rounded_by: 0.5 * size * 0.1f64.powi(i32::try_from(decimals).expect("few decimals")),
        });
    }
    all
}

/// The same text in both units says the same numbers; gives back how many forces, stresses, masses
/// and temperatures.
#[track_caller]
fn agree(what: &str, [inch, metric]: [&str; 2]) -> [usize; 4] {
    let [a, b] = [read(inch, Units::Inch), read(metric, Units::Millimetre)];
    assert_eq!(a.len(), b.len(), "{what}: {inch}\n{metric}");
    for (a, b) in a.iter().zip(&b) {
        let same =
            a.kind == b.kind && (a.value - b.value).abs() <= a.rounded_by + b.rounded_by + 1e-6;
        assert!(same, "{what}: {a:?} {b:?} in: {inch}\n{metric}");
    }
    [0, 1, 2, 3].map(|kind| a.iter().filter(|read| read.kind == kind).count())
}

fn both(design: &Document) -> [Document; 2] {
    [Units::Inch, Units::Millimetre].map(|units| {
        let mut design = design.clone();
        design.units = units;
        design
    })
}

/// As made, and so weak, heavy and soft that force, stress, mass and clip have their say.
fn ways(name: &str, design: &Document) -> Vec<(String, Document)> {
    let mut weak = design.clone();
    (weak.rivet.diameter, weak.neck.depth) = (mm(2.0), mm(4.0));
    let thin = PlainSection::Round { diameter: mm(3.0) };
    (weak.rein.start, weak.rein.end) = (thin, thin);
    let mut heavy = design.clone();
    let thick = PlainSection::Round { diameter: mm(30.0) };
    (heavy.rein.start, heavy.rein.end) = (thick, thick);
    (heavy.rein.length, heavy.rein.hand) = (mm(700.0), mm(60.0));
    vec![
        (name.to_owned(), design.clone()),
        (format!("{name}, weak"), weak),
        (format!("{name}, heavy"), heavy),
    ]
}

fn designs() -> Vec<(String, Document)> {
    let starts = JawKind::ALL.iter().map(|jaw| {
        let name = jaw.name();
        (
            name.to_owned(),
            starting(name, "16 mm round", "20 mm square"),
        )
    });
    let shared = pairs::all()
        .into_iter()
        .map(|(name, pair)| (name.to_owned(), pair));
    let bases = samples().into_iter().chain(starts).chain(shared);
    bases
        .flat_map(|(name, design)| ways(&name, &design))
        .collect()
}

fn words(found: &[Finding]) -> String {
    let one = |f: &Finding| format!("{} \n{} \n{} \n", f.message, f.hint, f.source);
    found.iter().map(one).collect()
}

fn lettering(items: &[Item], all: &mut String) {
    for item in items {
        match item {
            Item::Text(text) => *all += &format!("{} \n", text.text),
            Item::Group(group) => lettering(&group.items, all),
            Item::Path(_) => {}
        }
    }
}

/// Findings, cold and hot, and the drawing of stress.
#[test]
fn findings_and_drawings_say_the_same_in_both_units() {
    let mut numbers = [0; 4];
    for (name, design) in designs() {
        for celsius in [20.0, 700.0] {
            let load = StrengthLoad::with_jaws_at(celsius);
            let told = both(&design).map(|design| {
                let known = Answers::under(&design, &load);
                let under = (&known.strength, known.strength.squeezes[1].hand_n);
                let drawn = stressed(&design, &known.model, under, &DrawOptions::default());
                let mut text = words(&known.findings);
                lettering(&drawn.items, &mut text);
                (text, known.findings)
            });
            let [(inch, a), (metric, b)] = &told;
            let told = agree(&format!("{name} at {celsius}"), [inch, metric]);
            numbers = [0, 1, 2, 3].map(|kind| numbers[kind] + told[kind]);
            let held = |found: &[Finding]| found.iter().map(|f| f.held).collect::<Vec<_>>();
            assert_eq!(held(a), held(b), "{name}");
        }
    }
    let told = numbers.iter().all(|count| *count > 20);
    assert!(told, "forces, stresses, masses, temperatures: {numbers:?}");
}

/// The text of the jobs, and their JSON, which has no other unit in either.
#[test]
fn jobs_say_the_same_in_both_units() {
    let folder = folder();
    let path = folder.path().join("pair.ron");
    for (name, design) in samples() {
        for job in ["fit", "balance"] {
            let hot: &[&str] = if job == "fit" {
                &["--jaw-heat", "700 C"]
            } else {
                &[]
            };
            let told = both(&design).map(|design| {
                put(folder.path(), "pair.ron", document::write(&design));
                let asked = [&[job, text(&path)], hot].concat();
                (done(&asked), json(&[&asked[..], &["--json"]].concat()))
            });
            let [(inch, a), (metric, b)] = &told;
            let [.., masses, _] = agree(&format!("{job} {name}"), [inch, metric]);
            assert!(masses > 0, "{inch}");
            assert_eq!(a["squeezes"], b["squeezes"], "{name}");
            assert_eq!(a["half"]["mass_kg"], b["half"]["mass_kg"], "{name}");
        }
    }
}

/// Without what is cut: each length is rounded up on the rule of its own unit, and what it weighs differs
/// by more than is shown.
fn without_what_is_cut(text: &str) -> String {
    let sum = |line: &str| {
        line.contains(", for ") && (line.ends_with(" pairs") || line.ends_with(" pair"))
    };
    let kept = text
        .lines()
        .filter(|line| !line.starts_with("Bar: cut ") && !sum(line));
    kept.map(|line| format!("{line}\n")).collect()
}

/// The same of families.
#[test]
fn families_say_the_same_in_both_units() {
    let folder = folder();
    let path = folder.path().join("set.ron");
    for sample in family_paths() {
        let family = family::open(&bytes(&sample)).expect("a family").family;
        for job in ["fit", "balance", "findings"] {
            let told = [Units::Inch, Units::Millimetre].map(|units| {
                let mut family = family.clone();
                family.base.units = units;
                put(folder.path(), "set.ron", family::write(&family));
                done(&[job, text(&path)])
            });
            let [inch, metric] = told.map(|text| without_what_is_cut(&text));
            agree(&format!("{job} {}", family.name), [&inch, &metric]);
        }
    }
}
