//! A new design in proportion to what it holds and what it is made from.

use reinwright_core::asked::{self, parse_bar, parse_work};
use reinwright_core::shop::start;
use reinwright_core::tongs::document;
use reinwright_core::tongs::jaw::{JawKind, NoStyle};

use super::arguments::New;
use super::{Done, Outcome, tool};
use crate::disk::files;

pub(super) fn run(wanted: &New) -> Outcome {
    if let Some(kind) = &wanted.tool {
        return tool::begin(wanted, kind);
    }
    // What the reader of options demands it leaves out where another option forbids that.
    if wanted.sizes.is_some() {
        return Err(
            "--sizes: a family is begun here of a tool alone; write one pair without it, then choose \
             \"Make a family of this design\" in the window"
                .to_owned(),
        );
    }
    if wanted.size.is_some() {
        return Err(
            "--size: only a tool has one; how large a pair's jaw is comes from --work".to_owned(),
        );
    }
    let at = |option: &'static str| move |error: asked::StockError| format!("{option}: {error}");
    let (asked, jaw) = (wanted.work.as_deref(), wanted.jaw.as_deref());
    let (asked, jaw) = (asked.unwrap_or_default(), jaw.unwrap_or_default());
    let work = parse_work(asked).map_err(at("--work"))?;
    let bar = parse_bar(&wanted.bar).map_err(at("--bar"))?;
    let jaw: JawKind = jaw.parse().map_err(|no: NoStyle| format!("--jaw: {no}"))?;
    let work = work.laid_as_said(asked, jaw);
    let design = start(jaw, work, bar).map_err(|no| format!("--bar: {no}"))?;
    document::check_limits(&design).map_err(|error| error.to_string())?;
    files::write_whole(&wanted.out, document::write(&design).as_bytes())?;
    let (name, held) = (&design.name, design.work.reading());
    let text = format!("{}: {name}\nholds: {held}\n", wanted.out.display());
    Ok(Done::said(text))
}
