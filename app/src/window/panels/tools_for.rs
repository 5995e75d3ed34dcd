//! The tools that make the open pair, or all sizes of the open family: drawn, to be opened one by one
//! or kept together.

use egui::{Context, Label, RichText, ScrollArea, Sense, Ui, vec2};
use lyon::tessellation::FillTessellator;
use reinwright_core::tool::Tool;

use super::question::{Ready, Room, ask, foot};
use super::tool_card::Pictured;
use crate::jobs::pair_tools::Named;
use crate::window::paint::focus::follow;
use crate::window::paint::theme::Palette;
use crate::window::state::rows::capital;

/// A picture in the list, in points.
const PICTURE: egui::Vec2 = vec2(260.0, 84.0);

/// What is said where a pair needs none.
const NONE: &str = "No tool of its own makes it: its hole is drilled and its rivet's heads are flat. \
     A punched hole or a round head, under Rivet, would want some.";

/// What is asked of them.
#[derive(Debug, Clone)]
pub(crate) enum ToolsAsked {
    /// Show one.
    Open(Box<Tool>),
    /// Write all of them into a folder.
    KeepAll(Vec<Named>),
    /// Nothing more.
    Close,
}

/// The tools of a pair while they are shown.
#[derive(Debug)]
pub(crate) struct ToolsForPair {
    /// What they are of.
    name: String,
    tools: Vec<(String, Pictured)>,
}

impl ToolsForPair {
    /// These tools of what is called so.
    pub(crate) fn of(name: &str, tools: Vec<Named>) -> Self {
        let pictured = |(name, tool): Named| (name, Pictured::of(tool));
        Self {
            name: name.to_owned(),
            tools: tools.into_iter().map(pictured).collect(),
        }
    }

    /// Shows them; gives back what was asked.
    pub(crate) fn show(&self, ctx: &Context, fills: &mut FillTessellator) -> Option<ToolsAsked> {
        let frame = ("tools for pair", Room::Lines(820.0));
        ask(ctx, frame, ToolsAsked::Close, |ui| {
            ui.heading("Tools for this pair");
            if self.tools.is_empty() {
                ui.label(NONE);
            } else {
                ui.label(format!(
                    "Made with these, \"{}\" comes out in its sizes. Each is a design of its own.",
                    self.name
                ));
            }
            let room = ui.ctx().content_rect().height() - 260.0;
            let list = ScrollArea::vertical().max_height(room.min(490.0));
            let open = list.show(ui, |ui| self.list(ui, fills)).inner;
            ui.separator();
            open.or(self.foot(ui))
        })
    }

    fn list(&self, ui: &mut Ui, fills: &mut FillTessellator) -> Option<ToolsAsked> {
        let mut asked = None;
        for (name, pictured) in &self.tools {
            ui.separator();
            ui.horizontal_top(|ui| {
                let (area, _) = ui.allocate_exact_size(PICTURE, Sense::hover());
                let palette = Palette::of(ui.visuals());
                ui.painter().rect_filled(area, 4.0, palette.sheet);
                pictured.draw(ui, area, fills);
                ui.vertical(|ui| {
                    if told(ui, name, pictured) {
                        asked = Some(ToolsAsked::Open(Box::new(pictured.tool.clone())));
                    }
                });
            });
        }
        follow(ui);
        asked
    }

    fn foot(&self, ui: &mut Ui) -> Option<ToolsAsked> {
        if self.tools.is_empty() {
            let close = foot(ui, Some(("Close", Ready::Yes)), &[]);
            return close.map(|_close| ToolsAsked::Close);
        }
        let all = Some(("Save all into a folder…", Ready::Yes));
        match foot(ui, all, &["Close"])? {
            0 => {
                let named = |(name, of): &(String, Pictured)| (name.clone(), of.tool.clone());
                let all = self.tools.iter().map(named).collect();
                Some(ToolsAsked::KeepAll(all))
            }
            _ => Some(ToolsAsked::Close),
        }
    }
}

/// What a tool is, and the button that opens it; true when that was clicked.
fn told(ui: &mut Ui, name: &str, pictured: &Pictured) -> bool {
    let palette = Palette::of(ui.visuals());
    let tool = &pictured.tool;
    let heading = RichText::new(capital(&name.replace('-', " "))).size(15.0);
    ui.label(heading);
    ui.add(Label::new(capital(&pictured.told())).wrap());
    ui.add(Label::new(capital(tool.style_kind().about())).wrap());
    if let Some(against) = pictured.against() {
        ui.colored_label(palette.stop, against);
    }
    let open = ui
        .button("Open")
        .accessible_name(format!("Open the {name}"));
    open.clicked()
}
