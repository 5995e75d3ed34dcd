//! What the window remembers from one day to the next, in plain text files.

use std::path::{Path, PathBuf};

use super::place::own_folder;
use super::{files, stock_sizes};
use reinwright_core::asked::StockSizes;
use reinwright_core::units::MM_PER_INCH;

/// How many files are remembered.
const MOST_RECENT: usize = 8;

/// How many designs have the place of their picture remembered.
const MOST_TRACES: usize = 64;

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
    /// Screen points per millimetre.
    pub(crate) screen: f32,
    /// The folder that was last looked at as a shelf.
    pub(crate) shelf: Option<PathBuf>,
    /// The stock that can be bought.
    pub(crate) stock: Stock,
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
            screen: screen
                .filter(|s| (1.0..40.0).contains(s))
                .unwrap_or(USUAL_SCREEN),
            shelf: text("shelf").map(|text| PathBuf::from(text.trim_end_matches('\n'))),
            stock: Stock::kept(folder.as_deref()),
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

    /// Remembers how large the screen is.
    pub(crate) fn note_screen(&mut self, points_per_mm: f32) {
        self.screen = points_per_mm;
        self.keep("screen", &format!("{points_per_mm}\n"));
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

    /// A design that is not saved yet, kept against a power cut.
    pub(crate) fn keep_rescue(&self, text: &str) {
        self.keep(&rescue_name(), text);
    }

    /// Drops it: the design is saved, or left on purpose.
    pub(crate) fn drop_rescue(&self) {
        if let Some(folder) = &self.folder {
            std::fs::remove_file(folder.join(rescue_name())).ok();
        }
    }

    /// A rescue copy that a window left behind which is no longer there.
    pub(crate) fn left_behind(&self) -> Option<PathBuf> {
        let entries = std::fs::read_dir(self.folder.as_ref()?).ok()?;
        let mut left: Vec<PathBuf> = entries
            .flatten()
            .map(|entry| entry.path())
            .filter(|path| is_orphan(path))
            .collect();
        left.sort();
        left.pop()
    }

    /// Writes a small file. What cannot be remembered is no reason to stop the smith.
    fn keep(&self, name: &str, text: &str) {
        if let Some(folder) = &self.folder {
            std::fs::create_dir_all(folder).ok();
            files::write_whole(&folder.join(name), text.as_bytes()).ok();
        }
    }
}

fn absolute(path: &Path) -> String {
    let path = std::path::absolute(path).unwrap_or_else(|_| path.to_owned());
    path.display().to_string()
}

fn rescue_name() -> String {
    format!("rescue-{}.ron", std::process::id())
}

/// Whether a file is the rescue copy of a window that has ended.
fn is_orphan(path: &Path) -> bool {
    let name = path.file_name().and_then(|name| name.to_str());
    let process = name.and_then(|name| name.strip_prefix("rescue-")?.strip_suffix(".ron"));
    process.is_some_and(|process| !is_window(process))
}

/// Whether a process is a window of this program. Where the system does not tell (it does on
/// Linux), only this very window is known to be one.
fn is_window(process: &str) -> bool {
    if process == std::process::id().to_string() {
        return true;
    }
    let program = std::fs::read_link(Path::new("/proc").join(process).join("exe"));
    let own = std::env::current_exe();
    match (program, own) {
        (Ok(program), Ok(own)) => program.file_name() == own.file_name(),
        (Err(_), _) | (_, Err(_)) => false,
    }
}

/// The folder for what is remembered: `$XDG_CONFIG_HOME/reinwright`, else
/// `~/.config/reinwright`.
pub(crate) fn folder() -> Option<PathBuf> {
    own_folder("XDG_CONFIG_HOME", ".config")
}
