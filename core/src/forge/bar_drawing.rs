//! The bar with its coloured parts and marks.

use kurbo::{Point, Rect};

use crate::asked::{Bar, Units};
use crate::finding::Part;
use crate::forge::balance::{Balance, Stretch};
use crate::paper::dimension::{Hang, Scale, Side, Wish, rectangle, rows, segment};
use crate::paper::{self, Align, Drawing, Fill, Item, Line};

/// The bar, full size, with its coloured parts and marks where they are set off with a rule. Origin at the bar's left end, on its
/// middle line. `text` is the size of its text, mm. A tool's bar lies as its views do, the working end to the right,
/// and is set off from there.
pub fn bar((bar, units): (&Bar, Units), balance: &Balance, text: f64) -> Drawing {
    let scale = Scale { text };
    let half = bar.stock.size().mm() / 2.0;
    let length = balance.cut_length(units).mm();
    let lies = Lies::of(balance, length);
    let mut items: Vec<Item> = balance
        .stretches
        .iter()
        .map(|stretch| Stretch {
            from_mm: balance.set_off_mm(stretch.from_mm, units),
            to_mm: balance.set_off_mm(stretch.to_mm, units),
            ..*stretch
        })
        .map(|stretch| lies.stretch(stretch))
        .flat_map(|stretch| coloured(&stretch, half, scale))
        .collect();
    items.push(
        Item::line(
            rectangle(Rect::new(0.0, -half, length, half)),
            Line::Outline,
        )
        .of(Part::Bar),
    );
    items.extend(marks((units, lies), balance, half, scale));
    Drawing { items }
}

/// Where a joint may run through the drawing of the bar: in what becomes a rein or the body of a tool, and
/// in what becomes nothing.
pub fn plain(balance: &Balance, units: Units) -> Vec<paper::Stretch> {
    let may = |stretch: &&Stretch| matches!(stretch.part, None | Some(Part::Rein | Part::Body));
    let plain = balance.stretches.iter().filter(may);
    let set_off = |mm: f64| balance.set_off_mm(mm, units);
    let lies = Lies::of(balance, balance.cut_length(units).mm());
    let plain = plain.map(|stretch| {
        let ends = [stretch.from_mm, stretch.to_mm].map(|mm| lies.at(set_off(mm)));
        paper::Stretch {
            from: ends[0].min(ends[1]),
            to: ends[0].max(ends[1]),
        }
    });
    plain.collect()
}

/// Where the end lies from which a bar is set off.
#[derive(Debug, Clone, Copy)]
enum Lies {
    /// To the left.
    Left,
    /// To the right, at so many mm.
    Right(f64),
}

impl Lies {
    fn of(balance: &Balance, length: f64) -> Self {
        match balance.stretches.first().and_then(|own| own.part) {
            Some(Part::Working) => Self::Right(length),
            Some(_) | None => Self::Left,
        }
    }

    fn at(self, mm: f64) -> f64 {
        match self {
            Self::Left => mm,
            Self::Right(length) => length - mm,
        }
    }

    fn stretch(self, own: Stretch) -> Stretch {
        let ends = [own.from_mm, own.to_mm].map(|mm| self.at(mm));
        Stretch {
            from_mm: ends[0].min(ends[1]),
            to_mm: ends[0].max(ends[1]),
            ..own
        }
    }
}

fn coloured(stretch: &Stretch, half: f64, scale: Scale) -> Vec<Item> {
    let area = rectangle(Rect::new(stretch.from_mm, -half, stretch.to_mm, half));
    let fill = stretch.part.map_or(Fill::Waste, Fill::Part);
    let part = stretch.part.unwrap_or(Part::Bar);
    let mut items = vec![Item::fill(area, fill).of(part)];
    if let Some(part) = stretch.part {
        let middle = Point::new(
            f64::midpoint(stretch.from_mm, stretch.to_mm),
            -0.36 * scale.text,
        );
        let room = stretch.to_mm - stretch.from_mm - 0.6 * scale.text;
        let wide = crate::paper::font::text_width(part.name(), scale.text, false);
        if wide < room && scale.text <= 2.0 * half {
            items.push(Item::text(middle, part.name(), scale.text, Align::Middle).of(part));
        }
    }
    items
}

fn marks((units, lies): (Units, Lies), balance: &Balance, half: f64, scale: Scale) -> Vec<Item> {
    let show = units.show();
    let mut items = Vec::new();
    let mut wishes = Vec::new();
    for mark in &balance.marks {
        let measured = mark.measured(units).mm();
        let at = lies.at(measured);
        let (top, bottom) = (Point::new(at, half), Point::new(at, -half));
        items.push(Item::line(segment(top, bottom), Line::Mark).of(Part::Bar));
        wishes.push(Wish::Note {
            at: bottom,
            text: show.number(measured),
            part: Part::Bar,
            hang: Hang::Only(Align::Middle),
        });
    }
    items.extend(rows(Side::Below, -half, scale, wishes));
    items
}
