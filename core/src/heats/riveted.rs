//! The riveted pair, whose necks are heated to close the jaws on the work: what lets both heads in.

use super::entry::{AtOnce, Entry, Need, Room, WhyNot, entry};
use super::source::Sources;
use super::stand::Stand;
use crate::finding::Part;
use crate::tongs::model::Model;
use crate::units::Show;

/// The riveted pair with what each source makes of it.
#[derive(Debug, Clone)]
pub struct Riveted {
    /// Both halves, as far as the section of one meets the other.
    pub stand: Stand,
    /// The necks, mm from the tip.
    pub needs_mm: (f64, f64),
    /// Whether they come into each source, in the order of the sources.
    pub offers: Vec<Result<Entry, WhyNot>>,
}

/// Looks at the pair, set on its work, with every source.
pub fn riveted(model: &Model, shop: &Sources) -> Riveted {
    let pieces = model.pieces();
    let (a, b) = (&pieces[0], pieces.last().unwrap_or(&pieces[0]));
    let beside = Stand::of(b).turned();
    let stand = Stand::of(a).with(&beside);
    let mut from = 0.0;
    let mut needs_mm = (0.0, 0.0);
    for stretch in &a.stretches {
        let to = from + stretch.length_mm();
        if stretch.part == Part::Neck {
            needs_mm = (from, to);
        }
        from = to;
    }
    let need = Need {
        from_to_mm: needs_mm,
        at_once: AtOnce::Whole,
    };
    let tried = shop.sources.iter().map(|source| {
        let room = Room::of(source, &shop.smith);
        entry(&stand, &room, need)
    });
    Riveted {
        offers: tried.collect(),
        stand,
        needs_mm,
    }
}

impl Riveted {
    /// What it says, a sentence each without a period: which sources take the pair, or what would.
    pub fn words(&self, shop: &Sources, show: Show) -> Vec<String> {
        let all = self.offers.iter().zip(&shop.sources);
        let said = all.map(|(offer, source)| match offer {
            Ok(own) => format!("{}: goes in, {}", source.name, own.words()),
            Err(why) => format!("{}: {}", source.name, why.words(show)),
        });
        let mut said: Vec<String> = said.collect();
        if !self.offers.iter().any(Result::is_ok) {
            said.push(
                "the riveted pair wants an open fire, or a coil that is open at the side"
                    .to_owned(),
            );
        }
        said
    }
}
