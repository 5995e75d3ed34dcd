//! The tools that make a pair, or all sizes of a family, each once; by themselves, or each kind of them
//! as a family of its own.

use reinwright_core::shop::family::Family;
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
            if all.iter().any(|known| is_like(&known.1, &tool)) {
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

/// Whether one tool is forged as another, whatever they are called.
fn is_like(one: &Tool, other: &Tool) -> bool {
    one.shape == other.shape && one.bar == other.bar
}

/// A tool, or one tool in the sizes in which it is wanted.
#[derive(Debug, Clone, PartialEq)]
pub enum Kept {
    /// A tool.
    One(Tool),
    /// One tool in sizes.
    Sizes(Family<Tool>),
}

/// The same with all tools of a kind as one family, named after the family of pairs; where there is
/// one of a kind, it stays as it is.
pub fn in_families(name: &str, pairs: &[Document]) -> Vec<(String, Kept)> {
    let mut kinds: Vec<(&'static str, Vec<Tool>)> = Vec::new();
    for (what, tool) in pairs.iter().flat_map(tools_for) {
        match kinds.iter_mut().find(|(kind, _)| *kind == what) {
            Some((_, all)) if all.iter().any(|known| is_like(known, &tool)) => {}
            Some((_, all)) => all.push(tool),
            None => kinds.push((what, vec![tool])),
        }
    }
    let kept = |(what, all): (&'static str, Vec<Tool>)| -> Vec<(String, Kept)> {
        match Family::of_all(&all).filter(|_| all.len() > 1) {
            Some(mut family) => {
                family.name = format!("{name}: {}", what.replace('-', " "))
                    .chars()
                    .take(LONGEST_NAME)
                    .collect();
                name_sizes(&mut family, &all);
                vec![(format!("{what}-family"), Kept::Sizes(family))]
            }
            None => {
                let numbered = |(at, tool): (usize, Tool)| {
                    let file = match at {
                        0 => what.to_owned(),
                        _ => format!("{what}-{}", at + 1),
                    };
                    (file, Kept::One(tool))
                };
                all.into_iter().enumerate().map(numbered).collect()
            }
        }
    };
    kinds.into_iter().flat_map(kept).collect()
}

/// Longest name that a family may have, in characters.
const LONGEST_NAME: usize = 200;

/// Sizes that are led by the same measure are called after the tools as well.
fn name_sizes(family: &mut Family<Tool>, tools: &[Tool]) {
    let labels: Vec<String> = family.sizes.iter().map(|size| size.label()).collect();
    for (at, tool) in tools.iter().enumerate() {
        if labels.iter().filter(|label| **label == labels[at]).count() > 1 {
            let name = format!("{}, {}", labels[at], tool.name);
            family.sizes[at].name = name.chars().take(LONGEST_NAME).collect();
        }
    }
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

    /// Every tool of a family comes out of it as it is by itself.
    #[test]
    fn tools_of_a_kind_are_a_family_in_which_each_is_as_it_was() {
        let pairs = [pair("3/8 in"), pair("7/16 in"), pair("1/2 in")];
        let all = in_families("Set", &pairs);
        let names: Vec<&str> = all.iter().map(|own| own.0.as_str()).collect();
        assert_eq!(names, ["punch-family", "drift-family", "rivet-set"]);
        let Kept::Sizes(drifts) = &all[1].1 else {
            panic!("drifts are one tool in sizes");
        };
        assert_eq!(drifts.name, "Set: drift");
        let labels: Vec<String> = drifts.sizes.iter().map(|size| size.label()).collect();
        assert_eq!(labels, ["3/8 in", "7/16 in", "1/2 in"]);
        for (size, pair) in drifts.sizes.iter().zip(&pairs) {
            let (_, drift) = &tools_for(pair)[1];
            let made = drifts.made(size);
            assert_eq!(made.document.fields(), drift.fields(), "{}", size.label());
            assert!(made.findings.is_empty(), "{:?}", made.findings);
        }
    }
}
