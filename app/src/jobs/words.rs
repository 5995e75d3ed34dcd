//! What window and command line say alike about fit and strength.

use reinwright_core::paper::font::lacking;
use reinwright_core::proof::fit::{Contact, Press, Where};
use reinwright_core::proof::strength::RivetLength;
use reinwright_core::tongs::seat::Bears;
use reinwright_core::units::Show;

/// What goes with every figure of strength.
pub(crate) const CAUTION: &str = "These figures guide; they do not certify a tool. Try a new pair \
     on cold work first, stand out of line of the work, and cool the jaws between heats. Local \
     codes and qualified practice come first.";

/// What the paper's fonts have no signs for, of what the smith has named; `None` where they have
/// all. As part of a sentence, without a period.
pub(crate) fn without_letters<'a>(names: impl IntoIterator<Item = &'a str>) -> Option<String> {
    /// So many of the signs are named.
    const TOLD: usize = 5;
    let mut signs: Vec<char> = names.into_iter().flat_map(lacking).collect();
    signs.sort_unstable();
    signs.dedup();
    if signs.is_empty() {
        return None;
    }
    let told: Vec<String> = signs.iter().take(TOLD).map(char::to_string).collect();
    let more = match signs.len().saturating_sub(TOLD) {
        0 => String::new(),
        more => format!(" and {more} more"),
    };
    Some(format!(
        "The paper's fonts have no sign for {}{more}: an empty lozenge is printed for each",
        told.join(" ")
    ))
}

/// The squeezes in the order of `Strength::squeezes`.
pub(crate) const SQUEEZES: [&str; 3] = ["Ordinary", "Strong", "Full"];

/// The place along a grip.
pub(crate) fn place(place: Where) -> &'static str {
    match place {
        Where::Whole => "all along the grip",
        Where::Across => "across the jaws",
        Where::Heel => "at the heel",
        Where::Tip => "at the tip",
        Where::Between => "inside the grip",
    }
}

/// What of a jaw bears.
pub(crate) fn surface(bears: Bears) -> &'static str {
    match bears {
        Bears::Face => "on the face",
        Bears::Walls => "on the walls",
        Bears::Bottom => "on the bottom of the groove",
        Bears::Edges => "on the edges of the groove",
    }
}

/// `bears all along the grip, on the face`; where the other end stands open, by how much.
pub(crate) fn bears(contact: &Contact, show: Show) -> String {
    /// Nearer than this is shut, mm.
    const SHUT: f64 = 0.05;
    let [a, b] = &contact.bearing;
    let of = |bearing: &reinwright_core::proof::fit::Bearing| {
        format!("{}, {}", place(bearing.place), surface(bearing.bears))
    };
    let mut text = format!("bears {}", of(a));
    if (a.place, a.bears) != (b.place, b.bears) {
        text += &format!("; the other jaw {}", of(b));
    }
    for (end, open) in [("heel", contact.heel_open_mm), ("tip", contact.tip_open_mm)] {
        if open > SHUT {
            text += &format!("; the {end} stands {} open", show.text(open));
        }
    }
    text
}

/// `Pressed at the heel: the force counts 1 3/8 in before the rivet`.
pub(crate) fn pressed(press: &Press, show: Show) -> String {
    format!(
        "Pressed {}: the force counts {} before the rivet",
        place(press.place),
        show.text(press.grip_mm)
    )
}

/// `35 mm behind the rivet`.
pub(crate) fn balance_point(x_mm: f64, show: Show) -> String {
    let side = if x_mm < 0.0 { "behind" } else { "before" };
    format!("{} {side} the rivet", show.text(x_mm.abs()))
}

/// Shank to cut for the rivet.
pub(crate) fn rivet(length: &RivetLength, show: Show) -> String {
    format!(
        "Rivet shank: {} for one head, {} for both; the usual rule for one gives {}",
        show.text(length.one_head_mm),
        show.text(length.both_heads_mm),
        show.text(length.practice_mm)
    )
}
