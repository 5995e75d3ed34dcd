use super::{Profile, Section};
use crate::number::quadrature::steep_nodes;

/// What bending needs to know of a section, in mm about its own centroid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Properties {
    /// Area, mm².
    pub area_mm2: f64,
    /// Centroid above the box's centre, mm (towards the outside of the half).
    pub centroid_mm: f64,
    /// Second moment for bending in the side view, mm⁴.
    pub side_mm4: f64,
    /// Second moment for bending in the top view, mm⁴.
    pub top_mm4: f64,
    /// Centroid to the outer fibre in the side view, mm.
    pub outer_mm: f64,
    /// Centroid to the inner fibre in the side view, mm.
    pub inner_mm: f64,
    /// Centroid to the side, in the top view, mm.
    pub half_width_mm: f64,
}

/// Area and moments about the middle of the box, in the units of the surfaces given.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Moments {
    /// `∫ dA`.
    pub(super) area: f64,
    /// `∫ v dA`.
    first: f64,
    /// `∫ v² dA`.
    side: f64,
    /// `∫ u² dA`.
    top: f64,
}

impl Moments {
    /// Of the shape between two surfaces `(lower, upper)` over u, smooth between `breaks`.
    pub(super) fn of(breaks: &[f64], surfaces: impl Fn(f64) -> (f64, f64)) -> Self {
        let mut sum = Self::default();
        for pair in breaks.windows(2) {
            for (u, weight) in steep_nodes(pair[0], pair[1]) {
                let (low, up) = surfaces(u);
                let deep = up - low;
                sum.area += weight * deep;
                sum.first += weight * deep * (up + low) / 2.0;
                sum.side += weight * deep * (up * up + up * low + low * low) / 3.0;
                sum.top += weight * deep * u * u;
            }
        }
        sum
    }
}

impl Moments {
    /// The sum of some moments, each so many times.
    fn sum(parts: [(f64, Self); 4]) -> Self {
        let mut sum = Self::default();
        for (times, m) in parts {
            sum.area += times * m.area;
            sum.first += times * m.first;
            sum.side += times * m.side;
            sum.top += times * m.top;
        }
        sum
    }
}

/// The moments of every blend of two profiles, from four of them.
///
/// The surfaces of a blend go straight from one profile's to the other's, so its area and top
/// moment are linear in the blend, its first moment is quadratic and its side moment cubic: the
/// cubic through blends of 0, 1/3, 2/3 and 1 is exact.
#[derive(Debug, Clone)]
struct Blends<'a> {
    ends: [&'a Profile; 2],
    thirds: [Moments; 4],
}

impl<'a> Blends<'a> {
    fn of(from: &'a Profile, to: &'a Profile) -> Self {
        let between = |blend: f64| {
            let unit = Section {
                depth: 2.0,
                width: 2.0,
                from,
                to,
                blend,
            };
            unit.unit_moments()
        };
        Self {
            ends: [from, to],
            thirds: [
                from.moments(),
                between(1.0 / 3.0),
                between(2.0 / 3.0),
                to.moments(),
            ],
        }
    }

    fn is_of(&self, section: &Section<'_>) -> bool {
        std::ptr::eq(self.ends[0], section.from) && std::ptr::eq(self.ends[1], section.to)
    }

    /// Lagrange's cubic through the four.
    fn at(&self, t: f64) -> Moments {
        let [a, b, c] = [3.0 * t - 1.0, 3.0 * t - 2.0, t - 1.0];
        let weights = [
            -a * b * c / 2.0,
            9.0 * t * b * c / 2.0,
            -9.0 * t * a * c / 2.0,
            t * a * b / 2.0,
        ];
        let [w0, w1, w2, w3] = weights;
        let [m0, m1, m2, m3] = self.thirds;
        Moments::sum([(w0, m0), (w1, m1), (w2, m2), (w3, m3)])
    }
}

/// Properties of many sections that blend the same few profiles: each pair is integrated once.
#[derive(Debug, Clone, Default)]
pub struct Known<'a> {
    blends: Vec<Blends<'a>>,
}

impl<'a> Known<'a> {
    /// The properties of a section, as [`Section::properties`] has them.
    pub fn properties(&mut self, section: &Section<'a>) -> Properties {
        let pure = section.blend == 0.0 || section.blend == 1.0;
        if pure || std::ptr::eq(section.from, section.to) {
            return section.properties();
        }
        let known = self.blends.iter().position(|known| known.is_of(section));
        let at = known.unwrap_or_else(|| {
            self.blends.push(Blends::of(section.from, section.to));
            self.blends.len() - 1
        });
        section.with_moments(self.blends[at].at(section.blend))
    }

    /// The centroid of a section above its box's centre, mm.
    pub fn centroid_mm(&mut self, section: &Section<'a>) -> f64 {
        if section.from.even() && section.to.even() {
            return 0.0;
        }
        self.properties(section).centroid_mm
    }
}

impl Section<'_> {
    /// Area, centroid, second moments and extreme fibres: from the profile's own moments, or for
    /// a blend of two profiles integrated piece by piece to about 1e-9 of their value.
    pub fn properties(&self) -> Properties {
        self.with_moments(self.unit_moments())
    }

    fn with_moments(&self, m: Moments) -> Properties {
        let (half_depth, half_width) = (self.depth / 2.0, self.width / 2.0);
        let area = m.area.max(f64::MIN_POSITIVE);
        let centroid = m.first / area;
        let side = (m.side - m.first * centroid).max(0.0);
        Properties {
            area_mm2: area * half_depth * half_width,
            centroid_mm: centroid * half_depth,
            side_mm4: side * half_depth.powi(3) * half_width,
            top_mm4: m.top * half_depth * half_width.powi(3),
            outer_mm: half_depth * (1.0 - centroid),
            inner_mm: half_depth * (1.0 + centroid),
            half_width_mm: half_width,
        }
    }

    /// The centroid above the box's centre, mm.
    pub fn centroid_mm(&self) -> f64 {
        if self.from.even() && self.to.even() {
            return 0.0;
        }
        let m = self.unit_moments();
        m.first / m.area.max(f64::MIN_POSITIVE) * self.depth / 2.0
    }

    /// Moments in the unit box.
    fn unit_moments(&self) -> Moments {
        if self.blend == 0.0 || std::ptr::eq(self.from, self.to) {
            return self.from.moments();
        }
        if self.blend == 1.0 {
            return self.to.moments();
        }
        let unit = Self {
            depth: 2.0,
            width: 2.0,
            ..*self
        };
        Moments::of(&unit.breaks(), |u| (unit.lower(u), unit.upper(u)))
    }
}

impl Properties {
    /// Least section modulus for bending in the side view, mm³.
    pub fn side_modulus_mm3(&self) -> f64 {
        self.side_mm4 / self.outer_mm.max(self.inner_mm)
    }
}
