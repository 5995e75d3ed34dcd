//! A family of tools: sizes are led by the tool's leading measure, such as the hole that a drift
//! makes.

use ron::value::RawValue;
use serde::Deserialize;

use super::edit::midway;
use super::in_sizes::{InSizes, Measure, OfSize};
use super::salvage::{Raw, Salvage};
use super::written::{ToolFamily, ToolRule, ToolSize};
use super::{Family, Made, Rounding, Rule};
use crate::asked::{Bar, LimitError, Units, Value, options, parse_bar};
use crate::finding::{self, Finding, Part};
use crate::forge::balance::Balance;
use crate::proof::strength::StrengthLoad;
use crate::shop::ToolAnswers;
use crate::steel::DENSITY_KG_MM3;
use crate::tongs::document::SetError;
use crate::tool::{self, FORMAT, KindOfFile, Tool, ToolKind, check_limits};
use crate::units::Length;

/// The newest format of a family of tools that this program writes and reads.
pub const TOOL_FAMILY_FORMAT: u32 = 1;

/// Under this stands the section of a struck tool's body.
const BODY: &str = "body.body.";

/// The answers to one size of a family of tools.
#[derive(Debug, Clone)]
pub struct ToolSizeAnswer {
    /// What the size is called.
    pub label: String,
    /// The size as a tool of its own.
    pub document: Tool,
    /// Its geometry, its bar and what was noticed of the tool and of making it from the family; the
    /// worst first.
    pub answers: ToolAnswers,
}

impl Measure for Length {
    type Written = ToolSize;

    fn size_mm(&self) -> f64 {
        self.mm()
    }

    fn label(&self) -> String {
        self.to_string()
    }

    fn between(&self, other: &Self) -> Option<Self> {
        midway(*self, *other)
    }
}

impl InSizes for Tool {
    type Measure = Length;
    type Answer = ToolSizeAnswer;
    type Written = ToolFamily;
    type WrittenRule = ToolRule;

    const NAME: &'static str = "tool";
    const FAMILY_FORMAT: u32 = TOOL_FAMILY_FORMAT;
    const MARK: &'static str = "tool_family";
    const FORMAT: u32 = FORMAT;
    const EXAMPLE: &'static str = "(size: \"1/2 in\")";
    const WHOLE: Part = Part::Tool;

    fn format(&self) -> u32 {
        self.format
    }

    fn name(&self) -> &str {
        &self.name
    }

    fn rename(&mut self, name: String) {
        self.name = name;
    }

    fn units(&self) -> Units {
        self.units
    }

    fn show_in(&mut self, units: Units) {
        self.units = units;
    }

    fn measure(&self) -> Length {
        let path = self.style_kind().leading();
        match self.field_at(path).map(|field| field.value) {
            Some(Value::Length(length)) => length,
            Some(_) | None => Length::ZERO,
        }
    }

    fn leads(&self, path: &str) -> bool {
        path == self.style_kind().leading()
    }

    fn resize(&mut self, size: Length, bar: Bar) {
        self.bar = bar;
        self.put(self.style_kind().leading(), Value::Length(size));
    }

    fn bar(&self) -> Bar {
        self.bar
    }

    fn set_text(&mut self, path: &str, text: &str) -> Result<(), SetError> {
        self.set(path, text)
    }

    fn limits(&self) -> Result<(), LimitError> {
        check_limits(self)
    }

    fn in_file(&self, path: &str) -> String {
        tool::in_file(path)
    }

    fn in_size(&self, path: &str) -> String {
        if self.leads(path) {
            "size".to_owned()
        } else {
            tool::in_file(path)
        }
    }

    fn rule_name(rule: Rule) -> &'static str {
        match rule {
            Rule::Same | Rule::WithBar => rule.name(),
            Rule::WithWork => "with the size",
        }
    }

    /// Rounded by itself, the body of a drift could come out as large as the hole that it drops
    /// through: it keeps its share of the full size, or the next smaller one on the rule, unless it follows another
    /// rule than it brings along.
    fn settle(&mut self, family: &Family<Self>) {
        let base = &family.base;
        let (full, was) = (self.measure().mm(), base.measure().mm());
        const SAME_MM: f64 = 1e-9;
        let own_size = was <= 0.0 || (full - was).abs() < SAME_MM;
        if family.rounding == Rounding::Exact || self.style_kind() != ToolKind::Drift || own_size {
            return;
        }
        self.revise(&mut |field| {
            let of_body = field.path.starts_with(BODY) && !family.rules.contains_key(&field.path);
            let Value::Length(now) = field.value else {
                return None;
            };
            let Value::Length(own) = base.field(&field.path)?.value else {
                return None;
            };
            let kept = Length::measured_under(own.mm() * full / was, now.unit());
            let fits = field.range.holds(kept.mm());
            (of_body && fits).then_some(Value::Length(kept))
        });
    }

    fn answered(made: Made<Self>, label: String, _load: &StrengthLoad) -> ToolSizeAnswer {
        let mut answers = ToolAnswers::to(&made.document);
        answers.findings.extend(made.findings);
        finding::sort(&mut answers.findings);
        ToolSizeAnswer {
            label,
            document: made.document,
            answers,
        }
    }

    fn family_format(text: &str) -> Result<u32, ron::error::SpannedError> {
        #[derive(Deserialize)]
        struct Head {
            tool_family: u32,
        }
        options().from_str(text).map(|head: Head| head.tool_family)
    }

    /// The base from its pieces; `None` when it is no group of named pieces at all, or nobody knows
    /// its size.
    fn salvaged(salvage: &mut Salvage<'_>, raw: &RawValue, size: Option<Length>) -> Option<Self> {
        let all: Pieces<'_> = options().from_str(raw.get_ron()).ok()?;
        let kind = kind_in(all.shape?.get_ron())?;
        let usual_bar = parse_bar("3/4 in round").ok()?;
        let mut bar: Bar = salvage.piece(all.bar, "base.bar", usual_bar, "3/4 in round");
        salvage.bring_inside("bar", &mut bar);
        let usual = match size {
            Some(size) => Self::leading(kind, size, bar),
            None => Self::starting(kind, kind.usual_size(&bar), bar),
        };
        let mut take = salvage.take(&["base.note", "base.projection"]);
        let mut base = Self {
            kind: KindOfFile::Tool,
            format: FORMAT,
            name: take.of(all.name, "base.name", usual.name),
            note: take.of(all.note, "base.note", usual.note),
            units: take.of(all.units, "base.units", usual.units),
            projection: take.of(all.projection, "base.projection", usual.projection),
            shape: take.of(all.shape, "base.shape", usual.shape),
            tail: take.of(all.tail, "base.tail", usual.tail),
            allowances: take.of(all.allowances, "base.allowances", usual.allowances),
            bar,
        };
        salvage.bring_inside("", &mut base);
        check_limits(&base).is_ok().then_some(base)
    }
}

impl OfSize for ToolSizeAnswer {
    type Of = Tool;

    fn label(&self) -> &str {
        &self.label
    }

    fn document(&self) -> &Tool {
        &self.document
    }

    fn balance(&self) -> &Balance {
        &self.answers.balance
    }

    fn findings(&self) -> &[Finding] {
        &self.answers.findings
    }

    fn mass_kg(&self) -> f64 {
        self.answers.model.piece.mass().volume * DENSITY_KG_MM3
    }
}

/// The style that a shape's text names, readable or not.
fn kind_in(shape: &str) -> Option<ToolKind> {
    let plain = shape.to_lowercase();
    let named = |kind: &ToolKind| plain.contains(&format!("{}(", kind.key()));
    ToolKind::ALL.iter().copied().find(named)
}

#[derive(Deserialize)]
struct Pieces<'a> {
    #[serde(borrow, default)]
    name: Raw<'a>,
    #[serde(borrow, default)]
    note: Raw<'a>,
    #[serde(borrow, default)]
    units: Raw<'a>,
    #[serde(borrow, default)]
    projection: Raw<'a>,
    #[serde(borrow, default)]
    bar: Raw<'a>,
    #[serde(borrow, default)]
    shape: Raw<'a>,
    #[serde(borrow, default)]
    tail: Raw<'a>,
    #[serde(borrow, default)]
    allowances: Raw<'a>,
}
