//! Where the numbers along a chart stand.

/// Round numbers inside a stretch, about so many.
pub(super) fn ticks((from, to): (f64, f64), about: f64) -> Vec<f64> {
    let rough = (to - from) / about;
    let ten = 10f64.powf(rough.log10().floor());
    let nice = [1.0, 2.0, 5.0, 10.0].into_iter().find(|n| n * ten >= rough);
    let step = nice.unwrap_or(10.0) * ten;
    let mut ticks = Vec::new();
    let mut at = (from / step).ceil() * step;
    while at <= to + 1e-9 && ticks.len() < 20 {
        // Minus nothing is nothing.
        ticks.push(if at.abs() < 1e-9 { 0.0 } else { at });
        at += step;
    }
    ticks
}

/// How many digits behind the point tell such numbers apart.
pub(super) fn decimals(ticks: &[f64]) -> usize {
    /// No chart is so fine that more would be wanted.
    const MOST: usize = 6;
    let [first, second, ..] = ticks else { return 0 };
    let mut step = second - first;
    let mut digits = 0;
    while step < 1.0 - 1e-9 && digits < MOST {
        step *= 10.0;
        digits += 1;
    }
    digits
}

#[cfg(test)]
mod tests {
    use super::{decimals, ticks};

    #[track_caller]
    fn check(span: (f64, f64), expected: &[f64]) {
        let found = ticks(span, 3.0);
        let same = found.len() == expected.len()
            && found
                .iter()
                .zip(expected)
                .all(|(a, b)| (a - b).abs() < 1e-9);
        assert!(same, "{found:?}, expected {expected:?}");
    }

    #[test]
    fn ticks_are_round_and_inside() {
        check((0.0, 1.0), &[0.0, 0.5, 1.0]);
        check((-1.7, 1.7), &[0.0]);
        check((0.0, 33.0), &[0.0, 20.0]);
        check((11.8, 18.5), &[15.0]);
        check((0.03, 0.11), &[0.05, 0.1]);
    }

    /// A hardy of 2 5/8 in is marked at every half inch.
    #[test]
    fn numbers_are_told_apart() {
        let told = |ticks: &[f64]| -> Vec<String> {
            let digits = decimals(ticks);
            ticks.iter().map(|own| format!("{own:.digits$}")).collect()
        };
        assert_eq!(
            told(&ticks((0.0, 2.625), 6.0)),
            ["0.0", "0.5", "1.0", "1.5", "2.0", "2.5"]
        );
        assert_eq!(told(&[0.0, 20.0]), ["0", "20"]);
        assert_eq!(told(&[0.05, 0.1]), ["0.05", "0.10"]);
        assert_eq!(told(&[]), [""; 0]);
    }
}
