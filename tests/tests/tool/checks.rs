//! What stands against tools: none is begun with a Stop or a Mend, and each check is provoked.

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
    found.iter().for_each(|own| sentence(&own.message));
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
            (Kind::CupMisfit, Mend),
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
