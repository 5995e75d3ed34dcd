//! What the window holds and knows, whether or not it is drawn: what is open and its history, the
//! answers to it, what is looked at, and what can be commanded.

pub(crate) mod bar;
pub(crate) mod command;
pub(crate) mod cutting;
pub(crate) mod heating;
pub(crate) mod history;
pub(crate) mod job;
pub(crate) mod leafing;
pub(crate) mod look;
pub(crate) mod making;
pub(crate) mod mends;
pub(crate) mod news;
pub(crate) mod reckon;
pub(crate) mod rows;
pub(crate) mod samples;
pub(crate) mod session;
pub(crate) mod shop_heats;
pub(crate) mod tool;
