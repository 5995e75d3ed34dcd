//! Widths of the paper's font.

/// Width of a text in mm at a font size in mm.
pub fn text_width(text: &str, size: f64, bold: bool) -> f64 {
    let _ = bold;
    text.chars().count() as f64 * size * 0.55
}
