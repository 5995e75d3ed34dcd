//! What the strength has to say to the smith.

use super::{CLIP_CLOSES_MM, Figure, SQUEEZE_SOURCE, Station, Strength};
use crate::finding::{COMMON_PRACTICE, Finding, Part, Severity};
use crate::steel::HOT_SOURCE;
use crate::tongs::document::Document;
use crate::tongs::model::Model;

/// A clip that presses with less than this lets the work slip, N: a tenth of an ordinary squeeze
/// (common practice, no source).
const LEAST_CLIP_N: f64 = 10.0;

/// What is worth telling about the strength, in no order.
pub fn findings(document: &Document, model: &Model, strength: &Strength) -> Vec<Finding> {
    let mut say = Say {
        document,
        strength,
        all: Vec::new(),
    };
    say.rein();
    say.boss();
    say.neck();
    say.joint();
    say.spring(model);
    say.all
}

struct Say<'a> {
    document: &'a Document,
    strength: &'a Strength,
    all: Vec<Finding>,
}

impl Say<'_> {
    fn size(&self, mm: f64) -> String {
        self.document.units.show().text(mm)
    }

    fn add(
        &mut self,
        place: (Severity, Part),
        words: (String, &str),
        measured: (f64, f64),
        source: &'static str,
    ) {
        self.all.push(Finding::new(place, words, measured, source));
    }

    /// The squeeze under which a station must hold, and how bad it is if it does not.
    fn judged(&self, station: &Station) -> Option<(Severity, f64)> {
        let load = &self.strength.load;
        let fails = |n: f64| station.stress_mpa(n) > station.limit_mpa;
        if fails(load.ordinary_n) {
            Some((Severity::Mend, load.ordinary_n))
        } else if fails(load.strong_n) {
            Some((Severity::Mend, load.strong_n))
        } else if fails(load.full_n) {
            Some((Severity::Note, load.full_n))
        } else {
            None
        }
    }

    fn rein(&mut self) {
        let parts = [Part::Rein, Part::Shoulder];
        let Some(station) = self.strength.worst_of(&parts).copied() else {
            return;
        };
        let Some((severity, n)) = self.judged(&station) else {
            return;
        };
        let stress = station.stress_mpa(n);
        let message = format!(
            "squeezed with {n:.0} N the {} bends for good, {} from the rivet: {stress:.0} MPa, the steel bears {:.0}",
            station.part,
            self.size(station.at.to_vec2().hypot()),
            station.limit_mpa
        );
        let hint = "leave it deeper there, or hold the pair nearer to the boss";
        let source = self.strength.steel.source;
        let held = (stress, station.limit_mpa);
        self.add((severity, station.part), (message, hint), held, source);
    }

    fn boss(&mut self) {
        let Some(station) = self.strength.worst_of(&[Part::Boss]).copied() else {
            return;
        };
        // A hand at its full strength is allowed to spring a boss as it springs a rein.
        let Some((severity, n)) = self.judged(&station).filter(|(s, _)| *s > Severity::Note) else {
            return;
        };
        let stress = station.stress_mpa(n);
        let message = format!(
            "squeezed with {n:.0} N the boss bends across the hole: {stress:.0} MPa, the steel bears {:.0}",
            station.limit_mpa
        );
        let hint = "make the boss larger or thicker, or the rivet thinner";
        let source = self.strength.steel.source;
        let held = (stress, station.limit_mpa);
        self.add((severity, Part::Boss), (message, hint), held, source);
    }

    fn neck(&mut self) {
        let parts = [Part::Neck, Part::Jaw, Part::SecondJaw];
        let Some(station) = self.strength.worst_of(&parts).copied() else {
            return;
        };
        let Some((severity, n)) = self.judged(&station) else {
            return;
        };
        let stress = station.stress_mpa(n);
        let celsius = self.strength.load.jaw_celsius;
        let (when, source) = if self.strength.hot.proportional_limit < 1.0 {
            (format!(" at {celsius:.0} \u{b0}C"), HOT_SOURCE)
        } else {
            (String::new(), self.strength.steel.source)
        };
        let message = format!(
            "squeezed with {n:.0} N the {} bends for good: {stress:.0} MPa, the steel bears {:.0}{when}",
            station.part, station.limit_mpa
        );
        let hint = "leave more metal between boss and jaw, and cool the jaws between heats";
        let held = (stress, station.limit_mpa);
        self.add((severity, station.part), (message, hint), held, source);
    }

    fn joint(&mut self) {
        let fails = |figure: &&Figure| {
            let joint = figure.what.contains("shear of") || figure.what.contains("bearing");
            joint && !figure.holds()
        };
        let failing: Vec<Figure> = self
            .strength
            .figures
            .iter()
            .filter(fails)
            .copied()
            .collect();
        for figure in failing {
            let n = figure.squeeze_n;
            let message = format!(
                "squeezed with {n:.0} N the {} takes {:.1} kN, it bears {:.1} kN",
                figure.what,
                figure.value / 1000.0,
                figure.limit / 1000.0
            );
            let hint = "take a thicker rivet, or a thicker or larger boss";
            let held = (figure.value, figure.limit);
            let at = (Severity::Mend, figure.part);
            self.add(at, (message, hint), held, figure.source);
        }
    }

    fn spring(&mut self, model: &Model) {
        let ordinary = self.strength.squeezes[0];
        let clip = self.strength.clip_force_n;
        let half = model.hand_gap / 2.0;
        if ordinary.closes_mm > half {
            let message = format!(
                "the reins are whippy: {:.0} N closes them by {}, over half the hand gap, {}",
                ordinary.hand_n,
                self.size(ordinary.closes_mm),
                self.size(half)
            );
            let hint = "leave the reins thicker, or make them shorter";
            let held = (ordinary.closes_mm, half);
            self.add(
                (Severity::Mend, Part::Rein),
                (message, hint),
                held,
                COMMON_PRACTICE,
            );
        } else if clip < LEAST_CLIP_N {
            let message = format!(
                "the reins are too soft for a clip: closed by {} it presses with {clip:.1} N, under {LEAST_CLIP_N:.0} N",
                self.size(CLIP_CLOSES_MM)
            );
            let hint = "leave the reins thicker, or hold the pair by hand";
            let held = (clip, LEAST_CLIP_N);
            self.add(
                (Severity::Note, Part::Rein),
                (message, hint),
                held,
                COMMON_PRACTICE,
            );
        }
        let most = self.strength.load.strong_n;
        if clip > most {
            let message = format!(
                "the reins are too stiff for a clip: to close them by {} takes {clip:.0} N, over {most:.0} N",
                self.size(CLIP_CLOSES_MM)
            );
            let hint = "draw the reins thinner or longer if a clip is wanted";
            let held = (clip, most);
            self.add(
                (Severity::Note, Part::Rein),
                (message, hint),
                held,
                SQUEEZE_SOURCE,
            );
        }
    }
}
