//! A new tool: which one, drawn as it comes out of common bar; then its size and its bar. Enter goes
//! on, Escape leaves.

use std::time::{Duration, Instant};

use egui::text_edit::TextEditState;
use egui::{Button, Context, Key, Label, RichText, ScrollArea, Sense, Ui, vec2};
use lyon::tessellation::FillTessellator;
use reinwright_core::asked::{Bar, Units, parse_bar_in};
use reinwright_core::tool::{Tool, ToolKind, check_limits};
use reinwright_core::units::Length;

use super::question::{OF_CARDS, Ready, Room, ask, foot, lead, over_foot};
use super::tool_card::{Pictured, card, columns};
use super::typing::{Field, come_to};
use crate::window::paint::focus::follow;
use crate::window::paint::theme::Palette;
use crate::window::state::rows::capital;

/// Height of the picture over the fields, in points.
const PICTURE: f32 = 220.0;

/// What comes of it.
#[derive(Debug, Clone)]
pub(crate) enum ToolOutcome {
    /// This tool.
    Tool(Box<Tool>),
    /// None.
    Left,
}

/// The questions while they are open.
#[derive(Debug)]
pub(crate) struct BeginTool {
    units: Units,
    /// Styles whose pictures are not made yet, from the end.
    to_make: Vec<ToolKind>,
    shown: Vec<(ToolKind, Pictured)>,
    sizing: Option<Sizing>,
    /// The first card is to come under the keyboard.
    lead: bool,
}

/// A style that was taken, while its size and bar are asked.
#[derive(Debug)]
struct Sizing {
    kind: ToolKind,
    size: Field,
    bar: Field,
    /// The tool, with the texts that gave it; or why they give none.
    made: Option<([String; 2], Result<Pictured, String>)>,
    fresh: bool,
}

impl BeginTool {
    /// In these units.
    pub(crate) fn new(units: Units) -> Self {
        Self {
            units,
            to_make: ToolKind::ALL.iter().rev().copied().collect(),
            shown: Vec::new(),
            sizing: None,
            lead: true,
        }
    }

    /// Shows it; gives back what comes of it.
    pub(crate) fn show(
        &mut self,
        ctx: &Context,
        fills: &mut FillTessellator,
    ) -> Option<ToolOutcome> {
        self.make(ctx);
        ask(
            ctx,
            ("begin tool", Room::Page(OF_CARDS)),
            ToolOutcome::Left,
            |ui| {
                self.heading(ui);
                ui.separator();
                match &mut self.sizing {
                    Some(sizing) => sizing.show(ui, self.units, fills),
                    None => {
                        over_foot(ui, |ui| self.cards(ui, fills));
                        foot(ui, None, &["Cancel"]).map(|_cancel| ToolOutcome::Left)
                    }
                }
            },
        )
    }

    fn heading(&mut self, ui: &mut Ui) {
        ui.horizontal(|ui| {
            ui.heading("New tool");
            ui.add_space(16.0);
            let asks_which = self.sizing.is_none();
            let which = Button::selectable(asks_which, step("1  Tool", asks_which));
            if ui.add(which).clicked() {
                self.sizing = None;
                self.lead = true;
            }
            let sizes = Button::selectable(!asks_which, step("2  Size and bar", !asks_which));
            ui.add_enabled(!asks_which, sizes);
            if let Some(sizing) = &self.sizing {
                ui.weak(sizing.kind.name());
            }
        });
    }

    /// Makes pictures, a part of them a frame.
    fn make(&mut self, ctx: &Context) {
        /// What making them may take of a frame.
        const A_FRAMES: Duration = Duration::from_millis(8);
        let begun = Instant::now();
        while let Some(kind) = self.to_make.pop() {
            let bar = usual_bar(kind, self.units);
            let tool = Tool::starting(kind, kind.usual_size(&bar), bar);
            self.shown.push((kind, Pictured::of(tool)));
            if begun.elapsed() > A_FRAMES {
                ctx.request_repaint();
                return;
            }
        }
    }

    fn cards(&mut self, ui: &mut Ui, fills: &mut FillTessellator) {
        ui.label("Which tool?");
        let mut taken = None;
        let all = ScrollArea::vertical().auto_shrink([false, false]);
        all.show(ui, |ui| {
            let columns = columns(ui.available_width());
            for row in self.shown.chunks(columns) {
                ui.horizontal_top(|ui| {
                    for (kind, pictured) in row {
                        let words = (&*capital(kind.name()), kind.about(), columns);
                        let response = card(ui, pictured, words, fills);
                        lead(&response);
                        if std::mem::take(&mut self.lead) {
                            response.request_focus();
                        }
                        if response.clicked() {
                            taken = Some(*kind);
                        }
                    }
                });
            }
            follow(ui);
        });
        self.sizing = taken.map(|kind| Sizing::of(kind, self.units));
    }
}

fn step(words: &str, is_here: bool) -> RichText {
    let words = RichText::new(words);
    if is_here { words.strong() } else { words }
}

/// Bar that a tool is usually forged from (common practice, no source): bar that a hand closes on, and
/// for the hardy hole bar that is thicker than the hole.
fn usual_bar(kind: ToolKind, units: Units) -> Bar {
    let words = match (kind.is_hardy(), units) {
        (false, Units::Inch) => "3/4 in round",
        (false, Units::Millimetre) => "20 mm round",
        (true, Units::Inch) => "1 1/4 in square",
        (true, Units::Millimetre) => "32 mm square",
    };
    parse_bar_in(words, units.unit()).expect("these name bars")
}

/// What the size of a tool is of.
fn size_of(kind: ToolKind) -> &'static str {
    match kind {
        ToolKind::RoundPunch => "Across its end",
        ToolKind::SlotPunch => "Length of its slot",
        ToolKind::SquarePunch => "Side of its end",
        ToolKind::CentrePunch => "Across, over its point",
        ToolKind::Drift => "Hole that it makes",
        ToolKind::HotChisel | ToolKind::ColdChisel => "Length of its edge",
        ToolKind::RivetSet => "Rivet",
        ToolKind::CutOff
        | ToolKind::BottomFuller
        | ToolKind::BottomSwage
        | ToolKind::BendingFork => "Hardy hole",
    }
}

impl Sizing {
    fn of(kind: ToolKind, units: Units) -> Self {
        let bar = usual_bar(kind, units);
        Self {
            kind,
            size: Field::with(kind.usual_size(&bar).to_string()),
            bar: Field::with(bar.stock.words()),
            made: None,
            fresh: true,
        }
    }

    fn show(
        &mut self,
        ui: &mut Ui,
        units: Units,
        fills: &mut FillTessellator,
    ) -> Option<ToolOutcome> {
        let entered = over_foot(ui, |ui| self.asked(ui, units, fills));
        let tool = match &self.made {
            Some((_, Ok(pictured))) => Some(pictured.tool.clone()),
            Some((_, Err(_))) | None => None,
        };
        let ready = if tool.is_some() {
            Ready::Yes
        } else {
            Ready::No
        };
        let pressed = foot(ui, Some(("Begin this tool", ready)), &["Cancel"]);
        match (tool, pressed) {
            (_, Some(1)) => Some(ToolOutcome::Left),
            (Some(tool), pressed) if entered || pressed.is_some() => {
                Some(ToolOutcome::Tool(Box::new(tool)))
            }
            (Some(_) | None, _) => None,
        }
    }

    /// The fields and what comes of them; whether Enter was pressed in one.
    fn asked(&mut self, ui: &mut Ui, units: Units, fills: &mut FillTessellator) -> bool {
        ui.label(capital(self.kind.about()));
        let mut entered = false;
        egui::Grid::new("size and bar")
            .num_columns(2)
            .show(ui, |ui| {
                let hint = "Such as 5/16 in or 8 mm";
                let size = self.size.show(ui, (size_of(self.kind), hint));
                ui.end_row();
                let hint = "Such as 3/4 in round, 1 1/4 in square, 20 mm round";
                let bar = self.bar.show(ui, ("Forged from", hint));
                ui.end_row();
                if std::mem::take(&mut self.fresh) {
                    size.request_focus();
                    // The size that is proposed is typed over, not behind.
                    let state = TextEditState::load(ui.ctx(), size.id).unwrap_or_default();
                    come_to(ui, state, (size.id, &self.size.text));
                }
                entered = (size.lost_focus() || bar.lost_focus())
                    && ui.input(|i| i.key_pressed(Key::Enter));
            });
        self.follow(units);
        match &self.made {
            Some((_, Err(why))) => {
                ui.colored_label(Palette::of(ui.visuals()).stop, why);
                self.fresh |= entered;
            }
            Some((_, Ok(pictured))) => show_made(ui, pictured, fills),
            None => {}
        }
        entered
    }

    /// Makes the tool anew where a text is another one.
    fn follow(&mut self, units: Units) {
        let texts = [self.size.text.clone(), self.bar.text.clone()];
        if self.made.as_ref().is_some_and(|(of, _)| *of == texts) {
            return;
        }
        let made = self.tool(units).map(Pictured::of);
        self.made = Some((texts, made));
    }

    fn tool(&self, units: Units) -> Result<Tool, String> {
        let unit = units.unit();
        let bar =
            parse_bar_in(&self.bar.text, unit).map_err(|why| format!("Forged from: {why}"))?;
        let size = Length::parse(&self.size.text, unit);
        let size = size.map_err(|why| format!("{}: {why}", size_of(self.kind)))?;
        let mut tool = Tool::starting(self.kind, size, bar);
        tool.units = units;
        check_limits(&tool).map_err(|why| why.to_string())?;
        Ok(tool)
    }
}

fn show_made(ui: &mut Ui, pictured: &Pictured, fills: &mut FillTessellator) {
    let palette = Palette::of(ui.visuals());
    let size = vec2(ui.available_width(), PICTURE);
    let (area, _) = ui.allocate_exact_size(size, Sense::hover());
    ui.painter().rect_filled(area, 4.0, palette.sheet);
    pictured.draw(ui, area, fills);
    ui.label(RichText::new(&pictured.tool.name).strong());
    ui.add(Label::new(capital(&pictured.told())).wrap());
    match pictured.against() {
        Some(against) => ui.colored_label(palette.stop, against),
        None => ui.weak("Nothing stands against it"),
    };
}
