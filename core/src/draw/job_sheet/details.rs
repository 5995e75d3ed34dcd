//! The pages behind: each operation in full, the sizes at stations, the cut, cautions.

use kurbo::Rect;

use super::anvil::Anvil;
use super::flow::{Apart, Begun, Beside, Block, Flow, NEAR, PICTURE, Row};
use super::{Job, Made};
use crate::asked::capital;
use crate::finding::Severity;
use crate::heats;
use crate::making::{Blows, Operation, Stage};
use crate::paper::Item;
use crate::shape::{Piece, Solid};
use crate::steel::caution;

/// The pages at the anvil with the details behind them: as few as can be, with blocks and lines as far apart as
/// they are on so many, and all of the pages filled alike. A last page for a few lines is paper that gets lost.
pub(super) fn behind(job: &Job<'_>, anvil: Anvil, room: Rect) -> Vec<Vec<Item>> {
    let blocks = blocks(job, room);
    let before = anvil.pages.len();
    let fresh = (before, Begun::blank(room));
    // Under the last cards, where that spares a page.
    let under_cards = anvil.begun.map(|begun| (before - 1, begun));
    let starts: Vec<_> = [fresh].into_iter().chain(under_cards).collect();
    let ways = Apart::ALL
        .into_iter()
        .flat_map(|apart| starts.iter().map(move |start| (apart, start)));
    let pages = |(apart, (kept, begun)): &(Apart, &(usize, Begun))| {
        kept + Flow::new(*apart, room).pages(&blocks, begun.y)
    };
    let (apart, (kept, begun)) = ways.min_by_key(pages).expect("each way starts on a page");
    let flow = Flow::new(apart, room).filled_alike(&blocks, begun.y);
    let mut all = anvil.pages;
    all.truncate(*kept);
    all.extend(flow.drawn(&blocks, begun.clone()));
    all
}

fn blocks<'a>(job: &Job<'a>, room: Rect) -> Vec<Block<'a>> {
    let words = room.width() - PICTURE - 2.0 * NEAR;
    let mut blocks = Vec::new();
    for half in 0..2 {
        for (at, stage) in job.stages(half).into_iter().enumerate() {
            if let Some(operation) = &stage.operation {
                blocks.push(operation_block(job, (at + 1, stage, operation), words));
            }
        }
    }
    blocks.extend(stations(job, room));
    if let Some(heats) = job.heats {
        let lines = [format!("{}.", heats.plan.in_short())];
        let of = if job.is_tool() { "tool" } else { "pair" };
        let title = format!("Heats of the {of}");
        blocks.push(Block::headed(&title, &lines, room.width()));
    }
    blocks.push(Block::headed("Cut", &[cut(job)], room.width()));
    let noticed = noticed(job);
    if !noticed.is_empty() {
        blocks.push(Block::headed("Noticed", &noticed, room.width()));
    }
    blocks.push(Block::headed("Take care", &cautions(job), room.width()));
    blocks
}

fn operation_block<'a>(
    job: &Job<'_>,
    (number, stage, own): (usize, &'a Stage, &Operation),
    width: f64,
) -> Block<'a> {
    let show = job.show();
    let half = if own.half.is_empty() {
        String::new()
    } else {
        format!(" ({})", own.half)
    };
    let mut lines = vec![format!("{}.", own.what)];
    lines.push(format!("Where: {}.", own.place_words()));
    lines.extend(own.hot_words(show).map(|words| format!("Hot: {words}.")));
    if let Some((heated, prepared)) = job.heated(stage)
        && let Some(words) = heated.words(prepared)
    {
        lines.push(format!("Heat: {words}."));
    }
    if own.blows != Blows::Cut {
        lines.push(format!("{}.", capital(&own.lengths(show))));
    }
    lines.extend(calipers(job, own));
    lines.push(format!("Check: {}.", own.check));
    lines.extend(
        own.cautions
            .iter()
            .map(|words| format!("Take care: {words}.")),
    );
    Block::headed(
        &format!("{number}. {}{half}", capital(own.step.name())),
        &lines,
        width,
    )
    .beside(Beside::Picture(stage))
}

/// `Calipers: 11 x 22.5 mm at 17 mm`.
fn calipers(job: &Job<'_>, own: &Operation) -> Option<String> {
    let show = job.show();
    let told = own.calipers.iter().map(|own| {
        format!(
            "{} x {} at {}",
            show.number(own.depth_mm),
            show.text(own.width_mm),
            show.text(own.at_mm)
        )
    });
    let told: Vec<String> = told.collect();
    (!told.is_empty()).then(|| format!("Calipers, from the tip: {}.", told.join("; ")))
}

/// The finished half at places along it, as a table whose second half stands beside its first.
fn stations<'a>(job: &Job<'_>, room: Rect) -> Vec<Block<'a>> {
    let pieces = job.pieces().into_iter().enumerate();
    let table = |(half, piece): (usize, Piece)| {
        let name = if job.is_tool() {
            "The tool, finished: calipers by station"
        } else {
            [
                "The half, finished: calipers by station",
                "The second half, finished",
            ][half.min(1)]
        };
        let rows = station_rows(job, &piece);
        Block::headed(name, &[], room.width()).beside(Beside::Table(rows))
    };
    pieces.map(table).collect()
}

fn station_rows(job: &Job<'_>, piece: &Piece) -> Vec<Row> {
    let mut rows = Vec::new();
    let mut start = 0.0;
    for stretch in &piece.stretches {
        let long = stretch.length_mm();
        // The ends of neck and shoulder lean: a caliper is set across the middle of them.
        let places: &[f64] = match stretch.solid {
            Solid::Swept(_) => &[0.02, 0.5, 0.98],
            Solid::Plated(_) => &[0.5],
        };
        for place in places {
            let at = start + place * long;
            if let Some(cross) = piece.cross(at) {
                let sizes = [at, cross.depth_mm, cross.width_mm].map(|size| job.size(size));
                let [at, deep, wide] = sizes;
                rows.push([stretch.part.name().to_owned(), at, deep, wide]);
            }
        }
        start += long;
    }
    rows
}

/// The line for the cut list.
fn cut(job: &Job<'_>) -> String {
    let bar = job.bar();
    let count = if job.is_tool() {
        "once for a tool"
    } else {
        "once for a pair"
    };
    format!(
        "{} of {}, {}, {count}, {}; the kerf comes on top.",
        job.balance.cut_length(job.units()),
        bar.stock.words(),
        bar.steel.name(),
        job.show().mass(job.balance.cut_mass_kg(job.units()))
    )
}

/// What stands against the plan and the design.
fn noticed(job: &Job<'_>) -> Vec<String> {
    let all = job.plan.findings.iter().chain(job.findings);
    let worth = all.filter(|own| own.severity > Severity::Note);
    // What burns in a heat is worth its words at the anvil, Note or not.
    let of_heats = job
        .heats
        .map(|own| heats::noticed(own.prepared, own.plan, job.show()));
    let of_heats = of_heats.iter().flatten();
    worth.chain(of_heats).map(|own| format!("{own}.")).collect()
}

fn cautions(job: &Job<'_>) -> Vec<String> {
    let mut all = match job.made {
        Made::Pair { document, .. } => vec![format!(
            "Try the pair on cold {} first, and stand out of line of the work.",
            document.work.words()
        )],
        Made::Tool { .. } => vec![
            "A struck end that is struck over is ground back before it is struck again.".to_owned(),
        ],
    };
    let at_the_forge: Vec<&str> = match (job.heats, job.made) {
        // Of the fires and coils that are there.
        (Some(own), _) => heats::cautions(&own.prepared.shop, job.steel()),
        (None, Made::Pair { document, .. }) => caution::at_the_forge(document.bar.steel),
        // How its steel is hardened is told with its operation.
        (None, Made::Tool { .. }) => {
            vec![caution::HOT, caution::EYES, caution::FIRE, caution::FIRST]
        }
    };
    // The last line says again who comes first.
    let others = at_the_forge
        .into_iter()
        .filter(|line| *line != caution::FIRST);
    all.extend(others.map(str::to_owned));
    all.push(caution::ON_EVERY_SHEET.to_owned());
    all
}
