//! The section at the chosen node, seen end on, with corners to drag.

use egui::accesskit::Role;
use egui::{
    Button, Color32, ComboBox, CornerRadius, Pos2, Rect, Sense, Shape, Stroke, Ui, Vec2, WidgetInfo,
};
use reinwright_core::asked::Units;
use reinwright_core::finding::Part;
use reinwright_core::shape::section::Section;
use reinwright_core::tongs::jaw::sketch::{Alike, Corner, Ready, SketchShape};
use reinwright_core::tongs::jaw::{Jaw, Sketch};
use reinwright_core::units::MM_PER_64TH;

use super::Sketching;
use crate::window::paint::ink::colour_of;
use crate::window::paint::theme::Palette;

/// Height of the picture of a section, in points.
const HEIGHT: f32 = 130.0;
/// How near to a corner the pointer takes it, in points.
const NEAR: f32 = 14.0;

/// Where the unit box of a section lies on the screen.
#[derive(Clone, Copy)]
struct Place {
    middle: Pos2,
    /// Points for half the box, across and up.
    half: Vec2,
    /// Millimetres for half the box, across and up.
    mm: (f64, f64),
}

#[allow(
    clippy::cast_possible_truncation,
    reason = "screens are far coarser than f32"
)]
impl Place {
    fn new(area: Rect, (width, depth): (f64, f64)) -> Self {
        let room = area.shrink(16.0).size();
        let scale = (room.x / width as f32).min(room.y / depth as f32);
        Self {
            middle: area.center(),
            half: Vec2::new(width as f32, depth as f32) * scale / 2.0,
            mm: (width / 2.0, depth / 2.0),
        }
    }

    fn to_screen(self, (u, v): (f64, f64)) -> Pos2 {
        self.middle + Vec2::new(u as f32 * self.half.x, -v as f32 * self.half.y)
    }

    fn unit_at(self, at: Pos2) -> (f64, f64) {
        let off = at - self.middle;
        (
            f64::from(off.x / self.half.x),
            f64::from(-off.y / self.half.y),
        )
    }

    /// A place rounded to what a smith measures.
    fn rounded(self, (u, v): (f64, f64), units: Units) -> (f64, f64) {
        let step = match units {
            Units::Inch => MM_PER_64TH,
            Units::Millimetre => 0.5,
        };
        let round = |part: f64, mm: f64| (part * mm / step).round() * step / mm;
        (round(u, self.mm.0), round(v, self.mm.1))
    }
}

impl Sketching {
    /// The section of the chosen node; gives back the changed sketch.
    pub(super) fn section(
        &mut self,
        ui: &mut Ui,
        (units, jaw): (Units, &Jaw),
        sketch: &Sketch,
    ) -> Option<Sketch> {
        let steel = sketch.nodes[self.node].steel?;
        ui.separator();
        if self.node == 0 {
            ui.weak("The heel is a rectangle: there the neck ends");
            return None;
        }
        let shape = sketch.shapes.get(steel.shape)?;
        let across = sketch.growth(jaw.length.mm()).across;
        let depth = ((steel.back.mm() - steel.inside.mm()) * across).max(0.2);
        let size = ((steel.width.mm() * across).max(0.2), depth);
        let mut next = self.begin_from(ui, sketch);
        if let Some(moved) = self.canvas(ui, units, (shape, size)) {
            next = Some(sketch.with_shape_changed(steel.shape, moved));
        }
        if let Some(changed) = self.corner_tools(ui, shape) {
            next = Some(sketch.with_shape_changed(steel.shape, changed));
        }
        let mut others = sketch.users(steel.shape);
        others.retain(|node| *node != self.node);
        if !others.is_empty() {
            // Wrapped: a long list must not widen the panel.
            ui.horizontal_wrapped(|ui| {
                let node = if others.len() == 1 { "node" } else { "nodes" };
                ui.weak(format!("also at {node} {}", runs(&others)));
                let own = ui.add(Button::new("Only here").small());
                if own
                    .on_hover_text("From now on this node has a section of its own")
                    .clicked()
                {
                    next = Some(sketch.with_shape(self.node, shape.clone()));
                }
            });
        }
        next
    }

    fn begin_from(&mut self, ui: &mut Ui, sketch: &Sketch) -> Option<Sketch> {
        let mut chosen = None;
        ui.horizontal(|ui| {
            ui.label(format!("Section at node {}", self.node + 1));
            let list = ComboBox::from_id_salt("ready section")
                .width(ui.available_width())
                .selected_text("begin from…");
            let response = list.show_ui(ui, |ui| {
                for (ready, name) in Ready::ALL {
                    if ui.selectable_label(false, name).clicked() {
                        chosen = Some(ready);
                    }
                }
            });
            response.response.accessible_name("Section begin from");
        });
        chosen.map(|ready| {
            self.corner = None;
            sketch.with_shape(self.node, ready.shape())
        })
    }

    fn canvas(
        &mut self,
        ui: &mut Ui,
        units: Units,
        (shape, size): (&SketchShape, (f64, f64)),
    ) -> Option<SketchShape> {
        let (area, response) = ui.allocate_exact_size(
            Vec2::new(ui.available_width(), HEIGHT),
            Sense::click_and_drag(),
        );
        let place = Place::new(area, size);
        response.widget_info(|| {
            WidgetInfo::labeled(Role::Image, true, "Section at the node: drag its corners")
        });
        let corners = shape.corners();
        let near = |at: Pos2| {
            let off = |(_, c): &&(Corner, (f64, f64))| place.to_screen(*c).distance(at);
            corners
                .iter()
                .min_by(|a, b| off(a).total_cmp(&off(b)))
                .filter(|c| off(c) < NEAR)
                .map(|(c, _)| *c)
        };
        if response.drag_started() || response.clicked() {
            let pressed = ui.input(|i| i.pointer.press_origin());
            self.corner = pressed.or(response.interact_pointer_pos()).and_then(near);
        }
        let hovered = response.hover_pos().and_then(near);
        if hovered.is_some() {
            ui.ctx().set_cursor_icon(egui::CursorIcon::Grab);
        }
        let mut moved = None;
        if response.dragged()
            && let (Some(corner), Some(at)) = (self.corner, response.interact_pointer_pos())
        {
            let to = place.rounded(place.unit_at(at), units);
            moved = Some(shape.moved(corner, to, self.alike()));
        }
        let shape = moved.as_ref().unwrap_or(shape);
        self.paint(ui, (area, place, units), (shape, size), hovered);
        moved.filter(|next| next.fault().is_none())
    }

    fn paint(
        &self,
        ui: &Ui,
        (area, place, units): (Rect, Place, Units),
        (shape, size): (&SketchShape, (f64, f64)),
        hovered: Option<Corner>,
    ) {
        let palette = Palette::of(ui.visuals());
        let painter = ui.painter_at(area);
        painter.rect_filled(area, CornerRadius::same(4), palette.sheet);
        let profile = shape.profile();
        let section = Section::new(&profile, size.1, size.0);
        let unit = |(z, y): (f64, f64)| place.to_screen((z / place.mm.0, y / place.mm.1));
        let outline: Vec<Pos2> = section.outline(0.05).into_iter().map(unit).collect();
        fill(&painter, &section, unit);
        painter.add(Shape::closed_line(outline, Stroke::new(1.4, palette.ink)));
        let line = area.center().x;
        let dash = Shape::dashed_line(
            &[Pos2::new(line, area.top()), Pos2::new(line, area.bottom())],
            Stroke::new(0.7, palette.faint),
            8.0,
            3.0,
        );
        painter.extend(dash);
        for (corner, at) in shape.corners() {
            let chosen = self.corner == Some(corner) || hovered == Some(corner);
            let colour = if chosen {
                palette.accent
            } else {
                palette.sheet
            };
            painter.circle(
                place.to_screen(at),
                if chosen { 5.0 } else { 4.0 },
                colour,
                Stroke::new(1.4, palette.ink),
            );
            if self.corner == Some(corner) {
                let mm = |mm: f64| units.show().text(mm);
                let words = format!(
                    "{} across, {} up",
                    mm(at.0.abs() * place.mm.0),
                    mm((at.1 + 1.0) * place.mm.1)
                );
                painter.text(
                    area.left_top() + Vec2::splat(5.0),
                    egui::Align2::LEFT_TOP,
                    words,
                    egui::FontId::proportional(12.0),
                    palette.ink,
                );
            }
        }
    }

    fn corner_tools(&mut self, ui: &mut Ui, shape: &SketchShape) -> Option<SketchShape> {
        let mut next = None;
        ui.horizontal(|ui| {
            let mut alike = !self.one_side;
            if ui
                .checkbox(&mut alike, "Both halves alike")
                .on_hover_text("What moves on one side of the middle moves on the other")
                .changed()
            {
                self.one_side = !alike;
            }
            let more = ui.add_enabled(self.corner.is_some(), Button::new("Corner +"));
            if more
                .on_hover_text("Put a corner in the middle of the piece after the chosen one")
                .clicked()
            {
                next = self
                    .corner
                    .map(|corner| with_corner(shape, corner, self.alike()));
            }
            let less = ui.add_enabled(self.corner.is_some(), Button::new("Corner -"));
            if less.on_hover_text("Take the chosen corner out").clicked() {
                next = self
                    .corner
                    .take()
                    .map(|corner| shape.without_corner(corner));
            }
        });
        next
    }
}

/// A shape with a corner more, on the other side of the middle too if both are to stay alike.
fn with_corner(shape: &SketchShape, corner: Corner, alike: Alike) -> SketchShape {
    let next = shape.with_corner(corner);
    let pieces = shape
        .corners()
        .iter()
        .filter(|(c, _)| c.side == corner.side)
        .count()
        - 1;
    let mirror = pieces.checked_sub(corner.index + 1);
    match (alike, mirror) {
        (Alike::Both, Some(index)) if index != corner.index => {
            // The pieces past the new corner have moved on by one.
            let index = if index > corner.index {
                index + 1
            } else {
                index
            };
            next.with_corner(Corner { index, ..corner })
        }
        (Alike::Both | Alike::One, _) => next,
    }
}

/// Places in a row as the smith counts them: `1 to 4, 6`.
fn runs(places: &[usize]) -> String {
    let mut all: Vec<(usize, usize)> = Vec::new();
    for &place in places {
        match all.last_mut() {
            Some((_, last)) if *last + 1 == place => *last = place,
            Some(_) | None => all.push((place, place)),
        }
    }
    let words = all.into_iter().map(|(first, last)| match last - first {
        0 => (first + 1).to_string(),
        1 => format!("{}, {}", first + 1, last + 1),
        _ => format!("{} to {}", first + 1, last + 1),
    });
    words.collect::<Vec<_>>().join(", ")
}

/// The steel of a section as upright strips, so that any groove stays open; in one mesh, or the
/// softened edges of the strips would show as stripes.
fn fill(painter: &egui::Painter, section: &Section<'_>, unit: impl Fn((f64, f64)) -> Pos2) {
    const STRIPS: u32 = 96;
    let colour: Color32 = colour_of(Part::Jaw);
    let at = |i: u32| 2.0 * f64::from(i) / f64::from(STRIPS) - 1.0;
    let z = |u: f64| u * section.width / 2.0;
    let mut mesh = egui::Mesh::default();
    for i in 0..STRIPS {
        let (a, b) = (at(i), at(i + 1));
        let middle = f64::midpoint(a, b);
        let (low, high) = (section.lower(middle), section.upper(middle));
        let rect = Rect::from_two_pos(unit((z(a), low)), unit((z(b), high)));
        mesh.add_colored_rect(rect, colour);
    }
    painter.add(mesh);
}

#[cfg(test)]
mod tests {
    use super::runs;

    #[test]
    fn nodes_in_a_row_are_counted_from_to() {
        assert_eq!(runs(&[1]), "2");
        assert_eq!(runs(&[0, 1]), "1, 2");
        assert_eq!(runs(&[0, 1, 2, 3, 5, 8, 9]), "1 to 4, 6, 9, 10");
    }
}
