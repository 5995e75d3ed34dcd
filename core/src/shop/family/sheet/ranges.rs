use kurbo::{BezPath, Point, Rect, Shape};

use super::{COLUMN_GAP, ROW, TEXT, bar_words, both, letters, short_name};
use crate::asked::{StockSizes, Units};
use crate::paper::font::text_width;
use crate::paper::{Align, Drawing, Fill, Item, Line};
use crate::shop::family::{
    BarTotal, Coverage, Family, InSizes, OfSize, SizeAnswer, coverage, totals,
};

/// What the set holds, shape by shape: a bar for each size with a tick at its own work, gaps
/// in the stock that can be bought marked and put in words; beside it the bar and the mass of each
/// pair. Then the bar for the whole set.
pub fn ranges(
    family: &Family,
    answers: &[SizeAnswer],
    pairs_of_each: u32,
    stock: &StockSizes,
) -> Drawing {
    let units = family.base.units;
    let mut chart = Chart {
        units,
        answers,
        items: Vec::new(),
        y: 0.0,
        names: answers
            .iter()
            .map(|a| text_width(&short_name(&a.label), TEXT, false))
            .fold(0.0, f64::max),
    };
    let all = coverage(answers, units, stock);
    all.iter().for_each(|coverage| chart.coverage(coverage));
    chart.without_range();
    chart.totals(family, pairs_of_each);
    Drawing { items: chart.items }
}

struct Chart<'a> {
    units: Units,
    answers: &'a [SizeAnswer],
    items: Vec<Item>,
    y: f64,
    names: f64,
}

/// Width of the chart's bars, mm.
const CHART: f64 = 80.0;

impl Chart<'_> {
    fn line(&mut self, text: &str, bold: bool) {
        self.items
            .push(letters(Point::new(0.0, self.y), text, bold));
        self.y -= ROW;
    }

    fn coverage(&mut self, coverage: &Coverage) {
        let from = coverage
            .spans
            .iter()
            .map(|s| s.from_mm)
            .fold(f64::MAX, f64::min);
        let to = coverage.spans.iter().map(|s| s.to_mm).fold(0.0, f64::max);
        let (left, scale) = (self.names + COLUMN_GAP, CHART / (to - from).max(1e-9));
        let x = |mm: f64| left + (mm - from) * scale;
        self.line(&format!("Holds {}", coverage.shape), true);
        let top = self.y + 0.8 * TEXT;
        for span in &coverage.spans {
            self.span(span.size, (x(span.from_mm), x(span.to_mm)), x);
        }
        for gap in &coverage.gaps {
            self.gap((x(gap.from_mm), x(gap.to_mm)), top);
        }
        let show = self.units.show();
        let ends = [
            (left, show.text(from), Align::Start),
            (left + CHART, show.text(to), Align::End),
        ];
        for (x, text, align) in ends {
            self.items
                .push(Item::text(Point::new(x, self.y), text, TEXT, align));
        }
        self.y -= ROW;
        for gap in &coverage.gaps {
            self.line(&gap.sentence(), false);
        }
        if let Some(held) = coverage.all_held(self.units) {
            self.line(&held, false);
        }
        self.y -= ROW;
    }

    fn span(&mut self, size: usize, (from, to): (f64, f64), x: impl Fn(f64) -> f64) {
        let answer = &self.answers[size];
        let y = self.y;
        self.items.push(letters(
            Point::new(0.0, y),
            &short_name(&answer.label),
            false,
        ));
        let bar = Rect::new(from, y - 0.1 * TEXT, to, y + 0.8 * TEXT).to_path(0.1);
        self.items
            .push(both(bar, Fill::Part(crate::finding::Part::Jaw), Line::Fine));
        let own = x(answer.document.work.size().mm());
        let mut tick = BezPath::new();
        tick.move_to((own, y - 0.3 * TEXT));
        tick.line_to((own, y + TEXT));
        self.items.push(Item::line(tick, Line::Mark));
        let right = self.names + 2.0 * COLUMN_GAP + CHART;
        let about = cut_to(answer, self.units);
        self.items
            .push(letters(Point::new(right, y), &about, false));
        self.y -= ROW;
    }

    fn gap(&mut self, (from, to): (f64, f64), top: f64) {
        let area = Rect::new(from, self.y + 0.8 * TEXT, to.max(from + 0.3), top);
        self.items
            .push(both(area.to_path(0.1), Fill::Warning, Line::Warning));
    }

    /// Sizes that hold nothing at all are not forgotten.
    fn without_range(&mut self) {
        for answer in self.answers {
            if let Err(no) = &answer.fit.range {
                self.line(&format!("{} holds nothing: {no}", answer.label), false);
            }
        }
    }

    fn totals(&mut self, family: &Family, pairs_of_each: u32) {
        for (text, bold) in total_lines(family, self.answers, pairs_of_each) {
            self.line(&text, bold);
        }
    }
}

/// The bar for so many of each size, a line each under a heading; whether a line is bold.
fn total_lines<D: InSizes>(
    family: &Family<D>,
    answers: &[D::Answer],
    of_each: u32,
) -> Vec<(String, bool)> {
    let counted = counted::<D>(of_each);
    let mut lines = vec![(format!("Bar for {counted} of each size"), true)];
    let all = totals(answers, of_each).into_iter();
    lines.extend(all.map(|total| (total_words(family, &total), false)));
    lines
}

/// The bar for so many of each size, and under it of each size what it is cut to and what it weighs:
/// all that a set of tools has where pairs have their ranges.
pub fn bars<D: InSizes>(family: &Family<D>, answers: &[D::Answer], of_each: u32) -> Drawing {
    let units = family.base.units();
    let mut lines = total_lines(family, answers, of_each);
    lines.push((String::new(), false));
    lines.push(("Size by size".to_owned(), true));
    let about = |answer: &D::Answer| {
        let name = short_name(answer.label());
        format!("{name}: {}", cut_to(answer, units))
    };
    lines.extend(answers.iter().map(|answer| (about(answer), false)));
    let down = std::iter::successors(Some(0.0), |y| Some(y - ROW));
    let letters =
        |((text, bold), y): ((String, bool), f64)| letters(Point::new(0.0, y), &text, bold);
    Drawing {
        items: lines.into_iter().zip(down).map(letters).collect(),
    }
}

/// What a size is cut to and what it weighs when it is finished.
fn cut_to<A: OfSize<Of: InSizes>>(answer: &A, units: Units) -> String {
    let bar = answer.balance().cut_text(units);
    let mass = units.show().mass(answer.mass_kg());
    let stock = bar_words(&answer.document().bar().stock);
    format!("{bar} of {stock}, finished {mass}")
}

/// What a set takes of one bar: `40 in of 3/4 in square mild steel, 6.38 lb, for 3 pairs`.
pub fn total_words<D: InSizes>(family: &Family<D>, total: &BarTotal) -> String {
    let units = family.base.units();
    format!(
        "{} of {} {}, {}, for {}",
        units.show().text(total.length_mm),
        bar_words(&total.bar.stock),
        total.bar.steel.name(),
        units.show().mass(total.mass_kg),
        counted::<D>(total.pairs)
    )
}

/// `1 pair`, `3 tools`.
fn counted<D: InSizes>(count: u32) -> String {
    let several = if count == 1 { "" } else { "s" };
    format!("{count} {}{several}", D::NAME)
}
