//! Ready designs, to begin with.

use reinwright_core::tongs::document::{self, Document};
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

/// The sample that the window starts on.
pub(crate) fn first() -> Document {
    read(FILES[0])
}

/// Every sample.
pub(crate) fn all() -> impl Iterator<Item = Document> {
    FILES.into_iter().map(read)
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
    #[test]
    fn every_sample_opens() {
        assert_eq!(super::all().count(), super::FILES.len());
        assert_eq!(super::tools().count(), super::TOOLS.len());
    }
}
