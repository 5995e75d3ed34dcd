//! What is asked of a design, of a family, or of a folder of them.

use std::path::PathBuf;

use clap::Args;
use reinwright_core::proof::strength::{JAW_CELSIUS, StrengthLoad};
use reinwright_core::units::Temperature;

/// A question about one design, or about every size of a family.
#[derive(Debug, Args)]
pub(in crate::command_line) struct Asked {
    /// Design or family
    pub(in crate::command_line) file: PathBuf,
    /// Answer as JSON, with the unit in every key
    #[arg(long)]
    pub(in crate::command_line) json: bool,
}

/// A question whose answer depends on how hot the jaws become in use.
#[derive(Debug, Args)]
pub(in crate::command_line) struct Loaded {
    #[command(flatten)]
    pub(in crate::command_line) asked: Asked,
    /// How hot neck and jaws become, such as "600 C" or "1100 F"; cold if not given
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    pub(in crate::command_line) jaw_heat: Option<String>,
    /// Of a family: the stock sizes in which gaps are counted; those kept for the window if not given
    #[arg(long, value_name = "FILE")]
    pub(in crate::command_line) stock: Option<PathBuf>,
}

impl Loaded {
    /// The usual squeezes with jaws as hot as was said.
    pub(in crate::command_line) fn load(&self) -> Result<StrengthLoad, String> {
        let Some(text) = &self.jaw_heat else {
            return Ok(StrengthLoad::default());
        };
        let heat = text.parse::<Temperature>();
        let heat = heat.map_err(|error| format!("--jaw-heat: {error}"))?;
        let (celsius, (least, most)) = (heat.celsius(), JAW_CELSIUS);
        if (least..=most).contains(&celsius) {
            return Ok(StrengthLoad::with_jaws_at(celsius));
        }
        let [asked, least, most] = [celsius, least, most].map(|it| heat.scale().text(it));
        Err(format!(
            "--jaw-heat: {asked} is not between {least} and {most}: \
             give how hot the jaws become while they hold work"
        ))
    }
}

#[derive(Debug, Args)]
pub(in crate::command_line) struct Shelf {
    /// Folder of designs and families
    pub(in crate::command_line) folder: PathBuf,
    /// Stock to be held, such as "5/8 hex", "3/8 x 1 flat", "M16", "DN 25" or "#5 rebar": the pair that holds it
    /// best comes first; a number without a unit is in inches
    #[arg(long = "for", value_name = "STOCK", allow_hyphen_values = true)]
    pub(in crate::command_line) stock: Option<String>,
    /// Only what is marked so
    #[arg(long, value_enum)]
    pub(in crate::command_line) only: Option<Marked>,
    /// Answer as JSON, with the unit in every key
    #[arg(long)]
    pub(in crate::command_line) json: bool,
}

/// What the smith has marked on the shelf.
#[derive(Debug, Clone, Copy, clap::ValueEnum)]
pub(in crate::command_line) enum Marked {
    /// What is there
    Have,
    /// What is to be made
    Want,
}
