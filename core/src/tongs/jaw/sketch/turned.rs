//! Turning a jaw of any style into a sketch.

use kurbo::Point;

use super::{Node, Sketch, SketchLay, SketchShape, Steel};
use crate::shape::sweep::{Pose, Station};
use crate::tongs::jaw::{Form, Jaw, JawStyle, Lay};
use crate::units::{Length, Offset, Unit};

/// Places nearer than this are one, mm.
const SAME: f64 = 1e-9;

fn exact(mm: f64) -> Offset {
    Offset::exact(mm, Unit::Millimetre)
}

impl Sketch {
    /// The very shape of a form, drawn for work of some size.
    pub fn of(form: &Form, size: Length) -> Self {
        let path = form.placed(0.0, 0.0).path;
        let mut places: Vec<f64> = form.stations.iter().map(|station| station.at).collect();
        places.extend(path.breaks());
        places.extend([form.grip.0, form.grip.1]);
        places.sort_by(f64::total_cmp);
        places.dedup_by(|a, b| (*a - *b).abs() < 1e-7);
        let station = |s: f64| {
            form.stations
                .iter()
                .find(|station| (station.at - s).abs() < 1e-7)
        };
        let nodes = places
            .iter()
            .map(|&s| node(&path.at(s), station(s)))
            .collect();
        let nearest = |s: f64| {
            let off = |i: &usize| (places[*i] - s).abs();
            (0..places.len())
                .min_by(|i, j| off(i).total_cmp(&off(j)))
                .unwrap_or(0)
        };
        Self {
            name: String::new(),
            about: String::new(),
            drawn_for: size,
            fits: size,
            lay: laid(form.lay),
            grip: (nearest(form.grip.0), nearest(form.grip.1)),
            nodes,
            shapes: form.profiles.iter().map(SketchShape::of).collect(),
        }
    }
}

fn node(pose: &Pose, station: Option<&Station>) -> Node {
    let Point { x, y } = pose.at;
    let clean = |mm: f64| if mm.abs() < SAME { 0.0 } else { mm };
    let steel = station.map(|station| Steel {
        inside: exact(clean(station.rise - station.depth / 2.0)),
        back: exact(station.rise + station.depth / 2.0),
        width: Length::decimal(station.width, Unit::Millimetre),
        shift: exact(station.shift),
        shape: station.profile,
        ease: station.ease,
    });
    Node {
        x: exact(clean(x)),
        y: exact(clean(y)),
        slope: clean(pose.heading.to_degrees()),
        steel,
    }
}

fn laid(lay: Lay) -> SketchLay {
    match lay {
        Lay::Endwise { end: None } => SketchLay::EndOn,
        Lay::Endwise { end: Some(at) } => SketchLay::Stopped { at: exact(at) },
        Lay::Alongside => SketchLay::Alongside,
        Lay::Crosswise { at } => SketchLay::Crosswise { at: exact(at) },
    }
}

impl Jaw {
    /// The same jaw as a sketch, to be drawn on; one that is a sketch stays as it is.
    #[must_use]
    pub fn sketched(&self, size: Length) -> Self {
        if matches!(self.style, JawStyle::Sketch(_)) {
            return self.clone();
        }
        let sketch = Sketch::of(&self.plain_form(), size);
        let drawn = sketch.drawn_length();
        let length = if (drawn - self.length.mm()).abs() < 1e-7 {
            self.length
        } else {
            Length::decimal(drawn, Unit::Millimetre)
        };
        Self {
            length,
            style: JawStyle::Sketch(sketch),
            ..self.clone()
        }
    }

    /// Its sketch, if it is one.
    pub fn sketch(&self) -> Option<&Sketch> {
        if let JawStyle::Sketch(sketch) = &self.style {
            Some(sketch)
        } else {
            None
        }
    }
}
