//! How things look: colours, signs, and the display list brought to the screen.

pub(crate) mod focus;
pub(crate) mod ink;
pub(crate) mod pointed;
pub(crate) mod sign;
pub(crate) mod theme;
pub(crate) mod view;
