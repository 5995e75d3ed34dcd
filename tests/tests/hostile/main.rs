//! What no smith would ask for, and what no file should say: it costs a bounded amount of work, and
//! is answered with a clear word.

mod damage;
mod formats;
mod messages;
mod pages;
