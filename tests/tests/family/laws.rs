//! What holds for any family: shapes scale, text gives it back, bad bytes are told.

use super::*;

fn scaled_length(length: Length, k: f64) -> Length {
    Length::decimal(length.mm() * k / length.unit().mm(), length.unit())
}

fn scaled_work(work: Work, k: f64) -> Work {
    match work {
        Work::Flat {
            thickness, width, ..
        } => Work::flat(scaled_length(thickness, k), scaled_length(width, k)),
        Work::Round { .. } | Work::Square { .. } | Work::Hexagon { .. } | Work::Octagon { .. } => {
            work.with_size(scaled_length(work.size(), k))
        }
    }
}

fn scaled_bar(mut bar: Bar, k: f64) -> Bar {
    match &mut bar.stock {
        Stock::Round { diameter: it } | Stock::Square { side: it } => *it = scaled_length(*it, k),
        Stock::Flat { thickness, width } => {
            *thickness = scaled_length(*thickness, k);
            *width = scaled_length(*width, k);
        }
    }
    bar
}

/// A family with the base and the same in k times its size, every length by a rule in turn.
fn exactly_scaled(base: &Document, k: f64, rules: [Rule; 2]) -> Family {
    let mut family = Family::from_design(base);
    family.rounding = Rounding::Exact;
    let mut turn = rules.into_iter().cycle();
    for field in base.fields().into_iter().filter(Field::is_length) {
        family.rules.insert(field.path, turn.next().unwrap());
    }
    let mut size = Size::new(scaled_work(base.work, k));
    size.bar = Some(scaled_bar(base.bar, k));
    family.sizes.push(size);
    family
}

/// What must scale exactly: the jaw, and the rein unless lengths that suit the hand shape it too,
/// as they do a bow and a grip of its own.
fn exact_sweeps<'a>(document: &Document, half: &'a Half) -> Vec<&'a Sweep> {
    let bowed = matches!(document.rein.line, ReinLine::Bowed { .. });
    if bowed || document.rein.hand_zone.is_some() {
        vec![&half.jaw]
    } else {
        vec![&half.jaw, &half.rein]
    }
}

/// How near exact scaling comes, relative: the jaw to rounding; stations of a rein stand 0.001 mm
/// apart at least whatever its size, which moves its sections by 3e-6 of its length.
const JAW: f64 = 1e-9;
const REIN: f64 = 1e-5;

/// Second moments about both axes along a sweep, short of its end: a rounded end has no section
/// left, and a ball swells so steeply that the place counts more than the size.
fn second_moments(sweep: &Sweep) -> Vec<f64> {
    let at = |t: f64| sweep.section(t * sweep.length()).properties();
    let all = [0.0, 0.3, 0.55, 0.8, 0.9].map(at);
    all.iter().flat_map(|p| [p.side_mm4, p.top_mm4]).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    /// Source: dimensions. A shape k times as large has k³ the volume, k² the outline and k⁴
    /// the second moment of area. The play of 1 mm past the other boss is the same in all sizes,
    /// so that the steps between boss, neck and shoulder are not quite alike: of the whole half
    /// they are under 1 %.
    #[test]
    fn proportional_shapes_are_alike(which in 0..12usize, k in 0.6..1.8f64, bar_first: bool) {
        let (name, base) = pairs::all().swap_remove(which);
        let rules = if bar_first { [Rule::WithBar, Rule::WithWork] } else { [Rule::WithWork, Rule::WithBar] };
        let family = exactly_scaled(&base, k, rules);
        let answers = answer_all(&family);
        prop_assert!(answers[1].findings.iter().all(|f| !f.message.contains("by its rule")));
        let [one, other] = [&answers[0].model, &answers[1].model];
        let pairs = exact_sweeps(&base, &one.a).into_iter().zip(exact_sweeps(&base, &other.a));
        for ((a, b), near) in pairs.zip([JAW, REIN]) {
            close(&format!("{name}: volume"), b.volume_mm3(), a.volume_mm3() * k.powi(3), near);
            for (a, b) in second_moments(a).iter().zip(second_moments(b)) {
                close(&format!("{name}: second moment"), b, a * k.powi(4), near);
            }
        }
        let area = |half: &Half| kurbo::Shape::area(&half.outline()).abs();
        let near = if exact_sweeps(&base, &one.a).len() == 2 { 1e-3 } else { 0.01 };
        close("outline", area(&other.a), area(&one.a) * k * k, near);
        close("half", other.a.volume_mm3(), one.a.volume_mm3() * k.powi(3), 0.01);
    }

    /// Rounded, every scaled length of a design in inches is a whole number of 32nds, and never
    /// nothing.
    #[test]
    fn scaled_sizes_can_be_measured(sixteenths in 4..16u32) {
        let base = pairs::starting("flat", "3/8 in flat", "3/4 in square");
        let mut family = Family::from_design(&base);
        let mut size = Size::new(base.work);
        size.bar = Some(bar(&format!("{sixteenths}/16 in square")));
        family.sizes.push(size);
        let made = family.take_out(1).unwrap();
        let play = made.rivet.hole.mm() - made.rivet.diameter.mm();
        prop_assert!(sixteenths == 12 || (play - INCH / 64.0).abs() < 1e-9, "play {}", play);
        made.visit(&mut |field| {
            let hole = field.path == "rivet.hole";
            if let Value::Length(length) = field.value && !hole && length.mm() > 0.0 {
                let parts = length.mm() / INCH * 32.0;
                assert!((parts - parts.round()).abs() < 1e-6, "{}: {length}", field.path);
            }
        });
    }

    /// Whatever the base and the sizes, the file gives the family back.
    #[test]
    fn text_gives_the_family_back(dice in prop::collection::vec(any::<u32>(), 160)) {
        let base = varied(&pairs::flat(), &dice, f64::INFINITY);
        let mut family = Family::from_design(&base);
        family.rounding = [Rounding::Measured, Rounding::Exact][dice[0] as usize % 2];
        let paths: Vec<String> = base.fields().into_iter().map(|f| f.path).collect();
        for (at, throw) in dice.iter().enumerate().take(8) {
            let path = &paths[*throw as usize % paths.len()];
            family.set_rule(path, Rule::ALL[at % 3]).ok();
            let mut size = Size::new(work(&format!("{} mm round", at + 6)));
            size.set.insert(path.clone(), text_at(&base, path));
            size.name = "\"quoted\" \\ \u{2300}\n".repeat(at % 2);
            family.sizes.push(size);
        }
        family.sizes.iter_mut().for_each(|size| size.set.retain(|path, _| !path.starts_with("work.")));
        let text = family::write(&family);
        prop_assert_eq!(family::read(text.as_bytes()).unwrap(), family.clone());
        // Every size of it is a design that can be saved.
        for answer in answer_all(&family) {
            prop_assert!(document::check_limits(&answer.document).is_ok());
        }
    }

    #[test]
    fn one_wrong_byte_never_panics(at in 0.0..1.0f64, byte: u8) {
        let mut bytes = family::write(&v_bits()).into_bytes();
        #[allow(
            clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::cast_precision_loss,
            reason = "a place in a short file"
        )]
        let place = (at * bytes.len() as f64) as usize;
        bytes[place] = byte;
        match family::open(&bytes) {
            Ok(opened) => {
                opened.lost.iter().for_each(|lost| sentence(lost));
                answer_all(&opened.family);
            }
            Err(error) => sentence(&error.to_string()),
        }
    }

    #[test]
    fn any_bytes_never_panic(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        if let Err(error) = family::open(&bytes) {
            sentence(&error.to_string());
        }
    }
}
