//! All that follows from the document, reckoned anew only when it changed.

use kurbo::Rect;
use reinwright_core::balance::{Balance, balance};
use reinwright_core::document::{Document, Units, Work};
use reinwright_core::drawing::{self, DrawOptions, Drawing};
use reinwright_core::finding::{self, Finding, Severity};
use reinwright_core::fit::{Contact, Fit, NoContact, fit, fit_on};
use reinwright_core::model::Model;
use reinwright_core::strength::{Strength, StrengthLoad, strength};
use reinwright_core::units::Length;

use super::look::{Look, Page};

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
    /// How it holds work.
    pub(super) fit: Fit,
    /// What a squeeze does to it, under the load that was last asked for.
    pub(super) strength: Strength,
    /// The last work that was tried, mm, and how the pair holds it.
    tried: Option<(f64, Result<Contact, NoContact>)>,
    on_works: Option<Vec<OnWork>>,
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
    /// What of it is shown.
    pub(super) shown: Shown,
}

/// What the sheet shows of the pair.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Shown {
    /// The pair on its own work, with its sizes.
    Own,
    /// On work of another size, mm, each half turned so far, radians.
    Tried { size_mm: f64, half_angle: f64 },
    /// Stress along its worst half under a squeeze, N, with jaws so hot.
    Stress { squeeze_n: f64, celsius: f64 },
}

/// The pair on one of the works it holds.
#[derive(Debug)]
pub(super) struct OnWork {
    /// `Smallest`, `Its own`, `Largest`.
    pub(super) name: &'static str,
    /// Size the work is called by, mm.
    pub(super) size_mm: f64,
    /// What ends the range there, if it is an end.
    pub(super) ended: Option<&'static str>,
    /// How it is held.
    pub(super) contact: Contact,
    /// The side view.
    pub(super) drawing: Drawing,
    /// What the drawing covers, mm.
    pub(super) bounds: Rect,
}

impl Answers {
    pub(super) fn to(document: &Document) -> Self {
        let model = reinwright_core::resolve(document);
        let balance = balance(document, &model);
        let fit = fit(document, &model);
        let strength = strength(document, &model, &StrengthLoad::default());
        let findings = finding::of(document, &model, &fit, &strength);
        Self {
            document: document.clone(),
            revision: 0,
            model,
            balance,
            findings,
            fit,
            strength,
            tried: None,
            on_works: None,
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

    /// What sizes are shown in.
    pub(super) fn units(&self) -> Units {
        self.document.units
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
        let (document, model, strength) = (&self.document, &self.model, &self.strength);
        drawn(&mut self.pair, key, || match key.shown {
            Shown::Own => drawing::pair(document, model, &options),
            Shown::Tried {
                size_mm,
                half_angle,
            } => {
                let work = sized(document, size_mm);
                drawing::pair_on(document, model, (&work, half_angle), &options)
            }
            Shown::Stress { squeeze_n, .. } => {
                drawing::stressed(document, model, (strength, squeeze_n), &options)
            }
        })
    }

    /// What the sheet shows of the pair on the page that is looked at.
    pub(super) fn shown(&mut self, look: &Look) -> Shown {
        match (look.page, look.tried_mm) {
            (Page::Fit, Some(size_mm)) => {
                self.try_on(size_mm)
                    .as_ref()
                    .map_or(Shown::Own, |on| Shown::Tried {
                        size_mm,
                        half_angle: on.half_angle,
                    })
            }
            (Page::Strength, _) => {
                self.bear(look.load);
                Shown::Stress {
                    squeeze_n: self.strength.squeezes[look.squeeze].hand_n,
                    celsius: look.load.jaw_celsius,
                }
            }
            (Page::Fit | Page::Bar | Page::Findings, _) => Shown::Own,
        }
    }

    /// How the pair holds work of another size, reckoned anew only when the size is another.
    pub(super) fn try_on(&mut self, size_mm: f64) -> &Result<Contact, NoContact> {
        if self
            .tried
            .as_ref()
            .is_some_and(|(size, _)| *size != size_mm)
        {
            self.tried = None;
        }
        let (document, model) = (&self.document, &self.model);
        let try_it = || {
            let work = sized(document, size_mm);
            (size_mm, fit_on(document, model, &work))
        };
        &self.tried.get_or_insert_with(try_it).1
    }

    /// Reckons the strength anew if other loads are asked for. The findings stay those of the
    /// usual loads and cold jaws, as they are without a window.
    pub(super) fn bear(&mut self, load: StrengthLoad) {
        if self.strength.load != load {
            self.strength = strength(&self.document, &self.model, &load);
        }
    }

    /// The pair on the smallest work it holds, on its own and on the largest.
    pub(super) fn on_works(&mut self) -> &[OnWork] {
        let (document, model, fit) = (&self.document, &self.model, &self.fit);
        self.on_works
            .get_or_insert_with(|| on_works(document, model, fit))
    }

    /// The bar, drawn with text of so many mm, and what it covers in mm.
    pub(super) fn bar(&mut self, text: f64) -> (&Drawing, Rect) {
        let (document, balance) = (&self.document, &self.balance);
        drawn(&mut self.bar, text, || {
            drawing::bar(document, balance, text)
        })
    }
}

/// The design's work in another size.
fn sized(document: &Document, size_mm: f64) -> Work {
    let size = Length::decimal(size_mm, reinwright_core::units::Unit::Millimetre);
    document.work.with_size(size)
}

fn on_works(document: &Document, model: &Model, fit: &Fit) -> Vec<OnWork> {
    let own = document.work.size().mm();
    let ends = fit.range.as_ref().ok();
    let end = |end: reinwright_core::fit::RangeEnd| (end.size_mm, Some(end.limit.name()));
    let mut works = vec![("Its own", (own, None))];
    if let Some(range) = ends {
        works.insert(0, ("Smallest", end(range.least)));
        works.push(("Largest", end(range.most)));
    }
    let draw = |(name, (size_mm, ended)): (&'static str, (f64, Option<&'static str>))| {
        /// The ends of the range are found to a thousandth of a millimetre; a little inside of
        /// them the pair surely holds.
        const INSIDE: f64 = 0.005;
        let inside = size_mm + (own - size_mm).clamp(-INSIDE, INSIDE);
        let [at, inside] = [size_mm, inside].map(|size| sized(document, size));
        let contact = fit_on(document, model, &at).or_else(|_| fit_on(document, model, &inside));
        let contact = contact.ok()?;
        let drawing = drawing::fit_picture(document, model, &at, contact.half_angle);
        Some(OnWork {
            name,
            size_mm,
            ended,
            bounds: drawing.bounds(),
            contact,
            drawing,
        })
    };
    works.into_iter().filter_map(draw).collect()
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
