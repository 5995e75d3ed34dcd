//! Colours of the window: warm paper by day, slate by night.

use egui::{Color32, CornerRadius, Stroke, Theme, Visuals};

/// The colours that the drawing and the panels share.
#[derive(Debug)]
pub(crate) struct Palette {
    /// Panels.
    pub(crate) panel: Color32,
    /// The sheet that is drawn on, and text fields.
    pub(crate) sheet: Color32,
    /// Lines and text.
    pub(crate) ink: Color32,
    /// Thin lines, less important text.
    pub(crate) faint: Color32,
    /// Buttons.
    button: Color32,
    /// Borders.
    pub(crate) edge: Color32,
    /// Borders of what can be typed in, ticked or pressed.
    rim: Color32,
    /// The ring about what the keyboard is on.
    pub(crate) focus: Color32,
    /// What is lit up or chosen.
    pub(crate) accent: Color32,
    /// The wash behind what is lit up.
    pub(crate) wash: Color32,
    /// How strongly a part's own colour stands on the sheet, from 0 to 1.
    pub(crate) tint: f32,
    /// Stop.
    pub(crate) stop: Color32,
    /// Mend.
    pub(crate) mend: Color32,
    /// Note.
    pub(crate) note: Color32,
}

const DAY: Palette = Palette {
    panel: Color32::from_rgb(0xef, 0xea, 0xdf),
    sheet: Color32::from_rgb(0xfc, 0xf9, 0xf1),
    ink: Color32::from_rgb(0x26, 0x25, 0x22),
    faint: Color32::from_rgb(0x5f, 0x5a, 0x50),
    button: Color32::from_rgb(0xe0, 0xd9, 0xc9),
    edge: Color32::from_rgb(0xb9, 0xaf, 0x9b),
    rim: Color32::from_rgb(0x8a, 0x81, 0x70),
    focus: Color32::from_rgb(0x0a, 0x4a, 0x8f),
    accent: Color32::from_rgb(0x9c, 0x3d, 0x10),
    wash: Color32::from_rgb(0xf6, 0xdc, 0xc0),
    tint: 0.42,
    stop: Color32::from_rgb(0xb0, 0x2a, 0x00),
    mend: Color32::from_rgb(0x81, 0x53, 0x00),
    note: Color32::from_rgb(0x00, 0x5a, 0x8c),
};

/// A printed page, by day and by night.
pub(crate) const PRINTED: Palette = Palette {
    sheet: Color32::WHITE,
    ink: Color32::BLACK,
    ..DAY
};

const NIGHT: Palette = Palette {
    panel: Color32::from_rgb(0x1f, 0x25, 0x2b),
    sheet: Color32::from_rgb(0x2a, 0x32, 0x39),
    ink: Color32::from_rgb(0xea, 0xe6, 0xdc),
    faint: Color32::from_rgb(0xb3, 0xb5, 0xb2),
    button: Color32::from_rgb(0x38, 0x42, 0x4b),
    edge: Color32::from_rgb(0x53, 0x5f, 0x69),
    rim: Color32::from_rgb(0x7f, 0x8b, 0x95),
    focus: Color32::from_rgb(0x9f, 0xdc, 0xff),
    accent: Color32::from_rgb(0xf2, 0xa9, 0x5c),
    wash: Color32::from_rgb(0x4b, 0x3e, 0x33),
    tint: 0.58,
    stop: Color32::from_rgb(0xff, 0x90, 0x68),
    mend: Color32::from_rgb(0xf0, 0xc0, 0x4a),
    note: Color32::from_rgb(0x7c, 0xc4, 0xf0),
};

impl Palette {
    /// The palette that goes with a style.
    pub(crate) fn of(visuals: &Visuals) -> &'static Self {
        if visuals.dark_mode { &NIGHT } else { &DAY }
    }
}

/// Dresses the window for day and night.
pub(crate) fn dress(ctx: &egui::Context) {
    ctx.set_visuals_of(Theme::Light, visuals(Visuals::light(), &DAY));
    ctx.set_visuals_of(Theme::Dark, visuals(Visuals::dark(), &NIGHT));
    ctx.all_styles_mut(|style| {
        style.spacing.item_spacing = egui::vec2(6.0, 5.0);
        style.spacing.button_padding = egui::vec2(7.0, 3.0);
        style.spacing.combo_width = 60.0;
        style.spacing.scroll = egui::style::ScrollStyle::solid();
        style.interaction.selectable_labels = false;
    });
}

fn visuals(mut visuals: Visuals, palette: &Palette) -> Visuals {
    visuals.panel_fill = palette.panel;
    visuals.window_fill = palette.panel;
    visuals.window_stroke = Stroke::new(1.0, palette.edge);
    visuals.extreme_bg_color = palette.sheet;
    visuals.text_edit_bg_color = Some(palette.sheet);
    visuals.faint_bg_color = palette.button;
    visuals.indent_has_left_vline = false;
    visuals.weak_text_color = Some(palette.faint);
    visuals.warn_fg_color = palette.mend;
    visuals.error_fg_color = palette.stop;
    visuals.hyperlink_color = palette.accent;
    visuals.selection.bg_fill = palette.wash;
    visuals.selection.stroke = Stroke::new(1.0, palette.accent);
    let widgets = &mut visuals.widgets;
    for widget in [
        &mut widgets.noninteractive,
        &mut widgets.inactive,
        &mut widgets.hovered,
        &mut widgets.active,
        &mut widgets.open,
    ] {
        widget.corner_radius = CornerRadius::same(3);
        widget.fg_stroke = Stroke::new(1.0, palette.ink);
        widget.bg_fill = palette.button;
        widget.weak_bg_fill = palette.button;
        widget.bg_stroke = Stroke::new(1.0, palette.edge);
    }
    widgets.noninteractive.bg_fill = palette.panel;
    // Rails, rings and boxes.
    widgets.inactive.bg_fill = palette.sheet;
    for widget in [&mut widgets.inactive, &mut widgets.open] {
        widget.bg_stroke = Stroke::new(1.0, palette.rim);
    }
    // Under the pointer; what has the keyboard has a ring beside.
    for widget in [&mut widgets.hovered, &mut widgets.active] {
        widget.bg_stroke = Stroke::new(1.0, palette.accent);
    }
    visuals
}

#[cfg(test)]
mod tests {
    use super::{Color32, DAY, NIGHT, Palette};

    /// Relative luminance by WCAG 2.2, of a colour in sRGB.
    fn luminance(colour: Color32) -> f64 {
        let channel = |byte: u8| {
            let share = f64::from(byte) / 255.0;
            if share <= 0.04045 {
                share / 12.92
            } else {
                ((share + 0.055) / 1.055).powf(2.4)
            }
        };
        0.2126 * channel(colour.r()) + 0.7152 * channel(colour.g()) + 0.0722 * channel(colour.b())
    }

    /// Contrast by WCAG 2.2, from 1 to 21.
    fn contrast(one: Color32, other: Color32) -> f64 {
        let (one, other) = (luminance(one), luminance(other));
        (one.max(other) + 0.05) / (one.min(other) + 0.05)
    }

    /// Black on white is 21 by the definition; the grey #767676 is the lightest that reaches 4.5 on
    /// white (W3C, Understanding Success Criterion 1.4.3).
    #[test]
    fn contrast_is_that_of_the_standard() {
        let grey = Color32::from_gray;
        assert!((contrast(Color32::BLACK, Color32::WHITE) - 21.0).abs() < 1e-9);
        assert!(contrast(grey(0x76), Color32::WHITE) >= 4.5);
        assert!(contrast(grey(0x77), Color32::WHITE) < 4.5);
    }

    /// The grounds that words and controls stand on.
    fn grounds(palette: &Palette) -> [(&'static str, Color32); 4] {
        [
            ("panel", palette.panel),
            ("sheet", palette.sheet),
            ("button", palette.button),
            ("wash", palette.wash),
        ]
    }

    #[track_caller]
    fn check(least: f64, light: &str, (above, one): (&str, Color32), below: (&str, Color32)) {
        let found = contrast(one, below.1);
        let below = below.0;
        assert!(found >= least, "{light}: {above} on {below} is {found:.2}");
    }

    /// WCAG 2.2 AA, 1.4.3: 4.5 for text.
    #[test]
    fn words_stand_out_by_day_and_by_night() {
        for (light, palette) in [("day", &DAY), ("night", &NIGHT)] {
            for ground in grounds(palette) {
                for text in [
                    ("ink", palette.ink),
                    ("faint", palette.faint),
                    ("accent", palette.accent),
                    ("stop", palette.stop),
                    ("mend", palette.mend),
                    ("note", palette.note),
                ] {
                    check(4.5, light, text, ground);
                }
            }
        }
    }

    /// WCAG 2.2, 2.4.13: 3 between a pixel of the ring and the same pixel without it, which is ground
    /// or the border of what stands there, and a ring of 2 points at least.
    #[test]
    fn the_ring_of_the_keyboard_stands_out_by_day_and_by_night() {
        for (light, palette) in [("day", &DAY), ("night", &NIGHT)] {
            let edge = ("edge", palette.edge);
            for below in grounds(palette).into_iter().chain([edge]) {
                check(3.0, light, ("focus", palette.focus), below);
            }
        }
        assert!(super::super::focus::THICK >= 2.0);
    }

    /// WCAG 2.2 AA, 1.4.11: 3 for what shows where something can be typed or ticked, against what is
    /// inside it and around it, and for what shows that it is chosen or under the pointer.
    #[test]
    fn what_can_be_typed_in_or_ticked_is_seen_by_day_and_by_night() {
        for (light, palette) in [("day", &DAY), ("night", &NIGHT)] {
            for below in [("panel", palette.panel), ("sheet", palette.sheet)] {
                check(3.0, light, ("rim", palette.rim), below);
            }
            for ground in grounds(palette) {
                check(3.0, light, ("accent", palette.accent), ground);
            }
        }
    }
}
