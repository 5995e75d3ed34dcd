//! The job sheet: its first page alone is enough, it is read at arm's length, and nothing stands over
//! anything else.

use kurbo::{Rect, Shape as _, Vec2};
use reinwright_core::asked::Layout;
use reinwright_core::draw::{Job, JobHeats, Made, job_sheet};
use reinwright_core::heats::{How, Prepared, Sources, heat_plan};
use reinwright_core::making::{self, Plan, Procedure, usual};
use reinwright_core::paper::{Fill, Item, Line, Page, Paper, TextItem};
use reinwright_core::shop::Answers;
use reinwright_core::tongs::document::Document;
use reinwright_core::units::{Length, MM_PER_INCH};
use reinwright_tests::command_line::{done, refused, text};
use reinwright_tests::designs::{sample, samples, samples_folder};
use reinwright_tests::{files, pairs};

/// 14 pt, mm: what is read at arm's length.
const FAR: f64 = 14.0 * MM_PER_INCH / 72.0;

fn sheet(design: &Document, procedure: Option<Procedure>, paper: Paper) -> (Plan, Vec<Page>) {
    sheet_of(design, procedure, (paper, None))
}

/// The same with the heats of a shop.
fn sheet_of(
    design: &Document,
    procedure: Option<Procedure>,
    (paper, shop): (Paper, Option<&Sources>),
) -> (Plan, Vec<Page>) {
    let answers = Answers::to(design);
    let procedure = procedure.unwrap_or_else(|| usual(design, &answers.model));
    let plan = making::plan(design, &answers.model, &answers.balance, procedure);
    let heats = shop.map(|shop| {
        let prepared = Prepared::new(design.bar.steel, &plan, shop);
        let heats = heat_plan(&prepared);
        (prepared, heats)
    });
    let job = Job {
        made: Made::Pair {
            document: design,
            model: &answers.model,
            rivet: answers.strength.rivet_length,
        },
        balance: &answers.balance,
        plan: &plan,
        findings: &answers.findings,
        heats: heats
            .as_ref()
            .map(|(prepared, plan)| JobHeats { prepared, plan }),
    };
    let pages = job_sheet(&job, paper);
    (plan, pages)
}

/// The texts of a page, each with the room that it takes.
pub(crate) fn texts(items: &[Item], shift: Vec2) -> Vec<(TextItem, Rect)> {
    let one = |item: &Item| match item {
        Item::Text(text) => vec![(text.clone(), text.bounds() + shift)],
        Item::Group(group) => texts(&group.items, shift + group.shift),
        Item::Path(_) => Vec::new(),
    };
    items.iter().flat_map(one).collect()
}

/// Everything that holds of every page.
#[track_caller]
fn check(name: &str, pages: &[Page]) {
    /// Signs of one line stand in the line below by a little, mm.
    const HAIR: f64 = 0.3;
    for (number, page) in pages.iter().enumerate() {
        let texts = texts(&page.items, Vec2::ZERO);
        for (at, (own, room)) in texts.iter().enumerate() {
            let what = format!("{name}, page {}: \"{}\"", number + 1, own.text);
            let inside = room.x0 >= 5.0 && room.x1 <= page.width_mm - 5.0;
            assert!(inside && room.y0 >= 3.0, "{what} at {room:?}");
            assert!(room.y1 <= page.height_mm - 5.0, "{what} at {room:?}");
            assert!(!own.text.contains('…'), "{what} is cut short");
            for (other, beside) in &texts[at + 1..] {
                let shared = room.inset(-HAIR).intersect(beside.inset(-HAIR));
                let over = shared.width() > 0.0 && shared.height() > 0.0;
                assert!(!over, "{what} stands over \"{}\"", other.text);
            }
        }
    }
}

#[test]
fn nothing_stands_over_anything_else_on_any_paper() {
    for (name, design) in samples() {
        for paper in [Paper::A4, Paper::Letter] {
            check(&name, &sheet(&design, None, paper).1);
        }
    }
    for (name, design) in pairs::all() {
        check(name, &sheet(&design, None, Paper::Letter).1);
    }
}

#[test]
fn every_procedure_has_its_sheet() {
    for name in ["v-bit-square", "textbook-light-chain"] {
        for procedure in Procedure::ALL {
            let (_, pages) = sheet(&sample(name), Some(procedure), Paper::A4);
            check(&format!("{name}, {}", procedure.name()), &pages);
        }
    }
}

/// All that is needed at the anvil stands on the first page, in letters of 14 pt and more but for the
/// page number in the rim.
#[test]
fn the_first_page_alone_is_enough_at_the_anvil() {
    for name in ["v-bit-square", "bowed-ball-ends", "textbook-light-chain"] {
        for paper in [Paper::A4, Paper::Letter] {
            let design = sample(name);
            let (plan, pages) = sheet(&design, None, paper);
            let texts = texts(&pages[0].items, Vec2::ZERO);
            for (own, room) in &texts {
                let rim = room.y1 < 10.0;
                assert!(rim || own.size >= FAR - 1e-9, "{name}: {own:?}");
            }
            let all: Vec<&str> = texts.iter().map(|own| own.0.text.as_str()).collect();
            let all = all.join(" ");
            let show = design.units.show();
            for (at, own) in plan.operations().enumerate() {
                let (first, rest) = own.step.name().split_at(1);
                let title = format!("{} {}{rest}", at + 1, first.to_uppercase());
                assert!(all.contains(&title), "{name}: \"{title}\" in {all}");
                assert!(
                    all.contains(&own.brief),
                    "{name}: \"{}\" in {all}",
                    own.brief
                );
            }
            let shank = Answers::to(&design).strength.rivet_length;
            for words in [
                show.text(shank.one_head_mm),
                design.work.words(),
                "From each end".to_owned(),
                "hand gap".to_owned(),
                "Wear eye protection".to_owned(),
            ] {
                assert!(all.contains(&words), "{name}: \"{words}\" in {all}");
            }
            for mark in plan.marks.iter().take(2) {
                let from = mark.measured.to_string();
                assert!(all.contains(&from), "{name}: {from} in {all}");
            }
        }
    }
}

/// Half B differs in its jaw: its operations have a page of their own.
#[test]
fn a_second_half_has_its_own_page() {
    let (plan, pages) = sheet(&sample("v-over-flat"), None, Paper::A4);
    assert!(plan.stages.iter().any(|stage| stage.half == 1));
    let second = pages.iter().any(|page| {
        let texts = texts(&page.items, Vec2::ZERO);
        texts
            .iter()
            .any(|own| own.0.text.contains("second half, whose jaw differs"))
    });
    assert!(second);
}

#[test]
fn the_command_writes_pages_of_the_paper_and_a_drawing_a_stage() {
    let folder = files::folder();
    let file = samples_folder().join("v-bit-square.ron");
    let (out, stages) = (folder.path().join("job.pdf"), folder.path().join("stages"));
    done(&[
        "job-sheet",
        text(&file),
        "--out",
        text(&out),
        "--paper",
        "letter",
        "--stages",
        text(&stages),
    ]);
    let pdf = lopdf::Document::load(&out).expect("a PDF");
    for id in pdf.get_pages().into_values() {
        let page = pdf.get_dictionary(id).expect("a page");
        let media = page.get(b"MediaBox").and_then(lopdf::Object::as_array);
        let size: Vec<f32> = media
            .expect("it has a size")
            .iter()
            .map(|own| own.as_float().expect("a number"))
            .collect();
        assert_eq!(size[2..], [612.0, 792.0]);
    }
    let (plan, _) = sheet(&sample("v-bit-square"), None, Paper::Letter);
    let names = files::names(&stages);
    assert_eq!(names.len(), plan.stages.len(), "{names:?}");
    assert!(names[2].starts_with("02-set-down-the-jaw"), "{names:?}");
    refused(
        &["job-sheet", text(&file), "--out", text(&file)],
        &["--out"],
    );
}

/// Source and heats stand at every operation that is heated, and nothing over anything else.
#[test]
fn the_sources_of_the_shop_stand_at_every_operation() {
    let shop = Sources::default();
    for (name, design) in samples() {
        for paper in [Paper::A4, Paper::Letter] {
            let (plan, pages) = sheet_of(&design, None, (paper, Some(&shop)));
            check(&name, &pages);
            let prepared = Prepared::new(design.bar.steel, &plan, &shop);
            let heats = heat_plan(&prepared);
            let told = words_of(&pages);
            for own in heats.operations.iter().filter(|own| own.how != How::Cold) {
                let words = own.words(&prepared).expect("it is heated");
                let words = words.replace(' ', "");
                assert!(told.contains(&words), "{name}: {words} in {told}");
            }
            assert!(told.contains(&heats.in_short().replace(' ', "")), "{name}");
            // Where a coil heats anything, its dangers lie at the anvil too, on the first page.
            let mut used = heats.operations.iter().filter_map(|own| own.source);
            let in_coil = used.any(|at| shop.sources[at].coil().is_some());
            let first = words_of(&pages[..1]);
            assert_eq!(
                first.contains("noimplants,rings"),
                in_coil,
                "{name}: {first}"
            );
            assert!(told.contains("apacemaker,apump"), "{name}: {told}");
            for noticed in reinwright_core::heats::noticed(&prepared, &heats, design.units.show()) {
                let words = noticed.message.replace(' ', "");
                assert!(told.contains(&words), "{name}: {words} in {told}");
            }
        }
    }
}

/// All that is read, as lines break between words.
fn words_of(pages: &[Page]) -> String {
    let all = pages.iter().flat_map(|page| texts(&page.items, Vec2::ZERO));
    all.map(|(own, _)| own.text.replace(' ', "")).collect()
}

/// The command line takes a shop's sources, and one of them that cannot be read costs only itself.
#[test]
fn the_command_line_takes_sources() {
    let folder = files::folder();
    let shop = folder.path().join("shop.ron");
    let written = Sources::default().write();
    files::put(
        folder.path(),
        "shop.ron",
        written.replacen("chamber: \"2300 F\"", "chamber: \"9 C\"", 1),
    );
    let design = samples_folder().join("light-flat.ron");
    let out = folder.path().join("job.pdf");
    let said = done(&[
        "job-sheet",
        text(&design),
        "--sources",
        text(&shop),
        "--out",
        text(&out),
    ]);
    assert!(
        said.contains("not read: ") && said.contains("chamber"),
        "{said}"
    );
    let told = files::pages(&files::bytes(&out)).concat();
    let told: Vec<&str> = told.split_whitespace().collect();
    assert!(told.join(" ").contains("to be worked for"), "{told:?}");
    let wanted = [
        "job-sheet",
        text(&design),
        "--sources",
        "nowhere.ron",
        "--out",
        text(&out),
    ];
    refused(&wanted, &["nowhere.ron"]);
}

/// One half made at a time takes no more bar than its balance says: the length on the sheet is that of the pair, one
/// half behind the other, and so is its mass, 7850 kg/m³ times section times length.
#[test]
fn one_half_at_a_time_is_cut_once_for_a_pair() {
    let mut design = pairs::flat();
    design.layout = Layout::Single { tail: Length::ZERO };
    let cut = Answers::to(&design).balance.cut_length(design.units);
    let kg = 7.85e-6 * design.bar.stock.area_mm2() * cut.mm();
    let told = words_of(&sheet(&design, None, Paper::Letter).1);
    let wanted = [
        format!("cut {cut} long, one half behind the other."),
        format!("once for a pair, {}", design.units.show().mass(kg)),
    ];
    for words in wanted {
        assert!(told.contains(&words.replace(' ', "")), "{words}: {told}");
    }
}

/// A length that stays is said to stay, and one of several parts is not said to be one part's.
#[test]
fn lengths_are_those_of_what_is_worked() {
    let design = pairs::flat();
    let (plan, _) = sheet(&design, None, Paper::Letter);
    let show = design.units.show();
    let operations = plan
        .stages
        .iter()
        .filter_map(|stage| stage.operation.as_ref());
    let lengths: Vec<String> = operations.map(|own| own.lengths(show)).collect();
    let says = |words: &str| lengths.iter().any(|own| own.contains(words));
    assert!(
        says("the rein stays ") && says("neck, boss and shoulder"),
        "{lengths:?}"
    );
}

/// What burns in the only fire that there is stands on the page at the anvil, with what to do.
#[test]
fn what_burns_is_told_on_the_first_page() {
    let design = pairs::starting("v bit", "1/2 in square on corners", "1 in round");
    let mut shop = Sources::default();
    shop.sources.retain(|own| own.coil().is_none());
    let first = |shop: &Sources| {
        let (_, pages) = sheet_of(&design, None, (Paper::Letter, Some(shop)));
        check("burning", &pages);
        let all = texts(&pages[0].items, Vec2::ZERO).into_iter();
        all.map(|(own, _)| own.text).collect::<Vec<_>>().join(" ")
    };
    assert!(!first(&shop).contains("Burns before"));
    shop.sources.retain(|own| own.name == "coal fire");
    let words = first(&shop);
    assert!(
        words.contains("Burns before the rest is hot: the "),
        "{words}"
    );
    assert!(words.contains("Less blast"), "{words}");
}

/// A page for a few lines is paper that gets lost: pages are filled alike, and the last one to its half at the
/// least.
#[test]
fn no_last_page_is_for_a_few_lines() {
    let all = Sources::default();
    let mut coal = Sources::default();
    coal.sources.retain(|own| own.name == "coal fire");
    for (name, design) in samples() {
        for shop in [None, Some(&all), Some(&coal)] {
            for paper in [Paper::A4, Paper::Letter] {
                let (_, pages) = sheet_of(&design, None, (paper, shop));
                check(&name, &pages);
                let last = pages.last().expect("a page");
                let texts = texts(&last.items, Vec2::ZERO);
                // The page number stands in the rim.
                let lows = texts.iter().map(|own| own.1.y0).filter(|y| *y > 10.0);
                let low = lows.fold(f64::INFINITY, f64::min);
                let half = last.height_mm / 2.0;
                assert!(low < half, "{name}, {paper:?}: ends at {low} mm");
            }
        }
    }
}

/// So many pages as were counted where the last one held a caution or one operation alone, less that one.
#[test]
fn a_sheet_is_set_closer_where_that_spares_a_page() {
    let mut coal = Sources::default();
    coal.sources.retain(|own| own.name == "coal fire");
    let half_inch = pairs::starting("v bit", "1/2 in square on corners", "1 in round");
    let table = [
        (sample("v-bit-square"), None, Paper::A4, 4),
        (sample("v-bit-square"), None, Paper::Letter, 4),
        (half_inch, Some(&coal), Paper::Letter, 5),
    ];
    for (design, shop, paper, most) in table {
        let (_, pages) = sheet_of(&design, None, (paper, shop));
        assert_eq!(pages.len(), most, "{}, {paper:?}", design.name);
    }
}

/// Where a piece goes on beyond a picture it ends at its break line: past that the paper is blank to the edge.
#[test]
fn a_broken_piece_ends_at_its_break_line() {
    let (_, pages) = sheet(&sample("v-bit-square"), None, Paper::A4);
    let mut ends = 0;
    for item in pages.iter().flat_map(|page| &page.items) {
        let Item::Group(group) = item else { continue };
        let Some(clip) = group.clip.filter(|_| group.name == "stage") else {
            continue;
        };
        for pair in group.items.windows(2) {
            let [Item::Path(past), Item::Path(line)] = pair else {
                continue;
            };
            if past.fill != Some(Fill::Paper) || line.line != Some(Line::Fine) {
                continue;
            }
            let [past, line] = [past, line].map(|path| path.path.bounding_box() + group.shift);
            assert!(
                past.y0 < clip.y0 && past.y1 > clip.y1,
                "{past:?} in {clip:?}"
            );
            let to_the_right = line.center().x > clip.center().x;
            let to_the_edge = [past.x0 < clip.x0, past.x1 > clip.x1][usize::from(to_the_right)];
            assert!(to_the_edge, "{past:?} in {clip:?}");
            ends += 1;
        }
    }
    assert!(ends > 10, "{ends} broken ends");
}

/// Nothing is told twice at the end of the details, with the shop's sources and without.
#[test]
fn who_comes_first_is_told_once() {
    let shop = Sources::default();
    for shop in [None, Some(&shop)] {
        let (_, pages) = sheet_of(&sample("v-bit-square"), None, (Paper::A4, shop));
        let items: Vec<Item> = pages.into_iter().flat_map(|page| page.items).collect();
        let all = texts(&items, Vec2::ZERO).into_iter();
        let told: Vec<String> = all.map(|(text, _)| text.text).collect();
        let told = told.join(" ");
        assert_eq!(told.matches("Local codes").count(), 1, "{told}");
    }
}
