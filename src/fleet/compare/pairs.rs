//! Which vessel of one audit is which of another: by register where both
//! have one, else by bare name.

use crate::fleet::bare;
use std::collections::{BTreeMap, BTreeSet};

/// What a vessel is known by.
#[derive(Debug, Clone)]
pub(super) struct Named<'a> {
    written: &'a str,
    name: String,
    register: Option<String>,
    file: &'a str,
}

/// Which is which, by index.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(super) struct Pairs {
    /// In both, in the order of the later audit.
    pub(super) both: Vec<(usize, usize)>,
    /// In the earlier audit alone.
    pub(super) old: Vec<usize>,
    /// In the later audit alone.
    pub(super) new: Vec<usize>,
    /// Names of which it cannot be told which is which.
    pub(super) unclear: Vec<String>,
}

impl<'a> Named<'a> {
    pub(super) fn new(name: &'a str, register: Option<&str>, file: &'a str) -> Self {
        let register = register.map(bare).filter(|register| !register.is_empty());
        Self { written: name, name: bare(name), register, file }
    }

    /// Whether the two may be one vessel: the same register, or the same name
    /// where one of them has none.
    pub(super) fn may_be(&self, other: &Self) -> bool {
        match (&self.register, &other.register) {
            (Some(a), Some(b)) => a == b,
            _ => self.name == other.name,
        }
    }
}

/// Finds which is which. Registers go first; among several of one register or
/// name the file decides, and where it does not, none is taken for another.
pub(super) fn pairs(old: &[Named<'_>], new: &[Named<'_>]) -> Pairs {
    let mut found = Finding { old, new, both: BTreeMap::new(), taken: BTreeSet::new() };
    let mut open = BTreeSet::new();
    found.by(|named| named.register.clone(), &mut open);
    found.by(|named| Some(named.name.clone()), &mut open);
    let unclear = open.iter().filter(|index| !found.both.contains_key(index));
    let unclear: Vec<String> = unclear.map(|index| new[*index].written.to_owned()).collect();
    let hidden: BTreeSet<String> = unclear.iter().map(|name| bare(name)).collect();
    let told = |named: &Named<'_>| hidden.contains(&named.name);
    let (both, taken) = (found.both, found.taken);
    let left = |index: &usize| !taken.contains(index) && !told(&old[*index]);
    let come = |index: &usize| !both.contains_key(index) && !told(&new[*index]);
    Pairs {
        old: (0..old.len()).filter(left).collect(),
        new: (0..new.len()).filter(come).collect(),
        both: both.iter().map(|(new, old)| (*old, *new)).collect(),
        unclear,
    }
}

struct Finding<'f, 'a> {
    old: &'f [Named<'a>],
    new: &'f [Named<'a>],
    /// The old one of each new one.
    both: BTreeMap<usize, usize>,
    /// The old ones that were found again.
    taken: BTreeSet<usize>,
}

impl Finding<'_, '_> {
    fn by(&mut self, key: impl Fn(&Named<'_>) -> Option<String>, open: &mut BTreeSet<usize>) {
        let mut groups: BTreeMap<String, (Vec<usize>, Vec<usize>)> = BTreeMap::new();
        for index in (0..self.old.len()).filter(|index| !self.taken.contains(index)) {
            if let Some(key) = key(&self.old[index]) {
                groups.entry(key).or_default().0.push(index);
            }
        }
        for index in (0..self.new.len()).filter(|index| !self.both.contains_key(index)) {
            if let Some(key) = key(&self.new[index]) {
                groups.entry(key).or_default().1.push(index);
            }
        }
        for (olds, news) in groups.into_values().filter(|(o, n)| !o.is_empty() && !n.is_empty()) {
            self.within(olds, news, open);
        }
    }

    /// Pairs what shares a register or a name.
    fn within(&mut self, mut olds: Vec<usize>, mut news: Vec<usize>, open: &mut BTreeSet<usize>) {
        if olds.len() > 1 || news.len() > 1 {
            for new in news.clone() {
                let same = |old: &&usize| {
                    let (old, new) = (&self.old[**old], &self.new[new]);
                    old.file == new.file && old.may_be(new)
                };
                if let Some(old) = olds.iter().find(same).copied() {
                    self.pair(old, new);
                    olds.retain(|other| *other != old);
                    news.retain(|other| *other != new);
                }
            }
        }
        let may = |old: &usize, new: &usize| self.old[*old].may_be(&self.new[*new]);
        match (&*olds, &*news) {
            ([old], [new]) if may(old, new) => self.pair(*old, *new),
            _ if olds.iter().any(|old| news.iter().any(|new| may(old, new))) => {
                open.insert(news[0]);
            }
            _ => {}
        }
    }

    fn pair(&mut self, old: usize, new: usize) {
        self.both.insert(new, old);
        self.taken.insert(old);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(old: &[(&str, &str, &str)], new: &[(&str, &str, &str)]) -> Pairs {
        fn named<'a>(of: &[(&'a str, &'a str, &'a str)]) -> Vec<Named<'a>> {
            of.iter().map(|(name, register, file)| Named::new(name, Some(register), file)).collect()
        }
        pairs(&named(old), &named(new))
    }

    #[test]
    fn a_register_outlives_a_name_and_a_file() {
        let pairs = found(&[("Tern", "A 1", "x")], &[("Gull", "a1", "y")]);
        assert_eq!(pairs.both, [(0, 0)]);
    }

    #[test]
    fn two_registers_are_two_vessels_of_one_name() {
        let pairs = found(&[("Tern", "A1", "x")], &[("Tern", "A2", "x")]);
        assert_eq!((pairs.both, pairs.old, pairs.new), (vec![], vec![0], vec![0]));
        assert!(pairs.unclear.is_empty());
    }

    #[test]
    fn a_name_does_where_one_has_no_register() {
        let pairs = found(&[("Marlow Tern", "", "x")], &[("marlow  tern", "A2", "y")]);
        assert_eq!(pairs.both, [(0, 0)]);
    }

    #[test]
    fn of_several_of_one_name_the_file_decides_or_nothing() {
        let two = [("Tern", "", "x"), ("Tern", "", "y")];
        assert_eq!(found(&two, &two).both, [(0, 0), (1, 1)]);
        let pairs = found(&two, &[("Tern", "", "z")]);
        assert_eq!(pairs, Pairs { unclear: vec!["Tern".into()], ..Pairs::default() });
        // One is found by its file, which leaves one for the other.
        assert_eq!(found(&two, &[("Tern", "", "z"), ("Tern", "", "y")]).both, [(0, 0), (1, 1)]);
    }

    #[test]
    fn who_left_and_who_came_is_told() {
        let pairs = found(&[("A", "1", "a"), ("B", "", "b")], &[("B", "", "b"), ("C", "", "c")]);
        assert_eq!((pairs.both, pairs.old, pairs.new), (vec![(1, 0)], vec![0], vec![1]));
    }
}
