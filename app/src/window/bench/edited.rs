//! The list of parts at the left, and what becomes of what is edited there, whatever is open.

use egui::{Panel, Ui};

use crate::window::panels::parts::{Listed, PartsList};
use crate::window::panels::wish::Wish;
use crate::window::state::look::Look;
use crate::window::state::news::Said;
use crate::window::state::session::{Limited, Session};
use crate::window::state::shop_heats::ShopHeats;

/// Shows the list; what cannot be saved is not begun, and the sources of heat are no longer what was
/// changed last.
pub(super) fn edited<T: Listed + Limited>(
    ui: &mut Ui,
    parts: &mut PartsList,
    session: &mut Session<T>,
    shown: (&mut Look, &mut T::Beside),
    shop: &mut ShopHeats,
) -> Vec<Wish> {
    let before = session.now.clone();
    let mut asked = Panel::left("parts")
        .default_size(258.0)
        .size_range(258.0..=420.0)
        .show(ui, |ui| parts.show(ui, &mut session.now, shown))
        .inner;
    if session.now != before {
        shop.is_last = false;
        if let Err(why) = session.keep_within(before) {
            parts.forget();
            asked.push(Wish::Say(Said::Trouble(why)));
        }
    }
    asked
}
