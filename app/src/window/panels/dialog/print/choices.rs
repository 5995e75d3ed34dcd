//! What of a pair is printed, how, and on what.

use egui::{ComboBox, Grid, RichText, TextEdit, Ui};
use reinwright_core::draw::Views;
use reinwright_core::paper::Paper;
use reinwright_core::shop::family::{self, Family, InSizes};
use reinwright_core::steel::{HEAT_COLOURS, Heat};

use super::super::trouble;
use crate::jobs::order::{OfTheSet, Order};
use crate::jobs::what::{Kind, Look, Reins, Size};
use crate::window::state::bar::Forged;
use crate::window::state::rows::capital;

/// What is typed, and why it cannot be read.
#[derive(Debug, Default)]
pub(super) struct Typed {
    heat: String,
    heat_trouble: Option<String>,
    paper: String,
    paper_trouble: Option<String>,
}

impl Typed {
    /// As it reads for an order.
    pub(super) fn of(order: &Order) -> Self {
        let (Size::Hot(heat) | Size::Both(heat)) = order.what.size else {
            return Self {
                heat: "orange".to_owned(),
                ..Self::papered(order.paper)
            };
        };
        Self {
            heat: heat.typed(),
            ..Self::papered(order.paper)
        }
    }

    fn papered(paper: Paper) -> Self {
        let named = Paper::NAMED.contains(&paper);
        Self {
            paper: if named {
                String::new()
            } else {
                paper.to_string()
            },
            ..Self::default()
        }
    }

    /// What cannot be read first of all.
    pub(super) fn trouble(&self) -> Option<&str> {
        let heat = self.heat_trouble.as_deref();
        heat.or(self.paper_trouble.as_deref())
    }
}

/// All that is chosen for one design, for a tool and for a family alike.
pub(super) fn show(ui: &mut Ui, of: Forged, order: &mut Order, typed: &mut Typed) {
    head(ui, "What to print");
    match of {
        Forged::Pair => {
            kinds(ui, &Kind::ALL, name, &mut order.what.kinds);
            head(ui, "Views and reins");
            radios(ui, &mut order.what.views, &VIEWS);
            radios(ui, &mut order.what.reins, &REINS);
        }
        Forged::Tool => {
            kinds(ui, &OF_TOOL, tool_name, &mut order.what.kinds);
            head(ui, "Views");
            radios(ui, &mut order.what.views, &VIEWS);
        }
    }
    head(ui, "Beside the outline");
    radios(ui, &mut order.what.look, &LOOKS);
    head(ui, "Size");
    size(ui, &mut order.what.size, typed);
    head(ui, "Paper");
    paper(ui, &mut order.paper, typed);
}

const VIEWS: [(Views, &str); 3] = [
    (Views::All, "All views"),
    (Views::Side, "Side view"),
    (Views::Top, "Top view"),
];
const REINS: [(Reins, &str); 3] = [
    (Reins::Whole, "Whole reins"),
    (Reins::Broken, "Broken reins"),
    (Reins::LeftOut, "No reins"),
];
const LOOKS: [(Look, &str); 3] = [
    (Look::WithSizes, "With sizes"),
    (Look::NoSizes, "Without sizes"),
    (Look::OutlineOnly, "Outline only"),
];

/// What a kind of drawing is called here.
fn name(kind: Kind) -> &'static str {
    match kind {
        Kind::Half => "The finished half",
        Kind::Head => "Head alone",
        Kind::Rein => "Rein alone",
        Kind::Pair => "Pair on its work",
        Kind::Open => "Pair wide open",
        Kind::Sections => "Sections, end view",
        Kind::Calipers => "Caliper table",
        Kind::Stages => "Each stage",
        Kind::Bar => "Marks along the bar",
    }
}

/// What of a tool is printed: its views stand where the half of a pair stands.
const OF_TOOL: [Kind; 3] = [Kind::Half, Kind::Stages, Kind::Bar];

/// What a kind of drawing of a tool is called here.
fn tool_name(kind: Kind) -> &'static str {
    match kind {
        Kind::Half
        | Kind::Head
        | Kind::Rein
        | Kind::Pair
        | Kind::Open
        | Kind::Sections
        | Kind::Calipers => "The tool in its views",
        Kind::Stages => "Each stage",
        Kind::Bar => "Marks along the bar",
    }
}

/// What was chosen of a pair, as far as a tool has it.
pub(super) fn of_tool(mut order: Order) -> Order {
    let stages = order.what.has(Kind::Stages);
    order.what.kinds = OF_TOOL.into();
    order
        .what
        .kinds
        .retain(|kind| *kind != Kind::Stages || stages);
    order
}

fn head(ui: &mut Ui, words: &str) {
    ui.add_space(4.0);
    ui.label(RichText::new(words).strong());
}

fn kinds(ui: &mut Ui, all: &[Kind], name: fn(Kind) -> &'static str, chosen: &mut Vec<Kind>) {
    let grid = Grid::new("kinds").num_columns(2).spacing([12.0, 2.0]);
    grid.show(ui, |ui| {
        for pair in all.chunks(2) {
            for kind in pair {
                let mut is_chosen = chosen.contains(kind);
                if ui.checkbox(&mut is_chosen, name(*kind)).changed() {
                    choose(chosen, *kind, is_chosen);
                }
            }
            ui.end_row();
        }
    });
}

/// Keeps what is chosen in the order in which it is printed.
fn choose(chosen: &mut Vec<Kind>, kind: Kind, is_chosen: bool) {
    let stays = |own: &Kind| {
        if *own == kind {
            is_chosen
        } else {
            chosen.contains(own)
        }
    };
    *chosen = Kind::ALL.into_iter().filter(stays).collect();
}

fn radios<T: PartialEq + Copy>(ui: &mut Ui, chosen: &mut T, all: &[(T, &str)]) {
    ui.horizontal_wrapped(|ui| {
        for (value, label) in all {
            ui.radio_value(chosen, *value, *label);
        }
    });
}

/// How a size is chosen: by name, its heat beside it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Sized {
    Cold,
    Hot,
    Both,
}

fn size(ui: &mut Ui, size: &mut Size, typed: &mut Typed) {
    let mut sized = match size {
        Size::Cold => Sized::Cold,
        Size::Hot(_) => Sized::Hot,
        Size::Both(_) => Sized::Both,
    };
    let before = sized;
    radios(
        ui,
        &mut sized,
        &[
            (Sized::Cold, "Cold size"),
            (Sized::Hot, "Hot size"),
            (Sized::Both, "Hot, thin line cold"),
        ],
    );
    if sized == Sized::Cold {
        typed.heat_trouble = None;
        *size = Size::Cold;
        return;
    }
    let edited = heat(ui, &mut typed.heat);
    if edited || sized != before {
        match Heat::parse(&typed.heat) {
            Ok(heat) => {
                typed.heat_trouble = None;
                *size = match sized {
                    Sized::Cold => Size::Cold,
                    Sized::Hot => Size::Hot(heat),
                    Sized::Both => Size::Both(heat),
                };
            }
            Err(why) => typed.heat_trouble = Some(capital(&why.to_string())),
        }
    }
    trouble(ui, typed.heat_trouble.as_deref());
}

/// The heat as it is typed, or picked by its colour; true when it is another one.
fn heat(ui: &mut Ui, typed: &mut String) -> bool {
    ui.horizontal(|ui| {
        let label = ui.label("Heat");
        let edit = TextEdit::singleline(typed).desired_width(96.0);
        let edited = ui.add(edit).labelled_by(label.id);
        let edited = edited.on_hover_text("A temperature such as 900 C or 1650 F, or a colour");
        let list = ComboBox::from_id_salt("heat colour").selected_text("Colour");
        let mut picked = false;
        let list = list.show_ui(ui, |ui| {
            for (colour, celsius) in HEAT_COLOURS {
                let label = format!("{}, {celsius:.0} °C", capital(colour));
                if ui.selectable_label(typed == colour, label).clicked() {
                    colour.clone_into(typed);
                    picked = true;
                }
            }
        });
        let hint = "As it is seen in the shade of the shop: common practice, no source";
        list.response
            .on_hover_text(hint)
            .accessible_name("Heat by its colour");
        edited.changed() || picked
    })
    .inner
}

fn paper(ui: &mut Ui, chosen: &mut Paper, typed: &mut Typed) {
    let before = *chosen;
    ui.horizontal_wrapped(|ui| {
        for paper in Paper::NAMED {
            ui.radio_value(chosen, paper, capital(&paper.to_string()));
        }
    });
    if *chosen != before {
        typed.paper.clear();
        typed.paper_trouble = None;
    }
    ui.horizontal(|ui| {
        let label = ui.label("Other or roll");
        let edit = TextEdit::singleline(&mut typed.paper)
            .desired_width(150.0)
            .hint_text("600 x 2000 mm");
        let edited = ui.add(edit).labelled_by(label.id);
        let hint = "A size such as 300 x 500 mm or 24 x 60 in, or a2, a1, a0, ansi c, d or e";
        if edited.on_hover_text(hint).changed() {
            read_paper(chosen, typed);
        }
    });
    trouble(ui, typed.paper_trouble.as_deref());
}

fn read_paper(chosen: &mut Paper, typed: &mut Typed) {
    if typed.paper.trim().is_empty() {
        typed.paper_trouble = None;
        return;
    }
    match Paper::parse(&typed.paper) {
        Ok(paper) => {
            typed.paper_trouble = None;
            *chosen = paper;
        }
        Err(why) => typed.paper_trouble = Some(capital(&why.to_string())),
    }
}

/// What only a family has: how many pairs, which sizes, the sheets of the whole.
pub(super) fn of_family<D: InSizes>(ui: &mut Ui, family: &Family<D>, order: &mut Order) {
    head(ui, "Of the family");
    pairs(ui, D::NAME, &mut order.pairs_of_each);
    let mut together = order.of_the_set == OfTheSet::Printed;
    let hint =
        "Contents, table, what does not change, what the set holds and takes, all sizes together";
    let label = "The sheets of the whole set";
    if ui
        .checkbox(&mut together, label)
        .on_hover_text(hint)
        .changed()
    {
        order.of_the_set = match together {
            true => OfTheSet::Printed,
            false => OfTheSet::LeftOut,
        };
    }
    let names: Vec<String> = family.sizes.iter().map(family::Size::label).collect();
    ui.horizontal(|ui| {
        ui.label("Templates of");
        if ui.small_button("All sizes").clicked() {
            order.sizes = None;
        }
        if ui.small_button("None").clicked() {
            order.sizes = Some(Vec::new());
        }
    });
    for (place, name) in names.iter().enumerate() {
        let mut is_chosen = order.has_size(place);
        if ui.checkbox(&mut is_chosen, name).changed() {
            let chosen =
                |of: &usize| (*of == place && is_chosen) || (*of != place && order.has_size(*of));
            let all: Vec<usize> = (0..names.len()).filter(chosen).collect();
            order.sizes = (all.len() < names.len()).then_some(all);
        }
    }
}

/// How many pairs or tools of each size are to be forged.
pub(super) fn pairs(ui: &mut Ui, name: &str, pairs: &mut u32) {
    ui.horizontal(|ui| {
        let label = ui.label(format!("{}s of each size", capital(name)));
        let value = egui::DragValue::new(pairs).range(1..=1000).speed(0.1);
        ui.add(value).labelled_by(label.id).on_hover_text(
            "How many of each are to be forged; the bar for the set is reckoned for them",
        );
    });
}
