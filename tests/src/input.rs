//! Every way in for bytes that somebody else wrote: what is no such thing is refused in one
//! sentence, and what is taken goes through to the end. Fuzzing and ordinary tests call the same.

use std::io::Cursor;
use std::ops::ControlFlow;

use reinwright::disk::pictures;
use reinwright_core::asked::{StockSizes, parse_bar, parse_work};
use reinwright_core::draw::{self, DrawOptions};
use reinwright_core::heats::{Prepared, Sources, heat_plan};
use reinwright_core::making::{self, Procedure};
use reinwright_core::paper::Paper;
use reinwright_core::resolve;
use reinwright_core::shop::came_out::CameOut;
use reinwright_core::shop::cut::{self, Rack, order_of};
use reinwright_core::shop::family::{self, InSizes};
use reinwright_core::shop::printers::Printers;
use reinwright_core::shop::shelf::{self, Marks};
use reinwright_core::shop::{Answers, ToolAnswers, balance_of};
use reinwright_core::steel::Heat;
use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tongs::jaw::sketch::KeptJaw;
use reinwright_core::tool::{self, Tool};
use reinwright_core::units::{Angle, Length, Temperature};

use crate::sentence;

/// A way in: what it is called, and what is done with the bytes.
pub type Entry = (&'static str, fn(&[u8]));

/// All of them.
pub const ENTRIES: [Entry; 14] = [
    ("document", document),
    ("tool", tool),
    ("family", family),
    ("tool family", tool_family),
    ("own jaw", own_jaw),
    ("marks", marks),
    ("came out", came_out),
    ("stock list", stock_list),
    ("heat sources", heat_sources),
    ("rack", rack),
    ("printers", printers),
    ("size text", size_text),
    ("stock text", stock_text),
    ("picture", picture),
];

/// So many sizes of a family are worked out; the others are like them.
const WORKED_OUT: usize = 3;

#[track_caller]
fn told<T, E: std::fmt::Display>(read: Result<T, E>) -> Option<T> {
    read.map_err(|why| sentence(&why.to_string())).ok()
}

/// A design, and one of a newer format; what can be read is worked out, and can be saved.
pub fn document(bytes: &[u8]) {
    if let Some(design) = told(document::read(bytes)) {
        Answers::to(&design);
        let text = document::write(&design);
        assert_eq!(document::read(text.as_bytes()), Ok(design));
    }
    if let Some((design, lost)) = family::newer_design(bytes) {
        lost.iter().for_each(|lost| sentence(lost));
        Answers::to(&design);
    }
    told(shelf::read(bytes));
}

/// A tool; what can be read is worked out, and can be saved.
pub fn tool(bytes: &[u8]) {
    if let Some(own) = told(tool::read(bytes)) {
        let answers = ToolAnswers::to(&own);
        draw::tool(&own, &answers.model, &DrawOptions::default());
        let text = tool::write(&own);
        assert!(tool::is_tool(text.as_bytes()));
        assert_eq!(tool::read(text.as_bytes()), Ok(own));
    }
}

/// A family of pairs, damaged or not.
pub fn family(bytes: &[u8]) {
    family_of::<Document>(bytes);
}

/// A family of tools, likewise.
pub fn tool_family(bytes: &[u8]) {
    family_of::<Tool>(bytes);
}

fn family_of<D: InSizes>(bytes: &[u8]) {
    told(family::read_of::<D>(bytes));
    if let Some(opened) = told(family::open_of::<D>(bytes)) {
        opened.lost.iter().for_each(|lost| sentence(lost));
        let is_whole = family::read_of::<D>(bytes).is_ok();
        assert_eq!(opened.lost.is_empty(), is_whole);
        for at in 0..opened.family.sizes.len().min(WORKED_OUT) {
            assert!(opened.family.answer(at).is_some(), "size {at}");
        }
        let text = family::write(&opened.family);
        assert_eq!(family::read_of(text.as_bytes()), Ok(opened.family));
    }
    if let Some((_, lost)) = family::newer_of::<D>(bytes) {
        lost.iter().for_each(|lost| sentence(lost));
    }
}

/// An own jaw.
pub fn own_jaw(bytes: &[u8]) {
    if let Some(jaw) = told(KeptJaw::read(bytes)) {
        let text = jaw.write();
        assert_eq!(KeptJaw::read(text.as_bytes()), Ok(jaw));
    }
}

/// What a shop has marked.
pub fn marks(bytes: &[u8]) {
    if let Some(marks) = told(Marks::read(bytes)) {
        assert_eq!(Marks::read(marks.write().as_bytes()), Ok(marks));
    }
}

/// What a shop has measured.
pub fn came_out(bytes: &[u8]) {
    if let Some(all) = told(CameOut::read(bytes)) {
        assert_eq!(CameOut::read(all.write().as_bytes()), Ok(all.clone()));
        all.own();
    }
}

/// The stock that can be bought.
pub fn stock_list(bytes: &[u8]) {
    told(StockSizes::read(bytes));
}

/// What a shop heats with; each of its sources is a piece of its own, and heats a bar.
pub fn heat_sources(bytes: &[u8]) {
    let Some(opened) = told(Sources::read(bytes)) else {
        return;
    };
    opened.lost.iter().for_each(|lost| sentence(lost));
    let again = Sources::read(opened.sources.write().as_bytes());
    assert_eq!(again.map(|own| own.sources), Ok(opened.sources.clone()));
    let design = crate::pairs::flat();
    let model = resolve(&design);
    let balance = balance_of(&design, &model);
    let plan = making::plan(&design, &model, &balance, Procedure::ThreeShoulders);
    let prepared = Prepared::new(design.bar.steel, &plan, &opened.sources);
    assert!(heat_plan(&prepared).totals.time_s.is_finite());
}

/// The bars of a shop; some pairs are cut from them.
pub fn rack(bytes: &[u8]) {
    let Some(rack) = told(Rack::read(bytes)) else {
        return;
    };
    assert_eq!(Rack::read(rack.write().as_bytes()), Ok(rack.clone()));
    let design = crate::pairs::flat();
    let balance = balance_of(&design, &resolve(&design));
    let order = [order_of(&design, &balance, 3)];
    let on = &mut |_| ControlFlow::Continue(());
    told(cut::plan(&order, &rack, design.units, on));
}

/// The printers of a shop.
pub fn printers(bytes: &[u8]) {
    let Some(printers) = told(Printers::read(bytes)) else {
        return;
    };
    for printer in &printers.known {
        let correction = printer.correction();
        let factors = [correction.across, correction.along];
        assert!(factors.iter().all(|by| by.is_finite() && *by > 0.0));
    }
    assert_eq!(Printers::read(printers.write().as_bytes()), Ok(printers));
}

/// A size, an angle, a temperature or a paper as it is typed.
pub fn size_text(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else {
        return;
    };
    if let Some(length) = told(text.parse::<Length>()) {
        assert!(length.mm().is_finite(), "{text}: {length:?}");
        assert_eq!(length.to_string().parse(), Ok(length), "{text}");
    }
    told(text.parse::<Angle>());
    told(text.parse::<Temperature>());
    told(Paper::parse(text));
    told(Heat::parse(text));
}

/// Work or a bar as it is typed.
pub fn stock_text(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else {
        return;
    };
    told(parse_work(text));
    told(parse_bar(text));
}

/// A picture to trace.
pub fn picture(bytes: &[u8]) {
    if let Some(picture) = told(pictures::from(Cursor::new(bytes))) {
        let [across, down] = picture.size;
        assert_eq!(picture.rgba.len(), 4 * across * down, "{across} x {down}");
    }
}
