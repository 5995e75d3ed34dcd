//! A half as what it is to the bar: a piece.

use std::borrow::Cow;
use std::sync::Arc;

use crate::finding::Part;
use crate::shape::{Hole, Mass, Opening, Piece, PieceMark, Solid, Stretch};

use super::model::{Half, Model, PARTS};

/// Places in [`PARTS`].
const JAW: usize = 0;
const BOSS: usize = 2;

/// The smith makes two marks: where the jaw ends, and where the boss ends. The first set-down is
/// at the jaw's mark and leaves the neck on the boss's side of it; the third is at the boss's mark
/// and thins what follows. So the neck is counted with the boss, and the shoulder with the rein.
const MARKS: [PieceMark; 2] = [
    PieceMark {
        after: JAW,
        what: "jaw | neck and boss",
        reversed: "boss and neck | jaw",
    },
    PieceMark {
        after: BOSS,
        what: "boss | shoulder and rein",
        reversed: "shoulder and rein | boss",
    },
];

impl Model {
    /// What is forged for the pair: one piece wanted twice, or two where the jaws differ.
    pub fn pieces(&self) -> Vec<Piece> {
        let [a, b] = self.part_masses();
        if self.alike {
            return vec![self.a.piece(("half", 2), Part::Jaw, a)];
        }
        vec![
            self.a.piece(("half A", 1), Part::Jaw, a),
            self.b.piece(("half B", 1), Part::SecondJaw, b),
        ]
    }
}

impl Half {
    /// The half from jaw tip to rein end.
    fn piece(&self, (name, wanted): (&'static str, u32), jaw: Part, masses: &[Mass; 5]) -> Piece {
        let plate = Arc::new(self.body.plate.clone());
        let edge = self.body.rim.half_along();
        let runs = [
            (
                Solid::Swept(Arc::new(self.jaw.clone())),
                self.jaw.length(),
                0.0,
            ),
            (Solid::Plated(Arc::clone(&plate)), self.heel(), edge),
            (Solid::Plated(Arc::clone(&plate)), edge, -edge),
            (Solid::Plated(plate), -edge, self.rein_start().x),
            (
                Solid::Swept(Arc::new(self.rein.clone())),
                0.0,
                self.rein.length(),
            ),
        ];
        let stretches = PARTS.into_iter().zip(runs).zip(masses);
        let hole = self.body.plate.hole_mass();
        Piece {
            name: Cow::Borrowed(name),
            wanted,
            stretches: stretches
                .map(|((part, (solid, from, to)), mass)| Stretch {
                    part: if part == Part::Jaw { jaw } else { part },
                    solid,
                    from,
                    to,
                    mass: *mass,
                })
                .collect(),
            holes: vec![Hole {
                stretch: BOSS,
                opening: Opening::Rivet {
                    diameter_mm: 2.0 * self.body.plate.hole_radius,
                },
                volume_mm3: hole.volume,
            }],
            marks: MARKS.into(),
            dressed: JAW,
        }
    }
}
