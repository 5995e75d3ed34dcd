//! What is drawn: texts clear of each other, handles on the steel, a picture of every jaw style.

mod handles;
mod labels;
mod lines;
mod pictures;
mod texts;
