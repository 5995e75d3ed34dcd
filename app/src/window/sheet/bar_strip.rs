//! The bar, to scale, with its parts and marks.

use egui::accesskit::Role;
use egui::{Label, Rect, Sense, Ui, WidgetInfo};
use lyon::tessellation::FillTessellator;

use crate::window::paint::ink::Ink;
use crate::window::paint::pointed::part_near;
use crate::window::paint::theme::Palette;
use crate::window::paint::view::Fitted;
use crate::window::state::bar::OfBar;
use crate::window::state::look::Look;

/// Height of the text on the strip, in points.
const TEXT: f32 = 12.0;
/// Between the strip's edge and the bar, in points.
const RIM: f32 = 8.0;

/// The strip and what it was last fitted to.
#[derive(Debug, Default)]
pub(crate) struct BarStrip {
    fitted: Option<((Rect, u64), Fitted)>,
}

impl BarStrip {
    /// Shows the bar in the room there is.
    pub(crate) fn show(
        &mut self,
        ui: &mut Ui,
        answers: &mut impl OfBar,
        look: &mut Look,
        fills: &mut FillTessellator,
    ) {
        let palette = Palette::of(ui.visuals());
        let (area, response) = ui.allocate_exact_size(ui.available_size(), Sense::click());
        response.widget_info(|| WidgetInfo::labeled(Role::Image, true, "The bar with its marks"));
        if let Some(trouble) = answers.account().balance.trouble() {
            ui.painter_at(area).rect_filled(area, 4.0, palette.sheet);
            ui.put(area, Label::new(trouble));
            return;
        }
        let Fitted { view, text } = self.fit(area, answers);
        let (drawing, _) = answers.bar(text);
        let under = |at| part_near(&drawing.items, view, at);
        if let Some(part) = response.hover_pos().and_then(under) {
            look.point_at(part);
            if response.clicked() {
                look.choose(part);
            }
        }
        let painter = ui.painter_at(area);
        painter.rect_filled(area, 4.0, palette.sheet);
        Ink::new(painter, view, palette, look.lit(), fills).draw(&drawing.items);
    }

    fn fit(&mut self, area: Rect, answers: &mut impl OfBar) -> Fitted {
        let key = (area, answers.revision());
        match self.fitted {
            Some((kept, fitted)) if kept == key => fitted,
            _ => {
                let fitted = Fitted::new(area, RIM, TEXT, |text| answers.bar(text).1);
                self.fitted = Some((key, fitted));
                fitted
            }
        }
    }
}
