//! Quadrature, roots and plane geometry: what every room above reckons with.

pub(crate) mod offset;
pub mod peak;
pub(crate) mod plane;
pub mod quadrature;
pub mod roots;
