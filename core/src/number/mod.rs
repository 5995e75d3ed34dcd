//! Quadrature, roots, Bessel functions and plane geometry: what every room above reckons with.

pub mod bessel;
pub(crate) mod offset;
pub mod peak;
pub(crate) mod plane;
pub mod quadrature;
pub(crate) mod region;
pub mod roots;
