use super::section::lerp;

/// A stretch of x over which the faces go from one place to another.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Blend {
    /// The end at the boss, x in mm.
    pub boss: f64,
    /// The far end, x in mm.
    pub far: f64,
    /// Half the width at the far end, mm; the far end is centred on z = 0.
    pub half_width: f64,
    /// Fullness of the section at the far end.
    pub fullness: f64,
}

/// The two faces of a body in the top view: from 0 to the boss's thickness at the boss, centred
/// at the jaw and the rein, level where they begin and end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Faces {
    /// Thickness of the boss, mm.
    pub thickness: f64,
    /// Toward the jaw.
    pub neck: Blend,
    /// Toward the rein.
    pub shoulder: Blend,
}

impl Faces {
    /// How far the change has gone at x, and towards which end.
    fn progress(&self, x: f64) -> (f64, &Blend) {
        let blend = if x >= 0.0 { &self.neck } else { &self.shoulder };
        let t = ((x - blend.boss) / (blend.far - blend.boss)).clamp(0.0, 1.0);
        (t * t * (3.0 - 2.0 * t), blend)
    }

    /// Lower and upper z at x, mm.
    pub fn at(&self, x: f64) -> (f64, f64) {
        let (s, blend) = self.progress(x);
        (
            lerp(0.0, -blend.half_width, s),
            lerp(self.thickness, blend.half_width, s),
        )
    }

    /// Fullness of the section at x: 1 where it is a plain rectangle.
    pub fn fullness(&self, x: f64) -> f64 {
        let (s, blend) = self.progress(x);
        lerp(1.0, blend.fullness, s)
    }

    /// How far the section has gone from the rectangle to the far end's own, 0 to 1.
    pub fn blend(&self, x: f64) -> f64 {
        self.progress(x).0
    }

    /// Thickness at x times fullness, mm.
    pub fn full_thickness(&self, x: f64) -> f64 {
        let (low, high) = self.at(x);
        (high - low) * self.fullness(x)
    }

    /// Thickness of the boss, mm.
    pub fn boss_thickness(&self) -> f64 {
        self.thickness
    }

    /// Where the faces change their law, x in mm.
    pub fn cuts(&self) -> [f64; 4] {
        [
            self.shoulder.far,
            self.shoulder.boss,
            self.neck.boss,
            self.neck.far,
        ]
    }
}
