//! Licence expressions as packages write them (SPDX, and the older stroke for "or").

use std::fs;

use super::root;

/// The licences that the policy allows, the ones we would rather take first.
pub(crate) fn allowed() -> Vec<String> {
    let policy = fs::read_to_string(root().join("deny.toml")).expect("it is in the tree");
    let (_, list) = policy.split_once("allow = [").expect("it allows some");
    let (list, _) = list.split_once(']').expect("the list ends");
    list.split('"')
        .skip(1)
        .step_by(2)
        .map(str::to_owned)
        .collect()
}

/// Those that we take of an expression: of each choice the first that is allowed. `None` where
/// some part of it leaves none.
pub(crate) fn taken(expression: &str, allowed: &[String]) -> Option<Vec<String>> {
    let expression = expression.replace('/', " OR ");
    let parts = expression.split(" AND ");
    parts
        .map(|part| {
            let choices: Vec<&str> = part
                .trim_matches(['(', ')', ' '])
                .split(" OR ")
                .map(str::trim)
                .collect();
            let fits = |one: &&String| choices.contains(&one.as_str());
            allowed.iter().find(fits).cloned()
        })
        .collect()
}

/// Whether the text of a licence is the same for whoever uses it, so that it stands in the tree
/// once.
pub(crate) fn once(licence: &str) -> bool {
    licence.starts_with("Apache-2.0") || licence == "Ubuntu-font-1.0"
}

#[test]
fn of_each_choice_the_first_allowed_is_taken() {
    let allowed = ["A", "B", "C"].map(str::to_owned);
    for (expression, wanted) in [
        ("B", Some("B")),
        ("B OR A", Some("A")),
        ("C/B", Some("B")),
        ("(X OR C) AND B", Some("C B")),
        ("X", None),
        ("A AND X", None),
    ] {
        let taken = taken(expression, &allowed).map(|those| those.join(" "));
        assert_eq!(taken.as_deref(), wanted, "{expression}");
    }
}
