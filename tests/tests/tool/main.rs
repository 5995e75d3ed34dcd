//! Tools: files, steel, checks, columns, the tools of a pair, and the command line.

mod checks;
mod column;
mod commands;
mod document;
mod drawn;
mod family;
mod family_commands;
mod handles;
mod hostile;
mod made;
mod mends;
mod reached;
mod solid;
mod tools_for;
