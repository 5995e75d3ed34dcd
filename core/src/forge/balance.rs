//! The account that turns finished volume back into length of bar.
//!
//! Steel keeps its volume under the hammer, so a part of so many mm³ takes `volume / bar area` mm
//! of bar. On top of that come the losses. Each has its place on the bar, so that the stretches
//! between the marks add up to the whole bar and to nothing else:
//!
//! - scale and the smith's own margin lengthen every part in proportion;
//! - what the hole loses is cut out of the boss;
//! - dressing is left at the jaw, which is filed most;
//! - a handling tail follows the rein;
//! - every half has one cut: the two of a double-ended blank are the one in the middle and the
//!   one that takes the blank off the bar;
//! - the crop comes off the bar's end once, before the first jaw.

use crate::asked::{Hole, Layout, Units};
use crate::finding::Part;
use crate::shape::Mass;
use crate::steel::DENSITY_KG_MM3;
use crate::tongs::document::Document;
use crate::tongs::model::{Half, Model, PARTS};
use crate::units::{Length, Unit};

/// Diameter of the punch that starts a hole, as part of the finished hole: it is drifted up to
/// size from there (common practice, no source).
pub const PUNCH_TO_HOLE: f64 = 0.6;

/// How much of the boss's thickness comes out as the slug: the first punch sinks until it is
/// solid against the anvil, and what is left in front of it is knocked out from the other side
/// (common practice, no source). All the rest of the hole is pushed aside and stays in the boss.
pub const SLUG_TO_THICKNESS: f64 = 1.0 / 3.0;

/// A part of a half as bar.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PartBar {
    /// The part.
    pub part: Part,
    /// Its finished length along the tongs or along the rein, mm.
    pub finished_length_mm: f64,
    /// Its finished volume, mm³.
    pub volume_mm3: f64,
    /// The length of bar that holds this volume, mm.
    pub bar_length_mm: f64,
}

/// Something the bar loses or keeps in reserve.
#[derive(Debug, Clone, PartialEq)]
pub struct Allowance {
    /// What it is for.
    pub what: &'static str,
    /// As length of bar, mm.
    pub bar_length_mm: f64,
}

/// A place on the cold bar.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// From the bar's left end, mm, exact.
    pub at_mm: f64,
    /// What the mark is.
    pub what: String,
}

impl Mark {
    /// The mark as it is set off on the bar: to the nearest 1/16 in or 0.5 mm.
    pub fn measured(&self, units: Units) -> Length {
        let nearest = |step: f64| (self.at_mm / step).round() * step;
        match units {
            Units::Inch => Length::from_mm(nearest(Unit::Inch.mm() / 16.0), Unit::Inch),
            Units::Millimetre => Length::from_mm(nearest(0.5), Unit::Millimetre),
        }
    }
}

/// A coloured stretch of the bar.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stretch {
    /// From, mm from the bar's left end.
    pub from_mm: f64,
    /// To.
    pub to_mm: f64,
    /// What it becomes; `None` is lost or left over.
    pub part: Option<Part>,
}

/// One half's account.
#[derive(Debug, Clone, PartialEq)]
pub struct HalfBalance {
    /// Finished volume, mm³.
    pub volume_mm3: f64,
    /// Finished mass, kg.
    pub mass_kg: f64,
    /// Bar for it with all its allowances, mm: what the parts and the allowances add up to.
    pub bar_length_mm: f64,
    /// Its parts, from jaw to rein.
    pub parts: Vec<PartBar>,
    /// What is lost or added.
    pub allowances: Vec<Allowance>,
}

/// The whole account.
#[derive(Debug, Clone, PartialEq)]
pub struct Balance {
    /// Bar cross-section, mm².
    pub bar_area_mm2: f64,
    /// Half A, and half B (the same numbers unless the jaws differ).
    pub halves: [HalfBalance; 2],
    /// What the bar loses once for both halves.
    pub allowances: Vec<Allowance>,
    /// Bar for the pair, mm: both halves and what is lost once.
    pub pair_bar_length_mm: f64,
    /// Mass of the finished pair with its rivet, kg.
    pub pair_mass_kg: f64,
    /// Marks along the bar for the layout.
    pub marks: Vec<Mark>,
    /// What each stretch of the bar becomes, from end to end without a gap.
    pub stretches: Vec<Stretch>,
}

impl Balance {
    /// Mass of the bar before anything is lost, kg.
    pub fn bar_mass_kg(&self) -> f64 {
        self.pair_bar_length_mm * self.bar_area_mm2 * DENSITY_KG_MM3
    }
}

/// Balances a pair to its bar.
///
/// What a half takes from the bar is `Σ volume / area` of its parts and its allowances, and a
/// pair is its two halves with the crop: volume in is `pair_bar_length_mm · bar_area_mm2`.
pub fn balance(document: &Document, model: &Model) -> Balance {
    let account = Account::new(document);
    let masses = model.part_masses();
    let first = account.half(&model.a, Part::Jaw, &masses[0]);
    let other = if model.alike {
        first.clone()
    } else {
        account.half(&model.b, Part::SecondJaw, &masses[1])
    };
    let halves = [first, other];
    let allowances = vec![Allowance {
        what: "crop",
        bar_length_mm: account.crop,
    }];
    let lost: f64 = allowances.iter().map(|a| a.bar_length_mm).sum();
    let (stretches, marks) = account.lay_out(&halves);
    Balance {
        bar_area_mm2: account.area,
        pair_bar_length_mm: halves[0].bar_length_mm + halves[1].bar_length_mm + lost,
        pair_mass_kg: model.mass_kg(),
        halves,
        allowances,
        marks,
        stretches,
    }
}

/// The bar and its losses in plain numbers.
struct Account {
    area: f64,
    layout: Layout,
    scale: f64,
    slop: f64,
    hole: Hole,
    dressing: f64,
    kerf: f64,
    crop: f64,
}

impl Account {
    fn new(document: &Document) -> Self {
        let losses = &document.allowances;
        Self {
            area: document.bar.stock.area_mm2(),
            layout: document.layout,
            scale: losses.scale.total_percent() / 100.0,
            slop: losses.slop / 100.0,
            hole: document.rivet.made,
            dressing: losses.dressing.mm(),
            kerf: losses.kerf.mm(),
            crop: losses.crop.mm(),
        }
    }

    fn tail(&self) -> f64 {
        match self.layout {
            Layout::Single { tail } => tail.mm(),
            Layout::DoubleEnded => 0.0,
        }
    }

    /// What the hole takes away, mm³.
    fn hole_loss(&self, half: &Half) -> f64 {
        let whole = half.body.hole_mass().volume;
        match self.hole {
            Hole::Drilled => whole,
            Hole::Punched => whole * PUNCH_TO_HOLE.powi(2) * SLUG_TO_THICKNESS,
        }
    }

    fn half(&self, half: &Half, jaw: Part, masses: &[Mass; 5]) -> HalfBalance {
        let named = |part: Part| if part == Part::Jaw { jaw } else { part };
        let parts: Vec<PartBar> = PARTS
            .into_iter()
            .zip(masses)
            .map(|(part, mass)| self.part(half, named(part), mass.volume))
            .collect();
        let volume_mm3: f64 = parts.iter().map(|part| part.volume_mm3).sum();
        let finished: f64 = parts.iter().map(|part| part.bar_length_mm).sum();
        let allowances = self.losses(half, finished);
        let lost: f64 = allowances.iter().map(|a| a.bar_length_mm).sum();
        HalfBalance {
            volume_mm3,
            mass_kg: volume_mm3 * DENSITY_KG_MM3,
            bar_length_mm: finished + lost,
            parts,
            allowances,
        }
    }

    fn part(&self, half: &Half, part: Part, volume_mm3: f64) -> PartBar {
        PartBar {
            part,
            finished_length_mm: finished_length_mm(half, part),
            volume_mm3,
            bar_length_mm: volume_mm3 / self.area,
        }
    }

    fn losses(&self, half: &Half, finished: f64) -> Vec<Allowance> {
        let scale = self.scale * finished;
        let hole = self.hole_loss(half) / self.area;
        // A cut and a tail do not become tongs: the margin is on what is forged.
        let slop = self.slop * (finished + scale + hole + self.dressing);
        let hole_name = match self.hole {
            Hole::Drilled => "drilled hole",
            Hole::Punched => "slug",
        };
        let all = [
            ("scale", scale),
            (hole_name, hole),
            ("dressing", self.dressing),
            ("own margin", slop),
            ("kerf", self.kerf),
            ("handling tail", self.tail()),
        ];
        all.map(|(what, bar_length_mm)| Allowance {
            what,
            bar_length_mm,
        })
        .into()
    }

    /// The bar that one part takes with its share of what is lost while forging.
    fn stretch(&self, half: &HalfBalance, part: &PartBar) -> f64 {
        let own = match part.part {
            Part::Jaw | Part::SecondJaw => self.dressing,
            Part::Boss => half.allowance("drilled hole") + half.allowance("slug"),
            Part::Work
            | Part::Bar
            | Part::Neck
            | Part::Shoulder
            | Part::Rein
            | Part::Rivet
            | Part::Pair => 0.0,
        };
        (part.bar_length_mm * (1.0 + self.scale) + own) * (1.0 + self.slop)
    }

    fn lay_out(&self, [a, b]: &[HalfBalance; 2]) -> (Vec<Stretch>, Vec<Mark>) {
        let mut rule = Rule::default();
        rule.mark("end");
        if self.crop > 0.0 {
            rule.lose(self.crop);
            rule.mark("crop | jaw");
        }
        self.jaw_first(a, &mut rule);
        rule.cut(self.kerf, "cut");
        match self.layout {
            Layout::DoubleEnded => self.rein_first(b, &mut rule),
            Layout::Single { .. } => self.jaw_first(b, &mut rule),
        }
        rule.cut(self.kerf, "cut off");
        (rule.stretches, rule.marks)
    }

    /// A half with its jaw to the left.
    ///
    /// The smith makes two marks: where the jaw ends, and where the boss ends. The first set-down
    /// is at the jaw's mark and leaves the neck on the boss's side of it; the third is at the
    /// boss's mark and thins what follows. So the neck is counted with the boss, and the shoulder
    /// with the rein.
    fn jaw_first(&self, half: &HalfBalance, rule: &mut Rule) {
        for part in &half.parts {
            rule.take(self.stretch(half, part), part.part);
            match part.part {
                Part::Jaw | Part::SecondJaw => rule.mark("jaw | neck and boss"),
                Part::Boss => rule.mark("boss | shoulder and rein"),
                Part::Rein => self.leave_tail(rule),
                Part::Work | Part::Bar | Part::Neck | Part::Shoulder | Part::Rivet | Part::Pair => {
                }
            }
        }
    }

    /// A half with its jaw to the right; a double-ended blank has no tail.
    fn rein_first(&self, half: &HalfBalance, rule: &mut Rule) {
        for part in half.parts.iter().rev() {
            rule.take(self.stretch(half, part), part.part);
            match part.part {
                Part::Shoulder => rule.mark("shoulder and rein | boss"),
                Part::Neck => rule.mark("boss and neck | jaw"),
                Part::Work
                | Part::Bar
                | Part::Jaw
                | Part::SecondJaw
                | Part::Boss
                | Part::Rein
                | Part::Rivet
                | Part::Pair => {}
            }
        }
    }

    fn leave_tail(&self, rule: &mut Rule) {
        if self.tail() > 0.0 {
            rule.mark("rein | tail");
            rule.lose(self.tail());
        }
    }
}

impl HalfBalance {
    /// An allowance as length of bar, mm; nothing if this half has none of that name.
    pub fn allowance(&self, what: &str) -> f64 {
        let named = self.allowances.iter().find(|a| a.what == what);
        named.map_or(0.0, |a| a.bar_length_mm)
    }
}

/// Lays stretch after stretch along the bar.
#[derive(Default)]
struct Rule {
    at: f64,
    stretches: Vec<Stretch>,
    marks: Vec<Mark>,
}

impl Rule {
    fn add(&mut self, length: f64, part: Option<Part>) {
        let from_mm = self.at;
        self.at += length;
        self.stretches.push(Stretch {
            from_mm,
            to_mm: self.at,
            part,
        });
    }

    fn take(&mut self, length: f64, part: Part) {
        self.add(length, Some(part));
    }

    fn lose(&mut self, length: f64) {
        self.add(length, None);
    }

    fn mark(&mut self, what: &str) {
        self.marks.push(Mark {
            at_mm: self.at,
            what: what.to_owned(),
        });
    }

    /// A cut, marked along its middle.
    fn cut(&mut self, kerf: f64, what: &str) {
        self.marks.push(Mark {
            at_mm: self.at + kerf / 2.0,
            what: what.to_owned(),
        });
        if kerf > 0.0 {
            self.lose(kerf);
        }
    }
}

/// Finished length of a part of a half, mm: along the rein for the rein, along x for all others.
fn finished_length_mm(half: &Half, part: Part) -> f64 {
    let edge = half.body.rim.half_along();
    match part {
        Part::Jaw | Part::SecondJaw => half.jaw.length(),
        Part::Neck => half.heel() - edge,
        Part::Boss => 2.0 * edge,
        Part::Shoulder => -half.rein_start().x - edge,
        Part::Rein => half.rein.length(),
        Part::Work | Part::Bar | Part::Rivet | Part::Pair => 0.0,
    }
}
