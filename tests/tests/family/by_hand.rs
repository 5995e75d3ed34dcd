//! Sizes, and what is set by hand for one of them.

use super::*;

#[test]
fn what_is_set_by_hand_stays_until_it_is_let_go() {
    let mut family = v_bits();
    let at = family
        .sizes
        .iter()
        .position(|size| size.label() == "3/4 in")
        .unwrap();
    family.set(at, "rein.length", "17 1/2").unwrap();
    let here = |family: &Family| text_at(&family.take_out(at).unwrap(), "rein.length");
    assert_eq!(here(&family), "17 1/2 in");
    family.set_base("rein.length", "14 in").unwrap();
    assert_eq!(here(&family), "17 1/2 in");
    assert_eq!(
        text_at(&family.take_out(0).unwrap(), "rein.length"),
        "14 in"
    );
    let family_again = family::read(family::write(&family).as_bytes()).unwrap();
    assert_eq!(here(&family_again), "17 1/2 in");
    let why = |family: &Family| {
        let all = family.differs_from_base(at);
        all.into_iter()
            .find(|d| d.path == "rein.length")
            .map(|d| d.why)
    };
    assert_eq!(why(&family), Some(Why::ByHand));
    assert_eq!(family.let_go(at, "rein.length"), Ok(true));
    assert_eq!(here(&family), "14 in");
    assert_eq!(why(&family), None);
    assert_eq!(family.let_go(at, "rein.length"), Ok(false));
}

/// A number typed without a unit keeps the unit that it was typed in, and one that stands bare in
/// a file keeps the family's, when the family is shown in others.
#[test]
fn a_bare_number_stays_as_long_as_it_was() {
    let mut family = v_bits();
    family.set(0, "rein.length", "17 1/2").unwrap();
    family.set(1, "allowances.margin", "7").unwrap();
    let bare = ("neck.depth".to_owned(), "9/16".to_owned());
    family.sizes[2].set.extend([bare]);
    let lengths = |family: &Family| {
        let mm = |at: usize, path: &str| {
            let text = text_at(&family.take_out(at).unwrap(), path);
            Length::parse(&text, Unit::Inch).unwrap().mm()
        };
        [mm(0, "rein.length"), mm(2, "neck.depth")]
    };
    let before = lengths(&family);
    assert_eq!(before, [17.5 * INCH, 9.0 / 16.0 * INCH]);
    let mut by_the_table = family.clone();
    family.set_units(Units::Millimetre);
    assert_eq!(lengths(&family), before);
    assert_eq!(family.base.units, Units::Millimetre);
    assert_eq!(
        text_at(&family.take_out(1).unwrap(), "allowances.margin"),
        "7 %"
    );
    by_the_table.set_base("units", "millimetres").unwrap();
    assert_eq!(by_the_table, family);
}

#[test]
fn choices_set_by_hand_bring_their_own_values() {
    let mut family = Family::from_design(&pairs::flat());
    family.add(Size::new(work("1/2 in flat"))).unwrap();
    family.set(1, "rein.line", "bowed").unwrap();
    family.set(1, "rein.bow", "1/2").unwrap();
    let table = family.table();
    let row = |path: &str| {
        table
            .rows
            .iter()
            .find(|row| row.field.path == path)
            .unwrap()
    };
    let bow = row("rein.bow");
    assert_eq!(
        (bow.base.as_deref(), bow.cells[0].text.as_deref()),
        (None, None)
    );
    assert_eq!(bow.cells[1].text.as_deref(), Some("1/2 in"));
    assert!(bow.cells[1].by_hand && !bow.cells[0].by_hand && bow.varies());
    assert_eq!(row("rein.bend").cells[1].text, None);
    // Without the bow its value has no place: it is kept, and told.
    family.let_go(1, "rein.line").unwrap();
    let answer = family.answer(1).unwrap();
    let told = answer
        .findings
        .iter()
        .find(|f| f.message.contains("rein.bow"))
        .unwrap();
    assert_eq!(told.severity, Severity::Mend);
    assert!(family.sizes[1].set.contains_key("rein.bow"));
}

#[test]
fn work_and_bar_are_each_sizes_own() {
    let mut family = Family::from_design(&pairs::flat());
    family.add(Size::new(work("1/2 in flat"))).unwrap();
    family.set(1, "work.thickness", "5/8").unwrap();
    family.set(1, "bar.side", "7/8 in").unwrap();
    let size = &family.sizes[1];
    assert_eq!(size.work.size().to_string(), "5/8 in");
    assert_eq!(size.bar.unwrap().stock.size().to_string(), "7/8 in");
    assert!(size.set.is_empty());
    assert_eq!(family.let_go(1, "bar.side"), Ok(true));
    assert_eq!(family.take_out(1).unwrap().bar, family.base.bar);
}

#[track_caller]
fn not_set(path: &str, text: &str, words: &[&str]) {
    let mut family = v_bits();
    let before = family.clone();
    let error = family
        .set(1, path, text)
        .expect_err("a bad value")
        .to_string();
    sentence(&error);
    for word in words {
        assert!(error.contains(word), "{word} in: {error}");
    }
    assert_eq!(family, before, "nothing changed");
}

#[test]
fn bad_values_are_refused_in_a_sentence() {
    not_set(
        "jaw.leg",
        "3//4 in",
        &["jaw.leg", "3//4 in", "write one such as"],
    );
    not_set("jaw.leg", "", &["size is missing"]);
    not_set("jaw.leg", "-1", &["minus"]);
    not_set("jaw.leg", "900 mm", &["jaw.leg", "0.5 mm to 200 mm"]);
    not_set("jaw.angle", "right", &["not an angle"]);
    not_set("jaw.angle", "200", &["40 deg to 160 deg"]);
    not_set("allowances.margin", "1e3", &["percentage"]);
    not_set("allowances.margin", "99", &["0 % to 40 %"]);
    not_set("boss.shape", "star", &["round, oval, lozenge"]);
    not_set("jaw.tusk", "1 in", &["jaw.tusk"]);
    let mut family = v_bits();
    assert_eq!(
        family.set(99, "jaw.leg", "1 in"),
        Err(EditError::NoSize(100, 6))
    );
    assert!(matches!(
        family.set_rule("jaw.angle", Rule::Same),
        Err(EditError::NoLength(_))
    ));
}

// Sizes.

#[test]
fn a_size_between_two_takes_the_larger_bar_and_what_both_set() {
    let mut family = v_bits();
    let place = |family: &Family, label: &str| {
        family
            .sizes
            .iter()
            .position(|size| size.label() == label)
            .unwrap()
    };
    let (a, b) = (place(&family, "3/4 in"), place(&family, "7/8 in"));
    family.set(a, "rein.length", "16 in").unwrap();
    family.set(b, "rein.length", "16 in").unwrap();
    family.set(b, "rein.gap", "1 in").unwrap();
    let new = family.add_between(a, b).unwrap();
    assert_eq!(new, b, "it stands between them");
    let size = &family.sizes[new];
    assert_eq!(size.work.size().to_string(), "13/16 in");
    assert_eq!(size.bar, family.sizes[new + 1].bar);
    assert_eq!(size.set.len(), 1);
    assert_eq!(size.set["rein.length"], "16 in");
    assert!(matches!(
        family.add_between(a, a),
        Err(EditError::NoBetween(..))
    ));
    // Ever closer, there is always one between until no length lies there.
    let mut low = a;
    for _ in 0..6 {
        low = family.add_between(low, low + 1).unwrap();
    }
    let sizes: Vec<f64> = family
        .sizes
        .iter()
        .map(|size| size.work.size().mm())
        .collect();
    assert!(sizes.is_sorted_by(|a, b| a < b), "{sizes:?}");
}

#[test]
fn the_last_size_stays() {
    let mut family = Family::from_design(&pairs::flat());
    assert_eq!(family.remove(0), Err(EditError::Last));
    family.add(Size::new(work("1/2 in flat"))).unwrap();
    assert!(family.remove(0).is_ok());
    assert!(family.take_out(1).is_none());
}
