//! What lies on disk: designs, folders of them, own jaws, and what the window remembers.

pub mod files;
pub mod folder;
pub(crate) mod memory;
pub mod own_jaws;
mod place;
pub mod stock_sizes;
