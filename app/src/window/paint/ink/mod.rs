//! From the display list to shapes on the screen.

mod areas;
mod letters;
mod looks;

use egui::{Color32, Mesh, Painter, Pos2, Shape, Stroke, TextureId};
use kurbo::Point;
use lyon::tessellation::FillTessellator;
use reinwright_core::finding::Part;
use reinwright_core::paper::{Fill, GroupItem, Item, Line, PathItem};

use super::theme::{self, Palette};
use super::view::View;
use areas::{flatten, mesh};
use looks::{Medium, Pen, WIDE, is_steel_of_pair};
pub(crate) use looks::{colour_of, is_body, stress_colour_of};

/// The rim around a part that is lit up, in points.
const GLOW: f32 = 4.5;

/// How much of a picture shows through the steel that is drawn over it.
const THROUGH: f32 = 0.55;

/// A picture that lies under a drawing.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Under {
    pub(crate) texture: TextureId,
    /// Top left, top right, bottom right, bottom left, mm.
    pub(crate) corners: [Point; 4],
    /// How strongly it shows, 0 to 1.
    pub(crate) strength: f32,
}

/// Draws display lists on a painter.
pub(crate) struct Ink<'a> {
    painter: Painter,
    view: View,
    palette: &'static Palette,
    /// The part that is lit up, if any.
    lit: Option<Part>,
    fills: &'a mut FillTessellator,
    /// How much of what lies under an area shows through it.
    through: f32,
    medium: Medium,
}

impl<'a> Ink<'a> {
    pub(crate) fn new(
        painter: Painter,
        view: View,
        palette: &'static Palette,
        lit: Option<Part>,
        fills: &'a mut FillTessellator,
    ) -> Self {
        Self {
            painter,
            view,
            palette,
            lit,
            fills,
            through: 0.0,
            medium: Medium::Screen,
        }
    }

    /// Ink for a page as it will be printed.
    pub(crate) fn on_page(painter: Painter, view: View, fills: &'a mut FillTessellator) -> Self {
        Self {
            medium: Medium::Page,
            ..Self::new(painter, view, &theme::PRINTED, None, fills)
        }
    }

    /// Draws a picture under all that follows, which lets it show through.
    pub(crate) fn picture(&mut self, under: &Under) {
        const CORNERS: [Pos2; 4] = [
            Pos2::new(0.0, 0.0),
            Pos2::new(1.0, 0.0),
            Pos2::new(1.0, 1.0),
            Pos2::new(0.0, 1.0),
        ];
        let mut mesh = Mesh::with_texture(under.texture);
        let color = Color32::WHITE.gamma_multiply(under.strength);
        for (corner, uv) in under.corners.iter().zip(CORNERS) {
            let pos = self.view.to_screen(*corner);
            mesh.vertices.push(egui::epaint::Vertex { pos, uv, color });
        }
        mesh.add_triangle(0, 1, 2);
        mesh.add_triangle(0, 2, 3);
        self.painter.add(Shape::mesh(mesh));
        self.through = THROUGH;
    }

    /// Draws everything, back to front.
    pub(crate) fn draw(&mut self, items: &[Item]) {
        self.items(items);
    }

    /// Draws nothing but the outlines, dashed in the accent: what is only tried.
    pub(crate) fn ghost(&mut self, items: &[Item]) {
        const DASH: (&[f32], &[f32]) = (&[6.0], &[3.0]);
        let pen = Pen {
            width: WIDE,
            dashes: DASH.0,
            gaps: DASH.1,
            colour: self.palette.accent,
        };
        for item in items {
            match item {
                Item::Path(path) if path.line == Some(Line::Outline) => {
                    let lines = flatten(&path.path, self.view);
                    lines.iter().for_each(|points| self.stroke(points, &pen));
                }
                Item::Path(_) | Item::Text(_) => {}
                Item::Group(group) => {
                    let view = self.view;
                    self.view.origin = self.view.to_screen(group.shift.to_point());
                    self.ghost(&group.items);
                    self.view = view;
                }
            }
        }
    }

    fn items(&mut self, items: &[Item]) {
        let lit = |ink: &Self, item: &Item| ink.lit_area(item).is_some();
        let together = |a: &Item, b: &Item| lit(self, a) && lit(self, b);
        let runs: Vec<&[Item]> = items.chunk_by(together).collect();
        for run in runs {
            if run.len() > 1 {
                self.lit_run(run);
                continue;
            }
            for item in run {
                match item {
                    Item::Path(path) => self.path(path),
                    Item::Text(text) => self.text(text),
                    Item::Group(group) => self.group(group),
                }
            }
        }
    }

    /// The area of an item, if it is nothing else and is lit up.
    fn lit_area<'i>(&self, item: &'i Item) -> Option<(&'i PathItem, Fill)> {
        let Item::Path(path) = item else {
            return None;
        };
        let fill = path
            .fill
            .filter(|fill| path.line.is_none() && is_body(*fill))?;
        self.lights(path.part, fill).then_some((path, fill))
    }

    /// Areas that are lit up one after the other, such as the slices of a jaw seen end on: one rim
    /// around all of them, since each is filled over the rims of the others.
    fn lit_run(&mut self, run: &[Item]) {
        let areas: Vec<_> = run.iter().filter_map(|item| self.lit_area(item)).collect();
        let lines: Vec<_> = areas
            .iter()
            .map(|(path, _)| flatten(&path.path, self.view))
            .collect();
        lines.iter().for_each(|lines| self.glow(lines));
        for ((_, fill), lines) in areas.iter().zip(&lines) {
            let colour = self.fill_colour(*fill).gamma_multiply(1.0 - self.through);
            self.fill(lines, colour);
        }
    }

    /// Draws the inside of a group with its shift and its clip.
    fn group(&mut self, group: &GroupItem) {
        let (view, painter) = (self.view, self.painter.clone());
        if let Some(clip) = group.clip {
            let clip = self.view.rect(clip).intersect(painter.clip_rect());
            self.painter.set_clip_rect(clip);
        }
        self.view.origin = self.view.to_screen(group.shift.to_point());
        self.items(&group.items);
        (self.view, self.painter) = (view, painter);
    }

    fn path(&mut self, item: &PathItem) {
        let lines = flatten(&item.path, self.view);
        if let Some(fill) = item.fill {
            let colour = self.fill_colour(fill).gamma_multiply(1.0 - self.through);
            self.fill(&lines, colour);
            if self.lights(item.part, fill) && is_body(fill) {
                self.glow(&lines);
            }
        }
        if let Some(line) = item.line {
            let pen = self.pen(line);
            lines.iter().for_each(|points| self.stroke(points, &pen));
        }
    }

    /// Whether an area is lit up; with the pair all steel of both halves is.
    fn lights(&self, part: Option<Part>, fill: Fill) -> bool {
        match self.lit {
            None => false,
            Some(Part::Pair) => is_steel_of_pair(fill),
            lit => part == lit,
        }
    }

    /// A rim around what is lit up; what lies before it hides it as it hides the part.
    fn glow(&self, lines: &[Vec<Pos2>]) {
        let stroke = Stroke::new(GLOW, self.palette.accent);
        for points in lines {
            self.painter.line(points.clone(), stroke);
        }
    }

    fn fill(&mut self, lines: &[Vec<Pos2>], colour: Color32) {
        if let Some(mesh) = mesh(self.fills, lines, colour) {
            self.painter.add(Shape::mesh(mesh));
        }
    }

    fn stroke(&self, points: &[Pos2], pen: &Pen) {
        let stroke = Stroke::new(pen.width, pen.colour);
        if pen.dashes.is_empty() {
            self.painter.line(points.to_vec(), stroke);
            return;
        }
        let mut shapes = Vec::new();
        Shape::dashed_line_many_with_offset(points, stroke, pen.dashes, pen.gaps, 0.0, &mut shapes);
        self.painter.extend(shapes);
    }
}
