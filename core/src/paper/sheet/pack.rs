//! Rectangles on pages: the fewest pages that take them, found exactly.
//!
//! A page is divided by straight cuts from edge to edge, again and again, until each field holds
//! one rectangle. All sets of rectangles that a page can take so are found from the small ones up;
//! a set can only fit if each of its parts does. Then the fewest sets are looked for that take all.

use std::collections::HashSet;

use kurbo::{Point, Size};

/// The most rectangles that are laid together exactly: sets are told by the bits of a number, and there are
/// few thousands of them.
const MOST: usize = 16;

/// How long is looked, so that nobody waits.
#[derive(Debug, Clone, Copy)]
struct Patience {
    /// So many divisions of sets are tried at the most: a pair takes some ten thousands. Past it, sets
    /// that were not tried count as too large for a page.
    tries: usize,
    /// What a search for covers may look at, in sets.
    looks: usize,
}

/// For all that there is.
const ALL: Patience = Patience {
    tries: 1_500_000,
    looks: 400_000,
};

/// For some of many, again and again.
const SOME: Patience = Patience {
    tries: 250_000,
    looks: 40_000,
};

/// Between two rectangles, mm.
const APART: f64 = 4.0;

/// Rounding that may not cost a page, mm.
const HAIR: f64 = 1e-6;

/// Whether a rectangle may be laid on its side.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Turning {
    Never,
    Allowed,
}

/// Where a rectangle lies on its page.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Spot {
    /// Which rectangle.
    pub(super) piece: usize,
    /// Its lower left corner in the window.
    pub(super) at: Point,
    /// Whether it was turned by a quarter.
    pub(super) turned: bool,
}

/// What lies on a page.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Packed {
    /// Which of the windows it has.
    pub(super) window: usize,
    /// What is in it.
    pub(super) spots: Vec<Spot>,
}

/// Few pages, not more than `most`, that take all rectangles, however many there are. Up to [`MOST`]
/// are laid together, which is exact; of more the pages that came out fullest are kept, and what
/// lies on the others is laid anew with those that follow.
pub(super) fn pack_many(
    pieces: &[Size],
    windows: [Size; 2],
    turning: Turning,
    most: usize,
) -> Option<Vec<Packed>> {
    if pieces.len() <= MOST {
        return pack(pieces, windows, (turning, ALL), most);
    }
    let larger = windows[0].area().max(windows[1].area());
    let mut kept: Vec<Packed> = Vec::new();
    let mut open: Vec<usize> = Vec::new();
    let mut rest = 0..pieces.len();
    loop {
        open.extend(rest.by_ref().take(MOST - open.len()));
        let own: Vec<Size> = open.iter().map(|piece| pieces[*piece]).collect();
        let pages = pack(&own, windows, (turning, SOME), own.len())?;
        let mut pages: Vec<Packed> = pages.into_iter().map(|page| page.renamed(&open)).collect();
        if rest.is_empty() {
            kept.extend(pages);
            break;
        }
        let full = |page: &Packed| {
            let area = page.spots.iter().map(|spot| pieces[spot.piece].area());
            area.sum::<f64>() / larger
        };
        pages.sort_by(|a, b| full(b).total_cmp(&full(a)));
        let again = pages.split_off(pages.len().div_ceil(2));
        let again = again.iter().flat_map(|page| &page.spots);
        open = again.map(|spot| spot.piece).collect();
        open.sort_unstable();
        kept.extend(pages);
        if kept.len() > most {
            return None;
        }
    }
    let first = |page: &Packed| page.spots.iter().map(|spot| spot.piece).min();
    kept.sort_by_key(first);
    Some(kept).filter(|pages| pages.len() <= most)
}

impl Packed {
    /// The same with its rectangles called as these are.
    fn renamed(mut self, names: &[usize]) -> Self {
        for spot in &mut self.spots {
            spot.piece = names[spot.piece];
        }
        self
    }
}

/// The fewest pages, not more than `most`, that take all rectangles; `None` if there are none.
fn pack(
    pieces: &[Size],
    windows: [Size; 2],
    (turning, patience): (Turning, Patience),
    most: usize,
) -> Option<Vec<Packed>> {
    if pieces.len() > MOST {
        return None;
    }
    let all = (1_u32 << pieces.len()) - 1;
    let mut sets = Sets::new(pieces, windows);
    let least = sets.least(all);
    if least > most {
        return None;
    }
    sets.find(turning, patience.tries);
    let chosen = (least..=most).find_map(|pages| {
        let mut search = Search {
            sets: &sets,
            dead: HashSet::new(),
            looks: 0,
            most_looks: patience.looks,
            chosen: Vec::new(),
        };
        search.cover(all, pages).then_some(search.chosen)
    })?;
    Some(chosen.into_iter().map(|set| sets.laid(set)).collect())
}

/// A box that holds a set, and how it is divided.
#[derive(Debug, Clone, Copy)]
struct Shape {
    size: Size,
    from: From,
}

#[derive(Debug, Clone, Copy)]
enum From {
    /// One rectangle.
    One { turned: bool },
    /// A set left of the rest: the set, and which of the boxes of both.
    Beside(u32, usize, usize),
    /// A set above the rest.
    Above(u32, usize, usize),
}

/// All sets that a page takes, each with the boxes that no other box of it beats.
struct Sets {
    pieces: Vec<Size>,
    /// With the distance to the next rectangle added.
    windows: [Size; 2],
    boxes: Vec<Vec<Shape>>,
    /// The sets of each lowest rectangle, those with its next neighbours first.
    by_lowest: Vec<Vec<u32>>,
    tries: usize,
}

impl Sets {
    /// None found yet.
    fn new(pieces: &[Size], windows: [Size; 2]) -> Self {
        let room = Size::new(APART + HAIR, APART + HAIR);
        Self {
            pieces: pieces.to_vec(),
            windows: windows.map(|window| window + room),
            boxes: vec![Vec::new(); 1 << pieces.len()],
            by_lowest: vec![Vec::new(); pieces.len()],
            tries: 0,
        }
    }

    /// Finds all of them, from the small ones up.
    fn find(&mut self, turning: Turning, tries: usize) {
        let mut level: Vec<u32> = Vec::new();
        for index in 0..self.pieces.len() {
            if self.add_one(index, turning) {
                level.push(1 << index);
            }
        }
        while !level.is_empty() {
            self.keep(&level);
            level = self.next(&level, tries);
        }
        for of_one in &mut self.by_lowest {
            of_one.sort_by_key(|set| std::cmp::Reverse(set.reverse_bits()));
        }
    }

    fn add_one(&mut self, index: usize, turning: Turning) -> bool {
        let piece = self.pieces[index];
        let apart = Size::new(APART, APART);
        let lies = match turning {
            Turning::Never => vec![false],
            Turning::Allowed => vec![false, true],
        };
        for turned in lies {
            let flat = if turned {
                Size::new(piece.height, piece.width)
            } else {
                piece
            };
            let size = flat + apart;
            if self.fits(size) {
                self.boxes[1 << index].push(Shape {
                    size,
                    from: From::One { turned },
                });
            }
        }
        !self.boxes[1 << index].is_empty()
    }

    fn keep(&mut self, level: &[u32]) {
        for set in level {
            self.by_lowest[set.trailing_zeros() as usize].push(*set);
        }
    }

    /// The sets of one more rectangle.
    fn next(&mut self, level: &[u32], tries: usize) -> Vec<u32> {
        let mut found = Vec::new();
        for &set in level {
            let after = 32 - set.leading_zeros();
            for index in after as usize..self.pieces.len() {
                let larger = set | 1 << index;
                if self.tries < tries && self.area(larger) <= self.largest() {
                    self.divide(larger);
                    if !self.boxes[larger as usize].is_empty() {
                        found.push(larger);
                    }
                }
            }
        }
        found
    }

    /// Tries all ways to divide a set in two.
    fn divide(&mut self, set: u32) {
        let lowest = set & set.wrapping_neg();
        let others = set ^ lowest;
        let mut best: Vec<Shape> = Vec::new();
        // All parts of the others but the whole.
        let mut part = others & others.wrapping_sub(1);
        loop {
            let first = lowest | (others & part);
            if first != set {
                self.join(first, set ^ first, &mut best);
            }
            if part == 0 {
                break;
            }
            part = (part - 1) & others;
        }
        self.boxes[set as usize] = best;
    }

    fn join(&mut self, first: u32, second: u32, best: &mut Vec<Shape>) {
        let (a, b) = (&self.boxes[first as usize], &self.boxes[second as usize]);
        self.tries += 1 + a.len() * b.len();
        for (i, one) in a.iter().enumerate() {
            for (j, other) in b.iter().enumerate() {
                let (one, other) = (one.size, other.size);
                let beside = Size::new(one.width + other.width, one.height.max(other.height));
                let above = Size::new(one.width.max(other.width), one.height + other.height);
                for (size, from) in [
                    (above, From::Above(first, i, j)),
                    (beside, From::Beside(first, i, j)),
                ] {
                    if self.fits(size) {
                        insert(best, Shape { size, from });
                    }
                }
            }
        }
    }

    fn fits(&self, size: Size) -> bool {
        self.windows.iter().any(|window| within(size, *window))
    }

    fn area(&self, set: u32) -> f64 {
        let apart = Size::new(APART, APART);
        let own = |(index, piece): (usize, &Size)| match set >> index & 1 {
            0 => 0.0,
            _ => (*piece + apart).area(),
        };
        self.pieces.iter().enumerate().map(own).sum()
    }

    /// The area of the larger window.
    fn largest(&self) -> f64 {
        self.windows[0].area().max(self.windows[1].area())
    }

    /// The fewest pages that a set can take by its area.
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a few rectangles that each fit on a page"
    )]
    fn least(&self, set: u32) -> usize {
        (self.area(set) / self.largest()).ceil().max(1.0) as usize
    }

    /// A set on its page: in the window, and in the box of it, that leaves most room around it, in
    /// the middle.
    fn laid(&self, set: u32) -> Packed {
        let boxes = &self.boxes[set as usize];
        let mut best = (0.0, 0, 0);
        for (window, room) in self.windows.iter().enumerate() {
            for (index, shape) in boxes.iter().enumerate() {
                let size = shape.size;
                let times = (room.width / size.width).min(room.height / size.height);
                if within(size, *room) && times > best.0 {
                    best = (times, window, index);
                }
            }
        }
        let (_, window, index) = best;
        let free = self.windows[window] - boxes[index].size;
        let mut spots = Vec::new();
        let half = |free: f64| ((free - HAIR) / 2.0).max(0.0);
        let corner = Point::new(half(free.width), half(free.height));
        self.place(set, index, corner, &mut spots);
        Packed { window, spots }
    }

    /// Places a set whose box has its lower left corner here. What is narrower than what it stands
    /// under or over keeps to the right, so that tips and joints stay in line.
    fn place(&self, set: u32, index: usize, corner: Point, spots: &mut Vec<Spot>) {
        let shape = self.boxes[set as usize][index];
        let size = |set: u32, index: usize| self.boxes[set as usize][index].size;
        match shape.from {
            From::One { turned } => spots.push(Spot {
                piece: set.trailing_zeros() as usize,
                at: corner,
                turned,
            }),
            From::Beside(first, i, j) => {
                let (one, other) = (size(first, i), size(set ^ first, j));
                let up = |own: Size| corner.y + (shape.size.height - own.height) / 2.0;
                self.place(first, i, Point::new(corner.x, up(one)), spots);
                let right = Point::new(corner.x + one.width, up(other));
                self.place(set ^ first, j, right, spots);
            }
            From::Above(first, i, j) => {
                let (one, other) = (size(first, i), size(set ^ first, j));
                let across = |own: Size| corner.x + shape.size.width - own.width;
                let top = Point::new(across(one), corner.y + other.height);
                self.place(first, i, top, spots);
                self.place(set ^ first, j, Point::new(across(other), corner.y), spots);
            }
        }
    }
}

fn within(size: Size, window: Size) -> bool {
    size.width <= window.width && size.height <= window.height
}

/// Adds a box unless another one is as small both ways, and drops those that it beats.
fn insert(best: &mut Vec<Shape>, shape: Shape) {
    let beaten = best.iter().any(|own| within(own.size, shape.size));
    if !beaten {
        best.retain(|own| !within(shape.size, own.size));
        best.push(shape);
    }
}

/// Looks for sets that take all rectangles.
struct Search<'a> {
    sets: &'a Sets,
    /// What cannot be laid on so many pages.
    dead: HashSet<(u32, usize)>,
    looks: usize,
    most_looks: usize,
    chosen: Vec<u32>,
}

impl Search<'_> {
    fn cover(&mut self, rest: u32, pages: usize) -> bool {
        if rest == 0 {
            return true;
        }
        let too_much = pages == 0 || self.sets.least(rest) > pages;
        if too_much || self.looks > self.most_looks || self.dead.contains(&(rest, pages)) {
            return false;
        }
        let lowest = rest.trailing_zeros() as usize;
        for &set in &self.sets.by_lowest[lowest] {
            self.looks += 1;
            if set & !rest != 0 {
                continue;
            }
            self.chosen.push(set);
            if self.cover(rest ^ set, pages - 1) {
                return true;
            }
            self.chosen.pop();
        }
        self.dead.insert((rest, pages));
        false
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(pieces: &[(f64, f64)], turning: Turning, expected: Option<usize>) {
        let window = Size::new(100.0, 60.0);
        let pieces: Vec<Size> = pieces.iter().map(|&(w, h)| Size::new(w, h)).collect();
        let packed = pack_many(
            &pieces,
            [window, Size::new(60.0, 100.0)],
            turning,
            pieces.len(),
        );
        assert_eq!(packed.map(|pages| pages.len()), expected, "{pieces:?}");
    }

    /// By hand, with 4 mm between two rectangles.
    #[test]
    fn as_few_pages_as_can_be() {
        use Turning::{Allowed, Never};
        check(&[(100.0, 60.0)], Never, Some(1));
        check(&[(100.1, 60.0)], Never, None);
        check(&[(60.0, 100.0)], Never, Some(1));
        check(&[(48.0, 60.0), (48.0, 60.0)], Never, Some(1));
        check(&[(48.1, 60.0), (48.0, 60.0)], Never, Some(2));
        check(
            &[(100.0, 28.0), (100.0, 28.0), (48.0, 60.0)],
            Never,
            Some(2),
        );
        // Three strips and one on its side beside them.
        let four = [(76.0, 17.0), (76.0, 17.0), (76.0, 17.0), (59.0, 20.0)];
        check(&four, Never, Some(2));
        check(&four, Allowed, Some(1));
        // What first comes to hand would take three: the large with a middle one each.
        let pairs = [(100.0, 36.0), (100.0, 30.0), (100.0, 26.0), (100.0, 20.0)];
        check(&pairs, Never, Some(2));
    }

    /// Of many the same holds, and no page is missing: forty squares of 46 mm lie two on a page.
    #[test]
    fn however_many_there_are() {
        let windows = [Size::new(100.0, 60.0), Size::new(60.0, 100.0)];
        let squares = vec![Size::new(46.0, 46.0); 40];
        let pages = pack_many(&squares, windows, Turning::Never, 40).expect("each fits");
        assert_eq!(pages.len(), 20);
        let mut seen: Vec<usize> = pages
            .iter()
            .flat_map(|page| page.spots.iter().map(|spot| spot.piece))
            .collect();
        seen.sort_unstable();
        assert_eq!(seen, (0..40).collect::<Vec<_>>());
        assert_eq!(pack_many(&squares, windows, Turning::Never, 19), None);
        // A large one and a small one go together, however far apart they stand in the list.
        let mixed: Vec<Size> = (0..20)
            .map(|_| Size::new(100.0, 40.0))
            .chain((0..20).map(|_| Size::new(100.0, 16.0)))
            .collect();
        let pages = pack_many(&mixed, windows, Turning::Never, 40).expect("each fits");
        assert!((20..=28).contains(&pages.len()), "{}", pages.len());
    }

    /// No two overlap, and all keep their distance inside of the window.
    #[test]
    fn nothing_lies_on_anything_else() {
        let pieces: Vec<Size> = (0..12_u32)
            .map(|i| {
                let i = f64::from(i);
                Size::new(20.0 + (i * 37.0) % 60.0, 8.0 + (i * 23.0) % 30.0)
            })
            .collect();
        let windows = [Size::new(60.0, 100.0), Size::new(100.0, 60.0)];
        let pages = pack_many(&pieces, windows, Turning::Allowed, 12).expect("each fits");
        let mut seen = 0;
        for page in &pages {
            let boxes: Vec<kurbo::Rect> = page.spots.iter().map(|s| lies(s, &pieces)).collect();
            seen += boxes.len();
            let window = kurbo::Rect::from_origin_size(Point::ZERO, windows[page.window]);
            for (i, a) in boxes.iter().enumerate() {
                let inside = window.inflate(1e-5, 1e-5);
                assert_eq!(inside.union(*a), inside, "{a:?}");
                for b in &boxes[i + 1..] {
                    let near = a.inflate(APART - 1e-6, APART - 1e-6).intersect(*b);
                    assert!(near.is_zero_area(), "{a:?} {b:?}");
                }
            }
        }
        assert_eq!(seen, pieces.len());
    }

    fn lies(spot: &Spot, pieces: &[Size]) -> kurbo::Rect {
        let size = pieces[spot.piece];
        let size = if spot.turned {
            Size::new(size.height, size.width)
        } else {
            size
        };
        kurbo::Rect::from_origin_size(spot.at, size)
    }
}
