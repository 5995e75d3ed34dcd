//! All answers to one design, choosing a jaw, families and the shelf.

mod answers;
mod choose;
pub mod family;
pub mod shelf;

use answers::holding;
pub use answers::{Answers, balance_of};
pub use choose::{Advice, advise, choose};
