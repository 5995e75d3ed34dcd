//! The stages of the making on the sheet: stepped through, played, looked at from near and far.

use std::rc::Rc;

use egui::{Button, Key, Modifiers, Slider, Ui};
use lyon::tessellation::FillTessellator;
use reinwright_core::draw::{self, Finished, Ground};
use reinwright_core::tongs::model::Model;
use reinwright_core::units::Show;

use super::paper::{Paper, point_and_choose};
use crate::window::paint::ink::Ink;
use crate::window::paint::theme::Palette;
use crate::window::state::bar::Forged;
use crate::window::state::command::{Command, times_pressed};
use crate::window::state::look::{Look, Sight};
use crate::window::state::making::Planned;
use crate::window::state::reckon::Answers;
use crate::window::state::tool::ToolAnswers;

/// How the stages are looked at.
#[derive(Debug)]
pub(crate) struct Stages {
    paper: Paper,
    /// The pair at the end.
    pair: Paper,
    /// What was shown last, and how often that was another plan.
    shown: Option<Rc<Planned>>,
    revision: u64,
}

impl Default for Stages {
    /// All of every stage: what is struck may be anywhere on it.
    fn default() -> Self {
        let mut paper = Paper::default();
        paper.see(Sight::All);
        Self {
            paper,
            pair: Paper::default(),
            shown: None,
            revision: 0,
        }
    }
}

impl Stages {
    /// Shows so much of the drawing from now on.
    pub(crate) fn see(&mut self, sight: Sight) {
        self.paper.see(sight);
        self.pair.see(sight);
    }

    /// The slider and the buttons above the sheet; gives back what was asked for.
    pub(crate) fn tools(&self, ui: &mut Ui, planned: &Planned, look: &mut Look) -> Option<Command> {
        let (last, making) = (planned.last(), &mut look.making);
        let mut asked = None;
        ui.horizontal_wrapped(|ui| {
            let step = |ui: &mut Ui, label: &str, hint: &str, can: bool| {
                let button = ui.add_enabled(can, Button::new(label));
                button.on_hover_text(hint).clicked()
            };
            if step(ui, "Back", "The stage before", making.at > 0) {
                making.go(making.at - 1);
            }
            if step(ui, "Next", "The stage after", making.at < last) {
                making.go(making.at + 1);
            }
            let (label, hint) = if making.is_playing() {
                ("Stop", "Stays at this stage (Space)")
            } else {
                ("Play", "Shows one stage after the other (Space)")
            };
            if step(ui, label, hint, true) {
                making.play(ui.input(|i| i.time), last);
            }
            ui.spacing_mut().slider_width = (ui.available_width() - 376.0).clamp(50.0, 300.0);
            let palette = Palette::of(ui.visuals());
            ui.visuals_mut().widgets.inactive.bg_fill = palette.edge;
            let mut at = making.at;
            let slider = Slider::new(&mut at, 0..=last).show_value(false);
            let slider = ui
                .add(slider)
                .on_hover_text(format!("From the bar to the {}", planned.of.whole()));
            let slider = slider.accessible_name("Stage");
            if slider.changed() {
                making.go(at);
            }
            // A slider has no use for Space itself.
            if slider.has_focus() && times_pressed(ui, Modifiers::NONE, Key::Space) > 0.0 {
                making.play(ui.input(|i| i.time), last);
            }
            ui.label(format!("{} of {last}", making.at));
            asked = match planned.of {
                Forged::Pair => self.paper.sights(ui, &Sight::ALL),
                Forged::Tool => self.paper.sights(ui, &[Sight::All]),
            };
        });
        asked
    }

    /// Shows the stage, or at the end the pair.
    pub(crate) fn show(
        &mut self,
        ui: &mut Ui,
        (planned, answers): (&Rc<Planned>, &mut Answers),
        look: &mut Look,
        fills: &mut FillTessellator,
    ) {
        let at = look.making.at;
        if planned.stage(at).is_none() {
            self.pair.show(ui, answers, look, fills);
            return;
        }
        let (show, model) = (answers.units().show(), &answers.known.model);
        let cut = |sight, all| seen(sight, all, model);
        self.stage(ui, (planned, model.into(), show), cut, (look, fills));
    }

    /// Shows a stage of a tool, the last of which is the tool.
    pub(crate) fn show_tool(
        &mut self,
        ui: &mut Ui,
        (planned, answers): (&Rc<Planned>, &ToolAnswers),
        look: &mut Look,
        fills: &mut FillTessellator,
    ) {
        let (show, model) = (answers.units().show(), &answers.known.model);
        let of = (planned, model.into(), show);
        // The figure of the last mark stands half beyond the bar's end.
        let marked = |_, all: kurbo::Rect| all.inflate(BESIDE_BAR * all.width(), 0.0);
        self.stage(ui, of, marked, (look, fills));
    }

    /// Shows the stage that is looked at; `cut` tells what of its room is in sight.
    fn stage(
        &mut self,
        ui: &mut Ui,
        (planned, finished, show): (&Rc<Planned>, Finished<'_>, Show),
        cut: impl Fn(Sight, kurbo::Rect) -> kurbo::Rect,
        (look, fills): (&mut Look, &mut FillTessellator),
    ) {
        let at = look.making.at;
        let same = |kept: &Rc<Planned>| Rc::ptr_eq(kept, planned);
        if !self.shown.as_ref().is_some_and(same) {
            self.shown = Some(Rc::clone(planned));
            self.revision += 1;
        }
        let what = format!(
            "Stage {at}, {}, over the finished {}",
            planned.name(at),
            planned.of.piece()
        );
        let of = (self.revision, what.as_str());
        let room = self.paper.room(ui, of, |sight, text| {
            cut(sight, ground_of(sight, planned).room(text))
        });
        let ground = (ground_of(self.paper.sight(), planned), room.text);
        let drawing = draw::staged(finished, &planned.plan, at, ground, show);
        point_and_choose(&room.response, room.view, &drawing, look);
        let painter = ui.painter_at(room.response.rect);
        let palette = Palette::of(ui.visuals());
        Ink::new(painter, room.view, palette, look.lit(), fills).draw(&drawing.items);
    }
}

/// Kept free beside the bar of a tool, of the drawing's width.
const BESIDE_BAR: f64 = 0.02;

/// The ground of what is in sight.
fn ground_of(sight: Sight, planned: &Planned) -> &Ground {
    match sight {
        Sight::All | Sight::Rein => &planned.ground,
        Sight::Head => &planned.about_head,
    }
}

/// What of a drawing is in sight.
fn seen(sight: Sight, all: kurbo::Rect, model: &Model) -> kurbo::Rect {
    match sight {
        Sight::All | Sight::Head => all,
        Sight::Rein => kurbo::Rect {
            x1: all.x1.min(model.a.body.rim.half_along()),
            ..all
        },
    }
}
