//! A value of a source in its field: typed over, taken when the hand goes on, refused with the reason.

use egui::{ComboBox, Id, Key, Label, RichText, TextEdit, Ui};
use reinwright_core::heats::HeatField;
use reinwright_core::units::Show;

use crate::window::paint::theme::Palette;
use crate::window::panels::typing::come_to;
use crate::window::state::rows::capital;
use crate::window::state::shop_heats::{Draft, Place, ShopHeats};

/// Width of the labels before the fields, in points.
const LABEL: f32 = 104.0;

/// A value as it is shown.
pub(super) struct Line {
    label: &'static str,
    hint: String,
    text: String,
    ways: Option<[&'static str; 2]>,
}

impl Line {
    fn of(field: &HeatField<'_>, show: Show) -> Self {
        let hint = match field.ends(show) {
            Some([least, most]) => format!("{}\nFrom {least} to {most}", field.hint),
            None => field.hint.to_owned(),
        };
        Self {
            label: field.label,
            hint,
            text: field.text(show),
            ways: field.ways(),
        }
    }

    /// Fields as lines.
    pub(super) fn all(fields: &[HeatField<'_>], show: Show) -> Vec<Self> {
        fields.iter().map(|own| Self::of(own, show)).collect()
    }

    /// A name.
    pub(super) fn name(text: &str) -> Self {
        Self {
            label: "Name",
            hint: "What you call it".to_owned(),
            text: text.to_owned(),
            ways: None,
        }
    }

    /// Shows it behind its label, under the name of what it is a value of.
    pub(super) fn show(
        &self,
        ui: &mut Ui,
        (shop, show): (&mut ShopHeats, Show),
        (place, of): (Place, &str),
    ) {
        let name = format!("{}: {}", capital(of), self.label.to_lowercase());
        ui.horizontal(|ui| {
            ui.spacing_mut().item_spacing.x = 4.0;
            let height = ui.spacing().interact_size.y;
            let left = egui::Layout::left_to_right(egui::Align::Center);
            ui.allocate_ui_with_layout(egui::vec2(LABEL, height), left, |ui| {
                ui.set_min_width(LABEL);
                ui.add(Label::new(self.label).truncate())
                    .on_hover_text(&self.hint);
            });
            match self.ways {
                Some(ways) => self.choice(ui, (shop, show), place, (ways, &name)),
                None => self.text(ui, (shop, show), place, &name),
            }
        });
        if let Some(Draft::Refused(_, why)) = shop.draft(place) {
            let why = RichText::new(capital(why)).color(Palette::of(ui.visuals()).stop);
            ui.add(Label::new(why).wrap());
        }
    }

    fn choice(
        &self,
        ui: &mut Ui,
        (shop, show): (&mut ShopHeats, Show),
        place: Place,
        (ways, name): ([&'static str; 2], &str),
    ) {
        let mut now = self.text.as_str();
        let list = ComboBox::from_id_salt(("heat choice", place))
            .width(ui.available_width() - 8.0)
            .selected_text(now)
            .show_ui(ui, |ui| {
                for way in ways {
                    ui.selectable_value(&mut now, way, way);
                }
            });
        list.response
            .accessible_name(name)
            .on_hover_text(&self.hint);
        if now != self.text {
            shop.take(place, now, show);
        }
    }

    fn text(&self, ui: &mut Ui, (shop, show): (&mut ShopHeats, Show), place: Place, name: &str) {
        let id = Id::unique(("heat field", place));
        let mut text = match shop.draft(place) {
            Some(Draft::Open(text) | Draft::Refused(text, _)) => text.clone(),
            None => self.text.clone(),
        };
        let output = TextEdit::singleline(&mut text)
            .id(id)
            .char_limit(120)
            .desired_width(ui.available_width() - 10.0)
            .show(ui);
        let response = output
            .response
            .response
            .accessible_name(name)
            .on_hover_text(&self.hint);
        if response.gained_focus() {
            come_to(ui, output.state, (id, &text));
        }
        if response.changed() {
            if response.has_focus() {
                shop.type_at(place, text.clone());
            } else {
                // A screen reader sets a value without typing it.
                shop.take(place, &text, show);
            }
        }
        if response.lost_focus() && matches!(shop.draft(place), Some(Draft::Open(_))) {
            if ui.input(|i| i.key_pressed(Key::Escape)) {
                shop.forget(place);
            } else {
                shop.take(place, &text, show);
            }
        }
    }
}
