//! The sheets of a family: one PDF with a contents page, and a folder of drawings.

use std::ops::ControlFlow;

use reinwright_core::asked::StockSizes;
use reinwright_core::paper::ink::{self, Date, DocInfo};
use reinwright_core::paper::{
    self, Arranged, Drawing, Named, Page, Paper, PaperOptions, SetSheet, Sheet, TitleBlock,
    Together,
};
use reinwright_core::shop::family::{Family, OfSize, sheet};
use reinwright_core::shop::printers::Printer;

use super::in_set::InSet;
use super::order::{OfTheSet, Order};
use super::pages::{Pages, Stack};
use super::what::{Kind, Reins};
use super::{printer, printing, words};

/// How far a long job has come; the caller answers whether it goes on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Progress {
    /// Steps done.
    pub done: usize,
    /// Steps in all.
    pub total: usize,
}

/// Is told of each step, and stops the job by answering [`ControlFlow::Break`].
pub type Watch<'a> = &'a mut dyn FnMut(Progress) -> ControlFlow<()>;

/// A watch that lets every job run to its end.
pub fn to_the_end(_progress: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

/// What is printed, and what must be known for it.
#[derive(Debug, Clone)]
pub struct Wanted {
    /// All that was chosen.
    pub order: Order,
    /// The day, if it is to be told.
    pub day: Option<Date>,
    /// The stock that can be bought, in which gaps are counted.
    pub stock: StockSizes,
}

impl Wanted {
    fn options(&self, paper: Paper) -> PaperOptions {
        printer::options(paper, self.order.printer.as_ref())
    }

    fn printer(&self) -> Option<&Printer> {
        self.order.printer.as_ref()
    }
}

/// Everything of a family on paper: contents, table, ranges, all sizes side by side and one over
/// the other, then the full-size templates of each size. `None` when the watch stopped it.
pub fn pdf<D: InSet>(
    family: &Family<D>,
    answers: &[D::Answer],
    wanted: &Wanted,
    watch: Watch<'_>,
) -> Option<Vec<u8>> {
    let pages = laid(family, answers, wanted, watch)?;
    let info = DocInfo {
        title: format!("{}, templates of the set", family.name),
        date: wanted.day,
    };
    let pdf = ink::pdf(&pages, &info);
    let done = steps::<D>(answers, wanted);
    let total = done;
    watch(Progress { done, total })
        .is_continue()
        .then_some(())?;
    Some(pdf)
}

/// In how many steps [`pdf`] is made.
fn steps<D: InSet>(answers: &[D::Answer], wanted: &Wanted) -> usize {
    let sizes = (0..answers.len()).filter(|index| wanted.order.has_size(*index));
    sizes.count() + 3
}

/// The pages of [`pdf`] as they come out. `None` when the watch stopped it.
pub fn laid<D: InSet>(
    family: &Family<D>,
    answers: &[D::Answer],
    wanted: &Wanted,
    watch: Watch<'_>,
) -> Option<Vec<Page>> {
    let total = steps::<D>(answers, wanted);
    let mut done = 0;
    let mut step = || {
        done += 1;
        watch(Progress { done, total }).is_continue().then_some(())
    };
    let mut sheets = family_sheets(family, answers, wanted);
    step()?;
    let bars = bars::<D>(answers, &wanted.order);
    for group in sharing::<D>(answers, &wanted.order) {
        sheets.extend(templates(family, answers, (&group, &bars), wanted));
        group.iter().try_for_each(|_| step())?;
    }
    let options = wanted.options(wanted.order.paper);
    for of in &mut sheets {
        of.title = printer::noted(std::mem::take(&mut of.title), wanted.printer());
    }
    let arranged = paper::arranged(&sheets, &options);
    let contents = match wanted.order.of_the_set {
        OfTheSet::Printed => contents(family, (&sheets, &arranged), wanted, &options),
        OfTheSet::LeftOut => Vec::new(),
    };
    let pages = paper::arranged(&contents, &options).then(arranged).pages();
    let pages = printer::corrected(pages, wanted.printer());
    step()?;
    Some(pages)
}

/// Which signs of the set's names cannot be printed, in one sentence without a period.
pub fn without_letters<D: InSet>(family: &Family<D>, answers: &[D::Answer]) -> Option<String> {
    let sizes = answers.iter().map(OfSize::label);
    words::without_letters(sizes.chain([family.name.as_str()]))
}

/// How many pages [`pdf`] makes on each of these papers. No more than a few sizes are drawn at
/// a time, and none once there are too many pages for every paper. `None` when the watch stopped it.
pub fn pages<D: InSet>(
    family: &Family<D>,
    answers: &[D::Answer],
    wanted: &Wanted,
    papers: &[Paper],
    watch: Watch<'_>,
) -> Option<Vec<Pages>> {
    let mut all = vec![Pages::default(); papers.len()];
    let mut sheets = 0;
    let mut add = |all: &mut [Pages], of: &[SetSheet]| {
        sheets += of.len();
        let noted: Vec<SetSheet> = of
            .iter()
            .map(|of| SetSheet {
                sheet: of.sheet.clone(),
                title: printer::noted(of.title.clone(), wanted.printer()),
            })
            .collect();
        for (pages, paper) in all.iter_mut().zip(papers) {
            for together in paper::arranged(&noted, &wanted.options(*paper)).together() {
                pages.add(&together, |sheet| of[sheet].sheet.title.clone());
            }
        }
    };
    add(&mut all, &family_sheets(family, answers, wanted));
    let total = answers.len();
    let mut done = 0;
    let bars = bars::<D>(answers, &wanted.order);
    for group in sharing::<D>(answers, &wanted.order) {
        if all.iter().all(|pages| pages.stack() == Stack::TooMany) {
            break;
        }
        if watch(Progress { done, total }).is_break() {
            return None;
        }
        add(
            &mut all,
            &templates(family, answers, (&group, &bars), wanted),
        );
        done += group.len();
    }
    if wanted.order.of_the_set == OfTheSet::LeftOut {
        return Some(all);
    }
    // The contents, a page each.
    let contents = sheets.div_ceil(sheet::ROWS_OF_A_PAGE);
    let contents = Together {
        pages: contents,
        sheets: vec![(0, 0)],
    };
    for pages in &mut all {
        pages.add(&contents, |_| "Contents".to_owned());
    }
    Some(all)
}

/// How many pages [`pdf`] makes on the paper that is wanted; `None` when the watch stopped it.
pub fn pages_wanted<D: InSet>(
    family: &Family<D>,
    answers: &[D::Answer],
    wanted: &Wanted,
    watch: Watch<'_>,
) -> Option<Pages> {
    let counted = pages(family, answers, wanted, &[wanted.order.paper], watch)?;
    counted.into_iter().next()
}

/// The sheets that only a family has.
fn family_sheets<D: InSet>(
    family: &Family<D>,
    answers: &[D::Answer],
    wanted: &Wanted,
) -> Vec<SetSheet> {
    if wanted.order.of_the_set == OfTheSet::LeftOut {
        return Vec::new();
    }
    let title = family_title(family, wanted.day);
    let titled = |sheet: Sheet| SetSheet {
        sheet,
        title: title.clone(),
    };
    let tables = sheet::table_pages(family, answers);
    let last = tables.len();
    let table = |(n, drawing): (usize, Drawing)| {
        let name = match last {
            1 => "Table of sizes".to_owned(),
            _ => format!("Table of sizes, {n} of {last}"),
        };
        titled(Sheet::full_size(name, drawing).named_in_title_block())
    };
    let mut sheets: Vec<SetSheet> = (1..).zip(tables).map(table).collect();
    let same = sheet::same_in_all(family, answers);
    let same = Sheet::full_size("What does not change", same).named_in_title_block();
    sheets.push(titled(same));
    let of_the_set = D::of_the_set((family, answers), wanted);
    sheets.extend(of_the_set.into_iter().map(titled));
    sheets
}

/// So many sizes share pages at the most: their names still stand in a title block.
const SHARING: usize = 8;

/// The sizes that are printed, those that share pages together: neighbours with nothing against
/// them. A size that must not be made stands alone, with why on each of its pages.
fn sharing<D: InSet>(answers: &[D::Answer], order: &Order) -> Vec<Vec<usize>> {
    let mut all: Vec<Vec<usize>> = Vec::new();
    let stops = |index: usize| printing::stop(answers[index].findings()).is_some();
    let steel = |index: usize| answers[index].document().bar().steel;
    for index in (0..answers.len()).filter(|index| order.has_size(*index)) {
        let joins = |group: &&mut Vec<usize>| {
            let alike = |own: &usize| !stops(*own) && steel(*own) == steel(index);
            group.len() < SHARING && !stops(index) && group.iter().all(alike)
        };
        match all.last_mut().filter(joins) {
            Some(group) => group.push(index),
            None => all.push(vec![index]),
        }
    }
    all
}

/// The templates of sizes that share pages; which one it is stands at each view of them, at the
/// base's as well. A rein or a bar that an earlier size has too is not drawn again.
fn templates<D: InSet>(
    family: &Family<D>,
    answers: &[D::Answer],
    (group, bars): (&[usize], &[usize]),
    wanted: &Wanted,
) -> Vec<SetSheet> {
    let (Some(first), Some(last)) = (group.first(), group.last()) else {
        return Vec::new();
    };
    let name = |index: usize| sheet::short_name(answers[index].label());
    let sizes = match group.len() {
        1 => answers[*first].label().to_owned(),
        2 => format!("{} and {}", name(*first), name(*last)),
        _ => format!("{} to {}", name(*first), name(*last)),
    };
    let of_first = &answers[*first];
    let title = TitleBlock {
        design: titled(&sheet::short_name(&family.name), &sizes),
        ..of_first
            .document()
            .title_block(of_first.findings(), wanted.day)
    };
    let own = |index: &usize| size_sheets::<D>(answers, *index, wanted, (&title, bars));
    group.iter().flat_map(own).collect()
}

/// A family with the sizes that are shown of it, which its own name may end with.
fn titled(family: &str, sizes: &str) -> String {
    if family.ends_with(sizes) {
        family.to_owned()
    } else {
        format!("{family}, {sizes}")
    }
}

/// The templates of one size.
fn size_sheets<D: InSet>(
    answers: &[D::Answer],
    index: usize,
    wanted: &Wanted,
    (title, bars): (&TitleBlock, &[usize]),
) -> Vec<SetSheet> {
    let answer = &answers[index];
    let mut what = wanted.order.what.clone();
    let mut as_others = String::new();
    let is_whole = what.reins == Reins::Whole;
    let rein = |other: &D::Answer| D::rein_is_like(other, answer);
    if let Some(other) = earlier(answers, index, &wanted.order, rein).filter(|_| is_whole) {
        what.reins = Reins::LeftOut;
        what.kinds.retain(|kind| *kind != Kind::Rein);
        as_others = format!(", rein as {}", sheet::short_name(other.label()));
    }
    if bars[index] != index {
        what.kinds.retain(|kind| *kind != Kind::Bar);
        let other = &answers[bars[index]];
        as_others += &format!(", bar as {}", sheet::short_name(other.label()));
    }
    let mut sheets = D::drawn(answer, &what, title);
    let name = sheet::short_name(answer.label());
    for (place, of) in sheets.iter_mut().enumerate() {
        let as_others = if place == 0 { as_others.as_str() } else { "" };
        of.sheet.title = format!("{name}: {}{as_others}", of.sheet.title);
        of.sheet.named = Named::Always;
    }
    sheets
}

/// The first size before this one that is printed too and is like it.
fn earlier<'a, A>(
    answers: &'a [A],
    index: usize,
    order: &Order,
    is_like: impl Fn(&A) -> bool,
) -> Option<&'a A> {
    let before = (0..index).filter(|place| order.has_size(*place));
    before.map(|place| &answers[place]).find(|of| is_like(of))
}

/// For each size the one on whose sheet its bar is drawn: itself, or the first that is printed and
/// whose bar shows the same.
fn bars<D: InSet>(answers: &[D::Answer], order: &Order) -> Vec<usize> {
    // Where nothing but bars is printed, each says whose it is.
    let share = order.what.has(Kind::Bar) && order.what.kinds.len() > 1;
    let mut drawn: Vec<(usize, Drawing)> = Vec::new();
    let mut all = Vec::new();
    for (index, answer) in answers.iter().enumerate() {
        let printed = share && order.has_size(index);
        let own = D::bar_of(answer).filter(|_| printed);
        let Some(own) = own.map(|sheet| sheet.drawing) else {
            all.push(index);
            continue;
        };
        let same = drawn.iter().find(|(_, other)| own.is_like(other));
        all.push(same.map_or(index, |(other, _)| *other));
        if same.is_none() {
            drawn.push((index, own));
        }
    }
    all
}

fn family_title<D: InSet>(family: &Family<D>, day: Option<Date>) -> TitleBlock {
    TitleBlock {
        design: family.name.clone(),
        ..family.base.title_block(&[], day)
    }
}

/// The contents pages, and which page each sheet begins on.
fn contents<D: InSet>(
    family: &Family<D>,
    (sheets, arranged): (&[SetSheet], &Arranged<'_>),
    wanted: &Wanted,
    options: &PaperOptions,
) -> Vec<SetSheet> {
    let begins = first_pages(sheets, arranged);
    let pages = |before: usize| -> Vec<SetSheet> {
        let entries = sheets.iter().zip(&begins);
        let entries = entries.map(|(of, begins)| (of.sheet.title.clone(), before + begins));
        let entries: Vec<(String, usize)> = entries.collect();
        let sheet = |entries: &[(String, usize)]| SetSheet {
            sheet: Sheet::full_size(
                "Contents",
                sheet::contents("Contents, sheet by sheet with its first page", entries),
            ),
            title: TitleBlock {
                // Contents share no page with anything that is drawn.
                size_note: "what is where".to_owned(),
                ..printer::noted(family_title(family, wanted.day), wanted.printer())
            },
        };
        entries.chunks(sheet::ROWS_OF_A_PAGE).map(sheet).collect()
    };
    // How many pages the contents take does not hang on the numbers in them.
    pages(1 + paper::arranged(&pages(1), options).count())
}

/// The first page of each sheet, counted from 0 where the first sheet begins.
fn first_pages(sheets: &[SetSheet], arranged: &Arranged<'_>) -> Vec<usize> {
    let mut begins = vec![0; sheets.len()];
    let mut before = 0;
    for together in arranged.together() {
        for (sheet, page) in together.sheets {
            begins[sheet] = before + page;
        }
        before += together.pages;
    }
    begins
}

/// The set's drawings as named SVG files: each size at full size, the whole set at full size too, one
/// unit to the millimetre, its table and what else is told of it. `None` when the
/// watch stopped it.
pub fn svgs<D: InSet>(
    family: &Family<D>,
    answers: &[D::Answer],
    wanted: &Wanted,
    watch: Watch<'_>,
) -> Option<Vec<(String, String)>> {
    let total = answers.len() + 1;
    let named = |name: &str, drawing: &Drawing| {
        (
            format!("{name}.svg"),
            ink::svg(drawing, &format!("{}, {name}", family.name)),
        )
    };
    let mut files = vec![
        named("all-table", &sheet::table(family, answers)),
        named("all-unchanged", &sheet::same_in_all(family, answers)),
    ];
    let pictures = D::set_pictures((family, answers), wanted);
    files.extend(pictures.iter().map(|(name, picture)| named(name, picture)));
    let step = |done: usize, watch: &mut dyn FnMut(Progress) -> ControlFlow<()>| {
        watch(Progress { done, total }).is_continue().then_some(())
    };
    step(1, watch)?;
    for (done, (answer, name)) in (2..).zip(answers.iter().zip(file_names(answers))) {
        let pictures = D::pictures(answer).into_iter();
        files.extend(pictures.map(|(what, own)| named(&format!("{name}-{what}"), &own)));
        step(done, watch)?;
    }
    Some(files)
}

/// A name for each size's files, none twice: its label in letters, digits and hyphens behind its
/// place, so that a folder lists them in order.
pub fn file_names<A: OfSize>(answers: &[A]) -> Vec<String> {
    let width = answers.len().to_string().len();
    let name =
        |(place, answer): (usize, &A)| format!("{:0width$}-{}", place + 1, slug(answer.label()));
    answers.iter().enumerate().map(name).collect()
}

/// Small letters, digits and single hyphens; 40 signs at most.
pub fn slug(name: &str) -> String {
    let plain = name.to_lowercase();
    let words = plain.split(|c: char| !c.is_ascii_alphanumeric());
    let joined = words
        .filter(|word| !word.is_empty())
        .collect::<Vec<_>>()
        .join("-");
    let short: String = joined.chars().take(40).collect();
    if short.is_empty() {
        "family".to_owned()
    } else {
        short
    }
}
