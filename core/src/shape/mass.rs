/// Volume and first moments.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Mass {
    /// mm³.
    pub volume: f64,
    /// About x = 0, mm⁴.
    pub x: f64,
    /// About y = 0, mm⁴.
    pub y: f64,
}

impl Mass {
    /// Of several bodies together.
    pub fn sum(all: &[Self]) -> Self {
        let together = |sum: Self, one: &Self| Self {
            volume: sum.volume + one.volume,
            x: sum.x + one.x,
            y: sum.y + one.y,
        };
        all.iter().fold(Self::default(), together)
    }

    /// With something taken out.
    #[must_use]
    pub fn without(self, out: Self) -> Self {
        Self {
            volume: self.volume - out.volume,
            x: self.x - out.x,
            y: self.y - out.y,
        }
    }
}
