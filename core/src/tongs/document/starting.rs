use super::{
    Boss, BossShape, Document, FORMAT, Hand, HeadKind, Neck, Rein, ReinEnd, ReinLine, Rivet,
    Shoulder,
};
use crate::asked::{
    Allowances, Bar, Choice, Edge, Hole, Layout, PlainSection, Stock, Units, Work, capital,
    says_lie,
};
use crate::paper::Projection;
use crate::tongs::jaw::{Jaw, JawKind};
use crate::units::{Length, MM_PER_64TH, MM_PER_SIXTEENTH, Unit};

impl Work {
    /// Turned as a jaw style takes it at its best: a square goes into a V on its
    /// corners, between flat faces on its flats.
    #[must_use]
    pub fn laid_for(mut self, jaw: JawKind) -> Self {
        if let Some(wanted) = jaw.lie() {
            self.lay(wanted);
        }
        self
    }

    /// Laid as the text that names it says, or else for a jaw style.
    #[must_use]
    pub fn laid_as_said(self, text: &str, jaw: JawKind) -> Self {
        if says_lie(text) {
            self
        } else {
            self.laid_for(jaw)
        }
    }
}

impl Document {
    /// The name that a new pair with this jaw and this work gets: `V bit tongs for 3/4 in square`.
    pub fn usual_name(&self) -> String {
        title(&self.jaw, &self.work)
    }

    /// A whole pair in proportion to the work and the bar, in the sizes that trade practice
    /// gives (ratios: common practice, no source).
    pub fn starting(jaw: JawKind, work: Work, bar: Bar) -> Self {
        let jaw = Jaw::suited(jaw, &work, &bar);
        let unit = bar.stock.size().unit();
        let side = bar.stock.equal_square_mm();
        let of_bar = |ratio: f64| Length::measured(ratio * side, unit);
        let inches = |over: u32, under: u32, mm: f64| match unit {
            Unit::Inch | Unit::Foot => Length::fraction(over, under, Unit::Inch),
            Unit::Millimetre | Unit::Centimetre => Length::decimal(mm, Unit::Millimetre),
        };
        let boss_thickness = match bar.stock {
            Stock::Flat { thickness, .. } => Length::measured(thickness.mm() / 2.0, unit),
            Stock::Round { .. } | Stock::Square { .. } => Length::measured(0.55 * side, unit),
        };
        let rivet = rivet_for(side, unit);
        let inch = matches!(unit, Unit::Inch | Unit::Foot);
        Self {
            format: FORMAT,
            name: title(&jaw, &work),
            note: String::new(),
            units: if inch { Units::Inch } else { Units::Millimetre },
            projection: if inch {
                Projection::ThirdAngle
            } else {
                Projection::FirstAngle
            },
            hand: Hand::Left,
            work,
            bar,
            jaw,
            second_jaw: None,
            neck: Neck {
                depth: of_bar(0.66),
                fillet: of_bar(0.25),
            },
            boss: Boss {
                shape: BossShape::Round,
                across: of_bar(1.5),
                along: of_bar(1.8),
                thickness: boss_thickness,
            },
            shoulder: Shoulder {
                length: of_bar(0.8),
                depth: of_bar(0.72),
                fillet: of_bar(0.25),
            },
            rein: Rein {
                length: match side {
                    ..14.0 => inches(10, 1, 250.0),
                    ..17.0 => inches(13, 1, 330.0),
                    _ => inches(15, 1, 380.0),
                },
                line: ReinLine::Parallel { bend: of_bar(4.0) },
                start: PlainSection::Rectangle {
                    depth: of_bar(0.72),
                    width: of_bar(0.64),
                    edge: Edge::Chamfer(of_bar(0.1)),
                },
                end: PlainSection::Round {
                    diameter: rein_end_for(side, unit),
                },
                parallel: inches(3, 1, 75.0),
                hand: inches(3, 1, 75.0),
                gap: inches(5, 4, 32.0),
                hand_zone: None,
                finish: ReinEnd::Rounded,
            },
            rivet,
            layout: Layout::DoubleEnded,
            allowances: Allowances::usual(unit),
        }
    }
}

/// `V bit tongs for 3/4 in square`.
fn title(jaw: &Jaw, work: &Work) -> String {
    let shape = work.way();
    capital(&format!("{} tongs for {} {shape}", jaw.name(), work.size()))
}

/// A rein end between 1/4 and 1/2 in, or 6 and 12 mm, about half the bar (common practice, no
/// source).
fn rein_end_for(side: f64, unit: Unit) -> Length {
    match unit {
        Unit::Inch | Unit::Foot => {
            let sixteenths = (0.5 * side / MM_PER_SIXTEENTH).round().clamp(4.0, 8.0);
            Length::from_mm(sixteenths * MM_PER_SIXTEENTH, Unit::Inch)
        }
        Unit::Millimetre | Unit::Centimetre => {
            Length::decimal((0.5 * side).round().clamp(6.0, 12.0), Unit::Millimetre)
        }
    }
}

/// A rivet of about 0.45 of the bar's side, in the sizes that are sold, 1/32 in or 0.3 mm of play
/// in the hole (common practice, no source).
fn rivet_for(side: f64, unit: Unit) -> Rivet {
    let (diameter, hole) = match unit {
        Unit::Inch | Unit::Foot => {
            let sixteenths = (0.43 * side / MM_PER_SIXTEENTH).round().clamp(3.0, 12.0);
            let diameter = Length::from_mm(sixteenths * MM_PER_SIXTEENTH, Unit::Inch);
            (
                diameter,
                Length::from_mm(diameter.mm() + MM_PER_64TH, Unit::Inch),
            )
        }
        Unit::Millimetre | Unit::Centimetre => {
            let mm = [5.0, 6.0, 8.0, 10.0, 12.0, 16.0];
            let mm = mm
                .into_iter()
                .min_by(|a, b| (a - 0.43 * side).abs().total_cmp(&(b - 0.43 * side).abs()));
            let mm = mm.unwrap_or(8.0);
            (
                Length::decimal(mm, Unit::Millimetre),
                Length::decimal(mm + 0.3, Unit::Millimetre),
            )
        }
    };
    Rivet {
        diameter,
        hole,
        made: Hole::Punched,
        head: HeadKind::Button,
    }
}
