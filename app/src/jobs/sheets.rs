//! The drawings of a pair as sheets, as far as they are wanted.

use kurbo::Vec2;
use reinwright_core::asked::{Bar, Units};
use reinwright_core::draw::{self, DrawOptions, Names, Sizes, Views, Which};
use reinwright_core::forge::{self, balance::Balance};
use reinwright_core::making;
use reinwright_core::paper::{
    Breaks, Drawing, GroupItem, Item, SetSheet, Sheet, Stretch, TitleBlock, View,
};
use reinwright_core::shop::Answers;
use reinwright_core::shop::family::SizeAnswer;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::model::Model;

use super::what::{Kind, Look, Reins, Size, What};

/// Size of the lettering on a template, mm: 12 pt.
pub(super) const TEXT: f64 = 4.3;

/// A design with what is known of it.
#[derive(Clone, Copy)]
pub(crate) struct Of<'a> {
    pub(crate) design: &'a Document,
    pub(crate) model: &'a Model,
    pub(crate) balance: &'a Balance,
    /// Half the angle by which the pair opens, radians.
    pub(crate) opening: f64,
}

impl<'a> Of<'a> {
    /// A size of a family.
    pub(crate) fn answer(answer: &'a SizeAnswer) -> Self {
        Self {
            design: &answer.document,
            model: &answer.model,
            balance: &answer.balance,
            opening: answer.fit.opening / 2.0,
        }
    }

    /// A design that is open.
    pub(crate) fn answers(design: &'a Document, answers: &'a Answers) -> Self {
        Self {
            design,
            model: &answers.model,
            balance: &answers.balance,
            opening: answers.fit.opening / 2.0,
        }
    }
}

/// All sheets that are wanted, each with the title block that is right for its size.
pub(crate) fn drawn(of: &Of<'_>, what: &What, title: &TitleBlock) -> Vec<SetSheet> {
    let sized = TitleBlock {
        size_note: what.size.words(),
        unit: match what.size {
            Size::Cold => title.unit.clone(),
            Size::Hot(_) | Size::Both(_) => format!("{}, all of them cold", title.unit),
        },
        ..title.clone()
    };
    let mut sheets = Vec::new();
    for kind in Kind::ALL.into_iter().filter(|kind| what.has(*kind)) {
        // Bars are marked, and stages and tables measured, with a cold rule on what is cold.
        let own = match kind {
            Kind::Half | Kind::Head | Kind::Rein | Kind::Pair | Kind::Open => &sized,
            Kind::Sections | Kind::Calipers | Kind::Stages | Kind::Bar => title,
        };
        let of_kind = of_kind(of, what, kind);
        sheets.extend(of_kind.into_iter().map(|sheet| SetSheet {
            sheet: what.look.of(sheet),
            title: own.clone(),
        }));
    }
    sheets
}

fn of_kind(of: &Of<'_>, what: &What, kind: Kind) -> Vec<Sheet> {
    match kind {
        Kind::Half => halves(of, what, ("The half", "Half"), what.reins),
        Kind::Head => halves(of, what, ("The head", "Head"), Reins::LeftOut),
        Kind::Rein => vec![rein(of, what)],
        Kind::Pair => vec![pair(of, what, 0.0)],
        Kind::Open => vec![pair(of, what, of.opening)],
        Kind::Sections => sections(of),
        Kind::Calipers => calipers(of),
        Kind::Stages => stages(of),
        Kind::Bar => bar_of(of).into_iter().collect(),
    }
}

/// Which halves need a sheet of their own.
fn whichs(of: &Of<'_>) -> Vec<Which> {
    if of.model.same() {
        vec![Which::Either]
    } else {
        vec![Which::A, Which::B]
    }
}

/// What is left out of the reins.
fn breaks(of: &Of<'_>, reins: Reins, opening: f64) -> Breaks {
    match reins {
        Reins::Whole => Breaks::default(),
        Reins::Broken => draw::breaks(of.model, opening),
        Reins::LeftOut => draw::head_alone(of.model, opening),
    }
}

fn options(what: &What, breaks: Breaks) -> DrawOptions {
    DrawOptions {
        sizes: match what.look {
            Look::WithSizes => Sizes::All,
            Look::NoSizes | Look::OutlineOnly => Sizes::None,
        },
        views: what.views,
        names: Names::LeftOut,
        text: TEXT,
        breaks,
        ..DrawOptions::default()
    }
}

/// One sheet when both halves are the same piece, else one for each.
fn halves(of: &Of<'_>, what: &What, (alike, one): (&str, &str), reins: Reins) -> Vec<Sheet> {
    let options = options(what, breaks(of, reins, 0.0));
    let sheet = |which: Which| {
        let drawing = match which {
            Which::Either | Which::A => draw::half(of.design, of.model, &options),
            Which::B => draw::other_half(of.design, of.model, &options),
        };
        let facts = match what.look {
            Look::WithSizes => draw::facts(of.design, of.model, which),
            Look::NoSizes | Look::OutlineOnly => Vec::new(),
        };
        let title = match which {
            Which::Either => format!("{alike} (make two)"),
            Which::A => format!("{one} A"),
            Which::B => format!("{one} B"),
        };
        let sheet = whole(of, what, (title, with_facts(drawing, facts)), reins);
        of_which(sheet, which)
    };
    whichs(of).into_iter().map(sheet).collect()
}

/// A sheet that says at each of its parts of which half it is, where the two differ.
fn of_which(sheet: Sheet, which: Which) -> Sheet {
    match which {
        Which::Either => sheet,
        Which::A | Which::B => sheet.always_named(),
    }
}

/// A drawing with facts under it.
fn with_facts(mut drawing: Drawing, facts: Vec<Item>) -> Drawing {
    if !facts.is_empty() {
        let under = drawing.bounds();
        let shift = Vec2::new(under.x0, under.y0 - TEXT);
        let moved = facts.into_iter().map(|item| match item {
            Item::Group(group) => Item::Group(GroupItem {
                shift: group.shift + shift,
                ..group
            }),
            item @ (Item::Path(_) | Item::Text(_)) => item,
        });
        drawing.items.extend(moved);
    }
    drawing
}

/// A drawing in the size and the look that is wanted, with where it may be cut.
fn whole(of: &Of<'_>, what: &What, (title, cold): (String, Drawing), reins: Reins) -> Sheet {
    let growth = what.size.growth();
    let drawing = what.size.of(cold, what.look);
    let breaks = draw::breaks(of.model, 0.0);
    let plain: Vec<Stretch> = match reins {
        Reins::Whole => breaks.stretches().collect(),
        Reins::Broken => gaps(&breaks),
        Reins::LeftOut => Vec::new(),
    };
    let bent = behind_the_neck(of.model, &breaks, reins);
    let grown = |stretch: Stretch| Stretch {
        from: stretch.from * growth,
        to: stretch.to * growth,
    };
    Sheet::full_size(title, drawing)
        .plain(plain.into_iter().map(grown))
        .bent(bent.into_iter().map(grown))
}

/// Where the reins run as they are bent, behind the neck and up to the first of what is left out
/// of them: a head that is too long for the paper with all of its bends is cut off there.
fn behind_the_neck(model: &Model, breaks: &Breaks, reins: Reins) -> Option<Stretch> {
    let ends = model.a.rein_end().max(model.b.rein_end());
    let first = breaks.stretches().next().map(|first| first.to);
    let from = match reins {
        Reins::Whole => ends,
        Reins::Broken | Reins::LeftOut => first.unwrap_or(ends),
    };
    let starts = [&model.a, &model.b].map(|half| half.rein_start().x);
    let to = starts[0].min(starts[1]);
    (from < to).then_some(Stretch { from, to })
}

/// Where a view with broken reins may be cut: between the two break lines of each stretch.
fn gaps(breaks: &Breaks) -> Vec<Stretch> {
    /// As much as two parts both show, with a hair more, mm.
    const HALF: f64 = 5.01;
    let middle = |stretch: Stretch| breaks.x(stretch.to) - breaks.gap() / 2.0;
    let around = |at: f64| Stretch {
        from: at - HALF,
        to: at + HALF,
    };
    breaks.stretches().map(middle).map(around).collect()
}

fn rein(of: &Of<'_>, what: &What) -> Sheet {
    let options = options(what, draw::rein_alone(of.model));
    let drawing = draw::half(of.design, of.model, &options);
    let sheet = whole(of, what, ("The rein".to_owned(), drawing), Reins::Broken);
    // What is shown of the rein stands as much nearer as the head is long.
    let shown = sheet.drawing.bounds();
    let plain = Stretch {
        from: shown.x0 + 0.25 * shown.width(),
        to: shown.x1 - 0.1 * shown.width(),
    };
    sheet.plain([plain])
}

fn pair(of: &Of<'_>, what: &What, opening: f64) -> Sheet {
    // Wide open the reins stand so far apart that only the head is worth its paper.
    let (title, reins) = if opening > 0.0 {
        ("The pair wide open", Reins::LeftOut)
    } else {
        ("The pair on its work", what.reins)
    };
    let has_half = what.has(Kind::Half) || what.has(Kind::Head);
    let mut options = options(what, breaks(of, reins, opening));
    options.opening = opening;
    options.sizes = match options.sizes {
        // What is measured between the reins needs them.
        _ if reins == Reins::LeftOut => Sizes::None,
        Sizes::All if has_half => Sizes::OfTheSet,
        sizes => sizes,
    };
    let mut drawing = draw::pair(of.design, of.model, &options);
    if opening > 0.0 {
        // In the end view the reins stand up and down, as long as they are.
        let is_end = |item: &Item| matches!(item, Item::Group(own) if own.view == Some(View::End));
        drawing.items.retain(|item| !is_end(item));
    }
    if has_half && reins == Reins::Whole && what.views == Views::All {
        options.breaks = draw::head_alone(of.model, opening);
        options.views = Views::Top;
        with_top(&mut drawing, draw::pair(of.design, of.model, &options));
    }
    whole(of, what, (title.to_owned(), drawing), reins)
}

/// Takes the top view of another drawing: from above the reins of a pair show nothing that those
/// of the half do not.
fn with_top(drawing: &mut Drawing, other: Drawing) {
    let is_top = |item: &Item| matches!(item, Item::Group(group) if group.view == Some(View::Top));
    drawing.items.retain(|item| !is_top(item));
    drawing.items.extend(other.items.into_iter().filter(is_top));
}

fn sections(of: &Of<'_>) -> Vec<Sheet> {
    let sheet = |which: Which| {
        let title = match which {
            Which::Either => "Sections of the half",
            Which::A => "Sections of half A",
            Which::B => "Sections of half B",
        };
        let items = draw::facts(of.design, of.model, which);
        of_which(Sheet::full_size(title, Drawing { items }), which)
    };
    let options = DrawOptions {
        views: Views::End,
        text: TEXT,
        ..DrawOptions::default()
    };
    let end = draw::pair(of.design, of.model, &options);
    let mut sheets: Vec<Sheet> = whichs(of).into_iter().map(sheet).collect();
    sheets.push(Sheet::full_size("The pair from its tips", end));
    sheets
}

fn calipers(of: &Of<'_>) -> Vec<Sheet> {
    let sheet = |which: Which| {
        let title = match which {
            Which::Either => "Caliper table of the half",
            Which::A => "Caliper table of half A",
            Which::B => "Caliper table of half B",
        };
        Sheet::full_size(title, draw::calipers(of.design, of.model, which))
    };
    whichs(of).into_iter().map(sheet).collect()
}

/// Each stage by the procedure that suits first, as far as it was worked.
fn stages(of: &Of<'_>) -> Vec<Sheet> {
    if of.balance.trouble().is_some() {
        return Vec::new();
    }
    let procedure = making::usual(of.design, of.model);
    let plan = making::plan(of.design, of.model, of.balance, procedure);
    let show = of.design.units.show();
    // As the drawing itself begins: it need not be named once more.
    let sheet = |at: usize| {
        let title = match &plan.stages[at].operation {
            None => format!("{at} the bar"),
            Some(operation) => format!("{at} {}", operation.step),
        };
        Sheet::full_size(title, draw::stage_at_work(of.model, &plan, at, show))
    };
    (0..plan.stages.len()).map(sheet).collect()
}

/// The bar with its marks, where the balance comes out.
pub(crate) fn bar_of(of: &Of<'_>) -> Option<Sheet> {
    let sound = of.balance.trouble().is_none();
    sound.then(|| bar_strip((&of.design.bar, of.design.units), of.balance))
}

/// A bar as a strip to lay the bar along; one that is too long for that, to scale.
pub(super) fn bar_strip((bar, units): (&Bar, Units), balance: &Balance) -> Sheet {
    /// A longer bar is no template, mm: the strips of a heavy pair are half as long.
    const LONGEST: f64 = 2000.0;
    /// What a bar that is drawn to scale takes, mm: a page that lies across.
    const ROOM: f64 = 225.0;
    let drawn = |text| forge::bar((bar, units), balance, text);
    let length = balance.cut_length(units).mm();
    let reduced = if length > LONGEST {
        reduction(length / ROOM)
    } else {
        1
    };
    let plain = match reduced {
        1 => forge::plain(balance, units),
        _ => Vec::new(),
    };
    let drawing = drawn(TEXT * f64::from(reduced)).reduced(reduced);
    Sheet {
        reduced,
        plain,
        ..Sheet::full_size("The bar with its marks", drawing)
    }
}

/// The largest scale of 1, 2, 5, 10, 20, 50 and so on to 1 (ISO 5455) that is no larger than this.
fn reduction(least: f64) -> u32 {
    let decades = (0..9).map(|power| 10_u32.pow(power));
    let mut scales = decades.flat_map(|ten| [1, 2, 5].map(|by| by * ten));
    let fits = |scale: &u32| f64::from(*scale) >= least;
    scales.find(fits).unwrap_or(1_000_000_000)
}
