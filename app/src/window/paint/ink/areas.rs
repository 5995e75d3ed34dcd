//! Paths to lines and triangles on the screen.

use egui::{Color32, Mesh, Pos2};
use kurbo::{BezPath, PathEl};
use lyon::math::point;
use lyon::tessellation::{BuffersBuilder, FillOptions, FillTessellator, FillVertex, VertexBuffers};

use super::View;

/// Curves are drawn to this many points, finer than an eye sees on a screen.
const FLATNESS: f32 = 0.15;

/// Lines on the screen, one for each sub-path; closed ones end where they begin.
pub(super) fn flatten(path: &BezPath, view: View) -> Vec<Vec<Pos2>> {
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
pub(super) fn mesh(
    fills: &mut FillTessellator,
    lines: &[Vec<Pos2>],
    colour: Color32,
) -> Option<Mesh> {
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
    use kurbo::{Rect, Shape as _};

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
