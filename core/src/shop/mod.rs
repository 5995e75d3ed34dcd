//! All answers to one design, choosing a jaw, a pair to begin with, families and the shelf.

mod answers;
mod choose;
pub mod family;
pub mod mend;
pub mod shelf;
mod start;

use answers::holding;
pub use answers::{Answers, balance_of};
pub use choose::{Advice, advise, choose};
pub use start::{NoStart, start, start_anyway};
