//! The sheet with all views, to look at from near and far.

use egui::accesskit::Role;
use egui::{Key, Rect, Response, Sense, Slider, Ui, Vec2, WidgetInfo};
use lyon::tessellation::FillTessellator;
use reinwright_core::asked::Units;
use reinwright_core::draw::Shifts;
use reinwright_core::paper::Drawing;

use super::ghost::Ghost;
use super::lies::{Frozen, Sheet};
use crate::window::paint::ink::{Ink, Under, part_near};
use crate::window::paint::theme::Palette;
use crate::window::paint::view::{Fitted, View};
use crate::window::state::command::Command;
use crate::window::state::look::{Look, Page};
use crate::window::state::reckon::{Answers, PairKey, Shown};

/// Height of the text on the sheet, in points, at every zoom.
const TEXT: f32 = 11.5;
/// Between the edge of the sheet and the drawing, in points.
const RIM: f32 = 14.0;
/// The widest opening that the slider gives, degrees between the halves.
const WIDEST: f64 = 25.0;
/// Zoom of one press of a key.
const KEY_ZOOM: f32 = 1.25;
/// Points that one press of an arrow key moves the drawing.
const KEY_MOVE: f32 = 40.0;

/// How the sheet is looked at.
#[derive(Debug, Default)]
pub(crate) struct Paper {
    /// A view of the smith's own; without one the whole drawing is shown.
    own: Option<View>,
    /// The view that shows the whole drawing, and what it was fitted to.
    fitted: Option<(FitKey, Fitted)>,
    /// How it must lie, while something on it is dragged.
    pub(crate) frozen: Option<Frozen>,
    /// The pair as a mend would have it, over the drawing.
    pub(crate) ghost: Option<Ghost>,
    /// A picture under the drawing.
    pub(crate) under: Option<Under>,
    /// What the pointer works on.
    pub(crate) hand: Hand,
    /// The area of the last frame.
    area: Option<Rect>,
}

/// What the pointer works on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) enum Hand {
    /// The drawing: it is moved, and its parts are chosen.
    #[default]
    OnDrawing,
    /// The picture under it.
    OnPicture,
}

#[derive(Debug, Clone, Copy, PartialEq)]
struct FitKey {
    area: Rect,
    revision: u64,
    pair: PairKey,
}

impl Paper {
    /// Shows the whole drawing from now on.
    pub(crate) fn fit(&mut self) {
        self.own = None;
    }

    /// Shows the drawing at so many points per millimetre, keeping the middle.
    pub(crate) fn set_scale(&mut self, scale: f32) {
        if let (Some(area), Some(view)) = (self.area, self.view()) {
            self.own = Some(view.zoomed(scale / view.scale, area.center()));
        }
    }

    fn view(&self) -> Option<View> {
        self.own.or(self.fitted.map(|(_, fitted)| fitted.view))
    }

    /// The slider and the buttons above the sheet; gives back what was asked for.
    pub(crate) fn tools(&self, ui: &mut Ui, look: &mut Look, true_scale: f32) -> Option<Command> {
        let mut asked = None;
        // Wrapped: a row wider than its panel would push the sheet under the answers.
        ui.horizontal_wrapped(|ui| {
            let label = ui.label("Opened by").on_hover_text("0 is set on the work");
            ui.spacing_mut().slider_width = (ui.available_width() - 330.0).clamp(60.0, 200.0);
            let palette = Palette::of(ui.visuals());
            ui.visuals_mut().widgets.inactive.bg_fill = palette.edge;
            let slider = Slider::new(&mut look.opening, 0.0..=WIDEST)
                .suffix("°")
                .fixed_decimals(1);
            ui.add(slider)
                .labelled_by(label.id)
                .on_hover_text("Angle between the halves past the set pose");
            for command in [Command::ZoomFit, Command::TrueSize] {
                if command.button(ui).clicked() {
                    asked = Some(command);
                }
            }
            if let Some(view) = self.view() {
                let percent = 100.0 * view.scale / true_scale;
                ui.weak(format!("{percent:.0} %"))
                    .on_hover_text("Of true size on this screen");
            }
        });
        asked
    }

    /// Shows the sheet in the room there is; gives back how it lies, for what is put on it.
    pub(crate) fn show(
        &mut self,
        ui: &mut Ui,
        answers: &mut Answers,
        look: &mut Look,
        fills: &mut FillTessellator,
    ) -> Sheet {
        let palette = Palette::of(ui.visuals());
        let (area, response) = ui.allocate_exact_size(ui.available_size(), Sense::click_and_drag());
        self.area = Some(area);
        describe(&response);
        let shown = answers.shown(look);
        let (view, key) = self.laid(ui, &response, answers, (look.opening, shown));
        let (drawing, _) = answers.pair(key);
        let lies = Frozen {
            view,
            text: key.text,
            shifts: Shifts::of(drawing),
        };
        if self.hand == Hand::OnDrawing {
            point_and_choose(&response, view, drawing, look);
        }
        let painter = ui.painter_at(area);
        painter.rect_filled(area, 4.0, palette.sheet);
        if response.has_focus() {
            let stroke = egui::Stroke::new(1.0, palette.accent);
            painter.rect_stroke(area, 4.0, stroke, egui::StrokeKind::Inside);
        }
        let mut ink = Ink::new(painter, view, palette, look.lit(), fills);
        if let Some(under) = &self.under {
            ink.picture(under);
        }
        ink.draw(&drawing.items);
        if let Some(ghost) = &self.ghost {
            ink.ghost(&ghost.drawing((key.opening, lies)).items);
            ghost.told(ui, area);
        }
        told(ui, area, look, shown, answers.units());
        Sheet {
            response,
            lies,
            opening: key.opening + shown.half_angle(),
        }
    }

    /// The view, and what is drawn in it: nothing moves while something on it is dragged.
    fn laid(
        &mut self,
        ui: &Ui,
        response: &Response,
        answers: &mut Answers,
        (opening, shown): (f64, Shown),
    ) -> (View, PairKey) {
        let Some(lies) = self.frozen else {
            return self.free(ui, response, answers, key(opening, 0.0, shown));
        };
        let key = PairKey {
            shifts: Some(lies.shifts),
            ..key(opening, lies.text, shown)
        };
        (lies.view, key)
    }

    /// The view as the smith left it or as it fits, and what is drawn in it.
    fn free(
        &mut self,
        ui: &Ui,
        response: &Response,
        answers: &mut Answers,
        key: PairKey,
    ) -> (View, PairKey) {
        let fitted = self.fitted_to(response.rect, answers, key);
        self.navigate(ui, response, fitted.view);
        let view = self.own.unwrap_or(fitted.view);
        let text = match self.own {
            None => fitted.text,
            Some(view) => f64::from(TEXT / view.scale),
        };
        (view, PairKey { text, ..key })
    }

    /// Shows a drawing that no part of a pair is chosen in; `revision` counts its changes.
    pub(crate) fn show_drawing(
        &mut self,
        ui: &mut Ui,
        drawing: &Drawing,
        (revision, what): (u64, &str),
        fills: &mut FillTessellator,
    ) {
        let palette = Palette::of(ui.visuals());
        let (area, response) = ui.allocate_exact_size(ui.available_size(), Sense::click_and_drag());
        self.area = Some(area);
        response.widget_info(|| WidgetInfo::labeled(Role::Image, true, what));
        let now = FitKey {
            area,
            revision,
            pair: key(0.0, 0.0, Shown::Own),
        };
        let fitted = match self.fitted {
            Some((kept, fitted)) if kept == now => fitted,
            _ => Fitted {
                view: View::fit(drawing.bounds(), area, RIM),
                text: 0.0,
            },
        };
        self.fitted = Some((now, fitted));
        self.navigate(ui, &response, fitted.view);
        let painter = ui.painter_at(area);
        painter.rect_filled(area, 4.0, palette.sheet);
        let view = self.own.unwrap_or(fitted.view);
        Ink::new(painter, view, palette, None, fills).draw(&drawing.items);
    }

    fn fitted_to(&mut self, area: Rect, answers: &mut Answers, pair: PairKey) -> Fitted {
        let now = FitKey {
            area,
            revision: answers.revision,
            pair,
        };
        match self.fitted {
            Some((kept, fitted)) if kept == now => fitted,
            _ => {
                let bounds = |text| answers.pair(PairKey { text, ..pair }).1;
                let fitted = Fitted::new(area, RIM, text_in(area), bounds);
                self.fitted = Some((now, fitted));
                fitted
            }
        }
    }

    /// Drag to move, wheel or pinch to zoom about the pointer, double click for the whole, and
    /// the same by keys when the sheet has the focus.
    fn navigate(&mut self, ui: &Ui, response: &Response, fitted: View) {
        let view = self.own.unwrap_or(fitted);
        let mut next = view;
        if response.dragged() && self.hand == Hand::OnDrawing {
            next = next.moved(response.drag_delta());
        }
        // A handle under the pointer does not stop the wheel.
        let over = response.contains_pointer();
        if let Some(at) = ui.input(|i| i.pointer.hover_pos()).filter(|_| over) {
            let (wheel, pinch) = ui.input(|i| (i.smooth_scroll_delta().y, i.zoom_delta()));
            /// Points of wheel travel that zoom by a factor of e.
            const TRAVEL: f32 = 320.0;
            next = next.zoomed((wheel / TRAVEL).exp() * pinch, at);
        }
        if response.has_focus() {
            next = by_keys(ui, next, response.rect);
        }
        if next != view {
            self.own = Some(next);
        }
        let home = response.has_focus() && ui.input(|i| i.key_pressed(Key::Home));
        let twice = response.double_clicked() && self.hand == Hand::OnDrawing;
        if twice || home {
            self.fit();
        }
        if response.clicked() || response.drag_started() {
            response.request_focus();
        }
    }
}

/// Lights the part under the pointer, and chooses it at a click.
fn point_and_choose(response: &Response, view: View, drawing: &Drawing, look: &mut Look) {
    let under = |at| part_near(&drawing.items, view, at);
    if let Some(part) = response.hover_pos().and_then(under) {
        look.point_at(part);
    }
    if response.clicked() {
        let part = response.interact_pointer_pos().and_then(under);
        match part {
            Some(part) => look.choose(part),
            None => look.chosen = None,
        }
    }
}

/// Says when the sheet does not show the design as it stands.
fn told(ui: &Ui, area: Rect, look: &Look, shown: Shown, units: Units) {
    let size = |mm: f64| units.show().text(mm);
    let words = match (shown, look.page, look.tried_mm) {
        (Shown::Tried { size_mm, .. }, _, _) => format!("tried on {} work", size(size_mm)),
        (Shown::Own, Page::Fit, Some(mm)) => {
            format!("not held on {} work: shown on its own", size(mm))
        }
        (Shown::Stress { squeeze_n, on, .. }, _, _) => {
            let on = on.map_or(String::new(), |(mm, _)| format!(" on {} work", size(mm)));
            format!(
                "bending stress under {} at the hand{on}",
                units.show().force(squeeze_n)
            )
        }
        (Shown::Own, _, _) => return,
    };
    let palette = Palette::of(ui.visuals());
    let at = area.left_top() + Vec2::splat(8.0);
    let font = egui::FontId::proportional(13.0);
    let painter = ui.painter_at(area);
    painter.text(at, egui::Align2::LEFT_TOP, words, font, palette.accent);
}

/// Height of the text in an area, in points: in a low one less, or the sizes would crowd out the
/// pair.
fn text_in(area: Rect) -> f32 {
    /// Lines of text that the drawing has about room for, and the least that can be read, points.
    const LINES: f32 = 34.0;
    const LEAST: f32 = 7.5;
    (area.height() / LINES).clamp(LEAST, TEXT)
}

fn key(opening: f64, text: f64, shown: Shown) -> PairKey {
    PairKey {
        opening: opening.to_radians() / 2.0,
        text,
        shown,
        shifts: None,
    }
}

fn by_keys(ui: &Ui, view: View, area: Rect) -> View {
    let filter = egui::EventFilter {
        horizontal_arrows: true,
        vertical_arrows: true,
        ..Default::default()
    };
    ui.memory_mut(|m| {
        if let Some(id) = m.focused() {
            m.set_focus_lock_filter(id, filter);
        }
    });
    let pressed = |key| ui.input(|i| f32::from(u8::from(i.key_pressed(key))));
    let across = pressed(Key::ArrowLeft) - pressed(Key::ArrowRight);
    let along = pressed(Key::ArrowUp) - pressed(Key::ArrowDown);
    let zoom = pressed(Key::Plus) + pressed(Key::Equals) - pressed(Key::Minus);
    view.moved(Vec2::new(across, along) * KEY_MOVE)
        .zoomed(KEY_ZOOM.powf(zoom), area.center())
}

fn describe(response: &Response) {
    response.widget_info(|| {
        let what = "Drawing of the pair: side, top and end view. Arrow keys move it, plus and minus zoom, Home shows all";
        WidgetInfo::labeled(Role::Image, true, what)
    });
}
