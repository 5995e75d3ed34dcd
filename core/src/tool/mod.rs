//! Hand tools that make tongs, forged from bar: punches, drifts, chisels, rivet sets, hardy tools.
//!
//! A [`Tool`] is what a smith asks for: a style with its own sizes, and what the style stands in,
//! which is struck or sits in the hardy hole. [`resolve`] makes the steel of it, told to the forge as
//! a [`crate::shape::Piece`] from the working end to the struck end or to the end of the shank.
//! [`check`] says what stands against it.
//!
//! # Frame
//! x along the tool, the working end at its greatest x; a struck tool has its struck face at x = 0,
//! a hardy tool its shoulder. An edge lies along y, as a handle does; the wedge, the eye, a groove and
//! the gap of a fork are seen along y.

mod check;
pub mod column;
mod document;
mod file;
pub mod forging;
mod form;
mod mount;
mod resolve;
mod solid;
pub mod steels;
mod stouter;
mod style;

pub use check::check;
pub use document::{FORMAT, KindOfFile, Shape, Tool, check_limits};
pub use file::{in_file, is_tool, lacks_mark, read, read_any, write};
pub use form::{From, formed};
pub use mount::{Hardy, Hold, Mount, Struck};
pub use resolve::{Model, resolve};
pub use solid::{Cut, Outline, Run};
pub use stouter::{Stouter, stouter};
pub use style::{
    BendingFork, BottomFuller, BottomSwage, CentrePunch, ColdChisel, CutOff, Drift, DriftSection,
    EdgeLine, Groove, HotChisel, MountKind, NoStyle, RivetSet, RoundPunch, SlotPunch, SquarePunch,
    ToolKind, ToolStyle, Use,
};
