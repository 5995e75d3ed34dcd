//! The jobs without a window.
//!
//! Every job is a function from its arguments to text for the standard output and an exit status,
//! or to one sentence that names the file, the place and the mend. Only this file prints.

mod arguments;
mod balance;
mod came_out;
mod choose;
mod cut;
mod family;
mod findings;
mod fit;
mod heats;
mod job_sheet;
mod keyed;
mod new;
mod plan;
mod printer;
mod sheets;
mod shelf;
mod tool;
mod written;

use std::ffi::OsString;
use std::fmt::Write as _;
use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::Parser;
use clap::error::{ContextKind, ErrorKind};
use reinwright_core::tongs::document::Document;
use reinwright_core::units::one_line;

use arguments::{Arguments, Job};

use crate::disk::{files, memory, own_jaws, trouble};

/// Exit status of everything that went wrong, the arguments included.
const FAILED: u8 = 3;

/// What a job prints, and its exit status.
struct Done {
    text: String,
    status: u8,
}

impl Done {
    fn said(text: String) -> Self {
        Self { text, status: 0 }
    }
}

type Outcome = Result<Done, String>;

/// What the program says, and the status it exits with.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answer {
    /// For the standard output.
    pub text: String,
    /// For the standard error: nothing, or one line.
    pub error: String,
    /// 0 done, 1 and 2 from `findings`, 3 failed.
    pub status: u8,
}

/// Where a user keeps what the jobs ask for.
#[derive(Debug, Clone, Default)]
pub struct Places {
    /// What is remembered from day to day, such as the stock that can be bought.
    pub remembered: Option<PathBuf>,
    /// The own jaws.
    pub jaws: Option<PathBuf>,
}

impl Places {
    /// Those of the user who runs the program.
    pub fn of_user() -> Self {
        Self {
            remembered: memory::folder(),
            jaws: own_jaws::folder(),
        }
    }
}

/// Runs the program with its arguments, the program's name first, and prints what comes out.
pub fn run(arguments: impl Iterator<Item = OsString>) -> ExitCode {
    let answer = answer(arguments, &Places::of_user());
    let mut out = std::io::stdout();
    let printed = out
        .write_all(answer.text.as_bytes())
        .and_then(|()| out.flush());
    let (error, status) = match printed {
        Err(error) if error.kind() != std::io::ErrorKind::BrokenPipe => {
            let why = trouble::why(&error);
            let said =
                format!("reinwright: the answer cannot be printed ({why}): send it elsewhere\n");
            (said, FAILED)
        }
        // A reader that has gone away, such as `head`, is no error.
        Ok(()) | Err(_) => (answer.error, answer.status),
    };
    std::io::stderr().write_all(error.as_bytes()).ok();
    ExitCode::from(status)
}

/// Does what the arguments ask, the program's name first, with what is kept in these places.
pub fn answer(arguments: impl Iterator<Item = OsString>, places: &Places) -> Answer {
    let outcome = match Arguments::try_parse_from(arguments) {
        Ok(arguments) => start(arguments, places),
        Err(error) => no_job(&error),
    };
    match outcome {
        Ok(done) => Answer {
            text: tame(&done.text),
            error: String::new(),
            status: done.status,
        },
        Err(sentence) => Answer {
            text: String::new(),
            error: format!("reinwright: {}\n", tame(&one_line(&sentence))),
            status: FAILED,
        },
    }
}

/// The text with every sign that a terminal would obey, instead of showing it, written as its
/// number: names and messages quote what stands in files. JSON stays what it is, since it has the
/// same way to write a sign.
fn tame(text: &str) -> String {
    let mut tame = String::with_capacity(text.len());
    for sign in text.chars() {
        if commands(sign) {
            let _ = write!(tame, "\\u{:04x}", u32::from(sign));
        } else {
            tame.push(sign);
        }
    }
    tame
}

/// Whether a sign is none to be shown: control signs but for the line feed (Unicode, category Cc),
/// and those that turn the direction of writing (Unicode Standard Annex 9, 2.1 to 2.5).
fn commands(sign: char) -> bool {
    (sign.is_control() && sign != '\n')
        || matches!(sign, '\u{61c}' | '\u{200e}' | '\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

fn start(arguments: Arguments, places: &Places) -> Outcome {
    match arguments.job {
        None => window(arguments.file),
        Some(Job::New(wanted)) => new::run(&wanted),
        Some(Job::Printer(asked)) => printer::printer(&asked),
        Some(Job::Choose(asked)) => choose::run(&asked, places),
        Some(Job::ToolsFor(asked)) => tool::all_for(&asked),
        Some(Job::Findings(wanted)) if tool::is_tool(&wanted.asked.file)? => tool::noticed(&wanted),
        Some(Job::Drawing(wanted)) if tool::is_tool(&wanted.file)? => tool::drawing(&wanted),
        Some(Job::Balance(asked)) if tool::is_tool(&asked.file)? => tool::balanced(&asked),
        Some(Job::Plan(wanted)) if tool::is_tool(&wanted.file)? => tool::planned(&wanted, places),
        Some(Job::Template(wanted)) if tool::is_tool(&wanted.file)? => tool::template(&wanted),
        Some(Job::Sheet(wanted)) if family::is(&wanted.file)? => {
            job_sheet::of_family(&wanted, places)
        }
        Some(Job::Sheet(wanted)) if tool::is_tool(&wanted.file)? => tool::sheet(&wanted, places),
        Some(Job::Balance(asked)) if family::is_of_tools(&asked.file)? => {
            family::balance(&family::of_tools(&asked.file)?, &asked)
        }
        Some(Job::Findings(wanted)) if family::is_of_tools(&wanted.asked.file)? => {
            let opened = family::of_tools(&wanted.asked.file)?;
            family::findings(&opened, &wanted, places)
        }
        Some(Job::Balance(asked)) => family::or(&asked.file, &asked, balance::run, family::balance),
        Some(Job::Findings(wanted)) => family::or(
            &wanted.asked.file,
            &wanted,
            findings::run,
            |family, asked| family::findings(family, asked, places),
        ),
        Some(Job::Fit(wanted)) => {
            family::or(&wanted.asked.file, &wanted, fit::run, |family, asked| {
                family::fit(family, asked, places)
            })
        }
        Some(Job::Sheet(wanted)) => job_sheet::run(&wanted, places),
        Some(Job::Plan(wanted)) => plan::run(&wanted, places),
        Some(Job::Sources(wanted)) => heats::examples(&wanted),
        Some(Job::Coil(wanted)) => heats::coil(&wanted, places),
        Some(Job::Template(wanted)) => sheets::template(&wanted),
        Some(Job::Drawing(wanted)) => sheets::drawing(&wanted),
        Some(Job::Family(wanted)) => family::write(&wanted, places),
        Some(Job::Shelf(asked)) => shelf::run(&asked),
        Some(Job::Cut(asked)) => cut::run(&asked),
        Some(Job::CameOut(asked)) => came_out::run(&asked),
    }
}

/// Help and version were asked for; anything else is a mistake in the arguments.
fn no_job(error: &clap::Error) -> Outcome {
    match error.kind() {
        ErrorKind::InvalidUtf8 => Err(
            "an argument has signs that are no text (not UTF-8), and it is no file: type it anew"
                .to_owned(),
        ),
        ErrorKind::DisplayHelp | ErrorKind::DisplayVersion => Ok(Done::said(error.to_string())),
        // A word that is no job was taken for a file to open.
        ErrorKind::ArgumentConflict if error.get(ContextKind::InvalidSubcommand).is_some() => Err(
            "the first word is no job that is known here: see reinwright --help for the jobs"
                .to_owned(),
        ),
        _ => Err(wrong_arguments(error)),
    }
}

/// A word that was typed is quoted no longer than this, in characters.
const LONGEST_WORD: usize = 60;

/// The beginning of a word that is too long, with dots behind.
fn shortened(word: &str, most: usize) -> String {
    if word.chars().count() <= most {
        return word.to_owned();
    }
    let kept: String = word.chars().take(most).collect();
    format!("{kept}...")
}

/// The first paragraph of the long message, with the way to the rest.
fn wrong_arguments(error: &clap::Error) -> String {
    let text = error.to_string();
    let first = text.split("\n\n").next().unwrap_or_default();
    let what = first.trim_start_matches("error:").trim();
    let words = what
        .split_whitespace()
        .map(|word| shortened(word, LONGEST_WORD));
    let what = words.collect::<Vec<_>>().join(" ");
    format!("{what}: see reinwright --help for what can be asked")
}

/// Opens the window, which says itself what a file has against it. Without a display that is said here, before the
/// display is missed.
fn window(file: Option<PathBuf>) -> Outcome {
    if let Some(path) = file.as_ref().filter(|_| !crate::window::has_display()) {
        files::check(path)?;
    }
    let instead =
        "the same jobs run without a window, such as reinwright template FILE --out X.pdf";
    match crate::window::open(file) {
        Ok(()) => Ok(Done::said(String::new())),
        Err(error) => Err(format!("{error}: {instead}")),
    }
}

/// Opens the design that a job is about.
fn design(path: &Path) -> Result<Document, String> {
    files::open(path)
}

/// A value as indented JSON with a line feed.
fn json(value: &impl serde::Serialize) -> Result<String, String> {
    let text = serde_json::to_string_pretty(value);
    let text = text.map_err(|error| format!("the answer cannot be written as JSON ({error})"))?;
    Ok(text + "\n")
}
