//! The row over the table: the family's name, its sizes, and what of them is shown.

use egui::{TextEdit, Ui};
use reinwright_core::asked::Units;
use reinwright_core::shop::family::{Rounding, Size};

use super::seen::Seen;
use super::table::Filter;
use super::{FamilyBench, Lent};

impl<D: Seen> FamilyBench<D> {
    /// Name, sizes and what is shown, over the table.
    pub(super) fn tools(&mut self, ui: &mut Ui, lent: &mut Lent<'_>) {
        let typed = ui.horizontal_wrapped(|ui| {
            let name = TextEdit::singleline(&mut self.session.now.name)
                .desired_width(232.0)
                .char_limit(200)
                .hint_text("What the family is called");
            let name = ui.add(name).accessible_name("Family name");
            self.rounding(ui);
            self.filter(ui);
            ui.separator();
            let new = self.add_typed(ui, lent);
            if ui
                .button("Add between")
                .on_hover_text(self.between_hint())
                .clicked()
            {
                self.add_between(lent);
            }
            if ui
                .button("Remove")
                .on_hover_text(format!("Takes {} out of the family", self.label()))
                .clicked()
            {
                self.remove(lent);
            }
            let hint = format!(
                "Opens {} by itself, so that it no longer follows the family",
                self.label()
            );
            if ui.button(D::TAKE_OUT).on_hover_text(hint).clicked() {
                self.take_out(lent);
            }
            name.has_focus() || new
        });
        self.typing = typed.inner;
    }

    fn rounding(&mut self, ui: &mut Ui) {
        let rounding = &mut self.session.now.rounding;
        let mut rounded = *rounding == Rounding::Measured;
        let hint = "Scaled lengths are rounded to what a smith measures; without it every shape is exactly alike";
        if ui
            .checkbox(&mut rounded, "Rounded")
            .on_hover_text(hint)
            .changed()
        {
            *rounding = if rounded {
                Rounding::Measured
            } else {
                Rounding::Exact
            };
        }
    }

    fn filter(&mut self, ui: &mut Ui) {
        let mut differing = self.table.filter == Filter::Differing;
        let hint = "Hides the values that are the same in all sizes";
        if ui
            .checkbox(&mut differing, "Only what differs")
            .on_hover_text(hint)
            .changed()
        {
            self.table.filter = if differing {
                Filter::Differing
            } else {
                Filter::All
            };
        }
    }

    /// A size by its work; true while it is being typed.
    fn add_typed(&mut self, ui: &mut Ui, lent: &mut Lent<'_>) -> bool {
        let field = TextEdit::singleline(&mut self.new_size)
            .desired_width(88.0)
            .char_limit(80)
            .hint_text(match self.session.now.base.units() {
                Units::Inch => "7/16 in",
                Units::Millimetre => "11 mm",
            });
        let field = ui.add(field).accessible_name(D::NEW);
        let field = field.on_hover_text(D::NEW_HINT);
        let entered = field.lost_focus() && ui.input(|i| i.key_pressed(egui::Key::Enter));
        if ui.button("Add size").clicked() || entered {
            match self.typed_size(&self.new_size) {
                Ok(work) => {
                    self.new_size.clear();
                    self.add(work, lent);
                }
                Err(why) => self.tell(Err(format!("New size: {why}")), lent),
            }
        }
        field.has_focus()
    }

    /// What leads a new size, from a text, beside the chosen one.
    fn typed_size(&self, text: &str) -> Result<D::Measure, String> {
        let family = &self.session.now;
        let beside = family.sizes.get(self.chosen);
        let beside = beside.map_or(family.base.measure(), |size| size.work);
        D::typed(text, beside, family.base.units())
    }

    pub(super) fn add(&mut self, work: D::Measure, lent: &mut Lent<'_>) {
        let mut trial = self.session.now.clone();
        let added = trial
            .add(Size::new(work))
            .map_err(|error| error.to_string());
        // What a file may not carry is not begun either.
        let checked = reinwright_core::shop::family::whole_text(&trial);
        let outcome = added.and_then(|at| checked.map(|_text| at).map_err(|e| e.to_string()));
        if outcome.is_ok() {
            self.session.now = trial;
        }
        self.chose(outcome, lent);
    }

    /// The two sizes between which one is added: the chosen one and the next, or the one before.
    fn pair_of_neighbours(&self) -> (usize, usize) {
        let last = self.session.now.sizes.len().saturating_sub(1);
        if self.chosen < last {
            (self.chosen, self.chosen + 1)
        } else {
            (last.saturating_sub(1), last)
        }
    }

    fn between_hint(&self) -> String {
        let (a, b) = self.pair_of_neighbours();
        let label = |at: usize| self.set.table.labels.get(at).cloned().unwrap_or_default();
        format!("A size midway between {} and {}", label(a), label(b))
    }

    fn add_between(&mut self, lent: &mut Lent<'_>) {
        let (a, b) = self.pair_of_neighbours();
        let outcome = self.session.now.add_between(a, b);
        self.chose(outcome.map_err(|error| error.to_string()), lent);
    }

    fn chose(&mut self, outcome: Result<usize, String>, lent: &mut Lent<'_>) {
        let done = outcome.map(|at| {
            self.table.forget();
            self.choose(at);
        });
        self.tell(done, lent);
    }

    fn remove(&mut self, lent: &mut Lent<'_>) {
        let outcome = self.session.now.remove(self.chosen);
        let outcome = outcome.map(|_size| self.chosen.saturating_sub(1));
        self.chose(outcome.map_err(|error| error.to_string()), lent);
    }

    pub(super) fn take_out(&self, lent: &mut Lent<'_>) {
        if let Some(design) = self.session.now.take_out(self.chosen) {
            lent.asked.push(design.taken_out());
        }
    }
}
