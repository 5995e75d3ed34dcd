//! From the display list to shapes on the screen.

use egui::{Color32, FontId, Mesh, Painter, Pos2, Shape, Stroke, TextureId, Vec2};
use kurbo::{BezPath, PathEl, Point};
use lyon::math::point;
use lyon::tessellation::{BuffersBuilder, FillOptions, FillTessellator, FillVertex, VertexBuffers};
use reinwright_core::finding::Part;
use reinwright_core::paper::font::text_width;
use reinwright_core::paper::ink::{paper_fill, paper_stroke, part_colour, stress_colour};
use reinwright_core::paper::{Align, Fill, GroupItem, Item, Line, PathItem, TextItem};

use super::theme::{self, Palette};
use super::view::View;

/// Wide and narrow lines in points, two to one (ISO 128-2).
const WIDE: f32 = 1.6;
const NARROW: f32 = 0.8;
/// The rim around a part that is lit up, in points.
const GLOW: f32 = 4.5;

/// How much of a picture shows through the steel that is drawn over it.
const THROUGH: f32 = 0.55;

/// Curves are drawn to this many points, finer than an eye sees on a screen.
const FLATNESS: f32 = 0.15;

/// Text smaller than this many points cannot be read and is left out.
const SMALLEST_TEXT: f64 = 5.0;

/// Steel at a forging heat, as an eye sees it.
const HOT: Color32 = Color32::from_rgb(0xff, 0x8c, 0x2a);

/// How a line is drawn: width, dashes and gaps in points, colour.
struct Pen {
    width: f32,
    dashes: &'static [f32],
    gaps: &'static [f32],
    colour: Color32,
}

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

/// What is drawn on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Medium {
    /// The screen: lines keep their width at every scale, and colours are the window's.
    Screen,
    /// A page as it will be printed, with all that is on it at its own scale.
    Page,
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

    #[allow(
        clippy::cast_possible_truncation,
        reason = "screens are far coarser than f32"
    )]
    fn text(&self, item: &TextItem) {
        let size = item.size * f64::from(self.view.scale);
        if size < SMALLEST_TEXT {
            if self.medium == Medium::Page {
                self.grey(item);
            }
            return;
        }
        // Whole quarters of a point, so that a slow zoom does not fill the font's atlas.
        let size = ((size * 4.0).round() / 4.0) as f32;
        let font = FontId::proportional(size * self.narrowed(item, size));
        let galley = self
            .painter
            .layout_no_wrap(item.text.clone(), font, self.palette.ink);
        let baseline = galley.rows.first().map_or(0.0, |row| {
            row.pos.y + row.glyphs.first().map_or(0.0, |glyph| glyph.pos.y)
        });
        let start = match item.align {
            Align::Start => 0.0,
            Align::Middle => -galley.size().x / 2.0,
            Align::End => -galley.size().x,
        };
        let turn = -item.turn as f32;
        let corner = egui::emath::Rot2::from_angle(turn) * Vec2::new(start, -baseline);
        let at = self.view.to_screen(item.at) + corner;
        let mut shape = egui::epaint::TextShape::new(at, galley, self.palette.ink);
        shape.angle = turn;
        if item.bold {
            // The window's font has no bold face: the same text a hair to the right makes one.
            let mut again = shape.clone();
            again.pos.x += 0.04 * size;
            self.painter.add(again);
        }
        self.painter.add(shape);
    }

    /// How much smaller the window's letters are set, so that a text of a page is no wider than the
    /// printed one.
    #[allow(
        clippy::cast_possible_truncation,
        reason = "screens are far coarser than f32"
    )]
    fn narrowed(&self, item: &TextItem, size: f32) -> f32 {
        if self.medium == Medium::Screen {
            return 1.0;
        }
        let font = FontId::proportional(size);
        let ink = self.palette.ink;
        let galley = self.painter.layout_no_wrap(item.text.clone(), font, ink);
        let printed = text_width(&item.text, item.size, item.bold) as f32 * self.view.scale;
        (printed / galley.size().x.max(1.0)).min(1.0)
    }

    /// A text that is too small to be read on the screen: a grey bar as long and half as high.
    #[allow(
        clippy::cast_possible_truncation,
        reason = "screens are far coarser than f32"
    )]
    fn grey(&self, item: &TextItem) {
        let width = text_width(&item.text, item.size, item.bold);
        let start = match item.align {
            Align::Start => 0.0,
            Align::Middle => -width / 2.0,
            Align::End => -width,
        };
        let along = kurbo::Vec2::from_angle(item.turn);
        let up = 0.35 * item.size * kurbo::Vec2::new(-along.y, along.x);
        let at = |along_mm: f64| self.view.to_screen(item.at + along_mm * along + up);
        let thick = 0.5 * item.size as f32 * self.view.scale;
        let stroke = Stroke::new(thick, self.palette.faint.gamma_multiply(0.45));
        self.painter
            .line_segment([at(start), at(start + width)], stroke);
    }

    /// A line as it is printed, never so thin that it is lost on the screen.
    #[allow(
        clippy::cast_possible_truncation,
        reason = "screens are far coarser than f32"
    )]
    fn printed_pen(&self, line: Line) -> Pen {
        const THINNEST: f32 = 0.4;
        /// One dash and gap, in points, for all patterns: what is looked at is where things lie.
        const DASH: (&[f32], &[f32]) = (&[6.0], &[3.0]);
        let stroke = paper_stroke(line);
        let [r, g, b] = stroke.colour;
        let scale = self.view.scale;
        let full = stroke.dash.is_empty() || scale < 1.5;
        let (dashes, gaps) = if full { (&[][..], &[][..]) } else { DASH };
        Pen {
            width: (stroke.width as f32 * scale).max(THINNEST),
            dashes,
            gaps,
            colour: Color32::from_rgb(r, g, b),
        }
    }

    /// The one table of lines on the screen (line types after ISO 128-2).
    fn pen(&self, line: Line) -> Pen {
        if self.medium == Medium::Page {
            return self.printed_pen(line);
        }
        const DASH: (&[f32], &[f32]) = (&[7.0], &[3.5]);
        const CHAIN: (&[f32], &[f32]) = (&[14.0, 1.5], &[3.0, 3.0]);
        const TWO_DOTS: (&[f32], &[f32]) = (&[14.0, 1.5, 1.5], &[3.0, 3.0, 3.0]);
        const JOIN: (&[f32], &[f32]) = (&[14.0], &[6.0]);
        const FULL: (&[f32], &[f32]) = (&[], &[]);
        let (ink, faint) = (self.palette.ink, self.palette.faint);
        let (width, (dashes, gaps), colour) = match line {
            Line::Outline => (WIDE, FULL, ink),
            Line::Mark => (WIDE, FULL, self.palette.accent),
            Line::Fine => (NARROW, FULL, ink),
            Line::Dimension | Line::Frame => (NARROW, FULL, faint),
            Line::Hidden => (NARROW, DASH, ink),
            Line::Centre => (NARROW, CHAIN, faint),
            Line::Neighbour => (NARROW, TWO_DOTS, faint),
            Line::Join => (NARROW, JOIN, faint),
            Line::Warning => (WIDE, FULL, self.palette.stop),
        };
        Pen {
            width,
            dashes,
            gaps,
            colour,
        }
    }

    /// The one table of areas on the screen.
    fn fill_colour(&self, fill: Fill) -> Color32 {
        if self.medium == Medium::Page {
            let [r, g, b] = paper_fill(fill);
            return Color32::from_rgb(r, g, b);
        }
        let on_sheet = |colour: Color32, part: f32| self.palette.sheet.lerp_to_gamma(colour, part);
        match fill {
            Fill::Part(part) if self.lights(Some(part), fill) => on_sheet(colour_of(part), 0.85),
            Fill::Part(part) => on_sheet(colour_of(part), self.palette.tint),
            Fill::OtherHalf => on_sheet(self.palette.faint, 0.22),
            Fill::Work => on_sheet(colour_of(Part::Work), 0.6),
            Fill::Rivet => on_sheet(self.palette.faint, 0.5),
            Fill::Waste => on_sheet(self.palette.faint, 0.3),
            Fill::Paper => self.palette.sheet,
            Fill::Ink => self.palette.ink,
            Fill::Warning => on_sheet(self.palette.stop, 0.6),
            Fill::Hot => on_sheet(HOT, 0.85),
            Fill::Stress(step) => stress_colour_of(step),
        }
    }
}

/// Whether an area is forged steel or the rivet.
fn is_steel_of_pair(fill: Fill) -> bool {
    match fill {
        Fill::Part(part) => !matches!(part, Part::Work | Part::Bar | Part::Pair),
        Fill::OtherHalf | Fill::Rivet | Fill::Stress(_) => true,
        Fill::Work | Fill::Waste | Fill::Hot | Fill::Paper | Fill::Ink | Fill::Warning => false,
    }
}

/// Whether an area is a body, and not an arrowhead, a patch under a text or a sign.
fn is_body(fill: Fill) -> bool {
    match fill {
        Fill::Part(_)
        | Fill::OtherHalf
        | Fill::Work
        | Fill::Rivet
        | Fill::Waste
        | Fill::Stress(_) => true,
        Fill::Hot | Fill::Paper | Fill::Ink | Fill::Warning => false,
    }
}

/// A part's own colour, full strength.
pub(crate) fn colour_of(part: Part) -> Color32 {
    let [r, g, b] = part_colour(part);
    Color32::from_rgb(r, g, b)
}

/// The colour of a step of stress, by day and by night.
pub(crate) fn stress_colour_of(step: u8) -> Color32 {
    let [r, g, b] = stress_colour(step);
    Color32::from_rgb(r, g, b)
}

/// The topmost filled area with a part under a point of the drawing.
fn part_at(items: &[Item], at: Point) -> Option<Part> {
    items.iter().rev().find_map(|item| match item {
        Item::Path(path) => path
            .part
            .filter(|_| path.fill.is_some_and(is_body) && covers(path, at)),
        Item::Text(_) => None,
        Item::Group(group) => {
            let seen = group.clip.is_none_or(|clip| clip.contains(at));
            let inside = at - group.shift;
            seen.then(|| part_at(&group.items, inside)).flatten()
        }
    })
}

/// The same under a point of the screen; where nothing lies, a hand's breadth of a pointer around
/// it counts, for thin reins seen from afar.
pub(crate) fn part_near(items: &[Item], view: View, at: Pos2) -> Option<Part> {
    /// Points around the pointer that still count.
    const REACH: f32 = 4.0;
    let around = (0..8u8).map(|i| REACH * Vec2::angled(f32::from(i) * std::f32::consts::FRAC_PI_4));
    std::iter::once(Vec2::ZERO)
        .chain(around)
        .find_map(|shift| part_at(items, view.to_drawing(at + shift)))
}

/// Even-odd, as it is filled.
fn covers(item: &PathItem, at: Point) -> bool {
    use kurbo::Shape as _;
    item.path.bounding_box().contains(at) && item.path.winding(at) % 2 != 0
}

/// Lines on the screen, one for each sub-path; closed ones end where they begin.
fn flatten(path: &BezPath, view: View) -> Vec<Vec<Pos2>> {
    let mut lines: Vec<Vec<Pos2>> = Vec::new();
    let tolerance = f64::from(FLATNESS / view.scale);
    kurbo::flatten(path.iter(), tolerance, |el| match el {
        PathEl::MoveTo(p) => lines.push(vec![view.to_screen(p)]),
        PathEl::LineTo(p) => {
            if let Some(line) = lines.last_mut() {
                line.push(view.to_screen(p));
            }
        }
        PathEl::ClosePath => {
            if let Some(line) = lines.last_mut() {
                line.push(line[0]);
            }
        }
        PathEl::QuadTo(..) | PathEl::CurveTo(..) => unreachable!("flattened paths have no curves"),
    });
    lines
}

/// Triangles of the area inside, by the even-odd rule; `None` when there is no area.
fn mesh(fills: &mut FillTessellator, lines: &[Vec<Pos2>], colour: Color32) -> Option<Mesh> {
    let mut path = lyon::path::Path::builder();
    for line in lines.iter().filter(|line| line.len() > 2) {
        path.begin(point(line[0].x, line[0].y));
        line[1..].iter().for_each(|p| {
            path.line_to(point(p.x, p.y));
        });
        path.end(true);
    }
    let mut mesh = Mesh::default();
    let mut buffers: VertexBuffers<Pos2, u32> = VertexBuffers::new();
    let mut builder = BuffersBuilder::new(&mut buffers, |vertex: FillVertex<'_>| {
        let p = vertex.position();
        Pos2::new(p.x, p.y)
    });
    let options = FillOptions::even_odd().with_tolerance(FLATNESS);
    fills
        .tessellate_path(&path.build(), &options, &mut builder)
        .ok()?;
    for vertex in &buffers.vertices {
        mesh.colored_vertex(*vertex, colour);
    }
    mesh.indices = buffers.indices;
    (!mesh.indices.is_empty()).then_some(mesh)
}

#[cfg(test)]
mod tests {
    use super::*;
    use kurbo::{Rect, Shape as _, Vec2 as Shift};

    fn square(part: Part, half: f64) -> Item {
        let path = Rect::new(-half, -half, half, half).to_path(0.1);
        Item::fill(path, Fill::Part(part)).of(part)
    }

    #[test]
    fn the_topmost_part_under_the_pointer_is_found() {
        let items = [square(Part::Boss, 10.0), square(Part::Rivet, 2.0)];
        assert_eq!(part_at(&items, Point::new(0.0, 0.0)), Some(Part::Rivet));
        assert_eq!(part_at(&items, Point::new(5.0, 0.0)), Some(Part::Boss));
        assert_eq!(part_at(&items, Point::new(15.0, 0.0)), None);
    }

    #[test]
    fn a_hole_is_not_the_part_around_it() {
        let mut ring = Rect::new(-10.0, -10.0, 10.0, 10.0).to_path(0.1);
        ring.extend(Rect::new(-4.0, -4.0, 4.0, 4.0).to_path(0.1));
        let ring = [Item::fill(ring, Fill::Part(Part::Boss)).of(Part::Boss)];
        assert_eq!(part_at(&ring, Point::new(0.0, 0.0)), None);
        assert_eq!(part_at(&ring, Point::new(7.0, 0.0)), Some(Part::Boss));
    }

    #[test]
    fn groups_are_looked_into_where_they_were_moved() {
        let group = Item::group("view", Shift::new(100.0, 0.0), vec![square(Part::Jaw, 5.0)]);
        assert_eq!(
            part_at(std::slice::from_ref(&group), Point::new(101.0, 0.0)),
            Some(Part::Jaw)
        );
        assert_eq!(part_at(&[group], Point::new(1.0, 0.0)), None);
    }

    #[test]
    fn arrowheads_are_no_parts() {
        let path = Rect::new(-1.0, -1.0, 1.0, 1.0).to_path(0.1);
        let arrow = [Item::fill(path, Fill::Ink).of(Part::Rein)];
        assert_eq!(part_at(&arrow, Point::ZERO), None);
    }

    /// Triangles cover the even-odd area, holes left out.
    #[test]
    fn triangles_cover_the_area() {
        let view = View {
            origin: Pos2::ZERO,
            scale: 1.0,
        };
        let mut ring = Rect::new(-10.0, -10.0, 10.0, 10.0).to_path(0.1);
        ring.extend(Rect::new(-4.0, -4.0, 4.0, 4.0).to_path(0.1));
        let mesh = mesh(
            &mut FillTessellator::new(),
            &flatten(&ring, view),
            Color32::RED,
        );
        let mesh = mesh.expect("an area");
        let area: f32 = mesh.triangles().map(|t| triangle(&mesh, t)).sum();
        assert!((area - (400.0 - 64.0)).abs() < 0.1, "{area}");
    }

    fn triangle(mesh: &Mesh, corners: [u32; 3]) -> f32 {
        let at = |i: u32| mesh.vertices[usize::try_from(i).expect("small")].pos;
        let [a, b, c] = corners.map(at);
        let (u, v) = (b - a, c - a);
        (u.x * v.y - u.y * v.x).abs() / 2.0
    }
}
