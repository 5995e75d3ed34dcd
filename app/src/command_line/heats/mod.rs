//! The heats of a plan, for people and for scripts: which source, how many, how long.

mod answer;
mod coil;
mod list;

use reinwright_core::asked::{Scale, Units};
use reinwright_core::draw;
use reinwright_core::heats::{
    Compared, Prepared, Sources, compare, heat_plan, riveted, scale_percent, whole_scale,
    with_scale_of,
};
use reinwright_core::making::Plan;
use reinwright_core::paper::ink;
use reinwright_core::shop::balance_of;
use reinwright_core::steel::Steel;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::resolve;
use reinwright_core::tool::Tool;

use super::arguments;
use super::{Done, Outcome, Places};
use crate::disk::{files, heat_sources};

pub(super) use answer::keyed;
pub(super) use coil::coil;
pub(super) use list::listed;

/// The sources that a job goes by, and what could not be read of them.
pub(super) struct Asked {
    pub(super) shop: Sources,
    lost: Vec<String>,
}

impl Asked {
    /// What could not be read, a sentence each.
    pub(super) fn lost(&self) -> &[String] {
        &self.lost
    }
}

/// The sources that are named, else those that are kept, if any are.
pub(super) fn asked(
    named: Option<&std::path::Path>,
    places: &Places,
) -> Result<Option<Asked>, String> {
    let opened = match named {
        Some(path) => Some(heat_sources::open(path)?),
        None => heat_sources::kept(places.remembered.as_deref())?,
    };
    Ok(opened.map(|opened| Asked {
        shop: opened.sources,
        lost: opened.lost,
    }))
}

/// What is heated: a pair, or a tool.
pub(super) struct Subject<'a> {
    name: &'a str,
    units: Units,
    steel: Steel,
    /// Only a pair has procedures to be compared.
    pair: Option<&'a Document>,
}

impl<'a> From<&'a Document> for Subject<'a> {
    fn from(pair: &'a Document) -> Self {
        Self {
            name: &pair.name,
            units: pair.units,
            steel: pair.bar.steel,
            pair: Some(pair),
        }
    }
}

impl<'a> From<&'a Tool> for Subject<'a> {
    fn from(tool: &'a Tool) -> Self {
        Self {
            name: &tool.name,
            units: tool.units,
            steel: tool.bar.steel,
            pair: None,
        }
    }
}

impl Subject<'_> {
    /// Whether the riveted pair goes into each source; nothing of a tool.
    fn riveted(&self, asked: &Asked) -> Vec<String> {
        self.pair.map_or_else(Vec::new, |pair| {
            riveted(&resolve(pair), &asked.shop).words(&asked.shop, self.units.show())
        })
    }

    /// The same by other procedures.
    fn others(&self, asked: &Asked) -> Vec<Compared> {
        self.pair.map_or_else(Vec::new, |pair| {
            let model = resolve(pair);
            compare(pair, (&model, &balance_of(pair, &model)), &asked.shop)
        })
    }
}

/// The design with the scale of its own heats, where that was asked for.
pub(super) fn with_own_scale(
    design: &Document,
    asked: &Asked,
    planned: impl Fn(&Document) -> Result<Plan, String>,
) -> Result<Document, String> {
    let plan = planned(design)?;
    let prepared = Prepared::new(design.bar.steel, &plan, &asked.shop);
    let percent = scale_percent(&prepared, &heat_plan(&prepared));
    Ok(with_scale_of(design, percent))
}

/// The scale that the heats of a plan take, to a tenth of a per cent.
pub(super) fn scale_of(steel: Steel, plan: &Plan, asked: &Asked) -> Scale {
    let prepared = Prepared::new(steel, plan, &asked.shop);
    whole_scale(scale_percent(&prepared, &heat_plan(&prepared)))
}

/// Writes each operation in its source as SVG.
pub(super) fn draw_into<'a>(
    folder: &std::path::Path,
    (design, plan): (impl Into<Subject<'a>>, &Plan),
    asked: &Asked,
) -> Result<(), String> {
    let design = design.into();
    files::make_folder(folder)?;
    let prepared = Prepared::new(design.steel, plan, &asked.shop);
    for heated in heat_plan(&prepared).operations {
        let Some(source) = heated.source else {
            continue;
        };
        let drawn = draw::heat(&prepared, plan, (heated.row, source), design.units.show());
        let name = format!("heat-{:02}.svg", heated.number);
        let title = format!("{}: {}", design.name, heated.step);
        let svg = ink::svg(&drawn, &title);
        files::write_whole(&folder.join(name), svg.as_bytes())?;
    }
    Ok(())
}

/// Writes sources to begin with.
pub(super) fn examples(wanted: &arguments::Sources) -> Outcome {
    let sources = Sources::default();
    files::write_whole(&wanted.out, sources.write().as_bytes())?;
    let names: String = sources
        .sources
        .iter()
        .map(|source| format!("  {}\n", source.name))
        .collect();
    let path = wanted.out.display();
    Ok(Done::said(format!(
        "{path}: sources to begin with; change each to what you have\n{names}"
    )))
}
