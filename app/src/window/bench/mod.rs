//! The bench: what is open, and the only place where what was asked for is done.

pub(crate) mod app;
mod cut;
mod deeds;
mod design;
mod family;
mod leave;
mod menu;
mod news;
mod open;
mod paths;
mod print;
mod shelf;
mod sketch;
mod styles;
pub(crate) mod workbench;
