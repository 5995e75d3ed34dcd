//! The bars that a pair can be forged from, and what each of them comes to.

use super::Answers;
use super::start::usual_bars;
use crate::asked::Bar;
use crate::finding::Severity;
use crate::steel::DENSITY_KG_MM3;
use crate::tongs::document::Document;
use crate::units::Length;

/// A bar that is offered, and what comes of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Offer {
    /// The bar.
    pub bar: Bar,
    /// The pair from it; or why there is none, in one sentence.
    pub pair: Result<Box<Offered>, String>,
}

/// A pair from a bar that is offered.
#[derive(Debug, Clone, PartialEq)]
pub struct Offered {
    /// The pair.
    pub pair: Document,
    /// The length of bar to cut for it, up to the mark of a rule.
    pub cut: Length,
    /// Mass of that length, kg.
    pub bar_kg: f64,
    /// Mass of the finished pair, kg.
    pub pair_kg: f64,
    /// The worst that is to be said of it, if it is not sound.
    pub worst: Option<(Severity, String)>,
}

/// The bars to offer beside the usual one: that first, then those that merchants keep, in its unit
/// and steel, those first whose area is nearest to its: twice it is as near as half of it.
pub fn bars_to_offer(usual: &Bar) -> Vec<Bar> {
    let mut others = usual_bars(usual);
    others.retain(|bar| bar.stock != usual.stock);
    let far = |bar: &Bar| (bar.stock.area_mm2() / usual.stock.area_mm2()).ln().abs();
    others.sort_by(|a, b| far(a).total_cmp(&far(b)));
    std::iter::once(*usual).chain(others).collect()
}

impl Offer {
    /// What comes of a bar from which this pair was begun, or of one that gives none.
    pub fn of(bar: Bar, begun: Result<Document, String>) -> Self {
        let pair = begun.map(|pair| Box::new(Offered::of(pair)));
        Self { bar, pair }
    }

    /// Whether a pair in which nothing is to be mended comes of it.
    pub fn is_sound(&self) -> bool {
        self.pair.as_ref().is_ok_and(|of| of.worst.is_none())
    }
}

impl Offered {
    fn of(pair: Document) -> Self {
        let answers = Answers::to(&pair);
        let worst = answers.findings.first();
        let worst = worst.filter(|finding| finding.severity >= Severity::Mend);
        let cut = answers.balance.cut_length(pair.units);
        Self {
            cut,
            bar_kg: cut.mm() * pair.bar.stock.area_mm2() * DENSITY_KG_MM3,
            pair_kg: answers.model.mass_kg(),
            worst: worst.map(|finding| (finding.severity, finding.message.clone())),
            pair,
        }
    }
}
