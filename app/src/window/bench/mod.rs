//! The bench: what is open, and the only place where what was asked for is done.

pub(crate) mod app;
mod cut;
mod deeds;
mod design;
mod desk;
mod family;
mod heats;
mod leave;
mod menu;
mod news;
mod open;
mod paths;
mod print;
mod room;
mod shelf;
mod sketch;
mod styles;
mod tool;
mod tools_for;
pub(crate) mod workbench;
