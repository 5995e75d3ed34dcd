//! What the smith looks at: nothing of this is in the document.

use super::making::Making;
use reinwright_core::finding::Part;
use reinwright_core::proof::strength::StrengthLoad;
use reinwright_core::shop::mend::Mend;
use reinwright_core::units::{Scale, Show};

/// A page of answers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) enum Page {
    /// The bar to cut.
    Bar,
    /// What work the pair holds.
    Fit,
    /// What a squeeze does to it.
    Strength,
    /// From bar to tongs.
    Making,
    /// Which fire or coil for which operation.
    Heats,
    /// What was noticed.
    Findings,
}

impl Page {
    /// The pages in the order of their tabs.
    pub(crate) const ALL: [Self; 6] = [
        Self::Bar,
        Self::Fit,
        Self::Strength,
        Self::Making,
        Self::Heats,
        Self::Findings,
    ];

    /// The pages of a tool.
    pub(crate) const OF_TOOL: [Self; 4] = [Self::Bar, Self::Making, Self::Heats, Self::Findings];

    /// This page, or the first one where this one stands in place of the drawing.
    pub(crate) fn beside_drawing(self) -> Self {
        match self {
            Self::Making | Self::Heats => Self::Bar,
            Self::Bar | Self::Fit | Self::Strength | Self::Findings => self,
        }
    }

    /// This page if a tool has it, else its first.
    pub(crate) fn of_tool(self) -> Self {
        if Self::OF_TOOL.contains(&self) {
            self
        } else {
            Self::Bar
        }
    }
}

/// What of a pair the sheet shows by itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Sight {
    /// Head and boss as large as they can be, with the reins broken.
    #[default]
    Head,
    /// The reins.
    Rein,
    /// Everything, unbroken.
    All,
}

impl Sight {
    /// In the order of their buttons.
    pub(crate) const ALL: [Self; 3] = [Self::Head, Self::Rein, Self::All];
}

/// What is lit up, chosen and opened.
#[derive(Debug)]
pub(crate) struct Look {
    /// The part under the pointer, as of the last frame.
    pub(crate) pointed: Option<Part>,
    /// The part under the pointer in the frame that is being drawn.
    next_pointed: Option<Part>,
    /// The part that was clicked.
    pub(crate) chosen: Option<Part>,
    /// The mend that is pointed at in the frame that is being drawn.
    pub(crate) weighed: Option<Mend>,
    /// The part whose fields are to be brought into sight.
    pub(crate) reveal: Option<Part>,
    /// How far the pair is opened past the work, degrees between the halves.
    pub(crate) opening: f64,
    /// Which answers are shown.
    pub(crate) page: Page,
    /// Other work to try between the jaws, by the size it is called by, mm; the design keeps its
    /// own.
    pub(crate) tried_mm: Option<f64>,
    /// What the Strength page asks of the pair.
    pub(crate) load: StrengthLoad,
    /// The scale that the heat of its jaws was typed on, if it was typed.
    pub(crate) typed_scale: Option<Scale>,
    /// Which of its three squeezes the band of stress shows.
    pub(crate) squeeze: usize,
    /// By which way it is made, and how far along that is looked at.
    pub(crate) making: Making,
    /// Which heat is looked at.
    pub(crate) heats: HeatLook,
}

/// Which operation and which source are looked at on the page of heats.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct HeatLook {
    /// What was clicked: the place of an operation, and a source where one was meant.
    pub(crate) chosen: Option<(usize, Option<usize>)>,
    /// What is under the pointer, as of the last frame.
    pointed: Option<(usize, Option<usize>)>,
    /// What is under the pointer in the frame that is being drawn.
    next: Option<(usize, Option<usize>)>,
}

impl HeatLook {
    /// The pointer is on an operation.
    pub(crate) fn point_at(&mut self, row: usize, source: Option<usize>) {
        self.next = Some((row, source));
    }

    /// What lights up: what is pointed at, else what was chosen.
    pub(crate) fn lit(&self) -> Option<(usize, Option<usize>)> {
        self.pointed.or(self.chosen)
    }

    /// Ends a frame; true when something else lights up from now on.
    fn turn(&mut self) -> bool {
        let next = self.next.take();
        std::mem::replace(&mut self.pointed, next) != next
    }
}

impl Look {
    /// Nothing lit up, the pair set on its work, this page of answers.
    pub(crate) fn on(page: Page) -> Self {
        Self {
            pointed: None,
            next_pointed: None,
            chosen: None,
            weighed: None,
            reveal: None,
            opening: 0.0,
            page,
            tried_mm: None,
            load: StrengthLoad::default(),
            typed_scale: None,
            squeeze: 1,
            making: Making::default(),
            heats: HeatLook::default(),
        }
    }

    /// The scale that the heat of the jaws is shown on: as it was typed, else as the document has it.
    pub(crate) fn jaw_scale(&self, show: Show) -> Scale {
        self.typed_scale.unwrap_or(show.scale())
    }

    /// The part that lights up: the one pointed at, else the one chosen.
    pub(crate) fn lit(&self) -> Option<Part> {
        self.pointed.or(self.chosen)
    }

    /// The pointer is on this part.
    pub(crate) fn point_at(&mut self, part: Part) {
        self.next_pointed = Some(part);
    }

    /// Chooses a part and brings its fields into sight.
    pub(crate) fn choose(&mut self, part: Part) {
        self.chosen = Some(part);
        self.reveal = Some(part);
    }

    /// Ends a frame; true when another part lights up from now on.
    pub(crate) fn turn(&mut self) -> bool {
        let next = self.next_pointed.take();
        let heats = self.heats.turn();
        std::mem::replace(&mut self.pointed, next) != next || heats
    }
}
