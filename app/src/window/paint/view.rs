//! Where a drawing lies on the screen.

use egui::{Pos2, Rect, Vec2};
use kurbo::Point;

/// Points of the screen per millimetre, least and most: from a whole pair in a thumbnail to a
/// rivet hole across the window.
const LEAST_SCALE: f32 = 0.1;
const MOST_SCALE: f32 = 60.0;

/// A window on a drawing: millimetres with y up to screen points with y down.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct View {
    /// Where the drawing's origin lies on the screen.
    pub(crate) origin: Pos2,
    /// Screen points per millimetre.
    pub(crate) scale: f32,
}

#[allow(
    clippy::cast_possible_truncation,
    reason = "screens are far coarser than f32"
)]
impl View {
    /// The whole of `bounds` (mm) in the middle of `area`, with a rim.
    pub(crate) fn fit(bounds: kurbo::Rect, area: Rect, rim: f32) -> Self {
        let room = (area.size() - Vec2::splat(2.0 * rim)).max(Vec2::splat(1.0));
        let (width, height) = (bounds.width().max(1.0), bounds.height().max(1.0));
        let scale = (room.x / width as f32).min(room.y / height as f32);
        let scale = scale.clamp(LEAST_SCALE, MOST_SCALE);
        let middle = bounds.center();
        let shift = Vec2::new(-middle.x as f32, middle.y as f32) * scale;
        Self {
            origin: area.center() + shift,
            scale,
        }
    }

    /// From the drawing to the screen.
    pub(crate) fn to_screen(self, p: Point) -> Pos2 {
        self.origin + Vec2::new(p.x as f32, -p.y as f32) * self.scale
    }

    /// From the screen to the drawing.
    pub(crate) fn to_drawing(self, p: Pos2) -> Point {
        let v = (p - self.origin) / self.scale;
        Point::new(f64::from(v.x), f64::from(-v.y))
    }

    /// A rectangle on the screen.
    pub(crate) fn rect(self, r: kurbo::Rect) -> Rect {
        let corner = |x, y| self.to_screen(Point::new(x, y));
        Rect::from_two_pos(corner(r.x0, r.y0), corner(r.x1, r.y1))
    }

    /// Larger by `factor`, with `about` staying where it is.
    #[must_use]
    pub(crate) fn zoomed(self, factor: f32, about: Pos2) -> Self {
        let scale = (self.scale * factor).clamp(LEAST_SCALE, MOST_SCALE);
        let origin = about + (self.origin - about) * (scale / self.scale);
        Self { origin, scale }
    }

    /// Moved by so many screen points.
    #[must_use]
    pub(crate) fn moved(self, by: Vec2) -> Self {
        Self {
            origin: self.origin + by,
            ..self
        }
    }
}

/// A view that fits a drawing whose text keeps its size on the screen, so that it can be read at
/// every zoom.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Fitted {
    pub(crate) view: View,
    /// Size of the drawing's text, mm.
    pub(crate) text: f64,
}

/// Rounds of fitting: larger text needs room, which makes the drawing smaller, which makes the
/// text larger in millimetres. Three rounds settle to less than a point.
const ROUNDS: usize = 4;

impl Fitted {
    /// Fits into `area` what covers `bounds(text)` when its text is `text` mm, for text of
    /// `points` on the screen.
    pub(crate) fn new(
        area: Rect,
        rim: f32,
        points: f32,
        mut bounds: impl FnMut(f64) -> kurbo::Rect,
    ) -> Self {
        /// Text of a printed sheet, mm, to begin with.
        const PRINTED: f64 = 3.5;
        let mut text = PRINTED;
        let mut view = View::fit(bounds(text), area, rim);
        for _ in 0..ROUNDS {
            text = f64::from(points / view.scale);
            view = View::fit(bounds(text), area, rim);
        }
        Self { view, text }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const AREA: Rect = Rect {
        min: Pos2::new(100.0, 50.0),
        max: Pos2::new(500.0, 350.0),
    };

    #[test]
    fn the_whole_drawing_lies_inside_the_rim() {
        let bounds = kurbo::Rect::new(-380.0, -40.0, 90.0, 120.0);
        let view = View::fit(bounds, AREA, 10.0);
        let shown = view.rect(bounds);
        assert!(AREA.shrink(9.99).contains_rect(shown), "{shown:?}");
        assert!((shown.width() - 380.0).abs() < 0.01, "{shown:?}");
        assert!(
            (shown.center() - AREA.center()).length() < 0.01,
            "{shown:?}"
        );
    }

    #[test]
    fn zooming_keeps_the_place_under_the_pointer() {
        let view = View::fit(kurbo::Rect::new(0.0, 0.0, 100.0, 50.0), AREA, 0.0);
        let pointer = Pos2::new(222.0, 111.0);
        let (before, after) = (
            view.to_drawing(pointer),
            view.zoomed(3.0, pointer).to_drawing(pointer),
        );
        assert!(before.distance(after) < 1e-4, "{before:?} {after:?}");
    }

    #[test]
    fn there_and_back_is_the_same_place() {
        let view = View::fit(kurbo::Rect::new(-9.0, -3.0, 4.0, 8.0), AREA, 5.0);
        let place = Point::new(1.25, -2.5);
        assert!(view.to_drawing(view.to_screen(place)).distance(place) < 1e-4);
        assert!(
            view.to_screen(Point::new(0.0, 1.0)).y < view.to_screen(Point::ZERO).y,
            "y is up"
        );
    }

    /// Text of 12 points is 12 points on the screen, however much room it takes.
    #[test]
    fn text_keeps_its_size_on_the_screen() {
        let bounds = |text: f64| kurbo::Rect::new(0.0, -8.0 * text, 400.0, 40.0 + 8.0 * text);
        let fitted = Fitted::new(AREA, 10.0, 12.0, bounds);
        let points = fitted.text * f64::from(fitted.view.scale);
        assert!((points - 12.0).abs() < 0.5, "{points}");
    }
}
