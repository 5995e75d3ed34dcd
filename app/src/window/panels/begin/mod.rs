//! A new pair, begun from the work: what is to be held, the jaws drawn on it with their verdict,
//! the bar. Enter goes on, Escape leaves.

mod bars;

use egui::{Button, Context, Key, RichText, ScrollArea, Ui};
use lyon::tessellation::FillTessellator;
use reinwright_core::asked::{Bar, Units, parse_work_in, says_unit};
use reinwright_core::shop::{start, start_own};
use reinwright_core::tongs::document::{Document, check_limits};
use reinwright_core::tongs::jaw::Way;
use reinwright_core::tongs::jaw::sketch::KeptJaw;
use reinwright_core::units::Unit;

use super::question::{OF_CARDS, Ready, Room, ask, foot, lead, over_foot};
use super::styles::{Asked, Cards, Of, Taken, WORK_HINT, ways};
use super::typing::Field;
use crate::window::paint::theme::Palette;
use crate::window::state::rows::capital;
use bars::{Bars, Usual};

/// Where the smith stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Step {
    /// What must be held?
    Work,
    /// By which jaw?
    Jaw,
    /// From which bar?
    Bar,
}

impl Step {
    const ALL: [Self; 3] = [Self::Work, Self::Jaw, Self::Bar];

    fn name(self) -> &'static str {
        match self {
            Self::Work => "1  Work",
            Self::Jaw => "2  Jaw",
            Self::Bar => "3  Bar",
        }
    }
}

/// What comes of it.
#[derive(Debug, Clone)]
pub(crate) enum Outcome {
    /// This pair, from the bar that it names.
    Pair(Box<Document>),
    /// None.
    Left,
}

/// The questions while they are open.
#[derive(Debug)]
pub(crate) struct BeginPair {
    /// In which a size is read that has no unit, unless the work has one.
    units: Units,
    step: Step,
    /// The step that was shown last: a step that is new takes the keyboard.
    shown: Option<Step>,
    work: Field,
    way: Way,
    usual: Usual,
    cards: Cards,
    taken: Option<Taken>,
    bars: Bars,
}

impl BeginPair {
    /// In a unit, with the bars that were used last in each, in words.
    pub(crate) fn new(
        units: Units,
        used: impl Fn(Units) -> Option<String>,
        own: Vec<KeptJaw>,
    ) -> Self {
        Self {
            units,
            step: Step::Work,
            shown: None,
            work: Field::default(),
            way: Way::default(),
            usual: Usual::read(used),
            cards: Cards::with(own),
            taken: None,
            bars: Bars::default(),
        }
    }

    /// Shows it; gives back what comes of it.
    pub(crate) fn show(&mut self, ctx: &Context, fills: &mut FillTessellator) -> Option<Outcome> {
        ask(ctx, ("begin", Room::Page(OF_CARDS)), Outcome::Left, |ui| {
            self.heading(ui);
            ui.separator();
            let comes_new = self.shown.replace(self.step) != Some(self.step);
            let comes_new = if comes_new { Comes::New } else { Comes::Again };
            match self.step {
                Step::Work => self.ask_work(ui, comes_new),
                Step::Jaw => self.ask_jaw(ui, fills, comes_new),
                Step::Bar => self.ask_bar(ui, comes_new),
            }
        })
    }

    /// The steps, those that were answered to go back to.
    fn heading(&mut self, ui: &mut Ui) {
        ui.horizontal(|ui| {
            ui.heading("New pair");
            ui.add_space(16.0);
            for step in Step::ALL {
                let mut name = RichText::new(step.name());
                if step == self.step {
                    name = name.strong();
                }
                let button = Button::selectable(step == self.step, name);
                let goes = ui.add_enabled(step <= self.step, button);
                if goes.clicked() {
                    self.step = step;
                }
            }
            ui.weak(self.so_far());
        });
    }

    /// What was answered so far.
    fn so_far(&self) -> String {
        match (self.step, &self.taken) {
            (Step::Work, _) | (Step::Bar, None) => String::new(),
            (Step::Jaw, _) => self.work.text.trim().to_owned(),
            (Step::Bar, Some(taken)) => {
                let advice = &taken.advice;
                format!("{}, {} jaw", advice.pair.work.words(), advice.name())
            }
        }
    }

    /// What the pair counts in: the unit of its work, where that is said. Who types `16 mm hex` buys bar in
    /// millimetres too.
    fn counts_in(&self) -> Units {
        match says_unit(&self.work.text) {
            Some(Unit::Inch | Unit::Foot) => Units::Inch,
            Some(Unit::Millimetre | Unit::Centimetre) => Units::Millimetre,
            None => self.units,
        }
    }

    fn ask_work(&mut self, ui: &mut Ui, comes: Comes) -> Option<Outcome> {
        let (ready, entered) = over_foot(ui, |ui| self.work(ui, comes));
        let on = foot(ui, Some(("On to the jaw", ready)), &["Cancel"]);
        if ready == Ready::Yes && (entered || on == Some(0)) {
            self.step = Step::Jaw;
        }
        (on == Some(1)).then_some(Outcome::Left)
    }

    /// The field for the work; whether it names some, and whether Enter was pressed in it.
    fn work(&mut self, ui: &mut Ui, comes: Comes) -> (Ready, bool) {
        ui.label("What must the tongs hold?");
        let unit = self.units.unit();
        let typed = ui.horizontal(|ui| self.work.show(ui, ("Work to hold", WORK_HINT)));
        if comes == Comes::New {
            typed.inner.request_focus();
        }
        lead(&typed.inner);
        ui.horizontal_wrapped(|ui| {
            ui.weak("Such as");
            for such in examples(unit) {
                if ui.small_button(*such).clicked() {
                    (*such).clone_into(&mut self.work.text);
                }
            }
        });
        let entered = typed.inner.lost_focus() && ui.input(|i| i.key_pressed(Key::Enter));
        let empty = self.work.text.trim().is_empty();
        let work = if empty {
            None
        } else {
            self.work.read(|text| parse_work_in(text, unit))
        };
        match work {
            Some(work) => {
                ui.label(capital(&work.reading()));
                ways(ui, &mut self.way);
            }
            None if !empty => self.work.say(ui),
            None => {}
        }
        if work.is_none() && entered {
            typed.inner.request_focus();
        }
        let ready = if work.is_some() {
            Ready::Yes
        } else {
            Ready::No
        };
        (ready, entered)
    }

    fn ask_jaw(
        &mut self,
        ui: &mut Ui,
        fills: &mut FillTessellator,
        comes: Comes,
    ) -> Option<Outcome> {
        let unit = self.units.unit();
        let Some(work) = self.work.read(|text| parse_work_in(text, unit)) else {
            self.step = Step::Work;
            return None;
        };
        let usual = self.usual.of(self.counts_in());
        let (said, way, bar) = (self.work.text.clone(), self.way, usual.1);
        let asked = Asked {
            work,
            said,
            way,
            bar,
        };
        if comes == Comes::New {
            self.cards.lead_in();
        }
        self.cards.follow(ui.ctx(), asked);
        let taken = over_foot(ui, |ui| {
            let cards = ScrollArea::vertical().auto_shrink([false, false]);
            cards.show(ui, |ui| self.cards.show(ui, fills)).inner
        });
        if let Some(taken) = taken {
            self.bars = Bars::beside(usual);
            self.taken = Some(taken);
            self.step = Step::Bar;
        }
        foot(ui, None, &["Cancel"]).map(|_cancel| Outcome::Left)
    }

    fn ask_bar(&mut self, ui: &mut Ui, comes: Comes) -> Option<Outcome> {
        let Some(taken) = &self.taken else {
            self.step = Step::Jaw;
            return None;
        };
        if comes == Comes::New {
            self.bars.lead_in();
        }
        let begin = |bar: Bar| begun(taken, bar);
        self.bars.follow(ui.ctx(), &begin);
        let unit = self.counts_in().unit();
        let pair = over_foot(ui, |ui| self.bars.show(ui, unit, &begin));
        let begun = pair.map(|pair| Outcome::Pair(Box::new(pair)));
        let left = foot(ui, None, &["Cancel"]).map(|_cancel| Outcome::Left);
        begun.or(left)
    }
}

/// The pair in the style that was taken, from a bar.
fn begun(taken: &Taken, bar: Bar) -> Result<Document, String> {
    let work = taken.advice.pair.work;
    let pair = match &taken.of {
        Of::Own(kept) => start_own(kept, work, bar).map_err(|outgrown| outgrown.to_string())?,
        Of::Style(kind) => start(*kind, work, bar).map_err(|no| no.reason())?,
    };
    check_limits(&pair).map_err(|error| error.to_string())?;
    Ok(pair)
}

/// Whether a step was there in the frame before.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Comes {
    New,
    Again,
}

/// Work as it may be called.
fn examples(unit: Unit) -> &'static [&'static str] {
    match unit {
        Unit::Inch | Unit::Foot => &[
            "5/8 hex",
            "3/8 x 1 flat",
            "5/8 bolt",
            "1 in pipe",
            "#5 rebar",
            "1 x 1 x 1/8 angle",
        ],
        Unit::Millimetre | Unit::Centimetre => &[
            "16 hex",
            "10 x 25 flat",
            "M16",
            "DN 25",
            "16 rebar",
            "30 x 30 x 3 angle",
        ],
    }
}

/// What goes wrong with a bar, quietly.
fn faint(ui: &Ui, text: &str) -> RichText {
    RichText::new(text).color(Palette::of(ui.visuals()).faint)
}
