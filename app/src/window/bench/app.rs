//! The frame that the desktop puts around the workbench.

use std::panic::{AssertUnwindSafe, catch_unwind};

use super::workbench::Workbench;

/// The smallest window in which everything can be reached, in points.
const SMALLEST: [f32; 2] = [1024.0, 700.0];

/// Letters lie in one picture that is so many pixels wide and grows in height, and no larger. A display takes
/// wider ones, of which the first rows alone would fill megabytes.
const LETTERS: usize = 4096;

struct App {
    workbench: Workbench,
    /// What the smith is told once the program has failed.
    failed: Option<String>,
}

impl eframe::App for App {
    fn ui(&mut self, ui: &mut egui::Ui, _frame: &mut eframe::Frame) {
        if self.failed.is_none() {
            // A fault of ours must not cost the smith what is open: it is kept, and told.
            let shown = catch_unwind(AssertUnwindSafe(|| self.workbench.show(ui)));
            self.failed = shown.err().map(|_fault| self.workbench.keep_after_fault());
        }
        if let Some(told) = &self.failed {
            tell(ui, told);
        }
    }

    fn raw_input_hook(&mut self, _ctx: &egui::Context, input: &mut egui::RawInput) {
        input.max_texture_side = input.max_texture_side.map(|side| side.min(LETTERS));
    }

    fn on_exit(&mut self, _gl: Option<&eframe::glow::Context>) {
        self.workbench.keep_room();
    }
}

/// All that is still shown after a fault.
fn tell(ui: &mut egui::Ui, told: &str) {
    egui::CentralPanel::default().show(ui, |ui| {
        ui.add_space(40.0);
        ui.heading("The program has failed");
        ui.label(told);
        if ui.button("Close the window").clicked() {
            ui.ctx().send_viewport_cmd(egui::ViewportCommand::Close);
        }
    });
}

/// Runs the window until it is closed.
pub(crate) fn run(workbench: Workbench) -> Result<(), String> {
    let room = workbench.room();
    let options = eframe::NativeOptions {
        viewport: egui::ViewportBuilder::default()
            .with_inner_size(room.window.unwrap_or([1280.0, 820.0]))
            .with_maximized(room.filled)
            .with_min_inner_size(SMALLEST)
            .with_app_id("reinwright")
            .with_icon(icon())
            .with_title("Reinwright"),
        renderer: eframe::Renderer::Glow,
        ..eframe::NativeOptions::default()
    };
    let app = App {
        workbench,
        failed: None,
    };
    let start: eframe::AppCreator<'_> = Box::new(|begun| {
        app.workbench.colour(&begun.egui_ctx);
        Ok(Box::new(app))
    });
    eframe::run_native("reinwright", options, start).map_err(|error| why_not(&error))
}

/// The program's own picture, as the desktop shows it.
fn icon() -> egui::IconData {
    let png = include_bytes!("../../../desktop/reinwright.png");
    eframe::icon_data::from_png_bytes(png).expect("it was built in")
}

/// Why there is no window, without the workings of the libraries underneath.
fn why_not(error: &eframe::Error) -> String {
    let why = match error {
        eframe::Error::Winit(_) | eframe::Error::WinitEventLoop(_) => "the display does not answer",
        eframe::Error::Glutin(_)
        | eframe::Error::NoGlutinConfigs(..)
        | eframe::Error::OpenGL(_) => "the display has no OpenGL",
        eframe::Error::AppCreation(_) => "the system refused it",
    };
    format!("the window cannot be opened, {why}")
}
