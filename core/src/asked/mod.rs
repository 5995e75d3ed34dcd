//! What is asked for, whatever is forged: fields and their limits, the choice of units, work, bar,
//! plain sections, losses, stock as text, and the text of a file.

mod bar;
mod choice;
mod field;
mod file;
mod limit_error;
mod losses;
mod published;
pub(crate) mod range;
mod section;
mod stock_sizes;
mod stock_words;
mod text;
mod units_choice;
mod value;
mod walk;
mod work;

pub use bar::{Bar, Stock};
pub(crate) use choice::simple_choice;
pub use choice::{Choice, ChoiceBeside, Datum};
pub(crate) use field::section;
pub use field::{Field, Follows, capital, full_name};
pub use file::{FileError, LARGEST_FILE};
pub(crate) use file::{broken, options, pretty, readable};
pub use limit_error::LimitError;
pub use losses::{Allowances, Hole, Layout, Scale};
pub use range::Range;
pub use section::{Edge, PlainSection};
pub use stock_sizes::{StockList, StockShape, StockSizes, StockSizesError};
pub use stock_words::{
    StockError, parse_bar, parse_bar_in, parse_work, parse_work_in, says_held, says_lie, says_unit,
};
pub use units_choice::Units;
pub use value::{Step, Value, ValueError};
pub(crate) use walk::fields;
pub use walk::{Fields, Reader, Told, Walk, Writer};
pub use work::{AngleHeld, BoltHeld, FlatOf, Head, HexagonOf, Lie, RoundOf, SquareOf, Work};
