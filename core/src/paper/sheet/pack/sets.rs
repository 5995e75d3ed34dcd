//! Which sets of rectangles a page takes, and how they lie on it.

use kurbo::{Point, Size};

use super::{APART, HAIR, Packed, Spot, Turning};

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

/// So many rectangles are divided in all ways even past the tries that there are.
const FEW: u32 = 3;

/// The sets that were asked for, each with the boxes that no other box of it beats. A set is told
/// by the bits of a number.
pub(super) struct Sets {
    pieces: Vec<Size>,
    /// What each of them takes at the least of what a page has.
    taken: Vec<f64>,
    page: f64,
    /// With the distance to the next rectangle added.
    windows: [Size; 2],
    turning: Turning,
    /// `None` for a set that was not asked for yet; no box for one that no page takes.
    boxes: Vec<Option<Vec<Shape>>>,
    tries: usize,
    /// So many divisions are tried at the most.
    most_tries: usize,
}

impl Sets {
    /// The rectangles alone.
    pub(super) fn new(
        pieces: &[Size],
        windows: [Size; 2],
        turning: Turning,
        most_tries: usize,
    ) -> Self {
        let room = Size::new(APART + HAIR, APART + HAIR);
        let mut sets = Self {
            pieces: pieces.to_vec(),
            taken: Vec::new(),
            page: 1.0,
            windows: windows.map(|window| window + room),
            turning,
            boxes: vec![None; 1 << pieces.len()],
            tries: 0,
            most_tries,
        };
        for index in 0..pieces.len() {
            sets.boxes[1 << index] = Some(sets.one(index));
        }
        // In mm², of the larger window.
        sets.taken = sets.taken(sets.least_side(), |_| 1.0);
        sets.page = sets.windows[0].area().max(sets.windows[1].area());
        sets
    }

    /// One rectangle, as it lies and, where that may be, on its side.
    fn one(&self, index: usize) -> Vec<Shape> {
        let lies = self.lies(index).zip([false, true]);
        let fitting = lies.filter(|(size, _)| self.fits(*size));
        fitting
            .map(|(size, turned)| Shape {
                size,
                from: From::One { turned },
            })
            .collect()
    }

    /// Whether a page takes a set. Past the tries that there are, only what is like enough to be
    /// found: the rectangle that came last, alone or with two others, beside what is known.
    pub(super) fn takes(&mut self, set: u32) -> bool {
        if self.boxes[set as usize].is_none() {
            let own = if self.least(set) > 1 {
                Vec::new()
            } else if self.gave_up() && set.count_ones() > FEW {
                self.added(set)
            } else if ones(set).all(|one| self.takes(set ^ one)) {
                self.divided(set)
            } else {
                Vec::new()
            };
            self.boxes[set as usize] = Some(own);
        }
        !self.known(set).is_empty()
    }

    /// The boxes in which the last rectangle of a set, or a few with it, stand beside the rest.
    fn added(&mut self, set: u32) -> Vec<Shape> {
        let last = 1 << (31 - set.leading_zeros());
        let others: Vec<u32> = ones(set ^ last).collect();
        // With one other where both are the same.
        let others = &others;
        let with = |i: usize| others[i..].iter().map(move |other| others[i] | other);
        let with = (0..others.len()).flat_map(with).map(|own| last | own);
        let mut best = Vec::new();
        for few in std::iter::once(last).chain(with) {
            let rest = set ^ few;
            if rest != 0 && !self.known(rest).is_empty() && self.takes(few) {
                self.join(rest, few, &mut best);
            }
        }
        best
    }

    /// How one rectangle may lie, with the distance to the next.
    fn lies(&self, index: usize) -> impl Iterator<Item = Size> {
        let flat = self.pieces[index] + Size::new(APART, APART);
        let turned = match self.turning {
            Turning::Never => None,
            Turning::Allowed => Some(Size::new(flat.height, flat.width)),
        };
        std::iter::once(flat).chain(turned)
    }

    /// The boxes of a set that was asked for.
    fn known(&self, set: u32) -> &[Shape] {
        self.boxes[set as usize].as_deref().unwrap_or_default()
    }

    /// All ways to divide a set in two, whose parts are all known.
    fn divided(&mut self, set: u32) -> Vec<Shape> {
        let lowest = set & set.wrapping_neg();
        let others = set ^ lowest;
        let mut best: Vec<Shape> = Vec::new();
        // All parts of the others but the whole.
        let mut part = others & others.wrapping_sub(1);
        loop {
            let first = lowest | part;
            if first != set {
                self.tries += self.join(first, set ^ first, &mut best);
            }
            if part == 0 {
                break;
            }
            part = (part - 1) & others;
        }
        best
    }

    /// Two sets side by side and one over the other; how many ways that were.
    fn join(&self, first: u32, second: u32, best: &mut Vec<Shape>) -> usize {
        let (a, b) = (self.known(first), self.known(second));
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
        1 + a.len() * b.len()
    }

    fn fits(&self, size: Size) -> bool {
        self.windows.iter().any(|window| within(size, *window))
    }

    /// Whether not all was tried that there is.
    pub(super) fn gave_up(&self) -> bool {
        self.tries > self.most_tries
    }

    /// The same with a closer bound: what each rectangle takes is counted in the way in which all
    /// together take most.
    pub(super) fn closely_bound(mut self) -> Self {
        let narrowest = self.least_side();
        let all = (0..self.pieces.len()).flat_map(|index| self.lies(index));
        let leasts = all.flat_map(|size| {
            [
                Size::new(size.width, narrowest.height),
                Size::new(narrowest.width, size.height),
            ]
        });
        let sum = |taken: &Vec<f64>| taken.iter().sum::<f64>();
        let taken = leasts.map(|least| self.taken(least, |window| window.area()));
        let most = taken.max_by(|a, b| sum(a).total_cmp(&sum(b)));
        (self.taken, self.page) = (most.unwrap_or_default(), 1.0);
        self
    }

    /// The width of the narrowest and the height of the lowest lie.
    fn least_side(&self) -> Size {
        let all = (0..self.pieces.len()).flat_map(|index| self.lies(index));
        let most = Size::new(f64::MAX, f64::MAX);
        all.fold(most, |least, size| least.min(size))
    }

    /// What each rectangle takes of a page at the least, in the lie and the window in which that is
    /// least. What is narrower or lower than `least` is said to take nothing; one beside which there
    /// is no room for so much takes the whole width, one over which there is none the whole height.
    /// What is so counted still goes into the window together (Fekete and Schepers, from memory).
    fn taken(&self, least: Size, page: impl Fn(&Size) -> f64) -> Vec<f64> {
        let counted = |own: f64, least: f64, window: f64| {
            if own < least {
                0.0
            } else if own + least > window {
                window
            } else {
                own
            }
        };
        let in_window = |size: Size, window: &Size| {
            counted(size.width, least.width, window.width)
                * counted(size.height, least.height, window.height)
                / page(window)
        };
        let of = |index: usize| {
            let lies = self.lies(index).flat_map(|size| {
                let fitting = self.windows.iter().filter(move |of| within(size, **of));
                fitting.map(move |window| in_window(size, window))
            });
            lies.fold(f64::INFINITY, f64::min)
        };
        (0..self.pieces.len()).map(of).collect()
    }

    /// How many pages a set covers at the least.
    fn pages(&self, set: u32) -> f64 {
        let taken = ones(set).map(|one| self.taken[one.trailing_zeros() as usize]);
        taken.sum::<f64>() / self.page
    }

    /// The fewest pages that a set can take by what each of it takes.
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a few rectangles that each fit on a page"
    )]
    pub(super) fn least(&self, set: u32) -> usize {
        (self.pages(set) - HAIR).ceil().max(1.0) as usize
    }

    /// A set on its page: in the window, and in the box of it, that leaves most room around it, in
    /// the middle.
    pub(super) fn laid(&self, set: u32) -> Packed {
        let boxes = self.known(set);
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
        let shape = self.known(set)[index];
        let size = |set: u32, index: usize| self.known(set)[index].size;
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

/// The single rectangles of a set, the lowest first.
pub(super) fn ones(set: u32) -> impl Iterator<Item = u32> {
    let mut rest = set;
    std::iter::from_fn(move || {
        let lowest = rest & rest.wrapping_neg();
        rest ^= lowest;
        (lowest != 0).then_some(lowest)
    })
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
