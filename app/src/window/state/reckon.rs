//! All that follows from the document, reckoned anew only when it changed.

use std::rc::Rc;

use egui::Context;
use kurbo::{Point, Rect};
use reinwright_core::asked::{Units, Work};
use reinwright_core::draw::handle::{self, Handle, OnPaper};
use reinwright_core::draw::{self, BarePair, DrawOptions, EndView, Shifts};
use reinwright_core::forge;
use reinwright_core::paper::{Breaks, Drawing};
use reinwright_core::proof::fit::{ChartRow, Contact, Fit, NoContact, chart_beyond, fit_on};
use reinwright_core::proof::strength::{Strength, StrengthLoad, strength_on};
use reinwright_core::shop::Answers as Known;
use reinwright_core::shop::mend::{Ways, ways};
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::model::Model;
use reinwright_core::units::Length;

use super::bar::{Account, Forged, OfBar};
use super::history::Hand;
use super::look::{Look, Page};
use super::making::{Asked, Planned};
use super::mends::Mends;

/// The answers to one document.
#[derive(Debug)]
pub(crate) struct Answers {
    /// What they answer.
    document: Document,
    /// Counts up with each new document.
    pub(crate) revision: u64,
    /// All that is known of it on its own work.
    pub(crate) known: Known,
    mends: Mends,
    /// The last work that was tried.
    tried: Option<Tried>,
    on_works: Option<Vec<OnWork>>,
    beyond: Option<Beyond>,
    handles: Option<All>,
    planned: Option<Rc<Planned>>,
    pair: Option<Drawn<PairKey>>,
    bare: Option<(Lying, BarePair)>,
    bar: Option<Drawn<f64>>,
}

/// Other work between the jaws.
#[derive(Debug)]
struct Tried {
    size_mm: f64,
    /// How the pair holds it.
    contact: Result<Contact, NoContact>,
    /// What a squeeze does to the pair on it, once that is asked for.
    strength: Option<Strength>,
}

/// The charts past the range, with the sizes they reach to, mm.
type Beyond = ((f64, f64), [Vec<ChartRow>; 2]);

/// All handles of a design, found once.
pub(crate) type All = Rc<[Handle]>;

/// A drawing with what it was drawn for.
#[derive(Debug)]
pub(super) struct Drawn<Key> {
    key: Key,
    drawing: Drawing,
    bounds: Rect,
}

/// How the steel of a pair lies: half of the opening in radians, and what is left out of the reins.
type Lying = (f64, Breaks);

/// How the pair is drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct PairKey {
    /// Half of the opening, radians.
    pub(crate) opening: f64,
    /// Size of the text, mm.
    pub(crate) text: f64,
    /// What of it is shown.
    pub(crate) shown: Shown,
    /// Where the views stand, while they must not move.
    pub(crate) shifts: Option<Shifts>,
    /// How it is brought together.
    pub(crate) brought: Brought,
}

/// How the views of a pair are brought together for the sheet.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Brought {
    /// What is left out of the reins.
    pub(crate) breaks: Breaks,
    /// Where the end view stands.
    pub(crate) end: EndView,
}

/// What the sheet shows of the pair.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Shown {
    /// The pair on its own work, with its sizes.
    Own,
    /// On work of another size, mm, each half turned so far, radians.
    Tried { size_mm: f64, half_angle: f64 },
    /// Stress along its worst half under a squeeze, N, with jaws so hot; on other work if a size,
    /// mm, and half-angle, radians, are given.
    Stress {
        squeeze_n: f64,
        celsius: f64,
        on: Option<(f64, f64)>,
    },
}

impl Shown {
    /// How far each half is turned from the set pose to hold what is shown, radians.
    pub(crate) fn half_angle(self) -> f64 {
        match self {
            Self::Tried { half_angle, .. }
            | Self::Stress {
                on: Some((_, half_angle)),
                ..
            } => half_angle,
            Self::Own | Self::Stress { on: None, .. } => 0.0,
        }
    }
}

/// The pair on one of the works it holds.
#[derive(Debug)]
pub(crate) struct OnWork {
    /// `Smallest`, `Its own`, `Largest`.
    pub(crate) name: &'static str,
    /// Size the work is called by, mm.
    pub(crate) size_mm: f64,
    /// What ends the range there, if it is an end.
    pub(crate) ended: Option<&'static str>,
    /// How it is held.
    pub(crate) contact: Contact,
    /// The side view.
    pub(crate) drawing: Drawing,
    /// What the drawing covers, mm.
    pub(crate) bounds: Rect,
}

impl Answers {
    pub(crate) fn to(document: &Document) -> Self {
        Self::under(document, StrengthLoad::default())
    }

    /// The answers under some load.
    fn under(document: &Document, load: StrengthLoad) -> Self {
        Self {
            document: document.clone(),
            revision: 0,
            known: Known::under(document, &load),
            mends: Mends::default(),
            tried: None,
            on_works: None,
            beyond: None,
            handles: None,
            planned: None,
            pair: None,
            bare: None,
            bar: None,
        }
    }

    /// Whether these are the answers to this document.
    pub(crate) fn answer(&self, document: &Document) -> bool {
        self.document == *document
    }

    /// Reckons anew, under the load as it is, if the document is another one.
    pub(crate) fn follow(&mut self, document: &Document) {
        if !self.answer(document) {
            let revision = self.revision + 1;
            *self = Self {
                revision,
                ..Self::under(document, self.known.strength.load)
            };
        }
    }

    /// What they are the answers to.
    pub(crate) fn document(&self) -> &Document {
        &self.document
    }

    /// The places that can be dragged, found when they are first asked for.
    pub(crate) fn handles(&mut self) -> All {
        let (document, model) = (&self.document, &self.known.model);
        let found = || handle::handles(document, model).into();
        self.handles.get_or_insert_with(found).clone()
    }

    /// How the pair is made, reckoned when it is first asked for.
    pub(crate) fn planned(&mut self, asked: &Asked) -> Rc<Planned> {
        let other = |kept: &Rc<Planned>| !kept.answers(asked);
        if self.planned.as_ref().is_some_and(other) {
            self.planned = None;
        }
        let (document, known) = (&self.document, &self.known);
        let reckon = || Rc::new(Planned::of(asked, document, known));
        Rc::clone(self.planned.get_or_insert_with(reckon))
    }

    /// Where a handle lies on the paper, mm.
    pub(crate) fn place(&self, handle: &Handle, on: &OnPaper) -> Point {
        handle.place(&self.document, &self.known.model, on)
    }

    /// What sizes are shown in.
    pub(crate) fn units(&self) -> Units {
        self.document.units
    }

    /// The ways to mend each finding, in their order; `None` while they are still looked for, which
    /// begins when the hand is at rest.
    pub(crate) fn mends(&mut self, ctx: &Context, hand: Hand) -> Option<&[Option<Ways>]> {
        let (document, known) = (&self.document, &self.known);
        self.mends.ask(ctx, hand, || {
            let (document, known) = (document.clone(), known.clone());
            Box::new(move || ways(&document, &known))
        })
    }

    /// The pair, drawn, and what it covers in mm.
    pub(crate) fn pair(&mut self, key: PairKey) -> (&Drawing, Rect) {
        let options = DrawOptions {
            opening: key.opening,
            text: key.text,
            shifts: key.shifts,
            breaks: key.brought.breaks,
            end: key.brought.end,
            ..DrawOptions::default()
        };
        let (document, model) = (&self.document, &self.known.model);
        let lying = (key.opening, key.brought.breaks);
        // To fit a sheet the same steel is drawn with text of one size after another.
        let bare = &mut self.bare;
        bare.take_if(|(kept, _)| *kept != lying);
        let tried = self
            .tried
            .as_ref()
            .and_then(|tried| tried.strength.as_ref());
        drawn(&mut self.pair, key, || match key.shown {
            Shown::Own => {
                let new = || (lying, draw::bare(document, model, lying));
                let (_, bare) = bare.get_or_insert_with(new);
                draw::dimensioned((document, model), bare.clone(), &options)
            }
            Shown::Tried {
                size_mm,
                half_angle,
            } => {
                let work = sized(document, size_mm);
                draw::pair_on(document, model, (&work, half_angle), &options)
            }
            Shown::Stress { squeeze_n, on, .. } => match on.zip(tried) {
                Some(((size_mm, half_angle), strength)) => {
                    let work = (&sized(document, size_mm), half_angle);
                    let under = (strength, squeeze_n);
                    draw::stressed_on(document, model, work, under, &options)
                }
                None => {
                    draw::stressed(document, model, (&self.known.strength, squeeze_n), &options)
                }
            },
        })
    }

    /// What the sheet shows of the pair on the page that is looked at.
    pub(crate) fn shown(&mut self, look: &Look) -> Shown {
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
                let strength = self.strength(look);
                Shown::Stress {
                    squeeze_n: strength.squeezes[look.squeeze].hand_n,
                    celsius: strength.load.jaw_celsius,
                    on: strength
                        .press
                        .size_mm
                        .filter(|size| Some(*size) == look.tried_mm)
                        .map(|size| (size, strength.press.half_angle)),
                }
            }
            (Page::Fit | Page::Bar | Page::Making | Page::Heats | Page::Findings, _) => Shown::Own,
        }
    }

    /// How the pair holds work of another size, reckoned anew only when the size is another.
    pub(crate) fn try_on(&mut self, size_mm: f64) -> &Result<Contact, NoContact> {
        &self.tried(size_mm).contact
    }

    fn tried(&mut self, size_mm: f64) -> &mut Tried {
        let other = |tried: &Tried| tried.size_mm != size_mm;
        if self.tried.as_ref().is_some_and(other) {
            self.tried = None;
        }
        let (document, model) = (&self.document, &self.known.model);
        self.tried.get_or_insert_with(|| Tried {
            size_mm,
            contact: fit_on(document, model, &sized(document, size_mm)),
            strength: None,
        })
    }

    /// What a squeeze does to the pair on the work that is looked at: the work that is tried, if
    /// the pair holds it, else its own.
    pub(crate) fn strength(&mut self, look: &Look) -> &Strength {
        let held = look.tried_mm.filter(|&size| self.try_on(size).is_ok());
        let load = self.known.strength.load;
        let (document, model) = (&self.document, &self.known.model);
        match (held, &mut self.tried) {
            (Some(_), Some(tried)) => tried.strength.get_or_insert_with(|| {
                strength_on(document, model, tried.contact.as_ref().ok(), &load)
            }),
            (Some(_) | None, Some(_) | None) => &self.known.strength,
        }
    }

    /// Reckons strength and findings anew if other loads are asked for.
    pub(crate) fn bear(&mut self, load: StrengthLoad) {
        if self.known.strength.load == load {
            return;
        }
        self.known.bear(&self.document, &load);
        self.mends = Mends::default();
        if let Some(tried) = &mut self.tried {
            tried.strength = None;
        }
    }

    /// The pair on the smallest work it holds, on its own and on the largest.
    pub(crate) fn on_works(&mut self) -> &[OnWork] {
        let (document, model, fit) = (&self.document, &self.known.model, &self.known.fit);
        self.on_works
            .get_or_insert_with(|| on_works(document, model, fit))
    }

    /// The charts carried on past both ends of the range to some sizes, mm.
    pub(crate) fn beyond(&mut self, sizes: (f64, f64)) -> &[Vec<ChartRow>; 2] {
        if self.beyond.as_ref().is_some_and(|(kept, _)| *kept != sizes) {
            self.beyond = None;
        }
        let (document, model, fit) = (&self.document, &self.known.model, &self.known.fit);
        let reckon = || (sizes, chart_beyond(document, model, fit, sizes));
        &self.beyond.get_or_insert_with(reckon).1
    }
}

impl OfBar for Answers {
    fn revision(&self) -> u64 {
        self.revision
    }

    fn account(&self) -> Account<'_> {
        Account {
            bar: &self.document.bar,
            units: self.document.units,
            balance: &self.known.balance,
            mass_kg: self.known.model.mass_kg(),
            of: Forged::Pair,
        }
    }

    fn bar(&mut self, text: f64) -> (&Drawing, Rect) {
        let (document, balance) = (&self.document, &self.known.balance);
        drawn(&mut self.bar, text, || {
            forge::bar_in_short((&document.bar, document.units), balance, text)
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
    let end = |end: reinwright_core::proof::fit::RangeEnd| (end.size_mm, Some(end.limit.name()));
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
        let drawing = draw::fit_picture(document, model, &at, contact.half_angle);
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
pub(super) fn drawn<Key: PartialEq>(
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
