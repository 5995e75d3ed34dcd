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
}

impl Part {
    /// Every part, in the order in which a pair is thought of.
    pub const ALL: [Self; 10] = [
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
    ];

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
