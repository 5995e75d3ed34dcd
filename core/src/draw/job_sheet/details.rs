//! The pages behind: each operation in full, the sizes at stations, the cut, cautions.

use kurbo::{Point, Rect};

use super::super::stage::picture;
use super::flow::{Apart, Block, Flow, NEAR, NEAR_LINE};
use super::{Job, Made};
use crate::asked::capital;
use crate::finding::Severity;
use crate::heats;
use crate::making::{Blows, Operation, Stage};
use crate::paper::sheet::{Weight, text};
use crate::paper::{Align, Item};
use crate::shape::{Piece, Solid};
use crate::steel::caution;

/// What a picture takes beside the words of an operation, mm.
const PICTURE: (f64, f64) = (68.0, 26.0);

pub(super) fn pages(job: &Job<'_>, room: Rect) -> Vec<Vec<Item>> {
    let well = laid(job, room, Apart::Well);
    let close = laid(job, room, Apart::Close);
    // A last page for a few lines is paper that gets lost.
    if close.len() < well.len() {
        close
    } else {
        well
    }
}

fn laid(job: &Job<'_>, room: Rect, apart: Apart) -> Vec<Vec<Item>> {
    let mut flow = Flow::new(room, apart);
    let words = room.width() - PICTURE.0 - 2.0 * NEAR;
    for half in 0..2 {
        for (at, stage) in job.stages(half).into_iter().enumerate() {
            if let Some(operation) = &stage.operation {
                let block = operation_block(job, (at + 1, stage, operation), words);
                put_with_picture(&mut flow, block, stage);
            }
        }
    }
    stations(job, &mut flow, room);
    if let Some(heats) = job.heats {
        let lines = [format!("{}.", heats.plan.in_short())];
        let of = if job.is_tool() { "tool" } else { "pair" };
        let title = format!("Heats of the {of}");
        flow.put(&Block::headed(&title, &lines, room.width()));
    }
    flow.put(&Block::headed("Cut", &[cut(job)], room.width()));
    let noticed = noticed(job);
    if !noticed.is_empty() {
        flow.put(&Block::headed("Noticed", &noticed, room.width()));
    }
    flow.put(&Block::headed("Take care", &cautions(job), room.width()));
    flow.into_pages()
}

fn put_with_picture(flow: &mut Flow, mut block: Block, stage: &Stage) {
    block.least = PICTURE.1;
    let area = flow.put(&block);
    let room = Rect::new(area.x1 - PICTURE.0, area.y1 - PICTURE.1, area.x1, area.y1);
    flow.add(picture(stage, room));
}

fn operation_block(
    job: &Job<'_>,
    (number, stage, own): (usize, &Stage, &Operation),
    width: f64,
) -> Block {
    let show = job.show();
    let half = if own.half.is_empty() {
        String::new()
    } else {
        format!(" ({})", own.half)
    };
    let mut lines = vec![format!("{}.", own.what)];
    let turn = own.turn.name();
    let after = if turn.is_empty() { "" } else { "; " };
    lines.push(format!("Where: {}{after}{turn}.", own.place.name()));
    if let Some((from, to)) = own.hot_mm {
        lines.push(format!(
            "Hot: {} to {} from the tip; held {}.",
            show.number(show.roughly(from)),
            show.text(show.roughly(to)),
            own.held_words(show)
        ));
    }
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

/// A row of the table of stations: the part, from the tip, depth, width.
type Row = [String; 4];

/// The finished half at places along it, as a table whose second half stands beside its first.
fn stations(job: &Job<'_>, flow: &mut Flow, room: Rect) {
    for (half, piece) in job.pieces().iter().enumerate() {
        let name = if job.is_tool() {
            "The tool, finished: calipers by station"
        } else {
            [
                "The half, finished: calipers by station",
                "The second half, finished",
            ][half.min(1)]
        };
        let rows = station_rows(job, piece);
        let (first, second) = rows.split_at(rows.len().div_ceil(2));
        let mut block = Block::headed(name, &[], room.width());
        #[allow(clippy::cast_precision_loss, reason = "a few rows")]
        let high = (first.len() + 2) as f64 * NEAR_LINE;
        block.least = high;
        let area = flow.put(&block);
        let under = area.y1 - 0.85 * NEAR - NEAR_LINE;
        flow.add(table(first, Point::new(area.x0, under)));
        flow.add(table(second, Point::new(area.center().x, under)));
    }
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

/// Rows under their heads, from a place down; nothing of none.
fn table(rows: &[Row], mut at: Point) -> Vec<Item> {
    /// Columns: the part, from the tip, depth, width, mm from the left.
    const COLUMNS: [f64; 4] = [0.0, 25.0, 50.0, 72.0];
    let head = ["part", "from the tip", "side view", "top view"].map(str::to_owned);
    let head = (!rows.is_empty()).then_some(&head);
    let mut items = Vec::new();
    for row in head.into_iter().chain(rows) {
        for (words, x) in row.iter().zip(COLUMNS) {
            let at = Point::new(at.x + x, at.y);
            items.push(text(at, words, NEAR, Weight::Plain, Align::Start));
        }
        at.y -= NEAR_LINE;
    }
    items
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
    all.extend(at_the_forge.into_iter().map(str::to_owned));
    all.push(caution::ON_EVERY_SHEET.to_owned());
    all
}
