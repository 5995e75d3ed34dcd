//! A tool on the sheet: its views, looked at from near and far.

use egui::Ui;
use lyon::tessellation::FillTessellator;

use super::paper::{Paper, point_and_choose};
use crate::window::paint::ink::Ink;
use crate::window::paint::theme::Palette;
use crate::window::state::bar::OfBar;
use crate::window::state::command::Command;
use crate::window::state::look::{Look, Sight};
use crate::window::state::tool::ToolAnswers;

/// What a screen reader says of the sheet.
const WHAT: &str = "Drawing of the tool: its views and sections. Arrow keys move it, plus and minus \
     zoom, Home goes back";

/// How the sheet is looked at.
#[derive(Debug)]
pub(crate) struct ToolSheet {
    paper: Paper,
}

impl Default for ToolSheet {
    fn default() -> Self {
        let mut paper = Paper::default();
        paper.see(Sight::All);
        Self { paper }
    }
}

impl ToolSheet {
    /// Shows the whole drawing from now on.
    pub(crate) fn see_all(&mut self) {
        self.paper.see(Sight::All);
    }

    /// Shows it at so many points per millimetre.
    pub(crate) fn set_scale(&mut self, scale: f32) {
        self.paper.set_scale(scale);
    }

    /// The buttons above the sheet; gives back what was asked for.
    pub(crate) fn tools(&self, ui: &mut Ui, true_scale: f32) -> Option<Command> {
        ui.horizontal_wrapped(|ui| {
            let sight = self.paper.sights(ui, &[Sight::All]);
            self.paper.size(ui, true_scale).or(sight)
        })
        .inner
    }

    /// Shows the views in the room there is.
    pub(crate) fn show(
        &mut self,
        ui: &mut Ui,
        answers: &mut ToolAnswers,
        look: &mut Look,
        fills: &mut FillTessellator,
    ) {
        let of = (answers.revision(), WHAT);
        let room = self.paper.room(ui, of, |_, text| answers.views(text).1);
        let (drawing, _) = answers.views(room.text);
        point_and_choose(&room.response, room.view, drawing, look);
        let painter = ui.painter_at(room.response.rect);
        let palette = Palette::of(ui.visuals());
        Ink::new(painter, room.view, palette, look.lit(), fills).draw(&drawing.items);
    }
}
