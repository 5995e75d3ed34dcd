//! Handles of a tool on the sheet: marked, dragged and stepped as those of a pair are.

use egui::{Context, Id, Key, Modifiers, PointerButton, Pos2, Response, Ui, Vec2};
use reinwright_core::asked::Step;
use reinwright_core::draw::{ToolHandle, drag_tool, step_tool};
use reinwright_core::paper::{Drawing, GroupItem, Item, View as Side};
use reinwright_core::tool::{Mount, Tool};

use super::spread::spread;
use super::{
    APART, HOLD, Named, Placed, Seen, asked_to_step, fineness, in_hand, keys, nearest, tell, widget,
};
use crate::window::paint::view::View;
use crate::window::state::look::Look;
use crate::window::state::tool::ToolAnswers;

/// The handle that is being dragged, if one is.
#[derive(Debug, Default)]
pub(crate) struct ToolHandles {
    held: Option<Held>,
}

/// A handle in the hand.
#[derive(Debug)]
struct Held {
    handle: ToolHandle,
    /// The tool before, to go back to.
    start: Tool,
    /// Where it was taken hold of.
    from: Pos2,
    /// How far its mark stands off its place, for the sake of others.
    off: Vec2,
    /// Points of the screen per millimetre.
    scale: f32,
}

/// The sheet that they lie on in this frame.
pub(crate) struct On<'a> {
    pub(crate) response: &'a Response,
    pub(crate) view: View,
    /// Where the views of the drawing stand.
    pub(crate) stands: Stands,
}

/// Where the views that have handles stand on the paper, mm.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Stands {
    side: kurbo::Vec2,
    top: kurbo::Vec2,
}

impl Stands {
    /// In a drawing of a tool. A hardy tool stands: its top view is the front view.
    pub(crate) fn of(drawing: &Drawing, tool: &Tool) -> Self {
        let shift = |is: &dyn Fn(&GroupItem) -> bool| {
            let groups = drawing.items.iter().filter_map(|item| match item {
                Item::Group(group) => Some(group),
                Item::Path(_) | Item::Text(_) => None,
            });
            let mut found = groups.filter(|group| is(group)).map(|group| group.shift);
            found.next().unwrap_or_default()
        };
        match tool.shape.mount {
            Mount::Struck(_) => Self {
                side: shift(&|group| group.view == Some(Side::Side)),
                top: shift(&|group| group.view == Some(Side::Top)),
            },
            Mount::Hardy(_) => Self {
                side: shift(&|group| group.name == "Side view"),
                top: shift(&|group| group.name == "Front view"),
            },
        }
    }

    fn of_view(self, view: Side) -> kurbo::Vec2 {
        match view {
            Side::Side | Side::End => self.side,
            Side::Top => self.top,
        }
    }
}

impl On<'_> {
    /// Where the steel of a handle is on the screen.
    fn steel(&self, handle: &ToolHandle, answers: &ToolAnswers) -> Pos2 {
        let place = answers.place(handle).unwrap_or_default();
        self.view
            .to_screen(place + self.stands.of_view(handle.view()))
    }

    /// All handles, with their marks set apart.
    fn all(&self, handles: &[ToolHandle], answers: &ToolAnswers) -> Vec<Placed> {
        let steel = |handle| self.steel(handle, answers);
        let steel: Vec<Pos2> = handles.iter().map(steel).collect();
        let marks = spread(&steel, APART);
        let placed = handles.iter().zip(marks.into_iter().zip(steel));
        let placed = placed.map(|(handle, (at, steel))| Placed {
            at,
            steel,
            id: id(handle),
        });
        placed.collect()
    }
}

impl ToolHandles {
    /// Whether a handle is being dragged.
    pub(crate) fn busy(&self) -> bool {
        self.held.is_some()
    }

    /// Goes on with a drag before the frame is drawn, so that all that is drawn follows at once.
    pub(crate) fn drag(&mut self, ctx: &Context, tool: &mut Tool) {
        let Some(held) = &self.held else {
            return;
        };
        let give_up = ctx.input_mut(|i| i.consume_key(Modifiers::NONE, Key::Escape));
        if give_up {
            *tool = held.start.clone();
            self.held = None;
            return;
        }
        let (at, down) = ctx.input(|i| (i.pointer.latest_pos(), i.pointer.primary_down()));
        if let Some(at) = at {
            *tool = held.at(at, fineness(ctx));
        }
        if !down {
            self.held = None;
        }
    }

    /// Shows the handles of the lit part and the nearest to the pointer, and takes hold of one.
    pub(crate) fn show(
        &mut self,
        ui: &Ui,
        on: &On<'_>,
        answers: &mut ToolAnswers,
        (tool, look): (&mut Tool, &mut Look),
    ) {
        if let Some(held) = &self.held {
            held.show(ui, on, answers);
            look.point_at(held.handle.part);
            return;
        }
        let all = answers.handles();
        let placed = on.all(&all, answers);
        let nearest = nearest(on.response, &placed);
        for (i, (handle, place)) in all.iter().zip(&placed).enumerate() {
            let near = nearest.filter(|(which, _)| *which == i).map(|(_, far)| far);
            let (area, way) = (on.response.rect, handle.answer.normalize());
            let response = widget(ui, area, (place, way), near);
            tell(ui, &response, (&handle.label, value(handle, tool)));
            if response.drag_started_by(PointerButton::Primary) {
                self.take(ui, on, (handle, place), tool);
            }
            if response.clicked() || response.drag_started() {
                response.request_focus();
                look.choose(handle.part);
            }
            if near.is_some_and(|far| far <= HOLD / 2.0) {
                look.point_at(handle.part);
            }
            if response.has_focus() || ui.input(|i| asked_to_step(i, place.id)) {
                keys::keep_arrows(ui, &response);
                for (steps, step) in keys::along(ui, &response, way) {
                    if steps != 0.0 {
                        *tool = step_tool(tool, handle, steps, step);
                    }
                }
            }
            let seen = Seen {
                near,
                lit: look.lit(),
                focus: response.has_focus(),
            };
            let own = Named {
                part: handle.part,
                way,
                text: &|| text(handle, tool),
            };
            seen.paint(ui, area, place, &own);
        }
    }

    fn take(&mut self, ui: &Ui, on: &On<'_>, (handle, place): (&ToolHandle, &Placed), tool: &Tool) {
        let from = ui.input(|i| i.pointer.press_origin().or(i.pointer.latest_pos()));
        self.held = from.map(|from| Held {
            handle: handle.clone(),
            start: tool.clone(),
            from,
            off: place.at - place.steel,
            scale: on.view.scale,
        });
        // What was moved before the drag was known to be one counts too, from the next frame on.
        ui.ctx().request_repaint();
    }
}

impl Held {
    /// The tool with the pointer at a place.
    fn at(&self, pointer: Pos2, step: Step) -> Tool {
        let moved = (pointer - self.from) / self.scale;
        let moved = kurbo::Vec2::new(f64::from(moved.x), f64::from(-moved.y));
        drag_tool(&self.start, &self.handle, moved, step)
    }

    fn show(&self, ui: &Ui, on: &On<'_>, answers: &ToolAnswers) {
        let steel = on.steel(&self.handle, answers);
        let placed = Placed {
            at: steel + self.off,
            steel,
            id: id(&self.handle),
        };
        let (way, tool) = (self.handle.answer.normalize(), answers.tool());
        let words = text(&self.handle, tool);
        let response = in_hand(ui, on.response.rect, (&placed, way), &words);
        tell(
            ui,
            &response,
            (&self.handle.label, value(&self.handle, tool)),
        );
    }
}

/// `Working end taper 1 5/16 in`.
fn text(handle: &ToolHandle, tool: &Tool) -> String {
    format!("{} {}", handle.label, value(handle, tool))
}

fn value(handle: &ToolHandle, tool: &Tool) -> String {
    let field = tool.field(&handle.path);
    field.map_or_else(String::new, |field| field.value.to_string())
}

fn id(handle: &ToolHandle) -> Id {
    Id::unique(("tool handle", &handle.path))
}
