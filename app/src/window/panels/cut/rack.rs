//! The bars on the rack, those that can be bought, and how they are cut.

use egui::{DragValue, Label, RichText, Ui};
use reinwright_core::asked::{Bar, Units};
use reinwright_core::shop::cut::{Lying, Order, Rack, Sold, parse_long};
use reinwright_core::steel::Steel;
use reinwright_core::units::Length;

use super::typed::{About, Typed};
use super::{CutList, CutWish, RackChange};
use crate::jobs::cut_wanted::{Strange, said};

/// What is being typed.
#[derive(Debug, Default)]
pub(super) struct Fields {
    bars: Typed,
    sold: Typed,
    price: Typed,
    kerf: Typed,
    crop: Typed,
    least: Typed,
}

/// Makes one change of a rack.
pub(super) fn put(rack: &mut Rack, change: &RackChange) {
    let alike = |a: &Lying, b: &Lying| a.bar == b.bar && a.length.mm() == b.length.mm();
    match change {
        RackChange::Lay(all) => {
            for lying in all {
                match rack.bars.iter_mut().find(|own| alike(own, lying)) {
                    Some(own) => own.count += lying.count,
                    None => rack.bars.push(*lying),
                }
            }
        }
        RackChange::Count(lying) => {
            if let Some(own) = rack.bars.iter_mut().find(|own| alike(own, lying)) {
                own.count = lying.count;
            }
            rack.bars.retain(|own| own.count > 0);
        }
        RackChange::Sell(sold) => {
            rack.sold
                .retain(|own| own.bar != sold.bar || own.length.mm() != sold.length.mm());
            rack.sold.push(*sold);
        }
        RackChange::Unsell(sold) => rack.sold.retain(|own| own != sold),
        RackChange::Kerf(length) => rack.kerf = *length,
        RackChange::Crop(length) => rack.crop = *length,
        RackChange::Least(length) => rack.least_offcut = *length,
        RackChange::TakeOff | RackChange::PutBack => {}
    }
}

/// `16 mm square`, and its steel where that is not mild.
fn bar_words(bar: &Bar) -> String {
    match bar.steel {
        Steel::Mild => bar.stock.words(),
        steel => format!("{}, {}", bar.stock.words(), steel.name()),
    }
}

impl CutList {
    pub(super) fn show_rack(&mut self, ui: &mut Ui, asked: &mut Vec<CutWish>) {
        ui.add_space(10.0);
        ui.label(RichText::new("Bars on the rack").size(15.0));
        Self::say_trouble(ui, self.trouble.as_deref());
        let mut change = self.lying(ui);
        change = self.add_bars(ui).or(change);
        ui.add_space(10.0);
        ui.label(RichText::new("Lengths to buy").size(15.0));
        change = self.sold(ui).or(change);
        change = self.add_sold(ui).or(change);
        ui.add_space(10.0);
        ui.label(RichText::new("Cuts").size(15.0));
        change = self.cuts(ui).or(change);
        asked.extend(change.map(CutWish::Rack));
        ui.add_space(10.0);
        self.kept_where(ui, asked);
    }

    fn kept_where(&self, ui: &mut Ui, asked: &mut Vec<CutWish>) {
        let (words, button) = match self.shop() {
            Some(shop) => (
                format!("The rack is kept in {}", shop.display()),
                "Another shop…",
            ),
            None => (
                "The rack is kept nowhere yet: it goes with this window.".to_owned(),
                "Choose the shop's folder…",
            ),
        };
        ui.add(Label::new(RichText::new(words).weak()).wrap());
        let hint = "The folder with your designs, which the shelf shows too";
        if ui.button(button).on_hover_text(hint).clicked() {
            asked.push(CutWish::AskShop);
        }
    }

    fn lying(&self, ui: &mut Ui) -> Option<RackChange> {
        let mut change = None;
        for (at, lying) in self.rack.bars.iter().enumerate() {
            ui.push_id(("lying", at), |ui| {
                ui.horizontal(|ui| {
                    let words = format!("{} of {}", lying.length, bar_words(&lying.bar));
                    let mut count = lying.count;
                    let value = DragValue::new(&mut count).range(0..=10_000).speed(0.1);
                    let value = ui.add(value).accessible_name(format!("Bars: {words}"));
                    if value.changed() && count != lying.count {
                        change = Some(RackChange::Count(Lying { count, ..*lying }));
                    }
                    if ui
                        .small_button("Remove")
                        .on_hover_text(format!("Takes {words} off the rack"))
                        .clicked()
                    {
                        change = Some(RackChange::Count(Lying { count: 0, ..*lying }));
                    }
                    ui.add(Label::new(format!("x {words}")).truncate());
                });
            });
        }
        // Of a rack that cannot be read nobody knows.
        if self.rack.bars.is_empty() && self.trouble.is_none() {
            ui.weak("None: all bars are bought");
        }
        change
    }

    fn add_bars(&mut self, ui: &mut Ui) -> Option<RackChange> {
        let (orders, such) = (self.orders(), Such::of(self.units));
        let typed = &mut self.fields.bars;
        let mut entered = false;
        ui.horizontal(|ui| {
            entered = typed.show(
                ui,
                &About {
                    name: "Bars at hand",
                    hint: such.bars,
                    tip: "How many, how long and of what; a comma between unlike ones. What they are of may be left out where all designs are forged from one bar",
                    width: (ui.available_width() - 96.0).max(120.0),
                },
            );
            entered |= ui.button("Add bars").clicked();
        });
        let lying = entered.then(|| typed.take(said(&typed.text, &orders, Strange::Taken)));
        typed.say(ui);
        lying.flatten().map(RackChange::Lay)
    }

    fn sold(&self, ui: &mut Ui) -> Option<RackChange> {
        let mut change = None;
        for (at, sold) in self.rack.sold.iter().enumerate() {
            ui.push_id(("sold", at), |ui| {
                ui.horizontal(|ui| {
                    if ui.small_button("Remove").clicked() {
                        change = Some(RackChange::Unsell(*sold));
                    }
                    let price = sold
                        .price
                        .map_or(String::new(), |price| format!(" at {price:.2}"));
                    let words = format!("{} of {}{price}", sold.length, bar_words(&sold.bar));
                    ui.add(Label::new(words).truncate());
                });
            });
        }
        if self.rack.sold.is_empty() {
            let usual = Rack::usual_length(self.units);
            ui.weak(format!("None said: {usual}, as it is usual"));
        }
        change
    }

    fn add_sold(&mut self, ui: &mut Ui) -> Option<RackChange> {
        let (orders, such) = (self.orders(), Such::of(self.units));
        let Fields { sold, price, .. } = &mut self.fields;
        let mut entered = false;
        ui.horizontal(|ui| {
            entered = sold.show(
                ui,
                &About {
                    name: "Length to buy",
                    hint: such.length,
                    tip: such.tip,
                    width: (ui.available_width() - 196.0).max(90.0),
                },
            );
            entered |= price.show(
                ui,
                &About {
                    name: "Price of one",
                    hint: "price",
                    tip: "What one costs, if you know it",
                    width: 60.0,
                },
            );
            entered |= ui.button("Add length").clicked();
        });
        let mut change = None;
        if entered {
            let cost = price_of(&price.text);
            let read = said(&sold.text, &orders, Strange::Taken);
            match (read, cost) {
                (Ok(all), Ok(cost)) => {
                    sold.take(Ok(()));
                    price.take(Ok(()));
                    change = all.first().map(|lying| {
                        RackChange::Sell(Sold {
                            bar: lying.bar,
                            length: lying.length,
                            price: cost,
                        })
                    });
                }
                (Err(why), _) | (Ok(_), Err(why)) => {
                    sold.take::<()>(Err(why));
                }
            }
        }
        sold.say(ui);
        change
    }

    fn cuts(&mut self, ui: &mut Ui) -> Option<RackChange> {
        let (show, orders) = (self.units.show(), self.orders());
        let most = |pick: fn(&Order) -> f64| show.text(orders.iter().map(pick).fold(0.0, f64::max));
        let designs = "as the designs have it";
        let rack = &self.rack;
        let cuts = [
            Cut {
                name: "Kerf",
                tip: "Width of a cut",
                own: rack.kerf,
                usual: (most(|order| order.kerf_mm), designs),
                make: RackChange::Kerf,
            },
            Cut {
                name: "Crop",
                tip: "Cut off each bar's ragged end",
                own: rack.crop,
                usual: (most(|order| order.crop_mm), designs),
                make: RackChange::Crop,
            },
            Cut {
                name: "Ends kept from",
                tip: "The shortest end that goes back on the rack",
                own: rack.least_offcut,
                usual: (
                    show.text(Rack::usual_least_mm(self.units)),
                    "as it is usual",
                ),
                make: RackChange::Least,
            },
        ];
        let Fields {
            kerf, crop, least, ..
        } = &mut self.fields;
        let mut change = None;
        for (cut, typed) in cuts.iter().zip([kerf, crop, least]) {
            change = cut.show(ui, typed).or(change);
        }
        change
    }
}

/// How bars are said, in the unit that is counted in.
struct Such {
    bars: &'static str,
    length: &'static str,
    tip: &'static str,
}

impl Such {
    fn of(units: Units) -> Self {
        match units {
            Units::Inch => Self {
                bars: "3 x 10 ft of 3/4 in square",
                length: "20 ft",
                tip: "A length that the merchant has, and of what where the designs are of several bars, such as 20 ft of 3/4 in square",
            },
            Units::Millimetre => Self {
                bars: "3 x 3 m of 16 mm square",
                length: "6 m",
                tip: "A length that the merchant has, and of what where the designs are of several bars, such as 6 m of 16 mm square",
            },
        }
    }
}

/// One size of how bars are cut.
struct Cut {
    name: &'static str,
    tip: &'static str,
    /// As the rack has it.
    own: Option<Length>,
    /// What it is where the rack does not say, and where that comes from.
    usual: (String, &'static str),
    make: fn(Option<Length>) -> RackChange,
}

impl Cut {
    fn show(&self, ui: &mut Ui, typed: &mut Typed) -> Option<RackChange> {
        /// Room for the names, in points.
        const NAMES: f32 = 100.0;
        let (mut entered, mut change) = (false, None);
        ui.horizontal(|ui| {
            let start = ui.cursor().min.x;
            ui.label(self.name).on_hover_text(self.tip);
            ui.add_space((start + NAMES - ui.cursor().min.x).max(0.0));
            let own = self.own.map(|own| own.to_string());
            let about = About {
                // The name beside it is a label of its own.
                name: self.tip,
                hint: own.as_ref().unwrap_or(&self.usual.0),
                tip: self.tip,
                width: 70.0,
            };
            entered = typed.show(ui, &about);
            if let Some(own) = &own {
                ui.label(own);
                let hint = format!("{}, {}", self.usual.0, self.usual.1);
                if ui.small_button("Usual").on_hover_text(hint).clicked() {
                    change = Some((self.make)(None));
                }
            } else {
                ui.weak(self.usual.1);
            }
        });
        if entered {
            let read = size(&typed.text);
            change = typed.take(read).map(|length| (self.make)(Some(length)));
        }
        typed.say(ui);
        change
    }
}

/// A length that a cut or an end may have.
fn size(text: &str) -> Result<Length, String> {
    let length = parse_long(text).map_err(|error| error.to_string())?;
    let fits = (0.0..=Rack::LONGEST_MM).contains(&length.mm());
    fits.then_some(length)
        .ok_or_else(|| format!("{length} is not between nothing and 30 m: write another"))
}

/// A price, or none where nothing stands.
fn price_of(text: &str) -> Result<Option<f64>, String> {
    let text = text.trim().replace(',', ".");
    if text.is_empty() {
        return Ok(None);
    }
    let price = text
        .parse::<f64>()
        .ok()
        .filter(|price| (0.0..=1e6).contains(price));
    match price {
        Some(price) => Ok(Some(price)),
        None => Err(format!(
            "\"{text}\" is no price: write a number such as 18.50, or leave it out"
        )),
    }
}
