//! The rule by which a value goes from size to size.

use egui::{Align, ComboBox, Layout, Rect, RichText, Ui, UiBuilder, vec2};
use reinwright_core::shop::family::{Chosen, Row, Rule};

use super::Grid;
use super::lay::words;
use crate::window::panels::family::seen::Seen;
use crate::window::panels::family::set::Leads;
use crate::window::panels::family::table::TableDeed;

impl<D: Seen> Grid<'_, D> {
    /// The rule of a row, to be chosen where one can be.
    pub(super) fn rule(&mut self, ui: &mut Ui, rect: Rect, index: usize) {
        let row = &self.set.table.rows[index];
        let path = &row.field.path;
        let Some((rule, chosen)) = self.set.rules[index] else {
            let (text, hint) = fixed_rule(row, self.set.leads(path));
            words(ui, rect.shrink2(vec2(6.0, 0.0)), RichText::new(text).weak()).on_hover_text(hint);
            return;
        };
        let mut now = rule;
        let mut text = RichText::new(D::rule_name(rule));
        if chosen == Chosen::Changed {
            text = RichText::new(format!("* {}", D::rule_name(rule))).strong();
        }
        let rect = rect.shrink2(vec2(2.0, 2.0));
        let builder = UiBuilder::new()
            .max_rect(rect)
            .layout(Layout::left_to_right(Align::Center));
        ui.scope_builder(builder, |ui| {
            let list = ComboBox::from_id_salt(("rule", path))
                .width(rect.width())
                .truncate();
            let list = list.selected_text(text).show_ui(ui, |ui| {
                for one in Rule::ALL {
                    ui.selectable_value(&mut now, one, D::rule_name(one));
                }
            });
            let field = &row.field;
            let name = format!("Rule: {}", field.full_name());
            let hint = "How it goes from size to size; a star marks a rule you chose";
            list.response.accessible_name(name).on_hover_text(hint);
        });
        if now != rule {
            self.deeds.push(TableDeed::Rule(path.clone(), now));
        }
    }
}

/// What is said of a row whose rule cannot be chosen.
fn fixed_rule(row: &Row, leads: Leads) -> (&'static str, &'static str) {
    let path = &row.field.path;
    if leads == Leads::Size {
        (
            "each its own",
            "Every size has its own: it is what the size is called by",
        )
    } else if path.starts_with("bar.") {
        (
            "base or own",
            "A size is forged from the base's bar unless it has its own",
        )
    } else {
        (
            "same unless set",
            "Rules scale lengths only: this is the same unless set by hand",
        )
    }
}
