//! What a squeeze does to the pair.

use std::cell::Cell;

use egui::{DragValue, Grid, Label, Response, RichText, Sense, Ui, Vec2};
use reinwright_core::draw::STRESS_STEPS;
use reinwright_core::finding::{Part, Severity};
use reinwright_core::proof::strength::{CLIP_CLOSES_MM, Figure, JAW_CELSIUS, Squeeze, Strength};
use reinwright_core::tongs::document::Document;
use reinwright_core::units::{Quantity, Show, Temperature};

use super::{row, section};
use crate::jobs::words;
use crate::window::paint::ink::stress_colour_of;
use crate::window::paint::sign;
use crate::window::paint::theme::Palette;
use crate::window::state::look::Look;
use crate::window::state::reckon::Answers;
use crate::window::state::rows::capital;

/// Shows the loads, the band's legend, what each squeeze does, and everything with a limit.
pub(super) fn show(ui: &mut Ui, document: &Document, answers: &mut Answers, look: &mut Look) {
    ui.label(RichText::new("Figures guide; they do not certify a tool.").strong());
    let show = document.units.show();
    loads(ui, show, look);
    answers.bear(look.load);
    on_work(ui, answers, look, show);
    let strength = answers.strength(look);
    peak(ui, strength, show, look);
    legend(ui);
    squeezes(ui, strength, show, look);
    table(ui, strength, show, look);
    rivet(ui, strength, show, look);
    sources(ui, strength, show, look);
    section(ui, "Take care");
    ui.label(words::CAUTION);
}

/// Which squeeze is shown, and how hot the jaws are.
fn loads(ui: &mut Ui, show: Show, look: &mut Look) {
    let load = look.load;
    let forces = [load.ordinary_n, load.strong_n, load.full_n];
    ui.label(format!("Squeeze at the hand, {}", show.force_sign()));
    ui.horizontal(|ui| {
        for (index, (name, force)) in words::SQUEEZES.iter().zip(forces).enumerate() {
            let words = format!("{name} {}", show.force_number(force));
            ui.selectable_value(&mut look.squeeze, index, words)
                .on_hover_text("At the hand, on each rein");
        }
    });
    jaw_heat(ui, show, look);
}

/// How hot the jaws are, on the scale that it was typed on, else on the document's.
fn jaw_heat(ui: &mut Ui, show: Show, look: &mut Look) {
    let scale = look.jaw_scale(show);
    let mut degrees = scale.of_celsius(look.load.jaw_celsius);
    let [least, most] = [JAW_CELSIUS.0, JAW_CELSIUS.1].map(|end| scale.of_celsius(end));
    let typed = Cell::new(look.typed_scale);
    let field = DragValue::new(&mut degrees)
        .range(least..=most)
        .speed(5.0)
        .custom_formatter(|degrees, _| format!("{degrees:.0} {}", scale.sign()))
        .custom_parser(|text| {
            let heat = Temperature::parse(text, scale).ok()?;
            typed.set(Some(heat.scale()));
            Some(scale.of_celsius(heat.celsius()))
        })
        .update_while_editing(false);
    let changed = ui.horizontal(|ui| {
        let label = ui.label("Neck and jaws at");
        let field = ui.add(field).labelled_by(label.id).on_hover_text(
            "Hot steel bears less: EN 1993-1-2 Table 3.1. Findings go by it too; the file does not \
             keep it",
        );
        field.changed()
    });
    if changed.inner {
        let celsius = scale.to_celsius(degrees);
        look.load.jaw_celsius = celsius.clamp(JAW_CELSIUS.0, JAW_CELSIUS.1);
        look.typed_scale = typed.get();
    }
}

/// On which work the pair is squeezed, and where it presses.
fn on_work(ui: &mut Ui, answers: &mut Answers, look: &mut Look, show: Show) {
    let press = answers.strength(look).press;
    let words = match (look.tried_mm, press.size_mm) {
        (Some(tried), Some(size)) if tried == size => {
            format!("On {} work, as tried in Fit", show.text(size))
        }
        (Some(tried), _) => {
            format!("Not held on {} work: shown on its own", show.text(tried))
        }
        (None, Some(size)) => format!("On its own {} work", show.text(size)),
        (None, None) => "Its own work is not held: as if it were".to_owned(),
    };
    ui.label(words);
    // A size is not to be broken at the end of a line.
    let size = show.text(press.grip_mm);
    let whole = size.replace(' ', "\u{a0}");
    let pressed = ui.label(words::pressed(&press, show).replace(&size, &whole));
    if pressed.contains_pointer() {
        look.point_at(Part::Jaw);
    }
    if look.tried_mm.is_some() && ui.button("Back to its own work").clicked() {
        look.tried_mm = None;
    }
}

fn peak(ui: &mut Ui, strength: &Strength, show: Show, look: &mut Look) {
    let squeeze = strength.squeezes[look.squeeze];
    let worst = strength.worst_half().worst();
    let used = worst.use_per_n() * squeeze.hand_n;
    section(ui, "Peak bending stress");
    let stress = show.stress(worst.stress_mpa(squeeze.hand_n));
    let response = ui.label(RichText::new(stress).size(22.0).strong());
    let words = format!(
        "in the {}, {:.0} % of the {} that it bears",
        worst.part,
        100.0 * used,
        show.stress(worst.limit_mpa)
    );
    let all = response.union(ui.label(words));
    if used >= 1.0 {
        failing(ui, "It bends for good");
    }
    if squeeze.is_capped() {
        ui.weak(reins_meet(&squeeze, show));
    }
    if all.contains_pointer() {
        look.point_at(worst.part);
    }
}

fn failing(ui: &mut Ui, words: &str) {
    ui.horizontal(|ui| {
        sign::severity(ui, Severity::Mend);
        let colour = sign::colour(ui, Severity::Mend);
        ui.label(RichText::new(words).strong().color(colour));
    });
}

/// The steps of the band, with their numbers.
fn legend(ui: &mut Ui) {
    ui.weak("The band on the side view: up to so much of what the steel bears");
    let palette = Palette::of(ui.visuals());
    let names = STRESS_STEPS
        .iter()
        .map(|end| format!("{:.0} %", 100.0 * end))
        .chain(["over".to_owned()]);
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = 3.0;
        for (step, name) in (0u8..).zip(names) {
            let (area, _) = ui.allocate_exact_size(Vec2::new(12.0, 12.0), Sense::hover());
            ui.painter().rect_filled(area, 1.0, stress_colour_of(step));
            let edge = egui::Stroke::new(1.0, palette.edge);
            ui.painter()
                .rect_stroke(area, 1.0, edge, egui::StrokeKind::Inside);
            ui.label(RichText::new(name).size(11.0));
        }
    });
}

/// What each squeeze does, a column each.
fn squeezes(ui: &mut Ui, strength: &Strength, show: Show, look: &mut Look) {
    section(ui, "What a squeeze does");
    /// Between columns, and the room of the names, in points.
    const GAP: f32 = 8.0;
    const NAMES: f32 = 104.0;
    let wide = ((ui.available_width() - NAMES) / 3.0 - GAP).clamp(30.0, 90.0);
    Grid::new("squeezes")
        .num_columns(4)
        .spacing([GAP, 3.0])
        .show(ui, |ui| {
            ui.weak("");
            for name in words::SQUEEZES {
                cell(ui, wide, RichText::new(name).weak());
            }
            ui.end_row();
            for row in rows(strength, show) {
                let what = super::lit(&row.what, row.part, look);
                let mut all = ui.label(what).on_hover_text(row.hint);
                for value in row.values {
                    all = all.union(cell(ui, wide, RichText::new(value)));
                }
                ui.end_row();
                if all.contains_pointer() {
                    look.point_at(row.part);
                }
            }
        });
    let chosen_is_capped = strength.squeezes[look.squeeze].is_capped();
    if let Some(capped) = strength.squeezes.iter().find(|own| own.is_capped())
        && !chosen_is_capped
    {
        ui.add(Label::new(RichText::new(reins_meet(capped, show)).weak()).wrap());
    }
}

/// That the reins meet before the squeeze is as strong as it was asked.
fn reins_meet(capped: &Squeeze, show: Show) -> String {
    let at = show.force(capped.hand_n);
    format!("The reins meet at {at}: more is not felt")
}

/// A value under each of the squeezes, written so wide.
fn cell(ui: &mut Ui, wide: f32, words: RichText) -> Response {
    let size = Vec2::new(wide, ui.spacing().interact_size.y.min(18.0));
    let layout = egui::Layout::right_to_left(egui::Align::Center);
    ui.allocate_ui_with_layout(size, layout, |ui| ui.label(words))
        .inner
}

/// What one line tells of every squeeze.
struct UnderSqueezes {
    what: String,
    hint: &'static str,
    values: [String; 3],
    part: Part,
}

fn rows(strength: &Strength, show: Show) -> [UnderSqueezes; 7] {
    let row = |what: String, hint, value: &dyn Fn(&Squeeze) -> String, part| UnderSqueezes {
        what,
        hint,
        values: strength.squeezes.each_ref().map(value),
        part,
    };
    let newtons = |what: &str| format!("{what}, {}", show.force_sign());
    let force = |n: f64| show.force_number(n);
    let worst = strength.worst_half().worst().part;
    let wary = "Against pulling out, with friction of 0.15";
    let usual = "Against pulling out, with friction of 0.25";
    let peak = "Bending stress of the worst half";
    let together = "Both reins together at the hand";
    [
        row(
            newtons("At the hand"),
            "On each rein",
            &|s| force(s.hand_n),
            Part::Rein,
        ),
        row(
            newtons("On the work"),
            "Between the jaws",
            &|s| force(s.jaw_n),
            Part::Work,
        ),
        row(
            newtons("At the rivet"),
            "Across its shank",
            &|s| force(s.rivet_n),
            Part::Rivet,
        ),
        row(
            newtons("Holds at least"),
            wary,
            &|s| force(s.hold_pessimistic_n),
            Part::Jaw,
        ),
        row(
            newtons("Holds usually"),
            usual,
            &|s| force(s.hold_ordinary_n),
            Part::Jaw,
        ),
        row(
            format!("Peak, {}", show.stress_sign()),
            peak,
            &|s| show.stress_number(s.peak_stress_mpa),
            worst,
        ),
        row(
            format!("Reins close, {}", show.sign()),
            together,
            &|s| decimal(s.closes_mm, show),
            Part::Rein,
        ),
    ]
}

/// Everything with a limit: bending under the squeeze that is chosen, the rest under the one its
/// limit is given for.
fn table(ui: &mut Ui, strength: &Strength, show: Show, look: &mut Look) {
    section(ui, "Figures and limits");
    let chosen = strength.squeezes[look.squeeze].hand_n;
    for figure in &strength.figures {
        let figure = under(figure, chosen);
        let part = figure.part;
        let area = ui.scope(|ui| one(ui, &figure, show, look)).response;
        if area.contains_pointer() {
            look.point_at(part);
        }
        area.on_hover_text(format!("Limit: {}", figure.source));
    }
}

/// A bending stress under another squeeze: it grows with the force.
fn under(figure: &Figure, squeeze_n: f64) -> Figure {
    if figure.quantity != Quantity::Stress || figure.squeeze_n <= 0.0 {
        return *figure;
    }
    Figure {
        value: figure.value * squeeze_n / figure.squeeze_n,
        squeeze_n,
        ..*figure
    }
}

fn one(ui: &mut Ui, figure: &Figure, show: Show, look: &Look) {
    ui.spacing_mut().item_spacing.y = 1.0;
    let name = if figure.squeeze_n > 0.0 {
        let squeeze = show.force(figure.squeeze_n);
        format!("{}, {squeeze}", capital(figure.what.name()))
    } else {
        capital(figure.what.name())
    };
    let name = super::lit(&name, figure.part, look);
    // The sign stands before the name: beside the margin it would push the page wider.
    ui.horizontal_wrapped(|ui| {
        if !figure.holds() {
            sign::severity(ui, Severity::Mend);
        }
        ui.label(name);
    });
    ui.columns(3, |columns| {
        let [value, limit] =
            [figure.value, figure.limit].map(|value| measured(figure, value, show));
        columns[0].label(value);
        columns[1].weak(format!("limit {limit}"));
        let margin = format!("margin {:.2}", figure.margin());
        if figure.holds() {
            columns[2].label(margin);
        } else {
            let colour = sign::colour(&columns[2], Severity::Mend);
            columns[2].label(RichText::new(margin).strong().color(colour));
        }
    });
    ui.add_space(3.0);
}

fn measured(figure: &Figure, value: f64, show: Show) -> String {
    match figure.quantity {
        Quantity::Length => format!("{} {}", decimal(value, show), show.sign()),
        Quantity::Area
        | Quantity::Angle
        | Quantity::Force
        | Quantity::Stress
        | Quantity::Mass
        | Quantity::Ratio => show.quantity(figure.quantity, value),
    }
}

fn rivet(ui: &mut Ui, strength: &Strength, show: Show, look: &mut Look) {
    section(ui, "Rivet shank to cut");
    let length = &strength.rivet_length;
    let rows = [
        ("For one head", length.one_head_mm),
        ("Plain rod, both heads", length.both_heads_mm),
        ("Usual rule, one head", length.practice_mm),
    ];
    Grid::new("rivet lengths")
        .num_columns(2)
        .spacing([10.0, 3.0])
        .show(ui, |ui| {
            for (what, mm) in rows {
                row(ui, (what, show.text(mm)), Part::Rivet, look);
            }
        });
}

fn sources(ui: &mut Ui, strength: &Strength, show: Show, look: &Look) {
    section(ui, "Reckoned with");
    let steel = &strength.steel;
    ui.label(format!(
        "Yield {}, tensile {}: {}",
        show.stress(steel.yield_mpa),
        show.stress(steel.tensile_mpa),
        steel.source
    ));
    ui.label(format!(
        "Neck and jaws keep {:.0} % of it at {}",
        100.0 * strength.hot.proportional_limit,
        look.jaw_scale(show).text(strength.load.jaw_celsius)
    ));
    ui.label(format!(
        "A clip that closes the reins by {} pulls with {}",
        show.text(CLIP_CLOSES_MM),
        show.force(strength.clip_force_n)
    ));
}

/// Inches to a hundredth, millimetres to a tenth.
fn decimal(mm: f64, show: Show) -> String {
    use reinwright_core::units::Unit;
    match show.unit {
        Unit::Inch | Unit::Foot => format!("{:.2}", mm / Unit::Inch.mm()),
        Unit::Millimetre | Unit::Centimetre => format!("{mm:.1}"),
    }
}
