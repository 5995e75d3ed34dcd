/// Diameter of the smallest circle around all points, mm; zero for none.
///
/// A few points hold it: it begins with those that lie farthest in eight directions, and the one
/// farthest out of the circle so far is taken to them until none is out. Each circle is larger than
/// the one before, so that this comes to an end soon, however many points there are.
pub fn smallest_circle_mm(points: &[(f64, f64)]) -> f64 {
    2.0 * circle_around(points).1.max(0.0)
}

fn circle_around(points: &[(f64, f64)]) -> Circle {
    let mut holding = farthest_each_way(points);
    let mut circle = around(&holding);
    while let Some(farthest) = farthest_outside(circle, points) {
        if holding.contains(&farthest) {
            // It is out by rounding alone.
            break;
        }
        holding.push(farthest);
        circle = around(&holding);
    }
    circle
}

/// The points that lie farthest along and across, and aslant between; each once.
fn farthest_each_way(points: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let Some(&first) = points.first() else {
        return Vec::new();
    };
    let along = |(x, y): (f64, f64)| [x, y, x + y, x - y];
    let mut least = [first; 4];
    let mut most = [first; 4];
    let (mut low, mut high) = (along(first), along(first));
    for &p in points {
        for (i, far) in along(p).into_iter().enumerate() {
            if far < low[i] {
                (low[i], least[i]) = (far, p);
            } else if far > high[i] {
                (high[i], most[i]) = (far, p);
            }
        }
    }
    let mut each: Vec<(f64, f64)> = Vec::with_capacity(8);
    for p in least.into_iter().chain(most) {
        if !each.contains(&p) {
            each.push(p);
        }
    }
    each
}

/// The smallest circle around points that come in groups: what a piece needs the farther it goes in.
#[derive(Debug, Clone, Default)]
pub struct Growing {
    /// Each group with its own circle: a group whose circle lies inside is not looked at again.
    groups: Vec<(Vec<(f64, f64)>, Circle)>,
    holding: Vec<(f64, f64)>,
    circle: Option<Circle>,
}

impl Growing {
    /// Takes a group in; its diameter is then that of the circle around it alone, mm.
    pub fn add(&mut self, points: Vec<(f64, f64)>) -> f64 {
        // Along plain bar each group is as the one before.
        let before = self.groups.last().filter(|(before, _)| *before == points);
        let own = before.map_or_else(|| circle_around(&points), |&(_, own)| own);
        self.take((points, own));
        2.0 * own.1.max(0.0)
    }

    /// The diameters of the circles around its groups as they come from the last to the first, mm, the
    /// first of them that of the last group alone.
    pub fn backward_mm(self) -> Vec<f64> {
        let mut grown = Self::default();
        let groups = self.groups.into_iter().rev();
        groups
            .map(|group| {
                grown.take(group);
                grown.diameter_mm()
            })
            .collect()
    }

    /// Takes a group in whose own circle is known.
    fn take(&mut self, group: (Vec<(f64, f64)>, Circle)) {
        let mut circle = self.circle.unwrap_or(NOTHING);
        // All that came before lies inside already.
        let inside = farthest_outside(circle, &group.0).is_none();
        self.groups.push(group);
        if inside {
            return;
        }
        while let Some(farthest) = self.outside(circle) {
            if self.holding.contains(&farthest) {
                // It is out by rounding alone.
                break;
            }
            self.holding.push(farthest);
            circle = around(&self.holding);
        }
        self.holding.retain(|&p| on_rim(circle, p));
        self.circle = Some(circle);
    }

    /// The middle of the circle around all that was taken in; the origin before anything was.
    pub fn centre(&self) -> (f64, f64) {
        self.circle.map_or((0.0, 0.0), |circle| circle.0)
    }

    /// The circle around all that was taken in, mm across.
    pub fn diameter_mm(&self) -> f64 {
        2.0 * self.circle.map_or(0.0, |circle| circle.1.max(0.0))
    }

    fn outside(&self, circle: Circle) -> Option<(f64, f64)> {
        let (centre, r) = circle;
        let reaches = |own: &Circle| beyond((centre, r - own.1), own.0);
        let groups = self.groups.iter().filter(|(_, own)| reaches(own));
        let far = |p: &(f64, f64)| (p.0 - centre.0).powi(2) + (p.1 - centre.1).powi(2);
        let farthest = groups.filter_map(|(points, _)| farthest_outside(circle, points));
        farthest.max_by(|a, b| far(a).total_cmp(&far(b)))
    }
}

fn on_rim((centre, r): Circle, p: (f64, f64)) -> bool {
    const NEAR: f64 = 1e-6;
    beyond((centre, r - NEAR), p)
}

/// Whether a point lies outside of a circle, by squares; of one that is smaller than nothing all points do.
fn beyond((centre, r): Circle, p: (f64, f64)) -> bool {
    r < 0.0 || (p.0 - centre.0).powi(2) + (p.1 - centre.1).powi(2) > r * r
}

type Circle = ((f64, f64), f64);

/// Every point is outside of it.
const NOTHING: Circle = ((0.0, 0.0), -1.0);

fn farthest_outside(circle: Circle, points: &[(f64, f64)]) -> Option<(f64, f64)> {
    let (x, y) = circle.0;
    let mut farthest = (f64::NEG_INFINITY, None);
    for &p in points {
        let far = (p.0 - x).powi(2) + (p.1 - y).powi(2);
        if far > farthest.0 {
            farthest = (far, Some(p));
        }
    }
    farthest.1.filter(|&p| outside(circle, p))
}

/// The smallest circle around a few points, by incremental construction (textbook computational
/// geometry): a point outside the circle so far must lie on the rim of the next.
fn around(points: &[(f64, f64)]) -> Circle {
    let mut circle = NOTHING;
    for (i, &p) in points.iter().enumerate() {
        if outside(circle, p) {
            circle = with_one(&points[..i], p);
        }
    }
    circle
}

fn outside((centre, r): Circle, p: (f64, f64)) -> bool {
    const SLACK: f64 = 1e-9;
    beyond((centre, r + SLACK), p)
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
    let mut circle = (centre, long(a.0 - b.0, a.1 - b.1) / 2.0);
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
    Some(((a.0 + x, a.1 + y), long(x, y)))
}

/// The length of a way: sizes in mm are in no danger that would want `hypot`, which is slower.
fn long(x: f64, y: f64) -> f64 {
    (x * x + y * y).sqrt()
}
