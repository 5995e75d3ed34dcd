//! A family of what was designed one by one.

use std::collections::BTreeMap;

use super::{Family, InSizes, Size};
use crate::asked::Field;

impl<D: InSizes> Family<D> {
    /// A family of designs, the first its base. Each is a size with its own bar, and has set by hand
    /// what the rules would make otherwise, so that every one comes out as it was. `None` where there is
    /// no design, or one that no family of the first makes.
    pub fn of_all(designs: &[D]) -> Option<Self> {
        let base = designs.first()?;
        let mut family = Self::from_design(base);
        family.sizes.clear();
        for design in designs {
            let size = family.gathered(design)?;
            family.sizes.push(size);
        }
        family.check().is_ok().then_some(family)
    }

    /// A design as a size of this family.
    fn gathered(&self, design: &D) -> Option<Size<D::Measure>> {
        let mut size = Size::new(design.measure());
        size.bar = (design.bar() != self.base.bar()).then(|| design.bar());
        let made = self.made(&size).document.all_fields();
        size.set = otherwise(&design.all_fields(), &made);
        // What hangs on a choice is there once the choice is made.
        let comes_out = self.made(&size).document.all_fields();
        let same = otherwise(&design.all_fields(), &comes_out).is_empty();
        same.then_some(size)
    }
}

/// What is otherwise in one design than in another, by its path.
fn otherwise(own: &[Field], other: &[Field]) -> BTreeMap<String, String> {
    let texts = |all: &[Field]| -> BTreeMap<String, String> {
        let text = |field: &Field| (field.path.clone(), field.value.to_string());
        all.iter().map(text).collect()
    };
    let other = texts(other);
    let mut own = texts(own);
    own.retain(|path, text| other.get(path) != Some(text));
    own
}
