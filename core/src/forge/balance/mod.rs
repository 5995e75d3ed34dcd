//! The account that turns finished volume back into length of bar.
//!
//! Steel keeps its volume under the hammer, so a part of so many mm³ takes `volume / bar area` mm
//! of bar. On top of that come the losses. Each has its place on the bar, so that the stretches
//! between the marks add up to the whole bar and to nothing else:
//!
//! - scale and the smith's own margin lengthen every part in proportion;
//! - what the hole loses is cut out of the part that it goes through;
//! - dressing is left at the part that is filed most, the jaw of a half, the edge of a chisel;
//! - a handling tail follows the last part, the rein of a half, the struck end of a tool;
//! - every piece has one cut: the two of a blank for both halves are the one in the middle and
//!   the one that takes the blank off the bar;
//! - the crop comes off the bar's end once, before the first piece.

mod rule;

use crate::asked::{Allowances, Bar, Hole, Layout, Units};
use crate::finding::Part;
use crate::shape::{Opening, Piece, SlotEnd, Stretch as Steel};
use crate::steel::DENSITY_KG_MM3;
use crate::units::{Length, Unit};

use rule::{Rule, Side};

/// Diameter of the punch that starts a hole, as part of the finished hole: it is drifted up to
/// size from there (common practice, no source).
pub const PUNCH_TO_HOLE: f64 = 0.6;

/// How much of the boss's thickness comes out as the slug: the first punch sinks until it is
/// solid against the anvil, and what is left in front of it is knocked out from the other side
/// (common practice, no source). All the rest of the hole is pushed aside and stays in the boss.
pub const SLUG_TO_THICKNESS: f64 = 1.0 / 3.0;

/// A part of a piece as bar.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PartBar {
    /// The part.
    pub part: Part,
    /// Its finished length along the piece, mm.
    pub finished_length_mm: f64,
    /// Its finished volume, mm³.
    pub volume_mm3: f64,
    /// The length of bar that holds this volume, mm.
    pub bar_length_mm: f64,
}

/// What the bar loses, or keeps in reserve.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Loss {
    /// Burnt to scale.
    Scale,
    /// Knocked out of a punched hole.
    Slug,
    /// Cut out of a drilled hole.
    DrilledHole,
    /// Filed and ground.
    Dressing,
    /// The smith's own margin.
    OwnMargin,
    /// Gone in a cut.
    Kerf,
    /// Left on as a handle.
    Tail,
    /// Cut off the bar's ragged end.
    Crop,
}

impl Loss {
    /// What the smith reads.
    pub fn name(self) -> &'static str {
        match self {
            Self::Scale => "scale",
            Self::Slug => "slug",
            Self::DrilledHole => "drilled hole",
            Self::Dressing => "dressing",
            Self::OwnMargin => "own margin",
            Self::Kerf => "kerf",
            Self::Tail => "handling tail",
            Self::Crop => "crop",
        }
    }
}

/// A loss as bar.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Allowance {
    /// What it is for.
    pub what: Loss,
    /// As length of bar, mm.
    pub bar_length_mm: f64,
}

/// A place on the cold bar.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// From the bar's left end, mm, exact.
    pub at_mm: f64,
    /// The same as it is set off with a rule, on a rule in inches and on one in millimetres.
    set_mm: [f64; 2],
    /// What the mark is.
    pub what: String,
}

/// A length that lies on a mark of the rule.
fn on_rule(mm: [f64; 2], units: Units) -> Length {
    match units {
        Units::Inch => Length::from_mm(mm[0], Unit::Inch),
        Units::Millimetre => Length::from_mm(mm[1], Unit::Millimetre),
    }
}

impl Mark {
    /// The mark as it is set off on the bar, from its left end: to 1/16 in or 0.5 mm.
    pub fn measured(&self, units: Units) -> Length {
        on_rule(self.set_mm, units)
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

/// One piece's account.
#[derive(Debug, Clone, PartialEq)]
pub struct PieceBalance {
    /// Finished volume, mm³.
    pub volume_mm3: f64,
    /// Finished mass, kg.
    pub mass_kg: f64,
    /// Bar for it with all its allowances, mm: what the parts and the allowances add up to.
    pub bar_length_mm: f64,
    /// Its parts, in order along the bar.
    pub parts: Vec<PartBar>,
    /// What is lost or added.
    pub allowances: Vec<Allowance>,
}

/// The whole account.
#[derive(Debug, Clone, PartialEq)]
pub struct Balance {
    /// Bar cross-section, mm².
    pub bar_area_mm2: f64,
    /// Every piece that is wanted: of one that is wanted twice, the same account twice.
    pub pieces: Vec<PieceBalance>,
    /// What the bar loses once for all pieces.
    pub allowances: Vec<Allowance>,
    /// Bar for all pieces, mm, exact: theirs and what is lost once.
    pub bar_length_mm: f64,
    /// The length to cut as it is set off with a rule, on a rule in inches and on one in millimetres.
    cut_mm: [f64; 2],
    /// Marks along the bar for the layout.
    pub marks: Vec<Mark>,
    /// What each stretch of the bar becomes, from end to end without a gap.
    pub stretches: Vec<Stretch>,
}

impl Balance {
    /// The length to cut: from the bar's left end to the mark behind which it is cut off, rounded
    /// up to what a rule shows. The kerf of that cut lies beyond it.
    pub fn cut_length(&self, units: Units) -> Length {
        on_rule(self.cut_mm, units)
    }

    /// Why no bar can be reckoned, in one sentence without a period: more is cut out of a part
    /// than it has, so that its volume is below nothing. `None` when a bar can.
    pub fn trouble(&self) -> Option<String> {
        let part = self.bored_out()?;
        Some(format!(
            "{part}: more is cut out of it than it has, so that no bar can be reckoned: make the hole smaller, or leave more steel there"
        ))
    }

    /// The part out of which more is cut than it has; `None` where every part keeps some steel.
    pub fn bored_out(&self) -> Option<Part> {
        let parts = self.pieces.iter().flat_map(|piece| &piece.parts);
        let mut below = parts.filter(|part| part.volume_mm3.is_nan() || part.volume_mm3 < 0.0);
        below.next().map(|part| part.part)
    }

    /// The length to cut as text; where no bar can be reckoned, that there is none.
    pub fn cut_text(&self, units: Units) -> String {
        match self.trouble() {
            None => self.cut_length(units).to_string(),
            Some(_) => "none".to_owned(),
        }
    }

    /// A mark as it is set off from the end of the length that is cut.
    pub fn from_end(&self, mark: &Mark, units: Units) -> Length {
        let (cut, at) = (self.cut_length(units), mark.measured(units));
        Length::from_mm(cut.mm() - at.mm(), cut.unit())
    }

    /// Where an exact place on the bar comes to lie once the marks are set off, mm: marks go to
    /// theirs, and what lies between two of them keeps its share.
    pub fn set_off_mm(&self, at_mm: f64, units: Units) -> f64 {
        let next = self.marks.partition_point(|mark| mark.at_mm <= at_mm);
        let set = |mark: &Mark| mark.measured(units).mm();
        let (Some(a), Some(b)) = (self.marks.get(next.wrapping_sub(1)), self.marks.get(next))
        else {
            return self.cut_length(units).mm();
        };
        let part = (at_mm - a.at_mm) / (b.at_mm - a.at_mm);
        set(a) + part * (set(b) - set(a))
    }

    /// Mass of the length to cut, kg, as the cut list has it.
    pub fn cut_mass_kg(&self, units: Units) -> f64 {
        self.cut_length(units).mm() * self.bar_area_mm2 * DENSITY_KG_MM3
    }

    /// Mass of the bar before anything is lost, kg.
    pub fn bar_mass_kg(&self) -> f64 {
        self.bar_length_mm * self.bar_area_mm2 * DENSITY_KG_MM3
    }
}

/// What pieces are forged from, and what is lost on the way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FromBar<'a> {
    /// The bar.
    pub bar: &'a Bar,
    /// How the pieces come out of it.
    pub layout: Layout,
    /// What it loses.
    pub losses: &'a Allowances,
    /// How holes are made.
    pub holes: Hole,
}

/// Balances pieces to their bar.
///
/// What a piece takes from the bar is `Σ volume / area` of its parts and its allowances, and all
/// are the pieces with the crop: volume in is `bar_length_mm · bar_area_mm2`.
pub fn balance(pieces: &[Piece], from: &FromBar<'_>) -> Balance {
    let account = Account::new(from);
    let accounts: Vec<Reckoned<'_>> = pieces
        .iter()
        .flat_map(|piece| {
            let balance = account.piece(piece);
            (0..piece.wanted).map(move |_| (piece, balance.clone()))
        })
        .collect();
    let allowances = vec![Allowance {
        what: Loss::Crop,
        bar_length_mm: account.crop,
    }];
    let own: f64 = accounts.iter().map(|(_, a)| a.bar_length_mm).sum();
    let (stretches, marks) = account.lay_out(&accounts);
    let cut = marks.last().map_or([0.0; 2], |mark| mark.set_mm);
    Balance {
        bar_area_mm2: account.area,
        bar_length_mm: own + account.crop,
        cut_mm: cut,
        pieces: accounts.into_iter().map(|(_, balance)| balance).collect(),
        allowances,
        marks,
        stretches,
    }
}

/// A piece with its account.
type Reckoned<'a> = (&'a Piece, PieceBalance);

/// The bar and its losses in plain numbers.
struct Account {
    area: f64,
    layout: Layout,
    scale: f64,
    margin: f64,
    hole: Hole,
    dressing: f64,
    kerf: f64,
    crop: f64,
}

impl Account {
    fn new(from: &FromBar<'_>) -> Self {
        let losses = from.losses;
        Self {
            area: from.bar.stock.area_mm2(),
            layout: from.layout,
            scale: losses.scale.total_percent() / 100.0,
            margin: losses.margin / 100.0,
            hole: from.holes,
            dressing: losses.dressing.mm(),
            kerf: losses.kerf.mm(),
            crop: losses.crop.mm(),
        }
    }

    fn tail(&self) -> f64 {
        match self.layout {
            Layout::Single { tail } => tail.mm(),
            Layout::BothOnOneBar => 0.0,
        }
    }

    /// What one hole takes away, mm³.
    fn hole_loss(&self, hole: &crate::shape::Hole) -> f64 {
        match hole.opening {
            Opening::Rivet { .. } => {}
            Opening::Slot(slot) => match slot.end {
                SlotEnd::Round => {}
                SlotEnd::Open | SlotEnd::Vee(_) => return 0.0,
            },
            Opening::Cup(_) => return 0.0,
        }
        match self.hole {
            Hole::Drilled => hole.volume_mm3,
            Hole::Punched => hole.volume_mm3 * PUNCH_TO_HOLE.powi(2) * SLUG_TO_THICKNESS,
        }
    }

    /// What the holes of a piece take away, mm³; of one of its stretches if it is named.
    fn holes_loss(&self, piece: &Piece, stretch: Option<usize>) -> f64 {
        let holes = piece.holes.iter();
        holes
            .filter(|hole| stretch.is_none_or(|at| at == hole.stretch))
            .map(|hole| self.hole_loss(hole))
            .sum()
    }

    fn piece(&self, piece: &Piece) -> PieceBalance {
        let part = |steel: &Steel| PartBar {
            part: steel.part,
            finished_length_mm: steel.length_mm(),
            volume_mm3: steel.mass.volume,
            bar_length_mm: steel.mass.volume / self.area,
        };
        let parts: Vec<PartBar> = piece.stretches.iter().map(part).collect();
        let volume_mm3: f64 = parts.iter().map(|part| part.volume_mm3).sum();
        let finished: f64 = parts.iter().map(|part| part.bar_length_mm).sum();
        let allowances = self.losses(piece, finished);
        let lost: f64 = allowances.iter().map(|a| a.bar_length_mm).sum();
        PieceBalance {
            volume_mm3,
            mass_kg: volume_mm3 * DENSITY_KG_MM3,
            bar_length_mm: finished + lost,
            parts,
            allowances,
        }
    }

    fn losses(&self, piece: &Piece, finished: f64) -> Vec<Allowance> {
        let scale = self.scale * finished;
        let hole = self.holes_loss(piece, None) / self.area;
        // A cut and a tail are not forged: the margin is on what is.
        let margin = self.margin * (finished + scale + hole + self.dressing);
        let taken = match self.hole {
            Hole::Drilled => Loss::DrilledHole,
            Hole::Punched => Loss::Slug,
        };
        let all = [
            (Loss::Scale, scale),
            (taken, hole),
            (Loss::Dressing, self.dressing),
            (Loss::OwnMargin, margin),
            (Loss::Kerf, self.kerf),
            (Loss::Tail, self.tail()),
        ];
        all.map(|(what, bar_length_mm)| Allowance {
            what,
            bar_length_mm,
        })
        .into()
    }

    /// The bar that the stretch at a place takes with its share of what is lost while forging.
    fn stretch(&self, (piece, balance): &Reckoned<'_>, at: usize) -> f64 {
        let dressing = if at == piece.dressed {
            self.dressing
        } else {
            0.0
        };
        let own = dressing + self.holes_loss(piece, Some(at)) / self.area;
        (balance.parts[at].bar_length_mm * (1.0 + self.scale) + own) * (1.0 + self.margin)
    }

    /// Length after length along the bar, each cut off it in one: a blank for two pieces, of which
    /// the second lies the other way round, or a piece alone.
    fn lay_out(&self, pieces: &[Reckoned<'_>]) -> (Vec<Stretch>, Vec<Mark>) {
        let mut rule = Rule::default();
        rule.mark("end", Side::Bar);
        if self.crop > 0.0 {
            rule.lose(self.crop);
            let first = pieces.first().map_or("piece", |own| own.0.ends().0);
            rule.mark(format!("crop | {first}"), Side::Bar);
        }
        let together = match self.layout {
            Layout::BothOnOneBar => 2,
            Layout::Single { .. } => 1,
        };
        let mut lengths = pieces.chunks(together).peekable();
        while let Some(length) = lengths.next() {
            // A piece alone has no middle that is to lie on the rule.
            let even = matches!(length, [first, second] if first.1 == second.1);
            rule.begin(even);
            self.first_first(&length[0], &mut rule);
            if let Some(second) = length.get(1) {
                rule.cut(self.kerf, "cut", Side::Middle);
                self.last_first(second, &mut rule);
            }
            rule.end();
            let last = lengths.peek().is_none();
            rule.cut(self.kerf, if last { "cut off" } else { "cut" }, Side::End);
        }
        rule.set_off()
    }

    /// A piece with its first part to the left.
    fn first_first(&self, reckoned: &Reckoned<'_>, rule: &mut Rule) {
        let (piece, balance) = reckoned;
        for (at, part) in balance.parts.iter().enumerate() {
            rule.take(self.stretch(reckoned, at), part.part);
            let marks = piece.marked_after(at);
            marks.for_each(|mark| rule.mark(mark.what, Side::Left));
        }
        if self.tail() > 0.0 {
            rule.mark(format!("{} | tail", piece.ends().1), Side::Left);
            rule.lose(self.tail());
        }
    }

    /// A piece with its last part to the left; a blank for two has no tail.
    fn last_first(&self, reckoned: &Reckoned<'_>, rule: &mut Rule) {
        let (piece, balance) = reckoned;
        for (at, part) in balance.parts.iter().enumerate().rev() {
            rule.take(self.stretch(reckoned, at), part.part);
            let before = at.checked_sub(1).into_iter();
            let marks = before.flat_map(|before| piece.marked_after(before));
            marks.for_each(|mark| rule.mark(mark.reversed, Side::Right));
        }
    }
}

impl PieceBalance {
    /// A loss as length of bar, mm; nothing if this piece has none of that kind.
    pub fn allowance(&self, what: Loss) -> f64 {
        let named = self.allowances.iter().find(|a| a.what == what);
        named.map_or(0.0, |a| a.bar_length_mm)
    }
}
