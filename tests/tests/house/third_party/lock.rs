//! The packages of a built program, from Cargo.lock alone: on every system that it can be built
//! for, those included that only build it.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;

use super::root;

#[derive(Default)]
struct Locked {
    name: String,
    version: String,
    /// As the lock names them: with the version where the name alone would not do.
    needs: Vec<String>,
    /// Whether it comes from elsewhere.
    foreign: bool,
}

fn locked() -> Vec<Locked> {
    let text = fs::read_to_string(root().join("Cargo.lock")).expect("it is in the tree");
    let packages = text.split("[[package]]").skip(1);
    packages
        .map(|package| {
            let mut found = Locked::default();
            for line in package.lines() {
                match line.split_once(" = ") {
                    Some(("name", value)) => found.name = value.trim_matches('"').to_owned(),
                    Some(("version", value)) => found.version = value.trim_matches('"').to_owned(),
                    Some(("source", _)) => found.foreign = true,
                    _ => {
                        let need = line.strip_prefix(" \"").and_then(|n| n.strip_suffix("\","));
                        found.needs.extend(need.map(str::to_owned));
                    }
                }
            }
            found
        })
        .collect()
}

/// What only the tests and benches of the program use.
fn for_tests_only() -> BTreeSet<String> {
    let manifest = fs::read_to_string(root().join("app/Cargo.toml")).expect("it is in the tree");
    let (_, rest) = manifest
        .split_once("[dev-dependencies]")
        .expect("it has some");
    let lines = rest.lines().skip(1).take_while(|line| !line.is_empty());
    lines
        .filter_map(|line| line.split(['.', ' ']).next())
        .map(str::to_owned)
        .collect()
}

/// Name and version of each package that is not ours, in order.
pub(crate) fn of_the_program() -> Vec<(String, String)> {
    let locked = locked();
    let mut by_name: BTreeMap<String, usize> = BTreeMap::new();
    for (i, package) in locked.iter().enumerate() {
        by_name.insert(package.name.clone(), i);
        by_name.insert(format!("{} {}", package.name, package.version), i);
    }
    let without = for_tests_only();
    let mut seen = BTreeSet::new();
    let mut ahead = vec![by_name["reinwright"]];
    while let Some(next) = ahead.pop() {
        if !seen.insert(next) {
            continue;
        }
        let ours = locked[next].name == "reinwright";
        let needs = locked[next].needs.iter();
        ahead.extend(
            needs
                .filter(|need| !(ours && without.contains(*need)))
                .map(|need| by_name[need]),
        );
    }
    let mut found: Vec<(String, String)> = seen
        .into_iter()
        .map(|i| &locked[i])
        .filter(|package| package.foreign)
        .map(|package| (package.name.clone(), package.version.clone()))
        .collect();
    found.sort();
    found
}
