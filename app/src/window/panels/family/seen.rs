//! What is seen of a family, which differs between pairs and tools: the picture of one size, what
//! all of them hold, and what is typed for a new one.

use egui::Ui;
use kurbo::Affine;
use reinwright_core::asked::{StockSizes, Units, parse_work};
use reinwright_core::paper::{Drawing, Item, Line};
use reinwright_core::shop::family::{
    Coverage, Family, InSizes, Measure, Size, SizeAnswer, ToolSizeAnswer, coverage, shape_name,
    sheet,
};
use reinwright_core::tongs::document::Document;
use reinwright_core::tool::Tool;
use reinwright_core::units::Length;

use super::Lent;
use crate::jobs::preview::Printable;
use crate::jobs::set_printing::in_set::InSet;
use crate::window::panels::answers;
use crate::window::panels::wish::Wish;
use crate::window::sheet::paper::Paper;
use crate::window::sheet::tool as sheet_of_tool;
use crate::window::state::look::Look;
use crate::window::state::reckon::Answers;
use crate::window::state::tool::ToolAnswers;

/// What an overlay was drawn for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct OverlayKey {
    /// At 1 to this.
    pub(super) reduced: u32,
    /// The size that stands out.
    pub(super) chosen: Option<usize>,
}

/// What a family on the bench is of.
pub(crate) trait Seen:
    InSet<Answer: Clone + std::fmt::Debug + Send + Sync, Measure: Send + Sync> + Send + Sync
{
    /// The answers to the chosen size, for its picture and its findings.
    type One: std::fmt::Debug;

    /// What a new size is called, and what may be typed for it.
    const NEW: &'static str;
    const NEW_HINT: &'static str;
    /// What taking a size out is called.
    const TAKE_OUT: &'static str;
    /// What one size alone has, once it is taken out.
    const ALONE: &'static str;
    /// Whether it holds stock, and is laid one size over the other by its rivet.
    const HOLDS: bool;
    /// What the last page of pictures is called.
    const TAKES: &'static str;

    /// The answers to the base, until a size is looked at.
    fn one(&self) -> Self::One;

    /// Takes the answers to the chosen size.
    fn choose_one(one: &mut Self::One, answer: &Self::Answer);

    /// Shows the chosen size.
    fn show_one(
        one: &mut Self::One,
        ui: &mut Ui,
        shown: (&mut Paper, &mut Look),
        lent: &mut Lent<'_>,
    );

    /// Shows what was noticed of it.
    fn findings(one: &Self::One, ui: &mut Ui, look: &mut Look);

    /// What each size is called where there is little room.
    fn short(family: &Family<Self>) -> Vec<String>;

    /// What the sizes hold of the stock that can be bought.
    fn coverage(answers: &[Self::Answer], units: Units, stock: &StockSizes) -> Vec<Coverage>;

    /// Why a size holds nothing, if it does not.
    fn holds_nothing(answer: &Self::Answer) -> Option<String>;

    /// The size at which a size stands in what is held, mm.
    fn held_mm(answer: &Self::Answer) -> f64;

    /// All sizes under each other, at 1 to `reduced`.
    fn strip(answers: &[Self::Answer], reduced: u32) -> Drawing;

    /// All sizes one over the other, the chosen one with a heavy line; nothing where they are not
    /// laid so.
    fn overlay(answers: &[Self::Answer], key: OverlayKey) -> Option<Drawing>;

    /// What leads a new size from a text, beside one that is there already.
    fn typed(text: &str, beside: Self::Measure, units: Units) -> Result<Self::Measure, String>;

    /// A measure of some kind with another size.
    fn with_size(measure: Self::Measure, size: Length) -> Self::Measure;

    /// Opens a size by itself.
    fn taken_out(self) -> Wish;

    /// The family as it can be printed.
    fn printable(family: Family<Self>, answers: Vec<Self::Answer>) -> Printable;
}

impl Seen for Document {
    type One = Answers;

    const NEW: &'static str = "Work of a new size";
    const NEW_HINT: &'static str = "A size such as 7/16 in, or work such as 7/16 in round";
    const TAKE_OUT: &'static str = "Take out as a design";
    const ALONE: &'static str = "Ways to mend, making, heats and job sheet are of one design. What mends all sizes is set in the base.";
    const HOLDS: bool = true;
    const TAKES: &'static str = "What the set holds";

    fn one(&self) -> Answers {
        Answers::to(self)
    }

    fn choose_one(one: &mut Answers, answer: &SizeAnswer) {
        one.follow(&answer.document);
        one.known.findings.clone_from(&answer.findings);
    }

    fn show_one(
        one: &mut Answers,
        ui: &mut Ui,
        (paper, look): (&mut Paper, &mut Look),
        lent: &mut Lent<'_>,
    ) {
        let asked = paper.tools(ui, look, lent.screen);
        lent.asked.extend(asked.map(Wish::Do));
        paper.show(ui, one, look, lent.fills);
    }

    fn findings(one: &Answers, ui: &mut Ui, look: &mut Look) {
        answers::findings(ui, one, look);
    }

    /// By its size alone while all hold work of one shape.
    fn short(family: &Family) -> Vec<String> {
        let shape = shape_name(&family.base.work);
        let mut sizes = family.sizes.iter();
        let alike = sizes.all(|size| shape_name(&size.work) == shape);
        let called = |size: &Size| {
            if size.name.is_empty() && alike {
                size.work.size().to_string()
            } else {
                size.label()
            }
        };
        family.sizes.iter().map(called).collect()
    }

    fn coverage(answers: &[SizeAnswer], units: Units, stock: &StockSizes) -> Vec<Coverage> {
        coverage(answers, units, stock)
    }

    fn holds_nothing(answer: &SizeAnswer) -> Option<String> {
        answer.fit.range.as_ref().err().map(ToString::to_string)
    }

    fn held_mm(answer: &SizeAnswer) -> f64 {
        answer.document.work.size().mm()
    }

    fn strip(answers: &[SizeAnswer], reduced: u32) -> Drawing {
        sheet::strip(answers, reduced)
    }

    fn overlay(answers: &[SizeAnswer], key: OverlayKey) -> Option<Drawing> {
        let mut drawing = sheet::overlay(answers, key.reduced);
        if let Some(answer) = key.chosen.and_then(|at| answers.get(at)) {
            let pose = Affine::scale(1.0 / f64::from(key.reduced));
            let outline = pose * answer.model.a.outline();
            drawing.items.push(Item::line(outline, Line::Mark));
        }
        Some(drawing)
    }

    /// A size alone is work of the shape that is there.
    fn typed(text: &str, beside: Self::Measure, units: Units) -> Result<Self::Measure, String> {
        match Length::parse(text, units.unit()) {
            Ok(size) => Ok(beside.with_size(size)),
            Err(error) => match parse_work(text) {
                Ok(work) => Ok(work),
                Err(_) if !text.contains(char::is_alphabetic) => Err(error.to_string()),
                Err(error) => Err(error.to_string()),
            },
        }
    }

    fn with_size(measure: Self::Measure, size: Length) -> Self::Measure {
        measure.with_size(size)
    }

    fn taken_out(self) -> Wish {
        Wish::Begin(Box::new(self))
    }

    fn printable(family: Family, answers: Vec<SizeAnswer>) -> Printable {
        Printable::Set(Box::new(family), answers)
    }
}

impl Seen for Tool {
    type One = ToolAnswers;

    const NEW: &'static str = "A new size";
    const NEW_HINT: &'static str = "A size such as 7/16 in: of a punch or a drift its hole";
    const TAKE_OUT: &'static str = "Take out as a tool";
    const ALONE: &'static str = "Ways to mend, making, heats and job sheet are of one tool. What mends all sizes is set in the base.";
    const HOLDS: bool = false;
    const TAKES: &'static str = "What the set takes";

    fn one(&self) -> ToolAnswers {
        ToolAnswers::to(self)
    }

    fn choose_one(one: &mut ToolAnswers, answer: &ToolSizeAnswer) {
        one.follow(&answer.document);
        one.known.findings.clone_from(&answer.answers.findings);
    }

    /// Its views, to be looked at: what is dragged on them would not be the family's.
    fn show_one(
        one: &mut ToolAnswers,
        ui: &mut Ui,
        (paper, look): (&mut Paper, &mut Look),
        lent: &mut Lent<'_>,
    ) {
        lent.asked
            .extend(sheet_of_tool::tools(paper, ui, lent.screen).map(Wish::Do));
        sheet_of_tool::views(paper, ui, (one, look), lent.fills);
    }

    fn findings(one: &ToolAnswers, ui: &mut Ui, look: &mut Look) {
        answers::findings_of_tool(ui, one, look);
    }

    fn short(family: &Family<Self>) -> Vec<String> {
        family.sizes.iter().map(Size::label).collect()
    }

    fn coverage(_: &[ToolSizeAnswer], _: Units, _: &StockSizes) -> Vec<Coverage> {
        Vec::new()
    }

    fn holds_nothing(_answer: &ToolSizeAnswer) -> Option<String> {
        None
    }

    fn held_mm(answer: &ToolSizeAnswer) -> f64 {
        answer.document.measure().size_mm()
    }

    fn strip(answers: &[ToolSizeAnswer], reduced: u32) -> Drawing {
        sheet::tool_strip(answers, reduced)
    }

    fn overlay(_answers: &[ToolSizeAnswer], _key: OverlayKey) -> Option<Drawing> {
        None
    }

    fn typed(text: &str, _beside: Length, units: Units) -> Result<Length, String> {
        Length::parse(text, units.unit()).map_err(|error| error.to_string())
    }

    fn with_size(_measure: Length, size: Length) -> Length {
        size
    }

    fn taken_out(self) -> Wish {
        Wish::BeginTool(Box::new(self))
    }

    fn printable(family: Family<Self>, answers: Vec<ToolSizeAnswer>) -> Printable {
        Printable::Tools(Box::new(family), answers)
    }
}
