//! The bars that the pair can be forged from, each with its length and weight, one worked out a
//! frame.

use egui::{Align, Button, Context, Key, Layout, RichText, ScrollArea, Ui, vec2};
use reinwright_core::asked::{Bar, Units, parse_bar_in};
use reinwright_core::shop::{Offer, Offered, bars_to_offer};
use reinwright_core::tongs::document::Document;
use reinwright_core::units::Unit;

use super::faint;
use crate::window::paint::focus::follow;
use crate::window::paint::theme::Palette;
use crate::window::panels::typing::Field;
use crate::window::state::rows::capital;

/// A bar's row, in points.
const ROW: f32 = 40.0;

/// The bars that are offered, the usual one first.
#[derive(Debug, Default)]
pub(super) struct Bars {
    offers: Vec<Offer>,
    to_make: Vec<Bar>,
    other: Field,
    /// The bar that is typed, once it can be read.
    typed: Option<Offer>,
    /// Which bar is asked for, and what the first is.
    asks: &'static str,
    /// The first that will do is to come under the keyboard.
    lead: bool,
}

/// What the bar is that is offered first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum First {
    UsedLast,
    Common,
}

impl First {
    fn asks(self) -> &'static str {
        match self {
            Self::UsedLast => {
                "Which bar is it forged from? The first is the one you used last, then those nearest to it."
            }
            Self::Common => {
                "Which bar is it forged from? The first is a common one, then those nearest to it."
            }
        }
    }
}

/// The bar that is offered first, in each unit.
#[derive(Debug, Clone, Copy)]
pub(super) struct Usual {
    inch: (First, Bar),
    millimetre: (First, Bar),
}

impl Usual {
    /// The bars that were used last, in words, or those that are common.
    pub(super) fn read(used: impl Fn(Units) -> Option<String>) -> Self {
        let first = |units: Units, common: &str| {
            let read = |words: &str| parse_bar_in(words, units.unit()).ok();
            let used = used(units).as_deref().and_then(read);
            let common = || (First::Common, read(common).expect("it names a bar"));
            used.map_or_else(common, |bar| (First::UsedLast, bar))
        };
        Self {
            inch: first(Units::Inch, "3/4 in square"),
            millimetre: first(Units::Millimetre, "20 mm square"),
        }
    }

    pub(super) fn of(&self, units: Units) -> (First, Bar) {
        match units {
            Units::Inch => self.inch,
            Units::Millimetre => self.millimetre,
        }
    }
}

/// How a pair is begun from a bar.
type Begin<'a> = &'a dyn Fn(Bar) -> Result<Document, String>;

impl Bars {
    /// The bar that was used last or else is common, and those that merchants keep.
    pub(super) fn beside((first, usual): (First, Bar)) -> Self {
        let mut to_make = bars_to_offer(&usual);
        to_make.reverse();
        Self {
            to_make,
            asks: first.asks(),
            ..Self::default()
        }
    }

    /// Brings the first bar that will do under the keyboard.
    pub(super) fn lead_in(&mut self) {
        self.lead = true;
    }

    /// Works out one more.
    pub(super) fn follow(&mut self, ctx: &Context, begin: Begin<'_>) {
        if let Some(bar) = self.to_make.pop() {
            self.offers.push(Offer::of(bar, begin(bar)));
            ctx.request_repaint();
        }
    }

    /// Shows them; gives back the pair from the one that was taken.
    pub(super) fn show(&mut self, ui: &mut Ui, unit: Unit, begin: Begin<'_>) -> Option<Document> {
        ui.label(self.asks);
        let other = self.other_bar(ui, unit, begin);
        ui.separator();
        let rows = ScrollArea::vertical().auto_shrink([false, false]);
        let taken = rows.show(ui, |ui| self.rows(ui)).inner;
        other.or(taken)
    }

    /// A bar that is typed, for one that is not in the list; what would be cut of it is told as it is typed.
    fn other_bar(&mut self, ui: &mut Ui, unit: Unit, begin: Begin<'_>) -> Option<Document> {
        let hint = "Such as 3/4 in square, 20 mm round, 1/2 x 3/4 in flat";
        let row = ui.horizontal(|ui| {
            let field = self.other.show(ui, ("Another bar", hint));
            if field.changed() {
                self.other.forget_trouble();
                self.typed = None;
                if !self.other.text.trim().is_empty() {
                    self.read(unit, begin);
                }
            }
            let entered = field.lost_focus() && ui.input(|i| i.key_pressed(Key::Enter));
            ui.button("Begin from it").clicked() || entered
        });
        if row.inner {
            self.read(unit, begin);
        }
        if let Some(offer) = &self.typed {
            let name = ui.strong(capital(&offer.bar.stock.words()));
            ui.label(words(ui, offer)).labelled_by(name.id);
        }
        self.other.say(ui);
        let begun = self
            .typed
            .as_ref()
            .and_then(|offer| offer.pair.as_ref().ok());
        begun.filter(|_| row.inner).map(|of| of.pair.clone())
    }

    /// Reads the bar that is typed and begins the pair from it.
    fn read(&mut self, unit: Unit, begin: Begin<'_>) {
        let bar = self.other.read(|text| parse_bar_in(text, unit));
        self.typed = bar.map(|bar| Offer::of(bar, begin(bar)));
    }

    fn rows(&mut self, ui: &mut Ui) -> Option<Document> {
        let mut taken = None;
        for offer in sound_first(&self.offers) {
            let response = row(ui, offer);
            // Where no bar gives a sound pair, the first that gives one at all must do.
            let will_do = offer.is_sound() || (self.to_make.is_empty() && offer.pair.is_ok());
            if self.lead && will_do {
                self.lead = false;
                response.request_focus();
            }
            if response.clicked() {
                taken = offer.pair.as_ref().ok().map(|of| of.pair.clone());
            }
        }
        if !self.to_make.is_empty() {
            ui.weak("Working out the others");
        }
        follow(ui);
        taken
    }
}

/// The first, then those that give a sound pair, then the others.
fn sound_first(offers: &[Offer]) -> impl Iterator<Item = &Offer> {
    let (first, others) = offers.split_at(offers.len().min(1));
    let sound = others.iter().filter(|offer| offer.is_sound());
    let unsound = others.iter().filter(|offer| !offer.is_sound());
    first.iter().chain(sound).chain(unsound)
}

/// `3/4 in square`, what is cut of it and what the pair weighs; or why it gives none.
fn row(ui: &mut Ui, offer: &Offer) -> egui::Response {
    let name = capital(&offer.bar.stock.words());
    let words = words(ui, offer);
    let size = vec2(ui.available_width(), ROW);
    let button = Button::new(RichText::new(&name).strong())
        .right_text(words)
        .min_size(size)
        .wrap();
    let layout = Layout::left_to_right(Align::Center);
    let enabled = offer.pair.is_ok();
    ui.allocate_ui_with_layout(size, layout, |ui| ui.add_enabled(enabled, button))
        .inner
}

/// What is cut of it and what the pair weighs; or why it gives none.
fn words(ui: &Ui, offer: &Offer) -> RichText {
    match &offer.pair {
        Ok(of) => told(ui, of),
        Err(why) => faint(ui, why),
    }
}

fn told(ui: &Ui, of: &Offered) -> RichText {
    let palette = Palette::of(ui.visuals());
    let show = of.pair.units.show();
    let weighs = format!(
        "cut {}, {}; the pair weighs {}",
        of.cut,
        show.mass(of.bar_kg),
        show.mass(of.pair_kg)
    );
    match &of.worst {
        None => RichText::new(weighs).color(palette.ink),
        Some((severity, why)) => {
            let text = format!("{}: {why}", severity.name());
            RichText::new(text).color(palette.stop)
        }
    }
}
