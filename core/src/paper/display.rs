//! The display list: all that stands between thinking and ink.
//!
//! Millimetres, y up. Screen, PDF and SVG all draw these items and compute no geometry of their
//! own.

use kurbo::{BezPath, PathEl, Point, Rect, Shape, Vec2};

use crate::finding::Part;

/// What a line means; each medium has one table that turns this into width, dash and colour
/// (line types after ISO 128-2).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Line {
    /// Visible edge: continuous wide.
    Outline,
    /// Visible edge of small things: continuous narrow.
    Fine,
    /// Edge behind something: dashed narrow.
    Hidden,
    /// Axis or symmetry: long dash, dot, narrow.
    Centre,
    /// Neighbouring part or other position: long dash, two dots, narrow.
    Neighbour,
    /// Dimension, extension, leader: continuous narrow.
    Dimension,
    /// Punch or chisel mark on the bar: continuous wide.
    Mark,
    /// Where sheets join: narrow, long dash.
    Join,
    /// Page furniture: frame, title block, check bars.
    Frame,
    /// Where something is wrong: continuous wide, in the warning colour.
    Warning,
}

/// What a filled area is; each medium has one table that turns this into a colour.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Fill {
    /// A part of the front half, in the part's own colour.
    Part(Part),
    /// The other half.
    OtherHalf,
    /// The work in the jaws.
    Work,
    /// The rivet and its heads.
    Rivet,
    /// Plain bar that becomes nothing: crop, kerf, scale.
    Waste,
    /// The paper's own colour, to blank what lies under.
    Paper,
    /// Steel that is hot.
    Hot,
    /// Solid ink: arrowheads, check bars.
    Ink,
    /// A place that is wrong.
    Warning,
    /// A stretch of a half by how much of its strength is used, in the steps of
    /// [`crate::draw::STRESS_STEPS`], the least first.
    Stress(u8),
}

/// Where a text hangs on its point.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Align {
    /// The text begins at the point.
    Start,
    /// The text is centred on the point.
    Middle,
    /// The text ends at the point.
    End,
}

/// A path, stroked, filled, or both.
#[derive(Debug, Clone, PartialEq)]
pub struct PathItem {
    /// Outline in mm.
    pub path: BezPath,
    /// How it is stroked, if it is.
    pub line: Option<Line>,
    /// How it is filled, if it is (even-odd rule).
    pub fill: Option<Fill>,
    /// The part it belongs to, for lighting up.
    pub part: Option<Part>,
}

/// One line of text.
#[derive(Debug, Clone, PartialEq)]
pub struct TextItem {
    /// Where the base line hangs, mm.
    pub at: Point,
    /// The words. Only signs of the Windows-1252 set are drawn on paper.
    pub text: String,
    /// Font size in mm (the height of a line's em square).
    pub size: f64,
    /// Which end of the text is at the point.
    pub align: Align,
    /// Turned anticlockwise by so many radians.
    pub turn: f64,
    /// Bold face.
    pub bold: bool,
    /// The part it belongs to.
    pub part: Option<Part>,
}

/// The way in which tongs are looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum View {
    /// Along the rivet.
    Side,
    /// From above the jaws.
    Top,
    /// Onto the tips.
    End,
}

impl View {
    /// What the smith reads.
    pub fn name(self) -> &'static str {
        match self {
            Self::Side => "Side view",
            Self::Top => "Top view",
            Self::End => "End view",
        }
    }
}

/// Items moved together, clipped to a rectangle if one is given (in the group's own, moved,
/// coordinates: the clip is applied after the shift).
#[derive(Debug, Clone, PartialEq)]
pub struct GroupItem {
    /// What the group is, for SVG ids and tests.
    pub name: String,
    /// The view that it shows, if it shows one.
    pub view: Option<View>,
    /// Added to every coordinate inside.
    pub shift: Vec2,
    /// What shows, in the coordinates outside the group.
    pub clip: Option<Rect>,
    /// What is in it.
    pub items: Vec<Item>,
}

/// One thing to draw.
#[derive(Debug, Clone, PartialEq)]
pub enum Item {
    /// A path.
    Path(PathItem),
    /// A text.
    Text(TextItem),
    /// A group.
    Group(GroupItem),
}

/// A drawing: items within bounds, mm, y up.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Drawing {
    /// What is drawn, back to front.
    pub items: Vec<Item>,
}

impl Item {
    fn scaled(self, by: f64) -> Self {
        match self {
            Self::Path(path) => Self::Path(PathItem {
                path: kurbo::Affine::scale(by) * path.path,
                ..path
            }),
            Self::Text(text) => Self::Text(TextItem {
                at: (text.at.to_vec2() * by).to_point(),
                size: text.size * by,
                ..text
            }),
            Self::Group(group) => Self::Group(GroupItem {
                shift: group.shift * by,
                clip: group.clip.map(|clip| clip.scale_from_origin(by)),
                items: group
                    .items
                    .into_iter()
                    .map(|item| item.scaled(by))
                    .collect(),
                ..group
            }),
        }
    }

    /// The same turned by a quarter about the origin, anticlockwise.
    pub(crate) fn turned(self) -> Self {
        let quarter = kurbo::Affine::rotate(std::f64::consts::FRAC_PI_2);
        let turn = |p: Vec2| Vec2::new(-p.y, p.x);
        match self {
            Self::Path(path) => Self::Path(PathItem {
                path: quarter * path.path,
                ..path
            }),
            Self::Text(text) => Self::Text(TextItem {
                at: turn(text.at.to_vec2()).to_point(),
                turn: text.turn + std::f64::consts::FRAC_PI_2,
                ..text
            }),
            Self::Group(group) => Self::Group(GroupItem {
                shift: turn(group.shift),
                clip: group.clip.map(|clip| quarter.transform_rect_bbox(clip)),
                items: group.items.into_iter().map(Self::turned).collect(),
                ..group
            }),
        }
    }

    /// A stroked path.
    pub fn line(path: BezPath, line: Line) -> Self {
        Self::Path(PathItem {
            path,
            line: Some(line),
            fill: None,
            part: None,
        })
    }

    /// A filled path.
    pub fn fill(path: BezPath, fill: Fill) -> Self {
        Self::Path(PathItem {
            path,
            line: None,
            fill: Some(fill),
            part: None,
        })
    }

    /// An upright text.
    pub fn text(at: Point, text: impl Into<String>, size: f64, align: Align) -> Self {
        Self::Text(TextItem {
            at,
            text: text.into(),
            size,
            align,
            turn: 0.0,
            bold: false,
            part: None,
        })
    }

    /// A group that moves its items.
    pub fn group(name: impl Into<String>, shift: Vec2, items: Vec<Self>) -> Self {
        Self::Group(GroupItem {
            name: name.into(),
            view: None,
            shift,
            clip: None,
            items,
        })
    }

    /// A view that is set beside others.
    pub fn view(view: View, name: &str, shift: Vec2, items: Vec<Self>) -> Self {
        Self::Group(GroupItem {
            name: name.to_owned(),
            view: Some(view),
            shift,
            clip: None,
            items,
        })
    }

    /// The same item, belonging to a part.
    #[must_use]
    pub fn of(mut self, owner: Part) -> Self {
        match &mut self {
            Self::Path(path) => path.part = Some(owner),
            Self::Text(text) => text.part = Some(owner),
            Self::Group(group) => {
                let items = std::mem::take(&mut group.items);
                group.items = items.into_iter().map(|item| item.of(owner)).collect();
            }
        }
        self
    }

    /// What the item covers, mm, texts included by their measured width; `None` when empty.
    pub fn bounds(&self) -> Option<Rect> {
        match self {
            Self::Path(path) => (!path.path.is_empty()).then(|| box_of(&path.path)),
            Self::Text(text) => Some(text.bounds()),
            Self::Group(group) => {
                let inner = bounds(&group.items)? + group.shift;
                Some(group.clip.map_or(inner, |clip| inner.intersect(clip)))
            }
        }
    }
}

/// What a path covers. Of one that is straight all along the corners tell, at a tenth of the cost.
fn box_of(path: &BezPath) -> Rect {
    let curved = |el: &PathEl| matches!(el, PathEl::QuadTo(..) | PathEl::CurveTo(..));
    if path.elements().iter().any(curved) {
        path.bounding_box()
    } else {
        path.control_box()
    }
}

impl TextItem {
    /// The box around the text, mm.
    pub fn bounds(&self) -> Rect {
        /// Part of the em square above and below the base line that letters use.
        const ABOVE: f64 = 0.74;
        const BELOW: f64 = 0.21;
        let width = super::font::text_width(&self.text, self.size, self.bold);
        let start = match self.align {
            Align::Start => 0.0,
            Align::Middle => -width / 2.0,
            Align::End => -width,
        };
        let flat = Rect::new(start, -BELOW * self.size, start + width, ABOVE * self.size);
        let turn = kurbo::Affine::translate(self.at.to_vec2()) * kurbo::Affine::rotate(self.turn);
        turn.transform_rect_bbox(flat)
    }
}

impl Item {
    /// The same with another scale across and up about a point, lettering as large as it was.
    pub(crate) fn stretched(self, by: Vec2, about: Point) -> Self {
        let linear = kurbo::Affine::scale_non_uniform(by.x, by.y);
        let about = about.to_vec2();
        let whole = kurbo::Affine::translate(about) * linear * kurbo::Affine::translate(-about);
        match self {
            Self::Path(path) => Self::Path(PathItem {
                path: whole * path.path,
                ..path
            }),
            Self::Text(text) => Self::Text(TextItem {
                at: whole * text.at,
                ..text
            }),
            Self::Group(group) => Self::Group(GroupItem {
                shift: (whole * group.shift.to_point()).to_vec2(),
                clip: group.clip.map(|clip| whole.transform_rect_bbox(clip)),
                items: group
                    .items
                    .into_iter()
                    .map(|item| item.stretched(by, Point::ZERO))
                    .collect(),
                ..group
            }),
        }
    }
}

impl Drawing {
    /// Whether another drawing shows the same on paper: all that is written, and all else in its
    /// place to a quarter of a millimetre, which is half as much as a line is wide.
    pub fn is_like(&self, other: &Self) -> bool {
        alike(&self.items, &other.items)
    }

    /// The same so many times as large about its origin, lettering as large as it was.
    #[must_use]
    pub fn grown(self, by: f64) -> Self {
        let grow = |item: Item| item.stretched(Vec2::new(by, by), Point::ZERO);
        Self {
            items: self.items.into_iter().map(grow).collect(),
        }
    }

    /// The same drawing at 1 : `n`, lettering and all.
    #[must_use]
    pub fn reduced(self, n: u32) -> Self {
        self.scaled(1.0 / f64::from(n.max(1)))
    }

    /// The same drawing so many times as large, lettering and all.
    #[must_use]
    pub fn scaled(self, by: f64) -> Self {
        let items = self.items.into_iter().map(|item| item.scaled(by));
        Self {
            items: items.collect(),
        }
    }

    /// What the drawing covers, mm; an empty drawing covers nothing at the origin.
    pub fn bounds(&self) -> Rect {
        bounds(&self.items).unwrap_or(Rect::ZERO)
    }
}

/// What the items cover together.
pub fn bounds(items: &[Item]) -> Option<Rect> {
    items
        .iter()
        .filter_map(Item::bounds)
        .reduce(|a, b| a.union(b))
}

fn alike(items: &[Item], others: &[Item]) -> bool {
    /// Farther apart than this two things are not in one place, mm.
    const APART: f64 = 0.25;
    let near = |a: Option<Rect>, b: Option<Rect>| match (a, b) {
        (Some(a), Some(b)) => {
            let off = [a.x0 - b.x0, a.y0 - b.y0, a.x1 - b.x1, a.y1 - b.y1];
            off.iter().all(|off| off.abs() < APART)
        }
        (None, None) => true,
        (Some(_), None) | (None, Some(_)) => false,
    };
    let same = |(a, b): (&Item, &Item)| {
        let kind = match (a, b) {
            (Item::Text(a), Item::Text(b)) => a.text == b.text,
            (Item::Path(a), Item::Path(b)) => (a.line, a.fill) == (b.line, b.fill),
            (Item::Group(a), Item::Group(b)) => alike(&a.items, &b.items),
            (Item::Text(_) | Item::Path(_) | Item::Group(_), _) => false,
        };
        kind && near(a.bounds(), b.bounds())
    };
    items.len() == others.len() && items.iter().zip(others).all(same)
}
