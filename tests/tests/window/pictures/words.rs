//! No word of the smallest window is cut, left out or put into a second line of its button, and none
//! stands on another.

use egui::emath::Rot2;
use egui::epaint::{ClippedShape, Shape, TextShape};
use egui::{Pos2, Rect, Vec2};
use reinwright_core::asked::{Units, parse_bar, parse_work};
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::JawKind;
use reinwright_core::tool::ToolKind;
use reinwright_tests::painted::Seen;
use reinwright_tests::window::SMALL;

use super::pages::{self, Way};

/// A text and where it may be seen.
fn texts(seen: &Seen) -> Vec<(TextShape, Rect)> {
    fn gather(shape: &Shape, clip: Rect, into: &mut Vec<(TextShape, Rect)>) {
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

/// What is painted, in its order: lines of text, and grounds that hide what was there before.
enum Painted {
    Line(Line),
    Ground(Rect),
}

/// A line of text, turned or not.
struct Line {
    words: String,
    corners: [Pos2; 4],
    /// Where it may be seen.
    clip: Rect,
}

impl Line {
    fn around(&self) -> Rect {
        Rect::from_points(&self.corners)
    }

    /// Of which two lines may share something.
    fn shared(&self, other: &Self) -> Rect {
        let both = self.around().intersect(other.around());
        both.intersect(self.clip).intersect(other.clip)
    }

    /// How deep one stands in the other: the least that they share along any side of theirs (separating axes; boxes
    /// that share nothing along one of them do not meet).
    fn depth(&self, other: &Self) -> f32 {
        let sides = [self, other].into_iter().flat_map(|own| {
            let [a, b, _, d] = own.corners;
            [b - a, d - a]
        });
        let reach = |of: &Self, along: Vec2| {
            let places = of.corners.map(|at| at.to_vec2().dot(along));
            let least = places.into_iter().fold(f32::INFINITY, f32::min);
            let most = places.into_iter().fold(f32::NEG_INFINITY, f32::max);
            (least, most)
        };
        let shared = |along: Vec2| {
            let (own, its) = (reach(self, along), reach(other, along));
            own.1.min(its.1) - own.0.max(its.0)
        };
        sides
            .map(|side| shared(side.normalized()))
            .fold(f32::INFINITY, f32::min)
    }
}

fn painted(shape: &Shape, clip: Rect, into: &mut Vec<Painted>) {
    match shape {
        Shape::Text(text) => into.extend(lines(text, clip).map(Painted::Line)),
        Shape::Rect(ground) if ground.fill.a() == u8::MAX => {
            into.push(Painted::Ground(ground.rect.intersect(clip)));
        }
        Shape::Vec(all) => all.iter().for_each(|one| painted(one, clip, into)),
        _ => {}
    }
}

/// The lines of a text by the boxes of their letters, as far as they may be seen; turned about its place.
fn lines(text: &TextShape, clip: Rect) -> impl Iterator<Item = Line> {
    let turn = Rot2::from_angle(text.angle);
    text.galley.rows.iter().filter_map(move |row| {
        let letters = row.visuals.mesh_bounds.translate(row.pos.to_vec2());
        let letters = if text.angle == 0.0 {
            let away = text.pos.to_vec2();
            letters.translate(away).intersect(clip).translate(-away)
        } else {
            letters
        };
        let corners = [
            letters.left_top(),
            letters.right_top(),
            letters.right_bottom(),
            letters.left_bottom(),
        ];
        let corners = corners.map(|at| text.pos + turn * at.to_vec2());
        let words = row.text();
        let line = Line {
            words,
            corners,
            clip,
        };
        let is_seen = letters.is_positive() && line.around().intersect(clip).is_positive();
        (is_seen && !line.words.trim().is_empty()).then_some(line)
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
        let Painted::Line(line) = later else {
            continue;
        };
        let mut hidden = Vec::new();
        for before in all[..at].iter().rev() {
            match before {
                Painted::Ground(ground) => hidden.push(*ground),
                Painted::Line(under) => {
                    // The same words a hair to the right are how bold ones are made.
                    let moved = line.corners[0] - under.corners[0];
                    let twice = line.words == under.words && moved.length() < BOLD;
                    let shared = line.shared(under);
                    let in_sight = shared.width() > HAIR && shared.height() > HAIR;
                    let meets = !twice && in_sight && line.depth(under) > HAIR;
                    if meets && !hidden.iter().any(|ground| ground.contains_rect(shared)) {
                        let (words, other) = (&line.words, &under.words);
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

/// The panel of answers is no wider than it was drawn, whatever stands in it: here stout pairs of every jaw, whose
/// numbers are the longest.
#[test]
fn no_word_of_the_answers_is_cut_for_any_jaw() {
    const ANSWERS: [&str; 4] = ["head", "fit", "strength", "making"];
    let way = Way {
        size: SMALL,
        units: Units::Inch,
        theme: "light",
        fine: 1.0,
    };
    let mut found = Vec::new();
    for &jaw in JawKind::ALL {
        let (work, bar) = (
            parse_work("1 13/64 in square").expect("work"),
            parse_bar("5/8 x 1 1/4 in flat").expect("a bar"),
        );
        let design = Document::starting(jaw, work, bar);
        for page in pages::ALL.iter().filter(|page| ANSWERS.contains(&page.0)) {
            let seen = pages::show_design(*page, design.clone(), way);
            // A name goes on in its field.
            let words = cut(&seen).into_iter().filter(|words| *words != design.name);
            found.extend(words.map(|words| format!("{jaw:?}, {}: {words:?}", page.0)));
        }
    }
    assert!(found.is_empty(), "{found:#?}");
}

/// Every value of every jaw and every tool is called by words that fit into the list of parts, which is looked at whole.
#[test]
fn no_word_of_the_parts_is_cut_for_any_jaw_or_tool() {
    let way = Way {
        size: (SMALL.0, 2400.0),
        units: Units::Inch,
        theme: "light",
        fine: 1.0,
    };
    let page = |all: &'static [pages::Page], name: &str| {
        let found = all.iter().find(|page| page.0 == name);
        *found.expect("a page")
    };
    let mut found = Vec::new();
    for &jaw in JawKind::ALL {
        let (work, bar) = (
            parse_work("3/4 in square").expect("work"),
            parse_bar("3/4 in square").expect("a bar"),
        );
        let design = Document::starting(jaw, work, bar);
        let seen = pages::show_design(page(pages::ALL, "head"), design.clone(), way);
        let words = cut(&seen).into_iter().filter(|words| *words != design.name);
        found.extend(words.map(|words| format!("{jaw:?}: {words:?}")));
    }
    for kind in ToolKind::ALL {
        let seen = pages::show_tool(page(pages::OF_TOOL, "tool"), *kind, way);
        found.extend(
            cut(&seen)
                .into_iter()
                .map(|words| format!("{kind}: {words:?}")),
        );
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

/// By hand: two words of 40 x 10 points, the second turned about its place.
#[test]
fn turned_words_meet_by_their_turned_boxes() {
    let word = |at: (f32, f32), degrees: f32| {
        let turn = Rot2::from_angle(degrees.to_radians());
        let corners = [(0.0, 0.0), (40.0, 0.0), (40.0, 10.0), (0.0, 10.0)];
        let corners = corners.map(|(x, y)| Pos2::from(at) + turn * Vec2::new(x, y));
        Line {
            words: String::new(),
            corners,
            clip: Rect::EVERYTHING,
        }
    };
    let level = word((0.0, 0.0), 0.0);
    let table = [
        ((50.0, 0.0), 0.0, -10.0),
        ((35.0, 0.0), 0.0, 5.0),
        ((25.0, 5.0), 90.0, 5.0),
        // Its upper corner lies on the lower right one: the boxes around them share much, they nothing.
        ((40.0, 10.0), 45.0, 0.0),
        ((40.0, 10.0), -45.0, 0.0),
        ((20.0, 8.0), 45.0, 2.0),
    ];
    for (at, degrees, expected) in table {
        let depth = level.depth(&word(at, degrees));
        assert!(
            (depth - expected).abs() < 1e-3,
            "{at:?}, {degrees}: {depth}"
        );
    }
}
