//! Rectangles on pages: the fewest pages that take them, found exactly.
//!
//! A page is divided by straight cuts from edge to edge, again and again, until each field holds
//! one rectangle. Whether a page takes a set of rectangles so, and how, [`sets`] finds out when it is
//! asked; [`cover`] looks for the fewest sets that take all.

mod cover;
mod sets;

use kurbo::{Point, Size};

use cover::Cover;
use sets::Sets;

/// The most rectangles that are laid together exactly: sets are told by the bits of a number, and there are
/// few thousands of them.
const MOST: usize = 16;

/// How long is looked, so that nobody waits.
#[derive(Debug, Clone, Copy)]
struct Patience {
    /// So many divisions of sets are tried at the most; a hundred take a millionth of a second, a
    /// pair up to some hundred thousands. Past it, what comes to a set is only tried
    /// beside all of the rest, alone or with two others.
    tries: usize,
    /// What a search for covers may look at, in pages as they fill.
    looks: usize,
}

/// For all that there is.
const ALL: Patience = Patience {
    tries: 400_000,
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
    let area: f64 = pieces.iter().map(|piece| piece.area()).sum();
    if area > larger * most as f64 {
        return None;
    }
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
    if are_too_many(pieces, windows, (turning, patience), most) {
        return None;
    }
    found(pieces, windows, (turning, patience), most)
}

/// The pages as [`pack`] finds them.
fn found(
    pieces: &[Size],
    windows: [Size; 2],
    (turning, patience): (Turning, Patience),
    most: usize,
) -> Option<Vec<Packed>> {
    let all = (1_u32 << pieces.len()) - 1;
    let mut sets = Sets::new(pieces, windows, turning, patience.tries);
    if !(0..pieces.len()).all(|index| sets.takes(1 << index)) {
        return None;
    }
    let chosen = (sets.least(all)..=most)
        .find_map(|pages| Cover::new(&mut sets, patience.looks).of(all, pages))?;
    Some(chosen.into_iter().map(|set| sets.laid(set)).collect())
}

/// Whether rectangles are found not to go on so many pages. Where the largest are laid first and a
/// bound of their own is sought, that shows far sooner than in looking for the pages that take them.
fn are_too_many(
    pieces: &[Size],
    windows: [Size; 2],
    (turning, patience): (Turning, Patience),
    most: usize,
) -> bool {
    if most >= pieces.len() {
        return false;
    }
    let mut pieces = pieces.to_vec();
    pieces.sort_by(|a, b| b.area().total_cmp(&a.area()));
    let mut sets = Sets::new(&pieces, windows, turning, patience.tries).closely_bound();
    let all = (1_u32 << pieces.len()) - 1;
    let single = (0..pieces.len()).all(|index| sets.takes(1 << index));
    !single
        || (sets.least(all)..=most)
            .all(|pages| Cover::new(&mut sets, patience.looks).proves_too_few(all, pages))
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

    /// What no other goes beside counts with the whole width: three strips of 90 mm by 22 mm are two
    /// pages of 100 mm by 60 mm, though their area is that of one; and a page that another
    /// rectangle would fill is filled, not handed on.
    #[test]
    fn a_bound_is_never_more_than_is_needed() {
        use Turning::{Allowed, Never};
        let strips = [(90.0, 22.0); 3];
        check(&strips, Never, Some(2));
        // Upright, two and the distance take 48 mm of the width of 60 mm.
        check(&strips, Allowed, Some(2));
        check(&[(60.0, 17.0); 3], Never, Some(1));
        check(
            &[(98.0, 18.0), (98.0, 18.0), (46.0, 12.0), (46.0, 12.0)],
            Never,
            Some(1),
        );
        check(
            &[(98.0, 18.0), (98.0, 18.0), (46.0, 17.0), (46.0, 17.0)],
            Never,
            Some(2),
        );
    }

    /// That pages are too few is said of just those of which none are found.
    #[test]
    fn too_few_pages_are_those_that_none_are_found_for() {
        let windows = [Size::new(100.0, 60.0), Size::new(60.0, 100.0)];
        let mut said = [0, 0];
        for seed in 0..60_u32 {
            let pieces: Vec<Size> = (0..5 + seed % 4)
                .map(|i| {
                    let (w, h) = ((seed * 31 + i * 37) % 83, (seed * 17 + i * 23) % 41);
                    Size::new(16.0 + f64::from(w), 8.0 + f64::from(h))
                })
                .collect();
            for turning in [Turning::Never, Turning::Allowed] {
                for most in 1..5 {
                    let how = (turning, ALL);
                    let too_few = are_too_many(&pieces, windows, how, most);
                    let none = found(&pieces, windows, how, most).is_none();
                    assert_eq!(too_few, none, "{pieces:?} {turning:?} {most}");
                    said[usize::from(too_few)] += 1;
                }
            }
        }
        assert!(said[0] > 50 && said[1] > 50, "{said:?}");
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
        // Eight small ones lie on a page: more than can be tried in all ways.
        let small = vec![Size::new(20.0, 20.0); 32];
        let pages = pack_many(&small, windows, Turning::Allowed, 32).expect("each fits");
        assert!((4..=5).contains(&pages.len()), "{}", pages.len());
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
