//! What the strength has to say to the smith.

use super::{
    CLIP_CLOSES_MM, Figure, FigureKind, PIPE_SOURCE, SQUEEZE_SOURCE, Station, Strength, crush,
};
use crate::finding::{COMMON_PRACTICE, Finding, Kind, Part, Report, Severity};
use crate::steel::HOT_SOURCE;
use crate::tongs::document::Document;
use crate::tongs::model::Model;

/// A clip that presses with less than this lets the work slip, N: a tenth of an ordinary squeeze
/// (common practice, no source).
const LEAST_CLIP_N: f64 = 10.0;

/// What is worth telling about the strength, in no order.
pub fn findings(document: &Document, model: &Model, strength: &Strength) -> Vec<Finding> {
    let mut say = Say {
        strength,
        report: Report::new(document.units.show()),
    };
    say.rein();
    say.boss();
    say.neck();
    say.joint();
    say.spring(model);
    say.pipe(document, model);
    say.report.into_found()
}

struct Say<'a> {
    strength: &'a Strength,
    report: Report,
}

impl Say<'_> {
    fn size(&self, mm: f64) -> String {
        self.report.size(mm)
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
        self.report
            .at(severity, Kind::ReinBends, station.part)
            .held(stress, station.limit_mpa)
            .say(message, hint, source);
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
        self.report
            .at(severity, Kind::BossBends, Part::Boss)
            .held(stress, station.limit_mpa)
            .say(message, hint, source);
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
        self.report
            .at(severity, Kind::NeckBends, station.part)
            .held(stress, station.limit_mpa)
            .say(message, hint, source);
    }

    fn joint(&mut self) {
        let strength = self.strength;
        for figure in strength.figures.iter().filter(|figure| !figure.holds()) {
            match figure.what {
                FigureKind::RivetShearAllowable | FigureKind::RivetShearDesign => {
                    self.overloaded(figure, Kind::RivetShears);
                }
                FigureKind::HoleBearing => self.overloaded(figure, Kind::HoleCrushes),
                FigureKind::ReinBending
                | FigureKind::ShoulderBending
                | FigureKind::BossBending
                | FigureKind::HoleBending
                | FigureKind::NeckBending
                | FigureKind::JawBending
                | FigureKind::JawRootBending
                | FigureKind::HoleToEdge
                | FigureKind::ReinsGive
                | FigureKind::ClipForce => {}
            }
        }
    }

    fn overloaded(&mut self, figure: &Figure, kind: Kind) {
        let n = figure.squeeze_n;
        let message = format!(
            "squeezed with {n:.0} N the {} takes {:.1} kN, it bears {:.1} kN",
            figure.what.name(),
            figure.value / 1000.0,
            figure.limit / 1000.0
        );
        let hint = "take a thicker rivet, or a thicker or larger boss";
        self.report
            .mend(kind, figure.part)
            .held(figure.value, figure.limit)
            .say(message, hint, figure.source);
    }

    /// Pipe whose wall the squeeze would bend in.
    fn pipe(&mut self, document: &Document, model: &Model) {
        let Some(crush) = crush(&document.work, model, self.strength) else {
            return;
        };
        let load = &self.strength.load;
        let squeezes = [
            (load.ordinary_n, Severity::Mend),
            (load.strong_n, Severity::Mend),
            (load.full_n, Severity::Note),
        ];
        let bends = |n: f64| crush.stress_per_n * n > crush.limit_mpa;
        let Some((n, severity)) = squeezes.into_iter().find(|(n, _)| bends(*n)) else {
            return;
        };
        let stress = crush.stress_per_n * n;
        let message = format!(
            "squeezed with {n:.0} N the pipe is crushed: {stress:.0} MPa in its wall, and steel of pipe bears {:.0}",
            crush.limit_mpa
        );
        let hint = "hold it in a V or in hollow bits, over more of its length, or put a plug in it";
        self.report
            .at(severity, Kind::PipeCrushed, Part::Work)
            .held(stress, crush.limit_mpa)
            .say(message, hint, PIPE_SOURCE);
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
            self.report
                .mend(Kind::ReinsWhippy, Part::Rein)
                .held(ordinary.closes_mm, half)
                .say(message, hint, COMMON_PRACTICE);
        } else if clip < LEAST_CLIP_N {
            let message = format!(
                "the reins are too soft for a clip: closed by {} it presses with {clip:.1} N, under {LEAST_CLIP_N:.0} N",
                self.size(CLIP_CLOSES_MM)
            );
            let hint = "leave the reins thicker, or hold the pair by hand";
            self.report
                .note(Kind::ClipSoft, Part::Rein)
                .held(clip, LEAST_CLIP_N)
                .say(message, hint, COMMON_PRACTICE);
        }
        let most = self.strength.load.strong_n;
        if clip > most {
            let message = format!(
                "the reins are too stiff for a clip: to close them by {} takes {clip:.0} N, over {most:.0} N",
                self.size(CLIP_CLOSES_MM)
            );
            let hint = "draw the reins thinner or longer if a clip is wanted";
            self.report
                .note(Kind::ClipStiff, Part::Rein)
                .held(clip, most)
                .say(message, hint, SQUEEZE_SOURCE);
        }
    }
}
