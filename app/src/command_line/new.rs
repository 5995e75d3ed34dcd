//! A new design in proportion to what it holds and what it is made from.

use reinwright_core::asked::{self, parse_bar, parse_work};
use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tongs::jaw::JawStyle;

use super::arguments::New;
use super::{Done, Outcome};
use crate::disk::files;

pub(super) fn run(wanted: &New) -> Outcome {
    let at = |option: &'static str| move |error: asked::StockError| format!("{option}: {error}");
    let work = parse_work(&wanted.work).map_err(at("--work"))?;
    let bar = parse_bar(&wanted.bar).map_err(at("--bar"))?;
    let work = work.laid_as_said(&wanted.work, &wanted.jaw);
    let design = Document::starting(&wanted.jaw, work, bar).ok_or_else(|| no_style(&wanted.jaw))?;
    document::check_limits(&design).map_err(|error| error.to_string())?;
    files::write_whole(&wanted.out, document::write(&design).as_bytes())?;
    let text = format!("{}: {}\n", wanted.out.display(), design.name);
    Ok(Done::said(text))
}

fn no_style(asked: &str) -> String {
    let names: Vec<String> = JawStyle::NAMES
        .iter()
        .map(|name| name.replace(' ', "-"))
        .collect();
    format!(
        "--jaw: no jaw style is called \"{asked}\": choose one of {}",
        names.join(", ")
    )
}
