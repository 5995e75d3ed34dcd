//! Edges: their angle against their use, their blades, their points.

use super::Check;
use crate::finding::{COMMON_PRACTICE, GEOMETRY, Kind, Part};
use crate::forge::spreading::{SPREAD_SOURCE, widest_mm};
use crate::units::Quantity;

/// What of a style gives its edge an angle, as the parts list calls it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Shaped {
    /// The angle, degrees; less than nothing where the land is wider than what it stands on.
    pub(crate) degrees: f64,
    pub(crate) by: &'static str,
}

/// What an edge is for: from which angle to which it serves, degrees.
#[derive(Debug, Clone, Copy)]
pub(crate) struct For {
    least: f64,
    most: f64,
    usual: f64,
    work: &'static str,
}

/// Hot work: 30° (common practice, no source).
pub(crate) const HOT: For = For {
    least: 20.0,
    most: 45.0,
    usual: 30.0,
    work: "hot",
};
/// Cold work: 60°, from soft to hard metal 50° to 75° (common practice, no source).
pub(crate) const COLD: For = For {
    least: 50.0,
    most: 75.0,
    usual: 60.0,
    work: "cold",
};

pub(crate) fn angle(check: &mut Check<'_>, shaped: &Shaped, of: For) {
    let Shaped { degrees, by } = *shaped;
    if (of.least..=of.most).contains(&degrees) {
        return;
    }
    let (limit, fault, way) = if degrees < of.least {
        (of.least, "it turns or breaks out", "blunter")
    } else {
        (of.most, "it bruises more than it cuts", "keener")
    };
    let wants = format!(
        "{} work wants {:.0}\u{b0} to {:.0}\u{b0}, {:.0}\u{b0} as a rule",
        of.work, of.least, of.most, of.usual
    );
    let hint = if degrees > 0.0 {
        format!("make the edge {way}, with another {by}")
    } else {
        "make the Land narrower".to_owned()
    };
    let message = if degrees > 0.0 {
        format!("its edge has {degrees:.0}\u{b0}, and {wants}: {fault}")
    } else {
        format!("is no wedge, its land is as wide as what it stands on, and {wants}")
    };
    check
        .report
        .mend(Kind::EdgeAngle, Part::Working)
        .held_as(Quantity::Angle, degrees, limit)
        .say(message, hint, COMMON_PRACTICE);
}

/// How wide an edge comes out of the bar by spreading.
pub(crate) fn spreads(check: &mut Check<'_>, (edge, thick): (f64, f64)) {
    let stock = &check.tool.bar.stock;
    let bar = (
        stock.size().mm(),
        stock.wide_mm().max(check.model.base.depth),
    );
    let reach = widest_mm(bar, thick);
    if edge <= reach {
        return;
    }
    let message = format!(
        "its edge is {} long and {} thick; blows spread this bar to about {} at the most",
        check.size(edge),
        check.size(thick),
        check.size(reach).trim_start_matches('~')
    );
    check
        .report
        .mend(Kind::NeedsSpreading, Part::Working)
        .held(edge, reach)
        .say(
            message,
            "make the Edge shorter, or take larger bar",
            SPREAD_SOURCE,
        );
}

/// A point: stout for steel.
pub(crate) fn point(check: &mut Check<'_>, degrees: f64) {
    let of = For {
        least: 55.0,
        most: 100.0,
        usual: 90.0,
        work: "cold",
    };
    if (of.least..=of.most).contains(&degrees) {
        return;
    }
    let limit = if degrees < of.least {
        of.least
    } else {
        of.most
    };
    let message = format!(
        "its point has {degrees:.0}\u{b0}: marks for a drill are made with 90\u{b0}, marks to be seen with 60\u{b0}"
    );
    check
        .report
        .mend(Kind::EdgeAngle, Part::Working)
        .held_as(Quantity::Angle, degrees, limit)
        .say(
            message,
            "grind the Point angle to between 60\u{b0} and 90\u{b0}",
            COMMON_PRACTICE,
        );
}

/// An edge is longer than the work is wide.
pub(crate) fn wide(check: &mut Check<'_>, edge: f64, cuts: f64) {
    if edge >= cuts {
        return;
    }
    let message = format!(
        "its edge is {} long and the work {} wide",
        check.size(edge),
        check.size(cuts)
    );
    check
        .report
        .note(Kind::BladeSlender, Part::Working)
        .held(edge, cuts)
        .say(
            message,
            "cut from both sides and turn the work, or make the Edge longer",
            COMMON_PRACTICE,
        );
}

/// What a hot cut does when the hammer comes through.
pub(crate) fn passing(check: &mut Check<'_>) {
    check.report.note(Kind::CutEndFlies, Part::Working).say(
        "the last blow goes past the edge and not on it: struck on the edge it is spoilt, and the cut end flies",
        "finish over the edge of the anvil, keep everyone out of line, and lift the hardy out when it is not in use",
        COMMON_PRACTICE,
    );
}

/// A blade is stout for its length.
pub(crate) fn blade(check: &mut Check<'_>, thick: f64, long: f64) {
    /// Least thickness over length (common practice, no source).
    const LEAST: f64 = 1.0 / 20.0;
    if thick >= LEAST * long {
        return;
    }
    let message = format!(
        "its blade is {} thick over {}: it springs and breaks",
        check.size(thick),
        check.size(long)
    );
    check
        .report
        .mend(Kind::BladeSlender, Part::Working)
        .held(thick, LEAST * long)
        .say(
            message,
            "make the Blade shorter or the Blade thickness larger",
            COMMON_PRACTICE,
        );
}

/// A taper before a point that would bend.
pub(crate) fn slim(check: &mut Check<'_>, across: f64, long: f64) {
    /// Most length over thickness (common practice, no source).
    const MOST: f64 = 12.0;
    if long <= MOST * across {
        return;
    }
    let message = format!(
        "is {} across over {}: it bends",
        check.size(across),
        check.size(long)
    );
    check
        .report
        .mend(Kind::BladeSlender, Part::Working)
        .held(long, MOST * across)
        .say(message, "make the Taper shorter", COMMON_PRACTICE);
}

/// A bow that the grinding has no room for.
pub(crate) fn bow(check: &mut Check<'_>, bow: f64, ground: f64) {
    let most = 0.8 * ground;
    if bow <= most {
        return;
    }
    let message = format!(
        "has room for a bow of {} only, {} was asked",
        check.size(most),
        check.size(bow)
    );
    check
        .report
        .note(Kind::DetailOverRoom, Part::Working)
        .held(bow, most)
        .say(
            message,
            "ask for less Bow, or more Blade thickness",
            GEOMETRY,
        );
}
