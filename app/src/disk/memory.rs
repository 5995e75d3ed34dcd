//! What the window remembers from one day to the next, in plain text files.

use std::path::{Path, PathBuf};

use super::place::own_folder;
use super::room::Room;
use super::{files, stock_sizes};
use reinwright_core::asked::{StockSizes, Units};
use reinwright_core::paper::Paper;
use reinwright_core::units::MM_PER_INCH;

/// How many files are remembered.
const MOST_RECENT: usize = 8;

/// How many designs have the place of their picture remembered.
const MOST_TRACES: usize = 64;

/// How many screens have their size remembered.
const MOST_SCREENS: usize = 16;

/// Screen points per millimetre of a screen with 96 dots to the inch, until the smith measures.
#[allow(
    clippy::cast_possible_truncation,
    reason = "a screen's scale needs no more digits"
)]
const USUAL_SCREEN: f32 = (96.0 / MM_PER_INCH) as f32;

/// Recent files, theme, screen and stock; kept in a folder, if there is one.
#[derive(Debug)]
pub(crate) struct Memory {
    folder: Option<PathBuf>,
    /// Files opened or saved, the latest first.
    pub(crate) recent: Vec<PathBuf>,
    /// Light, dark, or as the system has it.
    pub(crate) theme: Option<egui::Theme>,
    /// Screen points per millimetre, of the screen that was measured last.
    screen: f32,
    /// The same of each screen that was measured, by what tells it from others.
    screens: Vec<(String, f32)>,
    /// The folder that was last looked at as a shelf.
    pub(crate) shelf: Option<PathBuf>,
    /// The stock that can be bought.
    pub(crate) stock: Stock,
    /// How large the window and its panels stood.
    pub(crate) room: Room,
    /// What was printed last, as its order tells it.
    pub(crate) print: String,
    /// What job sheets and cut lists were printed on last: they lie at the anvil, and templates may
    /// come from another printer.
    pub(crate) sheet_paper: Option<Paper>,
}

/// The stock that can be bought, as the window knows it.
#[derive(Debug, Clone, Default)]
pub(crate) struct Stock {
    pub(crate) sizes: StockSizes,
    /// Why the list that was kept could not be read: the usual sizes stand for it then.
    pub(crate) trouble: Option<String>,
}

impl Stock {
    fn kept(folder: Option<&Path>) -> Self {
        match stock_sizes::kept(folder) {
            Ok(sizes) => Self {
                sizes,
                trouble: None,
            },
            Err(why) => Self {
                trouble: Some(format!("{why}. The usual sizes are counted until then.")),
                ..Self::default()
            },
        }
    }
}

impl Memory {
    /// Reads what a folder holds; what cannot be read is forgotten.
    pub(crate) fn from(folder: Option<PathBuf>) -> Self {
        let text = |name: &str| {
            let path = folder.as_ref()?.join(name);
            std::fs::read_to_string(path).ok()
        };
        let recent = text("recent").unwrap_or_default();
        let screen = text("screen").and_then(|text| text.trim().parse().ok());
        let theme = match text("theme").as_deref().map(str::trim) {
            Some("dark") => Some(egui::Theme::Dark),
            Some("light") => Some(egui::Theme::Light),
            Some(_) | None => None,
        };
        Self {
            recent: recent
                .lines()
                .map(PathBuf::from)
                .take(MOST_RECENT)
                .collect(),
            theme,
            screen: screen.filter(is_screen).unwrap_or(USUAL_SCREEN),
            screens: text("screens").as_deref().map_or_else(Vec::new, screens),
            shelf: text("shelf").map(|text| PathBuf::from(text.trim_end_matches('\n'))),
            stock: Stock::kept(folder.as_deref()),
            room: Room::read(&text("room").unwrap_or_default()),
            print: text("print").unwrap_or_default(),
            sheet_paper: text("sheet-paper").and_then(|text| named_paper(&text)),
            folder,
        }
    }

    /// Puts a file at the head of the recent ones.
    pub(crate) fn note_file(&mut self, path: &Path) {
        let path = std::path::absolute(path).unwrap_or_else(|_| path.to_owned());
        self.recent.retain(|known| *known != path);
        self.recent.insert(0, path);
        self.recent.truncate(MOST_RECENT);
        let lines: Vec<String> = self
            .recent
            .iter()
            .map(|p| p.display().to_string())
            .collect();
        self.keep("recent", &(lines.join("\n") + "\n"));
    }

    /// Remembers light or dark.
    pub(crate) fn note_theme(&mut self, theme: egui::Theme) {
        self.theme = Some(theme);
        let name = match theme {
            egui::Theme::Dark => "dark\n",
            egui::Theme::Light => "light\n",
        };
        self.keep("theme", name);
    }

    /// Remembers which folder is the shelf.
    pub(crate) fn note_shelf(&mut self, folder: &Path) {
        let folder = std::path::absolute(folder).unwrap_or_else(|_| folder.to_owned());
        self.keep("shelf", &format!("{}\n", folder.display()));
        self.shelf = Some(folder);
    }

    /// Remembers the stock that can be bought; says where a damaged list was put, or why nothing
    /// could be written.
    pub(crate) fn note_stock(&mut self, sizes: StockSizes) -> Result<Option<PathBuf>, String> {
        self.stock = Stock {
            sizes,
            trouble: None,
        };
        match &self.folder {
            Some(folder) => stock_sizes::keep(folder, &self.stock.sizes),
            None => Ok(None),
        }
    }

    /// Whether nobody has put the first day's hint away.
    pub(crate) fn is_first_time(&self) -> bool {
        let folder = self.folder.as_ref();
        folder.is_some_and(|folder| !folder.join("hint").exists())
    }

    /// Remembers that the first day's hint was put away.
    pub(crate) fn note_hint(&self) {
        self.keep("hint", "seen\n");
    }

    /// Remembers how large the window and its panels stand.
    pub(crate) fn keep_room(&self) {
        self.keep("room", &self.room.text());
    }

    /// Points per millimetre of a screen; of one that was never measured, of the one that was last.
    pub(crate) fn screen(&self, which: Option<&str>) -> f32 {
        let is_it = |own: &&(String, f32)| Some(own.0.as_str()) == which;
        self.screens
            .iter()
            .find(is_it)
            .map_or(self.screen, |own| own.1)
    }

    /// Remembers how large a screen is.
    pub(crate) fn note_screen(&mut self, which: Option<&str>, points_per_mm: f32) {
        self.screen = points_per_mm;
        self.keep("screen", &format!("{points_per_mm}\n"));
        if let Some(which) = which {
            self.screens.retain(|own| own.0 != which);
            self.screens.insert(0, (which.to_owned(), points_per_mm));
            self.screens.truncate(MOST_SCREENS);
            let lines = self.screens.iter();
            let text: String = lines.map(|(of, own)| format!("{of}\t{own}\n")).collect();
            self.keep("screens", &text);
        }
    }

    /// Remembers what was printed.
    pub(crate) fn note_print(&mut self, order: &str) {
        order.clone_into(&mut self.print);
        self.keep("print", order);
    }

    /// Remembers what a job sheet or a cut list was printed on.
    pub(crate) fn note_sheet_paper(&mut self, paper: Paper) {
        self.sheet_paper = Some(paper);
        self.keep("sheet-paper", &format!("{paper}\n"));
    }

    /// The folder in which printers are noted: that of the shop, where one is known, else this own.
    pub(crate) fn printers_folder(&self) -> Option<&Path> {
        let shop = self.shelf.as_deref().filter(|folder| folder.is_dir());
        shop.or(self.folder.as_deref())
    }

    /// Remembers the bar that was used last in a unit, in words.
    pub(crate) fn note_bar(&self, units: Units, words: &str) {
        self.keep(bar_name(units), &format!("{words}\n"));
    }

    /// The bar that was used last in a unit, in words.
    pub(crate) fn usual_bar(&self, units: Units) -> Option<String> {
        let path = self.folder.as_ref()?.join(bar_name(units));
        let text = std::fs::read_to_string(path).ok()?;
        Some(text.trim().to_owned())
    }

    /// The line that was noted of the picture under a design.
    pub(crate) fn trace_of(&self, design: &Path) -> Option<String> {
        let design = absolute(design);
        let lines = self.traces();
        let own = lines.iter().find(|(of, _)| *of == design);
        own.map(|(_, line)| line.clone())
    }

    /// Notes a line of the picture under a design, or that there is none any more.
    pub(crate) fn note_trace(&self, design: &Path, line: Option<&str>) {
        let design = absolute(design);
        let mut lines = self.traces();
        lines.retain(|(of, _)| *of != design);
        let own = line.map(|line| (design, line.to_owned()));
        let lines = own.into_iter().chain(lines).take(MOST_TRACES);
        let text: String = lines.map(|(of, line)| format!("{of}\t{line}\n")).collect();
        self.keep("pictures", &text);
    }

    /// Designs with the lines that were noted of their pictures.
    fn traces(&self) -> Vec<(String, String)> {
        let path = self.folder.as_ref().map(|folder| folder.join("pictures"));
        let text = path.and_then(|path| std::fs::read_to_string(path).ok());
        let text = text.unwrap_or_default();
        let line = |line: &str| {
            let (design, rest) = line.split_once('\t')?;
            Some((design.to_owned(), rest.to_owned()))
        };
        text.lines().filter_map(line).collect()
    }

    /// Writes a small file. What cannot be remembered is no reason to stop the smith.
    fn keep(&self, name: &str, text: &str) {
        if let Some(folder) = &self.folder {
            std::fs::create_dir_all(folder).ok();
            files::write_whole(&folder.join(name), text.as_bytes()).ok();
        }
    }
}

/// Whether a screen can have so many points to a millimetre.
fn is_screen(points_per_mm: &f32) -> bool {
    (1.0..40.0).contains(points_per_mm)
}

/// A paper that sheets are offered on.
fn named_paper(text: &str) -> Option<Paper> {
    let paper = Paper::parse(text.trim()).ok()?;
    Paper::NAMED.contains(&paper).then_some(paper)
}

/// Screens that were measured, a line each; what cannot be read is forgotten.
fn screens(text: &str) -> Vec<(String, f32)> {
    let line = |line: &str| {
        let (which, size) = line.split_once('\t')?;
        let size = size.trim().parse().ok().filter(is_screen)?;
        Some((which.to_owned(), size))
    };
    text.lines().filter_map(line).take(MOST_SCREENS).collect()
}

fn absolute(path: &Path) -> String {
    let path = std::path::absolute(path).unwrap_or_else(|_| path.to_owned());
    path.display().to_string()
}

fn bar_name(units: Units) -> &'static str {
    match units {
        Units::Inch => "bar-in",
        Units::Millimetre => "bar-mm",
    }
}

/// The folder for what is remembered: `$XDG_CONFIG_HOME/reinwright`, else
/// `~/.config/reinwright`.
pub(crate) fn folder() -> Option<PathBuf> {
    own_folder("XDG_CONFIG_HOME", ".config")
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Two screens keep a size each, over a start too; a third takes what was measured last.
    #[test]
    fn each_screen_keeps_its_size() {
        let folder = tempfile::tempdir().expect("a folder");
        let start = || Memory::from(Some(folder.path().to_owned()));
        let (desk, lap) = (Some("2560 x 1440, 1"), Some("1920 x 1200, 1.5"));
        let mut memory = start();
        assert!((memory.screen(desk) - 96.0 / 25.4).abs() < 1e-4);
        memory.note_screen(desk, 4.3);
        memory.note_screen(lap, 5.1);
        memory.note_screen(desk, 4.25);
        for memory in [memory, start()] {
            let sizes = [desk, lap, Some("1 x 1, 1"), None].map(|which| memory.screen(which));
            assert_eq!(sizes, [4.25, 5.1, 4.25, 4.25]);
        }
        std::fs::write(folder.path().join("screens"), "a\t900\nb\nc\t3\n").expect("written");
        let sizes = ["a", "b", "c"].map(|which| start().screen(Some(which)));
        assert_eq!(sizes, [4.25, 4.25, 3.0]);
    }
}
