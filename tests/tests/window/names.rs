//! What a screen reader reads of every page: nothing that can be used is without a name, and a dialog
//! calls no two things the same.

use std::collections::BTreeMap;

use egui::accesskit::Role;
use egui_kittest::kittest::{NodeT, Queryable};
use reinwright_core::asked::Units;
use reinwright_core::tool::ToolKind;
use reinwright_tests::window::{SMALL, Window};

use super::pictures::pages::{self, Way};

const WAY: Way = Way {
    size: SMALL,
    units: Units::Inch,
    theme: "light",
    fine: 1.0,
};

/// What can be pressed, ticked, chosen, drawn or typed in.
const USED: [Role; 10] = [
    Role::Button,
    Role::CheckBox,
    Role::RadioButton,
    Role::TextInput,
    Role::MultilineTextInput,
    Role::Slider,
    Role::SpinButton,
    Role::ComboBox,
    Role::Link,
    Role::DisclosureTriangle,
];

/// The names of all that can be used, with how often each is there.
fn names(window: &Window) -> BTreeMap<(String, String), usize> {
    let mut names = BTreeMap::new();
    for node in window.query_all_by(|node| USED.contains(&node.role())) {
        let node = node.accesskit_node();
        let name = node.label().unwrap_or_default();
        let role = format!("{:?}", node.role());
        *names.entry((role, name)).or_insert(0) += 1;
    }
    names
}

/// What has no name, or shares it.
fn against(page: &str, window: &Window) -> Vec<String> {
    let names = names(window);
    assert!(names.len() > 10, "{page}: {names:?}");
    let bad = names
        .into_iter()
        .filter(|((_, name), times)| name.trim().is_empty() || *times > 1);
    bad.map(|((role, name), times)| format!("{page}: {role} {name:?}, {times} times"))
        .collect()
}

#[test]
fn all_that_can_be_used_has_a_name_of_its_own() {
    let mut found = Vec::new();
    for page in pages::ALL {
        let seen = pages::show(*page, "v-bit-square", WAY);
        found.extend(against(page.0, &seen.window));
    }
    for page in pages::OF_TOOL {
        let seen = pages::show_tool(*page, ToolKind::RoundPunch, WAY);
        found.extend(against(page.0, &seen.window));
    }
    assert!(found.is_empty(), "{found:#?}");
}
