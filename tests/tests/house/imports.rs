//! The paths that a source names, read from its text: `use` trees, paths in the code, chains of
//! `super`. Comments, strings and characters are passed over.

/// A piece of a source.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Token<'a> {
    Word(&'a str),
    Colons,
    Open,
    Close,
    Comma,
    Star,
    Other,
}

/// Every path from `crate`, `super` or `self` that is named in the source of a module, each as
/// its words from the crate's root.
pub(crate) fn paths(text: &str, module: &[String]) -> Vec<Vec<String>> {
    let mut reader = Reader {
        tokens: tokens(text),
        at: 0,
        module: module.to_vec(),
        depth: 0,
        opened: Vec::new(),
        found: Vec::new(),
    };
    while reader.at < reader.tokens.len() {
        reader.step();
    }
    reader.found
}

struct Reader<'a> {
    tokens: Vec<Token<'a>>,
    at: usize,
    /// The module that is read, with those that are written inside it.
    module: Vec<String>,
    depth: usize,
    /// How deep the braces stood before each module that is written inside.
    opened: Vec<usize>,
    found: Vec<Vec<String>>,
}

impl<'a> Reader<'a> {
    fn token(&self, ahead: usize) -> Token<'a> {
        let at = self.at + ahead;
        self.tokens.get(at).copied().unwrap_or(Token::Other)
    }

    fn step(&mut self) {
        match (self.token(0), self.token(1), self.token(2)) {
            (Token::Word("mod"), Token::Word(name), Token::Open) => {
                self.module.push(name.to_owned());
                self.opened.push(self.depth);
                self.at += 2;
            }
            (Token::Open, _, _) => {
                self.depth += 1;
                self.at += 1;
            }
            (Token::Close, _, _) => self.close(),
            (Token::Word("crate" | "super" | "self"), Token::Colons, _) if self.begins() => {
                self.tree(self.module.clone());
            }
            (Token::Word(_) | Token::Colons | Token::Comma | Token::Star | Token::Other, _, _) => {
                self.at += 1;
            }
        }
    }

    fn close(&mut self) {
        self.depth = self.depth.saturating_sub(1);
        if self.opened.last() == Some(&self.depth) {
            self.opened.pop();
            self.module.pop();
        }
        self.at += 1;
    }

    /// Whether a path begins here that is no `pub(in ...)`.
    fn begins(&self) -> bool {
        let before = self.at.checked_sub(1).map(|at| self.tokens[at]);
        !matches!(before, Some(Token::Colons | Token::Word("in")))
    }

    /// Reads a path, or all paths of a `use` tree, from the words that stand before it.
    fn tree(&mut self, mut before: Vec<String>) {
        match self.token(0) {
            Token::Word(word) => {
                match word {
                    "crate" => before.clear(),
                    "super" => drop(before.pop()),
                    "self" => {}
                    _ => before.push(word.to_owned()),
                }
                self.at += 1;
                self.on_from(before);
            }
            Token::Star => {
                before.push("*".to_owned());
                self.found.push(before);
                self.at += 1;
            }
            Token::Open => self.group(&before),
            Token::Colons | Token::Close | Token::Comma | Token::Other => self.found.push(before),
        }
    }

    fn on_from(&mut self, before: Vec<String>) {
        match self.token(0) {
            Token::Colons => {
                self.at += 1;
                self.tree(before);
            }
            Token::Word("as") => {
                self.found.push(before);
                self.at += 2;
            }
            Token::Word(_)
            | Token::Open
            | Token::Close
            | Token::Comma
            | Token::Star
            | Token::Other => self.found.push(before),
        }
    }

    fn group(&mut self, before: &[String]) {
        self.at += 1;
        while self.at < self.tokens.len() && self.token(0) != Token::Close {
            if matches!(self.token(0), Token::Word(_) | Token::Star | Token::Open) {
                self.tree(before.to_vec());
            } else {
                self.at += 1;
            }
        }
        self.at += 1;
    }
}

fn tokens(text: &str) -> Vec<Token<'_>> {
    let (mut found, mut rest) = (Vec::new(), text);
    while let Some(first) = rest.chars().next() {
        let passed = passed_over(rest);
        if passed > 0 {
            rest = &rest[passed..];
            continue;
        }
        let (token, length) = match first {
            ':' if rest.starts_with("::") => (Token::Colons, 2),
            '{' => (Token::Open, 1),
            '}' => (Token::Close, 1),
            ',' => (Token::Comma, 1),
            '*' => (Token::Star, 1),
            _ => match word(rest) {
                0 => (Token::Other, first.len_utf8()),
                length => (Token::Word(&rest[..length]), length),
            },
        };
        found.push(token);
        rest = &rest[length..];
    }
    found
}

fn word(rest: &str) -> usize {
    let ends = |c: char| !(c.is_alphanumeric() || c == '_');
    rest.find(ends).unwrap_or(rest.len())
}

/// Length of what names nothing: a space, a comment, a string, a character, a lifetime's tick.
fn passed_over(rest: &str) -> usize {
    let first = rest.chars().next().map_or(0, char::len_utf8);
    if rest.starts_with(char::is_whitespace) {
        first
    } else if rest.starts_with("//") {
        rest.find('\n').unwrap_or(rest.len())
    } else if rest.starts_with("/*") {
        block_comment(rest)
    } else if rest.starts_with('"') {
        quoted(rest, '"')
    } else if rest.starts_with('\'') {
        character(rest)
    } else {
        raw_string(rest)
    }
}

/// Comments of this kind may stand inside each other.
fn block_comment(rest: &str) -> usize {
    let (mut deep, mut at) = (0, 0);
    while at < rest.len() {
        if rest[at..].starts_with("/*") {
            deep += 1;
            at += 2;
        } else if rest[at..].starts_with("*/") {
            deep -= 1;
            at += 2;
        } else {
            at += rest[at..].chars().next().map_or(1, char::len_utf8);
        }
        if deep == 0 {
            return at;
        }
    }
    rest.len()
}

/// To the closing mark, which a backslash keeps from closing.
fn quoted(rest: &str, mark: char) -> usize {
    let mut escaped = false;
    for (at, c) in rest.char_indices().skip(1) {
        match c {
            _ if escaped => escaped = false,
            '\\' => escaped = true,
            _ if c == mark => return at + mark.len_utf8(),
            _ => {}
        }
    }
    rest.len()
}

/// A character, or only the tick where it is a lifetime's.
fn character(rest: &str) -> usize {
    let mut after = rest.char_indices().skip(1);
    match (after.next(), after.next()) {
        (Some((_, '\\')), _) => quoted(rest, '\''),
        (Some(_), Some((at, '\''))) => at + 1,
        (_, _) => 1,
    }
}

/// `r"..."`, `r#"..."#` and the like; 0 where none begins.
fn raw_string(rest: &str) -> usize {
    let Some(marks) = rest.strip_prefix("br").or(rest.strip_prefix('r')) else {
        return 0;
    };
    let inside = marks.trim_start_matches('#');
    if !inside.starts_with('"') {
        return 0;
    }
    let end = format!("\"{}", &marks[..marks.len() - inside.len()]);
    let from = rest.len() - inside.len() + 1;
    let length = rest[from..].find(&end).map(|at| from + at + end.len());
    length.unwrap_or(rest.len())
}

#[cfg(test)]
mod tests {
    use super::paths;

    #[track_caller]
    fn check(text: &str, named: &[&str]) {
        let module = ["window", "sheet", "paper"].map(str::to_owned);
        let found: Vec<String> = paths(text, &module).iter().map(|p| p.join("::")).collect();
        assert_eq!(found, named, "in {text}");
    }

    #[test]
    fn use_trees_are_read_to_their_ends() {
        check("use crate::a::B;", &["a::B"]);
        check(
            "use crate::{a::B, c::{D, self, e::*}};",
            &["a::B", "c::D", "c", "c::e::*"],
        );
        check("use crate::a::{self as b, C as D};", &["a", "a::C"]);
        check("use {crate::a, super::b};", &["a", "window::sheet::b"]);
        check("use std::fs; use egui::{self, Ui};", &[]);
    }

    #[test]
    fn chains_of_super_count_from_the_module_they_stand_in() {
        check("use super::x::Y;", &["window::sheet::x::Y"]);
        check("use super::super::x;", &["window::x"]);
        check(
            "use super::{super::x, y};",
            &["window::x", "window::sheet::y"],
        );
        check(
            "mod inner { fn f() { super::g() } } fn h() { super::i() }",
            &["window::sheet::paper::g", "window::sheet::i"],
        );
        check("use self::x;", &["window::sheet::paper::x"]);
    }

    #[test]
    fn paths_in_the_code_are_found() {
        check("fn f(x: &crate::a::B<'_>) {}", &["a::B"]);
        check("let x = crate::a::f::<u8>();", &["a::f"]);
        check("let x = super::super::x::Y { z };", &["window::x::Y"]);
        check("let c = ':'; let q = '\\''; crate::a::b()", &["a::b"]);
    }

    #[test]
    fn what_names_nothing_is_passed_over() {
        check("// use crate::a;\n/* crate::b /* crate::c */ */", &[]);
        check("let s = \"crate::a \\\" crate::b\";", &[]);
        check("let s = r#\"crate::a \" crate::b\"#;", &[]);
        check("pub(in crate::window) struct A; pub(crate) struct B;", &[]);
        check("fn f<'a>(self) -> &'a str { self.x }", &[]);
    }
}
