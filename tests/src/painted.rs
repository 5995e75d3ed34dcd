//! The window as pixels, without a display or a graphics card: the triangles of a frame painted by
//! the processor.
//!
//! It paints as the window's own shaders do: colours with their alpha multiplied in, blended as they
//! are stored. Letters stand on whole pixels, so that the nearest texel is the right one.

use std::cell::RefCell;
use std::collections::HashMap;
use std::rc::Rc;

use egui::epaint::{Primitive, Vertex};
use egui::{Color32, ColorImage, Mesh, Rect, TextureId, TexturesDelta, vec2};
use egui_kittest::{Harness, TestRenderer};
use reinwright::window::Workbench;

use crate::window::{FRAMES, Window};

/// The harness shows a workbench with so many points of nothing around it.
const AROUND: f32 = 8.0;

type Textures = Rc<RefCell<HashMap<TextureId, ColorImage>>>;

/// Keeps the textures that a window has told of.
struct Keeping(Textures);

impl TestRenderer for Keeping {
    fn handle_delta(&mut self, delta: &mut TexturesDelta) {
        let mut kept = self.0.borrow_mut();
        // Each texture stands for itself, so that their order does not matter.
        delta.set.drain().for_each(|(id, parts)| {
            for part in &parts {
                let egui::ImageData::Color(image) = &part.image;
                match part.pos {
                    None => {
                        kept.insert(id, ColorImage::clone(image));
                    }
                    Some(at) => paste(kept.get_mut(&id).expect("it was told before"), image, at),
                }
            }
        });
        delta.free.drain().for_each(|id| {
            kept.remove(&id);
        });
    }
}

fn paste(whole: &mut ColorImage, patch: &ColorImage, [left, top]: [usize; 2]) {
    let [width, height] = patch.size;
    for y in 0..height {
        let to = (top + y) * whole.size[0] + left;
        let from = y * width;
        whole.pixels[to..to + width].copy_from_slice(&patch.pixels[from..from + width]);
    }
}

/// A window that can be looked at.
pub struct Seen {
    /// The window.
    pub window: Window,
    textures: Textures,
}

impl std::fmt::Debug for Seen {
    fn fmt(&self, to: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(
            to,
            "a window with {} textures",
            self.textures.borrow().len()
        )
    }
}

/// Shows a workbench in a size so that it can be looked at.
pub fn look_at(bench: Workbench, size: (f32, f32)) -> Seen {
    look_finely_at(bench, size, 1.0)
}

/// The same with so many pixels to a point.
pub fn look_finely_at(bench: Workbench, (width, height): (f32, f32), fine: f32) -> Seen {
    let textures = Textures::default();
    let mut window = Harness::builder()
        .with_size(vec2(width + 2.0 * AROUND, height + 2.0 * AROUND))
        .with_max_steps(FRAMES)
        .with_pixels_per_point(fine)
        .renderer(Keeping(Rc::clone(&textures)))
        .build_ui_state(|ui, bench: &mut Workbench| bench.show(ui), bench);
    window.run();
    Seen { window, textures }
}

impl Seen {
    /// The last frame, painted.
    pub fn picture(&self) -> ColorImage {
        let output = self.window.output();
        let scale = output.pixels_per_point;
        let size = self.window.ctx.content_rect().size() * scale;
        let mut canvas = Canvas::of(size.x.round(), size.y.round());
        let textures = self.textures.borrow();
        for part in self.window.ctx.tessellate(output.shapes.clone(), scale) {
            if let Primitive::Mesh(mesh) = part.primitive {
                canvas.paint(&mesh, &textures[&mesh.texture_id], (part.clip_rect, scale));
            }
        }
        let whole = ColorImage::new(canvas.size, canvas.pixels);
        let shown = self.window.ctx.content_rect().shrink(AROUND);
        whole.region(&shown, Some(scale))
    }
}

/// What is painted on.
struct Canvas {
    size: [usize; 2],
    pixels: Vec<Color32>,
}

/// Pixels as places in a row, from the first to before the last.
type Span = std::ops::Range<usize>;

/// The pixels whose middles lie between two places.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "held within the canvas, whose sides are small"
)]
fn span(from: f32, to: f32, within: &Span) -> Span {
    let pixel = |at: f32| (at - 0.5).ceil().max(0.0) as usize;
    pixel(from).max(within.start)..pixel(to).min(within.end)
}

impl Canvas {
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a window has whole pixels, a few thousand"
    )]
    fn of(width: f32, height: f32) -> Self {
        let size = [width as usize, height as usize];
        Self {
            size,
            pixels: vec![Color32::BLACK; size[0] * size[1]],
        }
    }

    fn paint(&mut self, mesh: &Mesh, texture: &ColorImage, (clip, scale): (Rect, f32)) {
        let columns = span(
            (clip.min.x * scale).round() + 0.5,
            (clip.max.x * scale).round() + 0.5,
            &(0..self.size[0]),
        );
        let rows = span(
            (clip.min.y * scale).round() + 0.5,
            (clip.max.y * scale).round() + 0.5,
            &(0..self.size[1]),
        );
        for corners in mesh.indices.chunks_exact(3) {
            let mut corners: [Vertex; 3] = [0, 1, 2].map(|i| mesh.vertices[corners[i] as usize]);
            for corner in &mut corners {
                corner.pos = (corner.pos.to_vec2() * scale).to_pos2();
            }
            self.triangle(corners, texture, (&columns, &rows));
        }
    }

    /// Every pixel whose middle lies in a triangle; one on the edge of two belongs to one of them.
    fn triangle(&mut self, mut at: [Vertex; 3], texture: &ColorImage, within: (&Span, &Span)) {
        at.sort_by(|a, b| a.pos.y.total_cmp(&b.pos.y));
        let shade = Shade::of(&at, texture);
        for y in span(at[0].pos.y, at[2].pos.y, within.1) {
            let middle = row_middle(y);
            let short = if middle < at[1].pos.y { [0, 1] } else { [1, 2] };
            let ends = [
                crossing(&at[0], &at[2], middle),
                crossing(&at[short[0]], &at[short[1]], middle),
            ];
            for x in span(ends[0].min(ends[1]), ends[0].max(ends[1]), within.0) {
                let pixel = &mut self.pixels[y * self.size[0] + x];
                *pixel = over(shade.at(row_middle(x), middle), *pixel);
            }
        }
    }
}

/// Where the middle of a row or a column lies.
#[allow(
    clippy::cast_precision_loss,
    reason = "a canvas has a few thousand pixels a side"
)]
fn row_middle(of: usize) -> f32 {
    of as f32 + 0.5
}

/// Where an edge, told from its upper end, crosses a height.
fn crossing(upper: &Vertex, lower: &Vertex, height: f32) -> f32 {
    let share = (height - upper.pos.y) / (lower.pos.y - upper.pos.y);
    upper.pos.x + (lower.pos.x - upper.pos.x) * share
}

/// The colour of a triangle at each place.
struct Shade<'a> {
    corners: &'a [Vertex; 3],
    texture: &'a ColorImage,
    /// Twice its area, with the sign of its turn.
    area: f32,
    /// Its colour, where it has only one.
    only: Option<Color32>,
}

impl<'a> Shade<'a> {
    fn of(corners: &'a [Vertex; 3], texture: &'a ColorImage) -> Self {
        let [a, b, c] = [0, 1, 2].map(|i| corners[i].pos);
        let area = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
        let mut shade = Self {
            corners,
            texture,
            area,
            only: None,
        };
        let alike =
            |corner: &Vertex| (corner.color, corner.uv) == (corners[0].color, corners[0].uv);
        if corners.iter().all(alike) {
            shade.only = Some(shade.mixed([1.0, 0.0, 0.0]));
        }
        shade
    }

    fn at(&self, x: f32, y: f32) -> Color32 {
        if let Some(only) = self.only {
            return only;
        }
        let [a, b, c] = [0, 1, 2].map(|i| self.corners[i].pos);
        let second = ((x - a.x) * (c.y - a.y) - (y - a.y) * (c.x - a.x)) / self.area;
        let third = ((b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x)) / self.area;
        self.mixed([1.0 - second - third, second, third])
    }

    /// So much of each corner.
    fn mixed(&self, shares: [f32; 3]) -> Color32 {
        let mixed = |of: &dyn Fn(&Vertex) -> f32| {
            let parts = self.corners.iter().zip(shares);
            parts.map(|(corner, share)| of(corner) * share).sum::<f32>()
        };
        let texel = texel(self.texture, mixed(&|v| v.uv.x), mixed(&|v| v.uv.y)).to_array();
        let channel = |i: usize| {
            let colour = mixed(&|v| f32::from(v.color.to_array()[i]));
            byte(colour * f32::from(texel[i]) / 255.0)
        };
        Color32::from_rgba_premultiplied(channel(0), channel(1), channel(2), channel(3))
    }
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_precision_loss,
    reason = "held within the texture, whose sides are small"
)]
fn texel(texture: &ColorImage, u: f32, v: f32) -> Color32 {
    let place = |share: f32, of: usize| ((share * of as f32).max(0.0) as usize).min(of - 1);
    let [width, height] = texture.size;
    texture.pixels[place(v, height) * width + place(u, width)]
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "held to a byte"
)]
fn byte(value: f32) -> u8 {
    value.round().clamp(0.0, 255.0) as u8
}

/// One colour over another.
fn over(upper: Color32, lower: Color32) -> Color32 {
    let (upper, lower) = (upper.to_array(), lower.to_array());
    let through = 1.0 - f32::from(upper[3]) / 255.0;
    let channel = |i: usize| byte(f32::from(upper[i]) + f32::from(lower[i]) * through);
    Color32::from_rgba_premultiplied(channel(0), channel(1), channel(2), channel(3))
}
