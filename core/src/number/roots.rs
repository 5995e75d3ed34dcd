//! Root finding that always ends.

/// The place between `low` and `high` where a rising function passes zero, to `tolerance`.
///
/// The regula falsi in its Illinois form, with a bisection whenever it crawls; at most 80 steps.
/// A value that is not finite counts as beyond the root. If `f` has no zero between the ends the
/// nearer end comes back.
pub fn rising_root((low, high): (f64, f64), tolerance: f64, mut f: impl FnMut(f64) -> f64) -> f64 {
    const MOST_STEPS: u32 = 80;
    let mut seen = |x: f64| Some(f(x)).filter(|y| y.is_finite()).unwrap_or(f64::MAX);
    let (mut a, mut b) = ((low, seen(low)), (high, seen(high)));
    if a.1 >= 0.0 {
        return low;
    }
    if b.1 <= 0.0 {
        return high;
    }
    for step in 0..MOST_STEPS {
        if b.0 - a.0 <= tolerance {
            break;
        }
        let x = next_place(a, b, step);
        let y = seen(x);
        if y.abs() < f64::EPSILON {
            return x;
        }
        // The value of an end that stays is halved, so that it moves the next time.
        if y < 0.0 {
            a = (x, y);
            b.1 /= 2.0;
        } else {
            b = (x, y);
            a.1 /= 2.0;
        }
    }
    f64::midpoint(a.0, b.0)
}

/// Where the chord crosses zero, a hair inside the ends; every third step the middle.
fn next_place((a, fa): (f64, f64), (b, fb): (f64, f64), step: u32) -> f64 {
    let chord = a + (b - a) * (-fa / (fb - fa));
    if step % 3 == 2 || !chord.is_finite() || fb == f64::MAX {
        return f64::midpoint(a, b);
    }
    let hair = 1e-4 * (b - a);
    chord.clamp(a + hair, b - hair)
}

/// The place between `low` and `high` where something stops being true, by 40 halvings; it is
/// true at `low` and not at `high`.
pub fn last_true(
    (mut low, mut high): (f64, f64),
    tolerance: f64,
    mut f: impl FnMut(f64) -> bool,
) -> f64 {
    for _ in 0..40 {
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
    low
}
