//! Views cut into parts that fit on a page, only where a plain rein or plain bar runs.

use kurbo::{Point, Rect};

use super::grid::INK;
use super::ink::{Ink, on_fill};
use super::joint::{Joint, MARK_ABOVE, MARK_BELOW, MARK_BESIDE};
use super::{Named, Sheet};
use crate::paper::font::text_width;
use crate::paper::{Item, Stretch};

/// The most parts of a view: a longer one is no template.
const MOST_PARTS: usize = 6;
/// How far a joint stays off a text, mm.
const OFF: f64 = 1.0;
/// Kept free around a name, mm.
const AROUND: f64 = 0.8;
/// Size of a part's name, mm: 9 pt.
pub(super) const NAME: f64 = 3.2;

/// A view of a sheet, or all that is drawn on one that has no views.
#[derive(Debug)]
pub(super) struct Block<'a> {
    /// Which sheet it is of.
    pub(super) sheet: usize,
    /// What is drawn.
    pub(super) items: Vec<&'a Item>,
    name: Name,
    named: Named,
    bounds: Rect,
    ink: Ink,
    /// Where a joint may stand: stretches of x.
    free: Vec<(f64, f64)>,
}

/// What the parts of a block are called on their pages.
#[derive(Debug, Clone)]
enum Name {
    /// So, and above the part if there is no room in it.
    Needed(String),
    /// So, where there is room.
    Welcome(String),
    /// It says so itself.
    Own,
}

/// What may part from what else is drawn on a sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Unit {
    /// Its views, and what stands beside them.
    View,
    /// Each group, where a sheet is of groups alone.
    Group,
}

/// A part of a block.
#[derive(Debug, Clone)]
pub(super) struct Part {
    /// Which block it is of.
    pub(super) block: usize,
    /// What is shown of it, in the drawing's coordinates.
    pub(super) shown: Rect,
    /// What it is called, and where that stands.
    pub(super) name: Option<(Point, String)>,
}

/// Blocks as they are cut.
#[derive(Debug, Clone, Default)]
pub(super) struct Cut {
    pub(super) parts: Vec<Part>,
    pub(super) joints: Vec<Joint>,
}

impl Cut {
    /// Whether another one has the same parts.
    pub(super) fn is_like(&self, other: &Self) -> bool {
        let shown = |cut: &Self| cut.parts.iter().map(|part| part.shown).collect::<Vec<_>>();
        shown(self) == shown(other)
    }

    /// Adds the parts of the block in a place, as it was cut alone.
    pub(super) fn add(&mut self, block: usize, own: &Self) {
        let first = self.parts.len();
        let part = |part: &Part| Part {
            block,
            ..part.clone()
        };
        let joint = |joint: &Joint| Joint {
            parts: joint.parts.map(|part| first + part),
            ..*joint
        };
        self.parts.extend(own.parts.iter().map(part));
        self.joints.extend(own.joints.iter().map(joint));
    }
}

/// Where a view is cut that may be cut in several places.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Bias {
    /// The right part, with the head, as long as it can be.
    HeadLong,
    /// The left part as long as it can be.
    HeadShort,
}

impl<'a> Block<'a> {
    /// The views of a sheet from the top down; `None` if one is so large that it cannot be cut.
    pub(super) fn all(
        (sheet, unit): (&'a Sheet, Unit),
        index: usize,
        room: f64,
        overlap: f64,
    ) -> Option<Vec<Self>> {
        let is_view = |item: &&Item| matches!(item, Item::Group(group) if group.view.is_some());
        let (views, rest): (Vec<&Item>, Vec<&Item>) = sheet.drawing.items.iter().partition(is_view);
        let alone = unit == Unit::View && views.len() + usize::from(!rest.is_empty()) < 2;
        let mut all: Vec<(Name, Vec<&Item>)> = views
            .into_iter()
            .map(|item| (Name::Needed(named(sheet, item, alone)), vec![item]))
            .collect();
        // What belongs to no view says itself what it is. Beside views each group stands alone.
        let apart = !all.is_empty() || unit == Unit::Group && rest.iter().all(is_group);
        let is_group = |item: &&Item| apart && is_group(item);
        let (groups, loose): (Vec<&Item>, Vec<&Item>) = rest.into_iter().partition(is_group);
        let groups = groups.into_iter().map(|item| vec![item]);
        let others: Vec<Vec<&Item>> = groups.chain([loose]).filter(|of| !of.is_empty()).collect();
        let name = |items: &[&Item]| match sheet.named {
            _ if says(items.iter().copied(), &sheet.title) => Name::Own,
            Named::Always => Name::Needed(sheet.title.clone()),
            Named::WhereBlank if alone => Name::Welcome(sheet.title.clone()),
            Named::WhereBlank | Named::InTitleBlock => Name::Own,
        };
        all.extend(others.into_iter().map(|items| (name(&items), items)));
        let mut blocks = Vec::new();
        for (name, items) in all {
            let bounds = items.iter().filter_map(|item| item.bounds());
            let Some(bounds) = bounds.reduce(|a, b| a.union(b)) else {
                continue;
            };
            let bounds = bounds.inflate(INK, INK);
            if bounds.width() > room && sheet.plain.is_empty() && sheet.bent.is_empty() {
                return None;
            }
            if bounds.width() > room * (MOST_PARTS as f64) {
                return None;
            }
            let ink = Ink::of(items.iter().copied());
            let mut block = Self {
                sheet: index,
                free: free(&sheet.plain, &ink, overlap / 2.0),
                items,
                name,
                named: sheet.named,
                bounds,
                ink,
            };
            if !sheet.bent.is_empty() && !block.can_be_cut(room, overlap / 2.0) {
                block.free = free(&sheet.bent, &block.ink, overlap / 2.0);
            }
            blocks.push(block);
        }
        blocks.sort_by(|a, b| b.bounds.center().y.total_cmp(&a.bounds.center().y));
        Some(blocks)
    }

    /// Whether parts as wide as the paper takes can be had of it.
    fn can_be_cut(&self, room: f64, half: f64) -> bool {
        let mut biases = [Bias::HeadLong, Bias::HeadShort].into_iter();
        biases.any(|bias| self.cuts(room, half, bias).is_some())
    }

    /// Where it is cut so that each part is no wider than this, from the right; `None` where no
    /// plain rein runs for it.
    fn cuts(&self, room: f64, half: f64, bias: Bias) -> Option<Vec<f64>> {
        /// A part shows at least so much of its own, mm.
        const LEAST: f64 = 8.0;
        /// And one between two joints, with the marks of both on it, mm.
        const BETWEEN: f64 = 40.0;
        let (x0, x1) = (self.bounds.x0, self.bounds.x1);
        let mut cuts = Vec::new();
        let mut edge = match bias {
            Bias::HeadLong => x1,
            Bias::HeadShort => x0,
        };
        let left = |edge: f64| match bias {
            Bias::HeadLong => edge - x0,
            Bias::HeadShort => x1 - edge,
        };
        while left(edge) > room {
            let least_own = if cuts.is_empty() { LEAST } else { BETWEEN };
            let at = match bias {
                Bias::HeadLong => {
                    // What is left over has room for the marks beside its joint.
                    let least = (edge - room + half).max(x0 + MARK_BESIDE);
                    let fits = self.free.iter().filter(|(_, to)| *to >= least);
                    let places = fits.map(|(from, _)| from.max(least));
                    places
                        .reduce(f64::min)
                        .filter(|at| at + half + least_own < edge)
                }
                Bias::HeadShort => {
                    let most = edge + room - half;
                    let fits = self.free.iter().filter(|(from, _)| *from <= most);
                    let places = fits.map(|(_, to)| to.min(most));
                    places
                        .reduce(f64::max)
                        .filter(|at| at - half - least_own > edge)
                }
            }?;
            cuts.push(at);
            edge = match bias {
                Bias::HeadLong => at + half,
                Bias::HeadShort => at - half,
            };
            if cuts.len() >= MOST_PARTS {
                return None;
            }
        }
        cuts.sort_by(|a, b| b.total_cmp(a));
        Some(cuts)
    }

    /// Its parts alone, no wider than this, the right one first; `None` where it cannot be cut so.
    pub(super) fn cut(&self, (room, bias): (f64, Bias), half: f64) -> Option<Cut> {
        let cuts = self.cuts(room, half, bias)?;
        let mut to = Cut::default();
        let mut right = self.bounds.x1;
        for left in cuts.iter().map(|at| at - half).chain([self.bounds.x0]) {
            let ink = self.ink.between(left, right)?.inflate(INK, INK);
            let shown = Rect::new(left, ink.y0, right, ink.y1);
            to.parts.push(Part {
                block: 0,
                shown,
                name: None,
            });
            right = left + 2.0 * half;
        }
        for (place, at) in cuts.into_iter().enumerate() {
            let parts = [place + 1, place];
            let marks = self.marks(at, [to.parts[parts[0]].shown, to.parts[parts[1]].shown]);
            for part in parts {
                let shown = &mut to.parts[part].shown;
                shown.y0 = shown.y0.min(marks[0] - MARK_BELOW);
                shown.y1 = shown.y1.max(marks[1] + MARK_ABOVE);
            }
            to.joints.push(Joint { at, marks, parts });
        }
        for part in 0..to.parts.len() {
            let joints = to.joints.iter().filter(|joint| joint.parts.contains(&part));
            let marks: Vec<Rect> = joints.flat_map(Joint::boxes).collect();
            let part = &mut to.parts[part];
            if marks.is_empty() {
                self.widen(part);
            }
            self.name(part, &marks);
        }
        Some(to)
    }

    /// How high the two marks of a joint stand, where the paper is blank on both parts.
    fn marks(&self, at: f64, [left, right]: [Rect; 2]) -> [f64; 2] {
        /// The least distance of two marks that hold two parts in line, mm.
        const APART: f64 = 14.0;
        let (from, to) = (at - MARK_BESIDE, at + MARK_BESIDE);
        let tall = Rect::new(from, left.y0.min(right.y0), to, left.y1.max(right.y1));
        let near = self.ink.within(tall);
        let (low, high) = (
            left.y0.max(right.y0) + MARK_BELOW,
            left.y1.min(right.y1) - MARK_ABOVE,
        );
        let blank =
            |y: &f64| near.leaves_blank(Rect::new(from, y - MARK_BELOW, to, y + MARK_ABOVE));
        let steps = || {
            (0..400_u32)
                .map(f64::from)
                .take_while(|step| low + step <= high)
        };
        let upper = steps().map(|step| high - step).find(blank);
        let lower = steps().map(|step| low + step).find(blank);
        match (lower, upper) {
            (Some(lower), Some(upper)) if upper - lower >= APART => [lower, upper],
            _ => {
                let taken = near.between(from, to).unwrap_or(tall);
                [taken.y0 - MARK_ABOVE, taken.y1 + MARK_BELOW]
            }
        }
    }

    /// Makes room for a name that a narrow view must have.
    fn widen(&self, part: &mut Part) {
        if let (Name::Needed(words), Named::Always) = (&self.name, self.named) {
            let wide = text_width(words, NAME, false) + 2.0 * AROUND + INK;
            part.shown.x1 = part.shown.x1.max(part.shown.x0 + wide);
        }
    }

    /// Names a part where its paper is blank, or else above it.
    fn name(&self, part: &mut Part, marks: &[Rect]) {
        /// Between two places that are tried, across and down, and how many there are down, mm.
        const ACROSS: f64 = 5.0;
        const DOWN: f64 = 2.5;
        const ROWS: u32 = 16;
        let shown = part.shown;
        let room = shown.width() - 2.0 * AROUND;
        let words = match &self.name {
            Name::Needed(words) | Name::Welcome(words) => words.clone(),
            Name::Own => return,
        };
        let width = text_width(&words, NAME, false);
        if width > room {
            return;
        }
        let size = kurbo::Size::new(width, 0.95 * NAME);
        let taken = self.ink.within(shown);
        let free = |corner: &Point| {
            let own = Rect::from_origin_size(*corner, size).inflate(AROUND, AROUND);
            own.y0 >= shown.y0
                && taken.leaves_blank(own)
                && !marks.iter().any(|mark| mark.overlaps(own))
                && !on_fill(self.items.iter().copied(), own.center())
        };
        let top = shown.y1 - AROUND - size.height;
        let columns = ((room - size.width) / ACROSS).max(0.0);
        let places = (0..ROWS).flat_map(|row| {
            let y = top - DOWN * f64::from(row);
            let steps = (0..60_u32)
                .map(f64::from)
                .take_while(|step| *step <= columns);
            steps.map(move |step| Point::new(shown.x0 + AROUND + ACROSS * step, y))
        });
        let found = { places }.find(free);
        let corner = match (found, &self.name) {
            (Some(corner), _) => corner,
            (None, Name::Needed(_)) => {
                let corner = Point::new(shown.x0 + AROUND, shown.y1 + AROUND);
                part.shown.y1 = corner.y + size.height + AROUND;
                corner
            }
            (None, Name::Welcome(_) | Name::Own) => return,
        };
        part.name = Some((corner + kurbo::Vec2::new(0.0, 0.21 * NAME), words));
    }
}

fn is_group(item: &&Item) -> bool {
    matches!(item, Item::Group(_))
}

/// Whether something that is drawn begins with these words.
fn says<'a>(items: impl IntoIterator<Item = &'a Item>, words: &str) -> bool {
    items.into_iter().any(|item| match item {
        Item::Text(text) => text.text.starts_with(words),
        Item::Group(group) => says(&group.items, words),
        Item::Path(_) => false,
    })
}

/// What a view is called where several lie on a page.
fn named(sheet: &Sheet, item: &Item, alone: bool) -> String {
    match item {
        Item::Group(group) if !alone => {
            let view = group.view.map_or("", |view| view.name());
            format!("{}, {}", sheet.title, view.to_lowercase())
        }
        Item::Group(_) | Item::Path(_) | Item::Text(_) => sheet.title.clone(),
    }
}

/// Where joints may stand: in these stretches, where no text would be cut.
fn free(stretches: &[Stretch], ink: &Ink, half: f64) -> Vec<(f64, f64)> {
    let plain = stretches.iter().map(|s| (s.from + half, s.to - half));
    let mut free: Vec<(f64, f64)> = plain.filter(|(from, to)| from <= to).collect();
    for text in ink.texts() {
        let (from, to) = (text.x0 - half - OFF, text.x1 + half + OFF);
        let parts = free
            .into_iter()
            .flat_map(|(a, b)| [(a, b.min(from)), (a.max(to), b)]);
        free = parts.filter(|(a, b)| a <= b).collect();
    }
    free
}
