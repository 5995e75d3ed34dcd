//! Which sheets share pages, and how what is on them lies there.

use kurbo::Size;

use super::block::{Bias, Block, Cut, Unit};
use super::grid::{self, Grid};
use super::layout::{Layout, layout};
use super::pack::{Packed, Turning, pack_many};
use super::paper::PaperOptions;
use super::{Laid, Sheet, TitleBlock};

/// So many parts of views share pages at the most, so that nobody waits.
const MOST_PARTS: usize = 160;
/// Of more views than this only so many ways of cutting are tried: among many parts there is always
/// one that fits where another does not.
const MANY: usize = 16;
const WAYS_OF_MANY: usize = 2;
/// More parts of one sheet are no template.
const MOST_OF_A_SHEET: usize = 16;

/// Sheets that lie on pages of their own.
#[derive(Debug)]
pub(super) struct Bundle<'a> {
    /// What the title block of all of them says.
    pub(super) title: &'a TitleBlock,
    /// How they are laid.
    pub(super) how: How<'a>,
}

/// How sheets come to pages.
#[derive(Debug)]
pub(super) enum How<'a> {
    /// Views, whole or in parts, as many on a page as it takes.
    Shared(Box<Shared<'a>>),
    /// One drawing that is larger than the paper and may be cut anywhere: by a grid.
    Grid(usize, &'a Sheet, Box<Grid>),
}

/// Views on pages that they share.
#[derive(Debug)]
pub(super) struct Shared<'a> {
    /// The sheets with their places among all.
    pub(super) sheets: Vec<(usize, &'a Sheet)>,
    /// The views.
    pub(super) blocks: Vec<Block<'a>>,
    /// How they are cut.
    pub(super) cut: Cut,
    /// Their pages.
    pub(super) pages: Vec<Packed>,
    /// The two lies of the paper, as the windows of the pages count them.
    pub(super) layouts: [Layout; 2],
}

impl Bundle<'_> {
    pub(super) fn pages(&self) -> usize {
        match &self.how {
            How::Shared(shared) => shared.pages.len(),
            How::Grid(_, _, grid) => grid.pages(),
        }
    }

    /// The sheets, each with the first of the bundle's pages that shows it, counted from 0.
    pub(super) fn first_pages(&self) -> Vec<(usize, usize)> {
        match &self.how {
            How::Shared(shared) => {
                let sheets = shared.sheets.iter();
                sheets
                    .map(|(index, _)| (*index, shared.first(*index)))
                    .collect()
            }
            How::Grid(index, _, _) => vec![(*index, 0)],
        }
    }
}

impl Shared<'_> {
    /// The first page that shows something of a sheet.
    fn first(&self, sheet: usize) -> usize {
        let shows = |page: &Packed| {
            let mut parts = page.spots.iter().map(|spot| &self.cut.parts[spot.piece]);
            parts.any(|part| self.blocks[part.block].sheet == sheet)
        };
        self.pages.iter().position(shows).unwrap_or(0)
    }

    /// The page on which a part lies.
    pub(super) fn page_of(&self, part: usize) -> usize {
        let has = |page: &Packed| page.spots.iter().any(|spot| spot.piece == part);
        self.pages.iter().position(has).unwrap_or(0)
    }
}

/// How all sheets come to pages, in their order. Neighbours with one title block and one scale
/// share pages.
pub(super) fn plan<'a>(sheets: &[Laid<'a>], options: &PaperOptions) -> Vec<Bundle<'a>> {
    let mut bundles = Vec::new();
    let mut rest: &[Laid<'a>] = sheets;
    let mut index = 0;
    while let Some((first, title)) = rest.first() {
        let alike = |of: &&Laid<'a>| of.1 == *title && of.0.reduced == first.reduced;
        let count = rest.iter().take_while(alike).count();
        let (these, others) = rest.split_at(count);
        let numbered = (index..).zip(these.iter().map(|of| of.0));
        bundles.extend(bundled(numbered.collect(), title, options));
        (rest, index) = (others, index + count);
    }
    bundles
}

/// The bundles of sheets that may share pages: as many together as can be looked through.
fn bundled<'a>(
    sheets: Vec<(usize, &'a Sheet)>,
    title: &'a TitleBlock,
    options: &PaperOptions,
) -> Vec<Bundle<'a>> {
    let (width, height) = options.paper.size();
    let layouts = [(width, height), (height, width)].map(|(w, h)| layout(w, h, options, title));
    let half = options.overlap / 2.0;
    let mut bundles = Vec::new();
    let mut together: Vec<(usize, &'a Sheet, Vec<Tried<'a>>)> = Vec::new();
    let mut count = 0;
    for (index, sheet) in sheets {
        // Rather in its groups than cut wherever it must.
        let fitting = [Unit::View, Unit::Group].into_iter().find_map(|unit| {
            let blocks = Block::all((sheet, unit), index, room(&layouts), options.overlap)?;
            let blocks = tried(blocks, &layouts, half);
            Some((parts(&blocks)?, blocks))
        });
        match fitting {
            Some((own, blocks)) => {
                if count + own > MOST_PARTS {
                    let full = std::mem::take(&mut together);
                    bundles.extend(share(full, title, &layouts, options));
                    count = 0;
                }
                count += own;
                together.push((index, sheet, blocks));
            }
            None => bundles.push(gridded(index, sheet, title, options)),
        }
    }
    bundles.extend(share(together, title, &layouts, options));
    bundles.sort_by_key(|bundle| bundle.first_pages().first().map(|of| of.0));
    bundles
}

fn gridded<'a>(
    index: usize,
    sheet: &'a Sheet,
    title: &'a TitleBlock,
    options: &PaperOptions,
) -> Bundle<'a> {
    let grid = grid::laid(&sheet.drawing, options, title);
    Bundle {
        title,
        how: How::Grid(index, sheet, Box::new(grid)),
    }
}

/// The widest that a part can be, mm.
fn room(layouts: &[Layout; 2]) -> f64 {
    let widths = layouts.iter().map(|layout| layout.window.width());
    widths.fold(0.0, f64::max)
}

/// A block with its parts in each of the ways in which one alone can be cut; `None` where it cannot, or
/// where one of them fits on no page.
struct Tried<'a> {
    block: Block<'a>,
    parts: Vec<(Alone, Option<Cut>)>,
}

/// A way of cutting one block: the most that a part is wide, mm, and where it is cut that could be
/// cut elsewhere.
type Alone = (f64, Bias);

/// Blocks cut in all ways, once for all that is tried with them.
fn tried<'a>(blocks: Vec<Block<'a>>, layouts: &[Layout; 2], half: f64) -> Vec<Tried<'a>> {
    let mut widths: Vec<f64> = layouts.iter().map(|of| of.window.width()).collect();
    widths.sort_by(|a, b| b.total_cmp(a));
    let both = |width: f64| [Bias::HeadLong, Bias::HeadShort].map(|bias| (width, bias));
    let alone: Vec<Alone> = widths.into_iter().flat_map(both).collect();
    let cut = |block: Block<'a>| Tried {
        parts: alone
            .iter()
            .map(|way| (*way, fitting(&block, *way, half, layouts)))
            .collect(),
        block,
    };
    blocks.into_iter().map(cut).collect()
}

/// The parts of a block that is cut so, if each of them fits on a page.
fn fitting(block: &Block<'_>, way: Alone, half: f64, layouts: &[Layout; 2]) -> Option<Cut> {
    let fits = |size: Size| {
        let windows = layouts.iter().map(|of| of.window.size());
        { windows }.any(|window| size.width <= window.width && size.height <= window.height)
    };
    let cut = block.cut(way, half)?;
    let all = cut.parts.iter().all(|part| fits(part.shown.size()));
    all.then_some(cut)
}

impl Tried<'_> {
    /// Its parts, cut so or, where it cannot be, in the first way that suits it.
    fn cut(&self, way: Alone) -> Option<&Cut> {
        let so = self.parts.iter().find(|(own, _)| *own == way);
        let others = self.parts.iter().filter_map(|(_, parts)| parts.as_ref());
        so.and_then(|(_, parts)| parts.as_ref())
            .or_else(|| { others }.next())
    }
}

/// How many parts the blocks of a sheet are, each cut in the first way in which each of them fits on
/// a page.
fn parts(blocks: &[Tried<'_>]) -> Option<usize> {
    let first = |block: &Tried<'_>| {
        let mut cuts = block.parts.iter().filter_map(|(_, cut)| cut.as_ref());
        cuts.next().map(|cut| cut.parts.len())
    };
    let all = blocks.iter().map(first).sum::<Option<usize>>();
    all.filter(|parts| *parts <= MOST_OF_A_SHEET)
}

/// A width that no part exceeds, and where views are cut that could be cut elsewhere: every other
/// one so, and those between them so.
type Way = (f64, [Bias; 2]);

/// The ways of cutting that are tried: parts as wide as either lie of the paper takes.
fn ways(layouts: &[Layout; 2]) -> Vec<Way> {
    let mut widths: Vec<f64> = layouts.iter().map(|of| of.window.width()).collect();
    widths.sort_by(|a, b| b.total_cmp(a));
    use Bias::{HeadLong, HeadShort};
    let biases = [
        [HeadLong, HeadLong],
        [HeadShort, HeadShort],
        [HeadLong, HeadShort],
        [HeadShort, HeadLong],
    ];
    let all = |width: f64| biases.map(|biases| (width, biases));
    widths.into_iter().flat_map(all).collect()
}

/// The blocks cut in all ways that differ.
fn cuts(blocks: &[Tried<'_>], layouts: &[Layout; 2]) -> Vec<Cut> {
    let mut cuts: Vec<Cut> = Vec::new();
    for cut in ways(layouts).into_iter().filter_map(|way| cut(blocks, way)) {
        if !cuts.iter().any(|own| own.is_like(&cut)) {
            cuts.push(cut);
        }
    }
    cuts
}

/// All blocks cut one way, those that cannot be cut so in the first that suits them; `None` if none
/// suits one.
fn cut(blocks: &[Tried<'_>], (width, biases): Way) -> Option<Cut> {
    let mut all = Cut::default();
    for (index, block) in blocks.iter().enumerate() {
        all.add(index, block.cut((width, biases[index % 2]))?);
    }
    Some(all)
}

/// Sheets on as few pages as can be, with as few joints as can be on so many. Those that no way of
/// cutting suits together come to grids.
fn share<'a>(
    sheets: Vec<(usize, &'a Sheet, Vec<Tried<'a>>)>,
    title: &'a TitleBlock,
    layouts: &[Layout; 2],
    options: &PaperOptions,
) -> Vec<Bundle<'a>> {
    if sheets.is_empty() {
        return Vec::new();
    }
    let mut own = Vec::new();
    let mut blocks = Vec::new();
    for (index, sheet, its) in sheets {
        own.push((index, sheet));
        blocks.extend(its);
    }
    let windows = layouts.each_ref().map(|of| of.window.size());
    let mut best: Option<(Cut, Vec<Packed>)> = None;
    let mut cuts = cuts(&blocks, layouts);
    if blocks.len() > MANY {
        cuts.truncate(WAYS_OF_MANY);
    }
    for turning in [Turning::Never, Turning::Allowed] {
        for cut in &cuts {
            let most = most(best.as_ref(), cut, turning);
            let sizes: Vec<Size> = cut.parts.iter().map(|part| part.shown.size()).collect();
            if let Some(pages) = pack_many(&sizes, windows, turning, most) {
                best = Some((cut.clone(), pages));
            }
        }
    }
    let Some((cut, pages)) = best else {
        let single = own.into_iter();
        return single
            .map(|(index, sheet)| gridded(index, sheet, title, options))
            .collect();
    };
    let shared = Shared {
        sheets: own,
        blocks: blocks.into_iter().map(|tried| tried.block).collect(),
        cut,
        pages,
        layouts: layouts.clone(),
    };
    vec![Bundle {
        title,
        how: How::Shared(Box::new(shared)),
    }]
}

/// How many pages would be better than what was found.
fn most(best: Option<&(Cut, Vec<Packed>)>, cut: &Cut, turning: Turning) -> usize {
    let Some((found, pages)) = best else {
        return cut.parts.len();
    };
    let fewer_joints = cut.parts.len() < found.parts.len() && turning == Turning::Never;
    if fewer_joints {
        pages.len()
    } else {
        pages.len() - 1
    }
}
