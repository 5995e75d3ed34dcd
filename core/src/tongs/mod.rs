//! A pair of tongs: what is asked for, its jaws and body, and the model of both halves.

pub mod body;
pub mod document;
mod half_piece;
pub mod headroom;
pub mod jaw;
pub mod model;
mod resolve;
pub mod seat;
pub mod squeeze;

pub use resolve::resolve;
pub(crate) use resolve::{
    LEAST_STEP, NO_HAND_BEFORE, TURNING_PLAY, finish_length, least_heel, resolve_changed,
};
