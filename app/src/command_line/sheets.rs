//! Templates and drawings as files.

use reinwright_core::draw::{self, DrawOptions, Kept, Which};
use reinwright_core::forge;
use reinwright_core::paper::{Drawing, ink};
use reinwright_core::shop::{Answers, balance_of};
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::model::Model;
use reinwright_core::tongs::resolve;
use reinwright_core::units::Length;

use super::arguments::{self, DrawingOf, Half, Piece, Template};
use super::{Done, Outcome, design, plan, written};
use crate::disk::files;
use crate::jobs::printing;

pub(super) fn template(wanted: &Template) -> Outcome {
    let paper = wanted.paper.parsed()?;
    let design = design(&wanted.file)?;
    written::keep(&wanted.file, &wanted.out)?;
    let template = printing::Template::with(&design, &wanted.printed.what()?, printing::today())
        .on(wanted.printed.printer()?);
    let pdf = template.pdf(paper, wanted.pages.consent())?;
    files::write_whole(&wanted.out, &pdf)?;
    let lacking = [&template.without_bar, &template.without_letters];
    let lacking = lacking.into_iter().flatten();
    let lacking: String = lacking.map(|why| format!("{why}\n")).collect();
    let text = format!(
        "{}: print at actual size (100 %), then measure the check bars\n",
        wanted.out.display()
    );
    Ok(Done::said(stopped(&design) + &lacking + &text))
}

pub(super) fn drawing(wanted: &arguments::Drawing) -> Outcome {
    let design = design(&wanted.file)?;
    written::keep(&wanted.file, &wanted.out)?;
    let drawing = wanted.letters.of(drawn(&design, wanted)?);
    let svg = ink::svg(&drawing, &design.name);
    files::write_whole(&wanted.out, svg.as_bytes())?;
    let text = format!("{}: one unit is one millimetre\n", wanted.out.display());
    Ok(Done::said(stopped(&design) + &text))
}

/// A line that says what stands against making the design; nothing when nothing does.
fn stopped(design: &Document) -> String {
    let stop = printing::stop(&Answers::to(design).findings);
    stop.map_or_else(String::new, |stop| format!("{stop}\n"))
}

fn drawn(design: &Document, wanted: &arguments::Drawing) -> Result<Drawing, String> {
    /// Size of the lettering along the bar, mm.
    const BAR_TEXT: f64 = 3.5;
    let model = resolve(design);
    Ok(match wanted.of {
        DrawingOf::Pair => draw::pair(design, &model, &DrawOptions::default()),
        DrawingOf::Half => match wanted.half {
            Half::A => draw::half(design, &model, &DrawOptions::default()),
            Half::B => draw::other_half(design, &model, &DrawOptions::default()),
        },
        DrawingOf::Pattern => pattern(&model, wanted)?,
        DrawingOf::Stage => plan::stage(design, wanted)?,
        DrawingOf::Bar => {
            let balance = balance_of(design, &model);
            balance.trouble().map_or(Ok(()), Err)?;
            forge::bar((&design.bar, design.units), &balance, BAR_TEXT)
        }
    })
}

/// A half to be cut out of sheet metal.
fn pattern(model: &Model, wanted: &arguments::Drawing) -> Result<Drawing, String> {
    /// The widest cut, mm: that of a torch in a careful hand.
    const WIDEST: f64 = 5.0;
    let kerf: Length = wanted
        .kerf
        .parse()
        .map_err(|error| format!("--kerf: {error}"))?;
    if !(0.0..=WIDEST).contains(&kerf.mm()) {
        return Err(format!(
            "--kerf: {kerf} is not between 0 and {WIDEST} mm: give how wide the cut is"
        ));
    }
    let which = match wanted.half {
        Half::A => Which::A,
        Half::B => Which::B,
    };
    let kept = match wanted.keep {
        Piece::Inside => Kept::Inside,
        Piece::Outside => Kept::Outside,
    };
    Ok(draw::pattern(model, which, kept, kerf.mm()))
}
