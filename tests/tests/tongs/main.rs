//! A pair of tongs: its text, how its jaws come to rest on the work, its halves as solids, how they
//! go together.

mod document;
mod fair;
mod heads;
mod named;
mod piece;
mod pieces_held;
mod rein_ends;
mod rotation;
mod samples;
mod seat;
mod solid;
mod starting;
