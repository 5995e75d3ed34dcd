//! The shop's sources: added, described, changed, taken away.

use egui::{CollapsingHeader, Label, RichText, Ui};
use reinwright_core::heats::{Machine, SourceKind, Sources, ready, spoken};
use reinwright_core::units::{Length, Show};

use super::typed::Line;
use crate::window::paint::theme::Palette;
use crate::window::panels::wish::{HeatWish, Wish};
use crate::window::state::heating::Heat;
use crate::window::state::news::Said;
use crate::window::state::rows::capital;
use crate::window::state::shop_heats::{Place, ShopHeats, Trouble};

/// Shows them all; gives back what was asked for.
pub(super) fn show(ui: &mut Ui, (shop, show): (&mut ShopHeats, Show)) -> Option<Wish> {
    let mut asked = kept_where(ui, shop);
    let mut gone = None;
    for at in 0..shop.now.sources.len() {
        ui.push_id(("heat source", at), |ui| {
            if one(ui, (shop, show), at) {
                gone = Some(at);
            }
        });
    }
    if let Some(at) = gone {
        shop.remove(at);
    }
    if shop.now.sources.is_empty() {
        ui.weak("None yet.");
    }
    ui.menu_button("Add a source…", |ui| {
        for source in ready() {
            let words = format!(
                "{}: {}",
                capital(&source.name),
                in_short(&source.kind, show)
            );
            if ui.button(words).clicked() {
                asked = shop
                    .add(source)
                    .err()
                    .map(|why| Wish::Say(Said::Trouble(capital(&why))));
                ui.close();
            }
        }
    })
    .response
    .on_hover_text("A usual one to begin with: change it to what you have");
    asked
}

/// How the sources are kept, and what stands against it.
fn kept_where(ui: &mut Ui, shop: &ShopHeats) -> Option<Wish> {
    let stop = Palette::of(ui.visuals()).stop;
    for lost in &shop.lost {
        let lost = RichText::new(capital(lost)).color(stop);
        ui.add(Label::new(lost).wrap());
    }
    match &shop.trouble {
        None => {}
        Some(Trouble::Unwritten(why)) => {
            let why = RichText::new(capital(why)).color(stop);
            ui.add(Label::new(why).wrap());
        }
        Some(Trouble::Changed) => {
            let words = "Another window or program has changed the shop's sources since they were read here.";
            ui.add(Label::new(RichText::new(words).color(stop)).wrap());
            let wish = ui.horizontal_wrapped(|ui| {
                let mine = ui
                    .button("Keep mine")
                    .on_hover_text("Writes over what the other has kept");
                let theirs = ui
                    .button("Take theirs")
                    .on_hover_text("Lets go of what was changed here");
                match (mine.clicked(), theirs.clicked()) {
                    (true, _) => Some(HeatWish::KeepMine),
                    (false, true) => Some(HeatWish::TakeTheirs),
                    (false, false) => None,
                }
            });
            return wish.inner.map(Wish::Heats);
        }
    }
    let words = match (shop.is_own(), shop.has_folder()) {
        (false, _) => {
            "These are examples: change them to what you have, and take away what you have not."
        }
        (true, false) => "They are kept nowhere: they go with this window.",
        (true, true) => return None,
    };
    ui.add(Label::new(RichText::new(words).weak()).wrap());
    None
}

/// `1 in bore, 5 turns`.
fn in_short(kind: &SourceKind, show: Show) -> String {
    // All in one sentence are of one kind, whatever they were typed in.
    let size = |length: Length| show.text(length.mm());
    match kind {
        SourceKind::Gas(gas) => {
            let [wide, high] = [gas.opening_width, gas.opening_height].map(size);
            format!("{wide} x {high}, {} long", size(gas.length))
        }
        SourceKind::Solid(fire) => format!("{} of heat", size(fire.hot_spot)),
        SourceKind::Coil(coil) => {
            let hot = show.text(show.roughly(coil.hot_length_mm()));
            let bore = size(coil.bore);
            format!("{bore} bore, {} turns, {hot} of heat", coil.turns)
        }
    }
}

/// One source with its fields; true when it is to be taken away.
fn one(ui: &mut Ui, (shop, show): (&mut ShopHeats, Show), at: usize) -> bool {
    let mut own = shop.now.sources[at].clone();
    let name = own.name.clone();
    let short = in_short(&own.kind, show);
    let header = CollapsingHeader::new(RichText::new(capital(&name)))
        .id_salt("source")
        .show_unindented(ui, |ui| {
            Line::name(&name).show(ui, (&mut *shop, show), (Place::Name(at), &name));
            for (field, line) in Line::all(&own.fields(), show).iter().enumerate() {
                line.show(ui, (&mut *shop, show), (Place::Source(at, field), &name));
            }
            let hint = "It can be brought back with Undo";
            let remove = ui.button("Remove").on_hover_text(hint);
            let remove = remove.accessible_name(format!("Remove {name}"));
            ui.add_space(4.0);
            remove.clicked()
        });
    if header.body_returned.is_none() {
        ui.weak(short);
    }
    header.body_returned.unwrap_or_default()
}

/// How the smith works.
pub(super) fn smith(
    ui: &mut Ui,
    (shop, show): (&mut ShopHeats, Show),
    timed: Option<(&Heat, usize)>,
) {
    CollapsingHeader::new("How you work").show_unindented(ui, |ui| {
        let mut smith = shop.now.smith;
        for (at, line) in Line::all(&smith.fields(), show).iter().enumerate() {
            line.show(ui, (&mut *shop, show), (Place::Smith(at), "you"));
        }
        if let Some((heat, row)) = timed {
            time_one(ui, shop, (heat, row));
        }
    });
}

/// One timed heat teaches how long the smith can work it.
fn time_one(ui: &mut Ui, shop: &mut ShopHeats, (heat, row): (&Heat, usize)) {
    let own = &heat.heats.operations[row];
    let offer = own
        .source
        .and_then(|source| heat.prepared.offer(row, source));
    let Some(offer) = offer else { return };
    let words = format!(
        "Or time one heat of operation {}, {}: how long could you work it? In still air it would stay in its range for {}.",
        own.number,
        own.step,
        spoken(offer.still_air_s)
    );
    ui.add(Label::new(RichText::new(words).weak()).wrap());
    let mut worked = offer.working_s.round();
    let value = egui::DragValue::new(&mut worked)
        .range(1.0..=600.0)
        .speed(0.2)
        .suffix(" s");
    let value = ui.add(value).accessible_name("Timed heat");
    if value.changed() {
        shop.time(worked, offer.still_air_s);
    }
}

/// What the induction machine can do.
pub(super) fn machine(ui: &mut Ui, (shop, show): (&mut ShopHeats, Show)) {
    CollapsingHeader::new("The induction machine").show_unindented(ui, |ui| {
        let Some(mut machine) = shop.now.machine else {
            ui.weak("Its limits are not known.");
            let hint = "Tells how many turns keep the machine in its range";
            if ui.button("Describe it").on_hover_text(hint).clicked() {
                shop.describe_machine(Sources::default().machine);
            }
            return;
        };
        for (at, line) in Line::all(&Machine::fields(&mut machine), show)
            .iter()
            .enumerate()
        {
            line.show(ui, (&mut *shop, show), (Place::Machine(at), "machine"));
        }
        if ui.button("Its limits are not known").clicked() {
            shop.describe_machine(None);
        }
    });
}
