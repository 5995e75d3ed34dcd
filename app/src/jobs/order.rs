//! All that is chosen before something is printed, and the text by which it is remembered.

use std::fmt::Write;

use reinwright_core::draw::Views;
use reinwright_core::paper::Paper;
use reinwright_core::shop::printers::{Printer, Printers};
use reinwright_core::steel::Heat;

use super::what::{Look, Reins, Size, What};

/// Whether the sheets of a family as a whole are printed: table, ranges, all sizes together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum OfTheSet {
    /// In front of the sizes, with the contents before them.
    #[default]
    Printed,
    /// Nothing but the templates of the sizes.
    LeftOut,
}

/// What is printed, on what, and of a family for what.
#[derive(Debug, Clone, PartialEq)]
pub struct Order {
    /// What is printed of a pair.
    pub what: What,
    /// The paper.
    pub paper: Paper,
    /// For which printer, if its measure is known.
    pub printer: Option<Printer>,
    /// Of a family: how many pairs of each size are to be made.
    pub pairs_of_each: u32,
    /// Of a family: which sizes have their templates printed, by their places; all if nothing is
    /// said.
    pub sizes: Option<Vec<usize>>,
    /// Of a family: whether the sheets of the whole are printed.
    pub of_the_set: OfTheSet,
}

impl Order {
    /// The usual templates of everything on some paper.
    pub fn usual(paper: Paper) -> Self {
        Self {
            what: What::default(),
            paper,
            printer: None,
            pairs_of_each: 1,
            sizes: None,
            of_the_set: OfTheSet::Printed,
        }
    }

    /// Whether the size at a place of a family is printed.
    pub fn has_size(&self, place: usize) -> bool {
        self.sizes.as_ref().is_none_or(|own| own.contains(&place))
    }

    /// Whether anything of a family is printed.
    pub fn prints_something(&self) -> bool {
        let no_sizes = self.sizes.as_ref().is_some_and(Vec::is_empty);
        let templates = !self.what.kinds.is_empty() && !no_sizes;
        templates || self.of_the_set == OfTheSet::Printed
    }

    /// The text by which it is remembered: a line for each choice that does not hang on a family.
    pub fn text(&self) -> String {
        let What {
            kinds,
            views,
            reins,
            look,
            size,
        } = &self.what;
        let words: Vec<&str> = kinds.iter().map(|kind| kind.word()).collect();
        let mut text = format!("what {}\nviews {}\n", words.join(","), views_word(*views));
        let reins = word_of(&REINS, *reins);
        let look = word_of(&LOOKS, *look);
        let mut line = |name: &str, value: &str| {
            writeln!(text, "{name} {value}").expect("a text takes every line");
        };
        line("reins", reins);
        line("look", look);
        match size {
            Size::Cold => line("size", "cold"),
            Size::Hot(heat) => line("size", &format!("hot {}", heat.typed())),
            Size::Both(heat) => line("size", &format!("both {}", heat.typed())),
        }
        line("paper", &self.paper.to_string());
        if let Some(printer) = &self.printer {
            line("printer", &printer.name);
        }
        text
    }

    /// What a text remembers, the rest as it is here; a printer by its name among those known.
    #[must_use]
    pub fn reminded(mut self, text: &str, printers: &Printers) -> Self {
        for line in text.lines() {
            let (name, value) = line.split_once(' ').unwrap_or((line, ""));
            self.remind(name, value.trim(), printers);
        }
        self
    }

    /// Takes one choice that is remembered; one that cannot be read is as good as none.
    fn remind(&mut self, name: &str, value: &str, printers: &Printers) {
        let what = &mut self.what;
        match name {
            "what" => what.kinds = What::parse_kinds(value).unwrap_or(what.kinds.clone()),
            "views" => what.views = named(&VIEWS, value).unwrap_or(what.views),
            "reins" => what.reins = named(&REINS, value).unwrap_or(what.reins),
            "look" => what.look = named(&LOOKS, value).unwrap_or(what.look),
            "size" => what.size = size(value).unwrap_or(what.size),
            "paper" => self.paper = Paper::parse(value).unwrap_or(self.paper),
            "printer" => self.printer = printers.named(value).cloned(),
            _ => {}
        }
    }
}

const VIEWS: [(Views, &str); 3] = [
    (Views::All, "all"),
    (Views::Side, "side"),
    (Views::Top, "top"),
];
const REINS: [(Reins, &str); 3] = [
    (Reins::Whole, "whole"),
    (Reins::Broken, "broken"),
    (Reins::LeftOut, "left-out"),
];
const LOOKS: [(Look, &str); 3] = [
    (Look::WithSizes, "sizes"),
    (Look::NoSizes, "no-sizes"),
    (Look::OutlineOnly, "outline"),
];

fn word_of<T: PartialEq>(words: &[(T, &'static str)], value: T) -> &'static str {
    let found = words.iter().find(|(own, _)| *own == value);
    found.map_or("", |(_, word)| word)
}

/// Ends are never printed alone.
fn views_word(views: Views) -> &'static str {
    match views {
        Views::All | Views::End => "all",
        Views::Side => "side",
        Views::Top => "top",
    }
}

fn named<T: Copy>(words: &[(T, &str)], value: &str) -> Option<T> {
    let found = words.iter().find(|(_, word)| *word == value);
    found.map(|(own, _)| *own)
}

fn size(text: &str) -> Option<Size> {
    let heat = |text: &str| Heat::parse(text).ok();
    match text.split_once(' ') {
        Some(("hot", typed)) => heat(typed).map(Size::Hot),
        Some(("both", typed)) => heat(typed).map(Size::Both),
        Some(_) => None,
        None => (text == "cold").then_some(Size::Cold),
    }
}

/// The places of sizes by their numbers from 1, such as `1, 3-5`, among so many.
///
/// # Errors
/// One sentence that says which part is no number of a size.
pub fn parse_sizes(text: &str, count: usize) -> Result<Vec<usize>, String> {
    let mut places = Vec::new();
    for part in text
        .split(',')
        .map(str::trim)
        .filter(|part| !part.is_empty())
    {
        let (from, to) = part.split_once('-').unwrap_or((part, part));
        let number = |text: &str| {
            let number = text.trim().parse::<usize>().ok();
            number.filter(|number| (1..=count).contains(number))
        };
        match (number(from), number(to)) {
            (Some(from), Some(to)) if from <= to => places.extend(from - 1..to),
            _ => {
                let part: String = part.chars().take(40).collect();
                return Err(format!(
                    "\"{part}\" is no size of this family: give their numbers in the table, 1 to {count}, such as 1, 3-5"
                ));
            }
        }
    }
    if places.is_empty() {
        return Err(format!(
            "name the sizes by their numbers in the table, 1 to {count}"
        ));
    }
    places.sort_unstable();
    places.dedup();
    Ok(places)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::jobs::what::Kind;

    fn office() -> Printers {
        let printer = Printer {
            name: "Office".to_owned(),
            across: "101 mm".parse().expect("a size"),
            along: "100 mm".parse().expect("a size"),
            rim: None,
        };
        Printers::default().with(printer).expect("a printer")
    }

    #[track_caller]
    fn check(change: impl Fn(&mut Order)) {
        let mut order = Order::usual(Paper::A4);
        change(&mut order);
        let back = Order::usual(Paper::Letter).reminded(&order.text(), &office());
        assert_eq!(back, order, "{}", order.text());
    }

    #[test]
    fn what_was_chosen_is_remembered() {
        check(|_order| {});
        check(|order| order.what.kinds = Kind::ALL.to_vec());
        check(|order| order.what.kinds = vec![Kind::Head]);
        for (views, _) in VIEWS {
            check(|order| order.what.views = views);
        }
        for (reins, _) in REINS {
            check(|order| order.what.reins = reins);
        }
        for (look, _) in LOOKS {
            check(|order| order.what.look = look);
        }
        for heat in ["900 C", "1650 F", "bright orange"] {
            let heat = Heat::parse(heat).expect("a heat");
            check(|order| order.what.size = Size::Hot(heat));
            check(|order| order.what.size = Size::Both(heat));
        }
        check(|order| order.paper = Paper::parse("600 x 2000 mm").expect("a roll"));
        check(|order| order.printer = office().known.first().cloned());
    }

    /// A file that was damaged, or written by a newer program, costs what it says and no more.
    #[test]
    fn what_cannot_be_read_is_forgotten() {
        let usual = Order::usual(Paper::A4);
        let text = "what teapot\nviews\nsize hot 9000 C\nsize\npaper x\nprinter Attic\nnonsense 3";
        assert_eq!(usual.clone().reminded(text, &office()), usual);
    }

    #[track_caller]
    fn sizes(text: &str, expected: Option<&[usize]>) {
        let found = parse_sizes(text, 8);
        assert_eq!(found.ok().as_deref(), expected, "{text}");
    }

    #[test]
    fn sizes_are_named_by_their_numbers() {
        sizes("1", Some(&[0]));
        sizes("3, 1", Some(&[0, 2]));
        sizes("2-4,4", Some(&[1, 2, 3]));
        sizes("8-8", Some(&[7]));
        for wrong in ["", "0", "9", "4-2", "1-", "a", "1;2", "-1"] {
            sizes(wrong, None);
        }
    }
}
