//! How large the window and its panels stood, as a few lines of text.

use std::fmt::Write as _;

/// A side of a window or a panel, in points; one that is none is taken as not told.
const SIDES: std::ops::RangeInclusive<f32> = 50.0..=20_000.0;

/// How large the window and its panels stood.
#[derive(Debug, Clone, Default, PartialEq)]
pub(crate) struct Room {
    /// The window's width and height, points, where it did not fill the screen.
    pub(crate) window: Option<[f32; 2]>,
    /// Whether it filled the screen.
    pub(crate) filled: bool,
    /// Panels by their names, with width and height, points.
    pub(crate) panels: Vec<(String, [f32; 2])>,
}

impl Room {
    /// Reads what [`Room::text`] wrote; a line that is none is passed over.
    pub(crate) fn read(text: &str) -> Self {
        let mut room = Self::default();
        for line in text.lines() {
            if line == "filled" {
                room.filled = true;
            } else if let Some((name, sides)) = sized(line) {
                match name {
                    "window" => room.window = Some(sides),
                    _ => room.panels.push((name.to_owned(), sides)),
                }
            }
        }
        room
    }

    /// As it is kept: a line for each, its name before its sides.
    pub(crate) fn text(&self) -> String {
        let window = self.window.map(|sides| ("window".to_owned(), sides));
        let mut text = String::new();
        for (name, [width, height]) in window.iter().chain(&self.panels) {
            writeln!(text, "{name} {width} {height}").expect("a text takes all");
        }
        if self.filled {
            text.push_str("filled\n");
        }
        text
    }
}

fn sized(line: &str) -> Option<(&str, [f32; 2])> {
    let side = |text: &str| text.parse().ok().filter(|side| SIDES.contains(side));
    let (rest, height) = line.rsplit_once(' ')?;
    let (name, width) = rest.rsplit_once(' ')?;
    Some((name, [side(width)?, side(height)?]))
}

#[cfg(test)]
mod tests {
    use super::Room;

    #[test]
    fn what_is_kept_is_read_again() {
        let room = Room {
            window: Some([1280.0, 820.5]),
            filled: true,
            panels: vec![
                ("parts".into(), [258.0, 700.0]),
                ("family table".into(), [1280.0, 300.0]),
            ],
        };
        assert_eq!(Room::read(&room.text()), room);
    }

    #[test]
    fn what_is_no_size_is_passed_over() {
        let text = "window NaN 700\nparts -3 700\nanswers 1e30 2\nbar\n\nanswers 272 700\n";
        let room = Room::read(text);
        assert_eq!(room.window, None);
        assert_eq!(room.panels, [("answers".to_owned(), [272.0, 700.0])]);
    }
}
