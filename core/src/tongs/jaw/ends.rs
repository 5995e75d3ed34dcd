//! Values that many styles have alike: the sizes at the heel and at the tip, and a bit at the end.
//! A style keeps them beside its own, as its file does; what they are called stands here once.

use super::BitShape;
use crate::asked::range::STEEL;
use crate::asked::{Follows, Reader, Writer};
use crate::units::Length;

macro_rules! ends {
    ($walk:ident, $($mutable:tt)?) => { impl $walk<'_> {
        /// Depth and width at the heel.
        pub(super) fn heel(&mut self, depth: &$($mutable)? Length, width: &$($mutable)? Length) {
            self.value("root_depth", depth, STEEL)
                .says("Heel depth", "In the side view at the heel");
            self.value("root_width", width, STEEL)
                .says("Heel width", "In the top view at the heel");
        }

        /// Depth and width at the tip.
        pub(super) fn tip(&mut self, depth: &$($mutable)? Length, width: &$($mutable)? Length) {
            self.value("tip_depth", depth, STEEL).says("Tip depth", "In the side view at the tip");
            self.value("tip_width", width, STEEL).says("Tip width", "In the top view at the tip");
        }

        /// A bit, with the sizes that its shape has.
        pub(super) fn bit(&mut self, bit: &$($mutable)? BitShape) {
            self.choice("bit", bit).says("Bit", "The shape of the gripping end");
            self.within("bit", Follows::Bar, bit);
        }
    }};
}

ends!(Reader,);
ends!(Writer, mut);
