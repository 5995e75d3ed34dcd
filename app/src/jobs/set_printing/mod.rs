//! The sheets of a family: one PDF with a contents page, and a folder of drawings.

mod contents;
mod count;
pub mod in_set;
mod sizes;
mod svg;
mod wanted;

use reinwright_core::paper::ink::{self, Date, DocInfo};
use reinwright_core::paper::{self, Drawing, Page, SetSheet, Sheet, TitleBlock};
use reinwright_core::shop::family::{Family, OfSize, sheet};

use self::contents::contents;
use self::in_set::InSet;
use self::sizes::{bars, sharing, templates};
use super::order::OfTheSet;
use super::watch::{Progress, Watch};
use super::{printer, words};

pub use count::{pages, pages_wanted};
pub use svg::{file_names, slug, svgs};
pub use wanted::Wanted;

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
    let look = wanted.order.what.look;
    let of_the_set = D::of_the_set((family, answers), wanted).into_iter();
    sheets.extend(of_the_set.map(|sheet| titled(look.of(sheet))));
    sheets
}

fn family_title<D: InSet>(family: &Family<D>, day: Option<Date>) -> TitleBlock {
    TitleBlock {
        design: family.name.clone(),
        ..family.base.title_block(&[], day)
    }
}
