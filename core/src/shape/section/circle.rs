/// Diameter of the smallest circle around all points, mm; zero for none.
///
/// Incremental construction (textbook computational geometry): a point outside the circle so far
/// must lie on the rim of the next.
pub fn smallest_circle_mm(points: &[(f64, f64)]) -> f64 {
    let mut circle = ((0.0, 0.0), -1.0);
    for (i, &p) in points.iter().enumerate() {
        if outside(circle, p) {
            circle = with_one(&points[..i], p);
        }
    }
    2.0 * circle.1.max(0.0)
}

type Circle = ((f64, f64), f64);

fn outside((centre, r): Circle, p: (f64, f64)) -> bool {
    const SLACK: f64 = 1e-9;
    (p.0 - centre.0).hypot(p.1 - centre.1) > r + SLACK
}

fn with_one(points: &[(f64, f64)], rim: (f64, f64)) -> Circle {
    let mut circle = (rim, 0.0);
    for (i, &p) in points.iter().enumerate() {
        if outside(circle, p) {
            circle = with_two(&points[..i], rim, p);
        }
    }
    circle
}

fn with_two(points: &[(f64, f64)], a: (f64, f64), b: (f64, f64)) -> Circle {
    let centre = (f64::midpoint(a.0, b.0), f64::midpoint(a.1, b.1));
    let mut circle = (centre, (a.0 - b.0).hypot(a.1 - b.1) / 2.0);
    for &p in points {
        if outside(circle, p) {
            circle = through(a, b, p).unwrap_or(circle);
        }
    }
    circle
}

/// The circle through three points, unless they stand in a line.
fn through(a: (f64, f64), b: (f64, f64), c: (f64, f64)) -> Option<Circle> {
    let (bx, by, cx, cy) = (b.0 - a.0, b.1 - a.1, c.0 - a.0, c.1 - a.1);
    let twice = 2.0 * (bx * cy - by * cx);
    if twice.abs() < 1e-12 {
        return None;
    }
    let (bb, cc) = (bx * bx + by * by, cx * cx + cy * cy);
    let (x, y) = ((cy * bb - by * cc) / twice, (bx * cc - cx * bb) / twice);
    Some(((a.0 + x, a.1 + y), x.hypot(y)))
}
