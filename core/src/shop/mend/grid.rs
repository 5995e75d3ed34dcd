//! The values that a smith has: 1/16 in or 0.5 mm, whole degrees, per cents and pieces, and the
//! ways of a choice.

use super::design::Design;
use crate::asked::{Field, Step, Value};
use crate::units::Unit;

/// A value by its place: so many steps on the grid from the one that stands, or the number of a
/// way.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Spot {
    /// Which of the fields.
    pub(super) field: usize,
    /// So many steps from where it stands, or which way.
    pub(super) place: i32,
}

/// The fields that a mend may change.
pub(super) fn fields<D: Design>(design: &D) -> Vec<Field> {
    let mut all = design.fields();
    all.retain(D::may_change);
    all
}

/// The size of a step in mm, degrees, per cent or pieces; a choice has none.
pub(super) fn step(field: &Field, unit: Unit) -> Option<f64> {
    field.value.step(Step::Usual, unit)
}

/// How many steps a value is from where the field stands; a choice is one step from any other.
pub(super) fn steps_to(field: &Field, to: Value, unit: Unit) -> f64 {
    let both = field.value.number().zip(to.number());
    both.zip(step(field, unit))
        .map_or(1.0, |((from, to), step)| ((to - from) / step).abs())
}

/// The value at a place; `None` past its limits, and where it stands.
pub(super) fn value_at(field: &Field, place: i32, unit: Unit) -> Option<Value> {
    match field.value {
        Value::Choice { ways, chosen } => {
            let way = usize::try_from(place).ok()?;
            (way < ways.len() && way != chosen).then_some(Value::Choice { ways, chosen: way })
        }
        Value::Length(_) | Value::Angle(_) | Value::Percent(_) | Value::Count(_) => {
            stepped(field, place, unit)
        }
    }
}

/// A value that was typed between two steps goes to the next one first.
fn stepped(field: &Field, place: i32, unit: Unit) -> Option<Value> {
    /// What a number of steps may be off a whole one by reckoning.
    const HAIR: f64 = 1e-6;
    let step = step(field, unit)?;
    let now = field.value.number()? / step;
    let first = match place {
        0 => return None,
        1.. => (now + HAIR).floor(),
        _ => (now - HAIR).ceil(),
    };
    let to = first + f64::from(place);
    let value = field
        .value
        .at_step(to * step, field.range, (Step::Usual, unit))?;
    let got = value.number()? / step;
    ((got - to).abs() < HAIR).then_some(value)
}
