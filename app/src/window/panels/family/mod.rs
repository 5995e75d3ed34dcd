//! The family workbench: a table of all sizes, a picture of them, and what is to be said of each.

mod ahead;
mod cell;
mod chart;
mod grid;
mod pictures;
mod seen;
mod set;
mod side;
mod stock;
mod table;
mod tools;

use std::path::Path;
use std::time::Duration;

use egui::{Align, CentralPanel, Label, Layout, Panel, Rect, RichText, Ui, UiBuilder, vec2};
use lyon::tessellation::FillTessellator;
use reinwright_core::shop::family::{Family, OfSize};
use reinwright_core::tongs::document::Document;

use super::progress;
use super::wish::Wish;
use crate::disk::memory::Stock;
use crate::jobs::preview::Printable;
use crate::jobs::printing;
use crate::jobs::set_printing::Wanted;
use crate::window::paint::theme::Palette;
use crate::window::sheet::paper::Paper;
use crate::window::state::history::Hand;
use crate::window::state::job::SetWork;
use crate::window::state::look::{Look, Page, Sight};
use crate::window::state::news::Said;
use crate::window::state::session::{Opened, Session};
pub(crate) use seen::Seen;
use set::Set;
use side::SidePage;
use stock::StockEditor;
use table::{TableDeed, TableView};

/// What the table leaves to the pictures over it at least, in points: in a lower sheet the sizes
/// would crowd out the pair.
const PICTURES: f32 = 280.0;
/// The part of the height that the table has at first: with more, the sizes in the drawing over it
/// could not be read in the smallest window.
const TABLE: f32 = 0.37;
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
pub(crate) struct FamilyBench<D: Seen = Document> {
    pub(crate) session: Session<Family<D>>,
    set: Set<D>,
    /// The chosen size, by its place.
    chosen: usize,
    picture: Picture,
    page: SidePage,
    /// The answers to the chosen size, for paper and findings.
    one: D::One,
    one_of: (u64, usize),
    look: Look,
    paper: Paper,
    over: Paper,
    table: TableView,
    new_size: String,
    stock: StockEditor,
    /// Width of the names in the charts, in points.
    names: f32,
    /// What could not be done last.
    told: Option<String>,
    /// Whether a text outside the table is being typed.
    typing: bool,
}

/// What goes through the hands of all its panels in a frame.
pub(crate) struct Lent<'a> {
    /// What was asked of the bench so far.
    asked: Vec<Wish>,
    fills: &'a mut FillTessellator,
    /// Screen points per millimetre.
    screen: f32,
}

impl<D: Seen> FamilyBench<D> {
    pub(crate) fn on(session: Session<Family<D>>) -> Self {
        let set = Set::to(&session.now);
        let one = session.now.base.one();
        let mut bench = Self {
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
            stock: StockEditor::default(),
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
        self.set.follow(&self.session.now);
        self.chosen = self.chosen.min(self.set.answers.len().saturating_sub(1));
        let now = (self.set.revision, self.chosen);
        if self.one_of != now
            && let Some(answer) = self.set.answers.get(self.chosen)
        {
            D::choose_one(&mut self.one, answer);
            self.one_of = now;
        }
    }

    /// Shows everything under the menu, on a screen of so many points per millimetre.
    pub(crate) fn show(
        &mut self,
        ui: &mut Ui,
        screen: f32,
        fills: &mut FillTessellator,
    ) -> Vec<Wish> {
        let lent = &mut Lent {
            asked: Vec::new(),
            fills,
            screen,
        };
        self.follow();
        if self.wait(ui) {
            return Vec::new();
        }
        let room = ui.available_height();
        Panel::bottom("family table")
            .default_size(TABLE * room)
            .size_range(150.0..=(room - PICTURES).max(160.0))
            .resizable(true)
            .show(ui, |ui| self.lower(ui, lent));
        // What was edited in the table shows in the drawing in the same frame.
        self.follow();
        if self.is_reckoning() {
            return std::mem::take(&mut lent.asked);
        }
        Panel::right("family side")
            .default_size(290.0)
            .size_range(260.0..=460.0)
            .show(ui, |ui| self.side(ui, lent));
        CentralPanel::default().show(ui, |ui| self.pictures(ui, lent));
        std::mem::take(&mut lent.asked)
    }

    /// Says how far the answers to many sizes are; false when there are all.
    fn wait(&self, ui: &mut Ui) -> bool {
        /// How often it is looked how far they are.
        const PATIENCE: Duration = Duration::from_millis(40);
        let Some(progress) = self.set.progress() else {
            return false;
        };
        ui.ctx().request_repaint_after(PATIENCE);
        CentralPanel::default().show(ui, |ui| {
            ui.label("Reckoning the sizes");
            ui.add(progress::bar(progress));
        });
        true
    }

    /// Whether the answers to what the family has become are still on their way.
    pub(crate) fn is_reckoning(&self) -> bool {
        self.set.progress().is_some()
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
        let deeds = ui.scope_builder(table, |ui| {
            grid::show(&mut self.table, ui, (&self.set, self.chosen))
        });
        for deed in deeds.inner {
            self.do_in_table(deed, lent);
        }
    }

    fn do_in_table(&mut self, deed: TableDeed, lent: &mut Lent<'_>) {
        let family = &mut self.session.now;
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
        lent.asked.extend(self.told.take().map(Wish::Unsay));
        self.told = outcome.err();
        let trouble = self.told.clone().map(Said::Trouble);
        lent.asked.extend(trouble.map(Wish::Say));
    }

    fn label(&self) -> &str {
        self.set
            .table
            .labels
            .get(self.chosen)
            .map_or("", String::as_str)
    }

    /// Takes note of the state, once all is drawn; true when another frame is needed.
    pub(crate) fn after(&mut self, time: f64, busy: bool) -> bool {
        let hand = if busy || self.typing || self.table.is_typing() {
            Hand::Moving
        } else {
            Hand::AtRest
        };
        self.session.feed(time, hand);
        self.look.turn() || !self.set.answer(&self.session.now)
    }
}

/// What the bench does to it.
impl<D: Seen> FamilyBench<D> {
    /// Counts gaps in this stock from now on.
    pub(crate) fn take_stock(&mut self, stock: &Stock) {
        self.set.count_in(&stock.sizes);
        self.stock.take(stock);
    }

    /// Takes the last change back.
    pub(crate) fn undo(&mut self) {
        if self.session.undo() {
            self.changed_from_outside();
        }
    }

    /// Does it again.
    pub(crate) fn redo(&mut self) {
        if self.session.redo() {
            self.changed_from_outside();
        }
    }

    fn changed_from_outside(&mut self) {
        self.table.forget();
        self.follow();
    }

    /// Puts what is being typed in its place, as if Enter had been pressed.
    pub(crate) fn commit(&mut self) {
        self.table.commit(&mut self.session.now);
    }

    /// Chooses a size and brings it into sight.
    pub(crate) fn choose(&mut self, at: usize) {
        self.chosen = at;
        self.table.reveal = Some(at);
        self.follow();
    }

    /// Shows so much of the sheet that is looked at.
    pub(crate) fn see(&mut self, sight: Sight) {
        match self.picture {
            Picture::Over => self.over.see(sight),
            Picture::One | Picture::Side | Picture::Holds => self.paper.see(sight),
        }
    }

    /// Shows the chosen size at so many points per millimetre.
    pub(crate) fn set_scale(&mut self, scale: f32) {
        self.paper.set_scale(scale);
    }

    /// The family as it can be printed, with the answers to its sizes.
    pub(crate) fn printable(&self) -> Printable {
        D::printable(self.session.now.clone(), self.set.answers.clone())
    }

    /// Whether all that is written is there.
    ///
    /// # Errors
    /// One sentence when the sizes are not reckoned yet.
    pub(crate) fn may_be_written(&self) -> Result<(), String> {
        match self.is_reckoning() {
            true => Err("the sizes are still being reckoned: wait a moment".to_owned()),
            false => Ok(()),
        }
    }

    /// What stands against making the set: how many sizes have a Stop, and the first.
    pub(crate) fn stop(&self) -> Option<String> {
        let stops = |of: &D::Answer| printing::stop(of.findings());
        let all = &self.set.answers;
        let (first, why) = all.iter().find_map(|of| Some((of.label(), stops(of)?)))?;
        let count = all.iter().filter_map(stops).count();
        Some(format!("{count} of {} sizes: {first}: {why}", all.len()))
    }

    /// What is written of the family, as it stands now: it may be changed while that goes on.
    pub(crate) fn to_write(&self, wanted: Wanted) -> SetWork<D> {
        SetWork {
            family: self.session.now.clone(),
            answers: self.set.answers.clone(),
            wanted,
            open: self.session.path().map(Path::to_owned),
        }
    }
}
