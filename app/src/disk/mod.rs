//! What lies on disk: designs, folders of them, own jaws, and what the window remembers.

pub mod files;
pub mod folder;
pub mod heat_sources;
pub(crate) mod kept;
pub(crate) mod memory;
pub mod own_jaws;
pub mod pictures;
mod place;
pub(crate) mod room;
pub mod stock_sizes;
pub(crate) mod trouble;
pub(crate) mod versions;
pub(crate) mod viewer;
mod whole;
