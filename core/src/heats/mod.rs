//! Which fire or coil for which operation, whether the piece still goes in, how long and how few.
//!
//! A shop's [`Sources`] and a plan from [`crate::making`] make a [`Prepared`] table: every operation with
//! every source, whether it goes in at that stage's real shape and how its heats go. [`heat_plan`] then
//! gives sources to operations so that all takes the least time, exactly. All of it is for long bars: what
//! flows along them is looked at by [`course`] alone.

mod caution;
pub mod clock;
mod compared;
pub mod course;
mod entry;
mod examples;
mod fields;
mod file;
pub mod heating;
pub mod helper;
pub mod induction;
pub mod middle;
mod noticed;
mod offer;
pub mod optimum;
mod plan;
mod prepared;
mod priced;
mod riveted;
mod source;
mod stand;
mod text;
pub mod tilt;
mod uneven;
mod words;
mod work;

pub use caution::cautions;
pub use compared::{Compared, compare};
pub use entry::{AtOnce, Entry, Mouth, Need, Room, WayIn, WhyNot, clear_mm, entry};
pub use examples::ready;
pub use fields::{HeatField, wrong_name};
pub use file::{MOST_FIRES, MOST_SOURCES, OpenedSources, SOURCES_FORMAT, SourcesError};
pub use noticed::{next_bore, noticed};
pub use offer::Offer;
pub use plan::{
    Doing, HeatPlan, Heated, How, Span, Totals, heat_plan, plan_of, scale_percent, whole_scale,
    with_scale_of,
};
pub use prepared::{Prepared, Row, USUAL_HEAT_CELSIUS};
pub use priced::{Other, Priced, priced};
pub use riveted::{Riveted, riveted};
pub use source::{Back, Coil, Gas, Machine, Smith, Solid, Source, SourceKind, Sources, Wound};
pub use stand::{Bulk, End, Slice, Stand};
pub use uneven::{Spot, Uneven, uneven};
pub use words::{end_key, listed, no_longer, spoken};
