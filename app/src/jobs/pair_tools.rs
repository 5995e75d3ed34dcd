//! The tools that make a pair, or all sizes of a family, each once.

use reinwright_core::shop::tools_for;
use reinwright_core::tongs::document::Document;
use reinwright_core::tool::Tool;

/// A tool, and the name of its file without the ending.
pub type Named = (String, Tool);

/// The tools of some pairs. Where there are several pairs a file is named after the place of the
/// first that it serves; a tool that serves several is there once.
pub fn of_all(pairs: &[Document]) -> Vec<Named> {
    let mut all: Vec<Named> = Vec::new();
    for (at, pair) in pairs.iter().enumerate() {
        for (what, tool) in tools_for(pair) {
            let alike = |known: &Named| known.1.shape == tool.shape && known.1.bar == tool.bar;
            if all.iter().any(alike) {
                continue;
            }
            let name = match pairs {
                [_] => what.to_owned(),
                _ => format!("{what}-{}", at + 1),
            };
            all.push((name, tool));
        }
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use reinwright_core::asked::{parse_bar, parse_work};
    use reinwright_core::tongs::jaw::JawKind;

    fn pair(hole: &str) -> Document {
        let work = parse_work("1/2 in flat").expect("work");
        let bar = parse_bar("3/4 in square").expect("bar");
        let mut pair = Document::starting(JawKind::Flat, work, bar);
        pair.set("rivet.hole", hole).expect("a field of a pair");
        pair
    }

    #[track_caller]
    fn check(pairs: &[Document], expected: &[&str]) {
        let names: Vec<String> = of_all(pairs).into_iter().map(|own| own.0).collect();
        assert_eq!(names, expected);
    }

    #[test]
    fn a_tool_that_serves_several_sizes_is_made_once() {
        let (one, other) = (pair("3/8 in"), pair("7/16 in"));
        check(std::slice::from_ref(&one), &["punch", "drift", "rivet-set"]);
        check(
            &[one.clone(), one.clone()],
            &["punch-1", "drift-1", "rivet-set-1"],
        );
        check(
            &[one, other],
            &["punch-1", "drift-1", "rivet-set-1", "punch-2", "drift-2"],
        );
    }
}
