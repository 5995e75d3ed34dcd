//! What is done to the steel of a tool, as names that its style chooses from, and what each makes of the
//! working end; the making knows how.

use std::ops::Range;

/// One thing that is done to a tool on its way.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Forging {
    /// The bar cut to its length.
    CutBar,
    /// The shank drawn square and tapered.
    DrawShank,
    /// The shank dropped hot into the hole and the shoulder hammered down on it.
    SetShoulder,
    /// The block upset to its size over the shoulder.
    UpsetBlock,
    /// The bar upset to a body that is stouter.
    UpsetBody,
    /// The working end upset where it is stouter than the bar.
    UpsetEnd,
    /// Bar hammered to the body's section.
    ShapeBody,
    /// A drift's bar hammered down to its full size.
    SizeFull,
    /// Drawn to a square taper, or one that is flat on all sides.
    TaperSquare,
    /// Its corners hammered in.
    TaperOctagon,
    /// Rounded.
    TaperRound,
    /// The sharp corners of a square taper broken.
    BreakCorners,
    /// A square taper hammered flat to a bit.
    FlattenBit,
    /// Drawn down to a flat blade, and spread.
    DrawBlade,
    /// Both faces necked down for a wedge.
    FullerSides,
    /// Hammered to a wedge on two faces.
    DrawWedge,
    /// The edge of a wedge spread to its length.
    SpreadEdge,
    /// Both faces drawn down to a ridge.
    DrawRidge,
    /// The taper of a drift behind its full size.
    TaperBack,
    /// Rounded over at its nose.
    RoundNose,
    /// The eye punched, its cheeks drifted out.
    PunchEye,
    /// The end around a cup hammered to its taper.
    DrawEnd,
    /// A cup pressed into the end.
    CupEnd,
    /// The top of a block squared up.
    SquareTop,
    /// A groove pressed across the block.
    PressGroove,
    /// The same with two flats, a V.
    PressVee,
    /// Steel for two tines drawn up, without a gap.
    DrawTines,
    /// That steel slit for two tines.
    Slit,
    /// The tines opened, rounded and set parallel.
    OpenTines,
    /// The struck end drawn in.
    DrawFace,
    /// Cut from the bar that it was held by.
    CutOff,
    /// The working end filed or ground.
    Dress,
    /// An edge ground on a blade.
    GrindEdge,
    /// A point ground.
    GrindPoint,
    /// Hardened and tempered as the maker of the steel says.
    Harden,
    /// Left as it is: cooled slowly, never quenched.
    CoolSlowly,
}

/// How far a run of a tool is made.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Form {
    /// Bar as it was.
    Bar,
    /// Bar swollen to the largest section that the run has.
    Gathered,
    /// The section of the body all along.
    Body,
    /// The section that it begins with, nearer to the working end, all along.
    Near,
    /// The section that it ends with all along: what has an edge or a point is still blunt.
    Far,
    /// Of the same steel, square to the tip and flat on all sides to its root.
    Even,
    /// Its boxes with sharp corners.
    Square,
    /// Eight-sided in its boxes.
    Octagon,
    /// Half-way from its root to its end.
    Half,
    /// No wider along its edge than its root is.
    Unspread,
    /// So much narrower than it will be: a gap in it is shut, mm.
    Shut(f64),
    /// As the finished tool has it.
    Done,
}

/// What one operation makes of the working end: runs by their places from the working end on.
#[derive(Debug, Clone, PartialEq)]
pub struct Worked {
    /// What is done.
    pub step: Forging,
    /// What becomes of which runs.
    pub makes: Vec<(Range<usize>, Form)>,
}

/// All runs of a working end.
pub(crate) const ALL: Range<usize> = 0..usize::MAX;

impl Worked {
    /// The form of a run afterwards, if it is worked.
    pub fn form(&self, run: usize) -> Option<Form> {
        let its = self.makes.iter().find(|(runs, _)| runs.contains(&run));
        its.map(|(_, form)| *form)
    }
}

impl Forging {
    /// All of them.
    pub const ALL: [Self; 36] = [
        Self::CutBar,
        Self::DrawShank,
        Self::SetShoulder,
        Self::UpsetBlock,
        Self::UpsetBody,
        Self::UpsetEnd,
        Self::ShapeBody,
        Self::SizeFull,
        Self::TaperSquare,
        Self::TaperOctagon,
        Self::TaperRound,
        Self::BreakCorners,
        Self::FlattenBit,
        Self::DrawBlade,
        Self::FullerSides,
        Self::DrawWedge,
        Self::SpreadEdge,
        Self::DrawRidge,
        Self::TaperBack,
        Self::RoundNose,
        Self::PunchEye,
        Self::DrawEnd,
        Self::CupEnd,
        Self::SquareTop,
        Self::PressGroove,
        Self::PressVee,
        Self::DrawTines,
        Self::Slit,
        Self::OpenTines,
        Self::DrawFace,
        Self::CutOff,
        Self::Dress,
        Self::GrindEdge,
        Self::GrindPoint,
        Self::Harden,
        Self::CoolSlowly,
    ];

    /// That this makes one form of some runs.
    pub(crate) fn makes(self, runs: Range<usize>, form: Form) -> Worked {
        Worked {
            step: self,
            makes: vec![(runs, form)],
        }
    }

    /// That this makes a form of the first run, and another of all others.
    pub(crate) fn makes_both(self, first: Form, others: Form) -> Worked {
        Worked {
            step: self,
            makes: vec![(0..1, first), (1..usize::MAX, others)],
        }
    }

    /// What the smith reads.
    pub fn name(self) -> &'static str {
        match self {
            Self::CutBar => "cut the tool's bar",
            Self::DrawShank => "draw the shank",
            Self::SetShoulder => "set the shoulder",
            Self::UpsetBlock => "upset the block",
            Self::UpsetBody => "upset the body",
            Self::UpsetEnd => "upset the end",
            Self::ShapeBody => "shape the body",
            Self::SizeFull => "bring it to full size",
            Self::TaperSquare => "taper it square",
            Self::TaperOctagon => "taper it eight-sided",
            Self::TaperRound => "round the taper",
            Self::BreakCorners => "break the corners",
            Self::FlattenBit => "flatten the bit",
            Self::DrawBlade => "draw the blade",
            Self::FullerSides => "fuller both faces",
            Self::DrawWedge => "draw the wedge",
            Self::SpreadEdge => "spread the edge",
            Self::DrawRidge => "draw the ridge",
            Self::TaperBack => "taper it back",
            Self::RoundNose => "round the nose",
            Self::PunchEye => "punch the eye",
            Self::DrawEnd => "draw the end",
            Self::CupEnd => "cup the end",
            Self::SquareTop => "square the top",
            Self::PressGroove => "press the groove",
            Self::PressVee => "press the V",
            Self::DrawTines => "draw steel for the tines",
            Self::Slit => "slit the block",
            Self::OpenTines => "open the tines",
            Self::DrawFace => "draw in the struck end",
            Self::CutOff => "cut it off the bar",
            Self::Dress => "dress the working end",
            Self::GrindEdge => "grind the edge",
            Self::GrindPoint => "grind the point",
            Self::Harden => "harden as the maker says",
            Self::CoolSlowly => "let it cool slowly",
        }
    }
}
