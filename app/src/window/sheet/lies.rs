//! How the sheet lies, for what is put on it.

use egui::Response;
use reinwright_core::draw::Shifts;
use reinwright_core::draw::handle::OnPaper;

use crate::window::paint::view::View;
use crate::window::state::reckon::Brought;

/// How the sheet lies while a handle is dragged: nothing on it moves but what is dragged.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Frozen {
    pub(crate) view: View,
    /// Size of the text, mm.
    pub(crate) text: f64,
    pub(crate) shifts: Shifts,
    pub(crate) brought: Brought,
}

/// The sheet that handles lie on in this frame.
#[derive(Debug)]
pub(crate) struct Sheet {
    pub(crate) response: Response,
    pub(crate) lies: Frozen,
    /// Half of the opening of the pair as it is drawn, radians.
    pub(crate) opening: f64,
}

impl Sheet {
    /// How the drawing lies on the paper.
    pub(crate) fn on(&self) -> OnPaper {
        OnPaper {
            opening: self.opening,
            shifts: self.lies.shifts,
            breaks: self.lies.brought.breaks,
        }
    }
}
