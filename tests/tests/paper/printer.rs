//! Printers whose measure is known: the print, simulated by scaling the page, comes out true.

use kurbo::{Affine, Rect, Shape};
use reinwright::jobs::pages::Consent;
use reinwright::jobs::printing::Template;
use reinwright_core::paper::Paper;
use reinwright_core::shop::printers::{PRINTERS_FILE, Printer, Printers};
use reinwright_tests::command_line::{done, refused, text};
use reinwright_tests::designs::{sample, samples_folder};
use reinwright_tests::files::{bytes, folder, pages};
use reinwright_tests::within;

use super::{FILE, bars, reader};

fn printer(across: &str, along: &str) -> Printer {
    Printer {
        name: "Office".to_owned(),
        across: across.parse().expect("a size"),
        along: along.parse().expect("a size"),
        rim: None,
    }
}

/// What a printer makes of a page: it is scaled as the check page said.
fn printed(of: Rect, (width, height): (f64, f64), (across, along): (f64, f64)) -> Rect {
    let scale = if width <= height {
        (across, along)
    } else {
        (along, across)
    };
    Affine::scale_non_uniform(scale.0, scale.1).transform_rect_bbox(of)
}

/// A printer that is 1.2 % too long across and 0.8 % too short along: check bars and outlines come
/// out of it as long as they should be.
#[test]
fn a_corrected_sheet_prints_true() {
    let design = sample("v-bit-square");
    let off = (1.012, 0.992);
    let template = Template::of(&design, None);
    let right = template.pdf(Paper::A4, Consent::All).expect("few pages");
    let own = printer("101.2 mm", "99.2 mm");
    let template = Template::of(&design, None).on(Some(own));
    let wrong = template.pdf(Paper::A4, Consent::All).expect("few pages");
    let file = lopdf::Document::load_mem(&wrong).unwrap();
    let mut measured = 0;
    for (seen, (_, id)) in reader::read(&wrong).iter().zip(file.get_pages()) {
        let page = file.get_dictionary(id).unwrap();
        let sides = page.get(b"MediaBox").unwrap().as_array().unwrap();
        let side = |i: usize| f64::from(sides[i].as_float().unwrap());
        let size = (side(2), side(3));
        for (bar, length) in bars(seen).iter().zip([100.0, 101.6, 100.0, 101.6]) {
            let bar = printed(*bar, size, off);
            within("bar", bar.width().max(bar.height()), length, 2.0 * FILE);
            measured += 1;
        }
        let words = seen.words().join(" ");
        assert!(words.contains("1.2 % too long across"), "{words}");
    }
    assert!(measured >= 4, "{measured} bars");
    assert!(right != wrong, "the correction changes the file");
}

/// Outlines measure true as well: the longest edge of the bar's strip on one large page.
#[test]
fn outlines_print_true_too() {
    let design = sample("light-flat");
    let paper = Paper::own(700.0, 900.0).unwrap();
    let widest = |printer: Option<Printer>| {
        let template = Template::of(&design, None).on(printer);
        let pdf = template.pdf(paper, Consent::All).expect("few pages");
        let seen = reader::read(&pdf);
        let edges = seen[0].lines().filter(|line| {
            line.clip.is_some() && line.width.is_some_and(|width| (width - 0.5).abs() < FILE)
        });
        let widths = edges.map(|line| line.path.bounding_box().width());
        widths.fold(0.0, f64::max)
    };
    let true_mm = widest(None);
    let drawn = widest(Some(printer("4 3/64 in", "4 3/64 in")));
    let ratio = (4.0 + 3.0 / 64.0) / 4.0;
    within("longest edge", drawn * ratio, true_mm, 3.0 * FILE);
    assert!(true_mm > 100.0, "{true_mm}");
}

/// What is noted, or words of the message that refuses it.
#[track_caller]
fn check(across: &str, along: &str, expected: Result<(), &[&str]>) {
    match (printer(across, along).checked(), expected) {
        (Ok(_), Ok(())) => {}
        (Err(error), Err(words)) => {
            let message = error.to_string();
            reinwright_tests::sentence(&message);
            for word in words {
                assert!(message.contains(word), "{word} in {message}");
            }
        }
        (found, expected) => panic!("{across}, {along}: {found:?}, expected {expected:?}"),
    }
}

#[test]
fn what_was_fitted_to_the_page_is_refused() {
    check("100 mm", "100 mm", Ok(()));
    check("104 mm", "96 mm", Ok(()));
    check("4 1/8 in", "3 7/8 in", Ok(()));
    check(
        "94 mm",
        "94 mm",
        Err(&["across", "6.0 %", "fitted to the page"]),
    );
    check("100 mm", "4 1/4 in", Err(&["along", "6.2 %"]));
    check("0 mm", "100 mm", Err(&["100.0 %"]));
}

#[test]
fn printers_are_kept_by_name() {
    let one = printer("101.2 mm", "99.2 mm");
    let again = printer("100.5 mm", "4 in");
    let other = Printer {
        name: "Shop".to_owned(),
        ..one.clone()
    };
    let known = Printers::default().with(one).unwrap().with(other).unwrap();
    let known = known.with(again.clone()).unwrap();
    assert_eq!(known.known.len(), 2);
    assert_eq!(known.named(" office "), Some(&again));
    assert_eq!(Printers::read(known.write().as_bytes()), Ok(known));
    for (text, word) in [
        ("(printers: 2)", "newer"),
        ("(printers: 1, known: 3)", "line 1"),
        (
            "(printers: 1, known: [(name: \"\", across: \"100 mm\", along: \"100 mm\")])",
            "name",
        ),
    ] {
        let error = Printers::read(text.as_bytes()).unwrap_err().to_string();
        assert!(error.contains(word), "{error}");
    }
}

#[test]
fn the_command_line_notes_a_printer_and_prints_for_it() {
    let shop = folder();
    let at = |name: &str| shop.path().join(name);
    let (check, out) = (at("check.pdf"), at("out.pdf"));
    let design = samples_folder().join("light-flat.ron");
    let shop_text = text(shop.path());
    done(&["printer", "Office", "--check-page", text(&check)]);
    assert_eq!(pages(&bytes(&check)).len(), 1);
    let note = ["printer", "Office", "--shop", shop_text];
    let measured = |across: &'static str| {
        let more = ["--across", across, "--along", "99.2 mm", "--rim", "12 mm"];
        note.iter().copied().chain(more).collect::<Vec<_>>()
    };
    refused(&measured("94 mm"), &["fitted to the page"]);
    done(&measured("101.2 mm"));
    assert!(at(PRINTERS_FILE).exists());
    let print = |name: &'static str| {
        [
            "template",
            text(&design),
            "--out",
            text(&out),
            "--printer",
            name,
            "--shop",
            shop_text,
        ]
        .map(str::to_owned)
    };
    let words = |all: &[String; 8]| all.iter().map(|w| w.to_owned()).collect::<Vec<_>>();
    let ask = |all: [String; 8], run: fn(&[&str])| {
        let all = words(&all);
        run(&all.iter().map(String::as_str).collect::<Vec<_>>());
    };
    ask(print("office"), |all| {
        done(all);
    });
    assert!(
        pages(&bytes(&out))
            .iter()
            .all(|page| page.contains("Office"))
    );
    ask(print("garage"), |all| {
        refused(all, &["garage", "check page"]);
    });
}
