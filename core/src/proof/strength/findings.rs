//! What the strength has to say to the smith.

use super::rivet::GAMMA_M2;
use super::{
    CLIP_CLOSES_MM, Figure, FigureKind, PIPE_SOURCE, SQUEEZE_SOURCE, Squeeze, Station, Strength,
    crush,
};
use crate::finding::{COMMON_PRACTICE, Finding, Kind, Part, Report, Severity};
use crate::steel::HOT_SOURCE;
use crate::tongs::document::Document;
use crate::tongs::model::Model;
use crate::units::{Quantity, Show};

/// A clip that presses with less than this lets the work slip, N: a tenth of an ordinary squeeze
/// (common practice, no source).
const LEAST_CLIP_N: f64 = 10.0;

/// The sizes by which a section is left deeper, however it is told.
const REIN: &[&str] = &["depth", "diameter", "side", "flats"];
/// The same of a jaw or a neck.
const JAW: &[&str] = &["depth", "heel"];

/// What is worth telling about the strength, in no order.
pub fn findings(document: &Document, model: &Model, strength: &Strength) -> Vec<Finding> {
    let mut say = Say {
        strength,
        report: Report::new(document.units.show()),
    };
    say.rein();
    say.boss(model);
    say.neck();
    say.joint();
    say.spring(model);
    say.pipe(document, model);
    say.report.into_found()
}

/// How a station fails.
struct Fails {
    severity: Severity,
    hand_n: f64,
    verb: &'static str,
    bears: &'static str,
    stress_mpa: f64,
    limit_mpa: f64,
}

impl Fails {
    /// `squeezed with 160 N the neck bends for good: 240 MPa, the steel bears 220 MPa`.
    fn message(&self, what: &str, show: Show) -> String {
        let [stress, limit] = show.stresses(self.stress_mpa, self.limit_mpa);
        format!(
            "squeezed with {} {what}: {stress}, {} {limit}",
            show.force(self.hand_n),
            self.bears
        )
    }
}

/// How a joint is loaded.
#[derive(Clone, Copy)]
enum Under {
    Shear,
    Bearing,
}

impl Under {
    fn kind(self) -> Kind {
        match self {
            Self::Shear => Kind::RivetShears,
            Self::Bearing => Kind::HoleCrushes,
        }
    }

    /// What comes before the force.
    fn words(self) -> &'static str {
        match self {
            Self::Shear => "the rivet is sheared with",
            Self::Bearing => "the rivet presses its hole with",
        }
    }
}

struct Say<'a> {
    strength: &'a Strength,
    report: Report,
}

impl Say<'_> {
    fn size(&self, mm: f64) -> String {
        self.report.size(mm)
    }

    /// What a squeeze does to a station, if it does not hold: the least squeeze that bends it for
    /// good, unless a strong one would break it. All that a hand has is worth a word only where the
    /// reins do not meet first.
    fn judged(&self, station: &Station) -> Option<Fails> {
        let [ordinary, strong, full] = self.strength.squeezes;
        let breaks = self.strength.breaks_at_mpa(station.part);
        let over = |squeeze: Squeeze, limit: f64| station.stress_mpa(squeeze.hand_n) > limit;
        let bends = |squeeze: Squeeze| over(squeeze, station.limit_mpa);
        let (severity, squeeze) = if over(strong, breaks) {
            (Severity::Stop, strong)
        } else if bends(ordinary) {
            (Severity::Mend, ordinary)
        } else if bends(strong) {
            (Severity::Mend, strong)
        } else if bends(full) && !full.is_capped() {
            (Severity::Note, full)
        } else {
            return None;
        };
        let (verb, bears, limit_mpa) = match severity {
            Severity::Stop => ("breaks", "the steel breaks at", breaks),
            Severity::Mend | Severity::Note => {
                ("bends for good", "the steel bears", station.limit_mpa)
            }
        };
        Some(Fails {
            severity,
            hand_n: squeeze.hand_n,
            verb,
            bears,
            stress_mpa: station.stress_mpa(squeeze.hand_n),
            limit_mpa,
        })
    }

    fn rein(&mut self) {
        let parts = [Part::Rein, Part::Shoulder];
        let Some(station) = self.strength.worst_of(&parts).copied() else {
            return;
        };
        let Some(fails) = self.judged(&station) else {
            return;
        };
        let from = self.size(station.at.to_vec2().hypot());
        let what = format!("the {} {}, {from} from the rivet", station.part, fails.verb);
        let message = fails.message(&what, self.report.show());
        let hint = "leave it deeper there, or hold the pair nearer to the boss";
        let source = self.strength.steel.source;
        self.report
            .at(fails.severity, Kind::ReinBends, station.part)
            .held_as(Quantity::Stress, fails.stress_mpa, fails.limit_mpa)
            .advises(REIN)
            .say(message, hint, source);
    }

    fn boss(&mut self, model: &Model) {
        let Some(station) = self.strength.worst_of(&[Part::Boss]).copied() else {
            return;
        };
        // A hand at its full strength is allowed to spring a boss as it springs a rein.
        let fails = self.judged(&station);
        let Some(fails) = fails.filter(|fails| fails.severity > Severity::Note) else {
            return;
        };
        let hole = model.a.body.plate.hole_radius;
        let at = if station.at.to_vec2().hypot() < hole {
            "across"
        } else {
            "beside"
        };
        let what = format!("the boss {} {at} the hole", fails.verb);
        let message = fails.message(&what, self.report.show());
        let hint = "make the boss larger or thicker, or the rivet thinner";
        let source = self.strength.steel.source;
        self.report
            .at(fails.severity, Kind::BossBends, Part::Boss)
            .held_as(Quantity::Stress, fails.stress_mpa, fails.limit_mpa)
            .advises(&["across", "thickness"])
            .say(message, hint, source);
    }

    fn neck(&mut self) {
        let parts = [Part::Neck, Part::Jaw, Part::SecondJaw];
        let Some(station) = self.strength.worst_of(&parts).copied() else {
            return;
        };
        let Some(fails) = self.judged(&station) else {
            return;
        };
        let (celsius, show) = (self.strength.load.jaw_celsius, self.report.show());
        let (when, source) = if self.strength.hot.proportional_limit < 1.0 {
            (format!(" at {}", show.temperature(celsius)), HOT_SOURCE)
        } else {
            (String::new(), self.strength.steel.source)
        };
        let what = format!("the {} {}", station.part, fails.verb);
        let message = fails.message(&what, show) + &when;
        let hint = "leave more metal between boss and jaw, and cool the jaws between heats";
        self.report
            .at(fails.severity, Kind::NeckBends, station.part)
            .held_as(Quantity::Stress, fails.stress_mpa, fails.limit_mpa)
            .advises(JAW)
            .say(message, hint, source);
    }

    /// The rivet and its hole, each by the limit that it keeps least.
    fn joint(&mut self) {
        let worst = |kinds: &[FigureKind]| {
            let all = self.strength.figures.iter();
            let fails = all.filter(|it| kinds.contains(&it.what) && !it.holds());
            fails
                .min_by(|a, b| a.margin().total_cmp(&b.margin()))
                .copied()
        };
        let shear = worst(&[
            FigureKind::RivetShearAllowable,
            FigureKind::RivetShearDesign,
        ]);
        let bearing = worst(&[FigureKind::HoleBearing]);
        let of = |what: FigureKind| {
            let mut all = self.strength.figures.iter();
            all.find(|it| it.what == what)
                .map_or(f64::MAX, |it| it.limit)
        };
        let limits = (
            of(FigureKind::RivetShearDesign),
            of(FigureKind::HoleBearing),
        );
        if let Some(shear) = shear {
            self.overloaded(&shear, Under::Shear, limits.0);
        }
        if let Some(bearing) = bearing {
            self.overloaded(&bearing, Under::Bearing, limits.1);
        }
    }

    /// A joint that a strong squeeze takes past its full strength, the design resistance without
    /// its partial factor, gives way.
    fn overloaded(&mut self, figure: &Figure, under: Under, design_n: f64) {
        let strong = self.strength.squeezes[1];
        let full_n = GAMMA_M2 * design_n;
        let (severity, n, value, limit) = if strong.rivet_n > full_n {
            (Severity::Stop, strong.hand_n, strong.rivet_n, full_n)
        } else {
            (Severity::Mend, figure.squeeze_n, figure.value, figure.limit)
        };
        let show = self.report.show();
        let verb = match severity {
            Severity::Stop => "it gives way at",
            Severity::Mend | Severity::Note => "it bears",
        };
        let message = format!(
            "squeezed with {} {} {}: {verb} {}",
            show.force(n),
            under.words(),
            show.force(value),
            show.force(limit)
        );
        let hint = "take a thicker rivet, or a thicker or larger boss";
        self.report
            .at(severity, under.kind(), figure.part)
            .held_as(Quantity::Force, value, limit)
            .say(message, hint, figure.source);
    }

    /// Pipe whose wall the squeeze would bend in.
    fn pipe(&mut self, document: &Document, model: &Model) {
        let Some(crush) = crush(&document.work, model, self.strength) else {
            return;
        };
        let [ordinary, strong, full] = self.strength.squeezes;
        let bends = |squeeze: Squeeze| crush.stress_per_n * squeeze.hand_n > crush.limit_mpa;
        let (n, severity) = if bends(ordinary) {
            (ordinary.hand_n, Severity::Mend)
        } else if bends(strong) {
            (strong.hand_n, Severity::Mend)
        } else if bends(full) && !full.is_capped() {
            (full.hand_n, Severity::Note)
        } else {
            return;
        };
        let stress = crush.stress_per_n * n;
        let show = self.report.show();
        let message = format!(
            "squeezed with {} the pipe is crushed: {} in its wall, and steel of pipe bears {}",
            show.force(n),
            show.stress(stress),
            show.stress(crush.limit_mpa)
        );
        let hint = "hold it in a V or in hollow bits, over more of its length, or put a plug in it";
        self.report
            .at(severity, Kind::PipeCrushed, Part::Work)
            .held_as(Quantity::Stress, stress, crush.limit_mpa)
            .say(message, hint, PIPE_SOURCE);
    }

    fn spring(&mut self, model: &Model) {
        let ordinary = self.strength.squeezes[0];
        let clip = self.strength.clip_force_n;
        let half = model.hand_gap / 2.0;
        let show = self.report.show();
        if ordinary.closes_mm > half {
            let message = format!(
                "the reins are whippy: {} closes them by {}, over half the hand gap, {}",
                show.force(ordinary.hand_n),
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
                "the reins are too soft for a clip: closed by {} it presses with {}, under {}",
                self.size(CLIP_CLOSES_MM),
                show.force(clip),
                show.force(LEAST_CLIP_N)
            );
            let hint = "leave the reins thicker, or hold the pair by hand";
            self.report
                .note(Kind::ClipSoft, Part::Rein)
                .held_as(Quantity::Force, clip, LEAST_CLIP_N)
                .say(message, hint, COMMON_PRACTICE);
        }
        let most = self.strength.load.strong_n;
        if clip > most {
            let message = format!(
                "the reins are too stiff for a clip: to close them by {} takes {}, over {}",
                self.size(CLIP_CLOSES_MM),
                show.force(clip),
                show.force(most)
            );
            let hint = "draw the reins thinner or longer if a clip is wanted";
            self.report
                .note(Kind::ClipStiff, Part::Rein)
                .held_as(Quantity::Force, clip, most)
                .say(message, hint, SQUEEZE_SOURCE);
        }
    }
}
