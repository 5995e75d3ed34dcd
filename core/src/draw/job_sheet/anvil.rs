//! The page that lies at the anvil: bar and marks, a card an operation, rivet and setting.

use kurbo::{Point, Rect, Shape as _};

use super::super::stage::{picture, turn_arrow};
use super::flow::Begun;
use super::{FAR, FAR_LINE, Job, top};
use crate::asked::capital;
use crate::making::{Operation, Stage, Step, Turning};
use crate::paper::sheet::{Weight, text, wrap};
use crate::paper::{Align, Item, Line};

/// Between a card's edge and what is in it, mm.
const INSET: f64 = 1.0;
/// What the turn's arrow takes of a card's picture, mm.
const TURN: f64 = 6.5;

/// How closely cards are set.
#[derive(Debug, Clone, Copy)]
enum Set {
    /// As they are read best.
    Well,
    /// Closer, where all of them find room so.
    Close,
}

impl Set {
    /// From one line to the next, mm.
    fn line(self) -> f64 {
        match self {
            Self::Well => FAR_LINE,
            Self::Close => 1.08 * FAR,
        }
    }

    /// What a picture takes of a card, mm.
    fn picture(self) -> f64 {
        match self {
            Self::Well => 33.0,
            Self::Close => 27.0,
        }
    }
}

/// The pages of cards, with what is blank under the last of them.
pub(super) struct Anvil {
    pub(super) pages: Vec<Vec<Item>>,
    /// The last page as it is where something else follows on it.
    pub(super) begun: Option<Begun>,
}

/// All that is read at the anvil: one page, with more where the cards find no room on it or where the
/// halves differ.
pub(super) fn pages(job: &Job<'_>, room: Rect) -> Anvil {
    let (page, rest) = first(job, room);
    let mut all = Anvil {
        pages: vec![page],
        begun: None,
    };
    all.go_on(job, &format!("{}, going on", job.name()), &rest, room);
    if !job.stages(1).is_empty() {
        let name = format!("{}: the second half, whose jaw differs", job.name());
        let cards = |set| cards_of(job, (1, Named::Always, set), room.width() / 2.0);
        if !all.fill_up(job, &name, &cards(Set::Close), room) {
            all.go_on(job, &name, &cards(Set::Well), room);
        }
    }
    all
}

/// The first page: all that is needed for both halves, or for the first where they differ. With the cards
/// that find no room on it.
fn first<'a>(job: &Job<'a>, room: Rect) -> (Vec<Item>, Vec<Card<'a>>) {
    let (mut items, under) = top::head(job, room);
    let (foot, over) = top::foot(job, room);
    items.extend(foot);
    let cards = Rect::new(room.x0, over, room.x1, under);
    let mut all = first_cards(job, cards);
    let (laid, rest) = laid(&all, cards);
    items.extend(laid);
    let blank = Rect::new(
        room.x0,
        over,
        room.x1,
        over + blank(&all, cards, MOST_SPARE),
    );
    if rest.is_empty() && blank.height() > LEAST_BLANK {
        let large = top::tool_at_large(job, blank.inset(-2.0 * INSET));
        if !large.is_empty() {
            // It is not shown small as well.
            items.retain(|item| !matches!(item, Item::Group(group) if group.name == "finished"));
        }
        items.extend(large);
    }
    let on_it = all.len() - rest.len();
    (items, all.split_off(on_it))
}

/// The cards of the first half: set closer or shorter, all of them may find room on the page that lies at the
/// anvil. Where they never do, closeness gains nothing.
fn first_cards<'a>(job: &Job<'a>, area: Rect) -> Vec<Card<'a>> {
    let wide = area.width() / 2.0;
    let ways = [Named::Always, Named::WhenChanged, Named::ChangesAlone]
        .into_iter()
        .flat_map(|named| [Set::Well, Set::Close].map(|set| (0, named, set)));
    let mut tried = ways.map(|way| cards_of(job, way, wide));
    let fits = |cards: &Vec<Card<'a>>| laid(cards, area).1.is_empty();
    tried
        .find(fits)
        .unwrap_or_else(|| cards_of(job, (0, Named::WhenChanged, Set::Well), wide))
}

/// What a page leaves under few cards, mm: less is no room for a picture.
const LEAST_BLANK: f64 = 25.0;

/// What a card is higher than its words at the most, alone on a page and with something below it, mm.
const MOST_SPARE: f64 = 18.0;
const WITH_OTHERS: f64 = 5.0;

/// How high it is blank under the cards of both columns, mm.
fn blank(cards: &[Card<'_>], area: Rect, most_spare: f64) -> f64 {
    let (left, right) = columns(cards, area);
    let under = |column: &[Card<'_>]| {
        let high = column.iter().map(Card::least).sum::<f64>();
        area.height() - high - spare(column, area).min(most_spare) * counted(column)
    };
    under(left).min(under(&cards[left.len()..left.len() + right]))
}

impl Anvil {
    /// Further cards under a heading, on pages of their own.
    fn go_on(&mut self, job: &Job<'_>, name: &str, mut cards: &[Card<'_>], room: Rect) {
        let (legend, over) = top::legend(job, room);
        let room = Rect::new(room.x0, over, room.x1, room.y1);
        while !cards.is_empty() {
            let (begun, rest) = under(Begun::blank(room), name, cards, room);
            self.pages
                .push([begun.items.clone(), legend.clone()].concat());
            self.begun = Some(begun);
            cards = rest;
        }
    }

    /// Puts cards below those of the page that is begun, if all of them find room there.
    fn fill_up(&mut self, job: &Job<'_>, name: &str, cards: &[Card<'_>], room: Rect) -> bool {
        let (legend, over) = top::legend(job, room);
        let room = Rect::new(room.x0, over, room.x1, room.y1);
        let (Some(begun), Some(last)) = (self.begun.clone(), self.pages.last_mut()) else {
            return false;
        };
        let (begun, rest) = under(begun, name, cards, room);
        if !rest.is_empty() {
            return false;
        }
        *last = [begun.items.clone(), legend].concat();
        self.begun = Some(begun);
        true
    }
}

/// Cards under a heading on a page that is begun, no higher than they are read well, and those that find no
/// room there.
fn under<'a, 'b>(
    begun: Begun,
    name: &str,
    cards: &'b [Card<'a>],
    room: Rect,
) -> (Begun, &'b [Card<'a>]) {
    let title = Point::new(room.x0, begun.y - FAR);
    let mut items = begun.items;
    items.push(text(title, name, FAR, Weight::Bold, Align::Start));
    let most = Rect::new(room.x0, room.y0, room.x1, begun.y - 1.6 * FAR);
    let high = most.height() - blank(cards, most, WITH_OTHERS);
    let area = Rect::new(room.x0, most.y1 - high, room.x1, most.y1);
    let (laid, rest) = laid(cards, area);
    items.extend(laid);
    let begun = Begun {
        items,
        y: area.y0 - 0.6 * FAR,
    };
    (begun, rest)
}

/// An operation as it is read from the anvil.
struct Card<'a> {
    stage: &'a Stage,
    operation: &'a Operation,
    /// Number and name.
    title: Vec<String>,
    /// What to do.
    lines: Vec<String>,
    set: Set,
}

/// Where a card names the source of its heats.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Named {
    Always,
    /// Where it is another one than before; else how many heats alone.
    WhenChanged,
    /// Where it is another one than before; else nothing, and the heats stand on the pages behind.
    ChangesAlone,
}

fn cards_of<'a>(
    job: &Job<'a>,
    (half, named, set): (usize, Named, Set),
    wide: f64,
) -> Vec<Card<'a>> {
    let words_wide = wide - set.picture() - 4.0 * INSET;
    let stages = job.stages(half).into_iter().enumerate();
    let card = |(at, stage): (usize, &'a Stage)| {
        let operation = stage.operation.as_ref()?;
        let title = format!("{} {}", at + 1, capital(operation.step.name()));
        Some(Card {
            title: wrap(&title, FAR, Weight::Bold, words_wide),
            stage,
            operation,
            lines: wrap(
                &words(job, (stage, operation), named),
                FAR,
                Weight::Plain,
                words_wide,
            ),
            set,
        })
    };
    stages.filter_map(card).collect()
}

impl Card<'_> {
    /// How high its words are, mm.
    fn least(&self) -> f64 {
        #[allow(clippy::cast_precision_loss, reason = "a few lines")]
        let lines = (self.title.len() + self.lines.len()) as f64;
        lines * self.set.line() + 2.0 * INSET
    }

    /// Number and name, what to do, the picture.
    fn drawn(&self, area: Rect) -> Vec<Item> {
        let own = self.operation;
        let frame = Item::line(area.to_path(0.1), Line::Frame);
        let inner = area.inset(-INSET);
        let mut seen = Rect::new(inner.x0, inner.y0, inner.x0 + self.set.picture(), inner.y1);
        let x = seen.x1 + 2.0 * INSET;
        let mut at = Point::new(x, inner.y1 - 0.85 * FAR);
        let mut items = vec![frame];
        let bold = self.title.iter().map(|line| (line, Weight::Bold));
        let plain = self.lines.iter().map(|line| (line, Weight::Plain));
        for (line, weight) in bold.chain(plain) {
            items.push(text(at, line, FAR, weight, Align::Start));
            at.y -= self.set.line();
        }
        if own.turn != Turning::None {
            let middle = Point::new(seen.x0 + TURN / 2.0, seen.center().y + 1.0);
            items.extend(turn_arrow(own.turn, middle, 0.6));
            seen.x0 += TURN;
        }
        items.extend(picture(self.stage, seen));
        items
    }
}

/// The cards of the left column, and how many follow in the right one.
fn columns<'a, 'b>(cards: &'b [Card<'a>], area: Rect) -> (&'b [Card<'a>], usize) {
    let high = |cards: &[Card<'_>]| cards.iter().map(Card::least).sum::<f64>();
    let fit = |cards: &[Card<'_>]| {
        let fits = (0..=cards.len())
            .rev()
            .find(|&n| high(&cards[..n]) <= area.height());
        fits.unwrap_or(0)
    };
    // Both columns as high as each other, or where that is too much as high as they can be.
    let higher = |n: &usize| high(&cards[..*n]).max(high(&cards[*n..]));
    let even = (0..=cards.len()).min_by(|a, b| higher(a).total_cmp(&higher(b)));
    let even = even.unwrap_or(0);
    let left = if higher(&even) <= area.height() {
        even
    } else {
        fit(cards).max(1)
    };
    let (left, rest) = cards.split_at(left);
    (left, fit(rest))
}

/// Two columns of cards, as many of them as find room, and those that do not.
fn laid<'a, 'b>(cards: &'b [Card<'a>], area: Rect) -> (Vec<Item>, &'b [Card<'a>]) {
    let (left, right) = columns(cards, area);
    let (right, rest) = cards[left.len()..].split_at(right);
    let middle = area.center().x;
    let columns = [
        column(left, Rect::new(area.x0, area.y0, middle, area.y1)),
        column(right, Rect::new(middle, area.y0, area.x1, area.y1)),
    ];
    (columns.concat(), rest)
}

/// What each of some cards is higher than it must be, mm: a few are no higher than they are read well.
fn spare(cards: &[Card<'_>], area: Rect) -> f64 {
    let own: f64 = cards.iter().map(Card::least).sum();
    ((area.height() - own) / counted(cards).max(1.0)).min(MOST_SPARE)
}

#[allow(clippy::cast_precision_loss, reason = "a few cards")]
fn counted(cards: &[Card<'_>]) -> f64 {
    cards.len() as f64
}

/// Cards one below the other over the height of an area.
fn column(cards: &[Card<'_>], area: Rect) -> Vec<Item> {
    let more = spare(cards, area);
    let mut y = area.y1;
    let mut items = Vec::new();
    for card in cards {
        let low = y - card.least() - more;
        items.extend(card.drawn(Rect::new(area.x0, low, area.x1, y)));
        y = low;
    }
    items
}

/// What is read on a card: what to do, and the heats where the sources are known.
fn words(job: &Job<'_>, (stage, own): (&Stage, &Operation), named: Named) -> String {
    let done = done(job, own);
    let heats =
        job.heated(stage)
            .and_then(|(heated, prepared)| match (named, job.goes_on(heated)) {
                (Named::WhenChanged, true) => Some(heated.count()),
                (Named::ChangesAlone, true) => None,
                (Named::Always, _) | (_, false) => heated.brief(prepared),
            });
    match heats {
        None => done,
        Some(heats) => format!("{done}. {}", capital(&heats)),
    }
}

/// The turn, then what to do.
fn done(job: &Job<'_>, own: &Operation) -> String {
    let turn = match own.turn {
        Turning::QuarterLeft | Turning::QuarterRight => format!("{}; ", own.turn.name()),
        Turning::Half if own.edge.is_some() => format!("{}; ", own.turn.name()),
        Turning::None | Turning::BetweenBlows | Turning::Half => String::new(),
    };
    if own.step == Step::MakeHole {
        let at = job.rough(own.struck_mm.0);
        return format!("{at} from the tip: {}", own.brief);
    }
    format!("{turn}{}", own.brief)
}
