//! The operation that is shown: what to do, where, what comes out, how to check it.

use egui::{Grid, Label, RichText, ScrollArea, Ui};
use reinwright_core::asked::Units;
use reinwright_core::making::{Change, Changes, Measure, Operation, Step};
use reinwright_core::tool::forging::Forging;
use reinwright_core::units::{MM_PER_INCH, Show};

use crate::window::paint::theme::Palette;
use crate::window::state::bar::{Account, Forged, OfBar};
use crate::window::state::look::Look;
use crate::window::state::making::Planned;
use crate::window::state::reckon::Answers;
use crate::window::state::rows::capital;
use crate::window::state::tool::ToolAnswers;

/// Shows what is done at the stage that is looked at.
pub(crate) fn show(ui: &mut Ui, planned: &Planned, (answers, look): (&Answers, &mut Look)) {
    let pair = |ui: &mut Ui| pair(ui, planned, answers);
    stage(ui, planned, (answers.account(), look), pair);
}

/// The same of a tool, of which the last stage is all.
pub(crate) fn show_tool(
    ui: &mut Ui,
    planned: &Planned,
    (answers, look): (&ToolAnswers, &mut Look),
) {
    stage(ui, planned, (answers.account(), look), |_| {});
}

/// What is done at the stage that is looked at, or what comes `after` all stages.
fn stage(
    ui: &mut Ui,
    planned: &Planned,
    (account, look): (Account<'_>, &mut Look),
    after: impl FnOnce(&mut Ui),
) {
    let at = look.making.at;
    // A page to be read, not to be clicked: lines as close as in a book.
    ui.spacing_mut().interact_size.y = 14.0;
    ScrollArea::vertical()
        .id_salt(("operation", at))
        .auto_shrink([false, false])
        .show(ui, |ui| match planned.stage(at) {
            None => after(ui),
            Some(stage) => match &stage.operation {
                None => bar(ui, account),
                Some(operation) => {
                    head(ui, planned, operation, look);
                    details(ui, operation, account);
                }
            },
        });
}

fn title(ui: &mut Ui, words: &str) {
    ui.label(RichText::new(words).size(15.0).strong());
}

fn bar(ui: &mut Ui, account: Account<'_>) {
    title(ui, "The bar");
    wrapped(
        ui,
        &format!(
            "{}, {} long, marked as the drawing and the list of marks have it.",
            capital(&account.bar.stock.words()),
            account.balance.cut_length(account.units)
        ),
    );
}

/// The last stage: both halves together.
fn pair(ui: &mut Ui, planned: &Planned, answers: &Answers) {
    let show = answers.units().show();
    let known = &answers.known;
    title(ui, "The pair");
    let halves = if planned.plan.repeats > 1 {
        "Make the second half the same, not mirrored, beside the first. "
    } else {
        ""
    };
    let rivet = &known.strength.rivet_length;
    wrapped(
        ui,
        &format!(
            "{halves}Rivet them with {} {} long, two heads and all, work the joint hot until it goes \
             freely, then heat the neck and close the jaws on the work.",
            show.text(known.model.rivet),
            show.text(rivet.both_heads_mm),
        ),
    );
    Grid::new("pair")
        .num_columns(2)
        .spacing([10.0, 3.0])
        .show(ui, |ui| {
            row(
                ui,
                "Check",
                &format!(
                    "{} between the reins at the hand, set on {}",
                    show.text(known.model.hand_gap),
                    answers.document().work.words()
                ),
            );
        });
}

fn head(ui: &mut Ui, planned: &Planned, operation: &Operation, look: &mut Look) {
    let (at, step) = (look.making.at, operation.step);
    ui.horizontal_wrapped(|ui| {
        title(ui, &format!("{at}  {}", capital(step.name())));
        if planned.of == Forged::Tool {
            return;
        }
        let allows = |change| planned.plan.allows(change).is_ok();
        let changes = &mut look.making.asked.changes;
        if allows(Change::Across(step)) {
            across(ui, changes, step);
        }
        let out = Change::LeaveOut(step);
        let hint = "The half comes out without it";
        if allows(out)
            && ui
                .small_button("Leave it out")
                .on_hover_text(hint)
                .clicked()
        {
            changes.add(out);
        }
        order(ui, planned, step, look);
    });
    wrapped(ui, &operation.what);
}

/// The operation changes places with the one before or behind it, where the steel allows, and stays
/// the one that is shown.
fn order(ui: &mut Ui, planned: &Planned, step: Step, look: &mut Look) {
    let at = look.making.at;
    let step_at = |at: usize| Some(planned.stage(at)?.operation.as_ref()?.step);
    let before = at.checked_sub(1).and_then(step_at);
    let earlier = before.map(|own| (Change::MoveBefore(step, own), at - 1));
    let later = step_at(at + 1).map(|own| (Change::MoveBefore(own, step), at + 1));
    for (label, hint, change) in [
        (
            "Earlier",
            "Before the operation over it in the list",
            earlier,
        ),
        ("Later", "Behind the operation under it in the list", later),
    ] {
        let change = change.filter(|(change, _)| planned.plan.allows(*change).is_ok());
        let Some((change, place)) = change else {
            continue;
        };
        if ui.small_button(label).on_hover_text(hint).clicked() {
            look.making.asked.changes.add(change);
            look.making.go(place);
        }
    }
}

/// A set-down goes to the side across, or back to the usual one.
fn across(ui: &mut Ui, changes: &mut Changes, step: Step) {
    let is_across = changes.across.contains(&step);
    let (label, hint) = if is_across {
        ("On the usual side", "Sets it down where it usually is")
    } else {
        (
            "On the other side",
            "Sets it down on the side across from the usual one",
        )
    };
    if !ui.small_button(label).on_hover_text(hint).clicked() {
        return;
    }
    if is_across {
        changes.across.retain(|own| *own != step);
    } else {
        changes.add(Change::Across(step));
    }
}

fn details(ui: &mut Ui, own: &Operation, account: Account<'_>) {
    let units = account.units;
    let show = units.show();
    Grid::new("operation")
        .num_columns(2)
        .spacing([10.0, 3.0])
        .show(ui, |ui| {
            row(ui, "Where", &own.place_words());
            if let Some(words) = sections(own, show) {
                row(ui, "Section", &words);
            }
            row(ui, "Length", &lengths(own, account));
            match own.hot_words(show) {
                None => row(ui, "Heat", "cold"),
                Some(words) => row(ui, "Hot", &words),
            }
            row(ui, "Check", &own.check);
            if let Some(words) = lost(own, units) {
                row(ui, "Goes", &words);
            }
            let mend = Palette::of(ui.visuals()).mend;
            for caution in &own.cautions {
                ui.label(RichText::new("Take care").color(mend));
                ui.add(Label::new(*caution).wrap());
                ui.end_row();
            }
        });
}

/// `20 × 20, then 12.5 × 11.5 mm`, in the middle of what is worked.
fn sections(own: &Operation, show: Show) -> Option<String> {
    let (before, after) = (own.before.section?, own.after.section?);
    let (from, to) = (before.words(show), after.words(show));
    let unit = show.sign();
    Some(if from == to {
        format!("{to} {unit}, as before")
    } else {
        format!("{from}, then {to} {unit}")
    })
}

/// What is worked, and how much longer it becomes.
fn lengths(own: &Operation, account: Account<'_>) -> String {
    if matches!(own.step, Step::CutBar | Step::Tool(Forging::CutBar)) {
        return account.balance.cut_text(account.units);
    }
    let show = account.units.show();
    let said = own.lengths(show);
    let rough = |measure: &Measure| show.roughly(measure.part_length_mm);
    let before = rough(&own.before);
    if before == rough(&own.after) || before <= 0.0 {
        said
    } else {
        format!("{said}, {:.2} times as long", own.elongation())
    }
}

fn lost(own: &Operation, units: Units) -> Option<String> {
    let one = |lost: &reinwright_core::making::Lost| {
        let volume = match units {
            Units::Inch => format!("{:.3} in\u{b3}", lost.volume_mm3 / MM_PER_INCH.powi(3)),
            Units::Millimetre => format!("{:.2} cm\u{b3}", lost.volume_mm3 / 1000.0),
        };
        format!("{} {volume}", lost.what.name())
    };
    let all: Vec<String> = own.lost.iter().map(one).collect();
    (!all.is_empty()).then(|| all.join(", "))
}

fn wrapped(ui: &mut Ui, words: &str) {
    ui.add(Label::new(words).wrap());
}

fn row(ui: &mut Ui, what: &str, words: &str) {
    ui.weak(what);
    ui.add(Label::new(capital(words)).wrap());
    ui.end_row();
}
