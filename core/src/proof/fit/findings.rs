//! What the fit has to say to the smith.

use super::judged::made_for;
use super::{
    Contact, Fit, Judged, LEAST_SPAN_MM, Limit, NoContact, SPAN_SOURCE, Travel, WIDEST_SPAN_MM,
    Why, WorkRange,
};
use crate::finding::{COMMON_PRACTICE, Finding, GEOMETRY, Kind, Part, Report, Severity};
use crate::tongs::document::Document;
use crate::tongs::jaw::{JawKind, Verdict};
use crate::tongs::model::Model;
use crate::units::Quantity;

/// Preferred and greatest mass of a tool held in one hand, kg.
const MASS_KG: (f64, f64) = (1.4, 2.3);
const MASS_SOURCE: &str = "CCOHS, hand tool ergonomics (read in copies)";

/// The most that is to be lifted by hand at all, with both hands and in the best place, kg.
const LIFTED_KG: f64 = 23.0;
const LIFTED_SOURCE: &str = "NIOSH 94-110, revised lifting equation: load constant";

/// A pair that opens less than this, both halves together, takes no work in, degrees (common
/// practice, no source: a finger's breadth at the tip of usual jaws).
const LEAST_OPENING_DEG: f64 = 10.0;

/// Hand arm over grip arm: with less a hand tires (common practice, no source: reins three times as
/// long as the jaws).
const LEAST_LEVERAGE: f64 = 3.0;

/// Part of the work's size by which thinner work must still be held before the reins touch (common
/// practice, no source).
const LEAST_SPARE: f64 = 0.1;

/// How far out of line with the rivet the reins may be, mm (common practice, no source).
const OUT_OF_LINE_MM: f64 = 3.0;

/// What is worth telling about a fit, in no order.
pub fn findings(document: &Document, model: &Model, fit: &Fit) -> Vec<Finding> {
    let mut say = Say {
        document,
        report: Report::new(document.units.show()),
    };
    match &fit.travel {
        None => say.cannot_be_assembled(),
        Some(travel) => {
            say.overlaps(model, travel);
            say.opening(fit, travel);
        }
    }
    match (&fit.nominal, &fit.range) {
        (Err(no), _) => say.cannot_hold(model, *no),
        (Ok(contact), range) => {
            say.span(contact);
            say.parallel(contact);
            say.held(model, &fit.judged);
            // What can fly out is told already.
            if fit.judged.verdict != Verdict::Unsafe {
                match range {
                    Ok(range) => say.outside(contact, range),
                    Err(no) => say.no_size(*no),
                }
            }
        }
    }
    say.shut(fit);
    say.leverage(fit.leverage());
    say.mass(fit.mass_kg);
    say.in_line(fit);
    say.report.into_found()
}

/// How to hold the work instead.
fn instead(styles: &[JawKind]) -> String {
    match styles {
        [] => "hold other work, or draw a jaw that takes this one".to_owned(),
        [one] => format!("hold it in {one} jaws instead"),
        [first @ .., last] => {
            let first: Vec<&str> = first.iter().map(|kind| kind.name()).collect();
            format!("hold it in {} or {last} jaws instead", first.join(", "))
        }
    }
}

struct Say<'a> {
    document: &'a Document,
    report: Report,
}

impl Say<'_> {
    fn size(&self, mm: f64) -> String {
        self.report.size(mm)
    }

    fn cannot_be_assembled(&mut self) {
        let message = "the halves overlap however far they are turned, 0 degrees are free: they cannot be put together";
        let hint = "lengthen neck and shoulder, or make the boss smaller";
        self.report
            .stop(Kind::CannotBeAssembled, Part::Pair)
            .held_as(Quantity::Angle, 0.0, LEAST_OPENING_DEG)
            .say(message, hint, GEOMETRY);
    }

    /// Halves that overlap where they should stand on the work.
    fn overlaps(&mut self, model: &Model, travel: &Travel) {
        let first = travel.shut.half_angle;
        let Some(clash) = travel.shut.clash.filter(|_| first > 1e-6) else {
            return;
        };
        // The jaws' own gap is already known to be wrong.
        if model.jaw_gap < 0.0 && Limit::of(Some(clash)) == Limit::JawsMeet {
            return;
        }
        let degrees = (2.0 * first).to_degrees();
        let message = format!(
            "set on the work, {} of the halves overlap; they are free only when opened by {degrees:.1} degrees, past 0",
            Part::both(clash.parts)
        );
        let hint = "give them room where they touch: the drawing shows the place";
        self.report
            .stop(Kind::HalvesOverlap, clash.parts[0])
            .held_as(Quantity::Angle, degrees, 0.0)
            .say(message, hint, GEOMETRY);
    }

    fn opening(&mut self, fit: &Fit, travel: &Travel) {
        let degrees = fit.opening.to_degrees();
        if degrees >= LEAST_OPENING_DEG {
            return;
        }
        let stops = travel
            .open
            .clash
            .map_or([Part::Boss; 2], |clash| clash.parts);
        let message = format!(
            "the pair opens {degrees:.1} degrees, then {} meet; under {LEAST_OPENING_DEG:.0} degrees no work goes in",
            Part::both(stops)
        );
        let hint = "lengthen neck and shoulder so that they clear each other";
        self.report
            .stop(Kind::OpensLittle, Part::Pair)
            .held_as(Quantity::Angle, degrees, LEAST_OPENING_DEG)
            .say(message, hint, COMMON_PRACTICE);
    }

    fn cannot_hold(&mut self, model: &Model, no: NoContact) {
        // Resolving has said that the jaws meet, and travel that there is none.
        if model.jaw_gap < 0.0 || no == NoContact::NoTravel {
            return;
        }
        let size = self.document.work.size().mm();
        let message = format!(
            "the pair cannot hold its own {} work: {no}",
            self.size(size)
        );
        let hint = "change the jaw or the reins for this work, or choose other work";
        self.report
            .stop(Kind::CannotHold, Part::Work)
            .say(message, hint, GEOMETRY);
    }

    fn span(&mut self, contact: &Contact) {
        let span = contact.hand_span_mm;
        /// A round size is not refused for its last digit, mm.
        const HAIR: f64 = 0.05;
        if span > WIDEST_SPAN_MM + HAIR {
            let message = format!(
                "the reins are {} over all at the hand, a hand closes {} with force",
                self.size(span),
                self.size(WIDEST_SPAN_MM)
            );
            let hint = "bring the reins closer at the hand";
            self.report
                .mend(Kind::SpanWide, Part::Rein)
                .held(span, WIDEST_SPAN_MM)
                .say(message, hint, SPAN_SOURCE);
        } else if span < LEAST_SPAN_MM - HAIR {
            let message = format!(
                "the reins are {} over all at the hand, under {} a hand has little force",
                self.size(span),
                self.size(LEAST_SPAN_MM)
            );
            let hint = "set the reins wider at the hand";
            self.report
                .note(Kind::SpanNarrow, Part::Rein)
                .held(span, LEAST_SPAN_MM)
                .say(message, hint, SPAN_SOURCE);
        }
    }

    /// A groove or a notch may bear unevenly even on the nominal work.
    fn parallel(&mut self, contact: &Contact) {
        let open = contact.heel_open_mm.max(contact.tip_open_mm);
        /// Less than this is filed or hammered away in setting, mm.
        const SEEN_MM: f64 = 0.5;
        if open < SEEN_MM {
            return;
        }
        let (touches, stands) = if contact.tip_open_mm > contact.heel_open_mm {
            ("heel", "tip")
        } else {
            ("tip", "heel")
        };
        let message = format!(
            "on its own work the jaws bear at the {touches} and stand {} open at the {stands}, over {}",
            self.size(open),
            self.size(SEEN_MM)
        );
        let hint = "let the grip run even from heel to tip";
        self.report
            .note(Kind::JawsGape, Part::Jaw)
            .held(open, SEEN_MM)
            .say(message, hint, COMMON_PRACTICE);
    }

    /// Work that the jaws are not made for, or that can fly out of them.
    fn held(&mut self, model: &Model, judged: &Judged) {
        let work = self.document.work.words();
        let reason = judged.reason(self.report.show());
        let source = match judged.why {
            Why::Trade(_) | Why::Turns(_) | Why::Style(_) => COMMON_PRACTICE,
            Why::RidesOnEdges
            | Why::RidesOnOneEdge
            | Why::Bottoms
            | Why::Tips(..)
            | Why::Outside(_)
            | Why::Gapes(_)
            | Why::NoHeadRoom
            | Why::No(_) => GEOMETRY,
        };
        let hint = instead(&made_for(&self.document.work, model.work.lies));
        let is_trade = matches!(judged.why, Why::Trade(_));
        match judged.verdict {
            Verdict::Unsafe => {
                let message = format!("{work} can fly out of these jaws: {reason}");
                let saying = self.report.stop(Kind::WorkCanFlyOut, Part::Work);
                saying.say(message, hint, source);
            }
            // What is reckoned is told by the findings that reckon it.
            Verdict::Badly if is_trade => {
                let message = format!("these jaws are for other work than {work}: {reason}");
                let saying = self.report.mend(Kind::WorkHeldBadly, Part::Work);
                saying.say(message, hint, source);
            }
            Verdict::Well | Verdict::WithAWord | Verdict::Badly | Verdict::Cannot => {}
        }
    }

    fn outside(&mut self, contact: &Contact, range: &WorkRange) {
        let Some(end) = range.end_before(contact.size_mm) else {
            return;
        };
        // The strength says that the reins are whippy.
        if end.limit == Limit::ReinsClose {
            return;
        }
        let message = format!(
            "the pair holds {} to {}, not its own {}: {}",
            self.size(range.least.size_mm),
            self.size(range.most.size_mm),
            self.size(contact.size_mm),
            end.limit.name()
        );
        let hint = "change the jaw for this work, or choose other work";
        self.report
            .stop(Kind::WorkOutOfRange, Part::Work)
            .held(contact.size_mm, end.size_mm)
            .say(message, hint, GEOMETRY);
    }

    fn no_size(&mut self, no: NoContact) {
        // Reins that close on any work are told to be whippy.
        let closes = Limit::ReinsClose;
        if matches!(no, NoContact::NoSize { thin, .. } if thin == closes) {
            return;
        }
        let hint = "change the jaw or the reins for this work, or choose other work";
        self.report
            .stop(Kind::WorkOutOfRange, Part::Work)
            .say(no.to_string(), hint, GEOMETRY);
    }

    /// Reins that meet before the jaws do leave nothing to squeeze.
    fn shut(&mut self, fit: &Fit) {
        let Some((contact, range)) = fit.nominal.as_ref().ok().zip(fit.range.as_ref().ok()) else {
            return;
        };
        let how = match range.least.limit {
            Limit::ReinsTouch => "the reins touch",
            Limit::ReinsClose => "an ordinary squeeze closes the reins",
            Limit::OutOfParallel
            | Limit::SlipsOut
            | Limit::HandSpan
            | Limit::JawsMeet
            | Limit::HalvesCollide
            | Limit::GrooveEdges
            | Limit::Document => return,
        };
        let spare = contact.size_mm - range.least.size_mm;
        let least = LEAST_SPARE * contact.size_mm;
        // Reins that close on its own work are told to be whippy.
        if spare >= least || spare < 0.0 {
            return;
        }
        let message = format!(
            "{how} on work only {} thinner, under {}: they meet before the work is held",
            self.size(spare),
            self.size(least)
        );
        let hint = "set the reins wider at the hand";
        self.report
            .mend(Kind::ReinsMeetFirst, Part::Rein)
            .held(spare, least)
            .say(message, hint, COMMON_PRACTICE);
    }

    fn leverage(&mut self, leverage: f64) {
        /// What is told to one digit is held no finer.
        const HAIR: f64 = 0.05;
        if leverage >= LEAST_LEVERAGE - HAIR {
            return;
        }
        let message = format!(
            "the work is squeezed {leverage:.1} times as hard as the reins, under {LEAST_LEVERAGE:.0} times"
        );
        let hint = "lengthen the reins, or bring the grip nearer to the rivet";
        self.report
            .note(Kind::LeverageSmall, Part::Rein)
            .held_as(Quantity::Ratio, leverage, LEAST_LEVERAGE)
            .say(message, hint, COMMON_PRACTICE);
    }

    fn mass(&mut self, mass_kg: f64) {
        let (preferred, most) = MASS_KG;
        let show = self.report.show();
        let weighs = format!("the pair weighs {}", show.mass(mass_kg));
        if mass_kg > LIFTED_KG {
            let message = format!(
                "{weighs}: more than {} is not to be lifted by hand, let alone swung",
                show.mass(LIFTED_KG)
            );
            let hint = "start from a smaller bar, and make jaws and reins shorter";
            self.report
                .stop(Kind::Heavy, Part::Pair)
                .held_as(Quantity::Mass, mass_kg, LIFTED_KG)
                .say(message, hint, LIFTED_SOURCE);
            return;
        }
        let (severity, limit) = if mass_kg > most {
            (Severity::Mend, most)
        } else if mass_kg > preferred {
            (Severity::Note, preferred)
        } else {
            return;
        };
        let message = format!("{weighs}, over {} for one hand", show.mass(limit));
        let hint = "draw the reins thinner, or start from a smaller bar";
        self.report
            .at(severity, Kind::Heavy, Part::Pair)
            .held_as(Quantity::Mass, mass_kg, limit)
            .say(message, hint, MASS_SOURCE);
    }

    fn in_line(&mut self, fit: &Fit) {
        let off = fit.in_line.at_hand_mm.abs();
        if off <= OUT_OF_LINE_MM {
            return;
        }
        let message = format!(
            "midway between the reins lies {} off the line through rivet and work, over {}",
            self.size(off),
            self.size(OUT_OF_LINE_MM)
        );
        let hint = "bend the reins until their middle is in line";
        self.report
            .mend(Kind::ReinsOutOfLine, Part::Rein)
            .held(off, OUT_OF_LINE_MM)
            .say(message, hint, COMMON_PRACTICE);
    }
}
