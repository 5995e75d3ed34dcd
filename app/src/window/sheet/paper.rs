//! The sheet with all views, to look at from near and far.

use egui::accesskit::Role;
use egui::{Key, Rect, Response, Sense, Slider, Ui, Vec2, WidgetInfo};
use lyon::tessellation::FillTessellator;
use reinwright_core::asked::Units;
use reinwright_core::draw::{self, EndView, Shifts};
use reinwright_core::paper::{Breaks, Drawing};
use reinwright_core::tongs::model::Model;

use super::ghost::Ghost;
use super::lies::{Frozen, Sheet};
use super::words::{say_over, under_words};
use crate::window::paint::ink::{Ink, Under, part_near};
use crate::window::paint::theme::Palette;
use crate::window::paint::view::{Fitted, View};
use crate::window::state::command::Command;
use crate::window::state::look::{Look, Page, Sight};
use crate::window::state::reckon::{Answers, Brought, PairKey, Shown};

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

#[derive(Debug, Clone, Copy, PartialEq)]
struct FitKey {
    area: Rect,
    revision: u64,
    pair: PairKey,
    sight: Sight,
}

/// How a drawing lies on its paper.
pub(crate) struct Room {
    pub(crate) response: Response,
    pub(crate) view: View,
    /// Size of its text, mm.
    pub(crate) text: f64,
}

/// How a drawing lies where it is fitted by itself.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Laid {
    fitted: Fitted,
    brought: Brought,
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
            ui.weak(format!("{percent:.0} %"))
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
        let palette = Palette::of(ui.visuals());
        let (area, response) = ui.allocate_exact_size(ui.available_size(), Sense::click_and_drag());
        self.area = Some(area);
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
        let painter = ui.painter_at(area);
        painter.rect_filled(area, 4.0, palette.sheet);
        if response.has_focus() {
            let stroke = egui::Stroke::new(1.0, palette.accent);
            painter.rect_stroke(area, 4.0, stroke, egui::StrokeKind::Inside);
        }
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

    fn fitted_to(&mut self, area: Rect, answers: &mut Answers, pair: PairKey) -> Laid {
        // A picture that is traced is not broken, and so the drawing over it is not.
        let sight = match (self.sight, &self.under) {
            (Sight::Head, Some(_)) => Sight::All,
            (sight, _) => sight,
        };
        let now = FitKey {
            area,
            revision: answers.revision,
            pair,
            sight,
        };
        match self.fitted {
            Some((kept, laid)) if kept == now => laid,
            _ => {
                let laid = fitted_in(under_words(area, pair.shown), answers, pair, sight);
                self.fitted = Some((now, laid));
                laid
            }
        }
    }

    /// Drag to move, wheel or pinch to zoom about the pointer, double click to go back, and
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
            self.own = None;
        }
        if response.clicked() || response.drag_started() {
            response.request_focus();
        }
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

/// The pair as it is seen largest: with the end view beside the others or under them.
fn fitted_in(area: Rect, answers: &mut Answers, pair: PairKey, sight: Sight) -> Laid {
    let model = &answers.known.model;
    let breaks = match sight {
        Sight::Head => draw::breaks(model, pair.opening + pair.shown.half_angle()),
        Sight::Rein | Sight::All => Breaks::default(),
    };
    let last = match sight {
        Sight::Rein => model.a.body.rim.half_along(),
        Sight::Head | Sight::All => f64::INFINITY,
    };
    // What is drawn with the end view at a place and text of so many mm covers this.
    let mut covered = |end: EndView, text: f64| {
        let key = PairKey {
            text,
            brought: Brought { breaks, end },
            ..pair
        };
        let mut bounds = answers.pair(key).1;
        bounds.x1 = bounds.x1.min(last);
        bounds
    };
    let mut laid = |end: EndView| {
        let fitted = Fitted::new(area, RIM, text_in(area), |text| covered(end, text));
        let across = fitted.view.rect(covered(end, fitted.text)).width();
        let brought = Brought { breaks, end };
        (Laid { fitted, brought }, across)
    };
    let (beside, across) = laid(EndView::Beside);
    // Where the sheet is wide enough nothing is gained under the others.
    if sight == Sight::Rein || across < WIDE * (area.width() - 2.0 * RIM) {
        return beside;
    }
    let (under, _) = laid(EndView::Under);
    if under.fitted.view.scale > beside.fitted.view.scale * WORTH_IT {
        under
    } else {
        beside
    }
}

/// Of the sheet's width: a drawing that takes less is as large as the sheet is high.
const WIDE: f32 = 0.97;
/// The end view leaves its place beside the jaws only for a drawing that is so much larger.
const WORTH_IT: f32 = 1.05;

/// Between the boss and the tips, on the axis.
fn middle_of_head(model: &Model) -> kurbo::Point {
    let boss = -model.a.body.rim.half_along();
    kurbo::Point::new(f64::midpoint(boss, model.a.tip()), 0.0)
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
        brought: Brought::default(),
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
        let what = "Drawing of the pair: side, top and end view. Arrow keys move it, plus and minus zoom, Home goes back";
        WidgetInfo::labeled(Role::Image, true, what)
    });
}
