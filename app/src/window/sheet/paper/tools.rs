//! The row above the sheet: how far the pair is opened, what of it is shown, and how large.

use egui::{Slider, Ui};

use super::Paper;
use crate::window::paint::theme::Palette;
use crate::window::state::command::Command;
use crate::window::state::look::{Look, Sight};

/// The widest opening that the slider gives, degrees between the halves.
const WIDEST: f64 = 25.0;

impl Paper {
    /// The slider and the buttons above the sheet; gives back what was asked for.
    pub(crate) fn tools(&self, ui: &mut Ui, look: &mut Look, true_scale: f32) -> Option<Command> {
        let mut asked = None;
        // Wrapped: a row wider than its panel would push the sheet under the answers.
        ui.horizontal_wrapped(|ui| {
            let label = ui.label("Opened by").on_hover_text("0 is set on the work");
            ui.spacing_mut().slider_width = (ui.available_width() - 385.0).clamp(50.0, 200.0);
            let palette = Palette::of(ui.visuals());
            ui.visuals_mut().widgets.inactive.bg_fill = palette.edge;
            let slider = Slider::new(&mut look.opening, 0.0..=WIDEST)
                .suffix("°")
                .fixed_decimals(1);
            ui.add(slider)
                .labelled_by(label.id)
                .on_hover_text("Angle between the halves past the set pose");
            asked = self.sights(ui, &Sight::ALL);
            asked = self.size(ui, true_scale).or(asked);
        });
        asked
    }

    /// The button for true size, and how large the drawing is now.
    pub(crate) fn size(&self, ui: &mut Ui, true_scale: f32) -> Option<Command> {
        let clicked = Command::TrueSize.button(ui).clicked();
        if let Some(view) = self.view() {
            let percent = 100.0 * view.scale / true_scale;
            ui.weak(format!("{percent:.0}\u{a0}%"))
                .on_hover_text("Of true size on this screen");
        }
        clicked.then_some(Command::TrueSize)
    }

    /// Buttons for what of the drawing is shown by itself.
    pub(crate) fn sights(&self, ui: &mut Ui, sights: &[Sight]) -> Option<Command> {
        let mut asked = None;
        for &sight in sights {
            let chosen = self.own.is_none() && self.sight == sight;
            if Command::Show(sight).choice(ui, chosen).clicked() {
                asked = Some(Command::Show(sight));
            }
        }
        asked
    }
}
