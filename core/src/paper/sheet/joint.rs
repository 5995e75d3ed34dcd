//! Where two parts of a block meet, and what the marks there take.

use kurbo::Rect;

/// What a mark of two parts takes with its lettering: above, below and to both sides, mm.
pub(super) const MARK_ABOVE: f64 = 3.4;
pub(super) const MARK_BELOW: f64 = 2.8;
pub(super) const MARK_BESIDE: f64 = 19.0;

/// Where two parts of a block meet.
#[derive(Debug, Clone, Copy)]
pub(super) struct Joint {
    /// The line along which one of them is cut, x in the drawing's coordinates.
    pub(super) at: f64,
    /// How high its two marks stand, the lower first.
    pub(super) marks: [f64; 2],
    /// The left and the right part.
    pub(super) parts: [usize; 2],
}

impl Joint {
    /// What its marks cover with their lettering, and its line.
    pub(super) fn boxes(&self) -> [Rect; 3] {
        /// Past every drawing, mm, and kept free beside the line to cut along.
        const FAR: f64 = 1e5;
        const OFF: f64 = 1.0;
        let [low, high] = self.marks.map(|y| {
            Rect::new(
                self.at - MARK_BESIDE,
                y - MARK_BELOW,
                self.at + MARK_BESIDE,
                y + MARK_ABOVE,
            )
        });
        let line = Rect::new(self.at - OFF, -FAR, self.at + OFF, FAR);
        [low, high, line]
    }
}
