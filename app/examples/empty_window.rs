//! A window with nothing in it, for `.ci/figures` to hold the program's start and memory against.

fn main() -> eframe::Result {
    struct Nothing;
    impl eframe::App for Nothing {
        fn ui(&mut self, _ui: &mut egui::Ui, _frame: &mut eframe::Frame) {}
    }
    let options = eframe::NativeOptions {
        viewport: egui::ViewportBuilder::default().with_title("Nothing"),
        renderer: eframe::Renderer::Glow,
        ..eframe::NativeOptions::default()
    };
    eframe::run_native("nothing", options, Box::new(|_| Ok(Box::new(Nothing))))
}
