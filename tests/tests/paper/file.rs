//! The bytes of the PDF against the standard, without a reader that forgives.

use reinwright_core::paper::TitleBlock;

use super::*;

/// The number that a text begins with.
#[track_caller]
fn number(text: &str) -> usize {
    let digits: String = text.chars().take_while(char::is_ascii_digit).collect();
    digits
        .parse()
        .unwrap_or_else(|_| panic!("no number: {text:.20}"))
}

/// Reads the cross-reference table of a file that was never added to, as ISO 32000-1, 7.5.4 and
/// 7.5.5 have it: one section of one subsection that begins at 0, entries of 20 bytes each, the
/// first of them free with generation 65535, and all others where their objects begin.
#[track_caller]
fn check_table(pdf: &[u8]) {
    // One sign a byte, so that places in the text are offsets in the file.
    let text: String = pdf.iter().map(|byte| char::from(*byte)).collect();
    let at = |offset: usize| -> String { text.chars().skip(offset).take(40).collect() };
    let bytes: Vec<char> = text.chars().collect();
    let tail: String = bytes[bytes.len() - 200..].iter().collect();
    let (_, end) = tail.rsplit_once("startxref\n").expect("startxref");
    let start = number(end);
    assert!(end.ends_with("\n%%EOF"), "{end:?}");
    let table: String = bytes[start..].iter().collect();
    let (head, rest) = table.split_at(table.find('\n').expect("a line") + 1);
    assert_eq!(head, "xref\n");
    let (subsection, entries) = rest.split_at(rest.find('\n').expect("a line") + 1);
    let count = number(subsection.strip_prefix("0 ").expect("from object 0 on"));
    assert_eq!(subsection, format!("0 {count}\n"));
    assert_eq!(&entries[..20], "0000000000 65535 f \n");
    for object in 1..count {
        let entry = &entries[20 * object..20 * (object + 1)];
        let (offset, rest) = entry.split_at(10);
        assert_eq!(rest, " 00000 n \n", "object {object}");
        let begins = at(number(offset));
        assert!(
            begins.starts_with(&format!("{object} 0 obj")),
            "{object}: {begins}"
        );
    }
    let trailer = &entries[20 * count..];
    assert!(
        trailer.starts_with("trailer\n"),
        "a second subsection: {trailer:.40}"
    );
    assert!(
        trailer.contains(&format!("/Size {count}")),
        "{trailer:.300}"
    );
}

#[test]
fn the_table_has_all_objects_in_one_section() {
    for length in (0..130).step_by(13).chain([117, 118, 119, 200]) {
        let design = "M".repeat(length);
        for pages in [1, 3] {
            let title = TitleBlock {
                design: design.clone(),
                ..TitleBlock::default()
            };
            let sheets = vec![block(150.0, 40.0); pages];
            let pages = tile(&sheets, &PaperOptions::new(Paper::A4), &title);
            let info = DocInfo {
                title: format!("{design}, templates"),
                date: None,
            };
            check_table(&pdf(&pages, &info));
        }
    }
}
