//! From orders and a rack to bars with their pieces.

use std::collections::VecDeque;
use std::ops::ControlFlow;

use thiserror::Error;

use super::order::{Order, Wanted};
use super::rack::{Rack, Sold};
use super::solve::{Filled, Kind, Problem, Purse, Solved, solve, whole};
use crate::asked::{Bar, Units};
use crate::shop::family::same_bar;
use crate::steel::DENSITY_KG_MM3;

/// Where a bar comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Source {
    /// It lies on the rack.
    Rack,
    /// It is to be bought.
    Bought,
    /// A piece is longer than what can be bought, and there are too few bars as long as it on the rack.
    Missing,
}

impl Source {
    /// What the smith reads.
    pub fn name(self) -> &'static str {
        match self {
            Self::Rack => "rack",
            Self::Bought => "to buy",
            Self::Missing => "missing",
        }
    }
}

/// A piece on its bar.
#[derive(Debug, Clone, PartialEq)]
pub struct CutPiece {
    /// What it becomes.
    pub what: String,
    /// How long it is, mm.
    pub length_mm: f64,
}

/// A bar with its pieces: first the crop, then piece after piece with a cut behind each, then what
/// is left.
#[derive(Debug, Clone, PartialEq)]
pub struct CutBar {
    /// Where it comes from.
    pub from: Source,
    /// How long it is, mm.
    pub length_mm: f64,
    /// What it costs, if it is bought and the price is known.
    pub price: Option<f64>,
    /// The pieces, the longest first.
    pub pieces: Vec<CutPiece>,
    /// What is left behind the last cut, mm.
    pub offcut_mm: f64,
    /// The same if it is worth keeping, else nothing.
    pub kept_mm: f64,
}

/// What is cut of one bar stock.
#[derive(Debug, Clone, PartialEq)]
pub struct StockPlan {
    /// The stock.
    pub bar: Bar,
    /// Its bars.
    pub bars: Vec<CutBar>,
    /// A cut, mm.
    pub kerf_mm: f64,
    /// What is cut off each bar's end, mm, with that cut.
    pub crop_mm: f64,
    /// The shortest end that is kept, mm.
    pub least_mm: f64,
    /// No plan has fewer bars than this.
    pub lower_bound: usize,
    /// Whether it is proven that no plan buys less, and none that buys no more has fewer bars.
    pub proven_least: bool,
    /// Whether it is proven that none of these keeps more in ends worth keeping.
    pub proven_offcut: bool,
}

/// A whole cut list.
#[derive(Debug, Clone, PartialEq)]
pub struct CutPlan {
    /// Stock by stock.
    pub stocks: Vec<StockPlan>,
}

/// Why there is no cut list.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum CutError {
    /// A piece fits no bar.
    #[error(
        "{what} wants {} of {stock} in one, and the longest bar gives {}: \
         name a longer bar, or lay the halves out one at a time",
        units.show().text(*wanted_mm),
        units.show().text(*longest_mm)
    )]
    TooLong {
        /// What it becomes.
        what: String,
        /// Of what.
        stock: String,
        /// In what its sizes are told.
        units: Units,
        /// How long it is, mm.
        wanted_mm: f64,
        /// The longest piece that a bar has room for, mm.
        longest_mm: f64,
    },
    /// A piece without a length.
    #[error("{0} has no length: mend the design first, reinwright findings tells what is wrong")]
    NoLength(String),
    /// More than is planned in one go.
    #[error("{0} pieces are too many for one list: keep to {MOST_PIECES}")]
    TooMany(u64),
}

/// The most pieces of one list.
const MOST_PIECES: u64 = 20_000;

/// Is told how many stocks are done, again and again while it works, and stops it by answering
/// [`ControlFlow::Break`].
pub type Watch<'a> = &'a mut dyn FnMut(usize) -> ControlFlow<()>;

/// Plans the cuts: stock by stock, what lies on the rack before anything is bought, then fewest bars,
/// then the most length in ends that are worth keeping.
///
/// The same orders and rack always give the same plan: the work is bounded by counted steps.
///
/// # Errors
/// When a piece fits no bar, has no length, or there are too many; `Ok(None)` when it was stopped.
pub fn plan(
    orders: &[Order],
    rack: &Rack,
    units: Units,
    watch: Watch<'_>,
) -> Result<Option<CutPlan>, CutError> {
    let counts = orders.iter().flat_map(|order| &order.pieces);
    let pieces: u64 = counts.map(|piece| u64::from(piece.count)).sum();
    if pieces > MOST_PIECES {
        return Err(CutError::TooMany(pieces));
    }
    let mut stocks = Vec::with_capacity(orders.len());
    for (done, order) in orders.iter().enumerate() {
        let task = Task::new(order, rack, units)?;
        let go_on = &mut || watch(done);
        let Some(solved) = solve(&task.problem, &mut Purse::new(go_on)) else {
            return Ok(None);
        };
        stocks.push(task.told(solved));
    }
    let stopped = watch(orders.len()).is_break();
    Ok((!stopped).then_some(CutPlan { stocks }))
}

/// Bars of one kind as the smith has them.
struct Bars {
    from: Source,
    length_mm: f64,
    most: Option<u32>,
    price: Option<f64>,
}

/// One order with the bars that it is cut from.
struct Task<'a> {
    order: &'a Order,
    kinds: Vec<Bars>,
    /// Pieces by their size in the problem, in the order in which they are wanted.
    wanted: Vec<VecDeque<(&'a Wanted, u32)>>,
    problem: Problem,
    kerf_mm: f64,
    crop_mm: f64,
    least_mm: f64,
}

impl<'a> Task<'a> {
    fn new(order: &'a Order, rack: &Rack, units: Units) -> Result<Self, CutError> {
        let kerf_mm = rack.kerf.map_or(order.kerf_mm, |kerf| kerf.mm());
        let crop_mm = rack.crop.map_or(order.crop_mm, |crop| crop.mm());
        let least_mm = rack
            .least_offcut
            .map_or_else(|| Rack::usual_least_mm(units), |least| least.mm());
        let longest = longest(order)?;
        let kinds = kinds(order, rack, units, longest.length_mm + crop_mm);
        let ends = kinds.iter().map(|kind| kind.length_mm - crop_mm);
        let longest_mm = ends.fold(0.0, f64::max);
        if whole(longest.length_mm) > whole(longest_mm) {
            return Err(CutError::TooLong {
                what: longest.what.clone(),
                stock: order.bar.stock.words(),
                units,
                wanted_mm: longest.length_mm,
                longest_mm,
            });
        }
        let kerf = whole(kerf_mm);
        let mut pieces: Vec<&Wanted> = order
            .pieces
            .iter()
            .filter(|piece| piece.count > 0)
            .collect();
        pieces.sort_by(|a, b| b.length_mm.total_cmp(&a.length_mm));
        let (mut sizes, mut wanted) = (Vec::new(), Vec::<VecDeque<_>>::new());
        for piece in pieces {
            let size = whole(piece.length_mm) + kerf;
            if sizes.last() != Some(&size) {
                sizes.push(size);
                wanted.push(VecDeque::new());
            }
            let same = wanted.last_mut().expect("one was pushed with its size");
            same.push_back((piece, piece.count));
        }
        let count = |same: &VecDeque<(&Wanted, u32)>| same.iter().map(|(_, count)| count).sum();
        let counts: Vec<u32> = wanted.iter().map(count).collect();
        let room = |kind: &Bars| whole(kind.length_mm) - whole(crop_mm) + kerf;
        let problem = Problem {
            kinds: costs(&kinds, counts.iter().map(|count| i64::from(*count)).sum())
                .into_iter()
                .zip(&kinds)
                .map(|(cost, kind)| Kind {
                    room: room(kind),
                    most: kind.most,
                    cost,
                })
                .collect(),
            sizes,
            counts,
            kerf,
            least: whole(least_mm),
        };
        Ok(Self {
            order,
            kinds,
            wanted,
            problem,
            kerf_mm,
            crop_mm,
            least_mm,
        })
    }

    /// The plan with its pieces by their names.
    fn told(mut self, solved: Solved) -> StockPlan {
        let mut filled = solved.plan.bars;
        filled.sort_by(|a, b| (a.kind, &b.pattern).cmp(&(b.kind, &a.pattern)));
        let bars: Vec<CutBar> = filled.iter().map(|bar| self.bar(bar)).collect();
        let fewest = usize::try_from(solved.fewest).unwrap_or(bars.len());
        StockPlan {
            bar: self.order.bar,
            bars,
            kerf_mm: self.kerf_mm,
            crop_mm: self.crop_mm,
            least_mm: self.least_mm,
            lower_bound: fewest,
            proven_least: solved.least,
            proven_offcut: solved.best_offcut,
        }
    }

    fn bar(&mut self, filled: &Filled) -> CutBar {
        let kind = &self.kinds[filled.kind];
        let mut pieces = Vec::new();
        for (same, count) in self.wanted.iter_mut().zip(&filled.pattern) {
            pieces.extend((0..*count).filter_map(|_| next(same)));
        }
        let cuts = pieces.iter().map(|piece| piece.length_mm + self.kerf_mm);
        let left = kind.length_mm - self.crop_mm - cuts.sum::<f64>();
        let room = self.problem.kinds[filled.kind].room - self.problem.taken(&filled.pattern);
        let offcut_mm = left.max(0.0);
        let is_kept = self.problem.useful(room) > 0;
        CutBar {
            from: kind.from,
            length_mm: kind.length_mm,
            price: kind.price,
            pieces,
            offcut_mm,
            kept_mm: if is_kept { offcut_mm } else { 0.0 },
        }
    }
}

/// The next piece of a size.
fn next(same: &mut VecDeque<(&Wanted, u32)>) -> Option<CutPiece> {
    let (piece, count) = same.front_mut()?;
    let cut = CutPiece {
        what: piece.what.clone(),
        length_mm: piece.length_mm,
    };
    *count -= 1;
    if *count == 0 {
        same.pop_front();
    }
    Some(cut)
}

/// The longest piece that is wanted.
fn longest(order: &Order) -> Result<&Wanted, CutError> {
    let has_none = |piece: &&Wanted| !(piece.length_mm > 0.0 && piece.length_mm < 1e6);
    let mut pieces = order.pieces.iter();
    if let Some(wrong) = pieces.clone().find(has_none) {
        return Err(CutError::NoLength(wrong.what.clone()));
    }
    let first = pieces.next();
    let first = first.ok_or_else(|| CutError::NoLength("the list".to_owned()))?;
    Ok(pieces.fold(first, |a, b| if b.length_mm > a.length_mm { b } else { a }))
}

/// The bars that an order may be cut from: those on the rack, those that can be bought, and, where a
/// piece of so many millimetres is longer than these, as many of the longest on the rack as it takes.
fn kinds(order: &Order, rack: &Rack, units: Units, longest_mm: f64) -> Vec<Bars> {
    let mut kinds: Vec<Bars> = Vec::new();
    let lying = rack.bars.iter();
    for bar in lying.filter(|bar| bar.count > 0 && same_bar(&bar.bar, &order.bar)) {
        let same = |kind: &&mut Bars| whole(kind.length_mm) == whole(bar.length.mm());
        match kinds.iter_mut().find(same) {
            Some(kind) => kind.most = kind.most.map(|most| most.saturating_add(bar.count)),
            None => kinds.push(Bars {
                from: Source::Rack,
                length_mm: bar.length.mm(),
                most: Some(bar.count),
                price: None,
            }),
        }
    }
    let sold = rack
        .sold
        .iter()
        .filter(|sold| same_bar(&sold.bar, &order.bar));
    let mut sold: Vec<Sold> = sold.copied().collect();
    if sold.is_empty() {
        sold.push(Sold {
            bar: order.bar,
            length: Rack::usual_length(units),
            price: None,
        });
    }
    let lying = kinds.iter().map(|kind| kind.length_mm).fold(0.0, f64::max);
    let bought = sold.iter().map(|sold| sold.length.mm()).fold(0.0, f64::max);
    kinds.extend(sold.iter().map(|sold| Bars {
        from: Source::Bought,
        length_mm: sold.length.mm(),
        most: None,
        price: sold.price,
    }));
    if whole(bought) < whole(longest_mm) && lying > bought {
        kinds.push(Bars {
            from: Source::Missing,
            length_mm: lying,
            most: None,
            price: None,
        });
    }
    kinds.retain(|kind| kind.length_mm > 0.0);
    kinds
}

/// What a bar of each kind is reckoned at, so that a plan that buys less always comes first, then one
/// with fewer bars: in hundredths where all that can be bought has a price, else by its length.
fn costs(kinds: &[Bars], pieces: i64) -> Vec<i64> {
    let bought = || kinds.iter().filter(|kind| kind.from == Source::Bought);
    let priced = bought().all(|kind| kind.price.is_some());
    let money = |kind: &Bars| {
        let price = kind.price.filter(|_| priced);
        tenths(price.map_or(kind.length_mm, |price| price * 10.0))
    };
    let dearest = bought().map(money).max().unwrap_or(1);
    let cost = |kind: &Bars| match kind.from {
        Source::Rack => 1,
        Source::Bought => money(kind) * (pieces + 1) + 1,
        Source::Missing => (dearest * pieces + 1) * (pieces + 1) + 1,
    };
    let costs: Vec<i64> = kinds.iter().map(cost).collect();
    let common = costs.iter().copied().fold(0, common);
    costs.iter().map(|cost| cost / common.max(1)).collect()
}

/// Tenths as a whole number.
#[allow(
    clippy::cast_possible_truncation,
    reason = "lengths and prices end long before"
)]
fn tenths(number: f64) -> i64 {
    (number * 10.0).round() as i64
}

fn common(a: i64, b: i64) -> i64 {
    if b == 0 { a } else { common(b, a % b) }
}

impl CutBar {
    /// What the pieces are long together, mm.
    pub fn pieces_mm(&self) -> f64 {
        self.pieces.iter().map(|piece| piece.length_mm).sum()
    }
}

impl StockPlan {
    /// So much of the stock weighs, kg.
    pub fn mass_kg(&self, length_mm: f64) -> f64 {
        length_mm * self.bar.stock.area_mm2() * DENSITY_KG_MM3
    }

    /// A figure of every bar together.
    pub fn sum(&self, of: fn(&CutBar) -> f64) -> f64 {
        self.bars.iter().map(of).sum()
    }

    /// How many bars come from there.
    pub fn count(&self, from: Source) -> usize {
        self.bars.iter().filter(|bar| bar.from == from).count()
    }
}

impl CutPlan {
    /// What the bars to buy cost together; `None` when the price of one is not known.
    pub fn price(&self) -> Option<f64> {
        let bars = self.stocks.iter().flat_map(|stock| &stock.bars);
        let bought = bars.filter(|bar| bar.from != Source::Rack);
        bought.map(|bar| bar.price).sum()
    }
}
