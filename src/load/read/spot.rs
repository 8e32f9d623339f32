//! Where a check stands in a file: a path that is only spelled out where
//! something has to be placed.

use crate::model::place::Place;
use std::sync::Arc;

/// A key path in the making.
#[derive(Clone, Copy)]
pub(crate) struct Spot<'a> {
    root: Root<'a>,
    above: Option<&'a Spot<'a>>,
    part: Part<'a>,
}

#[derive(Clone, Copy)]
enum Root<'a> {
    File(&'a Arc<str>),
    Origin(&'a Origin),
}

#[derive(Clone, Copy)]
enum Part<'a> {
    Top,
    Key(&'a str),
    Entry(usize),
}

/// Where an inherited requirement stands, and where some of its keys were
/// changed.
#[derive(Debug, Clone)]
pub(crate) struct Origin {
    /// Where the requirement stands.
    pub(crate) place: Place,
    /// Keys that came from elsewhere, and from where.
    pub(crate) changed: Vec<(String, Place)>,
}

impl Origin {
    /// The place of a key path below the requirement.
    fn resolve(&self, key: &str) -> Place {
        let covers = |changed: &str| {
            key.strip_prefix(changed)
                .is_some_and(|rest| rest.is_empty() || rest.starts_with(['.', '[']))
        };
        let nearest = self
            .changed
            .iter()
            .filter(|(changed, _)| covers(changed))
            .max_by_key(|(changed, _)| changed.len());
        match nearest {
            Some((changed, place)) => append(place, &key[changed.len()..]),
            None => append(&self.place, key),
        }
    }
}

fn append(place: &Place, rest: &str) -> Place {
    let dot = !rest.is_empty() && !rest.starts_with(['.', '[']) && !place.key.is_empty();
    let key = format!("{}{}{rest}", place.key, if dot { "." } else { "" });
    Place { file: Arc::clone(&place.file), key }
}

impl<'a> Spot<'a> {
    /// The top of a file.
    pub(crate) fn top(file: &'a Arc<str>) -> Self {
        Self { root: Root::File(file), above: None, part: Part::Top }
    }

    /// The top of a requirement.
    pub(crate) fn requirement(origin: &'a Origin) -> Self {
        Self { root: Root::Origin(origin), above: None, part: Part::Top }
    }

    /// The spot of a key below this one.
    pub(crate) fn key(&'a self, key: &'a str) -> Spot<'a> {
        Spot { root: self.root, above: Some(self), part: Part::Key(key) }
    }

    /// The spot of an entry of the list here.
    pub(crate) fn entry(&'a self, index: usize) -> Spot<'a> {
        Spot { root: self.root, above: Some(self), part: Part::Entry(index) }
    }

    /// Spelled out.
    pub(crate) fn place(&self) -> Place {
        let mut key = String::with_capacity(24);
        self.spell(&mut key);
        match self.root {
            Root::File(file) => Place { file: Arc::clone(file), key },
            Root::Origin(origin) => origin.resolve(&key),
        }
    }

    fn spell(&self, out: &mut String) {
        if let Some(above) = self.above {
            above.spell(out);
        }
        match self.part {
            Part::Top => {}
            Part::Key(key) => push_key(out, key),
            Part::Entry(index) => push_entry(out, index),
        }
    }
}

/// Adds a key to a path.
pub(crate) fn push_key(path: &mut String, key: &str) {
    if !path.is_empty() {
        path.push('.');
    }
    path.push_str(key);
}

/// Adds the index of an entry to a path.
pub(crate) fn push_entry(path: &mut String, index: usize) {
    path.push('[');
    path.push_str(&index.to_string());
    path.push(']');
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_spot_is_spelled_like_a_place() {
        let file: Arc<str> = "a.yaml".into();
        let top = Spot::top(&file);
        let (kit, third) = (top.key("kit"), 3);
        let (tool, key) = (kit.entry(third), "handle");
        assert_eq!(tool.key(key).place(), Place::new(&file, "kit[3].handle"));
    }

    #[test]
    fn a_changed_line_is_placed_where_the_change_stands() {
        let (base, derived): (Arc<str>, Arc<str>) = ("base.yaml".into(), "new.yaml".into());
        let origin = Origin {
            place: Place::new(&base, "requirements[1]"),
            changed: vec![("with.handle".into(), Place::new(&derived, "change[0].with.handle"))],
        };
        let top = Spot::requirement(&origin);
        let with = top.key("with");
        assert_eq!(with.key("handle").place().to_owned().key, "change[0].with.handle");
        assert_eq!(&*with.key("handle").place().file, "new.yaml");
        assert_eq!(with.key("handles").place().key, "requirements[1].with.handles");
    }
}
