//! Root finding that always ends.

/// The place between `low` and `high` where a rising function passes zero, to `tolerance`.
///
/// The method of Chandrupatla (Advances in Engineering Software 28, 1997, page 145, from memory): the
/// parabola through three places where it is to be trusted, else the middle; at most 80 steps.
/// A value that is not finite counts as beyond the root. If `f` has no zero between the ends the
/// nearer end comes back.
pub fn rising_root((low, high): (f64, f64), tolerance: f64, mut f: impl FnMut(f64) -> f64) -> f64 {
    let ends = ((low, f(low)), (high, f(high)));
    rising_root_between(ends, tolerance, f)
}

/// The same between two places at which the function is known.
pub fn rising_root_between(
    (low, high): ((f64, f64), (f64, f64)),
    tolerance: f64,
    mut f: impl FnMut(f64) -> f64,
) -> f64 {
    const MOST_STEPS: u32 = 80;
    let finite = |y: f64| if y.is_finite() { y } else { f64::MAX };
    // The root lies between the last place and the one across from it.
    let (mut last, mut across) = ((low.0, finite(low.1)), (high.0, finite(high.1)));
    if last.1 >= 0.0 {
        return last.0;
    }
    if across.1 <= 0.0 {
        return across.0;
    }
    let mut part = by_chord(last, across);
    for _ in 0..MOST_STEPS {
        let apart = across.0 - last.0;
        if apart.abs() <= tolerance {
            break;
        }
        // A root close to one end is stepped over, so that the stretch is short at once.
        let hair = tolerance / 2.0 / apart.abs();
        let x = last.0 + apart * part.clamp(hair, 1.0 - hair);
        let next = (x, finite(f(x)));
        if next.1.abs() < f64::EPSILON {
            return x;
        }
        let before = if (next.1 < 0.0) == (last.1 < 0.0) {
            last
        } else {
            std::mem::replace(&mut across, last)
        };
        last = next;
        part = by_parabola(last, across, before);
    }
    last.0 + (across.0 - last.0) * by_chord(last, across)
}

/// The part of the way from one place to the other at which the chord crosses zero.
fn by_chord((_, fa): (f64, f64), (_, fb): (f64, f64)) -> f64 {
    fa / (fa - fb)
}

/// The part of the way from the first place to the second at which the parabola of x over f through all
/// three crosses zero; a half where that parabola may turn between them.
fn by_parabola((a, fa): (f64, f64), (b, fb): (f64, f64), (c, fc): (f64, f64)) -> f64 {
    let (xi, phi) = ((a - b) / (c - b), (fa - fb) / (fc - fb));
    if phi * phi < xi && (1.0 - phi) * (1.0 - phi) < 1.0 - xi {
        fa / (fb - fa) * fc / (fb - fc) + (c - a) / (b - a) * fa / (fc - fa) * fb / (fc - fb)
    } else {
        0.5
    }
}

/// The most halvings: what they leave of a stretch is less than the last digit of its ends.
const MOST_HALVINGS: u32 = 50;

/// Halves a stretch about the place where something stops being true; it is true at `low` and not
/// at `high`. Gives the last place where it was seen to be true and the first where it was not.
fn halved(
    (mut low, mut high): (f64, f64),
    tolerance: f64,
    mut f: impl FnMut(f64) -> bool,
) -> (f64, f64) {
    for _ in 0..MOST_HALVINGS {
        if (high - low).abs() <= tolerance {
            break;
        }
        let middle = f64::midpoint(low, high);
        if f(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    (low, high)
}

/// The last place, to `tolerance`, where something is still true that is true at the first end of
/// a stretch and not at the other.
pub fn last_true(ends: (f64, f64), tolerance: f64, f: impl FnMut(f64) -> bool) -> f64 {
    halved(ends, tolerance, f).0
}

/// The place where something stops being true, to the last digits; the end that is nearer if it
/// does not between the ends.
pub fn turning(ends: (f64, f64), f: impl FnMut(f64) -> bool) -> f64 {
    let (low, high) = halved(ends, 0.0, f);
    f64::midpoint(low, high)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The square root of two to fifteen digits.
    #[test]
    fn halving_finds_a_root() {
        let root = 2_f64.sqrt();
        let found = turning((0.0, 2.0), |x| x * x < 2.0);
        assert!((found - root).abs() < 1e-14, "{found}");
        let last = last_true((0.0, 2.0), 1e-3, |x| x * x < 2.0);
        assert!(last <= root && root - last < 1e-3, "{last}");
    }

    #[test]
    fn without_a_turn_the_nearer_end_comes_back() {
        assert!((turning((0.0, 1.0), |_| true) - 1.0).abs() < 1e-14);
        assert!(turning((0.0, 1.0), |_| false).abs() < 1e-14);
    }

    /// cos x = x at 0.739 085 133 215 16 (the fixed point of the cosine, from memory).
    #[test]
    fn a_rising_root_is_found() {
        let found = rising_root((0.0, 1.0), 1e-12, |x| x - x.cos());
        assert!((found - 0.739_085_133_215_16).abs() < 1e-11, "{found}");
    }

    /// The root of 12.25 is 3.5. Halving alone would take 18 tries to come so near.
    #[test]
    fn a_root_is_found_in_few_tries() {
        let mut tries = 0;
        let found = rising_root((0.5, 150.0), 1e-3, |x| {
            tries += 1;
            x.sqrt() - 3.5
        });
        assert!((found - 12.25).abs() < 1e-6, "{found}");
        assert!(tries <= 9, "{tries} tries");
    }

    /// ln x passes 0 at 1; past 2 it is not told.
    #[test]
    fn what_has_no_value_lies_beyond_the_root() {
        let told = |x: f64| if x > 2.0 { f64::NAN } else { x.ln() };
        let found = rising_root((0.1, 1000.0), 1e-9, told);
        assert!((found - 1.0).abs() < 1e-9, "{found}");
    }
}
