//! What is printed of a set besides its table and its contents, which differs between pairs and tools.

use reinwright_core::draw::{self, DrawOptions, breaks};
use reinwright_core::finding::Finding;
use reinwright_core::paper::ink::Date;
use reinwright_core::paper::{Drawing, SetSheet, Sheet, Stretch, TitleBlock};
use reinwright_core::shop::family::sheet::{self, InTable};
use reinwright_core::shop::family::{Family, InSizes, SizeAnswer, ToolSizeAnswer};
use reinwright_core::tongs::document::Document;
use reinwright_core::tool::Tool;

use super::Wanted;
use crate::jobs::sheets::{self, Of};
use crate::jobs::what::What;
use crate::jobs::{printing, tool_sheets};

/// A drawing with its name.
pub type NamedDrawing = (&'static str, Drawing);

/// A family with the answers to its sizes.
pub type Set<'a, D> = (&'a Family<D>, &'a [<D as InSizes>::Answer]);

/// What can be printed as a set.
pub trait InSet: InTable {
    /// What a title block says of one, with what was noticed of it.
    fn title_block(&self, findings: &[Finding], day: Option<Date>) -> TitleBlock;

    /// The sheets of the whole set that come behind its tables.
    fn of_the_set(set: Set<'_, Self>, wanted: &Wanted) -> Vec<Sheet>;

    /// The sheets that are wanted of one size.
    fn drawn(answer: &Self::Answer, what: &What, title: &TitleBlock) -> Vec<SetSheet>;

    /// The sheet of its bar; `None` where no bar can be reckoned.
    fn bar_of(answer: &Self::Answer) -> Option<Sheet>;

    /// Whether two sizes have the same rein, which is then drawn once.
    fn rein_is_like(one: &Self::Answer, other: &Self::Answer) -> bool;

    /// The drawings of the whole set besides its table.
    fn set_pictures(set: Set<'_, Self>, wanted: &Wanted) -> Vec<NamedDrawing>;

    /// The drawings of one size.
    fn pictures(answer: &Self::Answer) -> Vec<NamedDrawing>;
}

/// Pictures that each stand under the name of their size.
fn reduced(name: &str, reduced: u32, drawing: Drawing) -> Sheet {
    Sheet {
        reduced,
        ..Sheet::full_size(name, drawing).named_in_title_block()
    }
}

impl InSet for Document {
    fn title_block(&self, findings: &[Finding], day: Option<Date>) -> TitleBlock {
        printing::title_block(self, findings, day)
    }

    fn of_the_set((family, answers): Set<'_, Self>, wanted: &Wanted) -> Vec<Sheet> {
        let ranges = sheet::ranges(family, answers, wanted.order.pairs_of_each, &wanted.stock);
        let side = sheet::reduction(&sheet::strip(answers, 1), sheet::ROOM);
        vec![
            Sheet::full_size("What the set holds, and its bar", ranges).named_in_title_block(),
            overlay(answers),
            reduced(
                "All sizes, for comparison",
                side,
                sheet::strip(answers, side),
            ),
        ]
    }

    fn drawn(answer: &SizeAnswer, what: &What, title: &TitleBlock) -> Vec<SetSheet> {
        sheets::drawn(&Of::answer(answer), what, title)
    }

    fn bar_of(answer: &SizeAnswer) -> Option<Sheet> {
        sheets::bar_of(&Of::answer(answer))
    }

    fn rein_is_like(one: &SizeAnswer, other: &SizeAnswer) -> bool {
        one.model.a.rein == other.model.a.rein
    }

    fn set_pictures((family, answers): Set<'_, Self>, wanted: &Wanted) -> Vec<NamedDrawing> {
        let ranges = sheet::ranges(family, answers, wanted.order.pairs_of_each, &wanted.stock);
        vec![
            ("all-ranges", ranges),
            ("all-side-by-side", sheet::strip(answers, 1)),
            ("all-overlay", sheet::overlay(answers, 1)),
        ]
    }

    fn pictures(answer: &SizeAnswer) -> Vec<NamedDrawing> {
        let (document, model) = (&answer.document, &answer.model);
        let options = DrawOptions::default();
        vec![
            ("pair", draw::pair(document, model, &options)),
            ("half", draw::half(document, model, &options)),
        ]
    }
}

/// All sizes one over the other, to be cut where all of their reins run plain.
fn overlay(answers: &[SizeAnswer]) -> Sheet {
    let sheet = Sheet::full_size(
        "One over the other, rivets together",
        sheet::overlay(answers, 1),
    );
    let plain = answers
        .iter()
        .map(|answer| breaks(&answer.model, 0.0).stretches().collect())
        .reduce(|all: Vec<Stretch>, own| {
            let pairs = all.iter().flat_map(|a| own.iter().map(move |b| (a, b)));
            let common = pairs.map(|(a, b)| Stretch {
                from: a.from.max(b.from),
                to: a.to.min(b.to),
            });
            common.filter(|stretch| stretch.from < stretch.to).collect()
        });
    sheet.plain(plain.unwrap_or_default())
}

impl InSet for Tool {
    fn title_block(&self, findings: &[Finding], day: Option<Date>) -> TitleBlock {
        printing::tool_title_block(self, findings, day)
    }

    fn of_the_set((family, answers): Set<'_, Self>, wanted: &Wanted) -> Vec<Sheet> {
        let bars = sheet::bars(family, answers, wanted.order.pairs_of_each);
        let side = sheet::reduction(&sheet::tool_strip(answers, 1), sheet::ROOM);
        vec![
            Sheet::full_size("The bar of the set", bars).named_in_title_block(),
            reduced(
                "All sizes, for comparison",
                side,
                sheet::tool_strip(answers, side),
            ),
        ]
    }

    fn drawn(answer: &ToolSizeAnswer, what: &What, title: &TitleBlock) -> Vec<SetSheet> {
        tool_sheets::drawn((&answer.document, &answer.answers), what, title)
    }

    fn bar_of(answer: &ToolSizeAnswer) -> Option<Sheet> {
        tool_sheets::bar_of((&answer.document, &answer.answers))
    }

    fn rein_is_like(_one: &ToolSizeAnswer, _other: &ToolSizeAnswer) -> bool {
        false
    }

    fn set_pictures((family, answers): Set<'_, Self>, wanted: &Wanted) -> Vec<NamedDrawing> {
        let bars = sheet::bars(family, answers, wanted.order.pairs_of_each);
        vec![
            ("all-bars", bars),
            ("all-side-by-side", sheet::tool_strip(answers, 1)),
        ]
    }

    fn pictures(answer: &ToolSizeAnswer) -> Vec<NamedDrawing> {
        let options = DrawOptions::default();
        let views = draw::tool(&answer.document, &answer.answers.model, &options);
        vec![("tool", views)]
    }
}
