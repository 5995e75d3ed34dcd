//! All that follows from the document, reckoned anew only when it changed.

use kurbo::Rect;
use reinwright_core::balance::{Balance, balance};
use reinwright_core::document::Document;
use reinwright_core::drawing::{self, DrawOptions, Drawing};
use reinwright_core::finding::{Finding, Severity};
use reinwright_core::model::Model;

/// The answers to one document.
#[derive(Debug)]
pub(super) struct Answers {
    /// What they answer.
    document: Document,
    /// Counts up with each new document.
    pub(super) revision: u64,
    /// The geometry.
    pub(super) model: Model,
    /// The bar.
    pub(super) balance: Balance,
    /// What was noticed, the worst first.
    pub(super) findings: Vec<Finding>,
    pair: Option<Drawn<PairKey>>,
    bar: Option<Drawn<f64>>,
}

/// A drawing with what it was drawn for.
#[derive(Debug)]
struct Drawn<Key> {
    key: Key,
    drawing: Drawing,
    bounds: Rect,
}

/// How the pair is drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct PairKey {
    /// Half of the opening, radians.
    pub(super) opening: f64,
    /// Size of the text, mm.
    pub(super) text: f64,
}

impl Answers {
    pub(super) fn to(document: &Document) -> Self {
        let model = reinwright_core::resolve(document);
        let balance = balance(document, &model);
        let mut findings = model.findings.clone();
        findings.sort_by_key(|finding| std::cmp::Reverse(finding.severity));
        Self {
            document: document.clone(),
            revision: 0,
            model,
            balance,
            findings,
            pair: None,
            bar: None,
        }
    }

    /// Whether these are the answers to this document.
    pub(super) fn answer(&self, document: &Document) -> bool {
        self.document == *document
    }

    /// Reckons anew if the document is another one.
    pub(super) fn follow(&mut self, document: &Document) {
        if !self.answer(document) {
            let revision = self.revision + 1;
            *self = Self {
                revision,
                ..Self::to(document)
            };
        }
    }

    /// How many findings there are of a severity.
    pub(super) fn count(&self, severity: Severity) -> usize {
        self.findings
            .iter()
            .filter(|finding| finding.severity == severity)
            .count()
    }

    /// The pair, drawn, and what it covers in mm.
    pub(super) fn pair(&mut self, key: PairKey) -> (&Drawing, Rect) {
        let options = DrawOptions {
            opening: key.opening,
            text: key.text,
            ..DrawOptions::default()
        };
        let (document, model) = (&self.document, &self.model);
        drawn(&mut self.pair, key, || {
            drawing::pair(document, model, &options)
        })
    }

    /// The bar, drawn with text of so many mm, and what it covers in mm.
    pub(super) fn bar(&mut self, text: f64) -> (&Drawing, Rect) {
        let (document, balance) = (&self.document, &self.balance);
        drawn(&mut self.bar, text, || {
            drawing::bar(document, balance, text)
        })
    }
}

/// The drawing that is kept, or a new one if it was drawn for something else.
fn drawn<Key: PartialEq>(
    kept: &mut Option<Drawn<Key>>,
    key: Key,
    draw: impl FnOnce() -> Drawing,
) -> (&Drawing, Rect) {
    if kept.as_ref().is_some_and(|kept| kept.key != key) {
        *kept = None;
    }
    let kept = kept.get_or_insert_with(|| {
        let drawing = draw();
        let bounds = drawing.bounds();
        Drawn {
            key,
            drawing,
            bounds,
        }
    });
    (&kept.drawing, kept.bounds)
}
