//! Ways to mend a tool: each that is offered was tried, and does what it says.

use reinwright_core::asked::Value;
use reinwright_core::finding::{Finding, Kind, Severity};
use reinwright_core::shop::ToolAnswers;
use reinwright_core::shop::mend::{MOST_MENDS, Mend, Ways, tool_ways};
use reinwright_core::tool::{Tool, ToolKind};
use reinwright_tests::tools::{all, tool};
use reinwright_tests::{sentence, within};

fn asking(findings: &[Finding]) -> Vec<&Finding> {
    let worse = |own: &&Finding| own.severity >= Severity::Mend;
    findings.iter().filter(worse).collect()
}

/// Every value of every style, far smaller and far larger.
fn spoilt() -> Vec<(String, Tool)> {
    let mut many = Vec::new();
    for (name, own) in all() {
        for field in own.fields() {
            let Some(number) = field.value.number() else {
                continue;
            };
            for times in [0.4, 0.7, 1.5, 2.5] {
                let to = (times * number).clamp(field.range.least, field.range.most);
                let mut other = own.clone();
                other.put(&field.path, field.value.with_number(to));
                many.push((format!("{name} {} {to}", field.path), other));
            }
        }
    }
    many
}

/// Its finding is gone, no Stop or Mend has come, and its cost is what the balance says.
#[track_caller]
fn keeps_its_word(what: &str, own: &Tool, (before, meant): (&ToolAnswers, &Finding), mend: &Mend) {
    assert!(mend.sets_out_from(own), "{what}");
    let after = ToolAnswers::to(&mend.taken(own));
    let same = |a: &Finding, b: &Finding| (a.kind, a.part) == (b.kind, b.part);
    for found in asking(&after.findings) {
        assert!(
            !same(found, meant),
            "{what}: {} is still there",
            meant.message
        );
        let known = asking(&before.findings).iter().any(|own| same(own, found));
        assert!(known, "{what}: {} raises {}", mend.what(), found.message);
    }
    let adds = after.balance.bar_length_mm - before.balance.bar_length_mm;
    within(what, mend.cost.adds_bar_mm, adds, 1e-6);
    sentence(&mend.words(own.units));
}

#[test]
fn every_mend_does_what_it_says() {
    let (mut asked, mut mended) = (0, 0);
    for (what, own) in spoilt() {
        let answers = ToolAnswers::to(&own);
        let ways = tool_ways(&own, &answers);
        assert_eq!(ways.len(), answers.findings.len(), "{what}");
        for (meant, ways) in answers.findings.iter().zip(&ways) {
            assert_eq!(ways.is_some(), meant.severity >= Severity::Mend, "{what}");
            let Some(ways) = ways else { continue };
            asked += 1;
            mended += usize::from(!ways.mends().is_empty());
            assert!(ways.mends().len() <= MOST_MENDS, "{what}");
            for mend in ways.mends() {
                keeps_its_word(&what, &own, (&answers, meant), mend);
            }
        }
    }
    assert!(10 * mended >= 9 * asked, "{mended} of {asked}");
}

/// What is spoilt by one value is mended by it among others, and a larger bar is offered where the tool wants one.
#[test]
fn the_value_that_was_spoilt_mends() {
    for (kind, (path, text), what) in [
        (
            ToolKind::RoundPunch,
            ("body.face", "3/4 in"),
            Kind::StruckEndSharp,
        ),
        (
            ToolKind::RoundPunch,
            ("working.taper", "9 in"),
            Kind::PunchBuckles,
        ),
        (
            ToolKind::RoundPunch,
            ("bar.steel", "mild steel"),
            Kind::SteelUnsuited,
        ),
        (
            ToolKind::RoundPunch,
            ("bar.steel", "mild steel"),
            Kind::PunchBendsHot,
        ),
        (
            ToolKind::CentrePunch,
            ("working.point", "30 deg"),
            Kind::EdgeAngle,
        ),
        (
            ToolKind::Drift,
            ("working.enters", "0.4 in"),
            Kind::DriftDoesNotEnter,
        ),
        (
            ToolKind::Drift,
            ("working.size", "0.25 in"),
            Kind::DriftOpensNothing,
        ),
        (
            ToolKind::Drift,
            ("working.lead", "1/2 in"),
            Kind::DriftSteep,
        ),
        (
            ToolKind::HotChisel,
            ("body.hold.from_face", "1/2 in"),
            Kind::PartsOverLength,
        ),
        (
            ToolKind::HotChisel,
            ("body.length", "2 in"),
            Kind::PartsOverLength,
        ),
        (
            ToolKind::ColdChisel,
            ("working.edge", "200 mm"),
            Kind::NeedsSpreading,
        ),
        (ToolKind::RivetSet, ("working.deep", "0 mm"), Kind::CupDepth),
        (ToolKind::CutOff, ("shank.play", "0 mm"), Kind::ShankTight),
        (
            ToolKind::BendingFork,
            ("working.high", "4 in"),
            Kind::ForkBends,
        ),
        (
            ToolKind::BottomSwage,
            ("working.groove", "30 mm"),
            Kind::WallThin,
        ),
    ] {
        let mut own = all()
            .into_iter()
            .find(|own| own.1.style_kind() == kind)
            .expect("it is listed")
            .1;
        own.set(path, text).unwrap_or_else(|why| panic!("{why}"));
        let answers = ToolAnswers::to(&own);
        let ways = tool_ways(&own, &answers);
        let at = answers
            .findings
            .iter()
            .position(|own| own.kind == what && own.severity > Severity::Note);
        let ways = ways[at.unwrap_or_else(|| panic!("{path} {text}"))]
            .as_ref()
            .expect("it asks");
        let changes = ways.mends().iter().flat_map(|mend| &mend.changes);
        let paths: Vec<&str> = changes.map(|change| change.path.as_str()).collect();
        assert!(paths.contains(&path), "{path} {text}: {paths:?}");
    }
    let own = tool(ToolKind::Drift, "24 mm", "20 mm round");
    let answers = ToolAnswers::to(&own);
    let ways = tool_ways(&own, &answers);
    let at = answers
        .findings
        .iter()
        .position(|own| own.kind == Kind::NeedsUpsetting);
    let Some(Ways::Mends(mends)) = &ways[at.expect("it is slim")] else {
        panic!("{ways:?}");
    };
    let bar = mends
        .iter()
        .flat_map(|mend| &mend.changes)
        .find(|own| own.path == "bar.diameter");
    let Some(Value::Length(to)) = bar.map(|own| own.to) else {
        panic!("{mends:?}");
    };
    assert!(to.mm() > 20.0);
}
