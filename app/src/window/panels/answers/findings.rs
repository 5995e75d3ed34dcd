//! What was noticed, the worst first.

use egui::accesskit::Role;
use egui::{Button, Frame, RichText, Sense, Ui, WidgetInfo};
use reinwright_core::asked::Units;
use reinwright_core::finding::{Finding, Severity};
use reinwright_core::proof::strength::JAW_CELSIUS;
use reinwright_core::shop::mend::{Mend, Ways};

use crate::window::paint::sign;
use crate::window::paint::theme::Palette;
use crate::window::panels::wish::Wish;
use crate::window::state::bar::Forged;
use crate::window::state::history::Hand;
use crate::window::state::look::Look;
use crate::window::state::reckon::Answers;
use crate::window::state::rows::capital;
use crate::window::state::tool::ToolAnswers;

/// Lists the findings with the ways to mend each; gives back the mend that was taken.
pub(super) fn with_mends(
    ui: &mut Ui,
    answers: &mut Answers,
    (look, hand): (&mut Look, Hand),
) -> Option<Wish> {
    let asks = answers.known.worst() >= Some(Severity::Mend);
    let (ctx, units) = (ui.ctx().clone(), answers.units());
    let ways = asks.then(|| answers.mends(&ctx, hand).map(<[_]>::to_vec));
    heat_of_jaws(ui, units, look);
    let of = (&*answers.known.findings, Forged::Pair);
    under_each(ui, of, (ways, units), look)
}

/// Lists the findings of a tool in the same way.
pub(super) fn of_tool(
    ui: &mut Ui,
    answers: &mut ToolAnswers,
    (look, hand): (&mut Look, Hand),
) -> Option<Wish> {
    let asks = answers.known.worst() >= Some(Severity::Mend);
    let (ctx, units) = (ui.ctx().clone(), answers.units());
    let ways = asks.then(|| answers.mends(&ctx, hand).map(<[_]>::to_vec));
    let of = (&*answers.known.findings, Forged::Tool);
    under_each(ui, of, (ways, units), look)
}

/// The ways to mend each finding, as far as they are found; none at all where nothing asks for one.
type Found = Option<Option<Vec<Option<Ways>>>>;

/// Lists findings with the ways to mend each under it.
fn under_each(
    ui: &mut Ui,
    of: (&[Finding], Forged),
    (ways, units): (Found, Units),
    look: &mut Look,
) -> Option<Wish> {
    list(ui, of, look, |ui, index, look| {
        let ways = ways.as_ref()?;
        let Some(ways) = ways else {
            ui.weak("Looking for ways to mend…");
            return None;
        };
        let ways = ways.get(index)?.as_ref()?;
        mends(ui, (ways, units), look).map(Wish::Mend)
    })
}

/// Lists the findings; choosing one shows its place.
pub(super) fn show(ui: &mut Ui, answers: &Answers, look: &mut Look) {
    heat_of_jaws(ui, answers.units(), look);
    let of = (&*answers.known.findings, Forged::Pair);
    list(ui, of, look, |_, _, _| None);
}

/// Lists the findings of a tool in the same way.
pub(super) fn show_tool(ui: &mut Ui, answers: &ToolAnswers, look: &mut Look) {
    let of = (&*answers.known.findings, Forged::Tool);
    list(ui, of, look, |_, _, _| None);
}

/// Says at which heat of neck and jaws the pair was judged, where that is none of the usual.
fn heat_of_jaws(ui: &mut Ui, units: Units, look: &Look) {
    if look.load.jaw_celsius > JAW_CELSIUS.0 {
        let hot = look.jaw_scale(units.show()).text(look.load.jaw_celsius);
        ui.weak(format!("With neck and jaws at {hot}, as set in Strength."));
    }
}

/// Lists the findings, each with what `under` puts under it; gives back what was asked for there.
fn list(
    ui: &mut Ui,
    (findings, of): (&[Finding], Forged),
    look: &mut Look,
    under: impl Fn(&mut Ui, usize, &mut Look) -> Option<Wish>,
) -> Option<Wish> {
    if findings.is_empty() {
        ui.label(format!(
            "Nothing was noticed: the {} can be made as drawn, as far as this program checks.",
            of.whole()
        ));
        return None;
    }
    let mut asked = None;
    for (index, finding) in findings.iter().enumerate() {
        ui.push_id(index, |ui| {
            one(ui, finding, look);
            if finding.severity >= Severity::Mend {
                asked = under(ui, index, look).or(asked.take());
            }
        });
    }
    asked
}

/// The ways to mend one finding, as buttons; gives back the one that was pressed.
fn mends(ui: &mut Ui, (ways, units): (&Ways, Units), look: &mut Look) -> Option<Mend> {
    let mut pressed = None;
    ui.indent("mends", |ui| {
        if let Some(said) = ways.said() {
            ui.weak(said);
        }
        for mend in ways.mends() {
            let words = format!("{}:\n{}", mend.what(), mend.costs(units));
            let button = ui.add(Button::new(words).wrap());
            if button.hovered() || button.has_focus() {
                look.weighed = Some(mend.clone());
            }
            if button.clicked() {
                pressed = Some(mend.clone());
            }
        }
    });
    pressed
}

pub(super) fn one(ui: &mut Ui, finding: &Finding, look: &mut Look) {
    let palette = Palette::of(ui.visuals());
    let lit = look.lit() == Some(finding.part);
    let fill = if lit { palette.wash } else { palette.sheet };
    let card = Frame::new().fill(fill).corner_radius(4).inner_margin(7);
    let area = card.show(ui, |ui| words(ui, finding)).response.rect;
    let response = ui.interact(area, ui.scope_id().with("finding"), Sense::click());
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, finding.to_string()));
    if response.hovered() {
        look.point_at(finding.part);
    }
    if response.has_focus() || response.hovered() {
        let stroke = egui::Stroke::new(1.5, palette.accent);
        ui.painter()
            .rect_stroke(area, 4.0, stroke, egui::StrokeKind::Inside);
    }
    if response.clicked() {
        look.choose(finding.part);
    }
}

fn words(ui: &mut Ui, finding: &Finding) {
    ui.set_min_width(ui.available_width());
    ui.spacing_mut().item_spacing.y = 2.0;
    ui.horizontal(|ui| {
        sign::severity(ui, finding.severity);
        let colour = sign::colour(ui, finding.severity);
        ui.label(
            RichText::new(finding.severity.name())
                .strong()
                .color(colour),
        );
        ui.label(RichText::new(capital(finding.part.name())).strong());
    });
    ui.label(capital(&finding.message));
    ui.label(capital(&finding.hint));
    ui.weak(format!("Source: {}", finding.source));
}
