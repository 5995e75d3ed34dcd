//! All that is known of one tool: the one chain from what was asked to what was noticed.

use crate::finding::{Finding, Severity, worst};
use crate::forge::balance::{Balance, balance};
use crate::tool::{Model, Tool, check, resolve};

/// The answers to one tool.
#[derive(Debug, Clone)]
pub struct ToolAnswers {
    /// Its geometry.
    pub model: Model,
    /// Its bar.
    pub balance: Balance,
    /// What was noticed, the worst first.
    pub findings: Vec<Finding>,
}

impl ToolAnswers {
    /// The answers to a tool.
    ///
    /// ```
    /// use reinwright_core::asked::parse_bar;
    /// use reinwright_core::shop::ToolAnswers;
    /// use reinwright_core::tool::{Tool, ToolKind};
    /// let size = "5/16 in".parse().unwrap();
    /// let punch = Tool::starting(ToolKind::RoundPunch, size, parse_bar("3/4 in round").unwrap());
    /// assert!(ToolAnswers::to(&punch).balance.bar_length_mm > 0.0);
    /// ```
    pub fn to(tool: &Tool) -> Self {
        let model = resolve(tool);
        Self {
            balance: balance(std::slice::from_ref(&model.piece), &tool.from_bar()),
            findings: check(tool, &model),
            model,
        }
    }

    /// The worst of the findings; `None` when there are none.
    pub fn worst(&self) -> Option<Severity> {
        worst(&self.findings)
    }
}
