//! What work the pair holds, and how.

use egui::{Grid, RichText, Slider, Ui, Vec2};
use lyon::tessellation::FillTessellator;
use reinwright_core::asked::Range;
use reinwright_core::finding::Part;
use reinwright_core::proof::fit::{Fit, TravelEnd, WIDEST_SPAN_MM, WorkRange};
use reinwright_core::tongs::document::Document;
use reinwright_core::tongs::jaw::Verdict;
use reinwright_core::units::{Length, MM_PER_64TH, Show, Unit};

use super::chart::Chart;
use super::{row, section};
use crate::jobs::words;
use crate::window::paint::ink::Ink;
use crate::window::paint::theme::Palette;
use crate::window::paint::view::View;
use crate::window::state::look::Look;
use crate::window::state::reckon::{Answers, OnWork};
use crate::window::state::rows::capital;

/// Height of a small drawing, in points.
const PICTURE: f32 = 62.0;

/// Shows the range, the trial of other work, the drawings, the charts and the figures.
pub(super) fn show(
    ui: &mut Ui,
    document: &Document,
    answers: &mut Answers,
    (look, fills): (&mut Look, &mut FillTessellator),
) {
    let show = document.units.show();
    range(ui, &answers.known.fit, show);
    try_work(ui, document, answers, look);
    pictures(ui, answers.on_works(), (show, look), fills);
    charts(ui, document, answers, look);
    figures(ui, answers, show, look);
}

fn range(ui: &mut Ui, fit: &Fit, show: Show) {
    match &fit.range {
        Ok(range) => {
            ui.label(match fit.judged.verdict {
                Verdict::Unsafe => "The jaws reach work from",
                Verdict::Well | Verdict::WithAWord | Verdict::Badly | Verdict::Cannot => {
                    "Holds work from"
                }
            });
            let ends = [range.least, range.most].map(|end| show.text(end.size_mm));
            let ends = format!("{} to {}", ends[0], ends[1]);
            ui.label(RichText::new(ends).size(22.0).strong());
        }
        Err(why) => trouble(ui, &format!("Holds no work: {why}")),
    }
    held(ui, fit, show);
}

/// How its own work is held.
fn held(ui: &mut Ui, fit: &Fit, show: Show) {
    let words = capital(&fit.judged.sentence(show));
    match fit.judged.verdict {
        Verdict::Well | Verdict::WithAWord => {
            ui.label(words);
        }
        Verdict::Badly | Verdict::Unsafe | Verdict::Cannot => trouble(ui, &words),
    }
}

fn trouble(ui: &mut Ui, words: &str) {
    let colour = Palette::of(ui.visuals()).stop;
    ui.label(RichText::new(words).strong().color(colour));
}

/// A slider of the work's size; the sheet shows the pair on it until the smith goes back.
fn try_work(ui: &mut Ui, document: &Document, answers: &mut Answers, look: &mut Look) {
    section(ui, "Try other work");
    let show = document.units.show();
    let own = document.work.size().mm();
    let mut size = look.tried_mm.unwrap_or(own);
    let before = size;
    ui.horizontal(|ui| {
        let label = ui
            .label("Size")
            .on_hover_text("Of the same shape; the design keeps its own");
        ui.spacing_mut().slider_width = (ui.available_width() - 96.0).clamp(60.0, 240.0);
        let palette = Palette::of(ui.visuals());
        ui.visuals_mut().widgets.inactive.bg_fill = palette.edge;
        let slider = Slider::new(&mut size, reach(&answers.known.fit, own))
            .custom_formatter(move |mm, _| show.text(mm))
            .custom_parser(move |text| Some(Length::parse(text, show.unit).ok()?.mm()));
        ui.add(slider).labelled_by(label.id);
    });
    if size != before {
        look.tried_mm = Some(rounded(size, show));
    }
    let Some(tried) = look.tried_mm else {
        ui.weak("Drag to see the pair on thinner or thicker work, here or in the charts.");
        return;
    };
    match answers.try_on(tried) {
        Ok(on) => {
            let words = capital(&words::bears(on, show));
            let hand = format!(
                "Hand gap {}, {} over the reins",
                show.text(on.hand_gap_mm),
                show.text(on.hand_span_mm)
            );
            ui.label(words);
            ui.label(hand);
            if on.hand_span_mm > WIDEST_SPAN_MM {
                let widest = show.text(WIDEST_SPAN_MM);
                trouble(ui, &format!("Over {widest} a hand has little force"));
            }
        }
        Err(why) => trouble(ui, &capital(&why.to_string())),
    }
    outside(ui, &answers.known.fit, tried);
    let back = format!("Back to its own {}", show.text(own));
    if ui.button(back).clicked() {
        look.tried_mm = None;
    }
}

/// Says so when the work that is tried is outside of what the pair holds well.
fn outside(ui: &mut Ui, fit: &Fit, tried_mm: f64) {
    let Ok(range) = &fit.range else {
        return;
    };
    let end = if tried_mm < range.least.size_mm {
        range.least
    } else if tried_mm > range.most.size_mm {
        range.most
    } else {
        return;
    };
    trouble(ui, &format!("Outside of the range: {}", end.limit.name()));
}

/// Sizes that can be tried: past the range at both ends, mm.
fn reach(fit: &Fit, own: f64) -> std::ops::RangeInclusive<f64> {
    let (least, most) = fit.range.as_ref().map_or((0.5 * own, 2.0 * own), |range| {
        (range.least.size_mm.min(own), range.most.size_mm.max(own))
    });
    let limits = Range::STEEL;
    (0.4 * least).max(limits.least)..=(1.8 * most).min(limits.most)
}

/// To 1/64 in or 0.1 mm.
fn rounded(mm: f64, show: Show) -> f64 {
    let step = match show.unit {
        Unit::Inch | Unit::Foot => MM_PER_64TH,
        Unit::Millimetre | Unit::Centimetre => 0.1,
    };
    ((mm / step).round() * step).max(Range::STEEL.least)
}

/// The pair on the smallest, its own and the largest work.
fn pictures(
    ui: &mut Ui,
    works: &[OnWork],
    (show, look): (Show, &mut Look),
    fills: &mut FillTessellator,
) {
    section(ui, "On the work that it holds");
    let palette = Palette::of(ui.visuals());
    let all = works.iter().map(|on| on.bounds).reduce(|a, b| a.union(b));
    for on in works {
        let size = Vec2::new(ui.available_width(), PICTURE);
        let (area, response) = ui.allocate_exact_size(size, egui::Sense::hover());
        let words = told(on, show);
        response.widget_info(|| {
            egui::WidgetInfo::labeled(egui::accesskit::Role::Image, true, words.clone())
        });
        let painter = ui.painter_at(area);
        painter.rect_filled(area, 3.0, palette.sheet);
        let view = View::fit(all.unwrap_or(on.bounds), area, 4.0);
        Ink::new(painter, view, palette, look.lit(), fills).draw(&on.drawing.items);
        ui.label(words);
        ui.add_space(3.0);
    }
}

/// `Smallest, 1/4 in: bears at the heel; the tip stands 1/16 in open. Ended there: ...`.
fn told(on: &OnWork, show: Show) -> String {
    let mut text = format!("{}, {}", on.name, show.text(on.size_mm));
    if let Some(ended) = on.ended {
        text += &format!(": ends where {ended}");
    }
    format!("{text}; {}", words::bears(&on.contact, show))
}

fn charts(ui: &mut Ui, document: &Document, answers: &mut Answers, look: &mut Look) {
    let Some(range) = answers.known.fit.range.as_ref().ok().copied() else {
        return;
    };
    let own = document.work.size().mm();
    let across = past(&range, own, look.tried_mm.unwrap_or(own));
    let beyond = answers.beyond(across).clone();
    let fit = &answers.known.fit;
    if fit.chart.len() < 2 {
        return;
    }
    section(ui, "Over the sizes of work");
    let show = document.units.show();
    let chart = |title, of| Chart {
        title,
        rows: &fit.chart,
        beyond: &beyond,
        across,
        of,
        show,
        own_mm: own,
        tried_mm: look.tried_mm,
    };
    let dragged = [
        chart("Hand gap", |row| row.hand_gap_mm).show(ui),
        chart("Jaw faces out of parallel", |row| row.out_of_parallel_mm).show(ui),
    ];
    ui.weak("Above zero the tip stands open, below it the heel. Dashed: the design's own work.");
    ui.label(format!(
        "Hatched: not held. Under {} {}; over {} {}.",
        show.text(range.least.size_mm),
        range.least.limit.name(),
        show.text(range.most.size_mm),
        range.most.limit.name()
    ));
    if let Some(size) = dragged.into_iter().flatten().next() {
        look.tried_mm = Some(rounded(size, show));
    }
}

/// The sizes that the charts show: a little past the range at both ends, and what is tried, mm.
fn past(range: &WorkRange, own: f64, tried: f64) -> (f64, f64) {
    let (least, most) = (range.least.size_mm, range.most.size_mm);
    let more = (0.4 * (most - least)).max(0.15 * own);
    let limits = Range::STEEL;
    let from = (least - more).min(tried).max(limits.least).min(least);
    let to = (most + more).max(tried).min(limits.most).max(most);
    (from, to)
}

fn figures(ui: &mut Ui, answers: &Answers, show: Show, look: &mut Look) {
    section(ui, "Set on its own work");
    let fit = &answers.known.fit;
    let mut rows: Vec<(&str, String, Part)> = Vec::new();
    if let Ok(on) = &fit.nominal {
        rows.push((
            "Bears",
            words::bears(on, show).replace("bears ", ""),
            Part::Jaw,
        ));
        rows.push(("Hand span", show.text(on.hand_span_mm), Part::Rein));
    }
    let degrees = format!("{:.1}°", fit.opening.to_degrees());
    rows.extend([
        ("Jaw gap", show.text(answers.known.model.jaw_gap), Part::Jaw),
        (
            "Hand gap",
            show.text(answers.known.model.hand_gap),
            Part::Rein,
        ),
        ("Opens by", degrees, Part::Rivet),
        ("Span, wide open", show.text(fit.open_span_mm), Part::Rein),
        (
            "Leverage",
            format!("{:.1} to 1", fit.leverage()),
            Part::Rein,
        ),
        (
            "Reins off line by",
            show.text(fit.in_line.misses_rivet_mm.abs()),
            Part::Rivet,
        ),
        ("Mass of the pair", show.mass(fit.mass_kg), Part::Pair),
        (
            "Balances",
            words::balance_point(fit.balance_point_mm, show),
            balances(fit),
        ),
    ]);
    if let Some(travel) = &fit.travel {
        rows.push(stopped("Shut, stopped by", &travel.shut));
        rows.push(stopped("Open, stopped by", &travel.open));
    }
    Grid::new("fit figures")
        .num_columns(2)
        .spacing([10.0, 3.0])
        .show(ui, |ui| {
            for (what, value, part) in rows {
                row(ui, (what, value), part, look);
            }
        });
}

/// The part under the balance point.
fn balances(fit: &Fit) -> Part {
    if fit.balance_point_mm < 0.0 {
        Part::Rein
    } else {
        Part::Neck
    }
}

/// What stops the halves from turning on.
fn stopped<'a>(what: &'a str, end: &TravelEnd) -> (&'a str, String, Part) {
    let Some(clash) = end.clash else {
        return (what, "nothing".to_owned(), Part::Rivet);
    };
    let meet = format!("{} meet", Part::both(clash.parts));
    (what, meet, clash.parts[0])
}
