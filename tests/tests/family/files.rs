//! Families as text: bad ones refused, damaged ones opened as far as they go.

use super::*;
use reinwright_core::asked;

#[track_caller]
fn broken(from: &str, to: &str, words: &[&str]) {
    let text = family::write(&v_bits());
    assert!(text.contains(from), "{from}");
    let error = family::read(text.replacen(from, to, 1).as_bytes());
    let error = error.expect_err("a bad file").to_string();
    sentence(&error);
    for word in words {
        assert!(error.contains(word), "{word} in: {error}");
    }
}

/// The byte order mark that some editors set before a text is no damage.
#[test]
fn a_byte_order_mark_is_read_over() {
    let text = format!("\u{feff}{}", family::write(&v_bits()));
    assert!(family::is_family(text.as_bytes()));
    assert_eq!(family::read(text.as_bytes()).unwrap(), v_bits());
    let design = pairs::flat();
    let text = format!("\u{feff}{}", document::write(&design));
    assert_eq!(document::read(text.as_bytes()).unwrap(), design);
}

#[test]
fn a_family_without_its_base_says_what_is_missing() {
    let text = family::write(&v_bits());
    let base = text.find("    base: (").unwrap();
    let error = family::read(format!("{})", &text[..base]).as_bytes());
    let error = error.expect_err("nothing to make sizes of").to_string();
    sentence(&error);
    assert!(error.contains("base is missing"), "{error}");
}

#[test]
fn bad_families_are_refused_in_a_sentence() {
    broken("family: 1", "family: 2", &["format 2", "newer Reinwright"]);
    broken("family: 1", "family: 0", &["format 0"]);
    broken("format: 1", "format: 2", &["format 2", "newer Reinwright"]);
    broken("format: 1", "format: 0", &["base.format", "format 0"]);
    broken(
        "side: \"3/8 in\"",
        "side: \"3//8 in\"",
        &["line", "3//8 in"],
    );
    broken(
        "side: \"3/8 in\"",
        "side: \"30 in\"",
        &["sizes 1, work.side", "7 3/4 in"],
    );
    broken(
        "\"neck.depth\": \"1/2 in\"",
        "\"neck.depth\": \"one\"",
        &["sizes 1, neck.depth", "one"],
    );
    broken(
        "\"neck.depth\": \"1/2 in\"",
        "\"neck.depth\": \"9 ft\"",
        &["sizes 1, neck.depth", "7 3/4 in"],
    );
    broken(
        "thickness: \"3/8 in\"",
        "thickness: \"0 in\"",
        &["base.boss.thickness", "1/32 in"],
    );
    broken(
        "rounding: Measured",
        "rounding: Roughly",
        &["line", "Roughly"],
    );
    broken("rounding: Measured", "rounded: true", &["line", "rounded"]);
    let long = format!("name: \"{}\"", "x".repeat(300));
    broken(
        "name: \"V-bit tongs for the benches\"",
        &long,
        &["name", "300", "200"],
    );
    let error = |bytes: &[u8]| family::read(bytes).expect_err("bad").to_string();
    assert!(error(b"").contains("empty"));
    assert!(error(b"\xff\xfe\x00").contains("not text"));
    assert!(error(&vec![b' '; asked::LARGEST_FILE + 1]).contains("4 MiB"));
    for deep in ["(", "[", "{", "Some(", "(family:1,base:("] {
        sentence(&error(deep.repeat(20_000).as_bytes()));
    }
    let design = document::write(&pairs::flat());
    assert!(error(design.as_bytes()).contains("one design"));
    assert!(!family::is_family(design.as_bytes()));
    assert!(document::read(family::write(&v_bits()).as_bytes()).is_err());
}

#[test]
fn every_beginning_of_a_family_is_refused() {
    let text = family::write(&v_bits());
    let whole = text.trim_end();
    for end in (20..whole.len() - 1).step_by(7).chain([whole.len() - 1]) {
        let bytes = &whole.as_bytes()[..end];
        assert!(family::is_family(bytes), "still known as one");
        sentence(&family::open(bytes).expect_err("cut short").to_string());
    }
}

#[track_caller]
fn opened(from: &str, to: &str, words: &[&str]) -> Family {
    let text = family::write(&v_bits());
    assert!(text.contains(from), "{from}");
    let opened = family::open(text.replacen(from, to, 1).as_bytes()).expect("it opens");
    assert!(!opened.lost.is_empty());
    opened.lost.iter().for_each(|lost| sentence(lost));
    for word in words {
        assert!(
            opened.lost.iter().any(|lost| lost.contains(word)),
            "{word} in: {:?}",
            opened.lost
        );
    }
    opened.family
}

/// A damaged family opens what can be opened and says what could not.
#[test]
fn damaged_families_open_what_they_can() {
    let whole = v_bits();
    // One size that cannot be read: the others are all there.
    let family = opened(
        "side: \"3/8 in\"",
        "side: \"3//8 in\"",
        &["sizes 1", "left out", "line 1"],
    );
    assert_eq!(family.sizes, whole.sizes[1..]);
    assert_eq!(family.base, whole.base);
    // A text set by hand: the size stays, and what else is set by hand for it.
    let from = "\"neck.depth\": \"1/2 in\"";
    let words = ["sizes 1, neck.depth", "banana", "its rule holds instead"];
    let family = opened(from, "\"neck.depth\": \"banana\"", &words);
    let mut sizes = whole.sizes.clone();
    assert!(sizes[0].set.remove("neck.depth").is_some() && !sizes[0].set.is_empty());
    assert_eq!(family.sizes, sizes);
    // The base's boss: the rest of the base stays, sizes too.
    let from = "thickness: \"3/8 in\"";
    let family = opened(from, "thickness: \"half\"", &["base.boss", "half", "usual"]);
    assert_eq!(family.sizes, whole.sizes);
    let mended = Document {
        boss: whole.base.boss,
        ..family.base.clone()
    };
    assert_eq!(mended, whole.base);
    // Its jaw: one of the same style.
    let family = opened("leg: \"7/16 in\"", "leg: \"long\"", &["base.jaw", "long"]);
    assert_eq!(family.base.jaw.name(), "V bit");
    assert_eq!(family.base.rein, whole.base.rein);
    // A number past its limit: the nearest inside.
    let family = opened(
        from,
        "thickness: \"90 ft\"",
        &["base.boss.thickness", "90 ft"],
    );
    assert_eq!(family.base.boss.thickness.mm(), 200.0);
    // A rule, and a name that no family has.
    opened(
        "rounding: Measured",
        "rules: {\"jaw.heel\": WithLuck}",
        &["rules", "jaw.heel"],
    );
    let family = opened("rounding: Measured", "colour: Red", &["colour"]);
    assert_eq!(family, whole);
}
