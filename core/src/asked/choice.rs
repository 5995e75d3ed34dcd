//! What can stand in a field, and choices among a few named ways.

use super::value::Value;
use crate::units::{Angle, Length};

/// What stands in a field.
pub trait Datum {
    /// It as a value.
    fn value(&self) -> Value;
    /// Takes a value of its own kind; one of another kind changes nothing.
    fn put(&mut self, value: Value);
}

/// A choice among a few named ways.
pub trait Choice {
    /// The names, in order.
    const WAYS: &'static [&'static str];
    /// Which one is chosen.
    fn chosen(&self) -> usize;
    /// Chooses one by its place in [`Choice::WAYS`]; out of range changes nothing.
    fn choose(&mut self, index: usize);

    /// The name of the one that is chosen.
    fn way(&self) -> &'static str {
        Self::WAYS[self.chosen()]
    }
}

/// A choice that is made with something else in view, such as a style beside work and bar.
pub trait ChoiceBeside<Other> {
    /// The names, in order.
    const WAYS: &'static [&'static str];
    /// Which one is chosen.
    fn chosen(&self) -> usize;
    /// Chooses one by its place in [`ChoiceBeside::WAYS`]; out of range changes nothing.
    fn choose(&mut self, index: usize, other: &Other);
}

impl Datum for Length {
    fn value(&self) -> Value {
        Value::Length(*self)
    }

    fn put(&mut self, value: Value) {
        if let Value::Length(length) = value {
            *self = length;
        }
    }
}

impl Datum for Angle {
    fn value(&self) -> Value {
        Value::Angle(*self)
    }

    fn put(&mut self, value: Value) {
        if let Value::Angle(angle) = value {
            *self = angle;
        }
    }
}

/// A number without a unit is a percentage.
impl Datum for f64 {
    fn value(&self) -> Value {
        Value::Percent(*self)
    }

    fn put(&mut self, value: Value) {
        if let Value::Percent(percent) = value {
            *self = percent;
        }
    }
}

impl Datum for u32 {
    fn value(&self) -> Value {
        Value::Count(*self)
    }

    fn put(&mut self, value: Value) {
        if let Value::Count(count) = value {
            *self = count;
        }
    }
}

impl<C: Choice> Datum for C {
    fn value(&self) -> Value {
        Value::Choice {
            ways: C::WAYS,
            chosen: self.chosen(),
        }
    }

    fn put(&mut self, value: Value) {
        if let Value::Choice { chosen, .. } = value {
            self.choose(chosen);
        }
    }
}

/// Makes a [`Choice`] of an enum without data.
macro_rules! simple_choice {
    ($kind:ident { $($way:ident => $name:literal),+ $(,)? }) => {
        impl $crate::asked::Choice for $kind {
            const WAYS: &'static [&'static str] = &[$($name),+];

            fn chosen(&self) -> usize {
                *self as usize
            }

            fn choose(&mut self, index: usize) {
                if let Some(way) = [$(Self::$way),+].get(index) {
                    *self = *way;
                }
            }
        }

        impl $kind {
            /// The name that the smith sees.
            pub fn name(self) -> &'static str {
                match self {
                    $(Self::$way => $name),+
                }
            }
        }
    };
}
pub(crate) use simple_choice;
