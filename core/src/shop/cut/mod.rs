//! The cut list: so many pairs out of such bars, fewest bars, then the most useful offcut.
//!
//! [`order_of`] turns a design and its balance into pieces, [`orders`] sorts them by their bar,
//! [`plan`] says which piece is cut from which bar of a [`Rack`], and [`drawing`] draws it. What was
//! cut is taken off the rack by [`Rack::without`].

mod bars;
mod drawing;
mod order;
mod plan;
mod rack;
mod solve;

pub use bars::{BarsError, GivenBars, parse_bars, parse_long};
pub use drawing::{alike, drawing, reduction, sums};
pub use order::{Order, Wanted, order_of, order_of_tool, orders};
pub use plan::{CutBar, CutError, CutPiece, CutPlan, Source, StockPlan, Watch, plan};
pub use rack::{Lying, RACK_FILE, RACK_FORMAT, Rack, RackError, Sold};
