//! The parts list of a tool: its fields alone.

use egui::Ui;
use reinwright_core::asked::{Field, Value};
use reinwright_core::finding::Part;
use reinwright_core::tool::Tool;

use super::{Listed, PartsList};
use crate::window::state::look::Look;

impl Listed for Tool {
    type Beside = ();

    const CALLED: &'static str = "What the tool is called";

    fn words(&mut self) -> [&mut String; 2] {
        [&mut self.name, &mut self.note]
    }

    fn listed(&self) -> Vec<Field> {
        self.fields()
    }

    fn set(&mut self, path: &str, value: Value) {
        self.put(path, value);
    }

    fn about(&self, row: &Field) -> Option<&'static str> {
        (row.path == "working.style").then(|| self.style_kind().about())
    }

    fn is_open(part: Part, title: &str) -> bool {
        matches!(part, Part::Working | Part::Body | Part::HardyShank) || title == "Bar"
    }

    fn over(&mut self, _list: &mut PartsList, _ui: &mut Ui, _look: &mut Look, _part: Part) {}

    fn under(&mut self, _list: &mut PartsList, _ui: &mut Ui, _beside: &mut (), _part: Part) {}

    fn under_field(&self, _list: &mut PartsList, _ui: &mut Ui, _row: &Field) {}

    fn commit(&mut self, _list: &mut PartsList) {}
}
