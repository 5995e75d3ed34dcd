//! Head and foot of the page at the anvil: the bar with its marks, the rivet, how the pair is set,
//! and what the signs mean.

use kurbo::{Point, Rect, Vec2};

use super::super::sizes::gaps;
use super::super::subject::Subject;
use super::super::views;
use super::super::{DrawOptions, Names, Sizes, tool as draw_tool};
use super::signs::signs;
use super::{FAR, FAR_LINE, Job, Made};
use crate::asked::Layout;
use crate::finding::Part;
use crate::forge;
use crate::heats::listed;
use crate::making::{Face, Procedure};
use crate::paper::dimension::Scale;
use crate::paper::font::text_width;
use crate::paper::sheet::{Weight, text, wrap};
use crate::paper::{Align, Breaks, Drawing, Item};
use crate::tool::Tool;

/// The design's name, the bar, its marks. With the height at which it ends.
pub(super) fn head(job: &Job<'_>, room: Rect) -> (Vec<Item>, f64) {
    const TITLE: f64 = 1.3 * FAR;
    let mut y = room.y1 - 0.8 * TITLE;
    let name = job.name();
    let size = TITLE * (room.width() / text_width(name, TITLE, true)).min(1.0);
    let mut items = vec![text(
        Point::new(room.x0, y),
        name,
        size,
        Weight::Bold,
        Align::Start,
    )];
    y -= 0.25 * TITLE;
    for line in wrap(&bar_words(job), FAR, Weight::Plain, room.width()) {
        y -= FAR_LINE;
        items.push(text(
            Point::new(room.x0, y),
            &line,
            FAR,
            Weight::Plain,
            Align::Start,
        ));
    }
    let (strip, under) = strip(job, room, y - 0.5 * FAR);
    items.extend(strip);
    y = under;
    for line in wrap(&marks_words(job), FAR, Weight::Plain, room.width()) {
        y -= FAR_LINE;
        items.push(text(
            Point::new(room.x0, y),
            &line,
            FAR,
            Weight::Plain,
            Align::Start,
        ));
    }
    for line in wrap(&burning_words(job), FAR, Weight::Bold, room.width()) {
        y -= FAR_LINE;
        items.push(text(
            Point::new(room.x0, y),
            &line,
            FAR,
            Weight::Bold,
            Align::Start,
        ));
    }
    (items, y - 0.6 * FAR)
}

/// What burns in which heats, and what keeps it: it is too late to read it on the pages behind. Nothing where
/// nothing burns.
fn burning_words(job: &Job<'_>) -> String {
    let mut told: Vec<(Part, Vec<String>)> = Vec::new();
    for (half, of) in ["", " of the second half"].into_iter().enumerate() {
        for (at, stage) in job.stages(half).into_iter().enumerate() {
            let Some(spot) = job.heated(stage).and_then(|(heated, _)| heated.burns) else {
                continue;
            };
            let step = format!("{}{of}", at + 1);
            match told.iter_mut().find(|own| own.0 == spot.part) {
                Some((_, steps)) => steps.push(step),
                None => told.push((spot.part, vec![step])),
            }
        }
    }
    if told.is_empty() {
        return String::new();
    }
    let parts: Vec<String> = told
        .iter()
        .map(|(part, steps)| format!("the {part} in {}", listed(steps)))
        .collect();
    format!(
        "Burns before the rest is hot: {}. Less blast or power, keep it out of the heat until the thick part is red.",
        parts.join("; ")
    )
}

fn bar_words(job: &Job<'_>) -> String {
    let bar = job.bar();
    let (stock, steel) = (bar.stock.words(), bar.steel.name());
    let cut = job.balance.cut_length(job.units());
    let both = match job.layout() {
        _ if job.is_tool() => "for one tool",
        Layout::BothOnOneBar => "both halves on it",
        Layout::Single { .. } => "one half behind the other",
    };
    format!("Bar: {stock}, {steel}, cut {cut} long, {both}.")
}

/// The marks that are set off, from one end and from the other alike.
fn marks_words(job: &Job<'_>) -> String {
    let marks = &job.plan.marks;
    let alike = match job.made {
        Made::Pair { model, .. } => model.alike,
        Made::Tool { .. } => false,
    };
    let double = matches!(job.layout(), Layout::BothOnOneBar)
        && job.plan.procedure != Procedure::WeldedRein
        && alike;
    let count = if double {
        marks.len().div_ceil(2)
    } else {
        marks.len()
    };
    let told: Vec<String> = marks
        .iter()
        .take(count)
        .map(|mark| format!("{} {}, {}", mark.measured, mark.tool.name(), on(mark.face)))
        .collect();
    let from = if double {
        "From each end"
    } else if job.is_tool() {
        "From the working end"
    } else {
        "From the left end"
    };
    format!("{from}: {}.{}", told.join("; "), both_ends(job))
}

/// `Steps 2 to 5: each at both ends.`
fn both_ends(job: &Job<'_>) -> String {
    let stages = job.stages(0);
    let both = |stage: &&crate::making::Stage| {
        let own = stage.operation.as_ref();
        own.is_some_and(|own| own.ends > 1)
    };
    let first = stages.iter().position(both);
    let last = stages.iter().rposition(both);
    match (first, last) {
        (Some(first), Some(last)) => format!(
            " Steps {} to {}: each at both ends before the next.",
            first + 1,
            last + 1
        ),
        (Some(_) | None, _) => String::new(),
    }
}

/// On which face a mark goes, for one who sees the bar and no list.
fn on(face: Face) -> &'static str {
    match face {
        Face::First => "on one face",
        Face::QuarterRound => "a quarter turn round",
        Face::AllRound => "all round",
    }
}

/// How high a bar is drawn at the most, in text sizes.
const HIGHEST: f64 = 5.0;

/// The bar to scale with its marks, as wide as there is room, below a height.
fn strip(job: &Job<'_>, room: Rect, under: f64) -> (Vec<Item>, f64) {
    let units = job.units();
    let long = job.balance.cut_length(units).mm().max(1.0);
    // Lettering of the first and the last mark reaches past the bar.
    let by = (room.width() - 3.0 * FAR) / long;
    // A short bar is not drawn so large that it leaves no room for the steps.
    let by = by.min(HIGHEST * FAR / job.bar().stock.size().mm());
    // A bar that is thinner than its names has all of them over it; of another the colours of its short parts do.
    let is_thin = job.bar().stock.size().mm() * by < FAR;
    let bar = if is_thin {
        forge::bar
    } else {
        forge::bar_in_short
    };
    let drawn = bar((job.bar(), units), job.balance, FAR / by).scaled(by);
    let area = drawn.bounds();
    let shift = Vec2::new(room.x0 - area.x0, under - area.y1);
    let items = vec![Item::group("bar", shift, drawn.items)];
    (items, under - area.height())
}

/// Rivet, setting, signs, eyes; with the height at which they begin.
pub(super) fn foot(job: &Job<'_>, room: Rect) -> (Vec<Item>, f64) {
    let (mut items, over) = legend(job, room);
    let half = 0.52 * room.width();
    let mut y = over;
    let lines = wrap(&last_words(job), FAR, Weight::Plain, half);
    for line in lines.iter().rev() {
        items.push(text(
            Point::new(room.x0, y + 0.25 * FAR),
            line,
            FAR,
            Weight::Plain,
            Align::Start,
        ));
        y += FAR_LINE;
    }
    let pose = Rect::new(room.x0 + half + FAR, over, room.x1, y);
    items.extend(set_pose(job, pose));
    (items, y + 0.5 * FAR)
}

/// What is done once both halves, or the tool, are there.
fn last_words(job: &Job<'_>) -> String {
    match job.made {
        Made::Pair {
            document,
            model,
            rivet,
        } => {
            let second = if job.plan.repeats > 1 {
                "Second half: the same, not mirrored. "
            } else {
                ""
            };
            format!(
                "{second}Rivet {}: shank {} for one head, {} for both. Work it loose hot. Set: shut hot on {}, {} between the \
                 reins at the hand.",
                job.size(model.rivet),
                job.size(rivet.one_head_mm),
                job.size(rivet.both_heads_mm),
                document.work.words(),
                job.size(model.hand_gap)
            )
        }
        Made::Tool { document, model } => format!(
            "Finished: {} long. Check: {}.",
            job.size(model.piece.length_mm()),
            document.shape.style.gauge()
        ),
    }
}

/// The finished tool of a job where few cards leave room for it, with its sizes if they can be read; nothing for a
/// pair.
pub(super) fn tool_at_large(job: &Job<'_>, room: Rect) -> Vec<Item> {
    let Made::Tool { document, model } = job.made else {
        return Vec::new();
    };
    /// Sizes that make the tool smaller than by this are left out.
    const SMALLER: f64 = 0.75;
    let drawn = |text: f64, sizes: Sizes| {
        let options = DrawOptions {
            text,
            sizes,
            names: Names::LeftOut,
            ..DrawOptions::default()
        };
        let mut drawn = draw_tool(document, model, &options);
        drawn.items.truncate(2);
        drawn
    };
    let by = |drawn: &Drawing| {
        let area = drawn.bounds();
        (room.width() / area.width()).min(room.height() / area.height())
    };
    let bare = drawn(FAR, Sizes::None);
    let most = by(&bare).min(1.0);
    let sized = drawn(0.75 * FAR / most, Sizes::All);
    let least = by(&sized).min(1.0);
    let drawn = if least < SMALLER * most {
        bare.scaled(most)
    } else {
        sized.scaled(least)
    };
    let shift = room.center() - drawn.bounds().center();
    vec![Item::group("at large", shift, drawn.items)]
}

/// The finished tool without its sizes, as large as there is room.
fn finished(document: &Tool, model: &crate::tool::Model, room: Rect) -> Vec<Item> {
    let options = DrawOptions {
        sizes: Sizes::None,
        names: Names::LeftOut,
        ..DrawOptions::default()
    };
    let mut drawn = draw_tool(document, model, &options);
    // Its two long views: the others would make them small.
    drawn.items.truncate(2);
    let area = drawn.bounds();
    let by = (room.width() / area.width()).min((room.height() - 1.0) / area.height());
    let drawn = drawn.scaled(by.min(1.0));
    let shift = room.center() - drawn.bounds().center();
    vec![Item::group("finished", shift, drawn.items)]
}

/// The pair as it is set, in the side view.
fn set_pose(job: &Job<'_>, room: Rect) -> Vec<Item> {
    let (document, model) = match job.made {
        Made::Pair {
            document, model, ..
        } => (document, model),
        Made::Tool { document, model } => return finished(document, model, room),
    };
    let bare = views::side::pair(document, model, 0.0);
    let area = Drawing {
        items: bare.clone(),
    }
    .bounds();
    let by = (room.width() / area.width()).min((room.height() - 1.0) / area.height());
    let subject = Subject {
        document,
        model,
        opening: 0.0,
        breaks: Breaks::default(),
        scale: Scale { text: FAR / by },
    };
    let sizes = gaps(&subject, &bare);
    let drawn = Drawing {
        items: [bare, sizes].concat(),
    };
    // What is lettered may reach past the steel.
    let area = drawn.bounds();
    let fits = (room.width() / (by * area.width())).min(1.0);
    let drawn = drawn.scaled(by * fits);
    let area = drawn.bounds();
    let shift = room.center() - area.center();
    vec![Item::group("set", shift, drawn.items)]
}

/// What the signs mean, and the line of caution; with the height at which they end.
pub(super) fn legend(job: &Job<'_>, room: Rect) -> (Vec<Item>, f64) {
    let mut items = Vec::new();
    let at = Point::new(room.x0, room.y0 + 0.25 * FAR);
    items.push(text(at, job.caution(), FAR, Weight::Bold, Align::Start));
    let y = at.y + FAR_LINE;
    let mut x = room.x0;
    for (wide, sign, words) in signs() {
        items.push(Item::group("sign", Vec2::new(x, y), sign));
        x += wide + 0.3 * FAR;
        items.push(text(
            Point::new(x, y),
            words,
            FAR,
            Weight::Plain,
            Align::Start,
        ));
        x += text_width(words, FAR, false) + FAR;
    }
    (items, y + FAR_LINE)
}
