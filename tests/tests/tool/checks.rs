//! What stands against tools: none is begun with a Stop or a Mend, and each check is provoked.

use std::collections::BTreeSet;

use reinwright_core::finding::{Finding, Kind, Severity};
use reinwright_core::shop::ToolAnswers;
use reinwright_core::steel::Steel;
use reinwright_core::tool::steels::{TEMPER_SOURCE, temper};
use reinwright_core::tool::{Hold, Mount, Tool, ToolKind, check, resolve};
use reinwright_tests::tools::all;
use reinwright_tests::{sentence, within};

#[test]
fn none_is_begun_with_more_than_a_note() {
    for (name, own) in all() {
        let found = ToolAnswers::to(&own).findings;
        let worse: Vec<&Finding> = found
            .iter()
            .filter(|own| own.severity > Severity::Note)
            .collect();
        assert!(worse.is_empty(), "{name}: {worse:#?}");
        for finding in &found {
            sentence(&finding.message);
            sentence(&finding.hint);
            assert!(!finding.source.is_empty());
        }
    }
}

fn begun(kind: ToolKind) -> Tool {
    all()
        .into_iter()
        .find(|own| own.1.style_kind() == kind)
        .expect("it is listed")
        .1
}

/// One value is changed, and one thing is noticed that was not before.
#[track_caller]
fn provokes(kind: ToolKind, (path, text): (&str, &str), expected: (Kind, Severity)) {
    let mut own = begun(kind);
    let count = |own: &Tool| {
        let found = check(own, &resolve(own));
        found
            .iter()
            .filter(|own| own.kind == expected.0 && own.severity == expected.1)
            .count()
    };
    let before = count(&own);
    own.set(path, text).unwrap_or_else(|why| panic!("{why}"));
    let found = check(&own, &resolve(&own));
    assert!(count(&own) > before, "{path} {text}: {found:#?}");
    for finding in &found {
        sentence(&finding.message);
        named(&own, finding);
    }
}

/// What asks for a mend names a value as the parts list calls it.
#[track_caller]
fn named(own: &Tool, finding: &Finding) {
    let fields = own.fields();
    let calls = |label: &str| finding.hint.contains(label);
    assert!(
        finding.severity == Severity::Note || fields.iter().any(|field| calls(field.label)),
        "{}: {}",
        finding.message,
        finding.hint
    );
}

/// Nonsense is told in words and not in numbers below nothing: every value at both its ends.
#[test]
fn no_message_has_a_number_below_nothing() {
    for (name, own) in all() {
        for field in own.fields() {
            let Some(number) = field.value.number() else {
                continue;
            };
            for end in [field.range.least, 4.0 * number, field.range.most] {
                let mut other = own.clone();
                other.put(
                    &field.path,
                    field.value.with_number(end.min(field.range.most)),
                );
                for finding in ToolAnswers::to(&other).findings {
                    sentence(&finding.message);
                    named(&other, &finding);
                    let text = format!("{} {}", finding.message, finding.hint);
                    let below = text.split_whitespace().any(|word| {
                        let word = word.trim_start_matches('(');
                        let after = word.strip_prefix(['-', '\u{2212}']);
                        after.is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_digit()))
                    });
                    assert!(!below, "{name} {} {end}: {text}", field.path);
                }
            }
        }
    }
}

/// No style is checked as another: what can be noticed of it, over every value at both its ends, differs.
#[test]
fn no_style_is_checked_as_another() {
    let mut known: Vec<(&str, BTreeSet<String>)> = Vec::new();
    for (name, own) in all() {
        let mut kinds = BTreeSet::new();
        for field in own.fields() {
            let numbers = field.value.number().into_iter();
            for to in numbers.flat_map(|own| [field.range.least, 2.0 * own, field.range.most]) {
                let mut other = own.clone();
                other.put(
                    &field.path,
                    field.value.with_number(to.min(field.range.most)),
                );
                let found = check(&other, &resolve(&other)).into_iter();
                kinds.extend(found.map(|own| format!("{:?} {:?}", own.kind, own.part)));
            }
        }
        let like = known.iter().find(|own| own.1 == kinds);
        assert!(like.is_none(), "{name}: {like:?}");
        known.push((name, kinds));
    }
}

/// Where a limit is crossed, found by halves.
fn crosses(
    own: &Tool,
    path: &str,
    (mut low, mut high): (f64, f64),
    is_found: &dyn Fn(&Finding) -> bool,
) -> f64 {
    for _ in 0..40 {
        let middle = f64::midpoint(low, high);
        let mut other = own.clone();
        let field = other.field(path).expect("it has the field");
        other.put(path, field.value.with_number(middle));
        if ToolAnswers::to(&other).findings.iter().any(is_found) {
            high = middle;
        } else {
            low = middle;
        }
    }
    high
}

/// A square bar b bent through wants σ b³/4 (plastic section modulus of a square, b³/4); tines hold it by a couple
/// over their depth d, and give way at `σ_y d t²/6` (section modulus of a rectangle): handbook formulas, with the
/// 85 MPa of hot steel and the yield of 1045.
#[test]
fn a_forks_height_is_that_of_its_root() {
    let mut own = begun(ToolKind::BendingFork);
    for (path, text) in [
        ("bends", "12 mm"),
        ("tine", "14 mm"),
        ("deep", "16 mm"),
        ("gap", "15 mm"),
    ] {
        own.set(&format!("working.{path}"), text).expect("a size");
    }
    let yields = reinwright_core::steel::strength(own.bar.steel).yield_mpa;
    let force = 85.0 * 12f64.powi(3) / 4.0 / 16.0;
    let moment = yields * 16.0 * 14f64.powi(2) / 6.0;
    let height = moment / force + 6.0;
    let found = |own: &Finding| own.kind == Kind::ForkBends;
    within(
        "height",
        crosses(&own, "working.high", (20.0, 400.0), &found),
        height,
        0.01,
    );
}

/// A blow of 49 J drives a punch by half a millimetre under 98 kN, which is 3 times 85 MPa (Tabor) on a disc of
/// 22.12 mm; one of 160 J under 320 kN, on 39.97 mm.
#[test]
fn a_punch_wants_a_striker_from_its_area_on() {
    let own = begun(ToolKind::RoundPunch);
    let least = |severity: Severity| {
        let found =
            move |own: &Finding| own.kind == Kind::PunchWantsForce && own.severity >= severity;
        crosses(&own, "working.end", (5.0, 100.0), &found)
    };
    let across = |newton: f64| (newton / 255.0 / std::f64::consts::FRAC_PI_4).sqrt();
    within("striker", least(Severity::Note), across(98_000.0), 0.01);
    within("press", least(Severity::Mend), across(320_000.0), 0.01);
}

/// The spread law w₁ = w₀ (h₀/h₁)^S with S = 0.67 (Tomlinson and Stringer, from memory): 16 mm thinned to 4 mm
/// comes to 40.5 mm at the most.
#[test]
fn an_edge_is_no_wider_than_its_bar_spreads() {
    let mut own = reinwright_tests::tools::tool(ToolKind::ColdChisel, "20 mm", "16 mm round");
    own.set("working.blade", "4 mm").expect("a size");
    let found = |own: &Finding| own.kind == Kind::NeedsSpreading;
    let widest = 16.0 * 4f64.powf(0.67);
    within(
        "edge",
        crosses(&own, "working.edge", (16.0, 200.0), &found),
        widest,
        0.01,
    );
}

/// The first rule for upset forgings: no more than three diameters stand free. A round end of 24 mm from 20 mm
/// round takes 1.44 mm of bar for each of its own: 41.67 mm of it are 60 mm of bar.
#[test]
fn no_more_than_three_diameters_are_gathered() {
    let mut own = reinwright_tests::tools::tool(ToolKind::Drift, "24 mm", "20 mm round");
    let size = |own: &mut Tool, path: &str, text: &str| own.set(path, text).expect("a size");
    size(&mut own, "body.body.diameter", "20 mm");
    size(&mut own, "working.lead", "2 mm");
    size(&mut own, "working.back", "2 mm");
    // Of both tapers a frustum is gathered: 2 mm long, 12 and 20 mm to 24 mm across.
    let frustum = |a: f64, b: f64| 2.0 * (a * a + a * b + b * b) / 3.0;
    let tapers = (frustum(12.0, 24.0) + frustum(24.0, 20.0)) / 400.0;
    let full = (60.0 - tapers) / 1.44;
    let found = |own: &Finding| own.kind == Kind::NeedsUpsetting && own.severity == Severity::Mend;
    within(
        "full",
        crosses(&own, "working.full", (5.0, 200.0), &found),
        full,
        0.01,
    );
}

#[test]
fn each_check_is_provoked() {
    use Severity::{Mend, Note, Stop};
    for (kind, change, expected) in [
        (
            ToolKind::RoundPunch,
            ("working.through", "3 in"),
            (Kind::PunchShort, Mend),
        ),
        (
            ToolKind::RoundPunch,
            ("working.end", "3/4 in"),
            (Kind::PunchSticks, Mend),
        ),
        (
            ToolKind::RoundPunch,
            ("working.taper", "9 in"),
            (Kind::PunchBuckles, Mend),
        ),
        (
            ToolKind::RoundPunch,
            ("bar.steel", "mild steel"),
            (Kind::PunchBendsHot, Mend),
        ),
        (
            ToolKind::RoundPunch,
            ("bar.steel", "mild steel"),
            (Kind::SteelUnsuited, Mend),
        ),
        (
            ToolKind::RoundPunch,
            ("bar.steel", "unknown scrap"),
            (Kind::SteelUnsuited, Note),
        ),
        (
            ToolKind::RoundPunch,
            ("body.face", "3/4 in"),
            (Kind::StruckEndSharp, Mend),
        ),
        (
            ToolKind::RoundPunch,
            ("body.chamfer", "0.5 mm"),
            (Kind::StruckEndSharp, Mend),
        ),
        (
            ToolKind::RoundPunch,
            ("body.length", "6 in"),
            (Kind::HandNearHeat, Mend),
        ),
        (
            ToolKind::RoundPunch,
            ("body.length", "1 in"),
            (Kind::PartsOverLength, Stop),
        ),
        (
            ToolKind::SquarePunch,
            ("working.corner", "0 mm"),
            (Kind::DetailOverRoom, Note),
        ),
        (
            ToolKind::SlotPunch,
            ("working.thick", "1/2 in"),
            (Kind::BladeSlender, Note),
        ),
        (
            ToolKind::CentrePunch,
            ("working.point", "30 deg"),
            (Kind::EdgeAngle, Mend),
        ),
        (
            ToolKind::CentrePunch,
            ("working.taper", "5 in"),
            (Kind::BladeSlender, Mend),
        ),
        (
            ToolKind::Drift,
            ("working.hole", "1/8 in"),
            (Kind::DriftDoesNotEnter, Stop),
        ),
        (
            ToolKind::Drift,
            ("working.hole", "0.26 in"),
            (Kind::DriftShort, Mend),
        ),
        (
            ToolKind::Drift,
            ("working.lead", "1/2 in"),
            (Kind::DriftSteep, Mend),
        ),
        (
            ToolKind::Drift,
            ("body.body.diameter", "1/2 in"),
            (Kind::DriftStays, Mend),
        ),
        (
            ToolKind::Drift,
            ("working.through", "2 in"),
            (Kind::DriftShort, Mend),
        ),
        (
            ToolKind::Drift,
            ("working.full", "0 in"),
            (Kind::DriftShort, Mend),
        ),
        (
            ToolKind::Drift,
            ("working.hole", "1/2 in"),
            (Kind::DriftOpensNothing, Stop),
        ),
        (
            ToolKind::Drift,
            ("working.size", "0.5 mm"),
            (Kind::DriftOpensNothing, Stop),
        ),
        (
            ToolKind::RoundPunch,
            ("working.end", "25 mm"),
            (Kind::PunchWantsForce, Note),
        ),
        (
            ToolKind::RoundPunch,
            ("working.end", "50 mm"),
            (Kind::PunchWantsForce, Mend),
        ),
        (
            ToolKind::RivetSet,
            ("working.deep", "0 mm"),
            (Kind::CupDepth, Mend),
        ),
        (
            ToolKind::RivetSet,
            ("working.deep", "8 mm"),
            (Kind::DetailOverRoom, Mend),
        ),
        (
            ToolKind::RivetSet,
            ("bar.diameter", "12 mm"),
            (Kind::NeedsUpsetting, Mend),
        ),
        (
            ToolKind::ColdChisel,
            ("working.edge", "200 mm"),
            (Kind::NeedsSpreading, Mend),
        ),
        (
            ToolKind::HotChisel,
            ("working.land", "35 mm"),
            (Kind::EdgeAngle, Mend),
        ),
        (
            ToolKind::HotChisel,
            ("body.hold.from_face", "1/2 in"),
            (Kind::PartsOverLength, Stop),
        ),
        (
            ToolKind::BendingFork,
            ("working.high", "4 in"),
            (Kind::ForkBends, Mend),
        ),
        (
            ToolKind::HotChisel,
            ("working.blade", "6 in"),
            (Kind::EdgeAngle, Mend),
        ),
        (
            ToolKind::HotChisel,
            ("body.hold.across", "1 1/8 in"),
            (Kind::EyeHandle, Note),
        ),
        (
            ToolKind::HotChisel,
            ("body.hold.across", "1 in"),
            (Kind::CheekThin, Mend),
        ),
        (
            ToolKind::HotChisel,
            ("body.hold.from_face", "1 1/4 in"),
            (Kind::EyeNearEnd, Mend),
        ),
        (
            ToolKind::ColdChisel,
            ("working.angle", "30 deg"),
            (Kind::EdgeAngle, Mend),
        ),
        (
            ToolKind::ColdChisel,
            ("working.blade", "0.5 mm"),
            (Kind::BladeSlender, Mend),
        ),
        (
            ToolKind::RivetSet,
            ("working.cup", "10 mm"),
            (Kind::CupMisfit, Mend),
        ),
        (
            ToolKind::RivetSet,
            ("working.deep", "7 mm"),
            (Kind::CupDepth, Mend),
        ),
        (
            ToolKind::RivetSet,
            ("working.head", "flat"),
            (Kind::CupMisfit, Mend),
        ),
        (
            ToolKind::RivetSet,
            ("working.end", "15 mm"),
            (Kind::WallThin, Mend),
        ),
        (
            ToolKind::CutOff,
            ("shank.play", "0 mm"),
            (Kind::ShankTight, Stop),
        ),
        (
            ToolKind::CutOff,
            ("shank.play", "4 mm"),
            (Kind::ShankLoose, Mend),
        ),
        (
            ToolKind::CutOff,
            ("shank.taper", "0 mm"),
            (Kind::ShankWedges, Mend),
        ),
        (
            ToolKind::CutOff,
            ("shank.corner", "4 mm"),
            (Kind::ShankOnCorner, Mend),
        ),
        (
            ToolKind::CutOff,
            ("shank.block_thick", "7/8 in"),
            (Kind::ShoulderSmall, Stop),
        ),
        (
            ToolKind::CutOff,
            ("shank.shank", "1/2 in"),
            (Kind::ShankLength, Mend),
        ),
        (
            ToolKind::CutOff,
            ("working.cuts", "3 in"),
            (Kind::BladeSlender, Note),
        ),
        (
            ToolKind::BottomFuller,
            ("working.nose", "1 mm"),
            (Kind::NoseSharp, Mend),
        ),
        (
            ToolKind::BottomSwage,
            ("working.groove", "30 mm"),
            (Kind::WallThin, Mend),
        ),
        (
            ToolKind::BendingFork,
            ("working.tine", "1/4 in"),
            (Kind::ForkWeak, Mend),
        ),
        (
            ToolKind::BendingFork,
            ("working.gap", "1/2 in"),
            (Kind::DoesNotReach, Mend),
        ),
        (
            ToolKind::BottomFuller,
            ("shank.block_long", "3 in"),
            (Kind::NeedsUpsetting, Note),
        ),
        (
            ToolKind::BottomFuller,
            ("bar.side", "1/2 in"),
            (Kind::NeedsUpsetting, Mend),
        ),
    ] {
        provokes(kind, change, expected);
    }
}

/// A style on what it does not stand on is a Stop, and it still is resolved.
#[test]
fn a_style_stands_on_its_own_mount() {
    let mut own = begun(ToolKind::CutOff);
    own.shape.mount = begun(ToolKind::RoundPunch).shape.mount;
    let found = ToolAnswers::to(&own).findings;
    assert_eq!(found[0].kind, Kind::MountUnsuited);
    assert_eq!(found[0].severity, Severity::Stop);
}

/// Unknown steel is never given a temperature, and a hot edge no hardness.
#[test]
fn nobody_is_told_how_to_harden() {
    let mut own = begun(ToolKind::RoundPunch);
    own.bar.steel = Steel::Unknown;
    let told = |own: &Tool| {
        let found = ToolAnswers::to(own).findings;
        found.iter().any(|own| own.kind == Kind::MakerSays)
    };
    assert!(!told(&own));
    own.bar.steel = Steel::ToolS7;
    assert!(told(&own));
    let edge = begun(ToolKind::CutOff);
    assert!(!told(&edge));
    let found = ToolAnswers::to(&edge).findings;
    assert!(found.iter().any(|own| own.kind == Kind::NeverHardened));
}

/// A furnace maker's heat treatment guide, °F: O1 350 to 500, W1 350 to 650, S7 400 to 1200, H13 1000 to
/// 1200, 4140 400 to 1200.
#[test]
fn tempers_are_those_of_the_published_table() {
    for (steel, least, most) in [
        (Steel::ToolO1, 350.0, 500.0),
        (Steel::ToolW1, 350.0, 650.0),
        (Steel::ToolS7, 400.0, 1200.0),
        (Steel::ToolH13, 1000.0, 1200.0),
        (Steel::Alloy4140, 400.0, 1200.0),
    ] {
        let own = temper(steel).expect("it is in the table");
        within("least", own.least_celsius * 1.8 + 32.0, least, 1e-9);
        within("most", own.most_celsius * 1.8 + 32.0, most, 1e-9);
    }
    assert!(!TEMPER_SOURCE.is_empty());
}

/// A handle keeps the hand away, a short rod does not.
#[test]
fn a_hand_is_clear_by_its_hold() {
    let near = |hold: Hold| {
        let mut own = begun(ToolKind::RoundPunch);
        if let Mount::Struck(struck) = &mut own.shape.mount {
            struck.length = "6 in".parse().expect("a size");
            struck.hold = hold;
        }
        let found = ToolAnswers::to(&own).findings;
        found.iter().any(|own| own.kind == Kind::HandNearHeat)
    };
    assert!(near(Hold::Hand));
    assert!(!near(Hold::rod()) && !near(Hold::eye()));
    assert!(near(Hold::Rod {
        reach: "2 in".parse().expect("a size")
    }));
}
