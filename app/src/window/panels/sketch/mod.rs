//! Drawing a jaw of one's own: the node that is chosen, its values, its section, and the shelf.

mod nodes;
mod section;
mod shelf;

use egui::{Button, Key, RichText, Ui};
use reinwright_core::draw::handle::HandleId;
use reinwright_core::finding::Part;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::sketch::{Alike, Corner, Depth};
use reinwright_core::tongs::jaw::{Jaw, Sketch};

use super::wish::JawWish;
use crate::window::paint::theme::Palette;
use crate::window::sheet::handles::DrawnOn;
pub(crate) use shelf::JawShelf;

/// What is chosen in a sketch, and how it is drawn on.
#[derive(Debug)]
pub(crate) struct Sketching {
    /// The jaw that is drawn on.
    part: Part,
    /// The node that is chosen.
    node: usize,
    /// What moving the back does to the inside.
    depth: Depth,
    /// The corner of the section that is chosen.
    corner: Option<Corner>,
    one_side: bool,
    /// What is being typed.
    draft: Option<Draft>,
    /// A value that was typed farther than it could go.
    held_back: Option<HeldBack>,
    /// The name that the jaw will be kept under.
    name: Option<String>,
}

/// A text that is being typed or was refused.
#[derive(Debug, Clone, PartialEq)]
struct Draft {
    field: &'static str,
    text: String,
    refused: Option<String>,
}

/// Which value, and what it became, mm or degrees.
#[derive(Debug, Clone, Copy, PartialEq)]
struct HeldBack {
    field: &'static str,
    got: f64,
}

impl Default for Sketching {
    fn default() -> Self {
        Self {
            part: Part::Jaw,
            node: 0,
            depth: Depth::default(),
            corner: None,
            one_side: false,
            draft: None,
            held_back: None,
            name: None,
        }
    }
}

impl Sketching {
    /// Chooses the node that a handle on the drawing belongs to.
    pub(crate) fn choose_by(&mut self, handle: &HandleId) {
        match *handle {
            HandleId::Node { part, node, .. } => {
                (self.part, self.node) = (part, node);
                self.corner = None;
                self.draft = None;
            }
            HandleId::Field { .. } => {}
        }
    }

    /// The node whose handles are shown on the sheet.
    pub(crate) fn drawn_on(&self) -> DrawnOn {
        DrawnOn {
            node: (self.part, self.node),
            depth: self.depth,
        }
    }

    fn alike(&self) -> Alike {
        if self.one_side {
            Alike::One
        } else {
            Alike::Both
        }
    }

    /// Shows the sketch of a jaw under its fields, or the way to one; edits go into the document.
    pub(crate) fn show(
        &mut self,
        ui: &mut Ui,
        document: &mut Document,
        part: Part,
    ) -> Option<JawWish> {
        let mut wish = None;
        ui.horizontal(|ui| {
            let own = ui.button("Own jaws…").on_hover_text("The jaws that you have drawn and kept");
            if own.clicked() {
                wish = Some(JawWish::Open(part));
            }
            if jaw(document, part).sketch().is_none() {
                let draw = ui.button("Draw on it").on_hover_text(
                    "Turn this jaw into a sketch: its shape stays, and every node of it can be moved",
                );
                if draw.clicked() {
                    let size = document.work.size();
                    let jaw = jaw_mut(document, part);
                    *jaw = jaw.sketched(size);
                    self.node = 0;
                }
            }
        });
        let Some(sketch) = jaw(document, part).sketch().cloned() else {
            return wish;
        };
        self.node = self.node.min(sketch.nodes.len() - 1);
        let next = self.editor(ui, document, (part, &sketch));
        if let Some(next) = next {
            let jaw = jaw_mut(document, part);
            *jaw = jaw.with_sketch(next);
        }
        if let Some(kept) = self.keeping(ui, jaw(document, part), &sketch) {
            wish = Some(kept);
        }
        wish
    }

    fn editor(
        &mut self,
        ui: &mut Ui,
        document: &Document,
        (part, sketch): (Part, &Sketch),
    ) -> Option<Sketch> {
        let jaw = jaw(document, part);
        let mut next = self.chooser(ui, (jaw, sketch));
        ui.add_space(2.0);
        next = self.values(ui, (document, jaw), sketch).or(next);
        next = self.lay(ui, (document, jaw), sketch).or(next);
        self.section(ui, (document.units, jaw), sketch).or(next)
    }

    /// A name for the shelf.
    fn keeping(&mut self, ui: &mut Ui, jaw: &Jaw, sketch: &Sketch) -> Option<JawWish> {
        ui.separator();
        let mut name = self.name.clone().unwrap_or_else(|| sketch.name.clone());
        let mut wish = None;
        ui.horizontal(|ui| {
            let field = egui::TextEdit::singleline(&mut name)
                .hint_text("Name to keep it by")
                .char_limit(60)
                .desired_width((ui.available_width() - 62.0).max(60.0));
            let field = ui.add(field).accessible_name("Jaw name");
            if field.changed() {
                self.name = Some(name.clone());
            }
            let entered = field.lost_focus() && ui.input(|i| i.key_pressed(Key::Enter));
            let named = !name.trim().is_empty();
            let keep = ui.add_enabled(named, Button::new("Keep"));
            let keep =
                keep.on_hover_text("Put it among your own jaws, for other designs and sizes");
            if keep.clicked() || (named && entered) {
                self.name = None;
                wish = Some(JawWish::Keep(Box::new(jaw.clone()), name.trim().to_owned()));
            }
        });
        wish
    }
}

/// The jaw of a part.
fn jaw(document: &Document, part: Part) -> &Jaw {
    match (part, &document.second_jaw) {
        (Part::SecondJaw, Some(second)) => second,
        _ => &document.jaw,
    }
}

/// The jaw of a part, to be changed.
pub(crate) fn jaw_mut(document: &mut Document, part: Part) -> &mut Jaw {
    match (part, &mut document.second_jaw) {
        (Part::SecondJaw, Some(second)) => second,
        (_, _) => &mut document.jaw,
    }
}

/// A sentence in the colour of a refusal.
fn refusal(ui: &mut Ui, why: &str) {
    ui.label(RichText::new(why).color(Palette::of(ui.visuals()).stop));
}
