//! The drawings of a tool as sheets, as far as they are wanted.

use kurbo::Vec2;
use reinwright_core::draw::{self, DrawOptions, Names, Sizes};
use reinwright_core::finding::Part;
use reinwright_core::making;
use reinwright_core::paper::{Item, SetSheet, Sheet, Stretch, TitleBlock};
use reinwright_core::shop::ToolAnswers;
use reinwright_core::tool::{Mount, Tool};

use super::sheets::{TEXT, bar_strip};
use super::what::{Kind, Look, Size, What};

/// All sheets that are wanted, each with the title block that is right for its size. What is asked of the
/// half, the head or the pair is the tool itself, once.
pub(super) fn drawn(of: (&Tool, &ToolAnswers), what: &What, title: &TitleBlock) -> Vec<SetSheet> {
    let sized = TitleBlock {
        size_note: what.size.words(),
        unit: match what.size {
            Size::Cold => title.unit.clone(),
            Size::Hot(_) | Size::Both(_) => format!("{}, all of them cold", title.unit),
        },
        ..title.clone()
    };
    let whole = [
        Kind::Half,
        Kind::Head,
        Kind::Rein,
        Kind::Pair,
        Kind::Open,
        Kind::Sections,
    ];
    let titled = |sheet: Sheet, title: &TitleBlock| SetSheet {
        sheet: what.look.of(sheet),
        title: title.clone(),
    };
    let mut sheets = Vec::new();
    if whole.into_iter().any(|kind| what.has(kind)) {
        sheets.push(titled(views(of, what), &sized));
    }
    let cold = |sheet| titled(sheet, title);
    let sound = of.1.balance.trouble().is_none();
    if sound && what.has(Kind::Stages) {
        sheets.extend(stages(of).into_iter().map(cold));
    }
    if what.has(Kind::Bar) {
        sheets.extend(bar_of(of).map(cold));
    }
    sheets
}

/// The bar with its marks; `None` where no bar can be reckoned.
pub(super) fn bar_of((tool, answers): (&Tool, &ToolAnswers)) -> Option<Sheet> {
    let sound = answers.balance.trouble().is_none();
    sound.then(|| bar_strip((&tool.bar, tool.units), &answers.balance))
}

/// Its views in the size and the look that is wanted.
fn views((tool, answers): (&Tool, &ToolAnswers), what: &What) -> Sheet {
    let options = DrawOptions {
        sizes: match what.look {
            Look::WithSizes => Sizes::All,
            Look::NoSizes | Look::OutlineOnly => Sizes::None,
        },
        views: what.views,
        // A sheet names the views of what lies by itself; what stands is one drawing.
        names: match (what.look, &tool.shape.mount) {
            (Look::WithSizes | Look::NoSizes, Mount::Hardy(_)) => Names::Drawn,
            (Look::WithSizes | Look::NoSizes, Mount::Struck(_)) | (Look::OutlineOnly, _) => {
                Names::LeftOut
            }
        },
        text: TEXT,
        ..DrawOptions::default()
    };
    let mut cold = draw::tool(tool, &answers.model, &options);
    if matches!(tool.shape.mount, Mount::Hardy(_)) {
        cold.items = together(cold.items);
    }
    let drawing = what.size.of(cold, what.look);
    Sheet::full_size("The tool", drawing).plain(plain((tool, answers), what.size.growth()))
}

/// The views of what stands with the first two as one: its front and its side stand beside each other on any paper.
fn together(mut items: Vec<Item>) -> Vec<Item> {
    let others = items.split_off(items.len().min(2));
    let both = Item::group("Front and side view", Vec2::ZERO, items);
    [vec![both], others].concat()
}

/// Where the views of a long tool may be cut: in its plain body.
fn plain((tool, answers): (&Tool, &ToolAnswers), growth: f64) -> Vec<Stretch> {
    let mut at = answers.model.tip_mm;
    let mut all = Vec::new();
    for stretch in &answers.model.piece.stretches {
        let next = at - stretch.length_mm();
        if stretch.part == Part::Body && matches!(tool.shape.mount, Mount::Struck(_)) {
            all.push(Stretch {
                from: next * growth,
                to: at * growth,
            });
        }
        at = next;
    }
    all
}

/// Each stage by the procedure that suits first.
fn stages((tool, answers): (&Tool, &ToolAnswers)) -> Vec<Sheet> {
    let procedure = making::usual_for_tool(tool);
    let plan = making::plan_tool(tool, &answers.model, &answers.balance, procedure);
    let sheet = |at: usize| {
        let title = match &plan.stages[at].operation {
            None => format!("Stage {at}: the bar"),
            Some(operation) => format!("Stage {at}: {}", operation.step),
        };
        let drawing = draw::stage(&answers.model, &plan, at, tool.units.show());
        Sheet::full_size(title, drawing)
    };
    (0..plan.stages.len()).map(sheet).collect()
}
