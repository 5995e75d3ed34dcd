//! The printer whose measure is known, and noting what another one measures.

use egui::{ComboBox, Grid, RichText, Ui};
use reinwright_core::paper::Paper;
use reinwright_core::shop::printers::{Printer, Printers};
use reinwright_core::units::Length;

use super::super::{Reply, trouble};
use super::{ask_check_page, ask_note};
use crate::window::state::rows::capital;

/// What sheets are printed with when nothing is known of the printer.
const UNKNOWN: &str = "Any, uncorrected";

/// Which printers are known, and what is being noted of another one.
#[derive(Debug)]
pub(super) struct Measuring {
    printers: Result<Printers, String>,
    /// What is typed, while a printer is being measured.
    form: Option<Form>,
}

/// What is typed of a printer: as it was measured.
#[derive(Debug, Default)]
struct Form {
    name: String,
    across: String,
    along: String,
    rim: String,
    trouble: Option<String>,
}

impl Measuring {
    pub(super) fn new(printers: Result<Printers, String>) -> Self {
        Self {
            printers,
            form: None,
        }
    }

    /// Takes what is known once a printer was noted, or why it was not; gives it back.
    pub(super) fn noted(
        &mut self,
        printers: Result<Printers, String>,
        name: &str,
    ) -> Option<Printer> {
        match printers {
            Ok(known) => {
                let found = known.named(name).cloned();
                self.printers = Ok(known);
                self.form = None;
                found
            }
            Err(why) => {
                if let Some(form) = &mut self.form {
                    form.trouble = Some(capital(&why));
                }
                None
            }
        }
    }

    /// The list of printers, and the form; gives back what was asked for.
    pub(super) fn show(
        &mut self,
        ui: &mut Ui,
        chosen: &mut Option<Printer>,
        paper: Paper,
    ) -> Option<Reply> {
        ui.add_space(4.0);
        ui.label(RichText::new("Printer").strong());
        self.list(ui, chosen);
        match &mut self.form {
            None => {
                if ui.button("Measure a printer").clicked() {
                    self.form = Some(Form::of(chosen.as_ref()));
                }
                None
            }
            Some(form) => form.show(ui, paper),
        }
    }

    fn list(&self, ui: &mut Ui, chosen: &mut Option<Printer>) {
        let known = match &self.printers {
            Ok(printers) => &printers.known,
            Err(why) => {
                trouble(ui, Some(&capital(why)));
                return;
            }
        };
        let name = |of: &Printer| of.name.clone();
        let shown = chosen.as_ref().map_or(UNKNOWN.to_owned(), name);
        let list = ComboBox::from_id_salt("printer").selected_text(shown);
        let list = list.width(200.0).show_ui(ui, |ui| {
            ui.selectable_value(chosen, None, UNKNOWN);
            for printer in known {
                ui.selectable_value(chosen, Some(printer.clone()), &printer.name);
            }
        });
        list.response.accessible_name("Printer");
        if let Some(printer) = chosen {
            ui.label(printer.note());
        }
    }
}

impl Form {
    /// With what is known of a printer already.
    fn of(printer: Option<&Printer>) -> Self {
        let Some(printer) = printer else {
            return Self::default();
        };
        let rim = printer.rim.map(|rim| rim.to_string());
        Self {
            name: printer.name.clone(),
            across: printer.across.to_string(),
            along: printer.along.to_string(),
            rim: rim.unwrap_or_default(),
            trouble: None,
        }
    }

    fn show(&mut self, ui: &mut Ui, paper: Paper) -> Option<Reply> {
        ui.label(
            "Print the check page at actual size (100 %), measure its bars of 100 mm, or in \
             inches those of 4 in, and write down what they measure.",
        );
        if ui.button("Save the check page").clicked() {
            return Some(ask_check_page(paper));
        }
        let grid = Grid::new("measured").num_columns(2).spacing([8.0, 2.0]);
        grid.show(ui, |ui| {
            for (label, text, hint) in [
                ("Its name", &mut self.name, "Office"),
                ("Bar across the paper", &mut self.across, "100 mm"),
                ("Bar along the paper", &mut self.along, "100 mm"),
                ("Widest blank rim", &mut self.rim, "5 mm, if you like"),
            ] {
                let label = ui.label(label);
                let edit = egui::TextEdit::singleline(text).desired_width(110.0);
                let edit = ui.add(edit.hint_text(hint)).labelled_by(label.id);
                if edit.changed() {
                    self.trouble = None;
                }
                ui.end_row();
            }
        });
        trouble(ui, self.trouble.as_deref());
        if !ui.button("Note this printer").clicked() {
            return None;
        }
        match self.read() {
            Ok(printer) => Some(ask_note(printer)),
            Err(why) => {
                self.trouble = Some(capital(&why));
                None
            }
        }
    }

    /// What was measured.
    ///
    /// # Errors
    /// One sentence that names the field.
    fn read(&self) -> Result<Printer, String> {
        let size = |field: &str, text: &str| {
            let size = text.parse::<Length>();
            size.map_err(|why| format!("{field}: {why}"))
        };
        let rim = self.rim.trim();
        let printer = Printer {
            name: self.name.trim().to_owned(),
            across: size("bar across the paper", &self.across)?,
            along: size("bar along the paper", &self.along)?,
            rim: match rim {
                "" => None,
                rim => Some(size("widest blank rim", rim)?),
            },
        };
        printer.checked().map_err(|why| why.to_string())
    }
}
