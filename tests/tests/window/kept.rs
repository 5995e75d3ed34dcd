//! Work is never lost: kept until it is saved, offered after a crash, noticed when another program
//! saved over it, and brought back from before.

use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Duration;

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable;
use reinwright::window::Workbench;
use reinwright_core::asked::Units;
use reinwright_core::tongs::document::{self, Document};
use reinwright_tests::files::{bytes, folder, names, put};
use reinwright_tests::pairs;
use reinwright_tests::window::{
    OnBench, SMALL, TALL, Window, click, click_with, fill, give_path, press, remembering, show,
};

/// A window on a design of no file, with a folder to keep things in.
fn window_in(folder: &Path, design: Document) -> Window {
    show(Workbench::with(design, remembering(folder)), TALL)
}

/// The program as it is started, on its first sample.
fn started_in(folder: &Path) -> Window {
    show(Workbench::new(remembering(folder)), SMALL)
}

fn save(window: &mut Window) {
    press(window, Modifiers::COMMAND, Key::S);
}

/// A window that is gone took no leave: what it had unsaved is offered, the newest first, and to a
/// window on a file as well.
#[test]
fn unsaved_work_is_offered_again() {
    let folder = folder();
    for width in ["1/4", "5/16"] {
        let mut lost = window_in(folder.path(), pairs::flat());
        fill(&mut lost, "Work thickness", width);
    }
    let file = folder.path().join("other.ron");
    put(folder.path(), "other.ron", document::write(&pairs::flat()));
    let bench = Workbench::open(&file, remembering(folder.path())).expect("a design");
    let mut window = show(bench, SMALL);
    let offered = window.get_all_by_label("Bring it back").count();
    assert_eq!(offered, 2);
    window
        .get_all_by_label("Bring it back")
        .next()
        .expect("there")
        .click();
    window.run();
    assert_eq!(window.state().document().work.size().to_string(), "5/16 in");
    assert!(window.state().is_changed(), "it is still to be saved");
    drop(window);
    // It was kept again at once, and the other one still is.
    let mut again = started_in(folder.path());
    assert_eq!(again.get_all_by_label("Bring it back").count(), 2);
    again
        .get_all_by_label("Throw it away")
        .next()
        .expect("there")
        .click();
    again.run();
    assert_eq!(again.get_all_by_label("Bring it back").count(), 1);
    click(&mut again, "Later");
    assert_eq!(
        started_in(folder.path())
            .get_all_by_label("Bring it back")
            .count(),
        1
    );
}

/// What was saved, or thrown away on purpose, is not offered.
#[test]
fn saved_work_is_not_offered() {
    let folder = folder();
    let mut window = window_in(folder.path(), pairs::flat());
    fill(&mut window, "Work thickness", "1/4");
    save(&mut window);
    give_path(&mut window, &folder.path().join("mine.ron"), "Write");
    window.run();
    assert!(!window.state().is_changed());
    window.step();
    drop(window);
    assert!(
        started_in(folder.path())
            .query_by_label("Bring it back")
            .is_none()
    );
}

/// A copy that cannot be read is told of and stays; one with sizes that no file may carry is read.
#[test]
fn a_damaged_copy_is_kept_and_told() {
    let folder = folder();
    let kept = folder.path().join("kept").join("unsaved");
    std::fs::create_dir_all(&kept).expect("made");
    put(
        &kept,
        "unsaved-1.ron",
        "// name: Bits\n(format: 1, name: 7)",
    );
    let mut large = pairs::flat();
    large.jaw.length = pairs::length("60 in");
    assert!(document::check_limits(&large).is_err());
    put(&kept, "unsaved-2.ron", document::write(&large));
    let mut window = started_in(folder.path());
    window.get_by_label_contains("It cannot be read");
    click(&mut window, "Bring it back");
    assert_eq!(window.state().document(), &large);
    assert_eq!(
        bytes(&kept.join("unsaved-1.ron")),
        b"// name: Bits\n(format: 1, name: 7)"
    );
}

/// A size that nothing can be reckoned from comes back at its limit, and the copy stays.
#[test]
fn what_cannot_be_reckoned_comes_back_inside_its_limits() {
    let folder = folder();
    let kept = folder.path().join("kept").join("unsaved");
    std::fs::create_dir_all(&kept).expect("made");
    let mut odd = pairs::flat();
    odd.rein.length = pairs::length("0 in");
    put(&kept, "unsaved-1.ron", document::write(&odd));
    let mut window = started_in(folder.path());
    click(&mut window, "Bring it back");
    let back = window.state().document().clone();
    document::check_limits(&back).expect("every size is inside its limits");
    assert_eq!((&back.jaw, back.work), (&odd.jaw, odd.work));
    window.get_by_label_contains("were set to their limits");
    assert!(kept.join("unsaved-1.ron").exists(), "what was kept stays");
}

/// A new pair is work: it is asked about, and said to be unsaved.
#[test]
fn a_new_pair_is_asked_about() {
    let folder = folder();
    let mut window = window_in(folder.path(), pairs::flat());
    press(&mut window, Modifiers::COMMAND, Key::N);
    window.get_by_label("Work to hold").type_text("3/8 flat");
    window.run();
    for _ in 0..3 {
        press(&mut window, Modifiers::NONE, Key::Enter);
    }
    assert!(window.state().is_changed());
    press(&mut window, Modifiers::COMMAND, Key::Q);
    window.get_by_label("Not saved");
    assert!(!window.state().may_close());
}

/// What sizes are shown in is no change of the design.
#[test]
fn switching_units_leaves_nothing_to_save() {
    let folder = folder();
    let mut window = window_in(folder.path(), pairs::flat());
    click(&mut window, "Show millimetres");
    assert_eq!(window.state().document().units, Units::Millimetre);
    assert!(!window.state().is_changed());
    press(&mut window, Modifiers::COMMAND, Key::Q);
    assert!(window.state().may_close());
}

/// A design on file, changed here and by another program.
fn changed_by_two(folder: &Path) -> (Window, Document) {
    let mut window = window_in(folder, pairs::flat());
    save(&mut window);
    give_path(&mut window, &folder.join("mine.ron"), "Write");
    fill(&mut window, "Work thickness", "1/4");
    let mut theirs = window.state().document().clone();
    theirs.name = "Theirs".to_owned();
    put(folder, "mine.ron", document::write(&theirs));
    save(&mut window);
    window.get_by_label("Changed by another");
    (window, theirs)
}

#[test]
fn mine_may_be_kept_and_theirs_comes_back_from_before() {
    let folder = folder();
    let (mut window, theirs) = changed_by_two(folder.path());
    let file = folder.path().join("mine.ron");
    assert_eq!(
        document::read(&bytes(&file)).expect("a design"),
        theirs,
        "nothing is written yet"
    );
    click(&mut window, "Keep mine");
    let mine = window.state().document().clone();
    assert_eq!(document::read(&bytes(&file)).expect("a design"), mine);
    assert!(!window.state().is_changed());
    // Once more is no conflict.
    fill(&mut window, "Work thickness", "5/16");
    save(&mut window);
    assert!(window.query_by_label("Changed by another").is_none());
    click(&mut window, "File");
    click_with(&mut window, "Earlier versions");
    click(&mut window, "Bring back version 1");
    assert_eq!(window.state().document(), &theirs);
    assert!(window.state().is_changed(), "the file is as it was");
}

#[test]
fn theirs_may_be_taken() {
    let folder = folder();
    let (mut window, theirs) = changed_by_two(folder.path());
    click(&mut window, "Take theirs");
    assert_eq!(window.state().document(), &theirs);
    assert!(!window.state().is_changed());
}

#[test]
fn both_may_be_kept() {
    let folder = folder();
    let (mut window, theirs) = changed_by_two(folder.path());
    let mine = window.state().document().clone();
    click(&mut window, "Save as another file");
    give_path(&mut window, &folder.path().join("both.ron"), "Write");
    let read = |name: &str| document::read(&bytes(&folder.path().join(name))).expect("a design");
    assert_eq!(read("mine.ron"), theirs);
    assert_eq!(read("both.ron"), mine);
}

/// Where the killed window of the test below works; it does nothing else where this is not set.
const IN: &str = "REINWRIGHT_TEST_EDITS_IN";

/// Edits and saves for as long as it lives.
#[test]
#[ignore = "it is started, and killed, by the test below"]
fn edits_until_it_is_killed() {
    let folder = std::env::var_os(IN).expect("the parent says where");
    let folder = Path::new(&folder);
    let file = folder.join("mine.ron");
    let bench = Workbench::open(&file, remembering(folder)).expect("a design");
    let mut window = show(bench, SMALL);
    if window.query_by_label("Later").is_some() {
        click(&mut window, "Later");
    }
    for round in 0_u64.. {
        let sixteenths = 4 + round % 8;
        fill(
            &mut window,
            "Work thickness",
            &format!("{sixteenths}/16 in"),
        );
        save(&mut window);
        // A quarter of a second each: long enough for a copy to be due.
        (0..30).for_each(|_| window.step());
        fill(&mut window, "Work thickness", "1/8 in");
        (0..30).for_each(|_| window.step());
    }
}

/// A window that is killed in the midst of editing and saving leaves a file that is whole, copies
/// that can be brought back, and nothing else lying about. (What a kill does to the writing itself
/// is tried 200 times where that stands.)
#[test]
fn a_killed_window_loses_and_leaves_nothing() {
    /// So often here, and as often as the variable says where it is set: 200 times for good.
    const KILLS: u64 = 8;
    let kills = std::env::var("REINWRIGHT_TEST_KILLS");
    let kills = kills.map_or(KILLS, |often| often.parse().expect("a number"));
    let folder = folder();
    put(folder.path(), "mine.ron", document::write(&pairs::flat()));
    let own = std::env::current_exe().expect("this test has a path");
    let file = || bytes(&folder.path().join("mine.ron"));
    for kill in 0..kills {
        let before = file();
        let mut child = Command::new(&own)
            .args([
                "--exact",
                "kept::edits_until_it_is_killed",
                "--ignored",
                "--quiet",
            ])
            .env(IN, folder.path())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .expect("it starts");
        while file() == before {
            assert!(
                child.try_wait().expect("it is known").is_none(),
                "it has ended by itself"
            );
            std::thread::sleep(Duration::from_millis(10));
        }
        std::thread::sleep(Duration::from_millis(137 * kill % 1100));
        child.kill().expect("it is killed");
        child.wait().expect("it has ended");
        document::read(&file()).expect("the file is whole after every kill");
    }
    let bench = Workbench::open(&folder.path().join("mine.ron"), remembering(folder.path()));
    let mut window = show(bench.expect("a design"), TALL);
    assert!(
        window
            .query_by_label_contains("It cannot be read")
            .is_none()
    );
    click(&mut window, "Later");
    // The next save tidies what the kills left.
    fill(&mut window, "Work thickness", "3/4 in");
    save(&mut window);
    let names = names(folder.path());
    assert_eq!(names, ["kept", "mine.ron", "recent"]);
}
