//! The sheet with all views, to look at from near and far.

mod fitting;
mod moving;
mod tools;

use egui::accesskit::Role;
use egui::{Rect, Response, Sense, Ui, WidgetInfo};
use lyon::tessellation::FillTessellator;
use reinwright_core::asked::Units;
use reinwright_core::draw::Shifts;
use reinwright_core::paper::Drawing;
use reinwright_core::tongs::model::Model;

use super::ghost::Ghost;
use super::lies::{Frozen, Sheet};
use super::words::say_over;
use crate::window::paint::ink::{Ink, Under};
use crate::window::paint::pointed::part_near;
use crate::window::paint::theme::Palette;
use crate::window::paint::view::{Fitted, View};
use crate::window::state::look::{Look, Page, Sight};
use crate::window::state::reckon::{Answers, Brought, PairKey, Shown};
use fitting::{FitKey, Laid};

/// Height of the text on the sheet, in points, at every zoom.
const TEXT: f32 = 11.5;
/// Between the edge of the sheet and the drawing, in points.
const RIM: f32 = 14.0;

/// How the sheet is looked at.
#[derive(Debug, Default)]
pub(crate) struct Paper {
    /// What is shown by itself.
    sight: Sight,
    /// A view of the smith's own; without one all that is in sight is shown.
    own: Option<View>,
    /// The view that shows it, and what it was fitted to.
    fitted: Option<(FitKey, Laid)>,
    /// The middle of the head, mm on the paper, where a pair is shown.
    head: Option<kurbo::Point>,
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

/// How a drawing lies on its paper.
pub(crate) struct Room {
    pub(crate) response: Response,
    pub(crate) view: View,
    /// Size of its text, mm.
    pub(crate) text: f64,
}

impl Paper {
    /// Shows so much of the drawing from now on.
    pub(crate) fn see(&mut self, sight: Sight) {
        self.sight = sight;
        self.own = None;
    }

    /// The smith's own view, if there is one.
    pub(crate) fn own_view(&self) -> Option<View> {
        self.own
    }

    /// Shows the drawing so from now on, or as it fits by itself.
    pub(crate) fn set_view(&mut self, own: Option<View>) {
        self.own = own;
    }

    /// What of the drawing is shown by itself.
    pub(crate) fn sight(&self) -> Sight {
        self.sight
    }

    /// Shows the drawing at so many points per millimetre, about the head; without one about the
    /// middle.
    pub(crate) fn set_scale(&mut self, scale: f32) {
        if let (Some(area), Some(view)) = (self.area, self.view()) {
            let next = view.zoomed(scale / view.scale, area.center());
            let head = self.head.map(|head| area.center() - next.to_screen(head));
            self.own = Some(next.moved(head.unwrap_or_default()));
        }
    }

    fn view(&self) -> Option<View> {
        self.own.or(self.fitted.map(|(_, laid)| laid.fitted.view))
    }

    /// Shows the sheet in the room there is; gives back how it lies, for what is put on it.
    pub(crate) fn show(
        &mut self,
        ui: &mut Ui,
        answers: &mut Answers,
        look: &mut Look,
        fills: &mut FillTessellator,
    ) -> Sheet {
        let response = self.lay(ui);
        let area = response.rect;
        describe(&response);
        let shown = answers.shown(look);
        let (view, key) = self.laid(ui, &response, answers, (look.opening, shown));
        self.head = Some(middle_of_head(&answers.known.model));
        let (drawing, _) = answers.pair(key);
        let lies = Frozen {
            view,
            text: key.text,
            shifts: Shifts::of(drawing),
            brought: key.brought,
        };
        if self.hand == Hand::OnDrawing {
            point_and_choose(&response, view, drawing, look);
        }
        ground(ui, &response);
        let palette = Palette::of(ui.visuals());
        let mut ink = Ink::new(ui.painter_at(area), view, palette, look.lit(), fills);
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

    /// Takes the room there is.
    fn lay(&mut self, ui: &mut Ui) -> Response {
        let (area, response) = ui.allocate_exact_size(ui.available_size(), Sense::click_and_drag());
        self.area = Some(area);
        response
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
            brought: lies.brought,
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
        let Laid { fitted, brought } = self.fitted_to(response.rect, answers, key);
        self.navigate(ui, response, fitted.view);
        let view = self.own.unwrap_or(fitted.view);
        let text = match self.own {
            None => fitted.text,
            Some(view) => f64::from(TEXT / view.scale),
        };
        let key = PairKey {
            text,
            brought,
            ..key
        };
        (view, key)
    }

    /// Shows a drawing that no part of a pair is chosen in; `revision` counts its changes.
    pub(crate) fn show_drawing(
        &mut self,
        ui: &mut Ui,
        drawing: &Drawing,
        of: (u64, &str),
        fills: &mut FillTessellator,
    ) {
        let laid = self.room(ui, of, |_, _| drawing.bounds());
        let palette = Palette::of(ui.visuals());
        let painter = ui.painter_at(laid.response.rect);
        Ink::new(painter, laid.view, palette, None, fills).draw(&drawing.items);
    }

    /// Empty paper for a drawing that covers so much, mm, when so much of it is shown and its text is
    /// so large; `revision` counts its changes. Gives back how the drawing lies.
    pub(crate) fn room(
        &mut self,
        ui: &mut Ui,
        (revision, what): (u64, &str),
        mut bounds: impl FnMut(Sight, f64) -> kurbo::Rect,
    ) -> Room {
        let response = self.lay(ui);
        let area = response.rect;
        response.widget_info(|| WidgetInfo::labeled(Role::Image, true, what));
        let sight = self.sight;
        let now = FitKey {
            area,
            revision,
            pair: key(0.0, 0.0, Shown::Own),
            sight,
        };
        let laid = match self.fitted {
            Some((kept, laid)) if kept == now => laid,
            _ => Laid {
                fitted: Fitted::new(area, RIM, TEXT, |text| bounds(sight, text)),
                brought: Brought::default(),
            },
        };
        self.fitted = Some((now, laid));
        self.navigate(ui, &response, laid.fitted.view);
        ground(ui, &response);
        let (view, text) = match self.own {
            None => (laid.fitted.view, laid.fitted.text),
            Some(view) => (view, f64::from(TEXT / view.scale)),
        };
        Room {
            response,
            view,
            text,
        }
    }
}

/// Empty paper, with a rim while it has the keyboard.
fn ground(ui: &Ui, response: &Response) {
    let (area, palette) = (response.rect, Palette::of(ui.visuals()));
    let painter = ui.painter_at(area);
    painter.rect_filled(area, 4.0, palette.sheet);
    if response.has_focus() {
        let stroke = egui::Stroke::new(1.0, palette.accent);
        painter.rect_stroke(area, 4.0, stroke, egui::StrokeKind::Inside);
    }
}

/// Lights the part under the pointer, and chooses it at a click.
pub(super) fn point_and_choose(
    response: &Response,
    view: View,
    drawing: &Drawing,
    look: &mut Look,
) {
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
    say_over(ui, area, words);
}

/// Between the boss and the tips, on the axis.
fn middle_of_head(model: &Model) -> kurbo::Point {
    let boss = -model.a.body.rim.half_along();
    kurbo::Point::new(f64::midpoint(boss, model.a.tip()), 0.0)
}

fn key(opening: f64, text: f64, shown: Shown) -> PairKey {
    PairKey {
        opening: opening.to_radians() / 2.0,
        text,
        shown,
        shifts: None,
        brought: Brought::default(),
    }
}

fn describe(response: &Response) {
    response.widget_info(|| {
        let what = "Drawing of the pair: side, top and end view. Arrow keys move it, plus and minus zoom, Home goes back";
        WidgetInfo::labeled(Role::Image, true, what)
    });
}
