//! The simple bounds that the as-written types declare (how long a text may
//! be), worded and put in order.

use crate::load::read::problem::{Problem, Problems};
use crate::load::read::spot::{push_entry, push_key};
use crate::model::place::Place;
use std::sync::Arc;
use validator::{Validate, ValidationErrors, ValidationErrorsKind};

/// Tells of every text that is longer than its type allows, by key path.
pub(crate) fn judge_bounds(written: &impl Validate, file: &Arc<str>, problems: &mut Problems) {
    let Err(errors) = written.validate() else { return };
    let mut found = Vec::new();
    collect(&errors, &mut String::new(), &mut found);
    // The validator keeps its errors in an order that changes between runs.
    found.sort();
    for (key, most) in found {
        problems.add(
            Problem::new(Place::new(file, key), "this text is too long")
                .expected(format!("at most {most} characters")),
        );
    }
}

#[allow(clippy::iter_over_hash_type)] // the outcome is sorted above
fn collect(errors: &ValidationErrors, path: &mut String, found: &mut Vec<(String, u64)>) {
    let length = path.len();
    for (field, kind) in errors.errors() {
        push_key(path, field);
        match kind {
            ValidationErrorsKind::Struct(inner) => collect(inner, path, found),
            ValidationErrorsKind::List(entries) => {
                let list = path.len();
                for (index, inner) in entries {
                    push_entry(path, *index);
                    collect(inner, path, found);
                    path.truncate(list);
                }
            }
            ValidationErrorsKind::Field(broken) => {
                let most = broken.iter().filter_map(|one| one.params.get("max")?.as_u64()).min();
                found.push((path.clone(), most.unwrap_or_default()));
            }
        }
        path.truncate(length);
    }
}
