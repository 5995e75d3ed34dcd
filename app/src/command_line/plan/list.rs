//! How a pair or a tool is made, for people.

use std::fmt::Write;

use reinwright_core::asked::{Bar, Units, capital};
use reinwright_core::forge::balance::Balance;
use reinwright_core::making::{Blows, Operation, Plan};
use reinwright_core::steel::caution;
use reinwright_core::tongs::document::Document;
use reinwright_core::tool::Tool;
use reinwright_core::units::Show;

/// What a list is of.
pub(super) struct Called<'a> {
    name: &'a str,
    bar: &'a Bar,
    units: Units,
    is_tool: bool,
}

impl<'a> Called<'a> {
    pub(super) fn pair(pair: &'a Document) -> Self {
        Self {
            name: &pair.name,
            bar: &pair.bar,
            units: pair.units,
            is_tool: false,
        }
    }

    pub(super) fn tool(tool: &'a Tool) -> Self {
        Self {
            name: &tool.name,
            bar: &tool.bar,
            units: tool.units,
            is_tool: true,
        }
    }
}

/// The plan as a list to be read beside the anvil.
pub(super) struct List {
    text: String,
    show: Show,
}

impl List {
    pub(super) fn of(design: &Called<'_>, balance: &Balance, plan: &Plan) -> String {
        let show = design.units.show();
        let mut list = Self {
            text: String::new(),
            show,
        };
        list.line(format_args!("{}: {}", design.name, plan.procedure.name()));
        list.line(format_args!(
            "Bar: {}, cut {} long",
            design.bar.stock.words(),
            balance.cut_length(design.units)
        ));
        let ends = if design.is_tool {
            "from the working end and from the other"
        } else {
            "from the left end and from the right"
        };
        list.marks(plan, ends);
        for finding in &plan.findings {
            list.line(format_args!("{finding}"));
        }
        let mut half = "";
        for (at, operation) in plan.operations().enumerate() {
            if operation.half != half {
                half = operation.half;
                list.line(format_args!("\nThe {half}, whose jaw differs"));
            }
            list.operation(at + 1, operation);
        }
        if plan.repeats > 1 {
            list.line(format_args!(
                "\nThe second half: the same, not mirrored. Make it step by step beside the first."
            ));
        }
        list.others(plan);
        list.line(format_args!(""));
        let cautions = if design.is_tool {
            vec![caution::HOT, caution::EYES, caution::FIRE, caution::FIRST]
        } else {
            caution::at_the_forge(design.bar.steel)
        };
        for words in cautions {
            list.line(format_args!("{words}"));
        }
        list.text
    }

    fn line(&mut self, words: std::fmt::Arguments<'_>) {
        writeln!(self.text, "{words}").expect("a text takes what is written to it");
    }

    fn marks(&mut self, plan: &Plan, ends: &str) {
        self.line(format_args!("Marks, {ends}:"));
        for mark in &plan.marks {
            self.line(format_args!(
                "  {:>9} {:>9}  {}: {}, {}",
                mark.measured.to_string(),
                mark.from_end.to_string(),
                mark.what,
                mark.tool.name(),
                mark.face.name()
            ));
        }
    }

    fn operation(&mut self, number: usize, own: &Operation) {
        let show = self.show;
        self.line(format_args!("\n{number:>2}. {}", own.what));
        self.line(format_args!("    Where: {}", own.place_words()));
        if let Some(words) = own.hot_words(show) {
            self.line(format_args!("    Hot: {words}"));
        }
        if own.blows != Blows::Cut {
            self.line(format_args!("    {}", capital(&own.lengths(show))));
        }
        self.line(format_args!("    Check: {}", own.check));
        for caution in &own.cautions {
            self.line(format_args!("    Take care: {caution}"));
        }
    }

    fn others(&mut self, plan: &Plan) {
        self.line(format_args!("\nOther ways:"));
        for own in plan
            .suits
            .iter()
            .filter(|own| own.procedure != plan.procedure)
        {
            match &own.why_not {
                None => self.line(format_args!("  {} suits as well", own.procedure.name())),
                Some(why) => self.line(format_args!("  not {}: {why}", own.procedure.name())),
            }
        }
    }
}
