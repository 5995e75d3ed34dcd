//! The row of tools for a picture that is traced.

use egui::{Key, Response, Slider, TextEdit, Ui};
use kurbo::Point;
use reinwright_core::asked::Units;
use reinwright_core::units::Length;

use super::Trace;
use super::place::Place;
use crate::window::paint::theme::Palette;
use crate::window::paint::view::View;

/// What the hand does with the picture.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) enum Tool {
    /// Nothing: it works on the drawing.
    #[default]
    None,
    /// Drags it.
    Move,
    /// Clicks two points that are to lie level.
    Square(Clicks),
    /// Clicks two points, and types how far apart they are.
    Scale(Clicks, String),
}

/// Points that were clicked, and what went wrong with them.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Clicks {
    points: Vec<Point>,
    trouble: Option<String>,
    /// The second point was clicked just now: what is typed next is their distance.
    done: bool,
}

impl Clicks {
    fn both(&self) -> Option<[Point; 2]> {
        match self.points[..] {
            [a, b, ..] => Some([a, b]),
            [] | [_] => None,
        }
    }

    fn add(&mut self, at: Point) {
        if self.points.len() == 2 {
            self.points.clear();
        }
        self.points.push(at);
        self.trouble = None;
        self.done = self.points.len() == 2;
    }
}

impl Tool {
    /// Clicks and drags on the sheet.
    pub(super) fn on_sheet(&mut self, response: &Response, view: View, place: &mut Place) {
        let clicked = response.clicked().then(|| response.interact_pointer_pos());
        let clicked = clicked.flatten().map(|at| view.to_drawing(at));
        match self {
            Self::None => {}
            Self::Move => {
                let by = response.drag_delta() / view.scale;
                *place = place.moved(kurbo::Vec2::new(f64::from(by.x), f64::from(-by.y)));
            }
            Self::Square(clicks) => {
                clicked.into_iter().for_each(|at| clicks.add(at));
                if let Some(points) = clicks.both() {
                    match place.squared(points) {
                        Ok(squared) => {
                            *place = squared;
                            *self = Self::None;
                        }
                        Err(trouble) => {
                            *clicks = Clicks {
                                trouble: Some(trouble),
                                ..Clicks::default()
                            };
                        }
                    }
                }
            }
            Self::Scale(clicks, _) => clicked.into_iter().for_each(|at| clicks.add(at)),
        }
        let give_up = response.ctx.input(|i| i.key_pressed(Key::Escape));
        if give_up {
            *self = Self::None;
        }
        if give_up || clicked.is_some() {
            // The row of tools stands above the sheet and was drawn before.
            response.ctx.request_repaint();
        }
        self.marks(response, view);
    }

    /// The points that were clicked, as crosses.
    fn marks(&self, response: &Response, view: View) {
        let points = match self {
            Self::None | Self::Move => return,
            Self::Square(clicks) | Self::Scale(clicks, _) => &clicks.points,
        };
        let painter = response.ctx.layer_painter(response.layer_id);
        let painter = painter.with_clip_rect(response.rect);
        let palette = Palette::of(&response.ctx.global_style().visuals);
        let stroke = egui::Stroke::new(1.8, palette.accent);
        let at: Vec<egui::Pos2> = points.iter().map(|p| view.to_screen(*p)).collect();
        for p in &at {
            for arm in [egui::vec2(7.0, 7.0), egui::vec2(7.0, -7.0)] {
                painter.line_segment([*p - arm, *p + arm], stroke);
            }
        }
        if let [a, b] = at[..] {
            painter.line_segment([a, b], egui::Stroke::new(1.0, palette.accent));
        }
    }

    /// What to do next.
    fn hint(&self) -> &'static str {
        match self {
            Self::None => "",
            Self::Move => "Drag the picture; Esc when it lies",
            Self::Square(clicks) if clicks.points.is_empty() => {
                "Click the first of two points that should lie level"
            }
            Self::Square(_) => "Click the second point",
            Self::Scale(clicks, _) => match clicks.points.len() {
                0 => "Click the first of two points whose distance you know",
                1 => "Click the second point",
                _ => "Type how far apart they are, and press Enter",
            },
        }
    }

    fn trouble(&self) -> Option<&str> {
        match self {
            Self::None | Self::Move => None,
            Self::Square(clicks) | Self::Scale(clicks, _) => clicks.trouble.as_deref(),
        }
    }

    /// Takes what was typed for the distance.
    fn set_distance(&mut self, place: &mut Place, units: Units) {
        let Self::Scale(clicks, text) = self else {
            return;
        };
        let Some(points) = clicks.both() else {
            return;
        };
        let length = Length::parse(text, units.unit()).map_err(|error| error.to_string());
        match length.and_then(|length| place.scaled(points, length.mm())) {
            Ok(scaled) => {
                *place = scaled;
                *self = Self::None;
            }
            Err(trouble) => clicks.trouble = Some(trouble),
        }
    }
}

impl Trace {
    /// The row above the sheet, while there is a picture.
    pub(crate) fn tools(&mut self, ui: &mut Ui, units: Units) {
        if self.is_loading() {
            ui.weak("Reading the picture…");
        }
        let Some(picture) = &mut self.picture else {
            return;
        };
        let mut remove = false;
        ui.horizontal_wrapped(|ui| {
            let kept = &mut picture.kept;
            let name = kept.path.file_name().unwrap_or_default().to_string_lossy();
            ui.label("Picture").on_hover_text(name);
            ui.checkbox(&mut kept.shown, "Shown");
            ui.spacing_mut().slider_width = 70.0;
            let strength = Slider::new(&mut kept.strength, 0.05..=1.0).show_value(false);
            let strength = ui.add(strength).accessible_name("Picture strength");
            strength.on_hover_text("How strongly the picture shows through");
            choose(ui, &mut self.tool);
            remove = ui.button("Remove picture").clicked();
            if let Tool::Scale(clicks, text) = &mut self.tool
                && clicks.both().is_some()
            {
                let field = TextEdit::singleline(text)
                    .desired_width(90.0)
                    .hint_text("such as 13 in");
                let field = ui.add(field).accessible_name("Known distance");
                if std::mem::take(&mut clicks.done) {
                    field.request_focus();
                }
                let entered = field.lost_focus() && ui.input(|i| i.key_pressed(Key::Enter));
                if entered || ui.button("Set distance").clicked() {
                    self.tool.set_distance(&mut kept.place, units);
                }
            }
            match self.tool.trouble() {
                Some(trouble) => {
                    ui.colored_label(Palette::of(ui.visuals()).stop, trouble);
                }
                None => {
                    ui.weak(self.tool.hint());
                }
            }
        });
        if remove {
            self.remove();
        }
    }
}

/// One button a tool; a second click lays it down.
fn choose(ui: &mut Ui, tool: &mut Tool) {
    let tools = [
        (Tool::Move, "Move picture", "Drag it to where it belongs"),
        (
            Tool::Square(Clicks::default()),
            "Square picture",
            "Click two points that should lie level: it is turned so that they do",
        ),
        (
            Tool::Scale(Clicks::default(), String::new()),
            "Scale picture",
            "Click two points and type how far apart they are in truth",
        ),
    ];
    for (fresh, label, hint) in tools {
        let taken = std::mem::discriminant(tool) == std::mem::discriminant(&fresh);
        if ui
            .selectable_label(taken, label)
            .on_hover_text(hint)
            .clicked()
        {
            *tool = if taken { Tool::None } else { fresh };
        }
    }
}
