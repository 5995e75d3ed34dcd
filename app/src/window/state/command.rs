//! What the window can be told to do: label, tooltip and keys in one place.

use egui::{Key, KeyboardShortcut, Modifiers};

use super::look::Sight;

/// A single thing to do. Commands are queued while the window is drawn and run before the next
/// frame.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Command {
    /// Start a new pair.
    New,
    /// Start a new tool.
    NewTool,
    /// The tools that make the open pair.
    ToolsForPair,
    /// Open a design.
    Open,
    /// Save where it was opened.
    Save,
    /// Save under another name.
    SaveAs,
    /// What the file was before.
    Earlier,
    /// Full-size pages.
    ExportPdf,
    /// A drawing for a cutter.
    ExportSvg,
    /// One design in many sizes.
    MakeFamily,
    /// The pairs of a folder.
    Shelf,
    /// The pairs of another folder.
    ShelfFolder,
    /// From bar to tongs, step by step.
    Making,
    /// Which fire or coil for which operation.
    Heats,
    /// Pages for the anvil.
    JobSheet,
    /// Which bars are cut into what.
    CutList,
    /// Take the last change back.
    Undo,
    /// Do it again.
    Redo,
    /// This much of the drawing in the window.
    Show(Sight),
    /// One to one.
    TrueSize,
    /// Lay a picture under the drawing.
    Trace,
    /// Measure the screen with a card.
    Calibrate,
    /// Cautions, sources and licences.
    About,
    /// Day or night.
    SwitchTheme,
    /// Close the window.
    Quit,
}

/// How often a key was pressed since the last frame; nothing else hears of it any more.
pub(crate) fn times_pressed(ui: &egui::Ui, modifiers: Modifiers, key: Key) -> f64 {
    let times = ui.input_mut(|i| i.count_and_consume_key(modifiers, key));
    f64::from(u32::try_from(times).unwrap_or(u32::MAX))
}

/// All that the window needs to offer a command.
struct Wording {
    label: &'static str,
    tooltip: &'static str,
    keys: Option<KeyboardShortcut>,
}

const fn keys(modifiers: Modifiers, key: Key) -> Option<KeyboardShortcut> {
    Some(KeyboardShortcut::new(modifiers, key))
}

const SHIFTED: Modifiers = Modifiers::COMMAND.plus(Modifiers::SHIFT);

impl Command {
    /// Every command; those with more modifier keys come first, because a shortcut also matches
    /// with a further Shift held.
    pub(crate) const ALL: [Self; 27] = [
        Self::MakeFamily,
        Self::ShelfFolder,
        Self::SaveAs,
        Self::Earlier,
        Self::Redo,
        Self::ExportSvg,
        Self::NewTool,
        Self::ToolsForPair,
        Self::New,
        Self::Open,
        Self::Save,
        Self::Shelf,
        Self::ExportPdf,
        Self::Undo,
        Self::Show(Sight::Head),
        Self::Show(Sight::Rein),
        Self::Show(Sight::All),
        Self::TrueSize,
        Self::Making,
        Self::Heats,
        Self::CutList,
        Self::JobSheet,
        Self::Trace,
        Self::Calibrate,
        Self::About,
        Self::SwitchTheme,
        Self::Quit,
    ];

    fn wording(self) -> Wording {
        let ctrl = Modifiers::COMMAND;
        let (label, tooltip, keys) = match self {
            Self::New => (
                "New pair",
                "Start from what the tongs must hold",
                keys(ctrl, Key::N),
            ),
            Self::NewTool => (
                "New tool",
                "A punch, a drift, a chisel or another tool that makes tongs",
                keys(SHIFTED, Key::N),
            ),
            Self::ToolsForPair => (
                "Tools for this pair",
                "The punch, the drift and all else that this pair is made with, in its sizes",
                None,
            ),
            Self::Open => (
                "Open",
                "Open a design, a tool or a family",
                keys(ctrl, Key::O),
            ),
            Self::Save => (
                "Save",
                "Save the design where it was opened",
                keys(ctrl, Key::S),
            ),
            Self::SaveAs => (
                "Save as",
                "Save the design under another name",
                keys(SHIFTED, Key::S),
            ),
            Self::Earlier => (
                "Earlier versions",
                "What the file was before it was saved over, to bring back",
                None,
            ),
            Self::ExportPdf => (
                "Print to PDF",
                "Full-size templates, to trace to plate or chalk",
                keys(ctrl, Key::P),
            ),
            Self::ExportSvg => (
                "Drawing to SVG",
                "The drawing full size, 1 unit to 1 mm, for a cutter or a web page",
                keys(SHIFTED, Key::P),
            ),
            Self::MakeFamily => (
                "Make a family of this design",
                "One design in many sizes, with this one as the base",
                None,
            ),
            Self::Shelf => (
                "Shelf",
                "The designs and families of a folder, and what you own for some stock",
                keys(ctrl, Key::L),
            ),
            Self::ShelfFolder => (
                "Shelf of another folder",
                "Choose the folder that is shown as a shelf",
                None,
            ),
            Self::Undo => ("Undo", "Take the last change back", keys(ctrl, Key::Z)),
            Self::Redo => ("Redo", "Do it again", keys(SHIFTED, Key::Z)),
            Self::Show(Sight::Head) => (
                "Head",
                "Head and boss as large as they fit, the plain reins broken; a double click on the paper brings this back",
                keys(Modifiers::NONE, Key::F2),
            ),
            Self::Show(Sight::Rein) => (
                "Rein",
                "The reins from the boss to their ends, unbroken",
                keys(Modifiers::NONE, Key::F3),
            ),
            Self::Show(Sight::All) => (
                "All",
                "The whole drawing, unbroken",
                keys(Modifiers::NONE, Key::F4),
            ),
            Self::TrueSize => (
                "True size",
                "About the head: one millimetre on the screen is one millimetre of steel",
                keys(Modifiers::NONE, Key::F5),
            ),
            Self::Making => (
                "Making",
                "How the pair is forged from its bar, step by step",
                keys(Modifiers::NONE, Key::F6),
            ),
            Self::JobSheet => (
                "Job sheet to PDF",
                "How this pair is made, step by step, to be read at the anvil",
                keys(ctrl, Key::J),
            ),
            Self::CutList => (
                "Cut list",
                "How many pairs of which designs, out of which bars of the rack",
                keys(Modifiers::NONE, Key::F7),
            ),
            Self::Heats => (
                "Heats",
                "Which fire or coil for which step, whether it goes in, how many heats and how long",
                keys(Modifiers::NONE, Key::F8),
            ),
            Self::Trace => (
                "Trace a picture…",
                "Lay a photograph or a scan of a pair under the side view, to draw over",
                None,
            ),
            Self::Calibrate => (
                "Measure the screen",
                "Lay a bank card on the screen once, so that true size is true",
                None,
            ),
            Self::About => (
                "About Reinwright",
                "What to take care of, where the figures come from, licences",
                keys(Modifiers::NONE, Key::F1),
            ),
            Self::SwitchTheme => (
                "Day or night",
                "Light or dark window",
                keys(Modifiers::NONE, Key::F9),
            ),
            Self::Quit => ("Close", "Close the window", keys(ctrl, Key::Q)),
        };
        Wording {
            label,
            tooltip,
            keys,
        }
    }

    /// What stands on its button.
    pub fn label(self) -> &'static str {
        self.wording().label
    }

    /// What it does, with its keys.
    pub(crate) fn tooltip(self, ctx: &egui::Context) -> String {
        let Wording { tooltip, keys, .. } = self.wording();
        match keys {
            Some(keys) => format!("{tooltip} ({})", ctx.format_shortcut(&keys)),
            None => tooltip.to_owned(),
        }
    }

    fn keys(self) -> Option<KeyboardShortcut> {
        self.wording().keys
    }

    /// Whether a text field that is being typed in takes these keys for itself.
    fn belongs_to_text(self) -> bool {
        matches!(self, Self::Undo | Self::Redo)
    }

    /// The commands whose keys were pressed since the last frame.
    pub(crate) fn pressed(ctx: &egui::Context) -> Vec<Self> {
        let typing = ctx.text_edit_focused();
        let ours = |command: &Self| !(typing && command.belongs_to_text());
        let wanted = Self::ALL.into_iter().filter(ours);
        let again = (!typing)
            .then(|| keys(Modifiers::COMMAND, Key::Y))
            .flatten();
        ctx.input_mut(|input| {
            let mut pressed: Vec<Self> = wanted
                .filter(|command| command.keys().is_some_and(|k| input.consume_shortcut(&k)))
                .collect();
            if again.is_some_and(|k| input.consume_shortcut(&k)) {
                pressed.push(Self::Redo);
            }
            pressed
        })
    }

    /// A button for it; true when it was clicked.
    pub(crate) fn button(self, ui: &mut egui::Ui) -> egui::Response {
        let tooltip = self.tooltip(ui.ctx());
        ui.button(self.label()).on_hover_text(tooltip)
    }

    /// The same for one of several states, shown as chosen or not.
    pub(crate) fn choice(self, ui: &mut egui::Ui, chosen: bool) -> egui::Response {
        let tooltip = self.tooltip(ui.ctx());
        ui.selectable_label(chosen, self.label())
            .on_hover_text(tooltip)
    }

    /// A line in a menu, with its keys.
    pub(crate) fn menu_line(self, ui: &mut egui::Ui) -> egui::Response {
        let mut button = egui::Button::new(self.label());
        if let Some(keys) = self.keys() {
            button = button.shortcut_text(ui.ctx().format_shortcut(&keys));
        }
        ui.add(button).on_hover_text(self.wording().tooltip)
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use egui::ModifierNames;

    use super::*;

    /// The menus, which no command opens.
    const MENUS: [(&str, &str); 2] = [("File", "Alt+F"), ("View", "Alt+V")];

    /// Every command that has keys stands in the guide with them, and nothing else does.
    #[test]
    fn the_guide_has_every_key() {
        let named = |command: Command| {
            let keys = command.keys()?.format(&ModifierNames::NAMES, false);
            Some((command.label().to_owned(), keys))
        };
        let menus = MENUS.map(|(menu, keys)| (menu.to_owned(), keys.to_owned()));
        let ours: BTreeSet<_> = Command::ALL
            .into_iter()
            .filter_map(named)
            .chain(menus)
            .collect();
        let guide = include_str!("../../../../docs/guide/keys.md");
        let row = |line: &str| {
            let (label, keys) = line.strip_prefix("| *")?.split_once("* | ")?;
            Some((label.to_owned(), keys.trim_end_matches(" |").to_owned()))
        };
        let told: BTreeSet<_> = guide.lines().filter_map(row).collect();
        assert_eq!(told, ours);
    }
}
