//! How much bar to cut, and where to mark it.

use egui::{Grid, RichText, Ui};
use reinwright_core::asked::{Bar, Choice, Stock, Units};
use reinwright_core::finding::Part;
use reinwright_core::forge::balance::{Balance, PieceBalance};
use reinwright_core::steel::{Steel, caution::at_the_forge};
use reinwright_core::units::MM_PER_INCH;

use super::{lit, right, section};
use crate::window::paint::theme::Palette;
use crate::window::state::bar::{Account, Forged};
use crate::window::state::look::Look;
use crate::window::state::rows::capital;

/// Shows the account of the bar.
pub(super) fn show(ui: &mut Ui, account: Account<'_>, look: &mut Look) {
    let Account {
        bar,
        units,
        balance,
        mass_kg,
        of,
    } = account;
    if let Some(trouble) = balance.trouble() {
        ui.colored_label(Palette::of(ui.visuals()).stop, capital(&trouble));
        return;
    }
    ui.label(format!("Bar to cut for the {}", of.whole()));
    let length = balance.bar_length_mm;
    let cut = balance.cut_length(units).to_string();
    ui.label(RichText::new(cut).size(24.0).strong())
        .on_hover_text("Up to the next mark of a rule; the kerf of the last cut lies beyond it");
    ui.label(format!("of {}, {}", stock(bar), bar.steel.name()));
    ui.weak(format!("{} with the last cut", exact(length, units)));
    ui.label(format!(
        "Finished {}: {}",
        of.whole(),
        units.show().mass(mass_kg)
    ));
    let pieces = &balance.pieces;
    let (a, b) = (&pieces[0], &pieces[pieces.len() - 1]);
    match of {
        Forged::Tool => piece(ui, ("The tool", of), a, units, look),
        Forged::Pair if a == b => piece(ui, ("One half", of), a, units, look),
        Forged::Pair => {
            piece(ui, ("Half A", of), a, units, look);
            piece(ui, ("Half B", of), b, units, look);
        }
    }
    marks(ui, balance, (units, of));
    caution(ui, bar.steel);
}

/// `3/4 in square`, `1/2 in x 3/4 in flat`.
fn stock(bar: &Bar) -> String {
    let stock = &bar.stock;
    let shape = stock.way();
    match stock {
        Stock::Round { diameter: size } | Stock::Square { side: size } => format!("{size} {shape}"),
        Stock::Flat { thickness, width } => format!("{thickness} x {width} {shape}"),
    }
}

fn piece(
    ui: &mut Ui,
    (title, of): (&str, Forged),
    piece: &PieceBalance,
    units: Units,
    look: &mut Look,
) {
    section(ui, title);
    Grid::new((title, "parts"))
        .num_columns(4)
        .spacing([7.0, 3.0])
        .show(ui, |ui| {
            ui.weak("Part");
            let (long, cubic) = (units.show().sign(), volume_sign(units));
            for (head, hint) in [
                (format!("Finished {long}"), "Length along the finished part"),
                (format!("Volume {cubic}"), "Of the finished part"),
                (
                    format!("Bar {long}"),
                    "Length of bar that holds this volume",
                ),
            ] {
                right(ui, |ui| ui.weak(head)).on_hover_text(hint);
            }
            ui.end_row();
            for part in &piece.parts {
                let show = units.show();
                let cells = [
                    show.number(part.finished_length_mm),
                    volume(part.volume_mm3, units),
                    show.number(part.bar_length_mm),
                ];
                row(ui, part.part, cells, look);
            }
        });
    Grid::new((title, "losses"))
        .num_columns(2)
        .spacing([10.0, 3.0])
        .show(ui, |ui| {
            for allowance in &piece.allowances {
                sum(
                    ui,
                    &capital(allowance.what.name()),
                    &loss(allowance.bar_length_mm, units),
                );
            }
            let total = units.show().text(piece.bar_length_mm);
            ui.strong(format!("Bar for this {}", of.piece()));
            right(ui, |ui| ui.strong(total));
            ui.end_row();
            let finished = format!("Finished {}", of.piece());
            sum(ui, &finished, &units.show().mass(piece.mass_kg));
        });
}

fn row(ui: &mut Ui, part: Part, cells: [String; 3], look: &mut Look) {
    let mut all = ui.label(lit(&capital(part.name()), part, look));
    for cell in cells {
        all = all.union(right(ui, |ui| ui.label(cell)));
    }
    ui.end_row();
    if all.contains_pointer() {
        look.point_at(part);
    }
}

fn sum(ui: &mut Ui, what: &str, value: &str) {
    ui.label(what);
    right(ui, |ui| ui.label(value));
    ui.end_row();
}

fn marks(ui: &mut Ui, balance: &Balance, (units, of): (Units, Forged)) {
    section(ui, "Marks, from both ends of the length");
    Grid::new("marks")
        .num_columns(3)
        .spacing([10.0, 3.0])
        .show(ui, |ui| {
            let show = units.show();
            for side in of.as_it_lies(of.ends()) {
                right(ui, |ui| ui.weak(format!("{side} {}", show.sign())));
            }
            ui.weak("What meets there");
            ui.end_row();
            for mark in &balance.marks {
                let from = of.ends()[0].to_lowercase();
                let hint = format!("exactly {} from the {from}", exact(mark.at_mm, units));
                let ends = [mark.measured(units), balance.from_end(mark, units)];
                for end in of.as_it_lies(ends) {
                    right(ui, |ui| ui.strong(show.number(end.mm()))).on_hover_text(&hint);
                }
                ui.add(egui::Label::new(capital(&mark.what)).wrap());
                ui.end_row();
            }
        });
}

fn caution(ui: &mut Ui, steel: Steel) {
    section(ui, "Take care");
    for words in at_the_forge(steel) {
        ui.label(words);
    }
}

/// A loss; one that is less than is shown is not nothing.
fn loss(mm: f64, units: Units) -> String {
    let (least, finest_mm) = match units {
        Units::Inch => ("1/64 in", MM_PER_INCH / 64.0),
        Units::Millimetre => ("0.1 mm", 0.1),
    };
    if mm > 0.0 && mm < finest_mm / 2.0 {
        format!("under {least}")
    } else {
        units.show().text(mm)
    }
}

/// Millimetres to 0.01, inches to 0.001.
fn exact(mm: f64, units: Units) -> String {
    match units {
        Units::Inch => format!("{:.3} in", mm / MM_PER_INCH),
        Units::Millimetre => format!("{mm:.2} mm"),
    }
}

fn volume(mm3: f64, units: Units) -> String {
    match units {
        Units::Inch => format!("{:.3}", mm3 / MM_PER_INCH.powi(3)),
        Units::Millimetre => format!("{:.2}", mm3 / 1000.0),
    }
}

fn volume_sign(units: Units) -> &'static str {
    match units {
        Units::Inch => "in³",
        Units::Millimetre => "cm³",
    }
}
