//! The shelf of own jaws: pictures to choose from.

use std::path::PathBuf;

use egui::accesskit::Role;
use egui::{Button, Context, ScrollArea, Sense, Ui, Vec2, WidgetInfo};
use lyon::tessellation::FillTessellator;
use reinwright_core::draw;
use reinwright_core::finding::Part;
use reinwright_core::paper::Drawing;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::sketch::KeptJaw;

use super::refusal;
use crate::disk::own_jaws::{self, OwnJaw};
use crate::window::paint::focus::follow;
use crate::window::paint::ink::Ink;
use crate::window::paint::theme::Palette;
use crate::window::paint::view::View;
use crate::window::panels::question::{Ready, Room, ask, foot, lead};
use crate::window::panels::wish::JawWish;

/// The shelf while it is open.
#[derive(Debug)]
pub(crate) struct JawShelf {
    part: Part,
    folder: Option<PathBuf>,
    jaws: Vec<(OwnJaw, Option<Drawing>)>,
    /// The file that is deleted if the smith says so once more.
    pub(crate) doomed: Option<PathBuf>,
}

/// Size of a picture, in points.
const PICTURE: Vec2 = Vec2::new(150.0, 84.0);

impl JawShelf {
    /// Reads the shelf; each jaw is drawn on the design at hand, in the size of its work.
    pub(crate) fn read(folder: Option<PathBuf>, document: &Document, part: Part) -> Self {
        let mut all = folder.as_deref().map(own_jaws::all).unwrap_or_default();
        // What cannot be read does not stand in the way of what can.
        all.sort_by_key(|own| own.kept.is_err());
        let drawn = |own: OwnJaw| {
            let kept = own.kept.as_ref().ok();
            let picture = kept.and_then(|kept| picture(kept, document));
            (own, picture)
        };
        Self {
            part,
            jaws: all.into_iter().map(drawn).collect(),
            folder,
            doomed: None,
        }
    }

    /// The part that a jaw is chosen for.
    pub(crate) fn part(&self) -> Part {
        self.part
    }

    /// Shows it; gives back what was asked for.
    pub(crate) fn show(&self, ctx: &Context, fills: &mut FillTessellator) -> Option<JawWish> {
        let frame = ("own jaws", Room::Lines(560.0));
        ask(ctx, frame, JawWish::Close, |ui| {
            ui.heading("Own jaws");
            if self.jaws.is_empty() {
                ui.label("Nothing is kept yet. Draw on a jaw, name it and press Keep.");
            }
            if let Some(folder) = &self.folder {
                ui.weak(format!(
                    "Each is a file in {}. Open one that another smith gave you, and it is taken \
                     in here.",
                    folder.display()
                ));
                ui.separator();
            }
            let wish = self.list(ui, fills);
            let main = self.jaws.is_empty().then_some(("Close", Ready::Yes));
            let others: &[&str] = if main.is_some() { &[] } else { &["Close"] };
            wish.or(foot(ui, main, others).map(|_close| JawWish::Close))
        })
    }

    fn list(&self, ui: &mut Ui, fills: &mut FillTessellator) -> Option<JawWish> {
        let high = (ui.ctx().content_rect().height() - 260.0).clamp(160.0, 520.0);
        let list = ScrollArea::vertical().max_height(high);
        list.show(ui, |ui| {
            let mut wish = None;
            for (own, drawing) in &self.jaws {
                wish = self.row(ui, (own, drawing.as_ref()), fills).or(wish.take());
                ui.separator();
            }
            follow(ui);
            wish
        })
        .inner
    }

    fn row(
        &self,
        ui: &mut Ui,
        (own, drawing): (&OwnJaw, Option<&Drawing>),
        fills: &mut FillTessellator,
    ) -> Option<JawWish> {
        let kept = match &own.kept {
            Ok(kept) => kept,
            Err(why) => {
                refusal(ui, why);
                return None;
            }
        };
        let mut wish = None;
        ui.horizontal(|ui| {
            paint(ui, (drawing, &kept.sketch.name), fills);
            ui.vertical(|ui| {
                ui.strong(&kept.sketch.name);
                let drawn = format!("drawn for {} work", kept.sketch.drawn_for);
                ui.weak(if kept.sketch.about.is_empty() {
                    drawn
                } else {
                    format!("{}; {drawn}", kept.sketch.about)
                });
                wish = if self.doomed.as_ref() == Some(&own.path) {
                    asked_again(ui, own, kept)
                } else {
                    self.deeds(ui, own, kept)
                };
            });
        });
        wish
    }

    /// What can be done with one.
    fn deeds(&self, ui: &mut Ui, own: &OwnJaw, kept: &KeptJaw) -> Option<JawWish> {
        let named = |word: &str| format!("{word} {}", kept.sketch.name);
        let button = |ui: &mut Ui, word: &str, hint: &str| {
            let button = ui.add(Button::new(word)).on_hover_text(hint);
            let word = word.trim_end_matches('…');
            lead(&button);
            button.accessible_name(named(word)).clicked()
        };
        let mut wish = None;
        ui.horizontal(|ui| {
            if button(ui, "Use", "On this pair, in proportion to its work") {
                wish = Some(JawWish::Use(Box::new(kept.clone()), self.part));
            }
            if button(ui, "Give away…", "Write its file for another smith") {
                wish = Some(JawWish::Give(Box::new(kept.clone())));
            }
            if button(
                ui,
                "Delete…",
                "Delete its file; designs that use it keep it",
            ) {
                wish = Some(JawWish::AskRemove(own.path.clone()));
            }
        });
        wish
    }
}

/// Whether its file is really to go: no Undo brings it back.
fn asked_again(ui: &mut Ui, own: &OwnJaw, kept: &KeptJaw) -> Option<JawWish> {
    let mut wish = None;
    ui.label("This deletes its file for good.");
    ui.horizontal(|ui| {
        let name = &kept.sketch.name;
        let delete = ui
            .button("Delete it")
            .accessible_name(format!("Delete {name}"));
        if delete.clicked() {
            wish = Some(JawWish::Remove(own.path.clone(), name.clone()));
        }
        if ui.button("Keep it").clicked() {
            wish = Some(JawWish::KeepIt);
        }
    });
    wish
}

/// The side view of a jaw on the design at hand; none if it does not grow to the work.
fn picture(kept: &KeptJaw, document: &Document) -> Option<Drawing> {
    let document = Document {
        jaw: kept.suited(&document.work, document.jaw.heel).ok()?,
        second_jaw: None,
        ..document.clone()
    };
    let model = reinwright_core::tongs::resolve(&document);
    Some(draw::fit_picture(&document, &model, &document.work, 0.0))
}

/// A picture of the jaws, the reins cut off.
fn paint(ui: &mut Ui, (drawing, name): (Option<&Drawing>, &str), fills: &mut FillTessellator) {
    let (area, response) = ui.allocate_exact_size(PICTURE, Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Image, true, format!("Picture of {name}")));
    let palette = Palette::of(ui.visuals());
    ui.painter().rect_filled(area, 4.0, palette.sheet);
    let Some(drawing) = drawing else {
        return;
    };
    let mut bounds = drawing.bounds();
    bounds.x0 = bounds.x0.max(-0.35 * bounds.x1);
    let view = View::fit(bounds, area, 6.0);
    Ink::new(ui.painter_at(area), view, palette, None, fills).draw(&drawing.items);
}
