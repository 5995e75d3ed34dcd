//! What came out of a bar, and what that says of the smith who forged it.

use std::path::PathBuf;

use clap::Args;
use reinwright_core::shop::balance_of;
use reinwright_core::shop::came_out::{CameOut, Meant, Measured, Own, reckon};
use reinwright_core::tongs::document::{self, Document};
use reinwright_core::tongs::resolve;
use reinwright_core::units::Length;
use serde::Serialize;

use super::{Done, Outcome, design, json, written};
use crate::disk::{files, folder};

/// What was measured on a finished half.
#[derive(Debug, Args)]
pub(super) struct Asked {
    /// Design
    file: PathBuf,
    /// How long the rein came out, from the shoulder to its end, such as "360 mm"
    #[arg(long)]
    rein: String,
    /// What was cut off the rein's end, as length of rein; "0 mm" for nothing
    #[arg(long)]
    left: String,
    /// How long steel stayed workable in one heat, seconds
    #[arg(long, value_name = "SECONDS")]
    heat_seconds: Option<f64>,
    /// The shop's folder, to keep it in came-out.ron with what was measured before
    #[arg(long, value_name = "FOLDER")]
    shop: Option<PathBuf>,
    /// Write the design with your own scale and margin to this file; one that is there is replaced
    #[arg(long)]
    out: Option<PathBuf>,
    /// Answer as JSON, with the unit in every key
    #[arg(long)]
    json: bool,
}

pub(super) fn run(asked: &Asked) -> Outcome {
    let design = design(&asked.file)?;
    let measured = measured(asked)?;
    let model = resolve(&design);
    let balance = balance_of(&design, &model);
    let meant = reckon((&model, &balance), &measured).map_err(|error| error.to_string())?;
    let before = match &asked.shop {
        Some(shop) => folder::came_out(shop)?,
        None => CameOut::default(),
    };
    let all = before.with(&design.name, &measured, &meant);
    let own = all.own().expect("at least this half was measured");
    let mut text = if asked.json {
        json(&Answer::new(&meant, &own))?
    } else {
        told(&design, &meant, &own)
    };
    if let Some(out) = &asked.out {
        written::keep(&asked.file, out)?;
        files::write_whole(out, document::write(&with(&design, &own)).as_bytes())?;
        if !asked.json {
            text += &format!("{}: the design with your own values\n", out.display());
        }
    }
    if let Some(shop) = &asked.shop {
        folder::keep_came_out(shop, &all)?;
        if !asked.json {
            text += &format!("{}: kept with what was measured before\n", shop.display());
        }
    }
    Ok(Done::said(text))
}

fn measured(asked: &Asked) -> Result<Measured, String> {
    let size = |text: &str, name: &str| {
        let read = text.parse::<Length>();
        read.map_err(|error| format!("--{name}: {error}"))
    };
    Ok(Measured {
        rein: size(&asked.rein, "rein")?,
        left: size(&asked.left, "left")?,
        heat_s: asked.heat_seconds,
    })
}

/// The design as this smith would make it next time.
fn with(design: &Document, own: &Own) -> Document {
    let mut next = design.clone();
    next.allowances = own.on(next.allowances);
    next
}

fn told(design: &Document, meant: &Meant, own: &Own) -> String {
    let show = design.units.show();
    let way = if meant.longer_mm < 0.0 {
        "shorter"
    } else {
        "longer"
    };
    let mut text = format!(
        "The rein came out {} {way} than it was drawn\n",
        show.text(meant.longer_mm.abs())
    );
    text += &format!(
        "Gone: {:.1} % of the half, {:.1} % of it as scale",
        meant.gone_percent, meant.scale_percent
    );
    if meant.elsewhere_percent > 0.0 {
        text += &format!(
            "; {:.1} % went elsewhere: sizes that came out fuller than drawn, or a longer cut",
            meant.elsewhere_percent
        );
    }
    let halves = if own.halves == 1 { "half" } else { "halves" };
    text += &format!(
        "\nFor your next design, from {} {halves}: scale {:.1} %, margin {:.1} %",
        own.halves, own.scale_percent, own.margin_percent
    );
    if let Some(heat) = own.heat_s {
        text += &format!(", {heat:.0} s of work in a heat");
    }
    text + "\n"
}

#[derive(Serialize)]
struct Answer {
    longer_mm: f64,
    gone_mm3: f64,
    gone_percent: f64,
    scale_percent: f64,
    elsewhere_percent: f64,
    own: OwnAnswer,
}

#[derive(Serialize)]
struct OwnAnswer {
    scale_percent: f64,
    margin_percent: f64,
    heat_s: Option<f64>,
    halves: usize,
}

impl Answer {
    fn new(meant: &Meant, own: &Own) -> Self {
        Self {
            longer_mm: meant.longer_mm,
            gone_mm3: meant.gone_mm3,
            gone_percent: meant.gone_percent,
            scale_percent: meant.scale_percent,
            elsewhere_percent: meant.elsewhere_percent,
            own: OwnAnswer {
                scale_percent: own.scale_percent,
                margin_percent: own.margin_percent,
                heat_s: own.heat_s,
                halves: own.halves,
            },
        }
    }
}
