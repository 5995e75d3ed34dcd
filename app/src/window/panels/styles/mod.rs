//! Choosing a jaw from what it must hold: every style drawn small on the work, those that suit
//! first, those that would be unsafe greyed, each with its reason.

mod card;

use egui::{Context, RichText, ScrollArea, TextEdit, Ui};
use lyon::tessellation::FillTessellator;
use reinwright_core::asked::{Bar, Work, parse_bar_in, parse_work_in};
use reinwright_core::draw;
use reinwright_core::finding::Part;
use reinwright_core::paper::Drawing;
use reinwright_core::shop::{self, Advice};
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::{Verdict, Way};
use reinwright_core::units::Unit;

use super::wish::StyleWish;
use crate::window::paint::theme::Palette;
use crate::window::state::rows::capital;
use card::Card;

/// What becomes of the style that is chosen.
#[derive(Debug, Clone, PartialEq)]
enum For {
    /// It goes into the open design, forged from its bar.
    Part(Part, Box<Bar>),
    /// It begins a new pair, forged from the bar in the field.
    NewPair,
}

/// A text field that is read as it is typed.
#[derive(Debug, Default)]
struct Field {
    text: String,
    trouble: Option<String>,
}

/// What the cards were made for.
#[derive(Debug, Clone, PartialEq)]
struct Asked {
    work: Work,
    way: Way,
    bar: Bar,
}

/// One style as it is shown.
#[derive(Debug)]
struct Shown {
    advice: Advice,
    drawing: Drawing,
    /// Its front part, mm.
    front: kurbo::Rect,
}

/// The chooser while it is open. Advice and drawings are made when the work, the way or the bar
/// is another one, never for a frame.
#[derive(Debug)]
pub(crate) struct StyleChooser {
    purpose: For,
    unit: Unit,
    work: Field,
    bar: Field,
    way: Way,
    asked: Option<Asked>,
    shown: Vec<Shown>,
    /// How often the cards were made.
    #[cfg(test)]
    made: u32,
}

impl StyleChooser {
    /// For a part of a design, starting from its work.
    pub(crate) fn of(document: &Document, part: Part) -> Self {
        let purpose = For::Part(part, Box::new(document.bar));
        Self::with(
            purpose,
            document.units.unit(),
            document.work.words(),
            String::new(),
        )
    }

    /// For a new pair.
    pub(crate) fn of_new(unit: Unit, work: String, bar: String) -> Self {
        Self::with(For::NewPair, unit, work, bar)
    }

    fn with(purpose: For, unit: Unit, work: String, bar: String) -> Self {
        let field = |text| Field {
            text,
            trouble: None,
        };
        Self {
            purpose,
            unit,
            work: field(work),
            bar: field(bar),
            way: Way::default(),
            asked: None,
            shown: Vec::new(),
            #[cfg(test)]
            made: 0,
        }
    }

    /// Shows it; gives back what was asked for.
    pub(crate) fn show(&mut self, ctx: &Context, fills: &mut FillTessellator) -> Option<StyleWish> {
        let (mut wish, mut open) = (None, true);
        let room = ctx.content_rect().size();
        egui::Window::new("Choose for the work")
            .open(&mut open)
            .default_size([(room.x - 80.0).min(900.0), room.y - 110.0])
            .default_pos([40.0, 44.0])
            .max_size(room - egui::vec2(30.0, 60.0))
            .collapsible(false)
            .show(ctx, |ui| {
                self.question(ui);
                self.follow();
                ui.separator();
                ScrollArea::vertical()
                    .auto_shrink([false, false])
                    .show(ui, |ui| wish = self.cards(ui, fills));
            });
        let escaped = ctx.input(|i| i.key_pressed(egui::Key::Escape));
        if !open || escaped {
            return Some(StyleWish::Close);
        }
        wish
    }

    /// What the smith must hold, and how.
    fn question(&mut self, ui: &mut Ui) {
        ui.horizontal_wrapped(|ui| {
            let hint = "Such as 5/8 hex, 3/8 in flat, 16 mm square, M16, 5/8 bolt by its shank, \
                1/2 in pipe, DN 25, #5 rebar, 1 x 1 x 1/8 angle";
            field(ui, ("I must hold", hint), &mut self.work);
            if self.purpose == For::NewPair {
                let hint = "Such as 3/4 in square, 20 mm round, 1/2 x 3/4 in flat";
                field(ui, ("with tongs forged from", hint), &mut self.bar);
            }
        });
        ui.horizontal_wrapped(|ui| {
            for way in Way::ALL {
                ui.selectable_value(&mut self.way, way, capital(way.name()))
                    .on_hover_text(way.about());
            }
        });
        for field in [&self.work, &self.bar] {
            super::dialog::trouble(ui, field.trouble.as_deref());
        }
    }

    /// Makes the cards anew when something else is asked.
    fn follow(&mut self) {
        let work = self.work.read(|text| parse_work_in(text, self.unit));
        let bar = match &self.purpose {
            For::Part(_, bar) => Some(**bar),
            For::NewPair => self.bar.read(|text| parse_bar_in(text, self.unit)),
        };
        let (Some(work), Some(bar)) = (work, bar) else {
            return;
        };
        let way = self.way;
        let asked = Asked { work, way, bar };
        if self.asked.as_ref() == Some(&asked) {
            return;
        }
        self.shown = shop::choose(&work, way, &bar)
            .into_iter()
            .map(Shown::of)
            .collect();
        self.asked = Some(asked);
        #[cfg(test)]
        {
            self.made += 1;
        }
    }

    /// The cards by verdict, the best first.
    fn cards(&self, ui: &mut Ui, fills: &mut FillTessellator) -> Option<StyleWish> {
        let mut taken = None;
        let same = |a: &Shown, b: &Shown| a.advice.verdict == b.advice.verdict;
        for group in self.shown.chunk_by(same) {
            heading(ui, group[0].advice.verdict);
            let columns = card::columns(ui.available_width());
            for row in group.chunks(columns) {
                ui.horizontal_top(|ui| {
                    for shown in row {
                        let card = Card { shown, columns };
                        if card.show(ui, fills) {
                            taken = Some(Box::new(shown.advice.pair.clone()));
                        }
                    }
                });
            }
        }
        let pair = taken?;
        Some(match &self.purpose {
            For::Part(part, _) => StyleWish::Take(pair, *part),
            For::NewPair => StyleWish::Begin(pair),
        })
    }
}

impl Field {
    /// Reads what stands in the field, or keeps why it cannot be read.
    fn read<T, E: ToString>(&mut self, read: impl Fn(&str) -> Result<T, E>) -> Option<T> {
        let found = read(&self.text);
        self.trouble = found.as_ref().err().map(ToString::to_string);
        found.ok()
    }
}

impl Shown {
    fn of(advice: Advice) -> Self {
        let pair = &advice.pair;
        let model = reinwright_core::tongs::resolve(pair);
        let drawing = draw::fit_picture(pair, &model, &pair.work, 0.0);
        let mut front = drawing.bounds();
        // The reins say nothing about the jaw.
        front.x0 = front.x0.max(-0.3 * front.x1);
        Self {
            advice,
            drawing,
            front,
        }
    }
}

fn field(ui: &mut Ui, (label, hint): (&str, &str), field: &mut Field) {
    let label = ui.label(label);
    let edit = TextEdit::singleline(&mut field.text).desired_width(190.0);
    ui.add(edit).labelled_by(label.id).on_hover_text(hint);
}

fn heading(ui: &mut Ui, verdict: Verdict) {
    let palette = Palette::of(ui.visuals());
    let (words, colour) = match verdict {
        Verdict::Suits => ("These suit", palette.ink),
        Verdict::WillDo => ("These will do", palette.ink),
        Verdict::NotFor => ("These are for other work", palette.faint),
        Verdict::Unsafe => ("These would be unsafe", palette.stop),
    };
    ui.add_space(4.0);
    ui.label(RichText::new(words).size(15.0).color(colour));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cards_are_made_when_something_else_is_asked_and_not_for_a_frame() {
        let mut chooser =
            StyleChooser::of_new(Unit::Inch, "5/8 hex".to_owned(), "3/4 in square".to_owned());
        for _ in 0..5 {
            chooser.follow();
        }
        assert_eq!(chooser.made, 1);
        chooser.way = Way::Across;
        chooser.follow();
        chooser.follow();
        assert_eq!(chooser.made, 2);
        "5/8 he".clone_into(&mut chooser.work.text);
        chooser.follow();
        assert_eq!(chooser.made, 2, "what cannot be read keeps the cards");
        assert!(chooser.work.trouble.is_some());
    }
}
