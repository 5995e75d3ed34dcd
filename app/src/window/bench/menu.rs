//! The line of menus and buttons at the top, and the line of news under it.

use egui::{Context, Ui};
use reinwright_core::document::Units;

use super::command::Command;
use super::workbench::{Said, Wish, Workbench};
use super::{samples, theme};

impl Workbench {
    pub(super) fn menu(&mut self, ui: &mut Ui) {
        ui.horizontal(|ui| {
            self.file_menu(ui);
            self.view_menu(ui);
            ui.separator();
            let at_shelf = self.shelf.is_some();
            let (undo, redo) = self.can_undo_and_redo();
            let (undo, redo) = (undo && !at_shelf, redo && !at_shelf);
            for (command, can) in [(Command::Undo, undo), (Command::Redo, redo)] {
                ui.add_enabled_ui(can, |ui| self.offer(ui, command));
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
                    egui::Label::new(egui::RichText::new(self.open_title()).strong()).truncate(),
                );
            });
        });
    }

    fn offer(&mut self, ui: &mut Ui, command: Command) {
        if command.button(ui).clicked() {
            self.queue.push(Wish::Do(command));
        }
    }

    fn units(&mut self, ui: &mut Ui) {
        let now = match (&self.shelf, &self.family) {
            (Some(shelf), _) => shelf.units,
            (None, Some(bench)) => bench.session.family.base.units,
            (None, None) => self.session.document.units,
        };
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

    fn show_in(&mut self, units: Units) {
        match (&mut self.shelf, &mut self.family) {
            (Some(shelf), _) => shelf.units = units,
            (None, Some(bench)) => bench.session.family.set_units(units),
            (None, None) => self.session.document.units = units,
        }
    }

    fn file_menu(&mut self, ui: &mut Ui) {
        ui.menu_button("File", |ui| {
            self.lines(ui, &[Command::New, Command::Open]);
            ui.menu_button("Ready designs", |ui| {
                for sample in samples::all() {
                    if ui.button(&sample.name).clicked() {
                        self.queue.push(Wish::Begin(Box::new(sample)));
                    }
                }
            });
            ui.add_enabled_ui(!self.memory.recent.is_empty(), |ui| {
                ui.menu_button("Recent", |ui| {
                    for path in &self.memory.recent {
                        if ui.button(path.display().to_string()).clicked() {
                            self.queue.push(Wish::Open(path.clone()));
                        }
                    }
                });
            });
            self.lines(ui, &[Command::Shelf, Command::ShelfFolder]);
            ui.separator();
            self.lines(ui, &[Command::Save, Command::SaveAs]);
            if self.family.is_none() {
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
                Command::ZoomFit,
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
                self.queue.push(Wish::Do(*command));
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
            if self.asking.is_some() {
                ui.label("The system's file chooser is open.");
                if ui.button("Type the path instead").clicked() {
                    self.ask_own_field();
                }
                return;
            }
            let palette = theme::Palette::of(ui.visuals());
            let (text, colour) = match &self.said {
                Some(Said::Done(text)) => (text.clone(), palette.ink),
                Some(Said::Trouble(text)) => (text.clone(), palette.stop),
                None => return,
            };
            if ui.button("Seen").clicked() {
                self.said = None;
            }
            ui.add(egui::Label::new(egui::RichText::new(text).color(colour)).wrap());
        });
    }
}
