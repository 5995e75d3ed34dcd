//! What is done to the steel of a tool, as names that its style chooses from; the making knows how.

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
    /// Bar hammered to the body's section.
    ShapeBody,
    /// Drawn to a square taper, or one that is flat on all sides.
    TaperSquare,
    /// Its corners hammered in.
    TaperOctagon,
    /// Rounded.
    TaperRound,
    /// Drawn out to a flat blade, and spread.
    DrawBlade,
    /// Both tapers of a drift, before and behind its full size.
    TaperBack,
    /// Rounded over at its nose.
    RoundNose,
    /// The eye punched, its cheeks drifted out.
    PunchEye,
    /// A cup pressed into the end.
    CupEnd,
    /// A groove pressed across the block.
    PressGroove,
    /// The block slit for two tines.
    Slit,
    /// The tines opened, rounded and set parallel.
    OpenTines,
    /// The struck end drawn in.
    DrawFace,
    /// Cut from the bar that it was held by.
    CutOff,
    /// The working end filed or ground.
    Dress,
    /// Hardened and tempered as the maker of the steel says.
    Harden,
    /// Left as it is: cooled slowly, never quenched.
    CoolSlowly,
}

impl Forging {
    /// All of them.
    pub const ALL: [Self; 21] = [
        Self::CutBar,
        Self::DrawShank,
        Self::SetShoulder,
        Self::UpsetBlock,
        Self::ShapeBody,
        Self::TaperSquare,
        Self::TaperOctagon,
        Self::TaperRound,
        Self::DrawBlade,
        Self::TaperBack,
        Self::RoundNose,
        Self::PunchEye,
        Self::CupEnd,
        Self::PressGroove,
        Self::Slit,
        Self::OpenTines,
        Self::DrawFace,
        Self::CutOff,
        Self::Dress,
        Self::Harden,
        Self::CoolSlowly,
    ];

    /// What the smith reads.
    pub fn name(self) -> &'static str {
        match self {
            Self::CutBar => "cut the tool's bar",
            Self::DrawShank => "draw the shank",
            Self::SetShoulder => "set the shoulder",
            Self::UpsetBlock => "upset the block",
            Self::ShapeBody => "shape the body",
            Self::TaperSquare => "taper it square",
            Self::TaperOctagon => "taper it eight-sided",
            Self::TaperRound => "round the taper",
            Self::DrawBlade => "draw the blade",
            Self::TaperBack => "taper both ways",
            Self::RoundNose => "round the nose",
            Self::PunchEye => "punch the eye",
            Self::CupEnd => "cup the end",
            Self::PressGroove => "press the groove",
            Self::Slit => "slit the block",
            Self::OpenTines => "open the tines",
            Self::DrawFace => "draw in the struck end",
            Self::CutOff => "cut it off the bar",
            Self::Dress => "dress the working end",
            Self::Harden => "harden as the maker says",
            Self::CoolSlowly => "let it cool slowly",
        }
    }
}
