//! Views that share pages: how few there are, that nothing is lost or cut that must stay whole, and
//! that parts laid mark on mark continue each other.

use kurbo::{Point, Rect, Vec2};
use reinwright::jobs::printing::Template;
use reinwright::jobs::what::{Kind, Reins, What};
use reinwright_core::draw;
use reinwright_core::paper::{Fill, Item, Page, Paper};
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::resolve;
use reinwright_core::tool;
use reinwright_tests::designs::{sample, samples, samples_folder};
use reinwright_tests::pairs::starting;
use reinwright_tests::{tools, within};

use super::FILE;
use super::reader::{self, Seen};

fn what(kinds: &[Kind], reins: Reins) -> What {
    What {
        kinds: kinds.to_vec(),
        reins,
        ..What::default()
    }
}

fn laid(design: &Document, what: &What, paper: Paper) -> Vec<Page> {
    Template::with(design, what, None).laid(paper)
}

#[track_caller]
fn check_pages(name: &str, [a4, letter]: [usize; 2]) {
    let design = sample(name);
    let found = [Paper::A4, Paper::Letter].map(|p| laid(&design, &What::default(), p).len());
    assert_eq!(found, [a4, letter], "{name}");
}

/// The head of every sample is on one page.
#[test]
fn a_head_takes_one_page() {
    for (name, design) in samples() {
        let own = what(&[Kind::Head], Reins::Whole);
        for paper in [Paper::A4, Paper::Letter] {
            let pages = laid(&design, &own, paper).len();
            let halves = if resolve(&design).same() { 1 } else { 2 };
            assert!(pages <= halves, "{name} on {paper}: {pages}");
        }
    }
}

/// Where the halves differ each part of theirs says of which it is, its sections too.
#[test]
fn parts_of_halves_that_differ_say_whose_they_are() {
    let design = sample("v-over-flat");
    for paper in [Paper::A4, Paper::Letter] {
        for page in laid(&design, &what(&[Kind::Half], Reins::Broken), paper) {
            for part in parts(&page) {
                let mut found = Vec::new();
                texts(part.items, Vec2::ZERO, &mut found);
                let says = |text: &str| text.starts_with("Half A") || text.starts_with("Half B");
                let joined = found.iter().any(|(text, _)| text.contains("page "));
                let named = found.iter().any(|(text, _)| says(text));
                assert!(joined || named, "{paper}: {found:?}");
            }
        }
    }
}

/// Stages at full size share pages: no more are needed than these, and none is without steel.
#[track_caller]
fn check_stages(name: &str, most: usize) {
    let design = sample(name);
    let own = what(&[Kind::Stages], Reins::Whole);
    for paper in [Paper::A4, Paper::Letter] {
        let pages = laid(&design, &own, paper);
        assert!(pages.len() <= most, "{name} on {paper}: {}", pages.len());
        for (number, page) in pages.iter().enumerate() {
            let steel = parts(page).iter().any(|part| filled(part.items));
            assert!(steel, "{name} on {paper}: page {} has no steel", number + 1);
        }
    }
}

/// Whether something is drawn as an area of a part.
fn filled(items: &[Item]) -> bool {
    items.iter().any(|item| match item {
        Item::Path(path) => matches!(path.fill, Some(Fill::Part(_) | Fill::Waste | Fill::Hot)),
        Item::Group(group) => filled(&group.items),
        Item::Text(_) => false,
    })
}

#[test]
fn stages_share_pages() {
    check_stages("light-flat", 5);
    check_stages("textbook-light-chain", 7);
    check_stages("v-over-flat", 14);
}

/// All that is drawn of a part: its group, with what of the drawing it shows.
struct Shown<'a> {
    items: &'a [Item],
    /// What is shown of it, in the coordinates of its own items.
    window: Rect,
}

fn parts(page: &Page) -> Vec<Shown<'_>> {
    let parts = page.items.iter().filter_map(|item| match item {
        Item::Group(group) if group.name == "drawing" => Some(Shown {
            items: &group.items,
            window: group.clip.expect("a part is clipped") - group.shift,
        }),
        Item::Group(_) | Item::Path(_) | Item::Text(_) => None,
    });
    parts.collect()
}

fn texts(items: &[Item], shift: Vec2, found: &mut Vec<(String, Rect)>) {
    for item in items {
        match item {
            Item::Text(text) => found.push((text.text.clone(), text.bounds() + shift)),
            Item::Group(group) => texts(&group.items, shift + group.shift, found),
            Item::Path(_) => {}
        }
    }
}

/// A text is on its part whole, or not at all.
#[test]
fn no_text_is_cut() {
    for (name, design) in samples() {
        check_texts(&name, &design);
    }
}

#[track_caller]
fn check_texts(name: &str, design: &Document) {
    for paper in [Paper::A4, Paper::Letter, Paper::A3] {
        for page in laid(design, &What::default(), paper) {
            for part in parts(&page) {
                let mut found = Vec::new();
                texts(part.items, Vec2::ZERO, &mut found);
                assert!(!found.is_empty(), "{name}: a part without a name");
                for (text, place) in found {
                    let whole = part.window.inflate(1e-6, 1e-6).union(place)
                        == part.window.inflate(1e-6, 1e-6);
                    let gone = part
                        .window
                        .inflate(-0.5, -0.5)
                        .intersect(place)
                        .is_zero_area();
                    assert!(
                        whole || gone,
                        "{name} on {paper}: \"{text}\" {place:?} is cut by {:?}",
                        part.window
                    );
                }
            }
        }
    }
}

/// Parts on a page do not touch each other, and stay inside of its frame.
#[test]
fn parts_keep_apart() {
    for (name, design) in samples() {
        for paper in [Paper::A4, Paper::Letter] {
            for page in laid(&design, &What::default(), paper) {
                let clips: Vec<Rect> = page
                    .items
                    .iter()
                    .filter_map(|item| match item {
                        Item::Group(group) if group.name == "drawing" => group.clip,
                        Item::Group(_) | Item::Path(_) | Item::Text(_) => None,
                    })
                    .collect();
                for (index, a) in clips.iter().enumerate() {
                    for b in &clips[index + 1..] {
                        let near = a.inflate(3.9, 3.9).intersect(*b);
                        assert!(near.is_zero_area(), "{name} on {paper}: {a:?} {b:?}");
                    }
                }
            }
        }
    }
}

/// Where the crosses of each name stand on all pages, with what is painted around: two parts that
/// have them.
fn joints(pages: &[Seen]) -> Vec<(String, Vec<(usize, Point)>)> {
    let mut joints: Vec<(String, Vec<(usize, Point)>)> = Vec::new();
    for (index, page) in pages.iter().enumerate() {
        for shown in &page.texts {
            let text = shown.text();
            let letters = text.trim_end_matches(|sign: char| sign.is_ascii_digit());
            let number = &text[letters.len()..];
            let is_mark = !letters.is_empty()
                && letters.chars().all(|sign| sign.is_ascii_uppercase())
                && (number == "1" || number == "2");
            if is_mark {
                match joints.iter_mut().find(|(name, _)| *name == text) {
                    Some((_, places)) => places.push((index, shown.at())),
                    None => joints.push((text, vec![(index, shown.at())])),
                }
            }
        }
    }
    joints
}

/// Every mark is there twice, on two parts; the two marks of a joint are as far apart on both.
#[test]
fn marks_come_in_pairs_that_fit_no_other() {
    for (name, design) in samples() {
        let template = Template::of(&design, None);
        let pdf = template
            .pdf(Paper::A4, reinwright::jobs::pages::Consent::All)
            .unwrap();
        let pages = reader::read(&pdf);
        let joints = joints(&pages);
        for (mark, places) in &joints {
            assert_eq!(places.len(), 2, "{name}: {mark} {places:?}");
        }
        for (mark, first) in joints.iter().filter(|(mark, _)| mark.ends_with('1')) {
            let other = format!("{}2", &mark[..mark.len() - 1]);
            let (_, second) = joints
                .iter()
                .find(|(mark, _)| *mark == other)
                .expect("two marks");
            let apart = |part: usize| first[part].1.distance(second[part].1);
            assert!(
                apart(0) > 10.0,
                "{name}: {mark} too close to hold a part in line"
            );
            within(&format!("{name}, {mark}"), apart(1), apart(0), FILE);
        }
    }
}

/// No joint runs where the head or anything is told: it lies in the plain stretches of the reins.
#[test]
fn joints_run_through_plain_reins_alone() {
    for (name, design) in samples() {
        let model = resolve(&design);
        let plain = draw::breaks(&model, 0.0);
        let own = what(&[Kind::Half, Kind::Pair], Reins::Whole);
        for paper in [Paper::A4, Paper::Letter] {
            for page in laid(&design, &own, paper) {
                for part in parts(&page) {
                    let x = |rect: Rect| (rect.x0, rect.x1);
                    for line in part.items.iter().filter_map(join) {
                        let (at, _) = x(line);
                        let inside = plain
                            .stretches()
                            .any(|s| s.from + 4.9 < at && at < s.to - 4.9);
                        assert!(inside, "{name} on {paper}: a joint at {at}");
                    }
                }
            }
        }
    }
}

/// A head that is too long for the paper with all of its bends is cut off behind its neck, never
/// through the head, nor through a size.
#[test]
fn a_long_head_is_cut_off_behind_its_neck() {
    let design = starting("bolt", "20 mm square", "20 mm square");
    let model = resolve(&design);
    for reins in [Reins::Whole, Reins::Broken, Reins::LeftOut] {
        let own = what(&[Kind::Half, Kind::Pair], reins);
        for paper in [Paper::A4, Paper::Letter] {
            let mut joints = 0;
            for page in laid(&design, &own, paper) {
                for line in parts(&page)
                    .iter()
                    .flat_map(|part| part.items)
                    .filter_map(join)
                {
                    joints += 1;
                    let start = model.a.rein_start().x;
                    assert!(
                        line.x1 < start,
                        "{reins:?}, {paper}: a joint at {}",
                        line.x1
                    );
                }
                let is_grid =
                    |item: &Item| matches!(item, Item::Group(group) if group.name == "joins");
                assert!(
                    !page.items.iter().any(is_grid),
                    "{reins:?}, {paper}: cut anywhere"
                );
            }
            assert!(joints > 0, "{reins:?}, {paper}");
        }
    }
    check_texts("bolt", &design);
}

/// The box of a line to cut along, of a part that was not turned.
fn join(item: &Item) -> Option<Rect> {
    match item {
        Item::Path(path) if path.line == Some(reinwright_core::paper::Line::Join) => {
            let place = item.bounds()?;
            (place.width() < 1e-9).then_some(place)
        }
        Item::Path(_) | Item::Text(_) | Item::Group(_) => None,
    }
}

/// Pages of A4 and of Letter. When every sheet had pages of its own they took 8 and 9, 7 and 8, 6 and
/// 6, 8 and 9, 8 and 8, 7 and 7, 9 and 11.
#[test]
fn samples_take_few_pages() {
    check_pages("bowed-ball-ends", [4, 4]);
    check_pages("hollow-bit-round", [3, 4]);
    check_pages("light-flat", [3, 3]);
    check_pages("open-flat", [4, 4]);
    check_pages("textbook-light-chain", [3, 3]);
    check_pages("v-bit-square", [3, 4]);
    check_pages("v-over-flat", [5, 6]);
}

/// Pixels to a millimetre when ink is measured.
const FINE: f64 = 12.0;

/// Where the ink of a line that runs through a point has its middle, from the point along a way;
/// `None` where other ink crosses it.
fn ink(picture: &(usize, Vec<u8>), height_mm: f64, at: Point, way: Vec2) -> Option<f64> {
    let (width, grey) = picture;
    let dark = |off: f64| {
        let p = at + way * off;
        let (x, y) = (p.x * FINE, (height_mm - p.y) * FINE);
        grey[y as usize * width + x as usize] < 128
    };
    let steps = (-40..=40).map(|step| f64::from(step) * 0.025);
    let run: Vec<f64> = steps.filter(|off| dark(*off)).collect();
    let (first, last) = (*run.first()?, *run.last()?);
    (last - first < 0.75).then(|| f64::midpoint(first, last))
}

/// Every point of the half's outline is on some page within 0.1 mm of where the model has it, parts
/// laid together or not: the ink of all pages as hayro paints it.
#[test]
fn outlines_are_true_across_joints() {
    for name in ["v-bit-square", "light-flat"] {
        let design = sample(name);
        let outline = resolve(&design).a.outline();
        let own = what(&[Kind::Half], Reins::Whole);
        let template = Template::with(&design, &own, None);
        let pages = template.laid(Paper::A4);
        let pdf = template
            .pdf(Paper::A4, reinwright::jobs::pages::Consent::All)
            .unwrap();
        let corners = reinwright_tests::outline::corners(&outline);
        let mut seen = vec![false; corners.len()];
        let mut measured = 0;
        for (index, page) in pages.iter().enumerate() {
            let groups = page.items.iter().filter_map(|item| match item {
                Item::Group(group) if group.name == "drawing" => Some(group),
                Item::Group(_) | Item::Path(_) | Item::Text(_) => None,
            });
            for group in groups {
                let is_side = |item: &Item| matches!(item, Item::Text(text) if text.text.ends_with("side view"));
                if !group.items.iter().any(is_side) {
                    continue;
                }
                let picture = reader::raster(&pdf, index, FINE);
                let clip = group.clip.expect("a part is clipped").inflate(-1.2, -1.2);
                for (place, pair) in corners.windows(2).enumerate() {
                    let (a, b) = (Point::from(pair[0]), Point::from(pair[1]));
                    let at = a.midpoint(b) + group.shift;
                    if a.distance(b) < 1e-6 || !clip.contains(at) {
                        continue;
                    }
                    seen[place] = true;
                    let along = (b - a).normalize();
                    let way = Vec2::new(-along.y, along.x);
                    if let Some(off) = ink(&picture, page.height_mm, at, way) {
                        within(
                            &format!("{name}, page {}, {at:?}", index + 1),
                            off,
                            0.0,
                            0.1,
                        );
                        measured += 1;
                    }
                }
            }
        }
        let sides = corners.windows(2).filter(|p| {
            let (a, b) = (Point::from(p[0]), Point::from(p[1]));
            a.distance(b) > 1e-6
        });
        let all = sides.count();
        let shown = seen.iter().filter(|seen| **seen).count();
        assert_eq!(
            shown, all,
            "{name}: points of the outline that are on some page"
        );
        assert!(
            10 * measured > 6 * all,
            "{name}: {measured} of {all} measured"
        );
    }
}

/// A tool that stands is laid in its views where it is larger than the paper, and its bar beside them: no view is
/// cut, and no page is for the bar alone.
#[test]
fn a_tool_that_stands_is_not_cut() {
    let path = samples_folder().join("tools/hot-cut-hardy.ron");
    let file = std::fs::read(path).expect("a sample");
    let hardy = tool::read(&file).expect("a tool");
    for (paper, most) in [(Paper::A4, 2), (Paper::Letter, 2)] {
        let pages = Template::of_tool(&hardy, &What::default(), None).laid(paper);
        assert!(pages.len() <= most, "{paper}: {}", pages.len());
        let named = |page: &Page, words: &str| {
            let mut found = Vec::new();
            texts(&page.items, Vec2::ZERO, &mut found);
            found.iter().any(|(text, _)| text.contains(words))
        };
        let with_bar = pages.iter().filter(|page| named(page, "working end"));
        for page in with_bar {
            let beside = ["Front view", "Side view", "From above", "Sections"];
            assert!(beside.iter().any(|words| named(page, words)), "{paper}");
        }
        let joined = pages
            .iter()
            .any(|page| named(page, "Cut at the dashed line"));
        assert!(!joined, "{paper}: a view is cut");
    }
}

/// Of the rein alone each part shows some of it: nothing reaches to where the head is left out.
#[test]
fn each_part_of_a_rein_alone_shows_steel() {
    for (name, design) in samples() {
        for page in laid(&design, &what(&[Kind::Rein], Reins::Whole), Paper::A4) {
            for part in parts(&page) {
                let shows = |item: &&Item| match item {
                    Item::Path(path) => matches!(path.fill, Some(Fill::Part(_))),
                    Item::Text(_) | Item::Group(_) => false,
                };
                let mut steel = Vec::new();
                flat(part.items, Vec2::ZERO, &mut steel);
                let seen = steel.iter().filter(|(item, _)| shows(item));
                let mut seen = seen.map(|(_, area)| area.intersect(part.window));
                assert!(
                    seen.any(|area| area.area() > 0.0),
                    "{name}: {:?}",
                    part.window
                );
            }
        }
    }
}

/// All paths and texts with the room that is seen of them.
fn flat<'a>(items: &'a [Item], shift: Vec2, found: &mut Vec<(&'a Item, Rect)>) {
    for item in items {
        match item {
            Item::Group(group) => {
                let from = found.len();
                flat(&group.items, shift + group.shift, found);
                for (_, area) in &mut found[from..] {
                    *area = group
                        .clip
                        .map_or(*area, |clip| area.intersect(clip + shift));
                }
            }
            Item::Path(_) | Item::Text(_) => {
                found.extend(item.bounds().map(|area| (item, area + shift)));
            }
        }
    }
}

/// In the map a page is found at a glance: as large as a fingernail's half, however many there are up to a dozen.
#[test]
fn the_map_shows_many_pages_in_rows() {
    let own = what(
        &[Kind::Half, Kind::Pair, Kind::Stages, Kind::Bar],
        Reins::Whole,
    );
    for paper in [Paper::A4, Paper::Letter] {
        let pages = laid(&sample("v-bit-square"), &own, paper);
        assert!((6..=12).contains(&pages.len()), "{paper}: {}", pages.len());
        for page in &pages {
            let mut found = Vec::new();
            flat(&page.items, Vec2::ZERO, &mut found);
            let is_here = |item: &Item| match item {
                Item::Path(path) => path.fill == Some(Fill::Ink) && path.line.is_some(),
                Item::Text(_) | Item::Group(_) => false,
            };
            let here = found.iter().find(|(item, _)| is_here(item));
            let (_, here) = here.expect("this page is filled");
            assert!(here.width().max(here.height()) > 4.0, "{paper}: {here:?}");
        }
    }
}

/// No word of a template stands on another, upright or turned, in any of its kinds.
#[test]
fn no_word_stands_on_another() {
    for (name, design) in samples() {
        for reins in [Reins::Whole, Reins::Broken] {
            let own = what(&Kind::ALL, reins);
            for paper in [Paper::A4, Paper::Letter] {
                for (number, page) in laid(&design, &own, paper).iter().enumerate() {
                    check_words(&format!("{name} on {paper}, page {}", number + 1), page);
                }
            }
        }
    }
    for (name, tool) in tools::all() {
        let own = what(&Kind::ALL, Reins::Whole);
        for page in Template::of_tool(&tool, &own, None).laid(Paper::A4) {
            check_words(name, &page);
        }
    }
}

#[track_caller]
fn check_words(what: &str, page: &Page) {
    /// Signs of one line stand in the line below by a little, mm.
    const HAIR: f64 = 0.3;
    let mut found = Vec::new();
    flat(&page.items, Vec2::ZERO, &mut found);
    let words = found.iter().filter_map(|(item, area)| match item {
        Item::Text(text) => Some((text, area.inset(-HAIR))).filter(|(_, area)| area.area() > 0.0),
        Item::Path(_) | Item::Group(_) => None,
    });
    let words: Vec<_> = words.collect();
    for (at, (text, area)) in words.iter().enumerate() {
        // The room of a text that is turned by a quarter is a box too.
        let quarters = text.turn / std::f64::consts::FRAC_PI_2;
        assert!(
            (quarters - quarters.round()).abs() < 1e-9,
            "{what}: {text:?}"
        );
        for (other, beside) in &words[at + 1..] {
            let shared = area.intersect(*beside);
            let over = shared.width() > 0.0 && shared.height() > 0.0;
            assert!(!over, "{what}: \"{}\" on \"{}\"", text.text, other.text);
        }
    }
}
