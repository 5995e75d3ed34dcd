//! Quadrature, roots and plane geometry: what every room above reckons with.

pub mod peak;
pub(crate) mod plane;
pub mod quadrature;
pub mod roots;
