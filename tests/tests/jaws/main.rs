//! The jaw styles: each at every size of work, those with a shape of their own, work across them,
//! jaws of one's own, and which style suits which work.

mod bows;
mod choose;
mod crosswise;
mod judged;
mod sketch;
mod table;
mod tips;
