use std::fmt;

/// A part that a finding, a field or a drawn line belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Part {
    /// The stock held.
    Work,
    /// The stock forged.
    Bar,
    /// The jaw (of half A when the jaws differ).
    Jaw,
    /// The jaw of half B when it differs.
    SecondJaw,
    /// Between boss and jaw.
    Neck,
    /// The plate around the rivet.
    Boss,
    /// Between boss and rein.
    Shoulder,
    /// The lever.
    Rein,
    /// The pin.
    Rivet,
    /// The two halves together.
    Pair,
    /// The end of a tool that meets the work.
    Working,
    /// The bar of a tool between its ends; the block of a hardy tool over its shoulder.
    Body,
    /// Where a handle goes through a tool.
    Eye,
    /// The end of a tool that the hammer meets.
    StruckEnd,
    /// What of a tool stands in the hardy hole.
    HardyShank,
    /// The whole tool.
    Tool,
}

impl Part {
    /// Every part, in the order in which a pair, and then a tool, is thought of.
    pub const ALL: [Self; 16] = [
        Self::Work,
        Self::Bar,
        Self::Jaw,
        Self::SecondJaw,
        Self::Neck,
        Self::Boss,
        Self::Shoulder,
        Self::Rein,
        Self::Rivet,
        Self::Pair,
        Self::Working,
        Self::Body,
        Self::Eye,
        Self::StruckEnd,
        Self::HardyShank,
        Self::Tool,
    ];

    /// Whether tools alone have it.
    pub fn is_of_tool(self) -> bool {
        match self {
            Self::Working
            | Self::Body
            | Self::Eye
            | Self::StruckEnd
            | Self::HardyShank
            | Self::Tool => true,
            Self::Work
            | Self::Bar
            | Self::Jaw
            | Self::SecondJaw
            | Self::Neck
            | Self::Boss
            | Self::Shoulder
            | Self::Rein
            | Self::Rivet
            | Self::Pair => false,
        }
    }

    /// The trade's word for it, in lower case.
    pub fn name(self) -> &'static str {
        match self {
            Self::Work => "work",
            Self::Bar => "bar",
            Self::Jaw => "jaw",
            Self::SecondJaw => "second jaw",
            Self::Neck => "neck",
            Self::Boss => "boss",
            Self::Shoulder => "shoulder",
            Self::Rein => "rein",
            Self::Rivet => "rivet",
            Self::Pair => "pair",
            Self::Working => "working end",
            Self::Body => "body",
            Self::Eye => "eye",
            Self::StruckEnd => "struck end",
            Self::HardyShank => "hardy shank",
            Self::Tool => "tool",
        }
    }

    /// Two parts of the two halves, as words: `the jaws`, `the neck and the boss`.
    pub fn both([a, b]: [Self; 2]) -> String {
        let jaw = |part: Self| matches!(part, Self::Jaw | Self::SecondJaw);
        if jaw(a) && jaw(b) {
            return "the jaws".into();
        }
        match (a == b, a.name()) {
            (true, "boss") => "the bosses".into(),
            (true, name) => format!("the {name}s"),
            (false, name) => format!("the {name} and the {b}"),
        }
    }
}

impl fmt::Display for Part {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}
