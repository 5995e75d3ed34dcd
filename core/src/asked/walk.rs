//! A walk over the values of something, to read them or to change them.
//!
//! What has values tells them once, in [`fields`]: a line each with its name in the path, its
//! limits, and the words for the smith. The same lines serve a [`Reader`], which takes `&self`, and
//! a [`Writer`], which takes `&mut self`.

use super::choice::{ChoiceBeside, Datum};
use super::field::{Field, Follows};
use super::range::Range;
use super::value::Value;
use crate::finding::Part;

/// What has values that can be read and set.
pub trait Fields {
    /// Shows every value.
    fn read(&self, v: &mut Reader<'_>);
    /// Shows every value, and takes those that come back.
    fn write(&mut self, v: &mut Writer<'_>);
}

/// A walk that is under way: where it is, and who sees the fields.
#[allow(missing_debug_implementations, reason = "holds a closure")]
pub struct Walk<'s, See: ?Sized> {
    /// The field that is being told, with the path that the walk has come by.
    field: Field,
    see: &'s mut See,
}

/// A walk that shows fields.
pub type Reader<'s> = Walk<'s, dyn FnMut(&Field) + 's>;

/// A walk that asks for each field whether it is to be another value.
pub type Writer<'s> = Walk<'s, dyn FnMut(&Field) -> Option<Value> + 's>;

/// A value whose words are still to come.
#[must_use = "a value is shown once `says` gives it its words"]
#[allow(missing_debug_implementations, reason = "holds a closure")]
pub struct Told<'v, 's, See: ?Sized, Put> {
    walk: &'v mut Walk<'s, See>,
    name: &'static str,
    follows: Follows,
    /// Puts another value in its place.
    put: Put,
}

type Shown<'v, 's> = Told<'v, 's, dyn FnMut(&Field) + 's, ()>;
type Offered<'v, 's, Put> = Told<'v, 's, dyn FnMut(&Field) -> Option<Value> + 's, Put>;

impl<'s, See: ?Sized> Walk<'s, See> {
    /// A walk whose fields are shown to `see`.
    pub fn new(see: &'s mut See) -> Self {
        let field = Field {
            path: String::new(),
            part: Part::Pair,
            label: "",
            hint: "",
            range: Range::ANY,
            follows: Follows::Nothing,
            value: Value::Count(0),
        };
        Self { field, see }
    }

    /// From here on the fields belong to `part`, stand under `path`, and grow as `follows` says.
    pub fn part(&mut self, part: Part, path: &'static str, follows: Follows) {
        self.field.part = part;
        self.field.path.clear();
        self.field.path.push_str(path);
        self.field.follows = follows;
    }

    /// What the fields here grow with.
    pub fn follows(&self) -> Follows {
        self.field.follows
    }

    /// Goes into what stands under `name`; gives what [`Walk::leave`] needs to come out again.
    fn enter(&mut self, name: &str, follows: Follows) -> (usize, Follows) {
        let before = (self.field.path.len(), self.field.follows);
        if !self.field.path.is_empty() {
            self.field.path.push('.');
        }
        self.field.path.push_str(name);
        self.field.follows = follows;
        before
    }

    fn leave(&mut self, (path, follows): (usize, Follows)) {
        self.field.path.truncate(path);
        self.field.follows = follows;
    }

    fn tell<Put>(
        &mut self,
        name: &'static str,
        (value, range): (Value, Range),
        put: Put,
    ) -> Told<'_, 's, See, Put> {
        (self.field.value, self.field.range) = (value, range);
        Told {
            follows: self.field.follows,
            walk: self,
            name,
            put,
        }
    }
}

impl<'s> Reader<'s> {
    /// Shows the fields of something that stands here.
    pub fn all(&mut self, it: &impl Fields) {
        it.read(self);
    }

    /// Shows the fields of something that stands under `name`.
    pub fn within(&mut self, name: &'static str, follows: Follows, it: &impl Fields) {
        let before = self.enter(name, follows);
        it.read(self);
        self.leave(before);
    }

    /// A value with its limits.
    pub fn value(&mut self, name: &'static str, it: &impl Datum, range: Range) -> Shown<'_, 's> {
        self.tell(name, (it.value(), range), ())
    }

    /// A choice.
    pub fn choice(&mut self, name: &'static str, it: &impl Datum) -> Shown<'_, 's> {
        self.value(name, it, Range::ANY)
    }

    /// A choice that is made with something else in view.
    pub fn choice_beside<Other, C: ChoiceBeside<Other>>(
        &mut self,
        name: &'static str,
        it: &C,
        _other: &Other,
    ) -> Shown<'_, 's> {
        self.tell(name, (chosen(it), Range::ANY), ())
    }
}

impl<'s> Writer<'s> {
    /// Shows the fields of something that stands here.
    pub fn all(&mut self, it: &mut impl Fields) {
        it.write(self);
    }

    /// Shows the fields of something that stands under `name`.
    pub fn within(&mut self, name: &'static str, follows: Follows, it: &mut impl Fields) {
        let before = self.enter(name, follows);
        it.write(self);
        self.leave(before);
    }

    /// A value with its limits.
    pub fn value(
        &mut self,
        name: &'static str,
        it: &mut impl Datum,
        range: Range,
    ) -> Offered<'_, 's, impl FnOnce(Value)> {
        self.tell(name, (it.value(), range), |value| it.put(value))
    }

    /// A choice.
    pub fn choice(
        &mut self,
        name: &'static str,
        it: &mut impl Datum,
    ) -> Offered<'_, 's, impl FnOnce(Value)> {
        self.value(name, it, Range::ANY)
    }

    /// A choice that is made with something else in view.
    pub fn choice_beside<Other, C: ChoiceBeside<Other>>(
        &mut self,
        name: &'static str,
        it: &mut C,
        other: &Other,
    ) -> Offered<'_, 's, impl FnOnce(Value)> {
        self.tell(name, (chosen(it), Range::ANY), |value| {
            if let Value::Choice { chosen, .. } = value {
                it.choose(chosen, other);
            }
        })
    }
}

fn chosen<Other, C: ChoiceBeside<Other>>(it: &C) -> Value {
    Value::Choice {
        ways: C::WAYS,
        chosen: it.chosen(),
    }
}

impl<See: ?Sized, Put> Told<'_, '_, See, Put> {
    /// It grows with the work, whatever its neighbours grow with.
    pub fn of_work(self) -> Self {
        self.grows(Follows::Work)
    }

    /// It grows with something else than its neighbours do.
    pub fn grows(mut self, follows: Follows) -> Self {
        self.follows = follows;
        self
    }

    /// Shows the field with its words; gives what `see` answers, and the way to put a value.
    fn show<Answer>(
        self,
        (label, hint): (&'static str, &'static str),
        see: impl FnOnce(&mut See, &Field) -> Answer,
    ) -> (Answer, Put) {
        let scales = self.walk.field.is_length();
        let follows = if scales {
            self.follows
        } else {
            Follows::Nothing
        };
        let before = self.walk.enter(self.name, follows);
        (self.walk.field.label, self.walk.field.hint) = (label, hint);
        let answer = see(self.walk.see, &self.walk.field);
        self.walk.leave(before);
        (answer, self.put)
    }
}

impl Shown<'_, '_> {
    /// Shows it under its label, with what it is in a sentence without a period.
    pub fn says(self, label: &'static str, hint: &'static str) {
        self.show((label, hint), |see, field| see(field));
    }
}

impl<Put: FnOnce(Value)> Offered<'_, '_, Put> {
    /// Shows it under its label, with what it is in a sentence without a period, and takes the
    /// value that comes back.
    pub fn says(self, label: &'static str, hint: &'static str) {
        let (answer, put) = self.show((label, hint), |see, field| see(field));
        if let Some(value) = answer {
            put(value);
        }
    }
}

/// Tells the values of a type once, to be read and to be written.
///
/// The pattern takes the type apart, the braces say the lines; `v` is the walk. They are set by
/// hand, a line a value, since they read as a table.
macro_rules! fields {
    ($kind:ty: |$it:pat_param, $v:ident| $lines:block) => {
        impl $crate::asked::Fields for $kind {
            fn read(&self, $v: &mut $crate::asked::Reader<'_>) {
                let $it = self;
                $lines
            }

            fn write(&mut self, $v: &mut $crate::asked::Writer<'_>) {
                let $it = self;
                $lines
            }
        }
    };
}
pub(crate) use fields;
