//! Stock as a smith writes it: work by its shape or by its name, and bar.

mod bar;
mod error;
mod pieces;
mod said;
mod sizes;
mod wanted;
mod work;

pub use bar::{parse_bar, parse_bar_in};
pub use error::StockError;
pub use said::{says_held, says_lie};
pub use work::{parse_work, parse_work_in};
