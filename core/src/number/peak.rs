//! The highest place of a function.

/// The part of a stretch that the golden section keeps.
const GOLDEN: f64 = 0.618_033_988_749_894_8;

/// Where a function that rises to one top and falls again stands highest between two places, to
/// `tolerance`. The height there is exact to the square of that.
pub fn top((mut low, mut high): (f64, f64), tolerance: f64, f: impl Fn(f64) -> f64) -> f64 {
    let (mut p, mut q) = (high - GOLDEN * (high - low), low + GOLDEN * (high - low));
    let (mut at_p, mut at_q) = (f(p), f(q));
    while high - low > tolerance {
        if at_p < at_q {
            (low, p, at_p) = (p, q, at_q);
            q = low + GOLDEN * (high - low);
            at_q = f(q);
        } else {
            (high, q, at_q) = (q, p, at_p);
            p = high - GOLDEN * (high - low);
            at_p = f(p);
        }
    }
    f64::midpoint(low, high)
}

/// Where a function with several tops stands highest: the best of even samples, and from it the
/// [`top`] about it.
pub fn highest(
    (from, to): (f64, f64),
    samples: u32,
    tolerance: f64,
    f: impl Fn(f64) -> f64,
) -> f64 {
    let at = |i: u32| from + (to - from) * f64::from(i) / f64::from(samples);
    let best = (0..=samples).map(|i| (i, f(at(i))));
    let best = best
        .max_by(|a, b| a.1.total_cmp(&b.1))
        .map_or(0, |(i, _)| i);
    let about = (at(best.saturating_sub(1)), at((best + 1).min(samples)));
    top(about, tolerance, f)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(found: f64, expected: f64, tolerance: f64) {
        assert!(
            (found - expected).abs() <= tolerance,
            "{found}, not {expected}"
        );
    }

    /// The top of x (1 − x) is at a half; that of sin x at half of π.
    #[test]
    fn tops_are_where_school_has_them() {
        check(top((0.0, 1.0), 1e-6, |x| x * (1.0 - x)), 0.5, 1e-6);
        let right = std::f64::consts::FRAC_PI_2;
        check(top((0.0, 3.0), 1e-6, f64::sin), right, 1e-6);
    }

    #[test]
    fn a_top_at_an_end_is_found_there() {
        check(top((0.0, 1.0), 1e-6, |x| x), 1.0, 1e-6);
        check(highest((0.0, 1.0), 6, 1e-6, |x| -x), 0.0, 1e-6);
    }

    /// x sin x has its highest place of 0…10 where tan x = −x, at 7.978 666 (Abramowitz and
    /// Stegun, table 4.19, from memory), and a lower top before it.
    #[test]
    fn the_higher_of_two_tops_is_taken() {
        check(
            highest((0.0, 10.0), 20, 1e-6, |x| x * x.sin()),
            7.978_666,
            2e-6,
        );
    }
}
