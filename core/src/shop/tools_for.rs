//! The tools that make a pair, with their sizes taken from it.

use crate::asked::{Bar, Hole, Stock, Work};
use crate::finding::Part;
use crate::forge::balance::PUNCH_TO_HOLE;
use crate::steel::Steel;
use crate::tongs::document::{Document, HeadSolid};
use crate::tongs::jaw::JawKind;
use crate::tool::{
    BottomSwage, Drift, Groove, Hardy, Mount, RivetSet, RoundPunch, Shape, Tool, ToolKind,
    ToolStyle,
};
use crate::units::{Angle, Length, MM_PER_INCH, Unit};

/// Bar that every shop sells, by the unit of the design, mm: from the slimmest up.
const INCHES: [f64; 9] = [0.375, 0.5, 0.625, 0.75, 0.875, 1.0, 1.25, 1.5, 2.0];
const MILLIMETRES: [f64; 9] = [10.0, 12.0, 16.0, 20.0, 22.0, 25.0, 30.0, 40.0, 50.0];

/// The hardy hole of a common anvil: 1 in or 25 mm (common practice, no source: the smith measures it).
const HARDY_MM: (f64, f64) = (MM_PER_INCH, 25.0);

/// A tool of a pair, and what it is to the pair in one word.
pub type ToolFor = (&'static str, Tool);

/// Punch, drift and rivet set for a pair, and the swage for its bits where they are round or folded to a V. A
/// drilled hole wants neither punch nor drift, and a flat head no set.
pub fn tools_for(pair: &Document) -> Vec<ToolFor> {
    let mut all = Vec::new();
    if pair.rivet.made == Hole::Punched {
        all.push(("punch", punch(pair)));
        all.push(("drift", drift(pair)));
    }
    all.extend(set(pair).map(|own| ("rivet-set", own)));
    all.extend(swage(pair).map(|own| ("swage", own)));
    all.extend(vee(pair).map(|own| ("v-block", own)));
    all
}

/// What the tools of a pair are measured in.
struct From<'a> {
    pair: &'a Document,
    unit: Unit,
}

impl<'a> From<'a> {
    fn new(pair: &'a Document) -> Self {
        Self {
            pair,
            unit: pair.units.unit(),
        }
    }

    fn size(&self, mm: f64) -> Length {
        Length::measured(mm, self.unit)
    }

    /// The next bar that is sold of so much or more.
    fn sold(&self, least_mm: f64) -> Length {
        let (sizes, by) = match self.unit {
            Unit::Inch | Unit::Foot => (INCHES, MM_PER_INCH),
            Unit::Millimetre | Unit::Centimetre => (MILLIMETRES, 1.0),
        };
        /// What a size may be off by reckoning, mm.
        const HAIR: f64 = 1e-6;
        let found = sizes
            .into_iter()
            .map(|own| own * by)
            .find(|own| *own >= least_mm - HAIR);
        self.size(found.unwrap_or(least_mm))
    }

    fn round(&self, least_mm: f64, steel: Steel) -> Bar {
        Bar {
            stock: Stock::Round {
                diameter: self.sold(least_mm),
            },
            steel,
        }
    }

    fn square(&self, least_mm: f64, steel: Steel) -> Bar {
        Bar {
            stock: Stock::Square {
                side: self.sold(least_mm),
            },
            steel,
        }
    }

    /// A tool of the pair, called after it.
    fn tool(&self, what: &str, bar: Bar, shape: Shape) -> Tool {
        let mut tool = Tool::starting(shape.style.kind(), self.size(bar.stock.size().mm()), bar);
        tool.name = format!("{}: {what}", self.pair.name)
            .chars()
            .take(200)
            .collect();
        tool.units = self.pair.units;
        tool.projection = self.pair.projection;
        tool.shape = shape;
        tool
    }
}

/// The slug that is knocked out, before the drift opens the hole.
fn slug_mm(pair: &Document) -> f64 {
    PUNCH_TO_HOLE * pair.rivet.hole.mm()
}

/// A longer taper bends in the hole (judgement), mm.
const LONGEST_TAPER_MM: f64 = 150.0;

fn punch(pair: &Document) -> Tool {
    let from = From::new(pair);
    let (slug, through) = (slug_mm(pair), pair.boss.thickness.mm());
    let bar = from.round((2.0 * slug).max(15.0), Steel::ToolH13);
    // Sunk right through, it opens no more than the drift is to make of it.
    let grows = (bar.stock.size().mm() - slug) / (pair.rivet.hole.mm() - slug);
    let mut shape = Shape::suited(ToolKind::RoundPunch, from.size(slug), &bar);
    shape.style = ToolStyle::RoundPunch(RoundPunch {
        end: from.size(slug),
        taper: from.size((grows.max(1.3) * through).clamp(12.0, LONGEST_TAPER_MM)),
        through: from.size(through),
    });
    from.tool("punch", bar, shape)
}

fn drift(pair: &Document) -> Tool {
    let from = From::new(pair);
    let (hole, through) = (pair.rivet.hole.mm(), pair.boss.thickness.mm());
    let bar = from.round(hole, Steel::ToolH13);
    let mut shape = Shape::suited(ToolKind::Drift, from.size(hole), &bar);
    let enters = 0.8 * slug_mm(pair);
    // One in twelve.
    let (lead, full, back) = (12.0 * (hole - enters), 0.75 * through, 0.5 * through);
    let drift = Drift {
        size: pair.rivet.hole,
        enters: from.size(enters),
        lead: from.size(lead),
        full: from.size(full),
        back: from.size(back),
        hole: from.size(slug_mm(pair)),
        through: from.size(through),
        section: crate::tool::DriftSection::Round,
        narrow: from.size(0.65 * hole),
    };
    shape.style = ToolStyle::Drift(drift);
    if let Mount::Struck(struck) = &mut shape.mount {
        struck.length = from.size(lead + full + back + through + 0.5 * hole + 12.0);
    }
    from.tool("drift", bar, shape)
}

fn set(pair: &Document) -> Option<Tool> {
    match pair.rivet.head.shape().solid {
        HeadSolid::Cap => {}
        HeadSolid::Disc | HeadSolid::Cone => return None,
    }
    let from = From::new(pair);
    let bar = from.round(1.4 * pair.rivet.head_across_mm(), Steel::Alloy4140);
    let mut shape = Shape::suited(ToolKind::RivetSet, pair.rivet.diameter, &bar);
    let rivet = from.size(pair.rivet.diameter.mm());
    shape.style = ToolStyle::RivetSet(RivetSet::of(rivet, pair.rivet.head, &bar));
    if let Mount::Struck(struck) = &mut shape.mount {
        struck.length = from.size(250.0);
    }
    Some(from.tool("rivet set", bar, shape))
}

/// The groove over which round bits are shaped.
fn swage(pair: &Document) -> Option<Tool> {
    let Work::Round { diameter, .. } = pair.work else {
        return None;
    };
    let from = From::new(pair);
    let groove = from.size(diameter.mm());
    let is_round = bits(pair).any(|(_, kind)| kind == JawKind::HollowBit);
    is_round.then(|| block(&from, (Groove::Round, groove), "swage for its bits"))
}

/// The V in which V bits are folded: as wide at its top as the bit is outside, lip to lip.
fn vee(pair: &Document) -> Option<Tool> {
    let (part, _) = bits(pair).find(|(_, kind)| *kind == JawKind::VBit)?;
    let fields = pair.fields();
    let its = |name: &str| {
        let mut own = fields.iter().filter(|field| field.part == part);
        own.find(|field| field.path.rsplit('.').next() == Some(name))
            .and_then(|field| field.value.number())
    };
    let (leg, wall, degrees) = (its("leg")?, its("wall")?, its("angle")?);
    let half = degrees.to_radians() / 2.0;
    // Outside, a leg is longer by what the wall takes at the ridge.
    let across = 2.0 * (leg + wall / half.tan()) * half.sin();
    let from = From::new(pair);
    let angle = Angle::degrees(degrees);
    Some(block(
        &from,
        (Groove::Vee { angle }, from.size(across)),
        "V block for its bits",
    ))
}

/// What grips in each jaw of a pair, by the jaw's part.
fn bits(pair: &Document) -> impl Iterator<Item = (Part, JawKind)> {
    let second = pair.second_jaw.as_ref().map(|jaw| (Part::SecondJaw, jaw));
    let jaws = [Some((Part::Jaw, &pair.jaw)), second].into_iter().flatten();
    jaws.map(|(part, jaw)| (part, jaw.style.bit().unwrap_or(jaw.kind())))
}

/// A swage with a groove, for the common hardy hole.
fn block(from: &From<'_>, (shape, groove): (Groove, Length), what: &str) -> Tool {
    let hole = from.size(match from.unit {
        Unit::Inch | Unit::Foot => HARDY_MM.0,
        Unit::Millimetre | Unit::Centimetre => HARDY_MM.1,
    });
    let swage = BottomSwage::sunk(shape, groove, hole);
    // No more than a fifth of the block's section is to be upset.
    let least = (swage.wide.mm() * swage.long.mm() / 1.2).sqrt();
    let bar = from.square(least.max(1.3 * hole.mm()), Steel::Carbon1045);
    let mut block = Hardy::suited(hole, &bar);
    block.block_thick = swage.wide;
    block.block_long = swage.long;
    let shape = Shape {
        style: ToolStyle::BottomSwage(swage),
        mount: Mount::Hardy(block),
    };
    from.tool(what, bar, shape)
}
