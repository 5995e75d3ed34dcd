//! Gauss–Legendre quadrature, and the same with ends where a quarter-round comes in steeply.

/// Nodes and weights of the 8-point rule on −1…1 (Abramowitz and Stegun, table 25.4; digits from
/// memory, proved by the polynomial tests below).
const RULE: [(f64, f64); 4] = [
    (0.183_434_642_495_649_8, 0.362_683_783_378_362),
    (0.525_532_409_916_329, 0.313_706_645_877_887_3),
    (0.796_666_477_413_626_7, 0.222_381_034_453_374_5),
    (0.960_289_856_497_536_3, 0.101_228_536_290_376_3),
];

/// Sine and cosine of π/2 times the nodes.
const STEEP: [(f64, f64); 4] = [
    (0.284_167_923_901_928_74, 0.958_774_525_644_725_1),
    (0.734_889_938_755_432_3, 0.678_186_388_772_317_5),
    (0.949_425_384_298_818_8, 0.313_992_738_210_679_2),
    (0.998_055_213_850_506_8, 0.062_336_105_956_493_03),
];

/// `∫ f` from `a` to `b`; exact for polynomials up to degree 15.
pub fn integrate(a: f64, b: f64, mut f: impl FnMut(f64) -> f64) -> f64 {
    let (middle, half) = (f64::midpoint(a, b), (b - a) / 2.0);
    let at =
        |(node, weight): (f64, f64)| weight * (f(middle - half * node) + f(middle + half * node));
    half * RULE.into_iter().map(at).sum::<f64>()
}

/// `∫ f` from `a` to `b` where `f` may start or end like a square root: the ends are stretched
/// by x = sin φ.
pub fn integrate_steep(a: f64, b: f64, mut f: impl FnMut(f64) -> f64) -> f64 {
    let (middle, half) = (f64::midpoint(a, b), (b - a) / 2.0);
    let quarter = std::f64::consts::FRAC_PI_2;
    half * integrate(-quarter, quarter, |phi| {
        phi.cos() * f(middle + half * phi.sin())
    })
}

/// The places and weights that [`integrate`] uses, for several integrals in one pass.
pub fn nodes(a: f64, b: f64) -> impl Iterator<Item = (f64, f64)> {
    let (middle, half) = (f64::midpoint(a, b), (b - a) / 2.0);
    RULE.into_iter().flat_map(move |(node, weight)| {
        [
            (middle - half * node, half * weight),
            (middle + half * node, half * weight),
        ]
    })
}

/// The places and weights that [`integrate_steep`] uses, for several integrals in one pass.
pub fn steep_nodes(a: f64, b: f64) -> impl Iterator<Item = (f64, f64)> {
    let (middle, half) = (f64::midpoint(a, b), (b - a) / 2.0);
    let quarter = std::f64::consts::FRAC_PI_2;
    let rule = RULE.into_iter().zip(STEEP);
    rule.flat_map(move |((_, weight), (sin, cos))| {
        let (far, weight) = (half * sin, half * quarter * weight * cos);
        [(middle - far, weight), (middle + far, weight)]
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_rule_is_exact_for_degree_fifteen() {
        let found = integrate(0.0, 2.0, |x| x.powi(15));
        assert!(
            (found / 4096.0 - 1.0).abs() < 1e-13,
            "found {found}, expected 4096"
        );
    }

    #[test]
    fn steep_nodes_are_the_sines_of_the_nodes() {
        for ((node, _), (sin, cos)) in RULE.into_iter().zip(STEEP) {
            let (s, c) = (std::f64::consts::FRAC_PI_2 * node).sin_cos();
            assert!((s - sin).abs() < 1e-15 && (c - cos).abs() < 1e-15, "{node}");
        }
    }

    #[test]
    fn a_quarter_circle_comes_out_as_pi_over_four() {
        let found = integrate_steep(0.0, 1.0, |x| (1.0 - x * x).sqrt());
        assert!(
            (found - std::f64::consts::FRAC_PI_4).abs() < 1e-9,
            "found {found}"
        );
    }
}
