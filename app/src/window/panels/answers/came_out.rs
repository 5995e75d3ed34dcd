//! What came out: what the smith measured after forging, and what that means for the next design.

use egui::{CollapsingHeader, Grid, Label, TextEdit, Ui};
use reinwright_core::asked::Units;
use reinwright_core::shop::came_out::Measured;
use reinwright_core::units::Length;

use crate::window::panels::dialog;
use crate::window::panels::wish::Wish;
use crate::window::state::making::{CameOutForm, Told};

/// Shows the form, to be opened; gives back what was asked for.
pub(super) fn show(ui: &mut Ui, form: &mut CameOutForm, units: Units) -> Option<Wish> {
    let fold = CollapsingHeader::new("What came out").id_salt("came out");
    let shown = fold.show(ui, |ui| {
        let asked = typed(ui, form, units);
        dialog::trouble(ui, form.trouble.as_deref());
        form.told.and_then(|told| meant(ui, &told, units)).or(asked)
    });
    shown.body_returned.flatten()
}

/// The fields, and the button that takes them.
fn typed(ui: &mut Ui, form: &mut CameOutForm, units: Units) -> Option<Wish> {
    let rows = [
        (
            "Rein came out",
            "From the shoulder to its end",
            &mut form.rein,
        ),
        (
            "Cut off the rein",
            "What was left over at its end, as length of rein; 0 for nothing",
            &mut form.left,
        ),
        (
            "Seconds a heat",
            "How long the steel stayed workable in one heat, if you timed it",
            &mut form.heat,
        ),
    ];
    Grid::new("came out").num_columns(2).show(ui, |ui| {
        for (name, tip, text) in rows {
            let label = ui.label(name);
            let field = TextEdit::singleline(text)
                .desired_width(90.0)
                .char_limit(40);
            ui.add(field).labelled_by(label.id).on_hover_text(tip);
            ui.end_row();
        }
    });
    if !ui.button("Work it out").clicked() {
        return None;
    }
    match measured(form, units) {
        Ok(measured) => {
            form.trouble = None;
            Some(Wish::CameOut(measured))
        }
        Err(why) => {
            form.trouble = Some(why);
            None
        }
    }
}

fn measured(form: &CameOutForm, units: Units) -> Result<Measured, String> {
    let size = |name: &str, text: &str| {
        Length::parse(text, units.unit()).map_err(|error| format!("{name}: {error}"))
    };
    let heat = form.heat.trim();
    let heat_s = match heat.replace(',', ".").parse::<f64>() {
        _ if heat.is_empty() => None,
        Ok(seconds) => Some(seconds),
        Err(_) => return Err(format!("\"{heat}\" is no time: write seconds, such as 40")),
    };
    Ok(Measured {
        rein: size("Rein", &form.rein)?,
        left: size("Cut off", &form.left)?,
        heat_s,
    })
}

/// What it means; gives back what was asked for.
fn meant(ui: &mut Ui, told: &Told, units: Units) -> Option<Wish> {
    let (meant, own) = (&told.meant, &told.own);
    let way = if meant.longer_mm < 0.0 {
        "shorter"
    } else {
        "longer"
    };
    let long = units.show().text(meant.longer_mm.abs());
    let mut lines = vec![
        format!("The rein came out {long} {way} than it was drawn."),
        format!(
            "Gone: {:.1} % of the half, {:.1} % of it as scale.",
            meant.gone_percent, meant.scale_percent
        ),
    ];
    if meant.elsewhere_percent > 0.0 {
        lines.push(format!(
            "{:.1} % went elsewhere: sizes that came out fuller than drawn, or a longer cut.",
            meant.elsewhere_percent
        ));
    }
    let halves = if own.halves == 1 { "half" } else { "halves" };
    lines.push(format!(
        "For your next design, from {} {halves}: scale {:.1} %, margin {:.1} %.",
        own.halves, own.scale_percent, own.margin_percent
    ));
    lines.push(if told.kept {
        "It is kept in the shop's folder.".to_owned()
    } else {
        "It is kept nowhere: choose the shop's folder on the cut list or the shelf first."
            .to_owned()
    });
    for line in lines {
        ui.add(Label::new(line).wrap());
    }
    let hint = "Reckons the bar of this design with your own scale and margin; undo takes it back";
    let button = ui.button("Take them for this design").on_hover_text(hint);
    button.clicked().then_some(Wish::TakeOwn(*own))
}
