//! The frame of every dialog. While it is open the keyboard is in it; when it closes the keyboard is
//! back where it was. Escape leaves; Enter does what the first button at its foot says, and so does
//! Ctrl+Enter from any of its fields.

use egui::{
    Button, Context, Frame, Id, Key, KeyboardShortcut, Modal, Modifiers, Response, Ui, Vec2, vec2,
};

/// How large a dialog with cards is, in points.
pub(super) const OF_CARDS: egui::Vec2 = egui::vec2(900.0, 640.0);

/// Around what stands in a dialog, in points.
const MARGIN: i8 = 18;
/// What is left of the window around the largest dialogs, with their margins, in points.
const AROUND: Vec2 = vec2(76.0, 76.0);
/// How high the foot is, in points.
const FOOT: f32 = 34.0;
/// Between the lines of a dialog, in points.
const GAP: f32 = 8.0;

/// What opens is measured first and cannot have the keyboard then: so many passes go by.
const SETTLES: u64 = 2;

/// The keys that do the main thing from anywhere in a dialog.
const MAIN: KeyboardShortcut = KeyboardShortcut::new(Modifiers::COMMAND, Key::Enter);

/// How large a dialog is.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Room {
    /// So wide, in points, and as high as its lines.
    Lines(f32),
    /// So large, in points, where the window has room for it.
    Page(Vec2),
}

/// What the keys ask of a dialog in this frame.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
enum Asked {
    /// It opens: the main thing is to come under the keyboard.
    Opens,
    /// The main thing is to be done.
    Main,
    #[default]
    Nothing,
}

/// Whether the main thing can be done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Ready {
    Yes,
    No,
}

/// A dialog that is open, what had the keyboard before it, and the pass that showed it last.
#[derive(Debug, Clone, Copy)]
struct Standing {
    id: Id,
    before: Option<Id>,
    shown: u64,
    /// The pass that showed it first.
    since: u64,
}

fn stack() -> Id {
    Id::unique("dialogs that are open")
}

fn asked_of() -> Id {
    Id::unique("what the keys ask of a dialog")
}

/// Shows a dialog; gives back what came of it, which is `left` where Escape was pressed.
pub(crate) fn ask<T>(
    ctx: &Context,
    (name, room): (&'static str, Room),
    left: T,
    content: impl FnOnce(&mut Ui) -> Option<T>,
) -> Option<T> {
    let id = Id::unique(name);
    let frame = Frame::popup(&ctx.global_style()).inner_margin(MARGIN);
    let modal = Modal::new(id).frame(frame).show(ctx, |ui| {
        let asked = asked(ui.ctx(), id);
        ui.data_mut(|data| data.insert_temp(asked_of(), asked));
        ui.spacing_mut().item_spacing.y = GAP;
        give_room(ui, room);
        content(ui)
    });
    let escape = |ctx: &Context| ctx.input_mut(|i| i.consume_key(Modifiers::NONE, Key::Escape));
    let escaped = modal.is_top_modal && !modal.any_popup_open && escape(ctx);
    modal.inner.or(escaped.then_some(left))
}

fn give_room(ui: &mut Ui, room: Room) {
    let most = ui.ctx().content_rect().size() - AROUND;
    match room {
        Room::Lines(wide) => ui.set_width(wide.min(most.x)),
        Room::Page(size) => {
            ui.set_min_size(size.min(most));
            ui.set_max_size(size.min(most));
        }
    }
}

/// What the keys ask of a dialog, which is noted as shown.
fn asked(ctx: &Context, id: Id) -> Asked {
    let pass = ctx.cumulative_pass_nr();
    let mut open = standing(ctx);
    let focused = ctx.memory(egui::Memory::focused);
    let is_top = open.last().is_none_or(|last| last.id == id);
    let asked = match open.iter_mut().find(|one| one.id == id) {
        Some(known) => {
            known.shown = pass;
            if pass <= known.since + SETTLES && focused.is_none() {
                ctx.data_mut(|data| data.insert_temp(stack(), open));
                return Asked::Opens;
            }
            let main = is_top && main_pressed(ctx, focused);
            if main { Asked::Main } else { Asked::Nothing }
        }
        None => {
            open.push(Standing {
                id,
                before: focused,
                shown: pass,
                since: pass,
            });
            if let Some(focused) = focused {
                ctx.memory_mut(|memory| memory.surrender_focus(focused));
            }
            ctx.request_repaint();
            Asked::Opens
        }
    };
    ctx.data_mut(|data| data.insert_temp(stack(), open));
    asked
}

fn standing(ctx: &Context) -> Vec<Standing> {
    ctx.data(|data| data.get_temp(stack())).unwrap_or_default()
}

/// Enter where nothing has the keyboard, or Ctrl+Enter wherever it is.
fn main_pressed(ctx: &Context, focused: Option<Id>) -> bool {
    ctx.input_mut(|input| {
        let anywhere = input.consume_shortcut(&MAIN);
        anywhere || focused.is_none() && input.key_pressed(Key::Enter)
    })
}

/// Gives the keyboard back to what had it before dialogs that are closed. It is said once in a frame,
/// after all dialogs.
pub(crate) fn settle(ctx: &Context) {
    let pass = ctx.cumulative_pass_nr();
    let mut open = standing(ctx);
    while let Some(at) = open.iter().position(|one| one.shown != pass) {
        let closed = open.remove(at);
        match open.get_mut(at) {
            // It came out of the one that is closed.
            Some(next) => next.before = closed.before,
            None => {
                if let Some(before) = closed.before {
                    ctx.memory_mut(|memory| memory.request_focus(before));
                }
                ctx.request_repaint();
            }
        }
    }
    ctx.data_mut(|data| data.insert_temp(stack(), open));
}

/// Brings something under the keyboard if its dialog opens and nothing else has it.
pub(crate) fn lead(response: &Response) {
    let asked: Asked = response
        .ctx
        .data(|data| data.get_temp(asked_of()))
        .unwrap_or_default();
    if asked == Asked::Opens && response.ctx.memory(|memory| memory.focused().is_none()) {
        response.request_focus();
    }
}

/// What stands over the foot of a dialog that is a page.
pub(crate) fn over_foot<T>(ui: &mut Ui, content: impl FnOnce(&mut Ui) -> T) -> T {
    let size = ui.available_size() - vec2(0.0, FOOT + GAP);
    let layout = egui::Layout::top_down(egui::Align::Min);
    let shown = ui.allocate_ui_with_layout(size, layout, |ui| {
        ui.set_min_size(size);
        content(ui)
    });
    shown.inner
}

/// The row of buttons at the foot: what Enter does, and the others. Gives back which was asked for,
/// what Enter does being 0 whether or not there is such a button.
pub(crate) fn foot(ui: &mut Ui, main: Option<(&str, Ready)>, others: &[&str]) -> Option<usize> {
    ui.add_space(4.0);
    let mut asked = None;
    ui.horizontal(|ui| {
        if let Some((label, ready)) = main
            && main_button(ui, label, ready)
        {
            asked = Some(0);
        }
        for (index, label) in others.iter().enumerate() {
            if ui.button(*label).clicked() {
                asked = Some(index + 1);
            }
        }
    });
    asked
}

fn main_button(ui: &mut Ui, label: &str, ready: Ready) -> bool {
    let button = ui.add_enabled(ready == Ready::Yes, Button::new(label));
    lead(&button);
    let keys = ui.ctx().format_shortcut(&MAIN);
    let button = button.on_hover_text(format!("{keys} does the same from any field"));
    let asked: Asked = ui
        .data(|data| data.get_temp(asked_of()))
        .unwrap_or_default();
    button.clicked() || ready == Ready::Yes && asked == Asked::Main
}
