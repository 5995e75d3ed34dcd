//! Bessel functions of the first kind, and the complete elliptic integrals.

/// J₀(x) by its power series: for |x| up to 25 right to eight digits or better.
///
/// ```
/// use reinwright_core::number::bessel::j0;
/// // The first zero of J₀ (Abramowitz and Stegun, table 9.5, from memory).
/// assert!(j0(2.404_825_557_7).abs() < 1e-9);
/// ```
pub fn j0(x: f64) -> f64 {
    series(x, 0.0)
}

/// J₁(x), as [`j0`].
pub fn j1(x: f64) -> f64 {
    x / 2.0 * series(x, 1.0)
}

/// Σ (−x²/4)^k / (k! · (k + order)!) · order!, for order 0 or 1.
fn series(x: f64, order: f64) -> f64 {
    const MOST_TERMS: u32 = 80;
    let quarter = -x * x / 4.0;
    let (mut term, mut sum) = (1.0_f64, 1.0_f64);
    for k in 1..MOST_TERMS {
        let k = f64::from(k);
        term *= quarter / (k * (k + order));
        sum += term;
        if term.abs() < 1e-18 * sum.abs() {
            break;
        }
    }
    sum
}

/// |Re[(1 − j)·J₁(z)/J₀(z)]| at z = (1 − j)·x: what a round bar of radius x depths takes up in a field
/// along it, over what a thick flat would.
///
/// The ratio J₁(z)/J₀(z) is the continued fraction z/(2 − z²/(4 − z²/(6 − …))) (Abramowitz and Stegun,
/// 9.1.73), told from its far end; z² = −2j·x². Past x = 12 it is
/// 1 − 1/(2x) − 1/(16x²) to four digits, told from the ratio's expansion for large arguments (9.2).
pub fn round_bar_factor(x: f64) -> f64 {
    const FAR: f64 = 12.0;
    if x >= FAR {
        return 1.0 - 1.0 / (2.0 * x) - 1.0 / (16.0 * x * x);
    }
    let twice = 2.0 * x * x;
    let mut n = (16.0 + 2.0 * x).ceil();
    let (mut re, mut im) = (2.0 * n, 0.0);
    while n > 1.0 {
        n -= 1.0;
        // d = 2n + 2j·x²/d
        let size = re * re + im * im;
        (re, im) = (2.0 * n + twice * im / size, twice * re / size);
    }
    2.0 * x * im.abs() / (re * re + im * im)
}

/// The complete elliptic integrals K and E of a parameter m = k², by the arithmetic-geometric mean
/// (Abramowitz and Stegun, 17.6).
pub fn elliptic(m: f64) -> (f64, f64) {
    let (mut a, mut b) = (1.0_f64, (1.0 - m).sqrt());
    let (mut power, mut sum) = (0.5, 0.5 * m);
    while (a - b).abs() > 1e-15 {
        let c = (a - b) / 2.0;
        (a, b) = (f64::midpoint(a, b), (a * b).sqrt());
        power *= 2.0;
        sum += power * c * c;
    }
    let k = std::f64::consts::FRAC_PI_2 / a;
    (k, k * (1.0 - sum))
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

    /// Abramowitz and Stegun, tables 9.1 and 9.5, from memory.
    #[test]
    fn bessel_functions_are_those_of_the_tables() {
        check(j0(1.0), 0.765_197_686_6, 1e-10);
        check(j1(1.0), 0.440_050_585_7, 1e-10);
        check(j0(5.520_078_110_3), 0.0, 1e-9);
        check(j1(3.831_705_970_2), 0.0, 1e-9);
        check(j1(16.470_630_050_9), 0.0, 1e-7);
    }

    /// A thin bar takes up x³/4, a thick one nearly as much as a flat.
    #[test]
    fn the_factor_of_a_round_bar_has_its_limits() {
        check(round_bar_factor(0.01), 0.01_f64.powi(3) / 4.0, 1e-11);
        // Both ways of reckoning meet.
        check(round_bar_factor(11.999_999), round_bar_factor(12.0), 1e-4);
        check(round_bar_factor(1e4), 1.0, 1e-4);
    }

    /// K(½) = 1.854 074 677, E(½) = 1.350 643 881 (Abramowitz and Stegun, table 17.1, from memory).
    #[test]
    fn elliptic_integrals_are_those_of_the_tables() {
        let (k, e) = elliptic(0.5);
        check(k, 1.854_074_677_3, 1e-9);
        check(e, 1.350_643_881_0, 1e-9);
    }
}
