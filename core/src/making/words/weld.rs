//! A rein that is welded on.

use super::super::sections::rod;
use super::super::step::scarf;
use super::{Told, Words, words};

impl Told<'_> {
    pub(super) fn draw_stub(&self) -> Words {
        let rod = rod(self.task);
        words(
            format!(
                "Draw the stub out to {} square at its end",
                self.size(rod.depth)
            ),
            format!("{} at its end", self.size(rod.depth)),
            &[],
        )
    }

    pub(super) fn gather(&self) -> Words {
        let (rod, (long, _)) = (rod(self.task), scarf(self.task));
        words(
            format!(
                "Upset the end of the {} round rod and scarf it and the stub, {} long, along the side",
                self.size(rod.depth),
                self.size(long)
            ),
            format!("both scarfs {} long and crowned", self.size(long)),
            &["A scarf across the opening peels when the tongs are squeezed"],
        )
    }

    pub(super) fn weld(&self) -> Words {
        words(
            format!("Weld the rod on over {}", self.size(scarf(self.task).0)),
            "no seam is seen; draw it down to size at once".to_owned(),
            &[
                "Sparks are burnt steel: it is scrap",
                "Flux and scale fly at the first blow: face and arms covered",
            ],
        )
    }
}
