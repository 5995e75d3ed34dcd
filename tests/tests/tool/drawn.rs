//! The views of tools.

use reinwright_core::asked::parse_bar;
use reinwright_core::draw::{self, DrawOptions};
use reinwright_core::paper::{Drawing, Item, ink};
use reinwright_core::tool::{Mount, Tool, ToolKind, resolve};
use reinwright_tests::tools::all;
use reinwright_tests::within;

fn texts(items: &[Item], found: &mut Vec<kurbo::Rect>, shift: kurbo::Vec2) {
    for item in items {
        match item {
            Item::Text(text) => {
                let area = item
                    .bounds()
                    .unwrap_or_else(|| panic!("{} has room", text.text));
                found.push(area + shift);
            }
            Item::Group(group) => texts(&group.items, found, shift + group.shift),
            Item::Path(_) => {}
        }
    }
}

/// No lettering lies on another.
#[test]
fn no_words_collide() {
    for (name, own) in all() {
        let drawing: Drawing = draw::tool(&own, &resolve(&own), &DrawOptions::default());
        let mut found = Vec::new();
        texts(&drawing.items, &mut found, kurbo::Vec2::ZERO);
        assert!(found.len() > 6, "{name}: {}", found.len());
        for (at, a) in found.iter().enumerate() {
            for b in &found[at + 1..] {
                let both = a.intersect(*b);
                assert!(
                    both.width() <= 0.1 || both.height() <= 0.1,
                    "{name}: {a:?} {b:?}"
                );
            }
        }
    }
}

/// A struck tool is as long on paper as in steel, a hardy tool as high.
#[test]
fn views_are_full_size() {
    for (name, own) in all() {
        let model = resolve(&own);
        let options = DrawOptions {
            sizes: draw::Sizes::None,
            names: draw::Names::LeftOut,
            ..Default::default()
        };
        let drawing = draw::tool(&own, &model, &options);
        let first = drawing.items[0].bounds().expect("a view");
        // The axis runs past both ends.
        let past = 2.0 * 0.6 * 3.5;
        let long = match own.shape.mount {
            Mount::Struck(_) => first.width(),
            Mount::Hardy(_) => first.height(),
        };
        within(name, long, model.piece.length_mm() + past, 0.3);
        assert!(ink::svg(&drawing, name).contains("<path"), "{name}");
    }
}

/// Whether something that is drawn is told in so many words.
fn says(items: &[Item], words: &str) -> bool {
    items.iter().any(|item| match item {
        Item::Text(text) => text.text == words,
        Item::Group(group) => says(&group.items, words),
        Item::Path(_) => false,
    })
}

/// A section of a round punch is told by its diameter, as its views tell it.
#[test]
fn round_sections_are_told_by_their_diameter() {
    let bar = parse_bar("1 in round").expect("a bar");
    let size = "3/8 in".parse().expect("a size");
    let punch = Tool::starting(ToolKind::RoundPunch, size, bar);
    let drawing = draw::tool(&punch, &resolve(&punch), &DrawOptions::default());
    for (words, told) in [("\u{d8}3/8", true), ("3/8 \u{d7} 3/8", false)] {
        assert_eq!(says(&drawing.items, words), told, "{words}");
    }
}
