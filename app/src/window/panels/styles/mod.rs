//! Choosing another jaw for a design from what it must hold: every style and every own jaw drawn small on the work,
//! those that suit first, those that would be unsafe greyed, each with its reason.

mod card;
mod cards;
mod shown;

use egui::{Context, Key, ScrollArea, Ui};
use lyon::tessellation::FillTessellator;
use reinwright_core::asked::{Bar, parse_work_in};
use reinwright_core::finding::Part;
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::Way;
use reinwright_core::tongs::jaw::sketch::KeptJaw;
use reinwright_core::units::Unit;

use super::question::{OF_CARDS, Room, ask, foot, over_foot};
use super::typing::Field;
use super::wish::StyleWish;
use crate::window::state::rows::capital;
pub(super) use cards::{Cards, Taken};
pub(super) use shown::{Asked, Of};

/// The chooser while it is open. What is taken goes into the open design, forged from its bar.
#[derive(Debug)]
pub(crate) struct StyleChooser {
    part: Part,
    bar: Bar,
    unit: Unit,
    /// The work of the design, in words.
    own: String,
    work: Field,
    way: Way,
    cards: Cards,
}

impl StyleChooser {
    /// For a part of a design, starting from its work.
    pub(crate) fn of(document: &Document, part: Part, jaws: Vec<KeptJaw>) -> Self {
        let own = document.work.words();
        Self {
            part,
            bar: document.bar,
            unit: document.units.unit(),
            work: Field::with(own.clone()),
            own,
            way: Way::default(),
            cards: Cards::leading(jaws),
        }
    }

    /// Shows it; gives back what was asked for.
    pub(crate) fn show(&mut self, ctx: &Context, fills: &mut FillTessellator) -> Option<StyleWish> {
        // As high as the window, so that as many cards as can be are seen at once.
        let room = egui::vec2(OF_CARDS.x, f32::INFINITY);
        let frame = ("choose for the work", Room::Page(room));
        ask(ctx, frame, StyleWish::Close, |ui| {
            ui.heading("Choose for the work");
            self.question(ui);
            self.follow(ui.ctx());
            ui.separator();
            let taken = over_foot(ui, |ui| {
                let cards = ScrollArea::vertical().auto_shrink([false, false]);
                cards.show(ui, |ui| self.taken(ui, fills)).inner
            });
            let left = foot(ui, None, &["Cancel"]).map(|_cancel| StyleWish::Close);
            taken.or(left)
        })
    }

    /// What the smith must hold, and how.
    fn question(&mut self, ui: &mut Ui) {
        ui.horizontal_wrapped(|ui| {
            let field = self.work.show(ui, ("I must hold", WORK_HINT));
            if field.lost_focus() && ui.input(|i| i.key_pressed(Key::Enter)) {
                self.cards.lead_in();
            }
        });
        ways(ui, &mut self.way);
        self.work.say(ui);
    }

    /// Makes the cards anew when something else is asked.
    fn follow(&mut self, ctx: &Context) {
        // How the work lies in the design says nothing about another jaw.
        let own = self.work.text == self.own;
        let said = if own {
            String::new()
        } else {
            self.work.text.clone()
        };
        let (way, bar) = (self.way, self.bar);
        let read = self.work.read(|text| parse_work_in(text, self.unit));
        let now = read.map(|work| Asked {
            work,
            said,
            way,
            bar,
        });
        if let Some(asked) = now.or_else(|| self.cards.asked().cloned()) {
            self.cards.follow(ctx, asked);
        }
    }

    fn taken(&mut self, ui: &mut Ui, fills: &mut FillTessellator) -> Option<StyleWish> {
        let taken = self.cards.show(ui, fills)?;
        Some(StyleWish::Take(Box::new(taken.advice.pair), self.part))
    }
}

/// What work may be called.
pub(super) const WORK_HINT: &str = "Such as 5/8 hex, 3/8 in flat, 16 mm square, M16, 5/8 bolt by its shank, \
     1/2 in pipe, DN 25, #5 rebar, 1 x 1 x 1/8 angle";

/// The ways in which work may lie in tongs.
pub(super) fn ways(ui: &mut Ui, chosen: &mut Way) {
    ui.horizontal_wrapped(|ui| {
        for way in Way::ALL {
            ui.selectable_value(chosen, way, capital(way.name()))
                .on_hover_text(way.about());
        }
    });
}

#[cfg(test)]
mod tests {
    use reinwright_core::asked::{parse_bar, parse_work};
    use reinwright_core::tongs::jaw::JawKind;

    use super::*;

    #[test]
    fn cards_are_made_when_something_else_is_asked_and_not_for_a_frame() {
        let bar = parse_bar("3/4 in square").expect("a bar");
        let work = parse_work("5/8 in hex").expect("work");
        let pair = Document::starting(JawKind::Flat, work, bar);
        let ctx = Context::default();
        let mut chooser = StyleChooser::of(&pair, Part::Jaw, Vec::new());
        for _ in 0..5 {
            chooser.follow(&ctx);
        }
        assert_eq!(chooser.cards.begun, 1);
        chooser.way = Way::Across;
        chooser.follow(&ctx);
        chooser.follow(&ctx);
        assert_eq!(chooser.cards.begun, 2);
        "5/8 he".clone_into(&mut chooser.work.text);
        chooser.follow(&ctx);
        assert_eq!(
            chooser.cards.begun, 2,
            "what cannot be read keeps the cards"
        );
        assert!(chooser.work.trouble().is_some());
    }
}
