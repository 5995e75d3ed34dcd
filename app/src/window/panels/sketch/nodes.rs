//! The nodes of a sketch by number and value.

use egui::{Button, ComboBox, Key, TextEdit, Ui};
use reinwright_core::asked::Units;
use reinwright_core::shape::sweep::Ease;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::sketch::{Depth, NodeValue, SketchLay};
use reinwright_core::tongs::jaw::{Jaw, Sketch};
use reinwright_core::units::Offset;

use super::{Draft, HeldBack, Sketching, refusal};

/// Width of the labels, in points.
const LABEL: f32 = 96.0;

/// What was typed is said to be held back when it was changed by more than rounding does, mm or
/// degrees.
const HELD_BACK: f64 = 0.3;

/// How sizes go on to the next node, with what the smith calls it.
const EASES: [(Ease, &str); 6] = [
    (Ease::Linear, "straight"),
    (Ease::Smooth, "in a soft S"),
    (Ease::RoundUp, "round, steep first"),
    (Ease::RoundDown, "round, steep last"),
    (Ease::ArcUp, "inside in an arc, level last"),
    (Ease::ArcDown, "inside in an arc, level first"),
];

impl Sketching {
    /// Which node, and what can be done to the list of them.
    pub(super) fn chooser(
        &mut self,
        ui: &mut Ui,
        (jaw, sketch): (&Jaw, &Sketch),
    ) -> Option<Sketch> {
        let length = jaw.length.mm();
        let (last, mut next) = (sketch.nodes.len() - 1, None);
        ui.horizontal(|ui| {
            if ui
                .add_enabled(self.node > 0, Button::new("<"))
                .accessible_name("Node before")
                .clicked()
            {
                self.choose(self.node - 1);
            }
            ui.label(format!("Node {} of {}", self.node + 1, last + 1));
            if ui
                .add_enabled(self.node < last, Button::new(">"))
                .accessible_name("Node after")
                .clicked()
            {
                self.choose(self.node + 1);
            }
            let room = sketch.has_room_after(self.node, length);
            let add = ui.add_enabled(room, Button::new("Add"));
            let none = if self.node < last {
                "No room for a node between this one and the next"
            } else {
                "Nothing comes after the tip: choose the node before"
            };
            if add
                .on_hover_text("Put a new node on the way to the next one; the shape stays")
                .on_disabled_hover_text(none)
                .clicked()
            {
                next = Some(sketch.with_node_after(self.node, length));
                self.choose(self.node + 1);
            }
            let inner = self.node > 0 && self.node < last;
            let out = ui.add_enabled(inner, Button::new("Remove"));
            if out.on_hover_text("Take this node out").clicked() {
                next = Some(sketch.without_node(self.node));
                self.choose(self.node - 1);
            }
        });
        next
    }

    fn choose(&mut self, node: usize) {
        self.node = node;
        self.corner = None;
        self.draft = None;
        self.held_back = None;
    }

    /// The values of the node that is chosen.
    pub(super) fn values(
        &mut self,
        ui: &mut Ui,
        (document, jaw): (&Document, &Jaw),
        sketch: &Sketch,
    ) -> Option<Sketch> {
        let growth = sketch.growth(jaw.length.mm());
        let mut next = None;
        for value in NodeValue::ALL {
            let Some(now) = sketch.value(self.node, value, growth) else {
                continue;
            };
            if let Some(to) = self.field(ui, (value, now), document.units) {
                let how = (growth, self.depth, document.units.unit());
                let changed = sketch.with_value(self.node, (value, to), how);
                let got = changed.value(self.node, value, growth);
                self.held_back = got.filter(|got| (got - to).abs() > HELD_BACK).map(|got| {
                    let field = value.label();
                    HeldBack { field, got }
                });
                next = Some(changed);
            }
        }
        next = self.depth_and_ease(ui, sketch).or(next);
        next
    }

    /// A value that can be typed; gives back what was typed.
    fn field(&mut self, ui: &mut Ui, (value, now): (NodeValue, f64), units: Units) -> Option<f64> {
        // The heel is where the sketch begins.
        let fixed = self.node == 0 && value == NodeValue::X;
        let mut taken = None;
        ui.horizontal(|ui| {
            label(ui, value.label());
            let mine = self
                .draft
                .as_ref()
                .filter(|draft| draft.field == value.label());
            let mut text =
                mine.map_or_else(|| shown(value, now, units), |draft| draft.text.clone());
            let edit = TextEdit::singleline(&mut text).desired_width(ui.available_width() - 8.0);
            let response = ui.add_enabled(!fixed, edit);
            let response = response
                .accessible_name(format!("Node {}", value.label().to_lowercase()))
                .on_hover_text(value.hint());
            if response.changed() {
                self.draft = Some(Draft {
                    field: value.label(),
                    text: text.clone(),
                    refused: None,
                });
                if !response.has_focus() {
                    taken = self.take(value, units);
                }
            }
            let open = self
                .draft
                .as_ref()
                .is_some_and(|d| d.field == value.label() && d.refused.is_none());
            if response.lost_focus() && open {
                if ui.input(|i| i.key_pressed(Key::Escape)) {
                    self.draft = None;
                } else {
                    taken = self.take(value, units);
                }
            }
        });
        let refused = self.draft.as_ref().filter(|d| d.field == value.label());
        if let Some(why) = refused.and_then(|draft| draft.refused.clone()) {
            refusal(ui, &why);
        }
        // Gone with the next change of the value, by whatever hand.
        if self
            .held_back
            .is_some_and(|it| it.field == value.label() && (it.got - now).abs() < 1e-6)
        {
            let as_far = shown(value, now, units);
            ui.weak(format!("{as_far} is as far as it can go here"));
        }
        taken
    }

    /// What was typed as a number of mm or degrees, or the reason why it is none.
    fn take(&mut self, value: NodeValue, units: Units) -> Option<f64> {
        let draft = self.draft.take()?;
        let read = match value {
            NodeValue::Slope => degrees(&draft.text),
            _ => Offset::parse(&draft.text, units.unit())
                .map(Offset::mm)
                .map_err(|error| error.to_string()),
        };
        match read {
            Ok(to) => Some(to),
            Err(why) => {
                self.draft = Some(Draft {
                    refused: Some(why),
                    ..draft
                });
                None
            }
        }
    }

    fn depth_and_ease(&mut self, ui: &mut Ui, sketch: &Sketch) -> Option<Sketch> {
        let mut turned = None;
        ui.horizontal(|ui| {
            self.both_sides(ui);
            turned = self.has_section(ui, sketch);
        });
        self.ease(ui, sketch).or(turned)
    }

    fn both_sides(&mut self, ui: &mut Ui) {
        let mut both = self.depth == Depth::BothSides;
        let hint = "Moving the back moves the inside as far the other way; else the inside stays";
        let tick = ui.checkbox(&mut both, "Both sides move");
        if tick.on_hover_text(hint).changed() {
            self.depth = if both {
                Depth::BothSides
            } else {
                Depth::OneSide
            };
        }
    }

    /// Whether the node has a section of its own.
    fn has_section(&self, ui: &mut Ui, sketch: &Sketch) -> Option<Sketch> {
        let inner = self.node > 0 && self.node + 1 < sketch.nodes.len();
        let mut carries = sketch.nodes[self.node].steel.is_some();
        let hint = "Without its own section the node only bends the line";
        let tick = ui.add_enabled(inner, egui::Checkbox::new(&mut carries, "Section"));
        let turned = tick.on_hover_text(hint).changed();
        turned.then(|| sketch.with_steel_turned(self.node))
    }

    /// How the sizes go on to the next section.
    fn ease(&self, ui: &mut Ui, sketch: &Sketch) -> Option<Sketch> {
        let steel = sketch.nodes[self.node].steel;
        let steel = steel.filter(|_| self.node + 1 < sketch.nodes.len())?;
        let mut ease = steel.ease;
        ui.horizontal(|ui| {
            label(ui, "Sizes to the next");
            let of_now = EASES.iter().find(|(it, _)| *it == ease);
            let list = ComboBox::from_id_salt("node ease")
                .width(ui.available_width())
                .selected_text(of_now.map_or("", |(_, name)| name));
            let list = list.show_ui(ui, |ui| {
                for (it, name) in EASES {
                    ui.selectable_value(&mut ease, it, name);
                }
            });
            let list = list.response.accessible_name("Node to the next");
            list.on_hover_text("How the sizes go on to the next section");
        });
        if ease == steel.ease {
            return None;
        }
        let mut eased = sketch.clone();
        eased.nodes[self.node].steel =
            Some(reinwright_core::tongs::jaw::sketch::Steel { ease, ..steel });
        Some(eased)
    }

    /// How the work lies, and between which nodes it may bear.
    pub(super) fn lay(
        &self,
        ui: &mut Ui,
        (document, jaw): (&Document, &Jaw),
        sketch: &Sketch,
    ) -> Option<Sketch> {
        let mut next = sketch.clone();
        let at = sketch.nodes[self.node].x;
        ui.horizontal(|ui| {
            label(ui, "Work lies");
            let list = ComboBox::from_id_salt("sketch lay")
                .width(ui.available_width())
                .selected_text(lay_name(sketch.lay));
            let response = list.show_ui(ui, |ui| {
                let choices = [
                    SketchLay::EndOn,
                    SketchLay::Stopped { at },
                    SketchLay::Alongside,
                    SketchLay::Crosswise { at },
                ];
                for choice in choices {
                    ui.selectable_value(&mut next.lay, choice, lay_name(choice));
                }
            });
            let hint = "Stopped and crosswise are put at the node that is chosen";
            response
                .response
                .accessible_name("Work lies in the sketch")
                .on_hover_text(hint);
        });
        let place = match sketch.lay {
            SketchLay::Stopped { at } | SketchLay::Crosswise { at } => {
                let along = sketch.growth(jaw.length.mm()).along;
                Some(document.units.show().text(at.mm() * along))
            }
            SketchLay::EndOn | SketchLay::Alongside => None,
        };
        if let Some(place) = place {
            ui.weak(format!("{place} past the heel"));
        }
        self.grip(ui, &mut next);
        (next != *sketch).then_some(next)
    }

    fn grip(&self, ui: &mut Ui, sketch: &mut Sketch) {
        let last = sketch.nodes.len() - 1;
        ui.label(format!(
            "Grips from node {} to {}",
            sketch.grip.0 + 1,
            sketch.grip.1 + 1
        ));
        ui.horizontal(|ui| {
            let from = ui.add_enabled(self.node < sketch.grip.1, Button::new("From here").small());
            if from
                .on_hover_text("The work may bear from the chosen node on")
                .clicked()
            {
                sketch.grip.0 = self.node.min(last - 1);
            }
            let to = ui.add_enabled(self.node > sketch.grip.0, Button::new("To here").small());
            if to
                .on_hover_text("The work may bear up to the chosen node")
                .clicked()
            {
                sketch.grip.1 = self.node;
            }
        });
    }
}

/// A label as wide as those of the parts list.
fn label(ui: &mut Ui, words: &str) {
    let left = egui::Layout::left_to_right(egui::Align::Center);
    let height = ui.spacing().interact_size.y;
    ui.allocate_ui_with_layout(egui::vec2(LABEL, height), left, |ui| {
        ui.set_min_width(LABEL);
        ui.add(egui::Label::new(words).truncate());
    });
}

fn lay_name(lay: SketchLay) -> &'static str {
    match lay {
        SketchLay::EndOn => "end on",
        SketchLay::Stopped { .. } => "end on, to a stop",
        SketchLay::Alongside => "beside the tongs",
        SketchLay::Crosswise { .. } => "across the tongs",
    }
}

fn shown(value: NodeValue, now: f64, units: Units) -> String {
    match value {
        // What rounds to nothing has no sign.
        NodeValue::Slope => format!("{:.1} deg", if now.abs() < 0.05 { 0.0 } else { now }),
        _ => units.show().text(now),
    }
}

fn degrees(text: &str) -> Result<f64, String> {
    let number = text
        .trim()
        .trim_end_matches("deg")
        .trim_end_matches('°')
        .trim();
    let number = number.replace(',', ".").replace('\u{2212}', "-");
    match number.parse::<f64>() {
        Ok(degrees) if degrees.is_finite() && degrees.abs() <= 80.0 => Ok(degrees),
        Ok(degrees) if degrees.is_finite() => {
            Err(format!("{degrees} is too steep: give -80 to 80 deg"))
        }
        _ => Err(format!(
            "\"{}\" is not a slope: write one such as 15 or -8 deg",
            text.trim()
        )),
    }
}
