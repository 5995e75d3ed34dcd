//! The line of menus and buttons at the top, and the line of news under it.

use egui::{Context, Ui};
use reinwright_core::asked::Units;

use super::open::Open;
use super::workbench::Workbench;
use crate::window::paint::theme;
use crate::window::panels::wish::{Said, Wish};
use crate::window::state::command::Command;
use crate::window::state::look::Sight;
use crate::window::state::samples;

impl Workbench {
    pub(super) fn menu(&mut self, ui: &mut Ui) {
        ui.horizontal(|ui| {
            self.file_menu(ui);
            self.view_menu(ui);
            ui.separator();
            let at_shelf = self.shown.shelf.is_some();
            let open = self.open.session();
            for (command, can) in [
                (Command::Undo, open.can_undo()),
                (Command::Redo, open.can_redo()),
            ] {
                ui.add_enabled_ui(can && !at_shelf, |ui| self.offer(ui, command));
            }
            ui.separator();
            self.units(ui);
            ui.separator();
            self.offer(ui, Command::ExportPdf);
            self.offer(ui, Command::Shelf);
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
        match &self.shown.shelf {
            Some(shelf) => shelf.units,
            None => self.open.session().units(),
        }
    }

    fn show_in(&mut self, units: Units) {
        match &mut self.shown.shelf {
            Some(shelf) => shelf.units = units,
            None => self.open.session_mut().set_units(units),
        }
    }

    fn file_menu(&mut self, ui: &mut Ui) {
        ui.menu_button("File", |ui| {
            self.lines(ui, &[Command::New, Command::Open]);
            ui.menu_button("Ready designs", |ui| {
                for sample in samples::all() {
                    if ui.button(&sample.name).clicked() {
                        self.asked.queue.push(Wish::Begin(Box::new(sample)));
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
            self.lines(ui, &[Command::Shelf, Command::ShelfFolder]);
            ui.separator();
            self.lines(ui, &[Command::Save, Command::SaveAs]);
            if matches!(self.open, Open::Design(_)) {
                self.lines(ui, &[Command::MakeFamily]);
            }
            ui.separator();
            self.lines(ui, &[Command::ExportPdf, Command::ExportSvg]);
            ui.separator();
            self.lines(ui, &[Command::Quit]);
        });
    }

    fn view_menu(&mut self, ui: &mut Ui) {
        ui.menu_button("View", |ui| {
            let commands = [
                Command::Show(Sight::Head),
                Command::Show(Sight::Rein),
                Command::Show(Sight::All),
                Command::TrueSize,
                Command::Trace,
                Command::Calibrate,
                Command::SwitchTheme,
            ];
            self.lines(ui, &commands);
        });
    }

    fn lines(&mut self, ui: &mut Ui, commands: &[Command]) {
        for command in commands {
            if command.menu_line(ui).clicked() {
                self.asked.queue.push(Wish::Do(*command));
                ui.close();
            }
        }
    }

    /// What was done or went wrong, or that a chooser is open: over the sheet, so that nothing
    /// moves under the pointer.
    pub(super) fn said_over(&mut self, ctx: &Context) {
        /// Below the menu and the row above the sheet.
        const DOWN: f32 = 66.0;
        const WIDEST: f32 = 760.0;
        let area = egui::Area::new(egui::Id::unique("said"))
            .anchor(egui::Align2::CENTER_TOP, [0.0, DOWN])
            .order(egui::Order::Foreground);
        let frame = egui::Frame::popup(&ctx.global_style()).inner_margin(8);
        area.show(ctx, |ui| {
            ui.set_max_width(WIDEST.min(0.8 * ctx.content_rect().width()));
            frame.show(ui, |ui| self.said_line(ui));
        });
    }

    fn said_line(&mut self, ui: &mut Ui) {
        ui.horizontal(|ui| {
            if self.asked.asking.is_some() {
                ui.label("The system's file chooser is open.");
                if ui.button("Type the path instead").clicked() {
                    self.ask_own_field();
                }
                return;
            }
            let palette = theme::Palette::of(ui.visuals());
            let (text, colour) = match &self.shown.said {
                Some(Said::Done(text)) => (text.clone(), palette.ink),
                Some(Said::Trouble(text)) => (text.clone(), palette.stop),
                None => return,
            };
            if ui.button("Seen").clicked() {
                self.shown.said = None;
            }
            ui.add(egui::Label::new(egui::RichText::new(text).color(colour)).wrap());
        });
    }
}
