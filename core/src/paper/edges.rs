//! Drawings to be cut out along their edges, and without the colours of their parts.

use super::{Drawing, Fill, GroupItem, Item, Line, PathItem};

impl Drawing {
    /// The visible edges alone, to be cut out along them: no colours, sizes or words.
    #[must_use]
    pub fn edges_alone(self) -> Self {
        Self {
            items: edges(self.items),
        }
    }

    /// The same with the edges of another drawing of the same views in thin lines.
    #[must_use]
    pub fn with_thin(mut self, other: &Self) -> Self {
        add_thin(&mut self.items, &other.items);
        self
    }

    /// The same without colours: what was filled is blank paper, and hides what lies behind it as before.
    #[must_use]
    pub fn uncoloured(self) -> Self {
        Self {
            items: self.items.into_iter().map(uncoloured).collect(),
        }
    }
}

/// Adds to each view among items the edges of the same view among others, in thin lines; a group that holds views
/// is gone through.
fn add_thin(items: &mut [Item], others: &[Item]) {
    let groups = others.iter().filter_map(|item| match item {
        Item::Group(group) => Some(group),
        Item::Path(_) | Item::Text(_) => None,
    });
    for item in items {
        let Item::Group(group) = item else { continue };
        let same = |other: &&GroupItem| (other.view, &other.name) == (group.view, &group.name);
        let Some(same) = groups.clone().find(same) else {
            continue;
        };
        if is_view(group) {
            group.items.extend(thin(edges(same.items.clone())));
        } else {
            add_thin(&mut group.items, &same.items);
        }
    }
}

/// Whether it is one view, and not several set together; those of what stands are told by their names alone.
fn is_view(group: &GroupItem) -> bool {
    let holds_views = || {
        let views = |item: &Item| matches!(item, Item::Group(own) if is_view(own));
        group.items.iter().any(views)
    };
    group.view.is_some() || group.name.ends_with(" view") && !holds_views()
}

/// The visible edges among items, and blank paper where steel hides those behind it.
fn edges(items: Vec<Item>) -> Vec<Item> {
    let edge = |item: Item| match item {
        Item::Path(path) => {
            let line = path.line.filter(|line| *line == Line::Outline);
            let fill = path.fill.filter(|fill| hides(*fill)).map(blank);
            let item = PathItem { line, fill, ..path };
            (line.is_some() || fill.is_some()).then_some(Item::Path(item))
        }
        Item::Text(_) => None,
        Item::Group(group) => {
            let items = edges(group.items);
            (!items.is_empty()).then_some(Item::Group(GroupItem { items, ..group }))
        }
    };
    items.into_iter().filter_map(edge).collect()
}

/// Whether an area is of a thing: what is blanked for letters, and what is all ink, is not.
fn hides(fill: Fill) -> bool {
    match fill {
        Fill::Paper | Fill::Ink => false,
        Fill::Part(_)
        | Fill::OtherHalf
        | Fill::Work
        | Fill::Rivet
        | Fill::Waste
        | Fill::Hot
        | Fill::Warning
        | Fill::Stress(_) => true,
    }
}

/// Edges as another position is drawn.
fn thin(items: Vec<Item>) -> Vec<Item> {
    let thin = |item: Item| match item {
        Item::Path(path) => path.line.map(|_| {
            Item::Path(PathItem {
                line: Some(Line::Neighbour),
                fill: None,
                ..path
            })
        }),
        Item::Text(text) => Some(Item::Text(text)),
        Item::Group(group) => Some(Item::Group(GroupItem {
            items: thin(group.items),
            ..group
        })),
    };
    items.into_iter().filter_map(thin).collect()
}

fn uncoloured(item: Item) -> Item {
    match item {
        Item::Path(path) => Item::Path(PathItem {
            fill: path.fill.map(blank),
            ..path
        }),
        Item::Text(text) => Item::Text(text),
        Item::Group(group) => Item::Group(GroupItem {
            items: group.items.into_iter().map(uncoloured).collect(),
            ..group
        }),
    }
}

/// Blank paper for all that is no ink.
fn blank(fill: Fill) -> Fill {
    if fill == Fill::Ink {
        Fill::Ink
    } else {
        Fill::Paper
    }
}
