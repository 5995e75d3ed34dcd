//! What a text says of how the work lies and by which part it is held.

use crate::asked::work::{AngleHeld, BoltHeld, Lie};
use crate::units::Unit;

/// By which part.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Held {
    Bolt(BoltHeld),
    Angle(AngleHeld),
}

/// That flat bar is held by its edges.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct OnEdge;

/// What is said beside the sizes and the kind.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Said {
    pub(super) lie: Option<Lie>,
    pub(super) edge: Option<OnEdge>,
    pub(super) held: Option<Held>,
}

/// Takes what is said out of the words, which must be in small letters.
pub(super) fn take<'a>(words: &[&'a str]) -> (Vec<&'a str>, Said) {
    let (mut rest, mut said) = (Vec::new(), Said::default());
    for word in words {
        let before = leading(&rest);
        let lie = lie(word).filter(|_| rest.last() != Some(&"across"));
        let held = before.0.and_then(|by| held(by, word));
        let edge = edge(before.0, word);
        if lie.is_none() && held.is_none() && edge.is_none() {
            rest.push(*word);
            continue;
        }
        rest.truncate(before.1);
        said.lie = lie.or(said.lie);
        said.edge = edge.or(said.edge);
        said.held = held.or(said.held);
    }
    (rest, said)
}

/// The word `on`, `by` or `behind` at the end of some words, an article passed over, and how many
/// words there are without them.
fn leading<'a>(words: &[&'a str]) -> (Option<&'a str>, usize) {
    const ARTICLES: [&str; 5] = ["its", "their", "the", "a", "one"];
    let end = words.len();
    let end = end - usize::from(end > 0 && ARTICLES.contains(&words[end - 1]));
    match words[..end].last() {
        Some(word @ &("on" | "by" | "behind")) => (Some(word), end - 1),
        Some(_) | None => (None, end),
    }
}

fn lie(word: &str) -> Option<Lie> {
    match trimmed(word) {
        "flats" => Some(Lie::OnFlats),
        "corner" | "corners" | "diagonal" | "diamond" => Some(Lie::OnCorners),
        _ => None,
    }
}

/// `on edge`, `by its edges`, `edge-on`, `edgewise`.
fn edge(by: Option<&str>, word: &str) -> Option<OnEdge> {
    let is_so = match trimmed(word) {
        "edgewise" | "edge-on" => true,
        "edge" | "edges" => matches!(by, Some("on" | "by")),
        _ => false,
    };
    is_so.then_some(OnEdge)
}

fn held(by: &str, word: &str) -> Option<Held> {
    Some(match (by, trimmed(word)) {
        ("by", "head") => Held::Bolt(BoltHeld::ByHead),
        ("behind", "head") => Held::Bolt(BoltHeld::BehindHead),
        ("by", "shank") => Held::Bolt(BoltHeld::ByShank),
        ("by", "leg") => Held::Angle(AngleHeld::ByLeg),
        ("by", "back") => Held::Angle(AngleHeld::ByBack),
        _ => return None,
    })
}

fn trimmed(word: &str) -> &str {
    word.trim_end_matches(',')
}

fn of(text: &str) -> Said {
    let text = super::sizes::plain(text);
    take(&text.split_whitespace().collect::<Vec<_>>()).1
}

/// Whether a text that names work says how it lies: on its corners, its diagonal, the diamond or its flats.
pub fn says_lie(text: &str) -> bool {
    of(text).lie.is_some()
}

/// Whether a text that names work says by which part it is held: `behind its head`, `by a leg`.
pub fn says_held(text: &str) -> bool {
    of(text).held.is_some()
}

/// The unit in which a text that names work gives its sizes: `16 mm hex`, `5/8 in hex`. Nothing where it has none, and
/// of pipe, which is called by inches wherever it is sold.
pub fn says_unit(text: &str) -> Option<Unit> {
    let text = super::sizes::plain(text);
    let mut words = text.split_whitespace();
    if words.clone().any(|word| word == "pipe") {
        return None;
    }
    words.find_map(unit)
}

fn unit(word: &str) -> Option<Unit> {
    let not_of_unit = |sign: char| !sign.is_alphabetic() && sign != '"';
    match word.trim_end_matches(',').rsplit(not_of_unit).next()? {
        "mm" | "cm" => Some(Unit::Millimetre),
        "in" | "inch" | "inches" | "\"" => Some(Unit::Inch),
        _ => None,
    }
}
