//! Sketched jaws.

mod added;
mod drawn;
mod edits;
mod kept;
mod limits;
mod turned;

use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::{JawKind, Sketch};
use reinwright_tests::pairs::starting;

fn sketched(document: &Document) -> Document {
    Document {
        jaw: document.jaw.sketched(document.work.size()),
        ..document.clone()
    }
}

/// The design with its sketch changed.
fn changed(document: &Document, change: impl FnOnce(&Sketch) -> Sketch) -> Document {
    let sketch = document.jaw.sketch().expect("a sketch");
    Document {
        jaw: document.jaw.with_sketch(change(sketch)),
        ..document.clone()
    }
}

/// Every style on works that it may be asked for.
fn styles() -> Vec<(String, Document)> {
    let works = [
        "1/4 in round",
        "12 mm square",
        "1 in round",
        "10 x 30 mm flat",
        "5/8 in hexagon on corners",
    ];
    let bars = ["5/8 in square", "20 mm round"];
    let mut all = Vec::new();
    for jaw in JawKind::ALL.iter().filter(|kind| **kind != JawKind::Sketch) {
        for work in works {
            for bar in bars {
                all.push((
                    format!("{jaw} on {work} from {bar}"),
                    starting(jaw.name(), work, bar),
                ));
            }
        }
    }
    all
}
