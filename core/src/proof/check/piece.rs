//! The work as a piece: what its sizes say of each other, and what of it the jaws must clear.

use super::Check;
use crate::asked::{FlatOf, HexagonOf, RoundOf, SquareOf, Work};
use crate::finding::{COMMON_PRACTICE, GEOMETRY, Kind, Part};
use crate::tongs::headroom::{lacks, short_mm};
use crate::tongs::model::Lies;

pub(super) fn check(check: &mut Check<'_>) {
    cannot_be(check);
    head(check);
    short(check);
    ribs(check);
    leg(check);
    back(check);
}

/// A size that must be less than another, each with its name.
type Less = ((&'static str, f64), (&'static str, f64));

/// What must be less than what for such work to be.
fn least(work: &Work) -> Option<Less> {
    match *work {
        Work::Flat {
            thickness,
            width,
            of: FlatOf::AngleLeg { other },
        } => Some((
            ("thickness", thickness.mm()),
            ("shorter leg", width.mm().min(other.mm())),
        )),
        Work::Square {
            side,
            of: SquareOf::AngleBack { thickness },
            ..
        } => Some((("thickness", thickness.mm()), ("leg", side.mm()))),
        Work::Round { diameter, of } => match of {
            RoundOf::Bar => None,
            RoundOf::Pipe { wall } => Some((
                ("wall", wall.mm()),
                ("half of the outside", diameter.mm() / 2.0),
            )),
            RoundOf::Rebar { ribs } => Some((
                ("height of the ribs", ribs.mm()),
                ("quarter of the diameter", diameter.mm() / 4.0),
            )),
            RoundOf::BoltShank { flats, .. } => Some((
                ("shank", diameter.mm()),
                ("head across its flats", flats.mm()),
            )),
        },
        Work::Hexagon { flats, of, .. } => match of {
            HexagonOf::Bar => None,
            HexagonOf::BoltHead { shank, .. } => {
                Some((("shank", shank.mm()), ("head across its flats", flats.mm())))
            }
            HexagonOf::Nut { hole, .. } => {
                Some((("hole", hole.mm()), ("nut across its flats", flats.mm())))
            }
        },
        Work::Flat { .. } | Work::Square { .. } | Work::Octagon { .. } => None,
    }
}

fn cannot_be(check: &mut Check<'_>) {
    let Some(((small, value), (large, limit))) = least(&check.document.work) else {
        return;
    };
    if value < limit {
        return;
    }
    let message = format!(
        "there is no such work: its {small} is {}, not less than the {large}, {}",
        check.size(value),
        check.size(limit)
    );
    check
        .report
        .stop(Kind::WorkCannotBe, Part::Work)
        .held(value, limit)
        .say(message, "measure the work again", GEOMETRY);
}

/// The head of a bolt that is held behind it must go between the jaws behind the bits.
fn head(check: &mut Check<'_>) {
    let Some(lack) = lacks(&check.document.work, check.model) else {
        return;
    };
    let [across, high] = [lack.across, lack.height].map(|mm| check.size(mm));
    let message = if lack.room > 0.0 {
        format!(
            "the head of the bolt is {across} over its corners and {high} high, and between the jaws there is room for {} of it",
            check.size(lack.room)
        )
    } else {
        format!(
            "between the jaws there is no room for the head of the bolt, {across} over its corners and {high} high: they cannot reach behind it"
        )
    };
    let hint = "make the bow longer or higher, take a jaw with a bow, or hold the bolt by its head";
    check
        .report
        .mend(Kind::HeadWithoutRoom, Part::Jaw)
        .held(lack.room, lack.height)
        .say(message, hint, GEOMETRY);
}

/// A head or a nut fills less of the grip than bar does.
fn short(check: &mut Check<'_>) {
    let work = &check.document.work;
    let Some(length) = short_mm(work) else {
        return;
    };
    let flats = work.size().mm();
    if length >= flats || check.model.work.lies != Lies::Endwise {
        return;
    }
    let (held, in_line) = match work.bolt_held() {
        Some(_) => ("the head of the bolt", "the shank"),
        None => ("the nut", "its hole"),
    };
    let message = format!(
        "the jaws hold {held} over {} only, and it is {} across its flats",
        check.size(length),
        check.size(flats)
    );
    let hint = format!("set it well into the jaws and keep {in_line} in line with the tongs");
    check
        .report
        .note(Kind::GripShort, Part::Work)
        .held(length, flats)
        .say(message, hint, COMMON_PRACTICE);
}

fn ribs(check: &mut Check<'_>) {
    let Work::Round {
        diameter,
        of: RoundOf::Rebar { ribs },
    } = check.document.work
    else {
        return;
    };
    let over = diameter.mm() + 2.0 * ribs.mm();
    let message = format!(
        "the ribs lift each jaw by {}: cold the bar is held at {} over them, and hot they give way",
        check.size(ribs.mm()),
        check.size(over)
    );
    let hint =
        "forge the ribs down where the tongs hold, and take the pair for the size that is left";
    check
        .report
        .note(Kind::RibsLift, Part::Work)
        .held(over, diameter.mm())
        .say(message, hint, COMMON_PRACTICE);
}

/// A jaw that is wider than a leg is free.
fn leg(check: &mut Check<'_>) {
    let Work::Flat {
        of: FlatOf::AngleLeg { .. },
        ..
    } = check.document.work
    else {
        return;
    };
    let free = check.model.work.width;
    let wide = |half: &crate::tongs::model::Half| half.jaw.section(half.grip.0).width;
    let widest = check.halves().into_iter().map(wide).fold(0.0, f64::max);
    if widest <= free || check.model.work.lies == Lies::Crosswise {
        return;
    }
    let message = format!(
        "the leg is free over {} beside the other one and the jaws are {} wide: they hang over its edge",
        check.size(free),
        check.size(widest)
    );
    check
        .report
        .note(Kind::JawOverLeg, Part::Jaw)
        .held(widest, free)
        .say(
            message,
            "make the jaws narrower, or hold the wider leg",
            GEOMETRY,
        );
}

/// An angle by its back bears on the other jaw with the edges of its legs only: a groove that is
/// narrower than they are apart goes in between them.
fn back(check: &mut Check<'_>) {
    let Work::Square {
        side,
        of: SquareOf::AngleBack { thickness },
        ..
    } = check.document.work
    else {
        return;
    };
    let apart = (side.mm() - thickness.mm()) / 2f64.sqrt();
    let reach = |seat: &crate::tongs::seat::Seat| {
        let places = seat.contacts.iter().map(|z| z.abs());
        places.fold(0.0, f64::max)
    };
    let widest = check.model.seats.iter().map(reach).fold(0.0, f64::max);
    if widest > apart {
        return;
    }
    let message = format!(
        "the edges of the angle's legs are {} apart, and no jaw bears farther out than {}: only its back is held",
        check.size(2.0 * apart),
        check.size(2.0 * widest)
    );
    let hint = "make the groove as wide as the angle, or hold it by a leg";
    check
        .report
        .mend(Kind::WorkBearsBadly, Part::Jaw)
        .held(widest, apart)
        .say(message, hint, GEOMETRY);
}
