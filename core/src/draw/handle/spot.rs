//! Places of steel in the three views, and where they come to lie on the paper.

use kurbo::{Affine, Point, Vec2};

use super::limb::{Limb, View, Which};
use super::reach::{self, Hold};
use crate::draw::Shifts;
use crate::paper::Breaks;
use crate::shape::sweep::{Edge, Sweep};
use crate::tongs::document::Document;
use crate::tongs::model::{Half, Model};

/// How far along a limb.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Along {
    /// This part of its length, 0 at the boss to 1 at the end.
    Part(f64),
    /// Where the middle of the hand is.
    Hand,
    /// The end of the rein, where a bent end begins.
    End,
    /// The station with this number.
    Station(usize),
    /// The first station of the profile with this number.
    First(usize),
    /// The last of them.
    Last(usize),
}

/// One side of neck or shoulder.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Face {
    /// The neck's inside.
    NeckInner,
    /// Its outside.
    NeckOuter,
    /// The shoulder's inside.
    ShoulderInner,
    /// Its outside.
    ShoulderOuter,
}

/// A place of steel. Angles are in radians in the half's own frame.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Spot {
    /// On a silhouette of a limb, side or top view.
    Edge(Limb, Edge, Along),
    /// In the middle of a limb, side view.
    Middle(Limb, Along),
    /// On neck or shoulder, this part of the way from the boss.
    Body(Face, f64),
    /// Where the boss reaches farthest this way, side view.
    Rim(f64),
    /// On the boss's outer face, so far along it (in half lengths), top view.
    Plate(f64),
    /// On the hole, in the direction given.
    Hole(f64),
    /// On the rivet's shank, in the direction given.
    Shank(f64),
    /// On the tip's inner surface, this part of half its width from the middle, end view.
    Groove(Limb, f64),
    /// On the tip's outer surface, end view.
    Back(Limb, f64),
    /// What a node of a sketched jaw is held by.
    Node(Limb, usize, Hold),
}

/// How a pair lies on the paper.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct OnPaper {
    /// Half of the opening past the set pose, radians.
    pub opening: f64,
    /// Where the views stand.
    pub shifts: Shifts,
    /// What is left out of the reins.
    pub breaks: Breaks,
}

impl Spot {
    pub(super) fn view(&self) -> View {
        match self {
            Self::Node(_, _, hold) => reach::view(*hold),
            Self::Edge(_, Edge::Far | Edge::Near, _) | Self::Plate(_) => View::Top,
            Self::Groove(..) | Self::Back(..) => View::End,
            Self::Edge(_, Edge::Outer | Edge::Inner, _)
            | Self::Middle(..)
            | Self::Body(..)
            | Self::Rim(_)
            | Self::Hole(_)
            | Self::Shank(_) => View::Side,
        }
    }

    pub(super) fn half(&self) -> Which {
        match self {
            Self::Edge(limb, ..)
            | Self::Middle(limb, _)
            | Self::Groove(limb, _)
            | Self::Back(limb, _)
            | Self::Node(limb, ..) => limb.half(),
            Self::Body(..) | Self::Rim(_) | Self::Plate(_) | Self::Hole(_) | Self::Shank(_) => {
                Which::A
            }
        }
    }

    /// Whether the limb, neck or shoulder that it lies on is the same in two models, and so holds
    /// still between them; other steel is not compared.
    pub(super) fn stays(&self, was: &Model, model: &Model) -> bool {
        match *self {
            Self::Edge(limb, ..)
            | Self::Middle(limb, _)
            | Self::Groove(limb, _)
            | Self::Back(limb, _) => {
                limb.of(was) == limb.of(model) && was.a.hand_at == model.a.hand_at
            }
            Self::Body(Face::NeckInner | Face::NeckOuter, _) => {
                was.a.body.neck == model.a.body.neck
            }
            Self::Body(Face::ShoulderInner | Face::ShoulderOuter, _) => {
                was.a.body.shoulder == model.a.body.shoulder
            }
            Self::Rim(_) | Self::Plate(_) | Self::Hole(_) | Self::Shank(_) | Self::Node(..) => {
                false
            }
        }
    }

    /// Where it lies in its view, mm, with the pair set on its work.
    pub(super) fn at(&self, document: &Document, model: &Model) -> Point {
        let half = self.half().of(model);
        let round = |r: f64, angle: f64| (Vec2::from_angle(angle) * r).to_point();
        let here = match *self {
            Self::Edge(limb, edge, along) => limb.of(model).edge_point(edge, along.on(limb, model)),
            Self::Middle(limb, along) => limb.of(model).middle(along.on(limb, model)),
            Self::Body(face, t) => face.point(half, t),
            Self::Rim(angle) => farthest(half, angle),
            Self::Plate(x) => {
                let body = &half.body;
                Point::new(x * body.rim.half_along(), body.plate.faces.thickness)
            }
            Self::Hole(angle) => round(half.body.plate.hole_radius, angle),
            Self::Shank(angle) => round(document.rivet.diameter.mm() / 2.0, angle),
            Self::Groove(limb, u) => tip(limb.of(model), u, Surface::Inner),
            Self::Back(limb, u) => tip(limb.of(model), u, Surface::Outer),
            Self::Node(limb, node, hold) => reach::at(document, model, (limb, node, hold)),
        };
        self.in_view(here, model)
    }

    /// From the half's own frame into its view, set.
    pub(super) fn in_view(&self, p: Point, model: &Model) -> Point {
        // Half B is turned half round about x, and a pair turned right has z flipped.
        let (y_sign, z_sign) = match self.half() {
            Which::A => (1.0, model.turn_sign),
            Which::B => (-1.0, -model.turn_sign),
        };
        match self.view() {
            View::Side => Point::new(p.x, y_sign * p.y),
            View::Top => Point::new(p.x, -z_sign * p.y),
            View::End => Point::new(-z_sign * p.x, y_sign * p.y),
        }
    }
}

/// The point of the boss that lies farthest in a direction.
fn farthest(half: &Half, angle: f64) -> Point {
    let (rim, way) = (&half.body.rim, Vec2::from_angle(angle));
    let reach = |p: &Point| p.to_vec2().dot(way);
    let core = rim.core.iter().max_by(|a, b| reach(a).total_cmp(&reach(b)));
    core.copied().unwrap_or(Point::ORIGIN) + way * rim.radius
}

/// A point of the tip's section: (z, y) of the half.
fn tip(sweep: &Sweep, u: f64, surface: Surface) -> Point {
    let s = sweep.length();
    let section = sweep.section(s);
    let v = match surface {
        Surface::Inner => section.lower(u),
        Surface::Outer => section.upper(u),
    };
    let z = sweep.shift(s) + u * section.width / 2.0;
    Point::new(z, sweep.middle(s).y + v)
}

#[derive(Clone, Copy)]
enum Surface {
    Inner,
    Outer,
}

impl Along {
    /// mm along the limb.
    fn on(self, limb: Limb, model: &Model) -> f64 {
        let sweep = limb.of(model);
        let stations = |profile: usize| sweep.stations.iter().filter(move |s| s.profile == profile);
        let at = match self {
            Self::Part(part) => Some(part * sweep.length()),
            Self::Hand => Some(model.a.hand_at),
            Self::End => Some(model.a.bent_from()),
            Self::Station(i) => sweep.stations.get(i).map(|station| station.at),
            Self::First(profile) => stations(profile).next().map(|station| station.at),
            Self::Last(profile) => stations(profile).next_back().map(|station| station.at),
        };
        at.unwrap_or(0.0)
    }
}

impl Face {
    /// A point in the half's frame.
    fn point(self, half: &Half, t: f64) -> Point {
        let (neck, shoulder) = (&half.body.neck, &half.body.shoulder);
        let turned = |p: Point| Point::new(-p.x, -p.y);
        match self {
            Self::NeckInner => on_curves(&neck.inner_edge(), t),
            Self::NeckOuter => on_curves(&neck.outer_edge(), 1.0 - t),
            Self::ShoulderInner => turned(on_curves(&shoulder.inner_edge(), t)),
            Self::ShoulderOuter => turned(on_curves(&shoulder.outer_edge(), 1.0 - t)),
        }
    }
}

/// A point of curves that follow each other, each with the same share of `t`.
fn on_curves(curves: &[crate::shape::Curve], t: f64) -> Point {
    #[allow(clippy::cast_precision_loss, reason = "a limb has one or two curves")]
    let place = t.clamp(0.0, 1.0) * curves.len() as f64;
    let which = curves.iter().scan(place, |rest, curve| {
        let mine = *rest;
        *rest -= 1.0;
        Some((curve, mine))
    });
    let mut last = Point::ORIGIN;
    for (curve, mine) in which {
        last = curve.at(mine.clamp(0.0, 1.0));
        if mine <= 1.0 {
            break;
        }
    }
    last
}

impl OnPaper {
    /// From a view, set, onto the paper.
    pub(super) fn point(&self, view: View, half: Which, p: Point) -> Point {
        match view {
            View::Side => self.breaks.point(self.pose(half) * p),
            View::Top => self.breaks.point(p) + self.shifts.top,
            View::End => p + self.shifts.end,
        }
    }

    /// A movement in a view, set, as it goes on the paper.
    pub(super) fn turned(&self, view: View, half: Which, v: Vec2) -> Vec2 {
        match view {
            View::Side => (self.pose(half) * v.to_point()).to_vec2(),
            View::Top | View::End => v,
        }
    }

    fn pose(&self, half: Which) -> Affine {
        match half {
            Which::A => Affine::rotate(self.opening),
            Which::B => Affine::rotate(-self.opening),
        }
    }
}
