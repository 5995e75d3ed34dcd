//! The line of menus and buttons at the top.

use egui::{Event, InputState, Key, Modifiers, Popup, Response, Ui};
use reinwright_core::asked::Units;

use super::open::Open;
use super::workbench::Workbench;
use crate::window::panels::wish::Wish;
use crate::window::state::command::Command;
use crate::window::state::look::Sight;
use crate::window::state::samples;
use crate::window::state::shop_heats::ShopHeats;

impl Workbench {
    pub(super) fn menu(&mut self, ui: &mut Ui) {
        ui.horizontal(|ui| {
            self.file_menu(ui);
            self.view_menu(ui);
            ui.separator();
            let at_shelf = self.shown.shelf.is_some() || self.shown.cut.is_some();
            let open = self.open.session();
            let heats = self.heats_shown();
            for (command, can) in [
                (
                    Command::Undo,
                    open.can_undo() || heats.is_some_and(ShopHeats::can_undo),
                ),
                (
                    Command::Redo,
                    open.can_redo() || heats.is_some_and(ShopHeats::can_redo),
                ),
            ] {
                ui.add_enabled_ui(can && !at_shelf, |ui| self.offer(ui, command));
            }
            ui.separator();
            self.units(ui);
            ui.separator();
            self.offer(ui, Command::ExportPdf);
            self.offer(ui, Command::Shelf);
            self.offer(ui, Command::CutList);
            let layout = egui::Layout::right_to_left(egui::Align::Center);
            ui.with_layout(layout, |ui| {
                self.offer(ui, Command::SwitchTheme);
                ui.add(
                    egui::Label::new(egui::RichText::new(self.open.session().title()).strong())
                        .truncate(),
                );
            });
        });
    }

    fn offer(&mut self, ui: &mut Ui, command: Command) {
        if command.button(ui).clicked() {
            self.asked.queue.push(Wish::Do(command));
        }
    }

    fn units(&mut self, ui: &mut Ui) {
        let now = self.units_shown();
        for (choice, label, name) in [
            (Units::Inch, "in", "Show inches"),
            (Units::Millimetre, "mm", "Show millimetres"),
        ] {
            let response = ui.selectable_label(now == choice, label);
            if response.accessible_name(name).on_hover_text(name).clicked() {
                self.show_in(choice);
            }
        }
    }

    /// What sizes are shown in, on the shelf if that is looked at.
    pub(super) fn units_shown(&self) -> Units {
        match (&self.shown.shelf, &self.shown.cut) {
            (Some(shelf), _) => shelf.units,
            (None, Some(cut)) => cut.units,
            (None, None) => self.open.session().units(),
        }
    }

    fn show_in(&mut self, units: Units) {
        match (&mut self.shown.shelf, &mut self.shown.cut) {
            (Some(shelf), _) => shelf.units = units,
            (None, Some(cut)) => cut.units = units,
            (None, None) => self.open.session_mut().set_units(units),
        }
    }

    fn file_menu(&mut self, ui: &mut Ui) {
        let menu = ui.menu_button("File", |ui| {
            self.lines(ui, &[Command::New, Command::NewTool, Command::Open]);
            ui.menu_button("Ready designs", |ui| {
                for sample in samples::all() {
                    if ui.button(&sample.name).clicked() {
                        self.asked.queue.push(Wish::Ready(Box::new(sample)));
                    }
                }
                ui.separator();
                for family in samples::families() {
                    let name = format!("{}, {} sizes", family.name, family.sizes.len());
                    if ui.button(name).clicked() {
                        self.asked.queue.push(Wish::ReadyFamily(Box::new(family)));
                    }
                }
                ui.separator();
                for tool in samples::tools() {
                    if ui.button(&tool.name).clicked() {
                        self.asked.queue.push(Wish::ReadyTool(Box::new(tool)));
                    }
                }
                for set in samples::tool_sets() {
                    let name = format!("{}, {} sizes", set.name, set.sizes.len());
                    if ui.button(name).clicked() {
                        self.asked.queue.push(Wish::ReadyTools(Box::new(set)));
                    }
                }
            });
            ui.add_enabled_ui(!self.remembered.memory.recent.is_empty(), |ui| {
                ui.menu_button("Recent", |ui| {
                    for path in &self.remembered.memory.recent {
                        if ui.button(path.display().to_string()).clicked() {
                            self.asked.queue.push(Wish::Open(path.clone()));
                        }
                    }
                });
            });
            self.lines(
                ui,
                &[Command::Shelf, Command::ShelfFolder, Command::CutList],
            );
            ui.separator();
            self.lines(ui, &[Command::Save, Command::SaveAs, Command::Earlier]);
            if matches!(self.open, Open::Design(_) | Open::Tool(_)) {
                self.lines(ui, &[Command::MakeFamily]);
            }
            if !matches!(self.open, Open::Tool(_) | Open::Tools(_)) {
                self.lines(ui, &[Command::ToolsForPair]);
            }
            ui.separator();
            self.lines(ui, &[Command::ExportPdf, Command::ExportSvg]);
            if matches!(self.open, Open::Design(_) | Open::Tool(_)) {
                self.lines(ui, &[Command::JobSheet]);
            }
            ui.separator();
            self.lines(ui, &[Command::About, Command::Quit]);
        });
        self.opened_by(ui, Key::F, &menu.response);
    }

    fn view_menu(&mut self, ui: &mut Ui) {
        let menu = ui.menu_button("View", |ui| {
            let commands = [
                Command::Show(Sight::Head),
                Command::Show(Sight::Rein),
                Command::Show(Sight::All),
                Command::TrueSize,
                Command::Making,
                Command::Heats,
                Command::Trace,
                Command::Calibrate,
                Command::SwitchTheme,
            ];
            self.lines(ui, &commands);
        });
        self.opened_by(ui, Key::V, &menu.response);
    }

    /// Opens a menu, or closes it, where Alt and its letter are pressed, and brings it under the
    /// keyboard. The menus are drawn first: no field takes the letter for text.
    fn opened_by(&self, ui: &Ui, key: Key, button: &Response) {
        let pressed = |input: &mut InputState| {
            let pressed = input.consume_key(Modifiers::ALT, key);
            if pressed {
                input
                    .events
                    .retain(|event| !matches!(event, Event::Text(_)));
            }
            pressed
        };
        if !self.is_asked() && ui.input_mut(pressed) {
            Popup::toggle_id(ui.ctx(), Popup::default_response_id(button));
            button.request_focus();
            ui.ctx().request_repaint();
        }
    }

    fn lines(&mut self, ui: &mut Ui, commands: &[Command]) {
        for command in commands {
            if command.menu_line(ui).clicked() {
                self.asked.queue.push(Wish::Do(*command));
                ui.close();
            }
        }
    }
}
