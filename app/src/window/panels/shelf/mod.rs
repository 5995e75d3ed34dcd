//! The shelf: every pair and every tool of a folder as a picture, and which pairs hold some stock.

mod card;
mod load;

use std::path::PathBuf;
use std::time::{Duration, Instant};

use egui::{CentralPanel, Panel, RichText, ScrollArea, TextEdit, Ui};
use lyon::tessellation::FillTessellator;
use reinwright_core::asked::Units;
use reinwright_core::shop::shelf::{Mark, Marks, Stock, best_first};
use reinwright_core::tongs::jaw::Verdict;

use super::wish::Wish;
use crate::disk::folder::{self, Folder};
use crate::window::paint::focus::follow;
use crate::window::paint::theme::Palette;
use crate::window::state::command::Command;
use card::{CardDeed, GAP};
use load::{Card, OnFile};

/// How long a frame may work on pairs that are not yet known, so that the window stays live.
const PER_FRAME: Duration = Duration::from_millis(8);

/// Everything on the page of the shelf.
#[derive(Debug)]
pub(crate) struct Shelf {
    folder: PathBuf,
    marks: Marks,
    /// Why the marks cannot be read; they are then not written over.
    marks_trouble: Option<String>,
    files: Vec<OnFile>,
    cards: Vec<Card>,
    pub(crate) units: Units,
    question: String,
    /// What the answers are about.
    asked: Option<Stock>,
    refused: Option<String>,
    only: Option<Mark>,
    /// The order in which the cards stand, and how many of them were answered for it.
    order: Vec<usize>,
    stale: bool,
    /// What is best was put in front: the page begins anew.
    to_top: bool,
}

impl Shelf {
    pub(crate) fn on(folder: Folder, units: Units) -> Self {
        Self {
            folder: folder.path,
            marks: folder.marks,
            marks_trouble: folder.trouble,
            files: folder.files.into_iter().map(OnFile::unread).collect(),
            cards: Vec::new(),
            units,
            question: String::new(),
            asked: None,
            refused: None,
            only: None,
            order: Vec::new(),
            stale: true,
            to_top: true,
        }
    }

    /// Shows everything under the menu; works a little on what is not yet known. `behind` is what
    /// the design or family behind the shelf is called.
    pub(crate) fn show(
        &mut self,
        ui: &mut Ui,
        behind: &str,
        fills: &mut FillTessellator,
    ) -> Vec<Wish> {
        let mut asked = Vec::new();
        if self.work(PER_FRAME) {
            ui.ctx().request_repaint();
        }
        Panel::top("shelf head").show(ui, |ui| {
            ui.add_space(4.0);
            asked.extend(self.head(ui, behind));
            self.asking(ui);
            self.troubles(ui);
            ui.add_space(2.0);
        });
        CentralPanel::default().show(ui, |ui| asked.extend(self.cards(ui, fills)));
        asked
    }

    fn head(&self, ui: &mut Ui, behind: &str) -> Vec<Wish> {
        let mut asked = Vec::new();
        ui.horizontal_wrapped(|ui| {
            ui.label(RichText::new("Shelf").size(18.0).strong());
            ui.label(self.folder.display().to_string());
            ui.separator();
            let mut wish = |ui: &mut Ui, label: &str, tip: &str, wish: Wish| {
                if ui.button(label).on_hover_text(tip).clicked() {
                    asked.push(wish);
                }
            };
            let tip = "Shows the designs of another folder";
            wish(ui, "Another folder", tip, Wish::Do(Command::ShelfFolder));
            let tip = "Reads the folder anew";
            wish(ui, "Look again", tip, Wish::ShelfOf(self.folder.clone()));
            let back = format!("Back to {behind}");
            wish(ui, &back, "Leaves the shelf", Wish::LeaveShelf);
        });
        asked
    }

    fn asking(&mut self, ui: &mut Ui) {
        ui.horizontal_wrapped(|ui| {
            let label = ui.label("What do I own for");
            let field = TextEdit::singleline(&mut self.question)
                .desired_width(190.0)
                .char_limit(80)
                .hint_text(match self.units {
                    Units::Inch => "5/8 hex",
                    Units::Millimetre => "16 hex",
                });
            let field = ui.add(field).labelled_by(label.id).on_hover_text(
                "Stock to be held, such as 5/8 hex, 3/8 x 1 flat, 12 mm round, M16, 1/2 in pipe, #5 rebar; Enter asks",
            );
            let entered = field.lost_focus() && ui.input(|i| i.key_pressed(egui::Key::Enter));
            if ui.button("Ask").clicked() || entered {
                self.ask();
            }
            // It keeps its place, so that what stands behind it stays under the pointer.
            let no_more = egui::Button::new("Clear");
            let asks = self.asked.is_some() || self.refused.is_some();
            if ui.add_enabled(asks, no_more).clicked() {
                self.question.clear();
                self.ask();
            }
            ui.separator();
            for (only, label) in [
                (None, "All"),
                (Some(Mark::Have), "What I have"),
                (Some(Mark::Want), "What I want"),
            ] {
                if ui.selectable_value(&mut self.only, only, label).changed() {
                    self.stale = true;
                    self.to_top = true;
                }
            }
            ui.separator();
            ui.label(self.state());
        });
        if let Some(refused) = &self.refused {
            ui.colored_label(Palette::of(ui.visuals()).stop, refused);
        }
    }

    /// Takes what stands in the search line; nothing there asks nothing, and what cannot be read
    /// leaves no answers to something else under it.
    fn ask(&mut self) {
        self.refused = None;
        self.asked = None;
        self.stale = true;
        self.to_top = true;
        let text = self.question.trim();
        if !text.is_empty() {
            match Stock::parse(text, self.units) {
                Ok(stock) => self.asked = Some(stock),
                Err(why) => self.refused = Some(why.to_string()),
            }
        }
        self.cards.iter_mut().for_each(Card::forget_answer);
    }

    /// How many pairs and tools there are, and how far the answers are.
    fn state(&self) -> String {
        let unread = self.files.iter().filter(|file| file.is_unread()).count();
        if unread > 0 {
            return format!(
                "{} of {} files read",
                self.files.len() - unread,
                self.files.len()
            );
        }
        let (tools, pairs): (Vec<usize>, Vec<usize>) = self
            .cards_shown()
            .into_iter()
            .partition(|at| self.cards[*at].is_tool());
        let counted = pairs.len();
        if self.asked.is_some() {
            let held = |at: &&usize| self.cards[**at].held.as_ref();
            let answered = pairs.iter().filter(|at| held(at).is_some()).count();
            if answered < counted {
                return format!("{answered} of {counted} pairs tried");
            }
            let well = |at: &&usize| held(at).is_some_and(|held| held.verdict() == Verdict::Well);
            let well = pairs.iter().filter(well).count();
            return format!("{well} of {counted} pairs hold it well");
        }
        let pairs = match counted {
            1 => "1 pair".to_owned(),
            _ => format!("{counted} pairs"),
        };
        match tools.len() {
            0 => pairs,
            1 => format!("{pairs}, 1 tool"),
            count => format!("{pairs}, {count} tools"),
        }
    }

    /// What could not be read, a line each; the rest is there all the same.
    fn troubles(&self, ui: &mut Ui) {
        let of_files = self.files.iter().filter_map(OnFile::trouble);
        let troubles: Vec<String> = self.marks_trouble.iter().cloned().chain(of_files).collect();
        if troubles.is_empty() {
            return;
        }
        let colour = Palette::of(ui.visuals()).stop;
        ScrollArea::vertical()
            .id_salt("shelf troubles")
            .max_height(84.0)
            .auto_shrink([false, true])
            .show(ui, |ui| {
                for trouble in &troubles {
                    ui.add(egui::Label::new(RichText::new(trouble).color(colour)).truncate())
                        .on_hover_text(trouble);
                }
            });
    }

    /// The places of the cards that are shown, in order.
    fn put_in_order(&mut self) {
        if !std::mem::take(&mut self.stale) {
            return;
        }
        let all = self.cards_shown();
        let (answered, open): (Vec<usize>, Vec<usize>) = all
            .into_iter()
            .partition(|at| self.cards[*at].held.is_some());
        let held: Vec<_> = answered
            .iter()
            .filter_map(|at| self.cards[*at].held.clone())
            .collect();
        let best = best_first(&held).into_iter().map(|place| answered[place]);
        self.order = best.chain(open).collect();
    }

    /// The places of the cards that are marked as is asked for; where it is asked what holds some
    /// stock no tool is an answer.
    fn cards_shown(&self) -> Vec<usize> {
        let shown = |at: &usize| {
            let is_answer = self.asked.is_none() || !self.cards[*at].is_tool();
            is_answer && (self.only.is_none() || self.mark(*at) == self.only)
        };
        (0..self.cards.len()).filter(shown).collect()
    }

    fn mark(&self, card: usize) -> Option<Mark> {
        let (file, size) = self.key(card)?;
        self.marks.of(file, size)
    }

    /// A card's file and size, as its mark is kept.
    fn key(&self, card: usize) -> Option<(&str, &str)> {
        let card = self.cards.get(card)?;
        Some((&self.files[card.file].name, &card.size))
    }

    fn cards(&mut self, ui: &mut Ui, fills: &mut FillTessellator) -> Vec<Wish> {
        self.put_in_order();
        if self.order.is_empty() && self.files.iter().all(|file| !file.is_unread()) {
            ui.label(self.nothing());
            return Vec::new();
        }
        // Beside the bar that scrolls.
        let width = ui.available_width() - ui.spacing().scroll.allocated_width();
        let (across, size) = card::layout(width, self.asked.as_ref());
        let rows = self.order.len().div_ceil(across);
        let mut deeds = Vec::new();
        let begun = Instant::now();
        let mut page = ScrollArea::vertical().auto_shrink([false, false]);
        if std::mem::take(&mut self.to_top) {
            page = page.vertical_scroll_offset(0.0);
        }
        page.show_rows(
            ui,
            size.y + GAP - ui.spacing().item_spacing.y,
            rows,
            |ui, seen| {
                let first = ui.max_rect().min;
                for (line, row) in seen.enumerate() {
                    for column in 0..across {
                        let Some(at) = self.order.get(row * across + column).copied() else {
                            break;
                        };
                        // What is in sight comes before its turn.
                        if self.cards[at].is_open(self.asked.as_ref())
                            && begun.elapsed() < PER_FRAME
                        {
                            self.work_out(at);
                        }
                        let corner = first + card::step(column, line, size);
                        let area = egui::Rect::from_min_size(corner, size);
                        deeds.extend(self.card(ui, area, at, fills).map(|deed| (at, deed)));
                    }
                }
                follow(ui);
            },
        );
        let wish = |(at, deed)| self.wish_of(at, deed);
        deeds.into_iter().map(wish).collect()
    }

    fn nothing(&self) -> &'static str {
        match (self.only, self.cards.is_empty()) {
            (_, true) => {
                "There is no design, tool or family in this folder that can be read. Save one into it, or \
                 choose another folder above."
            }
            (Some(Mark::Have), false) => {
                "Nothing here is marked as something you have: tick Have on a card"
            }
            (Some(Mark::Want), false) => {
                "Nothing here is marked as something you want: tick Want on a card"
            }
            (None, false) => "There is no pair here, and no tool holds stock",
        }
    }

    fn wish_of(&self, at: usize, deed: CardDeed) -> Wish {
        match deed {
            CardDeed::Open => {
                let card = &self.cards[at];
                Wish::OpenAt(self.files[card.file].path.clone(), card.at)
            }
            CardDeed::Mark(mark) => Wish::Mark(at, mark),
        }
    }

    /// Marks a pair and keeps it; a file of marks that cannot be read is not written over.
    ///
    /// # Errors
    /// One sentence when they cannot be kept.
    pub(crate) fn put_mark(&mut self, at: usize, mark: Option<Mark>) -> Result<(), String> {
        if let Some(trouble) = &self.marks_trouble {
            return Err(format!(
                "{trouble}. Mend or remove that file, then look again"
            ));
        }
        let Some((file, size)) = self
            .key(at)
            .map(|(file, size)| (file.to_owned(), size.to_owned()))
        else {
            return Ok(());
        };
        // Another window may have marked something since: that stays.
        let mut marks = folder::marks(&self.folder)?;
        marks.put(&file, &size, mark);
        folder::keep(&self.folder, &marks)?;
        self.marks = marks;
        self.stale = true;
        Ok(())
    }
}
