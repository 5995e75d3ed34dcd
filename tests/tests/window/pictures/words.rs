//! No word of the smallest window is cut, left out or put into a second line of its button, and none
//! stands on another.

use egui::epaint::{ClippedShape, Shape, TextShape};
use reinwright_core::asked::Units;
use reinwright_core::tool::ToolKind;
use reinwright_tests::painted::Seen;
use reinwright_tests::window::SMALL;

use super::pages::{self, Way};

/// A text and where it may be seen.
fn texts(seen: &Seen) -> Vec<(TextShape, egui::Rect)> {
    fn gather(shape: &Shape, clip: egui::Rect, into: &mut Vec<(TextShape, egui::Rect)>) {
        match shape {
            Shape::Text(text) => into.push((text.clone(), clip)),
            Shape::Vec(all) => all.iter().for_each(|one| gather(one, clip, into)),
            _ => {}
        }
    }
    let mut found = Vec::new();
    for ClippedShape {
        clip_rect, shape, ..
    } in &seen.window.output().shapes
    {
        gather(shape, *clip_rect, &mut found);
    }
    found
}

/// Half a point of a letter is nothing that is missed.
const HAIR: f32 = 1.0;

/// The words that are cut at a side or end in dots.
fn cut(seen: &Seen) -> Vec<String> {
    let mut found = Vec::new();
    for (text, clip) in texts(seen) {
        let place = text.visual_bounding_rect();
        let in_sight = clip.y_range().contains(place.center().y) && place.width() > 0.0;
        let cut = place.right() > clip.right() + HAIR || place.left() < clip.left() - HAIR;
        if in_sight && (cut || text.galley.elided) {
            found.push(text.galley.text().to_owned());
        }
    }
    found
}

/// How far the second time of a bold text stands from the first at the most, points.
const BOLD: f32 = 1.0;

/// What is painted, in its order: lines of text as far as they may be seen, and grounds that hide what
/// was there before.
enum Painted {
    Line(String, egui::Rect),
    Ground(egui::Rect),
}

fn painted(shape: &Shape, clip: egui::Rect, into: &mut Vec<Painted>) {
    match shape {
        Shape::Text(text) if text.angle == 0.0 => into.extend(lines(text, clip)),
        Shape::Rect(ground) if ground.fill.a() == u8::MAX => {
            into.push(Painted::Ground(ground.rect.intersect(clip)));
        }
        Shape::Vec(all) => all.iter().for_each(|one| painted(one, clip, into)),
        _ => {}
    }
}

/// The lines of a text by the boxes of their letters.
fn lines(text: &TextShape, clip: egui::Rect) -> impl Iterator<Item = Painted> {
    text.galley.rows.iter().filter_map(move |row| {
        let letters = row.visuals.mesh_bounds;
        let place = letters.translate(text.pos.to_vec2() + row.pos.to_vec2());
        let seen = place.intersect(clip);
        let words = row.text();
        (seen.is_positive() && !words.trim().is_empty()).then_some(Painted::Line(words, seen))
    })
}

/// Pairs of words of which one stands on the other.
fn overlapping(seen: &Seen) -> Vec<String> {
    let mut all = Vec::new();
    for part in &seen.window.output().shapes {
        painted(&part.shape, part.clip_rect, &mut all);
    }
    let mut found = Vec::new();
    for (at, later) in all.iter().enumerate() {
        let Painted::Line(words, place) = later else {
            continue;
        };
        let mut hidden = Vec::new();
        for before in all[..at].iter().rev() {
            match before {
                Painted::Ground(ground) => hidden.push(*ground),
                Painted::Line(other, under) => {
                    // The same words a hair to the right are how bold ones are made.
                    let twice = words == other && (place.min - under.min).length() < BOLD;
                    let shared = place.intersect(*under);
                    let meets = !twice && shared.width() > HAIR && shared.height() > HAIR;
                    if meets && !hidden.iter().any(|ground| ground.contains_rect(shared)) {
                        found.push(format!("{words:?} on {other:?} at {shared:?}"));
                    }
                }
            }
        }
    }
    found
}

/// Sights that show a part of the drawing, whose sizes go on beyond the sheet.
const PARTS_OF_IT: [&str; 2] = ["rein", "true size"];

#[test]
fn no_word_is_cut_in_the_smallest_window() {
    none_is_cut_at(1.0, Units::Inch);
}

#[test]
fn no_word_is_cut_in_millimetres() {
    none_is_cut_at(1.0, Units::Millimetre);
}

/// At 200 % letters stand on other parts of a point, and so are a little wider or narrower.
#[test]
fn no_word_is_cut_at_twice_the_pixels() {
    none_is_cut_at(2.0, Units::Inch);
}

#[track_caller]
fn none_is_cut_at(fine: f32, units: Units) {
    let mut found = Vec::new();
    let whole = pages::ALL
        .iter()
        .filter(|page| !PARTS_OF_IT.contains(&page.0));
    for page in whole {
        let way = Way {
            size: SMALL,
            units,
            theme: "light",
            fine,
        };
        let seen = pages::show(*page, "v-bit-square", way);
        let words = cut(&seen).into_iter().chain(overlapping(&seen));
        found.extend(words.map(|words| format!("{}: {words:?}", page.0)));
    }
    assert!(found.is_empty(), "{found:#?}");
}

#[test]
fn no_word_of_a_tool_is_cut_in_the_smallest_window() {
    let mut found = Vec::new();
    let whole = |page: &&pages::Page| page.0 != "tool true size";
    for page in pages::OF_TOOL.iter().filter(whole) {
        for kind in [ToolKind::RoundPunch, ToolKind::CutOff] {
            let way = Way {
                size: SMALL,
                units: Units::Inch,
                theme: "light",
                fine: 1.0,
            };
            let seen = pages::show_tool(*page, kind, way);
            let words = cut(&seen).into_iter().chain(overlapping(&seen));
            found.extend(words.map(|words| format!("{} {kind}: {words:?}", page.0)));
        }
    }
    assert!(found.is_empty(), "{found:#?}");
}
