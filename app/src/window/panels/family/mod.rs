//! The family workbench: a table of all sizes, a picture of them, and what is to be said of each.

mod cell;
mod chart;
mod deeds;
mod pictures;
mod session;
mod set;
mod side;
mod table;

use egui::{
    Align, CentralPanel, Label, Layout, Panel, Rect, RichText, TextEdit, Ui, UiBuilder, vec2,
};
use lyon::tessellation::FillTessellator;
use reinwright_core::document::{Units, Work, parse_work};
use reinwright_core::family::{Family, Rounding, Size};
use reinwright_core::units::Length;

use super::history::{Hand, History};
use super::look::{Look, Page};
use super::paper::Paper;
use super::reckon::Answers;
use super::theme::Palette;
use super::workbench::{Said, Wish};
pub(super) use session::FamilySession;
use set::Set;
use side::SidePage;
use table::{Filter, TableDeed, TableView};

/// What the table leaves to the pictures over it at least, in points: in a lower sheet the sizes
/// would crowd out the pair.
const PICTURES: f32 = 280.0;
/// Height of the line that tells what was refused, in points.
const TROUBLE: f32 = 22.0;

/// What the sheet shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Picture {
    /// The chosen size.
    One,
    /// All sizes, one over the other.
    Over,
    /// All sizes, to the same scale.
    Side,
    /// What the set holds and takes.
    Holds,
}

/// Everything in the window while a family is open.
#[derive(Debug)]
pub(super) struct FamilyBench {
    pub(super) session: FamilySession,
    history: History<Family>,
    set: Set,
    /// The chosen size, by its place.
    chosen: usize,
    picture: Picture,
    page: SidePage,
    /// The answers to the chosen size, for paper and findings.
    one: Answers,
    one_of: (u64, usize),
    look: Look,
    paper: Paper,
    over: Paper,
    table: TableView,
    new_size: String,
    /// Width of the names in the charts, in points.
    names: f32,
    /// What could not be done last.
    told: Option<String>,
    /// Whether a text outside the table is being typed.
    typing: bool,
}

/// What the window lends the family workbench.
pub(super) struct Lent<'a> {
    pub(super) queue: &'a mut Vec<Wish>,
    pub(super) said: &'a mut Option<Said>,
    pub(super) fills: &'a mut FillTessellator,
    /// Screen points per millimetre.
    pub(super) screen: f32,
}

impl FamilyBench {
    pub(super) fn on(session: FamilySession) -> Self {
        let set = Set::to(&session.family);
        let one = Answers::to(&session.family.base);
        let mut bench = Self {
            history: History::new(&session.family),
            chosen: 0,
            picture: Picture::One,
            page: SidePage::Findings,
            one,
            one_of: (u64::MAX, 0),
            look: Look::on(Page::Findings),
            paper: Paper::default(),
            over: Paper::default(),
            table: TableView::new(),
            new_size: String::new(),
            names: 0.0,
            told: None,
            typing: false,
            set,
            session,
        };
        bench.follow();
        bench
    }

    /// Reckons anew what changed.
    fn follow(&mut self) {
        self.set.follow(&self.session.family);
        self.chosen = self.chosen.min(self.set.answers.len().saturating_sub(1));
        let now = (self.set.revision, self.chosen);
        if self.one_of != now
            && let Some(answer) = self.set.answers.get(self.chosen)
        {
            self.one.follow(&answer.document);
            self.one.findings.clone_from(&answer.findings);
            self.one_of = now;
        }
    }

    /// Shows everything under the menu.
    pub(super) fn show(&mut self, ui: &mut Ui, lent: &mut Lent<'_>) {
        self.follow();
        let room = ui.available_height();
        Panel::bottom("family table")
            .default_size(0.44 * room)
            .size_range(150.0..=(room - PICTURES).max(160.0))
            .resizable(true)
            .show(ui, |ui| self.lower(ui, lent));
        // What was edited in the table shows in the drawing in the same frame.
        self.follow();
        Panel::right("family side")
            .default_size(290.0)
            .size_range(260.0..=460.0)
            .show(ui, |ui| self.side(ui));
        CentralPanel::default().show(ui, |ui| self.pictures(ui, lent));
    }

    fn lower(&mut self, ui: &mut Ui, lent: &mut Lent<'_>) {
        self.tools(ui, lent);
        // Under the table: over it, the cells would move away under the pointer.
        let mut room = ui.available_rect_before_wrap();
        if let Some(trouble) = self.table.trouble(&self.set) {
            room.max.y -= TROUBLE;
            let line = Rect::from_min_max(room.left_bottom(), room.max + vec2(0.0, TROUBLE));
            let text = RichText::new(trouble).color(Palette::of(ui.visuals()).stop);
            let line = UiBuilder::new().max_rect(line);
            let line = line.layout(Layout::left_to_right(Align::Center));
            ui.scope_builder(line, |ui| ui.add(Label::new(text).truncate()));
        }
        let table = UiBuilder::new().max_rect(room);
        let deeds = ui.scope_builder(table, |ui| self.table.show(ui, &self.set, self.chosen));
        for deed in deeds.inner {
            self.do_in_table(deed, lent);
        }
    }

    fn do_in_table(&mut self, deed: TableDeed, lent: &mut Lent<'_>) {
        let family = &mut self.session.family;
        let outcome = match deed {
            TableDeed::Put(place, text) => {
                self.table.put(family, place, &text);
                Ok(())
            }
            TableDeed::LetGo(place) => self.table.let_go(family, &place),
            TableDeed::Rule(path, rule) => family.set_rule(&path, rule),
            TableDeed::Choose(at) => {
                self.chosen = at;
                Ok(())
            }
        };
        self.tell(outcome.map_err(|error| error.to_string()), lent);
    }

    /// Says what could not be done; what was said before of that kind is gone with the next thing
    /// that can.
    fn tell(&mut self, outcome: Result<(), String>, lent: &mut Lent<'_>) {
        let said = match &*lent.said {
            Some(Said::Trouble(text)) => Some(text),
            Some(Said::Done(_)) | None => None,
        };
        if said.is_some() && said == self.told.as_ref() {
            *lent.said = None;
        }
        self.told = outcome.err();
        if let Some(why) = &self.told {
            *lent.said = Some(Said::Trouble(why.clone()));
        }
    }

    /// Name, sizes and what is shown, over the table.
    fn tools(&mut self, ui: &mut Ui, lent: &mut Lent<'_>) {
        let typed = ui.horizontal_wrapped(|ui| {
            let name = TextEdit::singleline(&mut self.session.family.name)
                .desired_width(190.0)
                .char_limit(200)
                .hint_text("What the family is called");
            let name = ui.add(name).accessible_name("Family name");
            self.rounding(ui);
            self.filter(ui);
            ui.separator();
            let new = self.add_typed(ui, lent);
            if ui
                .button("Add between")
                .on_hover_text(self.between_hint())
                .clicked()
            {
                self.add_between(lent);
            }
            if ui
                .button("Remove")
                .on_hover_text(format!("Takes {} out of the family", self.label()))
                .clicked()
            {
                self.remove(lent);
            }
            let hint = format!(
                "Opens {} as a design that no longer follows the family",
                self.label()
            );
            if ui
                .button("Take out as a design")
                .on_hover_text(hint)
                .clicked()
            {
                self.take_out(lent);
            }
            name.has_focus() || new
        });
        self.typing = typed.inner;
    }

    fn rounding(&mut self, ui: &mut Ui) {
        let rounding = &mut self.session.family.rounding;
        let mut rounded = *rounding == Rounding::Measured;
        let hint = "Scaled lengths are rounded to what a smith measures; without it every shape is exactly alike";
        if ui
            .checkbox(&mut rounded, "Rounded")
            .on_hover_text(hint)
            .changed()
        {
            *rounding = if rounded {
                Rounding::Measured
            } else {
                Rounding::Exact
            };
        }
    }

    fn filter(&mut self, ui: &mut Ui) {
        let mut differing = self.table.filter == Filter::Differing;
        let hint = "Hides the values that are the same in all sizes";
        if ui
            .checkbox(&mut differing, "Only what differs")
            .on_hover_text(hint)
            .changed()
        {
            self.table.filter = if differing {
                Filter::Differing
            } else {
                Filter::All
            };
        }
    }

    /// A size by its work; true while it is being typed.
    fn add_typed(&mut self, ui: &mut Ui, lent: &mut Lent<'_>) -> bool {
        let field = TextEdit::singleline(&mut self.new_size)
            .desired_width(88.0)
            .char_limit(80)
            .hint_text(match self.session.family.base.units {
                Units::Inch => "7/16 in",
                Units::Millimetre => "11 mm",
            });
        let field = ui.add(field).accessible_name("Work of a new size");
        let field = field.on_hover_text("A size such as 7/16 in, or work such as 7/16 in round");
        let entered = field.lost_focus() && ui.input(|i| i.key_pressed(egui::Key::Enter));
        if ui.button("Add size").clicked() || entered {
            match self.work(&self.new_size) {
                Ok(work) => {
                    self.new_size.clear();
                    self.add(work, lent);
                }
                Err(why) => self.tell(Err(format!("New size: {why}")), lent),
            }
        }
        field.has_focus()
    }

    /// Work from a text; a size alone is work of the chosen size's shape.
    fn work(&self, text: &str) -> Result<Work, String> {
        let family = &self.session.family;
        let shape = family
            .sizes
            .get(self.chosen)
            .map_or(family.base.work, |size| size.work);
        match Length::parse(text, family.base.units.unit()) {
            Ok(size) => Ok(shape.with_size(size)),
            Err(error) => match parse_work(text) {
                Ok(work) => Ok(work),
                Err(_) if !text.contains(char::is_alphabetic) => Err(error.to_string()),
                Err(error) => Err(error.to_string()),
            },
        }
    }

    fn add(&mut self, work: Work, lent: &mut Lent<'_>) {
        let mut trial = self.session.family.clone();
        let added = trial
            .add(Size::new(work))
            .map_err(|error| error.to_string());
        // What a file may not carry is not begun either.
        let checked = reinwright_core::family::write(&trial);
        let checked = reinwright_core::family::read(checked.as_bytes());
        let outcome = added.and_then(|at| checked.map(|_family| at).map_err(|e| e.to_string()));
        if outcome.is_ok() {
            self.session.family = trial;
        }
        self.chose(outcome, lent);
    }

    /// The two sizes between which one is added: the chosen one and the next, or the one before.
    fn pair_of_neighbours(&self) -> (usize, usize) {
        let last = self.session.family.sizes.len().saturating_sub(1);
        if self.chosen < last {
            (self.chosen, self.chosen + 1)
        } else {
            (last.saturating_sub(1), last)
        }
    }

    fn between_hint(&self) -> String {
        let (a, b) = self.pair_of_neighbours();
        let label = |at: usize| self.set.table.labels.get(at).cloned().unwrap_or_default();
        format!("A size midway between {} and {}", label(a), label(b))
    }

    fn add_between(&mut self, lent: &mut Lent<'_>) {
        let (a, b) = self.pair_of_neighbours();
        let outcome = self.session.family.add_between(a, b);
        self.chose(outcome.map_err(|error| error.to_string()), lent);
    }

    fn chose(&mut self, outcome: Result<usize, String>, lent: &mut Lent<'_>) {
        let done = outcome.map(|at| {
            self.table.forget();
            self.chosen = at;
            self.table.reveal = Some(at);
            self.follow();
        });
        self.tell(done, lent);
    }

    fn remove(&mut self, lent: &mut Lent<'_>) {
        let outcome = self.session.family.remove(self.chosen);
        let outcome = outcome.map(|_size| self.chosen.saturating_sub(1));
        self.chose(outcome.map_err(|error| error.to_string()), lent);
    }

    fn take_out(&self, lent: &mut Lent<'_>) {
        if let Some(design) = self.session.family.take_out(self.chosen) {
            lent.queue.push(Wish::Begin(Box::new(design)));
        }
    }

    fn label(&self) -> &str {
        self.set
            .table
            .labels
            .get(self.chosen)
            .map_or("", String::as_str)
    }

    /// Undo, once all is drawn; true when another frame is needed.
    pub(super) fn after(&mut self, time: f64, busy: bool) -> bool {
        let hand = if busy || self.typing || self.table.is_typing() {
            Hand::Moving
        } else {
            Hand::AtRest
        };
        self.history.feed(time, &self.session.family, hand);
        self.look.turn() || !self.set.answer(&self.session.family)
    }
}
