//! The set's drawings and its PDF.

use reinwright_tests::outline::texts;

use super::*;

fn words(drawing: &Drawing) -> Vec<String> {
    texts(drawing).into_iter().map(|(text, _)| text).collect()
}

#[test]
fn the_family_sheet_shows_sizes_gaps_and_what_is_by_hand() {
    let family = v_bits();
    let answers = answer_all(&family);
    let table = words(&sheet::table(&family, &answers));
    for label in family.table().labels {
        assert!(table.contains(&label), "{label}");
    }
    assert!(
        table.contains(&"1/2 in *".to_owned()),
        "the neck set by hand has its star"
    );
    assert!(table.iter().any(|text| text.contains("set by hand")));
    let sparse = flats(&["1/8", "3/4"]);
    let answers = answer_all(&sparse);
    let ranges = words(&sheet::ranges(&sparse, &answers, 3, &StockSizes::default()));
    assert!(
        ranges
            .iter()
            .any(|text| text.starts_with("nothing here holds"))
    );
    assert!(
        ranges.contains(&"Bar for 3 pairs of each size".to_owned()),
        "{ranges:?}"
    );
}

/// Pictures are true to the scale that they say: the strip at 1 : 2 is half as wide as at 1 : 1,
/// and the overlay reaches from the longest rein's end to the longest tip.
#[test]
fn pictures_are_to_scale() {
    let answers = answer_all(&v_bits());
    let outlines = |drawing: &Drawing| {
        let boxes = drawing
            .items
            .iter()
            .filter(|item| matches!(item, Item::Path(_)));
        boxes
            .filter_map(Item::bounds)
            .reduce(|a, b| a.union(b))
            .unwrap()
    };
    let full = outlines(&sheet::overlay(&answers, 1));
    let half = outlines(&sheet::overlay(&answers, 2));
    let end = answers
        .iter()
        .map(|a| a.model.a.rein_end())
        .fold(0.0, f64::min);
    close("rein end", full.x0, end, 1e-9);
    close("half size", half.x0, end / 2.0, 1e-9);
    for room in [(165.0, 225.0), (100.0, 100.0), (2000.0, 2000.0)] {
        let strip = sheet::strip(&answers, 1);
        let n = f64::from(sheet::reduction(&strip, room));
        let size = strip.bounds().size() / n;
        let fits = |w: f64, h: f64| size.width <= w && size.height <= h;
        assert!(
            fits(room.0, room.1) || fits(room.1, room.0),
            "{room:?} 1 : {n}"
        );
    }
}

/// The family of flat tongs, with whole reins, takes 20 pages at the most: sizes share pages, and
/// each part of a page says of which size it is.
#[test]
fn sizes_share_pages() {
    let family = read_sample("family-flat.ron");
    let answers = answer_all(&family);
    for paper in [Paper::A4, Paper::Letter] {
        let wanted = Wanted {
            order: Order::usual(paper),
            day: None,
            stock: StockSizes::default(),
        };
        let on = &mut watch::to_the_end;
        let pages = set_printing::laid(&family, &answers, &wanted, on).unwrap();
        assert!(pages.len() <= 20, "{paper}: {}", pages.len());
        let labels = family.table().labels;
        // Behind the sheets of the whole set.
        for page in &pages[5..] {
            for item in &page.items {
                let Item::Group(group) = item else { continue };
                let all = words(&Drawing {
                    items: group.items.clone(),
                });
                let named = |label: &String| {
                    let begins = format!("{label}: ");
                    all.iter().any(|text| text.starts_with(&begins))
                };
                let joined = all.iter().any(|text| text.contains("page "));
                let is_part = group.name == "drawing";
                assert!(!is_part || joined || labels.iter().any(named), "{all:?}");
            }
        }
    }
}

/// The set's PDF has the contents first, and each sheet begins on the page that they name.
#[test]
fn the_contents_page_tells_the_truth() {
    let family = read_sample("family-flat.ron");
    let answers = answer_all(&family);
    let wanted = Wanted {
        order: Order::usual(Paper::A4),
        day: None,
        stock: StockSizes::default(),
    };
    let mut steps = Vec::new();
    let pdf = set_printing::pdf(&family, &answers, &wanted, &mut |progress| {
        steps.push(progress);
        ControlFlow::Continue(())
    });
    let pdf = lopdf::Document::load_mem(&pdf.unwrap()).unwrap();
    let last = steps.last().unwrap();
    assert_eq!(
        (last.done, steps.len()),
        (last.total, last.total),
        "it counts to its end"
    );
    let text = |page: u32| pdf.extract_text(&[page]).unwrap();
    let first = text(1);
    let mut lines = first
        .lines()
        .skip_while(|line| !line.starts_with("Contents,"))
        .skip(1);
    let mut sheets = 0;
    while let (Some(name), Some(page)) = (lines.next(), lines.next()) {
        let Ok(page) = page.trim().parse::<u32>() else {
            break;
        };
        let (design, title) = name.split_once(": ").unwrap_or((&family.name, name));
        let there = text(page);
        assert!(
            there.contains(design) && there.contains(title),
            "{name} on {page}: {there}"
        );
        sheets += 1;
    }
    let left_out = first.matches(", bar as ").count();
    assert!(left_out > 0, "{first}");
    assert_eq!(sheets, 5 + 3 * answers.len() - left_out, "{first}");
    let stopped = set_printing::pdf(&family, &answers, &wanted, &mut |_| ControlFlow::Break(()));
    assert_eq!(stopped, None);
    let stopped = set_printing::svgs(&family, &answers, &wanted, &mut |_| ControlFlow::Break(()));
    assert_eq!(stopped, None);
}

/// Names as long as a file may carry run into nothing: contents and table keep to their page, and
/// so does a table of many sizes.
#[test]
fn long_names_and_many_sizes_keep_to_their_pages() {
    let mut family = v_bits();
    family.name = "Tongs for the benches of the great hall ".repeat(5);
    family.sizes[2].name = "Wide ".repeat(40);
    let (least, most) = (sheet::ROOM.0, sheet::ROOM.1);
    let fits = |what: &str, drawing: &Drawing| {
        let size = drawing.bounds().size();
        let upright = size.width <= least && size.height <= most;
        let across = size.width <= most && size.height <= least;
        assert!(upright || across, "{what}: {size:?}");
    };
    let answers = answer_all(&family);
    for page in sheet::table_pages(&family, &answers) {
        fits("table", &page);
    }
    fits(
        "what does not change",
        &sheet::same_in_all(&family, &answers),
    );
    fits(
        "ranges",
        &sheet::ranges(&family, &answers, 2, &StockSizes::default()),
    );
    let entries = vec![("Wide ".repeat(60), 1234); sheet::ROWS_OF_A_PAGE];
    let contents = sheet::contents("Contents", &entries);
    fits("contents", &contents);
    for text in words(&contents) {
        assert!(text.chars().count() < 120, "{text}");
    }
    let many: Vec<String> = (4..24).map(|n| format!("{n}/16")).collect();
    let many = flats(&many.iter().map(String::as_str).collect::<Vec<_>>());
    let answers = answer_all(&many);
    let pages = sheet::table_pages(&many, &answers);
    assert!(pages.len() > 1, "{} pages", pages.len());
    let all: Vec<String> = pages.iter().flat_map(words).collect();
    for label in many.table().labels {
        assert_eq!(all.iter().filter(|text| **text == label).count(), 1);
    }
    pages
        .iter()
        .for_each(|page| fits("a part of the table", page));
}

/// Of so many sizes that their names would push the pairs out of sight only some are named.
#[test]
fn an_overlay_names_some_of_very_many() {
    let names = |count: u32| {
        let sizes: Vec<String> = (0..count).map(|n| format!("{}/64", 24 + n)).collect();
        let family = flats(&sizes.iter().map(String::as_str).collect::<Vec<_>>());
        let labels = family.table().labels;
        let named = words(&sheet::overlay(&answer_all(&family), 1));
        assert!(named.contains(&labels[0]) && named.contains(&labels[labels.len() - 1]));
        named.len()
    };
    assert_eq!(names(20), 20);
    assert_eq!(names(60), 24);
}
