use egui::{TextEdit, Ui};
use reinwright_core::asked::{Units, parse_bar_in, parse_work_in};
use reinwright_core::shop::start;
use reinwright_core::tongs::jaw::JawKind;
use reinwright_core::units::Unit;

use super::{Reply, buttons, trouble};
use crate::window::state::rows::capital;

/// A pair from nothing but work, bar and jaw.
#[derive(Debug)]
pub(crate) struct NewPair {
    style: JawKind,
    unit: Unit,
    work: String,
    bar: String,
    work_trouble: Option<String>,
    bar_trouble: Option<String>,
}

impl NewPair {
    pub(crate) fn new(units: Units) -> Self {
        let (work, bar) = match units {
            Units::Inch => ("3/8 in flat", "3/4 in square"),
            Units::Millimetre => ("10 mm flat", "20 mm square"),
        };
        Self {
            style: JawKind::Flat,
            unit: units.unit(),
            work: work.to_owned(),
            bar: bar.to_owned(),
            work_trouble: None,
            bar_trouble: None,
        }
    }

    pub(super) fn show(&mut self, ui: &mut Ui) -> Option<Reply> {
        ui.heading("New pair");
        ui.label("What shall the jaws be?");
        self.styles(ui);
        let hint = "Such as 3/8 in flat, 1/4 x 1 in flat, 16 mm square on corners, M16, \
            5/8 bolt behind its head, 1/2 in pipe, DN 25, #5 rebar, 1 x 1 x 1/8 angle";
        field(
            ui,
            "Work to hold",
            hint,
            &mut self.work,
            &mut self.work_trouble,
        );
        // As high whether it is understood or not: what stands below must not move.
        let read = parse_work_in(&self.work, self.unit).map(|work| {
            let work = work.laid_as_said(&self.work, self.style);
            capital(&work.reading())
        });
        ui.weak(read.unwrap_or_else(|_| " ".to_owned()));
        let hint = "Such as 3/4 in square, 20 mm round, 1/2 x 3/4 in flat";
        let entered = field(
            ui,
            "Bar to forge from",
            hint,
            &mut self.bar,
            &mut self.bar_trouble,
        );
        let clicked = buttons(ui, &["Begin", "Choose for the work…", "Cancel"]);
        match clicked.or(entered.then_some(0))? {
            0 => self.begin(),
            1 => Some(Reply::Styles(self.work.clone(), self.bar.clone())),
            _ => Some(Reply::Stay),
        }
    }

    /// The styles in two columns, so that the questions below stand in the smallest window; what
    /// the chosen one is for under them.
    fn styles(&mut self, ui: &mut Ui) {
        let rows = JawKind::ALL.len().div_ceil(2);
        ui.columns_const(|columns: &mut [Ui; 2]| {
            for (column, kinds) in columns.iter_mut().zip(JawKind::ALL.chunks(rows)) {
                for kind in kinds {
                    column
                        .radio_value(&mut self.style, *kind, capital(kind.name()))
                        .on_hover_text(capital(kind.about()));
                }
            }
        });
        // As high for one line as for two: what stands below must not move under the pointer.
        let size = egui::vec2(ui.available_width(), 2.0 * ui.spacing().interact_size.y);
        let about = egui::RichText::new(capital(self.style.about())).weak();
        ui.allocate_ui(size, |ui| {
            ui.set_min_size(size);
            ui.add(egui::Label::new(about).wrap());
        });
    }

    fn begin(&mut self) -> Option<Reply> {
        let work = parse_work_in(&self.work, self.unit);
        let work = work.map_err(|e| self.work_trouble = Some(e.to_string()));
        let bar = parse_bar_in(&self.bar, self.unit);
        let bar = bar.map_err(|e| self.bar_trouble = Some(e.to_string()));
        let (Ok(work), Ok(bar)) = (work, bar) else {
            return None;
        };
        let work = work.laid_as_said(&self.work, self.style);
        let document = start(self.style, work, bar);
        let document = document.map_err(|no| self.bar_trouble = Some(no.to_string()));
        let document = document.ok()?;
        if let Err(error) = reinwright_core::tongs::document::check_limits(&document) {
            self.bar_trouble = Some(error.to_string());
            return None;
        }
        Some(Reply::Begin(Box::new(document)))
    }
}

/// Gives back whether Enter was pressed in it.
fn field(
    ui: &mut Ui,
    label: &str,
    hint: &str,
    text: &mut String,
    wrong: &mut Option<String>,
) -> bool {
    let label = ui.label(label);
    let field = TextEdit::singleline(text).desired_width(f32::INFINITY);
    let response = ui.add(field).labelled_by(label.id).on_hover_text(hint);
    if response.changed() {
        *wrong = None;
    }
    trouble(ui, wrong.as_deref());
    response.lost_focus() && ui.input(|i| i.key_pressed(egui::Key::Enter))
}
