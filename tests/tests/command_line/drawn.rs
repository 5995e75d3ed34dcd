//! `drawing` and `template`: what is drawn and printed, and over what nothing is written.

use std::path::Path;

use reinwright_core::tongs::document;
use reinwright_tests::command_line::{done, refused, text};
use reinwright_tests::designs::sample;
use reinwright_tests::files::{bytes, folder, pages, put};

use super::{new_flat, path_of};

#[test]
fn drawings_show_what_was_asked() {
    let folder = folder();
    // Both jaws lie in the bar, one at each end.
    for (of, views, jaws) in [
        ("pair", &["side-view", "top-view", "end-view"][..], 0),
        ("half", &["side-view", "top-view"], 0),
        ("bar", &[], 2),
    ] {
        let out = folder.path().join("x.svg");
        let path = path_of("light-flat");
        done(&["drawing", &path, "--of", of, "--out", text(&out)]);
        let svg = String::from_utf8(bytes(&out)).unwrap();
        let svg = usvg::roxmltree::Document::parse(&svg).unwrap();
        let ids = svg.descendants().filter_map(|node| node.attribute("id"));
        let drawn: Vec<&str> = ids.filter(|id| id.ends_with("-view")).collect();
        assert_eq!(drawn, views, "{of}");
        let words = svg.descendants().filter(|node| node.has_tag_name("text"));
        let jaw = words.filter(|node| node.text() == Some("jaw"));
        assert_eq!(jaw.count(), jaws, "{of}");
    }
}

/// A slip of the hand must not cost the design.
#[test]
fn a_design_is_not_written_over_by_its_drawing() {
    let folder = folder();
    let design = folder.path().join("mine.ron");
    let design = text(&design);
    done(&new_flat(design));
    let before = bytes(Path::new(design));
    for job in ["template", "drawing"] {
        refused(&[job, design, "--out", design], &["--out", "design itself"]);
        assert_eq!(bytes(Path::new(design)), before);
    }
}

/// A pair that cannot be made says so wherever it leaves the program: here a hole that is wider
/// than its boss.
#[test]
fn what_is_printed_of_a_design_with_a_stop_says_so() {
    let folder = folder();
    let mut broken = sample("v-bit-square");
    broken
        .set("rivet.hole", "30 mm")
        .expect("inside its limits");
    put(folder.path(), "broken.ron", document::write(&broken));
    let path = |name: &str| text(&folder.path().join(name)).to_owned();
    let printed = |design: &str| {
        done(&["template", design, "--out", &path("pair.pdf")]);
        pages(&bytes(&folder.path().join("pair.pdf")))
    };
    for page in printed(&path("broken.ron")) {
        assert!(page.contains("STOP, do not make it: boss: "), "{page}");
    }
    for page in printed(&path_of("v-bit-square")) {
        assert!(!page.contains("STOP"), "{page}");
        for words in ["certify nothing", "Local codes", "eye protection"] {
            assert!(page.contains(words), "{words} in: {page}");
        }
    }
    for (job, out) in [("template", "pair.pdf"), ("drawing", "pair.svg")] {
        let said = done(&[job, &path("broken.ron"), "--out", &path(out)]);
        assert!(said.starts_with("STOP, do not make it: boss: "), "{said}");
        let sound = done(&[job, &path_of("v-bit-square"), "--out", &path(out)]);
        assert!(!sound.contains("STOP"), "{sound}");
    }
}

/// Words as outlines: none is left as text, and each covers the room that the text had, within what
/// letters stand out of it.
#[test]
fn words_are_traced_where_no_font_is_known() {
    let folder = folder();
    let drawn = |letters: &str| {
        let out = folder.path().join("x.svg");
        let path = path_of("v-bit-square");
        done(&["drawing", &path, "--out", text(&out), "--letters", letters]);
        String::from_utf8(bytes(&out)).unwrap()
    };
    let (words, traced) = (drawn("text"), drawn("outlines"));
    let count = |svg: &str| svg.matches("<text ").count();
    assert!(count(&words) > 10, "{}", count(&words));
    assert_eq!(count(&traced), 0);
    let tree = |svg: &str| usvg::Tree::from_str(svg, &usvg::Options::default()).unwrap();
    let paths = |svg: &str| {
        fn all(group: &usvg::Group) -> usize {
            let one = |node: &usvg::Node| match node {
                usvg::Node::Group(group) => all(group),
                usvg::Node::Path(_) => 1,
                usvg::Node::Image(_) | usvg::Node::Text(_) => 0,
            };
            group.children().iter().map(one).sum()
        }
        all(tree(svg).root())
    };
    assert_eq!(paths(&traced), paths(&words) + count(&words));
    let size = |svg: &str| tree(svg).size();
    assert_eq!(size(&traced), size(&words), "the sheet is as large");
}
