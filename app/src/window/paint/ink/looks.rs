//! How lines and areas look: the one table of each, on the screen and on a page as it is printed.

use egui::Color32;
use reinwright_core::finding::Part;
use reinwright_core::paper::ink::{paper_fill, paper_stroke, part_colour, stress_colour};
use reinwright_core::paper::{Fill, Line};

use super::Ink;

/// Wide and narrow lines in points, two to one (ISO 128-2).
pub(super) const WIDE: f32 = 1.6;
const NARROW: f32 = 0.8;
/// Steel at a forging heat, as an eye sees it.
const HOT: Color32 = Color32::from_rgb(0xff, 0x8c, 0x2a);

/// How a line is drawn: width, dashes and gaps in points, colour.
pub(super) struct Pen {
    pub(super) width: f32,
    pub(super) dashes: &'static [f32],
    pub(super) gaps: &'static [f32],
    pub(super) colour: Color32,
}

/// What is drawn on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Medium {
    /// The screen: lines keep their width at every scale, and colours are the window's.
    Screen,
    /// A page as it will be printed, with all that is on it at its own scale.
    Page,
}

impl Ink<'_> {
    /// A line as it is printed, never so thin that it is lost on the screen.
    #[allow(
        clippy::cast_possible_truncation,
        reason = "screens are far coarser than f32"
    )]
    fn printed_pen(&self, line: Line) -> Pen {
        const THINNEST: f32 = 0.4;
        /// One dash and gap, in points, for all patterns: what is looked at is where things lie.
        const DASH: (&[f32], &[f32]) = (&[6.0], &[3.0]);
        let stroke = paper_stroke(line);
        let [r, g, b] = stroke.colour;
        let scale = self.view.scale;
        let full = stroke.dash.is_empty() || scale < 1.5;
        let (dashes, gaps) = if full { (&[][..], &[][..]) } else { DASH };
        Pen {
            width: (stroke.width as f32 * scale).max(THINNEST),
            dashes,
            gaps,
            colour: Color32::from_rgb(r, g, b),
        }
    }

    /// The one table of lines on the screen (line types after ISO 128-2).
    pub(super) fn pen(&self, line: Line) -> Pen {
        if self.medium == Medium::Page {
            return self.printed_pen(line);
        }
        const DASH: (&[f32], &[f32]) = (&[7.0], &[3.5]);
        const CHAIN: (&[f32], &[f32]) = (&[14.0, 1.5], &[3.0, 3.0]);
        const TWO_DOTS: (&[f32], &[f32]) = (&[14.0, 1.5, 1.5], &[3.0, 3.0, 3.0]);
        const JOIN: (&[f32], &[f32]) = (&[14.0], &[6.0]);
        const FULL: (&[f32], &[f32]) = (&[], &[]);
        let (ink, faint) = (self.palette.ink, self.palette.faint);
        let (width, (dashes, gaps), colour) = match line {
            Line::Outline => (WIDE, FULL, ink),
            Line::Mark => (WIDE, FULL, self.palette.accent),
            Line::Fine => (NARROW, FULL, ink),
            Line::Dimension | Line::Frame => (NARROW, FULL, faint),
            Line::Hidden => (NARROW, DASH, ink),
            Line::Centre => (NARROW, CHAIN, faint),
            Line::Neighbour => (NARROW, TWO_DOTS, faint),
            Line::Join => (NARROW, JOIN, faint),
            Line::Warning => (WIDE, FULL, self.palette.stop),
        };
        Pen {
            width,
            dashes,
            gaps,
            colour,
        }
    }

    /// The one table of areas on the screen.
    pub(super) fn fill_colour(&self, fill: Fill) -> Color32 {
        if self.medium == Medium::Page {
            let [r, g, b] = paper_fill(fill);
            return Color32::from_rgb(r, g, b);
        }
        let on_sheet = |colour: Color32, part: f32| self.palette.sheet.lerp_to_gamma(colour, part);
        match fill {
            Fill::Part(part) if self.lights(Some(part), fill) => on_sheet(colour_of(part), 0.85),
            Fill::Part(part) => on_sheet(colour_of(part), self.palette.tint),
            Fill::OtherHalf => on_sheet(self.palette.faint, 0.22),
            Fill::Work => on_sheet(colour_of(Part::Work), 0.6),
            Fill::Rivet => on_sheet(self.palette.faint, 0.5),
            Fill::Waste => on_sheet(self.palette.faint, 0.3),
            Fill::Paper => self.palette.sheet,
            Fill::Ink => self.palette.ink,
            Fill::Warning => on_sheet(self.palette.stop, 0.6),
            Fill::Hot => on_sheet(HOT, 0.85),
            Fill::Stress(step) => stress_colour_of(step),
        }
    }
}

/// Whether an area is forged steel or the rivet.
pub(super) fn is_steel_of_pair(fill: Fill) -> bool {
    match fill {
        Fill::Part(part) => !matches!(part, Part::Work | Part::Bar | Part::Pair),
        Fill::OtherHalf | Fill::Rivet | Fill::Stress(_) => true,
        Fill::Work | Fill::Waste | Fill::Hot | Fill::Paper | Fill::Ink | Fill::Warning => false,
    }
}

/// Whether an area is a body, and not an arrowhead, a patch under a text or a sign.
pub(crate) fn is_body(fill: Fill) -> bool {
    match fill {
        Fill::Part(_)
        | Fill::OtherHalf
        | Fill::Work
        | Fill::Rivet
        | Fill::Waste
        | Fill::Stress(_) => true,
        Fill::Hot | Fill::Paper | Fill::Ink | Fill::Warning => false,
    }
}

/// A part's own colour, full strength.
pub(crate) fn colour_of(part: Part) -> Color32 {
    let [r, g, b] = part_colour(part);
    Color32::from_rgb(r, g, b)
}

/// The colour of a step of stress, by day and by night.
pub(crate) fn stress_colour_of(step: u8) -> Color32 {
    let [r, g, b] = stress_colour(step);
    Color32::from_rgb(r, g, b)
}
