//! What is drawn: texts clear of each other, handles on the steel, a picture of every jaw style,
//! the work as the piece it is.

mod handles;
mod labels;
mod lines;
mod pictures;
mod texts;
mod work;
