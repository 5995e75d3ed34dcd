//! Windows for `.ci/figures` to hold the program's start and memory against: one with nothing in it, and, given any
//! argument, one as large as the program's with one word in it. What a word costs is what drawing anything at all
//! costs: letters, and the display's programs for triangles.

/// As large as the program's window is at first, in points.
const AS_LARGE: [f32; 2] = [1280.0, 820.0];

struct Window {
    word: Option<&'static str>,
}

impl eframe::App for Window {
    fn ui(&mut self, ui: &mut egui::Ui, _frame: &mut eframe::Frame) {
        if let Some(word) = self.word {
            ui.label(word);
        }
    }
}

fn main() -> eframe::Result {
    let viewport = egui::ViewportBuilder::default();
    let (viewport, word) = match std::env::args().nth(1) {
        None => (viewport.with_title("Nothing"), None),
        Some(_) => (
            viewport.with_title("One word").with_inner_size(AS_LARGE),
            Some("Tongs"),
        ),
    };
    let options = eframe::NativeOptions {
        viewport,
        renderer: eframe::Renderer::Glow,
        ..eframe::NativeOptions::default()
    };
    eframe::run_native(
        "nothing",
        options,
        Box::new(|_| Ok(Box::new(Window { word }))),
    )
}
