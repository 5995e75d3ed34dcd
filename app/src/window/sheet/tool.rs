//! A tool on the sheet: its views, looked at from near and far.

use egui::{Context, Ui};
use lyon::tessellation::FillTessellator;
use reinwright_core::tool::Tool;

use super::handles::tool::{On, Stands, ToolHandles};
use super::paper::{Paper, Room, point_and_choose};
use crate::window::paint::ink::Ink;
use crate::window::paint::theme::Palette;
use crate::window::paint::view::View;
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
    handles: ToolHandles,
    /// How it was looked at before a handle was taken; nothing while none is held.
    before: Option<Option<View>>,
}

impl Default for ToolSheet {
    fn default() -> Self {
        let mut paper = Paper::default();
        paper.see(Sight::All);
        Self {
            paper,
            handles: ToolHandles::default(),
            before: None,
        }
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

    /// Goes on with a drag, before anything is drawn.
    pub(crate) fn drag(&mut self, ctx: &Context, tool: &mut Tool) {
        self.handles.drag(ctx, tool);
    }

    /// Whether something on the sheet is being dragged.
    pub(crate) fn is_dragging(&self) -> bool {
        self.handles.busy()
    }

    /// Nothing moves while a handle is held but what is dragged.
    fn hold_still(&mut self, ctx: &Context, view: View) {
        match (self.handles.busy(), self.before) {
            (true, None) => {
                self.before = Some(self.paper.own_view());
                self.paper.set_view(Some(view));
            }
            (false, Some(before)) => {
                self.before = None;
                self.paper.set_view(before);
                ctx.request_repaint();
            }
            (true, Some(_)) | (false, None) => {}
        }
    }

    /// The buttons above the sheet; gives back what was asked for.
    pub(crate) fn tools(&self, ui: &mut Ui, true_scale: f32) -> Option<Command> {
        tools(&self.paper, ui, true_scale)
    }

    /// Shows the views in the room there is, with what can be dragged.
    pub(crate) fn show(
        &mut self,
        ui: &mut Ui,
        answers: &mut ToolAnswers,
        (tool, look): (&mut Tool, &mut Look),
        fills: &mut FillTessellator,
    ) {
        let room = views(&mut self.paper, ui, (answers, look), fills);
        let stands = Stands::of(answers.views(room.text).0, tool);
        let on = On {
            response: &room.response,
            view: room.view,
            stands,
        };
        self.handles.show(ui, &on, answers, (tool, look));
        self.hold_still(ui.ctx(), room.view);
    }
}

/// The buttons above the views of a tool; gives back what was asked for.
pub(crate) fn tools(paper: &Paper, ui: &mut Ui, true_scale: f32) -> Option<Command> {
    ui.horizontal_wrapped(|ui| {
        let sight = paper.sights(ui, &[Sight::All]);
        paper.size(ui, true_scale).or(sight)
    })
    .inner
}

/// Shows the views of a tool in the room there is; gives back how they lie.
pub(crate) fn views(
    paper: &mut Paper,
    ui: &mut Ui,
    (answers, look): (&mut ToolAnswers, &mut Look),
    fills: &mut FillTessellator,
) -> Room {
    let of = (answers.revision(), WHAT);
    let room = paper.room(ui, of, |_, text| answers.views(text).1);
    let (drawing, _) = answers.views(room.text);
    point_and_choose(&room.response, room.view, drawing, look);
    let painter = ui.painter_at(room.response.rect);
    let palette = Palette::of(ui.visuals());
    Ink::new(painter, room.view, palette, look.lit(), fills).draw(&drawing.items);
    room
}
