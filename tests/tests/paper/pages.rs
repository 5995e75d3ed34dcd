//! How sheets are cut into pages and how the pages join.

use kurbo::{Point, Rect, Shape, Vec2};
use proptest::prelude::*;
use reinwright_core::paper::{
    Align, Fill, GroupItem, Item, Line, Page, Paper, PaperOptions, Projection, Sheet, TitleBlock,
    tile,
};

use super::reader::{self, Seen};
use super::{FILE, block, print, sheet, straight, title};
use reinwright_tests::within;

/// Upright strokes every 20 mm, of a length that tells them apart, and one slanting line across.
fn ruler() -> Sheet {
    let mut items: Vec<Item> = (0..=24)
        .map(|k| {
            let x = f64::from(k) * 20.0;
            let path = straight((x, 0.0), (x, 10.0 + f64::from(k)));
            Item::line(path, Line::Outline)
        })
        .collect();
    items.push(Item::line(
        straight((0.0, 60.0), (480.0, 140.0)),
        Line::Warning,
    ));
    sheet(items)
}

/// The strokes of the ruler on a page that show whole: their number and where they stand.
fn strokes(seen: &Seen) -> Vec<(f64, f64)> {
    let wide = seen.lines().filter(|line| line.colour == [0, 0, 0]);
    let boxes = wide.map(|line| (line.path.bounding_box(), line.clip.expect("a window")));
    boxes
        .filter(|(stroke, clip)| (clip.x0..=clip.x1).contains(&stroke.x0))
        .map(|(stroke, _)| ((stroke.height() - 10.0).round(), stroke.x0))
        .collect()
}

#[test]
fn a_drawing_lands_on_the_right_tile_at_the_right_place() {
    let pages = reader::read(&print(&[ruler()], Paper::A4));
    assert_eq!(pages.len(), 2, "480 mm on two A4 pages that lie across");
    let mut shown = [0; 25];
    for page in &pages {
        let strokes = strokes(page);
        let (first, at) = strokes[0];
        for (number, x) in strokes {
            within("stroke", x - at, (number - first) * 20.0, FILE);
            shown[number as usize] += 1;
        }
    }
    assert!(shown.iter().all(|times| *times >= 1), "{shown:?}");
    assert!(shown.iter().sum::<i32>() >= 25, "{shown:?}");
}

/// Where a slanting line is on a page.
fn slant(seen: &Seen) -> Rect {
    let line = seen.lines().find(|line| line.colour == [213, 94, 0]);
    line.expect("the slanting line").path.bounding_box()
}

#[test]
fn pages_laid_cross_on_cross_continue_every_line() {
    let pages = reader::read(&print(&[ruler()], Paper::A4));
    let [left, right] = &pages[..] else {
        panic!("two pages");
    };
    let by_a = left.find("A1") - right.find("A1");
    let by_b = left.find("A2") - right.find("A2");
    assert!(
        left.find("A1").distance(left.find("A2")) > 30.0,
        "too close to align by"
    );
    within("the two marks agree", (by_a - by_b).hypot(), 0.0, FILE);
    let (a, b) = (slant(left), slant(right) + by_a);
    for (found, expected) in [(b.x0, a.x0), (b.x1, a.x1), (b.y0, a.y0), (b.y1, a.y1)] {
        within("line across the joint", found, expected, FILE);
    }
    // Both windows show the overlap of 10 mm.
    let clip = |seen: &Seen| seen.paths[0].clip.expect("a window");
    within(
        "overlap",
        clip(left).x1 - (clip(right) + by_a).x0,
        10.0,
        FILE,
    );
    assert!(
        left.words().contains(&"page 2".into()),
        "{:?}",
        left.words()
    );
    assert!(
        left.words().contains(&"page 1 of 2".into()),
        "{:?}",
        left.words()
    );
}

#[test]
fn every_page_warns_and_says_what_it_is() {
    let sheets = [ruler(), block(90.0, 50.0)];
    let pages = reader::read(&print(&sheets, Paper::Letter));
    for (index, page) in pages.iter().enumerate() {
        let words = page.words().join(" ");
        let number = format!("page {} of {}", index + 1, pages.len());
        for expected in [
            number.as_str(),
            "Paper burns.",
            "never lay paper on hot steel",
            "Print at 100 %",
            "COLD SIZE",
            "Bench tongs",
            "Half A, finished",
            "sizes in inches",
            "2026-03-01 · Reinwright",
        ] {
            assert!(
                words.contains(expected),
                "\"{expected}\" is not in \"{words}\""
            );
        }
    }
}

/// The group of a page that has a name.
fn group<'a>(page: &'a Page, name: &str) -> &'a GroupItem {
    let found = page.items.iter().find_map(|item| match item {
        Item::Group(group) if group.name == name => Some(group),
        Item::Group(_) | Item::Path(_) | Item::Text(_) => None,
    });
    found.unwrap_or_else(|| panic!("no group {name}"))
}

/// The frame around what is drawn on a page.
fn frame(page: &Page) -> Rect {
    let frames = page.items.iter().filter_map(|item| match item {
        Item::Path(path) if path.line == Some(Line::Frame) => Some(path.path.bounding_box()),
        Item::Path(_) | Item::Text(_) | Item::Group(_) => None,
    });
    frames.reduce(|a, b| a.union(b)).expect("a frame")
}

#[test]
fn the_cone_stands_as_the_projection_says() {
    // ISO 5456-2: the cone's small end is to its left; seen from there, its circles are on the
    // right in first angle and on the left in third angle.
    for (projection, circles_left) in [
        (Projection::ThirdAngle, true),
        (Projection::FirstAngle, false),
    ] {
        let title = TitleBlock {
            projection,
            ..TitleBlock::default()
        };
        let pages = tile(&[block(50.0, 50.0)], &PaperOptions::new(Paper::A4), &title);
        let Some(Item::Group(title)) = pages[0].items.last() else {
            panic!("the title block is last");
        };
        let symbol = title.items.iter().find_map(|item| match item {
            Item::Group(group) => Some(group),
            Item::Path(_) | Item::Text(_) => None,
        });
        let paths: Vec<_> = symbol
            .expect("the symbol")
            .items
            .iter()
            .filter_map(|item| match item {
                Item::Path(path) => Some(&path.path),
                Item::Group(_) | Item::Text(_) => None,
            })
            .collect();
        let curved = |path: &&&kurbo::BezPath| {
            path.segments()
                .any(|s| matches!(s, kurbo::PathSeg::Cubic(_)))
        };
        let circle = paths.iter().find(curved).unwrap().bounding_box();
        let cone = paths
            .iter()
            .find(|p| p.segments().count() == 4 && !curved(p))
            .unwrap();
        assert_eq!(circle.x1 < cone.bounding_box().x0, circles_left);
        let height = |x: f64| {
            let corners = cone.segments().map(|s| kurbo::ParamCurve::start(&s));
            let ys: Vec<f64> = corners
                .filter(|p| (p.x - x).abs() < 1e-9)
                .map(|p| p.y)
                .collect();
            (ys[0] - ys[1]).abs()
        };
        assert!(height(cone.bounding_box().x0) < height(cone.bounding_box().x1));
    }
}

#[test]
fn a_few_millimetres_cost_no_page_when_the_drawing_can_move() {
    let pages = |width, height| {
        tile(
            &[block(width, height)],
            &PaperOptions::new(Paper::A4),
            &title(),
        )
        .len()
    };
    let window = frame(
        &tile(
            &[block(200.0, 50.0)],
            &PaperOptions::new(Paper::A4),
            &title(),
        )[0],
    );
    assert!(
        window.width() > window.height(),
        "a wide drawing lies on a wide page"
    );
    // The widest line's half on both sides is ink as well.
    let most = window.width() - 1.0;
    assert_eq!(pages(most, 50.0), 1);
    assert_eq!(pages(most + 0.1, 50.0), 2);
    assert_eq!(pages(50.0, 250.0), 1, "upright instead");
    let two = 2.0 * window.width() - 10.0 - 1.0;
    assert_eq!(pages(two, 50.0), 2);
    assert_eq!(pages(two + 0.1, 50.0), 3);
}

#[test]
fn what_fits_on_a_page_is_in_its_middle() {
    let pages = tile(
        &[block(120.0, 80.0)],
        &PaperOptions::new(Paper::A4),
        &title(),
    );
    let drawing = group(&pages[0], "drawing");
    let centre = frame(&pages[0]).center();
    let off = Point::new(60.0, 40.0) + drawing.shift - centre;
    within("off the middle", off.hypot(), 0.0, 1e-9);
}

#[test]
fn a_joint_goes_where_it_cuts_no_text() {
    // In the middle of the drawing, where the joint of two pages would be.
    let words = Item::text(Point::new(215.0, 50.0), "3/4 × 1/2", 3.5, Align::Middle);
    let mut drawn = block(430.0, 150.0);
    drawn.drawing.items.push(words.clone());
    let pages = tile(&[drawn], &PaperOptions::new(Paper::A4), &title());
    assert_eq!(pages.len(), 2);
    let windows = pages.iter().map(|page| {
        let drawing = group(page, "drawing");
        drawing.clip.expect("a window") - drawing.shift
    });
    let place = words.bounds().expect("a text");
    let shown = windows.filter(|window| !place.intersect(*window).is_zero_area());
    assert_eq!(shown.count(), 1, "the text is on both sides of the joint");
}

/// Texts and bars around the window: apart from each other and from the drawing, and on the part
/// of the paper that a printer reaches.
#[track_caller]
fn check_furniture(options: PaperOptions, width: f64, height: f64, notes: &[String]) {
    let title = TitleBlock {
        design: "A long name of a design that somebody typed to see what becomes of it".into(),
        notes: notes.to_vec(),
        ..title()
    };
    for page in tile(&[block(width, height)], &options, &title) {
        let window = group(&page, "drawing").clip.expect("a window");
        let reach = Rect::new(0.0, 0.0, page.width_mm, page.height_mm)
            .inset(-options.margin)
            .inflate(1e-6, 1e-6);
        let mut texts = Vec::new();
        gather(&page.items, Vec2::ZERO, &mut texts);
        for (index, (name, text)) in texts.iter().enumerate() {
            assert_eq!(
                reach.union(*text),
                reach,
                "{}: {name} in the rim",
                options.paper
            );
            let inside = text.intersect(window);
            assert!(
                inside.is_zero_area(),
                "{}: {name} in the window",
                options.paper
            );
            for (other, place) in &texts[index + 1..] {
                let both = text.intersect(*place);
                assert!(both.is_zero_area(), "{}: {name} on {other}", options.paper);
            }
        }
    }
}

/// Texts and solid bars outside the window's groups, with their boxes.
fn gather(items: &[Item], shift: Vec2, found: &mut Vec<(String, Rect)>) {
    for item in items {
        match item {
            Item::Group(group) if group.clip.is_none() => {
                gather(&group.items, shift + group.shift, found);
            }
            Item::Group(_) => {}
            Item::Text(text) => found.push((text.text.clone(), text.bounds() + shift)),
            Item::Path(path) if path.fill == Some(Fill::Ink) && path.line.is_none() => {
                found.push(("bar".into(), path.path.bounding_box() + shift));
            }
            Item::Path(_) => {}
        }
    }
}

#[test]
fn furniture_keeps_clear_of_the_drawing_and_of_itself() {
    let note = "Half A and half B are forged from the same template, the same way up. ".repeat(9);
    for paper in Paper::NAMED {
        for (width, height) in [(100.0, 60.0), (60.0, 100.0), (490.0, 150.0), (150.0, 490.0)] {
            check_furniture(PaperOptions::new(paper), width, height, &[]);
            check_furniture(
                PaperOptions::new(paper),
                width,
                height,
                std::slice::from_ref(&note),
            );
        }
    }
    let tight = PaperOptions {
        paper: Paper::own(150.0, 150.0).unwrap(),
        margin: 15.0,
        overlap: 25.0,
    };
    check_furniture(tight, 200.0, 40.0, &[note]);
}

#[track_caller]
fn check_paper(text: &str, expected: Result<(f64, f64), &str>) {
    match (Paper::parse(text), expected) {
        (Ok(paper), Ok(size)) => {
            assert_eq!(paper.size(), size, "{text}");
            assert_eq!(
                Paper::parse(&paper.to_string()),
                Ok(paper),
                "{paper} reads back"
            );
        }
        (Err(error), Err(part)) => {
            let message = error.to_string();
            assert!(message.contains(part), "{text}: {message}");
            assert!(
                !message.contains('\n') && !message.ends_with('.'),
                "{message}"
            );
        }
        (found, expected) => panic!("{text}: found {found:?}, expected {expected:?}"),
    }
}

#[test]
fn papers_are_read_by_name_and_by_size() {
    check_paper(" A4 ", Ok((210.0, 297.0)));
    check_paper("Letter", Ok((215.9, 279.4)));
    check_paper("tabloid", Ok((279.4, 431.8)));
    // ISO 216 and ANSI Y14.1.
    check_paper("A2", Ok((420.0, 594.0)));
    check_paper("a1", Ok((594.0, 841.0)));
    check_paper("a0", Ok((841.0, 1189.0)));
    check_paper("ANSI C", Ok((431.8, 558.8)));
    check_paper("ansi d", Ok((558.8, 863.6)));
    check_paper("ansi e", Ok((863.6, 1117.6)));
    check_paper("300 x 500 mm", Ok((300.0, 500.0)));
    check_paper("300mm x 500mm", Ok((300.0, 500.0)));
    check_paper("12 × 18 in", Ok((304.8, 457.2)));
    check_paper("610 mm x 3000 mm", Ok((610.0, 3000.0)));
    check_paper("30 x 50 cm", Ok((300.0, 500.0)));
    check_paper("", Err("is not a paper"));
    check_paper("a9", Err("write a4, a3, letter"));
    check_paper("300 x 500", Err("is not a paper"));
    check_paper("-300 x 500 mm", Err("is not a paper"));
    check_paper("100 x 500 mm", Err("from 150 to 5000 mm"));
    check_paper("300 x 6000 mm", Err("from 150 to 5000 mm"));
}

fn papers() -> impl Strategy<Value = Paper> {
    let own = (150.0..900.0_f64, 150.0..900.0_f64).prop_map(|(w, h)| Paper::own(w, h).unwrap());
    prop_oneof![prop::sample::select(&Paper::NAMED[..]), own]
}

/// A drawing of dots, each a square 1 mm wide.
fn dots(places: &[(f64, f64)]) -> Sheet {
    let dot = |(x, y): &(f64, f64)| {
        let square = Rect::from_center_size((*x, *y), (1.0, 1.0));
        Item::fill(square.to_path(0.1), Fill::Ink)
    };
    sheet(places.iter().map(dot).collect())
}

/// Whether a page shows all of a dot.
fn shows(page: &Page, (x, y): (f64, f64)) -> bool {
    let drawing = group(page, "drawing");
    let window = drawing.clip.expect("a window");
    drawing.items.iter().any(|item| {
        let place = item.bounds().expect("a dot");
        place.center().distance(Point::new(x, y)) < 1e-9
            && window.union(place + drawing.shift) == window
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn every_point_is_on_a_page_and_no_page_is_too_many(
        paper in papers(),
        margin in 0.0..15.0_f64,
        overlap in 8.0..25.0_f64,
        places in prop::collection::vec((-700.0..700.0_f64, -400.0..400.0_f64), 1..25),
    ) {
        let options = PaperOptions { paper, margin, overlap };
        let drawn = dots(&places);
        let bounds = drawn.drawing.bounds();
        let pages = tile(&[drawn], &options, &title());
        for place in places {
            prop_assert!(pages.iter().any(|page| shows(page, place)), "{place:?} is on no page");
        }
        let window = group(&pages[0], "drawing").clip.expect("a window");
        let count = |shift: fn(Vec2) -> f64| {
            let mut shifts: Vec<f64> = pages.iter().map(|p| shift(group(p, "drawing").shift)).collect();
            shifts.sort_by(f64::total_cmp);
            shifts.dedup_by(|a, b| (*a - *b).abs() < 1e-6);
            shifts.len()
        };
        // One column or row fewer would not cover the drawing with its rim of 0.5 mm.
        for (count, window, length) in [
            (count(|s| s.x), window.width(), bounds.width() + 1.0),
            (count(|s| s.y), window.height(), bounds.height() + 1.0),
        ] {
            let fewer = count as f64 - 1.0;
            let covered = if fewer > 0.0 { fewer * window - (fewer - 1.0) * overlap } else { 0.0 };
            prop_assert!(covered < length, "{covered} would cover {length}");
        }
    }
}
