//! The shop's shelf: what its pairs hold, by the fit computation, and the file of marks.

use reinwright_core::asked::{Units, Work};
use reinwright_core::shop::family::{self, Family, Size, answer_all, holders};
use reinwright_core::shop::shelf::{self, Filed, Held, Mark, Marks, Pair, Stock, best_first};
use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tongs::jaw::Verdict;
use reinwright_core::units::{Length, Unit};
use reinwright_tests::command_line::{ask, json, refused, text};
use reinwright_tests::designs::{family_paths, sample_paths, samples_folder};
use reinwright_tests::files::{bytes, folder, put};
use reinwright_tests::pairs::{length, mm, starting, work};

fn design(jaw: &str, work: &str) -> Document {
    starting(jaw, work, "3/4 in square")
}

fn pair(design: Document) -> Pair {
    let filed = Filed::Design(Box::new(design));
    filed.pair(0).expect("a design is one pair")
}

fn stock(text: &str) -> Stock {
    Stock::parse(text, Units::Inch).expect("stock")
}

fn one(work: Work) -> Stock {
    Stock { ways: vec![work] }
}

#[track_caller]
fn reads(text: &str, units: Units, expected: &[&str]) {
    let stock = Stock::parse(text, units).expect(text);
    let expected: Vec<Work> = expected.iter().map(|text| work(text)).collect();
    assert_eq!(stock.ways, expected, "{text}");
}

#[test]
fn stock_is_read_as_a_smith_writes_it() {
    let both = ["5/8 in hexagon", "5/8 in hexagon on corners"];
    reads("5/8 hex", Units::Inch, &both);
    reads("5/8 in hex", Units::Millimetre, &both);
    reads("3/8 x 1 flat", Units::Inch, &["3/8 in x 1 in flat"]);
    reads("12 mm round", Units::Inch, &["12 mm round"]);
    reads("16 round", Units::Millimetre, &["16 mm round"]);
    let corners = ["1/2 in square on corners"];
    reads("1/2 square on its corners", Units::Inch, &corners);
    reads("1/2 square on flats", Units::Inch, &["1/2 in square"]);
    reads("1/2 square", Units::Inch, &["1/2 in square", corners[0]]);
    // By every part by which it may be held, a head either way round.
    reads(
        "M16",
        Units::Inch,
        &[
            "M16 by its head",
            "M16 by its head on corners",
            "M16 behind its head",
            "M16 by its shank",
        ],
    );
    reads("M16 by its shank", Units::Inch, &["M16 by its shank"]);
    reads("1/2 pipe", Units::Millimetre, &["1/2 in pipe"]);
    reads(
        "30 x 3 angle",
        Units::Millimetre,
        &["30 x 30 x 3 mm angle", "30 x 30 x 3 mm angle by its back"],
    );
}

#[track_caller]
fn no_stock(text: &str, why: &str) {
    let error = Stock::parse(text, Units::Inch).expect_err(text);
    let error = error.to_string();
    assert!(error.contains(why), "{text}: {error}");
    assert!(!error.ends_with('.'), "{error}");
}

#[test]
fn what_is_no_stock_is_refused_with_a_way_out() {
    no_stock("hex", "5/8 hex");
    no_stock("5/8", "flat, round, square, hexagon, octagon");
    no_stock("5/8 teapot", "teapot");
    no_stock("90 in round", "outside");
    no_stock("0 round", "outside");
}

/// Bolts go behind their head where a bow is, and by their head where the bits reach; a bit without
/// a bow lets no head in.
#[test]
fn a_bolt_is_held_where_its_head_has_room() {
    let behind = |jaw: &str, work: &str| {
        let stock = Stock::parse("5/8 bolt behind its head", Units::Inch).expect("stock");
        pair(design(jaw, work)).on(&stock)
    };
    let bow = behind("bolt", "5/8 in bolt behind its head");
    assert_eq!(bow.verdict(), Verdict::Well);
    assert_eq!(bow.sentence(Units::Inch), "holds it well, behind its head");
    let bit = behind("v bit", "5/8 in round");
    assert_eq!(bit.verdict(), Verdict::Cannot);
    assert!(bit.sentence(Units::Inch).contains("its head does not go"));
    // Lying as it is held best, that pair takes the same bolt by its shank.
    let any = Stock::parse("5/8 bolt", Units::Inch).expect("stock");
    let held = pair(design("v bit", "5/8 in round")).on(&any);
    assert_eq!(held.work, work("5/8 bolt by its shank"));
    assert_eq!(held.verdict(), Verdict::Well);
}

/// Flat jaws about flat work, by hand: a half that has turned by `a` about the rivet has the heel
/// of its grip, at `x` along and `t/2` above the axis when set, at `x sin a + t/2 cos a`. The
/// faces count as parallel while one end stands open by 1/16 of the grip, both sides together
/// (common practice, no source), so up to `sin a = 1/32`.
#[test]
fn flat_jaws_hold_well_up_to_the_size_reckoned_by_hand() {
    let design = design("flat", "1/4 in x 1 in flat");
    let pair = pair(design);
    let (from, half) = (pair.model.work.from, 6.35 / 2.0);
    let sin = 1.0_f64 / 32.0;
    let most = 2.0 * (from * sin + half * (1.0 - sin * sin).sqrt());
    let verdict = |mm: f64| {
        let thickness = Length::decimal(mm, Unit::Millimetre);
        let width = length("1 in");
        pair.on(&one(Work::flat(thickness, width)))
    };
    assert_eq!(verdict(most - 0.02).verdict(), Verdict::Well);
    let over = verdict(most + 0.02);
    assert_eq!(over.verdict(), Verdict::Badly);
    let sentence = over.sentence(Units::Inch);
    assert!(
        sentence.starts_with("holds it badly: the faces stand out of parallel, the tip"),
        "{sentence}"
    );
    let grip = pair.model.a.tip() - from;
    let open = over.contact.expect("they touch").tip_open_mm;
    assert!((open - grip / 16.0).abs() < 0.05, "{open} of {grip}");
}

/// A wedge whose half angle passes the angle of friction drives the work out (statics; friction
/// 0.15, see the method): 8.5 degrees to each side.
#[test]
fn work_that_would_be_squeezed_out_is_not_held() {
    let pair = pair(design("flat", "1/8 in flat"));
    let mut seen = Vec::new();
    for size in 3..40_u8 {
        let (thickness, width) = (mm(f64::from(size)), length("1 in"));
        let held = pair.on(&one(Work::flat(thickness, width)));
        if let Some(contact) = &held.contact {
            let slips = contact.half_angle > 0.15_f64.atan() + 1e-3;
            let sticks = contact.half_angle < 0.15_f64.atan() - 1e-3;
            let cannot = held.verdict() == Verdict::Unsafe;
            assert!(!slips || cannot, "{size}: {held:?}");
            assert!(!sticks || !cannot, "{size}: {held:?}");
            seen.push(cannot);
        }
    }
    assert!(seen.contains(&true) && seen.contains(&false), "{seen:?}");
}

/// What a label says does not matter: the same pair under another name answers alike.
#[test]
fn the_answer_comes_from_the_fit_and_not_from_a_label() {
    let mut named = design("v-bit", "1/2 in square on corners");
    let before = pair(named.clone()).on(&stock("5/8 hex"));
    named.name = "for 5/8 hex only".to_owned();
    let after = pair(named).on(&stock("5/8 hex"));
    assert_eq!(before, after);
}

#[test]
fn stock_with_corners_is_laid_as_it_is_held_best() {
    let pair = pair(design("v-bit", "1/2 in square on corners"));
    let held = pair.on(&stock("1/2 square"));
    assert_eq!(held.verdict(), Verdict::Well);
    assert_eq!(held.work, work("1/2 in square on corners"));
    assert_eq!(held.sentence(Units::Inch), "holds it well, on its corners");
}

#[test]
fn a_family_answers_as_its_holders_do() {
    let bytes = bytes(&samples_folder().join("family-v-bit.ron"));
    let filed = shelf::read(&bytes).expect("a family");
    let Filed::Family(family, lost) = &filed else {
        panic!("a family");
    };
    assert!(lost.is_empty());
    let answers = answer_all(family);
    let mut held_by_some = 0;
    for text in [
        "3/8 in square on corners",
        "5/8 in round",
        "1 in hexagon",
        "3 in round",
    ] {
        let work = self::work(text);
        let well = (0..filed.len()).filter(|at| {
            let pair = filed.pair(*at).expect("a size");
            pair.on(&one(work)).verdict() == Verdict::Well
        });
        let well: Vec<usize> = well.collect();
        assert_eq!(well, holders(&answers, &work), "{text}");
        held_by_some += usize::from(!well.is_empty());
    }
    assert!(held_by_some > 0, "no pair holds anything well");
}

#[test]
fn the_best_comes_first() {
    let pairs = ["1/8 in flat", "3/8 in flat", "1/2 in flat", "3 in flat"];
    let held: Vec<Held> = pairs
        .iter()
        .map(|work| pair(design("flat", work)).on(&stock("1/2 flat")))
        .collect();
    let order = best_first(&held);
    assert_eq!(order[0], 2, "the pair drawn for it: {held:?}");
    let verdicts: Vec<Verdict> = order.iter().map(|at| held[*at].verdict()).collect();
    assert!(verdicts.is_sorted(), "{verdicts:?}");
    assert_eq!(verdicts[3], Verdict::Cannot, "{held:?}");
}

#[test]
fn every_sample_holds_the_work_it_was_drawn_for() {
    let mut pairs = 0;
    for path in sample_paths().into_iter().chain(family_paths()) {
        let filed = shelf::read(&bytes(&path)).expect("a design or a family");
        for at in 0..filed.len() {
            let pair = filed.pair(at).expect("a pair");
            let held = pair.on(&one(pair.document.work));
            assert_eq!(held.verdict(), Verdict::Well, "{}: {held:?}", filed.name());
            pairs += 1;
        }
    }
    assert!(pairs > 15, "{pairs} pairs");
}

#[test]
fn marks_come_back_from_their_file() {
    let mut marks = Marks::default();
    marks.put("v.ron", "", Some(Mark::Have));
    marks.put("set.ron", "1/2 in flat", Some(Mark::Want));
    marks.put("set.ron", "1/4 in flat", Some(Mark::Have));
    marks.put("set.ron", "1/4 in flat", None);
    let text = marks.write();
    let back = Marks::read(text.as_bytes()).expect("its own text");
    assert_eq!(back, marks);
    assert_eq!(back.of("v.ron", ""), Some(Mark::Have));
    assert_eq!(back.of("set.ron", "1/2 in flat"), Some(Mark::Want));
    assert_eq!(back.of("set.ron", "1/4 in flat"), None);
    assert_eq!(back.of("set.ron", ""), None);
}

#[test]
fn a_damaged_file_of_marks_says_where() {
    let error = Marks::read(b"(shelf: 1, marks: [(file: 3)])").expect_err("no name");
    assert!(error.to_string().contains("line 1"), "{error}");
    let error = Marks::read(b"(shelf: 99, marks: [])").expect_err("newer");
    assert!(error.to_string().contains("99"), "{error}");
    Marks::read(b"").expect_err("nothing in it");
}

/// A folder with two designs, a family of two, a damaged design and marks.
fn shop() -> tempfile::TempDir {
    let folder = folder();
    let put = |name: &str, text: &str| put(folder.path(), name, text);
    put("flat.ron", &document::write(&design("flat", "1/4 in flat")));
    put(
        "v.ron",
        &document::write(&design("v-bit", "5/8 in square on corners")),
    );
    let mut set = Family::from_design(&design("flat", "1/2 in flat"));
    set.add(Size::new(work("1 in flat"))).expect("room");
    put("set.ron", &family::write(&set));
    put("broken.ron", "(format: 1, name: \"torn");
    put("notes.txt", "no design");
    let mut marks = Marks::default();
    marks.put("v.ron", "", Some(Mark::Have));
    put("shelf.ron", &marks.write());
    folder
}

#[test]
fn the_command_line_answers_for_the_shelf() {
    let shop = shop();
    let path = text(shop.path());
    let listed = json(&["shelf", path, "--json"]);
    assert_eq!(listed["pairs"].as_array().map(Vec::len), Some(4));
    assert_eq!(listed["not_read"].as_array().map(Vec::len), Some(1));
    assert_eq!(listed["not_read"][0]["file"], "broken.ron");
    let asked = json(&["shelf", path, "--for", "5/8 square", "--json"]);
    let first = &asked["pairs"][0];
    assert_eq!(
        (&first["file"], &first["mark"]),
        (&"v.ron".into(), &"have".into())
    );
    assert_eq!(first["answer"]["message"], "holds it well, on its corners");
    let owned = ask(&["shelf", path, "--only", "have"]);
    assert!(
        owned.text.contains("v.ron") && !owned.text.contains("flat.ron"),
        "{}",
        owned.text
    );
    assert!(owned.text.contains("broken.ron: "), "{}", owned.text);
}

#[test]
fn the_command_line_refuses_in_a_sentence() {
    let shop = shop();
    let path = text(shop.path());
    refused(
        &["shelf", path, "--for", "5/8 teapot"],
        &["--for: ", "teapot"],
    );
    refused(&["shelf", "/nowhere/at/all"], &["/nowhere/at/all"]);
}
