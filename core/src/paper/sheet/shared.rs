//! Pages that several views share: each part in its place, with its joints and its name.

use kurbo::{Affine, Point, Rect, Size};

use super::block::{NAME, Part};
use super::ink::inside;
use super::joins::{self, Lies};
use super::layout::Layout;
use super::pack::{Packed, Spot};
use super::plan::Shared;
use super::strip::{Map, Strip, map_room};
use super::{Page, Run, TitleBlock, furniture};
use crate::paper::{Align, GroupItem, Item};

/// The pages of views that share them.
pub(super) fn pages(shared: &Shared<'_>, title: &TitleBlock, run: Run) -> Vec<Page> {
    let page = |(index, packed): (usize, &Packed)| {
        let layout = &shared.layouts[packed.window];
        let mut items: Vec<Item> = packed
            .spots
            .iter()
            .map(|spot| placed(shared, spot, layout, run))
            .collect();
        let strip = Strip {
            layout,
            title,
            name: names(shared, packed),
            reduced: shared.sheets.first().map_or(1, |(_, sheet)| sheet.reduced),
            number: run.first + index,
            total: run.total,
            map: map(shared, index),
        };
        items.extend(furniture(&strip));
        Page {
            width_mm: layout.paper.width(),
            height_mm: layout.paper.height(),
            items,
        }
    };
    shared.pages.iter().enumerate().map(page).collect()
}

/// The titles of the sheets that a page shows something of.
fn names(shared: &Shared<'_>, packed: &Packed) -> String {
    let has = |sheet: usize| {
        let mut parts = packed
            .spots
            .iter()
            .map(|spot| &shared.cut.parts[spot.piece]);
        parts.any(|part| shared.blocks[part.block].sheet == sheet)
    };
    let shown = shared.sheets.iter().filter(|(index, _)| has(*index));
    let titles: Vec<&str> = shown.map(|(_, sheet)| sheet.title.as_str()).collect();
    titles.join(" · ")
}

/// A part where it lies on its page.
fn placed(shared: &Shared<'_>, spot: &Spot, layout: &Layout, run: Run) -> Item {
    let part = &shared.cut.parts[spot.piece];
    let block = &shared.blocks[part.block];
    let mut items = inside(block.items.iter().copied(), part.shown);
    items.extend(joints(shared, spot.piece, run));
    items.extend(part.name.iter().map(|(at, words)| named(*at, words)));
    let corner = layout.window.origin() + spot.at.to_vec2();
    let (items, shown) = if spot.turned {
        let quarter = Affine::rotate(std::f64::consts::FRAC_PI_2);
        let turned = items.into_iter().map(Item::turned).collect();
        (turned, quarter.transform_rect_bbox(part.shown))
    } else {
        (items, part.shown)
    };
    Item::Group(GroupItem {
        name: "drawing".into(),
        view: None,
        shift: corner - shown.origin(),
        clip: Some(Rect::from_origin_size(corner, shown.size())),
        items,
    })
}

fn named(at: Point, words: &str) -> Item {
    Item::text(at, words, NAME, Align::Start)
}

/// The joints of a part.
fn joints(shared: &Shared<'_>, part: usize, run: Run) -> Vec<Item> {
    let shown = shared.cut.parts[part].shown;
    let mut items = Vec::new();
    for (index, joint) in shared.cut.joints.iter().enumerate() {
        let [left, right] = joint.parts;
        let (lies, other) = match part {
            part if part == left => (Lies::Left, right),
            part if part == right => (Lies::Right, left),
            _ => continue,
        };
        let letter = joins::letter(run.letters + index);
        let page = run.first + shared.page_of(other);
        items.extend(joins::draw_joint(joint, lies, (&letter, page), shown));
    }
    items
}

/// The pages in rows as they are read, each with its parts, so that they are as large in the map as can be.
fn map(shared: &Shared<'_>, here: usize) -> Map {
    let layouts = shared.pages.iter().map(|page| &shared.layouts[page.window]);
    let sizes = layouts.clone().map(|layout| layout.paper.size());
    let field = sizes.fold(Size::ZERO, |a, b| {
        Size::new(a.width.max(b.width), a.height.max(b.height))
    });
    let title = shared.layouts[shared.pages[here].window].title;
    let room = map_room(title, shared.pages.len());
    let columns = columns(shared.pages.len(), field, room);
    let page = |(index, packed): (usize, &Packed)| {
        let layout = &shared.layouts[packed.window];
        let (column, row) = (index % columns, index / columns);
        let middle = Point::new(
            (column as f64 + 0.5) * field.width,
            -(row as f64 + 0.5) * field.height,
        );
        let shift = middle - layout.paper.center();
        let part = |spot: &Spot| lies(&shared.cut.parts[spot.piece], spot, layout) + shift;
        let parts = packed.spots.iter().map(part);
        (layout.paper + shift, parts.collect())
    };
    Map {
        pages: shared.pages.iter().enumerate().map(page).collect(),
        here,
        joined: !shared.cut.joints.is_empty(),
    }
}

/// In how many columns so many fields are largest in a room.
fn columns(count: usize, field: Size, room: Size) -> usize {
    let scale = |columns: &usize| {
        let rows = count.div_ceil(*columns);
        let across = room.width / (*columns as f64 * field.width);
        across.min(room.height / (rows as f64 * field.height))
    };
    let all = 1..=count.max(1);
    let best = all.max_by(|a, b| scale(a).total_cmp(&scale(b)));
    best.unwrap_or(1)
}

/// What a part covers of its page.
fn lies(part: &Part, spot: &Spot, layout: &Layout) -> Rect {
    let size = part.shown.size();
    let size = if spot.turned {
        kurbo::Size::new(size.height, size.width)
    } else {
        size
    };
    Rect::from_origin_size(layout.window.origin() + spot.at.to_vec2(), size)
}
