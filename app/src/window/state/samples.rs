//! Ready designs, to begin with.

use std::sync::LazyLock;

use reinwright_core::asked::{Units, parse_bar, parse_work};
use reinwright_core::shop::family::{self, Family};
use reinwright_core::shop::start;
use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tongs::jaw::JawKind;
use reinwright_core::tool::{self, Tool};

/// The files of the samples, as they were when the program was built; the first one is shown
/// when nothing else is asked for.
const FILES: [&str; 7] = [
    include_str!("../../../../samples/textbook-light-chain.ron"),
    include_str!("../../../../samples/light-flat.ron"),
    include_str!("../../../../samples/open-flat.ron"),
    include_str!("../../../../samples/v-bit-square.ron"),
    include_str!("../../../../samples/hollow-bit-round.ron"),
    include_str!("../../../../samples/v-over-flat.ron"),
    include_str!("../../../../samples/bowed-ball-ends.ron"),
];

/// The tools that make the first of them, and one for the anvil.
const TOOLS: [&str; 4] = [
    include_str!("../../../../samples/tools/textbook-punch.ron"),
    include_str!("../../../../samples/tools/textbook-drift.ron"),
    include_str!("../../../../samples/tools/textbook-rivet-set.ron"),
    include_str!("../../../../samples/tools/hot-cut-hardy.ron"),
];

/// One design in many sizes.
const FAMILIES: [&str; 2] = [
    include_str!("../../../../samples/family-flat.ron"),
    include_str!("../../../../samples/family-v-bit.ron"),
];

/// One tool in many sizes.
const TOOL_SETS: [&str; 1] = [include_str!("../../../../samples/tools/drift-set.ron")];

/// Kinds of which no sample is a file: begun as a new pair is, for the work that they are known by.
const BEGUN: [(JawKind, &str, &str); 2] = [
    (JawKind::Bolt, "5/8 in bolt", "3/4 in square"),
    (JawKind::Link, "1/2 in round", "3/4 in square"),
];

/// They are begun once: that takes longer than a frame.
static BEGUN_ONCE: LazyLock<Vec<Document>> =
    LazyLock::new(|| BEGUN.into_iter().map(begun).collect());

/// The sample that the window starts on.
pub(crate) fn first() -> Document {
    read(FILES[0])
}

/// Every sample.
pub(crate) fn all() -> impl Iterator<Item = Document> {
    FILES
        .into_iter()
        .map(read)
        .chain(BEGUN_ONCE.iter().cloned())
}

/// Every family among them.
pub(crate) fn families() -> impl Iterator<Item = Family> {
    let read = |text: &str| family::read(text.as_bytes());
    let read = FAMILIES.into_iter().map(read);
    read.map(|family| family.expect("the samples are opened by a test"))
}

/// Every family of tools among them.
pub(crate) fn tool_sets() -> impl Iterator<Item = Family<Tool>> {
    let read = |text: &str| family::read_of::<Tool>(text.as_bytes());
    let read = TOOL_SETS.into_iter().map(read);
    read.map(|set| set.expect("the samples are opened by a test"))
}

fn begun((kind, work, bar): (JawKind, &str, &str)) -> Document {
    let work = parse_work(work).expect("the samples are opened by a test");
    let bar = parse_bar(bar).expect("the samples are opened by a test");
    let mut pair = start(kind, work, bar).expect("the samples are opened by a test");
    pair.units = Units::Inch;
    pair
}

/// Every tool among them.
pub(crate) fn tools() -> impl Iterator<Item = Tool> {
    let read = |text: &str| tool::read(text.as_bytes());
    let read = TOOLS.into_iter().map(read);
    read.map(|tool| tool.expect("the samples are opened by a test"))
}

fn read(text: &str) -> Document {
    document::read(text.as_bytes()).expect("the samples are opened by a test")
}

#[cfg(test)]
mod tests {
    use reinwright_core::finding::Severity;
    use reinwright_core::shop::Answers;

    #[test]
    fn every_sample_opens() {
        let all: Vec<_> = super::all().collect();
        assert_eq!(all.len(), super::FILES.len() + super::BEGUN.len());
        assert_eq!(super::families().count(), super::FAMILIES.len());
        for (pair, (kind, ..)) in all[super::FILES.len()..].iter().zip(super::BEGUN) {
            assert_eq!(pair.jaw.kind(), kind);
            let worst = Answers::to(pair).worst();
            assert!(worst < Some(Severity::Mend), "{}: {worst:?}", pair.name);
        }
        assert_eq!(super::tools().count(), super::TOOLS.len());
        let sets: Vec<_> = super::tool_sets().collect();
        assert!(sets.iter().all(|set| set.sizes.len() > 1), "{sets:?}");
        assert_eq!(sets.len(), super::TOOL_SETS.len());
    }
}
