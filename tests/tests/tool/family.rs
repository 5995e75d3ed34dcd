//! Families of tools: one tool in many sizes, in its file and in its steel.

use std::path::Path;

use proptest::prelude::*;
use reinwright_core::asked::{Bar, Field, Stock, parse_bar};
use reinwright_core::finding::Severity;
use reinwright_core::shop::family::{
    self, EditError, Family, InSizes, MOST_SIZES, OfSize, Rounding, Rule, Size, answer_all, totals,
};
use reinwright_core::steel::DENSITY_KG_MM3;
use reinwright_core::tool::{self, Mount, Tool, ToolKind, ToolStyle};
use reinwright_core::units::{Length, MM_PER_INCH};
use reinwright_tests::designs::samples_folder;
use reinwright_tests::files::{bytes, names};
use reinwright_tests::tools::{all, tool};
use reinwright_tests::{close, pairs, sentence, within};

fn length(text: &str) -> Length {
    text.parse().expect("a size")
}

/// The drifts of the samples.
fn drifts() -> Family<Tool> {
    let path = samples_folder().join("tools/drift-set.ron");
    family::read_of(&bytes(&path)).expect("a family of tools")
}

/// Some sizes of a tool, all from its bar.
fn sizes(base: &Tool, sizes: &[&str]) -> Family<Tool> {
    let mut family = Family::from_design(base);
    family.sizes.clear();
    for size in sizes {
        family.add(Size::new(length(size))).expect("room");
    }
    family
}

fn text_at(tool: &Tool, path: &str) -> String {
    tool.field(path)
        .unwrap_or_else(|| panic!("no {path}"))
        .value
        .to_string()
}

#[test]
fn every_style_has_a_length_that_leads() {
    for (name, own) in all() {
        let path = own.style_kind().leading();
        let field = own.field(path).unwrap_or_else(|| panic!("{name}: {path}"));
        assert!(field.is_length(), "{name}: {path}");
        assert_eq!(own.measure().to_string(), field.value.to_string());
        let mut larger = own.clone();
        larger.resize(length("5/8 in"), own.bar);
        assert_eq!(text_at(&larger, path), "5/8 in", "{name}");
        // Nothing else is touched.
        larger.resize(own.measure(), own.bar);
        assert_eq!(larger, own, "{name}");
    }
}

/// The size by which a tool is begun leads it, but for hardy tools that work by another measure.
#[test]
fn what_one_is_begun_by_leads_it() {
    for kind in ToolKind::ALL {
        let own = Tool::leading(
            *kind,
            length("1/2 in"),
            parse_bar("1 in square").expect("bar"),
        );
        assert_eq!(own.measure(), length("1/2 in"), "{kind}");
    }
}

/// Volumes of a cone's frustum and of a cylinder, summed by hand from the sizes in the document.
fn drift_volume_mm3(own: &Tool) -> f64 {
    let (ToolStyle::Drift(drift), Mount::Struck(struck)) = (&own.shape.style, &own.shape.mount)
    else {
        panic!("a drift is struck");
    };
    let frustum =
        |long: f64, a: f64, b: f64| std::f64::consts::PI * long / 12.0 * (a * a + a * b + b * b);
    let body = struck.body.depth_mm();
    let [lead, full, back] = [drift.lead, drift.full, drift.back].map(Length::mm);
    let size = drift.size.mm();
    let chamfer = struck.chamfer.mm();
    let plain = struck.length.mm() - lead - full - back - chamfer;
    frustum(lead, drift.enters.mm(), size)
        + frustum(full, size, size)
        + frustum(back, size, body)
        + frustum(plain, body, body)
        + frustum(chamfer, body, struck.face.mm())
}

#[test]
fn each_drift_of_the_sample_is_sound_and_weighs_what_its_cones_do() {
    let family = drifts();
    assert_eq!(family.sizes.len(), 7);
    for answer in answer_all(&family) {
        let label = answer.label();
        assert!(
            answer.worst() <= Some(Severity::Note),
            "{label}: {:#?}",
            answer.findings()
        );
        let expected = drift_volume_mm3(answer.document()) * DENSITY_KG_MM3;
        close(label, answer.mass_kg(), expected, 1e-6);
        let made = answer.document();
        assert_eq!(made.measure().to_string(), label);
        assert_eq!(
            made.name == family.base.name,
            label == "1/4 in",
            "{}",
            made.name
        );
    }
}

/// Bar by bar: what is cut of all sizes is what each is cut to.
#[test]
fn the_bar_of_a_set_is_that_of_its_sizes() {
    let answers = answer_all(&drifts());
    let all = totals(&answers, 3);
    let tools: u32 = all.iter().map(|total| total.pairs).sum();
    assert_eq!(tools, 21);
    let units = drifts().base.units;
    let cut = |of: &dyn OfSize<Of = Tool>| 3.0 * of.balance().cut_length(units).mm();
    for total in &all {
        let own = total.sizes.iter().map(|at| cut(&answers[*at])).sum();
        close("bar", total.length_mm, own, 1e-12);
    }
    // 3/8, 1/2, 5/8, 3/4 and 7/8 in round.
    assert_eq!(all.len(), 5);
}

/// What a length follows unless the smith says otherwise.
#[test]
fn rules_follow_what_a_tool_is() {
    #[track_caller]
    fn check(kind: ToolKind, path: &str, rule: Rule) {
        let family = Family::from_design(&tool(kind, "1/2 in", "1 in square"));
        let found = family.rule(path).map(|(rule, _)| rule);
        assert_eq!(found, Some(rule), "{kind} {path}");
    }
    check(ToolKind::Drift, "working.lead", Rule::WithWork);
    check(ToolKind::Drift, "body.length", Rule::WithWork);
    check(ToolKind::Drift, "body.body.diameter", Rule::WithWork);
    check(ToolKind::Drift, "body.hold.reach", Rule::Same);
    check(ToolKind::RoundPunch, "working.taper", Rule::WithWork);
    check(ToolKind::RoundPunch, "body.length", Rule::Same);
    check(ToolKind::RoundPunch, "body.body.side", Rule::WithBar);
    check(ToolKind::CutOff, "shank.shank", Rule::WithWork);
    check(ToolKind::CutOff, "shank.play", Rule::Same);
    check(ToolKind::CutOff, "shank.block_high", Rule::WithBar);
    check(ToolKind::BottomSwage, "shank.hole", Rule::Same);
    check(ToolKind::BottomSwage, "shank.shank", Rule::Same);
    check(ToolKind::BottomSwage, "allowances.kerf", Rule::Same);
}

/// A drift of every common size drops through its hole: rounding never makes its body larger than 0.9 of it, and
/// no smaller than by a sixty-fourth, of the base and of the size.
#[test]
fn no_body_is_rounded_to_the_size_of_its_hole() {
    let texts: Vec<String> = (3..=24).map(|n| format!("{n}/16 in")).collect();
    let texts: Vec<&str> = texts.iter().map(String::as_str).collect();
    let base = tool(ToolKind::Drift, "3/8 in", "3/8 in round");
    for size in &sizes(&base, &texts).sizes {
        let made = sizes(&base, &texts).made(size).document;
        let Mount::Struck(struck) = &made.shape.mount else {
            panic!("a drift is struck");
        };
        let (body, full) = (struck.body.depth_mm(), made.measure().mm());
        let part = MM_PER_INCH / 64.0;
        let least = 0.9 * full - part * full / base.measure().mm() - part;
        let label = size.label();
        assert!(body <= 0.9 * full + 1e-6 && body > least, "{label}: {body}");
        let parts = body / part;
        within(&label, parts, parts.round(), 1e-6);
    }
}

fn scaled_bar(bar: Bar, k: f64) -> Bar {
    let scaled =
        |length: Length| Length::decimal(length.mm() * k / length.unit().mm(), length.unit());
    let stock = match bar.stock {
        Stock::Round { diameter } => Stock::Round {
            diameter: scaled(diameter),
        },
        Stock::Square { side } => Stock::Square { side: scaled(side) },
        Stock::Flat { thickness, width } => Stock::Flat {
            thickness: scaled(thickness),
            width: scaled(width),
        },
    };
    Bar { stock, ..bar }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    /// Source: dimensions. A shape k times as large has k³ the volume, whatever tool it is.
    #[test]
    fn proportional_tools_are_alike(at in 0_usize..12, k in 0.7..1.4_f64, bar_first: bool) {
        let (name, base) = all().swap_remove(at);
        let mut family = Family::from_design(&base);
        family.rounding = Rounding::Exact;
        let rules = if bar_first { [Rule::WithBar, Rule::WithWork] } else { [Rule::WithWork, Rule::WithBar] };
        let mut turn = rules.into_iter().cycle();
        for field in base.fields().into_iter().filter(Field::is_length) {
            family.rules.insert(field.path, turn.next().expect("it goes round"));
        }
        let lead = base.measure();
        let mut size = Size::new(Length::decimal(lead.mm() * k / lead.unit().mm(), lead.unit()));
        size.bar = Some(scaled_bar(base.bar, k));
        family.sizes.push(size);
        let made = family.made(&family.sizes[1]);
        prop_assert!(made.findings.is_empty(), "{:?}", made.findings);
        let volume = |tool: &Tool| tool::resolve(tool).piece.mass().volume;
        close(name, volume(&made.document), volume(&base) * k.powi(3), 1e-6);
    }

    /// A family that was written is read as it was.
    #[test]
    fn what_is_written_is_read(at in 0_usize..12, count in 1_u32..6, exact: bool) {
        let (_, base) = all().swap_remove(at);
        let mut family = Family::from_design(&base);
        if exact {
            family.rounding = Rounding::Exact;
        }
        for n in 1..=count {
            let size = Length::from_mm(4.0 * f64::from(n), base.measure().unit());
            family.add(Size::new(size)).expect("room");
        }
        family.set(0, "allowances.kerf", "2 mm").expect("a value");
        let path = base.fields().into_iter().find(|field| field.is_length() && !base.leads(&field.path)).expect("one").path;
        family.set_rule(&path, Rule::WithBar).expect("a length");
        let text = family::write(&family);
        prop_assert!(family::is_tool_family(text.as_bytes()));
        prop_assert!(!family::is_family(text.as_bytes()));
        prop_assert!(!tool::is_tool(text.as_bytes()));
        prop_assert_eq!(family::read_of(text.as_bytes()), Ok(family));
    }
}

/// The words of its file are those of a tool: its sizes have a size, and its rules go with it.
#[test]
fn a_file_says_size_and_not_work() {
    let mut family = drifts();
    family
        .set_rule("allowances.kerf", Rule::WithWork)
        .expect("a length");
    let text = family::write(&family);
    for words in ["tool_family: 1", "size: \"1/4 in\"", "WithSize"] {
        assert!(text.contains(words), "{words} in {text}");
    }
    assert!(
        !text.contains("work:") && !text.contains("WithWork"),
        "{text}"
    );
}

/// Files of the first format are read for ever, and stay what they are.
#[test]
fn every_family_of_the_format_is_read() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("files/tool-family-1");
    let names = names(&folder);
    assert!(names.len() >= 3, "{names:?}");
    for name in names {
        let bytes = bytes(&folder.join(&name));
        let read: Family<Tool> =
            family::read_of(&bytes).unwrap_or_else(|why| panic!("{name}: {why}"));
        assert_eq!(family::write(&read).as_bytes(), bytes, "{name}");
    }
}

#[test]
fn sizes_are_added_changed_and_let_go() {
    let mut family = drifts();
    assert_eq!(family.add(Size::new(length("9/16 in"))), Ok(5));
    assert_eq!(family.add_between(1, 2), Ok(2));
    assert_eq!(family.sizes[2].label(), "11/32 in");
    family.set(2, "working.lead", "2 in").expect("a value");
    family.set(2, "bar.diameter", "1 in").expect("a bar");
    family.set(2, "working.size", "23/64 in").expect("its size");
    let size = &family.sizes[2];
    assert_eq!(size.label(), "23/64 in");
    assert_eq!(size.set.len(), 1, "{:?}", size.set);
    let made = family.made(size).document;
    assert_eq!(text_at(&made, "working.lead"), "2 in");
    assert_eq!(text_at(&made, "bar.diameter"), "1 in");
    assert_eq!(family.let_go(2, "working.lead"), Ok(true));
    assert_eq!(family.let_go(2, "bar.diameter"), Ok(true));
    assert!(family.sizes[2].set.is_empty() && family.sizes[2].bar.is_none());
    let differs = family.differs_from_base(2);
    assert!(
        differs.iter().any(|own| own.path == "working.size"),
        "{differs:?}"
    );
    let refused = family.set(2, "working.lead", "long").expect_err("no size");
    sentence(&refused.to_string());
    assert_eq!(
        family.add_between(0, 0),
        Err(EditError::NoBetween(
            "1/4 in".to_owned(),
            "1/4 in".to_owned()
        ))
    );
}

/// What is designed one by one and gathered comes out as it was.
#[test]
fn tools_that_are_gathered_stay_what_they_are() {
    let of = |size: &str, bar: &str| tool(ToolKind::RoundPunch, size, bar);
    let mut third = of("3/8 in", "1 in round");
    third
        .set("body.hold.held", "by a handle")
        .expect("a choice");
    third.set("body.hold.cheek", "3/8 in").expect("an eye");
    let tools = [
        of("1/4 in", "5/8 in round"),
        of("5/16 in", "3/4 in round"),
        third,
    ];
    let family = Family::of_all(&tools).expect("one style");
    for (size, own) in family.sizes.iter().zip(&tools) {
        let made = family.made(size).document;
        assert_eq!(made.fields(), own.fields(), "{}", size.label());
    }
    assert_eq!(Family::<Tool>::of_all(&[]), None);
}

#[track_caller]
fn refused(from: &str, to: &str, words: &str) {
    let text = family::write(&drifts());
    assert!(text.contains(from), "{text}");
    let why = family::read_of::<Tool>(text.replacen(from, to, 1).as_bytes());
    let why = why.expect_err("it is bad").to_string();
    sentence(&why);
    assert!(why.contains(words), "{why}");
}

#[test]
fn what_cannot_be_is_refused_in_a_sentence() {
    refused("tool_family: 1", "tool_family: 2", "a newer Reinwright");
    refused("tool_family: 1", "tool_family: 0", "write tool_family: 1");
    refused(
        "size: \"5/16 in\"",
        "size: \"90 in\"",
        "sizes 2, size is 90 in",
    );
    refused(
        "size: \"5/16 in\"",
        "work: \"5/16 in\"",
        "nothing here is called work",
    );
    refused(
        "enters: \"1/8 in\"",
        "enters: \"90 in\"",
        "base.shape.style.enters is 90 in",
    );
    refused("format: 1", "format: 0", "base.format");
    let none = "there is none: write one at least, such as (size: \"1/2 in\")";
    let mut family = drifts();
    family.sizes.clear();
    let why = family.check().expect_err("no size").to_string();
    assert!(why.contains(none), "{why}");
}

/// What is of something else says so.
#[test]
fn pairs_tools_and_their_families_are_told_apart() {
    #[track_caller]
    fn check(text: &str, words: &str) {
        let why = family::read_of::<Tool>(text.as_bytes()).expect_err("none of tools");
        sentence(&why.to_string());
        assert!(why.to_string().contains(words), "{why}");
    }
    let pair = pairs::flat();
    check(
        &family::write(&Family::from_design(&pair)),
        "a family of pairs",
    );
    check(
        &reinwright_core::tongs::document::write(&pair),
        "one design and no family",
    );
    let own = &drifts().base;
    check(&tool::write(own), "one tool and no family");
    let why = family::read(family::write(&drifts()).as_bytes()).expect_err("none of pairs");
    assert!(why.to_string().contains("a family of tools"), "{why}");
}

#[test]
fn a_family_holds_a_thousand_sizes() {
    let mut family = drifts();
    while family.sizes.len() < MOST_SIZES {
        family.sizes.push(Size::new(length("1/2 in")));
    }
    assert_eq!(family.add(Size::new(length("1 in"))), Err(EditError::Full));
    family.sizes.push(Size::new(length("1/2 in")));
    sentence(&family.check().expect_err("too many").to_string());
}

/// A damaged size costs itself, and a base that cannot be read is as the style is begun.
#[test]
fn a_damaged_family_opens_as_far_as_it_can() {
    let text = family::write(&drifts());
    let opened = |from: &str, to: &str| {
        assert!(text.contains(from), "{from}");
        family::open_of::<Tool>(text.replacen(from, to, 1).as_bytes()).expect("it opens")
    };
    let one = opened("size: \"5/16 in\"", "size: \"5/16 butter\"");
    assert_eq!(
        (one.family.sizes.len(), one.lost.len()),
        (6, 1),
        "{:?}",
        one.lost
    );
    assert!(one.sound.is_some());
    assert!(one.lost[0].starts_with("sizes 2: line"), "{:?}", one.lost);
    let base = opened("section: Round", "section: Flat");
    assert!(base.sound.is_none());
    assert_eq!(base.family.base.style_kind(), ToolKind::Drift);
    assert_eq!(base.family.base.measure(), length("1/4 in"));
    assert!(
        base.lost[0].starts_with("base.shape: line"),
        "{:?}",
        base.lost
    );
    let newer = text.replacen("tool_family: 1", "tool_family: 2", 1);
    let (newer, lost) = family::newer_of::<Tool>(newer.as_bytes()).expect("it is shown");
    assert_eq!((newer.sizes.len(), lost.len()), (7, 0), "{lost:?}");
}
