//! Families as their files have them. A pair is led by its work and a tool by its size, and the file
//! says so in its own words; in the program both are one.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::{Family, Rounding, Rule, Size};
use crate::asked::{Bar, Work};
use crate::tongs::document::Document;
use crate::tool::Tool;
use crate::units::Length;

/// The rule of a length of a tool.
#[derive(Debug, Clone, Copy, Serialize, Deserialize)]
#[serde(rename = "Rule")]
pub enum ToolRule {
    /// The same in all sizes.
    Same,
    /// In proportion to the size.
    WithSize,
    /// In proportion to the bar.
    WithBar,
}

impl From<Rule> for ToolRule {
    fn from(rule: Rule) -> Self {
        match rule {
            Rule::Same => Self::Same,
            Rule::WithWork => Self::WithSize,
            Rule::WithBar => Self::WithBar,
        }
    }
}

impl From<ToolRule> for Rule {
    fn from(rule: ToolRule) -> Self {
        match rule {
            ToolRule::Same => Self::Same,
            ToolRule::WithSize => Self::WithWork,
            ToolRule::WithBar => Self::WithBar,
        }
    }
}

/// Tells how a family and a size of it are written: the mark that its file begins with, and what
/// leads a size.
macro_rules! written {
    ($family:ident: $of:ty, $mark:ident, $rule:ty; $size:ident: $measure:ty, $leads:ident) => {
        /// One size as its file has it.
        #[derive(Debug, Clone, Serialize, Deserialize)]
        #[serde(rename = "Size", deny_unknown_fields)]
        pub struct $size {
            #[serde(default, skip_serializing_if = "String::is_empty")]
            name: String,
            $leads: $measure,
            #[serde(default, skip_serializing_if = "Option::is_none")]
            bar: Option<Bar>,
            #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
            set: BTreeMap<String, String>,
        }

        impl From<$size> for Size<$measure> {
            fn from(written: $size) -> Self {
                Self {
                    name: written.name,
                    work: written.$leads,
                    bar: written.bar,
                    set: written.set,
                }
            }
        }

        impl From<Size<$measure>> for $size {
            fn from(size: Size<$measure>) -> Self {
                Self {
                    name: size.name,
                    $leads: size.work,
                    bar: size.bar,
                    set: size.set,
                }
            }
        }

        /// A family as its file has it.
        #[derive(Debug, Clone, Serialize, Deserialize)]
        #[serde(rename = "Family", deny_unknown_fields)]
        pub struct $family {
            $mark: u32,
            name: String,
            #[serde(default, skip_serializing_if = "String::is_empty")]
            note: String,
            #[serde(default)]
            rounding: Rounding,
            #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
            rules: BTreeMap<String, $rule>,
            sizes: Vec<$size>,
            base: $of,
        }

        impl From<Family<$of>> for $family {
            fn from(family: Family<$of>) -> Self {
                let rules = family.rules.into_iter();
                Self {
                    $mark: family.family,
                    name: family.name,
                    note: family.note,
                    rounding: family.rounding,
                    rules: rules.map(|(path, rule)| (path, rule.into())).collect(),
                    sizes: family.sizes.into_iter().map(Into::into).collect(),
                    base: family.base,
                }
            }
        }

        impl From<$family> for Family<$of> {
            fn from(written: $family) -> Self {
                let rules = written.rules.into_iter();
                Self {
                    family: written.$mark,
                    name: written.name,
                    note: written.note,
                    rounding: written.rounding,
                    rules: rules.map(|(path, rule)| (path, rule.into())).collect(),
                    sizes: written.sizes.into_iter().map(Into::into).collect(),
                    base: written.base,
                }
            }
        }
    };
}

written!(PairFamily: Document, family, Rule; PairSize: Work, work);
written!(ToolFamily: Tool, tool_family, ToolRule; ToolSize: Length, size);
