//! What must stay true of the tree itself.

mod imports;
mod rooms;
mod sources;
mod third_party;
mod tidy;
