//! Handles on the sheet: small marks on the steel that change a value when they are dragged.

mod keys;
mod mark;
mod spread;
pub(crate) mod tool;

use egui::accesskit::{Action, Role};
use egui::{Context, Id, Key, Modifiers, PointerButton, Pos2, Rect, Response, Sense, Ui, Vec2};
use reinwright_core::draw::handle::{self, Handle, HandleId, OnPaper, Step, node_handles};
use reinwright_core::finding::Part;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::sketch::Depth;

use crate::window::sheet::lies::{Frozen, Sheet};
use crate::window::state::look::Look;
use crate::window::state::reckon::Answers;
use mark::{Mark, Tag, lead};
use spread::spread;

/// Side of the square in which a press takes hold of a handle, points.
const HOLD: f32 = 16.0;
/// The nearest that two marks stand to each other, points: they do not touch, and a press on one
/// does not take the other.
const APART: f32 = 14.0;
/// Within so many points of the pointer the nearest handle shows.
const NEAR: f32 = 48.0;

/// The handle that is being dragged, if one is.
#[derive(Debug, Default)]
pub(crate) struct Handles {
    held: Option<Held>,
}

/// Which node of a sketched jaw shows its handles, and how it is drawn on.
#[derive(Debug, Clone, Copy)]
pub(crate) struct DrawnOn {
    pub(crate) node: (Part, usize),
    /// What moving one side of its steel does to the other.
    pub(crate) depth: Depth,
}

/// A handle in the hand.
#[derive(Debug)]
struct Held {
    handle: Handle,
    /// The design before, to go back to.
    start: Document,
    /// What moving one side of a sketch's steel does to the other.
    depth: Depth,
    /// Where it was taken hold of.
    from: Pos2,
    /// How far its mark stands off its place, for the sake of others.
    off: Vec2,
    frozen: Frozen,
    on: OnPaper,
}

/// A handle on the screen.
struct Placed {
    /// Where its mark stands.
    at: Pos2,
    /// Where its steel is.
    steel: Pos2,
    id: Id,
}

impl Placed {
    /// All handles, with their marks set apart.
    fn all(handles: &[Handle], sheet: &Sheet, answers: &Answers) -> Vec<Self> {
        let on = sheet.on();
        let steel = |handle| sheet.lies.view.to_screen(answers.place(handle, &on));
        let steel: Vec<Pos2> = handles.iter().map(steel).collect();
        let marks = spread(&steel, APART);
        let placed = handles.iter().zip(marks.into_iter().zip(steel));
        let placed = placed.map(|(handle, (at, steel))| Self {
            at,
            steel,
            id: id(&handle.id),
        });
        placed.collect()
    }
}

/// The handles of the design, and those of the node that is chosen.
fn all(answers: &mut Answers, drawn_on: DrawnOn) -> Vec<Handle> {
    let of_design = answers.handles();
    let of_node = node_handles(answers.document(), &answers.known.model, drawn_on.node);
    of_design.iter().cloned().chain(of_node).collect()
}

impl Handles {
    /// Whether a handle is being dragged.
    pub(crate) fn busy(&self) -> bool {
        self.held.is_some()
    }

    /// How the sheet must lie, while a handle is dragged.
    pub(crate) fn frozen(&self) -> Option<Frozen> {
        self.held.as_ref().map(|held| held.frozen)
    }

    /// Goes on with a drag before the frame is drawn, so that all that is drawn follows at once.
    pub(crate) fn drag(&mut self, ctx: &Context, document: &mut Document) {
        let Some(held) = &self.held else {
            return;
        };
        let give_up = ctx.input_mut(|i| i.consume_key(Modifiers::NONE, Key::Escape));
        if give_up {
            *document = held.start.clone();
            self.held = None;
            return;
        }
        let (at, down) = ctx.input(|i| (i.pointer.latest_pos(), i.pointer.primary_down()));
        if let Some(at) = at {
            *document = held.at(at, fineness(ctx));
        }
        if !down {
            self.held = None;
        }
    }

    /// Shows the handles of the lit part and the nearest to the pointer, and takes hold of one;
    /// gives back the one that was chosen.
    pub(crate) fn show(
        &mut self,
        ui: &Ui,
        sheet: &Sheet,
        answers: &mut Answers,
        (document, look, drawn_on): (&mut Document, &mut Look, DrawnOn),
    ) -> Option<HandleId> {
        if let Some(held) = &self.held {
            held.show(ui, sheet, answers);
            look.point_at(held.handle.part);
            return None;
        }
        let all = all(answers, drawn_on);
        let placed = Placed::all(&all, sheet, answers);
        let nearest = nearest(&sheet.response, &placed);
        let mut chosen = None;
        for (i, (handle, place)) in all.iter().zip(&placed).enumerate() {
            let near = nearest.filter(|(which, _)| *which == i).map(|(_, far)| far);
            let (area, way) = (sheet.response.rect, handle.way(&sheet.on()));
            let response = widget(ui, area, (place, way), near);
            let value = || handle::value_text(document, &handle.id);
            tell(ui, &response, (&handle.label, value()));
            if response.drag_started_by(PointerButton::Primary) {
                let off = place.at - place.steel;
                self.take(ui, sheet, (handle, off), (document, drawn_on.depth));
            }
            if response.clicked() || response.drag_started() {
                chosen = Some(handle.id.clone());
                response.request_focus();
                look.choose(handle.part);
            }
            if near.is_some_and(|far| far <= HOLD / 2.0) {
                look.point_at(handle.part);
            }
            if response.has_focus() || ui.input(|i| asked_to_step(i, place.id)) {
                keys::step(ui, &response, (handle, &sheet.on()), document);
            }
            let seen = Seen {
                near,
                lit: look.lit(),
                focus: response.has_focus(),
            };
            let own = Named {
                part: handle.part,
                way,
                text: &|| text(handle, document),
            };
            seen.paint(ui, area, place, &own);
        }
        chosen
    }

    fn take(
        &mut self,
        ui: &Ui,
        sheet: &Sheet,
        (handle, off): (&Handle, Vec2),
        (document, depth): (&Document, Depth),
    ) {
        let from = ui.input(|i| i.pointer.press_origin().or(i.pointer.latest_pos()));
        self.held = from.map(|from| Held {
            handle: handle.clone(),
            start: document.clone(),
            depth,
            from,
            off,
            frozen: sheet.lies,
            on: sheet.on(),
        });
        // What was moved before the drag was known to be one counts too, from the next frame on.
        ui.ctx().request_repaint();
    }
}

impl Held {
    /// The design with the pointer at a place.
    fn at(&self, pointer: Pos2, step: Step) -> Document {
        let moved = (pointer - self.from) / self.frozen.view.scale;
        let moved = kurbo::Vec2::new(f64::from(moved.x), f64::from(-moved.y));
        handle::drag_with(
            &self.start,
            &self.handle,
            (moved, &self.on),
            (step, self.depth),
        )
        .document
    }

    fn show(&self, ui: &Ui, sheet: &Sheet, answers: &Answers) {
        let place = answers.place(&self.handle, &sheet.on());
        let steel = sheet.lies.view.to_screen(place);
        let at = steel + self.off;
        let way = self.handle.way(&sheet.on());
        let placed = Placed {
            at,
            steel,
            id: id(&self.handle.id),
        };
        let document = answers.document();
        let words = text(&self.handle, document);
        let response = in_hand(ui, sheet.response.rect, (&placed, way), &words);
        let value = handle::value_text(document, &self.handle.id);
        tell(ui, &response, (&self.handle.label, value));
    }
}

/// Shows the handle that is in the hand, with what its value is now.
fn in_hand(ui: &Ui, area: Rect, (place, way): (&Placed, kurbo::Vec2), text: &str) -> Response {
    // Keeps its id alive, so that the drag stays its own.
    let square = Rect::from_center_size(place.at, Vec2::splat(HOLD));
    let sense = Sense::CLICK | Sense::DRAG | Sense::FOCUSABLE;
    let response = ui.interact(square, place.id, sense);
    ui.set_cursor_icon(mark::cursor(way));
    lead(ui, area, (place.at, place.steel));
    Mark {
        at: place.at,
        way,
        strong: true,
    }
    .paint(ui, area);
    let beside = ui.input(|i| i.pointer.latest_pos()).unwrap_or(place.at);
    Tag {
        beside,
        text,
        hint: "Shift: fine steps. Esc: as it was",
    }
    .paint(ui, area);
    response
}

/// What a handle is to the pointer and to the keys: only the nearest one takes the pointer.
fn widget(
    ui: &Ui,
    area: Rect,
    (place, way): (&Placed, kurbo::Vec2),
    near: Option<f32>,
) -> Response {
    let square = Rect::from_center_size(place.at, Vec2::splat(HOLD));
    let square = square.intersect(area);
    if near.is_none() {
        return ui.interact(square, place.id, Sense::FOCUSABLE);
    }
    let sense = Sense::CLICK | Sense::DRAG | Sense::FOCUSABLE;
    ui.interact(square, place.id, sense)
        .on_hover_cursor(mark::cursor(way))
}

/// What a handle is called, and which way it goes.
struct Named<'a> {
    part: Part,
    way: kurbo::Vec2,
    /// Name and value, where they are shown.
    text: &'a dyn Fn() -> String,
}

/// Why a handle shows.
struct Seen {
    /// How far the pointer is, where it is the nearest handle.
    near: Option<f32>,
    lit: Option<Part>,
    focus: bool,
}

impl Seen {
    fn paint(&self, ui: &Ui, area: Rect, place: &Placed, own: &Named<'_>) {
        let under = self.near.is_some_and(|far| far <= HOLD / 2.0);
        if !(self.near.is_some() || self.focus || self.lit == Some(own.part)) {
            return;
        }
        let strong = under || self.focus;
        lead(ui, area, (place.at, place.steel));
        Mark {
            at: place.at,
            way: own.way,
            strong,
        }
        .paint(ui, area);
        if strong {
            let hint = if self.focus {
                "Arrow keys step it, with Shift finely"
            } else {
                "Drag it, with Shift finely"
            };
            let (beside, text) = (place.at, &(own.text)());
            Tag { beside, text, hint }.paint(ui, area);
        }
    }
}

/// `Jaw length 2 3/8 in`.
fn text(handle: &Handle, document: &Document) -> String {
    format!(
        "{} {}",
        handle.label,
        handle::value_text(document, &handle.id)
    )
}

fn id(handle: &HandleId) -> Id {
    Id::unique(("handle", handle))
}

fn fineness(ctx: &Context) -> Step {
    if ctx.input(|i| i.modifiers.shift) {
        Step::Fine
    } else {
        Step::Usual
    }
}

/// The handle nearest to the pointer, where one is near, and how far it is in points.
fn nearest(sheet: &Response, placed: &[Placed]) -> Option<(usize, f32)> {
    // One that was pressed stays the nearest until it is seen whether the hand drags.
    let pointer = |i: &egui::InputState| i.pointer.press_origin().or(i.pointer.latest_pos());
    let pointer = sheet.ctx.input(pointer)?;
    if !sheet.contains_pointer() {
        return None;
    }
    let far = placed.iter().map(|place| place.at.distance(pointer));
    let nearest = far.enumerate().min_by(|a, b| a.1.total_cmp(&b.1));
    nearest.filter(|(_, far)| *far <= NEAR)
}

fn asked_to_step(input: &egui::InputState, id: Id) -> bool {
    [Action::Increment, Action::Decrement]
        .into_iter()
        .any(|action| input.has_accesskit_action_request(id, action))
}

/// Tells a screen reader the name and the value.
fn tell(ui: &Ui, response: &Response, (label, value): (&str, String)) {
    let name = format!("{label}, on the drawing");
    response.widget_info(|| egui::WidgetInfo::labeled(Role::Slider, true, &name));
    ui.ctx().accesskit_node_builder(response.id, |node| {
        node.set_value(value);
        node.add_action(Action::Increment);
        node.add_action(Action::Decrement);
    });
}
