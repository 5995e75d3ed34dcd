//! One table per medium from what a line or an area means to how it looks.

use crate::finding::Part;
use crate::paper::{Fill, Line};

/// Red, green and blue of sRGB.
pub type Colour = [u8; 3];

/// How a line is drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stroke {
    /// Width in mm.
    pub width: f64,
    /// Dash, gap, dash, gap, ... in mm; empty for a continuous line.
    pub dash: &'static [f64],
    /// The ink.
    pub colour: Colour,
}

/// Wide and narrow lines, mm, two to one (ISO 128-2, line group 0.5).
const WIDE: f64 = 0.5;
const NARROW: f64 = 0.25;

/// Dash patterns in the lengths of ISO 128-2 for a line 0.25 mm wide: a dash is 12 widths, a
/// long dash 24, a gap 3, a dot half a width.
const DASHED: &[f64] = &[3.0, 0.75];
const LONG_DOT: &[f64] = &[6.0, 0.75, 0.125, 0.75];
const LONG_TWO_DOTS: &[f64] = &[6.0, 0.75, 0.125, 0.75, 0.125, 0.75];
/// Joints: longer gaps than a hidden edge has, so that the two are not taken for each other.
const JOINT: &[f64] = &[6.0, 2.5];

const BLACK: Colour = [0, 0, 0];
const INK: Colour = [26, 26, 26];
const GREY: Colour = [90, 90, 90];
const WHITE: Colour = [255, 255, 255];

/// The palette of Okabe and Ito (Color Universal Design, 2008), which stays distinct under the
/// common kinds of colour blindness.
const ORANGE: Colour = [230, 159, 0];
const SKY_BLUE: Colour = [86, 180, 233];
const GREEN: Colour = [0, 158, 115];
const YELLOW: Colour = [240, 228, 66];
const BLUE: Colour = [0, 114, 178];
const VERMILLION: Colour = [213, 94, 0];
const PURPLE: Colour = [204, 121, 167];

/// A part's own colour, full strength.
pub fn part_colour(part: Part) -> Colour {
    match part {
        Part::Work => ORANGE,
        Part::Jaw | Part::Working => SKY_BLUE,
        Part::SecondJaw | Part::StruckEnd => VERMILLION,
        Part::Neck | Part::Eye => PURPLE,
        Part::Boss | Part::HardyShank => GREEN,
        Part::Shoulder => BLUE,
        Part::Rein | Part::Body => YELLOW,
        Part::Bar | Part::Rivet | Part::Pair | Part::Tool => GREY,
    }
}

/// Steps of stress, the least first: straw, amber, bronze, purple, dark blue, the way that polished
/// steel runs as it is warmed, chosen so that each is darker than the one before and reads without
/// colour too.
const STRESS: [Colour; 5] = [
    [249, 240, 194],
    [237, 187, 100],
    [209, 119, 70],
    [157, 61, 89],
    [62, 46, 112],
];

/// The colour of a step of stress; all beyond the last look like the last.
pub fn stress_colour(step: u8) -> Colour {
    let last = STRESS.len() - 1;
    STRESS[usize::from(step).min(last)]
}

/// Lines on paper.
pub fn paper_stroke(line: Line) -> Stroke {
    let (width, dash, colour): (f64, &[f64], Colour) = match line {
        Line::Outline | Line::Mark => (WIDE, &[], BLACK),
        Line::Fine | Line::Dimension => (NARROW, &[], INK),
        Line::Hidden => (NARROW, DASHED, INK),
        Line::Centre => (NARROW, LONG_DOT, INK),
        Line::Neighbour => (NARROW, LONG_TWO_DOTS, INK),
        Line::Join => (NARROW, JOINT, GREY),
        Line::Frame => (NARROW, &[], GREY),
        Line::Warning => (WIDE, &[], VERMILLION),
    };
    Stroke {
        width,
        dash,
        colour,
    }
}

/// Areas on paper: light tints, so that lines and sizes stay legible and ink is spared.
pub fn paper_fill(fill: Fill) -> Colour {
    match fill {
        Fill::Part(part) => tint(part_colour(part), 30),
        Fill::OtherHalf => [232, 232, 232],
        Fill::Work => tint(ORANGE, 60),
        Fill::Rivet => [190, 190, 190],
        Fill::Waste => [214, 214, 214],
        Fill::Hot => tint(VERMILLION, 45),
        Fill::Paper => WHITE,
        Fill::Ink => BLACK,
        Fill::Warning => tint(VERMILLION, 55),
        Fill::Stress(step) => stress_colour(step),
    }
}

/// So many per cent of a colour on white.
fn tint(colour: Colour, percent: u16) -> Colour {
    colour.map(|part| {
        let mixed = (u16::from(part) * percent + 255 * (100 - percent)) / 100;
        u8::try_from(mixed).expect("a mixture of two bytes is a byte")
    })
}

/// Lines in a file for a cutter or for further drawing: a hair wide, so that the line stands for
/// its middle; what is cut is black and continuous.
pub(super) fn vector_stroke(line: Line) -> Stroke {
    let paper = paper_stroke(line);
    let width = match line {
        Line::Outline | Line::Mark | Line::Warning => NARROW,
        Line::Fine
        | Line::Hidden
        | Line::Centre
        | Line::Neighbour
        | Line::Dimension
        | Line::Join
        | Line::Frame => NARROW / 2.0,
    };
    Stroke { width, ..paper }
}

/// Areas in the same file: as on paper.
pub(super) fn vector_fill(fill: Fill) -> Colour {
    paper_fill(fill)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Relative luminance of sRGB (WCAG 2.2, definition of relative luminance).
    fn luminance(colour: Colour) -> f64 {
        let [r, g, b] = colour.map(|part| {
            let part = f64::from(part) / 255.0;
            if part <= 0.04045 {
                part / 12.92
            } else {
                ((part + 0.055) / 1.055).powf(2.4)
            }
        });
        0.2126 * r + 0.7152 * g + 0.0722 * b
    }

    #[test]
    fn stress_reads_without_colour() {
        for steps in STRESS.windows(2) {
            let contrast = (luminance(steps[0]) + 0.05) / (luminance(steps[1]) + 0.05);
            assert!(contrast >= 1.5, "{steps:?}: {contrast}");
        }
    }
}
