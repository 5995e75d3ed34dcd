//! Which source lets which operation through, and how many heats it takes there.

use egui::accesskit::Role;
use egui::{
    Align2, Button, Color32, FontId, Label, Pos2, Rect, RichText, Sense, Stroke, StrokeKind, Ui,
    Vec2, WidgetInfo,
};
use reinwright_core::heats::{How, Mouth, Offer, Riveted, Room, WhyNot, clear_mm, spoken};

use super::{choose, lit_row, point_at};
use crate::window::paint::theme::Palette;
use crate::window::state::heating::Heat;
use crate::window::state::look::Look;
use crate::window::state::rows::capital;

/// Room for the name of an operation, and for a source at the least and at the most, in points.
const OPERATION: (f32, f32) = (188.0, 250.0);
const SOURCE: (f32, f32) = (44.0, 118.0);
const ROW: f32 = 19.0;
/// The names of the sources, four lines of them.
const HEAD: f32 = 58.0;
const SMALL: f32 = 11.5;

/// Of the columns, in points.
#[derive(Debug, Clone, Copy)]
struct Widths {
    name: f32,
    source: f32,
}

/// Shows the table; what is pointed at or clicked lights up.
pub(super) fn show(ui: &mut Ui, heat: &Heat, look: &mut Look) {
    let sources = &heat.prepared.shop.sources;
    if sources.is_empty() {
        ui.label("There is no heat source yet: add one at the right.");
        return;
    }
    #[allow(clippy::cast_precision_loss, reason = "a few sources")]
    let count = sources.len() as f32;
    let room = ui.available_width();
    let name = (0.3 * room).clamp(OPERATION.0, OPERATION.1);
    let each = (room - name - 2.0 * count - 4.0) / count;
    let wide = Widths {
        name,
        source: each.clamp(SOURCE.0, SOURCE.1),
    };
    ui.spacing_mut().item_spacing = Vec2::new(2.0, 1.0);
    head(ui, heat, wide);
    for at in 0..heat.heats.operations.len() {
        ui.horizontal(|ui| row(ui, (heat, at, wide), look));
    }
    if let Some(riveted) = &heat.riveted {
        ui.horizontal(|ui| pair(ui, (heat, riveted), wide));
    }
    legend(ui, heat);
}

/// The riveted pair, whose necks are heated to set it on its work.
fn pair(ui: &mut Ui, (heat, riveted): (&Heat, &Riveted), wide: Widths) {
    let words = Label::new("     Set the riveted pair").truncate();
    let hint = "Both heads lie in the heat then: the plan above ends before it";
    let down = egui::Layout::left_to_right(egui::Align::Center);
    ui.allocate_ui_with_layout(Vec2::new(wide.name, ROW), down, |ui| {
        ui.set_min_width(wide.name);
        ui.add(words).on_hover_text(hint);
    });
    let told = riveted.words(&heat.prepared.shop, heat.show);
    for (offer, words) in riveted.offers.iter().zip(told) {
        let size = Vec2::new(wide.source, ROW);
        let (area, response) = ui.allocate_exact_size(size, Sense::hover());
        let told = format!("The riveted pair: {words}");
        response.widget_info(|| WidgetInfo::labeled(Role::Label, true, &told));
        response.on_hover_text(capital(&words));
        let palette = Palette::of(ui.visuals());
        ui.painter().rect_filled(area, 2.0, palette.sheet);
        match offer {
            Ok(_) => {
                let font = FontId::proportional(SMALL);
                let middle = area.center();
                ui.painter().text(
                    middle,
                    Align2::CENTER_CENTER,
                    "goes in",
                    font,
                    palette.faint,
                );
            }
            Err(_) => cross(ui, area.center(), palette.stop),
        }
    }
}

fn head(ui: &mut Ui, heat: &Heat, wide: Widths) {
    ui.horizontal(|ui| {
        ui.allocate_ui(Vec2::new(wide.name, HEAD), |ui| {
            ui.set_min_size(Vec2::new(wide.name, HEAD));
            ui.add(Label::new("What is heated in what").wrap());
        });
        for (at, source) in heat.prepared.shop.sources.iter().enumerate() {
            let size = Vec2::new(wide.source, HEAD);
            let (area, response) = ui.allocate_exact_size(size, Sense::hover());
            let tip = match &heat.no_longer[at] {
                None => format!("{}: serves to the end", source.name),
                Some(said) => capital(said),
            };
            response.widget_info(|| WidgetInfo::labeled(Role::ColumnHeader, true, &tip));
            response.on_hover_text(&tip);
            let palette = Palette::of(ui.visuals());
            let mut job = egui::text::LayoutJob::simple(
                source.name.clone(),
                FontId::proportional(SMALL),
                palette.ink,
                wide.source - 4.0,
            );
            job.wrap.max_rows = 4;
            job.halign = egui::Align::Center;
            let galley = ui.painter().layout_job(job);
            let low = area.center_bottom() - Vec2::new(0.0, galley.size().y + 2.0);
            ui.painter_at(area).galley(low, galley, palette.ink);
        }
    });
}

fn row(ui: &mut Ui, (heat, at, wide): (&Heat, usize, Widths), look: &mut Look) {
    let heated = &heat.heats.operations[at];
    let is_lit = lit_row(look) == Some(at);
    let words = format!("{:>2}  {}", heated.number, capital(heated.step.name()));
    let text = RichText::new(words).size(12.5);
    let text = if is_lit { text.strong() } else { text };
    // What grows behind it holds the name at the left.
    let line = Button::selectable(is_lit, (text, egui::Atom::grow())).truncate();
    let line = ui.add_sized(Vec2::new(wide.name, ROW), line);
    let tip = whole(heat, at);
    let line = line.on_hover_text(&tip);
    if line.hovered() || line.has_focus() {
        point_at(heat, look, (at, None));
    }
    if line.clicked() {
        choose(heat, look, (at, None));
    }
    if heated.how == How::Cold {
        ui.weak("cold");
        return;
    }
    for source in 0..heat.prepared.shop.sources.len() {
        cell(ui, (heat, (at, source), wide.source), look);
    }
}

/// What an operation comes to.
fn whole(heat: &Heat, at: usize) -> String {
    let own = &heat.heats.operations[at];
    let step = capital(own.step.name());
    let Some(source) = own.source else {
        return match own.how {
            How::Cold => format!("{step}: done cold"),
            How::Hot | How::Unserved => format!("{step}: no source serves"),
        };
    };
    let name = &heat.prepared.shop.sources[source].name;
    let pieces = match own.pieces {
        1 => String::new(),
        pieces => format!(" on each of {pieces} pieces"),
    };
    let first = own.heats_s.first().copied().unwrap_or_default();
    let again = own.heats_s.get(1).map_or_else(String::new, |again| {
        format!(", {} for each after it", spoken(*again))
    });
    let burns = own.burns.map_or_else(String::new, |spot| {
        format!(
            "; take care, the {} burns before the rest is hot",
            spot.part
        )
    });
    format!(
        "{step}, {name}: {}{pieces}, {} for the first{again}; {} to work at each; {} in all{burns}",
        counted(own.heats_s.len()),
        spoken(first),
        spoken(own.working_s),
        spoken(own.total_s),
    )
}

fn counted(heats: usize) -> String {
    match heats {
        1 => "1 heat".to_owned(),
        heats => format!("{heats} heats"),
    }
}

fn cell(ui: &mut Ui, (heat, at, wide): (&Heat, (usize, usize), f32), look: &mut Look) {
    let (row, source) = at;
    let (area, response) = ui.allocate_exact_size(Vec2::new(wide, ROW), Sense::click());
    let offer = &heat.prepared.rows[row].offers[source];
    let is_chosen = heat.heats.operations[row].source == Some(source);
    let told = told(heat, at, offer, is_chosen);
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &told));
    let response = response.on_hover_text(&told);
    if response.hovered() || response.has_focus() {
        point_at(heat, look, (row, Some(source)));
    }
    if response.clicked() {
        choose(heat, look, (row, Some(source)));
    }
    let palette = Palette::of(ui.visuals());
    let painter = ui.painter_at(area.expand(1.0));
    let is_lit = match look.heats.lit() {
        Some((own, None)) => own == row,
        Some((own, Some(of))) => own == row && of == source,
        None => false,
    };
    let ground = if is_lit { palette.wash } else { palette.sheet };
    painter.rect_filled(area, 2.0, ground);
    match offer {
        Ok(offer) => {
            let burns = heat.prepared.burnt(row, source).is_some();
            let colour = match (is_chosen, burns) {
                (true, true) => palette.mend,
                (true, false) => palette.accent,
                (false, _) => palette.faint,
            };
            let mark = if burns { "!" } else { "" };
            let words = format!("{}{mark}", offer.heats);
            let font = FontId::proportional(13.0);
            painter.text(area.center(), Align2::CENTER_CENTER, words, font, colour);
            if is_chosen {
                let stroke = Stroke::new(2.0, colour);
                painter.rect_stroke(area.shrink(1.0), 2.0, stroke, StrokeKind::Inside);
            }
        }
        Err(_) => cross(ui, area.center(), palette.stop),
    }
}

fn cross(ui: &Ui, middle: Pos2, colour: Color32) {
    const ARM: f32 = 4.0;
    let stroke = Stroke::new(1.8, colour);
    for across in [Vec2::splat(ARM), Vec2::new(ARM, -ARM)] {
        ui.painter()
            .line_segment([middle - across, middle + across], stroke);
    }
}

/// `Operation 9, set the neck, in tight coil: from the jaw end the jaw is in the way`.
fn told(
    heat: &Heat,
    (row, source): (usize, usize),
    offer: &Result<Offer, WhyNot>,
    is_chosen: bool,
) -> String {
    let own = &heat.prepared.rows[row];
    let name = &heat.prepared.shop.sources[source].name;
    let head = format!("Operation {}, {}, in {name}", own.number, own.step);
    let show = heat.show;
    match offer {
        Err(why) => format!("{head}: {}", why.words(show)),
        Ok(offer) => {
            let shop = &heat.prepared.shop;
            let room = Room::of(&shop.sources[source], &shop.smith);
            let circle = match room.mouth {
                Mouth::Open => String::new(),
                mouth => format!(
                    "; {} wide, {} is clear",
                    show.text(offer.entry.circle_mm),
                    show.text(clear_mm(mouth))
                ),
            };
            let chosen = if is_chosen { "; this is the best" } else { "" };
            let burns = heat
                .prepared
                .burnt(row, source)
                .map_or_else(String::new, |spot| {
                    format!("; the {} burns there before the rest is hot", spot.part)
                });
            format!(
                "{head}: goes in, {}{circle}; {}{burns}{chosen}",
                offer.entry.words_for(own.step),
                counted(offer.heats as usize)
            )
        }
    }
}

/// What the signs mean, and from where on a source no longer serves.
fn legend(ui: &mut Ui, heat: &Heat) {
    ui.add_space(4.0);
    let palette = Palette::of(ui.visuals());
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing.x = 5.0;
        let sign = |ui: &mut Ui| {
            let (area, _) = ui.allocate_exact_size(Vec2::new(18.0, 15.0), Sense::hover());
            area
        };
        let own: Rect = sign(ui);
        let stroke = Stroke::new(2.0, palette.accent);
        ui.painter()
            .rect_stroke(own, 2.0, stroke, StrokeKind::Inside);
        let font = FontId::proportional(SMALL);
        ui.painter().text(
            own.center(),
            Align2::CENTER_CENTER,
            "2",
            font,
            palette.accent,
        );
        ui.weak("heats a piece, where it is heated");
        let own = sign(ui);
        let font = FontId::proportional(SMALL);
        ui.painter().text(
            own.center(),
            Align2::CENTER_CENTER,
            "2",
            font,
            palette.faint,
        );
        ui.weak("goes in there too");
        let own = sign(ui);
        let font = FontId::proportional(SMALL);
        ui.painter().text(
            own.center(),
            Align2::CENTER_CENTER,
            "2!",
            font,
            palette.mend,
        );
        ui.weak("thin steel burns there");
        let own = sign(ui);
        cross(ui, own.center(), palette.stop);
        ui.weak("does not: point at it for why");
    });
    for said in heat.no_longer.iter().flatten() {
        ui.add(Label::new(capital(said)).wrap());
    }
}
