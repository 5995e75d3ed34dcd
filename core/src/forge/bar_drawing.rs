//! The bar with its coloured parts and marks.

use kurbo::{Point, Rect, Vec2};

use crate::asked::{Bar, Units};
use crate::finding::Part;
use crate::forge::balance::{Balance, Stretch};
use crate::paper::dimension::{Hang, Scale, Side, Wish, rectangle, rows, segment};
use crate::paper::font::text_width;
use crate::paper::{self, Align, Drawing, Fill, Item, Line, TextItem};

/// The bar, full size, with its coloured parts and marks where they are set off with a rule. Origin at the bar's left end, on its
/// middle line. `text` is the size of its text, mm. A tool's bar lies as its views do, the working end to the right,
/// and is set off from there. Where a name has no room along its part it stands smaller or upright; on a bar that is
/// too thin for names they stand over it, at the ends of leaders.
pub fn bar(of: (&Bar, Units), balance: &Balance, text: f64) -> Drawing {
    drawn(of, balance, text, Names::Everywhere)
}

/// The same with names in one size that lie as the bar does: a part whose name has no room so is told by its
/// colour alone.
pub fn bar_in_short(of: (&Bar, Units), balance: &Balance, text: f64) -> Drawing {
    drawn(of, balance, text, Names::Along)
}

/// Which names are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Names {
    /// All that can be.
    Everywhere,
    /// Those that have room along their parts.
    Along,
}

fn drawn((bar, units): (&Bar, Units), balance: &Balance, text: f64, written: Names) -> Drawing {
    let scale = Scale { text };
    let half = bar.stock.size().mm() / 2.0;
    let length = balance.cut_length(units).mm();
    let lies = Lies::of(balance, length);
    let stretches: Vec<Stretch> = balance
        .stretches
        .iter()
        .map(|stretch| Stretch {
            from_mm: balance.set_off_mm(stretch.from_mm, units),
            to_mm: balance.set_off_mm(stretch.to_mm, units),
            ..*stretch
        })
        .map(|stretch| lies.stretch(stretch))
        .collect();
    let coloured = stretches.iter().map(|own| coloured(own, half));
    let mut items: Vec<Item> = coloured.collect();
    items.push(
        Item::line(
            rectangle(Rect::new(0.0, -half, length, half)),
            Line::Outline,
        )
        .of(Part::Bar),
    );
    items.extend(names(&stretches, half, scale, written));
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

fn coloured(stretch: &Stretch, half: f64) -> Item {
    let area = rectangle(Rect::new(stretch.from_mm, -half, stretch.to_mm, half));
    let fill = stretch.part.map_or(Fill::Waste, Fill::Part);
    let part = stretch.part.unwrap_or(Part::Bar);
    Item::fill(area, fill).of(part)
}

/// Names over the bar stand so much nearer than notes do over what has dimensions, in text sizes.
const NEARER: f64 = 0.9;

/// The name of each part of a half, where it has room.
fn names(stretches: &[Stretch], half: f64, scale: Scale, written: Names) -> Vec<Item> {
    let (mut items, mut led_out) = (Vec::new(), Vec::new());
    for stretch in stretches {
        let Some(part) = stretch.part else { continue };
        let room = (stretch.to_mm - stretch.from_mm, 2.0 * half);
        let middle = f64::midpoint(stretch.from_mm, stretch.to_mm);
        match Lie::of(part, room, scale, written) {
            Lie::On { size, turn } => items.push(named((part, middle), size, turn)),
            Lie::Over => led_out.push(Wish::Note {
                at: Point::new(middle, half),
                text: part.name().to_owned(),
                part,
                hang: Hang::Only(Align::Middle),
            }),
            Lie::Nowhere => {}
        }
    }
    // A short leader does: nothing else stands over the bar.
    let base = half - NEARER * scale.text;
    items.extend(rows(Side::Above, base, scale, led_out));
    items
}

/// Where the name of a part stands.
#[derive(Debug, Clone, Copy)]
enum Lie {
    /// On it, so large and turned by so many radians.
    On { size: f64, turn: f64 },
    /// Over it, at the end of a leader.
    Over,
    /// Its colour alone tells it.
    Nowhere,
}

impl Lie {
    /// On a part so long and so high.
    fn of(part: Part, (long, high): (f64, f64), scale: Scale, written: Names) -> Self {
        /// Of the text's size; a smaller name is not read where it is laid along a bar.
        const SIZES: [f64; 3] = [1.0, 0.85, 0.7];
        let fits = |size: f64, along: f64, across: f64| {
            let wide = text_width(part.name(), size, false);
            wide < along - 0.6 * size && size <= across
        };
        let level = |size: f64| fits(size, long, high).then_some(Self::On { size, turn: 0.0 });
        let turn = std::f64::consts::FRAC_PI_2;
        let upright = |size: f64| fits(size, high, long).then_some(Self::On { size, turn });
        let mut sizes = SIZES.into_iter().map(|of| of * scale.text);
        let somehow = |size: f64| level(size).or_else(|| upright(size));
        let too_thin = scale.text > high;
        match written {
            Names::Along => level(scale.text).unwrap_or(Self::Nowhere),
            Names::Everywhere if too_thin => Self::Over,
            Names::Everywhere => sizes.find_map(somehow).unwrap_or(Self::Nowhere),
        }
    }
}

/// The name of a part in the middle of the bar.
fn named((part, middle): (Part, f64), size: f64, turn: f64) -> Item {
    // As the letters' middle lies over their base line, whichever way they are turned.
    let off = Vec2::new(turn.sin(), -turn.cos()) * (0.36 * size);
    let item = TextItem {
        at: Point::new(middle, 0.0) + off,
        text: part.name().to_owned(),
        size,
        align: Align::Middle,
        turn,
        bold: false,
        part: Some(part),
    };
    Item::Text(item)
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
