//! All answers to one design, choosing a jaw, a pair to begin with, families, the shelf,
//! the cut list, and what came out.

mod answers;
pub mod came_out;
mod choose;
mod choose_own;
pub mod cut;
pub mod family;
pub mod mend;
mod offer;
pub mod printers;
pub mod shelf;
mod start;
mod tool_answers;
mod tools_for;

use answers::holding;
pub use answers::{Answers, balance_of};
pub use choose::{Advice, advise, advise_laid, agreed, choose};
pub use choose_own::{advise_own, advise_own_laid, choose_among, held_best};
pub use offer::{Offer, Offered, bars_to_offer};
pub use start::{NoStart, start, start_anyway, start_own, too_stout};
pub use tool_answers::ToolAnswers;
pub use tools_for::{ToolFor, tools_for};
