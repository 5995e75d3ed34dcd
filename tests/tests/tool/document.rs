//! The file of a tool.

use std::collections::BTreeSet;
use std::path::Path;

use reinwright_core::asked::Value;
use reinwright_core::tongs::document;
use reinwright_core::tool::{self, ToolKind, check_limits, is_tool};
use reinwright_tests::files::{bytes, names};
use reinwright_tests::tools::{all, tool};
use reinwright_tests::{pairs, sentence};

#[test]
fn every_tool_is_read_as_it_was_written() {
    for (name, own) in all() {
        check_limits(&own).unwrap_or_else(|why| panic!("{name}: {why}"));
        let text = tool::write(&own);
        assert!(is_tool(text.as_bytes()), "{name}");
        assert_eq!(tool::read(text.as_bytes()), Ok(own), "{name}\n{text}");
    }
}

/// Files of the first format are read for ever, and stay what they are.
#[test]
fn every_file_of_the_format_is_read() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("files/tool-format-1");
    let mut styles = BTreeSet::new();
    for name in names(&folder) {
        let bytes = bytes(&folder.join(&name));
        let own = tool::read(&bytes).unwrap_or_else(|why| panic!("{name}: {why}"));
        assert_eq!(tool::write(&own).as_bytes(), bytes, "{name}");
        styles.insert(own.style_kind());
    }
    assert_eq!(styles.len(), ToolKind::ALL.len(), "{styles:?}");
}

/// A reader tells a tool from a pair by how the file begins.
#[test]
fn a_pair_is_no_tool_and_a_tool_is_no_pair() {
    let pair = document::write(&pairs::flat());
    assert!(!is_tool(pair.as_bytes()));
    let why = tool::read(pair.as_bytes())
        .expect_err("it is a pair")
        .to_string();
    sentence(&why);
    let own = tool::write(&all()[0].1);
    let why = document::read(own.as_bytes())
        .expect_err("it is a tool")
        .to_string();
    sentence(&why);
}

#[track_caller]
fn refused(from: &str, to: &str, words: &str) {
    let text = tool::write(&tool(ToolKind::RoundPunch, "5/16 in", "3/4 in round"));
    assert!(text.contains(from), "{text}");
    let why = tool::read(text.replace(from, to).as_bytes())
        .expect_err("it is bad")
        .to_string();
    sentence(&why);
    assert!(why.contains(words), "{why}");
}

#[test]
fn what_cannot_be_is_refused_in_a_sentence() {
    refused("format: 1", "format: 2", "open it with a newer Reinwright");
    refused("format: 1", "format: 0", "write format: 1");
    refused("\"5/16 in\"", "\"5/0 in\"", "line");
    refused("\"5/16 in\"", "\"900 in\"", "shape.style.end is 900 in");
    refused("RoundPunch", "RoundPonch", "line");
    refused("tail", "tale", "tale");
    refused("kind: Tool", "kind: Tongs", "kind: Tool");
}

/// Choosing a style makes what it stands on as well.
#[test]
fn every_style_can_be_chosen() {
    for at in 0..ToolKind::ALL.len() {
        let mut own = tool(ToolKind::RoundPunch, "5/16 in", "1 in square");
        let style = own.field("working.style").expect("it has a style");
        let ways = style.value.ways();
        own.put("working.style", Value::Choice { ways, chosen: at });
        assert_eq!(own.style_kind(), ToolKind::ALL[at]);
        check_limits(&own).unwrap_or_else(|why| panic!("{}: {why}", own.style_kind()));
        assert_eq!(own.style_kind().name().parse(), Ok(own.style_kind()));
    }
}
