//! Everything around the sheet. A panel takes what it shows and answers with what was asked for;
//! it does none of that itself.

pub(crate) mod answers;
pub(crate) mod begin;
pub(crate) mod begin_tool;
pub(crate) mod cut;
pub(crate) mod dialog;
pub(crate) mod family;
pub(crate) mod heats;
pub(crate) mod operation;
pub(crate) mod parts;
pub(crate) mod progress;
pub(crate) mod question;
pub(crate) mod shelf;
pub(crate) mod sketch;
pub(crate) mod styles;
mod ticks;
mod tool_card;
pub(crate) mod tools_for;
mod typing;
pub(crate) mod wish;
